//! The network: Whisper `tiny.en` in plain Rust on one matrix product. It knows tokens and sound, no grammar.
//!
//! - [`convert`]: makes the model's file. [`place`]: where it lies. `file`: what it holds. `shape`: the network's extents.
//! - `spectrogram`, `encoder`, `decoder`: from sound to states to scores of tokens.

pub mod convert;
mod decoder;
mod encoder;
mod file;
pub mod place;
pub(crate) mod shape;
mod spectrogram;
mod weights;

pub(crate) use decoder::{Past, Sound};
pub use file::ModelError;

use spectrogram::Spectrogram;
use std::path::Path;
use weights::Network;

/// A model that has been read: about 155 MB.
pub struct Model {
    network: Network,
    spectrogram: Spectrogram,
}

/// Places of silence that the network is given after the sound.
const AFTER: usize = 120;

impl Model {
    /// Reads a model's file.
    ///
    /// # Errors
    /// It cannot be read, is another file, or is damaged.
    pub fn read(path: &Path) -> Result<Self, ModelError> {
        Ok(Self { network: Network::read(path)?, spectrogram: Spectrogram::new() })
    }

    /// Ends well when a model's file is there and whole.
    ///
    /// # Errors
    /// As [`Self::read`].
    pub fn check(path: &Path) -> Result<(), ModelError> {
        file::read(path).map(|_| ())
    }

    /// Bytes of each token.
    pub(crate) fn vocabulary(&self) -> &[Vec<u8>] {
        &self.network.vocabulary
    }

    /// Takes in sound at 16 kHz; of more than thirty seconds the first thirty.
    pub(crate) fn listen(&self, sound: &[f32]) -> Sound {
        let places = (sound.len().div_ceil(2 * spectrogram::STEP) + AFTER).min(shape::PLACES);
        let sound = &sound[..sound.len().min(places * 2 * spectrogram::STEP)];
        let states = self.network.encoder.states(&self.spectrogram, sound, places);
        self.network.decoder.sound(&states)
    }

    /// Adds tokens to texts, each named by its place among them; the state after each token.
    pub(crate) fn step(&self, sound: &Sound, texts: &mut [Past], tokens: &[(usize, usize)]) -> Vec<f32> {
        self.network.decoder.step(sound, texts, tokens)
    }

    /// The logarithms of the chances of all tokens after each state that [`Self::step`] gave.
    pub(crate) fn chances(&self, states: &[f32]) -> Vec<Vec<f32>> {
        let mut scores = self.network.decoder.scores(states);
        for scores in &mut scores {
            let most = scores.iter().copied().fold(f32::NEG_INFINITY, f32::max);
            let sum: f32 = scores.iter().map(|score| (score - most).exp()).sum();
            let all = most + sum.ln();
            scores.iter_mut().for_each(|score| *score -= all);
        }
        scores
    }
}

/// Turns scores into shares of one.
fn softmax(scores: &mut [f32]) {
    let most = scores.iter().copied().fold(f32::NEG_INFINITY, f32::max);
    let mut sum = 0.0;
    for score in scores.iter_mut() {
        *score = (*score - most).exp();
        sum += *score;
    }
    scores.iter_mut().for_each(|score| *score /= sum);
}
