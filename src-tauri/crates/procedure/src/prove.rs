//! The proof that a document is safe, over every path that a job can take.
//!
//! A whole job has far too many states to visit one by one: some thirty facts and a hundred steps that can each be opened
//! again. It is taken apart, and each part is explored exactly (breadth first, a visited set of whole states):
//!
//! - [`rules`]: what must never happen, by theme; [`bay`] follows what people do and affirm ([`deeds`]), apart from what
//!   the document says is so. [`theme`] explores each theme with all facts of other themes forgotten.
//! - [`claim`]: that each figure, comparison and second check still holds when it is used.
//! - [`people`]: who may do, acknowledge, waive and seal.
//! - [`gates`]: gates that cannot be met. [`walk`]: dead ends, jobs without an end, steps that nothing leads to.
//!
//! Forgetting only ever allows more ([`part`]), so a property that holds in every part holds in every job of every variant:
//! 1. `next` offers a step only when its `needs` and `when` hold. A theme lets every step be done whose kept needs and
//!    `when` hold, in any order and however often. So every job, seen through the theme's facts, is among its paths.
//! 2. What `apply` makes of the facts depends on the step done, its options, the facts and the lapses, never on another
//!    step. So a step alone, with the lapses, changes the kept facts as the whole document does; lapses keep the facts
//!    that they go by.
//! 3. A rule asks about the parts of the bay that its theme keeps; each part follows from events and kept parts alone.
//! 4. A claim keeps the standing of every step through which the voiding can come. Of the others it takes the case that
//!    voids least. `would_void` grows with the steps that are done, so every job voids at least as much.
//!
//! What is left over: a broken rule of a part may be one that no job reaches. [`walk`] looks for a job that does it, step by
//! step on the whole document; where it finds none the document is not proved, and the report says so.

mod asked;
pub mod bay;
pub mod claim;
pub mod deeds;
mod engine;
mod gates;
mod job;
mod part;
pub mod people;
pub mod rules;
pub mod theme;
pub mod walk;

pub use engine::{Apply, Decide, Engine};
pub use job::replay_asked;
pub use rules::Property;
pub use theme::Move;

use crate::{Document, Evidence, Fault, Intent, Wrong};
use job::{Choices, Plan};
use std::panic::resume_unwind;
use walk::{Walk, Walked, alternatives, pairs, singles, unreached};

/// The hash of the shipped document, whose proof is made by the tests.
pub const PROVED: &str = include_str!("prove/shipped.sha256");

/// A property that does not hold.
#[derive(Clone, Debug)]
pub struct CounterExample {
    /// The property.
    pub property: Property,
    /// What is wrong.
    pub says: String,
    /// The step at which it is wrong.
    pub at: String,
    /// The shortest way there that the property is about; other steps come between as they are needed.
    pub shortest: Vec<Move>,
    /// A whole job that does it, to be replayed through `decide`; none when none was found, or when another counter-example
    /// to the same property has one.
    pub job: Option<Vec<(Intent, Evidence)>>,
}

/// What was found about a document.
#[derive(Clone, Debug, Default)]
pub struct Proof {
    /// States that were explored, by part: its name and their number.
    pub states: Vec<(String, usize)>,
    /// Whole jobs that were led, and the states that they passed.
    pub jobs: (usize, usize),
    /// Properties that do not hold.
    pub broken: Vec<CounterExample>,
    /// Steps that nothing leads to, gates that cannot be met, dead ends and jobs without an end.
    pub faults: Vec<Fault>,
}

impl Proof {
    /// True when nothing is wrong.
    pub fn holds(&self) -> bool {
        self.broken.is_empty() && self.faults.is_empty()
    }

    /// The number of all states that were explored.
    pub fn count(&self) -> usize {
        self.states.iter().map(|(_, states)| states).sum()
    }

    /// The counter-examples to a property.
    pub fn against(&self, property: Property) -> impl Iterator<Item = &CounterExample> {
        self.broken.iter().filter(move |broken| broken.property == property)
    }
}

/// True for the text of the document that the tests have proved.
pub fn is_proved(hash: &str) -> bool {
    hash == PROVED.trim()
}

/// Whether a job may begin with a document.
#[derive(Clone, Debug)]
pub enum Trust {
    /// It is the one that the tests have proved.
    Shipped,
    /// It was proved just now.
    Proved,
    /// It was not: no job begins with it unless a supervisor signs for it.
    NotProved(Box<Proof>),
}

/// Whether a job may begin with a document, by its text and what was read from it. The shipped one is known by its hash
/// at once; proving another takes seconds, so it is asked for apart from the task that owns the open job.
pub fn trust(text: &str, document: &Document) -> Trust {
    if is_proved(&crate::hash(text)) {
        return Trust::Shipped;
    }
    let proof = prove(document);
    if proof.holds() { Trust::Proved } else { Trust::NotProved(Box::new(proof)) }
}

/// Proves a document on the shipped engine.
pub fn prove(document: &Document) -> Proof {
    prove_on(document, Engine::shipped())
}

/// Proves a document on an engine. Two threads are used.
pub fn prove_on(document: &Document, engine: Engine) -> Proof {
    let claims = claim::claims(document);
    let plan = Plan::of(document, engine, &claims);
    let (mut proof, mut walked) = std::thread::scope(|scope| {
        let parts = scope.spawn(|| parts(document, engine, &claims));
        let walked = walk_each(document, &plan);
        (parts.join().unwrap_or_else(|broke| resume_unwind(broke)), walked)
    });
    if proof.broken.is_empty() && walked.shown.is_empty() {
        walked.merge(walk_all(document, &plan));
        let mut reached = walked.done.clone();
        reached.extend(document.steps().filter(|(_, s)| s.ending.is_some()).map(|(_, s)| s.id.clone()));
        for step in unreached(document, &reached) {
            proof.faults.push(Fault { at: step.to_owned(), what: Wrong::Unreached });
        }
    } else {
        search(&plan, &mut walked);
    }
    proof.jobs = (walked.jobs, walked.states);
    proof.faults.extend(gates::unmeetable(document));
    for (says, asked) in &walked.stuck {
        let at = last_step(asked).unwrap_or_default();
        proof.faults.push(Fault { at, what: Wrong::Stuck(says.clone()) });
    }
    show(&mut proof, walked);
    proof.broken.sort_by_key(|broken| (broken.property, broken.job.is_none(), broken.shortest.len()));
    proof
}

/// The exact explorations.
fn parts(document: &Document, engine: Engine, claims: &[claim::Claim]) -> Proof {
    let mut proof = Proof::default();
    for theme in rules::THEMES {
        let explored = theme::explore(document, engine, theme);
        proof.states.push((theme.name.to_owned(), explored.states));
        for broken in explored.broken {
            let rule = &theme.rules[broken.rule];
            proof.broken.push(CounterExample {
                property: rule.property,
                says: rule.says.to_owned(),
                at: broken.at,
                shortest: broken.trace,
                job: None,
            });
        }
    }
    let explore = |claims: &[claim::Claim]| {
        let explored = claims.iter().map(|claim| (claim.says(), claim::explore(document, engine, claim)));
        explored.collect::<Vec<_>>()
    };
    let (one, other) = claims.split_at(claims.len() / 2);
    let explored = std::thread::scope(|scope| {
        let one = scope.spawn(|| explore(one));
        let other = explore(other);
        // A half that broke must not pass for a half without faults.
        let mut all = one.join().unwrap_or_else(|broke| resume_unwind(broke));
        all.extend(other);
        all
    });
    let states = explored.iter().map(|(_, (states, _))| states).sum();
    for (claim, (says, (_, stale))) in claims.iter().zip(explored) {
        if let Some(stale) = stale {
            let at = claim.used.to_owned();
            proof.broken.push(CounterExample { property: claim.property, says, at, shortest: stale.trace, job: None });
        }
    }
    proof.states.push((format!("{} claims", claims.len()), states));
    if claims.is_empty() {
        let says = "no reading stands behind the seal: it rests on none".to_owned();
        proof.broken.push(CounterExample {
            property: Property::TrueFigures,
            says,
            at: String::new(),
            shortest: Vec::new(),
            job: None,
        });
    }
    let (states, wrong) = people::explore(document, engine);
    proof.states.push(("people".to_owned(), states));
    for wrong in wrong {
        proof.broken.push(CounterExample {
            property: Property::NamedPeople,
            says: wrong.says.to_owned(),
            at: wrong.at,
            shortest: Vec::new(),
            job: None,
        });
    }
    proof
}

/// A job for each option.
fn walk_each(document: &Document, plan: &Plan) -> Walked {
    let mut walk = Walk::of(plan);
    walk.all_variants(&singles(document));
    walk.walked
}

/// The jobs that are disturbed at every step: the plain one; the one in which every choice goes the other way once; and of
/// those in which one of them goes the plain way all the same, the one that comes to the most steps.
fn disturbed(document: &Document, plan: &Plan) -> [Choices; 3] {
    let every: Choices = alternatives(document).into_iter().collect();
    let but_one = every.keys().map(|at| {
        let mut choices = every.clone();
        choices.remove(at);
        let mut walk = Walk::of(plan);
        walk.all_variants(std::slice::from_ref(&choices));
        (walk.walked.done.len(), choices)
    });
    let fullest = but_one.max_by_key(|(steps, _)| *steps).map(|(_, choices)| choices).unwrap_or_default();
    [Choices::new(), every, fullest]
}

/// A job for each pair of options, and some disturbed at every step.
fn walk_all(document: &Document, plan: &Plan) -> Walked {
    std::thread::scope(|scope| {
        let paired = scope.spawn(|| {
            let mut walk = Walk::of(plan);
            walk.all_variants(&pairs(document));
            walk.walked
        });
        let mut walk = Walk::of(plan);
        for variant in disturbed(document, plan) {
            walk.disturb(&variant);
        }
        let mut walked = walk.walked;
        walked.merge(paired.join().unwrap_or_else(|broke| resume_unwind(broke)));
        walked
    })
}

/// Looks for a job that shows what is broken, where no plain one did: disturbed once, then over and over.
fn search(plan: &Plan, walked: &mut Walked) {
    for variant in disturbed(plan.document, plan) {
        if walked.shown.is_empty() {
            let mut walk = Walk::of(plan);
            walk.disturb(&variant);
            walked.merge(walk.walked);
        }
    }
    if walked.shown.is_empty() {
        let mut walk = Walk::of(plan);
        walk.at_random(0..100, &pairs(plan.document), |now| !now.shown.is_empty());
        walked.merge(walk.walked);
    }
}

/// Gives each broken property the job that shows it, and adds what only a job showed.
fn show(proof: &mut Proof, walked: Walked) {
    for shown in walked.shown {
        let same = |b: &&mut CounterExample| b.property == shown.property && b.says == shown.says;
        match proof.broken.iter_mut().find(same) {
            Some(broken) if broken.job.is_some() => {}
            Some(broken) => (broken.at, broken.job) = (shown.at, Some(shown.asked)),
            None => proof.broken.push(CounterExample {
                property: shown.property,
                says: shown.says,
                at: shown.at,
                shortest: Vec::new(),
                job: Some(shown.asked),
            }),
        }
    }
}

fn last_step(asked: &[(Intent, Evidence)]) -> Option<String> {
    asked.iter().rev().find_map(|(intent, _)| match intent {
        Intent::Record { step, .. } | Intent::Reopen { step, .. } | Intent::Waive { step, .. } => Some(step.clone()),
        _ => None,
    })
}
