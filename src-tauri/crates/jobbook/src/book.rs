//! The book itself: opening, appending, reading back.

use std::collections::BTreeMap;
use std::fmt;
use std::fs::File;
use std::path::Path;
use std::pin::Pin;

use chrono::{DateTime, FixedOffset, SecondsFormat};
use serde::{Deserialize, Serialize};
use sqlx::{Connection as _, SqliteConnection};
use tokio::sync::Mutex;

use crate::error::AtPath as _;
use crate::event::BookEvent;
use crate::ledger::Ledger;
use crate::people::Roster;
use crate::place::Place;
use crate::verify::{self, Verified};
use crate::write::{self, Along};
use crate::{BadEntry, BookError, Defect, connection, rows};

/// A job's number in its book: 1 for the first, without gaps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct JobId(pub i64);

impl JobId {
    /// The book's own chain: what happened to the book as a whole, as [`BookEvent`]s.
    pub const BOOK: Self = Self(0);
}

impl fmt::Display for JobId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

/// The receipt for an entry that is on the disk.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Recorded {
    /// The entry's place in its job's chain, from 1; the job's length when it was written.
    pub number: u64,
    /// The entry's hash, in lower-case hexadecimal.
    pub hash: String,
}

/// An entry as it was written.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Entry {
    /// Its place in its job's chain, from 1.
    pub number: u64,
    /// Its place in the whole book, from 1: the order in which entries were written, whatever the clock said.
    pub mono: u64,
    /// When it was written: RFC 3339 with milliseconds and offset, as stored and hashed.
    pub at: String,
    /// What was written, byte for byte.
    pub body: String,
    /// Its hash, in lower-case hexadecimal.
    pub hash: String,
}

/// A job in the list of jobs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct JobRow {
    /// Its number.
    pub id: JobId,
    /// When it was opened: RFC 3339 with milliseconds and offset.
    pub opened_at: String,
    /// How many entries it has. No program leaves a job with none: that is damage, which [`Book::verify`] names.
    pub len: u64,
    /// The hash of its last entry, in lower-case hexadecimal; `None` when it has none.
    pub head_hash: Option<String>,
    /// What the caller gave for the list with the last entry, if anything.
    pub card: Option<String>,
}

/// An open job book: the one writing connection, and the lock that makes it the only one.
///
/// Calls wait for each other. A call that is dropped before it answers has written all of its entries or none; the
/// job's length tells which.
pub struct Book {
    // Dropped before the lock, so that the next program meets a connection that is closing, not one that is open.
    pub(crate) inner: Mutex<Inner>,
    pub(crate) place: Place,
    /// `None` when the book was opened for reading only.
    lock: Option<File>,
    /// Which file it is, where the system tells.
    identity: Option<(u64, u64)>,
}

/// What calls take turns with.
pub(crate) struct Inner {
    pub(crate) connection: SqliteConnection,
    /// The fold of the book's own chain, once it was needed; forgotten after a failed write.
    pub(crate) ledger: Option<Ledger>,
    /// Where the last append left the ends of its job and of the book.
    pub(crate) ends: Option<(JobId, rows::Ends)>,
}

impl Inner {
    /// The fold of the book's own chain as it is in the file.
    pub(crate) async fn ledger(&mut self, path: &Path) -> Result<&mut Ledger, BookError> {
        if self.ledger.is_none() {
            self.ledger = Some(read_ledger(&mut self.connection, path).await?);
        }
        Ok(self.ledger.get_or_insert_default())
    }
}

async fn read_ledger(connection: &mut SqliteConnection, path: &Path) -> Result<Ledger, BookError> {
    let chain = verify::chain(JobId::BOOK, rows::stored(connection, JobId::BOOK).await.at_path(path)?)?;
    Ledger::of(&chain).map_err(|(number, what)| BadEntry { job: JobId::BOOK, number, what }.into())
}

impl Book {
    /// Opens the book at `path` for writing, and makes a new one when there is none.
    ///
    /// # Errors
    /// Any that concern opening: the folder is missing, the file is not a book, newer than the program, in use by
    /// another program or not to be written, or its disk is full or cannot keep a record safely.
    pub async fn open_or_create(path: &Path) -> Result<Self, BookError> {
        Self::open(Place::of(path)?, true).await
    }

    /// Opens the book at `path` for writing.
    ///
    /// # Errors
    /// As [`Book::open_or_create`], and [`BookError::NoSuchBook`].
    pub async fn open_existing(path: &Path) -> Result<Self, BookError> {
        Self::open(Place::of(path)?, false).await
    }

    /// Opens the book at `path` for reading, also while another program writes it. It takes no lock, and every attempt
    /// to write is refused as [`BookError::ReadOnly`].
    ///
    /// # Errors
    /// [`BookError::NoSuchBook`], [`BookError::NotABook`], [`BookError::NewerThanProgram`], or the storage fails.
    pub async fn open_read_only(path: &Path) -> Result<Self, BookError> {
        let place = Place::of(path)?;
        if !place.path().exists() {
            return Err(BookError::NoSuchBook { path: place.path().into() });
        }
        let connection = connection::reading(&place).await?;
        let identity = place.identity();
        Ok(Self { inner: Mutex::new(Inner { connection, ledger: None, ends: None }), place, lock: None, identity })
    }

    async fn open(place: Place, may_create: bool) -> Result<Self, BookError> {
        // A file of another kind gets no lock file beside it. But no look is taken at a book that may be open.
        let early_lock = if place.has_lock_file() { Some(place.lock()?) } else { None };
        if place.path().exists() {
            connection::look(&place).await?;
        } else if !may_create {
            return Err(BookError::NoSuchBook { path: place.path().into() });
        }
        let lock = match early_lock {
            Some(lock) => lock,
            None => place.lock()?,
        };
        if !place.path().exists() {
            connection::create(&place).await?;
            tracing::info!(book = %place.path().display(), "made a new job book");
        }
        let connection = connection::writing(&place).await?;
        let identity = place.identity();
        Ok(Self {
            inner: Mutex::new(Inner { connection, ledger: None, ends: None }),
            place,
            lock: Some(lock),
            identity,
        })
    }

    /// Where the book lies, links followed.
    pub fn path(&self) -> &Path {
        self.place.path()
    }

    /// Closes the book and gives the lock back. Dropping it does the same, but does not wait and cannot say what failed.
    ///
    /// # Errors
    /// The storage fails. Everything recorded is safe all the same.
    pub async fn close(self) -> Result<(), BookError> {
        self.inner.into_inner().connection.close().await.at_path(self.place.path())
    }

    /// Opens a new job with its first entry, in one transaction, and returns when it is on the disk.
    ///
    /// # Errors
    /// The book is read-only, the disk is full or the storage fails.
    pub async fn open_job(&self, first_body: &str, at: DateTime<FixedOffset>) -> Result<(JobId, Recorded), BookError> {
        self.open_job_with(first_body, None, at).await
    }

    /// The same, with what the list of jobs shows of it.
    ///
    /// # Errors
    /// As [`Book::open_job`].
    pub async fn open_job_with(
        &self,
        first_body: &str,
        card: Option<&str>,
        at: DateTime<FixedOffset>,
    ) -> Result<(JobId, Recorded), BookError> {
        let mut inner = self.inner.lock().await;
        self.still_there(&mut inner).await?;
        let answer = sendable(write::open_job(&mut inner, self.path(), first_body, card, &text_of(at))).await;
        self.renew_after_failure(&mut inner, &answer).await;
        answer
    }

    /// Appends `bodies` to `job`, all or none, in one transaction, and returns when they are on the disk.
    ///
    /// `expected_len` is the job's length as the caller has seen it.
    ///
    /// # Errors
    /// [`BookError::Stale`] when the job has another length, [`BookError::NoSuchJob`], [`BookError::Ended`]; the book is
    /// read-only, the disk is full or the storage fails.
    pub async fn append(
        &self,
        job: JobId,
        expected_len: u64,
        bodies: &[String],
        at: DateTime<FixedOffset>,
    ) -> Result<Vec<Recorded>, BookError> {
        self.append_with(job, expected_len, bodies, Along::default(), at).await
    }

    /// The same, with what goes along: the job's card, and whether it ends, is sealed or opened again with it.
    ///
    /// # Errors
    /// As [`Book::append`], and [`BookError::Denied`].
    pub async fn append_with(
        &self,
        job: JobId,
        expected_len: u64,
        bodies: &[String],
        along: Along<'_>,
        at: DateTime<FixedOffset>,
    ) -> Result<Vec<Recorded>, BookError> {
        let mut inner = self.inner.lock().await;
        self.still_there(&mut inner).await?;
        let at = text_of(at);
        let answer = sendable(write::append(&mut inner, self.path(), job, expected_len, bodies, along, &at)).await;
        self.renew_after_failure(&mut inner, &answer).await;
        answer
    }

    /// Writes what happened to the book as a whole into its own chain, all or none. `texts` are kept apart; `events` are
    /// made of the names that they get, in their order.
    ///
    /// # Errors
    /// [`BookError::Denied`] when the list of people forbids it; the book is read-only, the disk is full or the storage
    /// fails.
    pub async fn note(
        &self,
        texts: Vec<String>,
        events: impl FnOnce(Vec<String>) -> Vec<BookEvent> + Send,
        at: DateTime<FixedOffset>,
    ) -> Result<(), BookError> {
        let mut inner = self.inner.lock().await;
        self.still_there(&mut inner).await?;
        let answer = sendable(write::note(&mut inner, self.path(), texts, events, &text_of(at))).await;
        self.renew_after_failure(&mut inner, &answer).await;
        answer
    }

    /// The list of people as it stands.
    ///
    /// # Errors
    /// [`BookError::BadEntry`] when the book's own chain is not as it was written, or the storage fails.
    pub async fn roster(&self) -> Result<Roster, BookError> {
        let mut inner = self.inner.lock().await;
        if self.lock.is_none() {
            // Somebody else writes this book.
            inner.ledger = None;
        }
        Ok(inner.ledger(self.path()).await?.roster.clone())
    }

    /// Customer data of a job, with its name; none when there is none.
    ///
    /// # Errors
    /// As [`Book::roster`].
    pub async fn customer(&self, job: JobId) -> Result<Option<(String, String)>, BookError> {
        let name = self.inner.lock().await.ledger(self.path()).await?.customers.get(&job).cloned();
        let Some(name) = name else { return Ok(None) };
        Ok(self.apart(&name).await?.map(|text| (name, text)))
    }

    /// Jobs that have ended, each with who sealed it; nobody for one that ended without a signature.
    ///
    /// # Errors
    /// As [`Book::roster`].
    pub async fn ends(&self) -> Result<BTreeMap<JobId, Option<String>>, BookError> {
        let mut inner = self.inner.lock().await;
        let ledger = inner.ledger(self.path()).await?;
        let standing = ledger.ends.iter().filter(|end| !end.void);
        Ok(standing.map(|end| (end.job, end.seal.as_ref().map(|seal| seal.by.clone()))).collect())
    }

    /// A text kept apart, by its name; none when it is erased, or was never there.
    ///
    /// # Errors
    /// The storage fails.
    pub async fn apart(&self, name: &str) -> Result<Option<String>, BookError> {
        let mut inner = self.inner.lock().await;
        let Ok(name) = hex::decode(name) else { return Ok(None) };
        rows::apart_text(&mut inner.connection, &name).await.at_path(self.path())
    }

    /// All entries of a job in order, each checked against its hash.
    ///
    /// # Errors
    /// [`BookError::NoSuchJob`], [`BookError::BadEntry`] with the first that is not as it was written, or the storage
    /// fails.
    pub async fn entries(&self, job: JobId) -> Result<Vec<Entry>, BookError> {
        let connection = &mut self.inner.lock().await.connection;
        let stored = rows::stored(connection, job).await.at_path(self.path())?;
        if stored.is_empty() && job != JobId::BOOK {
            return Err(no_entries(connection, self.path(), job).await);
        }
        Ok(verify::chain(job, stored)?)
    }

    /// All jobs in the order in which they were opened.
    ///
    /// # Errors
    /// The storage fails.
    pub async fn jobs(&self) -> Result<Vec<JobRow>, BookError> {
        let jobs = rows::jobs(&mut self.inner.lock().await.connection).await.at_path(self.path())?;
        Ok(jobs
            .into_iter()
            .map(|job| JobRow {
                id: JobId(job.id),
                opened_at: job.opened,
                len: job.len,
                head_hash: job.head.map(hex::encode),
                card: job.card,
            })
            .collect())
    }

    /// Recomputes every hash of every job, and checks that no place is empty, that the list of jobs agrees with the
    /// entries, and that the file and its guards are whole.
    ///
    /// # Errors
    /// [`BookError::BadEntry`] with the first bad entry, [`BookError::Damaged`] for the rest, or the storage fails.
    pub async fn verify(&self) -> Result<Verified, BookError> {
        let mut inner = self.inner.lock().await;
        sendable(verify::book(&mut inner.connection, self.path())).await
    }

    /// A file that was removed or exchanged while it is open would take entries and keep them from everybody. What it holds
    /// is copied beside, since only this program can still read it.
    pub(crate) async fn still_there(&self, inner: &mut Inner) -> Result<(), BookError> {
        if self.identity.is_none() || self.place.identity() == self.identity {
            return Ok(());
        }
        let rescued = self.place.rescued();
        let kept = match rescued.to_str() {
            Some(name) if !rescued.exists() => rows::vacuum_into(&mut inner.connection, name).await.is_ok(),
            _ => rescued.exists(),
        };
        Err(BookError::Gone { path: self.path().into(), rescued: kept.then_some(rescued) })
    }

    /// After a failed write the connection may be in any state (SQLite may have ended the transaction by itself, which
    /// the driver does not notice), so a new one takes its place. When that fails too the next write will say so.
    pub(crate) async fn renew_after_failure<T>(&self, inner: &mut Inner, answer: &Result<T, BookError>) {
        let Err(failure) = answer else { return };
        let harmless = matches!(
            failure,
            BookError::Stale { .. }
                | BookError::NoSuchJob { .. }
                | BookError::Ended { .. }
                | BookError::Denied(_)
                | BookError::BadEntry(_)
                | BookError::ReadOnly { .. }
        );
        if harmless || self.lock.is_none() {
            return;
        }
        tracing::warn!(%failure, "a write failed; connecting to the job book anew");
        (inner.ledger, inner.ends) = (None, None);
        match connection::writing(&self.place).await {
            Ok(fresh) => inner.connection = fresh,
            Err(error) => tracing::warn!(%error, "could not connect anew"),
        }
    }
}

/// A future whose being `Send` is settled here. A transaction lent to a function hides that from callers further up,
/// and a window's runtime asks for it ('implementation of `Send` is not general enough').
pub(crate) fn sendable<'a, T>(
    future: impl Future<Output = T> + Send + 'a,
) -> Pin<Box<dyn Future<Output = T> + Send + 'a>> {
    Box::pin(future)
}

/// The text of a time that is stored and hashed: milliseconds, and the offset that the clock had.
pub(crate) fn text_of(at: DateTime<FixedOffset>) -> String {
    at.to_rfc3339_opts(SecondsFormat::Millis, false)
}

/// Why a job has no entries: there is no such job, or they are gone.
pub(crate) async fn no_entries(connection: &mut SqliteConnection, path: &Path, job: JobId) -> BookError {
    match rows::has_job(connection, job).await.at_path(path) {
        Ok(true) => BadEntry { job, number: 1, what: Defect::Missing }.into(),
        Ok(false) => BookError::NoSuchJob { job },
        Err(error) => error,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]
mod tests {
    use std::future::poll_fn;
    use std::task::Poll;
    use std::time::Duration;

    use super::*;

    const AT: &str = "2026-03-02T08:15:00+01:00";

    #[tokio::test]
    async fn on_a_full_disk_a_step_is_kept_whole_or_not_at_all_and_the_book_goes_on() {
        let folder = tempfile::tempdir().unwrap();
        let book = Book::open_or_create(&folder.path().join("jobs.db")).await.unwrap();
        let (job, _) = book.open_job("{}", AT.parse().unwrap()).await.unwrap();
        // SQLite answers with 'full' when a file would grow past this, as it does when the disk has no room.
        sqlx::query("PRAGMA max_page_count = 16").execute(&mut book.inner.lock().await.connection).await.unwrap();

        let bodies = ["{}".to_owned(), format!("{{\"long\":\"{}\"}}", "x".repeat(100_000))];
        let refused = book.append(job, 1, &bodies, AT.parse().unwrap()).await;
        assert!(matches!(refused, Err(BookError::DiskFull { .. })), "the second body has no room: {refused:?}");
        assert_eq!(book.entries(job).await.unwrap().len(), 1, "the first body, which had room, is not kept alone");

        sqlx::query("PRAGMA max_page_count = 1000").execute(&mut book.inner.lock().await.connection).await.unwrap();
        let receipts = book.append(job, 1, &bodies, AT.parse().unwrap()).await;
        assert_eq!(receipts.map(|receipts| receipts.len()).ok(), Some(2), "with room again the same step is recorded");
        assert_eq!(
            book.verify().await.unwrap(),
            Verified { jobs: 1, entries: 3, ..Verified::default() },
            "and the book is sound"
        );
    }

    #[tokio::test]
    async fn a_call_that_is_dropped_half_way_leaves_all_or_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let book = Book::open_or_create(&folder.path().join("jobs.db")).await.unwrap();
        let (job, _) = book.open_job("{}", AT.parse().unwrap()).await.unwrap();
        let bodies = vec!["{}".to_owned(); 3];
        let (mut len, mut none, mut all) = (1, 0, 0);
        let mut answers = 0;
        // An append of three asks the connection some ten things; this drops it before, between and after the answers.
        while all < 3 {
            let mut append = Box::pin(book.append(job, len, &bodies, AT.parse().unwrap()));
            for _ in 0..answers {
                let state = poll_fn(|context| Poll::Ready(append.as_mut().poll(context))).await;
                if state.is_ready() {
                    break;
                }
                tokio::time::sleep(Duration::from_millis(2)).await; // lets the connection's thread answer
            }
            drop(append);
            match book.entries(job).await.unwrap().len() as u64 - len {
                0 => none += 1,
                3 => all += 1,
                other => panic!("dropped after {answers} answers, {other} of 3 entries were kept"),
            }
            len = book.entries(job).await.unwrap().len() as u64;
            answers += 1;
        }
        assert!(none > 0, "control: calls were dropped on both sides of the commit, {none} and {all}");
        book.append(job, len, &bodies, AT.parse().unwrap()).await.expect("the book goes on");
        book.verify().await.expect("and is sound");
    }
}
