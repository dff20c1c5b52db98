//! Why an entry is refused.

use crate::{Quantity, Unit};
use thiserror::Error;

/// Why an entry is refused. Every message names the field, what was typed, and what would be accepted.
///
/// The texts are plain English for logs and the command line; windows render the code and the values themselves.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum EntryError {
    /// Nothing was typed.
    #[error("{field} is empty; type a number")]
    Empty {
        /// The field.
        field: String,
    },
    /// It is not a decimal number.
    #[error("{field}: '{text}' is not a number; type digits with one decimal comma or point")]
    NotANumber {
        /// The field.
        field: String,
        /// What was typed.
        text: String,
    },
    /// More than one comma or point.
    #[error("{field}: '{text}' has two separators; type one decimal comma or point and no thousands separator")]
    TwoSeparators {
        /// The field.
        field: String,
        /// What was typed.
        text: String,
    },
    /// More digits than any instrument gives.
    #[error("{field}: '{text}' has more than 12 digits")]
    TooManyDigits {
        /// The field.
        field: String,
        /// What was typed.
        text: String,
    },
    /// A count with a fraction.
    #[error("{field}: '{text}' is not a whole number")]
    NotWhole {
        /// The field.
        field: String,
        /// What was typed.
        text: String,
    },
    /// Below the least value of the field.
    #[error("{}", outside("below", .field, .text, *.unit, .min, .max, *.perhaps))]
    TooLow {
        /// The field.
        field: String,
        /// What was typed.
        text: String,
        /// The unit it was typed in.
        unit: Unit,
        /// Least value, in that unit.
        min: String,
        /// Greatest value, in that unit.
        max: String,
        /// A unit in which the same number would be inside.
        perhaps: Option<Unit>,
    },
    /// Above the greatest value of the field.
    #[error("{}", outside("above", .field, .text, *.unit, .min, .max, *.perhaps))]
    TooHigh {
        /// The field.
        field: String,
        /// What was typed.
        text: String,
        /// The unit it was typed in.
        unit: Unit,
        /// Least value, in that unit.
        min: String,
        /// Greatest value, in that unit.
        max: String,
        /// A unit in which the same number would be inside.
        perhaps: Option<Unit>,
    },
    /// The unit does not measure what the field asks for.
    #[error("{field}: {} measures {got:?}; this field takes {wanted:?}", .unit.symbol())]
    WrongQuantity {
        /// The field.
        field: String,
        /// The unit that was chosen.
        unit: Unit,
        /// What that unit measures.
        got: Quantity,
        /// What the field takes.
        wanted: Quantity,
    },
    /// More looks in one field than the step asks for.
    #[error("{field}: {got} looks were typed; at most {most} are asked for")]
    TooManyLooks {
        /// The field.
        field: String,
        /// Looks that were typed.
        got: usize,
        /// Looks that are asked for at most.
        most: usize,
    },
    /// The range itself cannot be read, or its ends stand the wrong way round: a fault of the document, not of the entry.
    #[error("{field}: the range {min} to {max} of this field is not a range")]
    BadRange {
        /// The field.
        field: String,
        /// Least value as given.
        min: String,
        /// Greatest value as given.
        max: String,
    },
}

fn outside(side: &str, field: &str, text: &str, unit: Unit, min: &str, max: &str, perhaps: Option<Unit>) -> String {
    let symbol = unit.symbol();
    let blank = if symbol.is_empty() { "" } else { " " };
    let mut says = format!("{field}: {text}{blank}{symbol} is {side} the range {min} to {max}{blank}{symbol}");
    if let Some(other) = perhaps {
        says.push_str(&format!("; did you mean {}?", other.symbol()));
    }
    says
}
