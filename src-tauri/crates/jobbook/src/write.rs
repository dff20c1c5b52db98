//! Writing: every call is one transaction, and the fold of the book's own chain follows what is on the disk.

use std::path::Path;

use chrono::DateTime;
use sqlx::{Connection as _, SqliteConnection};

use crate::apart::{self, Apart};
use crate::book::{Inner, no_entries};
use crate::chain::Link;
use crate::error::AtPath as _;
use crate::event::{BookEvent, Closed, Seal};
use crate::people::Denied;
use crate::seal::{Sealed, SealingKey};
use crate::{BookError, JobId, Recorded, rows};

/// What goes along with appended entries.
#[derive(Debug, Clone, Copy, Default)]
pub struct Along<'a> {
    /// What the list of jobs shows of the job from now on; nothing takes away what it showed.
    pub card: Option<&'a str>,
    /// What becomes of the job.
    pub mark: Mark<'a>,
}

/// What becomes of a job with the appended entries.
#[derive(Debug, Clone, Copy, Default)]
pub enum Mark<'a> {
    /// It goes on.
    #[default]
    GoesOn,
    /// It ends without a signature.
    Ends(Closed),
    /// It is sealed by a supervisor with their key.
    IsSealed {
        /// The supervisor's initials.
        by: &'a str,
        /// Their key.
        key: &'a SealingKey,
    },
    /// It had ended and is opened again; the entries are written after that.
    OpensAgain {
        /// Who.
        by: &'a str,
        /// Why.
        reason: &'a str,
    },
}

/// Where entries go, inside a transaction.
struct Pen<'c> {
    connection: &'c mut SqliteConnection,
    job: JobId,
    at: &'c str,
    ends: rows::Ends,
    /// What was written into the book's own chain, to be told to the ledger after the commit.
    noted: Vec<(u64, BookEvent)>,
}

impl<'c> Pen<'c> {
    async fn at_the_end(connection: &'c mut SqliteConnection, job: JobId, at: &'c str) -> Result<Self, sqlx::Error> {
        let ends = rows::ends(connection, job).await?;
        Self::at(connection, job, at, ends).await
    }

    async fn at(
        connection: &'c mut SqliteConnection,
        job: JobId,
        at: &'c str,
        ends: rows::Ends,
    ) -> Result<Self, sqlx::Error> {
        let mut pen = Self { connection, job, at, ends, noted: Vec::new() };
        let time = |text| DateTime::parse_from_rfc3339(text).ok();
        if time(&pen.ends.at).zip(time(at)).is_some_and(|(before, now)| now < before) {
            let event = BookEvent::ClockSetBack { before: pen.ends.at.clone(), now: at.into() };
            pen.note(event).await?;
        }
        Ok(pen)
    }

    async fn write(&mut self, body: &str) -> Result<Recorded, sqlx::Error> {
        let (number, hash) =
            insert(self.connection, self.job, self.ends.number, &self.ends.hash, self.ends.mono, self.at, body).await?;
        self.ends.mono += 1;
        self.ends.number = number;
        self.ends.hash = hash.into();
        Ok(Recorded { number, hash: hex::encode(hash) })
    }

    async fn note(&mut self, event: BookEvent) -> Result<(), sqlx::Error> {
        let ends = &self.ends;
        let (number, hash) =
            insert(self.connection, JobId::BOOK, ends.book_number, &ends.book_hash, ends.mono, self.at, &event.body())
                .await?;
        self.ends.mono += 1;
        self.ends.book_number = number;
        self.ends.book_hash = hash.into();
        self.noted.push((number, event));
        Ok(())
    }

    /// The seal over the job as it has been written so far.
    fn seal(&self, by: &str, key: &SealingKey) -> Seal {
        let rows::Ends { number, hash, book_number, book_hash, mono, .. } = &self.ends;
        let signed = Sealed {
            job: self.job.0,
            entries: *number,
            head: hash,
            by,
            at: self.at,
            number: book_number + 1,
            mono: mono + 1,
            before: book_hash,
        };
        Seal {
            job: self.job,
            entries: *number,
            head: hex::encode(hash),
            by: by.to_owned(),
            key: key.public(),
            signature: key.sign(&signed.message()),
        }
    }
}

/// Writes one entry after the one with this number and hash, which are 0 and nothing when it is the first.
async fn insert(
    connection: &mut SqliteConnection,
    job: JobId,
    number_before: u64,
    before: &[u8],
    mono_before: u64,
    at: &str,
    body: &str,
) -> Result<(u64, [u8; 32]), sqlx::Error> {
    let (number, mono) = (number_before + 1, mono_before + 1);
    let hash = Link { job: job.0, number, mono, at: at.as_bytes(), body: body.as_bytes() }.hash(before);
    rows::insert_entry(connection, (job, number, mono), at, body, &hash).await?;
    Ok((number, hash))
}

pub(crate) async fn open_job(
    inner: &mut Inner,
    path: &Path,
    first_body: &str,
    card: Option<&str>,
    at: &str,
) -> Result<(JobId, Recorded), BookError> {
    inner.ledger(path).await?;
    inner.ends = None;
    let mut writing = inner.connection.begin_with("BEGIN IMMEDIATE").await.at_path(path)?;
    let job = JobId(rows::last_job(&mut writing).await.at_path(path)? + 1);
    rows::insert_job(&mut writing, job, at).await.at_path(path)?;
    let mut pen = Pen::at_the_end(&mut writing, job, at).await.at_path(path)?;
    let first = pen.write(first_body).await.at_path(path)?;
    pen.note(BookEvent::JobOpened { job, first_hash: first.hash.clone() }).await.at_path(path)?;
    let noted = pen.noted;
    if card.is_some() {
        rows::set_card(&mut writing, job, 1, card).await.at_path(path)?;
    }
    writing.commit().await.at_path(path)?;
    follow(inner, &noted, at);
    Ok((job, first))
}

pub(crate) async fn append(
    inner: &mut Inner,
    path: &Path,
    job: JobId,
    expected: u64,
    bodies: &[String],
    along: Along<'_>,
    at: &str,
) -> Result<Vec<Recorded>, BookError> {
    if job == JobId::BOOK {
        return Err(BookError::NoSuchJob { job });
    }
    let ledger = inner.ledger(path).await?;
    let (ended, authenticates) = (ledger.end_of(job).is_some(), ledger.roster.authenticates());
    let reopening = match along.mark {
        Mark::OpensAgain { by, reason } if ended => {
            Some(BookEvent::JobReopened { job, by: by.to_owned(), reason: reason.trim().to_owned() })
        }
        _ if ended => return Err(BookError::Ended { job }),
        _ => None,
    };
    if let Some(event) = &reopening {
        ledger.permits(event)?;
    }
    // Nobody else writes this book, so the ends are where the last append left them. Should somebody do so all the same,
    // past the lock, then the guards refuse the entry.
    let known = inner.ends.take().filter(|(of, _)| *of == job);
    let mut writing = inner.connection.begin_with("BEGIN IMMEDIATE").await.at_path(path)?;
    let ends = match known {
        Some((_, ends)) => ends,
        None => rows::ends(&mut writing, job).await.at_path(path)?,
    };
    let mut pen = Pen::at(&mut writing, job, at, ends).await.at_path(path)?;
    if pen.ends.number == 0 {
        return Err(no_entries(pen.connection, path, job).await);
    }
    if pen.ends.number != expected {
        return Err(BookError::Stale { job, expected, found: pen.ends.number });
    }
    if let Some(event) = reopening {
        pen.note(event).await.at_path(path)?;
    }
    let mut recorded = Vec::with_capacity(bodies.len());
    for body in bodies {
        recorded.push(pen.write(body).await.at_path(path)?);
    }
    let end = match along.mark {
        Mark::Ends(Closed::Unsigned) if authenticates => {
            return Err(Denied::NoKey("the supervisor".into()).into());
        }
        Mark::Ends(how) => {
            let (entries, head) = (pen.ends.number, hex::encode(&pen.ends.hash));
            Some(BookEvent::JobClosed { job, entries, head, how })
        }
        Mark::IsSealed { by, key } => Some(BookEvent::JobSealed(pen.seal(by, key))),
        Mark::GoesOn | Mark::OpensAgain { .. } => None,
    };
    if let Some(event) = end {
        if let Some(ledger) = &inner.ledger {
            ledger.permits(&event)?;
        }
        pen.note(event).await.at_path(path)?;
    }
    let (noted, mut ends) = (pen.noted, pen.ends);
    if !bodies.is_empty() {
        rows::set_card(&mut writing, job, ends.number, along.card).await.at_path(path)?;
    }
    writing.commit().await.at_path(path)?;
    at.clone_into(&mut ends.at);
    inner.ends = Some((job, ends));
    follow(inner, &noted, at);
    Ok(recorded)
}

pub(crate) async fn note(
    inner: &mut Inner,
    path: &Path,
    texts: Vec<String>,
    events: impl FnOnce(Vec<String>) -> Vec<BookEvent>,
    at: &str,
) -> Result<(), BookError> {
    inner.ends = None;
    let texts = texts.into_iter().map(Apart::new).collect::<Result<Vec<_>, _>>()?;
    let events = events(texts.iter().map(Apart::name).collect());
    // Each is permitted as the ones before it leave things.
    let mut after = inner.ledger(path).await?.clone();
    for event in &events {
        after.permits(event)?;
        after.apply(0, event, at);
    }
    let mut writing = inner.connection.begin_with("BEGIN IMMEDIATE").await.at_path(path)?;
    for Apart { salt, text } in &texts {
        let hash = apart::hash(salt, text.as_bytes());
        rows::insert_apart(&mut writing, &hash, salt, text).await.at_path(path)?;
    }
    let gone_before = inner.ledger.as_ref().map(|ledger| &ledger.gone);
    let goes: Vec<_> = after.gone.iter().filter(|name| gone_before.is_none_or(|gone| !gone.contains(*name))).collect();
    for name in &goes {
        if let Ok(hash) = hex::decode(name) {
            rows::remove_apart(&mut writing, &hash).await.at_path(path)?;
        }
    }
    let goes = !goes.is_empty();
    let mut pen = Pen::at_the_end(&mut writing, JobId::BOOK, at).await.at_path(path)?;
    for event in events {
        pen.note(event).await.at_path(path)?;
    }
    let noted = pen.noted;
    writing.commit().await.at_path(path)?;
    follow(inner, &noted, at);
    if goes {
        // What was erased must not stay readable in the log. Its pages in the file were overwritten (secure_delete).
        rows::empty_log(&mut inner.connection).await.at_path(path)?;
    }
    Ok(())
}

/// Takes an export's text in; false when it is there already.
pub(crate) async fn import(
    inner: &mut Inner,
    path: &Path,
    text: &str,
    hash: &[u8],
    event: BookEvent,
    at: &str,
) -> Result<bool, BookError> {
    inner.ends = None;
    let ledger = inner.ledger(path).await?;
    let BookEvent::JobImported { head, .. } = &event else { return Ok(false) };
    if ledger.imports.iter().any(|known| known.head == *head) {
        return Ok(false);
    }
    ledger.permits(&event)?;
    let mut writing = inner.connection.begin_with("BEGIN IMMEDIATE").await.at_path(path)?;
    rows::insert_imported(&mut writing, hash, text).await.at_path(path)?;
    let mut pen = Pen::at_the_end(&mut writing, JobId::BOOK, at).await.at_path(path)?;
    pen.note(event).await.at_path(path)?;
    let noted = pen.noted;
    writing.commit().await.at_path(path)?;
    follow(inner, &noted, at);
    Ok(true)
}

/// The ledger follows what is on the disk.
fn follow(inner: &mut Inner, noted: &[(u64, BookEvent)], at: &str) {
    if let Some(ledger) = &mut inner.ledger {
        for (number, event) in noted {
            ledger.apply(*number, event, at);
        }
    }
}
