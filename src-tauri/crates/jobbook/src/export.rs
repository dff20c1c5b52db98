//! One job as one JSON text that a third party can check without this program: `RECORD.md` in this crate says how.

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};

use crate::book::{Inner, no_entries, sendable, text_of};
use crate::chain::Link;
use crate::error::AtPath as _;
use crate::event::BookEvent;
use crate::seal::{self, Sealed};
use crate::{BadEntry, Book, BookError, Defect, Entry, JobId, rows, verify, write};

/// What the text says that it is.
pub const FORM: &str = "bayhand job export 1";

const RECIPE: &str = "Each hash is SHA-256 over seven fields, each preceded by its length as 8 bytes, big-endian: \
    'bayhand jobbook entry 1', job, number, mono (8 bytes each, big-endian), at, body (UTF-8 as written here), and the \
    32 bytes of the hash before (none at a first entry). A seal's signature is Ed25519 over nine such fields: \
    'bayhand jobbook seal 1', job, entries, head, by, at, number, mono of the seal's entry in the book's own chain, and \
    the hash before that. The whole recipe: RECORD.md in the program's source.";

/// An exported job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Export {
    form: String,
    recipe: String,
    /// The job's number in the book that it comes from.
    pub job: i64,
    /// Its entries; each body is the exact text that was hashed.
    pub entries: Vec<Entry>,
    /// The entries of that book's own chain that tell of this job and of the keys that sealed it.
    pub book: Vec<BookLine>,
}

/// An entry of a book's own chain, with the hash of the one before it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BookLine {
    /// Its place in the book's own chain.
    pub number: u64,
    /// Its place in the whole book.
    pub mono: u64,
    /// When it was written.
    pub at: String,
    /// What was written, byte for byte.
    pub body: String,
    /// Its hash.
    pub hash: String,
    /// The hash of the entry before it in the book's own chain; empty at the first.
    pub before: String,
}

/// A seal of an exported job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SealMark {
    /// Who.
    pub by: String,
    /// When.
    pub at: String,
    /// The code that stands on the sheet.
    pub code: String,
    /// The key's fingerprint.
    pub fingerprint: String,
    /// True when the job was opened again after it.
    pub void: bool,
}

impl Export {
    /// Reads the text of an export and checks every hash and every signature in it.
    ///
    /// # Errors
    /// [`BookError::BadExport`] with what is wrong first.
    pub fn read(text: &str) -> Result<Self, BookError> {
        let bad = BookError::BadExport;
        let export: Self = serde_json::from_str(text).map_err(|error| bad(error.to_string()))?;
        if export.form != FORM {
            return Err(bad(format!("its form is {:?}, this program reads {FORM:?}", export.form)));
        }
        export.check_entries().map_err(|why| bad(why.to_string()))?;
        export.check_book().map_err(bad)?;
        Ok(export)
    }

    /// The text.
    pub fn text(&self) -> String {
        // Plain texts and numbers always have a JSON form.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }

    /// Hash of the last entry.
    pub fn head(&self) -> &str {
        self.entries.last().map_or("", |entry| &entry.hash)
    }

    /// Hash of the first entry, by which the job is known again.
    pub fn first_hash(&self) -> &str {
        self.entries.first().map_or("", |entry| &entry.hash)
    }

    fn check_entries(&self) -> Result<(), BadEntry> {
        let job = JobId(self.job);
        let mut before = Vec::new();
        let bad = |number, what| BadEntry { job, number, what };
        if self.entries.is_empty() || self.job < 1 {
            return Err(bad(1, Defect::Missing));
        }
        let mut mono = 0;
        for (number, entry) in (1..).zip(&self.entries) {
            if entry.number != number || entry.mono <= mono {
                return Err(bad(number, Defect::Missing));
            }
            mono = entry.mono;
            let (at, body) = (entry.at.as_bytes(), entry.body.as_bytes());
            let hash = Link { job: self.job, number, mono, at, body }.hash(&before);
            if hex::encode(hash) != entry.hash {
                return Err(bad(number, Defect::HashDiffers));
            }
            before = hash.to_vec();
        }
        Ok(())
    }

    /// The lines of the book's own chain: each by itself, and that the seals and ends are those of this job.
    fn check_book(&self) -> Result<(), String> {
        let mut number = 0;
        let mut opened = false;
        let mut keys: Vec<String> = Vec::new();
        let mut end: Option<(u64, String)> = None;
        for line in &self.book {
            let at_line = |why: &str| format!("line {} of the book: {why}", line.number);
            if line.number <= number {
                return Err(at_line("it is out of order"));
            }
            number = line.number;
            let before = hex::decode(&line.before).map_err(|_| at_line("its hash before is no hash"))?;
            let (at, body) = (line.at.as_bytes(), line.body.as_bytes());
            let hash = Link { job: 0, number, mono: line.mono, at, body }.hash(&before);
            if hex::encode(hash) != line.hash {
                return Err(at_line("its hash does not match"));
            }
            let event = BookEvent::of_body(&line.body).map_err(|_| at_line("it says nothing to this program"))?;
            let own = |job: JobId| {
                if job.0 == self.job { Ok(()) } else { Err(at_line("it is of another job")) }
            };
            match event {
                BookEvent::JobOpened { job, first_hash } => {
                    own(job)?;
                    if first_hash != self.first_hash() {
                        return Err(at_line("the job began with another entry"));
                    }
                    opened = true;
                }
                BookEvent::KeySet { key, .. } => keys.push(key),
                BookEvent::JobClosed { job, entries, head, .. } => {
                    own(job)?;
                    end = Some((entries, head));
                }
                BookEvent::JobSealed(found) => {
                    own(found.job)?;
                    if !keys.contains(&found.key) {
                        return Err(at_line("the key of the seal was never set"));
                    }
                    let head = hex::decode(&found.head).unwrap_or_default();
                    let (job, entries, by) = (found.job.0, found.entries, found.by.as_str());
                    let (at, mono) = (line.at.as_str(), line.mono);
                    let signed = Sealed { job, entries, head: &head, by, at, number, mono, before: &before };
                    if !seal::fits(&found.key, &found.signature, &signed.message()) {
                        return Err(at_line("its signature does not fit"));
                    }
                    self.has(found.entries, &found.head).ok_or_else(|| at_line("the sealed entry is another"))?;
                    end = Some((found.entries, found.head));
                }
                BookEvent::JobReopened { job, .. } => {
                    own(job)?;
                    end = None;
                }
                _ => return Err(at_line("it has no place in an export")),
            }
        }
        if !opened {
            return Err("nothing says how the job was opened".into());
        }
        match end {
            Some((entries, head)) if entries != self.entries.len() as u64 || head != self.head() => {
                Err("the job has other entries than when it was ended".into())
            }
            _ => Ok(()),
        }
    }

    fn has(&self, entries: u64, head: &str) -> Option<()> {
        let last = self.entries.get((entries as usize).checked_sub(1)?)?;
        (last.hash == head).then_some(())
    }

    /// The seals of the job, in order.
    pub fn seals(&self) -> Vec<SealMark> {
        let mut marks: Vec<SealMark> = Vec::new();
        for line in &self.book {
            match BookEvent::of_body(&line.body) {
                Ok(BookEvent::JobSealed(found)) => marks.push(SealMark {
                    code: found.code(),
                    fingerprint: seal::fingerprint(&found.key).unwrap_or_default(),
                    by: found.by,
                    at: line.at.clone(),
                    void: false,
                }),
                Ok(BookEvent::JobReopened { .. }) => marks.iter_mut().for_each(|mark| mark.void = true),
                _ => {}
            }
        }
        marks
    }
}

impl Book {
    /// A job with all that a third party needs to check it. Customer data is not in it.
    ///
    /// # Errors
    /// [`BookError::NoSuchJob`], [`BookError::BadEntry`], or the storage fails.
    pub async fn export(&self, job: JobId) -> Result<Export, BookError> {
        let mut inner = self.inner.lock().await;
        let stored = rows::stored(&mut inner.connection, job).await.at_path(self.path())?;
        if stored.is_empty() || job == JobId::BOOK {
            return Err(no_entries(&mut inner.connection, self.path(), job).await);
        }
        let entries = verify::chain(job, stored)?;
        let own = rows::stored(&mut inner.connection, JobId::BOOK).await.at_path(self.path())?;
        let own = verify::chain(JobId::BOOK, own)?;
        let events: Vec<Option<BookEvent>> = own.iter().map(|entry| BookEvent::of_body(&entry.body).ok()).collect();
        let sealers: Vec<&str> = events
            .iter()
            .flatten()
            .filter_map(|event| match event {
                BookEvent::JobSealed(seal) if seal.job == job => Some(seal.key.as_str()),
                _ => None,
            })
            .collect();
        let tells = |event: &BookEvent| match event {
            BookEvent::JobOpened { job: of, .. }
            | BookEvent::JobClosed { job: of, .. }
            | BookEvent::JobReopened { job: of, .. } => *of == job,
            BookEvent::JobSealed(seal) => seal.job == job,
            BookEvent::KeySet { key, .. } => sealers.contains(&key.as_str()),
            _ => false,
        };
        let mut book = Vec::new();
        for (place, entry) in own.iter().enumerate() {
            if events[place].as_ref().is_some_and(tells) {
                let Entry { number, mono, at, body, hash } = entry.clone();
                let before = place.checked_sub(1).map(|place| own[place].hash.clone()).unwrap_or_default();
                book.push(BookLine { number, mono, at, body, hash, before });
            }
        }
        Ok(Export { form: FORM.into(), recipe: RECIPE.into(), job: job.0, entries, book })
    }

    /// Takes in a job that another book exported, checked. False when just this state of it is in the book already.
    ///
    /// # Errors
    /// [`BookError::BadExport`], [`BookError::Denied`]; the book is read-only, the disk is full or the storage fails.
    pub async fn import(&self, text: &str, by: &str, at: DateTime<FixedOffset>) -> Result<bool, BookError> {
        let export = Export::read(text)?;
        let hash = Sha256::digest(text);
        let event = BookEvent::JobImported {
            by: by.to_owned(),
            first_hash: export.first_hash().to_owned(),
            head: export.head().to_owned(),
            entries: export.entries.len() as u64,
            text_hash: hex::encode(hash),
        };
        let mut inner = self.inner.lock().await;
        let inner: &mut Inner = &mut inner;
        self.still_there(inner).await?;
        let answer = sendable(write::import(inner, self.path(), text, &hash, event, &text_of(at))).await;
        self.renew_after_failure(inner, &answer).await;
        answer
    }

    /// All jobs that were taken in, in the order in which they were; of two states of one job both.
    ///
    /// # Errors
    /// [`BookError::BadExport`] when one is not as it was, or the storage fails.
    pub async fn imported(&self) -> Result<Vec<Export>, BookError> {
        let mut inner = self.inner.lock().await;
        let texts = rows::all_imported(&mut inner.connection).await.at_path(self.path())?;
        let ledger = inner.ledger(self.path()).await?;
        let mut jobs = Vec::new();
        for import in &ledger.imports {
            let told = texts.iter().find(|told| hex::encode(&told.hash) == import.text_hash);
            let text = told.and_then(|told| std::str::from_utf8(&told.text).ok()).unwrap_or_default();
            jobs.push(Export::read(text)?);
        }
        Ok(jobs)
    }
}
