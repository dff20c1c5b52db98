//! Conditions over physical facts: all, any and not, two deep, and nothing else.

use crate::{Fact, State, Value};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A fact that has one of some values.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Holds {
    /// The fact.
    pub fact: Fact,
    /// The values that will do; the first is the one that is brought about when none holds.
    pub is: Vec<Value>,
}

/// A condition.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Condition {
    /// Every one of them.
    All(Vec<Condition>),
    /// At least one of them.
    Any(Vec<Condition>),
    /// Not this one.
    Not(Box<Condition>),
    /// A fact.
    Fact(Holds),
}

impl Default for Condition {
    fn default() -> Self {
        Condition::All(Vec::new())
    }
}

impl Holds {
    /// True when the state's fact has one of the values.
    pub fn met(&self, state: &State) -> bool {
        self.is.contains(&state.fact(self.fact))
    }
}

impl Condition {
    /// True when nothing is asked.
    pub fn is_empty(&self) -> bool {
        matches!(self, Condition::All(list) if list.is_empty())
    }

    /// True when it holds in a state.
    pub fn met(&self, state: &State) -> bool {
        match self {
            Condition::All(list) => list.iter().all(|c| c.met(state)),
            Condition::Any(list) => list.iter().any(|c| c.met(state)),
            Condition::Not(c) => !c.met(state),
            Condition::Fact(holds) => holds.met(state),
        }
    }

    /// How deeply all, any and not are nested.
    pub fn depth(&self) -> usize {
        match self {
            Condition::Fact(_) => 0,
            Condition::Not(c) => 1 + c.depth(),
            Condition::All(list) | Condition::Any(list) => 1 + list.iter().map(Condition::depth).max().unwrap_or(0),
        }
    }

    /// Every fact that is named.
    pub fn facts(&self) -> Vec<&Holds> {
        match self {
            Condition::Fact(holds) => vec![holds],
            Condition::Not(c) => c.facts(),
            Condition::All(list) | Condition::Any(list) => list.iter().flat_map(Condition::facts).collect(),
        }
    }
}
