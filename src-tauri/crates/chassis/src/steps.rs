//! What whole steps of the collars do along the trade line, and what they cannot move.

use crate::error::within;
use crate::geometry::wheel;
use crate::pads::times;
use crate::{Rates, Sensitivity, StaticsError, diagonal, lift_without_height};
use bayhand_vehicle::{Adjuster, Car, Corners, Place};

/// What one step of one collar does; linear about the reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OneStep {
    /// Load that it moves along the diagonal pattern, kg at FL.
    pub along_kg: f64,
    /// Change of the four loads, kg: the pattern, and a little beside it where the body leans or twists.
    pub loads_kg: Corners<f64>,
    /// Change of the four measured heights, mm.
    pub heights_mm: Corners<f64>,
}

/// What one step up of each collar does: the Jacobian of the reading per adjuster step.
///
/// # Errors
/// A car that cannot be, or a step that is not above 0 and at most 50 mm.
pub fn one_step(car: &Car, step_mm: &Corners<f64>) -> Result<Corners<OneStep>, StaticsError> {
    for (place, &mm) in step_mm.iter() {
        let at = format!("adjusters.{}.step_mm", place.code());
        within(&at, mm, f64::MIN_POSITIVE, 50.0, "above 0 and at most 50 mm")?;
    }
    let sensitivity = Sensitivity::of(car)?;
    let ratio = Rates::of(car).adjuster_ratio;
    Ok(Corners::from_fn(|p| {
        let lift_mm = step_mm.at(p) * ratio.at(p);
        let column = |m: &[[f64; 4]; 4]| Corners::from_array(m.map(|row| row[p.index()] * lift_mm));
        let loads_kg = column(&sensitivity.load_per_mm_wheel);
        OneStep { along_kg: along(car, &loads_kg), loads_kg, heights_mm: column(&sensitivity.height_per_mm_wheel) }
    }))
}

/// A place on the trade line that the four-corner pattern reaches in whole steps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reached {
    /// Steps of each collar; positive raises the car there.
    pub steps: Corners<i32>,
    /// Load moved along the diagonal pattern, kg at FL.
    pub along_kg: f64,
    /// Greatest change of a height, mm: what rounding to whole steps leaves, and torsion.
    pub height_mm: f64,
}

/// The places on the trade line that the four-corner pattern reaches in whole steps within the adjusters' travel, in
/// order along the line, the one where nothing is turned among them. The collar that needs most steps for a kilogram
/// turns step by step, the others as near as whole steps come to it.
///
/// # Errors
/// A car that cannot be, or an adjuster whose step or travel cannot be (up to 10000 steps each way).
pub fn reached_in_whole_steps(car: &Car, adjusters: &Corners<Adjuster>) -> Result<Vec<Reached>, StaticsError> {
    let one = one_step(car, &adjusters.map(|a| a.step_mm))?;
    for (place, a) in adjusters.iter() {
        for (field, steps) in [("up_steps", a.up_steps), ("down_steps", a.down_steps)] {
            let at = format!("adjusters.{}.{field}", place.code());
            within(&at, f64::from(steps), 0.0, 10_000.0, "from 0 to 10000")?;
        }
    }
    let ratio = Rates::of(car).adjuster_ratio;
    let lift_mm = lift_without_height(car, 1.0);
    let per_kg = Corners::from_fn(|p| lift_mm.at(p) / (ratio.at(p) * adjusters.at(p).step_mm));
    let finest = per_kg.to_array().into_iter().fold(0.0_f64, |most, v| most.max(v.abs()));
    let furthest = adjusters.to_array().into_iter().fold(0, |most, a| most.max(a.up_steps).max(a.down_steps));
    let reached = (-furthest..=furthest).filter_map(|k| {
        // Within the adjusters' travel by the filter, so far inside the whole numbers.
        #[expect(clippy::cast_possible_truncation, reason = "at most 10000 in size")]
        let steps = per_kg.map(|s| (f64::from(k) / finest * s).round() as i32);
        let fits = steps.iter().all(|(p, &s)| -adjusters.at(p).down_steps <= s && s <= adjusters.at(p).up_steps);
        let sum =
            |of: &dyn Fn(&OneStep) -> f64| -> f64 { steps.iter().map(|(p, &s)| f64::from(s) * of(one.at(p))).sum() };
        let height_mm = Place::ALL.into_iter().map(|at| sum(&|o| *o.heights_mm.at(at)).abs()).fold(0.0, f64::max);
        fits.then(|| Reached { steps, along_kg: sum(&|o| o.along_kg), height_mm })
    });
    Ok(reached.collect())
}

/// How much the shares that collars leave alone still move when the body leans: its mass centre, high over the roll
/// axis, moves with it. The mass and its place fix them; see [`crate::mass_centre`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShareShift {
    /// Change of left minus right, kg, per mm that the left side of the body stands higher than the right one, over
    /// the mean of the tracks. With equal tracks `-2 m h / t²`: away from the raised side.
    pub left_minus_right_kg: f64,
    /// Change of the front load, kg, per mm that the body stands higher over the front axle than over the rear one:
    /// `-m h / wheelbase²`.
    pub front_kg: f64,
}

/// How much roll and pitch of the body move the left and the front share.
///
/// # Errors
/// A car that cannot be.
pub fn share_shift(car: &Car) -> Result<ShareShift, StaticsError> {
    let s = Sensitivity::of(&Car { height_points: None, ..*car })?;
    let mean_track_mm = (car.track_front_mm + car.track_rear_mm) / 2.0;
    // All four pads in one tilted plane: the body leans with them, and a little more by its weight.
    let lean = |pads: Corners<f64>| {
        let pads = pads.to_array();
        let loads = times(&s.load_per_mm_pad, &pads);
        let rises: [f64; 4] = {
            let over_pads = times(&s.height_per_mm_pad, &pads);
            std::array::from_fn(|i| over_pads[i] + pads[i])
        };
        (loads, rises)
    };
    let (loads, rises) = lean(Corners::from_fn(|p| wheel(car, p).y / mean_track_mm));
    let side_mm =
        ((rises[0] - rises[1]) / car.track_front_mm + (rises[2] - rises[3]) / car.track_rear_mm) * mean_track_mm / 2.0;
    let left_minus_right_kg = (loads[0] - loads[1] + loads[2] - loads[3]) / side_mm;
    let (loads, rises) = lean(Corners { fl: 0.5, fr: 0.5, rl: -0.5, rr: -0.5 });
    let rake_mm = (rises[0] + rises[1] - rises[2] - rises[3]) / 2.0;
    Ok(ShareShift { left_minus_right_kg, front_kg: (loads[0] + loads[1]) / rake_mm })
}

/// The part of four load changes along the diagonal pattern, kg at FL.
fn along(car: &Car, loads_kg: &Corners<f64>) -> f64 {
    let n = diagonal(car);
    let length: f64 = n.iter().map(|(_, v)| v * v).sum();
    n.iter().map(|(p, v)| v * loads_kg.at(p)).sum::<f64>() / length
}
