//! Readings: what the pads and the height gauge showed at one settle, and the sets of settles that make one judgement.

use crate::known::Known;
use bayhand_procedure::Standing;
use bayhand_vehicle::{Corners, Place};
use chrono::{DateTime, FixedOffset};

/// What was read at one settle.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Its entry; none for the one that is being entered.
    pub number: Option<u64>,
    /// When; none for the one that is being entered.
    pub at: Option<DateTime<FixedOffset>>,
    /// Looks at each pad, kg.
    pub looks_kg: Corners<Vec<f64>>,
    /// Heights, mm.
    pub heights_mm: Corners<f64>,
    /// True when a gate did not hold and somebody let the reading pass with a reason.
    pub let_pass: bool,
}

/// Readings of like state, one for each settle.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadingSet {
    /// Which: `baseline`, `loop`, `locked`, `back.front`, `back.rear`, `final`.
    pub group: String,
    /// One for each settle, in order.
    pub readings: Vec<Reading>,
}

/// The group that a reading step belongs to; none for other steps.
pub fn group_of(step: &str) -> Option<&str> {
    let (group, rest) = step.rsplit_once("read")?;
    let number_or_nothing = rest.is_empty() || rest.strip_prefix('-').is_some_and(|n| n.parse::<u8>().is_ok());
    (number_or_nothing && !group.starts_with("align")).then(|| group.trim_end_matches(['.', '-']))
}

impl Reading {
    /// Mean of the looks at each pad, kg.
    pub fn loads_kg(&self) -> Corners<f64> {
        self.looks_kg.map(|looks| looks.iter().sum::<f64>() / looks.len() as f64)
    }
}

impl ReadingSet {
    /// Mean over the settles, kg.
    pub fn loads_kg(&self) -> Corners<f64> {
        mean(self.readings.iter().map(Reading::loads_kg))
    }

    /// Mean over the settles, mm.
    pub fn heights_mm(&self) -> Corners<f64> {
        mean(self.readings.iter().map(|r| r.heights_mm))
    }

    /// The fewest looks at any pad.
    pub fn looks(&self) -> u32 {
        let fewest = |r: &Reading| r.looks_kg.iter().map(|(_, looks)| looks.len()).min().unwrap_or(1);
        self.readings.iter().map(fewest).min().unwrap_or(1) as u32
    }

    /// Number of settles.
    pub fn settles(&self) -> u32 {
        self.readings.len() as u32
    }

    /// Largest difference between two settles at any corner, kg.
    pub fn spread_kg(&self) -> f64 {
        let loads: Vec<_> = self.readings.iter().map(Reading::loads_kg).collect();
        let spread = |place| {
            let at = loads.iter().map(|l| *l.at(place));
            at.clone().fold(f64::MIN, f64::max) - at.fold(f64::MAX, f64::min)
        };
        Place::ALL.into_iter().map(spread).fold(0.0, f64::max)
    }

    /// When the last settle was read.
    pub fn at(&self) -> Option<DateTime<FixedOffset>> {
        self.readings.iter().rev().find_map(|r| r.at)
    }
}

fn mean(values: impl Iterator<Item = Corners<f64>>) -> Corners<f64> {
    let all: Vec<_> = values.collect();
    Corners::from_fn(|p| all.iter().map(|c| c.at(p)).sum::<f64>() / all.len() as f64)
}

impl Known<'_> {
    /// The newest set of a group, the step at hand included; none when nothing of it was read. Readings that became
    /// void belong to the set only when `void_too` is set: they stay true of the configuration that they were taken in.
    pub fn reading_set(&self, group: &str, void_too: bool) -> Option<ReadingSet> {
        let steps = self.log.document.steps().map(|(_, s)| s.id.as_str()).filter(|id| group_of(id) == Some(group));
        let stands = |id: &str| void_too || self.log.state.standing(id) == Standing::Done;
        let readings: Vec<_> =
            steps.filter(|id| self.draft_of(id).is_some() || stands(id)).filter_map(|id| self.reading(id)).collect();
        (!readings.is_empty()).then(|| ReadingSet { group: group.to_owned(), readings })
    }

    fn reading(&self, step: &str) -> Option<Reading> {
        let looks = Place::ALL.map(|p| self.looks(step, &format!("loads.{}", p.code())));
        if looks.iter().any(Vec::is_empty) {
            return None;
        }
        let [fl, fr, rl, rr] = looks;
        let recorded = if self.draft_of(step).is_some() { None } else { self.last(step) };
        Some(Reading {
            number: recorded.map(|r| r.number),
            at: recorded.map(|r| r.at),
            looks_kg: Corners { fl, fr, rl, rr },
            heights_mm: self.corners(step, "heights")?,
            let_pass: recorded.is_some_and(|r| r.let_pass),
        })
    }

    /// The set that a judgement in the loop rests on: the last round's, or the baseline's before any round.
    pub fn judged_set(&self) -> Option<ReadingSet> {
        if self.rounds() > 0 { self.reading_set("loop", false) } else { None }
            .or_else(|| self.reading_set("baseline", false))
    }

    /// The last set of readings of any group, for the board; void ones too, they are shown with their time.
    pub fn last_set(&self) -> Option<ReadingSet> {
        let last = self.recordings().iter().rev().find_map(|r| group_of(r.step))?;
        self.reading_set(last, true)
    }

    /// All sets that were read while collars were being set, in order: as found, then each round's.
    pub fn rounds_read(&self) -> Vec<ReadingSet> {
        let mut sets: Vec<ReadingSet> = self.reading_set("baseline", true).into_iter().collect();
        let mut round: Vec<Reading> = Vec::new();
        for recording in self.recordings() {
            match group_of(recording.step) {
                Some("loop") => {
                    // Read from the first settle again: what was read of this round before is void.
                    if recording.step == "loop.read-1" {
                        round.clear();
                    }
                    round.extend(of_recording(recording));
                }
                _ if recording.step == "loop.judge" && !round.is_empty() => {
                    sets.push(ReadingSet { group: "loop".into(), readings: std::mem::take(&mut round) });
                }
                _ => {}
            }
        }
        sets
    }
}

fn of_recording(recording: &crate::log::Recording) -> Option<Reading> {
    let [fl, fr, rl, rr] = Place::ALL.map(|p| recording.looks(&format!("loads.{}", p.code())));
    Some(Reading {
        number: Some(recording.number),
        at: Some(recording.at),
        looks_kg: Corners { fl, fr, rl, rr },
        heights_mm: recording.corners("heights")?,
        let_pass: recording.let_pass,
    })
}

#[cfg(test)]
mod tests {
    use super::group_of;

    #[test]
    fn reading_steps_are_told_by_their_names() {
        for (step, group) in [
            ("baseline.read-1", Some("baseline")),
            ("loop.read-2", Some("loop")),
            ("locked.read", Some("locked")),
            ("back.front-read", Some("back.front")),
            ("final.read-2", Some("final")),
            ("align.read", None),
            ("loop.judge", None),
            ("walk.tyres", None),
        ] {
            assert_eq!(group_of(step), group, "{step}");
        }
    }
}
