//! One job's record, read back: its events, the state that they make, and the values that were used.

use crate::body::{Amended, Body, Happened, Opened, Seen, VERSION, What};
use bayhand_jobbook::Entry;
use bayhand_procedure::{Document, Entered, Event, Fault, SHIPPED, State, Status, Wrong, apply, load};
use bayhand_vehicle::{Corners, Place};
use chrono::{DateTime, FixedOffset};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Arc, OnceLock};
use thiserror::Error;

/// One job as its entries tell it.
#[derive(Clone, Debug)]
pub struct Log {
    /// Number in the book.
    pub id: i64,
    /// How it was opened.
    pub opened: Opened,
    /// When.
    pub opened_at: DateTime<FixedOffset>,
    /// The procedure that it was begun with.
    pub document: Arc<Document>,
    /// Everything after the opening.
    pub lines: Vec<Line>,
    /// What the events make.
    pub state: State,
    /// Hash of the last entry, hex.
    pub head: String,
    /// Who signed on, by initials: the name.
    pub names: BTreeMap<String, String>,
    /// Who of them showed, when they last signed on, that they are who they say.
    pub proved: BTreeSet<String>,
    /// Corrections, in order.
    pub amendments: Vec<Amendment>,
    /// The entries of what was corrected, as they are to be read, by number.
    corrected: BTreeMap<u64, BTreeMap<String, Entered>>,
}

/// A correction, with its place.
#[derive(Clone, Debug)]
pub struct Amendment {
    /// Place in the chain.
    pub number: u64,
    /// When.
    pub at: DateTime<FixedOffset>,
    /// What was corrected.
    pub amended: Amended,
}

/// One entry after the opening.
#[derive(Clone, Debug)]
pub struct Line {
    /// Place in the chain.
    pub number: u64,
    /// When.
    pub at: DateTime<FixedOffset>,
    /// What.
    pub happened: Happened,
}

/// Why a job cannot be read.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum LogError {
    /// An entry of a later program.
    #[error("entry {number} was written in form {v} by program {program}; this program reads form {VERSION}")]
    Newer {
        /// Place in the chain.
        number: u64,
        /// Its form.
        v: u32,
        /// The program that wrote it.
        program: String,
    },
    /// An entry that this program does not understand.
    #[error("entry {number} cannot be read: {why}")]
    Entry {
        /// Place in the chain.
        number: u64,
        /// Why.
        why: String,
    },
    /// The procedure that the job was begun with has faults.
    #[error("the job's procedure has a fault: {0}")]
    Document(Fault),
}

/// A step as it was recorded and accepted: its gates held, or were waived.
#[derive(Clone, Copy, Debug)]
pub struct Recording<'a> {
    /// Place in the chain of the entry that carries the values.
    pub number: u64,
    /// When the values were recorded.
    pub at: DateTime<FixedOffset>,
    /// The step.
    pub step: &'a str,
    /// Who.
    pub by: &'a str,
    /// As entered.
    pub entries: &'a BTreeMap<String, Entered>,
    /// What was seen.
    pub seen: Option<&'a Seen>,
    /// True when a gate did not hold and somebody let it pass with a reason.
    pub let_pass: bool,
}

impl Recording<'_> {
    /// Values used under a key, in base units.
    pub fn looks(&self, key: &str) -> Vec<f64> {
        let texts = self.seen.and_then(|s| s.used.get(key));
        texts.map_or_else(Vec::new, |texts| texts.iter().filter_map(|t| t.parse().ok()).collect())
    }

    /// The first value used at each corner; none when one is missing.
    pub fn corners(&self, input: &str) -> Option<Corners<f64>> {
        let [fl, fr, rl, rr] = Place::ALL.map(|p| self.looks(&format!("{input}.{}", p.code())).first().copied());
        Some(Corners { fl: fl?, fr: fr?, rl: rl?, rr: rr? })
    }
}

/// The version alone: read first, so that a later form is told from a damaged one.
#[derive(serde::Deserialize)]
struct Version {
    v: u32,
    #[serde(default)]
    program: String,
}

impl Log {
    /// Reads a job back.
    ///
    /// # Errors
    /// The first entry that cannot be read.
    pub fn read(id: i64, entries: &[Entry]) -> Result<Log, LogError> {
        let mut bodies = entries.iter().map(|e| parse(e).map(|(at, body)| (e, at, body)));
        let missing = || LogError::Entry { number: 1, why: "the job has no opening entry".into() };
        let (first, opened_at, body) = bodies.next().ok_or_else(missing)??;
        let What::Opened(opened) = body.what else { return Err(missing()) };
        let mut log = Log {
            id,
            document: document(&opened)?,
            opened: *opened,
            opened_at,
            lines: Vec::new(),
            state: State::default(),
            head: first.hash.clone(),
            names: BTreeMap::new(),
            proved: BTreeSet::new(),
            amendments: Vec::new(),
            corrected: BTreeMap::new(),
        };
        for item in bodies {
            let (entry, at, body) = item?;
            let number = entry.number;
            match body.what {
                What::Happened(happened) => log.push(Line { number, at, happened: *happened }, entry.hash.clone()),
                What::Amended(amended) => {
                    log.amend(Amendment { number, at, amended: *amended }, entry.hash.clone());
                }
                What::Opened(_) => return Err(LogError::Entry { number, why: "a job is opened once".into() }),
            }
        }
        Ok(log)
    }

    /// The same job as it was opened, with nothing done yet: what is pushed onto it again goes through the job anew.
    /// Corrections that were made later count from the beginning.
    pub fn at_its_opening(&self) -> Log {
        Log {
            opened: self.opened.clone(),
            document: self.document.clone(),
            lines: Vec::new(),
            state: State::default(),
            head: String::new(),
            names: BTreeMap::new(),
            proved: BTreeSet::new(),
            amendments: Vec::new(),
            corrected: self.corrected.clone(),
            ..*self
        }
    }

    /// Adds an entry that was appended to the book.
    pub fn push(&mut self, line: Line, hash: String) {
        self.state = apply(&self.document, std::mem::take(&mut self.state), &line.happened.event);
        if let Event::SignedOn { person, .. } = &line.happened.event {
            let name = line.happened.name.clone().unwrap_or_default();
            self.names.insert(person.clone(), name);
            if line.happened.proof.is_some() {
                self.proved.insert(person.clone());
            } else {
                self.proved.remove(person);
            }
        }
        self.lines.push(line);
        self.head = hash;
    }

    /// Adds a correction that was appended to the book.
    pub fn amend(&mut self, amendment: Amendment, hash: String) {
        let Amended { of, key, to, .. } = &amendment.amended;
        if let Some(mut entries) = self.entered_at(*of).cloned() {
            if let Some(entered) = entries.get_mut(key) {
                entered.text.clone_from(to);
            }
            self.corrected.insert(*of, entries);
        }
        self.amendments.push(amendment);
        self.head = hash;
    }

    /// An entry after the opening, by its number.
    pub fn line(&self, number: u64) -> Option<&Line> {
        let at = self.lines.binary_search_by_key(&number, |line| line.number).ok()?;
        self.lines.get(at)
    }

    /// What was entered at a line, as corrected later.
    pub fn entered_at(&self, number: u64) -> Option<&BTreeMap<String, Entered>> {
        let as_entered = || Some(recorded(&self.line(number)?.happened.event)?.1);
        self.corrected.get(&number).or_else(as_entered)
    }

    /// When the last entry was written.
    pub fn at(&self) -> DateTime<FixedOffset> {
        let line = self.lines.last().map_or(self.opened_at, |line| line.at);
        let amended = self.amendments.last().filter(|a| self.lines.last().is_none_or(|line| a.number > line.number));
        amended.map_or(line, |amendment| amendment.at)
    }

    /// True when it was sealed or stopped.
    pub fn ended(&self) -> bool {
        matches!(self.state.status, Status::Sealed | Status::Stopped)
    }

    /// Number of entries, the opening included: the revision that windows name.
    pub fn revision(&self) -> u64 {
        (self.lines.len() + self.amendments.len()) as u64 + 1
    }

    /// Recorded and accepted steps, in order.
    pub fn recordings(&self) -> Vec<Recording<'_>> {
        let mut accepted = Vec::new();
        let mut tried: BTreeMap<&str, Recording> = BTreeMap::new();
        for line in &self.lines {
            let seen = line.happened.seen.as_ref();
            match &line.happened.event {
                Event::Done { step, by, entries, .. } => {
                    let entries = self.corrected.get(&line.number).unwrap_or(entries);
                    let (number, at, let_pass) = (line.number, line.at, false);
                    accepted.push(Recording { number, at, step, by, entries, seen, let_pass });
                }
                Event::Tried { step, by, entries, .. } => {
                    let entries = self.corrected.get(&line.number).unwrap_or(entries);
                    let (number, at, let_pass) = (line.number, line.at, true);
                    tried.insert(step, Recording { number, at, step, by, entries, seen, let_pass });
                }
                Event::Waived { step, .. } => accepted.extend(tried.remove(step.as_str())),
                _ => {}
            }
        }
        accepted
    }

    /// When the step at hand came up: the time of the last recording, or of the opening.
    pub fn step_began(&self) -> DateTime<FixedOffset> {
        let recorded = |line: &&Line| matches!(line.happened.event, Event::Done { .. } | Event::Waived { .. });
        self.lines.iter().rev().find(recorded).map_or(self.opened_at, |line| line.at)
    }
}

/// Step and entries of an event that records.
pub fn recorded(event: &Event) -> Option<(&str, &BTreeMap<String, Entered>)> {
    match event {
        Event::Done { step, entries, .. } | Event::Tried { step, entries, .. } => Some((step, entries)),
        _ => None,
    }
}

/// The procedure that a job was begun with.
fn document(opened: &Opened) -> Result<Arc<Document>, LogError> {
    if opened.document == SHIPPED { shipped() } else { read(&opened.document) }
}

/// The procedure that ships with the program, read once.
///
/// # Errors
/// It has a fault, which the tests would have found.
pub fn shipped() -> Result<Arc<Document>, LogError> {
    static READ: OnceLock<Result<Arc<Document>, LogError>> = OnceLock::new();
    READ.get_or_init(|| read(SHIPPED)).clone()
}

fn read(text: &str) -> Result<Arc<Document>, LogError> {
    load(text).map(Arc::new).map_err(|faults| {
        let unknown = Fault { at: String::new(), what: Wrong::Form("unknown".into()) };
        LogError::Document(faults.into_iter().next().unwrap_or(unknown))
    })
}

fn parse(entry: &Entry) -> Result<(DateTime<FixedOffset>, Body), LogError> {
    let fault = |why: String| LogError::Entry { number: entry.number, why };
    let version: Version = serde_json::from_str(&entry.body).map_err(|e| fault(e.to_string()))?;
    if version.v != VERSION {
        return Err(LogError::Newer { number: entry.number, v: version.v, program: version.program });
    }
    let body = serde_json::from_str(&entry.body).map_err(|e| fault(e.to_string()))?;
    let at = DateTime::parse_from_rfc3339(&entry.at).map_err(|e| fault(e.to_string()))?;
    Ok((at, body))
}
