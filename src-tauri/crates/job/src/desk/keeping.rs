//! Keeping the book: customer data, copies, other bays' jobs.

use super::Desk;
use crate::{
    ask::Refused,
    card::Card,
    log::Log,
    show,
    view::{JobRow, ReviewJob},
};
use bayhand_jobbook::{BookEvent, JobId, Secret};
use std::path::PathBuf;
use std::sync::{Mutex, PoisonError};

/// Where a copy goes at the end of each job, and what became of the last one.
#[derive(Debug, Default)]
pub(super) struct Copies {
    pub(super) folder: Option<PathBuf>,
    told: Mutex<Option<String>>,
}

impl Desk {
    /// The same desk, which copies the book into `folder` at the end of each job: one copy a day, the last of it. The
    /// folder can be on another disk.
    pub fn with_copies_in(mut self, folder: PathBuf) -> Desk {
        self.copies.folder = Some(folder);
        self
    }

    /// What became of the last copy, in words; none before the first.
    pub fn copy_told(&self) -> Option<String> {
        self.copies.told.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }

    /// The end of a job stands, whatever becomes of the copy; but a copy that failed is told.
    pub(super) async fn back_up_after_end(&self) {
        let Some(folder) = &self.copies.folder else { return };
        let to = folder.join(format!("jobs-{}.db", self.clock.now().format("%Y-%m-%d")));
        let tell = self.tell();
        let told = match self.book.backup(&to).await {
            Ok(()) => tell.text("copy-made", &[("place", to.display().to_string())]),
            Err(error) => {
                tracing::warn!(code = error.code(), "no copy was made at the end of the job");
                tell.text("copy-failed", &[("why", error.to_string())])
            }
        };
        *self.copies.told.lock().unwrap_or_else(PoisonError::into_inner) = Some(told);
    }

    /// Keeps customer data for a job, apart from its record and in place of what was kept. `pin` is asked for once the
    /// book knows people.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn set_customer(&self, by: &str, pin: Secret, job: i64, text: &str) -> Result<(), Refused> {
        self.prove(by, &pin).await?;
        self.read(job).await?;
        let by = by.to_owned();
        let event = |names: Vec<String>| {
            let customer = names.into_iter().next().unwrap_or_default();
            vec![BookEvent::CustomerSet { by, job: JobId(job), customer }]
        };
        let text = vec![text.trim().to_owned()];
        self.book.note(text, event, self.clock.now()).await.map_err(|e| self.by_book(&e))
    }

    /// Customer data of a job; none when there is none, or it was erased.
    ///
    /// # Errors
    /// The book cannot be read.
    pub async fn customer(&self, job: i64) -> Result<Option<String>, Refused> {
        self.book.customer(JobId(job)).await.map(|found| found.map(|(_, text)| text)).map_err(|e| self.by_book(&e))
    }

    /// Erases customer data of a job. That it was erased, by whom and why, stays in the record.
    ///
    /// # Errors
    /// A refusal in words; nothing was erased then.
    pub async fn erase_customer(&self, by: &str, pin: Secret, job: i64, reason: &str) -> Result<(), Refused> {
        self.prove(by, &pin).await?;
        let found = self.book.customer(JobId(job)).await.map_err(|e| self.by_book(&e))?;
        let (customer, _) = found.ok_or_else(|| self.by_book(&bayhand_jobbook::Denied::NoCustomer.into()))?;
        let event = BookEvent::Erased { by: by.to_owned(), customer, reason: reason.trim().to_owned() };
        self.book.note(Vec::new(), |_| vec![event], self.clock.now()).await.map_err(|e| self.by_book(&e))
    }

    /// One job as one JSON text that a third party can check.
    ///
    /// # Errors
    /// There is no such job, or it cannot be read.
    pub async fn export(&self, job: i64) -> Result<String, Refused> {
        self.book.export(JobId(job)).await.map(|export| export.text()).map_err(|e| self.by_book(&e))
    }

    /// Takes in a job that another bay exported. False when just this state of it is here already.
    ///
    /// # Errors
    /// A refusal in words; nothing was taken in then.
    pub async fn import(&self, by: &str, pin: Secret, text: &str) -> Result<bool, Refused> {
        self.prove(by, &pin).await?;
        let taken = self.book.import(text, by, self.clock.now()).await.map_err(|e| self.by_book(&e))?;
        self.changed.send_modify(|n| *n += 1);
        Ok(taken)
    }

    /// Jobs that were taken in, in order; `id` counts them from 1 and is not a job's number in this book.
    ///
    /// # Errors
    /// The book cannot be read, or a job says nothing to this program.
    pub async fn imported(&self) -> Result<Vec<(JobRow, ReviewJob)>, Refused> {
        let tell = self.tell();
        let jobs = self.book.imported().await.map_err(|e| self.by_book(&e))?;
        let show = |(place, export): (usize, bayhand_jobbook::Export)| {
            let log = Log::read(export.job, &export.entries).map_err(|why| self.unreadable(&why))?;
            let card = Card::new(&log.opened, &log.document, &log.state, log.at());
            Ok((show::card_row(place as i64 + 1, &card, &tell), show::review_job(&log, &tell)))
        };
        jobs.into_iter().enumerate().map(show).collect()
    }
}
