//! How the sprung body moves, and what its own weight does as it leans.
//!
//! Movements `q`: heave (mm), pitch (mm per metre, nose down positive), roll (mm per metre, left side up positive);
//! with torsion the roll of each half of the body. A point of the body `x` forward of the mass centre and `y` left of
//! the middle plane rises by
//!
//! ```text
//!   c = heave - (x / 1 m) pitch + (y / 1 m) roll                                (model.md: c = A q)
//! ```
//!
//! As the body leans by `phi`, its weight `W`, a height `h` over the roll axis, moves out by `h phi` and turns it
//! further: the moment `W h phi`, the `N` of model.md. A body in torsion resists `T (roll front - roll rear)`; its
//! mass then stands as two halves over the axles, shared by its place between them.

use crate::geometry::wheel;
use bayhand_vehicle::{Axle, Car, HeightPoint, Place, STANDARD_GRAVITY};
use nalgebra::DMatrix;

/// Lengths across the car in metres, so that all movements are of one size and the equations stay well scaled.
const MM_PER_M: f64 = 1_000.0;

/// The body's movements and what they raise.
pub(crate) struct Body {
    /// `A`: rise of the body over each wheel (rows) per movement, mm.
    pub(crate) at_wheels: DMatrix<f64>,
    /// The same for the points at which heights are measured.
    pub(crate) at_height_points: DMatrix<f64>,
    /// `T - N`: what holds the body against its own lean, less what tips it, N mm per (mm/m)².
    pub(crate) upright: DMatrix<f64>,
    /// Sprung mass centre over the roll axis, mm.
    pub(crate) lever_mm: f64,
}

impl Body {
    /// The body of a car that has passed [`Car::validate`].
    pub(crate) fn of(car: &Car) -> Body {
        let s = &car.sprung;
        let lever_mm = s.cg_height_mm - car.roll_axis_height_mm;
        // One mm/m is a thousandth of a radian, on each side of the energy.
        let tipping = s.mass_kg * STANDARD_GRAVITY * lever_mm / (MM_PER_M * MM_PER_M);
        let to_rear = s.cg_behind_front_axle_mm / car.wheelbase_mm;
        let modes = if car.torsion_nm_per_deg.is_some() { 4 } else { 3 };
        let mut upright = DMatrix::zeros(modes, modes);
        upright[(1, 1)] = -tipping;
        match car.torsion_nm_per_deg {
            None => upright[(2, 2)] = -tipping,
            Some(torsion) => {
                let twist = torsion * MM_PER_M / 1.0_f64.to_radians() / (MM_PER_M * MM_PER_M);
                upright[(2, 2)] = twist - tipping * (1.0 - to_rear);
                upright[(3, 3)] = twist - tipping * to_rear;
                upright[(2, 3)] = -twist;
                upright[(3, 2)] = -twist;
            }
        }
        let row = |x_mm: f64, y_mm: f64, rear: f64, mode: usize| {
            let roll = y_mm / MM_PER_M;
            match mode {
                0 => 1.0,
                1 => -x_mm / MM_PER_M,
                2 if modes == 3 => roll,
                2 => roll * (1.0 - rear),
                _ => roll * rear,
            }
        };
        let over_wheel = |place: Place, mode: usize| {
            let w = wheel(car, place);
            row(w.x, w.y, if place.axle() == Axle::Rear { 1.0 } else { 0.0 }, mode)
        };
        let at_point = |p: &HeightPoint, mode: usize| {
            // A twisted body turns evenly from axle to axle, and as one piece beyond them.
            let rear = (p.behind_front_axle_mm / car.wheelbase_mm).clamp(0.0, 1.0);
            row(s.cg_behind_front_axle_mm - p.behind_front_axle_mm, p.left_mm, rear, mode)
        };
        let at_wheels = DMatrix::from_fn(4, modes, |i, mode| over_wheel(Place::ALL[i], mode));
        let at_height_points = match &car.height_points {
            None => at_wheels.clone(),
            Some(points) => DMatrix::from_fn(4, modes, |i, mode| at_point(points.at(Place::ALL[i]), mode)),
        };
        Body { at_wheels, at_height_points, upright, lever_mm }
    }

    /// How many movements it has: three, and with torsion four.
    pub(crate) fn modes(&self) -> usize {
        self.at_wheels.ncols()
    }

    /// Moments on the body over one axle (N mm: nose down, left side up) as forces on its movements.
    pub(crate) fn push(&self, axle: Axle, nose_down_n_mm: f64, left_up_n_mm: f64) -> Vec<f64> {
        let mut force = vec![0.0; self.modes()];
        force[1] = nose_down_n_mm / MM_PER_M;
        let roll = if self.modes() == 4 && axle == Axle::Rear { 3 } else { 2 };
        force[roll] = left_up_n_mm / MM_PER_M;
        force
    }
}
