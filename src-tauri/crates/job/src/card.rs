//! What the list of jobs shows of a job, kept beside the record so that the list need not read every job.

use crate::body::Opened;
use crate::log::Log;
use crate::show;
use bayhand_procedure::{Document, Event, State};
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};

/// A job in the list: codes and names, no words. Made of the record and of nothing else; whoever verifies the book makes
/// it anew and compares.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Card {
    /// The car's name.
    pub car: String,
    /// True for a simulated car.
    pub practice: bool,
    /// How the job stands: `working`, `held`, `for-review`, `stopping`, `sealed`, `stopped`.
    pub state: String,
    /// Code of the stage at hand; none when the job has ended.
    pub stage: Option<String>,
    /// When the last entry was written.
    pub at: DateTime<FixedOffset>,
    /// Who signed on.
    pub people: Vec<String>,
    /// How often it departed from the procedure.
    pub departures: usize,
}

impl Card {
    /// The card of a job as its entries make it.
    pub fn of(log: &Log) -> Card {
        Card::new(&log.opened, &log.document, &log.state, log.at(), departures(log))
    }

    /// The card of a job that stands so.
    pub fn new(
        opened: &Opened,
        document: &Document,
        state: &State,
        at: DateTime<FixedOffset>,
        departures: usize,
    ) -> Card {
        Card {
            people: state.people().keys().cloned().collect(),
            departures,
            car: opened.car.clone(),
            practice: opened.practice.is_some(),
            state: show::state_code(document, state).to_owned(),
            stage: show::stage_at_hand(document, state),
            at,
        }
    }

    /// The text that is kept.
    pub fn text(&self) -> String {
        // Names, codes and a time always have a JSON form.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// Reads a card; none when it is of another form, which a later or an earlier program may have.
    pub fn read(text: &str) -> Option<Card> {
        serde_json::from_str(text).ok()
    }
}

/// True for an event that is told among the departures from the procedure.
pub fn departs(event: &Event) -> bool {
    matches!(event, Event::Waived { .. } | Event::Reopened { .. } | Event::Tried { .. } | Event::StopBegun { .. })
}

/// How often a job departed from the procedure so far; a procedure that is not proved is the first.
pub fn departures(log: &Log) -> usize {
    usize::from(log.opened.signed_for.is_some()) + log.lines.iter().filter(|l| departs(&l.happened.event)).count()
}
