//! How loud speech is above the noise of the place.

use super::HERTZ;

/// Levels in decibels below full scale, and their difference.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loudness {
    /// Level of the quiet parts: what is there when nobody speaks.
    pub noise_db: f32,
    /// Level of the loud parts.
    pub speech_db: f32,
}

impl Loudness {
    /// Speech above noise, in decibels.
    pub fn above_noise_db(self) -> f32 {
        self.speech_db - self.noise_db
    }
}

/// Measures frames of 20 ms: the quietest tenth is taken for the noise, the loudest fifth for speech. `None` for less than
/// a fifth of a second.
pub fn loudness(sound: &[f32]) -> Option<Loudness> {
    let mut powers: Vec<f32> = sound
        .chunks_exact(HERTZ as usize / 50)
        .map(|frame| frame.iter().map(|sample| sample * sample).sum::<f32>() / frame.len() as f32)
        .collect();
    if powers.len() < 10 {
        return None;
    }
    powers.sort_by(f32::total_cmp);
    let mean = |part: &[f32]| part.iter().sum::<f32>() / part.len() as f32;
    let decibels = |power: f32| 10.0 * power.max(1e-10).log10();
    let (tenth, fifth) = (powers.len() / 10, powers.len() / 5);
    Some(Loudness {
        noise_db: decibels(mean(&powers[..tenth.max(1)])),
        speech_db: decibels(mean(&powers[powers.len() - fifth.max(1)..])),
    })
}

/// Highest frequency of what is taken for hum, Hz: mains, their first overtone, and machines.
const HUM_HZ: f32 = 120.0;

/// True when a sound is nothing but hum. What a low tone changes from one sample to the next is little of what it is; of
/// speech, whose vowels ring at several hundred hertz, it is much more.
pub fn is_hum(sound: &[f32]) -> bool {
    let power: f32 = sound.iter().map(|sample| sample * sample).sum();
    let changes: f32 = sound.windows(2).map(|two| (two[1] - two[0]).powi(2)).sum();
    // A tone of frequency f has the share 4 sin²(pi f / rate).
    changes < 4.0 * (std::f32::consts::PI * HUM_HZ / HERTZ as f32).sin().powi(2) * power
}
