//! Where a point of the body stands, for any angle, with first and second derivatives.
//!
//! Each half of the body turns about the lateral axis (pitch) and then about its own roll axis:
//! `point = hinge + Ry(pitch) Rx(roll) b`, with `b` measured from the hinge on the roll axis. Axes as ISO 8855: x
//! forward, y left, z up; positive pitch lowers the nose, positive roll raises the left side.

use nalgebra::{Matrix3, Vector3};

/// Attitude of one half of the body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Attitude {
    /// Height of the hinge above the pad plane, m.
    pub(crate) heave_m: f64,
    /// Pitch, rad.
    pub(crate) pitch_rad: f64,
    /// Roll, rad.
    pub(crate) roll_rad: f64,
}

/// A coordinate of a point, with its derivatives by (heave, pitch, roll).
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Coordinate {
    /// Its value, m.
    pub(crate) value: f64,
    /// Gradient.
    pub(crate) gradient: Vector3<f64>,
    /// Second derivatives.
    pub(crate) hessian: Matrix3<f64>,
}

/// A point of the body in space.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct BodyPoint {
    /// Forward of the hinge.
    pub(crate) x: Coordinate,
    /// Left of the middle plane.
    pub(crate) y: Coordinate,
    /// Above the pad plane.
    pub(crate) z: Coordinate,
}

impl Attitude {
    /// Where the point `b` of the body stands (b in m from the hinge).
    pub(crate) fn place(&self, b: Vector3<f64>) -> BodyPoint {
        let (sin_pitch, cos_pitch) = self.pitch_rad.sin_cos();
        let (sin_roll, cos_roll) = self.roll_rad.sin_cos();
        // After the roll: `up` and `left` in the pitched frame; d(up)/d(roll) = left, d(left)/d(roll) = -up.
        let up = sin_roll * b.y + cos_roll * b.z;
        let left = cos_roll * b.y - sin_roll * b.z;
        BodyPoint {
            x: Coordinate {
                value: cos_pitch * b.x + sin_pitch * up,
                gradient: Vector3::new(0.0, -sin_pitch * b.x + cos_pitch * up, sin_pitch * left),
                hessian: second(-cos_pitch * b.x - sin_pitch * up, cos_pitch * left, -sin_pitch * up),
            },
            y: Coordinate { value: left, gradient: Vector3::new(0.0, 0.0, -up), hessian: second(0.0, 0.0, -left) },
            z: Coordinate {
                value: self.heave_m - sin_pitch * b.x + cos_pitch * up,
                gradient: Vector3::new(1.0, -cos_pitch * b.x - sin_pitch * up, cos_pitch * left),
                hessian: second(sin_pitch * b.x - cos_pitch * up, -sin_pitch * left, -cos_pitch * up),
            },
        }
    }
}

/// Second derivatives by pitch-pitch, pitch-roll, roll-roll; those by heave are zero.
fn second(pitch_pitch: f64, pitch_roll: f64, roll_roll: f64) -> Matrix3<f64> {
    Matrix3::new(0.0, 0.0, 0.0, 0.0, pitch_pitch, pitch_roll, 0.0, pitch_roll, roll_roll)
}

#[cfg(test)]
mod tests {
    use super::*;

    const ATTITUDE: Attitude = Attitude { heave_m: 0.1, pitch_rad: 0.3, roll_rad: -0.4 };
    const POINT: Vector3<f64> = Vector3::new(1.2, 0.7, 0.25);

    fn moved(by: Vector3<f64>) -> Attitude {
        Attitude {
            heave_m: ATTITUDE.heave_m + by.x,
            pitch_rad: ATTITUDE.pitch_rad + by.y,
            roll_rad: ATTITUDE.roll_rad + by.z,
        }
    }

    /// Large angles: every derivative agrees with central differences.
    #[test]
    fn derivatives_are_those_of_the_place() {
        type Pick = fn(&BodyPoint) -> Coordinate;
        let picks: [(&str, Pick); 3] = [("x", |p| p.x), ("y", |p| p.y), ("z", |p| p.z)];
        let d = 1e-5;
        for (name, pick) in picks {
            let here = pick(&ATTITUDE.place(POINT));
            for k in 0..3 {
                let step = Vector3::from_fn(|i, _| if i == k { d } else { 0.0 });
                let low = pick(&moved(-step).place(POINT));
                let high = pick(&moved(step).place(POINT));
                let slope = (high.value - low.value) / (2.0 * d);
                assert!((slope - here.gradient[k]).abs() < 1e-9, "{name} by {k}: {slope} and {}", here.gradient[k]);
                let curve = (high.gradient - low.gradient) / (2.0 * d);
                let given = here.hessian.column(k);
                assert!((curve - given).amax() < 1e-9, "{name}, second by {k}: {curve} and {given}");
            }
        }
    }

    /// A rotation keeps the distance to the hinge.
    #[test]
    fn distance_to_the_hinge_is_kept() {
        let p = ATTITUDE.place(POINT);
        let there = Vector3::new(p.x.value, p.y.value, p.z.value - ATTITUDE.heave_m);
        assert!((there.norm() - POINT.norm()).abs() < 1e-12, "a rigid half keeps its lengths");
    }
}
