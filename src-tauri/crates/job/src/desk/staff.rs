//! The list of people: how it is shown, and how supervisors keep it by their passphrase.

use super::Desk;
use crate::{
    ask::{PersonAsk, Refused, StaffAsk, StaffWish},
    log::shipped,
    show,
    tell::Tell,
    view::{Choice, PeopleView, PersonRow},
};
use bayhand_jobbook::people::Member;
use bayhand_jobbook::{BookError, BookEvent, Person, Rank, Secret, seal};
use bayhand_procedure::Path;
use chrono::{DateTime, FixedOffset};

impl Desk {
    /// Who there is, and who is at the car.
    ///
    /// # Errors
    /// The book cannot be read.
    pub async fn people(&self) -> Result<PeopleView, Refused> {
        let (roster, now, tell) = (self.roster().await?, self.clock.now(), self.tell());
        let authenticates = roster.authenticates();
        let at_car = self.at_car.until(now).filter(|_| authenticates);
        Ok(PeopleView {
            authenticates,
            says: tell.text(if authenticates { "people-known" } else { "people-unknown" }, &[]),
            asks_again_s: at_car.as_ref().map(|(_, left_s)| *left_s),
            at_car: at_car.map(|(initials, _)| initials),
            people: roster.members().map(|member| row(member, now, &tell)).collect(),
            stages: stages(&tell),
        })
    }

    /// The same for a view. Where the list cannot be read it is nobody's, and nothing can be done without it.
    pub(super) async fn staff(&self) -> PeopleView {
        self.people().await.unwrap_or_else(|why| PeopleView {
            authenticates: true,
            says: why.says,
            at_car: None,
            asks_again_s: None,
            people: Vec::new(),
            stages: Vec::new(),
        })
    }

    /// Carries out what a supervisor wants of the list.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn keep_people(&self, ask: StaffAsk) -> Result<PeopleView, Refused> {
        let StaffAsk { by, passphrase, wish } = ask;
        match wish {
            StaffWish::Enrol { person, pin } => self.enrol(&by, passphrase, person, pin).await,
            StaffWish::Change { person } => self.change_person(&by, passphrase, person).await,
            StaffWish::LetGo { initials } => self.let_go(&by, passphrase, &initials).await,
            StaffWish::ResetPin { initials, pin } => self.reset_pin(&by, passphrase, &initials, pin).await,
            StaffWish::SetKey { initials, new_passphrase, reason } => {
                self.set_key(&by, passphrase, &initials, new_passphrase, &reason).await
            }
        }
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
        made.map(|code| code.reveal().to_owned()).map_err(|e| self.by_book(&e))
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
        self.check_pin(initials, &old).await?;
        self.listed(self.book.set_pin(initials, initials, &new, self.clock.now()).await).await
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
        next.map(|code| code.reveal().to_owned()).map_err(|e| self.by_book(&e))
    }

    async fn listed(&self, done: Result<(), BookError>) -> Result<PeopleView, Refused> {
        done.map_err(|e| self.by_book(&e))?;
        self.changed.send_modify(|n| *n += 1);
        self.people().await
    }

    fn person(&self, ask: PersonAsk) -> Result<Person, Refused> {
        let rank = match ask.rank.as_str() {
            "trainee" => Rank::Trainee,
            "technician" => Rank::Technician,
            "supervisor" => Rank::Supervisor,
            _ => return Err(Refused { field: Some("rank".into()), ..self.refuse("rank-unknown") }),
        };
        let (initials, name) = (ask.initials.trim().to_uppercase(), ask.name.trim().to_owned());
        Ok(Person { initials, name, rank, alone: ask.alone })
    }
}

fn row(member: &Member, now: DateTime<FixedOffset>, tell: &Tell) -> PersonRow {
    let Person { initials, name, rank, alone } = member.person.clone();
    let rank = code(rank);
    let word = tell.text(&format!("rank-{rank}"), &[]);
    PersonRow {
        label: tell.text("person", &[("initials", initials.clone()), ("rank", word)]),
        rank: rank.to_owned(),
        alone_says: alone.iter().map(|id| may_do(id, tell)).collect::<Vec<_>>().join(", "),
        fingerprint: member.key.as_deref().and_then(seal::fingerprint),
        wait_s: member.wait_s(now),
        left: member.left,
        initials,
        name,
        alone,
    }
}

/// A stage or a step by its name.
fn may_do(id: &str, tell: &Tell) -> String {
    if id.contains('.') { show::short(id, tell) } else { tell.text(&format!("stage-{id}"), &[]) }
}

/// The stages of the main path. The list holds for whatever procedure a job is begun with, so the shipped one names them.
fn stages(tell: &Tell) -> Vec<Choice> {
    let Ok(document) = shipped() else { return Vec::new() };
    let main = document.stages.iter().filter(|stage| stage.path == Path::Main);
    main.map(|stage| Choice { code: stage.id.clone(), label: may_do(&stage.id, tell), outlook: None }).collect()
}

fn code(rank: Rank) -> &'static str {
    match rank {
        Rank::Trainee => "trainee",
        Rank::Technician => "technician",
        Rank::Supervisor => "supervisor",
    }
}
