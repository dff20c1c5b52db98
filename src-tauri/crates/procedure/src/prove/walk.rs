//! Whole jobs, led on the shipped `next`, `decide` and `apply`: every option and every pair of options once, each to its
//! seal, and from every step of some of them every single disturbance (a step opened again, a gate that fails, is let pass
//! or cannot be told, a break, a stop) until the job is back at a state that was seen.
//!
//! Here dead ends, jobs without an end and steps that nothing leads to are found, and jobs that show a broken property as
//! it would happen. The absence of a broken property is shown elsewhere, over all states.

use super::job::{Choices, Job, Mark, Plan, Went};
use super::rules::Property;
use crate::{Document, Evidence, Intent, Kind, Next, Path, Standing, Status, next};
use std::collections::{BTreeSet, HashSet};

/// A job that shows what must never happen.
#[derive(Clone, Debug)]
pub struct Shown {
    /// The property.
    pub property: Property,
    /// What is wrong.
    pub says: String,
    /// The step.
    pub at: String,
    /// Everything that was asked for, in order.
    pub asked: Vec<(Intent, Evidence)>,
}

/// What the jobs showed.
#[derive(Clone, Debug, Default)]
pub struct Walked {
    /// How many jobs were led.
    pub jobs: usize,
    /// How many different states they passed.
    pub states: usize,
    /// Broken properties, the shortest job of each kind.
    pub shown: Vec<Shown>,
    /// Dead ends and jobs that do not end: what is wrong, and the job.
    pub stuck: Vec<(String, Vec<(Intent, Evidence)>)>,
    /// Steps that were done in some job.
    pub done: BTreeSet<String>,
}

/// Steps of one job at most: four times the longest that the shipped document asks for.
const LONGEST: usize = 2000;

/// The jobs of one document.
pub struct Walk<'p, 'd> {
    plan: &'p Plan<'d>,
    seen: HashSet<Mark>,
    /// What the jobs showed.
    pub walked: Walked,
}

/// One alternative of a choice: where, which option.
type Alternative = (String, String);

/// Every option but the first of every choice that sets a fact or changes a topic.
pub fn alternatives(document: &Document) -> Vec<Alternative> {
    let mut all = Vec::new();
    for (_, step) in document.steps() {
        for input in &step.inputs {
            let Kind::Choice(options) = &input.kind else { continue };
            if options.iter().all(|o| o.sets.is_empty() && o.changes.is_empty()) {
                continue;
            }
            all.extend(options.iter().skip(1).map(|o| (format!("{}/{}", step.id, input.id), o.id.clone())));
        }
    }
    all
}

/// The first options; and each other one alone.
pub fn singles(document: &Document) -> Vec<Choices> {
    let alone = alternatives(document).into_iter().map(|alternative| Choices::from([alternative]));
    std::iter::once(Choices::new()).chain(alone).collect()
}

/// Each two options of different choices together.
pub fn pairs(document: &Document) -> Vec<Choices> {
    let all = alternatives(document);
    let mut pairs = Vec::new();
    for (index, one) in all.iter().enumerate() {
        let others = all[index + 1..].iter().filter(|other| other.0 != one.0);
        pairs.extend(others.map(|other| Choices::from([one.clone(), other.clone()])));
    }
    pairs
}

impl Walked {
    /// Adds what other jobs showed. States that both passed are counted twice.
    pub fn merge(&mut self, other: Walked) {
        self.jobs += other.jobs;
        self.states += other.states;
        self.done.extend(other.done);
        self.shown.extend(other.shown);
        for stuck in other.stuck {
            if !self.stuck.iter().any(|(says, _)| *says == stuck.0) {
                self.stuck.push(stuck);
            }
        }
    }
}

impl<'p, 'd> Walk<'p, 'd> {
    /// No job yet.
    pub fn of(plan: &'p Plan<'d>) -> Walk<'p, 'd> {
        Walk { plan, seen: HashSet::new(), walked: Walked::default() }
    }

    fn is_new(&mut self, job: &Job) -> bool {
        let new = self.seen.insert(self.plan.mark(job));
        self.walked.states += usize::from(new);
        new
    }

    fn note(&mut self, job: &Job, went: Went) {
        match went {
            Went::Broken { property, says, at } => {
                let known = self.walked.shown.iter_mut().find(|s| s.property == property && s.says == says);
                match known {
                    Some(known) if known.asked.len() <= job.asked.len() => {}
                    Some(known) => (known.at, known.asked) = (at, job.asked.in_order()),
                    None => self.walked.shown.push(Shown { property, says, at, asked: job.asked.in_order() }),
                }
            }
            Went::Stuck { says } if !self.walked.stuck.iter().any(|(known, _)| *known == says) => {
                self.walked.stuck.push((says, job.asked.in_order()));
            }
            _ => {}
        }
    }

    /// Leads a job to its end, or, after a disturbance, to a state that was seen. Gives the points that it passed.
    fn lead(&mut self, mut job: Job, stop_at_seen: bool, mut points: Option<&mut Vec<Job>>) {
        self.walked.jobs += 1;
        for _ in 0..LONGEST {
            let new = self.is_new(&job);
            if stop_at_seen && !new {
                return;
            }
            if let Some(points) = points.as_mut().filter(|_| new) {
                points.push(job.clone());
            }
            if let Next::Step { id, .. } = next(self.plan.document, &job.state) {
                self.walked.done.insert(id);
            }
            let went = self.plan.go_on(&mut job);
            if went != Went::On {
                self.note(&job, went);
                return;
            }
        }
        let says = "a job does not end: its steps undo one another".to_owned();
        self.note(&job, Went::Stuck { says });
    }

    /// Leads one job for each variant, until one cannot come to its end.
    pub fn all_variants(&mut self, variants: &[Choices]) {
        for variant in variants {
            if !self.walked.stuck.is_empty() {
                return;
            }
            let job = self.plan.begin(variant);
            self.lead(job, false, None);
        }
    }

    /// Leads a variant and disturbs it once at every step, until something is found.
    pub fn disturb(&mut self, variant: &Choices) {
        let mut points = Vec::new();
        self.seen.clear();
        let job = self.plan.begin(variant);
        self.lead(job, false, Some(&mut points));
        for point in &points {
            if !self.walked.stuck.is_empty() || !self.walked.shown.is_empty() {
                return;
            }
            self.disturb_at(point);
        }
    }

    fn disturb_at(&mut self, point: &Job) {
        let plan = self.plan;
        let reason = || "seen wrong".to_owned();
        for (stage, step) in plan.document.steps() {
            let done = matches!(point.state.standing(&step.id), Standing::Done | Standing::Void);
            if stage.path != Path::Main || !done {
                continue;
            }
            let mut job = point.clone();
            let reopen = Intent::Reopen { step: step.id.clone(), by: "MT".into(), reason: reason() };
            if plan.ask(&mut job, reopen, Vec::new()).is_ok() {
                self.lead(job, true, None);
            }
        }
        let mut job = point.clone();
        let held = plan.ask(&mut job, Intent::Hold { by: "RO".into(), reason: reason() }, Vec::new());
        if held.is_ok() && plan.ask(&mut job, Intent::Resume { by: "RO".into() }, Vec::new()).is_ok() {
            self.lead(job, true, None);
        }
        let mut job = point.clone();
        let stop = plan.ask(&mut job, Intent::Stop { by: "RO".into(), reason: reason() }, Vec::new());
        if stop.is_ok() && job.state.status == Status::Stopping {
            self.lead(job, true, None);
        }
        if let Next::Step { id, .. } = next(plan.document, &point.state)
            && let Some((_, step)) = plan.document.step(&id)
        {
            for waive in [false, true] {
                let mut job = point.clone();
                match plan.fail(&mut job, step, waive) {
                    Ok(waived) if waived == waive => self.lead(job, true, None),
                    Ok(_) => {}
                    Err((property, says)) => {
                        let at = id.clone();
                        self.note(&job, Went::Broken { property, says, at });
                    }
                }
            }
        }
    }

    /// Jobs disturbed over and over, as a seed has it: where one disturbance does not show what all states hold.
    pub fn at_random(&mut self, seeds: std::ops::Range<u64>, variants: &[Choices], wanted: impl Fn(&Walked) -> bool) {
        for seed in seeds {
            if wanted(&self.walked) {
                return;
            }
            let mut random = Random(seed);
            let mut job = self.plan.begin(&variants[random.below(variants.len())]);
            self.walked.jobs += 1;
            for count in 0..LONGEST {
                // Later on nothing more goes wrong, so that the job ends.
                if count < 500 && random.below(12) == 0 && !self.trouble(&mut job, &mut random, variants) {
                    break;
                }
                if let Next::Step { id, .. } = next(self.plan.document, &job.state) {
                    self.walked.done.insert(id);
                }
                let went = self.plan.go_on(&mut job);
                if went != Went::On {
                    self.note(&job, went);
                    break;
                }
            }
        }
    }

    /// One disturbance; false when it broke a property.
    fn trouble(&mut self, job: &mut Job, random: &mut Random, variants: &[Choices]) -> bool {
        let plan = self.plan;
        let reason = || "seen wrong".to_owned();
        match random.below(8) {
            0 => {
                let held = plan.ask(job, Intent::Hold { by: "RO".into(), reason: reason() }, Vec::new());
                if held.is_ok() {
                    let _ = plan.ask(job, Intent::Resume { by: "RO".into() }, Vec::new());
                }
            }
            1 => {
                if let Next::Step { id, .. } = next(plan.document, &job.state)
                    && let Some((_, step)) = plan.document.step(&id)
                    && let Err((property, says)) = plan.fail(job, step, random.below(2) == 0)
                {
                    self.note(job, Went::Broken { property, says, at: id });
                    return false;
                }
            }
            2 if random.below(20) == 0 => {
                let _ = plan.ask(job, Intent::Stop { by: "RO".into(), reason: reason() }, Vec::new());
            }
            _ => {
                let done = plan
                    .document
                    .steps()
                    .filter(|(stage, step)| stage.path == Path::Main && job.state.standing(&step.id) == Standing::Done);
                let done: Vec<&str> = done.map(|(_, step)| step.id.as_str()).collect();
                if !done.is_empty() {
                    let step = done[random.below(done.len())].to_owned();
                    job.choose(&variants[random.below(variants.len())]);
                    let _ = plan.ask(job, Intent::Reopen { step, by: "MT".into(), reason: reason() }, Vec::new());
                }
            }
        }
        true
    }
}

/// A small generator, so that a job can be led again by its seed (Knuth's MMIX constants).
struct Random(u64);

impl Random {
    fn below(&mut self, n: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % n
    }
}

/// Steps of a document that no job came to.
pub fn unreached<'d>(document: &'d Document, done: &BTreeSet<String>) -> Vec<&'d str> {
    document.steps().map(|(_, step)| step.id.as_str()).filter(|id| !done.contains(*id)).collect()
}
