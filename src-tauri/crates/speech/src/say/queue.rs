//! Which line is said, which waits, which is cut.
//!
//! A new line cuts an old one, and takes the place of one that waits. A hazard is never cut, and no hazard is lost: they
//! are said one after the other, before any other line. Nothing begins while a person speaks; a line under way stops when a person begins,
//! unless it is a hazard.

use std::collections::VecDeque;

/// What a line is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// A hazard: said to its end.
    Hazard,
    /// Anything else: cut by what is newer.
    Plain,
}

/// Something to be said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// Its words, numbers already spelled out.
    pub words: String,
    /// What it is.
    pub weight: Weight,
}

/// What happens.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Event {
    /// There is something to say.
    Say(Line),
    /// The line under way has come to its end, or could not be said.
    Said,
    /// A person begins to speak.
    PersonBegins,
    /// The person has ended.
    PersonEnds,
    /// Nothing more is to be said; a hazard under way still comes to its end.
    Hush,
}

/// What to do with the voice.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Act {
    /// Begin this line.
    Begin(Line),
    /// Stop the line under way at once. No [`Event::Said`] follows for it.
    Cut,
}

/// The lines.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Queue {
    saying: Option<Line>,
    hazards: VecDeque<Line>,
    plain: Option<Line>,
    person_speaks: bool,
}

impl Queue {
    /// What to do now that this has happened, in order.
    pub fn after(&mut self, event: Event) -> Vec<Act> {
        let mut acts = Vec::new();
        match event {
            Event::Say(line) => {
                match line.weight {
                    Weight::Hazard => self.hazards.push_back(line),
                    Weight::Plain => self.plain = Some(line),
                }
                self.cut(&mut acts);
            }
            Event::Said => self.saying = None,
            Event::PersonBegins => {
                self.person_speaks = true;
                self.cut(&mut acts);
            }
            Event::PersonEnds => self.person_speaks = false,
            Event::Hush => {
                self.hazards.clear();
                self.plain = None;
                self.cut(&mut acts);
            }
        }
        if self.saying.is_none() && !self.person_speaks {
            self.saying = self.hazards.pop_front().or_else(|| self.plain.take());
            acts.extend(self.saying.clone().map(Act::Begin));
        }
        acts
    }

    /// The line under way.
    pub fn saying(&self) -> Option<&Line> {
        self.saying.as_ref()
    }

    fn cut(&mut self, acts: &mut Vec<Act>) {
        if self.saying.take_if(|line| line.weight == Weight::Plain).is_some() {
            acts.push(Act::Cut);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plain(words: &str) -> Line {
        Line { words: words.to_owned(), weight: Weight::Plain }
    }

    fn hazard(words: &str) -> Line {
        Line { words: words.to_owned(), weight: Weight::Hazard }
    }

    /// Each event with what must follow.
    fn check(story: &[(Event, &[Act])]) {
        let mut queue = Queue::default();
        for (number, (event, acts)) in story.iter().enumerate() {
            assert_eq!(queue.after(event.clone()), *acts, "event {number}: {event:?}");
        }
    }

    #[test]
    fn a_new_line_cuts_an_old_one() {
        check(&[
            (Event::Say(plain("one")), &[Act::Begin(plain("one"))]),
            (Event::Say(plain("two")), &[Act::Cut, Act::Begin(plain("two"))]),
            (Event::Said, &[]),
        ]);
    }

    #[test]
    fn a_hazard_is_never_cut_and_only_the_newest_line_waits_for_it() {
        check(&[
            (Event::Say(hazard("car raised")), &[Act::Begin(hazard("car raised"))]),
            (Event::Say(plain("one")), &[]),
            (Event::PersonBegins, &[]),
            (Event::PersonEnds, &[]),
            (Event::Hush, &[]),
            (Event::Say(plain("two")), &[]),
            (Event::Say(plain("three")), &[]),
            (Event::Said, &[Act::Begin(plain("three"))]),
        ]);
    }

    #[test]
    fn every_hazard_is_said_before_any_other_line() {
        check(&[
            (Event::Say(plain("step")), &[Act::Begin(plain("step"))]),
            (Event::Say(hazard("first")), &[Act::Cut, Act::Begin(hazard("first"))]),
            (Event::Say(plain("line")), &[]),
            (Event::Say(hazard("second")), &[]),
            (Event::Said, &[Act::Begin(hazard("second"))]),
            (Event::Said, &[Act::Begin(plain("line"))]),
        ]);
    }

    #[test]
    fn nothing_begins_over_a_speaking_person() {
        check(&[
            (Event::Say(plain("step")), &[Act::Begin(plain("step"))]),
            (Event::PersonBegins, &[Act::Cut]),
            (Event::Say(plain("two one four")), &[]),
            (Event::Say(hazard("hot")), &[]),
            (Event::PersonEnds, &[Act::Begin(hazard("hot"))]),
            (Event::Said, &[Act::Begin(plain("two one four"))]),
        ]);
    }

    proptest::proptest! {
        /// Whatever happens in whatever order: one line at a time, no hazard cut or lost, nothing begun over a person.
        #[test]
        fn the_rules_hold_in_any_order(moves in proptest::collection::vec(0_u8..6, 0..60)) {
            let mut queue = Queue::default();
            let (mut under_way, mut person, mut owed) = (None::<Line>, false, VecDeque::new());
            for (number, step) in moves.iter().enumerate() {
                let event = match step {
                    0 => Event::Say(plain(&number.to_string())),
                    1 => { owed.push_back(number.to_string()); Event::Say(hazard(&number.to_string())) }
                    2 => { under_way = None; Event::Said }
                    3 => { person = true; Event::PersonBegins }
                    4 => { person = false; Event::PersonEnds }
                    _ => { owed.clear(); Event::Hush }
                };
                for act in queue.after(event) {
                    match act {
                        Act::Cut => proptest::prop_assert_eq!(under_way.take().map(|line| line.weight), Some(Weight::Plain)),
                        Act::Begin(line) => {
                            proptest::prop_assert!(under_way.is_none(), "one line at a time");
                            proptest::prop_assert!(!person, "not over a person");
                            if line.weight == Weight::Hazard {
                                proptest::prop_assert_eq!(owed.pop_front(), Some(line.words.clone()), "in order");
                            } else {
                                proptest::prop_assert!(owed.is_empty(), "hazards first");
                            }
                            under_way = Some(line);
                        }
                    }
                }
            }
        }
    }
}
