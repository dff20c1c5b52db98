//! Spelled-out words to a reading.

use super::Corner;
use super::number::DIGITS;

/// Ten to nineteen.
pub(super) const TEENS: [(&str, u32); 10] = [
    ("ten", 10),
    ("eleven", 11),
    ("twelve", 12),
    ("thirteen", 13),
    ("fourteen", 14),
    ("fifteen", 15),
    ("sixteen", 16),
    ("seventeen", 17),
    ("eighteen", 18),
    ("nineteen", 19),
];

/// Twenty to ninety.
pub(super) const TENS: [(&str, u32); 8] = [
    ("twenty", 20),
    ("thirty", 30),
    ("forty", 40),
    ("fifty", 50),
    ("sixty", 60),
    ("seventy", 70),
    ("eighty", 80),
    ("ninety", 90),
];

/// Units that may be said after a reading.
pub(super) const UNITS: [&str; 9] =
    ["kilograms", "kilos", "pounds", "millimetres", "inches", "bar", "degrees", "minutes", "turns"];

/// A reading as it was said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// The corner, when one was said.
    pub corner: Option<Corner>,
    /// Each look as a decimal text, with its trailing zeros.
    pub looks: Vec<String>,
    /// The unit, when one was said.
    pub unit: Option<&'static str>,
}

/// Reads bare words, lower case, one space between them; `None` when they are no reading.
pub fn parse(text: &str) -> Option<Said> {
    let mut corner = None;
    let mut rest = text;
    for one in Corner::ALL {
        if let Some(after) = text.strip_prefix(one.words()).and_then(|after| after.strip_prefix(' ')) {
            (corner, rest) = (Some(one), after);
        }
    }
    let said = UNITS.iter().find_map(|unit| Some((rest.strip_suffix(unit)?.strip_suffix(' ')?, *unit)));
    let unit = said.map(|(before, unit)| {
        rest = before;
        unit
    });
    let looks = looks(rest).into_iter().map(|look| decimal(&look.join(" "))).collect::<Option<Vec<String>>>()?;
    Some(Said { corner, looks, unit })
}

/// The words of each look. `and` parts two only after decimals.
fn looks(text: &str) -> Vec<Vec<&str>> {
    let mut looks = vec![Vec::new()];
    for word in text.split(' ') {
        let pointed = looks.last().is_some_and(|look| look.contains(&"point"));
        if word == "then" || (word == "and" && pointed) {
            looks.push(Vec::new());
        } else if let Some(look) = looks.last_mut() {
            look.push(word);
        }
    }
    looks
}

/// One number.
fn decimal(text: &str) -> Option<String> {
    let words: Vec<&str> = text.split(' ').collect();
    let (minus, words) = match words.split_first() {
        Some((&"minus", rest)) => ("-", rest),
        _ => ("", &words[..]),
    };
    let mut halves = words.splitn(2, |word| *word == "point");
    let whole = halves.next().filter(|words| !words.is_empty()).map_or(Some("0".to_owned()), figures)?;
    let whole = whole.trim_start_matches('0');
    let whole = if whole.is_empty() { "0" } else { whole };
    Some(match halves.next() {
        Some(fraction) => format!("{minus}{whole}.{}", one_after_other(fraction)?),
        None if words.is_empty() => return None,
        None => format!("{minus}{whole}"),
    })
}

/// The whole part: by hundreds and thousands, or one after the other.
fn figures(words: &[&str]) -> Option<String> {
    if !words.iter().any(|word| matches!(*word, "hundred" | "thousand")) {
        return one_after_other(words);
    }
    let (mut sum, mut group) = (0_u32, 0_u32);
    for word in words {
        match *word {
            "and" => {}
            "a" => group = 1,
            "hundred" => group *= 100,
            "thousand" => (sum, group) = (sum + group * 1000, 0),
            word => group += digit(word).or_else(|| teen(word)).or_else(|| ten(word))?,
        }
    }
    Some((sum + group).to_string())
}

/// Digits one after the other, among them tens such as `sixty five`; none at all gives no text.
fn one_after_other(words: &[&str]) -> Option<String> {
    let mut out = String::new();
    let mut words = words.iter().peekable();
    while let Some(word) = words.next() {
        if *word == "double" {
            let digit = digit(words.next()?)?;
            out += &format!("{digit}{digit}");
        } else if let Some(tens) = ten(word) {
            let unit = words.peek().and_then(|word| digit(word)).filter(|unit| *unit > 0);
            unit.inspect(|_| {
                words.next();
            });
            out += &(tens + unit.unwrap_or(0)).to_string();
        } else {
            out += &digit(word).or_else(|| teen(word))?.to_string();
        }
    }
    (!out.is_empty()).then_some(out)
}

fn digit(word: &str) -> Option<u32> {
    if matches!(word, "oh" | "o") {
        return Some(0);
    }
    DIGITS.iter().position(|digit| *digit == word).map(|digit| digit as u32)
}

fn teen(word: &str) -> Option<u32> {
    TEENS.iter().find(|(teen, _)| *teen == word).map(|(_, value)| *value)
}

fn ten(word: &str) -> Option<u32> {
    TENS.iter().find(|(ten, _)| *ten == word).map(|(_, value)| *value)
}
