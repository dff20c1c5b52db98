//! What can be wrong with a procedure document, by kind: whoever shows it says it in their own words.

use thiserror::Error;

/// Something wrong with a document.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{at}: {what}")]
pub struct Fault {
    /// Where: a path such as `stages[3].steps[2].gates[0]`, or a step's id.
    pub at: String,
    /// What is wrong and what would be right.
    pub what: Wrong,
}

/// What is wrong.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum Wrong {
    /// The text is no document: what its reader says, with the nearest key that it knows.
    #[error("{0}")]
    Form(String),
    /// A format that this program does not read.
    #[error("is {is}; this program reads format {reads}")]
    Format {
        /// The document's.
        is: u32,
        /// The program's.
        reads: u32,
    },
    /// An id that does not begin with that of its stage.
    #[error("its id must begin with that of its stage, '{0}.'")]
    NotOfItsStage(String),
    /// Something that is named and is not there, such as a step or a topic.
    #[error("{within}: there is no {kind} {name:?}")]
    Nothing {
        /// The key that names it.
        within: String,
        /// What it should be.
        kind: &'static str,
        /// Its name.
        name: String,
    },
    /// A fact that cannot have a value.
    #[error("{within}: {fact} cannot be {value}")]
    CannotBe {
        /// The key in which it stands.
        within: String,
        /// The fact.
        fact: String,
        /// The value.
        value: String,
    },
    /// Too few or too many steps that end the job.
    #[error("{count} steps end the job as {ending}; exactly one must, on its own path")]
    Endings {
        /// How many.
        count: usize,
        /// As what.
        ending: String,
    },
    /// A need that cannot be brought about.
    #[error("needs: 'not' cannot be brought about; name the values that will do")]
    NotInNeeds,
    /// An input that belongs to no choice of its step.
    #[error("input {input}: with: no choice of the step offers {option:?}")]
    NoSuchChoice {
        /// The input.
        input: String,
        /// The option that it names.
        option: String,
    },
    /// A condition that is nested too deep.
    #[error("{0}: all, any and not may be nested two deep")]
    TooDeep(String),
    /// A condition without a value.
    #[error("{within}: no value is given for {fact}")]
    NoValue {
        /// The key in which it stands.
        within: String,
        /// The fact.
        fact: String,
    },
    /// A limit that is no decimal text.
    #[error("input {input}: {limit} must be a decimal text, not {text:?}")]
    NotDecimal {
        /// The input.
        input: String,
        /// `min` or `max`.
        limit: &'static str,
        /// What it is.
        text: String,
    },
    /// An input that is read no times.
    #[error("input {0}: at least one look")]
    NoLook(String),
    /// A choice with fewer than two options.
    #[error("input {0}: a choice needs two options or more")]
    NoChoice(String),
    /// An id that stands twice.
    #[error("{0:?} stands twice")]
    Twice(String),
    /// A step that no job comes to.
    #[error("nothing leads to this step in any job")]
    Unreached,
    /// A gate that can never pass.
    #[error("{0}")]
    Unmeetable(String),
    /// A job that cannot go on.
    #[error("{0}")]
    Stuck(String),
}
