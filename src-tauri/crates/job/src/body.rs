//! What an entry of the record holds: the event, and what the person saw and relied on.
//!
//! Decimals are strings. Bodies carry a version; an unknown one is 'newer than the program'.

use bayhand_planner::Knowledge;
use bayhand_practice::Fault;
use bayhand_procedure::{Event, Found};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Version of the bodies that this program writes.
pub const VERSION: u32 = 1;

/// The body of one entry.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Body {
    /// Version of this form.
    pub v: u32,
    /// Version of the program that wrote it.
    pub program: String,
    /// What happened.
    pub what: What,
}

/// What happened.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum What {
    /// The job was opened: the first entry of every job.
    Opened(Box<Opened>),
    /// Something happened at the job.
    Happened(Box<Happened>),
    /// A text that was recorded was corrected. What it said first stays where it is.
    Amended(Box<Amended>),
}

/// How somebody showed that they are who they say.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Proof {
    /// By their PIN at the car.
    Pin,
    /// By the passphrase of their key.
    Passphrase,
}

/// A correction: both texts stay visible (ISO/IEC 17025:2017, 7.5.2).
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Amended {
    /// The entry that is corrected.
    pub of: u64,
    /// Key of the text in it.
    pub key: String,
    /// What it said.
    pub from: String,
    /// What it should have said.
    pub to: String,
    /// Who corrects it.
    pub by: String,
    /// Why.
    pub reason: String,
}

/// How a job was opened.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Opened {
    /// The car's name.
    pub car: String,
    /// The simulated car; absent at a real one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub practice: Option<Practice>,
    /// What an earlier job on this car taught about its springs and ratios.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub known: Option<Knowledge>,
    /// SHA-256 of the procedure document's text, hex.
    pub document_hash: String,
    /// The document's text: a job keeps the procedure that it was begun with.
    pub document: String,
    /// Who signed for it; absent for one that is proved.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub signed_for: Option<SignedFor>,
}

/// A supervisor's word, given by their passphrase, that a job may begin with a procedure that is not proved to be safe.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SignedFor {
    /// Their initials.
    pub by: String,
    /// Their name.
    pub name: String,
    /// Why.
    pub reason: String,
    /// What the proof found and they were shown, in words.
    pub found: Vec<String>,
}

/// The simulated car of a practice job. Nothing of its faults is shown before the job has ended.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Practice {
    /// Seed of the car.
    pub seed: u64,
    /// What is wrong with it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub faults: Vec<Fault>,
}

/// An event with what was seen.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Happened {
    /// The event.
    pub event: Event,
    /// The name that belongs to initials, when somebody signs on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// How they showed that they are who they say, when somebody signs on; absent: by name alone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub proof: Option<Proof>,
    /// What the person saw and relied on, when a step was recorded.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seen: Option<Seen>,
}

/// What a person saw and relied on; replay never computes it anew.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Seen {
    /// Values used, by key, in base units (kg, mm, bar, deg, turn, N/mm, %), decimal text; one for each look.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub used: BTreeMap<String, Vec<String>>,
    /// What was heard of entries that were spoken, by key.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub heard: BTreeMap<String, HeardSeen>,
    /// What the gates said, in their order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub gates: Vec<GateSeen>,
    /// The judgement that was shown.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub judged: Option<JudgedSeen>,
    /// The angles that were shown, with their uncertainty, and what was planned for them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub angles: Option<AnglesSeen>,
    /// The plan that was accepted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plan: Option<PlanSeen>,
}

/// What was heard of an entry.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HeardSeen {
    /// The words.
    pub words: String,
    /// How sure that was, 0 to 1, decimal text.
    pub score: String,
}

/// What a gate said.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GateSeen {
    /// What it found.
    pub found: Found,
    /// In words, in the language of the person.
    pub says: String,
}

/// The angles as they were shown: decimal texts, degrees.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AnglesSeen {
    /// By code, such as `toe.FL`: the angle, its expanded uncertainty (k = 2), what was wanted and half its window.
    pub rows: BTreeMap<String, [String; 4]>,
    /// Planned turns of each adjuster, by the same codes; empty where nothing is to be changed.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub turns: BTreeMap<String, String>,
}

/// A judgement as it was shown: decimal texts.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JudgedSeen {
    /// Entries whose readings it rests on.
    pub readings: Vec<u64>,
    /// Loads, kg, FL FR RL RR.
    pub loads_kg: [String; 4],
    /// Heights, mm.
    pub heights_mm: [String; 4],
    /// Figures by name, each with its expanded uncertainty (k = 2).
    pub figures: BTreeMap<String, (String, String)>,
}

/// An accepted plan: decimal texts.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlanSeen {
    /// The place on the trade line that was chosen: `turn-cross`, `turn-front`, `turn-rear` or `turn-place`.
    pub aim: String,
    /// Whole steps at each collar, FL FR RL RR; positive raises the car.
    pub steps: [i32; 4],
    /// The same in turns.
    pub turns: [String; 4],
    /// Predicted loads, kg.
    pub loads_kg: [String; 4],
    /// Predicted heights, mm.
    pub heights_mm: [String; 4],
    /// Predicted cross weight, %.
    pub cross_pct: String,
    /// Its place on the trade line, kg along the diagonal pattern from the reading that it rests on.
    pub along_kg: String,
    /// Why, in words.
    pub why: String,
}
