//! Who does, acknowledges, waives and seals: every order in which three people, and one who never signed on, can ask.
//!
//! A step's facts do not matter here, only its rank, its waiver, its hazards and its gates; steps that are alike in these
//! are explored once. Three people are enough: every rule is about the person who acts and one other. They are taken up to
//! symmetry, and two hazards stand for any number, because `decide` treats hazards alike.

use super::engine::Engine;
use super::part::alone;
use super::rules::may_waive;
use crate::document::Becomes;
use crate::{
    Condition, Document, Ending, Entered, Event, Fact, Found, Holds, Intent, Kind, Path, Rank, Stage, State, Status,
    Step, Value,
};
use std::collections::{BTreeMap, BTreeSet, HashMap, VecDeque};

/// Something that should not have been possible.
#[derive(Clone, Debug)]
pub struct Wrong {
    /// The step.
    pub at: String,
    /// What is wrong.
    pub says: &'static str,
    /// What was asked for, in order, at this step alone.
    pub asked: Vec<Intent>,
}

const PEOPLE: [&str; 3] = ["A", "B", "C"];
const STRANGER: &str = "X";
const RANKS: [[Rank; 3]; 3] = [
    [Rank::Trainee, Rank::Technician, Rank::Supervisor],
    [Rank::Trainee, Rank::Supervisor, Rank::Supervisor],
    [Rank::Technician, Rank::Technician, Rank::Supervisor],
];

/// What is known apart from the engine: who had a hand in it, and what was acknowledged for this doing.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
struct Witness {
    at_work: BTreeSet<String>,
    acknowledged: BTreeSet<String>,
}

/// States that were reached, and what went wrong, each kind once for each step that it is wrong at.
pub fn explore(document: &Document, engine: Engine) -> (usize, Vec<Wrong>) {
    let mut states = 0;
    let mut wrong = Vec::new();
    let mut alike: BTreeSet<String> = BTreeSet::new();
    let seal = document.steps().find(|(_, step)| step.ending == Some(Ending::Seal)).map(|(_, step)| step);
    for (stage, step) in document.steps() {
        let mut step = step.clone();
        step.hazards.truncate(2);
        let on_demand = stage.path == Path::OnDemand;
        let gates = step.gates.len().min(2);
        let kind = (step.by, step.waive, may_waive(&step), step.hazards.len(), gates, step.ending, on_demand);
        if !alike.insert(format!("{kind:?}")) {
            continue;
        }
        for ranks in RANKS {
            let (reached, found) = explore_step(document, engine, (&step, on_demand), seal, ranks);
            states += reached;
            if let Some(found) = found {
                wrong.push(found);
                break;
            }
        }
    }
    (states, wrong)
}

/// A step that asks for one on demand, each time that it is opened again.
const ASKS: &str = "asks.again";

/// The step alone, followed by the seal. A step on demand is led to by one that needs it and uses it up.
fn two_steps(document: &Document, step: &Step, on_demand: bool, seal: Option<&Step>) -> Document {
    let mut small = alone(document, step, &[]);
    if on_demand {
        let made = Becomes { fact: Fact::RaiseCheck, to: Value::Given };
        for stage in &mut small.stages {
            stage.path = Path::OnDemand;
            stage.steps.iter_mut().for_each(|step| step.sets = vec![made]);
        }
        let asks = Step {
            id: ASKS.into(),
            needs: Condition::Fact(Holds { fact: made.fact, is: vec![made.to] }),
            sets: vec![Becomes { to: Value::None, ..made }],
            ..plain(step)
        };
        small.stages.push(Stage { id: "asks".into(), path: Path::Main, steps: vec![asks] });
    }
    if let Some(seal) = seal.filter(|seal| seal.id != step.id) {
        let last = alone(document, seal, &[]);
        small.stages.extend(last.stages.into_iter().map(|stage| Stage { id: format!("{}-last", stage.id), ..stage }));
    }
    small
}

/// A step that anybody may do at once.
fn plain(step: &Step) -> Step {
    Step {
        by: Rank::Trainee,
        when: Condition::default(),
        hazards: Vec::new(),
        inputs: Vec::new(),
        gates: Vec::new(),
        waive: None,
        changes: Vec::new(),
        rests_on: Vec::new(),
        ending: None,
        ..step.clone()
    }
}

fn explore_step(
    document: &Document,
    engine: Engine,
    (step, on_demand): (&Step, bool),
    seal: Option<&Step>,
    ranks: [Rank; 3],
) -> (usize, Option<Wrong>) {
    let small = two_steps(document, step, on_demand, seal);
    let mut state = State::default();
    for (person, rank) in PEOPLE.iter().zip(ranks) {
        state = (engine.apply)(&small, state, &Event::SignedOn { person: (*person).into(), rank });
    }
    let begin = (state, Witness::default());
    let mut intents = intents(step);
    if on_demand {
        intents.extend(intents_at(ASKS));
    }
    let mut seen = HashMap::from([(begin.clone(), 0usize)]);
    let mut came: Vec<(usize, Option<Intent>)> = vec![(0, None)];
    let mut open = VecDeque::from([(begin, 0usize)]);
    while let Some(((state, witness), at)) = open.pop_front() {
        if matches!(state.status, Status::Sealed | Status::Stopped) {
            continue;
        }
        for (intent, evidence) in &intents {
            let Ok((after, event)) = engine.take(&small, state.clone(), intent, evidence) else { continue };
            let says = witness.objects(step, seal, &state, &event);
            if let Some(says) = says {
                let mut asked = vec![intent.clone()];
                let mut back = at;
                while let (before, Some(intent)) = &came[back] {
                    asked.push(intent.clone());
                    back = *before;
                }
                asked.reverse();
                return (seen.len(), Some(Wrong { at: step.id.clone(), says, asked }));
            }
            let key = (after, witness.clone().saw(&event));
            if !seen.contains_key(&key) {
                seen.insert(key.clone(), came.len());
                came.push((at, Some(intent.clone())));
                open.push_back((key, came.len() - 1));
            }
        }
    }
    (seen.len(), None)
}

fn intents(step: &Step) -> Vec<(Intent, Vec<Found>)> {
    let mut all = Vec::new();
    let id = || step.id.clone();
    for by in PEOPLE.iter().copied().chain([STRANGER]) {
        let by = || by.to_owned();
        for hazard in &step.hazards {
            all.push((Intent::Acknowledge { step: id(), hazard: hazard.clone(), by: by() }, Vec::new()));
        }
        let founds: &[Found] =
            if step.gates.is_empty() { &[Found::Pass] } else { &[Found::Pass, Found::Fail, Found::CannotTell] };
        for found in founds {
            let evidence = vec![*found; step.gates.len()];
            all.push((Intent::Record { step: id(), by: by(), entries: answers(step) }, evidence));
        }
        all.push((Intent::Waive { step: id(), by: by(), reason: "known".into() }, Vec::new()));
        all.push((Intent::Reopen { step: id(), by: by(), reason: "seen wrong".into() }, Vec::new()));
        all.push((Intent::Seal { by: by() }, Vec::new()));
    }
    all
}

/// Doing and opening again of a step without entries.
fn intents_at(step: &str) -> [(Intent, Vec<Found>); 2] {
    let (step, by) = (step.to_owned(), "C".to_owned());
    [
        (Intent::Record { step: step.clone(), by: by.clone(), entries: BTreeMap::new() }, Vec::new()),
        (Intent::Reopen { step, by, reason: "once more".into() }, Vec::new()),
    ]
}

/// True for an event of the step that asks for another.
fn of_asking(event: &Event) -> bool {
    matches!(event, Event::Done { step, .. } | Event::Reopened { step, .. } if step == ASKS)
}

fn answers(step: &Step) -> BTreeMap<String, Entered> {
    let mut entries = BTreeMap::new();
    for input in &step.inputs {
        if !step.asks(input, &entries) {
            continue;
        }
        let text = match &input.kind {
            Kind::Number(number) => number.min.clone(),
            Kind::Check => "yes".to_owned(),
            Kind::Text => "none".to_owned(),
            Kind::Choice(options) => options.first().map(|o| o.id.clone()).unwrap_or_default(),
        };
        entries.extend(input.keys().into_iter().map(|key| (key, Entered { text: text.clone(), unit: None })));
    }
    entries
}

impl Witness {
    fn saw(mut self, event: &Event) -> Witness {
        match event {
            Event::Done { by, .. } if of_asking(event) => drop(self.at_work.insert(by.clone())),
            event if of_asking(event) => {}
            Event::Acknowledged { hazard, by, .. } => {
                self.acknowledged.insert(hazard.clone());
                self.at_work.insert(by.clone());
            }
            Event::Tried { by, .. } => {
                self.at_work.insert(by.clone());
            }
            Event::Done { by, .. } => {
                self.at_work.insert(by.clone());
                self.acknowledged.clear();
            }
            Event::Waived { .. } | Event::Reopened { .. } => self.acknowledged.clear(),
            _ => {}
        }
        self
    }

    /// What is wrong with an event; none when it may be.
    fn objects(&self, step: &Step, seal: Option<&Step>, state: &State, event: &Event) -> Option<&'static str> {
        let rank = |by: &String| state.people().get(by).copied();
        match event {
            event if of_asking(event) => None,
            Event::Acknowledged { by, .. } => {
                (rank(by) < Some(step.by)).then_some("a hazard is acknowledged by somebody who may not do the step")
            }
            Event::Done { by, .. } | Event::Tried { by, .. } => {
                if rank(by) < Some(step.by) {
                    return Some("a step is done by somebody who may not");
                }
                let open = step.hazards.iter().any(|hazard| !self.acknowledged.contains(hazard));
                open.then_some("a step is done with a hazard not acknowledged for this doing")
            }
            Event::Waived { by, .. } => {
                let least = may_waive(step);
                if least.is_none() || rank(by) < least {
                    return Some("a gate is waived by somebody who is not allowed to");
                }
                self.at_work.contains(by).then_some("a gate is waived by somebody at work on that step")
            }
            Event::Reopened { by, .. } => rank(by).is_none().then_some("a step is opened again by nobody"),
            Event::Sealed { by } => {
                let least = seal.map_or(Rank::Supervisor, |seal| seal.by).max(Rank::Supervisor);
                if rank(by) < Some(least) {
                    return Some("the job is sealed by somebody who may not");
                }
                self.at_work.contains(by).then_some("the job is sealed by somebody who worked on it")
            }
            _ => None,
        }
    }
}
