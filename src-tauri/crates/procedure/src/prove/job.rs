//! A whole job on the engine, by a setter who is as careless as the document lets them be: one person does everything they
//! may, and answers no where no gate asks for a yes. The bay and the claims are watched at each step.

use super::asked::Asked;
use super::bay::{Bay, Name};
use super::claim::Claim;
use super::deeds::{Deeds, of_option, of_step};
use super::engine::Engine;
use super::rules::{Property, THEMES, may_waive};
use crate::{
    Document, Ending, Entered, Event, Evidence, Fact, Found, Gate, Intent, Kind, Next, Path, Rank, Refusal, Standing,
    State, Status, Step, Value, next,
};
use std::collections::{BTreeMap, HashMap};

/// The people of these jobs, with their ranks.
pub const PEOPLE: [(&str, Rank, Name); 3] = [
    ("RO", Rank::Trainee, Name::First),
    ("LB", Rank::Technician, Name::Second),
    ("MT", Rank::Supervisor, Name::Nobody),
];

/// Options that are chosen instead of the first: by input or `step/input`, for the first time only or always.
pub type Choices = BTreeMap<String, String>;

/// What is known of a document beforehand.
pub struct Plan<'d> {
    /// The document.
    pub document: &'d Document,
    /// The engine.
    pub engine: Engine<'d>,
    /// Its claims.
    pub claims: &'d [Claim<'d>],
    deeds: HashMap<&'d str, (Deeds, Deeds)>,
    main: Vec<&'d str>,
}

/// How one step went.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Went {
    /// It was done.
    On,
    /// The job was sealed or stopped.
    Ended,
    /// Something that must never happen.
    Broken {
        /// The property.
        property: Property,
        /// What is wrong.
        says: String,
        /// The step.
        at: String,
    },
    /// The document has no way on.
    Stuck {
        /// Why.
        says: String,
    },
}

/// A job under way.
#[derive(Clone)]
pub struct Job {
    /// Its state.
    pub state: State,
    /// What was asked for, with the evidence, in order.
    pub asked: Asked,
    bay: Bay,
    /// One for each claim: its change was made since the result was taken.
    stale: Vec<bool>,
    /// Choices still to be made once.
    once: Choices,
}

/// What tells two states of a job apart: facts, standings, status, the bay and the claims. Names are left out; who may do
/// what is explored elsewhere.
pub type Mark = (Vec<Value>, Vec<Standing>, Status, Bay, Vec<bool>);

impl<'d> Plan<'d> {
    /// Looks a document through.
    pub fn of(document: &'d Document, engine: Engine<'d>, claims: &'d [Claim<'d>]) -> Plan<'d> {
        let deeds = document
            .steps()
            .map(|(_, s)| (s.id.as_str(), (of_step(document, s, true), of_step(document, s, false))))
            .collect();
        let main = document.steps().filter(|(st, _)| st.path != Path::OnDemand).map(|(_, s)| s.id.as_str()).collect();
        Plan { document, engine, claims, deeds, main }
    }

    /// A job with three people signed on.
    pub fn begin(&self, once: &Choices) -> Job {
        let mut job = Job {
            state: State::default(),
            asked: Asked::default(),
            bay: Bay::default(),
            stale: vec![false; self.claims.len()],
            once: once.clone(),
        };
        for (person, rank, _) in PEOPLE {
            // Three different initials on a new job are never refused.
            let _ = self.ask(&mut job, Intent::SignOn { person: person.into(), rank }, Vec::new());
        }
        job
    }

    /// The mark of a job.
    pub fn mark(&self, job: &Job) -> Mark {
        (
            Fact::ALL.iter().map(|fact| job.state.fact(*fact)).collect(),
            self.main.iter().map(|id| job.state.standing(id)).collect(),
            job.state.status,
            job.bay,
            job.stale.clone(),
        )
    }

    /// Hands an intent in.
    ///
    /// # Errors
    /// The refusal of `decide`.
    pub fn ask(&self, job: &mut Job, intent: Intent, evidence: Evidence) -> Result<(), Refusal> {
        let state = std::mem::take(&mut job.state);
        match (self.engine.decide)(self.document, &state, &intent, &evidence) {
            Ok(event) => {
                job.state = (self.engine.apply)(self.document, state, &event);
                job.asked.push(intent, evidence);
                self.saw(job, &event);
                Ok(())
            }
            Err(refusal) => {
                job.state = state;
                Err(refusal)
            }
        }
    }

    fn saw(&self, job: &mut Job, event: &Event) {
        match event {
            Event::Resumed { .. } => job.bay.paused(),
            Event::Tried { step, .. } => job.bay.tried(self.deeds_of(step).0),
            Event::Done { step, by, entries, .. } => {
                let Some((_, known)) = self.document.step(step) else { return };
                // Where no gate asks for a yes, the careless setter answers no.
                let (yes, no) = self.deeds_of(step);
                let own = if known.gates.contains(&Gate::ChecksYes) { yes } else { no };
                let chosen = known.options().filter(|o| entries.values().any(|e| e.text == o.id));
                let deeds = chosen.fold(own, |deeds, option| deeds.and(of_option(option)));
                self.did(job, known, deeds, by);
            }
            Event::Waived { step, by, .. } => {
                let Some((_, known)) = self.document.step(step) else { return };
                self.did(job, known, self.deeds_of(step).1, by);
            }
            _ => {}
        }
    }

    fn deeds_of(&self, step: &str) -> (Deeds, Deeds) {
        self.deeds.get(step).copied().unwrap_or_default()
    }

    fn did(&self, job: &mut Job, step: &Step, deeds: Deeds, by: &str) {
        let name = PEOPLE.iter().find(|(person, ..)| *person == by).map_or(Name::Nobody, |(.., name)| *name);
        job.bay.did(deeds, name);
        for (stale, claim) in job.stale.iter_mut().zip(self.claims) {
            if claim.cause.made(deeds) {
                *stale = true;
            } else if claim.result == step.id {
                *stale = false;
            }
        }
    }

    /// What must never happen, if this step is done now.
    pub fn danger(&self, job: &Job, step: &Step) -> Option<(Property, String)> {
        let deeds = self.deeds_of(&step.id).0;
        let rules = THEMES.iter().flat_map(|theme| theme.rules);
        if let Some(rule) = rules.into_iter().find(|rule| (rule.broken)(&job.bay, deeds)) {
            return Some((rule.property, rule.says.to_owned()));
        }
        let used = self.claims.iter().zip(&job.stale).filter(|(claim, _)| claim.used == step.id);
        for (claim, stale) in used {
            let Some((_, result)) = self.document.step(claim.result) else { continue };
            let gone = job.state.standing(claim.result) != Standing::Done;
            if result.when.met(&job.state) && (*stale || gone) {
                return Some((claim.property, claim.says()));
            }
        }
        None
    }

    /// Does the step at hand.
    pub fn go_on(&self, job: &mut Job) -> Went {
        let id = match next(self.document, &job.state) {
            Next::Step { id, .. } => id,
            Next::Ended => {
                let ended = matches!(job.state.status, Status::Stopped | Status::Sealed);
                return if ended { Went::Ended } else { Went::Stuck { says: "the job ends without a seal".into() } };
            }
            Next::DeadEnd(why) => return Went::Stuck { says: format!("a dead end: {why}") },
        };
        let Some((_, step)) = self.document.step(&id) else { return Went::Stuck { says: format!("no step {id}") } };
        if let Some((property, says)) = self.danger(job, step) {
            return Went::Broken { property, says, at: id };
        }
        if step.ending == Some(Ending::Seal) {
            return Went::Ended;
        }
        let evidence = vec![Found::Pass; step.gates.len()];
        match self.record(job, step, evidence) {
            Ok(()) => Went::On,
            Err(why) => Went::Stuck { says: format!("{id} cannot be done: {why}") },
        }
    }

    /// Acknowledges and records a step with this evidence.
    ///
    /// # Errors
    /// The refusal of `decide`.
    pub fn record(&self, job: &mut Job, step: &Step, evidence: Evidence) -> Result<(), Refusal> {
        let by = self.who(step).to_owned();
        let acknowledged = job.state.step(&step.id).acknowledged;
        let open: Vec<String> = self.document.hazards_at(&job.state, step).map(|h| h.id.clone()).collect();
        for hazard in open.into_iter().filter(|hazard| !acknowledged.contains_key(hazard)) {
            self.ask(job, Intent::Acknowledge { step: step.id.clone(), hazard, by: by.clone() }, Vec::new())?;
        }
        let entries = self.answers(job, step);
        self.ask(job, Intent::Record { step: step.id.clone(), by, entries }, evidence)
    }

    /// Fails the step at hand, and lets the least who may waive it: true when it was waived.
    ///
    /// # Errors
    /// A waiver by somebody who should not be allowed to.
    pub fn fail(&self, job: &mut Job, step: &Step, waive: bool) -> Result<bool, (Property, String)> {
        if step.gates.is_empty() || self.record(job, step, vec![Found::Fail; step.gates.len()]).is_err() {
            return Ok(false);
        }
        if !waive {
            return Ok(false);
        }
        for (person, rank, _) in PEOPLE {
            let intent = Intent::Waive { step: step.id.clone(), by: person.into(), reason: "known".into() };
            let at_work = job.state.step(&step.id).workers.contains(person);
            if self.ask(job, intent, Vec::new()).is_ok() {
                if may_waive(step).is_none_or(|least| rank < least) {
                    let says = "a gate is waived by somebody who is not allowed to";
                    return Err((Property::NamedPeople, says.into()));
                }
                if at_work {
                    return Err((Property::NamedPeople, "a gate is waived by somebody at work on that step".into()));
                }
                return Ok(true);
            }
        }
        Ok(false)
    }

    /// The first person who may do a step, and another where a gate asks for one.
    fn who(&self, step: &Step) -> &'static str {
        let first = |step: &Step| PEOPLE.iter().find(|(_, rank, _)| *rank >= step.by).map_or("MT", |(who, ..)| who);
        let other_than = step.gates.iter().find_map(|gate| match gate {
            Gate::SecondPerson { of } => self.document.step(of).map(|(_, s)| first(s)),
            _ => None,
        });
        let may = PEOPLE.iter().filter(|(_, rank, _)| *rank >= step.by).map(|(who, ..)| *who);
        may.into_iter().find(|who| Some(*who) != other_than).unwrap_or("MT")
    }

    fn answers(&self, job: &mut Job, step: &Step) -> BTreeMap<String, Entered> {
        let affirmed = step.gates.contains(&Gate::ChecksYes);
        let mut entries = BTreeMap::new();
        for input in &step.inputs {
            if !step.asks(input, &entries) {
                continue;
            }
            let text = match &input.kind {
                Kind::Number(number) => number.min.clone(),
                Kind::Check => if affirmed { "yes" } else { "no" }.to_owned(),
                Kind::Text => "none".to_owned(),
                Kind::Choice(options) => {
                    let at = format!("{}/{}", step.id, input.id);
                    let first = || options.first().map(|o| o.id.clone()).unwrap_or_default();
                    job.once.remove(&at).filter(|o| options.iter().any(|known| known.id == *o)).unwrap_or_else(first)
                }
            };
            entries.extend(input.keys().into_iter().map(|key| (key, Entered { text: text.clone(), unit: None })));
        }
        entries
    }
}

impl Job {
    /// Makes these choices the next time that they are asked for.
    pub fn choose(&mut self, choices: &Choices) {
        self.once.extend(choices.clone());
    }
}

/// Plays what was asked for on the engine and gives the state after it.
///
/// # Errors
/// The first refusal: then it was no job.
pub fn replay_asked(document: &Document, engine: Engine, asked: &[(Intent, Evidence)]) -> Result<State, Refusal> {
    let mut state = State::default();
    for (intent, evidence) in asked {
        state = engine.take(document, state, intent, evidence)?.0;
    }
    Ok(state)
}
