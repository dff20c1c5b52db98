//! Intents, evidence, events and refusals: what goes into `decide` and what comes out.

use crate::Rank;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use thiserror::Error;

/// What a person wants.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Intent {
    /// To work at this job.
    SignOn {
        /// Initials, unique in the job.
        person: String,
        /// Their rank.
        rank: Rank,
    },
    /// To acknowledge a hazard, by hand.
    Acknowledge {
        /// The step.
        step: String,
        /// The hazard.
        hazard: String,
        /// Who.
        by: String,
    },
    /// To record the step at hand.
    Record {
        /// The step.
        step: String,
        /// Who.
        by: String,
        /// What was entered, by key.
        entries: BTreeMap<String, Entered>,
    },
    /// To go on although a gate did not pass.
    Waive {
        /// The step.
        step: String,
        /// Who.
        by: String,
        /// Why.
        reason: String,
    },
    /// To do a step again.
    Reopen {
        /// The step.
        step: String,
        /// Who.
        by: String,
        /// Why.
        reason: String,
    },
    /// To hold the job.
    Hold {
        /// Who.
        by: String,
        /// Why.
        reason: String,
    },
    /// To go on with a held job.
    Resume {
        /// Who.
        by: String,
    },
    /// To stop the job for good.
    Stop {
        /// Who.
        by: String,
        /// Why.
        reason: String,
    },
    /// To seal the job.
    Seal {
        /// Who.
        by: String,
    },
}

/// A field as entered: text, and the unit's code for a number.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Entered {
    /// The text as typed; an option's id; `yes` or `no`.
    pub text: String,
    /// Code of the unit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub unit: Option<String>,
}

/// What `job` found when it computed a gate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Found {
    /// It holds.
    Pass,
    /// It does not hold.
    Fail,
    /// What was measured is too uncertain to say.
    CannotTell,
}

/// What was found for the gates of the step at hand, in their order.
pub type Evidence = Vec<Found>;

/// What happened. Replaying the events of a job gives its state, and nothing else does.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "event", rename_all = "kebab-case", deny_unknown_fields)]
pub enum Event {
    /// Somebody signed on.
    SignedOn {
        /// Initials.
        person: String,
        /// Rank as it was then.
        rank: Rank,
    },
    /// A hazard was acknowledged.
    Acknowledged {
        /// The step.
        step: String,
        /// The hazard.
        hazard: String,
        /// Who.
        by: String,
    },
    /// A step was recorded; its gates held.
    Done {
        /// The step.
        step: String,
        /// Who.
        by: String,
        /// As entered.
        entries: BTreeMap<String, Entered>,
        /// What the gates found.
        found: Evidence,
    },
    /// A step was recorded, and a gate did not hold: the step stays open.
    Tried {
        /// The step.
        step: String,
        /// Who.
        by: String,
        /// As entered.
        entries: BTreeMap<String, Entered>,
        /// What the gates found.
        found: Evidence,
    },
    /// The last try was let pass: the step is done with its entries.
    Waived {
        /// The step.
        step: String,
        /// Who.
        by: String,
        /// Rank as it was then.
        rank: Rank,
        /// Why.
        reason: String,
    },
    /// A step was opened again.
    Reopened {
        /// The step.
        step: String,
        /// Who.
        by: String,
        /// Why.
        reason: String,
        /// What became void by it, for the record; replay computes it anew.
        voided: Vec<String>,
    },
    /// The job was put on hold.
    Held {
        /// Who.
        by: String,
        /// Why.
        reason: String,
    },
    /// The job went on.
    Resumed {
        /// Who.
        by: String,
    },
    /// The job is being stopped.
    StopBegun {
        /// Who.
        by: String,
        /// Why.
        reason: String,
    },
    /// The job was sealed.
    Sealed {
        /// Who.
        by: String,
    },
}

/// Why an intent was not carried out. The words are made from the code by `words`.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum Refusal {
    /// There is no such step.
    #[error("there is no step {0}")]
    NoSuchStep(String),
    /// The step is not the one at hand.
    #[error("{step} is not the step at hand; it is {now}")]
    NotNow {
        /// The step that was meant.
        step: String,
        /// The step at hand.
        now: String,
    },
    /// Nobody of these initials is signed on.
    #[error("{0:?} is not signed on")]
    NotSignedOn(String),
    /// These initials are signed on already, with another rank.
    #[error("{0} is signed on already")]
    AlreadySignedOn(String),
    /// Initials that cannot be.
    #[error("initials are one to four letters, not {0:?}")]
    Initials(String),
    /// The rank does not suffice.
    #[error("{by} is {rank:?}; {needed:?} is needed")]
    Rank {
        /// Who.
        by: String,
        /// Their rank.
        rank: Rank,
        /// The least rank.
        needed: Rank,
    },
    /// Somebody at work on a step may not waive its gates.
    #[error("{0} is at work on this step")]
    AtWork(String),
    /// Somebody who worked on the job may not seal it.
    #[error("{0} worked on this job")]
    Worked(String),
    /// A hazard is not acknowledged yet.
    #[error("hazard {0} is not acknowledged")]
    HazardOpen(String),
    /// No such hazard stands at this step.
    #[error("hazard {0} does not stand at this step")]
    NoSuchHazard(String),
    /// It has been acknowledged.
    #[error("hazard {0} is acknowledged already")]
    AlreadyAcknowledged(String),
    /// An entry is missing.
    #[error("{0} is missing")]
    Missing(String),
    /// An entry that is not asked for.
    #[error("{0} is not asked for")]
    NotAsked(String),
    /// An answer that is not among the options.
    #[error("{key} has no option {text:?}")]
    NoSuchOption {
        /// Key of the entry.
        key: String,
        /// What was given.
        text: String,
    },
    /// The evidence does not fit the gates: a fault of the program.
    #[error("evidence for {given} gates, {needed} needed")]
    Evidence {
        /// How many were given.
        given: usize,
        /// How many are needed.
        needed: usize,
    },
    /// There is no failed try to waive.
    #[error("nothing to waive at {0}")]
    NothingToWaive(String),
    /// Nobody may waive this gate.
    #[error("nobody may waive {0}")]
    NotWaivable(String),
    /// A reason is missing.
    #[error("a reason is missing")]
    NoReason,
    /// The step is not done, so it cannot be opened again.
    #[error("{0} is not done")]
    NotDone(String),
    /// The job is on hold.
    #[error("the job is on hold")]
    OnHold,
    /// The job is not on hold.
    #[error("the job is not on hold")]
    NotOnHold,
    /// The job has ended.
    #[error("the job has ended")]
    Ended,
    /// The job is being stopped.
    #[error("the job is being stopped")]
    Stopping,
    /// A step ends with the seal, and only with it.
    #[error("the job is ended by the seal")]
    BySealOnly,
    /// The job is not ready to be sealed.
    #[error("{0} is to be done first")]
    NotReady(String),
    /// A step cannot be reached: a fault of the document.
    #[error("{step} needs {fact}, and no step brings it about")]
    DeadEnd {
        /// The step.
        step: String,
        /// The fact that is needed.
        fact: String,
    },
}
