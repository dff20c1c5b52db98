//! Spoken answers: what may be said at the step at hand, and what comes of what was heard. Pure.
//!
//! A heard number waits until it is confirmed, and belongs to the draft only then, by the same way as one that is typed.
//! Nothing heard acknowledges a hazard, waives, seals or opens again: there is no phrase for it. Only [`CONFIRM`] stores.

use crate::{
    ask::Entry,
    draft::{Draft, unit, unit_code},
    show::preset,
    tell::Tell,
    view::{HeardAct, HeardPending, HeardView},
};
use bayhand_measure::{Range, Unit, decimals_for};
use bayhand_procedure::{Entered, Input, Kind, Number, Per, Step};
pub use bayhand_vehicle::Place;
use std::collections::BTreeMap;

mod phrases;
use phrases::{BACK, CANCEL, GOOD, HOLD, NEXT, NONE, REPEAT, WRONG, unit_said};
pub use phrases::{CONFIRM, sayable};

/// What is waited for: whole phrases, and the form of a reading.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Awaited {
    /// Phrases in spelled-out English words.
    pub phrases: Vec<String>,
    /// The reading.
    pub reading: Option<Form>,
}

/// The form of a reading.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Form {
    /// Where the reading is waited for; none: at no corner.
    pub corner: Option<Place>,
    /// True where another corner may be named.
    pub others: bool,
    /// Most digits before the point.
    pub digits: u8,
    /// Most digits after it.
    pub decimals: u8,
    /// Whether it may be negative.
    pub minus: bool,
    /// Most looks.
    pub looks: u8,
}

/// What the recogniser made of a sound.
#[derive(Clone, Debug, PartialEq)]
pub struct Heard {
    /// The words as they were taken.
    pub words: String,
    /// What they are taken for.
    pub what: What,
    /// From 0 to 1.
    pub score: f32,
    /// How far speech stood above the noise of the place, dB, where that could be measured.
    pub above_noise_db: Option<f32>,
}

impl Heard {
    /// A sound that was not listened to.
    pub fn nothing() -> Self {
        Self { words: String::new(), what: What::Rejected("silence".into()), score: 0.0, above_noise_db: None }
    }
}

/// What was said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum What {
    /// One of the phrases.
    Phrase(String),
    /// A reading.
    Reading {
        /// The corner that was named, or else the one that was waited for.
        corner: Option<Place>,
        /// Each look as decimal text.
        looks: Vec<String>,
        /// The unit in words, when one was said.
        unit: Option<String>,
    },
    /// Nothing was taken: `too-short`, `silence`, `other-talk`, `unsure`.
    Rejected(String),
}

/// Where speech stands less above the noise than this, dB, what is heard is less sure than keys. Of the test speech in noise
/// at 10 dB, whose quiet parts are short, some show 8 and most more.
const LOUD_DB: f32 = 8.0;

/// A number that was heard and waits to be confirmed.
#[derive(Clone, Debug, PartialEq)]
pub struct Pending {
    /// The step.
    pub step: String,
    /// Key of the field.
    pub key: String,
    /// What would be entered.
    pub entry: Entry,
    /// What was heard.
    pub words: String,
    /// How sure that was, 0 to 1.
    pub score: f32,
}

/// What comes of something heard.
#[derive(Clone, Debug, PartialEq)]
pub struct Came {
    /// What the window does and shows.
    pub view: HeardView,
    /// What waits to be confirmed from now on.
    pub pending: Option<Pending>,
    /// What was confirmed, or answered so that it needs no read-back: it stands in the record with what was heard.
    pub taken: Option<Pending>,
}

/// The step at hand as its person sees it.
pub struct Scene<'a> {
    /// The step.
    pub step: &'a Step,
    /// True while a hazard is still to be acknowledged.
    pub hazards_open: bool,
    /// The draft so far.
    pub entries: &'a BTreeMap<String, Entered>,
    /// True while the draft is read back.
    pub reading_back: bool,
    /// What waits to be confirmed.
    pub pending: Option<&'a Pending>,
    /// The person's words and units.
    pub tell: &'a Tell<'a>,
}

impl Scene<'_> {
    /// What may be said now.
    pub fn awaited(&self) -> Awaited {
        let mut phrases = vec![REPEAT, HOLD];
        if self.hazards_open {
            return Awaited { phrases: owned(&phrases), reading: None };
        }
        if let Some(pending) = self.pending {
            phrases.extend([CONFIRM, CANCEL]);
            return Awaited { phrases: owned(&phrases), reading: self.form_of(&pending.key, Named::Free) };
        }
        if self.reading_back {
            phrases.extend([CONFIRM, BACK]);
            return Awaited { phrases: owned(&phrases), reading: None };
        }
        phrases.extend([NEXT, BACK]);
        let again = self.said_again().and_then(|key| self.form_of(&key, Named::Must));
        let Some((input, key)) = self.at_hand() else {
            phrases.push(CONFIRM);
            return Awaited { phrases: owned(&phrases), reading: again };
        };
        let mut phrases = owned(&phrases);
        match &input.kind {
            Kind::Check => phrases.extend(owned(&[GOOD, WRONG])),
            Kind::Text => phrases.push(NONE.to_owned()),
            Kind::Choice(_) => phrases.extend(self.options(input).into_iter().map(|(_, phrase)| phrase)),
            Kind::Number(_) => return Awaited { phrases, reading: self.form_of(&key, Named::Free) },
        }
        Awaited { phrases, reading: again }
    }

    /// What comes of something heard.
    pub fn hear(&self, heard: &Heard) -> Came {
        let mut came = match &heard.what {
            What::Rejected(code) => self.stays(self.rejected(code)),
            What::Phrase(phrase) => self.phrase(phrase, heard),
            What::Reading { corner, looks, unit } => self.reading(*corner, looks, unit.as_deref(), heard),
        };
        came.view.loud = heard
            .above_noise_db
            .filter(|db| *db < LOUD_DB)
            .map(|db| self.tell.text("heard-loud", &[("db", format!("{:.0}", db.max(0.0)))]));
        came
    }

    /// The number that waits is confirmed by hand.
    pub fn confirm(&self) -> Came {
        self.pending.map_or_else(|| self.says("heard-nothing-waits"), |pending| self.take(pending.clone()))
    }

    /// The number that waits is taken back.
    pub fn cancel(&self) -> Came {
        self.came(HeardAct::Nothing, self.tell.text("heard-taken-back", &[]))
    }

    fn phrase(&self, phrase: &str, heard: &Heard) -> Came {
        let at_hand = self.at_hand();
        match phrase {
            REPEAT => self.keeps(HeardAct::Again, String::new()),
            HOLD => self.keeps(HeardAct::Hold, String::new()),
            // Whatever was heard: while a hazard is open nothing else is done.
            _ if self.hazards_open => self.says("heard-hazards"),
            CONFIRM if self.pending.is_some() => self.confirm(),
            CANCEL if self.pending.is_some() => self.cancel(),
            CONFIRM if self.reading_back || at_hand.is_none() => self.came(HeardAct::Confirm, String::new()),
            BACK if self.reading_back => self.came(HeardAct::Change, self.tell.text("heard-changes", &[])),
            BACK if self.pending.is_none() => self.came(HeardAct::Undo, self.tell.text("heard-undone", &[])),
            NEXT if self.pending.is_none() && !self.reading_back => match at_hand {
                Some((_, key)) => self.came(HeardAct::Focus { key: key.clone() }, self.asks(&key)),
                None => self.says("heard-ready"),
            },
            other => match at_hand.and_then(|(input, key)| Some((self.answer(input, other)?, key))) {
                Some((text, key)) => self.take(Pending {
                    step: self.step.id.clone(),
                    key,
                    entry: Entry { text, unit: None },
                    words: heard.words.clone(),
                    score: heard.score,
                }),
                None => self.says("heard-other-talk"),
            },
        }
    }

    /// The entry that a phrase answers an input with.
    fn answer(&self, input: &Input, phrase: &str) -> Option<String> {
        match (&input.kind, phrase) {
            (Kind::Check, GOOD) => Some("yes".into()),
            (Kind::Check, WRONG) => Some("no".into()),
            (Kind::Text, NONE) => Some("none".into()),
            (Kind::Choice(_), phrase) => {
                self.options(input).into_iter().find(|(_, said)| said == phrase).map(|(id, _)| id)
            }
            _ => None,
        }
    }

    /// A reading waits from now on, in place of one that waited before, once it can be understood.
    fn reading(&self, corner: Option<Place>, looks: &[String], said_unit: Option<&str>, heard: &Heard) -> Came {
        if self.hazards_open || self.reading_back {
            return self.says("heard-other-talk");
        }
        let waits = self.pending.map(|pending| pending.key.clone());
        let open = || self.at_hand().filter(|(input, _)| is_number(input)).map(|(_, key)| key);
        let again = || self.said_again().filter(|key| corner.is_some() || place_of(key).is_none());
        let Some(key) = waits.or_else(open).or_else(again) else { return self.says("heard-other-talk") };
        let key = match (corner, key.split_once('.')) {
            (Some(corner), Some((input, _))) => format!("{input}.{}", corner.code()),
            _ => key,
        };
        let number = self.step.input_of(&key).and_then(|input| match &input.kind {
            Kind::Number(number) => Some(number),
            _ => None,
        });
        let Some(number) = number else { return self.says("heard-other-talk") };
        let unit = match said_unit {
            None => self.unit_of(&key, number),
            Some(said) => {
                unit_said(said).filter(|said| unit(&number.unit).is_some_and(|u| u.quantity() == said.quantity()))
            }
        };
        let Some(unit) = unit else { return self.says("heard-unit") };
        let entry = Entry { text: looks.join(" "), unit: Some(unit_code(unit)) };
        let pending =
            Pending { step: self.step.id.clone(), key, entry, words: heard.words.clone(), score: heard.score };
        match self.shown(&pending) {
            Ok(shown) => {
                let says = self
                    .tell
                    .text("said-number", &[("label", shown.label.clone()), ("text", shown.text.replace("  ", ", "))]);
                let view = HeardView { act: HeardAct::Nothing, says, loud: None, pending: Some(shown) };
                Came { view, pending: Some(pending), taken: None }
            }
            Err(says) => self.stays(says),
        }
    }

    /// What waits, as it was understood.
    fn shown(&self, pending: &Pending) -> Result<HeardPending, String> {
        let entered = Entered { text: pending.entry.text.clone(), unit: pending.entry.unit.clone() };
        let entries = BTreeMap::from([(pending.key.clone(), entered)]);
        let draft = Draft::check(self.step, &entries, self.tell.words).map_err(|refused| refused.says)?;
        let number = draft.read_back(self.step, self.tell).numbers.into_iter().next();
        number
            .map(|number| HeardPending { key: number.key, label: number.label, text: number.text })
            .ok_or_else(|| self.tell.text("heard-other-talk", &[]))
    }

    /// An answer goes into the draft, and the next thing is asked for.
    fn take(&self, taken: Pending) -> Came {
        let Pending { key, entry, .. } = taken.clone();
        let mut entries = self.entries.clone();
        entries.insert(key.clone(), Entered { text: entry.text.clone(), unit: entry.unit.clone() });
        let next = Scene { entries: &entries, pending: None, ..*self };
        let says = next.at_hand().map_or_else(|| self.tell.text("heard-ready", &[]), |(_, key)| self.asks(&key));
        let act = HeardAct::Fill { key, text: entry.text, unit: entry.unit };
        Came { taken: Some(taken), ..self.came(act, says) }
    }

    fn rejected(&self, code: &str) -> String {
        let id = match code {
            "too-short" | "silence" => "heard-nothing",
            "unsure" => "heard-unsure",
            _ => "heard-other-talk",
        };
        self.tell.text(id, &[])
    }

    /// The name of a field, as a question.
    fn asks(&self, key: &str) -> String {
        self.tell.text("heard-asks", &[("label", crate::draft::field_name(self.tell.words, &self.step.id, key))])
    }

    fn says(&self, id: &str) -> Came {
        self.stays(self.tell.text(id, &[]))
    }

    /// Nothing is done, and what waits still does.
    fn stays(&self, says: String) -> Came {
        self.keeps(HeardAct::Nothing, says)
    }

    fn keeps(&self, act: HeardAct, says: String) -> Came {
        let shown = self.pending.and_then(|pending| self.shown(pending).ok());
        Came { view: HeardView { act, says, loud: None, pending: shown }, pending: self.pending.cloned(), taken: None }
    }

    /// Something is done, and nothing waits after it.
    fn came(&self, act: HeardAct, says: String) -> Came {
        Came { view: HeardView { act, says, loud: None, pending: None }, pending: None, taken: None }
    }

    /// The first input without an answer.
    fn at_hand(&self) -> Option<(&Input, String)> {
        let asked = self.step.inputs.iter().filter(|input| self.step.asks(input, self.entries));
        let open = |key: &String| self.entries.get(key).is_none_or(|entry| entry.text.trim().is_empty());
        asked.flat_map(|input| input.keys().into_iter().map(move |key| (input, key))).find(|(_, key)| open(key))
    }

    /// Key of the number that may be said again: once all is answered the last that is asked for; where something else than a
    /// number is asked for, the one number that was asked for just before it.
    fn said_again(&self) -> Option<String> {
        let mut asked = self.step.inputs.iter().filter(|input| self.step.asks(input, self.entries));
        let Some((at_hand, _)) = self.at_hand() else {
            return asked.rfind(|input| is_number(input)).and_then(|input| input.keys().pop());
        };
        let before = asked.take_while(|input| input.id != at_hand.id).last()?;
        let key = before.keys().pop().filter(|key| is_number(before) && place_of(key).is_none())?;
        (!is_number(at_hand)).then_some(key)
    }

    /// The form of the reading of a field.
    fn form_of(&self, key: &str, named: Named) -> Option<Form> {
        let input = self.step.input_of(key)?;
        let Kind::Number(number) = &input.kind else { return None };
        let unit = self.unit_of(key, number)?;
        let (min, max) = Range::new(&number.min, &number.max, crate::draft::unit(&number.unit)?).ok()?.shown_in(unit);
        let digits = |text: &String| text.trim_start_matches('-').split('.').next().map_or(1, str::len);
        let decimals = if unit == Unit::Turn { 3 } else { decimals_for(unit) };
        Some(Form {
            corner: place_of(key).filter(|_| named == Named::Free),
            others: matches!(input.per, Per::Corner | Per::FrontWheels | Per::RearWheels),
            digits: u8::try_from(digits(&min).max(digits(&max))).unwrap_or(4).clamp(1, 4),
            decimals: u8::try_from(decimals).unwrap_or(3).min(3),
            minus: min.starts_with('-'),
            looks: number.looks,
        })
    }

    /// The unit that a number is said in: that of its field, or the person's. Degrees are said with decimals.
    fn unit_of(&self, key: &str, number: &Number) -> Option<Unit> {
        let chosen = self.entries.get(key).and_then(|entry| unit(entry.unit.as_deref()?));
        let spoken = chosen.or_else(|| preset(number, self.tell))?;
        Some(if spoken == Unit::DegreeMinute { Unit::Degree } else { spoken })
    }

    /// The options of a choice that can be said as they are read, with their phrases; of two alike none.
    fn options(&self, input: &Input) -> Vec<(String, String)> {
        let Kind::Choice(options) = &input.kind else { return Vec::new() };
        let said = |id: &String| Some((id.clone(), sayable(&self.tell.text(&format!("option-{id}"), &[]))?));
        let all: Vec<_> = options.iter().filter_map(|option| said(&option.id)).collect();
        let alone = |phrase: &String| all.iter().filter(|(_, other)| other == phrase).count() == 1;
        all.iter().filter(|(_, phrase)| alone(phrase)).cloned().collect()
    }
}

/// Whether the corner of a reading must be named; one that has none is said bare.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Named {
    /// It is the one that is waited for, where none is named.
    Free,
    /// None is waited for any more: a bare number would change what nobody looks at.
    Must,
}

fn is_number(input: &Input) -> bool {
    matches!(input.kind, Kind::Number(_))
}

/// The corner that a field belongs to.
fn place_of(key: &str) -> Option<Place> {
    let (_, at) = key.split_once('.')?;
    Place::ALL.into_iter().find(|place| place.code() == at)
}

fn owned(phrases: &[&str]) -> Vec<String> {
    phrases.iter().map(|phrase| (*phrase).to_owned()).collect()
}
