//! Beginning a job, and appending to it: events with the card and with what becomes of the job, in one transaction.

use super::{Desk, body_text};
use crate::{
    ask::{Ask, PracticeAsk, Refused, Wish},
    body::{Amended, Happened, Opened, Practice, What},
    card::{Card, departs, departures},
    log::{Amendment, Line, Log, recorded, shipped},
    scenario::MOST_FAULTS,
};
use bayhand_jobbook::event::Closed;
use bayhand_jobbook::{Along, JobId, Mark, SealingKey};
use bayhand_practice::Fault;
use bayhand_procedure::{Event, Kind, SHIPPED, Status, apply, hash};
use chrono::SubsecRound as _;

impl Desk {
    /// Begins a job and leaves it open.
    pub(super) async fn begin(
        &self,
        open: &mut Option<Log>,
        car: &str,
        practice: Option<&PracticeAsk>,
    ) -> Result<(), Refused> {
        self.none_open(open.as_ref())?;
        let practice = match practice {
            Some(ask) => Some(self.practice(&self.by_scenario(ask).await?)?),
            None => None,
        };
        let car = car.trim();
        if car.is_empty() || car.chars().count() > 60 {
            let mut refused = self.refuse("car-name");
            refused.field = Some("car".into());
            return Err(refused);
        }
        // A real car is worked on by people who show who they are; a simulated one by whoever wants to look.
        if practice.is_none() && !self.roster().await?.authenticates() {
            return Err(self.refuse("first-supervisor"));
        }
        let chosen = self.chosen();
        if chosen.as_ref().is_some_and(|chosen| !chosen.may_begin()) {
            return Err(self.refuse("procedure-not-proved"));
        }
        let (text, document) = match &chosen {
            Some(chosen) => (chosen.text.as_str(), chosen.document.clone()),
            None => (SHIPPED, shipped().map_err(|why| self.unreadable(&why))?),
        };
        let opened = Opened {
            car: car.to_owned(),
            known: self.learned_of(car, practice.as_ref().map(|p| p.seed)).await?,
            practice,
            document_hash: hash(text),
            document: text.to_owned(),
            signed_for: chosen.as_ref().and_then(|chosen| chosen.signed.clone()),
        };
        let body = body_text(What::Opened(Box::new(opened.clone())))?;
        let now = self.clock.now().trunc_subsecs(3);
        let card =
            Card::new(&opened, &document, &Default::default(), now, usize::from(opened.signed_for.is_some())).text();
        let (id, _) = self.book.open_job_with(&body, Some(&card), now).await.map_err(|e| self.by_book(&e))?;
        self.begun_with();
        let mut log = self.read(id.0).await?;
        self.sign_on_at_car(&mut log).await?;
        *open = Some(log);
        Ok(())
    }

    fn practice(&self, ask: &PracticeAsk) -> Result<Practice, Refused> {
        let mut faults = ask.faults.clone();
        let many = faults.len() + usize::from(ask.drawn);
        if many > MOST_FAULTS {
            return Err(Refused { field: Some("faults".into()), ..self.refuse("practice-faults") });
        }
        Fault::draw(ask.seed, many, &mut faults);
        Ok(Practice { seed: ask.seed, faults })
    }

    /// Appends what happened to a job, all or none, and applies it. `key` is the sealer's, when they have one.
    pub(super) async fn write(
        &self,
        log: &mut Log,
        happened: Vec<Happened>,
        key: Option<&SealingKey>,
    ) -> Result<(), Refused> {
        let at = self.clock.now().trunc_subsecs(3);
        let before = log.state.status;
        let state = happened.iter().fold(log.state.clone(), |state, h| apply(&log.document, state, &h.event));
        let departed = departures(log) + happened.iter().filter(|h| departs(&h.event)).count();
        let card = Card::new(&log.opened, &log.document, &state, at, departed).text();
        let last = happened.iter().rev().map(|h| &h.event);
        let mark = match (before, state.status) {
            (Status::Sealed, Status::Working) => {
                let reopened = last.into_iter().find_map(|event| match event {
                    Event::Reopened { by, reason, .. } => Some((by, reason)),
                    _ => None,
                });
                reopened.map_or(Mark::GoesOn, |(by, reason)| Mark::OpensAgain { by, reason })
            }
            (_, Status::Sealed) => {
                let sealer = last.into_iter().find_map(|event| match event {
                    Event::Sealed { by } => Some(by),
                    _ => None,
                });
                match (key, sealer) {
                    (Some(key), Some(by)) => Mark::IsSealed { by, key },
                    _ => Mark::Ends(Closed::Unsigned),
                }
            }
            (_, Status::Stopped) => Mark::Ends(Closed::Stopped),
            _ => Mark::GoesOn,
        };
        let bodies =
            happened.iter().map(|h| body_text(What::Happened(Box::new(h.clone())))).collect::<Result<Vec<_>, _>>()?;
        let along = Along { card: Some(&card), mark };
        let recorded = self.book.append_with(JobId(log.id), log.revision(), &bodies, along, at).await;
        let recorded = recorded.map_err(|e| self.by_book(&e))?;
        for (entry, happened) in recorded.into_iter().zip(happened) {
            log.push(Line { number: entry.number, at, happened }, entry.hash);
        }
        if matches!(log.state.status, Status::Sealed | Status::Stopped) {
            self.back_up_after_end().await;
        }
        Ok(())
    }

    /// Corrects a text that was recorded. What gates or figures rest on is not corrected but measured again: its step is
    /// opened again.
    pub(super) async fn amend(&self, log: Option<&mut Log>, ask: &Ask) -> Result<(), Refused> {
        let Wish::Amend { entry, key, text, reason } = &ask.wish else { return Err(self.refuse("no-job")) };
        let log = log.ok_or_else(|| self.refuse("no-job"))?;
        if ask.revision != log.revision() {
            return Err(self.refuse("stale"));
        }
        if matches!(log.state.status, Status::Sealed | Status::Stopped) {
            return Err(self.refuse("ended"));
        }
        let rank = *log.state.people().get(&ask.by).ok_or_else(|| self.refuse_by("not-signed-on", &ask.by))?;
        let step = log.line(*entry).and_then(|line| recorded(&line.happened.event)).map(|(step, _)| step);
        let step = step.and_then(|step| log.document.step(step)).map(|(_, step)| step);
        let free = step.filter(|s| s.gates.is_empty() && s.input_of(key).is_some_and(|i| i.kind == Kind::Text));
        let Some(step) = free else { return Err(self.refuse("amend")) };
        if rank < step.by {
            return Err(self.refuse("amend-rank"));
        }
        let from = log.entered_at(*entry).and_then(|entries| entries.get(key)).map(|e| e.text.clone());
        let Some(from) = from else { return Err(self.refuse("amend")) };
        let (to, reason) = (text.trim().to_owned(), reason.trim().to_owned());
        if to.is_empty() || to == from {
            return Err(Refused { field: Some("text".into()), ..self.refuse("amend-text") });
        }
        if reason.is_empty() {
            return Err(Refused { field: Some("reason".into()), ..self.refuse("no-reason") });
        }
        let amended = Amended { of: *entry, key: key.clone(), from, to, by: ask.by.clone(), reason };
        let body = body_text(What::Amended(Box::new(amended.clone())))?;
        let at = self.clock.now().trunc_subsecs(3);
        let card = Card::new(&log.opened, &log.document, &log.state, at, departures(log)).text();
        let along = Along { card: Some(&card), mark: Mark::GoesOn };
        let written = self.book.append_with(JobId(log.id), log.revision(), &[body], along, at).await;
        for entry in written.map_err(|e| self.by_book(&e))? {
            log.amend(Amendment { number: entry.number, at, amended: amended.clone() }, entry.hash);
        }
        Ok(())
    }
}
