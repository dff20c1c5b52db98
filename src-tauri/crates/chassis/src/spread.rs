//! What is known of a reading, and what can be said against a window.
//!
//! Three kinds of spread stay apart: looks at a resting car, settles, and what is constant over the job. Together
//! they are the covariance of the four loads; figures get theirs by the law of propagation of uncertainty
//! (JCGM 100:2008, 5.2), expanded with k = 2. A window is judged with a guard band as in JCGM 106:2012.

use crate::error::{check_loads, within};
use crate::pads::times;
use crate::{Figures, Sensitivity, StaticsError, diagonal};
use bayhand_vehicle::{Car, Corners};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Coverage factor of every expanded uncertainty (JCGM 100:2008, 6.2 and G.6.6: about 95 %).
pub const COVERAGE: f64 = 2.0;

/// What is known of the pads and of the reading of heights, one sigma except for the resolution.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Pads {
    /// Step of the display, kg.
    pub resolution_kg: f64,
    /// One pad's look at rest, kg; corners independent.
    pub look_kg: f64,
    /// Load that friction moves at each settle along the diagonal pattern, as kg at FL.
    pub settle_kg: f64,
    /// Height of a pad after correction, mm; constant over the job.
    pub level_mm: f64,
    /// A height reading, mm.
    #[serde(default = "usual_height_mm")]
    pub height_mm: f64,
    /// Place of a contact patch, mm in each direction.
    #[serde(default)]
    pub patch_mm: f64,
}

/// Spread of a height reading when none is given, mm.
fn usual_height_mm() -> f64 {
    0.3
}

impl Pads {
    /// Checks that such pads can be. `at` is the path of the value, for the message.
    ///
    /// # Errors
    /// The first field that is not from 0 to its greatest value.
    pub fn validate(&self, at: &str) -> Result<(), StaticsError> {
        for (field, value) in [
            ("resolution_kg", self.resolution_kg),
            ("look_kg", self.look_kg),
            ("settle_kg", self.settle_kg),
            ("level_mm", self.level_mm),
            ("height_mm", self.height_mm),
            ("patch_mm", self.patch_mm),
        ] {
            within(&format!("{at}.{field}"), value, 0.0, 100.0, "from 0 to 100")?;
        }
        Ok(())
    }

    /// Variance of the rounding of the display, kg²: a step's width uniformly spread (JCGM 100:2008, F.2.2.1).
    fn rounding_kg2(&self) -> f64 {
        self.resolution_kg.powi(2) / 12.0
    }
}

/// Covariance of the four loads of a reading, kg², in the order FL, FR, RL, RR.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// What changes from one reading to the next: looks, rounding, settles, contact patches.
    pub varying_kg2: [[f64; 4]; 4],
    /// What all readings of a job share: the level of the pads.
    pub constant_kg2: [[f64; 4]; 4],
}

impl Spread {
    /// The spread of a reading averaged over `settles` settles with `looks` looks at each.
    ///
    /// Rounding is not averaged: a car at rest shows the same step again.
    ///
    /// # Errors
    /// A car, loads or pads that cannot be; no look or no settle.
    pub fn of(
        car: &Car,
        pads: &Pads,
        loads_kg: &Corners<f64>,
        looks: u32,
        settles: u32,
    ) -> Result<Spread, StaticsError> {
        pads.validate("pads")?;
        check_loads("loads_kg", loads_kg)?;
        within("looks", f64::from(looks), 1.0, 1e6, "at least 1")?;
        within("settles", f64::from(settles), 1.0, 1e6, "at least 1")?;
        let sensitivity = Sensitivity::of(car)?;
        let n = diagonal(car).to_array();
        let (looks, settles) = (f64::from(looks), f64::from(settles));
        let mut varying_kg2 = outer(&n, pads.settle_kg.powi(2) / settles);
        for (i, row) in varying_kg2.iter_mut().enumerate() {
            row[i] += pads.rounding_kg2() + pads.look_kg.powi(2) / (looks * settles);
        }
        let mut constant_kg2 = [[0.0; 4]; 4];
        for corner in 0..4 {
            let column = |m: &[[f64; 4]; 4], scale: f64| m.map(|row| row[corner] * scale);
            let level = column(&sensitivity.load_per_mm_pad, pads.level_mm);
            add(&mut constant_kg2, &outer(&level, 1.0));
            let moment = loads_kg.to_array()[corner] * pads.patch_mm;
            for shift in [&sensitivity.patch.forward, &sensitivity.patch.left] {
                add(&mut varying_kg2, &outer(&column(shift, moment), 1.0 / settles));
            }
        }
        Ok(Spread { varying_kg2, constant_kg2 })
    }

    /// Covariance of the loads themselves, kg².
    pub fn total_kg2(&self) -> [[f64; 4]; 4] {
        let mut sum = self.varying_kg2;
        add(&mut sum, &self.constant_kg2);
        sum
    }

    /// Covariance of the difference of two such readings of one job, kg²: what is constant drops out.
    pub fn difference_kg2(&self) -> [[f64; 4]; 4] {
        self.varying_kg2.map(|row| row.map(|v| 2.0 * v))
    }

    /// Expanded uncertainty (k = 2) of each load, kg.
    pub fn expanded_loads_kg(&self) -> Corners<f64> {
        let total = self.total_kg2();
        Corners::from_array(std::array::from_fn(|i| COVERAGE * total[i][i].sqrt()))
    }
}

/// Expanded uncertainties (k = 2) of the figures of four loads with this covariance.
pub fn expanded_figures(loads_kg: &Corners<f64>, covariance_kg2: &[[f64; 4]; 4]) -> Figures {
    Figures::from_array(Figures::gradients(loads_kg).map(|gradient| {
        let along = times(covariance_kg2, &gradient);
        let variance: f64 = gradient.iter().zip(along).map(|(g, v)| g * v).sum();
        // Rounding may leave a variance of zero just below it.
        COVERAGE * variance.max(0.0).sqrt()
    }))
}

/// What can be said of a figure against its window.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Inside with its whole uncertainty.
    Inside,
    /// Outside with its whole uncertainty.
    Outside,
    /// So close to an edge of the window that this reading cannot tell.
    CannotTell,
}

/// Judges a figure that is off its target by `error`, known to ± `expanded` (k = 2), against a window of half width
/// `window`; all in the unit of the figure. Guard band of one expanded uncertainty on either side (JCGM 106:2012, 8;
/// ILAC-G8:09/2019, 4.2). A value that is not a number cannot be told.
pub fn judge(error: f64, expanded: f64, window: f64) -> Verdict {
    if error.abs() + expanded <= window {
        Verdict::Inside
    } else if error.abs() - expanded > window {
        Verdict::Outside
    } else {
        Verdict::CannotTell
    }
}

fn outer(v: &[f64; 4], scale: f64) -> [[f64; 4]; 4] {
    v.map(|a| v.map(|b| a * b * scale))
}

fn add(sum: &mut [[f64; 4]; 4], other: &[[f64; 4]; 4]) {
    for (row, more) in sum.iter_mut().zip(other) {
        for (s, m) in row.iter_mut().zip(more) {
            *s += m;
        }
    }
}
