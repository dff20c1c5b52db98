//! What every window shows at every step of the whole job of seed 1, and at screens that a sound job never comes to, in both
//! languages and both sets of units, written as files for the tests of the pages.
//!
//! `BAYHAND_VIEWS` names the folder; `cargo xtask test` sets it, and the pages are then drawn in a browser from these files
//! (`ui/pages`). Without it the views are only made and checked to come back from their JSON.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

// The bay of the tests of `bayhand-job`.
#[path = "../../src-tauri/crates/job/tests/common/mod.rs"]
mod common;

use bayhand_job::ask::{PracticeAsk, Wish};
use bayhand_job::preferences::{Preferences, Units};
use bayhand_job::view::{
    BayView, CarView, CarsView, CoachView, InstrumentsView, ManualView, OriginView, Outlook, PersonRecord, ReviewView,
    StepView,
};
use bayhand_job::{Lack, Missing};
use bayhand_measure::Unit;
use common::staff::{PASSPHRASE, know_people, secret};
use common::{Bay, who};
use serde::{Serialize, de::DeserializeOwned};
use std::fs;
use std::path::PathBuf;

/// One moment, as all windows show it.
#[derive(Serialize)]
struct Moment {
    name: String,
    step: StepView,
    bay: BayView,
    #[serde(skip_serializing_if = "Option::is_none")]
    review: Option<ReviewView>,
    /// Where a place on the trade line is chosen: what one place leads to.
    #[serde(skip_serializing_if = "Option::is_none")]
    outlook: Option<Outlook>,
    #[serde(skip_serializing_if = "Option::is_none", flatten)]
    book: Option<BookPages>,
}

/// The pages of the desk beside the job itself.
#[derive(Serialize)]
struct BookPages {
    cars: CarsView,
    car: CarView,
    instruments: InstrumentsView,
    manual: ManualView,
    #[serde(skip_serializing_if = "Option::is_none")]
    origin: Option<OriginView>,
    #[serde(skip_serializing_if = "Option::is_none")]
    coach: Option<CoachView>,
    person: PersonRecord,
}

/// How much of a moment is kept beside what the window at the car and the board show.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kept {
    Job,
    Review,
    /// The pages of the book too.
    Book,
}

/// The ways in which every moment is shown: a folder, and how the windows are set.
fn ways() -> Vec<(String, Preferences)> {
    let other = Units { mass: Unit::Pound, length: Unit::Inch, pressure: Unit::Psi, angle: Unit::DegreeMinute };
    let units = [("kg", Units::default()), ("lb", other)];
    let set = |language: &str, units| Preferences { language: language.into(), units, ..Preferences::default() };
    ["en", "de"].iter().flat_map(|l| units.map(|(name, units)| (format!("{l}-{name}"), set(l, units)))).collect()
}

/// The album of all moments.
struct Album {
    folder: Option<PathBuf>,
    moments: usize,
}

impl Album {
    /// A new one, with the labels and the settings of each way.
    async fn new() -> Album {
        let mut album = Album { folder: std::env::var_os("BAYHAND_VIEWS").map(PathBuf::from), moments: 0 };
        if let Some(folder) = album.folder.as_ref().filter(|folder| folder.exists()) {
            fs::remove_dir_all(folder).unwrap();
        }
        let desk = Bay::empty().await.desk;
        for (way, preferences) in ways() {
            let settings = desk.set(preferences).unwrap();
            album.write(&way, "labels", &desk.labels());
            album.write(&way, "settings", &settings);
        }
        album
    }

    fn write(&mut self, way: &str, name: &str, what: &impl Serialize) {
        let Some(folder) = self.folder.as_ref().map(|folder| folder.join(way)) else { return };
        fs::create_dir_all(&folder).unwrap();
        fs::write(folder.join(format!("{name}.json")), serde_json::to_string(what).unwrap()).unwrap();
    }

    /// Keeps what is shown now, in every way. The setter goes on in the way that he began.
    async fn keep(&mut self, bay: &Bay, name: &str, kept: Kept) {
        let name = format!("{:03}-{name}", self.moments);
        for (way, preferences) in ways() {
            bay.desk.set(preferences).unwrap();
            let moment = moment(bay, &name, kept).await;
            self.write(&way, &name, &moment);
        }
        bay.desk.set(Preferences::default()).unwrap();
        self.moments += 1;
    }
}

async fn moment(bay: &Bay, name: &str, kept: Kept) -> Moment {
    let moment = Moment {
        name: name.into(),
        step: bay.desk.step_view().await,
        bay: bay.desk.bay_view().await,
        review: if kept == Kept::Job { None } else { Some(bay.desk.review_view(None).await.unwrap()) },
        // Refused where no place can be chosen.
        outlook: if kept == Kept::Job { None } else { bay.desk.preview("", 0.42).await.ok() },
        book: if kept == Kept::Book { Some(book_pages(bay).await) } else { None },
    };
    comes_back(&moment.step, name);
    comes_back(&moment.bay, name);
    moment
}

async fn book_pages(bay: &Bay) -> BookPages {
    let job = bay.job();
    let book = BookPages {
        cars: bay.desk.cars("").await.unwrap(),
        car: bay.desk.car(job).await.unwrap(),
        instruments: bay.desk.instruments().await.unwrap(),
        manual: bay.desk.manual().await.unwrap(),
        // The one with the most readings.
        origin: bay.desk.origin(job, "toe.FL").await.ok(),
        // Refused of a job that has not ended.
        coach: bay.desk.coach(job).await.ok(),
        person: bay.desk.person_record("RO").await.unwrap(),
    };
    comes_back(&book.origin, "origin");
    comes_back(&book.instruments, "instruments");
    comes_back(&book.cars, "cars");
    comes_back(&book.manual, "manual");
    comes_back(&book.car, "car");
    comes_back(&book.coach, "coach");
    comes_back(&book.person, "person");
    book
}

fn comes_back<V: Serialize + DeserializeOwned + PartialEq + std::fmt::Debug>(view: &V, name: &str) {
    let text = serde_json::to_string(view).unwrap();
    let back: V = serde_json::from_str(&text).unwrap();
    assert_eq!(&back, view, "{name}: a view comes back from its JSON");
}

#[tokio::test]
async fn every_view_of_the_whole_job_of_seed_1() {
    let mut album = Album::new().await;
    whole_job(&mut album).await;
    assert!(album.moments > 60, "{} moments: the album holds every step", album.moments);
    before_and_beside(&mut album).await;
}

async fn whole_job(album: &mut Album) {
    let mut bay = Bay::practice(1).await;
    while !bay.step().seal_in_review {
        let body = bay.step().clone();
        let name = body.id.replace('.', "-");
        if body.hazards_open {
            album.keep(&bay, &format!("{name}-hazards"), Kept::Job).await;
            bay.acknowledge(who(&body.id)).await;
        }
        album.keep(&bay, &name, if body.id.starts_with("loop.judge") { Kept::Review } else { Kept::Job }).await;
        bay.do_step().await;
        if bay.step().gate.is_some() && bay.step().id == body.id {
            album.keep(&bay, &format!("{name}-gate"), Kept::Job).await;
        }
    }
    album.keep(&bay, "review-seal", Kept::Review).await;
    // From here on the book knows its people: they show who they are by PIN, and the job is sealed by a key.
    know_people(&bay).await;
    album.keep(&bay, "pin-review", Kept::Book).await;
    bay.desk.seal(bay.job(), bay.view.revision, "MT", secret(PASSPHRASE)).await.unwrap();
    album.keep(&bay, "sealed", Kept::Book).await;
}

/// A book without people or jobs, a job that nobody signed on to, one on hold and one set aside.
async fn before_and_beside(album: &mut Album) {
    let mut bay = Bay::empty().await;
    album.keep(&bay, "start-first", Kept::Review).await;
    let car = "Practice coupe 4".to_owned();
    bay.ask("", Wish::Begin { car, practice: Some(PracticeAsk::sound(4)) }).await.unwrap();
    album.keep(&bay, "sign-on", Kept::Job).await;
    bay.ask("", common::sign_on("RO", "Robin Oakes", "trainee")).await.unwrap();
    bay.desk.miss(Missing::Voice(Lack::Program("espeak-ng".into())));
    bay.desk.miss(Missing::Model(Lack::File("/usr/share/bayhand/voice-en.bin".into())));
    album.keep(&bay, "notice", Kept::Job).await;
    bay.ask("RO", Wish::Hold { reason: "waits for a second pair of hands".into() }).await.unwrap();
    album.keep(&bay, "held", Kept::Review).await;
    bay.ask("RO", Wish::SetAside).await.unwrap();
    album.keep(&bay, "start-open", Kept::Job).await;
    know_people(&bay).await;
    album.keep(&bay, "pin-start", Kept::Job).await;
}
