//! The recogniser on fixed files of the voices that it is reported on. Needs the voice model, so these tests run only where
//! they are asked for by `--ignored`, as `cargo xtask test` does when the model is there; otherwise cargo counts them as
//! ignored. The whole table is `cargo xtask bench voice`.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

#[path = "common/noise.rs"]
mod noise;

use bayhand_speech::hear::Recogniser;
use bayhand_speech::heard::{What, Why};
use bayhand_speech::model::place;
use bayhand_speech::sound;
use bayhand_speech::spoken::Corner;
use bayhand_speech::spoken::grammar::{Expect, Form, Grammar};
use noise::Noise;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng as _, SeedableRng as _};
use std::{path::PathBuf, sync::LazyLock};

static RECOGNISER: LazyLock<Recogniser> =
    LazyLock::new(|| Recogniser::read(&place::usual().unwrap()).expect("cargo xtask voice makes the model"));

/// Ten commands and any reading at once: the hardest that a step waits for.
static GRAMMAR: LazyLock<Grammar> = LazyLock::new(|| {
    let phrases =
        ["next", "back", "repeat", "confirm", "cancel", "pause", "start timer", "stop timer", "help", "where am i"];
    let phrases = phrases.map(str::to_owned).to_vec();
    Grammar::new(Expect { phrases, reading: Some(Form::default()) }).unwrap()
});

fn sound(name: &str) -> Vec<f32> {
    sound::read(&PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(format!("tests/data/{name}.flac"))).unwrap()
}

fn phrase(text: &str) -> Option<What> {
    Some(What::Phrase(text.to_owned()))
}

fn reading(corner: Corner, text: &str) -> Option<What> {
    Some(What::Reading { corner: Some(corner), looks: vec![text.to_owned()], unit: None })
}

/// Each file with what it says; none for other talk.
fn said() -> [(&'static str, Option<What>); 11] {
    [
        ("voice3-c03", phrase("confirm")),
        ("voice3-c07", phrase("start timer")),
        ("voice3-c14", phrase("where am i")),
        ("voice3-r00", reading(Corner::FrontLeft, "265.2")),
        ("voice3-r20", reading(Corner::FrontLeft, "684.4")),
        ("voice3-r45", reading(Corner::FrontRight, "6.01")),
        ("voice3-o01", None),
        ("voice3-o05", None),
        ("voice4-c03", phrase("confirm")),
        ("voice4-r05", reading(Corner::FrontRight, "359.3")),
        ("voice4-o02", None),
    ]
}

#[test]
#[ignore = "needs the voice model: cargo xtask voice"]
fn what_is_said_is_heard_and_other_talk_is_not() {
    for (name, wanted) in said() {
        let heard = RECOGNISER.hear(&sound(name), &GRAMMAR);
        match wanted {
            Some(what) => {
                assert_eq!(heard.what, what, "{name}: {:?}", RECOGNISER.guess(&sound(name), &GRAMMAR));
                assert!((0.5..=1.0).contains(&heard.score), "{name}: taken with {}", heard.score);
            }
            None => assert!(matches!(heard.what, What::Rejected(_)), "{name}: {:?}", heard.what),
        }
    }
}

/// At 10 dB of three kinds the floors hold: of 24, 85 % right; of 33, at most 5 % wrongly taken. So a reading needs its
/// read-back.
#[test]
#[ignore = "needs the voice model: cargo xtask voice"]
fn in_noise_most_is_heard_and_little_is_wrong() {
    let (mut right, mut wrong, mut asked, mut all) = (0, 0, 0, 0);
    for (number, (name, wanted)) in said().into_iter().enumerate() {
        for kind in Noise::ALL {
            let heard = RECOGNISER.hear(&noise::mix(&sound(name), kind, 10.0, number as u64), &GRAMMAR);
            all += 1;
            asked += u32::from(wanted.is_some());
            if wanted.as_ref() == Some(&heard.what) {
                right += 1;
            } else if !matches!(heard.what, What::Rejected(_)) {
                println!("{name} in {kind:?} noise: {:?} with {}", heard.what, heard.score);
                wrong += 1;
            }
        }
    }
    println!("{right} of {asked} right, {wrong} of {all} wrong");
    assert!(right * 100 >= asked * 85, "{right} of {asked} right");
    assert!(wrong * 100 <= all * 5, "{wrong} of {all} wrongly taken");
}

/// The grammar of the step at hand decides: what is not waited for is not heard, however clear it is.
#[test]
#[ignore = "needs the voice model: cargo xtask voice"]
fn what_is_not_waited_for_is_rejected() {
    let only = |phrases: &[&str], reading: Option<Form>| {
        Grammar::new(Expect { phrases: phrases.iter().map(|phrase| (*phrase).to_owned()).collect(), reading }).unwrap()
    };
    let check = |name: &str, grammar: &Grammar| {
        let heard = RECOGNISER.hear(&sound(name), grammar);
        assert!(matches!(heard.what, What::Rejected(_)), "{name}: {:?}", heard.what);
    };
    check("voice3-c03", &only(&["next", "back"], None));
    check("voice3-r00", &only(&["next", "confirm"], None));
    check("voice3-c14", &only(&[], Some(Form::default())));
    check("voice3-r00", &only(&[], Some(Form { corner: Some(Corner::RearRight), ..Form::default() })));
}

/// Silence, a click, hum, and random samples give no word, and no panic.
#[test]
#[ignore = "needs the voice model: cargo xtask voice"]
fn what_is_no_speech_is_rejected() {
    const SEED: u64 = 90_210;
    println!("seed {SEED}");
    let mut random = ChaCha8Rng::seed_from_u64(SEED);
    assert_eq!(RECOGNISER.hear(&[], &GRAMMAR).what, What::Rejected(Why::TooShort));
    assert_eq!(RECOGNISER.hear(&[0.1; 500], &GRAMMAR).what, What::Rejected(Why::TooShort));
    assert_eq!(RECOGNISER.hear(&[0.0; 16_000], &GRAMMAR).what, What::Rejected(Why::Silence));
    let long = if std::env::var_os("BAYHAND_LONG").is_some() { 60 } else { 6 };
    for number in 0..long {
        let length = 4_000 + random.next_u32() as usize % 40_000;
        let loud = 0.02 + random.next_u32() as f32 / u32::MAX as f32 * 0.9;
        let noise: Vec<f32> = match number % 3 {
            0 => (0..length).map(|_| (random.next_u32() as f32 / u32::MAX as f32 * 2.0 - 1.0) * loud).collect(),
            1 => (0..length).map(|n| (n as f32 * 0.02).sin() * loud).collect(),
            _ => (0..length).map(|n| if n % 4_000 == 0 { loud } else { 0.0 }).collect(),
        };
        let heard = RECOGNISER.hear(&noise, &GRAMMAR);
        assert_eq!(heard.what, What::Rejected(Why::Silence), "sound {number}, with {}", heard.score);
    }
}
