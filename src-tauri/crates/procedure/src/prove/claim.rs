//! Whether a result still says how the car stands when it is used: on the sheet, in a comparison, in a judgement.
//!
//! One claim is explored at a time: this result, used at that step, after this kind of change. Kept are the standings of
//! the steps on the way of the voiding from the change to the result, and the facts that it goes by. Every other step
//! counts as not done, which voids least and hinders nobody; so what holds here holds in every job. The voiding is the
//! engine's own `apply` over the whole document.

use super::deeds::{Deed, Deeds, as_left, of_option, of_step};
use super::engine::Engine;
use super::part::{closed, weakened};
use super::rules::Property;
use super::theme::Move;
use crate::{
    Condition, Document, Ending, Entered, Event, Fact, Found, Gate, Kind, Path, Standing, State, Step, Value, to_do,
};
use std::collections::{BTreeMap, BTreeSet, HashMap};

/// A kind of change, and the deeds that make it.
#[derive(Clone, Copy)]
pub struct Cause {
    /// What is said of it.
    pub says: &'static str,
    made_by: fn(Deeds) -> bool,
    /// It ends the balancing: only what is taken for the sheet must not outlive it. A reading of the balance names its
    /// configuration, links off and bushes slack, and stays true of that.
    ends_balancing: bool,
}

const fn cause(says: &'static str, made_by: fn(Deeds) -> bool) -> Cause {
    Cause { says, made_by, ends_balancing: false }
}

const fn ending(says: &'static str, made_by: fn(Deeds) -> bool) -> Cause {
    Cause { says, made_by, ends_balancing: true }
}

const CAUSES: &[Cause] = &[
    cause("a collar was turned", |d| d.has(Deed::Collar)),
    ending("an angle was changed", |d| d.has(Deed::Angles)),
    cause("the front link was released", |d| d.has(Deed::FrontUndone)),
    cause("the rear link was released", |d| d.has(Deed::RearUndone)),
    cause("bushes were slackened", |d| d.has(Deed::BushesSlack)),
    cause("a pad was moved, shimmed or levelled", |d| d.any(&[Deed::PadsPlaced, Deed::Shimmed, Deed::PadsLevel])),
    cause("the fuel was changed", |d| d.has(Deed::FuelAgreed) && !d.has(Deed::OnDemand)),
    cause("kit was moved", |d| d.has(Deed::KitOut)),
    cause("ballast was changed", |d| d.has(Deed::BallastIn) && !d.has(Deed::SameAgain)),
    cause("the working pressures were changed", |d| d.has(Deed::PressureWorking) && !d.has(Deed::OnDemand)),
    ending("the front link was put on", |d| d.has(Deed::FrontBolt)),
    ending("the rear link was put on", |d| d.has(Deed::RearBolt)),
    ending("bushes were tightened", |d| d.has(Deed::BushesSet)),
    ending("the car was driven", |d| d.has(Deed::Driven)),
];

const ANGLES: Cause = cause("an angle was changed", |d| d.has(Deed::Angles));
const TIGHTENED: Cause = cause("they were tightened again", |d| d.has(Deed::FastenersTight));

/// One claim: a result is used at a step.
pub struct Claim<'d> {
    /// The property that it is part of.
    pub property: Property,
    /// The result.
    pub result: &'d str,
    /// The step at which it is used.
    pub used: &'d str,
    /// The change that it must not outlive.
    pub cause: Cause,
}

/// A claim that does not hold.
#[derive(Clone, Debug)]
pub struct Stale {
    /// A shortest way, over what is kept.
    pub trace: Vec<Move>,
}

/// Every claim of a document.
pub fn claims(document: &Document) -> Vec<Claim<'_>> {
    let mut all = Vec::new();
    let ids = |told: &dyn Fn(Deeds) -> bool| -> Vec<&str> {
        let told = document.steps().filter(|(_, step)| told(of_step(document, step, true)));
        told.map(|(_, step)| step.id.as_str()).collect()
    };
    let seal = document.steps().find(|(_, step)| step.ending == Some(Ending::Seal)).map(|(_, step)| step.id.as_str());
    if let Some(used) = seal {
        for result in as_left(document) {
            all.extend(CAUSES.iter().map(|c| Claim { property: Property::TrueFigures, result, used, cause: *c }));
        }
        for result in ids(&|d| d.has(Deed::FastenersTight)) {
            all.push(Claim { property: Property::WholeCar, result, used, cause: ANGLES });
        }
        for result in ids(&|d| d.has(Deed::FastenersChecked)) {
            all.push(Claim { property: Property::WholeCar, result, used, cause: ANGLES });
            all.push(Claim { property: Property::WholeCar, result, used, cause: TIGHTENED });
        }
    }
    for (_, step) in document.steps() {
        let since = step.gates.iter().find_map(|gate| match gate {
            Gate::Unchanged { since } => Some(since.as_str()),
            _ => None,
        });
        let compares = step.gates.iter().any(|g| matches!(g, Gate::SettlesAgree { .. } | Gate::Windows));
        let loads = |id: &&String| document.step(id).is_some_and(|(_, s)| of_step(document, s, true).has(Deed::Loads));
        let partners = step.rests_on.iter().filter(|_| compares).filter(loads).map(String::as_str);
        let sheet = as_left(document);
        for result in partners.chain(since) {
            let causes = CAUSES.iter().filter(|c| !c.ends_balancing || sheet.contains(&result));
            all.extend(causes.map(|c| Claim { property: Property::TrueFigures, result, used: &step.id, cause: *c }));
        }
    }
    all
}

/// What is kept while a claim is explored.
struct Kept<'d> {
    steps: Vec<&'d Step>,
    facts: Vec<Fact>,
}

fn caused(document: &Document, step: &Step, cause: &Cause) -> bool {
    let options = step.options().fold(Deeds::default(), |deeds, option| deeds.and(of_option(option)));
    (cause.made_by)(of_step(document, step, true).and(options))
}

/// The steps and facts on the way of the voiding from a cause to a result.
fn kept<'d>(document: &'d Document, claim: &Claim) -> Kept<'d> {
    let mut reached: BTreeSet<String> = BTreeSet::new();
    for (_, step) in document.steps().filter(|(_, step)| caused(document, step, &claim.cause)) {
        reached.insert(step.id.clone());
        reached.extend(step.changes.iter().chain(step.options().flat_map(|o| o.changes.iter())).cloned());
        let sets = step.sets.iter().chain(step.options().flat_map(|o| o.sets.iter()));
        reached.extend(sets.map(|b| b.fact.code()));
    }
    loop {
        let next: Vec<String> = document
            .steps()
            .filter(|(_, s)| !reached.contains(&s.id) && s.rests_on.iter().any(|node| reached.contains(node)))
            .map(|(_, s)| s.id.clone())
            .collect();
        if next.is_empty() {
            break;
        }
        reached.extend(next);
    }
    let mut above: BTreeSet<&str> = BTreeSet::from([claim.result]);
    loop {
        let next: Vec<&str> = document
            .steps()
            .filter(|(_, s)| above.contains(s.id.as_str()))
            .flat_map(|(_, s)| s.rests_on.iter().map(String::as_str))
            .filter(|node| !above.contains(node))
            .collect();
        if next.is_empty() {
            break;
        }
        above.extend(next);
    }
    let on_the_way = |id: &str| id == claim.result || (reached.contains(id) && above.contains(id));
    let steps: Vec<&Step> = document
        .steps()
        .filter(|(stage, step)| stage.path == Path::Main && on_the_way(&step.id))
        .map(|(_, step)| step)
        .collect();
    let mut facts: Vec<Fact> = Fact::ALL
        .iter()
        .copied()
        .filter(|fact| {
            let code = fact.code();
            let rested = above.contains(code.as_str()) && reached.contains(&code);
            rested || steps.iter().any(|s| s.when.facts().iter().any(|holds| holds.fact == *fact))
        })
        .collect();
    facts = closed(document, &facts);
    Kept { steps, facts }
}

type Key = (Vec<Value>, Vec<Standing>, bool);

/// How many states were reached, and a way on which the claim fails, if there is one.
pub fn explore(document: &Document, engine: Engine, claim: &Claim) -> (usize, Option<Stale>) {
    let Some((_, result)) = document.step(claim.result) else { return (0, None) };
    let Some((_, used)) = document.step(claim.used) else { return (0, None) };
    let kept = kept(document, claim);
    let before: Vec<&Step> = document.steps().map(|(_, s)| s).take_while(|s| s.id != used.id).collect();
    let blocking: Vec<&Step> = kept.steps.iter().copied().filter(|s| before.iter().any(|b| b.id == s.id)).collect();
    let may_use = Condition::All(vec![weakened(&used.when, &kept.facts), weakened(&used.needs, &kept.facts)]);
    let takes = takes(document, claim, &kept);
    let document = &only(document, &kept, &takes);
    let begin: Key =
        (kept.facts.iter().map(|f| f.values()[0]).collect(), vec![Standing::Open; kept.steps.len()], false);
    let mut seen: HashMap<Key, usize> = HashMap::from([(begin.clone(), 0)]);
    let mut states = vec![begin];
    let mut came: Vec<(usize, Move)> = vec![(0, Move::Resumed)];
    let mut at = 0;
    while at < states.len() {
        let key = states[at].clone();
        let state = state_of(&kept, &key);
        let holds = state.standing(&result.id) == Standing::Done && !key.2;
        let at_hand = may_use.met(&state) && !blocking.iter().any(|s| to_do(&state, s));
        if at_hand && result.when.met(&state) && !holds {
            let mut trace = Vec::new();
            while at != 0 {
                trace.push(came[at].1.clone());
                at = came[at].0;
            }
            trace.reverse();
            return (states.len(), Some(Stale { trace }));
        }
        let mut next = |after: State, stale: bool, by: &dyn Fn() -> Move| {
            let key = key_of(&kept, &result.id, &after, stale);
            if !seen.contains_key(&key) {
                seen.insert(key.clone(), states.len());
                states.push(key);
                came.push((at, by()));
            }
        };
        for take in &takes {
            if !take.may.met(&state) {
                continue;
            }
            let after = (engine.apply)(document, state.clone(), &take.event);
            let stale = if take.changes { true } else { key.2 && take.step != result.id };
            next(after, stale, &|| Move::Done { step: take.step.clone(), options: take.options.clone() });
        }
        for step in kept.steps.iter().filter(|s| state.standing(&s.id) == Standing::Done) {
            let event = Event::Reopened {
                step: step.id.clone(),
                by: "A".into(),
                reason: "seen wrong".into(),
                voided: Vec::new(),
            };
            let after = (engine.apply)(document, state.clone(), &event);
            next(after, key.2, &|| Move::Reopened { step: step.id.clone() });
        }
        let after = (engine.apply)(document, state.clone(), &Event::Resumed { by: "A".into() });
        next(after, key.2, &|| Move::Resumed);
        at += 1;
    }
    (states.len(), None)
}

/// The document without the steps that are neither kept nor taken: those are never done here, so the voiding passes
/// them by.
fn only(document: &Document, kept: &Kept, takes: &[Take]) -> Document {
    let mut small = document.clone();
    for stage in &mut small.stages {
        stage
            .steps
            .retain(|step| kept.steps.iter().any(|s| s.id == step.id) || takes.iter().any(|take| take.step == step.id));
    }
    small
}

/// A doing of a step that bears on what is kept.
struct Take {
    step: String,
    options: Vec<String>,
    event: Event,
    may: Condition,
    changes: bool,
}

fn takes(document: &Document, claim: &Claim, kept: &Kept) -> Vec<Take> {
    let mut takes = Vec::new();
    for (_, step) in document.steps().filter(|(_, step)| step.ending.is_none()) {
        let own = of_step(document, step, true);
        for (entries, options) in choices(step, kept) {
            let chosen = step.options().filter(|o| options.contains(&o.id));
            let deeds = chosen.fold(own, |deeds, option| deeds.and(of_option(option)));
            let changes = (claim.cause.made_by)(deeds);
            let sets = step.becomes(&options).any(|b| kept.facts.contains(&b.fact));
            let is_kept = kept.steps.iter().any(|s| s.id == step.id);
            if !(changes || sets || is_kept) {
                continue;
            }
            let may = Condition::All(vec![weakened(&step.when, &kept.facts), weakened(&step.needs, &kept.facts)]);
            let found = vec![Found::Pass; step.gates.len()];
            let event = Event::Done { step: step.id.clone(), by: "A".into(), entries, found };
            takes.push(Take { step: step.id.clone(), options, event, may, changes });
        }
    }
    takes
}

/// Every combination of the options that change a topic or a kept fact.
fn choices(step: &Step, kept: &Kept) -> Vec<(BTreeMap<String, Entered>, Vec<String>)> {
    let mut all = vec![(BTreeMap::new(), Vec::new())];
    for input in &step.inputs {
        let Kind::Choice(options) = &input.kind else { continue };
        let matters =
            options.iter().any(|o| !o.changes.is_empty() || o.sets.iter().any(|b| kept.facts.contains(&b.fact)));
        if !matters {
            continue;
        }
        let before = std::mem::take(&mut all);
        for option in options {
            for (entries, chosen) in &before {
                let (mut entries, mut chosen) = (entries.clone(), chosen.clone());
                for key in input.keys() {
                    entries.insert(key, Entered { text: option.id.clone(), unit: None });
                }
                chosen.push(option.id.clone());
                all.push((entries, chosen));
            }
        }
    }
    all
}

fn state_of(kept: &Kept, (values, standings, _): &Key) -> State {
    let mut state = State::default();
    for (fact, value) in kept.facts.iter().zip(values) {
        state.set_fact(*fact, *value);
    }
    for (step, standing) in kept.steps.iter().zip(standings) {
        state.step_mut(&step.id).standing = *standing;
    }
    state
}

fn key_of(kept: &Kept, result: &str, state: &State, stale: bool) -> Key {
    let values = kept.facts.iter().map(|fact| state.fact(*fact)).collect();
    let standing = |step: &&Step| match state.standing(&step.id) {
        // Both are to do, and neither is voided again.
        Standing::Void if !step.once => Standing::Open,
        other => other,
    };
    let standings: Vec<Standing> = kept.steps.iter().map(standing).collect();
    // A result that is to be taken again is new then, whatever changed before.
    let taken = kept.steps.iter().zip(&standings).any(|(s, standing)| s.id == result && *standing != Standing::Open);
    (values, standings, stale && taken)
}

impl Cause {
    /// True when these deeds make the change.
    pub fn made(&self, deeds: Deeds) -> bool {
        (self.made_by)(deeds)
    }
}

impl Claim<'_> {
    /// What is wrong when it does not hold.
    pub fn says(&self) -> String {
        format!("{} is used at {} although {} since, or is void", self.result, self.used, self.cause.says)
    }
}
