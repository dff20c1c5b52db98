//! What a measured value says about a window (JCGM 106:2012).

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use statrs::distribution::{ContinuousCDF, Normal};

/// What is wanted of a value; either end may be infinite.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interval {
    /// Least value.
    pub least: f64,
    /// Greatest value.
    pub most: f64,
}

/// A decision with a guard band (ILAC-G8:09/2019, 4.2.3).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Decision {
    /// Inside the window by more than the guard band.
    Pass,
    /// Inside the window, within the guard band.
    ConditionalPass,
    /// Outside the window, within the guard band.
    ConditionalFail,
    /// Outside the window by more than the guard band.
    Fail,
}

impl Interval {
    /// From a target and the half width of its window.
    pub fn about(target: f64, window: f64) -> Interval {
        Interval { least: target - window, most: target + window }
    }

    /// The interval in which a measured value is accepted: smaller on each side by the guard band (JCGM 106, 8.3.2).
    pub fn guarded(&self, guard: f64) -> Interval {
        Interval { least: self.least + guard, most: self.most - guard }
    }

    /// True for a value inside, its ends included.
    pub fn holds(&self, value: f64) -> bool {
        value >= self.least && value <= self.most
    }

    /// Probability that the true value is inside, measured as `value` with a standard uncertainty and normal (JCGM 106,
    /// 7.4). It is also that of reading a value inside when the true one is `value`.
    pub fn probability(&self, value: f64, standard: f64) -> f64 {
        let below = |edge: f64| {
            let z = (edge - value) / standard;
            // A certain value on the edge is inside.
            if z.is_nan() { 0.5 } else { Normal::standard().cdf(z) }
        };
        if standard > 0.0 { below(self.most) - below(self.least) } else { f64::from(self.holds(value)) }
    }

    /// Decides about a measured value with a guard band.
    pub fn decide(&self, value: f64, guard: f64) -> Decision {
        let beyond = Interval { least: self.least - guard, most: self.most + guard };
        if self.guarded(guard).holds(value) {
            Decision::Pass
        } else if self.holds(value) {
            Decision::ConditionalPass
        } else if beyond.holds(value) {
            Decision::ConditionalFail
        } else {
            Decision::Fail
        }
    }

    /// Probability that a thing is outside this interval and yet accepted, for things whose true values spread with this
    /// density and a measurement of this standard uncertainty that accepts inside `accepted`: the global consumer's risk
    /// (JCGM 106, 9.5.2). `density` is integrated from `from` to `to`, which should hold all of it.
    pub fn consumer_risk(
        &self,
        accepted: &Interval,
        standard: f64,
        density: impl Fn(f64) -> f64,
        from: f64,
        to: f64,
    ) -> f64 {
        let wrongly = |x: f64| if self.holds(x) { 0.0 } else { density(x) * accepted.probability(x, standard) };
        // The integrand jumps at the ends of this interval and nowhere else.
        let mut ends = [from, self.least.clamp(from, to), self.most.clamp(from, to), to];
        ends.sort_by(f64::total_cmp);
        ends.windows(2).map(|part| integral(&wrongly, part[0], part[1])).sum()
    }
}

/// Simpson's rule on the open interval.
fn integral(f: &impl Fn(f64) -> f64, from: f64, to: f64) -> f64 {
    const PARTS: usize = 2_000;
    if to <= from {
        return 0.0;
    }
    let width = (to - from) / PARTS as f64;
    // The ends belong to the neighbours where the integrand jumps: stay inside by a hair.
    let hair = width * 1e-9;
    let at = |i: usize| f((from + i as f64 * width).clamp(from + hair, to - hair));
    let sum: f64 = (0..=PARTS)
        .map(|i| {
            at(i)
                * if i == 0 || i == PARTS {
                    1.0
                } else if i % 2 == 1 {
                    4.0
                } else {
                    2.0
                }
        })
        .sum();
    sum * width / 3.0
}
