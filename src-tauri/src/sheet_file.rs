//! Where what is handed over of a job is written: its sheet, `sheets/job-N.pdf` beside the book with its
//! figures as `.csv` and `.json`, and its record,
//! `exports/job-N.json`.

use bayhand_job::handover::{Figures, Handover};
use std::fs::{self, File};
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

/// The folder of the sheets of one book.
#[derive(Clone)]
pub struct SheetFolder(PathBuf);

impl SheetFolder {
    /// The folder `sheets` beside `book`, an absolute path. It is made with the first sheet.
    pub fn beside(book: &Path) -> Self {
        Self(book.with_file_name("sheets"))
    }

    /// Where the sheet of `job` stands: the page, and its figures as CSV and JSON.
    pub fn sheet_of(&self, job: i64) -> [PathBuf; 3] {
        ["pdf", "csv", "json"].map(|kind| self.0.join(format!("job-{job}.{kind}")))
    }

    /// The workshop's own template, `sheet.typ` beside its sheets; none: the program's.
    ///
    /// # Errors
    /// It is there and cannot be read.
    pub fn template(&self) -> io::Result<Option<String>> {
        match fs::read_to_string(self.0.join("sheet.typ")) {
            Ok(text) => Ok(Some(text)),
            Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
            Err(error) => Err(error),
        }
    }

    /// Where an exported job stands.
    pub fn export_of(&self, job: i64) -> PathBuf {
        self.0.with_file_name("exports").join(format!("job-{job}.json"))
    }
}

/// Sets a sheet as a page, by the workshop's own template where there is one, and its figures as CSV and JSON. That takes
/// long enough to be felt by whoever waits for an answer on the same thread.
///
/// # Errors
/// In words: the contents cannot be set.
pub async fn set(handover: Handover, figures: Figures, template: Option<String>) -> Result<[Vec<u8>; 3], String> {
    let work = tauri::async_runtime::spawn_blocking(move || {
        let template = template.as_deref().unwrap_or(bayhand_sheet::TEMPLATE);
        let page = bayhand_sheet::pdf_with_template(&handover, template)?;
        Ok([page, bayhand_sheet::csv(&figures)?, bayhand_sheet::json(&figures)?.into_bytes()])
    });
    work.await.map_err(|fault| fault.to_string())?.map_err(|error: bayhand_sheet::SheetError| error.to_string())
}

/// Writes `path` in place of an earlier file of that name.
///
/// # Errors
/// The disk refuses; an earlier file then stays as it is.
pub async fn write(path: PathBuf, bytes: Vec<u8>) -> io::Result<()> {
    let work = tauri::async_runtime::spawn_blocking(move || replace(&path, &bytes));
    work.await.unwrap_or_else(|fault| Err(io::Error::other(fault.to_string())))
}

/// Writes `path` under another name first, so that a half-written sheet never stands under its own.
fn replace(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let unfinished = path.with_extension("new");
    if let Some(folder) = path.parent() {
        fs::create_dir_all(folder)?;
    }
    let mut file = File::create(&unfinished)?;
    file.write_all(bytes)?;
    file.sync_all()?;
    fs::rename(&unfinished, path)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A sheet replaces the earlier one as a whole and leaves no unfinished file behind.
    #[test]
    fn a_sheet_is_replaced_as_a_whole() -> io::Result<()> {
        let folder = tempfile::tempdir()?;
        let path = folder.path().join("sheets").join("job-1.pdf");
        replace(&path, b"a longer first sheet")?;
        replace(&path, b"second")?;
        assert_eq!(fs::read(&path)?, b"second", "nothing of the longer first sheet may be left");
        assert_eq!(fs::read_dir(folder.path().join("sheets"))?.count(), 1, "the unfinished file got its own name");
        Ok(())
    }

    /// What stands under the sheet's name stays there when the new one cannot be written.
    #[test]
    fn a_sheet_that_cannot_be_written_leaves_what_is_there() -> io::Result<()> {
        let folder = tempfile::tempdir()?;
        fs::write(folder.path().join("sheets"), "a file where the folder should be")?;
        let path = folder.path().join("sheets").join("job-7.pdf");
        replace(&path, b"sheet").expect_err("a file is no folder");
        assert_eq!(fs::read(folder.path().join("sheets"))?, b"a file where the folder should be");
        Ok(())
    }
}
