//! The engine with one line of `apply` changed: each change is found by the proof of the shipped document.
//!
//! A change is made around the shipped `apply`: it is given another document, event or state, so that it does what it
//! would do without that line. With `BAYHAND_LONG` all are proved, else two of them.

use bayhand_procedure::prove::{Engine, prove_on};
use bayhand_procedure::{Document, Event, SHIPPED, State, apply, decide, load};

type Sabotage = fn(&Document, State, &Event) -> State;

/// Applies over a document that was changed for this kind of event.
fn over(document: &Document, state: State, event: &Event, edit: fn(&mut Document)) -> State {
    let mut other = document.clone();
    edit(&mut other);
    apply(&other, state, event)
}

fn no_lapses(document: &mut Document) {
    document.lapses.clear();
}

fn no_dependencies(document: &mut Document) {
    for step in document.stages.iter_mut().flat_map(|stage| stage.steps.iter_mut()) {
        step.rests_on.clear();
    }
}

fn by_nobody(event: &Event) -> Event {
    let mut event = event.clone();
    match &mut event {
        Event::Acknowledged { by, .. } | Event::Tried { by, .. } | Event::Done { by, .. } => by.clear(),
        _ => {}
    }
    event
}

const SABOTAGES: &[(&str, Sabotage)] = &[
    ("what was true for the moment stays true after a step", |d, s, e| match e {
        Event::Done { .. } => over(d, s, e, no_lapses),
        _ => apply(d, s, e),
    }),
    ("what was true for the moment stays true over a break", |d, s, e| match e {
        Event::Resumed { .. } => over(d, s, e, no_lapses),
        _ => apply(d, s, e),
    }),
    ("what was true for the moment stays true after a try", |d, s, e| match e {
        Event::Tried { .. } => over(d, s, e, no_lapses),
        _ => apply(d, s, e),
    }),
    ("a chosen option sets nothing", |d, s, e| match e {
        Event::Done { .. } => over(d, s, e, |d| {
            for step in d.stages.iter_mut().flat_map(|stage| stage.steps.iter_mut()) {
                step.inputs.clear();
            }
        }),
        _ => apply(d, s, e),
    }),
    ("a waived step sets nothing", |d, s, e| match e {
        Event::Waived { .. } => over(d, s, e, |d| {
            for step in d.stages.iter_mut().flat_map(|stage| stage.steps.iter_mut()) {
                step.sets.clear();
            }
        }),
        _ => apply(d, s, e),
    }),
    ("a step that is done again voids nothing", |d, s, e| match e {
        Event::Done { .. } => over(d, s, e, no_dependencies),
        _ => apply(d, s, e),
    }),
    ("every step is taken for a closing change", |d, s, e| {
        over(d, s, e, |d| d.stages.iter_mut().flat_map(|stage| stage.steps.iter_mut()).for_each(|s| s.closing = true))
    }),
    ("hazards stay acknowledged for the next doing", |d, s, e| {
        let Event::Done { step, .. } = e else { return apply(d, s, e) };
        let acknowledged = s.step(step).acknowledged;
        acknowledged.into_iter().fold(apply(d, s, e), |state, (hazard, by)| {
            apply(d, state, &Event::Acknowledged { step: step.clone(), hazard, by })
        })
    }),
    ("whoever tried a step is not at work on it", |d, s, e| match e {
        Event::Tried { .. } => apply(d, s, &by_nobody(e)),
        _ => apply(d, s, e),
    }),
    ("whoever acknowledged is not at work on it", |d, s, e| match e {
        Event::Acknowledged { .. } => apply(d, s, &by_nobody(e)),
        _ => apply(d, s, e),
    }),
    ("whoever did a step did not work on the job", |d, s, e| match e {
        Event::Done { .. } | Event::Acknowledged { .. } => apply(d, s, &by_nobody(e)),
        _ => apply(d, s, e),
    }),
    ("a lapse takes back what its own step made so", |d, s, e| {
        over(d, s, e, |d| d.lapses.iter_mut().for_each(|l| l.except.clear()))
    }),
    ("a job that is begun to be stopped goes on", |d, s, e| match e {
        Event::StopBegun { .. } => s,
        _ => apply(d, s, e),
    }),
    ("a failed try counts as done", |d, s, e| match e {
        Event::Tried { step, by, entries, found } => {
            let (step, by, entries, found) = (step.clone(), by.clone(), entries.clone(), found.clone());
            apply(d, s, &Event::Done { step, by, entries, found })
        }
        _ => apply(d, s, e),
    }),
];

/// Proves on the engines of one third.
fn found(third: usize) {
    let document = load(SHIPPED).expect("the shipped document has no fault");
    let long = std::env::var_os("BAYHAND_LONG").is_some();
    let of_third = SABOTAGES.iter().enumerate().filter(|(index, _)| index % 3 == third);
    for (_, (name, sabotage)) in of_third.filter(|(index, _)| long || [0, 4].contains(index)) {
        let engine = Engine { decide: &decide, apply: sabotage };
        let proof = prove_on(&document, engine);
        let first = proof.broken.first().map(|b| format!("{:?}, {} at {}", b.property, b.says, b.at));
        println!("SABOTAGE | {name} | {} | {} faults", first.as_deref().unwrap_or("-"), proof.faults.len());
        assert!(!proof.holds(), "{name}: nothing found it");
    }
}

#[test]
fn a_changed_line_of_apply_is_found_0() {
    found(0);
}

#[test]
fn a_changed_line_of_apply_is_found_1() {
    found(1);
}

#[test]
fn a_changed_line_of_apply_is_found_2() {
    found(2);
}
