//! How wrong the entered car data may be: factors on spring rates and motion ratios, each with its standard uncertainty.
//!
//! Plausibility must not take such an error for something that happened, and the planner learns it from the rounds: both
//! begin here. The logarithm of a factor is what is uncertain, zero at the entered data. Data that is missing is what
//! [`Rates`] takes it to be, with a wide uncertainty.

use crate::error::within;
use crate::{Rates, StaticsError, ride_hz};
use bayhand_vehicle::{Car, Corner, Corners, Place};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One sigma of the entered data, common to left and right of an axle where they are entered equal.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Confidence {
    /// Of each spring rate, percent.
    pub spring_pct: f64,
    /// Of each motion ratio, percent.
    pub motion_ratio_pct: f64,
}

impl Default for Confidence {
    /// What entered data is worth when nobody says: 10 % of a spring, 3 % of a motion ratio.
    fn default() -> Self {
        Confidence { spring_pct: 10.0, motion_ratio_pct: 3.0 }
    }
}

impl Confidence {
    /// Checks that such a confidence can be. `at` is its path, for the message.
    ///
    /// # Errors
    /// A spring outside 0 to 100 %, a motion ratio outside 0 to 50 %.
    pub fn validate(&self, at: &str) -> Result<(), StaticsError> {
        within(&format!("{at}.spring_pct"), self.spring_pct, 0.0, 100.0, "from 0 to 100 %")?;
        within(&format!("{at}.motion_ratio_pct"), self.motion_ratio_pct, 0.0, 50.0, "from 0 to 50 %")
    }
}

/// What a learned factor multiplies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Scaled {
    /// The spring rate (where no spring was entered: the wheel rate).
    SpringRate,
    /// The motion ratio.
    MotionRatio,
}

/// A factor that is not known.
#[derive(Clone, Debug, PartialEq)]
pub struct UnknownFactor {
    /// What it multiplies.
    pub what: Scaled,
    /// At which corners; two where left and right of an axle were entered equal, or not at all.
    pub places: Vec<Place>,
    /// What it multiplies there: a spring rate (N/mm), a wheel rate (N/mm) where no spring was entered, or a ratio.
    pub base: f64,
    /// True when the base was entered, false when it was assumed.
    pub entered: bool,
    /// Standard uncertainty of its logarithm.
    pub sigma: f64,
}

/// One sigma of the logarithm of a wheel rate that nobody entered: the span of the ride frequency is two sigmas either
/// way (the rate goes with its square).
fn wide_rate(car: &Car) -> f64 {
    let (low, high) = ride_hz(car.sprung_like).span;
    2.0 * (high / low).ln() / 4.0
}

/// One sigma of the logarithm of a motion ratio that nobody entered: 0.6 to 1 as two sigmas either way. Common
/// practice, no source.
fn wide_ratio() -> f64 {
    (1.0_f64 / 0.6).ln() / 4.0
}

/// The unknown factors of a car: of each axle one for springs and one for ratios where left and right were entered equal
/// (or not at all), else one for each side. What is certain is not among them.
pub fn unknown_factors(car: &Car, confidence: &Confidence) -> Vec<UnknownFactor> {
    let rates = Rates::of(car);
    let springs = car.corners.map(|c| c.spring_n_per_mm);
    let ratios = car.corners.map(|c| c.motion_ratio);
    let spring_of = Corners::from_fn(|p| springs.at(p).unwrap_or(*rates.wheel_n_per_mm.at(p)));
    let mut all = Vec::new();
    for axle in [[Place::Fl, Place::Fr], [Place::Rl, Place::Rr]] {
        for (what, entered, base, stated_pct, wide) in [
            (Scaled::SpringRate, &springs, &spring_of, confidence.spring_pct, wide_rate(car)),
            (Scaled::MotionRatio, &ratios, &rates.motion_ratio, confidence.motion_ratio_pct, wide_ratio()),
        ] {
            let one = |places: &[Place]| {
                let entered = entered.at(places[0]).is_some();
                let sigma = if entered { stated_pct / 100.0 } else { wide };
                UnknownFactor { what, places: places.to_vec(), base: *base.at(places[0]), entered, sigma }
            };
            if entered.at(axle[0]) == entered.at(axle[1]) {
                all.push(one(&axle));
            } else {
                all.extend(axle.iter().map(|p| one(&[*p])));
            }
        }
    }
    all.retain(|unknown| unknown.sigma > 0.0);
    all
}

/// The car with its missing springs and ratios filled in and the factors `exp(log)` on them, held inside what a car can
/// be. Without factors: the car as [`Rates`] takes it.
pub fn with_factors<'a>(car: &Car, factors: impl Iterator<Item = (&'a UnknownFactor, f64)> + Clone) -> Car {
    let rates = Rates::of(car);
    let factor = |what: Scaled, place: Place| {
        let here = factors.clone().filter(|(u, _)| u.what == what && u.places.contains(&place));
        here.map(|(_, log)| log).sum::<f64>().exp()
    };
    let corner = |p: Place| {
        let entered = car.corners.at(p);
        let ratio = rates.motion_ratio.at(p) * factor(Scaled::MotionRatio, p);
        // A wheel rate that was assumed stays when the ratio changes; an entered spring does.
        let spring = entered.spring_n_per_mm.unwrap_or(rates.wheel_n_per_mm.at(p) / (ratio * ratio));
        Corner {
            motion_ratio: Some(ratio.clamp(0.1, 3.0)),
            spring_n_per_mm: Some((spring * factor(Scaled::SpringRate, p)).clamp(1.0, 5_000.0)),
            ..*entered
        }
    };
    Car { corners: Corners::from_fn(corner), ..*car }
}
