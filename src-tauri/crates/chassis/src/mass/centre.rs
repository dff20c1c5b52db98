//! The mass centre from wheel loads, and how well it is known.

use crate::error::{check_loads, within};
use crate::geometry::track_mm;
use crate::pads::times;
use crate::{COVERAGE, Figures, StaticsError};
use bayhand_vehicle::{Axle, Car, Corners, Place};

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

/// Standard uncertainties of the lengths that a mass centre rests on, mm.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct LengthSpread {
    /// Of the wheelbase.
    pub wheelbase_mm: f64,
    /// Of each track, independent.
    pub track_mm: f64,
}

/// What is known of a mass centre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CentreSpread {
    /// Covariance of `behind_front_axle_mm` and `left_mm`, in this order, mm².
    pub covariance_mm2: [[f64; 2]; 2],
    /// Expanded uncertainties (k = 2).
    pub expanded: MassCentre,
}

/// The uncertainty of [`mass_centre`] by the law of propagation (JCGM 100:2008, 5.2), from the covariance of the four
/// loads (kg², FL, FR, RL, RR) and the lengths.
///
/// With x and y of the centre and W the total, `dx/dF_i = (x_i - x) / W` and `dy/dF_i = (y_i - y) / W`: a kilogram too
/// much on a wheel draws the centre towards that wheel.
///
/// # Errors
/// A car that cannot be, loads outside 0 to 5000 kg, a spread that is negative or not a number.
pub fn mass_centre_spread(
    car: &Car,
    loads_kg: &Corners<f64>,
    covariance_kg2: &[[f64; 4]; 4],
    lengths: &LengthSpread,
) -> Result<CentreSpread, StaticsError> {
    let centre = mass_centre(car, loads_kg)?;
    within("lengths.wheelbase_mm", lengths.wheelbase_mm, 0.0, 1_000.0, "from 0 to 1000 mm")?;
    within("lengths.track_mm", lengths.track_mm, 0.0, 1_000.0, "from 0 to 1000 mm")?;
    let total = Figures::of(loads_kg).total_kg;
    let by_load: [[f64; 4]; 2] = [
        Corners::from_fn(|p| (behind_front_axle_mm(car, p) - centre.behind_front_axle_mm) / total).to_array(),
        Corners::from_fn(|p| (left_mm(car, p) - centre.left_mm) / total).to_array(),
    ];
    let rear_share = (loads_kg.rl + loads_kg.rr) / total;
    let by_track = [(loads_kg.fl - loads_kg.fr) / (2.0 * total), (loads_kg.rl - loads_kg.rr) / (2.0 * total)];
    let mut covariance_mm2 = [[0.0; 2]; 2];
    for (i, row) in covariance_mm2.iter_mut().enumerate() {
        for (j, cell) in row.iter_mut().enumerate() {
            let along = times(covariance_kg2, &by_load[j]);
            *cell = by_load[i].iter().zip(along).map(|(g, v)| g * v).sum();
        }
    }
    covariance_mm2[0][0] += (rear_share * lengths.wheelbase_mm).powi(2);
    covariance_mm2[1][1] += by_track.map(|g| (g * lengths.track_mm).powi(2)).iter().sum::<f64>();
    // Rounding may leave a variance of zero just below it.
    let expanded = |variance: f64| COVERAGE * variance.max(0.0).sqrt();
    Ok(CentreSpread {
        covariance_mm2,
        expanded: MassCentre {
            behind_front_axle_mm: expanded(covariance_mm2[0][0]),
            left_mm: expanded(covariance_mm2[1][1]),
        },
    })
}

/// Where a wheel stands behind the front axle, mm.
fn behind_front_axle_mm(car: &Car, place: Place) -> f64 {
    match place.axle() {
        Axle::Front => 0.0,
        Axle::Rear => car.wheelbase_mm,
    }
}

/// Where a wheel stands left of the middle plane, mm.
fn left_mm(car: &Car, place: Place) -> f64 {
    let half = track_mm(car, place.axle()) / 2.0;
    if place.is_left() { half } else { -half }
}
