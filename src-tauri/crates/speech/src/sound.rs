//! Sound as the recogniser takes it: one channel, 16,000 samples a second, from -1 to 1.

pub mod microphone;
mod noise;
mod resample;

pub use noise::{Loudness, is_hum, loudness};
pub use resample::to_16_khz;

use std::io::Cursor;
use std::{fs, io, path::Path};

/// Samples a second.
pub const HERTZ: u32 = 16_000;

/// The longest sound that is listened to, in seconds; what is longer is refused.
pub const MOST_SECONDS: u32 = 30;

/// Sample rates that are understood.
const RATES: std::ops::RangeInclusive<u32> = 8_000..=192_000;

/// Why a file gives no sound.
#[derive(Debug, thiserror::Error)]
pub enum SoundError {
    /// It cannot be read.
    #[error("the sound cannot be read: {0}")]
    Unreadable(#[from] io::Error),
    /// It is neither WAV nor FLAC.
    #[error("the sound is neither a WAV nor a FLAC file")]
    OtherForm,
    /// It begins like one but is cut or damaged.
    #[error("the sound file is damaged: {0}")]
    Damaged(String),
    /// Its rate is not understood.
    #[error("the sound has {0} samples a second; it must have 8000 to 192000")]
    Rate(u32),
    /// It holds nothing.
    #[error("the sound is empty")]
    Empty,
    /// It is too long for one thing said.
    #[error("the sound lasts {0} seconds; it must last at most 30")]
    TooLong(u64),
}

/// Reads a WAV or FLAC file of any rate and number of channels.
///
/// # Errors
/// It cannot be read, is damaged, empty, or longer than [`MOST_SECONDS`].
pub fn read(path: &Path) -> Result<Vec<f32>, SoundError> {
    decode(&fs::read(path)?)
}

/// Reads the bytes of such a file.
///
/// # Errors
/// As [`read`].
pub fn decode(bytes: &[u8]) -> Result<Vec<f32>, SoundError> {
    let raw = if bytes.starts_with(b"fLaC") {
        flac(bytes)?
    } else if bytes.starts_with(b"RIFF") {
        wav(bytes)?
    } else {
        return Err(SoundError::OtherForm);
    };
    if raw.samples.is_empty() {
        return Err(SoundError::Empty);
    }
    Ok(to_16_khz(&raw.samples, raw.rate))
}

/// One channel at the file's own rate.
struct Raw {
    samples: Vec<f32>,
    rate: u32,
}

/// Takes frames of `channels` samples and keeps their mean; refuses what is too long before it is all in memory.
struct Mixer {
    raw: Raw,
    channels: u32,
    frame: Vec<f32>,
}

impl Mixer {
    fn new(rate: u32, channels: u32) -> Result<Self, SoundError> {
        if !RATES.contains(&rate) {
            return Err(SoundError::Rate(rate));
        }
        Ok(Self { raw: Raw { samples: Vec::new(), rate }, channels: channels.max(1), frame: Vec::new() })
    }

    fn add(&mut self, sample: f32) -> Result<(), SoundError> {
        // A float file may hold anything, also what is no number.
        self.frame.push(if sample.is_finite() { sample.clamp(-1.0, 1.0) } else { 0.0 });
        if self.frame.len() as u64 == u64::from(self.channels) {
            self.raw.samples.push(self.frame.drain(..).sum::<f32>() / self.channels as f32);
            let seconds = self.raw.samples.len() as u64 / u64::from(self.raw.rate);
            if seconds >= u64::from(MOST_SECONDS) {
                return Err(SoundError::TooLong(seconds));
            }
        }
        Ok(())
    }
}

fn flac(bytes: &[u8]) -> Result<Raw, SoundError> {
    let damaged = |error: claxon::Error| SoundError::Damaged(error.to_string());
    let mut reader = claxon::FlacReader::new(Cursor::new(bytes)).map_err(damaged)?;
    let info = reader.streaminfo();
    let mut mixer = Mixer::new(info.sample_rate, info.channels)?;
    let most = 2.0_f32.powi(info.bits_per_sample.clamp(1, 32) as i32 - 1);
    for sample in reader.samples() {
        mixer.add(sample.map_err(damaged)? as f32 / most)?;
    }
    Ok(mixer.raw)
}

fn wav(bytes: &[u8]) -> Result<Raw, SoundError> {
    let damaged = |error: hound::Error| SoundError::Damaged(error.to_string());
    let mut reader = hound::WavReader::new(Cursor::new(bytes)).map_err(damaged)?;
    let form = reader.spec();
    let mut mixer = Mixer::new(form.sample_rate, form.channels.into())?;
    match form.sample_format {
        hound::SampleFormat::Float => {
            for sample in reader.samples::<f32>() {
                mixer.add(sample.map_err(damaged)?)?;
            }
        }
        hound::SampleFormat::Int => {
            let most = 2.0_f32.powi(i32::from(form.bits_per_sample.clamp(1, 32)) - 1);
            for sample in reader.samples::<i32>() {
                mixer.add(sample.map_err(damaged)? as f32 / most)?;
            }
        }
    }
    Ok(mixer.raw)
}
