//! Why there is no plan.

use bayhand_chassis::StaticsError;
use thiserror::Error;

/// Why there is no plan: the field, its value and what it can be.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum PlanError {
    /// The car or its pads cannot be, or the car cannot stand.
    #[error(transparent)]
    Statics(#[from] StaticsError),
    /// Another value of the problem cannot be.
    #[error("{at} is {value}; it must be {must}")]
    Value {
        /// Path of the field, such as `wishes.cross_pct.window`.
        at: String,
        /// The value as given.
        value: String,
        /// What it must be.
        must: &'static str,
    },
}

impl PlanError {
    /// Path of the field that is wrong, as JSON names it.
    pub fn at(&self) -> String {
        match self {
            PlanError::Statics(e) => e.at(),
            PlanError::Value { at, .. } => at.clone(),
        }
    }
}
