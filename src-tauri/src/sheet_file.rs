//! Where the sheet of a sealed job is written, `sheets/job-N.pdf` beside the book, and an exported one, `exports/job-N.json`.

use bayhand_job::ask::Refused;
use bayhand_job::handover::Handover;
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

    /// Writes the sheet of `job`, in place of an earlier one of the same job. Returns where it stands.
    ///
    /// # Errors
    /// `sheet-not-set` when the contents cannot be set as a page, `sheet-not-written` when the disk refuses. The record
    /// is not touched by either, nor is an earlier sheet.
    pub async fn write(&self, job: i64, handover: Handover) -> Result<PathBuf, Refused> {
        let path = self.0.join(format!("job-{job}.pdf"));
        let target = path.clone();
        // Setting a page takes long enough to be felt by whoever waits for an answer on the same thread.
        let work = tauri::async_runtime::spawn_blocking(move || {
            let bytes = bayhand_sheet::pdf(&handover).map_err(|error| not_set(job, &error))?;
            replace(&target, &bytes).map_err(|error| not_written(job, &target, &error))
        });
        work.await.unwrap_or_else(|fault| Err(not_set(job, &fault)))?;
        Ok(path)
    }

    /// Writes an exported job, `exports/job-N.json` beside the book, in place of an earlier one. Returns where it stands.
    ///
    /// # Errors
    /// `export-not-written` when the disk refuses. The record is not touched.
    pub async fn export(&self, job: i64, text: String) -> Result<PathBuf, Refused> {
        let path = self.0.with_file_name("exports").join(format!("job-{job}.json"));
        let target = path.clone();
        let work = tauri::async_runtime::spawn_blocking(move || replace(&target, text.as_bytes()));
        let written = work.await.unwrap_or_else(|fault| Err(io::Error::other(fault.to_string())));
        written.map_err(|error| Refused {
            code: "export-not-written".into(),
            field: None,
            says: format!(
                "Job {job} could not be exported to {}: {error}. The record is not touched. \
                 Make room or ask for the right to write there, then export it again.",
                path.display()
            ),
        })?;
        Ok(path)
    }
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

fn not_set(job: i64, fault: &dyn std::fmt::Display) -> Refused {
    Refused {
        code: "sheet-not-set".into(),
        field: None,
        says: format!(
            "The sheet of job {job} could not be set: {fault}. The record is not touched and stays as it is. \
             This is a fault of the program: keep the book and report these words."
        ),
    }
}

fn not_written(job: i64, path: &Path, error: &io::Error) -> Refused {
    Refused {
        code: "sheet-not-written".into(),
        field: None,
        says: format!(
            "The sheet of job {job} could not be written to {}: {error}. The record is not touched. \
             Make room or ask for the right to write there, then write the sheet again.",
            path.display()
        ),
    }
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
    fn a_sheet_that_cannot_be_written_says_where_and_what_to_do() -> io::Result<()> {
        let folder = tempfile::tempdir()?;
        fs::write(folder.path().join("sheets"), "a file where the folder should be")?;
        let path = folder.path().join("sheets").join("job-7.pdf");
        let error = replace(&path, b"sheet").expect_err("a file is no folder");
        let refused = not_written(7, &path, &error);
        assert_eq!(refused.code, "sheet-not-written");
        for part in ["job 7", "job-7.pdf", "not touched", "write the sheet again"] {
            assert!(refused.says.contains(part), "{part:?} is not in {:?}", refused.says);
        }
        Ok(())
    }
}
