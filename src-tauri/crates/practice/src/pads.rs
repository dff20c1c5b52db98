//! The four pads: how level they lie, what they show, and the laser that reads their level.

use crate::noise::{Draws, to_step};
use bayhand_vehicle::{Corners, Place};

/// Resolution of a pad, kg.
pub(crate) const RESOLUTION_KG: f64 = 0.1;
/// Spread of looks at a resting load, one sigma, kg.
pub(crate) const LOOK_SIGMA_KG: f64 = 0.08;
/// Zero that is left after zeroing, one sigma, kg.
pub(crate) const ZERO_SIGMA_KG: f64 = 0.06;
/// Error of a pad's calibration, one sigma, percent of the load: 0.08 kg at 270 kg, well inside what a class III scale
/// of 0.5 kg may be out there (OIML R 76-1, table 6).
pub(crate) const CALIBRATION_SIGMA_PCT: f64 = 0.03;
/// Resolution of the staff in the laser's plane, mm.
pub(crate) const LASER_RESOLUTION_MM: f64 = 0.1;
/// Tilt of the laser's plane, one sigma in each direction, mm per m (common practice: site lasers hold 0.2 mm per m,
/// taken as an interval of about 95 %).
pub(crate) const LASER_TILT_SIGMA_MM_PER_M: f64 = 0.1;
/// Spread of a staff reading, one sigma, mm.
pub(crate) const LASER_SIGMA_MM: f64 = 0.05;

/// The true state of the pads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Pads {
    /// Height of each pad without shims, mm.
    pub(crate) level_mm: Corners<f64>,
    /// What each shows with nothing on it, kg.
    pub(crate) zero_kg: Corners<f64>,
    /// What each shows too much for one kilogram, kg.
    pub(crate) gain_error: Corners<f64>,
    /// Tilt of the laser's plane in the set-ups of even number, mm per m: rising forward and rising to the left.
    pub(crate) laser_tilt_mm_per_m: [f64; 2],
}

impl Pads {
    /// Invents pads that lie a few millimetres out of one plane at most, with a twist that matters.
    pub(crate) fn invent(draws: &mut Draws) -> Self {
        let (pitch, side) = (draws.even(-0.8, 0.8), draws.even(-0.8, 0.8));
        let twist = draws.either_side(0.05, 0.3);
        Pads {
            level_mm: Corners::from_fn(|p| {
                let (fore, left) = signs(p);
                fore * pitch + left * side + fore * left * twist
            }),
            zero_kg: Corners::from_fn(|_| draws.normal(ZERO_SIGMA_KG)),
            gain_error: Corners::from_fn(|_| draws.normal(CALIBRATION_SIGMA_PCT / 100.0)),
            laser_tilt_mm_per_m: [(); 2].map(|()| draws.normal(LASER_TILT_SIGMA_MM_PER_M)),
        }
    }

    /// What the pads show under these loads, kg.
    pub(crate) fn shown(&self, loads_kg: &Corners<f64>, draws: &mut Draws) -> Corners<f64> {
        Corners::from_fn(|p| {
            let load_kg = loads_kg.at(p) * (1.0 + self.gain_error.at(p));
            to_step(load_kg + self.zero_kg.at(p) + draws.normal(LOOK_SIGMA_KG), RESOLUTION_KG)
        })
    }

    /// What the laser shows of the pads' heights, mm from their mean. In set-ups of odd number the laser stands turned
    /// by half a turn, and its tilt with it.
    pub(crate) fn laser(
        &self,
        shims_mm: &Corners<f64>,
        at_m: &Corners<[f64; 2]>,
        turned: bool,
        draws: &mut Draws,
    ) -> Corners<f64> {
        let [forward, left] = self.laser_tilt_mm_per_m.map(|t| if turned { -t } else { t });
        let seen = Corners::from_fn(|p| {
            let [x_m, y_m] = *at_m.at(p);
            // Where the plane has risen, the pad seems lower.
            let plane_mm = forward * x_m + left * y_m;
            self.level_mm.at(p) + shims_mm.at(p) - plane_mm + draws.normal(LASER_SIGMA_MM)
        });
        let mean_mm = seen.to_array().iter().sum::<f64>() / 4.0;
        seen.map(|mm| to_step(mm - mean_mm, LASER_RESOLUTION_MM))
    }
}

/// +1 at the front and -1 at the rear; +1 on the left and -1 on the right.
pub(crate) fn signs(place: Place) -> (f64, f64) {
    let fore = if place.index() < 2 { 1.0 } else { -1.0 };
    (fore, if place.is_left() { 1.0 } else { -1.0 })
}
