//! Toe in its units, and what the toes of both axles say together.

use super::known::KnownAngle;
use crate::StaticsError;
use crate::error::within;

/// Minutes of arc in degrees.
pub fn toe_minutes(toe_deg: f64) -> f64 {
    toe_deg * 60.0
}

/// Toe of one wheel as a distance, mm: how much nearer the front edge of a circle of this diameter stands to the
/// middle of the car than the rear edge, `D sin(toe)`. The diameter belongs to the figure.
pub fn toe_mm(toe_deg: f64, diameter_mm: f64) -> f64 {
    diameter_mm * toe_deg.to_radians().sin()
}

/// Toe of one wheel from a distance at a diameter, degrees.
///
/// # Errors
/// A diameter outside 100 to 1500 mm, a distance beyond half of it.
pub fn toe_from_mm_deg(toe_mm: f64, diameter_mm: f64) -> Result<f64, StaticsError> {
    within("diameter_mm", diameter_mm, 100.0, 1_500.0, "from 100 to 1500 mm")?;
    within("toe_mm", toe_mm, -diameter_mm / 2.0, diameter_mm / 2.0, "at most half the diameter")?;
    Ok((toe_mm / diameter_mm).asin().to_degrees())
}

/// Toe against a line outside the wheel from the distances of the rim's front and rear edge to it, degrees: a smaller
/// `front_mm` is toe-out. `between_mm` lies along the rim, between the places measured at.
///
/// # Errors
/// Distances outside 0 to 3000 mm, a rim outside 100 to 1500 mm, edges that differ by more than half of it.
pub fn toe_from_edges_deg(front_mm: f64, rear_mm: f64, between_mm: f64) -> Result<f64, StaticsError> {
    within("front_mm", front_mm, 0.0, 3_000.0, "from 0 to 3000 mm")?;
    within("rear_mm", rear_mm, 0.0, 3_000.0, "from 0 to 3000 mm")?;
    within("between_mm", between_mm, 100.0, 1_500.0, "from 100 to 1500 mm")?;
    toe_from_mm_deg(front_mm - rear_mm, between_mm)
}

/// The toes of an axle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AxleToe {
    /// Of the left wheel.
    pub left: KnownAngle,
    /// Of the right wheel.
    pub right: KnownAngle,
}

impl AxleToe {
    /// Total toe: the sum (ISO 8855:2011, 7.1.7). The wheels' readings are taken as independent.
    pub fn total(&self) -> KnownAngle {
        self.left.combined(1.0, &self.right, 1.0)
    }

    /// Where the axle points: the mean of both wheels' headings, positive to the left, `(right - left) / 2`. Of the
    /// rear axle it is the thrust angle; of the front axle the mean steer angle (ISO 8855:2011, 7.1.3).
    pub fn heading(&self) -> KnownAngle {
        self.right.combined(0.5, &self.left, -0.5)
    }
}

/// How far the front wheels point away from where the rear axle pushes the car, with the steering wheel held straight:
/// positive to the left. Running straight, the driver turns the steering wheel by this times the steering ratio to the
/// right; at zero it stands straight.
pub fn steering_off(front: &AxleToe, rear: &AxleToe) -> KnownAngle {
    front.heading().combined(1.0, &rear.heading(), -1.0)
}

/// The front toes, left and right, with this total and a steering wheel that stands straight while the car runs along
/// its thrust line, degrees: half the total each, less and plus the thrust angle.
pub fn front_toe_for_straight_deg(total_deg: f64, thrust_deg: f64) -> (f64, f64) {
    (total_deg / 2.0 - thrust_deg, total_deg / 2.0 + thrust_deg)
}

/// Set-back of an axle as a turn of the line through its wheel centres: positive (to the left, as yaw) when its right
/// wheel stands ahead of its left one. `standard_mm` is the standard uncertainty of that distance.
///
/// # Errors
/// A track outside 300 to 4000 mm, a wheel more than 300 mm ahead of the other, an uncertainty outside 0 to 100 mm.
pub fn set_back(right_ahead_of_left_mm: f64, standard_mm: f64, track_mm: f64) -> Result<KnownAngle, StaticsError> {
    within("track_mm", track_mm, 300.0, 4_000.0, "from 300 to 4000 mm")?;
    within("right_ahead_of_left_mm", right_ahead_of_left_mm, -300.0, 300.0, "from -300 to 300 mm")?;
    within("standard_mm", standard_mm, 0.0, 100.0, "from 0 to 100 mm")?;
    let angle = (right_ahead_of_left_mm / track_mm).atan();
    Ok(KnownAngle {
        deg: angle.to_degrees(),
        standard_deg: (standard_mm / track_mm * angle.cos().powi(2)).to_degrees(),
    })
}
