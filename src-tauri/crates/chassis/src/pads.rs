//! Four pad heights: the plane they make, how far they are from one, and the loads that does.

use crate::error::{each_within, within};
use crate::geometry::wheel;
use crate::{Sensitivity, StaticsError, diagonal, diagonal_gain, twist};
use bayhand_vehicle::{Car, Corners, Place, STANDARD_GRAVITY};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Four pad heights taken apart: a plane through them (least squares), and the twist that no plane has.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PadPlane {
    /// Height of the plane in the middle between the axles, mm.
    pub mean_mm: f64,
    /// Front axle above rear axle, mm.
    pub pitch_mm: f64,
    /// Left above right over the mean of both tracks, mm.
    pub side_tilt_mm: f64,
    /// The twist as mm at FL: lowering the FL pad alone by this puts all four into one plane.
    pub twist_mm: f64,
    /// Loads that these heights add to those on level pads, kg. Nearly all of it comes from the twist.
    pub loads_kg: Corners<f64>,
}

impl PadPlane {
    /// Takes four pad heights apart.
    ///
    /// # Errors
    /// A car that cannot be, or a pad height outside -500 to 500 mm.
    pub fn of(car: &Car, pads_mm: &Corners<f64>) -> Result<PadPlane, StaticsError> {
        let sensitivity = Sensitivity::of(car)?;
        each_within("pads_mm", pads_mm, -500.0, 500.0, "from -500 to 500 mm")?;
        let n = diagonal(car);
        let twist_mm = twist(car, pads_mm);
        // The pattern n is at right angles to every plane over the four wheels, so taking it out leaves the plane.
        let length: f64 = n.to_array().iter().map(|v| v * v).sum();
        let plane = Corners::from_fn(|p| pads_mm.at(p) - twist_mm / length * n.at(p));
        let per_mm_left = (plane.fl - plane.fr) / car.track_front_mm;
        let (front, rear) = ((plane.fl + plane.fr) / 2.0, (plane.rl + plane.rr) / 2.0);
        Ok(PadPlane {
            mean_mm: (front + rear) / 2.0,
            pitch_mm: front - rear,
            side_tilt_mm: per_mm_left * (car.track_front_mm + car.track_rear_mm) / 2.0,
            twist_mm,
            loads_kg: Corners::from_array(times(&sensitivity.load_per_mm_pad, &pads_mm.to_array())),
        })
    }
}

/// The twist (mm at FL) that moves the cross weight by the whole of its window: known twist is corrected for, so this
/// is what its uncertainty must stay well below.
///
/// # Errors
/// A car that cannot be, or a window that is not above 0 and at most 50 %.
pub fn twist_limit_mm(car: &Car, cross_window_pct: f64) -> Result<f64, StaticsError> {
    car.validate()?;
    within("cross_window_pct", cross_window_pct, f64::MIN_POSITIVE, 50.0, "above 0 and at most 50 %")?;
    let n = diagonal(car);
    // One mm at FL alone has a twist of one; it takes the load off FR and RL, 1 + tf/tr of them together.
    let moved_kg_per_mm = diagonal_gain(car).fl * (1.0 + n.rr) / STANDARD_GRAVITY;
    Ok(cross_window_pct / 100.0 * total_kg(car) / moved_kg_per_mm)
}

/// The side tilt (mm, left above right) that moves the left share by the whole of its window.
///
/// # Errors
/// A car that cannot be, or a window that is not above 0 and at most 50 %.
pub fn side_tilt_limit_mm(car: &Car, left_window_pct: f64) -> Result<f64, StaticsError> {
    within("left_window_pct", left_window_pct, f64::MIN_POSITIVE, 50.0, "above 0 and at most 50 %")?;
    let mean_track = (car.track_front_mm + car.track_rear_mm) / 2.0;
    let tilted = Corners::from_fn(|p: Place| wheel(car, p).y / mean_track);
    let loads = PadPlane::of(car, &tilted)?.loads_kg;
    let moved_kg = (loads.fl + loads.rl).abs();
    // A mass centre on the roll axis feels no tilt; then no tilt is too much.
    Ok(if moved_kg > 0.0 { left_window_pct / 100.0 * total_kg(car) / moved_kg } else { f64::INFINITY })
}

/// What the car weighs by its data, kg.
fn total_kg(car: &Car) -> f64 {
    car.sprung.mass_kg + car.corners.iter().map(|(_, c)| c.unsprung_kg).sum::<f64>()
}

/// A 4 × 4 matrix times four values.
pub(crate) fn times(matrix: &[[f64; 4]; 4], values: &[f64; 4]) -> [f64; 4] {
    matrix.map(|row| row.iter().zip(values).map(|(m, v)| m * v).sum())
}
