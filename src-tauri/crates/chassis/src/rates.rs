//! Rates at the wheel and at the ground, and what stands in for data that nobody entered.

use crate::geometry::track_mm;
use bayhand_vehicle::{Axle, Beam, Car, Corners, Place, SprungLike};
use std::f64::consts::TAU;

/// Ride frequencies, Hz, of which one gives the wheel rate when no spring is entered.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RideHz {
    /// What is taken.
    pub usual: f64,
    /// Two sigmas below and above it.
    pub span: (f64, f64),
}

/// The ride frequencies of cars that are sprung like this one; with nothing said, those of any road or track car.
///
/// Common practice: a car as delivered rides at 1 to 1.5 Hz, on stiffer springs at up to a good 2, a track car at 2 to
/// 3 and with downforce at 3 to 5. M. Giaraffa, Springs & Dampers, Part One, gives 0.5 to 1.5 Hz for passenger cars,
/// 1.5 to 2.0 for saloon race cars and 3.0 to over 5.0 for cars of high downforce.
pub fn ride_hz(like: Option<SprungLike>) -> RideHz {
    let about = |low: f64, high: f64| RideHz { usual: (low * high).sqrt(), span: (low, high) };
    match like {
        Some(SprungLike::Road) => about(1.0, 1.5),
        Some(SprungLike::FastRoad) => about(1.4, 2.2),
        Some(SprungLike::Track) => about(2.0, 3.0),
        Some(SprungLike::Downforce) => about(3.0, 5.0),
        None => RideHz { usual: 2.4, span: (1.7, 3.2) },
    }
}

/// Motion ratio when none is entered and no spring either: the middle of 0.6 to 1 (common practice, no source).
pub const DEFAULT_MOTION_RATIO: f64 = 0.8;

/// Least and greatest motion ratio that a missing one is taken to be (common practice, no source).
const MOTION_RATIO_SPAN: (f64, f64) = (0.6, 1.0);

/// Wheel rate of a spring in N/mm: spring rate × motion ratio², with motion ratio = spring travel / wheel travel.
/// Source: Barton & Fieldhouse, Automotive Chassis Engineering (Springer), p. 179, for small displacements.
pub fn wheel_rate(spring_n_per_mm: f64, motion_ratio: f64) -> f64 {
    spring_n_per_mm * motion_ratio * motion_ratio
}

/// Two rates one above the other, N/mm: what wheel and tyre give together.
pub fn in_series(a_n_per_mm: f64, b_n_per_mm: f64) -> f64 {
    a_n_per_mm * b_n_per_mm / (a_n_per_mm + b_n_per_mm)
}

/// What statics computes with at each corner. On a beam axle motion ratio, wheel and ride rate are those in heave.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rates {
    /// Motion ratio, spring travel / wheel travel.
    pub motion_ratio: Corners<f64>,
    /// Spring rate at the wheel, N/mm.
    pub wheel_n_per_mm: Corners<f64>,
    /// Wheel rate and tyre in series, N/mm.
    pub ride_n_per_mm: Corners<f64>,
    /// Lift of the free height at the wheel for one mm at the adjuster, mm.
    pub adjuster_ratio: Corners<f64>,
}

impl Rates {
    /// The rates of a car that has passed [`Car::validate`].
    ///
    /// Missing data: without a spring the wheel rate is that of the usual [`ride_hz`] on the corner's sprung load; with
    /// a spring but no motion ratio, the ratio is the one that would give that wheel rate, held to 0.6 to 1; with
    /// neither it is [`DEFAULT_MOTION_RATIO`], and 1 on a beam axle (model.md). A missing adjuster ratio is 1 / motion ratio: a spring seat.
    pub fn of(car: &Car) -> Rates {
        let corner = |place: Place| {
            let c = car.corners.at(place);
            let usual = usual_wheel_rate(car, place);
            let ratio = match (c.motion_ratio, c.spring_n_per_mm) {
                (Some(ratio), _) => ratio,
                (None, _) if beam(car, place.axle()).is_some() => 1.0,
                (None, Some(spring)) => (usual / spring).sqrt().clamp(MOTION_RATIO_SPAN.0, MOTION_RATIO_SPAN.1),
                (None, None) => DEFAULT_MOTION_RATIO,
            };
            let wheel = c.spring_n_per_mm.map_or(usual, |spring| wheel_rate(spring, ratio));
            (ratio, wheel)
        };
        let motion_ratio = Corners::from_fn(|p| corner(p).0);
        let wheel_n_per_mm = Corners::from_fn(|p| corner(p).1);
        Rates {
            motion_ratio,
            wheel_n_per_mm,
            ride_n_per_mm: Corners::from_fn(|p| in_series(*wheel_n_per_mm.at(p), car.corners.at(p).tyre_n_per_mm)),
            adjuster_ratio: Corners::from_fn(|p| car.corners.at(p).adjuster_ratio.unwrap_or(1.0 / motion_ratio.at(p))),
        }
    }
}

impl Rates {
    /// Motion ratio of an axle in roll, its wheels moving opposite ways: on a beam that in heave times spring base
    /// over track, else that of its corners (their mean).
    pub fn roll_motion_ratio(&self, car: &Car, axle: Axle) -> f64 {
        let r = &self.motion_ratio;
        let heave = match axle {
            Axle::Front => (r.fl + r.fr) / 2.0,
            Axle::Rear => (r.rl + r.rr) / 2.0,
        };
        beam(car, axle).map_or(heave, |b| heave * b.spring_base_mm / track_mm(car, axle))
    }
}

/// The beam of an axle, if it is one.
pub(crate) fn beam(car: &Car, axle: Axle) -> Option<Beam> {
    match axle {
        Axle::Front => car.beams.front,
        Axle::Rear => car.beams.rear,
    }
}

/// Wheel rate of the usual [`ride_hz`] on the corner's share of the sprung mass, N/mm.
fn usual_wheel_rate(car: &Car, place: Place) -> f64 {
    let to_rear = car.sprung.cg_behind_front_axle_mm / car.wheelbase_mm;
    let (share, track) = match place.axle() {
        Axle::Front => (1.0 - to_rear, car.track_front_mm),
        Axle::Rear => (to_rear, car.track_rear_mm),
    };
    let left = 0.5 + car.sprung.cg_left_mm / track;
    let mass_kg = car.sprung.mass_kg * share * if place.is_left() { left } else { 1.0 - left };
    // N/m to N/mm.
    (TAU * ride_hz(car.sprung_like).usual).powi(2) * mass_kg / 1_000.0
}
