//! Who acts: signing on by PIN, and sealing, waiving and sending back with proof.
//!
//! A book that knows nobody works by names alone. From its first supervisor on, whoever acts at the car has shown their
//! PIN ([`Desk::hand_over`]), and whoever seals their passphrase. How the list of people is kept stands in `staff`.

use super::Desk;
use crate::{
    ask::{Ask, CorrectAsk, Refused, Wish},
    body::{Happened, Proof},
    log::Log,
    view::{ReviewView, StepView},
};
use bayhand_jobbook::{Person, Roster, SealingKey, Secret};
use bayhand_procedure::{Event, Intent, Rank, apply, decide};
use chrono::{DateTime, FixedOffset};
use std::sync::{Mutex, PoisonError};

/// How long nobody has to touch the window at the car until the PIN is asked for again, min: long enough for the longest
/// work between two entries, too short for a break.
const IDLE_MIN: i64 = 30;

/// Who is at the car, and when they last did something there.
#[derive(Debug, Default)]
pub(super) struct AtCar(Mutex<Option<(String, DateTime<FixedOffset>)>>);

impl AtCar {
    fn set(&self, initials: &str, now: DateTime<FixedOffset>) {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner) = Some((initials.to_owned(), now));
    }

    pub(super) fn get(&self, now: DateTime<FixedOffset>) -> Option<String> {
        self.until(now).map(|(initials, _)| initials)
    }

    /// Who is at the car, and in how many seconds their PIN is asked for again.
    pub(super) fn until(&self, now: DateTime<FixedOffset>) -> Option<(String, i64)> {
        let (initials, last) = self.0.lock().unwrap_or_else(PoisonError::into_inner).clone()?;
        let left_s = IDLE_MIN * 60 - (now - last).num_seconds();
        (left_s > 0).then_some((initials, left_s))
    }

    pub(super) fn nobody(&self) {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner) = None;
    }
}

impl Desk {
    pub(super) async fn roster(&self) -> Result<Roster, Refused> {
        self.book.roster().await.map_err(|e| self.by_book(&e))
    }

    pub(super) fn refuse_by(&self, code: &str, by: &str) -> Refused {
        let says = self.tell().text(&format!("refused-{code}"), &[("by", by.to_owned())]);
        Refused { code: code.to_owned(), field: None, says }
    }

    /// In a book that knows people: whoever asks is the one at the car, and a trainee is not alone at what they may not
    /// do alone.
    pub(super) async fn may_act(&self, log: Option<&Log>, ask: &Ask) -> Result<(), Refused> {
        let roster = self.roster().await?;
        if !roster.authenticates() {
            return Ok(());
        }
        let now = self.clock.now();
        let at_car = self.at_car.get(now).ok_or_else(|| self.refuse("pin-first"))?;
        match &ask.wish {
            Wish::SignOn { .. } => return Err(self.refuse("with-pin")),
            Wish::Begin { .. } | Wish::TakeUp { .. } | Wish::SetAside => {}
            _ if ask.by != at_car => return Err(self.refuse_by("hand-over", &ask.by)),
            Wish::Acknowledge { step, .. } | Wish::Record { step, .. } => {
                if let (Some(log), Ok(member)) = (log, roster.member(&at_car)) {
                    self.may_be_alone(log, &member.person, step)?;
                }
            }
            _ => {}
        }
        self.at_car.set(&at_car, now);
        Ok(())
    }

    fn may_be_alone(&self, log: &Log, person: &Person, step: &str) -> Result<(), Refused> {
        let accompanied =
            log.state.people().iter().any(|(other, rank)| *other != person.initials && *rank >= Rank::Technician);
        let stage = log.document.step(step).map_or("", |(stage, _)| stage.id.as_str());
        let listed = person.alone.iter().any(|id| id == step || id == stage);
        if person.rank != bayhand_jobbook::Rank::Trainee || accompanied || listed {
            return Ok(());
        }
        Err(self.refuse_by("not-alone", &person.initials))
    }

    /// In a book that knows people: whoever is at the car is signed on at the job that they begin or take up.
    pub(super) async fn sign_on_at_car(&self, log: &mut Log) -> Result<(), Refused> {
        let roster = self.roster().await?;
        let Some(initials) = self.at_car.get(self.clock.now()).filter(|_| roster.authenticates()) else {
            return Ok(());
        };
        let member = roster.member(&initials).map_err(|e| self.by_book(&e.into()))?;
        let happened: Vec<_> = signs_on(log, &member.person, Proof::Pin).into_iter().collect();
        if happened.is_empty() || log.ended() { Ok(()) } else { self.write(log, happened, None).await }
    }

    /// Somebody takes over at the car by their PIN, where the job stands. They are signed on at the open job, if they are
    /// not yet, with their rank as it is now.
    ///
    /// # Errors
    /// A refusal in words; a wrong PIN is recorded as such.
    pub async fn hand_over(&self, initials: &str, pin: Secret) -> Result<StepView, Refused> {
        let mut open = self.open.lock().await;
        self.check_pin(initials, &pin).await?;
        self.at_car.set(initials, self.clock.now());
        if let Some(log) = open.as_mut() {
            self.sign_on_at_car(log).await?;
        }
        self.changed.send_modify(|n| *n += 1);
        Ok(self.step_view_of(open.as_ref(), initials).await)
    }

    /// Nobody is at the car any more, until somebody takes over.
    pub fn sign_off(&self) {
        self.at_car.nobody();
        self.changed.send_modify(|n| *n += 1);
    }

    /// Lets a gate of the step at hand pass, by the PIN of somebody who is not at work on it. Who is at the car stays there.
    ///
    /// # Errors
    /// A refusal in words; a wrong PIN is recorded as such.
    pub async fn waive(
        &self,
        revision: u64,
        by: &str,
        pin: Secret,
        step: &str,
        reason: &str,
    ) -> Result<StepView, Refused> {
        self.check_pin(by, &pin).await?;
        let mut open = self.open.lock().await;
        let log = open.as_mut().ok_or_else(|| self.refuse("no-job"))?;
        let intent = Intent::Waive { step: step.to_owned(), by: by.to_owned(), reason: reason.to_owned() };
        self.proved(log, revision, by, &intent, Proof::Pin, None).await?;
        Ok(self.step_view_of(open.as_ref(), self.at_car.get(self.clock.now()).as_deref().unwrap_or(by)).await)
    }

    /// Seals a job by a supervisor who did not work on it, with their passphrase.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn seal(&self, job: i64, revision: u64, by: &str, passphrase: Secret) -> Result<ReviewView, Refused> {
        let key = self.unlock(by, &passphrase).await?;
        let intent = Intent::Seal { by: by.to_owned() };
        self.at_desk(job, revision, by, &intent, Proof::Passphrase, Some(key)).await
    }

    /// Sends a job back to a step, by PIN. A sealed one is opened again, which makes its seal void.
    ///
    /// # Errors
    /// A refusal in words; a wrong PIN is recorded as such.
    pub async fn send_back(
        &self,
        job: i64,
        revision: u64,
        by: &str,
        pin: Secret,
        step: &str,
        reason: &str,
    ) -> Result<ReviewView, Refused> {
        self.check_pin(by, &pin).await?;
        let intent = Intent::Reopen { step: step.to_owned(), by: by.to_owned(), reason: reason.to_owned() };
        self.at_desk(job, revision, by, &intent, Proof::Pin, None).await
    }

    /// Corrects a text of an entry at the desk, by PIN. What it said first stays.
    ///
    /// # Errors
    /// A refusal in words; a wrong PIN is recorded as such.
    pub async fn correct(&self, ask: CorrectAsk) -> Result<ReviewView, Refused> {
        let CorrectAsk { job, revision, by, pin, entry, key, text, reason } = ask;
        self.check_pin(&by, &pin).await?;
        let mut open = self.open.lock().await;
        let mut read;
        let log = match open.as_mut().filter(|log| log.id == job) {
            Some(log) => log,
            None => {
                read = self.read(job).await?;
                &mut read
            }
        };
        if revision != log.revision() {
            return Err(self.refuse("stale"));
        }
        let roster = self.roster().await?;
        let person = &roster.member(&by).map_err(|e| self.by_book(&e.into()))?.person;
        if let Some(signs_on) = signs_on(log, person, Proof::Pin).filter(|_| !log.ended()) {
            self.write(log, vec![signs_on], None).await?;
        }
        let ask = Ask { revision: log.revision(), by, wish: Wish::Amend { entry, key, text, reason } };
        self.amend(Some(log), &ask).await?;
        self.changed.send_modify(|n| *n += 1);
        self.review_view_of(open.as_ref(), Some(job)).await
    }

    async fn at_desk(
        &self,
        job: i64,
        revision: u64,
        by: &str,
        intent: &Intent,
        proof: Proof,
        key: Option<SealingKey>,
    ) -> Result<ReviewView, Refused> {
        let mut open = self.open.lock().await;
        match open.as_mut().filter(|log| log.id == job) {
            Some(log) => self.proved(log, revision, by, intent, proof, key).await?,
            None => self.proved(&mut self.read(job).await?, revision, by, intent, proof, key).await?,
        }
        self.review_view_of(open.as_ref(), Some(job)).await
    }

    /// Carries out what somebody wants of a job who has just shown who they are, signing them on where they are not yet.
    async fn proved(
        &self,
        log: &mut Log,
        revision: u64,
        by: &str,
        intent: &Intent,
        proof: Proof,
        key: Option<SealingKey>,
    ) -> Result<(), Refused> {
        let roster = self.roster().await?;
        let person = &roster.member(by).map_err(|e| self.by_book(&e.into()))?.person;
        if revision != log.revision() {
            return Err(self.refuse("stale"));
        }
        let mut happened: Vec<_> = signs_on(log, person, proof).into_iter().collect();
        let state = happened.iter().fold(log.state.clone(), |state, h| apply(&log.document, state, &h.event));
        let event = decide(&log.document, &state, intent, &Vec::new())
            .map_err(|why| crate::refuse::refused(&why, "", &self.tell()))?;
        happened.push(Happened { event, name: None, proof: None, seen: None });
        self.write(log, happened, key.as_ref()).await?;
        self.changed.send_modify(|n| *n += 1);
        Ok(())
    }

    pub(super) async fn check_pin(&self, initials: &str, pin: &Secret) -> Result<(), Refused> {
        let checked = self.book.check_pin(initials, pin, self.clock.now()).await;
        if checked.is_err() {
            // How long the next try has to wait is on show.
            self.changed.send_modify(|n| *n += 1);
        }
        checked.map(drop).map_err(|e| self.by_book(&e))
    }

    pub(super) async fn unlock(&self, by: &str, passphrase: &Secret) -> Result<SealingKey, Refused> {
        self.book.unlock(by, passphrase).await.map_err(|e| self.by_book(&e))
    }

    /// In a book that knows people: it is they who ask.
    pub(super) async fn prove(&self, by: &str, pin: &Secret) -> Result<(), Refused> {
        if self.roster().await?.authenticates() {
            self.check_pin(by, pin).await?;
        }
        Ok(())
    }
}

/// What signs somebody on as they are now; none when they are signed on so already. That they are who they say was shown
/// just now, so that the procedure's own rule, by which initials sign on once, does not ask.
fn signs_on(log: &Log, person: &Person, proof: Proof) -> Option<Happened> {
    let rank = match person.rank {
        bayhand_jobbook::Rank::Trainee => Rank::Trainee,
        bayhand_jobbook::Rank::Technician => Rank::Technician,
        bayhand_jobbook::Rank::Supervisor => Rank::Supervisor,
    };
    let Person { initials, name, .. } = person;
    let as_now = log.state.people().get(initials) == Some(&rank)
        && log.proved.contains(initials)
        && log.names.get(initials) == Some(name);
    (!as_now).then(|| Happened {
        event: Event::SignedOn { person: initials.clone(), rank },
        name: Some(name.clone()),
        proof: Some(proof),
        seen: None,
    })
}
