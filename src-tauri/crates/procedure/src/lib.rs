//! What to do next: the procedure document, and the pure engine over it.
//!
//! - [`Document`]: the job as data, read by [`load`] from the JSON in `procedures/`.
//! - [`decide`]: state, intent and evidence give an event or a refusal. [`apply`]: state and event give a state.
//! - [`next`]: the step at hand. A step is offered when its needs over physical facts hold; when one is missing, the step
//!   that brings it about comes first.
//! - [`State::would_void`]: the document's graph says what rests on what, and nothing else does.
//!
//! Everything here is finite: no floats, no counters, no clocks, no text of people beyond initials in the state. Ranges are carried as
//! decimal text and checked by `job` through `measure`. Deliberately absent: SQL, async, windows, words.

mod apply;
mod condition;
mod decide;
pub mod document;
mod event;
mod fact;
mod fault;
mod load;
mod next;
pub mod prove;
mod state;

pub use apply::{apply, replay};
pub use condition::{Condition, Holds};
pub use decide::decide;
pub use document::{
    ChoiceOption, Document, Ending, Gate, Hazard, Input, Kind, Lapse, Number, Path, Per, Place, PressureKind, Rank,
    Signal, Stage, Step,
};
pub use event::{Entered, Event, Evidence, Found, Intent, Refusal};
pub use fact::{Fact, Value};
pub use fault::{Fault, Wrong};
pub use load::{FORMAT, lint, load, with_nearest_key};
pub use next::{Next, next, to_do};
pub use state::{Standing, State, Status, StepState};

/// The document that this program ships.
pub const SHIPPED: &str = include_str!("../../../../procedures/corner-balance-and-alignment.json");

/// SHA-256 of a document's text, as lower-case hex: how a job says which document it was begun with.
pub fn hash(text: &str) -> String {
    use sha2::Digest;
    hex::encode(sha2::Sha256::digest(text.as_bytes()))
}
