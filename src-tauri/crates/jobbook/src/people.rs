//! Who may do what: the list of people as the book's own chain makes it, and the rules that every change of it keeps.

use std::collections::BTreeMap;

use chrono::{DateTime, FixedOffset, TimeDelta};

use crate::event::{BookEvent, Person, Rank};

/// Why somebody may not do what they ask for. Nothing was recorded, unless a variant says so.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Denied {
    /// Nobody of these initials is in the list, or they have left.
    #[error("{0} is not in the list of people. Ask a supervisor to enter you, or look at the initials.")]
    Unknown(String),
    /// Only a supervisor may.
    #[error("{0} is no supervisor. Ask one.")]
    NotASupervisor(String),
    /// The initials belong, or once belonged, to somebody.
    #[error("The initials {0} are taken. Choose others: the record must tell people apart for ever.")]
    Taken(String),
    /// Initials that cannot be.
    #[error("Initials are one to four capital letters, not \u{201c}{0}\u{201d}.")]
    Initials(String),
    /// A name or a text that cannot be.
    #[error("{0} is missing or longer than 200 letters.")]
    Text(&'static str),
    /// A list of steps for somebody who is no trainee.
    #[error("Only a trainee has a list of what they may do alone.")]
    AloneIsForTrainees,
    /// The first person must be a supervisor.
    #[error("The first person in the list is a supervisor, who then enters the others.")]
    FirstIsASupervisor,
    /// There are people already.
    #[error("There are people in this book already. A supervisor among them enters the others.")]
    NotTheFirst,
    /// The last supervisor would be none any more.
    #[error("{0} is the only supervisor. Make another one first, or nobody could keep the list.")]
    LastSupervisor(String),
    /// The reason is missing.
    #[error("Write the reason. It stands in the record.")]
    NoReason,
    /// A PIN that is none.
    #[error("A PIN is 4 to 12 digits, and not one digit again and again.")]
    PinForm,
    /// A passphrase that is too short.
    #[error("A passphrase has at least 10 characters. A sentence is easy to keep in mind.")]
    PassphraseForm,
    /// The PIN is not the person's. It is recorded that a wrong one was entered.
    #[error("This is not the PIN of {initials}. That it was tried is recorded.")]
    WrongPin {
        /// Whose it should have been.
        initials: String,
    },
    /// Wrong PINs were entered before: the next try has to wait.
    #[error("Wrong PINs were entered for {initials}. Wait {seconds} s before the next try.")]
    Wait {
        /// Whose.
        initials: String,
        /// How long, s.
        seconds: i64,
    },
    /// The passphrase does not open the key.
    #[error("This passphrase does not open the key of {0}.")]
    WrongPassphrase(String),
    /// The supervisor has no key, or its file is not where it should be.
    #[error("The key file of {0} is missing. Bring it back beside the book, or have a new key set.")]
    NoKey(String),
    /// The key file is damaged, or belongs to another key.
    #[error("The key file of {0} cannot be used. Bring back the right one, or have a new key set.")]
    BadKeyFile(String),
    /// The recovery code is not the one.
    #[error("This is not the recovery code of this book. Look at it again; each code counts once.")]
    WrongCode,
    /// The customer's data is not there.
    #[error("There is no such customer data in this book, or it is erased already.")]
    NoCustomer,
    /// The system gives no random bytes.
    #[error("The system gives no random numbers ({0}), so no secret can be kept. Start the computer again.")]
    NoRandom(String),
}

impl Denied {
    /// A short fixed name of the variant.
    pub fn code(&self) -> &'static str {
        match self {
            Self::Unknown(_) => "person-unknown",
            Self::NotASupervisor(_) => "not-a-supervisor",
            Self::Taken(_) => "initials-taken",
            Self::Initials(_) => "initials",
            Self::Text(_) => "text-form",
            Self::AloneIsForTrainees => "alone-is-for-trainees",
            Self::FirstIsASupervisor => "first-is-a-supervisor",
            Self::NotTheFirst => "not-the-first",
            Self::LastSupervisor(_) => "last-supervisor",
            Self::NoReason => "no-reason",
            Self::PinForm => "pin-form",
            Self::PassphraseForm => "passphrase-form",
            Self::WrongPin { .. } => "wrong-pin",
            Self::Wait { .. } => "wait-for-pin",
            Self::WrongPassphrase(_) => "wrong-passphrase",
            Self::NoKey(_) => "no-key",
            Self::BadKeyFile(_) => "bad-key-file",
            Self::WrongCode => "wrong-code",
            Self::NoCustomer => "no-customer",
            Self::NoRandom(_) => "no-random",
        }
    }
}

/// Somebody in the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Member {
    /// As they are now.
    pub person: Person,
    /// True when they may no longer sign on.
    pub left: bool,
    /// A supervisor's public key, hex.
    pub key: Option<String>,
    /// Where the text stands that the PIN is checked against.
    pub(crate) pin: String,
    /// How many wrong PINs were entered since the last right one, and when the last of them.
    refused: u32,
    refused_at: Option<DateTime<FixedOffset>>,
}

/// Wrong PINs that cost nothing: a slip of a gloved finger.
const FREE_TRIES: u32 = 2;
/// The first wait, s; it doubles with each further wrong PIN.
const FIRST_WAIT_S: i64 = 30;
/// The longest wait, s.
const LONGEST_WAIT_S: i64 = 900;

impl Member {
    /// How long the next try has to wait, s; 0 when it need not.
    pub fn wait_s(&self, now: DateTime<FixedOffset>) -> i64 {
        let Some(since) = self.refused_at.filter(|_| self.refused > FREE_TRIES) else { return 0 };
        let doublings = (self.refused - FREE_TRIES - 1).min(10);
        let wait = (FIRST_WAIT_S << doublings).min(LONGEST_WAIT_S);
        // A clock that was set back must not make the wait longer than it is.
        (since + TimeDelta::seconds(wait) - now).num_seconds().clamp(0, wait)
    }

    /// True when wrong PINs were entered since the last right one.
    pub(crate) fn was_refused(&self) -> bool {
        self.refused > 0
    }
}

/// The list of people.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Roster {
    members: BTreeMap<String, Member>,
    /// Where the text stands that the recovery code is checked against.
    pub(crate) recovery: Option<String>,
    /// Texts that were replaced: they are gone by right.
    pub(crate) replaced: Vec<String>,
}

impl Roster {
    /// True once the book knows people: from then on nobody acts by a name alone.
    pub fn authenticates(&self) -> bool {
        !self.members.is_empty()
    }

    /// Everybody who ever was in the list, by initials.
    pub fn members(&self) -> impl Iterator<Item = &Member> {
        self.members.values()
    }

    /// Somebody who may sign on.
    ///
    /// # Errors
    /// [`Denied::Unknown`].
    pub fn member(&self, initials: &str) -> Result<&Member, Denied> {
        self.members.get(initials).filter(|m| !m.left).ok_or_else(|| Denied::Unknown(initials.to_owned()))
    }

    /// Somebody who may keep the list, seal and open again.
    ///
    /// # Errors
    /// [`Denied::Unknown`], [`Denied::NotASupervisor`].
    pub fn supervisor(&self, initials: &str) -> Result<&Member, Denied> {
        let member = self.member(initials)?;
        if member.person.rank == Rank::Supervisor { Ok(member) } else { Err(Denied::NotASupervisor(initials.into())) }
    }

    /// Whether an event may be written as the list stands.
    ///
    /// # Errors
    /// Why not.
    pub(crate) fn permits(&self, event: &BookEvent) -> Result<(), Denied> {
        match event {
            BookEvent::PersonEnrolled { by: None, person, .. } => {
                if self.authenticates() {
                    return Err(Denied::NotTheFirst);
                }
                if person.rank != Rank::Supervisor {
                    return Err(Denied::FirstIsASupervisor);
                }
                sound(person)
            }
            BookEvent::PersonEnrolled { by: Some(by), person, .. } => {
                self.supervisor(by)?;
                if self.members.contains_key(&person.initials) {
                    return Err(Denied::Taken(person.initials.clone()));
                }
                sound(person)
            }
            BookEvent::PersonChanged { by, person } => {
                self.supervisor(by)?;
                self.member(&person.initials)?;
                if person.rank != Rank::Supervisor {
                    self.not_the_last_supervisor(&person.initials)?;
                }
                sound(person)
            }
            BookEvent::PersonLeft { by, initials } => {
                self.supervisor(by)?;
                self.member(initials)?;
                self.not_the_last_supervisor(initials)
            }
            BookEvent::PinSet { by, initials, .. } => {
                self.member(initials)?;
                if by == initials { Ok(()) } else { self.supervisor(by).map(|_| ()) }
            }
            BookEvent::KeySet { by, initials, reason, .. } => {
                self.supervisor(by)?;
                self.supervisor(initials)?;
                given(reason)
            }
            BookEvent::RecoverySet { by, .. } => self.supervisor(by).map(|_| ()),
            BookEvent::Recovered { initials } => {
                self.supervisor(initials)?;
                if self.recovery.is_some() { Ok(()) } else { Err(Denied::WrongCode) }
            }
            BookEvent::PinRefused { initials } | BookEvent::PinAccepted { initials } => {
                self.member(initials).map(|_| ())
            }
            BookEvent::JobSealed(seal) => {
                let member = self.supervisor(&seal.by)?;
                if member.key.as_ref() == Some(&seal.key) { Ok(()) } else { Err(Denied::NoKey(seal.by.clone())) }
            }
            BookEvent::JobReopened { by, reason, .. } => {
                self.known_supervisor(by)?;
                given(reason)
            }
            BookEvent::Erased { by, reason, .. } => {
                self.known_supervisor(by)?;
                given(reason)
            }
            BookEvent::JobImported { by, .. } => self.known_supervisor(by),
            BookEvent::InstrumentNoted { by, instrument } => {
                let Some(()) = text(&instrument.id) else {
                    return Err(Denied::Text("What is written on the instrument"));
                };
                self.known(by)
            }
            BookEvent::CarNoted { by, car, .. } => {
                let Some(()) = text(car) else { return Err(Denied::Text("The car's name")) };
                self.known(by)
            }
            BookEvent::CustomerSet { by, .. } => self.known(by),
            BookEvent::JobOpened { .. } | BookEvent::JobClosed { .. } | BookEvent::ClockSetBack { .. } => Ok(()),
        }
    }

    /// In a book that knows no people yet anybody may, by a name alone.
    fn known(&self, initials: &str) -> Result<(), Denied> {
        if self.authenticates() { self.member(initials).map(|_| ()) } else { Ok(()) }
    }

    fn known_supervisor(&self, initials: &str) -> Result<(), Denied> {
        if self.authenticates() { self.supervisor(initials).map(|_| ()) } else { Ok(()) }
    }

    fn not_the_last_supervisor(&self, initials: &str) -> Result<(), Denied> {
        let others =
            self.members().filter(|m| !m.left && m.person.rank == Rank::Supervisor && m.person.initials != initials);
        if others.count() > 0 { Ok(()) } else { Err(Denied::LastSupervisor(initials.to_owned())) }
    }

    /// What an event makes of the list. Only to be called when it is permitted.
    pub(crate) fn apply(&mut self, event: &BookEvent, at: Option<DateTime<FixedOffset>>) {
        match event {
            BookEvent::PersonEnrolled { person, pin, .. } => {
                let (person, pin) = (person.clone(), pin.clone());
                let initials = person.initials.clone();
                let member = Member { person, left: false, key: None, pin, refused: 0, refused_at: None };
                self.members.insert(initials, member);
            }
            BookEvent::PersonChanged { person, .. } => {
                self.change(&person.initials, |member| member.person = person.clone());
            }
            BookEvent::PersonLeft { initials, .. } => self.change(initials, |member| member.left = true),
            BookEvent::PinSet { initials, pin, .. } => {
                let before = self.members.get(initials).map(|member| member.pin.clone());
                self.replaced.extend(before);
                self.change(initials, |member| {
                    member.pin.clone_from(pin);
                    member.refused = 0;
                });
            }
            BookEvent::PinRefused { initials } => self.change(initials, |member| {
                member.refused += 1;
                member.refused_at = at;
            }),
            BookEvent::PinAccepted { initials } => self.change(initials, |member| member.refused = 0),
            BookEvent::KeySet { initials, key, .. } => {
                self.change(initials, |member| member.key = Some(key.clone()));
            }
            BookEvent::RecoverySet { code, .. } => self.replaced.extend(self.recovery.replace(code.clone())),
            BookEvent::Recovered { .. } => self.replaced.extend(self.recovery.take()),
            _ => {}
        }
    }

    fn change(&mut self, initials: &str, how: impl FnOnce(&mut Member)) {
        if let Some(member) = self.members.get_mut(initials) {
            how(member);
        }
    }
}

fn sound(person: &Person) -> Result<(), Denied> {
    let letters = person.initials.chars().count();
    let capitals = person.initials.chars().all(|letter| letter.is_alphabetic() && !letter.is_lowercase());
    if !(1..=4).contains(&letters) || !capitals {
        return Err(Denied::Initials(person.initials.clone()));
    }
    if !person.alone.is_empty() && person.rank != Rank::Trainee {
        return Err(Denied::AloneIsForTrainees);
    }
    text(&person.name).ok_or(Denied::Text("The name"))
}

fn text(text: &str) -> Option<()> {
    (!text.trim().is_empty() && text.chars().count() <= 200).then_some(())
}

fn given(reason: &str) -> Result<(), Denied> {
    if reason.trim().is_empty() { Err(Denied::NoReason) } else { Ok(()) }
}
