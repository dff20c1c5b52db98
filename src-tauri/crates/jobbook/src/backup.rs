//! A copy of the book while it is in use, and the comparison of a book with a copy of it.

use std::fs::{self, OpenOptions};
use std::path::Path;

use sqlx::Connection as _;

use crate::error::AtPath as _;
use crate::{BadEntry, Book, BookError, Defect, JobId, connection, rows};

impl Book {
    /// Copies the whole book as it stands at one moment to `to`, in place of an earlier copy, while it stays in use.
    /// The copy is checked before it gets its name.
    ///
    /// # Errors
    /// The place cannot be written, has no room, or the copy does not verify.
    pub async fn backup(&self, to: &Path) -> Result<(), BookError> {
        let unfinished = to.with_extension("unfinished");
        let name = unfinished
            .to_str()
            .ok_or_else(|| BookError::NotABook { path: to.into(), found: crate::Instead::NoPlainName })?;
        if let Some(folder) = to.parent().filter(|folder| !folder.as_os_str().is_empty()) {
            fs::create_dir_all(folder).at_path(to)?;
        }
        if unfinished.exists() {
            fs::remove_file(&unfinished).at_path(to)?;
        }
        // By a connection of its own: whoever records need not wait.
        let mut reader = connection::reading(&self.place).await?;
        let copied = rows::vacuum_into(&mut reader, name).await.at_path(to);
        reader.close().await.at_path(self.path())?;
        copied?;
        let copy = Book::open_read_only(&unfinished).await?;
        copy.verify().await?;
        copy.close().await?;
        OpenOptions::new().write(true).open(&unfinished).and_then(|file| file.sync_all()).at_path(to)?;
        for beside in ["-wal", "-shm"] {
            let mut name = unfinished.clone().into_os_string();
            name.push(beside);
            // The check may have left them; they hold nothing.
            let _ = fs::remove_file(name);
        }
        fs::rename(&unfinished, to).at_path(to)?;
        if let (true, Some(folder)) = (cfg!(unix), to.parent().filter(|folder| !folder.as_os_str().is_empty())) {
            fs::File::open(folder).and_then(|folder| folder.sync_all()).at_path(to)?;
        }
        Ok(())
    }

    /// Looks whether every entry of an earlier copy is still in this book: a tail that was cut off shows so.
    ///
    /// # Errors
    /// [`BookError::BadEntry`] with the first that is gone or another, or either cannot be read.
    pub async fn verify_against(&self, copy: &Book) -> Result<(), BookError> {
        let jobs = copy.jobs().await?;
        for job in std::iter::once(JobId::BOOK).chain(jobs.into_iter().map(|job| job.id)) {
            let kept = copy.entries(job).await?;
            let here = match self.entries(job).await {
                Err(BookError::NoSuchJob { .. }) => Vec::new(),
                here => here?,
            };
            let unlike = kept.iter().enumerate().find(|(place, entry)| here.get(*place) != Some(*entry));
            if let Some((_, entry)) = unlike {
                return Err(BadEntry { job, number: entry.number, what: Defect::NotAsInTheCopy }.into());
            }
        }
        Ok(())
    }

    /// Looks whether a job still has the seal whose code stands on the sheet.
    ///
    /// # Errors
    /// [`BookError::BadEntry`] when it has none or another, or the book cannot be read.
    pub async fn verify_code(&self, job: JobId, code: &str) -> Result<(), BookError> {
        let mut inner = self.inner.lock().await;
        let ledger = inner.ledger(self.path()).await?;
        if crate::verify::code_of(ledger, job).is_some_and(|found| found == crate::seal::typed(code)) {
            return Ok(());
        }
        let number = ledger.ends.iter().rev().find(|end| end.job == job).map_or(1, |end| end.entries);
        Err(BadEntry { job, number, what: Defect::NotTheCode }.into())
    }

    /// Code of the seal that holds for a job and fingerprint of its key; none when none holds.
    ///
    /// # Errors
    /// The book's own chain cannot be read.
    pub async fn seal_of(&self, job: JobId) -> Result<Option<(String, String)>, BookError> {
        let mut inner = self.inner.lock().await;
        let ledger = inner.ledger(self.path()).await?;
        let seal = ledger.end_of(job).and_then(|end| end.seal.as_ref());
        Ok(seal.map(|seal| (seal.code(), crate::seal::fingerprint(&seal.key).unwrap_or_default())))
    }
}
