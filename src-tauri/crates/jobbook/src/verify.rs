//! Whether the book is still what was written.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};
use sqlx::{Connection as _, SqliteConnection};

use crate::error::AtPath as _;
use crate::ledger::{End, Ledger};
use crate::rows::{self, Stored, Told};
use crate::{BadEntry, BookError, Defect, Entry, JobId, apart, connection, export, seal};

/// What a sound book was found to hold.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Verified {
    /// The number of jobs.
    pub jobs: u64,
    /// The number of entries of all jobs together, the book's own chain not counted.
    pub entries: u64,
    /// Seals that hold. Those that a reopening made void are checked too, and not counted.
    pub seals: u64,
    /// Customers' texts that were erased, as the record says: erased, not altered.
    pub erased: u64,
    /// How often the clock was set back.
    pub clock_set_back: u64,
    /// Other bays' jobs that were taken in.
    pub imported: u64,
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
    let own = chain(JobId::BOOK, rows::stored(&mut moment, JobId::BOOK).await.at_path(path)?)?;
    let in_own = |number, what| BadEntry { job: JobId::BOOK, number, what };
    let ledger = Ledger::of(&own).map_err(|(number, what)| in_own(number, what))?;
    let rows_of_jobs = rows::jobs(&mut moment).await.at_path(path)?;
    let row_of: BTreeMap<i64, &rows::Job> = rows_of_jobs.iter().map(|row| (row.id, row)).collect();
    let mut ends: BTreeMap<JobId, Vec<&End>> = BTreeMap::new();
    for end in &ledger.ends {
        ends.entry(end.job).or_default().push(end);
    }
    let highest = rows::highest_job(&mut moment).await.at_path(path)?.max(ledger.openings.len() as i64);

    let mut entries = 0;
    for id in 1..=highest {
        let job = JobId(id);
        let chain = chain(job, rows::stored(&mut moment, job).await.at_path(path)?)?;
        let Some(first) = chain.first() else {
            return Err(BadEntry { job, number: 1, what: Defect::Missing }.into());
        };
        let (_, first_hash) =
            ledger.openings.get(id as usize - 1).ok_or_else(|| in_own(own.len() as u64 + 1, Defect::Missing))?;
        if *first_hash != first.hash {
            return Err(BadEntry { job, number: 1, what: Defect::NotTheFirst }.into());
        }
        let row = row_of.get(&id).filter(|row| row.opened == first.at);
        // A card is of the job's last entry. What it says is compared by whoever knows what entries mean.
        if row.is_none_or(|row| row.card_len.is_some_and(|len| len != chain.len() as u64)) {
            return Err(BadEntry { job, number: 1, what: Defect::JobRowDiffers }.into());
        }
        for end in ends.get(&job).into_iter().flatten() {
            let there = (end.entries as usize).checked_sub(1).and_then(|last| chain.get(last));
            let grown = !end.void && chain.len() as u64 != end.entries;
            if grown || there.is_none_or(|entry| entry.hash != end.head) {
                return Err(in_own(end.number, Defect::NotTheJobThatEnded).into());
            }
        }
        entries += chain.len() as u64;
    }
    if let Some(end) = ledger.ends.iter().find(|end| !(1..=highest).contains(&end.job.0)) {
        return Err(in_own(end.number, Defect::NotTheJobThatEnded).into());
    }
    let cards = rows_of_jobs.iter().filter(|row| row.card.is_some()).count() as u64;
    if rows::counts(&mut moment).await.at_path(path)?
        != (highest.cast_unsigned() + 1, own.len() as u64 + entries, cards)
    {
        let detail = "there are rows that belong to no job, or the row of the book itself is gone".into();
        return Err(BookError::Damaged { path: path.into(), detail });
    }
    if let Some(jump) = rows::first_jump(&mut moment).await.at_path(path)? {
        let what = Defect::EarlierOnesGone { missing: jump.missing };
        return Err(BadEntry { job: JobId(jump.job), number: jump.number, what }.into());
    }
    let apart = rows::all_apart(&mut moment).await.at_path(path)?;
    told_apart(&own, &ledger, &apart)?;
    let imported = rows::all_imported(&mut moment).await.at_path(path)?;
    imports(&ledger, &imported)?;
    whole(&mut moment, path).await?;
    moment.rollback().await.at_path(path)?;
    Ok(Verified {
        jobs: highest.cast_unsigned(),
        entries,
        seals: ledger.ends.iter().filter(|end| !end.void && end.seal.is_some()).count() as u64,
        erased: ledger.erased,
        clock_set_back: ledger.clock_set_back,
        imported: imported.len() as u64,
    })
}

/// Every text told apart is there as it was, or gone by right; and there are no others.
fn told_apart(own: &[Entry], ledger: &Ledger, stored: &[Told]) -> Result<(), BadEntry> {
    let sound: BTreeSet<String> = stored
        .iter()
        .filter(|told| told.hash == apart::hash(&told.salt, &told.text))
        .map(|told| hex::encode(&told.hash))
        .collect();
    // The first entry that names a text is the one to look at.
    let named = |name: &str| own.iter().find(|entry| entry.body.contains(name)).map_or(0, |entry| entry.number);
    let bad = |name: &str, what| BadEntry { job: JobId::BOOK, number: named(name), what };
    if let Some(name) = ledger.apart.iter().find(|name| !sound.contains(*name)) {
        return Err(bad(name, Defect::ApartGone));
    }
    let there = stored.iter().map(|told| hex::encode(&told.hash));
    match there.into_iter().find(|name| !ledger.apart.contains(name)) {
        Some(name) => Err(bad(&name, Defect::ApartBack)),
        None => Ok(()),
    }
}

/// Every imported job is there as it was taken in; and there are no others.
fn imports(ledger: &Ledger, stored: &[Told]) -> Result<(), BadEntry> {
    let changed = |number| BadEntry { job: JobId::BOOK, number, what: Defect::ImportChanged };
    let mut left: BTreeMap<String, &Told> = stored.iter().map(|told| (hex::encode(&told.hash), told)).collect();
    for import in &ledger.imports {
        let told = left.remove(&import.text_hash).ok_or_else(|| changed(import.number))?;
        if told.hash != Sha256::digest(&told.text).as_slice() {
            return Err(changed(import.number));
        }
        let read = std::str::from_utf8(&told.text).ok().and_then(|text| export::Export::read(text).ok());
        if read.is_none_or(|job| job.head() != import.head || job.first_hash() != import.first_hash) {
            return Err(changed(import.number));
        }
    }
    if left.is_empty() { Ok(()) } else { Err(changed(0)) }
}

/// The code of the seal that holds for a job, in the form in which typed codes are compared.
pub(crate) fn code_of(ledger: &Ledger, job: JobId) -> Option<String> {
    let end = ledger.end_of(job)?;
    Some(seal::typed(&end.seal.as_ref()?.code()))
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
