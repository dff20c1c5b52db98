//! The engine that is explored: the shipped `decide` and `apply`, or, in tests, one with a line changed.

use crate::{Document, Event, Evidence, Intent, Refusal, State};

/// The form of `decide`.
pub type Decide = dyn Fn(&Document, &State, &Intent, &Evidence) -> Result<Event, Refusal> + Sync;

/// The form of `apply`.
pub type Apply = dyn Fn(&Document, State, &Event) -> State + Sync;

/// What turns a state and an intent into the next state.
#[derive(Clone, Copy)]
pub struct Engine<'f> {
    /// `decide`.
    pub decide: &'f Decide,
    /// `apply`.
    pub apply: &'f Apply,
}

impl Engine<'static> {
    /// The one that every job runs on.
    pub fn shipped() -> Engine<'static> {
        Engine { decide: &crate::decide, apply: &crate::apply }
    }
}

impl Engine<'_> {
    /// Decides and applies.
    ///
    /// # Errors
    /// The refusal of `decide`.
    pub fn take(
        &self,
        document: &Document,
        state: State,
        intent: &Intent,
        evidence: &Evidence,
    ) -> Result<(State, Event), Refusal> {
        let event = (self.decide)(document, &state, intent, evidence)?;
        let state = (self.apply)(document, state, &event);
        Ok((state, event))
    }
}
