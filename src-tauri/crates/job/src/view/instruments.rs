//! The instruments of the book, at the desk.

use super::review::JobRow;
use crate::handover::Labelled;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// Every instrument that was written down at some job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct InstrumentsView {
    /// What to do first when there is none.
    pub says: Option<String>,
    /// The instruments: overdue ones first, then those whose due day is unknown, then by the day when they are due.
    pub instruments: Vec<InstrumentView>,
}

/// One instrument: what the jobs wrote down of it. What no job asks for is said to be not recorded.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct InstrumentView {
    /// Kind and serial together, to tell them apart.
    pub id: String,
    /// What it is.
    pub name: String,
    /// What it is called by, as written at intake.
    pub serial: String,
    /// How well it is stated to measure, as written at its newest job.
    pub stated: Vec<Labelled>,
    /// When it was calibrated.
    pub calibrated: String,
    /// Whether its calibration is due.
    pub due: DueCode,
    /// The same in words, with the day.
    pub due_says: String,
    /// Checks made with it, a line for each job.
    pub checks: Vec<String>,
    /// The jobs in which it was used, the newest first.
    pub jobs: Vec<JobRow>,
    /// How many they are, in words.
    pub jobs_title: String,
}

/// Whether a calibration is due.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum DueCode {
    /// Its day is past.
    Overdue,
    /// No day is written, or not as one.
    Unknown,
    /// Its day is today or later.
    InDate,
}
