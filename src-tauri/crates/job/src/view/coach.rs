//! What the coach says of a practice job.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// What was wrong at a practice job, where it showed, and how the job was done.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct CoachView {
    /// What there was, in a sentence.
    pub says: String,
    /// '85 of 100'.
    pub points: String,
    /// What was not as it was taken to be.
    pub wrong: Vec<CoachRow>,
    /// What was written down other than it was shown.
    pub slips: Vec<CoachRow>,
    /// What counted, each with what it took.
    pub score: Vec<ScoreRow>,
}

/// One thing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct CoachRow {
    /// What it was.
    pub title: String,
    /// When it could have been seen, on which figure, and what was made of it.
    pub text: Vec<String>,
    /// What became of it, in one or two words.
    pub outcome: String,
}

/// One thing that counted.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ScoreRow {
    /// What.
    pub name: String,
    /// How much of it.
    pub text: String,
    /// What it took of the points; empty where it takes nothing.
    pub taken: String,
}
