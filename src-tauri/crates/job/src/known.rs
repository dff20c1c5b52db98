//! What is known of the job: the values that were used, the newest first, with the step at hand on top.

use crate::{
    draft::Draft,
    log::{Log, Recording},
};
use bayhand_vehicle::{Corners, Place};

/// The record and, when a step is being judged, what was entered for it.
pub struct Known<'a> {
    /// The record.
    pub log: &'a Log,
    /// The step at hand.
    pub draft: Option<&'a Draft>,
    recordings: Vec<Recording<'a>>,
}

impl<'a> Known<'a> {
    /// What the record tells.
    pub fn of(log: &'a Log) -> Known<'a> {
        Known { log, draft: None, recordings: log.recordings() }
    }

    /// The same with the step at hand on top.
    pub fn with(log: &'a Log, draft: &'a Draft) -> Known<'a> {
        Known { log, draft: Some(draft), recordings: log.recordings() }
    }

    /// Recorded and accepted steps, in order.
    pub fn recordings(&self) -> &[Recording<'a>] {
        &self.recordings
    }

    /// The last accepted recording of a step.
    pub fn last(&self, step: &str) -> Option<&Recording<'a>> {
        self.recordings.iter().rev().find(|r| r.step == step)
    }

    /// The draft when it is of this step.
    pub fn draft_of(&self, step: &str) -> Option<&'a Draft> {
        self.draft.filter(|d| d.step == step)
    }

    /// Values used under a key of a step, one for each look; empty when there is none.
    pub fn looks(&self, step: &str, key: &str) -> Vec<f64> {
        if let Some(draft) = self.draft_of(step) {
            return draft.used.get(key).cloned().unwrap_or_default();
        }
        self.last(step).map_or_else(Vec::new, |r| r.looks(key))
    }

    /// The first value used under a key of a step.
    pub fn value(&self, step: &str, key: &str) -> Option<f64> {
        self.looks(step, key).first().copied()
    }

    /// A text or the id of an option under a key of a step.
    pub fn text(&self, step: &str, key: &str) -> Option<&str> {
        if let Some(draft) = self.draft_of(step) {
            return draft.entries.get(key).map(|e| e.text.as_str());
        }
        self.last(step).and_then(|r| r.entries.get(key)).map(|e| e.text.as_str())
    }

    /// A value for each corner.
    pub fn corners(&self, step: &str, input: &str) -> Option<Corners<f64>> {
        let values = Place::ALL.map(|p| self.value(step, &format!("{input}.{}", p.code())));
        let [fl, fr, rl, rr] = values;
        Some(Corners { fl: fl?, fr: fr?, rl: rl?, rr: rr? })
    }

    /// A value for each axle, front first.
    pub fn axles(&self, step: &str, input: &str) -> Option<(f64, f64)> {
        Some((self.value(step, &format!("{input}.front"))?, self.value(step, &format!("{input}.rear"))?))
    }

    /// Turns made at each collar since the job began; positive raises the car.
    pub fn turns_made(&self) -> Corners<f64> {
        self.turns_made_before(u64::MAX)
    }

    /// The same up to an entry, which does not count.
    pub fn turns_made_before(&self, number: u64) -> Corners<f64> {
        let mut turns = Corners::same(0.0);
        for recording in self.recordings.iter().filter(|r| r.number < number) {
            for place in Place::ALL {
                let key = match recording.step {
                    "rough.set" => format!("turns.{}", place.code()),
                    step if step.strip_prefix("loop.turn-") == Some(place.code()) => "turns".to_owned(),
                    _ => continue,
                };
                *turns.at_mut(place) += recording.looks(&key).first().copied().unwrap_or(0.0);
            }
        }
        turns
    }

    /// Collar travel for one turn at a corner, mm; 0 before the adjusters were entered.
    pub fn pitch_mm(&self, place: Place) -> f64 {
        self.axles("intake.adjusters", "pitch").map_or(0.0, |(front, rear)| axle_of(place, front, rear))
    }

    /// How many rounds of turning were begun.
    pub fn rounds(&self) -> u32 {
        let begun = |r: &&Recording| r.step == "loop.judge" && r.entries.get("next").is_some_and(|e| e.text != "go-on");
        self.recordings.iter().filter(begun).count() as u32
    }
}

/// The front's or the rear's of two values.
pub fn axle_of<T>(place: Place, front: T, rear: T) -> T {
    match place.axle() {
        bayhand_vehicle::Axle::Front => front,
        bayhand_vehicle::Axle::Rear => rear,
    }
}
