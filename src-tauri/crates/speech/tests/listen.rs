//! The ear: held by a key, or hands-free; what is missing; and when somebody speaks in the noise of a workshop.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

#[path = "common/noise.rs"]
mod noise;

use bayhand_speech::heard::{Heard, What};
use bayhand_speech::listen::activity::{Activity, Change, FRAME};
use bayhand_speech::listen::{Ear, EarError, Hears, Listener, Told};
use bayhand_speech::sound;
use bayhand_speech::sound::microphone::{Microphone, MicrophoneError, Process, Recording};
use bayhand_speech::spoken::grammar::{Expect, Grammar};
use noise::Noise;
use std::path::PathBuf;
use std::process::Command;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, mpsc};
use std::time::Duration;

/// A microphone that gives a sound bit by bit, then silence for ever; without one there is no microphone.
struct Tape(Option<Vec<f32>>);

struct Played {
    sound: Vec<f32>,
    at: usize,
}

impl Microphone for Tape {
    fn open(&mut self) -> Result<Box<dyn Recording>, MicrophoneError> {
        let sound = self.0.clone().ok_or(MicrophoneError::Missing)?;
        Ok(Box::new(Played { sound, at: 0 }))
    }
}

impl Recording for Played {
    fn take(&mut self) -> Result<Vec<f32>, MicrophoneError> {
        let from = self.at;
        self.at += 4 * FRAME;
        Ok((from..self.at).map(|at| self.sound.get(at).copied().unwrap_or(1e-4)).collect())
    }
}

/// Hears how long a sound is.
struct Length;

impl Hears for Length {
    fn hear(&self, sound: &[f32], _: &Grammar) -> Heard {
        Heard { words: sound.len().to_string(), what: What::Phrase("next".into()), score: 1.0 }
    }
}

struct Notes {
    tell: mpsc::Sender<String>,
    speaks: Arc<AtomicBool>,
    model: bool,
    /// Whether each time something else is waited for, and how often it was asked.
    changes: bool,
    asked: usize,
    /// False: nothing is waited for.
    awaits: bool,
}

impl Listener for Notes {
    fn recogniser(&mut self) -> Result<Box<dyn Hears>, EarError> {
        if self.model { Ok(Box::new(Length)) } else { Err(EarError::NoModel(PathBuf::from("tiny-en.model"))) }
    }

    fn awaited(&mut self) -> Option<Expect> {
        self.asked += usize::from(self.changes);
        let phrase = ["next", "back"][self.asked % 2];
        self.awaits.then(|| Expect { phrases: vec![phrase.into()], reading: None })
    }

    fn speaks(&mut self) -> bool {
        self.speaks.load(Ordering::Relaxed)
    }

    fn told(&mut self, told: Told) {
        let note = match told {
            Told::Begins => "begins".to_owned(),
            Told::Ends => "ends".to_owned(),
            Told::Heard(heard, _) => heard.words,
            Told::NotAwaited => "not awaited".to_owned(),
            Told::Trouble(error) => error.to_string(),
        };
        let _ = self.tell.send(note);
    }
}

fn ear(tape: Option<Vec<f32>>, model: bool) -> (Ear, mpsc::Receiver<String>, Arc<AtomicBool>) {
    let (tell, told) = mpsc::channel();
    let speaks = Arc::new(AtomicBool::new(false));
    let notes = Notes { tell, speaks: speaks.clone(), model, changes: false, asked: 0, awaits: true };
    (Ear::start(Tape(tape), notes), told, speaks)
}

fn next(told: &mpsc::Receiver<String>) -> String {
    told.recv_timeout(Duration::from_secs(5)).unwrap_or_default()
}

fn spoken(name: &str) -> Vec<f32> {
    sound::read(&PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(format!("tests/data/{name}.flac"))).unwrap()
}

/// A second of the place before and after what is said.
fn around(speech: &[f32]) -> Vec<f32> {
    [&[0.0; 16_000][..], speech, &[0.0; 16_000]].concat()
}

#[test]
fn what_is_said_while_the_key_is_held_is_heard_when_it_is_let_go() {
    let (ear, told, _) = ear(Some(spoken("voice3-c03")), true);
    ear.hold(true);
    assert_eq!(next(&told), "begins");
    std::thread::sleep(Duration::from_millis(200));
    ear.hold(false);
    assert_eq!(next(&told), "ends");
    assert!(next(&told).parse::<usize>().unwrap() >= FRAME, "something was recorded");
    ear.hold(false);
    assert_eq!(told.recv_timeout(Duration::from_millis(100)).ok(), None, "letting go of nothing is nothing");
}

/// As where another language is spoken, or no job is open: whoever holds the key wants to know why nothing comes of it; who only
/// speaks does not.
#[test]
fn where_nothing_is_waited_for_only_the_key_is_answered() {
    let deaf = || {
        let (tell, told) = mpsc::channel();
        let notes = Notes { tell, speaks: Arc::default(), model: true, changes: false, asked: 0, awaits: false };
        (Ear::start(Tape(Some(around(&spoken("voice3-c03")))), notes), told)
    };
    let (ear, told) = deaf();
    ear.hold(true);
    ear.hold(false);
    assert_eq!([next(&told), next(&told), next(&told)], ["begins", "ends", "not awaited"]);
    let (ear, told) = deaf();
    ear.hands_free(true);
    assert_eq!([next(&told), next(&told)], ["begins", "ends"]);
    assert_eq!(told.recv_timeout(Duration::from_millis(300)).ok(), None);
}

#[test]
fn a_missing_microphone_or_model_is_told_and_nothing_hangs() {
    for (tape, model, says) in
        [(None, true, "no program here records"), (Some(vec![]), false, "no voice model lies at")]
    {
        let (ear, told, _) = ear(tape, model);
        ear.hold(true);
        assert_eq!(next(&told), "begins");
        let trouble = next(&told);
        assert!(trouble.contains(says), "{trouble}");
        assert_eq!(next(&told), "ends", "lines are said again");
        ear.hold(false);
        assert_eq!(told.recv_timeout(Duration::from_millis(100)).ok(), None);
    }
}

#[test]
fn hands_free_hears_each_thing_said_and_is_deaf_to_the_program() {
    let speech = spoken("voice3-r00");
    let (ear, told, speaks) = ear(Some(around(&speech)), true);
    ear.hands_free(true);
    assert_eq!([next(&told), next(&told)], ["begins", "ends"]);
    let length: usize = next(&told).parse().unwrap();
    // Half a second of the place belongs to it; its own silence at the end is not waited for.
    assert!((speech.len() - 4_000..speech.len() + 16_000).contains(&length), "{length} of {} samples", speech.len());
    assert_eq!(told.recv_timeout(Duration::from_millis(400)).ok(), None, "silence after it is nothing");
    speaks.store(true, Ordering::Relaxed);
    ear.hands_free(true);
    assert_eq!(told.recv_timeout(Duration::from_millis(1500)).ok(), None, "its own voice is not heard");
}

/// What was worked out in the pause is thrown away.
#[test]
fn what_is_said_with_a_pause_in_it_is_heard_whole() {
    let speech = spoken("voice3-c03");
    let loud = |sample: &f32| sample.abs() > 0.02;
    let (from, to) = (speech.iter().position(loud).unwrap(), speech.iter().rposition(loud).unwrap());
    let speech = &speech[from..to];
    let twice = [speech, &[0.0; 4_800], speech].concat();
    let (ear, told, _) = ear(Some(around(&twice)), true);
    ear.hands_free(true);
    assert_eq!([next(&told), next(&told)], ["begins", "ends"]);
    let length: usize = next(&told).parse().unwrap();
    assert!(length >= twice.len(), "{length} of {} samples", twice.len());
    assert_eq!(told.recv_timeout(Duration::from_millis(400)).ok(), None, "and only once");
}

/// Or an answer to what was asked before would count for what is asked now.
#[test]
fn what_was_worked_out_while_something_else_was_waited_for_is_worked_out_anew() {
    let lengths = [false, true].map(|changes| {
        let (tell, told) = mpsc::channel();
        let notes = Notes { tell, speaks: Arc::default(), model: true, changes, asked: 0, awaits: true };
        let ear = Ear::start(Tape(Some(around(&spoken("voice3-c03")))), notes);
        ear.hands_free(true);
        assert_eq!([next(&told), next(&told)], ["begins", "ends"]);
        next(&told).parse::<usize>().unwrap()
    });
    assert_eq!(lengths[1], lengths[0] + 15 * FRAME, "with the silence up to its end");
}

#[test]
fn whoever_is_not_heard_out_has_ended() {
    let speech = spoken("voice3-r00");
    let speaking = || {
        let (ear, told, speaks) = ear(Some(around(&speech.repeat(8))), true);
        ear.hands_free(true);
        assert_eq!(next(&told), "begins");
        (ear, told, speaks)
    };
    let nothing_more = |told: &mpsc::Receiver<String>, why: &str| {
        assert_eq!(next(told), "ends", "lines are said again: {why}");
        assert_eq!(told.recv_timeout(Duration::from_millis(300)).ok(), None, "{why}");
    };
    let (ear, told, _) = speaking();
    ear.hands_free(false);
    nothing_more(&told, "hearing was switched off");
    let (_ear, told, speaks) = speaking();
    speaks.store(true, Ordering::Relaxed);
    nothing_more(&told, "a hazard was said into it");
    let (ear, told, _) = speaking();
    drop(ear);
    nothing_more(&told, "the ear was given up");
}

/// Begins and ends, in frames.
fn changes(sound: &[f32]) -> Vec<(usize, Change)> {
    let mut activity = Activity::default();
    let frames = sound.chunks_exact(FRAME).enumerate();
    frames.filter_map(|(number, frame)| Some((number, activity.frame(frame)?))).collect()
}

/// In noise 10 dB below speech, that goes on before and after it: noticed before a word is over, ended within a second.
#[test]
fn speech_is_noticed_in_noise_and_its_end_too() {
    for name in ["voice3-c03", "voice3-r00", "voice3-r20", "voice4-r05", "voice4-c03"] {
        let speech = spoken(name);
        for kind in Noise::ALL {
            let sound = noise::mix(&around(&speech), kind, 10.0, 7);
            let found = changes(&sound);
            let [(begins, Change::Begins), .., (ends, Change::Ends)] = found[..] else {
                panic!("{name} in {kind:?} noise: {found:?}")
            };
            let (first, last) = (16_000 / FRAME, (16_000 + speech.len()) / FRAME);
            assert!((first..first + 35).contains(&begins), "{name} in {kind:?}: begins at frame {begins} of {first}");
            assert!((first + 10..last + 50).contains(&ends), "{name} in {kind:?}: ends at frame {ends} of {last}");
        }
    }
}

#[test]
fn noise_alone_is_no_speech() {
    // Speech so faint that only the noise is left.
    let faint: Vec<f32> = (0..160_000).map(|n| if n == 80_000 { 1e-3 } else { 0.0 }).collect();
    for kind in Noise::ALL {
        let found = changes(&noise::mix(&faint, kind, -30.0, 3));
        assert!(found.len() <= 2, "{kind:?} for ten seconds: {found:?}");
    }
}

#[test]
#[cfg(unix)]
fn a_program_records_until_it_ends_and_says_why_it_cannot() {
    let mut head = Command::new("head");
    head.args(["-c", "3201", "/dev/zero"]);
    let mut recording = Process::start(head).unwrap().unwrap();
    let mut samples = 0;
    let ended = loop {
        match recording.take() {
            Ok(more) => samples += more.len(),
            Err(error) => break error,
        }
        std::thread::sleep(Duration::from_millis(5));
    };
    assert_eq!(samples, 1600, "half a sample is none");
    assert_eq!(ended, MicrophoneError::Silent("it ended".into()));
    let mut fails = Command::new("sh");
    fails.args(["-c", "echo 'audio open error: No such device' >&2; exit 1"]);
    let mut recording = Process::start(fails).unwrap().unwrap();
    std::thread::sleep(Duration::from_millis(300));
    assert_eq!(recording.take(), Err(MicrophoneError::Silent("audio open error: No such device".into())));
    assert!(Process::start(Command::new("no-such-program-here")).unwrap().is_none());
}
