//! Where the car comes to rest once wheels may lift and struts may reach their ends.
//!
//! The cause is brought on slowly, as a hand on a collar does it, from the reading (share 0) to its whole (share 1).
//! With given contacts everything moves in proportion ([`crate::system`]); at the first share at which a contact
//! cannot stay as it is, that one contact changes and the way goes on from there. Each change keeps forces and places
//! continuous, so the end is the rest that the car would really come to. It costs one small solve for each change.

use crate::StaticsError;
use crate::system::{Before, Cause, Contact, End, Motion, Ramp, System};

/// Changes of contact after which the search gives up: a car has 16 contacts, and hardly any changes twice.
const MOST_CHANGES: usize = 200;
/// A force (N) or travel (mm) this far beyond what a contact allows is more than rounding.
pub(crate) const ROUNDING: f64 = 1e-6;

/// A car at rest.
pub(crate) struct Rest {
    /// Load at each pad, N; zero for a wheel off it.
    pub(crate) load_n: [f64; 4],
    /// Rise of the body at each point where a height is measured, mm.
    pub(crate) height_mm: [f64; 4],
    /// Growth of each spring, mm.
    pub(crate) growth_mm: [f64; 4],
    /// Force that each spring gained, N, or would have with its seats holding it.
    pub(crate) spring_n: [f64; 4],
    /// Movements of the body; the fourth is zero for a rigid one.
    pub(crate) movement: [f64; 4],
    /// What each corner stands on.
    pub(crate) contacts: [Contact; 4],
}

/// One contact that can change.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Change {
    Tyre(usize),
    Seat(usize),
    Bump(usize),
    End(usize, Option<End>),
}

/// Brings a cause on from the reading.
///
/// # Errors
/// Fewer wheels would stay on their pads than the body can stand on; a collar that would press its spring solid at
/// the droop limit.
pub(crate) fn come_to_rest(system: &System, before: &[Before; 4], cause: &Cause) -> Result<Rest, StaticsError> {
    let mut contacts = [Contact::ORDINARY; 4];
    let mut share = 0.0;
    let mut last = None;
    // The wheel that the body has just rocked over onto.
    let mut landed = None;
    for _ in 0..MOST_CHANGES {
        let Some(equations) = system.with(&contacts, before) else {
            landed = Some(rock_over(&mut contacts, last)?);
            last = None;
            continue;
        };
        let motion = equations.motion(cause);
        let Some((at, change)) = next_change(&motion, &contacts, before, share) else {
            return Ok(rest(&motion, contacts));
        };
        // It does not carry there either: the car goes on falling.
        if landed.is_some_and(|wheel| change == Change::Tyre(wheel)) && at <= share {
            return Err(StaticsError::TooFewWheels);
        }
        landed = None;
        share = at;
        make(change, &mut contacts)?;
        last = Some(change);
    }
    Err(no_rest())
}

/// The first change from here on, if one is due before the cause is whole.
fn next_change(motion: &Motion, contacts: &[Contact; 4], before: &[Before; 4], from: f64) -> Option<(f64, Change)> {
    let mut first: Option<(f64, Change)> = None;
    for i in 0..4 {
        for (margin, change) in margins(motion, contacts[i], before[i], i) {
            let due = if margin.at(from) < -ROUNDING {
                from
            } else if margin.slope < 0.0 {
                (-margin.start / margin.slope).max(from)
            } else {
                continue;
            };
            // What is reached within rounding of the end stays as it is: there is nothing left to change it.
            if due < 1.0 && margin.at(1.0) < -ROUNDING && first.is_none_or(|(at, _)| due < at) {
                first = Some((due, change));
            }
        }
    }
    first
}

/// How far each contact of a corner is from changing (N or mm, positive while it stays), and what it changes to.
fn margins(motion: &Motion, contact: Contact, before: Before, i: usize) -> Vec<(Ramp, Change)> {
    let signed = |r: Ramp, positive: bool| {
        if positive { r } else { Ramp { start: -r.start, slope: -r.slope } }
    };
    let mut found = vec![(signed(motion.load_n[i], contact.down), Change::Tyre(i))];
    if let Some(load_n) = before.loose_from_n {
        let force = Ramp { start: load_n + motion.spring_n[i].start, ..motion.spring_n[i] };
        found.push((signed(force, contact.seated), Change::Seat(i)));
    }
    let growth = motion.growth_mm[i];
    if let Some((gap_mm, _)) = before.bump {
        let gap = Ramp { start: growth.start + gap_mm, ..growth };
        found.push((signed(gap, !contact.bump), Change::Bump(i)));
    }
    match contact.end {
        None => {
            if let Some(left_mm) = before.droop_mm {
                let left = signed(growth, false);
                found.push((Ramp { start: left.start + left_mm, ..left }, Change::End(i, Some(End::Droop))));
            }
            if let Some(left_mm) = before.coils_mm {
                let left = signed(motion.shortening_mm[i], false);
                found.push((Ramp { start: left.start + left_mm, ..left }, Change::End(i, Some(End::Coils))));
            }
        }
        Some(End::Droop) => {
            found.push((motion.held_n[i], Change::End(i, None)));
            // The coils close at the droop limit: then the collar cannot go on.
            if let Some(left_mm) = before.coils_mm {
                let left = signed(motion.shortening_mm[i], false);
                found.push((Ramp { start: left.start + left_mm, ..left }, Change::End(i, Some(End::Coils))));
            }
        }
        Some(End::Coils) => {
            found.push((signed(motion.held_n[i], false), Change::End(i, None)));
            if let Some(left_mm) = before.droop_mm {
                let left = signed(growth, false);
                found.push((Ramp { start: left.start + left_mm, ..left }, Change::End(i, Some(End::Droop))));
            }
        }
    }
    found
}

fn make(change: Change, contacts: &mut [Contact; 4]) -> Result<(), StaticsError> {
    match change {
        Change::Tyre(i) => contacts[i].down = !contacts[i].down,
        Change::Seat(i) => contacts[i].seated = !contacts[i].seated,
        Change::Bump(i) => contacts[i].bump = !contacts[i].bump,
        Change::End(i, end) => {
            if contacts[i].end.is_some() && end.is_some() {
                return Err(StaticsError::Value {
                    at: format!("to.collar_mm.{}", bayhand_vehicle::Place::ALL[i].code()),
                    value: "higher".to_owned(),
                    must: "no higher than where the coils touch at the droop limit",
                });
            }
            contacts[i].end = end;
        }
    }
    Ok(())
}

/// The body does not stand on what is left. If that comes from one wheel lifting while another hung, the body rocks
/// over the other two and sets that one down; else it falls. Gives the wheel that is set down.
fn rock_over(contacts: &mut [Contact; 4], last: Option<Change>) -> Result<usize, StaticsError> {
    let Some(Change::Tyre(lifted)) = last else { return Err(StaticsError::TooFewWheels) };
    match (0..4).find(|&i| i != lifted && !contacts[i].down) {
        Some(other) => {
            contacts[other].down = true;
            Ok(other)
        }
        None => Err(StaticsError::TooFewWheels),
    }
}

fn rest(motion: &Motion, contacts: [Contact; 4]) -> Rest {
    let whole = |r: &[Ramp; 4]| r.map(|r| r.at(1.0));
    let load_n = whole(&motion.load_n);
    Rest {
        // A load within rounding of nothing is nothing.
        load_n: std::array::from_fn(|i| if contacts[i].down { load_n[i].max(0.0) } else { 0.0 }),
        height_mm: whole(&motion.height_mm),
        growth_mm: whole(&motion.growth_mm),
        spring_n: whole(&motion.spring_n),
        movement: whole(&motion.movement),
        contacts,
    }
}

fn no_rest() -> StaticsError {
    StaticsError::Value {
        at: "to".to_owned(),
        value: "this setting".to_owned(),
        must: "one in which the car comes to rest",
    }
}
