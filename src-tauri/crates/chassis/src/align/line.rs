//! Toe of all four wheels from a line on either side of the car, strings or lasers.
//!
//! The middle line of the car runs through the middles of both axles. Seen from above, the left line has a yaw λ and
//! the right one ρ against it; `a` are the distances from a wheel's hub face to its line, `t` the tracks over the hub
//! faces, `W` the distances between the lines at their ends, E apart, `L` the wheelbase:
//!
//! ```text
//!   aLf - aLr =  L tan λ - (tf - tr)/2         aRf - aRr = -L tan ρ - (tf - tr)/2        Wf - Wr = E (tan λ - tan ρ)
//! ```
//!
//! So with the tracks known, or with the lines closed to a rectangle by their ends, the skew of both lines is known;
//! the ends give the track difference besides. The toe of a wheel is its toe against the line, less λ on the left,
//! plus ρ on the right. Distances are taken across the car; lines nearly parallel to it make that the same as across
//! the line (half a degree of skew: 4e-5 of it).

use super::known::{Input, KnownAngle, angles, propagate};
use super::toe::{AxleToe, toe_from_edges_deg};
use crate::StaticsError;
use crate::error::within;
use bayhand_vehicle::{Corners, Place};

/// The distances from a wheel to the line on its side, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelToLine {
    /// Of the rim's front edge, at the height of its centre.
    pub front_mm: f64,
    /// Of the rim's rear edge.
    pub rear_mm: f64,
    /// Between these edges, along the rim.
    pub between_mm: f64,
    /// Of the hub face, or of any place that the tracks are measured over.
    pub hub_mm: f64,
}

/// What ties the two lines to the car.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Closing {
    /// The tracks over the hub faces.
    Tracks {
        /// Front, mm.
        front_mm: f64,
        /// Rear, mm.
        rear_mm: f64,
    },
    /// The distances between the lines at their ends.
    Ends {
        /// In front of the car, mm.
        front_mm: f64,
        /// Behind it, mm.
        rear_mm: f64,
        /// From the front end to the rear end, mm.
        apart_mm: f64,
    },
}

/// A line on either side, and the distances to all wheels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lines {
    /// Wheelbase, mm.
    pub wheelbase_mm: f64,
    /// The wheels.
    pub wheels: Corners<WheelToLine>,
    /// What ties the lines to the car.
    pub closing: Closing,
}

/// Standard uncertainties, mm, each independent.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct LineSpread {
    /// Of a distance from a rim's edge, run-out included where it was not taken out.
    pub edge_mm: f64,
    /// Of a distance from a hub face.
    pub hub_mm: f64,
    /// Of a track, or of a distance between the lines' ends.
    pub across_mm: f64,
}

/// What the lines say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LineAngles {
    /// Toe of each wheel against the middle line of the car.
    pub toe: Corners<KnownAngle>,
    /// Total toe of the front axle.
    pub total_front: KnownAngle,
    /// Total toe of the rear axle.
    pub total_rear: KnownAngle,
    /// Thrust angle, positive when the rear wheels point left. Its uncertainty knows that both rear toes share the
    /// lines.
    pub thrust: KnownAngle,
    /// Yaw of the left line against the car.
    pub left_line: KnownAngle,
    /// Yaw of the right line.
    pub right_line: KnownAngle,
    /// Front track less rear track, mm: entered, or found from the ends.
    pub track_difference_mm: f64,
}

impl Lines {
    /// All angles, with their uncertainty.
    ///
    /// # Errors
    /// A length that cannot be.
    pub fn angles(&self, spread: &LineSpread) -> Result<LineAngles, StaticsError> {
        self.validate()?;
        for (field, value) in [("edge_mm", spread.edge_mm), ("hub_mm", spread.hub_mm), ("across_mm", spread.across_mm)]
        {
            within(&format!("spread.{field}"), value, 0.0, 100.0, "from 0 to 100 mm")?;
        }
        let mut inputs = Vec::new();
        for place in Place::ALL {
            let w = self.wheels.at(place);
            inputs.push(Input { value: w.front_mm, standard: spread.edge_mm });
            inputs.push(Input { value: w.rear_mm, standard: spread.edge_mm });
            inputs.push(Input { value: w.hub_mm, standard: spread.hub_mm });
        }
        let (Closing::Tracks { front_mm, rear_mm } | Closing::Ends { front_mm, rear_mm, .. }) = self.closing;
        inputs.push(Input { value: front_mm, standard: spread.across_mm });
        inputs.push(Input { value: rear_mm, standard: spread.across_mm });
        let found = propagate(&inputs, |values| self.with(values).toes_and_lines())?;
        let [fl, fr, rl, rr, left_line, right_line, total_front, total_rear, thrust] = angles(&found);
        Ok(LineAngles {
            toe: Corners { fl, fr, rl, rr },
            total_front,
            total_rear,
            thrust,
            left_line,
            right_line,
            track_difference_mm: self.track_difference_mm(),
        })
    }

    /// The same lines with other values in the order in which [`Lines::angles`] lists its inputs.
    fn with(&self, values: &[f64]) -> Lines {
        let wheels = Corners::from_fn(|p| WheelToLine {
            front_mm: values[3 * p.index()],
            rear_mm: values[3 * p.index() + 1],
            hub_mm: values[3 * p.index() + 2],
            ..*self.wheels.at(p)
        });
        let (front_mm, rear_mm) = (values[12], values[13]);
        let closing = match self.closing {
            Closing::Tracks { .. } => Closing::Tracks { front_mm, rear_mm },
            Closing::Ends { apart_mm, .. } => Closing::Ends { front_mm, rear_mm, apart_mm },
        };
        Lines { wheels, closing, ..*self }
    }

    /// The hub distances in front less those behind, left and right, mm.
    fn hub_differences_mm(&self) -> (f64, f64) {
        let w = &self.wheels;
        (w.fl.hub_mm - w.rl.hub_mm, w.fr.hub_mm - w.rr.hub_mm)
    }

    /// Tangents of λ and ρ.
    fn skew(&self) -> (f64, f64) {
        let (left, right) = self.hub_differences_mm();
        match self.closing {
            Closing::Tracks { front_mm, rear_mm } => {
                let half = (front_mm - rear_mm) / 2.0;
                ((left + half) / self.wheelbase_mm, -(right + half) / self.wheelbase_mm)
            }
            Closing::Ends { front_mm, rear_mm, apart_mm } => {
                let opens = (front_mm - rear_mm) / apart_mm;
                let both = (left - right) / self.wheelbase_mm;
                ((both + opens) / 2.0, (both - opens) / 2.0)
            }
        }
    }

    fn track_difference_mm(&self) -> f64 {
        let (left, right) = self.hub_differences_mm();
        let (l, r) = self.skew();
        self.wheelbase_mm * (l - r) - left - right
    }

    /// Toes, lines, totals and thrust, degrees.
    fn toes_and_lines(&self) -> Result<[f64; 9], StaticsError> {
        let (l, r) = self.skew();
        let (left_line, right_line) = (l.atan().to_degrees(), r.atan().to_degrees());
        let toe = |place: Place| {
            let w = self.wheels.at(place);
            let to_line = toe_from_edges_deg(w.front_mm, w.rear_mm, w.between_mm)?;
            Ok::<_, StaticsError>(if place.is_left() { to_line - left_line } else { to_line + right_line })
        };
        let (fl, fr, rl, rr) = (toe(Place::Fl)?, toe(Place::Fr)?, toe(Place::Rl)?, toe(Place::Rr)?);
        let axle = |left, right| AxleToe { left: KnownAngle::exact(left), right: KnownAngle::exact(right) };
        let (front, rear) = (axle(fl, fr), axle(rl, rr));
        Ok([fl, fr, rl, rr, left_line, right_line, front.total().deg, rear.total().deg, rear.heading().deg])
    }

    fn validate(&self) -> Result<(), StaticsError> {
        within("wheelbase_mm", self.wheelbase_mm, 500.0, 10_000.0, "from 500 to 10000 mm")?;
        for (place, w) in self.wheels.iter() {
            let at = |field: &str| format!("wheels.{}.{field}", place.code());
            within(&at("front_mm"), w.front_mm, 0.0, 3_000.0, "from 0 to 3000 mm")?;
            within(&at("rear_mm"), w.rear_mm, 0.0, 3_000.0, "from 0 to 3000 mm")?;
            within(&at("hub_mm"), w.hub_mm, 0.0, 3_000.0, "from 0 to 3000 mm")?;
            within(&at("between_mm"), w.between_mm, 100.0, 1_500.0, "from 100 to 1500 mm")?;
        }
        let (Closing::Tracks { front_mm, rear_mm } | Closing::Ends { front_mm, rear_mm, .. }) = self.closing;
        within("closing.front_mm", front_mm, 300.0, 6_000.0, "from 300 to 6000 mm")?;
        within("closing.rear_mm", rear_mm, 300.0, 6_000.0, "from 300 to 6000 mm")?;
        match self.closing {
            Closing::Tracks { .. } => Ok(()),
            Closing::Ends { apart_mm, .. } => within(
                "closing.apart_mm",
                apart_mm,
                self.wheelbase_mm / 2.0,
                20_000.0,
                "half the wheelbase to 20000 mm",
            ),
        }
    }
}
