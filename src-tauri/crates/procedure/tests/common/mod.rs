//! A setter who does whatever step is at hand, for tests of the shipped document.
#![allow(dead_code)] // Each test file uses its own part of it.

pub mod edits;
pub mod trade;

use bayhand_procedure::{
    Document, Entered, Event, Fact, Found, Intent, Kind, Next, Rank, Refusal, SHIPPED, State, Step, Value, apply,
    decide, load, next,
};
use std::collections::BTreeMap;

/// One job under test.
pub struct Job {
    pub document: Document,
    pub state: State,
    pub events: Vec<Event>,
    /// What an event makes of a state: the engine's, or a control's with a fault in it.
    pub apply: fn(&Document, State, &Event) -> State,
    /// The bay as somebody in it sees it.
    pub bay: trade::Bay,
    /// Options chosen instead of the first one: input id and option.
    pub choose: BTreeMap<&'static str, &'static str>,
}

impl Job {
    /// A job with a trainee RO, a technician LB and a supervisor MT signed on.
    pub fn begin() -> Job {
        let document = load(SHIPPED).expect("the shipped document has no fault");
        let choose = BTreeMap::from([("bar-front", "front-adjustable"), ("bar-rear", "rear-adjustable")]);
        let mut job =
            Job { document, state: State::default(), events: Vec::new(), apply, bay: trade::Bay::default(), choose };
        for (person, rank) in [("RO", Rank::Trainee), ("LB", Rank::Technician), ("MT", Rank::Supervisor)] {
            job.want(Intent::SignOn { person: person.into(), rank }).expect("a first sign-on");
        }
        job
    }

    /// The step at hand.
    pub fn now(&self) -> String {
        match next(&self.document, &self.state) {
            Next::Step { id, .. } => id,
            Next::Ended => "(ended)".into(),
            Next::DeadEnd(why) => panic!("dead end: {why}"),
        }
    }

    /// Hands an intent in; every gate of the step at hand passes.
    pub fn want(&mut self, intent: Intent) -> Result<(), Refusal> {
        let gates = match &intent {
            Intent::Record { step, .. } => self.document.step(step).map_or(0, |(_, s)| s.gates.len()),
            _ => 0,
        };
        self.want_with(intent, vec![Found::Pass; gates])
    }

    /// Hands an intent in with this evidence.
    pub fn want_with(&mut self, intent: Intent, evidence: Vec<Found>) -> Result<(), Refusal> {
        let event = decide(&self.document, &self.state, &intent, &evidence)?;
        self.state = (self.apply)(&self.document, std::mem::take(&mut self.state), &event);
        self.bay.saw(&event);
        self.events.push(event);
        Ok(())
    }

    /// Answers for a step: yes to checks, the chosen or the first option, 1 for numbers, none for texts.
    pub fn answers(&self, step: &Step) -> BTreeMap<String, Entered> {
        let mut entries: BTreeMap<String, Entered> = BTreeMap::new();
        for input in &step.inputs {
            if !step.asks(input, &entries) {
                continue;
            }
            for key in input.keys() {
                let text = match &input.kind {
                    Kind::Number(n) => n.min.clone(),
                    Kind::Choice(options) => {
                        self.choose.get(input.id.as_str()).map_or(options[0].id.clone(), |o| (*o).to_owned())
                    }
                    Kind::Check => "yes".into(),
                    Kind::Text => "none".into(),
                };
                entries.insert(key, Entered { text, unit: None });
            }
        }
        entries
    }

    /// Does the step at hand, a second person where one is asked for; every gate passes.
    pub fn do_it(&mut self) -> String {
        self.record(Found::Pass)
    }

    /// The same, and every gate fails.
    pub fn try_it(&mut self) -> String {
        self.record(Found::Fail)
    }

    /// Acknowledges the hazards of the step at hand and records it.
    fn record(&mut self, found: Found) -> String {
        let id = self.now();
        let (_, step) = self.document.step(&id).expect("the step at hand stands in the document");
        let step = step.clone();
        let by = if id.ends_with("-second") || step.by == Rank::Technician { "LB" } else { "RO" }.to_owned();
        let open = |h: &&String| !self.state.step(&id).acknowledged.contains_key(*h);
        for hazard in step.hazards.iter().filter(open).cloned().collect::<Vec<_>>() {
            let (step, by) = (id.clone(), by.clone());
            self.want(Intent::Acknowledge { step, hazard, by }).expect("a hazard of the step at hand");
        }
        let entries = self.answers(&step);
        let gates = vec![found; step.gates.len()];
        self.want_with(Intent::Record { step: id.clone(), by, entries }, gates).unwrap_or_else(|e| panic!("{id}: {e}"));
        id
    }

    /// Does steps until this one is at hand.
    pub fn up_to(&mut self, id: &str) -> Vec<String> {
        let mut done = Vec::new();
        while self.now() != id {
            done.push(self.do_it());
            assert!(done.len() < 600, "{id} is never at hand; the last steps were {:?}", &done[done.len() - 20..]);
        }
        done
    }

    /// True when a fact has a value.
    pub fn is(&self, fact: Fact, value: Value) -> bool {
        self.state.fact(fact) == value
    }
}
