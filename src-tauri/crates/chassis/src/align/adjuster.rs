//! What to turn, shim or shift for a wanted change of an angle.

use crate::StaticsError;
use crate::error::within;

/// Where a tie rod or toe link runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RodPlace {
    /// In front of the axle.
    Ahead,
    /// Behind the axle.
    Behind,
}

impl RodPlace {
    /// True when a longer rod gives toe-in: behind the axle it pushes the rear of the wheel out.
    pub fn longer_is_toe_in(self) -> bool {
        self == RodPlace::Behind
    }
}

/// Turns of a tie rod for a change of its wheel's toe, positive for toe-in: the end of the steering arm moves along
/// the rod by `arm sin(change)`, and a turn moves it by a pitch, or by two where the rod has opposite threads.
///
/// # Errors
/// A change beyond 15 degrees, an arm outside 20 to 500 mm, a pitch outside 0.2 to 6 mm.
pub fn tie_rod_turns(
    toe_change_deg: f64,
    arm_mm: f64,
    pitch_mm: f64,
    opposite_threads: bool,
) -> Result<f64, StaticsError> {
    within("toe_change_deg", toe_change_deg, -15.0, 15.0, "from -15 to 15 degrees")?;
    within("arm_mm", arm_mm, 20.0, 500.0, "from 20 to 500 mm")?;
    within("pitch_mm", pitch_mm, 0.2, 6.0, "from 0.2 to 6 mm")?;
    Ok(arm_mm * toe_change_deg.to_radians().sin() / per_turn_mm(pitch_mm, opposite_threads))
}

/// Length that one turn makes, mm (ISO 724: a thread moves by its pitch).
fn per_turn_mm(pitch_mm: f64, opposite_threads: bool) -> f64 {
    if opposite_threads { 2.0 * pitch_mm } else { pitch_mm }
}

/// Something that moves a pivot, and with it an angle of the wheel. The lever is the distance (mm) from that pivot to
/// the one that stays, square to the movement; positive movement raises the angle that is adjusted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Adjuster {
    /// A tie rod or toe link; amounts are turns.
    TieRod {
        /// Steering arm, mm.
        lever_mm: f64,
        /// Pitch of the thread, mm.
        pitch_mm: f64,
        /// Both ends in opposite threads: a turn counts twice.
        opposite_threads: bool,
        /// Smallest part of a turn that can be set: a sixth for a hexagon.
        step_turns: f64,
    },
    /// An arm of adjustable length; amounts are turns. A forked end can only be set by half turns.
    ThreadedArm {
        /// Lever, mm.
        lever_mm: f64,
        /// Pitch of the thread, mm.
        pitch_mm: f64,
        /// Both ends in opposite threads.
        opposite_threads: bool,
        /// Smallest part of a turn that can be set.
        step_turns: f64,
    },
    /// Shims under one of two bolts; amounts are shims.
    Shims {
        /// Distance between the bolts, mm.
        lever_mm: f64,
        /// Thickness of a shim, mm.
        thickness_mm: f64,
        /// Shims that are in.
        now: u32,
        /// Most shims that the bolt takes.
        most: u32,
    },
    /// A slotted mount; amounts are mm.
    Slot {
        /// Lever, mm.
        lever_mm: f64,
        /// Where it stands, mm from the slot's middle.
        at_mm: f64,
        /// Half the length of the slot's travel, mm.
        half_travel_mm: f64,
        /// Smallest shift that can be set, mm.
        step_mm: f64,
    },
    /// An eccentric bolt or cam; amounts are degrees of its turn.
    Eccentric {
        /// Lever, mm.
        lever_mm: f64,
        /// Eccentricity: from the bolt's axis to the middle of the cam, mm.
        throw_mm: f64,
        /// Where it stands, degrees from the middle of its travel, -90 to 90.
        at_deg: f64,
        /// Smallest turn that can be set, degrees.
        step_deg: f64,
    },
}

/// What the amount of a setting counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Turns.
    Turns,
    /// Shims; negative: to be taken out.
    Shims,
    /// Millimetres along a slot.
    Millimetres,
    /// Degrees of an eccentric.
    Degrees,
}

/// What to do for a wanted change.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setting {
    /// What the amounts count.
    pub unit: Unit,
    /// How much exactly, as far as the adjuster goes.
    pub exact: f64,
    /// How much in whole steps: the nearest that can be set.
    pub settable: f64,
    /// Wanted change less the change that `settable` makes, degrees.
    pub leaves_deg: f64,
    /// True when the adjuster ends before the wanted change is reached.
    pub ends: bool,
}

impl Adjuster {
    /// What to do for a change of the angle.
    ///
    /// # Errors
    /// A change beyond 15 degrees, an adjuster that cannot be.
    pub fn setting(&self, change_deg: f64) -> Result<Setting, StaticsError> {
        within("change_deg", change_deg, -15.0, 15.0, "from -15 to 15 degrees")?;
        self.validate()?;
        let Span { unit, step, least, most } = self.span();
        let wanted = self.amount_for(change_deg);
        // A cam that would have to move its pivot by more than its throw has no such position: it ends.
        let exact = wanted.clamp(least, most);
        // The ends themselves can be set, whole step or not.
        let settable = ((exact / step).round() * step).clamp(least, most);
        Ok(Setting {
            unit,
            exact,
            settable,
            leaves_deg: change_deg - self.change_deg(settable),
            ends: wanted < least || wanted > most,
        })
    }

    /// Change of the angle (degrees) that an amount makes from where the adjuster stands.
    pub fn change_deg(&self, amount: f64) -> f64 {
        let lever_mm = self.lever_mm();
        match self {
            // The arm's end goes along a circle, the rod's pull along its tangent.
            Adjuster::TieRod { pitch_mm, opposite_threads, .. } => {
                (amount * per_turn_mm(*pitch_mm, *opposite_threads) / lever_mm).clamp(-1.0, 1.0).asin().to_degrees()
            }
            Adjuster::ThreadedArm { pitch_mm, opposite_threads, .. } => {
                (amount * per_turn_mm(*pitch_mm, *opposite_threads) / lever_mm).atan().to_degrees()
            }
            Adjuster::Shims { thickness_mm, .. } => (amount * thickness_mm / lever_mm).atan().to_degrees(),
            Adjuster::Slot { .. } => (amount / lever_mm).atan().to_degrees(),
            Adjuster::Eccentric { throw_mm, at_deg, .. } => {
                let moved = (at_deg + amount).to_radians().sin() - at_deg.to_radians().sin();
                (throw_mm * moved / lever_mm).atan().to_degrees()
            }
        }
    }

    /// The amount that makes a change, not minding where the adjuster ends; infinite beyond the throw of a cam.
    fn amount_for(&self, change_deg: f64) -> f64 {
        let change = change_deg.to_radians();
        let lever_mm = self.lever_mm();
        match self {
            Adjuster::TieRod { pitch_mm, opposite_threads, .. } => {
                lever_mm * change.sin() / per_turn_mm(*pitch_mm, *opposite_threads)
            }
            Adjuster::ThreadedArm { pitch_mm, opposite_threads, .. } => {
                lever_mm * change.tan() / per_turn_mm(*pitch_mm, *opposite_threads)
            }
            Adjuster::Shims { thickness_mm, .. } => lever_mm * change.tan() / thickness_mm,
            Adjuster::Slot { .. } => lever_mm * change.tan(),
            Adjuster::Eccentric { throw_mm, at_deg, .. } => {
                let sine = at_deg.to_radians().sin() + lever_mm * change.tan() / throw_mm;
                if sine.abs() <= 1.0 { sine.asin().to_degrees() - at_deg } else { sine.signum() * f64::INFINITY }
            }
        }
    }

    fn lever_mm(&self) -> f64 {
        match self {
            Adjuster::TieRod { lever_mm, .. }
            | Adjuster::ThreadedArm { lever_mm, .. }
            | Adjuster::Shims { lever_mm, .. }
            | Adjuster::Slot { lever_mm, .. }
            | Adjuster::Eccentric { lever_mm, .. } => *lever_mm,
        }
    }

    fn span(&self) -> Span {
        match self {
            Adjuster::TieRod { step_turns, .. } | Adjuster::ThreadedArm { step_turns, .. } => {
                Span { unit: Unit::Turns, step: *step_turns, least: f64::NEG_INFINITY, most: f64::INFINITY }
            }
            Adjuster::Shims { now, most, .. } => {
                let (now, most) = (f64::from(*now), f64::from(*most));
                Span { unit: Unit::Shims, step: 1.0, least: -now, most: most - now }
            }
            Adjuster::Slot { at_mm, half_travel_mm, step_mm, .. } => Span {
                unit: Unit::Millimetres,
                step: *step_mm,
                least: -half_travel_mm - at_mm,
                most: half_travel_mm - at_mm,
            },
            Adjuster::Eccentric { at_deg, step_deg, .. } => {
                Span { unit: Unit::Degrees, step: *step_deg, least: -90.0 - at_deg, most: 90.0 - at_deg }
            }
        }
    }

    fn validate(&self) -> Result<(), StaticsError> {
        within("lever_mm", self.lever_mm(), 20.0, 2_000.0, "from 20 to 2000 mm")?;
        match self {
            Adjuster::TieRod { pitch_mm, step_turns, .. } | Adjuster::ThreadedArm { pitch_mm, step_turns, .. } => {
                within("pitch_mm", *pitch_mm, 0.2, 6.0, "from 0.2 to 6 mm")?;
                within("step_turns", *step_turns, 0.001, 1.0, "from 0.001 to 1 turn")
            }
            Adjuster::Shims { thickness_mm, now, most, .. } => {
                within("thickness_mm", *thickness_mm, 0.05, 20.0, "from 0.05 to 20 mm")?;
                within("most", f64::from(*most), f64::from(*now), 1_000.0, "at least as many as are in")
            }
            Adjuster::Slot { at_mm, half_travel_mm, step_mm, .. } => {
                within("half_travel_mm", *half_travel_mm, 0.1, 100.0, "from 0.1 to 100 mm")?;
                within("at_mm", *at_mm, -half_travel_mm, *half_travel_mm, "inside the slot")?;
                within("step_mm", *step_mm, 0.001, *half_travel_mm, "from 0.001 mm to half the travel")
            }
            Adjuster::Eccentric { throw_mm, at_deg, step_deg, .. } => {
                within("throw_mm", *throw_mm, 0.1, 50.0, "from 0.1 to 50 mm")?;
                within("at_deg", *at_deg, -90.0, 90.0, "from -90 to 90 degrees")?;
                within("step_deg", *step_deg, 0.01, 90.0, "from 0.01 to 90 degrees")
            }
        }
    }
}

/// What can be set, counted from where the adjuster stands.
struct Span {
    unit: Unit,
    step: f64,
    least: f64,
    most: f64,
}
