//! Chance that repeats: every draw follows from the car's seed and from what it is drawn for, and from nothing else.
//!
//! No generator lives on between calls, so the order of calls does not matter and a job that is replayed after a
//! crash sees the same numbers.

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// What is drawn for; each has numbers of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Purpose {
    Car = 1,
    Settle = 2,
    Look = 3,
    Laser = 4,
    Zeros = 5,
    Angles = 6,
    Faults = 7,
    Geometry = 8,
    Gauge = 9,
    RunOut = 10,
    Lines = 11,
    Wheels = 12,
    Sweep = 13,
    Steering = 14,
}

/// A run of draws; without a generator, the middle of what could be drawn.
#[derive(Debug)]
pub(crate) struct Draws(Option<ChaCha8Rng>);

impl Draws {
    /// The draws of one purpose, numbered by up to two counters.
    pub(crate) fn new(seed: u64, purpose: Purpose, first: u64, second: u64) -> Self {
        let mut key = [0; 32];
        for (bytes, word) in key.chunks_exact_mut(8).zip([seed, purpose as u64, first, second]) {
            bytes.copy_from_slice(&word.to_le_bytes());
        }
        Draws(Some(ChaCha8Rng::from_seed(key)))
    }

    /// No chance: the middle of each range, which is nothing where a range is either side of it.
    pub(crate) fn middle() -> Self {
        Draws(None)
    }

    /// Even between two bounds.
    pub(crate) fn even(&mut self, least: f64, most: f64) -> f64 {
        // The upper 53 bits fill a mantissa: [0, 1).
        let unit = self.0.as_mut().map_or(0.5, |chance| (chance.next_u64() >> 11) as f64 / (1_u64 << 53) as f64);
        least + (most - least) * unit
    }

    /// Even between two bounds, rounded to whole steps as a data sheet prints it.
    pub(crate) fn printed(&mut self, least: f64, most: f64, step: f64) -> f64 {
        to_step(self.even(least, most), step)
    }

    /// Even in size between two bounds, of either sign.
    pub(crate) fn either_side(&mut self, least: f64, most: f64) -> f64 {
        let size = self.even(least, most);
        if self.0.is_none() {
            return 0.0;
        }
        if self.even(0.0, 1.0) < 0.5 { -size } else { size }
    }

    /// Normal about zero (Box and Muller's transform).
    pub(crate) fn normal(&mut self, sigma: f64) -> f64 {
        // 1 - [0, 1) is never zero, so the logarithm is finite.
        let radius = (-2.0 * (1.0 - self.even(0.0, 1.0)).ln()).sqrt();
        sigma * radius * self.even(0.0, std::f64::consts::TAU).cos()
    }
}

/// The nearest whole number of steps, as the shortest decimal: 0.1 kg steps give 231.4, not 231.40000000000003.
pub(crate) fn to_step(value: f64, step: f64) -> f64 {
    // Steps here are 1, 2 or 5 times a power of ten, or a whole number of a thousandth: rounding to a
    // hundred-thousandth leaves the decimal nearest to the step.
    // Adding zero makes a plain zero of a negative one.
    ((value / step).round() * step * 1e5).round() / 1e5 + 0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The same question gets the same answer; another number, purpose or seed gets another.
    #[test]
    fn draws_repeat_and_differ() {
        let draw = |seed, purpose, a, b| Draws::new(seed, purpose, a, b).even(0.0, 1.0);
        let one = draw(7, Purpose::Look, 2, 3);
        assert_eq!(one, draw(7, Purpose::Look, 2, 3), "a replay shows the same");
        for other in [draw(8, Purpose::Look, 2, 3), draw(7, Purpose::Settle, 2, 3), draw(7, Purpose::Look, 3, 2)] {
            assert_ne!(one, other, "each question has numbers of its own");
        }
    }

    /// Mean and spread of many normal draws: within four standard errors of 0 and 1.
    #[test]
    fn normal_draws_are_normal() {
        let mut draws = Draws::new(1, Purpose::Look, 0, 0);
        let n = 20_000;
        let values: Vec<f64> = (0..n).map(|_| draws.normal(1.0)).collect();
        let mean = values.iter().sum::<f64>() / f64::from(n);
        let variance = values.iter().map(|v| v * v).sum::<f64>() / f64::from(n);
        assert!(mean.abs() < 4.0 / f64::from(n).sqrt(), "mean {mean}");
        assert!((variance - 1.0).abs() < 4.0 * (2.0 / f64::from(n)).sqrt(), "variance {variance}");
    }

    /// What is shown has as many decimals as its step.
    #[test]
    fn shown_values_are_clean_decimals() {
        assert_eq!(to_step(231.437, 0.1).to_string(), "231.4");
        assert_eq!(to_step(-1.487, 0.05).to_string(), "-1.5");
        assert_eq!(to_step(-0.01, 0.05).to_string(), "0");
    }
}
