//! Keeping the book: customer data, copies, other bays' jobs.

use super::Desk;
use crate::{
    ask::Refused,
    card::Card,
    fault,
    log::Log,
    preferences::Preferences,
    show,
    view::{BookView, JobRow, ReviewJob},
};
use bayhand_jobbook::{BookError, BookEvent, JobId, Secret};
use std::path::Path;
use std::sync::{Mutex, PoisonError};

/// What became of the last copy, in words.
#[derive(Debug, Default)]
pub(super) struct Copies(Mutex<Option<String>>);

/// An export of more bytes is none: a job of a day has some hundred thousand.
const MOST_BYTES: u64 = 256 << 20;

impl Desk {
    /// Names the folder into which the book is copied at the end of each job, one copy a day, the last of it; it can be on
    /// another disk. Copies the book there at once, and says where the copy lies; without a folder none are made.
    ///
    /// # Errors
    /// The copy cannot be made or does not verify. The folder is not taken then.
    pub async fn copy_to(&self, folder: &str) -> Result<String, Refused> {
        let folder = Some(folder.trim()).filter(|folder| !folder.is_empty()).map(str::to_owned);
        let says = match &folder {
            Some(folder) => self
                .copy_into(Path::new(folder))
                .await
                .map_err(|error| Refused { field: Some("copies".into()), ..self.by_book(&error) })?,
            None => self.tell().text("copies-none", &[]),
        };
        let set = self.settings().set;
        self.set(Preferences { copies_in: folder, ..set })?;
        Ok(says)
    }

    /// Copies of the book, and the jobs of other bays.
    ///
    /// # Errors
    /// As [`Desk::imported`].
    pub async fn book_view(&self) -> Result<BookView, Refused> {
        Ok(BookView {
            copies_in: self.settings().set.copies_in,
            copy_told: self.copy_told(),
            imported: self.imported().await?.into_iter().map(|(row, _)| row).collect(),
        })
    }

    /// What became of the last copy, in words; none before the first.
    pub fn copy_told(&self) -> Option<String> {
        self.copies.0.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }

    /// The end of a job stands, whatever becomes of the copy; but a copy that failed is told.
    pub(super) async fn back_up_after_end(&self) {
        let Some(folder) = self.settings().set.copies_in else { return };
        if let Err(error) = self.copy_into(Path::new(&folder)).await {
            tracing::warn!(code = error.code(), "no copy was made at the end of the job");
            self.tell_copy(self.tell().text("copy-failed", &[("why", self.by_book(&error).says)]));
        }
    }

    async fn copy_into(&self, folder: &Path) -> Result<String, BookError> {
        let to = folder.join(format!("jobs-{}.db", self.clock.now().format("%Y-%m-%d")));
        self.book.backup(&to).await?;
        let told = self.tell().text("copy-made", &[("place", to.display().to_string())]);
        self.tell_copy(told.clone());
        Ok(told)
    }

    fn tell_copy(&self, told: String) {
        *self.copies.0.lock().unwrap_or_else(PoisonError::into_inner) = Some(told);
    }

    /// Keeps customer data for a job, apart from its record and in place of what was kept. `pin` is asked for once the
    /// book knows people.
    ///
    /// # Errors
    /// A refusal in words; nothing was recorded then.
    pub async fn set_customer(&self, by: &str, pin: Secret, job: i64, text: &str) -> Result<(), Refused> {
        if text.trim().is_empty() {
            return Err(Refused { field: Some("text".into()), ..self.refuse("customer-text") });
        }
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

    /// The refusal when what is handed over of a job could not be written to a place: `sheet`, `export` by name.
    pub fn not_written(&self, what: &str, job: i64, place: &Path, why: &std::io::Error) -> Refused {
        let tell = self.tell();
        let code = format!("{what}-not-written");
        let args =
            [("job", job.to_string()), ("place", place.display().to_string()), ("why", fault::system(why, &tell))];
        Refused { says: tell.text(&format!("refused-{code}"), &args), field: None, code }
    }

    /// The refusal when the contents of a sheet cannot be set as a page.
    pub fn not_set(&self, job: i64, why: &dyn std::fmt::Display) -> Refused {
        let says = self.tell().text("refused-sheet-not-set", &[("job", job.to_string()), ("why", why.to_string())]);
        Refused { code: "sheet-not-set".into(), field: None, says }
    }

    /// Where a sheet and its figures lie, in words.
    pub fn sheet_told(&self, [pdf, csv, json]: [&Path; 3]) -> String {
        let place = |path: &Path| path.display().to_string();
        self.tell().text("sheet-written", &[("pdf", place(pdf)), ("csv", place(csv)), ("json", place(json))])
    }

    /// Where an export lies, in words.
    pub fn export_told(&self, path: &Path) -> String {
        self.tell().text("export-written", &[("place", path.display().to_string())])
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

    /// Takes in a job that another bay exported into a file; says whether it was new.
    ///
    /// # Errors
    /// The file cannot be read, or as [`Desk::import`].
    pub async fn import_from(&self, place: &str, by: &str, pin: Secret) -> Result<String, Refused> {
        let place = place.trim();
        let unread = |why: String| Refused {
            code: "import-file".into(),
            field: Some("import".into()),
            says: self.tell().text("refused-import-file", &[("place", place.to_owned()), ("why", why)]),
        };
        let text = fault::text_of(Path::new(place), MOST_BYTES, &self.tell()).await.map_err(unread)?;
        let new = self.import(by, pin, &text).await?;
        Ok(self.tell().text(if new { "import-taken" } else { "import-there" }, &[]))
    }

    /// One job that was taken in, by its place in their list.
    ///
    /// # Errors
    /// There is no such job, or as [`Desk::imported`].
    pub async fn imported_job(&self, id: i64) -> Result<ReviewJob, Refused> {
        let found = self.imported().await?.into_iter().find(|(row, _)| row.id == id);
        found.map(|(_, job)| job).ok_or_else(|| self.refuse("no-imported-job"))
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
            let card = Card::of(&log);
            Ok((show::card_row(place as i64 + 1, &card, &tell), show::review_job(&log, &tell)))
        };
        jobs.into_iter().enumerate().map(show).collect()
    }
}
