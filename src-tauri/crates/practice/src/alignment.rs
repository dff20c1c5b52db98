//! Toe, camber and caster of the practice car, and what the angle gauge shows of them.
//!
//! An own, simple truth: each angle moves linearly with its adjuster, with the others' adjusters and with the wheel's
//! travel; camber leans with the body besides. Deliberately absent: what an angle does to the loads.

use crate::configuration::{PracticeError, within};
use crate::data_sheet::{DataSheet, PerSide};
use crate::noise::{Draws, to_step};
use crate::pads::signs;
use crate::rig::Standing;
use bayhand_vehicle::{Corners, Place};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Resolution of the angle gauge, degrees.
pub(crate) const RESOLUTION_DEG: f64 = 0.05;
/// Spread of the gauge, one sigma, degrees.
pub(crate) const GAUGE_SIGMA_DEG: f64 = 0.02;
/// Most turns of an adjuster either way.
const MOST_TURNS: f64 = 20.0;

/// Turns made at the adjusters since the car came in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AlignmentState {
    /// Turns of each tie rod or toe link; positive gives toe-in.
    pub tie_rod_turns: Corners<f64>,
    /// Turns of each camber adjuster; positive leans the wheel's top out.
    pub camber_turns: Corners<f64>,
    /// Turns of each front caster adjuster; positive gives more caster.
    pub caster_turns: PerSide<f64>,
}

/// The angles of the car, degrees.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Angles {
    /// Toe of each wheel; in is positive.
    pub toe_deg: Corners<f64>,
    /// Camber against the ground; negative when the top leans in.
    pub camber_deg: Corners<f64>,
    /// Caster of the front wheels.
    pub caster_deg: PerSide<f64>,
}

/// The true geometry of one wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
struct WheelGeometry {
    toe_deg: f64,
    camber_deg: f64,
    toe_deg_per_turn: f64,
    camber_deg_per_turn: f64,
    /// Toe that a degree of camber brings along.
    toe_per_camber: f64,
    /// Per mm of wheel travel into bump.
    bump_toe_deg_per_mm: f64,
    bump_camber_deg_per_mm: f64,
}

/// The true steering axis of a front wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
struct SteeringAxis {
    caster_deg: f64,
    caster_deg_per_turn: f64,
    bump_caster_deg_per_mm: f64,
    /// Camber and toe that a degree of caster brings along.
    camber_per_caster: f64,
    toe_per_caster: f64,
}

/// The true geometry of the car as it came in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Geometry {
    wheels: Corners<WheelGeometry>,
    axes: PerSide<SteeringAxis>,
}

impl Geometry {
    /// Invents a geometry that is out of the agreed one by what a setter usually meets.
    pub(crate) fn invent(sheet: &DataSheet, draws: &mut Draws) -> Self {
        let wheels = Corners::from_fn(|p| {
            let rod = sheet.tie_rod.of(p);
            let pitches = if rod.opposite_threads { 2.0 } else { 1.0 };
            let toe_deg_per_turn = (pitches * rod.pitch_mm / rod.arm_mm).atan().to_degrees();
            WheelGeometry {
                toe_deg: sheet.toe_deg.at(p) + draws.either_side(0.05, 0.2),
                camber_deg: sheet.camber_deg.at(p) + draws.either_side(0.1, 0.4),
                toe_deg_per_turn: toe_deg_per_turn * draws.even(0.95, 1.05),
                camber_deg_per_turn: sheet.camber_deg_per_turn.of(p) * draws.even(0.9, 1.1),
                toe_per_camber: draws.even(-0.3, -0.1),
                bump_toe_deg_per_mm: draws.even(-0.004, 0.004),
                bump_camber_deg_per_mm: draws.even(-0.025, -0.012),
            }
        });
        let mut axis = |agreed_deg: f64| SteeringAxis {
            caster_deg: agreed_deg + draws.either_side(0.1, 0.4),
            caster_deg_per_turn: sheet.caster_deg_per_turn * draws.even(0.9, 1.1),
            bump_caster_deg_per_mm: draws.even(-0.01, 0.01),
            camber_per_caster: draws.even(-0.1, 0.1),
            toe_per_caster: draws.even(-0.15, 0.15),
        };
        let axes = PerSide { left: axis(sheet.caster_deg.left), right: axis(sheet.caster_deg.right) };
        Geometry { wheels, axes }
    }

    /// The true angles of the car standing like that, against how it stood when it came in.
    pub(crate) fn angles(&self, turned: &AlignmentState, stands: &Standing, came: &Standing) -> Angles {
        let bump_mm = Corners::from_fn(|p| came.struts_mm.at(p) - stands.struts_mm.at(p));
        let caster = |axis: &SteeringAxis, turns: f64, bump_mm: f64| {
            axis.caster_deg + turns * axis.caster_deg_per_turn + bump_mm * axis.bump_caster_deg_per_mm
        };
        let wheel = |p: Place| {
            let w = self.wheels.at(p);
            let from_camber_deg = turned.camber_turns.at(p) * w.camber_deg_per_turn;
            let (from_caster_deg, axis) = match p {
                Place::Fl => (turned.caster_turns.left * self.axes.left.caster_deg_per_turn, Some(&self.axes.left)),
                Place::Fr => (turned.caster_turns.right * self.axes.right.caster_deg_per_turn, Some(&self.axes.right)),
                Place::Rl | Place::Rr => (0.0, None),
            };
            let (camber_per_caster, toe_per_caster) =
                axis.map_or((0.0, 0.0), |a| (a.camber_per_caster, a.toe_per_caster));
            let half = p.index() / 2;
            // The body leans to the right in positive roll: left tops go in, right tops out.
            let lean_deg = (stands.roll_rad[half] - came.roll_rad[half]).to_degrees();
            let camber_deg = w.camber_deg
                + from_camber_deg
                + from_caster_deg * camber_per_caster
                + bump_mm.at(p) * w.bump_camber_deg_per_mm
                - signs(p).1 * lean_deg;
            let toe_deg = w.toe_deg
                + turned.tie_rod_turns.at(p) * w.toe_deg_per_turn
                + from_camber_deg * w.toe_per_camber
                + from_caster_deg * toe_per_caster
                + bump_mm.at(p) * w.bump_toe_deg_per_mm;
            (toe_deg, camber_deg)
        };
        let both = Corners::from_fn(wheel);
        Angles {
            toe_deg: both.map(|b| b.0),
            camber_deg: both.map(|b| b.1),
            caster_deg: PerSide {
                left: caster(&self.axes.left, turned.caster_turns.left, bump_mm.fl),
                right: caster(&self.axes.right, turned.caster_turns.right, bump_mm.fr),
            },
        }
    }
}

impl Angles {
    /// What the gauge shows of these angles.
    pub(crate) fn shown(&self, draws: &mut Draws) -> Angles {
        let mut show = |deg: &f64| to_step(deg + draws.normal(GAUGE_SIGMA_DEG), RESOLUTION_DEG);
        Angles {
            toe_deg: self.toe_deg.map(&mut show),
            camber_deg: self.camber_deg.map(&mut show),
            caster_deg: PerSide { left: show(&self.caster_deg.left), right: show(&self.caster_deg.right) },
        }
    }
}

impl AlignmentState {
    /// Checks that these turns can have been made.
    ///
    /// # Errors
    /// The first number of turns out of its range.
    pub fn validate(&self) -> Result<(), PracticeError> {
        for (field, turns) in [("tie_rod_turns", &self.tie_rod_turns), ("camber_turns", &self.camber_turns)] {
            for (place, value) in turns.iter() {
                within(format!("{field}.{}", place.code()), *value, -MOST_TURNS, MOST_TURNS, "turns")?;
            }
        }
        for (side, value) in [("left", self.caster_turns.left), ("right", self.caster_turns.right)] {
            within(format!("caster_turns.{side}"), value, -MOST_TURNS, MOST_TURNS, "turns")?;
        }
        Ok(())
    }
}
