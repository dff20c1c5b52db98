//! A part of a document: what is left of it when some facts are forgotten.
//!
//! Forgetting is one-sided: what a forgotten fact could have forbidden is allowed. So whatever the whole document can do,
//! its part can do too, and a rule that holds over the part holds over the whole.

use crate::{Condition, Document, Fact, Holds, Kind, Lapse, Path, Stage, Step};

/// The condition over the kept facts alone; true wherever a forgotten fact could make it true.
pub fn weakened(condition: &Condition, kept: &[Fact]) -> Condition {
    relaxed(condition, kept, true)
}

/// `true_for_unknown` says what a forgotten fact counts as: under a 'not' the other way round.
fn relaxed(condition: &Condition, kept: &[Fact], true_for_unknown: bool) -> Condition {
    match condition {
        Condition::Fact(Holds { fact, .. }) if !kept.contains(fact) => {
            if true_for_unknown {
                Condition::All(Vec::new())
            } else {
                Condition::Any(Vec::new())
            }
        }
        Condition::Fact(_) => condition.clone(),
        Condition::All(list) => Condition::All(list.iter().map(|c| relaxed(c, kept, true_for_unknown)).collect()),
        Condition::Any(list) => Condition::Any(list.iter().map(|c| relaxed(c, kept, true_for_unknown)).collect()),
        Condition::Not(c) => Condition::Not(Box::new(relaxed(c, kept, !true_for_unknown))),
    }
}

/// The kept facts, with those that decide whether a kept one lapses.
pub fn closed(document: &Document, kept: &[Fact]) -> Vec<Fact> {
    let mut all = kept.to_vec();
    let mut next = 0;
    while let Some(fact) = all.get(next).copied() {
        for lapse in document.lapses.iter().filter(|l| l.fact == fact) {
            for holds in lapse.when.facts() {
                if !all.contains(&holds.fact) {
                    all.push(holds.fact);
                }
            }
        }
        next += 1;
    }
    all
}

/// One step alone, on the main path, over the kept facts: nothing leads to it, so `decide` takes it wherever its kept
/// needs hold. Steps that its gates and the lapses name are left out; the lapses keep what is about this step.
pub fn alone(document: &Document, step: &Step, kept: &[Fact]) -> Document {
    let mut step = step.clone();
    step.when = weakened(&step.when, kept);
    step.needs = weakened(&step.needs, kept);
    step.sets.retain(|b| kept.contains(&b.fact));
    step.changes.clear();
    step.rests_on.clear();
    for input in &mut step.inputs {
        if let Kind::Choice(options) = &mut input.kind {
            for option in options {
                option.sets.retain(|b| kept.contains(&b.fact));
                option.changes.clear();
            }
        }
    }
    let lapses = document.lapses.iter().filter(|l| kept.contains(&l.fact));
    let lapses = lapses.map(|l| Lapse { when: weakened(&l.when, kept), ..l.clone() }).collect();
    let mut hazards = document.hazards.clone();
    hazards.retain(|h| step.hazards.contains(&h.id));
    for hazard in &mut hazards {
        hazard.when = Condition::default();
    }
    let stage = step.id.split('.').next().unwrap_or_default().to_owned();
    Document {
        format: document.format,
        id: document.id.clone(),
        version: document.version.clone(),
        topics: Vec::new(),
        hazards,
        lapses,
        stages: vec![Stage { id: stage, path: Path::Main, steps: vec![step] }],
    }
}
