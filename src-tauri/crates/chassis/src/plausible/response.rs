//! What any single thing does to the eight values of a reading: four loads (kg), then four heights (mm).
//!
//! All of it follows from what lifts at the wheels do. Two facts of linear statics carry the rest over:
//!
//! - A force between wheel and body (a link, a bump stop) does what the lift `S⁻¹ f` does, with `S` the rates of the
//!   springs of an axle, bar included: it is what the spring would have to be raised by to press as much.
//! - A force `f` on the body over the wheels does what the lift `-X f` does (`X` the flexibility of spring, bar and
//!   tyre), and stands on the pads besides: in `X dF + A q = 0`, `A' (dF - f) + (N - T) q = 0` put `dF = f + dF'`.

use crate::{Rates, Sensitivity, StaticsError};
use bayhand_vehicle::{Axle, Car, Corners, Place, STANDARD_GRAVITY};
use nalgebra::{Matrix2, SVector};

/// Loads (kg) at FL, FR, RL, RR, then heights (mm) there.
pub(crate) type Eight = SVector<f64, 8>;

/// The answers of one car to whatever moves it.
#[derive(Clone, Debug)]
pub(crate) struct Response {
    sensitivity: Sensitivity,
    adjuster_ratio: Corners<f64>,
    /// `S⁻¹`, mm/N, block by axle.
    spring_give: [Matrix2<f64>; 2],
    tyre_n_per_mm: [f64; 4],
    tracks_mm: [f64; 2],
    wheelbase_mm: f64,
}

impl Response {
    pub(crate) fn of(car: &Car) -> Result<Response, StaticsError> {
        let rates = Rates::of(car);
        let wheel = rates.wheel_n_per_mm.to_array();
        let mut spring_give = [Matrix2::zeros(); 2];
        for (axle, bar) in [car.bars.front, car.bars.rear].into_iter().enumerate() {
            let bar = bar.map_or(0.0, |b| b.n_per_mm);
            let (left, right) = (wheel[2 * axle], wheel[2 * axle + 1]);
            // Positive rates, so the determinant is at least `left * right`.
            let determinant = left * right + bar * (left + right);
            spring_give[axle] = Matrix2::new(right + bar, bar, bar, left + bar) / determinant;
        }
        Ok(Response {
            sensitivity: Sensitivity::of(car)?,
            adjuster_ratio: rates.adjuster_ratio,
            spring_give,
            tyre_n_per_mm: car.corners.map(|c| c.tyre_n_per_mm).to_array(),
            tracks_mm: [car.track_front_mm, car.track_rear_mm],
            wheelbase_mm: car.wheelbase_mm,
        })
    }

    /// Collars turned by `mm` of their travel.
    pub(crate) fn collars(&self, mm: &[f64; 4]) -> Eight {
        let s = &self.sensitivity;
        let lift: [f64; 4] = std::array::from_fn(|i| mm[i] * self.adjuster_ratio.to_array()[i]);
        stack(&s.load_per_mm_wheel, &s.height_per_mm_wheel, &lift)
    }

    /// One pad raised by 1 mm; its height is read over the pad.
    pub(crate) fn pad_raised(&self, place: Place) -> Eight {
        let s = &self.sensitivity;
        stack(&s.load_per_mm_pad, &s.height_per_mm_pad, &unit(place))
    }

    /// One pad that shows 1 kg too much.
    pub(crate) fn pad_shows_more(place: Place) -> Eight {
        Eight::from_fn(|i, _| if i == place.index() { 1.0 } else { 0.0 })
    }

    /// One tyre that stands 1 mm higher under its load.
    pub(crate) fn tyre_stands_higher(&self, place: Place) -> Eight {
        self.lifted(&unit(place))
    }

    /// Forces between wheel and body, N, that press the wheels down.
    pub(crate) fn pressed_apart(&self, newton: &[f64; 4]) -> Eight {
        self.lifted(&self.spring_lift(newton))
    }

    /// 1 kg on the body at a place: behind the front axle and left of the middle plane, mm. Its parts over the axles
    /// go by the place along the car, as the halves of the body do.
    pub(crate) fn weight_at(&self, behind_mm: f64, left_mm: f64) -> Eight {
        let to_rear = behind_mm / self.wheelbase_mm;
        let share = [1.0 - to_rear, to_rear];
        self.body_pressed(&corners(|axle, side| share[axle] * (0.5 + side * left_mm / self.tracks_mm[axle])))
    }

    /// 1 kg on the body moved forward and to the left, by mm, at a place along the car.
    pub(crate) fn weight_moved(&self, behind_mm: f64, forward_mm: f64, left_mm: f64) -> Eight {
        let to_rear = behind_mm / self.wheelbase_mm;
        let share = [1.0 - to_rear, to_rear];
        let along = [0.5, -0.5].map(|half| half * forward_mm / self.wheelbase_mm);
        self.body_pressed(&corners(|axle, side| along[axle] + share[axle] * side * left_mm / self.tracks_mm[axle]))
    }

    /// A contact patch that carries `load_kg` moved forward and to the left, by mm: the load's lever on the car.
    pub(crate) fn patch_moved(&self, place: Place, load_kg: f64, forward_mm: f64, left_mm: f64) -> Eight {
        let behind_mm = if place.axle() == Axle::Front { 0.0 } else { self.wheelbase_mm };
        // What carries moves one way, so what is carried seems to move the other way.
        -self.weight_moved(behind_mm, forward_mm, left_mm) * load_kg
    }

    fn lifted(&self, lift_mm: &[f64; 4]) -> Eight {
        let s = &self.sensitivity;
        // Over the pad a raised pad loses its own rise; a lift of the free height does not.
        stack(&s.load_per_mm_pad, &s.height_per_mm_pad, lift_mm)
            + Eight::from_fn(|i, _| if i < 4 { 0.0 } else { lift_mm[i - 4] })
    }

    /// `S⁻¹ f`, mm.
    fn spring_lift(&self, newton: &[f64; 4]) -> [f64; 4] {
        std::array::from_fn(|i| {
            let (axle, side) = (i / 2, i % 2);
            (0..2).map(|other| self.spring_give[axle][(side, other)] * newton[2 * axle + other]).sum()
        })
    }

    /// Loads on the body over the wheels, kg.
    fn body_pressed(&self, kg: &[f64; 4]) -> Eight {
        let newton = kg.map(|v| v * STANDARD_GRAVITY);
        let springs = self.spring_lift(&newton);
        let give: [f64; 4] = std::array::from_fn(|i| -(springs[i] + newton[i] / self.tyre_n_per_mm[i]));
        self.lifted(&give) + Eight::from_fn(|i, _| if i < 4 { kg[i] } else { 0.0 })
    }
}

fn unit(place: Place) -> [f64; 4] {
    std::array::from_fn(|i| if i == place.index() { 1.0 } else { 0.0 })
}

/// One value for each corner from its axle (0 front, 1 rear) and side (1 left, -1 right).
fn corners(value: impl Fn(usize, f64) -> f64) -> [f64; 4] {
    std::array::from_fn(|i| value(i / 2, if i % 2 == 0 { 1.0 } else { -1.0 }))
}

fn stack(load: &[[f64; 4]; 4], height: &[[f64; 4]; 4], by: &[f64; 4]) -> Eight {
    Eight::from_fn(|i, _| {
        let row = if i < 4 { &load[i] } else { &height[i - 4] };
        row.iter().zip(by).map(|(r, b)| r * b).sum()
    })
}

#[cfg(test)]
#[path = "../../tests/common/mod.rs"]
pub(super) mod common;

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]
mod tests {
    use super::common::{near, square_car};
    use super::*;
    use bayhand_vehicle::Bar;

    /// A car whose mass centre is on the roll axis, so that leaning moves no load; its bars connected.
    fn car() -> Car {
        let mut car = square_car();
        car.track_rear_mm = 1_430.0;
        car.bars.front = Some(Bar { n_per_mm: 12.0, preload_n: 0.0 });
        car
    }

    /// Total, moment about the front axle and moment about the middle plane of four loads, kg and kg mm.
    fn resultants(eight: &Eight) -> [f64; 3] {
        let l = [eight[0], eight[1], eight[2], eight[3]];
        [l.iter().sum(), 2_600.0 * (l[2] + l[3]), 750.0 * (l[0] - l[1]) + 715.0 * (l[2] - l[3])]
    }

    #[track_caller]
    fn check(eight: &Eight, expected: [f64; 3], why: &str) {
        for (found, expected) in resultants(eight).into_iter().zip(expected) {
            near(found, expected, 1e-9, why);
        }
    }

    /// R: equilibrium of forces and moments, whatever the springs.
    #[test]
    fn loads_balance_what_acts() {
        let response = Response::of(&car()).unwrap();
        check(&response.weight_at(900.0, 250.0), [1.0, 900.0, 250.0], "a kilogram stands where it is");
        check(&response.weight_moved(900.0, 30.0, 70.0), [0.0, -30.0, 70.0], "a kilogram moved forward and left");
        let none = [0.0; 3];
        check(&response.pressed_apart(&[100.0, -100.0, 0.0, 30.0]), none, "forces inside the car");
        check(&response.tyre_stands_higher(Place::Rl), none, "a lift");
        check(&response.pad_raised(Place::Fr), none, "a pad");
        check(&response.collars(&[1.0, 2.0, -3.0, 4.0]), none, "collars");
        // What carries 300 kg stands 10 mm further left: the others balance the moment.
        check(&response.patch_moved(Place::Fl, 300.0, 0.0, 10.0), [0.0, 0.0, -3_000.0], "a patch");
    }

    /// R: the same as the statics of a patch say, by another way.
    #[test]
    fn patches_move_loads_as_statics_says() {
        let mut car = car();
        car.sprung.cg_height_mm = 480.0;
        let (response, patch) = (Response::of(&car).unwrap(), Sensitivity::of(&car).unwrap().patch);
        for place in Place::ALL {
            let (forward, left) =
                (response.patch_moved(place, 1.0, 1.0, 0.0), response.patch_moved(place, 1.0, 0.0, 1.0));
            for i in 0..4 {
                near(forward[i], patch.forward[i][place.index()], 1e-12, "forward");
                near(left[i], patch.left[i][place.index()], 1e-12, "left");
            }
        }
    }

    /// R: on one wheel's spring and tyre alone (k1 = k2 = k3 = k4 = k) a kilogram over the middle sinks g / 4k.
    #[test]
    fn a_weight_sinks_the_body() {
        let mut car = square_car();
        car.sprung.cg_behind_front_axle_mm = 1_300.0;
        car.corners = Corners::same(car.corners.fl);
        let sunk = Response::of(&car).unwrap().weight_at(1_300.0, 0.0);
        for i in 0..4 {
            near(sunk[i], 0.25, 1e-9, "a quarter each");
            near(sunk[4 + i], -STANDARD_GRAVITY / (4.0 * 30.0), 1e-9, "down by its weight over four ride rates");
        }
    }
}
