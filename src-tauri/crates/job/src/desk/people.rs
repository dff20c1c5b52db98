//! People and their rights at the desk: the list, signing on by PIN, sealing and sending back with proof.
//!
//! A book that knows nobody works by names alone. From its first supervisor on, whoever acts at the car has shown their
//! PIN ([`Desk::hand_over`]), and whoever keeps the list or seals their passphrase.

use super::{Desk, by_book};
use crate::{
    ask::{Ask, PersonAsk, Refused, Wish},
    body::{Happened, Proof},
    log::Log,
    view::{PeopleView, PersonRow, ReviewView, StepView},
};
use bayhand_jobbook::{BookError, BookEvent, Person, Roster, SealingKey, Secret, seal};
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

    fn get(&self, now: DateTime<FixedOffset>) -> Option<String> {
        let at_car = self.0.lock().unwrap_or_else(PoisonError::into_inner).clone();
        at_car.filter(|(_, last)| (now - *last).num_minutes() < IDLE_MIN).map(|(initials, _)| initials)
    }

    fn nobody(&self) {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner) = None;
    }
}

impl Desk {
    async fn roster(&self) -> Result<Roster, Refused> {
        self.book.roster().await.map_err(|e| by_book(&e))
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
        let member = roster.member(&initials).map_err(|e| by_book(&e.into()))?;
        let happened: Vec<_> = signs_on(log, &member.person, Proof::Pin).into_iter().collect();
        if happened.is_empty() || log.ended() { Ok(()) } else { self.write(log, happened, None).await }
    }

    /// Who there is, and who is at the car.
    ///
    /// # Errors
    /// The book cannot be read.
    pub async fn people(&self) -> Result<PeopleView, Refused> {
        let (roster, now, tell) = (self.roster().await?, self.clock.now(), self.tell());
        let row = |member: &bayhand_jobbook::people::Member| {
            let Person { initials, name, rank, alone } = member.person.clone();
            let rank = code(rank);
            let word = tell.text(&format!("rank-{rank}"), &[]);
            PersonRow {
                label: tell.text("person", &[("initials", initials.clone()), ("rank", word)]),
                rank: rank.to_owned(),
                fingerprint: member.key.as_deref().and_then(seal::fingerprint),
                wait_s: member.wait_s(now),
                left: member.left,
                initials,
                name,
                alone,
            }
        };
        let authenticates = roster.authenticates();
        Ok(PeopleView {
            authenticates,
            says: tell.text(if authenticates { "people-known" } else { "people-unknown" }, &[]),
            at_car: self.at_car.get(now).filter(|_| authenticates),
            people: roster.members().map(row).collect(),
        })
    }

    /// Makes the first supervisor. From then on nobody acts by a name alone. Gives back the recovery code, which is to be
    /// written down and kept elsewhere: it is shown this once.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn first_supervisor(
        &self,
        person: PersonAsk,
        pin: Secret,
        passphrase: Secret,
    ) -> Result<String, Refused> {
        let person = self.person(person)?;
        let made = self.book.first_supervisor(person, &pin, &passphrase, self.clock.now()).await;
        self.changed.send_modify(|n| *n += 1);
        made.map(|code| code.reveal().to_owned()).map_err(|e| by_book(&e))
    }

    /// Enters somebody in the list, with a PIN that they change at their first sign-on.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn enrol(
        &self,
        by: &str,
        passphrase: Secret,
        person: PersonAsk,
        pin: Secret,
    ) -> Result<PeopleView, Refused> {
        self.unlock(by, &passphrase).await?;
        let person = self.person(person)?;
        self.listed(self.book.enrol(by, person, &pin, self.clock.now()).await).await
    }

    /// Changes somebody's name, rank or list of what they may do alone.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn change_person(&self, by: &str, passphrase: Secret, person: PersonAsk) -> Result<PeopleView, Refused> {
        self.unlock(by, &passphrase).await?;
        let event = BookEvent::PersonChanged { by: by.to_owned(), person: self.person(person)? };
        self.listed(self.book.note(Vec::new(), |_| vec![event], self.clock.now()).await).await
    }

    /// Takes from somebody the right to sign on. Their name stays in the record.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn let_go(&self, by: &str, passphrase: Secret, initials: &str) -> Result<PeopleView, Refused> {
        self.unlock(by, &passphrase).await?;
        let event = BookEvent::PersonLeft { by: by.to_owned(), initials: initials.to_owned() };
        let done = self.book.note(Vec::new(), |_| vec![event], self.clock.now()).await;
        // Before the list is shown: it says who is at the car.
        if done.is_ok() && self.at_car.get(self.clock.now()).as_deref() == Some(initials) {
            self.at_car.nobody();
        }
        self.listed(done).await
    }

    /// Changes one's own PIN.
    ///
    /// # Errors
    /// A refusal in words; a wrong old PIN is recorded as such.
    pub async fn change_pin(&self, initials: &str, old: Secret, new: Secret) -> Result<PeopleView, Refused> {
        let now = self.clock.now();
        self.book.check_pin(initials, &old, now).await.map_err(|e| by_book(&e))?;
        self.listed(self.book.set_pin(initials, initials, &new, now).await).await
    }

    /// Sets a new PIN for somebody who forgot theirs.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn reset_pin(
        &self,
        by: &str,
        passphrase: Secret,
        initials: &str,
        pin: Secret,
    ) -> Result<PeopleView, Refused> {
        self.unlock(by, &passphrase).await?;
        self.listed(self.book.set_pin(by, initials, &pin, self.clock.now()).await).await
    }

    /// Gives a supervisor a new key: their own first or next one, or another's who lost the passphrase.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn set_key(
        &self,
        by: &str,
        passphrase: Secret,
        initials: &str,
        new_passphrase: Secret,
        reason: &str,
    ) -> Result<PeopleView, Refused> {
        self.unlock(by, &passphrase).await?;
        self.listed(self.book.set_key(by, initials, &new_passphrase, reason, self.clock.now()).await).await
    }

    /// Gives a supervisor who lost PIN or passphrase new ones for the recovery code. Gives back the next code.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn recover(
        &self,
        initials: &str,
        code: Secret,
        pin: Secret,
        passphrase: Secret,
    ) -> Result<String, Refused> {
        let next = self.book.recover(initials, &code, &pin, &passphrase, self.clock.now()).await;
        self.changed.send_modify(|n| *n += 1);
        next.map(|code| code.reveal().to_owned()).map_err(|e| by_book(&e))
    }

    /// Somebody takes over at the car by their PIN, where the job stands. They are signed on at the open job, if they are
    /// not yet, with their rank as it is now.
    ///
    /// # Errors
    /// A refusal in words; a wrong PIN is recorded as such.
    pub async fn hand_over(&self, initials: &str, pin: Secret) -> Result<StepView, Refused> {
        let mut open = self.open.lock().await;
        let now = self.clock.now();
        self.book.check_pin(initials, &pin, now).await.map_err(|e| by_book(&e))?;
        self.at_car.set(initials, now);
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

    /// Seals a job by a supervisor who did not work on it, with their passphrase.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn seal(&self, job: i64, revision: u64, by: &str, passphrase: Secret) -> Result<ReviewView, Refused> {
        let key = self.unlock(by, &passphrase).await?;
        let intent = Intent::Seal { by: by.to_owned() };
        self.with_proof(job, revision, by, &intent, Proof::Passphrase, Some(key)).await
    }

    /// Sends a job back to a step, by PIN. A sealed one is opened again, which makes its seal void.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn send_back(
        &self,
        job: i64,
        revision: u64,
        by: &str,
        pin: Secret,
        step: &str,
        reason: &str,
    ) -> Result<ReviewView, Refused> {
        self.book.check_pin(by, &pin, self.clock.now()).await.map_err(|e| by_book(&e))?;
        let intent = Intent::Reopen { step: step.to_owned(), by: by.to_owned(), reason: reason.to_owned() };
        self.with_proof(job, revision, by, &intent, Proof::Pin, None).await
    }

    async fn with_proof(
        &self,
        job: i64,
        revision: u64,
        by: &str,
        intent: &Intent,
        proof: Proof,
        key: Option<SealingKey>,
    ) -> Result<ReviewView, Refused> {
        let roster = self.roster().await?;
        let person = &roster.member(by).map_err(|e| by_book(&e.into()))?.person;
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
        let mut happened: Vec<_> = signs_on(log, person, proof).into_iter().collect();
        let state = happened.iter().fold(log.state.clone(), |state, h| apply(&log.document, state, &h.event));
        let event = decide(&log.document, &state, intent, &Vec::new())
            .map_err(|why| crate::refuse::refused(&why, "", &self.tell()))?;
        happened.push(Happened { event, name: None, proof: None, seen: None });
        self.write(log, happened, key.as_ref()).await?;
        self.changed.send_modify(|n| *n += 1);
        self.review_view_of(open.as_ref(), Some(job)).await
    }

    pub(super) async fn unlock(&self, by: &str, passphrase: &Secret) -> Result<SealingKey, Refused> {
        self.book.unlock(by, passphrase).await.map_err(|e| by_book(&e))
    }

    /// In a book that knows people: it is they who ask.
    pub(super) async fn prove(&self, by: &str, pin: &Secret) -> Result<(), Refused> {
        if self.roster().await?.authenticates() {
            self.book.check_pin(by, pin, self.clock.now()).await.map_err(|e| by_book(&e))?;
        }
        Ok(())
    }

    async fn listed(&self, done: Result<(), BookError>) -> Result<PeopleView, Refused> {
        done.map_err(|e| by_book(&e))?;
        self.changed.send_modify(|n| *n += 1);
        self.people().await
    }

    fn person(&self, ask: PersonAsk) -> Result<Person, Refused> {
        let rank = match ask.rank.as_str() {
            "trainee" => bayhand_jobbook::Rank::Trainee,
            "technician" => bayhand_jobbook::Rank::Technician,
            "supervisor" => bayhand_jobbook::Rank::Supervisor,
            _ => return Err(Refused { field: Some("rank".into()), ..self.refuse("rank-unknown") }),
        };
        let (initials, name) = (ask.initials.trim().to_uppercase(), ask.name.trim().to_owned());
        Ok(Person { initials, name, rank, alone: ask.alone })
    }
}

fn code(rank: bayhand_jobbook::Rank) -> &'static str {
    match rank {
        bayhand_jobbook::Rank::Trainee => "trainee",
        bayhand_jobbook::Rank::Technician => "technician",
        bayhand_jobbook::Rank::Supervisor => "supervisor",
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
