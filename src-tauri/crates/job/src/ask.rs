//! What a window may ask of the open job.

use bayhand_jobbook::Secret;
use bayhand_practice::Fault;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use ts_rs::TS;

/// One wish of a person, by button, key or pedal, with the revision that their window saw.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Ask {
    /// Revision of the view that the person saw; a stale one is refused in words.
    #[ts(type = "number")]
    pub revision: u64,
    /// Initials of the person who acts; empty where nobody has to be signed on.
    pub by: String,
    /// What is wished.
    pub wish: Wish,
}

/// What is wished.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "kind", rename_all = "kebab-case", rename_all_fields = "snake_case", deny_unknown_fields)]
pub enum Wish {
    /// Begin a job.
    Begin {
        /// The car's name.
        car: String,
        /// The simulated car; absent at a real one.
        #[serde(default)]
        #[ts(optional)]
        practice: Option<PracticeAsk>,
    },
    /// Take up a job that was set aside.
    TakeUp {
        /// Its number.
        #[ts(type = "number")]
        job: i64,
    },
    /// Set the open job aside.
    SetAside,
    /// Sign on at the open job.
    SignOn {
        /// Initials, one to four letters.
        initials: String,
        /// Name.
        name: String,
        /// `trainee`, `technician` or `supervisor`.
        rank: String,
    },
    /// Acknowledge one hazard of the step at hand, by hand.
    Acknowledge {
        /// The step.
        step: String,
        /// The hazard.
        hazard: String,
    },
    /// Record the step at hand.
    Record {
        /// The step.
        step: String,
        /// What was entered, by field key.
        entries: BTreeMap<String, Entry>,
    },
    /// Waive the gate that the last try did not pass.
    Waive {
        /// The step.
        step: String,
        /// Why.
        reason: String,
    },
    /// Open a step again, or send the job back to it.
    Reopen {
        /// The step.
        step: String,
        /// Why.
        reason: String,
    },
    /// Correct a text that was recorded; what it said first stays visible.
    Amend {
        /// Number of the entry.
        #[ts(type = "number")]
        entry: u64,
        /// Key of the text in it.
        key: String,
        /// What it should have said.
        text: String,
        /// Why.
        reason: String,
    },
    /// Put the job on hold.
    Hold {
        /// Why.
        reason: String,
    },
    /// Go on with a job on hold.
    Resume,
    /// Stop the job for good; the car is made safe first.
    Stop {
        /// Why.
        reason: String,
    },
    /// Seal the job (review window only).
    Seal,
}

/// A simulated car, and what is to be wrong with it; nothing of that is shown before the job has ended.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct PracticeAsk {
    /// Seed of the car.
    #[ts(type = "number")]
    pub seed: u64,
    /// What is to be wrong, by name.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[ts(optional, as = "Option<Vec<String>>")]
    pub faults: Vec<Fault>,
    /// How many things more are to be wrong that nobody names: they follow from the seed.
    #[serde(default)]
    #[ts(optional, as = "Option<u8>")]
    pub drawn: u8,
    /// Id of a scenario that says all of this instead.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[ts(optional)]
    pub scenario: Option<String>,
}

impl PracticeAsk {
    /// A sound car.
    pub fn sound(seed: u64) -> PracticeAsk {
        PracticeAsk { seed, ..PracticeAsk::default() }
    }
}

/// A field as entered.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Entry {
    /// The text, exactly as typed; for a choice the option's code, for a check `yes` or `no`.
    pub text: String,
    /// Code of the unit, for numbers.
    pub unit: Option<String>,
}

/// What the window at the car waits for, so that what is said is held to it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Attention {
    /// Initials of whoever acts; empty: nobody yet, and nothing is listened to.
    pub by: String,
    /// The step at hand; empty: none, or a dialog stands before it.
    pub step: String,
    /// The draft so far, by field key.
    pub entries: BTreeMap<String, Entry>,
    /// True while the draft is read back.
    pub reading_back: bool,
}

/// Why a wish was not carried out. Nothing was recorded.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Refused {
    /// Stable code, such as `stale`, `out-of-range`, `hazard-open`.
    pub code: String,
    /// Key of the field that is meant, if one is.
    pub field: Option<String>,
    /// What happened, what it means for the job, what to do.
    pub says: String,
}

/// Somebody to be entered in the list of people, or changed in it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct PersonAsk {
    /// Initials, one to four letters; unique in the book for ever.
    pub initials: String,
    /// Name.
    pub name: String,
    /// `trainee`, `technician` or `supervisor`.
    pub rank: String,
    /// What a trainee may do alone: codes of steps or stages; empty for other ranks.
    pub alone: Vec<String>,
}

/// What a supervisor wants of the list of people, with the passphrase of their key.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct StaffAsk {
    /// Initials of the supervisor.
    pub by: String,
    /// Their passphrase.
    #[ts(type = "string")]
    pub passphrase: Secret,
    /// What they want.
    pub wish: StaffWish,
}

/// What is wanted of the list of people.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(tag = "kind", rename_all = "kebab-case", rename_all_fields = "snake_case", deny_unknown_fields)]
pub enum StaffWish {
    /// Enter somebody.
    Enrol {
        /// Who.
        person: PersonAsk,
        /// Their PIN.
        #[ts(type = "string")]
        pin: Secret,
    },
    /// Change somebody's name, rank or list of what they may do alone.
    Change {
        /// As they are from here on; the initials say who.
        person: PersonAsk,
    },
    /// Take from somebody the right to sign on.
    LetGo {
        /// Who.
        initials: String,
    },
    /// Give somebody who forgot theirs a new PIN.
    ResetPin {
        /// Who.
        initials: String,
        /// The new PIN.
        #[ts(type = "string")]
        pin: Secret,
    },
    /// Give a supervisor a key: their first one, or another.
    SetKey {
        /// Which supervisor.
        initials: String,
        /// The passphrase that is to open it.
        #[ts(type = "string")]
        new_passphrase: Secret,
        /// Why there is a new one.
        reason: String,
    },
}

/// Which jobs the desk wants to see; what is empty does not count.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields, default)]
pub struct JobFilter {
    /// The car's name.
    pub car: String,
    /// Initials of somebody who signed on.
    pub person: String,
    /// Jobs that went on at this day or later, as `2026-11-29`.
    pub from: String,
    /// Jobs that were begun at this day or earlier.
    pub until: String,
    /// Only jobs that departed from the procedure.
    pub departed: bool,
}

/// A text of an entry to be corrected, at the desk.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct CorrectAsk {
    /// The job.
    #[ts(type = "number")]
    pub job: i64,
    /// Revision of the job that was looked at.
    #[ts(type = "number")]
    pub revision: u64,
    /// Initials of whoever corrects.
    pub by: String,
    /// Their PIN.
    #[ts(type = "string")]
    pub pin: Secret,
    /// Number of the entry.
    #[ts(type = "number")]
    pub entry: u64,
    /// Key of the text in it.
    pub key: String,
    /// What it should have said.
    pub text: String,
    /// Why.
    pub reason: String,
}
