//! The steering axis of a wheel, and the wheel turned about it.

use super::wheel::{Side, Wheel};
use crate::StaticsError;
use crate::error::within;
use nalgebra::{Unit, UnitQuaternion, Vector3};

/// A steering axis by its two projections, degrees: caster in the side view, inclination in the front view.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SteeringAxis {
    /// Side of the wheel that it steers.
    pub side: Side,
    /// Positive when the top leans back.
    pub caster_deg: f64,
    /// Positive when the top leans in.
    pub inclination_deg: f64,
}

impl SteeringAxis {
    /// Direction, upwards: `(-tan caster, -+tan inclination, 1)`, the upper sign on the left, to unit length.
    fn direction(&self) -> Result<Unit<Vector3<f64>>, StaticsError> {
        within("caster_deg", self.caster_deg, -60.0, 60.0, "from -60 to 60 degrees")?;
        within("inclination_deg", self.inclination_deg, -60.0, 60.0, "from -60 to 60 degrees")?;
        let inward = -self.side.sign() * self.inclination_deg.to_radians().tan();
        Ok(Unit::new_normalize(Vector3::new(-self.caster_deg.to_radians().tan(), inward, 1.0)))
    }

    /// The wheel turned about this axis, positive to the left, as seen down the axis. This is the rotation about the
    /// axis, not the change of heading that a turn plate shows. The axis stays where it is: that steering lifts and
    /// leans the car a little is left out.
    ///
    /// # Errors
    /// An axis that leans by more than 60 degrees, a rotation beyond 90 degrees, a wheel of the other side.
    pub fn turned(&self, wheel: &Wheel, rotation_deg: f64) -> Result<Wheel, StaticsError> {
        self.check_side(wheel)?;
        within("rotation_deg", rotation_deg, -90.0, 90.0, "from -90 to 90 degrees")?;
        let turn = UnitQuaternion::from_axis_angle(&self.direction()?, rotation_deg.to_radians());
        Ok(Wheel { spin: turn * wheel.spin, ..*wheel })
    }

    /// The wheel turned about this axis until its heading has changed by `change_deg` towards the wheel's own side, as
    /// a turn plate shows it, and the rotation about the axis that this takes, degrees, positive to the left.
    ///
    /// With the axis k and the spin axis n, `n(δ) = (n·k) k + (n - (n·k) k) cos δ + (k × n) sin δ`; the wheel points
    /// along e in the ground plane when `n(δ)·e = 0`, which has a closed solution.
    ///
    /// # Errors
    /// As [`SteeringAxis::turned`]; a heading that this axis cannot give.
    pub fn turned_to(&self, wheel: &Wheel, change_deg: f64) -> Result<(Wheel, f64), StaticsError> {
        self.check_side(wheel)?;
        within("change_deg", change_deg, -80.0, 80.0, "from -80 to 80 degrees")?;
        let k = self.direction()?.into_inner();
        let heading = (wheel.heading_deg() + self.side.sign() * change_deg).to_radians();
        let e = Vector3::new(heading.cos(), heading.sin(), 0.0);
        let along = k * wheel.spin.dot(&k);
        let rotation = near_zero(wheel.spin.dot(&e) - along.dot(&e), k.cross(&wheel.spin).dot(&e), -along.dot(&e));
        let rotation = rotation.ok_or_else(|| StaticsError::Value {
            at: "change_deg".to_owned(),
            value: change_deg.to_string(),
            must: "a heading that this axis can give",
        })?;
        let rotation_deg = rotation.to_degrees();
        Ok((self.turned(wheel, rotation_deg)?, rotation_deg))
    }

    fn check_side(&self, wheel: &Wheel) -> Result<(), StaticsError> {
        if wheel.side == self.side {
            Ok(())
        } else {
            Err(StaticsError::Value {
                at: "wheel.side".to_owned(),
                value: format!("{:?}", wheel.side),
                must: "the side of the steering axis",
            })
        }
    }
}

/// The solution of `a cos q + b sin q = c` that is nearest to zero, rad; `None` when there is none.
pub(super) fn near_zero(a: f64, b: f64, c: f64) -> Option<f64> {
    let sine = c / a.hypot(b);
    if sine.is_nan() || sine.abs() > 1.0 {
        return None;
    }
    let shift = a.atan2(b);
    let wrapped = |q: f64| q.sin().atan2(q.cos());
    let (one, other) = (wrapped(sine.asin() - shift), wrapped(std::f64::consts::PI - sine.asin() - shift));
    Some(if one.abs() <= other.abs() { one } else { other })
}
