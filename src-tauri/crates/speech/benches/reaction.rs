//! From the end of what a person says to the reaction of the program, hands-free and with the key held; then memory.
//! `cargo xtask bench voice FOLDER [VOICE...]` runs it after the table, with the first of the voices.
//!
//! Every third text is played to the ear at the pace at which it was spoken, with the place before and after it, quiet (pink
//! noise 30 dB below it) or with noise of three kinds 10 dB below it, in turn. It ends with its last frame within 30 dB of the loudest; the key is let go then. The reaction is what was
//! heard, told to the job. Not in it: the recording program, which hands on what it has each 20 ms.
#![allow(clippy::unwrap_used, reason = "a benchmark that cannot be set up should stop")]

#[path = "../tests/common/noise.rs"]
mod noise;
#[path = "common/test_speech.rs"]
mod test_speech;

use bayhand_speech::hear::Recogniser;
use bayhand_speech::heard::{Heard, What};
use bayhand_speech::listen::{Ear, EarError, Hears, Listener, Told};
use bayhand_speech::model::place;
use bayhand_speech::sound::microphone::{Microphone, MicrophoneError, Recording};
use bayhand_speech::sound::{self, HERTZ};
use bayhand_speech::spoken::grammar::{Expect, Grammar};
use noise::Noise;
use std::sync::{Arc, mpsc};
use std::time::{Duration, Instant};
use test_speech::TestSpeech;

/// Every so many of the texts are played.
const NTH: usize = 3;
/// Decibels of speech above the noise of a place that is loud, and of one that is quiet.
const LOUD_DB: f32 = 10.0;
const QUIET_DB: f32 = 30.0;
/// The place before and after what is said.
const AROUND_S: usize = 1;
/// Samples of a frame, 20 ms.
const FRAME: usize = HERTZ as usize / 50;
/// How long a reaction is waited for.
const PATIENCE: Duration = Duration::from_secs(10);

/// A microphone before which one sound is played, from the moment at which it is opened.
struct Stage {
    sound: Vec<f32>,
    opened: mpsc::Sender<Instant>,
}

struct Played {
    sound: Vec<f32>,
    began: Instant,
    taken: usize,
}

impl Microphone for Stage {
    fn open(&mut self) -> Result<Box<dyn Recording>, MicrophoneError> {
        let began = Instant::now();
        let _ = self.opened.send(began);
        Ok(Box::new(Played { sound: self.sound.clone(), began, taken: 0 }))
    }
}

impl Recording for Played {
    fn take(&mut self) -> Result<Vec<f32>, MicrophoneError> {
        let due = (self.began.elapsed().as_secs_f64() * f64::from(HERTZ)) as usize;
        let came = (self.taken..due).map(|at| self.sound.get(at).copied().unwrap_or(0.0)).collect();
        self.taken = due.max(self.taken);
        Ok(came)
    }
}

/// The window at the car.
struct Window {
    expect: Expect,
    recogniser: Arc<Recogniser>,
    heard: mpsc::Sender<(Instant, What)>,
}

/// The one that was read at the beginning; a window reads it once, when somebody is first listened to.
struct Read(Arc<Recogniser>);

impl Hears for Read {
    fn hear(&self, sound: &[f32], grammar: &Grammar) -> Heard {
        self.0.hear(sound, grammar)
    }
}

impl Listener for Window {
    fn recogniser(&mut self) -> Result<Box<dyn Hears>, EarError> {
        Ok(Box::new(Read(self.recogniser.clone())))
    }

    fn awaited(&mut self) -> Option<Expect> {
        Some(self.expect.clone())
    }

    fn speaks(&mut self) -> bool {
        false
    }

    fn told(&mut self, told: Told) {
        if let Told::Heard(heard, _) = told {
            // Nobody waits for a second thing heard in one sound.
            let _ = self.heard.send((Instant::now(), heard.what));
        }
    }
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Way {
    HandsFree,
    KeyHeld,
}

fn main() {
    let Some(speech) = TestSpeech::named() else { return };
    let TestSpeech { folder, texts, voices } = &speech;
    memory("voice off");
    let began = Instant::now();
    let recogniser = Arc::new(Recogniser::read(&place::usual().unwrap()).expect("cargo xtask voice makes the model"));
    println!("reading the model: {} ms", began.elapsed().as_millis());
    let expect = speech.expect();
    for way in [Way::HandsFree, Way::KeyHeld] {
        let mut times_ms = Vec::new();
        let (mut tried, mut taken) = (0, 0);
        for voice in voices {
            for (number, text) in texts.iter().enumerate().step_by(NTH) {
                let path = folder.join(voice).join(format!("{}.flac", text["id"].as_str().unwrap()));
                if !path.is_file() {
                    continue;
                }
                tried += 1;
                let window = |heard| Window { expect: expect.clone(), recogniser: recogniser.clone(), heard };
                match react(way, &sound::read(&path).unwrap(), number / NTH, window) {
                    Some((ms, what)) => {
                        times_ms.push(ms);
                        taken += u32::from(!matches!(what, What::Rejected(_)));
                    }
                    None => {
                        println!("        {voice} {}: {way:?}: nothing was noticed, or it was cut in two", text["text"])
                    }
                }
            }
        }
        times_ms.sort_unstable();
        let at = |share: f64| times_ms[((times_ms.len() - 1) as f64 * share) as usize];
        println!(
            "{way:?}: {} of {tried} told of, {taken} taken; from the end of speech to the reaction, ms: median {}, 95th \
             percentile {}, most {}",
            times_ms.len(),
            at(0.5),
            at(0.95),
            at(1.0)
        );
    }
    memory("voice on");
    drop(recogniser);
    // The last ear ends on its own thread.
    std::thread::sleep(Duration::from_millis(500));
    memory("voice off again");
}

/// Milliseconds from the end of what is said to what was heard of it; none where nothing was, or too early.
fn react(
    way: Way,
    speech: &[f32],
    number: usize,
    window: impl FnOnce(mpsc::Sender<(Instant, What)>) -> Window,
) -> Option<(u128, What)> {
    let place = vec![0.0; AROUND_S * HERTZ as usize];
    let clean = [&place, speech, &place, &place].concat();
    let end = end(&clean);
    let (kind, decibels) = match number % 4 {
        0 => (Noise::Pink, QUIET_DB),
        kind => (Noise::ALL[kind - 1], LOUD_DB),
    };
    let sound = noise::mix(&clean, kind, decibels, number as u64);
    let ((opened, open), (heard, hear)) = (mpsc::channel(), mpsc::channel());
    let ear = Ear::start(Stage { sound, opened }, window(heard));
    match way {
        Way::HandsFree => ear.hands_free(true),
        Way::KeyHeld => ear.hold(true),
    }
    let ends = open.recv_timeout(PATIENCE).ok()? + Duration::from_secs_f64(end as f64 / f64::from(HERTZ));
    if way == Way::KeyHeld {
        std::thread::sleep(ends.saturating_duration_since(Instant::now()));
        ear.hold(false);
    }
    let (at, what) = hear.recv_timeout(PATIENCE).ok()?;
    (at >= ends).then(|| ((at - ends).as_millis(), what))
}

/// The sample after the last frame within 30 dB of the loudest.
fn end(clean: &[f32]) -> usize {
    let powers: Vec<f32> = clean.chunks(FRAME).map(|frame| frame.iter().map(|sample| sample * sample).sum()).collect();
    let loudest = powers.iter().copied().fold(0.0, f32::max);
    let last = powers.iter().rposition(|power| *power > loudest * 1e-3).unwrap_or(0);
    (last + 1) * FRAME
}

/// What this process has in memory now, and had at most.
fn memory(when: &str) {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let mb = |name: &str| {
        let kb = status.lines().find_map(|line| line.strip_prefix(name)?.split_ascii_whitespace().next()?.parse().ok());
        kb.map_or("unknown".to_owned(), |kb: u64| format!("{} MB", kb / 1024))
    };
    println!("memory, {when}: {}, at most {}", mb("VmRSS:"), mb("VmHWM:"));
}
