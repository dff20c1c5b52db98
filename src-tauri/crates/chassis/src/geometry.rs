//! Where the wheels stand, and the one pattern that equilibrium leaves free.

use bayhand_vehicle::{Axle, Car, Corners, Place};

/// Place of a wheel on the ground, mm: `x` forward from the sprung mass centre, `y` left of the middle plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Wheel {
    pub x: f64,
    pub y: f64,
}

/// The track of an axle, mm.
pub(crate) fn track_mm(car: &Car, axle: Axle) -> f64 {
    match axle {
        Axle::Front => car.track_front_mm,
        Axle::Rear => car.track_rear_mm,
    }
}

/// Where a wheel stands.
pub(crate) fn wheel(car: &Car, place: Place) -> Wheel {
    let half = track_mm(car, place.axle()) / 2.0;
    let x = match place.axle() {
        Axle::Front => car.sprung.cg_behind_front_axle_mm,
        Axle::Rear => car.sprung.cg_behind_front_axle_mm - car.wheelbase_mm,
    };
    Wheel { x, y: if place.is_left() { half } else { -half } }
}

/// The diagonal pattern `n = (1, -1, -tf/tr, +tf/tr)`: four load changes that leave the total and both moments alone,
/// scaled to one at FL. Collars on level pads move load along this line and no other.
pub fn diagonal(car: &Car) -> Corners<f64> {
    let t = car.track_front_mm / car.track_rear_mm;
    Corners { fl: 1.0, fr: -1.0, rl: -t, rr: t }
}

/// How far four heights (mm, at the wheels) are from one plane, as mm at FL: lowering the FL point alone by this much
/// puts all four into one plane. It is the inner product with [`diagonal`].
pub fn twist(car: &Car, heights_mm: &Corners<f64>) -> f64 {
    let n = diagonal(car).to_array();
    heights_mm.to_array().iter().zip(n).map(|(h, n)| h * n).sum()
}
