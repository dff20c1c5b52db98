//! `hear`: what a sound file says, held to what is waited for, a JSON line in and a JSON line out. `say`: a text as sound.

use crate::lines::Wrong;
use bayhand_speech::hear::Recogniser;
use bayhand_speech::heard::What;
use bayhand_speech::say::voice::{self, Manner};
use bayhand_speech::sound;
use bayhand_speech::spoken::Corner;
use bayhand_speech::spoken::grammar::{Expect, Form, Grammar};
use bayhand_speech::spoken::number::{Tongue, expand};
use bayhand_speech::{model::place, sound::SoundError};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::path::{Path, PathBuf};
use std::time::Instant;

/// What `hear` reads.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HearLine {
    /// A WAV or FLAC file of at most 30 seconds, at any rate from 8 to 192 kHz.
    pub audio: PathBuf,
    /// What is waited for.
    pub expect: Expected,
}

/// What is waited for: phrases, a reading, or both.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Expected {
    /// Whole phrases in spelled-out words.
    #[serde(default)]
    pub phrases: Vec<String>,
    /// Whether a reading may be said, or its form.
    #[serde(default)]
    pub reading: Wanted,
}

/// Whether a reading is waited for.
#[derive(Clone, Debug, Deserialize, JsonSchema)]
#[serde(untagged)]
pub enum Wanted {
    /// `true`: any corner, which must be said, with a number of up to four digits and three decimals; `false`: none.
    Any(bool),
    /// A reading of this form.
    Of(Form),
}

impl Default for Wanted {
    fn default() -> Self {
        Self::Any(false)
    }
}

impl Wanted {
    fn form(&self) -> Option<Form> {
        match self {
            Self::Any(wanted) => wanted.then(Form::default),
            Self::Of(form) => Some(form.clone()),
        }
    }
}

/// The answer: exactly one of phrase, reading and rejected.
#[derive(Debug, Default, Serialize, JsonSchema)]
pub struct HeardLine {
    /// The phrase that was said, as it stood in the question.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub phrase: Option<String>,
    /// The reading that was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reading: Option<HeardReading>,
    /// Why nothing was taken: `too-short`, `silence`, `other-talk`, `unsure`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rejected: Option<&'static str>,
    /// From 0 to 1; what is taken has at least 0.5.
    pub score: f32,
    /// Time that hearing took, ms, without reading the model and the file.
    pub ms: u64,
}

/// A reading as it was said.
#[derive(Debug, Serialize, JsonSchema)]
pub struct HeardReading {
    /// The corner that was said, or else the one that was waited for.
    pub corner: Option<Corner>,
    /// Decimal text with its trailing zeros; several looks have a space between them.
    pub text: String,
    /// The unit, when one was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<&'static str>,
}

/// The recogniser from `model`, or from where `cargo xtask voice` or the package puts its file.
///
/// # Errors
/// In words: no model is there, or it is damaged.
pub fn recogniser(model: Option<PathBuf>) -> Result<Recogniser, String> {
    let path =
        model.or_else(place::usual).ok_or("this system names no home folder; name the voice model with --model")?;
    if !path.is_file() {
        return Err(format!(
            "there is no voice model at {}; `cargo xtask voice` makes it, the package bayhand-voice-en brings it, \
             --model names another",
            path.display()
        ));
    }
    Recogniser::read(&path).map_err(|error| format!("{}: {error}", path.display()))
}

/// `hear`.
///
/// # Errors
/// A sound that cannot be read, or nothing that may be said.
pub fn hear(recogniser: &Recogniser, line: &HearLine) -> Result<HeardLine, Wrong> {
    let expect = Expect { phrases: line.expect.phrases.clone(), reading: line.expect.reading.form() };
    let grammar = Grammar::new(expect).map_err(|error| {
        let at = error.at();
        let at = if at.is_empty() { "expect".to_owned() } else { format!("expect.{at}") };
        Wrong { code: "cannot-be", at, says: error.to_string() }
    })?;
    let sound = sound::read(&line.audio).map_err(|error: SoundError| Wrong {
        code: "cannot-be",
        at: "audio".to_owned(),
        says: format!("audio {}: {error}", line.audio.display()),
    })?;
    let began = Instant::now();
    let heard = recogniser.hear(&sound, &grammar);
    let mut answer = HeardLine {
        score: (heard.score * 1000.0).round() / 1000.0,
        ms: u64::try_from(began.elapsed().as_millis()).unwrap_or(u64::MAX),
        ..HeardLine::default()
    };
    match heard.what {
        What::Phrase(phrase) => answer.phrase = Some(phrase),
        What::Reading { corner, looks, unit } => {
            answer.reading = Some(HeardReading { corner, text: looks.join(" "), unit });
        }
        What::Rejected(why) => answer.rejected = Some(why.code()),
    }
    Ok(answer)
}

/// `say`: writes the text, its numbers and units in words, as a WAV file.
///
/// # Errors
/// In words: no program that speaks is here, it failed, or a value is out of range.
pub fn say(text: &str, manner: &Manner, out: &Path) -> Result<(), String> {
    if text.trim().is_empty() {
        return Err("--text is empty".to_owned());
    }
    voice::to_file(&expand(text, manner.tongue), manner, out).map_err(|error| error.to_string())
}

/// A language by its code.
///
/// # Errors
/// Names the codes.
pub fn tongue(code: &str) -> Result<Tongue, String> {
    match code {
        "en" => Ok(Tongue::English),
        "de" => Ok(Tongue::German),
        other => Err(format!("{other:?} is neither en nor de")),
    }
}
