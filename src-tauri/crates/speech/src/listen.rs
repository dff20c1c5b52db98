//! Listens, on a thread of its own: while a key is held, or hands-free whenever somebody speaks.
//!
//! The model is read when somebody is first listened to and goes with the ear; the microphone is open only while somebody
//! is listened to. Hands-free is deaf while the program itself speaks, or it would hear itself.
//!
//! [`activity`]: whether somebody speaks. [`utterance`]: what they say, whole, and when it is worked out.

pub mod activity;
pub mod utterance;

use crate::hear::Recogniser;
use crate::heard::Heard;
use crate::model::ModelError;
use crate::sound::loudness;
use crate::sound::microphone::{Microphone, MicrophoneError, Recording};
use crate::spoken::grammar::{Expect, Grammar};
use std::path::{Path, PathBuf};
use std::sync::mpsc::{self, RecvTimeoutError};
use std::time::Duration;
use utterance::{Event, MOST, Utterance};

/// Why nothing can be heard.
#[derive(Debug, thiserror::Error)]
pub enum EarError {
    /// No model lies there.
    #[error("no voice model lies at {}", .0.display())]
    NoModel(PathBuf),
    /// The model cannot be read.
    #[error("{0}")]
    Model(#[from] ModelError),
    /// Nothing records.
    #[error("{0}")]
    Microphone(#[from] MicrophoneError),
}

/// What the ear tells.
#[derive(Debug)]
pub enum Told {
    /// A person begins to speak.
    Begins,
    /// They have ended; what was said is worked out.
    Ends,
    /// What it came to, and how far speech stood above the noise, dB.
    Heard(Heard, Option<f32>),
    /// The key was held, and nothing is waited for.
    NotAwaited,
    /// Nothing can be heard.
    Trouble(EarError),
}

/// What turns sound into words.
pub trait Hears: Send {
    /// What was said, held to a grammar.
    fn hear(&self, sound: &[f32], grammar: &Grammar) -> Heard;
}

impl Hears for Recogniser {
    fn hear(&self, sound: &[f32], grammar: &Grammar) -> Heard {
        Recogniser::hear(self, sound, grammar)
    }
}

/// Reads the recogniser's model.
///
/// # Errors
/// It is not there or cannot be read.
pub fn recogniser(model: &Path) -> Result<Box<dyn Hears>, EarError> {
    if !model.is_file() {
        return Err(EarError::NoModel(model.to_owned()));
    }
    Ok(Box::new(Recogniser::read(model)?))
}

/// What the ear is joined to.
pub trait Listener: Send + 'static {
    /// Reads the model.
    ///
    /// # Errors
    /// It is not there or cannot be read.
    fn recogniser(&mut self) -> Result<Box<dyn Hears>, EarError>;
    /// What may be said now; none: nothing is listened to.
    fn awaited(&mut self) -> Option<Expect>;
    /// True while the program itself speaks.
    fn speaks(&mut self) -> bool;
    /// Something happened.
    fn told(&mut self, told: Told);
}

enum Asked {
    Hold(bool),
    HandsFree(bool),
}

/// Who listens. Dropped, it gives model and microphone back.
pub struct Ear(mpsc::Sender<Asked>);

/// How often the microphone is looked at.
const LOOK: Duration = Duration::from_millis(20);

/// How long the last of what was said may be on its way after the key is let go.
const TAIL: Duration = Duration::from_millis(60);

impl Ear {
    /// Starts to wait for a key, or for a voice.
    pub fn start(microphone: impl Microphone, listener: impl Listener) -> Self {
        let (ask, asked) = mpsc::channel();
        let ear = Attention { microphone, listener, recogniser: None, open: None };
        std::thread::spawn(move || ear.run(&asked));
        Self(ask)
    }

    /// The key is held down, or let go.
    pub fn hold(&self, down: bool) {
        // The thread ends only with this ear.
        let _ = self.0.send(Asked::Hold(down));
    }

    /// Listens whenever somebody speaks, or no more.
    pub fn hands_free(&self, on: bool) {
        let _ = self.0.send(Asked::HandsFree(on));
    }
}

/// What somebody said came to.
#[derive(Debug)]
struct Answer {
    /// What was waited for.
    expect: Expect,
    heard: Heard,
    above_noise_db: Option<f32>,
}

/// A recording under way.
struct Open {
    recording: Box<dyn Recording>,
    said: Said,
}

/// What was recorded.
enum Said {
    /// While the key is held.
    Held(Vec<f32>),
    /// Hands-free.
    Free(Utterance<Answer>),
}

/// What runs on the thread.
struct Attention<M, L> {
    microphone: M,
    listener: L,
    recogniser: Option<Box<dyn Hears>>,
    open: Option<Open>,
}

impl<M: Microphone, L: Listener> Attention<M, L> {
    fn run(mut self, asked: &mpsc::Receiver<Asked>) {
        let mut hands_free = false;
        loop {
            let next = if self.open.is_some() {
                asked.recv_timeout(LOOK)
            } else {
                asked.recv().map_err(|_| RecvTimeoutError::Disconnected)
            };
            let done = match next {
                Ok(Asked::Hold(true)) => self.begin(Said::Held(Vec::new())),
                Ok(Asked::Hold(false)) => {
                    self.release().and_then(|()| if hands_free { self.begin_free() } else { Ok(()) })
                }
                Ok(Asked::HandsFree(on)) => {
                    hands_free = on;
                    self.close();
                    if on { self.begin_free() } else { Ok(()) }
                }
                Err(RecvTimeoutError::Timeout) => self.look(),
                Err(RecvTimeoutError::Disconnected) => return self.close(),
            };
            if let Err(error) = done {
                self.open = None;
                self.listener.told(Told::Trouble(error));
                self.listener.told(Told::Ends);
            }
        }
    }

    fn begin_free(&mut self) -> Result<(), EarError> {
        self.begin(Said::Free(Utterance::default()))
    }

    fn begin(&mut self, said: Said) -> Result<(), EarError> {
        self.close();
        if let Said::Held(_) = said {
            self.listener.told(Told::Begins);
        }
        // Before the model, so that nothing is missed while it is read.
        let recording = self.microphone.open()?;
        self.open = Some(Open { recording, said });
        if self.recogniser.is_none() {
            self.recogniser = Some(self.listener.recogniser()?);
        }
        Ok(())
    }

    /// Stops to listen; whoever was speaking is not heard out.
    fn close(&mut self) {
        let unheard = self.open.take().is_some_and(|open| match open.said {
            Said::Held(_) => true,
            Said::Free(utterance) => utterance.is_spoken(),
        });
        if unheard {
            self.listener.told(Told::Ends);
        }
    }

    /// The key was let go: what was said under it is heard.
    fn release(&mut self) -> Result<(), EarError> {
        let held = self.open.take_if(|open| matches!(open.said, Said::Held(_)));
        let Some(Open { mut recording, said: Said::Held(mut sound) }) = held else { return Ok(()) };
        std::thread::sleep(TAIL);
        sound.extend(recording.take()?);
        drop(recording);
        if !self.answer(&sound, None) {
            self.listener.told(Told::NotAwaited);
        }
        Ok(())
    }

    /// Takes what came in; hands-free, works out what somebody said in a pause, and tells it once they have ended.
    fn look(&mut self) -> Result<(), EarError> {
        let Some(open) = &mut self.open else { return Ok(()) };
        let came = open.recording.take()?;
        let utterance = match &mut open.said {
            Said::Held(sound) => {
                sound.extend(came);
                sound.truncate(MOST);
                return Ok(());
            }
            Said::Free(utterance) => utterance,
        };
        if self.listener.speaks() {
            let unheard = std::mem::take(utterance);
            if unheard.is_spoken() {
                self.listener.told(Told::Ends);
            }
            return Ok(());
        }
        utterance.add(&came);
        let mut ended = Vec::new();
        while let Some(event) = utterance.next_event() {
            match event {
                Event::Begins => self.listener.told(Told::Begins),
                Event::Ends { sound, worked_out } => ended.push((sound, worked_out)),
            }
        }
        for (sound, worked_out) in ended {
            self.answer(&sound, worked_out);
        }
        self.work_out_in_pause();
        Ok(())
    }

    /// Works out what was said until a pause; this lasts about as long as the silence that makes an end of the pause.
    fn work_out_in_pause(&mut self) {
        if let Some(Open { said: Said::Free(utterance), .. }) = &mut self.open
            && let Some(sound) = utterance.pause()
        {
            let answer = work_out(self.recogniser.as_deref(), &mut self.listener, sound);
            utterance.keep(answer);
        }
    }

    /// Tells what was said; what was worked out in a pause holds while the same is waited for. False where nothing is.
    fn answer(&mut self, sound: &[f32], worked_out: Option<Answer>) -> bool {
        self.listener.told(Told::Ends);
        let awaited = self.listener.awaited();
        let holds = |answer: &Answer| awaited.as_ref() == Some(&answer.expect);
        let answer =
            worked_out.filter(holds).or_else(|| work_out(self.recogniser.as_deref(), &mut self.listener, sound));
        let Some(Answer { heard, above_noise_db, .. }) = answer else { return false };
        self.listener.told(Told::Heard(heard, above_noise_db));
        true
    }
}

/// What a sound comes to; `None` where nothing is waited for.
fn work_out(recogniser: Option<&dyn Hears>, listener: &mut impl Listener, sound: &[f32]) -> Option<Answer> {
    let grammar = Grammar::new(listener.awaited()?).ok()?;
    let heard = recogniser?.hear(sound, &grammar);
    let above_noise_db = loudness(sound).map(|loudness| loudness.above_noise_db());
    Some(Answer { expect: grammar.expect().clone(), heard, above_noise_db })
}
