//! `decide`: from the state, an intent and the evidence, the event that follows, or a refusal.

use crate::{
    Ending, Entered, Event, Evidence, Found, Input, Intent, Kind, Next, Rank, Refusal, Standing, State, Status, Step,
    document::Document, next::next,
};
use std::collections::{BTreeMap, BTreeSet};

/// What follows from an intent. Pure: the same arguments always give the same answer.
///
/// # Errors
/// A refusal; nothing has happened then.
pub fn decide(document: &Document, state: &State, intent: &Intent, evidence: &Evidence) -> Result<Event, Refusal> {
    match (state.status, intent) {
        // A sealed job can be opened again, which makes its seal void.
        (Status::Sealed, Intent::Reopen { .. }) => {}
        (Status::Sealed | Status::Stopped, _) => return Err(Refusal::Ended),
        _ => {}
    }
    match intent {
        Intent::SignOn { person, rank } => sign_on(state, person, *rank),
        Intent::Resume { by } => {
            signed_on(state, by)?;
            if state.held { Ok(Event::Resumed { by: by.clone() }) } else { Err(Refusal::NotOnHold) }
        }
        _ if state.held => Err(Refusal::OnHold),
        Intent::Hold { by, reason } => {
            signed_on(state, by)?;
            Ok(Event::Held { by: by.clone(), reason: given(reason)? })
        }
        Intent::Stop { by, reason } => {
            signed_on(state, by)?;
            if state.status == Status::Stopping {
                return Err(Refusal::Stopping);
            }
            Ok(Event::StopBegun { by: by.clone(), reason: given(reason)? })
        }
        Intent::Acknowledge { step, hazard, by } => acknowledge(document, state, step, hazard, by),
        Intent::Record { step, by, entries } => record(document, state, step, by, entries, evidence),
        Intent::Waive { step, by, reason } => waive(document, state, step, by, reason),
        Intent::Reopen { step, by, reason } => reopen(document, state, step, by, reason),
        Intent::Seal { by } => seal(document, state, by),
    }
}

fn sign_on(state: &State, person: &str, rank: Rank) -> Result<Event, Refusal> {
    let letters = person.chars().count();
    if !(1..=4).contains(&letters) || !person.chars().all(char::is_alphabetic) {
        return Err(Refusal::Initials(person.to_owned()));
    }
    if state.people().contains_key(person) {
        return Err(Refusal::AlreadySignedOn(person.to_owned()));
    }
    Ok(Event::SignedOn { person: person.to_owned(), rank })
}

fn signed_on(state: &State, by: &str) -> Result<Rank, Refusal> {
    state.people().get(by).copied().ok_or_else(|| Refusal::NotSignedOn(by.to_owned()))
}

fn given(reason: &str) -> Result<String, Refusal> {
    let reason = reason.trim();
    if reason.is_empty() { Err(Refusal::NoReason) } else { Ok(reason.to_owned()) }
}

/// The step, when it is the one at hand and the person may do it.
fn at_hand<'d>(document: &'d Document, state: &State, id: &str, by: &str) -> Result<&'d Step, Refusal> {
    let (_, step) = document.step(id).ok_or_else(|| Refusal::NoSuchStep(id.to_owned()))?;
    match next(document, state) {
        Next::Step { id: now, .. } if now == id => {}
        Next::Step { id: now, .. } => return Err(Refusal::NotNow { step: id.to_owned(), now }),
        Next::Ended => return Err(Refusal::Ended),
        Next::DeadEnd(refusal) => return Err(refusal),
    }
    let rank = signed_on(state, by)?;
    if rank < step.by {
        return Err(Refusal::Rank { by: by.to_owned(), rank, needed: step.by });
    }
    Ok(step)
}

fn acknowledge(document: &Document, state: &State, id: &str, hazard: &str, by: &str) -> Result<Event, Refusal> {
    let step = at_hand(document, state, id, by)?;
    if !step.hazards.iter().any(|h| h == hazard) {
        return Err(Refusal::NoSuchHazard(hazard.to_owned()));
    }
    if state.step(id).acknowledged.contains_key(hazard) {
        return Err(Refusal::AlreadyAcknowledged(hazard.to_owned()));
    }
    Ok(Event::Acknowledged { step: id.to_owned(), hazard: hazard.to_owned(), by: by.to_owned() })
}

fn record(
    document: &Document,
    state: &State,
    id: &str,
    by: &str,
    entries: &BTreeMap<String, Entered>,
    evidence: &Evidence,
) -> Result<Event, Refusal> {
    let step = at_hand(document, state, id, by)?;
    if step.ending == Some(Ending::Seal) {
        return Err(Refusal::BySealOnly);
    }
    let done = state.step(id);
    if let Some(open) = document.hazards_at(state, step).find(|h| !done.acknowledged.contains_key(&h.id)) {
        return Err(Refusal::HazardOpen(open.id.clone()));
    }
    check_entries(step, entries)?;
    if evidence.len() != step.gates.len() {
        return Err(Refusal::Evidence { given: evidence.len(), needed: step.gates.len() });
    }
    let (step, by, entries, found) = (id.to_owned(), by.to_owned(), entries.clone(), evidence.clone());
    Ok(if found.iter().all(|f| *f == Found::Pass) {
        Event::Done { step, by, entries, found }
    } else {
        Event::Tried { step, by, entries, found }
    })
}

/// Every key that is asked for is there and not blank, nothing else is, and choices and checks are among the options.
/// What only another option would bring is not asked for.
/// What stands in numbers and texts is checked by `job`, through `measure`.
fn check_entries(step: &Step, entries: &BTreeMap<String, Entered>) -> Result<(), Refusal> {
    let asked = |input: &Input| step.asks(input, entries);
    if let Some(key) = entries.keys().find(|key| !step.input_of(key).is_some_and(asked)) {
        return Err(Refusal::NotAsked(key.clone()));
    }
    for input in step.inputs.iter().filter(|input| asked(input)) {
        for key in input.keys() {
            let entered = entries.get(&key).filter(|e| !e.text.trim().is_empty());
            let Some(entered) = entered else { return Err(Refusal::Missing(key)) };
            let known = match &input.kind {
                Kind::Choice(options) => options.iter().any(|o| o.id == entered.text),
                Kind::Check => matches!(entered.text.as_str(), "yes" | "no"),
                Kind::Number(_) | Kind::Text => true,
            };
            if !known {
                return Err(Refusal::NoSuchOption { key, text: entered.text.clone() });
            }
        }
    }
    Ok(())
}

fn waive(document: &Document, state: &State, id: &str, by: &str, reason: &str) -> Result<Event, Refusal> {
    let (_, step) = document.step(id).ok_or_else(|| Refusal::NoSuchStep(id.to_owned()))?;
    let rank = signed_on(state, by)?;
    let tried = state.step(id);
    if tried.standing != Standing::Tried {
        return Err(Refusal::NothingToWaive(id.to_owned()));
    }
    // A try that is no longer the step at hand was overtaken by another change.
    match next(document, state) {
        Next::Step { id: now, .. } if now == id => {}
        Next::Step { id: now, .. } => return Err(Refusal::NotNow { step: id.to_owned(), now }),
        Next::Ended => return Err(Refusal::Ended),
        Next::DeadEnd(refusal) => return Err(refusal),
    }
    let needed = step.waive.ok_or_else(|| Refusal::NotWaivable(id.to_owned()))?;
    if rank < needed {
        return Err(Refusal::Rank { by: by.to_owned(), rank, needed });
    }
    if tried.workers.contains(by) {
        return Err(Refusal::AtWork(by.to_owned()));
    }
    Ok(Event::Waived { step: id.to_owned(), by: by.to_owned(), rank, reason: given(reason)? })
}

fn reopen(document: &Document, state: &State, id: &str, by: &str, reason: &str) -> Result<Event, Refusal> {
    let (_, step) = document.step(id).ok_or_else(|| Refusal::NoSuchStep(id.to_owned()))?;
    let rank = signed_on(state, by)?;
    if state.status == Status::Stopping {
        return Err(Refusal::Stopping);
    }
    let needed = if state.status == Status::Sealed { Rank::Supervisor } else { step.by };
    if rank < needed {
        return Err(Refusal::Rank { by: by.to_owned(), rank, needed });
    }
    if !matches!(state.standing(id), Standing::Done | Standing::Void) {
        return Err(Refusal::NotDone(id.to_owned()));
    }
    let reason = given(reason)?;
    let voided = state.would_void(document, &BTreeSet::from([id.to_owned()]));
    Ok(Event::Reopened { step: id.to_owned(), by: by.to_owned(), reason, voided })
}

fn seal(document: &Document, state: &State, by: &str) -> Result<Event, Refusal> {
    let rank = signed_on(state, by)?;
    if state.status == Status::Stopping {
        return Err(Refusal::Stopping);
    }
    let step = match next(document, state) {
        Next::Step { id, .. } => id,
        Next::Ended => return Err(Refusal::Ended),
        Next::DeadEnd(refusal) => return Err(refusal),
    };
    let ready = document.step(&step).filter(|(_, s)| s.ending == Some(Ending::Seal));
    let Some((_, ready)) = ready else { return Err(Refusal::NotReady(step)) };
    let needed = ready.by.max(Rank::Supervisor);
    if rank < needed {
        return Err(Refusal::Rank { by: by.to_owned(), rank, needed });
    }
    if state.worked(by) {
        return Err(Refusal::Worked(by.to_owned()));
    }
    Ok(Event::Sealed { by: by.to_owned() })
}
