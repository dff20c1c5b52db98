//! What is set for this workshop and its people: units, language, the board's screen, the pedal, how lines are said.
//!
//! Pure: the app keeps them in a file beside the book. They change how things are shown and typed, never what is
//! recorded: an entry keeps the text and unit that were typed.

use crate::ask::Refused;
use bayhand_measure::{Quantity, Unit, parse};
use bayhand_words::Language;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use ts_rs::TS;

/// The units that somebody reads and types in. Other quantities have one unit for everybody.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Units {
    /// Loads and masses.
    #[ts(type = "\"kg\" | \"lb\"")]
    pub mass: Unit,
    /// Heights and lengths.
    #[ts(type = "\"mm\" | \"in\"")]
    pub length: Unit,
    /// Tyre pressures.
    #[ts(type = "\"bar\" | \"kpa\" | \"psi\"")]
    pub pressure: Unit,
    /// Wheel angles: degrees with decimals, or degrees and minutes.
    #[ts(type = "\"deg\" | \"deg-min\"")]
    pub angle: Unit,
}

impl Default for Units {
    fn default() -> Self {
        Self { mass: Unit::Kilogram, length: Unit::Millimetre, pressure: Unit::Bar, angle: Unit::Degree }
    }
}

impl Units {
    /// The unit of a quantity.
    pub fn of(&self, quantity: Quantity) -> Unit {
        match quantity {
            Quantity::Mass => self.mass,
            Quantity::Length => self.length,
            Quantity::Pressure => self.pressure,
            Quantity::Angle => self.angle,
            other => other.base_unit(),
        }
    }

    /// Each with the quantity that it must measure.
    fn pairs(&self) -> [(&'static str, Unit, Quantity); 4] {
        [
            ("mass", self.mass, Quantity::Mass),
            ("length", self.length, Quantity::Length),
            ("pressure", self.pressure, Quantity::Pressure),
            ("angle", self.angle, Quantity::Angle),
        ]
    }
}

/// Where the board hangs.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct BoardPlace {
    /// Name of the screen that it fills; none: it stays a window among others.
    pub screen: Option<String>,
    /// From how far it must be legible, m: decimal text, 0.5 to 30.
    pub distance_m: String,
    /// Diagonal of that screen, inches: decimal text, 7 to 200.
    pub diagonal_in: String,
}

impl Default for BoardPlace {
    fn default() -> Self {
        Self { screen: None, distance_m: "5".into(), diagonal_in: "55".into() }
    }
}

/// Capital height that 20 minutes of arc ask for, as a share of the viewing distance.
///
/// The project's own measure of legibility; that 20' to 22' is what display standards recommend is from memory.
fn twenty_minutes() -> f64 {
    2.0 * (20.0_f64 / 60.0 / 2.0).to_radians().tan()
}

/// Viewing distances that the program accepts, m.
const DISTANCE_M: (f64, f64) = (0.5, 30.0);
/// Diagonals that the program accepts, inches.
const DIAGONAL_IN: (f64, f64) = (7.0, 200.0);

impl BoardPlace {
    /// Least height of a capital on the board, mm; and the diagonal of its screen, mm.
    pub fn legible(&self) -> (f64, f64) {
        let read = |text: &str, (least, most): (f64, f64)| {
            parse(text, Unit::Ratio).map_or(least, |value| value.base.clamp(least, most))
        };
        let (distance_m, diagonal_in) = (read(&self.distance_m, DISTANCE_M), read(&self.diagonal_in, DIAGONAL_IN));
        (1000.0 * distance_m * twenty_minutes(), diagonal_in * 25.4)
    }
}

/// How lines are said to somebody.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields, default)]
pub struct Speech {
    /// Whether steps, hazards, waits and read-backs are said at all.
    pub say: bool,
    /// Loudness, 0 to 100 %.
    pub volume_percent: u8,
    /// Words a minute, 80 to 300.
    pub words_a_minute: u16,
    /// A voice of the system by its own name; none: the usual one of the language.
    pub voice: Option<String>,
}

impl Default for Speech {
    fn default() -> Self {
        Self { say: true, volume_percent: 100, words_a_minute: 150, voice: None }
    }
}

/// How spoken answers are heard.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum HearBy {
    /// Not at all: keys, touch and pedal only. Nothing of hearing is in memory then.
    Keys,
    /// While a key is held down.
    #[default]
    Hold,
    /// Whenever somebody speaks.
    HandsFree,
}

/// Whether and how spoken answers are heard.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields, default)]
pub struct Hearing {
    /// How.
    pub by: HearBy,
    /// Code of the key that is held to talk, as the window names it; it may be a pedal's.
    pub talk_key: String,
    /// The voice model's file; none: where `cargo xtask voice` puts it.
    pub model: Option<String>,
}

impl Default for Hearing {
    fn default() -> Self {
        Self { by: HearBy::default(), talk_key: "F8".into(), model: None }
    }
}

/// Everything that is set.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields, default)]
pub struct Preferences {
    /// Code of the language: `en`.
    pub language: String,
    /// Units of the workshop: of the board, the desk, the sheet, and of whoever chose none.
    pub units: Units,
    /// Units by initials.
    pub people: BTreeMap<String, Units>,
    /// Where the board hangs.
    pub board: BoardPlace,
    /// Code of the key that the pedal sends, as the window names it; none: there is no pedal.
    pub pedal: Option<String>,
    /// Where the workshop's own procedure was looked at the last time; none: never.
    pub procedure: Option<String>,
    /// The folder into which the book is copied at the end of each job; none: no copies are made.
    pub copies_in: Option<String>,
    /// How lines are said to whoever chose nothing.
    pub speech: Speech,
    /// How lines are said, by initials.
    pub speech_of: BTreeMap<String, Speech>,
    /// How spoken answers are heard.
    pub hearing: Hearing,
}

impl Default for Preferences {
    fn default() -> Self {
        Self {
            language: "en".into(),
            units: Units::default(),
            people: BTreeMap::new(),
            board: BoardPlace::default(),
            pedal: None,
            procedure: None,
            copies_in: None,
            speech: Speech::default(),
            speech_of: BTreeMap::new(),
            hearing: Hearing::default(),
        }
    }
}

/// What is wrong with a preference: its field, and the id of the words that say so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wrong {
    /// The field.
    pub field: &'static str,
    /// Id of the words, after `refused-`.
    pub code: &'static str,
}

impl Wrong {
    /// The refusal, once somebody gave it words.
    pub fn refused(self, says: String) -> Refused {
        Refused { code: self.code.to_owned(), field: Some(self.field.to_owned()), says }
    }
}

impl Preferences {
    /// The language that is shown and said; one that the program does not know: its own.
    pub fn in_language(&self) -> Language {
        Language::asked_for(&self.language).unwrap_or_default()
    }

    /// The units of a person, or the workshop's.
    pub fn units_of(&self, initials: &str) -> Units {
        self.people.get(initials).copied().unwrap_or(self.units)
    }

    /// How lines are said to a person.
    pub fn speech_to(&self, initials: &str) -> &Speech {
        self.speech_of.get(initials).unwrap_or(&self.speech)
    }

    /// Checks everything but the language, which `words` knows.
    ///
    /// # Errors
    /// The first that cannot be.
    pub fn check(&self) -> Result<(), Wrong> {
        let fits = |text: &str, (least, most): (f64, f64)| {
            parse(text, Unit::Ratio).is_ok_and(|value| (least..=most).contains(&value.base))
        };
        if !fits(&self.board.distance_m, DISTANCE_M) {
            return Err(Wrong { field: "distance", code: "board-distance" });
        }
        if !fits(&self.board.diagonal_in, DIAGONAL_IN) {
            return Err(Wrong { field: "diagonal", code: "board-diagonal" });
        }
        for units in std::iter::once(&self.units).chain(self.people.values()) {
            if let Some((field, ..)) = units.pairs().into_iter().find(|(_, unit, what)| unit.quantity() != *what) {
                return Err(Wrong { field, code: "unit-of-other-kind" });
            }
        }
        if self.pedal.as_ref() == Some(&self.hearing.talk_key) {
            return Err(Wrong { field: "talk-key", code: "talk-is-pedal" });
        }
        for speech in std::iter::once(&self.speech).chain(self.speech_of.values()) {
            if speech.volume_percent > 100 {
                return Err(Wrong { field: "volume", code: "speech-volume" });
            }
            if !(80..=300).contains(&speech.words_a_minute) {
                return Err(Wrong { field: "speed", code: "speech-speed" });
            }
            // It is handed to a program of the system as an argument.
            let plain = |c: char| c.is_alphanumeric() || matches!(c, ' ' | '-' | '+' | '_' | '.');
            let name = speech.voice.as_deref().unwrap_or("usual");
            if name.is_empty() || name.len() > 60 || name.starts_with(['-', '.']) || !name.chars().all(plain) {
                return Err(Wrong { field: "voice", code: "speech-voice" });
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn twenty_minutes_of_arc_at_five_metres_are_29_mm() {
        let (capital_mm, diagonal_mm) = BoardPlace::default().legible();
        // 5 m times 20' in radians, 20 x pi / 10800 (the tangent differs in the sixth digit).
        assert!((capital_mm - 5000.0 * 20.0 * std::f64::consts::PI / 10_800.0).abs() < 1e-3, "{capital_mm}");
        assert!((diagonal_mm - 1397.0).abs() < 1e-9, "55 inches");
    }

    #[test]
    fn what_cannot_be_is_refused_by_its_field() {
        let check = |change: &dyn Fn(&mut Preferences), field: Option<&str>| {
            let mut preferences = Preferences::default();
            change(&mut preferences);
            assert_eq!(preferences.check().err().map(|wrong| wrong.field), field, "{preferences:?}");
        };
        check(&|_| {}, None);
        check(&|p| p.board.distance_m = "7,5".into(), None);
        check(&|p| p.board.distance_m = "0.2".into(), Some("distance"));
        check(&|p| p.board.distance_m = "far".into(), Some("distance"));
        check(&|p| p.board.diagonal_in = "500".into(), Some("diagonal"));
        check(&|p| p.units.mass = Unit::Bar, Some("mass"));
        let turns = Units { angle: Unit::Turn, ..Units::default() };
        check(&|p| p.people = BTreeMap::from([("RO".into(), turns)]), Some("angle"));
        check(&|p| p.speech.volume_percent = 101, Some("volume"));
        check(&|p| p.pedal = Some("F8".into()), Some("talk-key"));
        check(&|p| p.speech.voice = Some("en-us+f3".into()), None);
        check(&|p| p.speech.voice = Some("--path=x".into()), Some("voice"));
        let hasty = Speech { words_a_minute: 900, ..Speech::default() };
        check(&|p| p.speech_of = BTreeMap::from([("RO".into(), hasty.clone())]), Some("speed"));
    }

    #[test]
    fn a_person_who_chose_none_has_the_workshops_units() {
        let mut preferences = Preferences::default();
        preferences.people.insert("RO".into(), Units { mass: Unit::Pound, ..Units::default() });
        assert_eq!(preferences.units_of("RO").mass, Unit::Pound);
        assert_eq!(preferences.units_of("LB").mass, Unit::Kilogram);
        preferences.speech_of.insert("RO".into(), Speech { say: false, ..Speech::default() });
        assert!(!preferences.speech_to("RO").say && preferences.speech_to("LB").say);
    }
}
