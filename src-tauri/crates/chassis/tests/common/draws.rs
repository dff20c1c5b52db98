//! Random draws from a printed seed.
#![allow(dead_code, reason = "each test file uses its own part")]

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// A stream of draws.
pub struct Draws(ChaCha8Rng);

impl Draws {
    /// Starts a stream and prints its seed.
    pub fn from_seed(seed: u64) -> Draws {
        println!("seed {seed}");
        Draws(ChaCha8Rng::seed_from_u64(seed))
    }

    /// Evenly between two values.
    pub fn even(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * (self.0.next_u64() >> 11) as f64 / (1u64 << 53) as f64
    }

    /// Normal with mean 0 and this standard deviation (Box and Muller).
    pub fn normal(&mut self, sigma: f64) -> f64 {
        let (u, v) = (1.0 - self.even(0.0, 1.0), self.even(0.0, std::f64::consts::TAU));
        sigma * (-2.0 * u.ln()).sqrt() * v.cos()
    }
}
