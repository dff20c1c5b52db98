//! Quantities at the edges: decimal text with a unit in, one base unit per quantity inside, and back to text.
//!
//! People type `12,5`, `-1.25` or `101.2 lb`; the rest of the project computes in one unit per [`Quantity`]:
//! kg, mm, bar, deg, turn, N/mm, %, a bare ratio, a count, s. This crate is the only place that converts.
//!
//! - [`Unit`]: what can be typed or shown, with its exact factor and where that factor comes from.
//! - [`Range`]: what a field accepts, as decimal text, so that it can stand in a document without floats.
//! - [`parse`], [`parse_within`], [`parse_looks`]: text to [`Value`], which keeps the text beside the number.
//! - [`EntryError`]: why an entry is refused, naming field, value and range in the unit that was typed.
//! - [`show`]: a number back to text, rounded, never `-0.0`.
//!
//! Deliberately absent: arithmetic between quantities, locales, files, clocks.

mod decimal;
mod entry;
mod error;
mod unit;

pub use entry::{Range, Value, parse, parse_looks, parse_within};
pub use error::EntryError;
pub use unit::{Quantity, Unit, decimals_for, show};
