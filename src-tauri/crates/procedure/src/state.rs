//! The state of a job: nothing but its events replayed. Finite: no numbers, no counters.

use crate::{Document, Evidence, Fact, Rank, Value};
use std::collections::{BTreeMap, BTreeSet};

/// How a step stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Standing {
    /// Not done.
    #[default]
    Open,
    /// Recorded, and a gate did not hold.
    Tried,
    /// Done, and true of the car as it stands.
    Done,
    /// Was done; a later change withdrew its claim about the car as it stands.
    Void,
}

/// One step's part of the state.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct StepState {
    /// How it stands.
    pub standing: Standing,
    /// Hazards acknowledged for this doing, and by whom.
    pub acknowledged: BTreeMap<String, String>,
    /// Who is or was at work on it.
    pub workers: BTreeSet<String>,
    /// Who waived its gate.
    pub waived: Option<String>,
    /// What the last try found; empty once done.
    pub found: Vec<crate::Found>,
    /// Options chosen at the last recording.
    pub chosen: Vec<String>,
}

/// What is happening with the job.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Status {
    /// At work.
    #[default]
    Working,
    /// Being stopped: the car is made safe.
    Stopping,
    /// Stopped for good.
    Stopped,
    /// Sealed.
    Sealed,
}

/// The state of a job.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct State {
    facts: BTreeMap<Fact, Value>,
    steps: BTreeMap<String, StepState>,
    people: BTreeMap<String, Rank>,
    /// What is happening with the job.
    pub status: Status,
    /// True while it is on hold.
    pub held: bool,
}

impl State {
    /// The value of a fact; the first of its values until something made it another.
    pub fn fact(&self, fact: Fact) -> Value {
        self.facts.get(&fact).copied().unwrap_or(fact.values()[0])
    }

    /// How a step stands, and who was at it.
    pub fn step(&self, id: &str) -> StepState {
        self.steps.get(id).cloned().unwrap_or_default()
    }

    /// How a step stands.
    pub fn standing(&self, id: &str) -> Standing {
        self.steps.get(id).map_or(Standing::Open, |s| s.standing)
    }

    /// People signed on, with their rank.
    pub fn people(&self) -> &BTreeMap<String, Rank> {
        &self.people
    }

    /// True for somebody who recorded, tried or acknowledged anything in this job.
    pub fn worked(&self, person: &str) -> bool {
        self.steps.values().any(|s| s.workers.contains(person))
    }

    pub(crate) fn set_fact(&mut self, fact: Fact, value: Value) {
        self.facts.insert(fact, value);
    }

    pub(crate) fn step_mut(&mut self, id: &str) -> &mut StepState {
        self.steps.entry(id.to_owned()).or_default()
    }

    pub(crate) fn sign_on(&mut self, person: &str, rank: Rank) {
        self.people.insert(person.to_owned(), rank);
    }

    /// Steps whose result becomes void when these nodes (facts, topics, steps) change, by the document's graph.
    pub fn would_void(&self, document: &Document, changed: &BTreeSet<String>) -> Vec<String> {
        let mut nodes = changed.clone();
        let mut voided = Vec::new();
        loop {
            let next: Vec<_> = document
                .steps()
                .filter(|(_, step)| self.standing(&step.id) == Standing::Done && !voided.contains(&step.id))
                .filter(|(_, step)| step.rests_on.iter().any(|node| nodes.contains(node)))
                .map(|(_, step)| step.id.clone())
                .collect();
            if next.is_empty() {
                return voided;
            }
            nodes.extend(next.iter().cloned());
            voided.extend(next);
        }
    }

    pub(crate) fn tried(&mut self, id: &str, by: &str, found: &Evidence, chosen: Vec<String>) {
        let step = self.step_mut(id);
        step.standing = Standing::Tried;
        step.workers.insert(by.to_owned());
        step.found = found.clone();
        step.chosen = chosen;
    }
}
