//! Another rate of samples, by a windowed sinc: what lies above half of the lower rate is taken away.

use super::HERTZ;
use std::f64::consts::PI;

/// Zeros of the sinc on each side.
const ZEROS: f64 = 12.0;

/// The sound at 16 kHz.
pub fn to_16_khz(sound: &[f32], rate: u32) -> Vec<f32> {
    if rate == HERTZ || rate == 0 {
        return sound.to_vec();
    }
    let ratio = f64::from(HERTZ) / f64::from(rate);
    // Relative to the given rate: half of the lower of both rates, a little less for the slope of the filter.
    let cut = ratio.min(1.0) * 0.95;
    let reach = ZEROS / cut;
    let length = (sound.len() as f64 * ratio).floor() as usize;
    (0..length)
        .map(|n| {
            let centre = n as f64 / ratio;
            let first = (centre - reach).ceil().max(0.0) as usize;
            let last = ((centre + reach).floor() as usize).min(sound.len().saturating_sub(1));
            let weighted = (first..=last).map(|at| {
                let x = at as f64 - centre;
                let window = 0.5 + 0.5 * (PI * x / reach).cos();
                f64::from(sound[at]) * sinc(cut * x) * cut * window
            });
            weighted.sum::<f64>() as f32
        })
        .collect()
}

fn sinc(x: f64) -> f64 {
    if x.abs() < 1e-9 { 1.0 } else { (PI * x).sin() / (PI * x) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tone(hertz: f64, rate: u32) -> Vec<f32> {
        (0..rate).map(|n| (2.0 * PI * hertz * f64::from(n) / f64::from(rate)).sin() as f32).collect()
    }

    fn check(hertz: f64, rate: u32, kept: bool) {
        let out = to_16_khz(&tone(hertz, rate), rate);
        assert_eq!(out.len(), 16_000, "a second stays a second");
        let middle = &out[2_000..14_000];
        let wanted = if kept { tone(hertz, HERTZ)[2_000..14_000].to_vec() } else { vec![0.0; middle.len()] };
        let off = middle.iter().zip(wanted).map(|(is, wanted)| (is - wanted).abs()).fold(0.0, f32::max);
        assert!(off < 0.01, "{hertz} Hz from {rate}: {off} off");
    }

    /// A tone stays itself; one above 8 kHz cannot be said at 16 kHz and must not come back as another tone.
    #[test]
    fn tones_stay_and_what_is_too_high_goes() {
        check(440.0, 48_000, true);
        check(3_000.0, 44_100, true);
        check(440.0, 8_000, true);
        check(11_000.0, 48_000, false);
    }
}
