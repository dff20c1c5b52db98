//! From sound to the logarithmic spectrogram that the network was trained on: frames of 25 ms each 10 ms, 80 bands on
//! the scale of Slaney's Auditory Toolbox (1998), clipped 80 dB below the loudest.

use super::shape::BANDS;
use crate::sound::HERTZ;
use nalgebra::DMatrix;
use std::f64::consts::PI;

/// Samples of a frame.
const FRAME: usize = 400;
/// Samples from frame to frame.
pub const STEP: usize = 160;
/// Frequencies of a frame's transform.
const BINS: usize = FRAME / 2 + 1;

/// What is computed once.
pub struct Spectrogram {
    /// Frame x frequencies, the window of Hann multiplied in.
    cosines: DMatrix<f32>,
    sines: DMatrix<f32>,
    /// Frequencies x bands.
    bands: DMatrix<f32>,
}

impl Spectrogram {
    /// Computes the tables.
    pub fn new() -> Self {
        let window = |n: usize| 0.5 - 0.5 * (2.0 * PI * n as f64 / FRAME as f64).cos();
        let turn = |n: usize, k: usize| 2.0 * PI * ((n * k) % FRAME) as f64 / FRAME as f64;
        Self {
            cosines: DMatrix::from_fn(FRAME, BINS, |n, k| (window(n) * turn(n, k).cos()) as f32),
            sines: DMatrix::from_fn(FRAME, BINS, |n, k| (window(n) * turn(n, k).sin()) as f32),
            bands: bands(),
        }
    }

    /// Frames x bands of sound at 16 kHz, as many frames as asked for; after its end there is silence.
    pub fn of(&self, sound: &[f32], frames: usize) -> DMatrix<f32> {
        // A frame is centred on its sample; before the first the sound is mirrored.
        let half = FRAME / 2;
        let at = |place: usize| sound.get(place.abs_diff(half)).copied().unwrap_or(0.0);
        let cut = DMatrix::from_fn(frames, FRAME, |frame, n| at(frame * STEP + n));
        let (real, imaginary) = (&cut * &self.cosines, &cut * &self.sines);
        let power = real.zip_map(&imaginary, |re, im| re * re + im * im);
        let mut bands = &power * &self.bands;
        bands.apply(|value| *value = value.max(1e-10).log10());
        let floor = bands.max() - 8.0;
        bands.apply(|value| *value = (value.max(floor) + 4.0) / 4.0);
        bands
    }
}

/// Triangles of equal area over frequency, their corners evenly apart on the mel scale.
fn bands() -> DMatrix<f32> {
    // Slaney's scale: linear below 1 kHz, then 27 steps for each factor of 6.4.
    let (linear, begin) = (200.0 / 3.0, 15.0);
    let factor = 6.4_f64.ln() / 27.0;
    let hertz = |mel: f64| if mel < begin { mel * linear } else { 1000.0 * (factor * (mel - begin)).exp() };
    let most = f64::from(HERTZ) / 2.0;
    let most_mel = begin + (most / 1000.0).ln() / factor;
    let corner = |n: usize| hertz(most_mel * n as f64 / (BANDS + 1) as f64);
    DMatrix::from_fn(BINS, BANDS, |bin, band| {
        let at = most * bin as f64 / (BINS - 1) as f64;
        let (low, mid, high) = (corner(band), corner(band + 1), corner(band + 2));
        let rise = (at - low) / (mid - low);
        let fall = (high - at) / (high - mid);
        (rise.min(fall).max(0.0) * 2.0 / (high - low)) as f32
    })
}
