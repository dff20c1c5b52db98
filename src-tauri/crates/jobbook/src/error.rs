//! What can go wrong with a book: each says what happened, what it means for the job and what to do.

use std::io;
use std::path::{Path, PathBuf};

use crate::JobId;
use crate::people::Denied;

/// Why the book could not be opened, read or written.
///
/// Unless a variant says otherwise nothing was recorded by the call that gave it, and all that was recorded before
/// still is.
#[derive(Debug, thiserror::Error)]
pub enum BookError {
    /// The folder that the book should lie in does not exist.
    #[error(
        "The folder {} does not exist, so no job book can be kept there and no job can be recorded. \
         Make the folder, or choose another place for the book.",
        folder.display()
    )]
    NoSuchFolder {
        /// The folder.
        folder: PathBuf,
    },

    /// There is no file of that name.
    #[error("There is no job book at {}. Check the name; nothing was made or changed.", path.display())]
    NoSuchBook {
        /// Where the book was looked for.
        path: PathBuf,
    },

    /// The file is something else. It was not changed.
    #[error(
        "{} is not a job book: it is {found}. It was not changed. \
         Choose the job book itself, or another name for a new one.",
        path.display()
    )]
    NotABook {
        /// The file.
        path: PathBuf,
        /// What it is instead.
        found: Instead,
    },

    /// The book was written by a later version of the program. It was not changed.
    #[error(
        "The job book {} has format {book}, this program knows formats up to {program}. The book was not changed and \
         its jobs are safe; open it with the newer program.",
        path.display()
    )]
    NewerThanProgram {
        /// The book.
        path: PathBuf,
        /// The book's format.
        book: u32,
        /// The newest format that this program knows.
        program: u32,
    },

    /// The book is of an older format, and was opened for reading only.
    #[error(
        "The job book {} has format {book}; this program reads format {program} and brings an older book to it when it \
         opens it for work. Nothing was changed. Open the book in the program once, then look at it again.",
        path.display()
    )]
    OlderThanProgram {
        /// The book.
        path: PathBuf,
        /// The book's format.
        book: u32,
        /// The format that this program works with.
        program: u32,
    },

    /// Another running program holds the book open for writing.
    #[error(
        "The job book {} is in use by another program, probably another window of this one on this or another \
         computer. Only one may record at a time, and nothing was recorded from here. \
         Go on in the other one, or close it and try again.",
        path.display()
    )]
    LockedByAnother {
        /// The book.
        path: PathBuf,
    },

    /// The book, its folder or its disk cannot be written, or the book was opened for reading only.
    #[error(
        "The job book {} can be read but not written, so nothing more can be recorded in it. What is in it is safe. \
         Ask for the right to write the file and its folder, or choose another book.",
        path.display()
    )]
    ReadOnly {
        /// The book.
        path: PathBuf,
    },

    /// The book is gone but the log beside it, which may hold its last entries, is still there.
    #[error(
        "The job book {} is not there, but its log {} is, and may hold the last entries. \
         No new book was made, because it would spoil them. Bring the book back beside its log, \
         or choose another name for a new book.",
        path.display(), log.display()
    )]
    LogWithoutBook {
        /// Where the book should be.
        path: PathBuf,
        /// The log that was left.
        log: PathBuf,
    },

    /// The file was removed, moved or exchanged while it was open.
    #[error(
        "The job book {} was removed or exchanged while it was in use. This step was not recorded. {}. \
         Close this program, bring the book back to its place, and open it again.",
        path.display(), rescue(rescued.as_deref())
    )]
    Gone {
        /// The book.
        path: PathBuf,
        /// Where all that it held now stands; none when that could not be written either.
        rescued: Option<PathBuf>,
    },

    /// SQLite did not take a setting on which the safety of the record rests.
    #[error(
        "The job book {} cannot be kept safely here: {setting} is {found} and must be {wanted}. \
         Nothing will be recorded. Keep the book on a disk of this computer, not on a network drive.",
        path.display()
    )]
    NotDurable {
        /// The book.
        path: PathBuf,
        /// The setting's name.
        setting: &'static str,
        /// What it must be.
        wanted: &'static str,
        /// What it is.
        found: String,
    },

    /// The book has no job of that number.
    #[error("The job book has no job {job}. Look at the list of jobs and choose one of them.")]
    NoSuchJob {
        /// The number asked for.
        job: JobId,
    },

    /// The job has grown, or is not as long as the caller believed.
    #[error(
        "Job {job} has {found} entries, not the {expected} that were seen when this was asked for: something was \
         recorded in between. Nothing of this was recorded. Look at the job as it stands now, then do the step again."
    )]
    Stale {
        /// The job.
        job: JobId,
        /// The length that the caller had seen.
        expected: u64,
        /// The length that it has.
        found: u64,
    },

    /// The job has ended: sealed or stopped. It can be opened again, which is recorded.
    #[error("Job {job} has ended, and nothing more is recorded in it. It can be opened again, with a reason.")]
    Ended {
        /// The job.
        job: JobId,
    },

    /// The list of people forbids it, or a secret is not the right one.
    #[error(transparent)]
    Denied(#[from] Denied),

    /// An exported job is not what it says that it is. Nothing was taken in.
    #[error("The exported job cannot be taken in: {0}. Nothing was changed. Have it exported anew and compare.")]
    BadExport(String),

    /// No room left. Nothing of what was being written was kept.
    #[error(
        "The disk of the job book {} is full. This step was not recorded; everything before it is safe. \
         Make room, then do the step again.",
        path.display()
    )]
    DiskFull {
        /// The book.
        path: PathBuf,
    },

    /// An entry is not what was written, or is gone.
    #[error(
        "{0} The job book was damaged or changed by other means than this program. Do not go on with this job: \
             keep the file as it is, and compare it with a copy and with the hash on the sheet."
    )]
    BadEntry(#[from] BadEntry),

    /// The file's own structure is broken, or its guards are gone.
    #[error(
        "The job book {} is damaged: {detail}. Record nothing more in it: keep the file as it is, \
         and go on with a copy that verifies.",
        path.display()
    )]
    Damaged {
        /// The book.
        path: PathBuf,
        /// What is broken.
        detail: String,
    },

    /// A file beside or around the book could not be made, moved or synced.
    #[error("The job book {} could not be opened: {source}. Nothing that was recorded is lost. \
             Check the disk and the rights on the folder, then try again.", path.display())]
    File {
        /// The file or folder.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },

    /// Anything else from SQLite. After a failed write, ask for the job's length: it tells whether the write counted.
    #[error("The job book {} could not be read or written: {source}. What was recorded before is safe. \
             Look whether this step is recorded, check the disk, then try again.", path.display())]
    Storage {
        /// The book.
        path: PathBuf,
        /// What the storage said.
        source: Box<dyn std::error::Error + Send + Sync>,
    },
}

/// What a file is that is no book.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Instead {
    /// A folder.
    #[error("a folder")]
    Folder,
    /// A name that cannot be written as text.
    #[error("a name that is not plain text")]
    NoPlainName,
    /// Nothing in it.
    #[error("an empty file")]
    Empty,
    /// Some other file.
    #[error("a file of another kind")]
    OtherKind,
    /// A database that is not ours.
    #[error("a database of another program")]
    OtherProgram,
}

/// The first entry, by job and number, that is not as it was written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("Job {job}, entry {number}: {what}.")]
pub struct BadEntry {
    /// The job; [`JobId::BOOK`] is the book's own list of jobs.
    pub job: JobId,
    /// The entry's place in the job's chain, from 1.
    pub number: u64,
    /// What is wrong with it.
    pub what: Defect,
}

/// What is wrong with an entry.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Defect {
    /// There is none, though there are later ones or the book's list of jobs names it.
    #[error("it is missing")]
    Missing,
    /// Its hash does not follow from what is stored: it, its hash or its place was changed.
    #[error("its hash does not match what is stored")]
    HashDiffers,
    /// It is sound in itself, but not the one with which the book says that the job began.
    #[error("it is not the entry with which this job was opened")]
    NotTheFirst,
    /// The row of its job is missing or names another time.
    #[error("the list of jobs does not agree with it")]
    JobRowDiffers,
    /// An entry of the book's own chain opens another job than the one whose turn it is.
    #[error("it does not open the job whose turn it is")]
    NotAnOpening,
    /// An entry of the book's own chain by a later program.
    #[error("it was written by a later program and says nothing to this one")]
    Newer,
    /// An entry of the book's own chain that says nothing.
    #[error("it says nothing that a book can say: {0}")]
    NoEvent(String),
    /// Nobody could have written it by the list of people as it stood.
    #[error("it could not have been written by the rules of its time: {0}")]
    NotPermitted(String),
    /// A seal whose signature is not that of its key over its job.
    #[error("its signature does not fit")]
    SealDoesNotFit,
    /// The job is not the one that was sealed or closed: entries were cut off, added or exchanged.
    #[error("the job is not the one that was ended here: it has other entries")]
    NotTheJobThatEnded,
    /// A text that the record names is not there, and was not erased by right.
    #[error("the text that it tells apart is gone, and nothing in the record says that it was erased")]
    ApartGone,
    /// A text that was erased or replaced is there again.
    #[error("the text that it tells apart was erased or replaced, and is there all the same")]
    ApartBack,
    /// An earlier copy of the book has another entry here.
    #[error("an earlier copy of the book has another entry in its place, or has it while it is gone here")]
    NotAsInTheCopy,
    /// The job does not carry the seal whose code is on the sheet.
    #[error("the job does not carry the seal whose code is on the sheet: its end was cut off, or it was sealed anew")]
    NotTheCode,
    /// The text of an imported job is not the one that was taken in.
    #[error("the imported job that it names is gone or changed")]
    ImportChanged,
    /// Entries that were written just before it are missing at the end of some other job.
    #[error("what was written just before it (entries missing: {missing}), at the end of some job, is gone")]
    EarlierOnesGone {
        /// How many entries are missing.
        missing: u64,
    },
}

impl BookError {
    /// A short fixed name of the variant, for windows and scripts: these react to codes, never to text.
    pub fn code(&self) -> &'static str {
        match self {
            Self::NoSuchFolder { .. } => "book-no-folder",
            Self::NoSuchBook { .. } => "book-missing",
            Self::NotABook { .. } => "book-not-a-book",
            Self::NewerThanProgram { .. } => "book-newer",
            Self::OlderThanProgram { .. } => "book-older",
            Self::LockedByAnother { .. } => "book-locked",
            Self::ReadOnly { .. } => "book-read-only",
            Self::LogWithoutBook { .. } => "book-log-without-book",
            Self::Gone { .. } => "book-gone",
            Self::NotDurable { .. } => "book-not-durable",
            Self::NoSuchJob { .. } => "book-no-job",
            Self::Stale { .. } => "book-stale",
            Self::Ended { .. } => "ended",
            Self::Denied(denied) => denied.code(),
            Self::BadExport(_) => "bad-export",
            Self::DiskFull { .. } => "book-disk-full",
            Self::BadEntry(_) => "book-bad-entry",
            Self::Damaged { .. } => "book-damaged",
            Self::File { .. } => "book-file",
            Self::Storage { .. } => "book-storage",
        }
    }
}

fn rescue(rescued: Option<&Path>) -> String {
    match rescued {
        Some(place) => format!("All that was recorded before was copied to {}", place.display()),
        None => "What was recorded before could not be copied from here; look for a copy of the book".into(),
    }
}

/// Turns what the system or SQLite says about the file at a path into a [`BookError`].
pub(crate) trait AtPath<T> {
    /// `path` is the book, whatever file beside it failed.
    fn at_path(self, path: &Path) -> Result<T, BookError>;
}

impl<T> AtPath<T> for Result<T, io::Error> {
    fn at_path(self, path: &Path) -> Result<T, BookError> {
        self.map_err(|source| match source.kind() {
            io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem => {
                BookError::ReadOnly { path: path.into() }
            }
            io::ErrorKind::StorageFull => BookError::DiskFull { path: path.into() },
            _ => BookError::File { path: path.into(), source },
        })
    }
}

impl<T> AtPath<T> for Result<T, sqlx::Error> {
    fn at_path(self, path: &Path) -> Result<T, BookError> {
        self.map_err(|source| match primary_code(&source) {
            Some(SQLITE_BUSY | SQLITE_LOCKED) => BookError::LockedByAnother { path: path.into() },
            Some(SQLITE_READONLY) => BookError::ReadOnly { path: path.into() },
            Some(SQLITE_FULL) => BookError::DiskFull { path: path.into() },
            Some(SQLITE_CORRUPT) => BookError::Damaged { path: path.into(), detail: source.to_string() },
            Some(SQLITE_NOTADB) => BookError::NotABook { path: path.into(), found: Instead::OtherKind },
            _ => BookError::Storage { path: path.into(), source: source.into() },
        })
    }
}

/// SQLite's primary result code (<https://www.sqlite.org/rescode.html>): the low byte of the extended one.
pub(crate) fn primary_code(error: &sqlx::Error) -> Option<i32> {
    let extended: i32 = error.as_database_error()?.code()?.parse().ok()?;
    Some(extended & 0xff)
}

const SQLITE_BUSY: i32 = 5;
const SQLITE_LOCKED: i32 = 6;
pub(crate) const SQLITE_READONLY: i32 = 8;
const SQLITE_CORRUPT: i32 = 11;
const SQLITE_FULL: i32 = 13;
pub(crate) const SQLITE_CANTOPEN: i32 = 14;
const SQLITE_NOTADB: i32 = 26;
