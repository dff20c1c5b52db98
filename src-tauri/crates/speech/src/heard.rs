//! What was heard, or why it was not taken.

use crate::spoken::Corner;

/// What a sound came to.
#[derive(Clone, Debug, PartialEq)]
pub struct Heard {
    /// The bare words of the likeliest text that may be said; empty where there was none.
    pub words: String,
    /// What it is taken for.
    pub what: What,
    /// From 0 to 1; what is taken has at least 0.5.
    pub score: f32,
}

/// What was said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum What {
    /// One of the phrases, as it stood in what was waited for.
    Phrase(String),
    /// A reading.
    Reading {
        /// The corner that was said, or else the one that was waited for.
        corner: Option<Corner>,
        /// Each look as decimal text with its trailing zeros.
        looks: Vec<String>,
        /// The unit, when one was said.
        unit: Option<&'static str>,
    },
    /// Nothing is taken.
    Rejected(Why),
}

/// Why nothing was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// Too short to hold a word.
    TooShort,
    /// No voice stands out of what is there.
    Silence,
    /// Something else was said, or it was not clear.
    OtherTalk,
    /// Two things that may be said are too near to each other.
    Unsure,
}

impl Why {
    /// Stable code.
    pub const fn code(self) -> &'static str {
        match self {
            Self::TooShort => "too-short",
            Self::Silence => "silence",
            Self::OtherTalk => "other-talk",
            Self::Unsure => "unsure",
        }
    }
}
