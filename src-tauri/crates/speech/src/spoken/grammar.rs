//! What may be said at the step at hand, and the automaton over spelled-out words that the recogniser is held to.

use super::Corner;
use super::number::DIGITS;
use super::reading::{TEENS, TENS, UNITS};
use regex_automata::dfa::{Automaton, StartError, dense};
use regex_automata::util::{primitives::StateID, start, syntax};
use regex_automata::{Anchored, MatchKind, nfa::thompson};
use schemars::JsonSchema;
use serde::Deserialize;

/// What is waited for.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Expect {
    /// Commands and other whole phrases, in spelled-out words.
    pub phrases: Vec<String>,
    /// The form of the reading that is waited for, if one is.
    pub reading: Option<Form>,
}

/// The form of a reading.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Form {
    /// The corner that is waited for; it may be said or left out. Without it any corner may be said, and one must be: a
    /// bare number is too short to be told from other talk.
    pub corner: Option<Corner>,
    /// Whether other corners may be said too, or none.
    pub corners: Corners,
    /// Most digits before the point, 1 to 4.
    pub digits: u8,
    /// Most digits after it, 0 to 3.
    pub decimals: u8,
    /// Whether `minus` may be said.
    pub minus: bool,
    /// Most looks in one breath, with `then` between them, 1 to 5.
    pub looks: u8,
}

/// Which corners may be said.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Corners {
    /// The one that is waited for; without one, any.
    #[default]
    Waited,
    /// Any; where none is said it is the one that is waited for.
    Any,
    /// None: a number that belongs to no corner.
    None,
}

impl Default for Form {
    fn default() -> Self {
        Self { corner: None, corners: Corners::Waited, digits: 4, decimals: 3, minus: true, looks: 1 }
    }
}

/// Why there is no grammar.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum GrammarError {
    /// Nothing may be said.
    #[error("expect holds neither a phrase nor a reading")]
    Nothing,
    /// A phrase cannot be said as it stands.
    #[error("phrases[{place}] is {phrase:?}; it must be words of letters and apostrophes, at most 80 characters")]
    Phrase {
        /// Its place.
        place: usize,
        /// As it stands.
        phrase: String,
    },
    /// A number of the form is out of range.
    #[error("reading.{field} is {is}; it must be {least} to {most}")]
    Range {
        /// Its field.
        field: &'static str,
        /// What it is.
        is: u8,
        /// Least.
        least: u8,
        /// Most.
        most: u8,
    },
    /// There is more than an automaton can hold.
    #[error("the phrases are too many for one grammar")]
    TooLarge,
}

impl GrammarError {
    /// Path of the field that is wrong.
    pub fn at(&self) -> String {
        match self {
            Self::Nothing | Self::TooLarge => String::new(),
            Self::Phrase { place, .. } => format!("phrases[{place}]"),
            Self::Range { field, .. } => format!("reading.{field}"),
        }
    }
}

/// Where a text stands in a grammar.
pub type Place = StateID;

/// An [`Expect`] as an automaton over the bytes of a text: a space before each word; the first letter may be large,
/// commas and a full stop may stand where a writer sets them.
pub struct Grammar {
    expect: Expect,
    automaton: dense::DFA<Vec<u32>>,
    begin: Place,
}

impl Grammar {
    /// Builds the automaton.
    ///
    /// # Errors
    /// Nothing may be said, a phrase has characters that are not said, or a number of the form is out of range.
    pub fn new(expect: Expect) -> Result<Self, GrammarError> {
        let pattern = pattern(&expect)?;
        let automaton = dense::Builder::new()
            .configure(
                dense::Config::new()
                    .match_kind(MatchKind::All)
                    .dfa_size_limit(Some(8 << 20))
                    .determinize_size_limit(Some(64 << 20)),
            )
            .syntax(syntax::Config::new().unicode(false).utf8(false))
            .thompson(thompson::Config::new().utf8(false))
            .build(&pattern)
            .map_err(|_| GrammarError::TooLarge)?;
        let begin = automaton
            .start_state(&start::Config::new().anchored(Anchored::Yes))
            .map_err(|_: StartError| GrammarError::TooLarge)?;
        Ok(Self { expect, automaton, begin })
    }

    /// What it was built from.
    pub fn expect(&self) -> &Expect {
        &self.expect
    }

    /// Before the first word.
    pub fn begin(&self) -> Place {
        self.begin
    }

    /// After these bytes; `None` when nothing that may be said goes on so.
    pub fn after(&self, mut place: Place, bytes: &[u8]) -> Option<Place> {
        let begins = place == self.begin;
        for (at, byte) in bytes.iter().enumerate() {
            // The first letter follows the space before the first word.
            let byte = if begins && at == 1 { byte.to_ascii_lowercase() } else { *byte };
            place = self.automaton.next_state(place, byte);
            if self.automaton.is_dead_state(place) {
                return None;
            }
        }
        Some(place)
    }

    /// Whether the text may end here.
    pub fn may_end(&self, place: Place) -> bool {
        self.automaton.is_match_state(self.automaton.next_eoi_state(place))
    }

    /// Whether a text of bare words may be said.
    pub fn allows(&self, words: &str) -> bool {
        self.after(self.begin, format!(" {words}").as_bytes()).is_some_and(|place| self.may_end(place))
    }
}

/// Most characters of a phrase.
const MOST_CHARACTERS: usize = 80;

fn pattern(expect: &Expect) -> Result<String, GrammarError> {
    let mut sayings = Vec::new();
    for (place, phrase) in expect.phrases.iter().enumerate() {
        let spoken = |word: &str| word.bytes().all(|b| b.is_ascii_lowercase() || b == b'\'');
        let lower = phrase.trim().to_ascii_lowercase();
        let words: Vec<&str> = lower.split_ascii_whitespace().collect();
        if words.is_empty() || phrase.len() > MOST_CHARACTERS || !words.iter().all(|word| spoken(word)) {
            return Err(GrammarError::Phrase { place, phrase: phrase.clone() });
        }
        // The one word that is written large everywhere.
        let written = words.iter().map(|word| {
            if *word == "i" || word.starts_with("i'") { word.replacen('i', "[iI]", 1) } else { (*word).to_owned() }
        });
        sayings.push(written.collect::<Vec<_>>().join(" "));
    }
    if let Some(form) = &expect.reading {
        sayings.push(reading(form)?);
    }
    if sayings.is_empty() {
        return Err(GrammarError::Nothing);
    }
    Ok(format!(r"(?s-u)\A {}[.!?]?\z", as_written(&format!("({})", sayings.join("|")))))
}

/// Lets a comma stand before each space.
fn as_written(pattern: &str) -> String {
    pattern.replace(' ', ",? ")
}

fn range(field: &'static str, is: u8, least: u8, most: u8) -> Result<(), GrammarError> {
    if (least..=most).contains(&is) { Ok(()) } else { Err(GrammarError::Range { field, is, least, most }) }
}

fn reading(form: &Form) -> Result<String, GrammarError> {
    range("digits", form.digits, 1, 4)?;
    range("decimals", form.decimals, 0, 3)?;
    range("looks", form.looks, 1, 5)?;
    let any = || Corner::ALL.map(Corner::words).join("|");
    let corner = match (form.corner, form.corners) {
        (_, Corners::None) => String::new(),
        (Some(_), Corners::Any) => format!("(({}) )?", any()),
        (Some(corner), Corners::Waited) => format!("({} )?", corner.words()),
        (None, _) => format!("({}) ", any()),
    };
    let number = number(form);
    Ok(format!("{corner}({} ){{0,{}}}{number}( ({}))?", earlier(form), form.looks - 1, UNITS.join("|")))
}

/// One number.
fn number(form: &Form) -> String {
    match pointed(form) {
        None => bare(form),
        Some(pointed) => format!("({}|{pointed})", bare(form)),
    }
}

/// A look with the word that leads to the next: `then`, or after decimals `and`, which is how `then` sounds from afar; after
/// a bare number it may belong to it, as in `two hundred and five`.
fn earlier(form: &Form) -> String {
    match pointed(form) {
        None => format!("{} then", bare(form)),
        Some(pointed) => format!("({pointed} (then|and)|{} then)", bare(form)),
    }
}

/// A number without decimals.
fn bare(form: &Form) -> String {
    format!("{}({})", minus(form), whole(form.digits.into()))
}

/// A number with decimals; none where none are waited for.
fn pointed(form: &Form) -> Option<String> {
    let mut fraction = digits(form.decimals.into());
    if form.decimals >= 2 {
        fraction = format!("{fraction}|{}", below_hundred());
    }
    (form.decimals > 0).then(|| format!("{}(({}) )?point ({fraction})", minus(form), whole(form.digits.into())))
}

const fn minus(form: &Form) -> &'static str {
    if form.minus { "(minus )?" } else { "" }
}

/// Numbers of up to so many digits, digit by digit or in the natural way.
fn whole(most: usize) -> String {
    let one = one_to_nine();
    let small = below_hundred();
    let mut ways = vec![digits(most)];
    if most >= 2 {
        ways.push(small.clone());
    }
    if most >= 3 {
        ways.push(format!("{one} {small}"));
        ways.push(hundreds());
    }
    if most >= 4 {
        ways.push(format!("({one}|a) thousand( (and )?({}|{small}|{one}))?", hundreds()));
    }
    ways.join("|")
}

fn hundreds() -> String {
    format!("({0}|a) hundred( (and )?({1}|{0}))?", one_to_nine(), below_hundred())
}

fn one_to_nine() -> String {
    format!("({})", DIGITS[1..].join("|"))
}

/// Ten to ninety-nine.
fn below_hundred() -> String {
    let tens = TENS.map(|(word, _)| word).join("|");
    format!("({}|({tens})( {})?)", TEENS.map(|(word, _)| word).join("|"), one_to_nine())
}

/// One to `most` digits one after the other; `double` counts as two.
fn digits(most: usize) -> String {
    let digit = format!("({}|oh|o)", DIGITS.join("|"));
    let mut ways = String::new();
    for left in 1..=most {
        let more = |used: usize| if left > used { format!("( {ways})?") } else { String::new() };
        let single = format!("{digit}{}", more(1));
        // Two digits at once leave room for two fewer; what fits one fewer is known by now, two fewer is a part of it.
        let double = if left >= 2 {
            format!("|double {digit}{}", if left > 2 { format!("( {})?", digits(left - 2)) } else { String::new() })
        } else {
            String::new()
        };
        ways = format!("({single}{double})");
    }
    ways
}
