//! What a field accepts, and what was entered into it.

use crate::decimal::{self, NotDecimal};
use crate::{EntryError, Unit, decimals_for, show};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A number as it was entered, and as the project uses it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Value {
    /// The value in the base unit of the unit's quantity.
    pub base: f64,
    /// The text as it was typed, without the blanks around it.
    pub text: String,
    /// The unit that it was typed in.
    pub unit: Unit,
}

/// What a field accepts, both ends included. The ends are decimal text, so that a document can carry them without
/// floats.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Range {
    /// Least value, decimal text.
    pub min: String,
    /// Greatest value, decimal text.
    pub max: String,
    /// The unit of both.
    pub unit: Unit,
}

impl Range {
    /// A range from decimal text.
    ///
    /// # Errors
    /// [`EntryError::BadRange`] when an end is not a decimal number or the ends stand the wrong way round.
    pub fn new(min: &str, max: &str, unit: Unit) -> Result<Range, EntryError> {
        let range = Range { min: min.to_owned(), max: max.to_owned(), unit };
        range.ends("range").map(|_| range)
    }

    /// Both ends as text in `unit`, rounded inwards so that what is shown is accepted. Ends of another quantity are
    /// shown as they are.
    pub fn shown_in(&self, unit: Unit) -> (String, String) {
        match self.ends("range") {
            Ok((min, max)) if unit.quantity() == self.unit.quantity() => ends_in(self, min, max, unit),
            _ => (self.min.clone(), self.max.clone()),
        }
    }

    /// Both ends in the range's own unit.
    fn ends(&self, field: &str) -> Result<(f64, f64), EntryError> {
        match (decimal::read(&self.min), decimal::read(&self.max)) {
            (Ok(min), Ok(max)) if min <= max => Ok((min, max)),
            _ => Err(EntryError::BadRange { field: field.to_owned(), min: self.min.clone(), max: self.max.clone() }),
        }
    }
}

/// Reads one number typed in `unit`.
///
/// # Errors
/// Empty text, text that is no decimal number, two separators, more than 12 digits, a count with a fraction. The
/// message names the field as "value"; [`parse_within`] names it properly.
pub fn parse(text: &str, unit: Unit) -> Result<Value, EntryError> {
    read("value", text, unit).map(|(_, value)| value)
}

/// Reads one number typed in `unit` into `field`, which accepts `range`.
///
/// # Errors
/// As [`parse`]; a unit of another quantity; a value outside the range, with the range in the unit that was typed
/// and, when the same number would be inside in a sibling unit, a hint at that unit.
pub fn parse_within(field: &str, text: &str, unit: Unit, range: &Range) -> Result<Value, EntryError> {
    let (min, max) = range.ends(field)?;
    if unit.quantity() != range.unit.quantity() {
        let (got, wanted) = (unit.quantity(), range.unit.quantity());
        return Err(EntryError::WrongQuantity { field: field.to_owned(), unit, got, wanted });
    }
    let (number, value) = read(field, text, unit)?;
    let in_range_unit = |typed: Unit| {
        // The same unit on both sides is compared as typed, so that an end of the range is inside it.
        if typed == range.unit { number } else { range.unit.from_base(typed.to_base(number)) }
    };
    let seen = in_range_unit(unit);
    if seen >= min && seen <= max {
        return Ok(value);
    }
    let perhaps = Unit::ALL.into_iter().find(|&other| {
        other != unit && other.quantity() == unit.quantity() && (min..=max).contains(&in_range_unit(other))
    });
    let (field, text) = (field.to_owned(), value.text);
    let (min_text, max_text) = ends_in(range, min, max, unit);
    Err(if seen < min {
        EntryError::TooLow { field, text, unit, min: min_text, max: max_text, perhaps }
    } else {
        EntryError::TooHigh { field, text, unit, min: min_text, max: max_text, perhaps }
    })
}

/// Reads several looks typed into one field, separated by blanks, `;` or `/`; a comma is always the decimal one.
///
/// # Errors
/// As [`parse_within`] for each look, nothing typed at all, or more looks than `max_looks`.
pub fn parse_looks(
    field: &str,
    text: &str,
    unit: Unit,
    range: &Range,
    max_looks: usize,
) -> Result<Vec<Value>, EntryError> {
    let looks: Vec<&str> =
        text.split(|c: char| c.is_whitespace() || matches!(c, ';' | '/')).filter(|s| !s.is_empty()).collect();
    if looks.is_empty() {
        return Err(EntryError::Empty { field: field.to_owned() });
    }
    if looks.len() > max_looks {
        return Err(EntryError::TooManyLooks { field: field.to_owned(), got: looks.len(), most: max_looks });
    }
    looks.into_iter().map(|look| parse_within(field, look, unit, range)).collect()
}

/// The number as typed, and the value kept of it.
fn read(field: &str, text: &str, unit: Unit) -> Result<(f64, Value), EntryError> {
    let text = text.trim();
    let refused = || (field.to_owned(), text.to_owned());
    let read = if unit == Unit::DegreeMinute { decimal::read_degrees_and_minutes } else { decimal::read };
    let number = read(text).map_err(|why| {
        let (field, text) = refused();
        match why {
            NotDecimal::Empty => EntryError::Empty { field },
            NotDecimal::NotANumber => EntryError::NotANumber { field, text },
            NotDecimal::TwoSeparators => EntryError::TwoSeparators { field, text },
            NotDecimal::TooManyDigits => EntryError::TooManyDigits { field, text },
        }
    })?;
    if unit == Unit::Count && number.fract() != 0.0 {
        let (field, text) = refused();
        return Err(EntryError::NotWhole { field, text });
    }
    Ok((number, Value { base: unit.to_base(number), text: text.to_owned(), unit }))
}

/// The ends of a range in the unit that was typed, rounded inwards so that what is shown is accepted.
fn ends_in(range: &Range, min: f64, max: f64, unit: Unit) -> (String, String) {
    if unit == range.unit {
        return (range.min.clone(), range.max.clone());
    }
    let decimals = decimals_for(unit);
    let scale = 10f64.powi(decimals as i32);
    let there = |end: f64| unit.from_base(range.unit.to_base(end)) * scale;
    let text = |scaled: f64| show(unit.to_base(scaled / scale), unit, decimals);
    let (low, high) = (there(min).ceil(), there(max).floor());
    // A range narrower than one shown digit has no inward rounding; its ends are then shown rounded to the nearest.
    if low <= high { (text(low), text(high)) } else { (text(there(min)), text(there(max))) }
}
