//! What comes of something heard, for the window at the car.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// What the window does and shows after somebody spoke.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct HeardView {
    /// What the window carries out, as if a hand had done it.
    pub act: HeardAct,
    /// What was understood, what is asked for next, or why nothing was taken; empty: nothing to say.
    pub says: String,
    /// That it is too loud for speech, in words.
    pub loud: Option<String>,
    /// A number that waits to be confirmed.
    pub pending: Option<HeardPending>,
}

/// What a window carries out. None of these acknowledges, waives, seals or opens a step again.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum HeardAct {
    /// Nothing.
    Nothing,
    /// Enters a text, as if it had been typed.
    Fill {
        /// Key of the field.
        key: String,
        /// The text.
        text: String,
        /// Code of its unit.
        unit: Option<String>,
    },
    /// Goes to a field.
    Focus {
        /// Its key.
        key: String,
    },
    /// Presses the main action: the read-back first, where there are numbers.
    Confirm,
    /// Leaves the read-back.
    Change,
    /// Takes the last change back.
    Undo,
    /// Asks for the reason of a hold.
    Hold,
    /// Says the step again.
    Again,
}

/// A number that was heard.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct HeardPending {
    /// Key of its field.
    pub key: String,
    /// Words of the field: 'Load, front left'.
    pub label: String,
    /// As it was understood, with its unit.
    pub text: String,
}
