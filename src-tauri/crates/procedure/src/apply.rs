//! `apply`: what an event makes of the state. Total: an event that was once recorded is never refused.

use crate::{Document, Ending, Event, Lapse, Path, Standing, State, Status, document::Kind};
use std::collections::{BTreeMap, BTreeSet};

/// The state after an event.
pub fn apply(document: &Document, mut state: State, event: &Event) -> State {
    match event {
        Event::SignedOn { person, rank } => state.sign_on(person, *rank),
        Event::Acknowledged { step, hazard, by } => {
            let step = state.step_mut(step);
            step.acknowledged.insert(hazard.clone(), by.clone());
            step.workers.insert(by.clone());
        }
        Event::Tried { step, by, entries, found } => {
            let chosen = chosen(document, step, entries);
            state.tried(step, by, found, chosen);
            lapse_after_try(document, &mut state, step);
        }
        Event::Done { step, by, entries, .. } => {
            let chosen = chosen(document, step, entries);
            state.step_mut(step).workers.insert(by.clone());
            done(document, &mut state, step, chosen, None);
        }
        Event::Waived { step, by, .. } => {
            let chosen = state.step(step).chosen;
            done(document, &mut state, step, chosen, Some(by.clone()));
        }
        Event::Reopened { step, .. } => {
            if state.status == Status::Sealed {
                state.status = Status::Working;
                // The car was handed over, and nobody knows who went where in between.
                let changed = lapse(&mut state, document.lapses.iter());
                void(document, &mut state, changed, step);
            }
            void(document, &mut state, BTreeSet::from([step.clone()]), step);
            let reopened = state.step_mut(step);
            reopened.standing = Standing::Open;
            reopened.acknowledged.clear();
        }
        Event::Held { .. } => state.held = true,
        Event::Resumed { .. } => {
            state.held = false;
            // Nobody knows who went where in the break.
            let changed = lapse(&mut state, document.lapses.iter());
            void(document, &mut state, changed, "");
        }
        Event::StopBegun { .. } => state.status = Status::Stopping,
        Event::Sealed { .. } => state.status = Status::Sealed,
    }
    state
}

/// The state that a list of events leads to.
pub fn replay<'e>(document: &Document, events: impl IntoIterator<Item = &'e Event>) -> State {
    events.into_iter().fold(State::default(), |state, event| apply(document, state, event))
}

/// Ids of the options that were chosen.
fn chosen(document: &Document, step: &str, entries: &BTreeMap<String, crate::Entered>) -> Vec<String> {
    let Some((_, step)) = document.step(step) else { return Vec::new() };
    entries
        .iter()
        .filter(|(key, _)| step.input_of(key).is_some_and(|input| matches!(input.kind, Kind::Choice(_))))
        .map(|(_, entered)| entered.text.clone())
        .collect()
}

fn done(document: &Document, state: &mut State, id: &str, chosen: Vec<String>, waived: Option<String>) {
    let Some((stage, step)) = document.step(id) else { return };
    let mut changed = BTreeSet::new();
    for becomes in step.becomes(&chosen) {
        if state.fact(becomes.fact) != becomes.to {
            state.set_fact(becomes.fact, becomes.to);
            changed.insert(becomes.fact.code());
        }
    }
    changed.extend(lapse(state, document.lapses.iter().filter(|l| !l.except.iter().any(|e| e == id))));
    changed.extend(step.topics_changed(&chosen).map(str::to_owned));
    changed.insert(id.to_owned());
    // The closing change is agreed beforehand: what was read before it stays the car as handed over.
    if !step.closing {
        void(document, state, changed, id);
    }
    let on_demand = stage.path == Path::OnDemand;
    let ending = step.ending;
    let entry = state.step_mut(id);
    // A step on demand is done for this time only. Hazards are acknowledged anew at each doing of any step.
    entry.standing = if on_demand { Standing::Open } else { Standing::Done };
    entry.acknowledged.clear();
    entry.found.clear();
    entry.waived = waived;
    entry.chosen = chosen;
    if ending == Some(Ending::Stopped) {
        state.status = Status::Stopped;
    }
}

/// Unsets what was true for the moment only; the facts that changed by it.
fn lapse<'l>(state: &mut State, lapses: impl Iterator<Item = &'l Lapse>) -> BTreeSet<String> {
    let mut changed = BTreeSet::new();
    for lapse in lapses {
        if state.fact(lapse.fact) != lapse.to && lapse.when.met(state) {
            state.set_fact(lapse.fact, lapse.to);
            changed.insert(lapse.fact.code());
        }
    }
    changed
}

/// People were at the car for a try too. Where the try can be waived, what the step itself needs is left, so that it
/// stays the step at hand.
fn lapse_after_try(document: &Document, state: &mut State, id: &str) {
    let Some((_, step)) = document.step(id) else { return };
    let needed = |l: &Lapse| step.waive.is_some() && step.needs.facts().iter().any(|holds| holds.fact == l.fact);
    let changed = lapse(state, document.lapses.iter().filter(|l| !needed(l)));
    void(document, state, changed, id);
}

fn void(document: &Document, state: &mut State, changed: BTreeSet<String>, except: &str) {
    for id in state.would_void(document, &changed) {
        if id != except {
            let step = state.step_mut(&id);
            step.standing = Standing::Void;
            step.acknowledged.clear();
        }
    }
}
