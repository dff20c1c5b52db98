//! What the book's own chain tells: jobs opened and ended, people and their rights, keys, imports, erasures.

use serde::{Deserialize, Serialize};

use crate::JobId;

/// Version of these events that this program writes and reads.
const VERSION: u64 = 1;

/// A rank, the lowest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Rank {
    /// Learns the work.
    Trainee,
    /// Does the work.
    Technician,
    /// Answers for the work of others, and keeps the list of people.
    Supervisor,
}

/// A person as they stood when it was written.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Person {
    /// One to four letters, unique in the book for ever.
    pub initials: String,
    /// Name.
    pub name: String,
    /// Rank.
    pub rank: Rank,
    /// What a trainee may do with nobody of higher rank at the car: ids of steps or stages. Empty for other ranks.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub alone: Vec<String>,
}

/// An instrument as it stood when it was written.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Instrument {
    /// What is written on it.
    pub id: String,
    /// What it is: `pads`, `laser`, `height-gauge`, `pressure-gauge`, `angle-gauge`.
    pub kind: String,
    /// Until when its calibration holds, as written.
    pub due: String,
    /// What else is known of it: resolution, accuracy, the last check.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
}

/// How a job ended without a signature.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Closed {
    /// Stopped for good.
    Stopped,
    /// Ended by a supervisor by name only, in a book that knows no people yet.
    Unsigned,
}

/// A seal: a supervisor's signature over a job. What exactly is signed stands in [`crate::seal`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Seal {
    /// The job.
    pub job: JobId,
    /// How many entries it has.
    pub entries: u64,
    /// Hash of the last of them, hex.
    pub head: String,
    /// The supervisor's initials.
    pub by: String,
    /// Their public key, hex.
    pub key: String,
    /// The signature, hex.
    pub signature: String,
}

/// An entry of the book's own chain. Hashes and keys are in lower-case hexadecimal.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case", deny_unknown_fields)]
pub enum BookEvent {
    /// A job was opened.
    JobOpened {
        /// The job.
        job: JobId,
        /// Hash of its first entry.
        first_hash: String,
    },
    /// A job ended without a signature.
    JobClosed {
        /// The job.
        job: JobId,
        /// How many entries it has.
        entries: u64,
        /// Hash of the last of them.
        head: String,
        /// How it ended.
        how: Closed,
    },
    /// A job was sealed.
    JobSealed(Seal),
    /// A job that had ended was opened again: an earlier seal is void from here on.
    JobReopened {
        /// The job.
        job: JobId,
        /// Who.
        by: String,
        /// Why.
        reason: String,
    },
    /// Another bay's job was taken in.
    JobImported {
        /// Who.
        by: String,
        /// Hash of the job's first entry: with it the job is known again.
        first_hash: String,
        /// Hash of its last entry.
        head: String,
        /// How many entries it has.
        entries: u64,
        /// SHA-256 of the export's text.
        text_hash: String,
    },
    /// The clock showed an earlier time than the entry before: from here on times are by the other clock.
    ClockSetBack {
        /// Time of the entry before.
        before: String,
        /// What the clock shows now.
        now: String,
    },
    /// Somebody was entered in the list of people.
    PersonEnrolled {
        /// The supervisor who did it; nobody for the first supervisor of the book.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        by: Option<String>,
        /// The person.
        person: Person,
        /// Where the text stands that their PIN is checked against.
        pin: String,
    },
    /// Somebody's name, rank or list of what they may do alone was changed.
    PersonChanged {
        /// The supervisor.
        by: String,
        /// As they are from here on.
        person: Person,
    },
    /// Somebody may no longer sign on.
    PersonLeft {
        /// The supervisor.
        by: String,
        /// Who.
        initials: String,
    },
    /// A new PIN: by the person, by a supervisor for somebody who forgot it, or by recovery.
    PinSet {
        /// Who did it.
        by: String,
        /// Whose it is.
        initials: String,
        /// Where the text stands that it is checked against.
        pin: String,
    },
    /// A wrong PIN was entered.
    PinRefused {
        /// Whose PIN it should have been.
        initials: String,
    },
    /// The right PIN was entered after wrong ones.
    PinAccepted {
        /// Whose.
        initials: String,
    },
    /// A supervisor's first or new key. Seals by the key before stay what they are.
    KeySet {
        /// Who let it be set: the supervisor, another one, or the supervisor by recovery.
        by: String,
        /// Whose it is.
        initials: String,
        /// The public key.
        key: String,
        /// Why there is a new one; `first` for the first.
        reason: String,
    },
    /// A new recovery code was given out.
    RecoverySet {
        /// To whom.
        by: String,
        /// Where the text stands that it is checked against.
        code: String,
    },
    /// The recovery code was used, and with that used up.
    Recovered {
        /// By which supervisor.
        initials: String,
    },
    /// An instrument was entered, or checked or calibrated anew.
    InstrumentNoted {
        /// Who.
        by: String,
        /// As it is from here on.
        instrument: Instrument,
    },
    /// A car was entered, or what is known of it changed.
    CarNoted {
        /// Who.
        by: String,
        /// Its name, as jobs name it.
        car: String,
        /// What is known of it.
        note: String,
    },
    /// Customer data was told apart, for a job.
    CustomerSet {
        /// Who.
        by: String,
        /// The job.
        job: JobId,
        /// Where the text stands.
        customer: String,
    },
    /// Customer data was erased.
    Erased {
        /// Who.
        by: String,
        /// Where the text stood.
        customer: String,
        /// Why.
        reason: String,
    },
}

/// Why the body of an entry of the book's own chain says nothing to this program.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum NotRead {
    /// A later program wrote it.
    Newer,
    /// It is no such body.
    NoEvent(String),
}

impl BookEvent {
    /// The text that is stored.
    pub(crate) fn body(&self) -> String {
        // Enums of plain texts and numbers always have a JSON form that begins with a brace.
        let fields = serde_json::to_string(self).unwrap_or_default();
        format!(r#"{{"version":{VERSION},{}"#, fields.trim_start_matches('{'))
    }

    /// What a stored text says.
    pub(crate) fn of_body(body: &str) -> Result<Self, NotRead> {
        let no_event = |error: serde_json::Error| NotRead::NoEvent(error.to_string());
        let mut value: serde_json::Value = serde_json::from_str(body).map_err(no_event)?;
        let version = value.as_object_mut().and_then(|fields| fields.remove("version")?.as_u64());
        match version {
            Some(VERSION) => serde_json::from_value(value).map_err(no_event),
            Some(_) => Err(NotRead::Newer),
            None => Err(NotRead::NoEvent("it has no version".into())),
        }
    }

    /// What stands apart, named by this event.
    pub(crate) fn apart(&self) -> Option<&str> {
        match self {
            Self::PersonEnrolled { pin, .. } | Self::PinSet { pin, .. } => Some(pin),
            Self::RecoverySet { code, .. } => Some(code),
            Self::CustomerSet { customer, .. } => Some(customer),
            _ => None,
        }
    }
}
