//! What a gravity gauge's reading is cleared of before it says something of the wheel: its own bias and the floor.

use super::axis::near_zero;
use super::known::KnownAngle;
use super::wheel::{GaugeCamber, Side};
use crate::StaticsError;
use crate::error::within;

/// A gauge read, turned end for end on the same place, and read again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reversed {
    /// The angle without the gauge's bias.
    pub angle: KnownAngle,
    /// The bias: what the gauge shows on a level place.
    pub bias: KnownAngle,
}

/// Takes a gauge's bias out: it shows `a + b`, and turned end for end `-a + b`.
pub fn reversed(shown_deg: f64, shown_turned_deg: f64, look_standard_deg: f64) -> Reversed {
    // Half the sum or difference of two independent looks.
    let standard_deg = look_standard_deg / std::f64::consts::SQRT_2;
    Reversed {
        angle: KnownAngle { deg: (shown_deg - shown_turned_deg) / 2.0, standard_deg },
        bias: KnownAngle { deg: (shown_deg + shown_turned_deg) / 2.0, standard_deg },
    }
}

/// Inclination of a wheel from a plumb line beside it: how much further out its upper place is than its lower one, and
/// the height between them along the plumb line.
///
/// # Errors
/// A height outside 100 to 1500 mm, an offset beyond half of it.
pub fn camber_from_plumb(top_out_mm: f64, height_mm: f64) -> Result<GaugeCamber, StaticsError> {
    within("height_mm", height_mm, 100.0, 1_500.0, "from 100 to 1500 mm")?;
    within("top_out_mm", top_out_mm, -height_mm / 2.0, height_mm / 2.0, "at most half the height")?;
    Ok(GaugeCamber { deg: (top_out_mm / height_mm).atan().to_degrees() })
}

/// How the plane that the wheels stand on lies against the level.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FloorSlope {
    /// Positive when it rises towards the front, degrees.
    pub rise_forward_deg: f64,
    /// Positive when it rises towards the left, degrees.
    pub rise_left_deg: f64,
}

impl FloorSlope {
    /// The plumb line, upwards, in axes that stand square on the floor: x, y, z.
    fn plumb(&self) -> Result<[f64; 3], StaticsError> {
        within("floor.rise_forward_deg", self.rise_forward_deg, -10.0, 10.0, "from -10 to 10 degrees")?;
        within("floor.rise_left_deg", self.rise_left_deg, -10.0, 10.0, "from -10 to 10 degrees")?;
        // The floor's x axis climbs by its own slope, so the plumb line has that sine along it; y alike.
        let (x, y) = (self.rise_forward_deg.to_radians().sin(), self.rise_left_deg.to_radians().sin());
        Ok([x, y, (1.0 - x * x - y * y).sqrt()])
    }

    /// The inclination to the floor's normal of a wheel whose gauge reads `shown`, standing on this floor and pointing
    /// `heading_deg` to the left. Exact; for a wheel straight ahead it is the reading plus or less the cross slope.
    ///
    /// # Errors
    /// A slope, heading or reading that cannot be.
    pub fn taken_out(&self, side: Side, heading_deg: f64, shown: GaugeCamber) -> Result<GaugeCamber, StaticsError> {
        check(heading_deg, shown.deg)?;
        let [ux, uy, uz] = self.plumb()?;
        let s = side.sign();
        let heading = heading_deg.to_radians();
        // The spin axis is (-cos g sin h, cos g cos h, -s sin g); the gauge reads asin(-s n·u).
        let across = -s * (heading.cos() * uy - heading.sin() * ux);
        angle(across, uz, shown.deg)
    }

    /// The same for a gauge along the wheel, read forward and up: the angle in the wheel's plane between its forward
    /// direction in the floor and the line that the gauge lies on. `lean` is the wheel's inclination to the floor.
    ///
    /// # Errors
    /// As [`FloorSlope::taken_out`].
    pub fn taken_out_along(
        &self,
        side: Side,
        heading_deg: f64,
        lean: GaugeCamber,
        shown_deg: f64,
    ) -> Result<f64, StaticsError> {
        check(heading_deg, shown_deg)?;
        let [ux, uy, uz] = self.plumb()?;
        let (heading, lean) = (heading_deg.to_radians(), side.sign() * lean.deg.to_radians());
        // Forward h in the floor, and w = h × n up in the wheel's plane.
        let forward = heading.cos() * ux + heading.sin() * uy;
        let up = lean.sin() * (heading.cos() * uy - heading.sin() * ux) + lean.cos() * uz;
        Ok(angle(forward, up, shown_deg)?.deg)
    }
}

fn check(heading_deg: f64, shown_deg: f64) -> Result<(), StaticsError> {
    within("heading_deg", heading_deg, -80.0, 80.0, "from -80 to 80 degrees")?;
    within("shown_deg", shown_deg, -60.0, 60.0, "from -60 to 60 degrees")
}

/// Solves `a cos q + b sin q = sin(shown)`.
fn angle(a: f64, b: f64, shown_deg: f64) -> Result<GaugeCamber, StaticsError> {
    let found = near_zero(a, b, shown_deg.to_radians().sin()).ok_or_else(|| StaticsError::Value {
        at: "shown_deg".to_owned(),
        value: shown_deg.to_string(),
        must: "an angle that a wheel on this floor can show",
    })?;
    Ok(GaugeCamber { deg: found.to_degrees() })
}
