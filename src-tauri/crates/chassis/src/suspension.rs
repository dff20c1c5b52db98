//! The springs, bars and tyres between the body and the pads.
//!
//! Each corner's unknown is `u`, how much its spring grows longer along its own line (mm). With wheels sprung apart
//! the wheel drops `e = u / MR` out of the body. A beam has one motion ratio in heave, `MR`, and another in roll,
//! `MR_roll = MR x spring base / track`, so that of one axle
//!
//! ```text
//!   | u left  |   1 | MR + MR_roll   MR - MR_roll | | e left  |
//!   | u right | = - | MR - MR_roll   MR + MR_roll | | e right |                  (u = M e)
//!                 2
//! ```
//!
//! A collar raised by `s` shortens its spring by `MR r s` before anything moves, `r` the adjuster ratio: for a spring
//! seat, `r = 1 / MR`, by just `s`. The spring then gains `ks (MR r s - u)`, a bar of rate `kb` presses the left wheel
//! down by `kb (e right - e left)` more, and a tyre gains `kt` times what it is pressed in.

use crate::Rates;
use crate::rates::beam;
use bayhand_vehicle::{Axle, Car, Place};
use nalgebra::{Matrix2, Matrix4, Vector4};

/// Springs, bars and tyres of a car; corners in the order FL, FR, RL, RR.
pub(crate) struct Suspension {
    /// Spring rates along the springs, N/mm.
    pub(crate) spring_n_per_mm: [f64; 4],
    /// Tyre rates, N/mm.
    pub(crate) tyre_n_per_mm: [f64; 4],
    /// Motion ratios in heave, spring travel / wheel travel.
    pub(crate) ratio: [f64; 4],
    /// `M⁻¹`: wheel travel out of the body (rows) per growth of each spring, mm/mm.
    pub(crate) wheel_per_spring: Matrix4<f64>,
    /// Bar rates at the wheels, front and rear, N/mm; 0 when none is connected.
    pub(crate) bar_n_per_mm: [f64; 2],
    /// Flexibility of springs, bars and tyres together (`X`), mm/N.
    pub(crate) flexibility: Matrix4<f64>,
    /// What the axle rises at each wheel (rows) per mm of free height that each collar gives, the loads unchanged.
    pub(crate) collar_lift: Matrix4<f64>,
}

impl Suspension {
    /// The suspension of a car that has passed [`Car::validate`].
    pub(crate) fn of(car: &Car) -> Suspension {
        let rates = Rates::of(car);
        let ratio = rates.motion_ratio.to_array();
        let wheel = rates.wheel_n_per_mm.to_array();
        let spring_n_per_mm = std::array::from_fn(|i| wheel[i] / (ratio[i] * ratio[i]));
        let tyre_n_per_mm = std::array::from_fn(|i| car.corners.at(Place::ALL[i]).tyre_n_per_mm);
        let bar_n_per_mm = [car.bars.front, car.bars.rear].map(|b| b.map_or(0.0, |b| b.n_per_mm));
        let mut wheel_per_spring = Matrix4::zeros();
        let mut flexibility = Matrix4::zeros();
        let mut collar_lift = Matrix4::zeros();
        for (axle, name) in [Axle::Front, Axle::Rear].into_iter().enumerate() {
            let at = 2 * axle;
            let travel = if beam(car, name).is_some() {
                let (heave, roll) = ((ratio[at] + ratio[at + 1]) / 2.0, rates.roll_motion_ratio(car, name));
                Matrix2::new(heave + roll, heave - roll, heave - roll, heave + roll) / 2.0
            } else {
                Matrix2::new(ratio[at], 0.0, 0.0, ratio[at + 1])
            };
            let springs = Matrix2::new(spring_n_per_mm[at], 0.0, 0.0, spring_n_per_mm[at + 1]);
            let bar = bar_n_per_mm[axle] * Matrix2::new(1.0, -1.0, -1.0, 1.0);
            let give = inverse(&(travel.transpose() * springs * travel + bar));
            let seat = Matrix2::new(ratio[at], 0.0, 0.0, ratio[at + 1]);
            let tyres = Matrix2::new(1.0 / tyre_n_per_mm[at], 0.0, 0.0, 1.0 / tyre_n_per_mm[at + 1]);
            wheel_per_spring.fixed_view_mut::<2, 2>(at, at).copy_from(&inverse(&travel));
            flexibility.fixed_view_mut::<2, 2>(at, at).copy_from(&(give + tyres));
            collar_lift.fixed_view_mut::<2, 2>(at, at).copy_from(&(give * travel.transpose() * springs * seat));
        }
        Suspension { spring_n_per_mm, tyre_n_per_mm, ratio, wheel_per_spring, bar_n_per_mm, flexibility, collar_lift }
    }

    /// Lift of the free heights that raises the axles by `lift_mm` at each wheel, mm.
    pub(crate) fn free_lift(&self, lift_mm: &Vector4<f64>) -> Vector4<f64> {
        let mut free = Vector4::zeros();
        for at in [0, 2] {
            let collars: Matrix2<f64> = self.collar_lift.fixed_view::<2, 2>(at, at).into();
            let axle = inverse(&collars) * lift_mm.fixed_rows::<2>(at);
            free.fixed_rows_mut::<2>(at).copy_from(&axle);
        }
        free
    }

    /// Load that each spring carries (N, along its line) when the wheels carry these loads at the ground, from the
    /// balance of the unsprung parts: `M' f = load - unsprung weight - bar`.
    pub(crate) fn spring_loads_n(&self, car: &Car, load_n: [f64; 4]) -> [f64; 4] {
        let strut = Vector4::from_fn(|i, _| {
            let place = Place::ALL[i];
            let bar = if i < 2 { car.bars.front } else { car.bars.rear };
            let preload_n = bar.map_or(0.0, |b| if place.is_left() { b.preload_n } else { -b.preload_n });
            load_n[i] - car.corners.at(place).unsprung_kg * bayhand_vehicle::STANDARD_GRAVITY - preload_n
        });
        let along = self.wheel_per_spring.transpose() * strut;
        [along[0], along[1], along[2], along[3]]
    }
}

/// The inverse of a stiffness or of travel ratios, which are never singular for a valid car.
fn inverse(m: &Matrix2<f64>) -> Matrix2<f64> {
    let determinant = m[(0, 0)] * m[(1, 1)] - m[(0, 1)] * m[(1, 0)];
    Matrix2::new(m[(1, 1)], -m[(0, 1)], -m[(1, 0)], m[(0, 0)]) / determinant
}
