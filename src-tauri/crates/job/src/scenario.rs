//! Scenarios: practice jobs that somebody thought out, each a small file of its own. What is wrong stays hidden from the
//! person at the job. The form is told in `scenarios/README.md`.

mod read;

use crate::ask::PracticeAsk;
use bayhand_practice::Fault;
use bayhand_words::{Arg, Language, Words};

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
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Scenario {
    /// Code: small letters, digits and hyphens.
    pub id: String,
    title: Told,
    story: Told,
    seed: u64,
    faults: Vec<Fault>,
    drawn: u8,
}

/// A text in the languages that its writer knew.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Told {
    en: String,
    de: Option<String>,
}

impl Told {
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
    /// No JSON.
    NoJson {
        /// Where it ceases to be: the line, from 1.
        line: usize,
        /// The place in that line.
        column: usize,
    },
    /// JSON, but not one object.
    NoObject,
    /// A key that the form does not have.
    Unknown {
        /// The key, such as `title.fr`.
        key: String,
    },
    /// A key that must be there.
    Missing {
        /// The key.
        key: String,
    },
    /// Something else than may stand there.
    Value {
        /// The key.
        key: String,
        /// The value as the file has it.
        is: String,
        /// What may stand there.
        may_be: MayBe,
    },
    /// An empty text, or one that is too long.
    Length {
        /// The key.
        key: String,
        /// Its characters.
        is: usize,
        /// The most that it may have.
        most: usize,
    },
    /// The same fault twice.
    Twice {
        /// The fault.
        fault: Fault,
    },
    /// More things wrong than [`MOST_FAULTS`].
    TooMany {
        /// How many, named and drawn.
        count: usize,
    },
}

/// What may stand at a key.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MayBe {
    /// The number of the format.
    Format,
    /// Small letters, digits and hyphens.
    Id,
    /// A text.
    Text,
    /// Texts by language.
    Texts,
    /// A whole number up to the largest seed.
    Seed,
    /// A list of names of faults.
    Faults,
    /// How many things are drawn.
    Drawn,
}

impl MayBe {
    /// Id of the words, and what stands in them.
    fn words(self) -> (&'static str, String) {
        match self {
            MayBe::Format => ("scenario-may-format", FORMAT.to_string()),
            MayBe::Id => ("scenario-may-id", MOST[0].to_string()),
            MayBe::Text => ("scenario-may-text", String::new()),
            MayBe::Texts => ("scenario-may-texts", String::new()),
            MayBe::Seed => ("scenario-may-number", MOST_SEED.to_string()),
            MayBe::Faults => ("scenario-may-faults", Fault::ALL.map(Fault::code).join(", ")),
            MayBe::Drawn => ("scenario-may-number", MOST_FAULTS.to_string()),
        }
    }
}

impl ScenarioError {
    /// The key, what stands there, and what may.
    pub fn says(&self, words: &Words) -> String {
        let (id, args): (_, Vec<(&str, String)>) = match self {
            Self::NoJson { line, column } => {
                ("scenario-no-json", vec![("line", line.to_string()), ("column", column.to_string())])
            }
            Self::NoObject => ("scenario-no-object", Vec::new()),
            Self::Unknown { key } => ("scenario-unknown", vec![("key", key.clone())]),
            Self::Missing { key } => ("scenario-missing", vec![("key", key.clone())]),
            Self::Value { key, is, may_be } => {
                let (id, most) = may_be.words();
                let may = words.text(id, &[("most", Arg::Text(&most))]);
                ("scenario-value", vec![("key", key.clone()), ("is", is.clone()), ("may", may)])
            }
            Self::Length { key, is, most } => {
                ("scenario-length", vec![("key", key.clone()), ("is", is.to_string()), ("most", most.to_string())])
            }
            Self::Twice { fault } => ("scenario-fault-twice", vec![("fault", fault.code().to_owned())]),
            Self::TooMany { count } => {
                ("scenario-too-many", vec![("count", count.to_string()), ("most", MOST_FAULTS.to_string())])
            }
        };
        let args: Vec<(&str, Arg)> = args.iter().map(|(name, text)| (*name, Arg::Text(text))).collect();
        words.text(id, &args)
    }
}

impl Scenario {
    /// Reads one.
    ///
    /// # Errors
    /// The text is no scenario.
    pub fn read(text: &str) -> Result<Scenario, ScenarioError> {
        read::scenario(text)
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
}
