//! What is stated of the instruments and of the way of reading, one sigma except for resolutions.

use crate::error::within;
use crate::{Pads, StaticsError};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::f64::consts::{PI, TAU};

/// Standard uncertainty of a value that is known to lie within ± `half_width` and no more: a rectangle's,
/// `half_width / sqrt 3` (JCGM 100:2008, 4.3.7). For limits out of a certificate, such as those of OIML R 76.
pub fn standard_of_limits(half_width: f64) -> f64 {
    half_width / 3.0_f64.sqrt()
}

/// Largest error of a class III scale with verification interval `e`, kg, at a load, kg: ±0.5 e up to 500 e, ±1 e up to
/// 2000 e, ±1.5 e up to 10 000 e on verification, twice as much in service (OIML R 76-1, table 6). None above.
pub fn class_iii_limit_kg(load_kg: f64, interval_kg: f64, in_service: bool) -> Option<f64> {
    let intervals = load_kg / interval_kg;
    let steps = [(500.0, 0.5), (2_000.0, 1.0), (10_000.0, 1.5)];
    let limit = steps.into_iter().find(|(up_to, _)| intervals <= *up_to).map(|(_, limit)| limit)?;
    Some(limit * interval_kg * if in_service { 2.0 } else { 1.0 })
}

/// What is stated of pads, friction, level and heights.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Instruments {
    /// Step of a pad's display, kg.
    pub pad_resolution_kg: f64,
    /// A look at one pad under a resting load, kg.
    pub pad_look_kg: f64,
    /// The zero that a pad keeps over the job, kg.
    pub pad_zero_kg: f64,
    /// A pad's calibration, percent of the load.
    pub pad_calibration_pct: f64,
    /// Load that friction moves at each settle along the diagonal pattern, kg at FL.
    pub settle_kg: f64,
    /// Degrees of freedom of `settle_kg`; absent: it is stated and taken as exactly known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub settle_dof: Option<u32>,
    /// Place of a contact patch after each settle, mm in each direction.
    #[serde(default)]
    pub patch_mm: f64,
    /// How the pads were levelled.
    pub level: Level,
    /// How heights are read.
    pub heights: HeightGauge,
}

/// What is stated of the reading of the pads' heights.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Level {
    /// Step of the staff, mm.
    pub resolution_mm: f64,
    /// A look at the staff, mm.
    pub look_mm: f64,
    /// Tilt of the laser's plane in either direction, mm per m.
    pub plane_mm_per_m: f64,
    /// Set-ups of the laser that were averaged, at least one.
    pub set_ups: u32,
    /// The laser was turned by half a turn from one set-up to the next, so that the tilt of its plane is lost in the
    /// mean of an even number.
    pub turned: bool,
}

/// What is stated of the reading of heights.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HeightGauge {
    /// Step of the scale, mm.
    pub resolution_mm: f64,
    /// A look at one height, mm.
    pub look_mm: f64,
    /// Spread of a height over settles, mm.
    pub settle_mm: f64,
    /// Zero of the gauge, common to all heights of the job, mm.
    pub zero_mm: f64,
}

impl Level {
    /// Standard uncertainty of one pad's height by reading the staff, mm: rounding and looks, averaged over set-ups.
    pub fn staff_mm(&self) -> f64 {
        self.look_mm.hypot(rounding(self.resolution_mm)) / f64::from(self.set_ups.max(1)).sqrt()
    }

    /// Tilt of the plane that is left, mm per m in either direction: the same in each set-up unless turned; of an odd
    /// number of turned ones one is left over.
    pub fn tilt_mm_per_m(&self) -> f64 {
        let n = self.set_ups.max(1);
        match (self.turned, n % 2) {
            (false, _) => self.plane_mm_per_m,
            (true, 0) => 0.0,
            (true, _) => self.plane_mm_per_m / f64::from(n),
        }
    }
}

impl HeightGauge {
    /// Standard uncertainty of one height as it changes from reading to reading, mm.
    ///
    /// Rounding is averaged as far as looks and settles move the height over the steps of the scale; a car that shows the
    /// same step again is not read better by looking again. See `rounding_alike`.
    pub fn varying_mm(&self, looks: u32, settles: u32) -> f64 {
        let (n, m) = (f64::from(looks.max(1)), f64::from(settles.max(1)));
        let alike = |variance: f64| rounding_alike(variance.sqrt(), self.resolution_mm);
        let (look, settle) = (self.look_mm.powi(2), self.settle_mm.powi(2));
        let same_settle = (n - 1.0) * alike(look);
        let other_settles = n * (m - 1.0) * alike(look + settle);
        let rounding = rounding(self.resolution_mm).powi(2) * (1.0 + same_settle + other_settles) / (n * m);
        (look / (n * m) + settle / m + rounding).sqrt()
    }
}

/// Correlation of the rounding of two values that spread by `sigma` about one and the same place, independently, and of
/// which the place may be anywhere in a step.
///
/// The error of rounding `x` is the saw-tooth `sum (-1)^k q / (pi k) sin(2 pi k x / q)`; the k-th wave has `1/k²` of the
/// variance, and normal spread leaves `exp(-(2 pi k sigma / q)²)` of it in common (Fourier series; recomputed, and
/// verified by drawing in the tests).
fn rounding_alike(sigma: f64, step: f64) -> f64 {
    /// Waves that count; the rest is below a thousandth.
    const WAVES: u32 = 1_000;
    if step <= 0.0 {
        return 0.0;
    }
    let turns = TAU * sigma / step;
    let wave = |k: f64| (-(k * turns).powi(2)).exp() / (k * k);
    // All waves together are pi²/6.
    6.0 / PI.powi(2) * (1..=WAVES).map(|k| wave(f64::from(k))).sum::<f64>()
}

/// Standard uncertainty of rounding to a step, mm or kg (JCGM 100:2008, F.2.2.1).
pub(crate) fn rounding(step: f64) -> f64 {
    step / 12.0_f64.sqrt()
}

impl Instruments {
    /// Checks that such instruments can be.
    ///
    /// # Errors
    /// The first field out of its range.
    pub fn validate(&self, at: &str) -> Result<(), StaticsError> {
        for (field, value) in [
            ("pad_resolution_kg", self.pad_resolution_kg),
            ("pad_look_kg", self.pad_look_kg),
            ("pad_zero_kg", self.pad_zero_kg),
            ("pad_calibration_pct", self.pad_calibration_pct),
            ("settle_kg", self.settle_kg),
            ("patch_mm", self.patch_mm),
            ("level.resolution_mm", self.level.resolution_mm),
            ("level.look_mm", self.level.look_mm),
            ("level.plane_mm_per_m", self.level.plane_mm_per_m),
            ("heights.resolution_mm", self.heights.resolution_mm),
            ("heights.look_mm", self.heights.look_mm),
            ("heights.settle_mm", self.heights.settle_mm),
            ("heights.zero_mm", self.heights.zero_mm),
        ] {
            within(&format!("{at}.{field}"), value, 0.0, 100.0, "from 0 to 100")?;
        }
        let dof = self.settle_dof.map_or(1.0, f64::from);
        within(&format!("{at}.settle_dof"), dof, 1.0, 1e6, "at least 1")?;
        within(&format!("{at}.level.set_ups"), f64::from(self.level.set_ups), 1.0, 1e6, "at least 1")
    }

    /// The same in the fewer words that plans and plausibility read. What is constant over the job beside the level
    /// of the pads has no place there: it does not matter to differences.
    pub fn pads(&self) -> Pads {
        Pads {
            resolution_kg: self.pad_resolution_kg,
            look_kg: self.pad_look_kg,
            settle_kg: self.settle_kg,
            level_mm: self.level.staff_mm(),
            height_mm: self.heights.varying_mm(1, 1),
            patch_mm: self.patch_mm,
        }
    }
}
