//! Noise of a workshop, made from a fixed seed, and mixed to a stated distance below speech.

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng as _, SeedableRng as _};
use std::f32::consts::TAU;

/// The kinds that the table is measured with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Noise {
    /// Equal power in each octave.
    Pink,
    /// Falling by 6 dB in each octave.
    Brown,
    /// A hum of 49.6 Hz with its harmonics and a pulsing hiss, as of a compressor.
    Compressor,
}

impl Noise {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Pink, Self::Brown, Self::Compressor];
}

/// Samples a second.
const HERTZ: f32 = 16_000.0;

fn white(random: &mut ChaCha8Rng) -> f32 {
    random.next_u32() as f32 / u32::MAX as f32 * 2.0 - 1.0
}

/// `length` samples at 16 kHz.
fn noise(kind: Noise, length: usize, random: &mut ChaCha8Rng) -> Vec<f32> {
    match kind {
        // Sum of one-pole filters of white noise, one to about each octave (P. Kellet's coefficients, from memory).
        Noise::Pink => {
            const POLES: [(f32, f32); 6] = [
                (0.998_86, 0.055_517_9),
                (0.993_32, 0.075_075_9),
                (0.969, 0.153_852),
                (0.866_5, 0.310_485_6),
                (0.55, 0.532_952_2),
                (-0.761_6, -0.016_898),
            ];
            let mut held = [0.0_f32; 6];
            let mut next = || {
                let white = white(random);
                for (held, (pole, gain)) in held.iter_mut().zip(POLES) {
                    *held = pole * *held + gain * white;
                }
                held.iter().sum::<f32>() + white * 0.536_2
            };
            (0..length).map(|_| next()).collect()
        }
        Noise::Brown => {
            let mut sum = 0.0;
            let mut next = || {
                // A slow leak keeps it from wandering off.
                sum = 0.999 * sum + white(random);
                sum
            };
            (0..length).map(|_| next()).collect()
        }
        Noise::Compressor => (0..length)
            .map(|n| {
                let time = n as f32 / HERTZ;
                let hum: f32 = (1..=12).map(|k| (TAU * 49.6 * k as f32 * time + k as f32).sin() / k as f32).sum();
                let pulse = 0.5 + 0.5 * (TAU * 6.2 * time).sin();
                hum + 0.9 * pulse * white(random)
            })
            .collect(),
    }
}

/// Speech with noise this many decibels below it, both measured where someone speaks: frames of 20 ms within 30 dB of the
/// loudest.
pub fn mix(speech: &[f32], kind: Noise, decibels: f32, seed: u64) -> Vec<f32> {
    let mut random = ChaCha8Rng::seed_from_u64(seed);
    let noise = noise(kind, speech.len(), &mut random);
    let frame = 320;
    let power = |samples: &[f32]| samples.iter().map(|s| s * s).sum::<f32>() / samples.len().max(1) as f32;
    let powers: Vec<f32> = speech.chunks(frame).map(power).collect();
    let loudest = powers.iter().copied().fold(0.0, f32::max);
    let (mut of_speech, mut of_noise) = (0.0, 0.0);
    for ((speech, noise), level) in speech.chunks(frame).zip(noise.chunks(frame)).zip(&powers) {
        if *level > loudest * 1e-3 {
            of_speech += power(speech);
            of_noise += power(noise);
        }
    }
    let gain = (of_speech / of_noise / 10.0_f32.powf(decibels / 10.0)).sqrt();
    let mixed: Vec<f32> = speech.iter().zip(noise).map(|(speech, noise)| speech + gain * noise).collect();
    let most = mixed.iter().fold(1.0_f32, |most, sample| most.max(sample.abs()));
    mixed.into_iter().map(|sample| sample / most).collect()
}
