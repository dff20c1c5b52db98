//! Whether the book is still what was written.

use std::path::Path;

use serde::{Deserialize, Serialize};
use sqlx::{Connection as _, SqliteConnection};

use crate::error::AtPath as _;
use crate::rows::{self, Stored};
use crate::{BadEntry, BookError, Defect, Entry, JobId, connection};

/// What a sound book was found to hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Verified {
    /// The number of jobs.
    pub jobs: u64,
    /// The number of entries of all jobs together, the book's own list of jobs not counted.
    pub entries: u64,
}

/// The body of an entry in the book's own chain. Its number there is the job's number.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Opening {
    kind: OpeningKind,
    version: u32,
    job: JobId,
    first_hash: String,
}

#[derive(Serialize, Deserialize)]
enum OpeningKind {
    #[serde(rename = "job-opened")]
    JobOpened,
}

impl Opening {
    pub(crate) fn new(job: JobId, first_hash: String) -> Self {
        Self { kind: OpeningKind::JobOpened, version: 1, job, first_hash }
    }

    /// The text that is stored. The hash is hexadecimal, so nothing in it needs escaping.
    pub(crate) fn body(&self) -> String {
        let Self { version, job, first_hash, .. } = self;
        format!(r#"{{"kind":"job-opened","version":{version},"job":{job},"first_hash":"{first_hash}"}}"#)
    }
}

/// Checks one job's chain, from its first entry on.
pub(crate) fn chain(job: JobId, stored: Vec<Stored>) -> Result<Vec<Entry>, BadEntry> {
    let mut before = Vec::new();
    let mut entries = Vec::with_capacity(stored.len());
    for (number, entry) in (1..).zip(stored) {
        let bad = |what| BadEntry { job, number, what };
        if entry.number != number {
            return Err(bad(Defect::Missing));
        }
        if entry.hash != entry.link(job).hash(&before) {
            return Err(bad(Defect::HashDiffers));
        }
        let as_text = |bytes| String::from_utf8(bytes).map_err(|_| bad(Defect::HashDiffers));
        let hash = hex::encode(&entry.hash);
        entries.push(Entry { number, mono: entry.mono, at: as_text(entry.at)?, body: as_text(entry.body)?, hash });
        before = entry.hash;
    }
    Ok(entries)
}

/// Checks the whole book as it stands at one moment, also while another program writes it.
pub(crate) async fn book(connection: &mut SqliteConnection, path: &Path) -> Result<Verified, BookError> {
    let mut moment = connection.begin().await.at_path(path)?;
    let openings = chain(JobId::BOOK, rows::stored(&mut moment, JobId::BOOK).await.at_path(path)?)?;
    let rows_of_jobs = rows::jobs(&mut moment).await.at_path(path)?;
    let highest = rows::highest_job(&mut moment).await.at_path(path)?.max(openings.len() as i64);

    let mut entries = 0;
    for id in 1..=highest {
        let job = JobId(id);
        let chain = chain(job, rows::stored(&mut moment, job).await.at_path(path)?)?;
        let row = rows_of_jobs.iter().find(|row| row.id == id);
        agree(job, chain.first(), openings.get(id as usize - 1), row)?;
        entries += chain.len() as u64;
    }
    if let Some(jump) = rows::first_jump(&mut moment).await.at_path(path)? {
        let what = Defect::EarlierOnesGone { missing: jump.missing };
        return Err(BadEntry { job: JobId(jump.job), number: jump.number, what }.into());
    }
    whole(&mut moment, path).await?;
    moment.rollback().await.at_path(path)?;
    Ok(Verified { jobs: highest.cast_unsigned(), entries })
}

/// Checks that a job's first entry, the book's own list and the table of jobs say the same.
fn agree(job: JobId, first: Option<&Entry>, opening: Option<&Entry>, row: Option<&rows::Job>) -> Result<(), BadEntry> {
    let Some(first) = first else {
        return Err(BadEntry { job, number: 1, what: Defect::Missing });
    };
    let number = job.0.cast_unsigned();
    let bad_opening = |what| BadEntry { job: JobId::BOOK, number, what };
    let opening = opening.ok_or_else(|| bad_opening(Defect::Missing))?;
    match serde_json::from_str::<Opening>(&opening.body) {
        Ok(named) if named.job != job => return Err(bad_opening(Defect::NotAnOpening)),
        Ok(named) if named.first_hash != first.hash => {
            return Err(BadEntry { job, number: 1, what: Defect::NotTheFirst });
        }
        Ok(_) => {}
        Err(_) => return Err(bad_opening(Defect::NotAnOpening)),
    }
    if row.is_none_or(|row| row.opened != first.at) {
        return Err(BadEntry { job, number: 1, what: Defect::JobRowDiffers });
    }
    Ok(())
}

/// Checks the file by SQLite's own means, and its tables and guards against those of a new book.
async fn whole(connection: &mut SqliteConnection, path: &Path) -> Result<(), BookError> {
    let damaged = |detail| BookError::Damaged { path: path.into(), detail };
    let integrity = rows::integrity(connection).await.at_path(path)?;
    if integrity != "ok" {
        return Err(damaged(integrity));
    }
    let mut model = connection::new_in_memory(path).await?;
    let wanted = rows::definitions(&mut model).await.at_path(path)?;
    let found = rows::definitions(connection).await.at_path(path)?;
    if let Some((name, _)) = wanted.iter().find(|definition| !found.contains(definition)) {
        return Err(damaged(format!("{name}, a part of every book, is missing or changed")));
    }
    if let Some((name, _)) = found.iter().find(|definition| !wanted.contains(definition)) {
        return Err(damaged(format!("{name} is not a part of any book")));
    }
    Ok(())
}
