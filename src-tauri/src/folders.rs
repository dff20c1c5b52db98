//! Where book, sheets and log lie.

use std::path::{Path, PathBuf};

/// Name of the job book in the data folder.
const BOOK: &str = "jobs.db";

/// The folder for this person's data by the convention of the system (on Linux `~/.local/share/bayhand`).
///
/// # Errors
/// In words, when the system names no home folder.
pub fn data() -> Result<PathBuf, String> {
    directories::ProjectDirs::from("org", "bayhand", "Bayhand").map(|dirs| dirs.data_dir().to_owned()).ok_or_else(
        || {
            "This system names no home folder, so there is no place for a job book of your own and for the log. \
             Set HOME, or name a book with --book FILE."
                .into()
        },
    )
}

/// The job book in the data folder, which is made when it is missing.
///
/// # Errors
/// In words, when the folder cannot be made.
pub fn book_in(data: &Path) -> Result<PathBuf, String> {
    std::fs::create_dir_all(data).map_err(|error| {
        format!(
            "The folder {} could not be made: {error}. No job can be recorded there. \
             Ask for the right to make it, or name a book elsewhere with --book FILE.",
            data.display()
        )
    })?;
    Ok(data.join(BOOK))
}

/// `book` from the root, so that it means the same file however long the app runs.
///
/// # Errors
/// In words, when the working folder is gone.
pub fn absolute(book: PathBuf) -> Result<PathBuf, String> {
    std::path::absolute(&book).map_err(|error| {
        format!(
            "The job book {} cannot be found from here: {error}. Nothing was opened. Name it with its whole path.",
            book.display()
        )
    })
}
