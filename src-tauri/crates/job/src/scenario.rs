//! Scenarios: practice jobs that somebody thought out, each a small file of its own. What is wrong stays hidden from the
//! person at the job. The form is told in `scenarios/README.md`.

use crate::ask::PracticeAsk;
use bayhand_practice::Fault;
use bayhand_words::Language;
use serde::Deserialize;
use std::fmt;

/// Those that the program ships with.
const SHIPPED: [&str; 3] = [
    include_str!("../../../../scenarios/first-morning.json"),
    include_str!("../../../../scenarios/after-a-kerb.json"),
    include_str!("../../../../scenarios/another-hand.json"),
];
/// The form of a file that this program reads.
const FORMAT: u32 = 1;
/// Most things that are wrong with a practice car at once: with more of them nobody learns which did what.
pub const MOST_FAULTS: usize = 3;
/// Largest seed: fifteen digits, which every window carries exactly.
const MOST_SEED: u64 = 999_999_999_999_999;
/// Most characters of an id, a title and a story.
const MOST: [usize; 3] = [40, 60, 400];

/// A practice job that somebody thought out.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Scenario {
    format: u32,
    /// Code: small letters, digits and hyphens.
    pub id: String,
    title: Told,
    story: Told,
    seed: u64,
    #[serde(default)]
    faults: Vec<Fault>,
    #[serde(default)]
    drawn: u8,
}

/// A text in the languages that its writer knew.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
struct Told {
    en: String,
    #[serde(default)]
    de: Option<String>,
}

impl Told {
    fn texts(&self) -> impl Iterator<Item = (&'static str, &str)> {
        [Some(("en", self.en.as_str())), self.de.as_deref().map(|de| ("de", de))].into_iter().flatten()
    }

    fn of(&self, language: Language) -> &str {
        match language {
            Language::English => &self.en,
            Language::German => self.de.as_deref().unwrap_or(&self.en),
        }
    }
}

/// Why a file is no scenario.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ScenarioError {
    /// No JSON of this form: an unknown key, a missing one, a name that is none; in the words of the reader, with the place.
    Form(String),
    /// A value out of its range.
    Range {
        /// The key, such as `title.de`.
        key: &'static str,
        /// What stands there.
        is: String,
        /// What may stand there.
        may_be: String,
    },
}

impl fmt::Display for ScenarioError {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        match self {
            ScenarioError::Form(why) => write!(f, "{why}"),
            ScenarioError::Range { key, is, may_be } => write!(f, "`{key}` is {is}; it may be {may_be}"),
        }
    }
}

impl std::error::Error for ScenarioError {}

impl Scenario {
    /// Reads one.
    ///
    /// # Errors
    /// The text is no scenario.
    pub fn read(text: &str) -> Result<Scenario, ScenarioError> {
        let read: Scenario = serde_json::from_str(text).map_err(|why| ScenarioError::Form(why.to_string()))?;
        read.checked()
    }

    /// Those that the program ships with.
    pub fn shipped() -> Vec<Scenario> {
        // A test reads each of them.
        SHIPPED.into_iter().filter_map(|text| Scenario::read(text).ok()).collect()
    }

    /// What it is called.
    pub fn title(&self, language: Language) -> &str {
        self.title.of(language)
    }

    /// What the trainee is told.
    pub fn story(&self, language: Language) -> &str {
        self.story.of(language)
    }

    /// The practice job that it asks for.
    pub fn ask(&self) -> PracticeAsk {
        PracticeAsk { seed: self.seed, faults: self.faults.clone(), drawn: self.drawn, scenario: None }
    }

    fn checked(self) -> Result<Scenario, ScenarioError> {
        let range = |key, is: String, may_be: String| Err(ScenarioError::Range { key, is, may_be });
        let [most_id, most_title, most_story] = MOST;
        if self.format != FORMAT {
            return range("format", self.format.to_string(), FORMAT.to_string());
        }
        let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        if self.id.is_empty() || self.id.len() > most_id || !self.id.chars().all(plain) {
            return range("id", format!("`{}`", self.id), format!("1 to {most_id} small letters, digits and hyphens"));
        }
        for (keys, told, most) in
            [(["title.en", "title.de"], &self.title, most_title), (["story.en", "story.de"], &self.story, most_story)]
        {
            for (language, text) in told.texts() {
                let long = text.chars().count();
                if text.trim().is_empty() || long > most {
                    let key = if language == "en" { keys[0] } else { keys[1] };
                    return range(key, format!("{long} characters long"), format!("1 to {most} characters"));
                }
            }
        }
        if self.seed > MOST_SEED {
            return range("seed", self.seed.to_string(), format!("0 to {MOST_SEED}"));
        }
        let twice = self.faults.iter().enumerate().find(|(at, fault)| self.faults[..*at].contains(fault));
        if let Some((_, fault)) = twice {
            return range("faults", format!("`{}` twice", fault.code()), "each fault once".into());
        }
        let many = self.faults.len() + usize::from(self.drawn);
        if many > MOST_FAULTS {
            return range("faults", format!("{many} together with `drawn`"), format!("at most {MOST_FAULTS}"));
        }
        Ok(self)
    }
}
