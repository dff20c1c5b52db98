//! Where the uncertainty of four loads comes from: each source as load changes (kg) per standard uncertainty.

use super::instruments::{Instruments, rounding};
use crate::geometry::wheel;
use crate::pads::times;
use crate::{Sensitivity, StaticsError, diagonal};
use bayhand_vehicle::{Car, Corners, Place};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A source of uncertainty.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Source {
    /// Looks at a pad under a resting load.
    Looks,
    /// The step of the display.
    Rounding,
    /// Friction and tyre scrub, along the diagonal pattern.
    Friction,
    /// Contact patches away from their place.
    Patches,
    /// The zero that each pad keeps.
    Zero,
    /// Each pad's calibration.
    Calibration,
    /// Twist of the pads that is left after correction.
    LevelTwist,
    /// Pads that lie in one plane which is not level: the staff's part and the laser's own tilt.
    LevelTilt,
}

/// How a source spreads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Spreads {
    /// Anew at each look.
    ByLook,
    /// Anew at each settle.
    BySettle,
    /// Anew in each reading, however often it is looked and settled: a car at rest shows the same step again.
    ByReading,
    /// Constant over the job: no difference of two readings carries it, no repeating helps.
    Constant,
}

impl Source {
    /// How it spreads.
    pub fn spreads(self) -> Spreads {
        match self {
            Source::Looks => Spreads::ByLook,
            Source::Friction | Source::Patches => Spreads::BySettle,
            Source::Rounding => Spreads::ByReading,
            Source::Zero | Source::Calibration | Source::LevelTwist | Source::LevelTilt => Spreads::Constant,
        }
    }

    /// Part of its standard uncertainty that is left in the mean of so many looks at each of so many settles.
    pub(crate) fn left_in_mean(self, looks: u32, settles: u32) -> f64 {
        let (looks, settles) = (f64::from(looks.max(1)), f64::from(settles.max(1)));
        match self.spreads() {
            Spreads::ByLook => 1.0 / (looks * settles).sqrt(),
            Spreads::BySettle => 1.0 / settles.sqrt(),
            Spreads::ByReading | Spreads::Constant => 1.0,
        }
    }
}

/// One independent input of a source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Effect {
    pub(crate) source: Source,
    /// Load changes per standard uncertainty of one look at one settle, kg.
    pub(crate) loads_kg: [f64; 4],
    /// Degrees of freedom of that standard uncertainty.
    pub(crate) dof: f64,
}

/// All independent inputs of a reading of about these loads.
pub(crate) fn effects(
    car: &Car,
    instruments: &Instruments,
    loads_kg: &Corners<f64>,
) -> Result<Vec<Effect>, StaticsError> {
    let sensitivity = Sensitivity::of(car)?;
    let n = diagonal(car).to_array();
    let mut all = Vec::new();
    let mut add = |source, loads_kg: [f64; 4], dof: f64| {
        if loads_kg.iter().any(|v| *v != 0.0) {
            all.push(Effect { source, loads_kg, dof });
        }
    };
    let exact = f64::INFINITY;
    let one = |i: usize, by: f64| -> [f64; 4] { std::array::from_fn(|j| if i == j { by } else { 0.0 }) };
    let column = |m: &[[f64; 4]; 4], i: usize, by: f64| m.map(|row| row[i] * by);
    let settle_dof = instruments.settle_dof.map_or(exact, f64::from);
    add(Source::Friction, n.map(|v| v * instruments.settle_kg), settle_dof);
    for (i, load_kg) in loads_kg.to_array().into_iter().enumerate() {
        add(Source::Looks, one(i, instruments.pad_look_kg), exact);
        add(Source::Rounding, one(i, rounding(instruments.pad_resolution_kg)), exact);
        add(Source::Zero, one(i, instruments.pad_zero_kg), exact);
        add(Source::Calibration, one(i, load_kg * instruments.pad_calibration_pct / 100.0), exact);
        let moment = load_kg * instruments.patch_mm;
        add(Source::Patches, column(&sensitivity.patch.forward, i, moment), exact);
        add(Source::Patches, column(&sensitivity.patch.left, i, moment), exact);
    }
    // The staff reads each pad by itself: along the unit vector of the twist, and along the three of tilt and mean.
    let staff = instruments.level.staff_mm();
    let [twist, rest @ ..] = twist_and_planes(car);
    add(Source::LevelTwist, times(&sensitivity.load_per_mm_pad, &twist.map(|v| v * staff)), exact);
    for plane in rest {
        add(Source::LevelTilt, times(&sensitivity.load_per_mm_pad, &plane.map(|v| v * staff)), exact);
    }
    // The laser's own plane: rising forward, rising to the left; places in mm, so mm/m is a thousandth of them.
    let tilt = instruments.level.tilt_mm_per_m() / 1e3;
    let places = Place::ALL.map(|p| wheel(car, p));
    for plane in [places.map(|w| w.x * tilt), places.map(|w| w.y * tilt)] {
        add(Source::LevelTilt, times(&sensitivity.load_per_mm_pad, &plane), exact);
    }
    Ok(all)
}

/// Four orthonormal patterns of pad heights: the twist, then three that span every plane over the wheels.
fn twist_and_planes(car: &Car) -> [[f64; 4]; 4] {
    let places = Place::ALL.map(|p| wheel(car, p));
    let mut patterns = [diagonal(car).to_array(), [1.0; 4], places.map(|w| w.x), places.map(|w| w.y)];
    // Gram and Schmidt; the twist is at right angles to every plane as it is.
    for k in 0..4 {
        let (done, rest) = patterns.split_at_mut(k);
        let this = &mut rest[0];
        for before in done {
            let along: f64 = before.iter().zip(this.iter()).map(|(a, b)| a * b).sum();
            this.iter_mut().zip(before.iter()).for_each(|(v, b)| *v -= along * b);
        }
        let length = this.iter().map(|v| v * v).sum::<f64>().sqrt();
        this.iter_mut().for_each(|v| *v /= length);
    }
    patterns
}
