//! What was wrong at a practice job, when it could have been seen, and what was made of it.
//!
//! The coach sees the record and the hidden truth, and never the name of a fault. It goes through the job entry by entry: at
//! each step that was recorded it asks in what car and bench differed from what the record says, and holds what the bench
//! showed against what it would have shown with one of these differences put right.
//!
//! - [`Wrong`]: one thing that was not as it was taken to be. [`Slip`]: something written down other than it was shown.
//! - [`Score`]: what matters of how the job was done. What could not be seen costs nothing, and luck earns nothing.

mod slip;
mod told;

pub use slip::{LooksLike, Slip};

use crate::{bench::Bench, known::Known, log::Log};
use bayhand_practice::Difference;
use bayhand_procedure::{Event, Standing, Step};
use bayhand_vehicle::{Axle, Place};
use std::collections::BTreeSet;

/// Everything that the coach has to say of a job.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Coached {
    /// What was not as it was taken to be, in the order in which it began to matter.
    pub wrong: Vec<Wrong>,
    /// What was written down other than it was shown.
    pub slips: Vec<Slip>,
    /// How the job was done.
    pub score: Score,
}

/// One thing that was not as it was taken to be.
#[derive(Clone, Debug, PartialEq)]
pub struct Wrong {
    /// What, as it was at first: of one kind, such as the pressure of every tyre.
    pub what: Vec<Difference>,
    /// The first entry that was recorded with it.
    pub from: u64,
    /// The first figure that showed so much of it that it could not be missed.
    pub first: Option<Sighting>,
    /// The figure that showed most of it.
    pub most: Option<Sighting>,
    /// The first try that was held where it showed, or at the reading after it was gone: what was read before then differs.
    pub held: Option<u64>,
    /// The entry with which that was let pass.
    pub let_pass: Option<u64>,
    /// The first entry after it was put right; none: it was there to the end.
    pub ended: Option<u64>,
    /// True once loads were read after it was gone.
    compared: bool,
}

impl Wrong {
    fn new(what: Vec<Difference>, from: u64) -> Wrong {
        let (first, most) = (None, None);
        Wrong { what, from, first, most, held: None, let_pass: None, ended: None, compared: false }
    }
}

/// A figure on the bench that showed it.
#[derive(Clone, Debug, PartialEq)]
pub struct Sighting {
    /// Number of the entry.
    pub number: u64,
    /// Its step.
    pub step: String,
    /// Key of the field, such as `loads.FR`.
    pub key: String,
    /// What was shown, in the field's unit.
    pub shown: f64,
    /// What would have been shown with it put right.
    pub sound: f64,
    /// The difference in units of what a careful person cannot miss.
    pub ratio: f64,
}

/// What matters of how a job was done.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Score {
    /// Gates that were let pass although what they held for was wrong, by entry.
    pub let_pass_wrong: Vec<u64>,
    /// Other gates that were let pass with a reason, by entry.
    pub let_pass: Vec<u64>,
    /// Things that could be seen and were there when the job was sealed.
    pub sealed_in: usize,
    /// Readings that were voided by opening a step again.
    pub voided_readings: usize,
    /// Rounds of turning.
    pub rounds: u32,
    /// From the first entry to the last, min.
    pub minutes: i64,
}

/// Rounds of turning that a careful setter needs at most (the practice cars of the tests need no more).
const ROUNDS: u32 = 3;

impl Score {
    /// Points from 0 to 100, and what each kind of thing took: sealed in, let pass though wrong, let pass, voided readings,
    /// slips, rounds beyond three. Time is told and takes nothing: hurry is no virtue under a car.
    pub fn points(&self, slips: usize) -> (u32, [u32; 6]) {
        let many = |count: usize, each: u32| each.saturating_mul(u32::try_from(count).unwrap_or(u32::MAX));
        let taken = [
            many(self.sealed_in, 25),
            many(self.let_pass_wrong.len(), 15),
            many(self.let_pass.len(), 5),
            many(self.voided_readings, 2),
            many(slips, 5),
            many(self.rounds.saturating_sub(ROUNDS) as usize, 5),
        ];
        (100_u32.saturating_sub(taken.iter().fold(0, |sum, t| sum.saturating_add(*t))), taken)
    }
}

/// Goes through a practice job; none at a real car.
pub fn coach(log: &Log) -> Option<Coached> {
    log.opened.practice.as_ref()?;
    let mut told = Coached::default();
    let mut now = log.at_its_opening();
    for line in &log.lines {
        if let Some((step, entries)) = crate::log::recorded(&line.happened.event)
            && let Some((_, step)) = log.document.step(step)
        {
            let known = Known::of(&now);
            if let Some(bench) = Bench::of(&known) {
                let tried = matches!(line.happened.event, Event::Tried { .. });
                look(&mut told.wrong, &bench, step, line.number, tried);
                told.slips.extend(slip::slips(&bench, step, line.number, entries, line.happened.seen.as_ref()));
            }
        }
        match &line.happened.event {
            Event::Waived { .. } => {
                let wrong = let_pass(&mut told.wrong, line.number);
                let list = if wrong { &mut told.score.let_pass_wrong } else { &mut told.score.let_pass };
                list.push(line.number);
            }
            Event::Reopened { step, .. } => {
                let voided = now.state.would_void(&log.document, &BTreeSet::from([step.clone()]));
                let stood = |step: &&String| now.state.standing(step) == Standing::Done;
                told.score.voided_readings += voided.iter().filter(stood).filter(|step| reads(log, step)).count();
            }
            _ => {}
        }
        now.push(line.clone(), String::new());
    }
    // What went again before anything that feels it was read did not matter.
    told.wrong.retain(|wrong| wrong.ended.is_none() || wrong.most.is_some());
    let known = Known::of(log);
    let sealed = log.lines.iter().any(|line| matches!(line.happened.event, Event::Sealed { .. }));
    told.score.sealed_in = told.wrong.iter().filter(|w| sealed && w.ended.is_none() && w.first.is_some()).count();
    told.score.rounds = known.rounds();
    told.score.minutes = (log.at() - log.opened_at).num_minutes();
    Some(told)
}

/// The least share of what cannot be missed that a gate is taken to have held for: gates resolve more than eyes.
const GATES_RESOLVE: f64 = 0.3;

/// What differs at this step, and on what it shows.
fn look(wrong: &mut Vec<Wrong>, bench: &Bench, step: &Step, number: u64, tried: bool) {
    let mut groups: Vec<Vec<Difference>> = Vec::new();
    for difference in bench.differences() {
        match groups.iter_mut().find(|group| alike(group, &[difference])) {
            Some(group) => group.push(difference),
            None => groups.push(vec![difference]),
        }
    }
    let reads = step.inputs.iter().any(|input| input.id == "loads");
    for entry in wrong.iter_mut() {
        let there = groups.iter().any(|group| alike(group, &entry.what));
        if entry.ended.is_none() && !there {
            entry.ended = Some(number);
        }
        if entry.ended.is_some() && !entry.compared && reads {
            entry.compared = true;
            if tried && entry.most.is_some() {
                entry.held = entry.held.or(Some(number));
            }
        }
    }
    for group in groups {
        let place = wrong.iter().position(|w| w.ended.is_none() && alike(&w.what, &group)).unwrap_or_else(|| {
            wrong.push(Wrong::new(group.clone(), number));
            wrong.len() - 1
        });
        let Some(found) = told::most_told(bench, &group, step, number) else { continue };
        let entry = &mut wrong[place];
        if tried && found.ratio >= GATES_RESOLVE {
            entry.held = entry.held.or(Some(number));
        }
        if found.ratio >= 1.0 && entry.first.is_none() {
            entry.first = Some(found.clone());
        }
        if entry.most.as_ref().is_none_or(|most| found.ratio > most.ratio) {
            entry.most = Some(found);
        }
    }
}

/// A gate was let pass; true when it held for something that was wrong.
fn let_pass(wrong: &mut [Wrong], number: u64) -> bool {
    let mut any = false;
    for open in wrong.iter_mut().filter(|w| w.ended.is_none() && w.held.is_some() && w.let_pass.is_none()) {
        open.let_pass = Some(number);
        any = true;
    }
    any
}

/// True for a step at which loads are read.
fn reads(log: &Log, step: &str) -> bool {
    log.document.step(step).is_some_and(|(_, step)| step.inputs.iter().any(|input| input.id == "loads"))
}

/// True when two groups are of one kind, wherever and however much.
fn alike(one: &[Difference], other: &[Difference]) -> bool {
    one.first().map(std::mem::discriminant) == other.first().map(std::mem::discriminant)
}

/// Where it is: a corner, or an axle.
pub fn spot(difference: &Difference) -> (Option<Place>, Option<Axle>) {
    match *difference {
        Difference::Collar { place, .. }
        | Difference::Pressure { place, .. }
        | Difference::PadHeight { place, .. }
        | Difference::PadZero { place, .. }
        | Difference::PadGain { place, .. }
        | Difference::Held { place, .. }
        | Difference::BumpTravel { place, .. }
        | Difference::Rim { place, .. }
        | Difference::Arm { place, .. }
        | Difference::Friction { place, .. } => (Some(place), None),
        Difference::LinkLeftOn { axle } | Difference::LinkTurned { axle, .. } => (None, Some(axle)),
        Difference::Ballast { .. }
        | Difference::BallastMoved { .. }
        | Difference::Steering { .. }
        | Difference::Unit { .. } => (None, None),
    }
}
