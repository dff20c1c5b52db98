//! Exploration of one theme: all states of its facts and its part of the bay that the engine can reach, with everything
//! else forgotten.
//!
//! At each state every step whose kept needs hold may be done, by anybody, in any order. `next` only ever offers a step
//! whose needs hold, so this is at least what a job can do; a rule that holds here holds in every job, of every variant,
//! however often steps are opened again. Facts change by the engine's own `decide` and `apply`, over the step alone (see
//! [`super::part`]); the bay follows the events.

use super::bay::{Bay, Name, Part};
use super::deeds::{Deed, Deeds, of_option, of_step};
use super::engine::Engine;
use super::part::{alone, closed};
use super::rules::Theme;
use crate::{Document, Ending, Entered, Event, Fact, Found, Gate, Input, Intent, Kind, Rank, State, Step, Value};
use std::collections::{BTreeMap, HashMap};

/// One move of a job, as a trace shows it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Move {
    /// A step was done.
    Done {
        /// The step.
        step: String,
        /// The options chosen that matter.
        options: Vec<String>,
    },
    /// A step was tried, and a gate did not hold.
    Tried {
        /// The step.
        step: String,
    },
    /// Its gate was waived.
    Waived {
        /// The step.
        step: String,
    },
    /// A step was opened again.
    Reopened {
        /// The step.
        step: String,
    },
    /// The job was held and resumed.
    Resumed,
    /// The job was begun to be stopped.
    StopBegun,
}

/// A rule that was broken.
#[derive(Clone, Debug)]
pub struct Broken {
    /// Its place among the theme's rules.
    pub rule: usize,
    /// The step at which it is broken.
    pub at: String,
    /// The shortest way there, over the kept facts.
    pub trace: Vec<Move>,
}

/// What an exploration found.
#[derive(Clone, Debug, Default)]
pub struct Explored {
    /// How many states were reached.
    pub states: usize,
    /// How many moves between them were tried.
    pub moves: usize,
    /// Rules that were broken, each once, by a shortest way.
    pub broken: Vec<Broken>,
}

const FIRST: &str = "A";
const SECOND: &str = "B";

/// A way to record a step.
struct Way {
    intent: Intent,
    options: Vec<String>,
    deeds: Deeds,
    by: Name,
    passes: bool,
}

/// A step, ready to be taken.
struct Ready<'d> {
    step: &'d Step,
    document: Document,
    /// Everybody signed on, and every hazard acknowledged.
    base: State,
    /// What the step does, for the rules.
    deeds: Deeds,
    /// What it does when its gates were waived: its checks may stand at 'no'.
    waived: Deeds,
    ways: Vec<Way>,
    /// The step whose doer must be somebody else.
    second_to: Option<Deeds>,
}

type Key = (Vec<Value>, Bay);

/// Explores one theme.
pub fn explore(document: &Document, engine: Engine, theme: &Theme) -> Explored {
    let facts = closed(document, theme.facts);
    let ready: Vec<Ready> =
        document.steps().map(|(_, step)| Ready::of(document, engine, step, &facts, theme.parts)).collect();
    let pause = Document { stages: Vec::new(), hazards: Vec::new(), ..idle(document, &facts) };
    let begin: Key = (facts.iter().map(|f| f.values()[0]).collect(), Bay::default().only(theme.parts));
    let mut seen: HashMap<Key, usize> = HashMap::from([(begin.clone(), 0)]);
    let mut states = vec![begin];
    let mut came: Vec<(usize, Move)> = vec![(0, Move::Resumed)];
    let mut explored = Explored::default();
    let mut at = 0;
    while at < states.len() {
        let (values, bay) = states[at].clone();
        let mut moves: Vec<(Key, Move)> = Vec::new();
        for ready in &ready {
            let state = with_facts(ready.base.clone(), &facts, &values);
            let step = &ready.document.stages[0].steps[0];
            if !(step.when.met(&state) && step.needs.met(&state)) {
                continue;
            }
            for (index, rule) in theme.rules.iter().enumerate() {
                if (rule.broken)(&bay, ready.deeds) && !explored.broken.iter().any(|b| b.rule == index) {
                    let trace = way_to(&came, at);
                    explored.broken.push(Broken { rule: index, at: ready.step.id.clone(), trace });
                }
            }
            ready.moves(engine, &facts, theme.parts, state, &bay, &mut moves);
        }
        moves.push(paused(&pause, engine, &facts, &values, bay));
        explored.moves += moves.len();
        for (key, by) in moves {
            if !seen.contains_key(&key) {
                seen.insert(key.clone(), states.len());
                states.push(key);
                came.push((at, by));
            }
        }
        at += 1;
    }
    explored.states = states.len();
    explored
}

fn way_to(came: &[(usize, Move)], mut at: usize) -> Vec<Move> {
    let mut trace = Vec::new();
    while at != 0 {
        trace.push(came[at].1.clone());
        at = came[at].0;
    }
    trace.reverse();
    trace
}

fn with_facts(mut state: State, facts: &[Fact], values: &[Value]) -> State {
    for (fact, value) in facts.iter().zip(values) {
        state.set_fact(*fact, *value);
    }
    state
}

fn facts_of(state: &State, facts: &[Fact]) -> Vec<Value> {
    facts.iter().map(|fact| state.fact(*fact)).collect()
}

/// A document without steps: what a break is taken over.
fn idle(document: &Document, facts: &[Fact]) -> Document {
    let lapses = document.lapses.iter().filter(|l| facts.contains(&l.fact)).cloned().collect();
    Document { lapses, stages: Vec::new(), ..document.clone() }
}

/// The job is held and gone on with.
fn paused(idle: &Document, engine: Engine, facts: &[Fact], values: &[Value], mut bay: Bay) -> (Key, Move) {
    let hold = Event::Held { by: FIRST.into(), reason: "a break".into() };
    let state = (engine.apply)(idle, with_facts(State::default(), facts, values), &hold);
    let state = (engine.apply)(idle, state, &Event::Resumed { by: FIRST.into() });
    bay.paused();
    ((facts_of(&state, facts), bay), Move::Resumed)
}

/// What part of the bay an option's statement is about; none when it is about no single one.
fn stated(deed: Deed) -> Option<Part> {
    use Deed::*;
    Some(match deed {
        FrontNone | FrontFixed | FrontAdjustable => Part::FrontBar,
        RearNone | RearFixed | RearAdjustable => Part::RearBar,
        EachWheel | NotAdjusted => Part::Adjusts,
        LoadAllowed | LoadForbidden => Part::LoadAllowed,
        HasLifting | NoLifting => Part::HasLifting,
        HasVoltage | NoVoltage => Part::HasVoltage,
        HasExtinguisher | NoExtinguisher => Part::HasExtinguisher,
        _ => return None,
    })
}

/// The choices that matter to the kept facts and parts, every combination of their options.
fn combinations(step: &Step, facts: &[Fact], parts: &[Part]) -> Vec<(BTreeMap<String, Entered>, Vec<String>, Deeds)> {
    let mut all = vec![(BTreeMap::new(), Vec::new(), Deeds::default())];
    for input in &step.inputs {
        let Kind::Choice(options) = &input.kind else { continue };
        let matters = |o: &crate::ChoiceOption| {
            let told = Deed::ALL.iter().filter(|d| of_option(o).has(**d));
            let told = told.filter(|d| stated(**d).is_none_or(|part| parts.contains(&part))).count();
            told > 0 || o.sets.iter().any(|b| facts.contains(&b.fact))
        };
        let some = options.iter().any(matters);
        let options = if some { &options[..] } else { &options[..1] };
        let before = std::mem::take(&mut all);
        for option in options {
            for (entries, chosen, deeds) in &before {
                let (mut entries, mut chosen) = (entries.clone(), chosen.clone());
                for key in input.keys() {
                    entries.insert(key, Entered { text: option.id.clone(), unit: None });
                }
                if some {
                    chosen.push(option.id.clone());
                }
                all.push((entries, chosen, deeds.and(of_option(option))));
            }
        }
    }
    all
}

fn other_answer(input: &Input, affirmed: bool) -> Option<Entered> {
    let text = match &input.kind {
        Kind::Number(number) => number.min.clone(),
        Kind::Check => if affirmed { "yes" } else { "no" }.to_owned(),
        Kind::Text => "none".to_owned(),
        Kind::Choice(_) => return None,
    };
    Some(Entered { text, unit: None })
}

impl<'d> Ready<'d> {
    fn of(document: &Document, engine: Engine, step: &'d Step, facts: &[Fact], parts: &[Part]) -> Ready<'d> {
        let small = alone(document, step, facts);
        let mut base = State::default();
        for person in [FIRST, SECOND] {
            let event = Event::SignedOn { person: person.into(), rank: Rank::Supervisor };
            base = (engine.apply)(&small, base, &event);
        }
        for hazard in &step.hazards {
            let event = Event::Acknowledged { step: step.id.clone(), hazard: hazard.clone(), by: FIRST.into() };
            base = (engine.apply)(&small, base, &event);
        }
        let names = parts.contains(&Part::NutsBy) || parts.contains(&Part::FastenersBy);
        let people: &[(Name, &str)] =
            if names { &[(Name::First, FIRST), (Name::Second, SECOND)] } else { &[(Name::First, FIRST)] };
        let answers: &[bool] = if step.gates.contains(&Gate::ChecksYes) { &[true] } else { &[true, false] };
        let mut ways: Vec<Way> = Vec::new();
        for (entries, options, chosen) in combinations(step, facts, parts) {
            for affirmed in answers {
                for (name, by) in people {
                    let mut entries = entries.clone();
                    for input in &step.inputs {
                        let Some(answer) = other_answer(input, *affirmed) else { continue };
                        if !step.asks(input, &entries) {
                            continue;
                        }
                        entries.extend(input.keys().into_iter().map(|key| (key, answer.clone())));
                    }
                    let intent = Intent::Record { step: step.id.clone(), by: (*by).into(), entries };
                    let deeds = of_step(document, step, *affirmed).and(chosen);
                    ways.push(Way { intent, options: options.clone(), deeds, by: *name, passes: true });
                }
            }
        }
        if let Some(first) = ways.first().filter(|_| !step.gates.is_empty()) {
            let (intent, deeds) = (first.intent.clone(), first.deeds);
            ways.push(Way { intent, options: Vec::new(), deeds, by: Name::First, passes: false });
        }
        let second_to = step.gates.iter().find_map(|gate| match gate {
            Gate::SecondPerson { of } => document.step(of).map(|(_, step)| of_step(document, step, true)),
            _ => None,
        });
        Ready {
            step,
            document: small,
            base,
            deeds: of_step(document, step, true),
            waived: of_step(document, step, false),
            ways,
            second_to,
        }
    }

    /// Everything that can be made of this step now.
    fn moves(
        &self,
        engine: Engine,
        facts: &[Fact],
        parts: &[Part],
        state: State,
        bay: &Bay,
        moves: &mut Vec<(Key, Move)>,
    ) {
        if self.step.ending == Some(Ending::Seal) {
            return;
        }
        for way in &self.ways {
            if way.passes && !self.is_second(bay, way.by) {
                continue;
            }
            let found = if way.passes { Found::Pass } else { Found::Fail };
            let evidence = vec![found; self.step.gates.len()];
            let Ok((after, _)) = engine.take(&self.document, state.clone(), &way.intent, &evidence) else { continue };
            let mut seen = *bay;
            let id = self.step.id.clone();
            if way.passes {
                seen.did(way.deeds, way.by);
                let done = Move::Done { step: id, options: way.options.clone() };
                moves.push(((facts_of(&after, facts), seen.only(parts)), done));
                continue;
            }
            seen.tried(self.deeds);
            moves.push(((facts_of(&after, facts), seen.only(parts)), Move::Tried { step: id.clone() }));
            let waive = Intent::Waive { step: id.clone(), by: SECOND.into(), reason: "known".into() };
            if let Ok((after, _)) = engine.take(&self.document, after, &waive, &Vec::new()) {
                seen.did(self.waived, Name::First);
                moves.push(((facts_of(&after, facts), seen.only(parts)), Move::Waived { step: id }));
            }
        }
    }

    /// False when the gate for a second person would find the first one: who did the other step is known here.
    fn is_second(&self, bay: &Bay, by: Name) -> bool {
        self.second_to.is_none_or(|first| {
            let nuts = first.has(Deed::NutsTight) && bay.nuts_by == by;
            let fasteners = first.has(Deed::FastenersTight) && bay.fasteners_by == by;
            !(nuts || fasteners)
        })
    }
}
