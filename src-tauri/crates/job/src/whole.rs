//! Whether a whole book is what was written, and says what it can say: chains, seals and lists by `jobbook`, and that each
//! job can be read, agrees with its card, and was ended as the book's own chain says.

use crate::{
    card::Card,
    log::{Log, LogError},
};
use bayhand_jobbook::{Book, BookError, JobId, Verified};
use bayhand_procedure::{Event, Status};
use thiserror::Error;

/// What is wrong with a book.
#[derive(Debug, Error)]
pub enum Unsound {
    /// A chain, a seal, a list or the file.
    #[error(transparent)]
    Book(#[from] BookError),
    /// A job that says nothing to this program.
    #[error("Job {job}: {why}.")]
    Job {
        /// The job.
        job: i64,
        /// Why.
        why: LogError,
    },
    /// The list of jobs shows another state of it.
    #[error("Job {job}: the list of jobs does not show it as its entries make it.")]
    Card {
        /// The job.
        job: i64,
    },
    /// It was ended in one chain and not in the other, or by another person.
    #[error("Job {job}, entry {entry}: it ended otherwise than the book's own chain says.")]
    End {
        /// The job.
        job: i64,
        /// Its last entry.
        entry: u64,
    },
}

/// Checks a whole book.
///
/// # Errors
/// What is wrong first.
pub async fn verify(book: &Book) -> Result<Verified, Unsound> {
    let verified = book.verify().await?;
    let ends = book.ends().await?;
    for row in book.jobs().await? {
        let job = row.id.0;
        let log = Log::read(job, &book.entries(row.id).await?).map_err(|why| Unsound::Job { job, why })?;
        let wanted = Card::of(&log);
        // A card of another form was written by another version of the program; it is not shown either.
        if row.card.as_deref().and_then(Card::read).is_some_and(|card| card != wanted) {
            return Err(Unsound::Card { job });
        }
        if ended_by(&log) != ends.get(&JobId(job)).cloned() {
            return Err(Unsound::End { job, entry: log.revision() });
        }
    }
    Ok(verified)
}

/// Whether the job has ended, and by whose seal, if one was asked for.
fn ended_by(log: &Log) -> Option<Option<String>> {
    match log.state.status {
        Status::Stopped => Some(None),
        Status::Sealed => {
            let sealed = log.lines.iter().rev().find_map(|line| match &line.happened.event {
                Event::Sealed { by } => Some(by.clone()),
                _ => None,
            });
            // An unsigned end has a name in the job, and none that counts in the book.
            Some(sealed.filter(|by| log.proved.contains(by)))
        }
        Status::Working | Status::Stopping => None,
    }
}
