//! What is said aloud, and what of this computer is missing for it.

use super::Desk;
use crate::{
    ask::Refused,
    preferences::Speech,
    spoken::{self, Spoken},
    tell::Tell,
    view::{HeardView, ReadBack, Screen, StepView},
};
use std::path::PathBuf;
use std::sync::{Mutex, PoisonError};

/// What was said of last, and what is missing.
#[derive(Debug, Default)]
pub(super) struct Speaking {
    followed: Mutex<Option<StepView>>,
    missing: Mutex<Vec<Missing>>,
}

/// A part of this computer that speech needs and that is not here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Missing {
    /// No program speaks, or it fails.
    Voice(Lack),
    /// No loudspeaker.
    Speaker(Lack),
    /// No microphone, or nothing that records.
    Microphone(Lack),
    /// No voice model.
    Model(Lack),
}

/// Why a part is missing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Lack {
    /// None of these programs is here.
    Program(String),
    /// No device answers.
    Device,
    /// No file lies there.
    File(PathBuf),
    /// Something else, as the part itself says it.
    Other(String),
}

impl Lack {
    fn says(&self, tell: &Tell) -> String {
        let (id, what) = match self {
            Self::Program(program) => ("lack-program", program.clone()),
            Self::Device => ("lack-device", String::new()),
            Self::File(path) => ("lack-file", path.display().to_string()),
            Self::Other(why) => return why.clone(),
        };
        tell.text(id, &[("what", what)])
    }
}

impl Missing {
    /// The words that say it.
    fn id(&self) -> &'static str {
        match self {
            Self::Voice(_) => "missing-voice",
            Self::Speaker(_) => "missing-speaker",
            Self::Microphone(_) => "missing-microphone",
            Self::Model(_) => "missing-model",
        }
    }

    fn why(&self) -> &Lack {
        match self {
            Self::Voice(why) | Self::Speaker(why) | Self::Microphone(why) | Self::Model(why) => why,
        }
    }
}

/// What is to be said now, and once a wait has passed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ToSay {
    /// In order.
    pub lines: Vec<Spoken>,
    /// What is said after so many milliseconds, unless something else comes up before.
    pub later: Option<(u64, Spoken)>,
}

impl Desk {
    /// What is said now that the window at the car shows `view` to this person.
    pub fn to_say(&self, by: &str, view: &StepView) -> ToSay {
        let before = self.speaking.followed.lock().unwrap_or_else(PoisonError::into_inner).replace(view.clone());
        self.said_of(by, before.as_ref(), view)
    }

    /// All that is said of `view`, once more.
    pub fn to_say_again(&self, by: &str, view: &StepView) -> ToSay {
        self.said_of(by, None, view)
    }

    fn said_of(&self, by: &str, before: Option<&StepView>, view: &StepView) -> ToSay {
        if !self.speech_to(by).say {
            return ToSay::default();
        }
        let tell = self.tell_to(by);
        let lines = spoken::change(before, view, &tell);
        let later = match &view.screen {
            Screen::Step(body) if !lines.is_empty() => body.timer.as_ref().and_then(|timer| {
                let over_ms = timer.began_ms + 1000 * i64::from(timer.seconds);
                let left_ms = u64::try_from(over_ms - self.clock.now().timestamp_millis()).ok().filter(|ms| *ms > 0)?;
                Some((left_ms, Spoken::plain(tell.text("ui-timer-over", &[]))))
            }),
            _ => None,
        };
        ToSay { lines, later }
    }

    /// What is said of a draft that is read back.
    pub fn to_say_back(&self, by: &str, read: &ReadBack) -> Option<Spoken> {
        self.speech_to(by).say.then(|| spoken::read_back(read, &self.tell_to(by))).flatten()
    }

    /// What is said of something that was heard.
    pub fn to_say_heard(&self, by: &str, heard: &HeardView) -> Option<Spoken> {
        let says = [heard.says.as_str()].into_iter().chain(heard.loud.as_deref()).filter(|says| !says.is_empty());
        let says = says.collect::<Vec<_>>().join(" ");
        (self.speech_to(by).say && !says.is_empty()).then(|| Spoken::plain(says))
    }

    /// What is said of a refusal.
    pub fn to_say_refused(&self, by: &str, refused: &Refused) -> Option<Spoken> {
        self.speech_to(by).say.then(|| Spoken::plain(&refused.says))
    }

    /// Code of the language that is shown and said.
    pub fn language(&self) -> String {
        self.preferences.read().unwrap_or_else(PoisonError::into_inner).language.clone()
    }

    /// How lines are said to this person.
    pub fn speech_to(&self, by: &str) -> Speech {
        self.preferences.read().unwrap_or_else(PoisonError::into_inner).speech_to(by).clone()
    }

    /// Something is missing: the window at the car says so, once. True the first time.
    pub fn miss(&self, what: Missing) -> bool {
        let mut missing = self.speaking.missing.lock().unwrap_or_else(PoisonError::into_inner);
        let first = missing.iter().all(|known| known.id() != what.id());
        if first {
            missing.push(what);
            drop(missing);
            self.changed.send_modify(|n| *n += 1);
        }
        first
    }

    pub(super) fn notice(&self, tell: &Tell) -> Option<String> {
        let missing = self.speaking.missing.lock().unwrap_or_else(PoisonError::into_inner);
        let says = missing.iter().map(|what| tell.text(what.id(), &[("why", what.why().says(tell))]));
        (!missing.is_empty()).then(|| says.collect::<Vec<_>>().join(" "))
    }
}
