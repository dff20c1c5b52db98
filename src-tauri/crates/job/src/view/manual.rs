//! The manual: the whole procedure to be read, in the words that the steps have.

use super::SignalCode;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// The procedure from its first stage to its last.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ManualView {
    /// Which procedure it is, and what the manual defers to.
    pub says: String,
    /// The stages in the order of the document.
    pub stages: Vec<ManualStage>,
}

/// A stage.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ManualStage {
    /// Its id.
    pub id: String,
    /// What it is called.
    pub title: String,
    /// When it comes, where it is not on the main path: 'When a step needs it'.
    pub when: Option<String>,
    /// Its steps.
    pub steps: Vec<ManualStep>,
}

/// A step.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ManualStep {
    /// Its id.
    pub id: String,
    /// Its short name.
    pub short: String,
    /// The one instruction.
    pub instruction: String,
    /// How and why, by paragraphs.
    pub detail: Vec<String>,
    /// Hazards that may be met.
    pub hazards: Vec<ManualHazard>,
    /// What is entered.
    pub asks: Vec<String>,
    /// What must hold before the job goes on.
    pub gates: Vec<String>,
}

/// A hazard.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ManualHazard {
    /// The signal word's code.
    pub signal: SignalCode,
    /// The signal word and the line.
    pub line: String,
    /// What may happen, and what to do.
    pub text: String,
}
