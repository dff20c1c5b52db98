//! Listens, on a thread of its own: while a key is held, or hands-free whenever somebody speaks.
//!
//! The model is read when somebody is first listened to and goes with the ear; the microphone is open only while somebody
//! is listened to. Hands-free is deaf while the program itself speaks, or it would hear itself.

pub mod activity;

use crate::hear::Recogniser;
use crate::heard::Heard;
use crate::model::ModelError;
use crate::sound::microphone::{Microphone, MicrophoneError, Recording};
use crate::sound::{HERTZ, MOST_SECONDS, loudness};
use crate::spoken::grammar::{Expect, Grammar};
use activity::{Activity, Change, FRAME};
use std::path::{Path, PathBuf};
use std::sync::mpsc::{self, RecvTimeoutError};
use std::time::Duration;

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

/// Of what comes before speech is noticed so much belongs to it.
const BEFORE: usize = HERTZ as usize / 2;

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

/// A recording under way.
struct Open {
    recording: Box<dyn Recording>,
    sound: Vec<f32>,
    /// Hands-free: whether somebody speaks, and how much of `sound` was looked at for that.
    activity: Option<(Activity, usize)>,
    speaking: bool,
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
                Ok(Asked::Hold(true)) => self.begin(false),
                Ok(Asked::Hold(false)) => {
                    self.release().and_then(|()| if hands_free { self.begin(true) } else { Ok(()) })
                }
                Ok(Asked::HandsFree(on)) => {
                    hands_free = on;
                    self.open = None;
                    if on { self.begin(true) } else { Ok(()) }
                }
                Err(RecvTimeoutError::Timeout) => self.look(),
                Err(RecvTimeoutError::Disconnected) => return,
            };
            if let Err(error) = done {
                self.open = None;
                self.listener.told(Told::Trouble(error));
                self.listener.told(Told::Ends);
            }
        }
    }

    fn begin(&mut self, hands_free: bool) -> Result<(), EarError> {
        if !hands_free {
            self.listener.told(Told::Begins);
        }
        // Before the model, so that nothing is missed while it is read.
        let recording = self.microphone.open()?;
        let activity = hands_free.then(|| (Activity::default(), 0));
        self.open = Some(Open { recording, sound: Vec::new(), activity, speaking: false });
        if self.recogniser.is_none() {
            self.recogniser = Some(self.listener.recogniser()?);
        }
        Ok(())
    }

    /// The key was let go: what was said under it is heard.
    fn release(&mut self) -> Result<(), EarError> {
        let Some(mut open) = self.open.take_if(|open| open.activity.is_none()) else { return Ok(()) };
        std::thread::sleep(TAIL);
        open.sound.extend(open.recording.take()?);
        drop(open.recording);
        self.hear(&open.sound);
        Ok(())
    }

    /// Takes what came in; hands-free, hears what somebody said once they have ended.
    fn look(&mut self) -> Result<(), EarError> {
        let Some(open) = &mut self.open else { return Ok(()) };
        let most = (MOST_SECONDS * HERTZ) as usize - FRAME;
        open.sound.extend(open.recording.take()?);
        let Some((activity, mut seen)) = open.activity.take() else {
            open.sound.truncate(most);
            return Ok(());
        };
        let mut activity = activity;
        if self.listener.speaks() {
            open.sound.clear();
            (open.activity, open.speaking) = (Some((Activity::default(), 0)), false);
            return Ok(());
        }
        let mut said = None;
        while let Some(frame) = open.sound.get(seen..seen + FRAME) {
            seen += FRAME;
            match activity.frame(frame) {
                Some(Change::Begins) => {
                    open.speaking = true;
                    self.listener.told(Told::Begins);
                }
                Some(Change::Ends) => said = Some(open.sound.drain(..seen).collect::<Vec<_>>()),
                None if open.speaking && seen >= most => said = Some(open.sound.drain(..seen).collect()),
                None => {}
            }
            if said.is_some() {
                (open.speaking, seen) = (false, 0);
                break;
            }
        }
        if !open.speaking && seen > BEFORE {
            open.sound.drain(..seen - BEFORE);
            seen = BEFORE;
        }
        open.activity = Some((activity, seen));
        if let Some(said) = said {
            self.hear(&said);
        }
        Ok(())
    }

    fn hear(&mut self, sound: &[f32]) {
        self.listener.told(Told::Ends);
        let grammar = self.listener.awaited().and_then(|expect| Grammar::new(expect).ok());
        if let (Some(grammar), Some(recogniser)) = (grammar, &self.recogniser) {
            let above_noise_db = loudness(sound).map(|loudness| loudness.above_noise_db());
            let heard = recogniser.hear(sound, &grammar);
            self.listener.told(Told::Heard(heard, above_noise_db));
        }
    }
}
