//! A book that cannot be used as it is: the desk says what it is, what that means and what to do; what can be read still
//! can be, and nothing is changed.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::{Ask, PracticeAsk, Wish};
use bayhand_job::view::Screen;
use bayhand_job::{Desk, SystemClock};
use bayhand_jobbook::{Book, JobId};
use common::{Bay, MORNING, assert_refusal};
use std::fs::{self, OpenOptions};
use std::io::{Seek as _, SeekFrom, Write as _};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use tempfile::TempDir;

/// Opening this book fails with these words.
async fn check_opening(book: &Path, says: &[&str]) {
    let error = Desk::open(book, Arc::new(SystemClock)).await.err().expect("should not open").to_string();
    says.iter().for_each(|words| assert!(error.contains(words), "{words:?} is said: {error}"));
}

/// A book with two practice jobs, the first a few steps long, the second just begun; closed.
async fn two_jobs() -> (TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("jobs.db");
    let mut bay = Bay::practice(2).await;
    bay.do_step().await;
    bay.do_step().await;
    bay.ask("", Wish::SetAside).await.unwrap();
    bay.ask("", Wish::Begin { car: "Grey saloon".into(), practice: Some(PracticeAsk::sound(3)) }).await.unwrap();
    let bay = bay.restart().await;
    let from = bay.book.clone();
    bay.desk.close().await.unwrap();
    fs::copy(&from, &book).unwrap();
    (folder, book)
}

#[tokio::test]
async fn a_book_that_is_in_use_is_left_to_its_user() {
    let mut bay = Bay::practice(2).await;
    check_opening(&bay.book, &["jobs.db", "in use by another program", "close it and try again"]).await;
    bay.do_step().await;
}

#[tokio::test]
async fn what_is_no_book_is_said_to_be_none() {
    let folder = tempfile::tempdir().unwrap();
    let notes = folder.path().join("notes.txt");
    fs::write(&notes, "bolts, washers\n".repeat(20)).unwrap();
    check_opening(&notes, &["notes.txt", "is not a job book", "was not changed", "Choose"]).await;
    assert_eq!(fs::read_to_string(&notes).unwrap(), "bolts, washers\n".repeat(20), "it is not changed");
    let empty = folder.path().join("empty.db");
    fs::write(&empty, "").unwrap();
    check_opening(&empty, &["an empty file"]).await;
    check_opening(folder.path(), &["a folder"]).await;
    check_opening(&folder.path().join("no/such/jobs.db"), &["does not exist", "Make the folder"]).await;
}

#[tokio::test]
async fn a_newer_book_is_left_to_the_newer_program() {
    let (_folder, book) = two_jobs().await;
    // P: SQLite's file format, 1.3: the user version stands at offset 60 of the header, four bytes, big-endian.
    let mut file = OpenOptions::new().write(true).open(&book).unwrap();
    file.seek(SeekFrom::Start(60)).unwrap();
    file.write_all(&99_u32.to_be_bytes()).unwrap();
    drop(file);
    let bytes = fs::read(&book).unwrap();
    check_opening(&book, &["format 99", "not changed", "newer program"]).await;
    assert_eq!(fs::read(&book).unwrap(), bytes, "it is not changed");
}

/// Appends this text to job 1 of a book with two jobs; then job 1 cannot be read, with this code and these words, and
/// job 2 goes on.
async fn check_entry(body: &str, code: &str, says: &[&str]) {
    let (_folder, path) = two_jobs().await;
    let book = Book::open_existing(&path).await.unwrap();
    let length = book.entries(JobId(1)).await.unwrap().len() as u64;
    book.append(JobId(1), length, &[body.to_owned()], MORNING.parse().unwrap()).await.unwrap();
    book.close().await.unwrap();

    let desk = Desk::open(&path, Arc::new(SystemClock)).await.expect("the book itself opens");
    let jobs = desk.review_view(None).await.unwrap().jobs;
    let [second, first] = jobs.as_slice() else { panic!("both jobs are listed: {jobs:?}") };
    assert_eq!((first.id, first.state.as_str()), (1, "unreadable"), "one that cannot be read is listed as such");
    says.iter().for_each(|words| assert!(first.says.contains(words), "{words:?} is said: {}", first.says));
    assert_eq!((second.id, second.state.as_str()), (2, "working"), "the other one stands as it did");

    let take_up = |job| Ask { revision: 0, by: String::new(), wish: Wish::TakeUp { job } };
    assert_refusal(&desk.act(take_up(1)).await.unwrap_err(), "take up job 1", code, says);
    assert_refusal(&desk.review_view(Some(1)).await.unwrap_err(), "look at job 1", code, says);
    let view = desk.act(take_up(2)).await.expect("the other job is taken up");
    assert!(matches!(view.screen, Screen::SignOn { .. }), "where it stood");
    desk.close().await.unwrap();
    let book = Book::open_read_only(&path).await.unwrap();
    assert_eq!(book.entries(JobId(1)).await.unwrap().len() as u64, length + 1, "nothing was taken away");
    book.verify().await.expect("and the chain is whole");
}

#[tokio::test]
async fn an_entry_of_a_later_program_is_named_as_such() {
    let later = r#"{"v":2,"program":"9.1.0","what":{"dreamed":{"of":"rain"}}}"#;
    check_entry(later, "newer", &["form 2", "program 9.1.0", "form 1", "Nothing in it was changed"]).await;
}

#[tokio::test]
async fn an_entry_that_cannot_be_understood_is_named() {
    let unknown = r#"{"v":1,"program":"0.1.0","what":{"dreamed":{"of":"rain"}}}"#;
    check_entry(unknown, "unreadable", &["entry 7", "unknown variant `dreamed`"]).await;
    check_entry("not even JSON", "unreadable", &["entry 7", "expected"]).await;
}

/// One letter changed by other means than this program: the job is not gone on with, the other one is.
#[tokio::test]
async fn a_changed_entry_is_found_out() {
    let (_folder, book) = two_jobs().await;
    let (name, other) = (b"Lee Barrow", b"Lea Barrow");
    let mut bytes = fs::read(&book).unwrap();
    let places: Vec<usize> = (0..bytes.len() - name.len()).filter(|at| bytes[*at..].starts_with(name)).collect();
    assert!(!places.is_empty(), "the name stands in the file as it was typed");
    places.iter().for_each(|at| bytes[*at..*at + name.len()].copy_from_slice(other));
    fs::write(&book, bytes).unwrap();

    let desk = Desk::open(&book, Arc::new(SystemClock)).await.unwrap();
    let says = ["Job 1, entry 3", "changed by other means", "Do not go on"];
    assert_refusal(&desk.verify(2).await.unwrap_err(), "verify", "book-bad-entry", &says);
    let take_up = |job| Ask { revision: 0, by: String::new(), wish: Wish::TakeUp { job } };
    assert_refusal(&desk.act(take_up(1)).await.unwrap_err(), "take up job 1", "book-bad-entry", &says);
    desk.act(take_up(2)).await.expect("the other job can be taken up");
}

/// A job keeps the procedure that it was begun with; when that has a fault the job cannot be gone on with, and the place
/// of the fault is said.
#[tokio::test]
async fn a_job_whose_procedure_has_a_fault_says_where() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("jobs.db");
    let mut document: serde_json::Value = serde_json::from_str(bayhand_procedure::SHIPPED).unwrap();
    let stages = document["stages"].as_array_mut().unwrap();
    let mut steps = stages.iter_mut().flat_map(|stage| stage["steps"].as_array_mut().unwrap());
    steps.find(|step| step["id"] == "walk.leaks").unwrap()["hazards"][0] = "fuel-flood".into();
    let document = document.to_string();
    let opened = serde_json::json!({ "car": "Grey saloon", "document_hash": "", "document": document });
    let body = serde_json::json!({ "v": 1, "program": "0.1.0", "what": { "opened": opened } }).to_string();
    let book = Book::open_or_create(&path).await.unwrap();
    book.open_job(&body, MORNING.parse().unwrap()).await.unwrap();
    book.close().await.unwrap();
    let desk = Desk::open(&path, Arc::new(SystemClock)).await.unwrap();
    let ask = Ask { revision: 0, by: String::new(), wish: Wish::TakeUp { job: 1 } };
    let says = ["procedure has a fault", "walk.leaks", "no hazard \"fuel-flood\""];
    assert_refusal(&desk.act(ask).await.unwrap_err(), "take up", "unreadable", &says);
}

/// Run by a user without rights: the superuser may write anything.
#[cfg(unix)]
mod read_only {
    use super::*;
    use std::os::unix::fs::{MetadataExt as _, PermissionsExt as _};
    use std::os::unix::process::CommandExt as _;
    use std::process::Command;

    /// Set in the process that plays the user without rights.
    const BOOK: &str = "BAYHAND_TEST_READ_ONLY_BOOK";
    /// The user 'nobody' on the systems on which these tests run.
    const NOBODY: u32 = 65534;

    #[tokio::test]
    async fn a_book_that_may_not_be_written_says_so() {
        if let Some(book) = std::env::var_os(BOOK) {
            let says = ["can be read but not written", "What is in it is safe", "choose another book"];
            return check_opening(Path::new(&book), &says).await;
        }
        let (folder, book) = two_jobs().await;
        let program = folder.path().join("this-test");
        fs::copy(std::env::current_exe().unwrap(), &program).unwrap();
        let mode = |path: &Path, mode| fs::set_permissions(path, fs::Permissions::from_mode(mode)).unwrap();
        mode(&book, 0o444);
        mode(&program, 0o555);
        mode(folder.path(), 0o555);
        let mut child = Command::new(&program);
        child.args(["--exact", "read_only::a_book_that_may_not_be_written_says_so"]);
        child.env(BOOK, &book).current_dir("/");
        if folder.path().metadata().unwrap().uid() == 0 {
            child.uid(NOBODY).gid(NOBODY);
        }
        let output = child.output().unwrap();
        mode(folder.path(), 0o755);
        let said = String::from_utf8_lossy(&output.stdout);
        assert!(output.status.success(), "the user without rights found: {said}");
        assert!(said.contains("1 passed"), "control: the test was run there: {said}");
    }
}
