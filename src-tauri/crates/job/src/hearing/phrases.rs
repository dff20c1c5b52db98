//! The commands that may be said, in English, which is all that the recogniser knows. Chosen so that no two begin or end
//! alike; none of them acknowledges, waives, seals or opens a step again.

use bayhand_measure::Unit;

/// Takes a number that waits, begins the read-back, and stores: nothing else does.
pub const CONFIRM: &str = "confirm";
/// Takes a number that waits back.
pub(super) const CANCEL: &str = "cancel";
/// Goes to what is still open.
pub(super) const NEXT: &str = "next";
/// Leaves the read-back, or takes the last change back.
pub(super) const BACK: &str = "back";
/// Says the step again.
pub(super) const REPEAT: &str = "repeat";
/// Asks for the reason of a hold, which is typed.
pub(super) const HOLD: &str = "hold the job";
/// Answers a check.
pub(super) const GOOD: &str = "all in order";
/// Answers a check: found wrong.
pub(super) const WRONG: &str = "fault found";
/// Writes `none`, where nothing is meant: the word alone is too short to be heard.
pub(super) const NONE: &str = "write none";

/// What no option may be called: the commands, and a word that is too short.
const TAKEN: [&str; 10] = [CONFIRM, CANCEL, NEXT, BACK, REPEAT, HOLD, GOOD, WRONG, NONE, "none"];

/// Longest phrase that is understood, in letters.
const LONGEST: usize = 80;

/// A text as it is said: its words in small letters without punctuation. None where it holds anything but words, or
/// would be a command.
pub fn sayable(text: &str) -> Option<String> {
    let word = |word: &str| {
        let bare = word.trim_matches([',', '.', ':', ';', '(', ')']);
        let letters = !bare.is_empty() && bare.chars().all(|c| c.is_ascii_alphabetic() || c == '\'');
        letters.then(|| bare.to_ascii_lowercase())
    };
    let phrase = text.replace('\u{2019}', "'").split_whitespace().map(word).collect::<Option<Vec<_>>>()?.join(" ");
    let fits = !phrase.is_empty() && phrase.len() <= LONGEST && !TAKEN.contains(&phrase.as_str());
    fits.then_some(phrase)
}

/// The unit of these words.
pub(super) fn unit_said(words: &str) -> Option<Unit> {
    Some(match words {
        "kilograms" | "kilos" => Unit::Kilogram,
        "pounds" => Unit::Pound,
        "millimetres" => Unit::Millimetre,
        "inches" => Unit::Inch,
        "bar" => Unit::Bar,
        "degrees" => Unit::Degree,
        "minutes" => Unit::ArcMinute,
        "turns" => Unit::Turn,
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn options_are_said_as_they_are_read() {
        for (label, said) in [
            ("Go on: lock off", Some("go on lock off")),
            ("Turn, for the cross weight", Some("turn for the cross weight")),
            ("The maker\u{2019}s own (usual)", Some("the maker's own usual")),
            ("Lift, 2 posts", None),
            ("None", None),
            ("\u{2013}", None),
        ] {
            assert_eq!(sayable(label).as_deref(), said, "{label}");
        }
    }
}
