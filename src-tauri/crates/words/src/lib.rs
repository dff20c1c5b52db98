//! Every word a person reads or hears, by id. The only crate that knows Fluent.
//!
//! - [`Words`]: one language, ready to be asked; `text` for a message, `attr` for an attribute of it.
//! - [`Arg`]: what is put into a text: something already formatted, or a count that chooses a plural.
//! - [`id`]: how the ids of the procedure document (`loop.turn-FL`) become ids of messages (`step-loop-turn-FL`).
//! - [`sources`]: the files of each language, embedded in the program.
//!
//! - [`Language`]: which languages there are. Another one is a list of files in [`sources`] and a variant here.
//!
//! Deliberately absent: numbers are not formatted here (they come with their unit, as text, from `measure`), no
//! file is read at run time, and nothing is decided by a text.

mod arg;
mod language;
pub mod sources;
mod words;

pub use arg::Arg;
pub use language::Language;
pub use words::{Words, id};
