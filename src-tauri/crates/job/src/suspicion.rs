//! Whether the readings of a job fit together, and in words what would explain it when they do not.

use crate::{judge::JudgeError, known::Known, reading::ReadingSet, tell::Tell};
use bayhand_chassis::plausible::{Cause, LikeReading, LikeReadings, Plausibility, Suspicion, Unit, Where, plausible};
use bayhand_chassis::{Confidence, Pads};
use bayhand_procedure::{Fact, Value};
use bayhand_vehicle::{Adjuster, Corners};

/// Most causes that are told: a third is no help to somebody who looks for the first.
const MOST_TOLD: usize = 2;
/// Most readings that are held against each other: the newest.
const MOST_READINGS: usize = 40;
/// A cause less likely than this is not told beside a likelier one.
const LEAST_TOLD: f64 = 0.1;

impl Known<'_> {
    /// Holds readings of like state against each other, each settle for itself, the one at hand last: while collars are
    /// being set with the links off, all since the baseline; else the settles of the set alone. A reading that was let
    /// pass with a reason is a new beginning: what a person decided is not asked again.
    ///
    /// # Errors
    /// What is not known yet; a car that cannot be.
    pub fn fit_together(&self, at_hand: &ReadingSet) -> Result<Plausibility, JudgeError> {
        let per_turn = self.value("intake.adjusters", "steps-per-turn").unwrap_or(1.0);
        let sets =
            if self.bars_are_off() { self.sets_until(at_hand) } else { vec![(Corners::same(0.0), at_hand.clone())] };
        let car = self.car(&at_hand.loads_kg())?;
        let mut rounds: Vec<LikeReading> = Vec::new();
        for (turns, set) in &sets {
            for (settle, reading) in set.readings.iter().enumerate() {
                if reading.let_pass {
                    rounds.clear();
                }
                let turned = if settle == 0 && !rounds.is_empty() { *turns } else { Corners::same(0.0) };
                let (read, added) = (reading.loads_kg(), self.added_by_pads(&car, reading)?);
                rounds.push(LikeReading {
                    turned_steps: turned.map(|turns| turns * per_turn),
                    loads_kg: Corners::from_fn(|p| read.at(p) - added.at(p)),
                    heights_mm: reading.heights_mm,
                });
            }
        }
        rounds.drain(..rounds.len().saturating_sub(MOST_READINGS));
        if let Some(first) = rounds.first_mut() {
            // What was turned before it has nothing to be held against.
            first.turned_steps = Corners::same(0.0);
        }
        let looks = sets.iter().map(|(_, set)| set.looks()).min().unwrap_or(1).max(1);
        let pads = self.instruments(&car)?.pads();
        // The looks at one settle were averaged.
        let pads = Pads { look_kg: pads.look_kg / f64::from(looks).sqrt(), ..pads };
        let adjusters = Corners::from_fn(|p| {
            // Where nothing can be adjusted nothing was turned, and any step will do.
            let step_mm = if self.step_mm(p) > 0.0 { self.step_mm(p) } else { 1.0 };
            Adjuster { step_mm, up_steps: 0, down_steps: 0 }
        });
        let turned: Vec<bool> = rounds.iter().map(|r| r.turned_steps != Corners::same(0.0)).collect();
        let question = LikeReadings { car, confidence: Confidence::default(), adjusters, pads, rounds };
        let mut found = plausible(&question)?;
        // Between two settles nobody was at the collars, so none stands other than it was entered.
        found.causes.retain(|suspicion| {
            let with = suspicion.round.unwrap_or(turned.len().saturating_sub(1));
            suspicion.cause != Cause::CollarOtherThanEntered || turned.get(with).copied().unwrap_or(false)
        });
        Ok(found)
    }

    /// True when no bar couples an axle: its rate is not among what is entered, so what collars do through it is not
    /// known.
    fn bars_are_off(&self) -> bool {
        let off = |fact| matches!(self.log.state.fact(fact), Value::Absent | Value::Released);
        off(Fact::FrontLink) && off(Fact::RearLink)
    }
}

/// What is said of readings that do not fit together: the likeliest causes with their size, and what to look at first.
pub fn causes(found: &Plausibility, tell: &Tell) -> String {
    let likely = found.causes.iter().enumerate().filter(|(rank, cause)| *rank == 0 || cause.p >= LEAST_TOLD);
    let told: Vec<_> = likely.take(MOST_TOLD).map(|(_, cause)| one(cause, tell)).collect();
    if told.is_empty() { tell.text("cause-none", &[]) } else { told.join(" ") }
}

fn one(found: &Suspicion, tell: &Tell) -> String {
    let place = found.place.map(|spot| match spot {
        Where::Fl => "corner-FL",
        Where::Fr => "corner-FR",
        Where::Rl => "corner-RL",
        Where::Rr => "corner-RR",
        Where::Front => "axle-front",
        Where::Rear => "axle-rear",
    });
    let args = [
        ("where", place.map_or_else(String::new, |id| tell.text(id, &[]))),
        ("size", size(found, tell)),
        ("chance", tell.percent(100.0 * found.p, 0)),
    ];
    tell.text(id(found), &args)
}

fn size(found: &Suspicion, tell: &Tell) -> String {
    let size = found.size;
    match found.unit {
        Unit::Kg => tell.signed_kg(size),
        // A kilogram that moves by a metre.
        Unit::KgMm => format!("{:.1} kg m", (size / 1000.0).abs()),
        Unit::Mm => tell.signed_mm(size),
        Unit::Steps => format!("{:+.0}", size),
        Unit::Newton => format!("{size:+.0} N"),
        Unit::Percent => format!("{size:+.0} %"),
        Unit::Factor | Unit::One => String::new(),
    }
}

fn id(found: &Suspicion) -> &'static str {
    match (found.cause, found.unit) {
        (Cause::PadOffset, Unit::Mm) => "cause-pad-height",
        (Cause::PadOffset, _) => "cause-pad-zero",
        (Cause::MassAdded, _) => "cause-mass-added",
        (Cause::MassMoved, _) => "cause-mass-moved",
        (Cause::CollarOtherThanEntered, _) => "cause-collar",
        (Cause::LinkTension, _) => "cause-link",
        (Cause::TyrePressure, _) => "cause-tyre",
        (Cause::Touching, _) => "cause-touching",
        (Cause::WheelOffCentre, _) => "cause-off-centre",
        (Cause::OnBumpStop, _) => "cause-bump-stop",
        (Cause::SidesSwapped, _) => "cause-swapped",
        (Cause::UnitsMixed, _) => "cause-units",
    }
}
