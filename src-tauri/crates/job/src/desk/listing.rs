//! The list of jobs, whole or as the desk wants to see it, and what somebody did over all of them.

use super::Desk;
use crate::{
    ask::{JobFilter, Refused},
    card::Card,
    show,
    tell::Tell,
    view::{JobRow, PersonRecord, StageCount},
};
use bayhand_procedure::{Event, Path};
use chrono::{DateTime, NaiveDate};
use std::collections::{BTreeMap, BTreeSet};

/// A job with its card; or why it cannot be read.
pub(super) struct Listed {
    pub(super) id: i64,
    opened_at: String,
    pub(super) card: Result<Card, Refused>,
}

impl Desk {
    /// All jobs, the newest first; one that cannot be read is listed as such.
    pub(super) async fn job_rows(&self) -> Vec<JobRow> {
        let tell = self.tell();
        self.listed_jobs().await.iter().map(|listed| row(listed, &tell)).collect()
    }

    /// The jobs that the desk wants to see, and the cars and people that it can choose from.
    pub(super) async fn chosen_jobs(&self, filter: &JobFilter) -> (Vec<JobRow>, Vec<String>, Vec<String>) {
        let tell = self.tell();
        let listed = self.listed_jobs().await;
        let cards = || listed.iter().filter_map(|listed| listed.card.as_ref().ok());
        let cars: BTreeSet<String> = cards().map(|card| card.car.clone()).collect();
        let people: BTreeSet<String> = cards().flat_map(|card| card.people.clone()).collect();
        let rows = listed.iter().filter(|listed| fits(listed, filter)).map(|listed| row(listed, &tell)).collect();
        (rows, cars.into_iter().collect(), people.into_iter().collect())
    }

    /// Every job of the book, the newest first.
    pub(super) async fn listed_jobs(&self) -> Vec<Listed> {
        let Ok(jobs) = self.book.jobs().await else { return Vec::new() };
        let mut listed = Vec::new();
        for job in jobs.into_iter().rev() {
            let id = job.id.0;
            // A job without a card was last written by another version of the program.
            let card = match job.card.as_deref().and_then(Card::read) {
                Some(card) => Ok(card),
                None => self.read(id).await.map(|log| Card::of(&log)),
            };
            listed.push(Listed { id, opened_at: job.opened_at, card });
        }
        listed
    }

    /// What somebody did over all jobs: steps by stage, tries that a gate held, and the jobs.
    ///
    /// # Errors
    /// The book cannot be read.
    pub async fn person_record(&self, initials: &str) -> Result<PersonRecord, Refused> {
        let tell = self.tell();
        let (mut done, mut held): (BTreeMap<String, u32>, BTreeMap<String, u32>) = Default::default();
        let mut order: Vec<String> = Vec::new();
        let mut jobs = Vec::new();
        let mut waived = 0;
        for listed in self.listed_jobs().await {
            let of_them = listed.card.as_ref().is_ok_and(|card| card.people.iter().any(|one| one == initials));
            if !of_them {
                continue;
            }
            let log = self.read(listed.id).await?;
            jobs.push(row(&listed, &tell));
            for stage in &log.document.stages {
                if stage.path != Path::Stopped && !order.contains(&stage.id) {
                    order.push(stage.id.clone());
                }
            }
            let stage = |step: &str| log.document.step(step).map(|(stage, _)| stage.id.clone()).unwrap_or_default();
            let mut tried_by: BTreeMap<&str, &str> = BTreeMap::new();
            for line in &log.lines {
                match &line.happened.event {
                    Event::Done { step, by, .. } if by == initials => *done.entry(stage(step)).or_default() += 1,
                    Event::Tried { step, by, .. } => {
                        tried_by.insert(step, by);
                        if by == initials {
                            *held.entry(stage(step)).or_default() += 1;
                        }
                    }
                    Event::Waived { step, .. } if tried_by.get(step.as_str()) == Some(&initials) => waived += 1,
                    _ => {}
                }
            }
        }
        let count = |of: &BTreeMap<String, u32>, stage: &String| of.get(stage).copied().unwrap_or_default();
        let row = |stage: &String| {
            let (done, held) = (count(&done, stage), count(&held, stage));
            (done + held > 0).then(|| StageCount { title: tell.text(&format!("stage-{stage}"), &[]), done, held })
        };
        let totals = [
            ("jobs", jobs.len().to_string()),
            ("steps", done.values().sum::<u32>().to_string()),
            ("held", held.values().sum::<u32>().to_string()),
            ("waived", waived.to_string()),
        ];
        Ok(PersonRecord {
            says: tell.text("person-record", &totals),
            stages: order.iter().filter_map(row).collect(),
            jobs,
        })
    }
}

fn row(listed: &Listed, tell: &Tell) -> JobRow {
    match &listed.card {
        Ok(card) => show::card_row(listed.id, card, tell),
        Err(why) => JobRow {
            id: listed.id,
            title: tell.text("job-unnamed", &[("number", listed.id.to_string())]),
            state: "unreadable".into(),
            says: why.says.clone(),
        },
    }
}

/// Whether a job is one of those that are wanted. A job that cannot be read is never hidden: somebody has to see to it.
fn fits(listed: &Listed, filter: &JobFilter) -> bool {
    let Ok(card) = &listed.card else { return true };
    let day = |text: &str| text.parse::<NaiveDate>().ok();
    let opened = DateTime::parse_from_rfc3339(&listed.opened_at).ok().map(|at| at.date_naive());
    let begun_by = |until| opened.is_none_or(|opened| opened <= until);
    (filter.car.is_empty() || card.car == filter.car)
        && (filter.person.is_empty() || card.people.contains(&filter.person))
        && (!filter.departed || card.departures > 0)
        && day(&filter.from).is_none_or(|from| card.at.date_naive() >= from)
        && day(&filter.until).is_none_or(begun_by)
}
