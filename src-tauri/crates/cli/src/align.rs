//! `align`: one question of alignment in each JSON line.

use crate::lines::Wrong;
use bayhand_chassis::StaticsError;
use bayhand_chassis::align::{
    AxleToe, KnownAngle, caster_of_symmetric_sweep_deg, tie_rod_turns, toe_from_edges_deg, toe_minutes,
};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What `align` reads: exactly one of the questions.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AlignLine {
    /// Caster from two gauge readings at equal angles.
    pub sweep: Option<SweepQuestion>,
    /// Toe from two distances to a line parallel to the car.
    pub toe: Option<ToeQuestion>,
    /// Thrust from the toes of the rear wheels.
    pub rear_toe_deg: Option<RearToe>,
    /// Turns of a tie rod for a change of toe.
    pub tie_rod: Option<TieRodQuestion>,
}

/// A symmetric sweep of one wheel.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SweepQuestion {
    /// Change of the wheel's heading either way in the ground plane, as a turn plate shows it, degrees.
    pub angle_deg: f64,
    /// True inclination with the wheel steered to its own side, degrees, positive when the top leans out.
    pub camber_out_deg: f64,
    /// The same, steered to the other side.
    pub camber_in_deg: f64,
    /// Inclination of the steering axis, degrees, positive when it leans in at its top.
    pub inclination_deg: f64,
}

/// Two distances from a line outside the wheel to its rim.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ToeQuestion {
    /// To the rim's front edge, mm; smaller than the other is toe-out.
    pub front_mm: f64,
    /// To the rim's rear edge, mm.
    pub rear_mm: f64,
    /// Between these edges, mm.
    pub between_mm: f64,
}

/// Toes of the rear wheels, degrees; in is positive.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RearToe {
    /// Left.
    pub left: f64,
    /// Right.
    pub right: f64,
}

/// A tie rod.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TieRodQuestion {
    /// Wanted change, degrees; in is positive.
    pub toe_change_deg: f64,
    /// Steering arm, mm.
    pub arm_mm: f64,
    /// Pitch of the thread, mm.
    pub pitch_mm: f64,
    /// Opposite threads at both ends: a turn counts twice.
    pub opposite_threads: bool,
}

/// The answer, to the question that was asked.
#[derive(Debug, Default, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Aligned {
    /// Caster, degrees.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub caster_deg: Option<f64>,
    /// Toe, degrees; in is positive.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub toe_deg: Option<f64>,
    /// The same in minutes of arc.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub toe_min: Option<f64>,
    /// Thrust angle, degrees, positive when the rear wheels point left.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thrust_deg: Option<f64>,
    /// Turns, positive for toe-in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub turns: Option<f64>,
}

/// `align`.
///
/// # Errors
/// No question or more than one; a value that cannot be.
pub fn align(line: &AlignLine) -> Result<Aligned, Wrong> {
    let none = Aligned::default();
    match line {
        AlignLine { sweep: Some(q), toe: None, rear_toe_deg: None, tie_rod: None } => {
            let caster =
                caster_of_symmetric_sweep_deg(q.angle_deg, q.camber_out_deg, q.camber_in_deg, q.inclination_deg);
            Ok(Aligned { caster_deg: Some(caster.map_err(|e| wrong("sweep", &e))?), ..none })
        }
        AlignLine { sweep: None, toe: Some(q), rear_toe_deg: None, tie_rod: None } => {
            let toe_deg = toe_from_edges_deg(q.front_mm, q.rear_mm, q.between_mm).map_err(|e| wrong("toe", &e))?;
            Ok(Aligned { toe_deg: Some(toe_deg), toe_min: Some(toe_minutes(toe_deg)), ..none })
        }
        AlignLine { sweep: None, toe: None, rear_toe_deg: Some(q), tie_rod: None } => {
            let toe = |side, deg: f64| {
                if deg.abs() <= MOST_TOE_DEG {
                    Ok(KnownAngle::exact(deg))
                } else {
                    let says = format!("rear_toe_deg.{side} is {deg}; it must be from -15 to 15 degrees");
                    Err(Wrong { code: "cannot-be", at: format!("rear_toe_deg.{side}"), says })
                }
            };
            let rear = AxleToe { left: toe("left", q.left)?, right: toe("right", q.right)? };
            Ok(Aligned { thrust_deg: Some(rear.heading().deg), ..none })
        }
        AlignLine { sweep: None, toe: None, rear_toe_deg: None, tie_rod: Some(q) } => {
            let turns = tie_rod_turns(q.toe_change_deg, q.arm_mm, q.pitch_mm, q.opposite_threads);
            Ok(Aligned { turns: Some(turns.map_err(|e| wrong("tie_rod", &e))?), ..none })
        }
        _ => Err(Wrong {
            code: "wrong-form",
            at: String::new(),
            says: "a line must hold exactly one of sweep, toe, rear_toe_deg, tie_rod".to_owned(),
        }),
    }
}

/// Most toe of a wheel that stands on a car, degrees.
const MOST_TOE_DEG: f64 = 15.0;

/// What was wrong, with the question as the head of its path.
fn wrong(question: &str, why: &StaticsError) -> Wrong {
    Wrong { code: "cannot-be", at: format!("{question}.{}", why.at()), says: format!("{question}.{why}") }
}
