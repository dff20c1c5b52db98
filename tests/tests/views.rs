//! What every window shows at every step of the whole job of seed 1, written as files for the tests of the pages.
//!
//! `BAYHAND_VIEWS` names the folder; `cargo xtask test` sets it, and the pages are then drawn in a browser from these files
//! (`ui/pages`). Without it the views are only made and checked to come back from their JSON.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

// The bay of the tests of `bayhand-job`.
#[path = "../../src-tauri/crates/job/tests/common/mod.rs"]
mod common;

use bayhand_job::ask::{Ask, Wish};
use bayhand_job::view::{BayView, CarView, CarsView, InstrumentsView, ManualView, OriginView, ReviewView, StepView};
use common::{Bay, who};
use serde::{Serialize, de::DeserializeOwned};
use std::fs;
use std::path::PathBuf;

/// One moment of the job, as all windows show it.
#[derive(Serialize)]
struct Moment {
    name: String,
    step: StepView,
    bay: BayView,
    #[serde(skip_serializing_if = "Option::is_none")]
    review: Option<ReviewView>,
    #[serde(skip_serializing_if = "Option::is_none", flatten)]
    book: Option<BookPages>,
}

/// The book by its cars and instruments, once the job is sealed.
#[derive(Serialize)]
struct BookPages {
    cars: CarsView,
    car: CarView,
    instruments: InstrumentsView,
    manual: ManualView,
    origin: OriginView,
}

/// The album of all moments.
struct Album {
    folder: Option<PathBuf>,
    moments: usize,
}

impl Album {
    fn new() -> Album {
        let folder = std::env::var_os("BAYHAND_VIEWS").map(PathBuf::from);
        if let Some(folder) = &folder {
            fs::create_dir_all(folder).unwrap();
            for old in fs::read_dir(folder).unwrap() {
                fs::remove_file(old.unwrap().path()).unwrap();
            }
        }
        Album { folder, moments: 0 }
    }

    async fn keep(&mut self, bay: &Bay, name: &str, review: bool) {
        self.keep_with(bay, name, review, None).await;
    }

    async fn keep_with(&mut self, bay: &Bay, name: &str, review: bool, book: Option<BookPages>) {
        let review = if review { Some(bay.desk.review_view(None).await.unwrap()) } else { None };
        let (step, board) = (bay.desk.step_view().await, bay.desk.bay_view().await);
        comes_back(&step, name);
        comes_back(&board, name);
        let name = format!("{:03}-{name}", self.moments);
        if let Some(folder) = &self.folder {
            let moment = Moment { name: name.clone(), step, bay: board, review, book };
            fs::write(folder.join(format!("{name}.json")), serde_json::to_string(&moment).unwrap()).unwrap();
        }
        self.moments += 1;
    }
}

fn comes_back<V: Serialize + DeserializeOwned + PartialEq + std::fmt::Debug>(view: &V, name: &str) {
    let text = serde_json::to_string(view).unwrap();
    let back: V = serde_json::from_str(&text).unwrap();
    assert_eq!(&back, view, "{name}: a view comes back from its JSON");
}

#[tokio::test]
async fn every_view_of_the_whole_job_of_seed_1() {
    let mut album = Album::new();
    if let Some(folder) = &album.folder {
        let labels = Bay::empty().await.desk.labels();
        fs::write(folder.join("labels.json"), serde_json::to_string(&labels).unwrap()).unwrap();
    }
    let mut bay = Bay::practice(1).await;
    while !bay.step().seal_in_review {
        let body = bay.step().clone();
        let name = body.id.replace('.', "-");
        if body.hazards_open {
            album.keep(&bay, &format!("{name}-hazards"), false).await;
            bay.acknowledge(who(&body.id)).await;
        }
        album.keep(&bay, &name, body.id.starts_with("loop.judge")).await;
        bay.do_step().await;
        if bay.step().gate.is_some() && bay.step().id == body.id {
            album.keep(&bay, &format!("{name}-gate"), false).await;
        }
    }
    album.keep(&bay, "review-seal", true).await;
    let (job, ask) = (bay.job(), Ask { revision: bay.view.revision, by: "MT".into(), wish: Wish::Seal });
    bay.desk.review_act(job, ask).await.unwrap();
    let book = BookPages {
        cars: bay.desk.cars("").await.unwrap(),
        car: bay.desk.car(job).await.unwrap(),
        instruments: bay.desk.instruments().await.unwrap(),
        manual: bay.desk.manual().await.unwrap(),
        // The one with the most readings.
        origin: bay.desk.origin(job, "toe.FL").await.unwrap(),
    };
    comes_back(&book.origin, "origin");
    comes_back(&book.instruments, "instruments");
    comes_back(&book.cars, "cars");
    comes_back(&book.manual, "manual");
    comes_back(&book.car, "car");
    album.keep_with(&bay, "sealed", true, Some(book)).await;
    assert!(album.moments > 60, "{} moments: the album holds every step", album.moments);
}
