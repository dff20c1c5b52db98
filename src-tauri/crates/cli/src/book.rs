//! Checks of a job book, and what is taken out of it.

use bayhand_job::{Desk, SystemClock};
use bayhand_jobbook::{Book, JobId};
use std::{error::Error, fs, path::Path, sync::Arc};

/// Replays and checks every job; says how many.
///
/// # Errors
/// The first bad entry, or the book cannot be read.
pub async fn verify(book: &Path) -> Result<String, Box<dyn Error>> {
    let book = Book::open_read_only(book).await?;
    let verified = book.verify().await?;
    for job in book.jobs().await? {
        let entries = book.entries(job.id).await?;
        bayhand_job::log::Log::read(job.id.0, &entries).map_err(|why| format!("job {}: {why}", job.id.0))?;
    }
    Ok(format!("verified: {} jobs, {} entries", verified.jobs, verified.entries))
}

/// Writes a job as one JSON: each entry's body as its exact string.
///
/// # Errors
/// The book cannot be read, there is no such job, or the file cannot be written.
pub async fn export(book: &Path, job: i64, out: &Path) -> Result<(), Box<dyn Error>> {
    let entries = Book::open_read_only(book).await?.entries(JobId(job)).await?;
    let text = serde_json::to_string_pretty(&serde_json::json!({ "job": job, "entries": entries }))?;
    write(out, text.as_bytes())
}

/// Writes the sheet of a sealed job.
///
/// # Errors
/// The book cannot be opened, the job is not sealed, or the file cannot be written.
pub async fn sheet(book: &Path, job: i64, out: &Path) -> Result<(), Box<dyn Error>> {
    if !book.exists() {
        return Err(format!("there is no job book at {}", book.display()).into());
    }
    let desk = Desk::open(book, Arc::new(SystemClock)).await?;
    let handover = desk.handover(job).await.map_err(|why| why.says);
    desk.close().await?;
    write(out, &bayhand_sheet::pdf(&handover?)?)
}

/// Written beside and renamed: a file that is there is whole.
fn write(out: &Path, bytes: &[u8]) -> Result<(), Box<dyn Error>> {
    let beside = out.with_extension("part");
    fs::write(&beside, bytes)?;
    fs::rename(&beside, out)?;
    Ok(())
}
