//! The ear of the window at the car: what may be said and what comes of it is the job's; here sound, job and window only
//! meet.

use crate::meaning;
use crate::speech::Speech;
use bayhand_job::ask::Attention;
use bayhand_job::hearing::Heard;
use bayhand_job::preferences::{HearBy, Hearing as Set};
use bayhand_job::view::{HeardAct, HeardView};
use bayhand_job::{Desk, Lack, Missing};
use bayhand_speech::listen::{self, Ear, EarError, Hears, Listener, Told};
use bayhand_speech::model::place;
use bayhand_speech::sound::microphone::{MicrophoneError, SystemMicrophone};
use bayhand_speech::spoken::grammar::Expect;
use std::path::PathBuf;
use std::sync::{Mutex, PoisonError};
use tauri::async_runtime::block_on;
use tauri::{AppHandle, Emitter, Manager};

/// Label of the window at the car.
const STEP: &str = "step";

/// Who listens, as it is set; nobody while hearing is off.
pub struct Hearing {
    app: AppHandle,
    ear: Mutex<Option<Listening>>,
    /// What the window waits for.
    attention: Mutex<Attention>,
}

/// An ear, and how it was set.
struct Listening {
    set: Set,
    ear: Ear,
    /// Whether it listens without a key.
    free: bool,
}

impl Listening {
    /// Hands-free it listens only while a step is waited for: neither model nor microphone is there while the app starts, or
    /// while a dialog asks for something else.
    fn attend(&mut self, attention: &Attention) {
        let free = self.set.by == HearBy::HandsFree && !attention.step.is_empty();
        if free != self.free {
            self.ear.hands_free(free);
            self.free = free;
        }
    }
}

impl Hearing {
    /// Nobody listens yet.
    pub fn new(app: &AppHandle) -> Self {
        Self { app: app.clone(), ear: Mutex::default(), attention: Mutex::default() }
    }

    /// Listens as it is set. What was listening otherwise gives its memory and its microphone back.
    pub fn set(&self, set: &Set) {
        let mut ear = self.ear.lock().unwrap_or_else(PoisonError::into_inner);
        if ear.as_ref().is_some_and(|listening| listening.set == *set) {
            return;
        }
        *ear = (set.by != HearBy::Keys).then(|| {
            let model = set.model.clone().map(PathBuf::from).or_else(place::usual).unwrap_or_default();
            let ear = Ear::start(SystemMicrophone, Bay { app: self.app.clone(), model });
            let mut listening = Listening { set: set.clone(), ear, free: false };
            listening.attend(&self.attention());
            listening
        });
    }

    /// What the window waits for from now on.
    pub fn attend(&self, attention: Attention) {
        if let Some(listening) = &mut *self.ear.lock().unwrap_or_else(PoisonError::into_inner) {
            listening.attend(&attention);
        }
        *self.attention.lock().unwrap_or_else(PoisonError::into_inner) = attention;
    }

    /// The key to talk is held down, or let go.
    pub fn talk(&self, down: bool) {
        if let Some(listening) = &*self.ear.lock().unwrap_or_else(PoisonError::into_inner) {
            listening.ear.hold(down);
        }
    }

    /// The number that waits is right, or not.
    pub async fn confirm(&self, app: &AppHandle, right: bool) -> HeardView {
        let attention = self.attention();
        let view = app.state::<Desk>().confirm_heard(&attention, right).await;
        answer(app, &attention.by, &view).await;
        view
    }

    fn attention(&self) -> Attention {
        self.attention.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }
}

/// Says what came of something heard, or the whole step again where that was asked for.
async fn answer(app: &AppHandle, by: &str, view: &HeardView) {
    let (desk, speech) = (app.state::<Desk>(), app.state::<Speech>());
    if view.act == HeardAct::Again {
        let step = desk.step_view_for(by).await;
        speech.again(&desk, by, &step);
    } else {
        speech.say(&desk, by, desk.to_say_heard(by, view));
    }
}

/// What the ear is joined to.
struct Bay {
    app: AppHandle,
    model: PathBuf,
}

impl Bay {
    /// Gives the job what was heard, says what came of it, and tells the window.
    fn react(&self, heard: &Heard) {
        let attention = self.app.state::<Hearing>().attention();
        let view = block_on(self.app.state::<Desk>().heard(&attention, heard));
        block_on(answer(&self.app, &attention.by, &view));
        if let Err(error) = self.app.emit_to(STEP, "heard", view) {
            tracing::error!(%error, "the window was not told of what was heard");
        }
    }
}

impl Listener for Bay {
    fn recogniser(&mut self) -> Result<Box<dyn Hears>, EarError> {
        listen::recogniser(&self.model)
    }

    fn awaited(&mut self) -> Option<Expect> {
        let attention = self.app.state::<Hearing>().attention();
        block_on(self.app.state::<Desk>().awaited(&attention)).map(meaning::expect)
    }

    fn speaks(&mut self) -> bool {
        self.app.state::<Speech>().speaks()
    }

    fn told(&mut self, told: Told) {
        match told {
            Told::Begins => self.app.state::<Speech>().person(true),
            Told::Ends => self.app.state::<Speech>().person(false),
            Told::Heard(heard, above_noise_db) => self.react(&meaning::said(heard, above_noise_db)),
            // The job says why: what is heard at a time like this, whatever it is, is refused with the reason.
            Told::NotAwaited => self.react(&Heard::nothing()),
            Told::Trouble(error) => {
                let missing = match error {
                    EarError::Microphone(MicrophoneError::Missing) => {
                        Missing::Microphone(Lack::Program("arecord, parec, pw-record".into()))
                    }
                    EarError::Microphone(MicrophoneError::Silent(why)) => {
                        tracing::info!(why, "no microphone answers");
                        Missing::Microphone(Lack::Device)
                    }
                    EarError::NoModel(path) => Missing::Model(Lack::File(path)),
                    EarError::Model(why) => Missing::Model(Lack::Other(why.to_string())),
                };
                if self.app.state::<Desk>().miss(missing) {
                    tracing::warn!("nothing can be heard on this computer");
                }
            }
        }
    }
}
