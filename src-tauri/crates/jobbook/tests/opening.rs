//! Opening a book: what is refused, in which words' code, and that nothing foreign is touched.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use std::fs;
use std::path::Path;

use bayhand_jobbook::{Book, BookError, JobId, Verified};
use common::{at, by_other_means, place, three_jobs};

async fn refusal(path: &Path) -> BookError {
    let writing = Book::open_or_create(path).await.err().expect("should not open for writing");
    let reading = Book::open_read_only(path).await.err().expect("should not open for reading");
    assert_eq!(writing.code(), reading.code(), "a reader is told the same");
    writing
}

/// Opens a file that is no book and looks that it, and the folder it lies in, stay as they were.
async fn check_not_a_book(path: &Path, what: &str) {
    let listing = |folder: &Path| {
        let mut names: Vec<_> = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name()).collect();
        names.sort();
        names
    };
    let folder = path.parent().unwrap();
    let (bytes, names) = (fs::read(path).unwrap(), listing(folder));
    match refusal(path).await {
        BookError::NotABook { found, .. } => assert_eq!(found.to_string(), what, "the refusal says what the file is"),
        other => panic!("should be no book: {other}"),
    }
    assert_eq!(fs::read(path).unwrap(), bytes, "a file that is not ours is not changed");
    assert_eq!(listing(folder), names, "and nothing is left beside it");
}

#[tokio::test]
async fn what_is_not_a_book_is_refused_and_not_touched() {
    let (_folder, path) = place();
    fs::write(&path, "Bolts, washers, a new laser.\n".repeat(40)).unwrap();
    check_not_a_book(&path, "a file of another kind").await;
    fs::write(&path, "x").unwrap();
    check_not_a_book(&path, "a file of another kind").await;
    fs::write(&path, "").unwrap();
    check_not_a_book(&path, "an empty file").await;
}

#[tokio::test]
async fn a_database_of_another_program_is_refused_and_not_touched() {
    for journal in ["delete", "wal"] {
        let (_folder, path) = place();
        let sql = format!("PRAGMA journal_mode = {journal}; CREATE TABLE entry (a); INSERT INTO entry VALUES (1)");
        by_other_means(&path, &sql).await.unwrap();
        check_not_a_book(&path, "a database of another program").await;
    }
}

#[tokio::test]
async fn a_folder_is_no_book() {
    let (folder, _) = place();
    let error = refusal(folder.path()).await;
    assert!(matches!(error, BookError::NotABook { found: bayhand_jobbook::Instead::Folder, .. }), "{error}");
}

#[tokio::test]
async fn what_is_not_there_is_said_to_be_missing() {
    let (folder, path) = place();
    let missing = Book::open_existing(&path).await.err().unwrap();
    assert!(matches!(missing, BookError::NoSuchBook { .. }), "{missing}");
    assert!(
        matches!(Book::open_read_only(&path).await.err().unwrap(), BookError::NoSuchBook { .. }),
        "nor for reading"
    );
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0, "only open_or_create makes anything");
    let error = refusal(&folder.path().join("no such folder/jobs.db")).await;
    assert!(matches!(error, BookError::NoSuchFolder { .. }), "{error}");
}

#[tokio::test]
async fn a_book_newer_than_the_program_is_refused_and_not_touched() {
    let (_folder, path) = place();
    three_jobs(&path).await;
    by_other_means(&path, "PRAGMA user_version = 3").await.unwrap();
    let bytes = fs::read(&path).unwrap();
    let error = refusal(&path).await;
    assert!(matches!(error, BookError::NewerThanProgram { book: 3, program: 2, .. }), "{error}");
    assert_eq!(fs::read(&path).unwrap(), bytes, "a newer book is left to the newer program");
}

#[tokio::test]
async fn only_one_may_write_and_anyone_may_read() {
    let (_folder, path) = place();
    let book = Book::open_or_create(&path).await.unwrap();
    book.open_job("{}", at()).await.unwrap();

    let second = Book::open_or_create(&path).await.err().expect("the lock is held");
    assert!(matches!(second, BookError::LockedByAnother { .. }), "{second}");
    let reader = Book::open_read_only(&path).await.unwrap();
    assert_eq!(
        reader.verify().await.unwrap(),
        Verified { jobs: 1, entries: 1, ..Verified::default() },
        "a reader sees what is recorded"
    );
    let refused = reader.open_job("{}", at()).await.expect_err("a reader writes nothing");
    assert!(matches!(refused, BookError::ReadOnly { .. }), "{refused}");

    book.open_job("{}", at()).await.expect("being looked at does no harm");
    assert_eq!(
        reader.verify().await.unwrap(),
        Verified { jobs: 2, entries: 2, ..Verified::default() },
        "a reader sees what came after, too"
    );
    book.close().await.unwrap();
    Book::open_or_create(&path).await.expect("closing gives the lock back");
}

#[cfg(unix)]
#[tokio::test]
async fn two_names_of_a_book_have_one_lock() {
    let (folder, path) = place();
    let _book = Book::open_or_create(&path).await.unwrap();
    let link = folder.path().join("link.db");
    std::os::unix::fs::symlink(&path, &link).unwrap();
    let error = Book::open_or_create(&link).await.err().expect("the same book under another name");
    assert!(matches!(error, BookError::LockedByAnother { .. }), "{error}");
}

#[tokio::test]
async fn another_program_in_the_middle_of_writing_locks_the_book() {
    use sqlx::{ConnectOptions as _, Connection as _};
    let (_folder, path) = place();
    three_jobs(&path).await;
    let mut other = sqlx::sqlite::SqliteConnectOptions::new().filename(&path).connect().await.unwrap();
    let _writing = other.begin_with("BEGIN IMMEDIATE").await.unwrap();
    let error = Book::open_or_create(&path).await.err().expect("it does not keep to our lock, but SQLite's own holds");
    assert!(matches!(error, BookError::LockedByAnother { .. }), "{error}");
}

#[tokio::test]
async fn a_creation_that_was_interrupted_is_begun_anew() {
    let (folder, path) = place();
    fs::write(folder.path().join(".jobs.db.new"), "half a book").unwrap();
    fs::write(folder.path().join(".jobs.db.new-journal"), "half a journal").unwrap();
    let book = Book::open_or_create(&path).await.unwrap();
    let (job, _) = book.open_job("{}", at()).await.unwrap();
    assert_eq!(job, JobId(1), "the new book is whole");
    book.close().await.unwrap();
    let mut names: Vec<_> = fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().file_name()).collect();
    names.sort();
    assert_eq!(names, ["jobs.db", "jobs.db.lock"], "and what was half made is gone");
}

#[tokio::test]
async fn a_log_whose_book_is_gone_is_not_spoilt() {
    let (folder, path) = place();
    let log = folder.path().join("jobs.db-wal");
    fs::write(&log, "the last entries of a book that was moved").unwrap();
    let error = Book::open_or_create(&path).await.err().expect("SQLite would take the log for the new book's");
    assert!(matches!(error, BookError::LogWithoutBook { .. }), "{error}");
    assert!(!path.exists(), "no book was made");
    assert_eq!(fs::read(&log).unwrap(), b"the last entries of a book that was moved", "the log is as it was");
}
