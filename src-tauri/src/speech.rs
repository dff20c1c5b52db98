//! The speaker of the window at the car. What is said is decided by the job; how lines follow each other by the crate
//! `speech`; here they only meet.

use bayhand_job::ask::Refused;
use bayhand_job::spoken::Spoken;
use bayhand_job::view::{ReadBack, StepView};
use bayhand_job::{Desk, Lack, Missing, ToSay};
use bayhand_speech::say::queue::{Line, Weight};
use bayhand_speech::say::speaker::{Speaker, SystemVoice};
use bayhand_speech::say::voice::{Manner, VoiceError};
use bayhand_speech::spoken::number::{Tongue, expand};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;
use tauri::async_runtime::JoinHandle;
use tauri::{AppHandle, Manager};

/// Who speaks.
pub struct Speech {
    speaker: Arc<Speaker>,
    /// What is said once a wait is over.
    later: Mutex<Option<JoinHandle<()>>>,
}

impl Speech {
    /// Waits for something to say. What is missing is told to the desk.
    pub fn start(app: &AppHandle) -> Self {
        let app = app.clone();
        let trouble = move |error: VoiceError| {
            let missing = match error {
                VoiceError::NoSpeaker(why) => {
                    tracing::info!(why, "no loudspeaker answers");
                    Missing::Speaker(Lack::Device)
                }
                VoiceError::Missing(program) => Missing::Voice(Lack::Program(program.to_owned())),
                error => Missing::Voice(Lack::Other(error.to_string())),
            };
            if app.state::<Desk>().miss(missing) {
                tracing::warn!("lines cannot be said on this computer");
            }
        };
        Self { speaker: Arc::new(Speaker::start(SystemVoice, trouble)), later: Mutex::default() }
    }

    /// Says what is new in the view that the window at the car shows to `by`.
    pub fn follow(&self, desk: &Desk, by: &str, view: &StepView) {
        self.take(desk, by, desk.to_say(by, view));
    }

    /// Says the whole view once more.
    pub fn again(&self, desk: &Desk, by: &str, view: &StepView) {
        self.take(desk, by, desk.to_say_again(by, view));
    }

    /// Says what came of a wish.
    pub fn answer(&self, desk: &Desk, by: &str, answer: &Result<StepView, Refused>) {
        match answer {
            Ok(view) => self.follow(desk, by, view),
            Err(refused) => self.say(desk, by, desk.to_say_refused(by, refused)),
        }
    }

    /// Says what was understood of a draft.
    pub fn read_back(&self, desk: &Desk, by: &str, read: &Result<ReadBack, Refused>) {
        match read {
            Ok(read) => self.say(desk, by, desk.to_say_back(by, read)),
            Err(refused) => self.say(desk, by, desk.to_say_refused(by, refused)),
        }
    }

    fn take(&self, desk: &Desk, by: &str, to_say: ToSay) {
        if to_say.lines.is_empty() {
            return;
        }
        self.say(desk, by, to_say.lines);
        let tongue = manner(desk, by).tongue;
        let later = to_say.later.map(|(after_ms, spoken)| {
            let speaker = self.speaker.clone();
            tauri::async_runtime::spawn(async move {
                tokio::time::sleep(Duration::from_millis(after_ms)).await;
                speaker.say(line(spoken, tongue));
            })
        });
        let before = std::mem::replace(&mut *self.later.lock().unwrap_or_else(PoisonError::into_inner), later);
        if let Some(before) = before {
            before.abort();
        }
    }

    /// A person begins to speak, or has ended.
    pub fn person(&self, speaks: bool) {
        self.speaker.person(speaks);
    }

    /// True while a line is being said.
    pub fn speaks(&self) -> bool {
        self.speaker.says()
    }

    /// Says lines in the way of this person.
    pub fn say(&self, desk: &Desk, by: &str, lines: impl IntoIterator<Item = Spoken>) {
        let manner = manner(desk, by);
        let tongue = manner.tongue;
        self.speaker.speak_so(manner);
        for spoken in lines {
            self.speaker.say(line(spoken, tongue));
        }
    }
}

fn line(spoken: Spoken, tongue: Tongue) -> Line {
    let weight = if spoken.hazard { Weight::Hazard } else { Weight::Plain };
    Line { words: expand(&spoken.words, tongue), weight }
}

fn manner(desk: &Desk, by: &str) -> Manner {
    let tongue = if desk.language() == "de" { Tongue::German } else { Tongue::English };
    let set = desk.speech_to(by);
    Manner { tongue, volume_percent: set.volume_percent, words_a_minute: set.words_a_minute, name: set.voice }
}
