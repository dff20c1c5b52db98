//! What is put into a text.

use fluent_bundle::FluentValue;
use std::borrow::Cow;

/// A value for one of the places `{ $name }` of a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Arg<'a> {
    /// Text to be shown as it is. Numbers with a unit come this way, already formatted.
    Text(&'a str),
    /// A count, which also chooses between the singular and the plural.
    Count(u32),
}

impl<'a> From<&'a str> for Arg<'a> {
    fn from(text: &'a str) -> Self {
        Arg::Text(text)
    }
}

impl<'a> From<&'a String> for Arg<'a> {
    fn from(text: &'a String) -> Self {
        Arg::Text(text)
    }
}

impl From<u32> for Arg<'_> {
    fn from(count: u32) -> Self {
        Arg::Count(count)
    }
}

impl<'a> From<Arg<'a>> for FluentValue<'a> {
    fn from(arg: Arg<'a>) -> Self {
        match arg {
            Arg::Text(text) => FluentValue::String(Cow::Borrowed(text)),
            Arg::Count(count) => FluentValue::from(count),
        }
    }
}
