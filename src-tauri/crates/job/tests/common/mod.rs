//! What the tests of a running job share: a bay with a desk, a book and a clock of its own, and a setter at the practice
//! car who enters what the window shows.
#![allow(dead_code, reason = "each test file uses its own part")]
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

// The setter of `bayhand-cli practice`; it reads the view and nothing else.
#[path = "../../../cli/src/setter.rs"]
mod setter;
pub mod staff;

use bayhand_job::ask::{Ask, Entry, PracticeAsk, Refused, Wish};
use bayhand_job::view::{Screen, StepBody, StepView};
use bayhand_job::{Clock, Desk};
use bayhand_jobbook::{Book, JobId};
use chrono::{DateTime, FixedOffset, TimeDelta};
use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::{Arc, Mutex};
use tempfile::TempDir;

pub use setter::who;

/// When every job of the tests begins.
pub const MORNING: &str = "2026-03-02T08:15:00+01:00";

/// A clock that goes on only when it is told to.
pub struct TestClock(Mutex<DateTime<FixedOffset>>);

impl TestClock {
    pub fn new() -> Arc<TestClock> {
        Arc::new(TestClock(Mutex::new(MORNING.parse().unwrap())))
    }

    pub fn pass(&self, seconds: u32) {
        *self.0.lock().unwrap() += TimeDelta::seconds(i64::from(seconds));
    }
}

impl Clock for TestClock {
    fn now(&self) -> DateTime<FixedOffset> {
        *self.0.lock().unwrap()
    }
}

/// A desk over a new book, and what the window at the car shows.
pub struct Bay {
    pub desk: Desk,
    pub clock: Arc<TestClock>,
    pub view: StepView,
    pub book: PathBuf,
    folder: TempDir,
}

impl Bay {
    /// A new book in which no job is open.
    pub async fn empty() -> Bay {
        let folder = tempfile::tempdir().unwrap();
        let book = folder.path().join("jobs.db");
        let clock = TestClock::new();
        let desk = Desk::open(&book, clock.clone()).await.unwrap();
        let view = desk.step_view().await;
        Bay { desk, clock, view, book, folder }
    }

    /// A practice job of this seed, begun, with the three people of the practice signed on.
    pub async fn practice(seed: u64) -> Bay {
        Bay::practice_on(PracticeAsk::sound(seed)).await
    }

    /// The same on a car with which something may be wrong.
    pub async fn practice_on(practice: PracticeAsk) -> Bay {
        let mut bay = Bay::empty().await;
        let car = format!("Practice coupe {}", practice.seed);
        bay.ask("", Wish::Begin { car, practice: Some(practice) }).await.unwrap();
        for (initials, name, rank) in [
            ("RO", "Robin Oakes", "trainee"),
            ("LB", "Lee Barrow", "technician"),
            ("MT", "Morgan Thwaite", "supervisor"),
        ] {
            bay.ask("", sign_on(initials, name, rank)).await.unwrap();
        }
        bay
    }

    /// The same, led to a step.
    pub async fn practice_at(seed: u64, step: &str) -> Bay {
        let mut bay = Bay::practice(seed).await;
        bay.lead_to(step).await;
        bay
    }

    /// Closes the book and opens it again, as after the end of the program; no job is open then.
    pub async fn restart(self) -> Bay {
        let Bay { desk, clock, book, folder, .. } = self;
        desk.close().await.unwrap();
        let desk = Desk::open(&book, clock.clone()).await.unwrap();
        let view = desk.step_view().await;
        Bay { desk, clock, view, book, folder }
    }

    /// The step at hand.
    pub fn step(&self) -> &StepBody {
        match &self.view.screen {
            Screen::Step(body) => body,
            other => panic!("there is a step at hand, not {other:?}"),
        }
    }

    /// Asks with the revision that the view shows.
    pub async fn ask(&mut self, by: &str, wish: Wish) -> Result<(), Refused> {
        let ask = Ask { revision: self.view.revision, by: by.into(), wish };
        self.view = self.desk.act(ask).await?;
        self.clock.pass(1);
        Ok(())
    }

    /// Acknowledges every hazard of the step at hand, by hand.
    pub async fn acknowledge(&mut self, by: &str) {
        let body = self.step().clone();
        for hazard in body.hazards.iter().filter(|h| h.acknowledged.is_none()) {
            self.ask(by, Wish::Acknowledge { step: body.id.clone(), hazard: hazard.id.clone() }).await.unwrap();
        }
    }

    /// What the setter enters at the step at hand.
    pub fn entries(&self) -> BTreeMap<String, Entry> {
        setter::entries(self.step())
    }

    /// Records these entries at the step at hand, by the one whose step it is.
    pub async fn record(&mut self, entries: BTreeMap<String, Entry>) -> Result<(), Refused> {
        let step = self.step().id.clone();
        self.ask(who(&step), Wish::Record { step, entries }).await
    }

    /// Does the step at hand as the setter does it. A gate that did not pass leaves the step at hand.
    pub async fn do_step(&mut self) {
        let step = self.step().id.clone();
        self.acknowledge(who(&step)).await;
        if let Some(timer) = self.step().timer.clone() {
            self.clock.pass(timer.seconds);
        }
        let entries = self.entries();
        self.record(entries).await.unwrap_or_else(|why| panic!("{step}: {why:?}"));
        // An angle near the edge of its window may be told inside at one reading and not at the next: the supervisor decides.
        if step == "final.angles" && self.step().id == step {
            self.ask("MT", Wish::Waive { step, reason: setter::WAIVER.into() }).await.unwrap();
        }
    }

    /// Does step after step until this one is at hand.
    pub async fn lead_to(&mut self, step: &str) {
        for _ in 0..400 {
            if self.step().id == step {
                return;
            }
            self.do_step().await;
        }
        let gate = self.step().gate.as_ref().map(|gate| gate.says.clone());
        panic!("the job never comes to {step}; it stands at {}: {gate:?}", self.step().id);
    }

    /// Number of the open job.
    pub fn job(&self) -> i64 {
        self.view.job.as_ref().unwrap().id
    }

    /// How many entries the file holds, of all jobs: read past the desk.
    pub async fn recorded(&self) -> u64 {
        let book = Book::open_read_only(&self.book).await.unwrap();
        book.jobs().await.unwrap().iter().map(|job| job.len).sum()
    }

    /// Body of the newest entry of the open job, read past the desk.
    pub async fn newest(&self) -> serde_json::Value {
        let entries = Book::open_read_only(&self.book).await.unwrap().entries(JobId(self.job())).await.unwrap();
        serde_json::from_str(&entries.last().unwrap().body).unwrap()
    }

    /// Body of an entry of the open job, by its number, read past the desk.
    pub async fn body_of(&self, number: usize) -> serde_json::Value {
        let entries = Book::open_read_only(&self.book).await.unwrap().entries(JobId(self.job())).await.unwrap();
        serde_json::from_str(&entries[number - 1].body).unwrap()
    }

    /// What the window at the car shows now; that time runs on until the PIN is asked for again is no change.
    async fn shown(&self) -> StepView {
        let mut view = self.desk.step_view().await;
        view.staff.asks_again_s = None;
        view
    }

    /// Asks for something that must be refused with this code: nothing is recorded, the view stays as it is, and what
    /// is said holds these words.
    pub async fn refused(&mut self, by: &str, wish: Wish, code: &str, says: &[&str]) -> Refused {
        let before = (self.recorded().await, self.shown().await);
        let told = format!("{wish:?} by {by:?}");
        let Err(refused) = self.ask(by, wish).await else { panic!("{told}: should be refused as {code}") };
        assert_refusal(&refused, &told, code, says);
        let after = (self.recorded().await, self.shown().await);
        assert_eq!(before, after, "{told}: nothing is recorded and the windows stay as they are");
        refused
    }
}

/// A refusal has this code and holds these words.
pub fn assert_refusal(refused: &Refused, told: &str, code: &str, says: &[&str]) {
    assert_eq!(refused.code, code, "{told}: {}", refused.says);
    for words in says {
        assert!(refused.says.contains(words), "{told}: {words:?} is said: {}", refused.says);
    }
}

pub fn sign_on(initials: &str, name: &str, rank: &str) -> Wish {
    Wish::SignOn { initials: initials.into(), name: name.into(), rank: rank.into() }
}

pub fn entry(text: &str, unit: Option<&str>) -> Entry {
    Entry { text: text.into(), unit: unit.map(Into::into) }
}
