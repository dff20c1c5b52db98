//! Hands-free: from sound as it comes in to each thing said, whole, and when it is to be worked out. Pure.
//!
//! A person has ended only once it has been silent for a while, and working out what they said takes about as long. So it is
//! begun in the first pause, with what there is by then. When they go on, what came of it is thrown away; when the silence
//! goes on, it is there.

use super::activity::{Activity, Change, FRAME};
use crate::sound::{HERTZ, MOST_SECONDS};

/// Of what comes before speech is noticed so much belongs to it.
const BEFORE: usize = HERTZ as usize / 2;

/// Most samples of one thing said.
pub const MOST: usize = (MOST_SECONDS * HERTZ) as usize - FRAME;

/// What happened in the sound that came in.
#[derive(Clone, Debug, PartialEq)]
pub enum Event<T> {
    /// Somebody began to speak.
    Begins,
    /// They ended.
    Ends {
        /// What they said.
        sound: Vec<f32>,
        /// What came of it in the pause that became its end.
        worked_out: Option<T>,
    },
}

/// What is being said; `T` is what comes of it.
#[derive(Debug)]
pub struct Utterance<T> {
    sound: Vec<f32>,
    /// How much of it was looked at.
    seen: usize,
    activity: Activity,
    phase: Phase<T>,
}

#[derive(Debug)]
enum Phase<T> {
    Quiet,
    Speaks,
    /// They may have ended, so many samples from the beginning.
    Pauses(usize),
    /// The same, and what came of it.
    Worked(Option<T>),
}

impl<T> Default for Utterance<T> {
    fn default() -> Self {
        Self { sound: Vec::new(), seen: 0, activity: Activity::default(), phase: Phase::Quiet }
    }
}

impl<T> Utterance<T> {
    /// Takes what came in.
    pub fn add(&mut self, sound: &[f32]) {
        self.sound.extend_from_slice(sound);
    }

    /// True from the beginning of something said to its end.
    pub fn is_spoken(&self) -> bool {
        !matches!(self.phase, Phase::Quiet)
    }

    /// The next event in what came in; `None` once all of it was looked at.
    pub fn next_event(&mut self) -> Option<Event<T>> {
        while let Some(frame) = self.sound.get(self.seen..self.seen + FRAME) {
            let change = self.activity.frame(frame);
            self.seen += FRAME;
            match change {
                Some(Change::Begins) => {
                    self.phase = Phase::Speaks;
                    return Some(Event::Begins);
                }
                Some(Change::Pauses) => self.phase = Phase::Pauses(self.seen),
                Some(Change::GoesOn) => self.phase = Phase::Speaks,
                Some(Change::Ends) => return Some(self.end()),
                None if self.is_spoken() && self.seen >= MOST => {
                    self.activity = Activity::default();
                    return Some(self.end());
                }
                None => {}
            }
            if !self.is_spoken() && self.seen > BEFORE {
                self.sound.drain(..self.seen - BEFORE);
                self.seen = BEFORE;
            }
        }
        None
    }

    /// What was said until a pause that still lasts, where nothing was worked out yet.
    pub fn pause(&self) -> Option<&[f32]> {
        match self.phase {
            Phase::Pauses(samples) => self.sound.get(..samples),
            _ => None,
        }
    }

    /// Keeps what came of [`Self::pause`] until they go on; `None`: nothing could be worked out.
    pub fn keep(&mut self, worked_out: Option<T>) {
        if let Phase::Pauses(_) = self.phase {
            self.phase = Phase::Worked(worked_out);
        }
    }

    fn end(&mut self) -> Event<T> {
        let sound = self.sound.drain(..self.seen).collect();
        self.seen = 0;
        let worked_out = match std::mem::replace(&mut self.phase, Phase::Quiet) {
            Phase::Worked(worked_out) => worked_out,
            _ => None,
        };
        Event::Ends { sound, worked_out }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Tenths of a second: `s` of speech, `k` with a knock in it, `-` of silence.
    fn tenths(said: &str) -> Vec<f32> {
        let tenth = |kind: char| {
            (0..HERTZ as usize / 10).map(move |n| {
                let loud = kind == 's' || kind == 'k' && n < FRAME;
                (n as f32 * 0.3).sin() * if loud { 0.3 } else { 1e-3 }
            })
        };
        said.chars().flat_map(tenth).collect()
    }

    /// What happens when this is said after half a second of quiet, looked at each tenth. Worked out is how long it was.
    fn events(said: &str) -> Vec<&'static str> {
        let mut utterance = Utterance::default();
        let mut events = Vec::new();
        for tenth in tenths(&format!("-----{said}")).chunks(HERTZ as usize / 10) {
            utterance.add(tenth);
            while let Some(event) = utterance.next_event() {
                events.push(match event {
                    Event::Begins => "begins",
                    Event::Ends { worked_out: None, .. } => "ends",
                    Event::Ends { sound, worked_out: Some(length) } => {
                        assert_eq!(sound.len() - length, 15 * FRAME, "the pause was worked out in which it ended");
                        "ends, worked out"
                    }
                });
            }
            if let Some(length) = utterance.pause().map(<[f32]>::len) {
                events.push("works out");
                utterance.keep(Some(length));
            }
        }
        events
    }

    fn check(said: &str, expected: &[&str]) {
        assert_eq!(events(said), expected, "{said}");
    }

    #[test]
    fn nothing_is_worked_out_of_silence_or_a_knock() {
        check("----------", &[]);
        check("k---------", &[]);
    }

    #[test]
    fn what_is_said_is_worked_out_in_its_first_pause_and_kept_when_it_ends() {
        check("ssss------", &["begins", "works out", "ends, worked out"]);
    }

    #[test]
    fn what_was_worked_out_is_thrown_away_when_they_go_on() {
        check("ssss---ss------", &["begins", "works out", "works out", "ends, worked out"]);
        check("ssss---ss---ss------", &["begins", "works out", "works out", "works out", "ends, worked out"]);
        check("ssss---k-------", &["begins", "works out", "works out", "ends, worked out"]);
    }

    #[test]
    fn a_short_stop_is_no_pause() {
        check("ssss-ss------", &["begins", "works out", "ends, worked out"]);
    }

    #[test]
    fn two_things_said_are_two() {
        let once = ["begins", "works out", "ends, worked out"];
        check("ssss------ssss------", &once.repeat(2));
    }

    /// Only what has not been looked at when it came in can have ended by then: nothing is worked out for nothing.
    #[test]
    fn a_pause_that_is_over_when_it_is_looked_at_is_not_worked_out() {
        let mut utterance: Utterance<()> = Utterance::default();
        utterance.add(&tenths("-----ssss---ss"));
        assert_eq!(utterance.next_event(), Some(Event::Begins));
        assert_eq!(utterance.next_event(), None);
        assert!(utterance.is_spoken() && utterance.pause().is_none(), "they went on long ago");
    }

    #[test]
    fn what_does_not_end_is_ended() {
        let events = events(&"ssss-".repeat(80));
        assert_eq!(events[..2], ["begins", "ends"]);
    }
}
