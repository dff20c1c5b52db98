//! The desk: owns the book and the open job, and is the one way in for every window.
//!
//! - `queries`: what is asked without anything being recorded. `speaking`: what is said aloud, and what is missing for it.
//! - `hearing`: what may be answered aloud.
//! - `evidence`: what the gates find and a person relies on. `cars`: the book by its cars.
//!
//! One lock orders everything: an ask is answered after its entry is on the disk, and views are made of what is there.

mod cars;
mod evidence;
mod hearing;
mod keeping;
mod listing;
mod people;
mod procedure;
mod queries;
mod scenario;
mod speaking;
mod staff;
mod writing;

pub use speaking::{Lack, Missing, ToSay};

use crate::{
    ask::{Ask, Entry, JobFilter, Refused, Wish},
    body::{Body, Happened, VERSION, What},
    clock::Clock,
    fault,
    handover::{Figures, Handover},
    log::{Log, LogError},
    preferences::{Preferences, Units},
    refuse::{denied as denied_by_book, refused},
    show,
    tell::Tell,
    view::{BayView, JobHead, ReviewView, Screen, StartView, StepView},
    whole,
};
use bayhand_jobbook::{Book, BookError, JobId};
use bayhand_procedure::{Entered, Event, Intent, Next, Rank, decide, next};
use bayhand_words::{Language, Words};
use chrono::{DateTime, FixedOffset};
use std::{
    collections::BTreeMap,
    path::{Path, PathBuf},
    sync::{Arc, PoisonError, RwLock},
};
use thiserror::Error;
use tokio::sync::{Mutex, watch};

/// Why the desk cannot open: what happened, what it means, what to do.
#[derive(Debug, Error)]
pub enum DeskError {
    /// The book cannot be opened.
    #[error(transparent)]
    Book(#[from] BookError),
}

impl DeskError {
    /// What happened, what it means and what to do, in this language; in English where there are no words of it.
    pub fn says(&self, language: &str) -> String {
        let words = Words::of(Language::asked_for(language).unwrap_or_default());
        let tell = Tell { words: &words, units: Units::default() };
        let DeskError::Book(error) = self;
        // Opening asks no list of people.
        fault::book(error, &tell).unwrap_or_else(|| error.to_string())
    }
}

/// The book and the open job.
pub struct Desk {
    book: Book,
    clock: Arc<dyn Clock>,
    /// The words of every language.
    languages: BTreeMap<Language, Words>,
    preferences: RwLock<Preferences>,
    open: Mutex<Option<Log>>,
    changed: watch::Sender<u64>,
    at_car: people::AtCar,
    /// The procedure that was chosen for the next job; none: the shipped one.
    procedure: std::sync::Mutex<Option<procedure::Chosen>>,
    copies: keeping::Copies,
    speaking: speaking::Speaking,
    heed: hearing::Heed,
    /// Where a workshop keeps scenarios of its own.
    scenario_folder: Option<PathBuf>,
}

impl Desk {
    /// Opens the book, making a new one when there is none. No job is taken up.
    ///
    /// # Errors
    /// The book is locked, read-only, newer than the program, or not a book.
    pub async fn open(book: &Path, clock: Arc<dyn Clock>) -> Result<Desk, DeskError> {
        let scenario_folder = book.parent().map(|folder| folder.join("scenarios"));
        let book = Book::open_or_create(book).await?;
        let (changed, _) = watch::channel(0);
        let languages = Language::ALL.into_iter().map(|language| (language, Words::of(language))).collect();
        Ok(Desk {
            book,
            clock,
            languages,
            preferences: RwLock::default(),
            open: Mutex::new(None),
            changed,
            at_car: Default::default(),
            procedure: Default::default(),
            copies: Default::default(),
            speaking: Default::default(),
            heed: Default::default(),
            scenario_folder,
        })
    }

    /// Counts up after each change that windows may want to see.
    pub fn watch(&self) -> watch::Receiver<u64> {
        self.changed.subscribe()
    }

    /// The labels of the windows.
    pub fn labels(&self) -> BTreeMap<String, String> {
        self.tell().words.labels()
    }

    /// Number and head hash of the open job, and of how many entries; none when none is open.
    pub async fn head(&self) -> Option<(i64, u64, String)> {
        self.open.lock().await.as_ref().map(|log| (log.id, log.revision(), log.head.clone()))
    }

    /// When the newest entry of the open job was written; none when none is open.
    pub async fn last_entry_at(&self) -> Option<DateTime<FixedOffset>> {
        let open = self.open.lock().await;
        open.as_ref().map(|log| log.lines.last().map_or(log.opened_at, |line| line.at))
    }

    /// Closes the book and gives its lock back. A program that is about to end waits for it: dropping the desk closes
    /// too, but the program's end would cut that short.
    ///
    /// # Errors
    /// The storage fails. Everything recorded is safe all the same.
    pub async fn close(self) -> Result<(), DeskError> {
        Ok(self.book.close().await?)
    }

    /// Words for everybody: in the workshop's units.
    fn tell(&self) -> Tell<'_> {
        self.tell_to("")
    }

    /// Words for one person.
    fn tell_to(&self, initials: &str) -> Tell<'_> {
        let preferences = self.preferences.read().unwrap_or_else(PoisonError::into_inner);
        let language = preferences.in_language();
        // Every language has its words; `open` saw to it.
        let words = &self.languages[&language];
        Tell { words, units: preferences.units_of(initials) }
    }

    /// The language that is shown and said.
    fn in_language(&self) -> Language {
        self.preferences.read().unwrap_or_else(PoisonError::into_inner).in_language()
    }

    /// What the window at the car shows, in the workshop's units.
    pub async fn step_view(&self) -> StepView {
        self.step_view_for("").await
    }

    /// What the window at the car shows to this person.
    pub async fn step_view_for(&self, by: &str) -> StepView {
        let open = self.open.lock().await;
        self.step_view_of(open.as_ref(), by).await
    }

    async fn step_view_of(&self, log: Option<&Log>, by: &str) -> StepView {
        let tell = self.tell_to(by);
        let Some(log) = log else {
            let mut open_jobs = self.job_rows().await;
            open_jobs.retain(|row| matches!(row.state.as_str(), "working" | "held" | "stopping" | "for-review"));
            let staff = self.staff().await;
            let says = match (staff.authenticates, open_jobs.is_empty()) {
                (false, _) => "start-first",
                (true, true) => "start-empty",
                (true, false) => "start",
            };
            let screen = Screen::Start(StartView {
                says: tell.text(says, &[]),
                open_jobs,
                scenarios: self.scenario_views().await,
                procedure: self.procedure_view(),
            });
            let notice = self.notice(&tell);
            return StepView { revision: 0, job: None, path: Vec::new(), people: Vec::new(), staff, notice, screen };
        };
        StepView {
            staff: self.staff().await,
            revision: log.revision(),
            job: Some(JobHead { id: log.id, title: show::title(log, &tell), practice: log.opened.practice.is_some() }),
            path: show::path(log, &tell),
            people: show::people(log, &tell),
            notice: self.notice(&tell),
            screen: self.screen(log, &tell),
        }
    }

    fn screen(&self, log: &Log, tell: &Tell) -> Screen {
        if log.state.people().is_empty() {
            return Screen::SignOn { says: tell.text("sign-on-first", &[]) };
        }
        if log.state.held {
            return Screen::Held { says: held_says(log, tell) };
        }
        match show::step_body(log, tell) {
            Some(body) => Screen::Step(Box::new(body)),
            None => show::ended_screen(log, tell),
        }
    }

    /// What the bay sees.
    pub async fn bay_view(&self) -> BayView {
        let open = self.open.lock().await;
        let board = self.preferences.read().unwrap_or_else(PoisonError::into_inner).board.clone();
        show::bay_view(open.as_ref(), &board, &self.tell())
    }

    /// What the desk sees: all jobs, and one of them (the named one, or the open one).
    ///
    /// # Errors
    /// There is no such job, or it cannot be read.
    pub async fn review_view(&self, job: Option<i64>) -> Result<ReviewView, Refused> {
        self.review_view_with(job, &JobFilter::default()).await
    }

    /// The same with the jobs that the desk wants to see.
    ///
    /// # Errors
    /// There is no such job, or it cannot be read.
    pub async fn review_view_with(&self, job: Option<i64>, filter: &JobFilter) -> Result<ReviewView, Refused> {
        let open = self.open.lock().await;
        let (jobs, cars, persons) = self.chosen_jobs(filter).await;
        Ok(ReviewView { jobs, cars, persons, ..self.review_view_of(open.as_ref(), job).await? })
    }

    async fn review_view_of(&self, open: Option<&Log>, job: Option<i64>) -> Result<ReviewView, Refused> {
        let tell = self.tell();
        let (jobs, cars, persons) = self.chosen_jobs(&JobFilter::default()).await;
        let read;
        let log = match (job, open) {
            (Some(id), Some(log)) if log.id == id => Some(log),
            (None, open) => open,
            (Some(id), _) => {
                read = self.read(id).await?;
                Some(&read)
            }
        };
        Ok(ReviewView {
            revision: log.map_or(0, Log::revision),
            says: jobs.is_empty().then(|| tell.text("review-empty", &[])),
            jobs,
            cars,
            persons,
            staff: self.staff().await,
            job: log.map(|log| show::review_job(log, &tell)),
        })
    }

    async fn read(&self, id: i64) -> Result<Log, Refused> {
        let entries = self.book.entries(JobId(id)).await.map_err(|e| self.by_book(&e))?;
        Log::read(id, &entries).map_err(|why| self.unreadable(&why))
    }

    fn unreadable(&self, why: &LogError) -> Refused {
        let code = if matches!(why, LogError::Newer { .. }) { "newer" } else { "unreadable" };
        Refused {
            code: code.into(),
            field: None,
            says: self.tell().text("refused-unreadable", &[("why", fault::log(why, &self.tell()))]),
        }
    }

    /// Carries out what the window at the car asks, except the seal.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn act(&self, ask: Ask) -> Result<StepView, Refused> {
        if ask.wish == Wish::Seal {
            return Err(self.refuse("seal-in-review"));
        }
        let mut open = self.open.lock().await;
        self.may_act(open.as_ref(), &ask).await?;
        match &ask.wish {
            Wish::Amend { .. } => self.amend(open.as_mut(), &ask).await?,
            Wish::Begin { car, practice } => self.begin(&mut open, car, practice.as_ref()).await?,
            Wish::TakeUp { job } => {
                self.none_open(open.as_ref())?;
                let mut log = self.read(*job).await?;
                self.sign_on_at_car(&mut log).await?;
                *open = Some(log);
            }
            Wish::SetAside => {
                open.take().ok_or_else(|| self.refuse("no-job"))?;
            }
            _ => self.happen(open.as_mut(), &ask).await?,
        }
        self.changed.send_modify(|n| *n += 1);
        Ok(self.step_view_of(open.as_ref(), &ask.by).await)
    }

    /// Carries out what the desk asks: to seal a job, or to send it back to a step.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn review_act(&self, job: i64, ask: Ask) -> Result<ReviewView, Refused> {
        if !matches!(ask.wish, Wish::Seal | Wish::Reopen { .. } | Wish::SignOn { .. }) {
            return Err(self.refuse("review-only"));
        }
        if self.people().await?.authenticates {
            return Err(self.refuse(if ask.wish == Wish::Seal { "with-passphrase" } else { "with-pin" }));
        }
        let mut open = self.open.lock().await;
        if open.as_ref().is_some_and(|log| log.id == job) {
            self.happen(open.as_mut(), &ask).await?;
        } else {
            let mut log = self.read(job).await?;
            self.happen(Some(&mut log), &ask).await?;
        }
        self.changed.send_modify(|n| *n += 1);
        self.review_view_of(open.as_ref(), Some(job)).await
    }

    /// Checks the whole book, and says what was found.
    ///
    /// # Errors
    /// The first bad entry.
    pub async fn verify(&self, job: i64) -> Result<String, Refused> {
        let _ordered = self.open.lock().await;
        let verified = whole::verify(&self.book).await.map_err(|why| match why {
            whole::Unsound::Book(error) => self.by_book(&error),
            other => {
                let says = fault::unsound(&other, &self.tell()).unwrap_or_default();
                Refused { code: "unsound".into(), field: None, says }
            }
        })?;
        let entries = self.read(job).await?.revision();
        let args = [
            ("jobs", verified.jobs.to_string()),
            ("entries", verified.entries.to_string()),
            ("here", entries.to_string()),
            ("seals", verified.seals.to_string()),
        ];
        Ok(self.tell().text("verified", &args))
    }

    /// The contents of the sheet of a sealed job.
    ///
    /// # Errors
    /// The job is not sealed or cannot be read.
    pub async fn handover(&self, job: i64) -> Result<Handover, Refused> {
        let _ordered = self.open.lock().await;
        let log = self.read(job).await?;
        let seal = self.book.seal_of(JobId(job)).await.map_err(|e| self.by_book(&e))?;
        show::handover(&log, seal, &self.tell()).ok_or_else(|| self.refuse("no-sheet"))
    }

    /// The figures of a sealed job as numbers, for other programs.
    ///
    /// # Errors
    /// As [`Desk::handover`].
    pub async fn figures(&self, job: i64) -> Result<Figures, Refused> {
        let _ordered = self.open.lock().await;
        let log = self.read(job).await?;
        let seal = self.book.seal_of(JobId(job)).await.map_err(|e| self.by_book(&e))?;
        show::numbers(&log, seal.map(|(code, _)| code)).ok_or_else(|| self.refuse("no-sheet"))
    }

    fn refuse(&self, code: &str) -> Refused {
        Refused { code: code.into(), field: None, says: self.tell().text(&format!("refused-{code}"), &[]) }
    }

    /// What the book answered, in words.
    fn by_book(&self, error: &BookError) -> Refused {
        match error {
            BookError::Denied(denied) => denied_by_book(denied, &self.tell()),
            other => {
                let says = fault::book(other, &self.tell()).unwrap_or_default();
                Refused { code: other.code().to_owned(), field: None, says }
            }
        }
    }

    fn none_open(&self, open: Option<&Log>) -> Result<(), Refused> {
        if open.is_some() { Err(self.refuse("job-open")) } else { Ok(()) }
    }

    /// Something is asked of a job: decided, appended and applied, or refused.
    async fn happen(&self, log: Option<&mut Log>, ask: &Ask) -> Result<(), Refused> {
        let log = log.ok_or_else(|| self.refuse("no-job"))?;
        if ask.revision != log.revision() {
            return Err(self.refuse("stale"));
        }
        let tell = self.tell_to(&ask.by);
        let intent = self.intent(ask)?;
        let at_hand = match next(&log.document, &log.state) {
            Next::Step { id, .. } => id,
            _ => String::new(),
        };
        let (evidence, seen) = self.evidence(log, &intent)?;
        let event = decide(&log.document, &log.state, &intent, &evidence).map_err(|r| refused(&r, &at_hand, &tell))?;
        let name = match &ask.wish {
            Wish::SignOn { name, .. } => Some(name.trim().to_owned()),
            _ => None,
        };
        let seen = if matches!(event, Event::Done { .. } | Event::Tried { .. }) { seen } else { None };
        let done = matches!(event, Event::Done { .. } | Event::Waived { .. });
        self.write(log, vec![Happened { event, name, proof: None, seen }], None).await?;
        if done {
            self.heed.forget();
        }
        Ok(())
    }

    fn intent(&self, ask: &Ask) -> Result<Intent, Refused> {
        let by = ask.by.clone();
        Ok(match ask.wish.clone() {
            Wish::SignOn { initials, name, rank } => {
                if name.trim().is_empty() {
                    return Err(Refused { field: Some("name".into()), ..self.refuse("name") });
                }
                let rank = match rank.as_str() {
                    "trainee" => Rank::Trainee,
                    "technician" => Rank::Technician,
                    "supervisor" => Rank::Supervisor,
                    _ => return Err(Refused { field: Some("rank".into()), ..self.refuse("rank-unknown") }),
                };
                Intent::SignOn { person: initials.trim().to_uppercase(), rank }
            }
            Wish::Acknowledge { step, hazard } => Intent::Acknowledge { step, hazard, by },
            Wish::Record { step, entries } => Intent::Record { step, by, entries: entered(entries) },
            Wish::Waive { step, reason } => Intent::Waive { step, by, reason },
            Wish::Reopen { step, reason } => Intent::Reopen { step, by, reason },
            Wish::Hold { reason } => Intent::Hold { by, reason },
            Wish::Resume => Intent::Resume { by },
            Wish::Stop { reason } => Intent::Stop { by, reason },
            Wish::Seal => Intent::Seal { by },
            Wish::Begin { .. } | Wish::TakeUp { .. } | Wish::SetAside | Wish::Amend { .. } => {
                return Err(self.refuse("no-job"));
            }
        })
    }
}

/// Entries as they are handed on: without the blanks around them.
fn entered(entries: BTreeMap<String, Entry>) -> BTreeMap<String, Entered> {
    let trimmed = |e: Entry| Entered { text: e.text.trim().to_owned(), unit: e.unit };
    entries.into_iter().map(|(key, e)| (key, trimmed(e))).collect()
}

fn held_says(log: &Log, tell: &Tell) -> String {
    let held = log.lines.iter().rev().find_map(|line| match &line.happened.event {
        Event::Held { by, reason } => Some((line.at, by.clone(), reason.clone())),
        _ => None,
    });
    let Some((at, by, reason)) = held else { return String::new() };
    tell.text("held", &[("at", show::clock(&at)), ("by", show::person(log, &by, tell)), ("reason", reason)])
}

fn body_text(what: What) -> Result<String, Refused> {
    let body = Body { v: VERSION, program: env!("CARGO_PKG_VERSION").to_owned(), what };
    // Maps with text keys and plain values always have a JSON form; a fault here is one of the program.
    serde_json::to_string(&body).map_err(|e| Refused { code: "program-fault".into(), field: None, says: e.to_string() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use bayhand_jobbook::Secret;

    /// A window's runtime moves an answer from thread to thread while it is made.
    #[allow(dead_code)] // It has only to compile.
    fn answers_can_be_sent(desk: &'static Desk, ask: Ask) {
        fn sent<T: Send>(_: T) {}
        sent(desk.step_view());
        sent(desk.preview("", 0.5));
        sent(desk.read_back("", "", BTreeMap::new()));
        sent(desk.bay_view());
        sent(desk.review_view(None));
        sent(desk.act(ask.clone()));
        sent(desk.review_act(1, ask));
        sent(desk.verify(1));
        sent(desk.handover(1));
        sent(desk.people());
        sent(desk.hand_over("", Secret::new("")));
        sent(desk.seal(1, 1, "", Secret::new("")));
        sent(desk.imported());
    }
}
