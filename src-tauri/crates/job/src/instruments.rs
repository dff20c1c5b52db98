//! What is known of the instruments of a job: what was entered of them, what their readings showed, what is usual.

use crate::{
    judge::JudgeError,
    known::Known,
    reading::{Reading, ReadingSet},
};
use bayhand_chassis::reading::{HeightGauge, Instruments, Level};
use bayhand_chassis::{PadPlane, diagonal};
use bayhand_vehicle::{Car, Corners};

/// Looks at a reading, and settles, that the procedure asks for.
pub const PLANNED: (u32, u32) = (3, 3);
/// Assumed repeatability of a settle before anything was read, kg at FL, one sigma (1 to 3 kg a corner over settles is
/// common practice with sticky struts; half a kilogram for a car in good order).
const SETTLE_PRIOR_KG: f64 = 0.5;
/// How many observed settles the assumption weighs as much as.
const SETTLE_PRIOR_WEIGHT: f64 = 2.0;
/// Repeatability of a look at a resting car, kg, one sigma (0.1 to 0.2 kg, common practice).
const LOOK_KG: f64 = 0.1;
/// Heights as they are read with a gauge or a rule (common practice, no source): to half a millimetre, again to a few
/// tenths, and the car settles to a few tenths.
const HEIGHTS: HeightGauge = HeightGauge { resolution_mm: 0.5, look_mm: 0.2, settle_mm: 0.2, zero_mm: 0.2 };

impl Known<'_> {
    /// What is known of the instruments, with the settles that were seen so far.
    ///
    /// What is entered of them is an interval of about 95 % (k = 2), as certificates state it. Where a tyre comes to
    /// stand on its pad is not apart: settles differ by it, and what they differ by is seen.
    ///
    /// # Errors
    /// What is not known yet.
    pub fn instruments(&self, car: &Car) -> Result<Instruments, JudgeError> {
        let at = |step, key, what| self.value(step, key).ok_or(JudgeError::NotKnown(what));
        let pads = |key, what| at("intake.pads", key, what);
        Ok(Instruments {
            pad_resolution_kg: pads("pads-resolution", "the pads' resolution")?,
            pad_look_kg: LOOK_KG,
            pad_zero_kg: pads("pads-zero", "the zero that the pads keep")? / 2.0,
            pad_calibration_pct: pads("pads-calibration", "the pads' calibration")? / 2.0,
            settle_kg: self.settle_kg(car),
            settle_dof: None,
            patch_mm: 0.0,
            // What is entered holds for a pad's height over both set-ups: it is what is left.
            level: Level {
                resolution_mm: 0.0,
                look_mm: at("intake.instruments", "laser-accuracy", "the laser's accuracy")? / 2.0,
                plane_mm_per_m: 0.0,
                set_ups: 1,
                turned: false,
            },
            heights: HEIGHTS,
        })
    }

    /// Repeatability over settles, kg at FL along the diagonal pattern, one sigma: the settles seen in this job, pooled
    /// over the sets, with an assumption that weighs as much as two of them.
    fn settle_kg(&self, car: &Car) -> f64 {
        let n = diagonal(car).to_array();
        let length: f64 = n.iter().map(|v| v * v).sum();
        let mut squares = SETTLE_PRIOR_WEIGHT * SETTLE_PRIOR_KG.powi(2);
        let mut weight = SETTLE_PRIOR_WEIGHT;
        let sets = self.rounds_read().into_iter().chain(self.reading_set("final", true));
        for set in sets.filter(|set| set.readings.len() > 1) {
            let mean = set.loads_kg().to_array();
            for reading in &set.readings {
                let loads = reading.loads_kg().to_array();
                let along: f64 = (0..4).map(|i| (loads[i] - mean[i]) * n[i]).sum::<f64>() / length;
                squares += along * along;
            }
            weight += set.readings.len() as f64 - 1.0;
        }
        (squares / weight).sqrt()
    }

    /// Loads (kg) that the known heights of the pads add to those on level pads, at the time of a reading: the mean of
    /// the two set-ups of the laser. Nothing before the pads were levelled.
    ///
    /// # Errors
    /// A car that cannot be.
    pub fn added_by_pads(&self, car: &Car, at: &Reading) -> Result<Corners<f64>, JudgeError> {
        let before = at.number.unwrap_or(u64::MAX);
        let levelled = self.recordings().iter().rev().find(|r| r.step == "pads.level" && r.number < before);
        let seen = |set_up: &str| levelled.and_then(|r| r.corners(set_up));
        let (Some(one), Some(two)) = (seen("set-up-1"), seen("set-up-2")) else { return Ok(Corners::same(0.0)) };
        let heights_mm = Corners::from_fn(|p| (one.at(p) + two.at(p)) / 2.0);
        Ok(PadPlane::of(car, &heights_mm)?.loads_kg)
    }

    /// The mean loads of a set as they would be on level pads, kg.
    ///
    /// # Errors
    /// A car that cannot be.
    pub fn on_level_pads(&self, car: &Car, set: &ReadingSet) -> Result<Corners<f64>, JudgeError> {
        let added = match set.readings.first() {
            Some(reading) => self.added_by_pads(car, reading)?,
            None => Corners::same(0.0),
        };
        let read = set.loads_kg();
        Ok(Corners::from_fn(|p| read.at(p) - added.at(p)))
    }
}
