//! What the book's own chain makes: people, how each job ended, what stands apart. One fold for writing and verifying.

use std::collections::{BTreeMap, BTreeSet};

use chrono::DateTime;

use crate::event::{BookEvent, NotRead, Seal};
use crate::people::{Denied, Roster};
use crate::{Defect, Entry, JobId, seal};

/// Where a job was ended.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct End {
    /// Number of the entry that says so in the book's own chain.
    pub(crate) number: u64,
    pub(crate) job: JobId,
    pub(crate) entries: u64,
    pub(crate) head: String,
    /// The seal; none when it ended without one.
    pub(crate) seal: Option<Seal>,
    /// True once the job was opened again.
    pub(crate) void: bool,
}

/// An imported job, as the chain names it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Import {
    pub(crate) number: u64,
    pub(crate) first_hash: String,
    pub(crate) head: String,
    pub(crate) text_hash: String,
}

/// The fold.
#[derive(Debug, Clone, Default)]
pub(crate) struct Ledger {
    pub(crate) roster: Roster,
    /// Every end of every job, in order.
    pub(crate) ends: Vec<End>,
    /// Jobs that have ended, with the place of that end above.
    ended: BTreeMap<JobId, usize>,
    pub(crate) imports: Vec<Import>,
    /// What must stand apart, and what stood there and is gone by right.
    pub(crate) apart: BTreeSet<String>,
    pub(crate) gone: BTreeSet<String>,
    /// Customers' texts by job, the newest.
    pub(crate) customers: BTreeMap<JobId, String>,
    /// How each job was opened, in order: number of the entry that says so, and hash of the job's first.
    pub(crate) openings: Vec<(u64, String)>,
    /// Customers' texts that were erased.
    pub(crate) erased: u64,
    pub(crate) clock_set_back: u64,
}

impl Ledger {
    /// The fold of a checked chain.
    ///
    /// # Errors
    /// Number and defect of the first entry that could not have been written.
    pub(crate) fn of(chain: &[Entry]) -> Result<Self, (u64, Defect)> {
        let mut ledger = Self::default();
        let mut before = String::new();
        for entry in chain {
            let event = BookEvent::of_body(&entry.body).map_err(|why| {
                let defect = match why {
                    NotRead::Newer => Defect::Newer,
                    NotRead::NoEvent(why) => Defect::NoEvent(why),
                };
                (entry.number, defect)
            })?;
            ledger.check(&event, entry, &before).map_err(|defect| (entry.number, defect))?;
            ledger.apply(entry.number, &event, &entry.at);
            before.clone_from(&entry.hash);
        }
        Ok(ledger)
    }

    /// Whether the event could have been written here.
    fn check(&self, event: &BookEvent, entry: &Entry, before: &str) -> Result<(), Defect> {
        self.permits(event).map_err(|denied| Defect::NotPermitted(denied.to_string()))?;
        if let BookEvent::JobOpened { job, .. } = event
            && job.0 != self.openings.len() as i64 + 1
        {
            return Err(Defect::NotAnOpening);
        }
        if let BookEvent::JobSealed(found) = event {
            let bytes = |hex: &str| hex::decode(hex).unwrap_or_default();
            let (head, before) = (bytes(&found.head), bytes(before));
            let signed = seal::Sealed {
                job: found.job.0,
                entries: found.entries,
                head: &head,
                by: &found.by,
                at: &entry.at,
                number: entry.number,
                mono: entry.mono,
                before: &before,
            };
            if !seal::fits(&found.key, &found.signature, &signed.message()) {
                return Err(Defect::SealDoesNotFit);
            }
        }
        Ok(())
    }

    /// Whether an event may be written as things stand.
    pub(crate) fn permits(&self, event: &BookEvent) -> Result<(), Denied> {
        self.roster.permits(event)?;
        match event {
            BookEvent::Erased { customer, .. } if !self.customers.values().any(|known| known == customer) => {
                Err(Denied::NoCustomer)
            }
            _ => Ok(()),
        }
    }

    /// What an event makes of it. Only to be called when it is permitted.
    pub(crate) fn apply(&mut self, number: u64, event: &BookEvent, at: &str) {
        self.roster.apply(event, DateTime::parse_from_rfc3339(at).ok());
        self.apart.extend(event.apart().map(str::to_owned));
        let replaced = std::mem::take(&mut self.roster.replaced);
        self.forget(replaced);
        match event {
            BookEvent::JobOpened { first_hash, .. } => self.openings.push((number, first_hash.clone())),
            BookEvent::JobClosed { job, entries, head, .. } => self.end(number, *job, *entries, head, None),
            BookEvent::JobSealed(seal) => self.end(number, seal.job, seal.entries, &seal.head, Some(seal)),
            BookEvent::JobReopened { job, .. } => {
                if let Some(end) = self.ended.remove(job) {
                    self.ends[end].void = true;
                }
            }
            BookEvent::JobImported { first_hash, head, text_hash, .. } => self.imports.push(Import {
                number,
                first_hash: first_hash.clone(),
                head: head.clone(),
                text_hash: text_hash.clone(),
            }),
            BookEvent::CustomerSet { job, customer, .. } => {
                let before = self.customers.insert(*job, customer.clone());
                self.forget(before);
            }
            BookEvent::Erased { customer, .. } => {
                self.customers.retain(|_, known| known != customer);
                self.erased += 1;
                self.forget([customer.clone()]);
            }
            BookEvent::ClockSetBack { .. } => self.clock_set_back += 1,
            _ => {}
        }
    }

    fn end(&mut self, number: u64, job: JobId, entries: u64, head: &str, seal: Option<&Seal>) {
        self.ended.insert(job, self.ends.len());
        self.ends.push(End { number, job, entries, head: head.into(), seal: seal.cloned(), void: false });
    }

    fn forget(&mut self, names: impl IntoIterator<Item = String>) {
        for name in names {
            self.apart.remove(&name);
            self.gone.insert(name);
        }
    }

    /// How a job ended; none while it goes on.
    pub(crate) fn end_of(&self, job: JobId) -> Option<&End> {
        self.ended.get(&job).map(|place| &self.ends[*place])
    }
}
