//! The languages that the program speaks.

use crate::sources::{ENGLISH, File, GERMAN};
use unic_langid::{LanguageIdentifier, langid};

/// A language. Whoever begins a job does not choose it for the record: ids and figures are recorded, never words.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Language {
    /// English.
    #[default]
    English,
    /// German.
    German,
}

impl Language {
    /// Every language.
    pub const ALL: [Language; 2] = [Language::English, Language::German];

    /// Its ISO 639 code, as settings and command lines write it.
    pub fn code(self) -> &'static str {
        match self {
            Language::English => "en",
            Language::German => "de",
        }
    }

    /// The language that a code or a locale such as `de-AT` or `de_CH.UTF-8` asks for; none when it is not spoken here.
    pub fn asked_for(locale: &str) -> Option<Language> {
        let code = locale.split(['-', '_', '.', '@']).next().unwrap_or_default().to_ascii_lowercase();
        Language::ALL.into_iter().find(|language| language.code() == code)
    }

    /// Its own name, for a list to choose from.
    pub fn name(self) -> &'static str {
        match self {
            Language::English => "English",
            Language::German => "Deutsch",
        }
    }

    /// Its files.
    pub fn files(self) -> &'static [File] {
        match self {
            Language::English => ENGLISH,
            Language::German => GERMAN,
        }
    }

    pub(crate) fn identifier(self) -> LanguageIdentifier {
        match self {
            Language::English => langid!("en"),
            Language::German => langid!("de"),
        }
    }
}
