//! A wheel as a plane, and the two cambers that people read off it.

use crate::StaticsError;
use crate::error::within;
use nalgebra::Vector3;

/// A side of the car, seen by its driver.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Left.
    Left,
    /// Right.
    Right,
}

impl Side {
    /// Towards this side along y: 1 for the left, -1 for the right.
    pub(super) fn sign(self) -> f64 {
        match self {
            Side::Left => 1.0,
            Side::Right => -1.0,
        }
    }
}

/// Camber as the standard defines it (ISO 8855:2011, 7.1.17): the angle between the vehicle's z axis and the wheel
/// plane about the vehicle's x axis, positive when the top leans out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StandardCamber {
    /// Degrees.
    pub deg: f64,
}

/// Inclination of the wheel plane to the plumb line, as a gravity gauge on the wheel reads it, positive when the top
/// leans out. It equals the standard's camber only while the wheel points straight ahead.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GaugeCamber {
    /// Degrees.
    pub deg: f64,
}

impl GaugeCamber {
    /// The standard's camber of a wheel that points `heading_deg` away from straight ahead, to either side:
    /// `tan(standard) = tan(gauge) / cos(heading)`.
    pub fn standard(self, heading_deg: f64) -> StandardCamber {
        let tan = self.deg.to_radians().tan() / heading_deg.to_radians().cos();
        StandardCamber { deg: tan.atan().to_degrees() }
    }
}

impl StandardCamber {
    /// What a gravity gauge reads on a wheel that points `heading_deg` away from straight ahead, to either side.
    pub fn gauge(self, heading_deg: f64) -> GaugeCamber {
        let tan = self.deg.to_radians().tan() * heading_deg.to_radians().cos();
        GaugeCamber { deg: tan.atan().to_degrees() }
    }
}

/// The plane of a wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wheel {
    /// Which side it is on; toe and camber take their signs from it.
    pub side: Side,
    /// Unit vector along the spin axis, to the left on either side: the y axis of the wheel in ISO 8855.
    pub(super) spin: Vector3<f64>,
}

impl Wheel {
    /// A wheel with this toe and this inclination to the plumb line, on level ground.
    ///
    /// # Errors
    /// A toe or an inclination beyond 60 degrees.
    pub fn from_gauge(side: Side, toe_deg: f64, camber: GaugeCamber) -> Result<Wheel, StaticsError> {
        within("toe_deg", toe_deg, -60.0, 60.0, "from -60 to 60 degrees")?;
        within("camber.deg", camber.deg, -60.0, 60.0, "from -60 to 60 degrees")?;
        // Toe-in turns the left wheel to the right and the right wheel to the left.
        let heading = -side.sign() * toe_deg.to_radians();
        let lean = side.sign() * camber.deg.to_radians();
        let spin = Vector3::new(-heading.sin() * lean.cos(), heading.cos() * lean.cos(), -lean.sin());
        Ok(Wheel { side, spin })
    }

    /// A wheel with this toe and this camber by the standard.
    ///
    /// # Errors
    /// A toe or a camber beyond 60 degrees.
    pub fn from_standard(side: Side, toe_deg: f64, camber: StandardCamber) -> Result<Wheel, StaticsError> {
        within("camber.deg", camber.deg, -60.0, 60.0, "from -60 to 60 degrees")?;
        Wheel::from_gauge(side, toe_deg, camber.gauge(toe_deg))
    }

    /// The spin axis, a unit vector to the left: x, y, z.
    pub fn spin_axis(&self) -> [f64; 3] {
        self.spin.into()
    }

    /// Heading of the wheel: its forward direction in the ground plane against the vehicle's x axis, positive to the
    /// left, degrees.
    pub fn heading_deg(&self) -> f64 {
        (-self.spin.x).atan2(self.spin.y).to_degrees()
    }

    /// Toe, degrees; in is positive (ISO 8855:2011, 7.1.6).
    pub fn toe_deg(&self) -> f64 {
        -self.side.sign() * self.heading_deg()
    }

    /// Camber by the standard: a projection along the vehicle's x axis.
    pub fn standard_camber(&self) -> StandardCamber {
        StandardCamber { deg: (-self.side.sign() * self.spin.z).atan2(self.spin.y).to_degrees() }
    }

    /// Inclination to the plumb line on level ground.
    pub fn gauge_camber(&self) -> GaugeCamber {
        GaugeCamber { deg: (-self.side.sign() * self.spin.z).clamp(-1.0, 1.0).asin().to_degrees() }
    }

    /// The wheel itself from two readings of its rim, half a turn of the wheel apart: a rim that wobbles leans one way
    /// in the first and the other way in the second, so the sum of both planes' normals lies along the spin axis.
    /// Exact for any wobble. Also the wobble: the angle between rim and spin axis, degrees, never negative.
    ///
    /// # Errors
    /// Readings of two sides.
    pub fn without_run_out(first: &Wheel, second: &Wheel) -> Result<(Wheel, f64), StaticsError> {
        if first.side != second.side {
            return Err(StaticsError::Value {
                at: "second.side".to_owned(),
                value: format!("{:?}", second.side),
                must: "the side of the first reading",
            });
        }
        // Each within 60 degrees of the left in toe and camber, two normals are never opposite.
        let spin = (first.spin + second.spin).normalize();
        let wobble = first.spin.cross(&second.spin).norm().atan2(first.spin.dot(&second.spin)) / 2.0;
        Ok((Wheel { side: first.side, spin }, wobble.to_degrees()))
    }
}
