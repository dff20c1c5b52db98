//! The mass centre from wheel loads, its height from lifting an axle, and what moving mass does.

use crate::error::{check_loads, within};
use crate::{Figures, StaticsError};
use bayhand_vehicle::{Car, Corners};

/// Place of the mass centre of the whole car, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MassCentre {
    /// Behind the front axle.
    pub behind_front_axle_mm: f64,
    /// Left of the middle plane.
    pub left_mm: f64,
}

/// The mass centre from four loads on level pads, by moments about the front axle and the middle plane.
///
/// # Errors
/// A car that cannot be, or loads outside 0 to 5000 kg.
pub fn mass_centre(car: &Car, loads_kg: &Corners<f64>) -> Result<MassCentre, StaticsError> {
    car.validate()?;
    check_loads("loads_kg", loads_kg)?;
    let total = Figures::of(loads_kg).total_kg;
    Ok(MassCentre {
        behind_front_axle_mm: car.wheelbase_mm * (loads_kg.rl + loads_kg.rr) / total,
        left_mm: moment_kg_mm(car, loads_kg.fl - loads_kg.fr, loads_kg.rl - loads_kg.rr) / total,
    })
}

/// Mass × distance (kg mm) to be moved to the left so that the side differences become the wanted ones; negative: to
/// the right. Collars cannot do this: they leave the moment about the middle plane alone.
pub fn moment_to_left_kg_mm(car: &Car, now: &Figures, front_wanted_kg: f64, rear_wanted_kg: f64) -> f64 {
    moment_kg_mm(car, front_wanted_kg - now.front_diff_kg, rear_wanted_kg - now.rear_diff_kg)
}

/// Moment about the middle plane of a side difference on each axle.
fn moment_kg_mm(car: &Car, front_diff_kg: f64, rear_diff_kg: f64) -> f64 {
    (car.track_front_mm * front_diff_kg + car.track_rear_mm * rear_diff_kg) / 2.0
}

/// Height of the mass centre (mm) from raising the rear axle with the suspension locked: the load that goes to the
/// front axle against the tangent of the lift angle. Method of ISO 10392:2011, 6.2, for one angle.
///
/// # Errors
/// An angle outside 1 to 45 degrees, lengths or loads that cannot be.
pub fn mass_centre_height_mm(
    wheelbase_mm: f64,
    wheel_radius_mm: f64,
    total_kg: f64,
    front_level_kg: f64,
    front_raised_kg: f64,
    lift_angle_deg: f64,
) -> Result<f64, StaticsError> {
    within("wheelbase_mm", wheelbase_mm, 500.0, 10_000.0, "from 500 to 10000 mm")?;
    within("wheel_radius_mm", wheel_radius_mm, 50.0, 1_500.0, "from 50 to 1500 mm")?;
    within("total_kg", total_kg, 50.0, 20_000.0, "from 50 to 20000 kg")?;
    within("front_level_kg", front_level_kg, 0.0, total_kg, "from 0 to the total")?;
    within("front_raised_kg", front_raised_kg, 0.0, total_kg, "from 0 to the total")?;
    within("lift_angle_deg", lift_angle_deg, 1.0, 45.0, "from 1 to 45 degrees")?;
    let moved = (front_raised_kg - front_level_kg) / total_kg;
    Ok(wheel_radius_mm + moved * wheelbase_mm / lift_angle_deg.to_radians().tan())
}
