//! Checks of a job book, and what is taken out of it.

use bayhand_job::ask::Refused;
use bayhand_job::handover::{Figures, Handover};
use bayhand_job::preferences::Preferences;
use bayhand_job::{Desk, Secret, SystemClock};
use bayhand_jobbook::{Book, JobId};
use std::{error::Error, fs, path::Path, sync::Arc};

/// Checks chains, seals and lists of a book and that every job can be read; says what there is.
///
/// `against` is an earlier copy of the book; `sheet` a job and the code of its seal as they stand on a sheet. Each shows
/// what a book cannot show by itself: that its very end was cut off.
///
/// # Errors
/// The first bad entry, or the book cannot be read.
pub async fn verify(book: &Path, against: Option<&Path>, sheet: Option<(i64, &str)>) -> Result<String, Box<dyn Error>> {
    let book = Book::open_read_only(book).await?;
    let found = bayhand_job::whole::verify(&book).await?;
    let mut says = format!(
        "verified: {} jobs, {} entries, {} seals, {} imported, {} erased, clock set back {} times",
        found.jobs, found.entries, found.seals, found.imported, found.erased, found.clock_set_back
    );
    if let Some(copy) = against {
        book.verify_against(&Book::open_read_only(copy).await?).await?;
        says.push_str("; all of the copy is in it");
    }
    if let Some((job, code)) = sheet {
        book.verify_code(JobId(job), code).await?;
        says.push_str("; the code on the sheet is that of the job");
    }
    Ok(says)
}

/// Writes a job as one JSON that a third party can check; `RECORD.md` of the job book says how.
///
/// # Errors
/// The book cannot be read, there is no such job, or the file cannot be written.
pub async fn export(book: &Path, job: i64, out: &Path) -> Result<(), Box<dyn Error>> {
    let export = Book::open_read_only(book).await?.export(JobId(job)).await?;
    write(out, export.text().as_bytes())
}

/// Takes in a job that another book exported, checked; says whether it was new.
///
/// # Errors
/// The export does not check, the book cannot be written, or whoever asks may not.
pub async fn import(book: &Path, file: &Path, by: &str, pin: Secret) -> Result<&'static str, Box<dyn Error>> {
    let text = fs::read_to_string(file)?;
    if !book.exists() {
        return Err(format!("there is no job book at {}", book.display()).into());
    }
    let desk = Desk::open(book, Arc::new(SystemClock)).await?;
    let taken = desk.import(by, pin, &text).await.map_err(|why| why.says);
    desk.close().await?;
    Ok(if taken? { "taken in" } else { "there already" })
}

/// How a sheet is made.
pub struct Sheet<'a> {
    /// Its language: `en` or `de`.
    pub language: &'a str,
    /// A workshop's own template; none: the program's.
    pub template: Option<&'a Path>,
}

/// Writes the sheet of a sealed job, and beside it its figures under the same name as `.csv` and `.json`.
///
/// # Errors
/// The book cannot be opened, the job is not sealed, the template has a fault, or a file cannot be written.
pub async fn sheet(book: &Path, job: i64, out: &Path, how: Sheet<'_>) -> Result<(), Box<dyn Error>> {
    if !book.exists() {
        return Err(format!("there is no job book at {}", book.display()).into());
    }
    let template = how.template.map(fs::read_to_string).transpose()?;
    let desk = Desk::open(book, Arc::new(SystemClock)).await?;
    let made = contents(&desk, job, how.language).await;
    desk.close().await?;
    let (handover, figures) = made.map_err(|why| why.says)?;
    let page = bayhand_sheet::pdf_with_template(&handover, template.as_deref().unwrap_or(bayhand_sheet::TEMPLATE))?;
    write(&out.with_extension("csv"), &bayhand_sheet::csv(&figures)?)?;
    write(&out.with_extension("json"), bayhand_sheet::json(&figures)?.as_bytes())?;
    write(out, &page)
}

async fn contents(desk: &Desk, job: i64, language: &str) -> Result<(Handover, Figures), Refused> {
    desk.set(Preferences { language: language.to_owned(), ..Preferences::default() })?;
    Ok((desk.handover(job).await?, desk.figures(job).await?))
}

/// Written beside and renamed: a file that is there is whole.
fn write(out: &Path, bytes: &[u8]) -> Result<(), Box<dyn Error>> {
    let mut beside = out.as_os_str().to_owned();
    beside.push(".part");
    let beside = Path::new(&beside);
    fs::write(beside, bytes)?;
    fs::rename(beside, out)?;
    Ok(())
}
