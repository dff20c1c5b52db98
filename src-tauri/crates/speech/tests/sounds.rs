//! Sound files of every kind, whole, cut and random, without a panic.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use bayhand_speech::sound::{self, SoundError};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng as _, SeedableRng as _};
use std::{fs, path::PathBuf};

const SEED: u64 = 20_609;

fn data(name: &str) -> Vec<u8> {
    fs::read(PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/data").join(name)).unwrap()
}

fn wav(rate: u32, channels: u16, frames: u32) -> Vec<u8> {
    let form =
        hound::WavSpec { channels, sample_rate: rate, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut bytes = std::io::Cursor::new(Vec::new());
    let mut writer = hound::WavWriter::new(&mut bytes, form).unwrap();
    for n in 0..frames * u32::from(channels) {
        writer.write_sample((n % 2000) as i16).unwrap();
    }
    writer.finalize().unwrap();
    bytes.into_inner()
}

#[test]
fn any_rate_and_number_of_channels_becomes_sixteen_thousand_samples_a_second() {
    for (rate, channels) in [(16_000, 1), (48_000, 2), (44_100, 1), (8_000, 4)] {
        let sound = sound::decode(&wav(rate, channels, rate)).unwrap();
        assert_eq!(sound.len(), 16_000, "a second of {channels} channels at {rate}");
    }
    let spoken = sound::decode(&data("voice3-c03.flac")).unwrap();
    assert!(spoken.len() > 4_000 && spoken.iter().any(|sample| sample.abs() > 0.05), "a word is heard");
}

#[test]
fn what_is_no_sound_is_refused_with_its_reason() {
    let refused = |bytes: &[u8]| sound::decode(bytes).unwrap_err();
    assert!(matches!(refused(b""), SoundError::OtherForm));
    assert!(matches!(refused(b"MP3 or so"), SoundError::OtherForm));
    assert!(matches!(refused(b"RIFF"), SoundError::Damaged(_)));
    assert!(matches!(refused(&wav(4_000, 1, 10)), SoundError::Rate(4_000)));
    assert!(matches!(refused(&wav(16_000, 1, 0)), SoundError::Empty));
    assert!(matches!(refused(&wav(8_000, 1, 31 * 8_000)), SoundError::TooLong(_)));
    let whole = data("voice3-r00.flac");
    assert!(
        matches!(refused(&whole[..whole.len() / 2]), SoundError::Damaged(_)),
        "half a file is not taken for a shorter one"
    );
}

/// Cut at any place, with any bytes changed, or random after the first four bytes: a sound or a refusal, never a panic.
#[test]
fn random_and_cut_files_do_no_harm() {
    let many = if std::env::var_os("BAYHAND_LONG").is_some() { 10_000 } else { 1_000 };
    println!("seed {SEED}, {many} files");
    let mut random = ChaCha8Rng::seed_from_u64(SEED);
    let whole = [data("voice3-c03.flac"), data("voice4-r05.flac"), wav(44_100, 2, 400), wav(16_000, 1, 800)];
    let (mut sounds, mut refused) = (0, 0);
    for number in 0..many {
        let mut bytes = whole[number % whole.len()].clone();
        let mut below = |most: usize| random.next_u32() as usize % most.max(1);
        match below(3) {
            0 => bytes.truncate(below(bytes.len())),
            1 => {
                for _ in 0..=below(8) {
                    // Half of the changes fall on the header, where the lengths stand.
                    let at = if below(2) == 0 { below(64) } else { below(bytes.len()) };
                    bytes[at] = below(256) as u8;
                }
            }
            _ => {
                bytes.truncate(4 + below(2_000));
                bytes[4..].iter_mut().for_each(|byte| *byte = below(256) as u8);
            }
        }
        match sound::decode(&bytes) {
            Ok(sound) => {
                assert!(sound.iter().all(|sample| sample.is_finite() && sample.abs() < 4.0), "file {number}");
                sounds += 1;
            }
            Err(_) => refused += 1,
        }
    }
    println!("{sounds} gave a sound, {refused} were refused");
    assert!(sounds > many / 50 && refused > many / 4, "control: both happen");
}

/// R: a tone of f changes from sample to sample by 4 sin²(pi f / rate) of its power. Mains of 50 and 60 Hz and their first
/// overtones up to 120 Hz are hum; a vowel's ring is not, and neither is speech (the flattest of the voices has five times
/// the share of the bound).
#[test]
fn hum_of_mains_is_told_from_a_voice() {
    let tone = |hz: f32| -> Vec<f32> {
        (0..16_000).map(|n| (n as f32 * hz * std::f32::consts::TAU / 16_000.0).sin() * 0.5).collect()
    };
    for hz in [16.7, 50.0, 60.0, 100.0, 118.0] {
        assert!(sound::is_hum(&tone(hz)), "{hz} Hz is hum");
    }
    for hz in [125.0, 300.0, 1_000.0] {
        assert!(!sound::is_hum(&tone(hz)), "{hz} Hz is not");
    }
    assert!(!sound::is_hum(&[0.0; 16_000]), "silence is not hum; its level tells");
    for name in ["voice3-c03", "voice3-r00"] {
        let file = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(format!("tests/data/{name}.flac"));
        assert!(!sound::is_hum(&sound::read(&file).unwrap()), "{name} is a voice");
    }
}
