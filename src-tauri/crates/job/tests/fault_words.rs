//! What the storage answers is said in the language that is set: each kind has its words, and its arguments stand in them.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::preferences::Preferences;
use bayhand_job::{Desk, SystemClock};
use bayhand_jobbook::{Book, JobId};
use common::{Bay, MORNING, assert_refusal};
use std::fs;
use std::io;
use std::path::Path;
use std::sync::Arc;

fn german() -> Preferences {
    Preferences { language: "de".into(), ..Preferences::default() }
}

/// Opening this book fails; in either language that is said with these words.
async fn check_opening(book: &Path, english: &[&str], german: &[&str]) {
    let error = Desk::open(book, Arc::new(SystemClock)).await.err().expect("should not open");
    for (language, words) in [("en", english), ("de", german)] {
        let says = error.says(language);
        words.iter().for_each(|words| assert!(says.contains(words), "{words:?} is said: {says}"));
        assert!(!says.contains("{$") && !says.contains('['), "every argument is given: {says}");
    }
    assert_eq!(error.says("en"), error.to_string(), "the window says what the log says");
}

#[tokio::test]
async fn a_book_that_does_not_open_says_so_in_the_language_of_the_workshop() {
    let folder = tempfile::tempdir().unwrap();
    let empty = folder.path().join("empty.db");
    fs::write(&empty, "").unwrap();
    check_opening(&empty, &["empty.db", "an empty file"], &["empty.db ist kein Auftragsbuch", "eine leere Datei"])
        .await;
    check_opening(folder.path(), &["a folder"], &["ein Ordner"]).await;
    let nowhere = folder.path().join("no/such/jobs.db");
    check_opening(&nowhere, &["does not exist"], &["gibt es nicht", "Ordner anlegen"]).await;
    let bay = Bay::practice(2).await;
    check_opening(&bay.book, &["in use by another program"], &["in einem anderen Programm offen"]).await;
}

#[tokio::test]
async fn a_damaged_or_unreadable_job_is_told_in_german() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("jobs.db");
    let book = Book::open_or_create(&path).await.unwrap();
    book.open_job("not even JSON", MORNING.parse().unwrap()).await.unwrap();
    book.close().await.unwrap();
    let desk = Desk::open(&path, Arc::new(SystemClock)).await.unwrap();
    desk.set(german()).unwrap();
    let says = ["Dieser Auftrag lässt sich nicht lesen", "Eintrag 1", "Nichts daran wurde geändert"];
    assert_refusal(&desk.review_view(Some(1)).await.unwrap_err(), "an entry without sense", "unreadable", &says);
    let says = ["Auftrag 1", "Eintrag 1 sagt diesem Programm nichts"];
    assert_refusal(&desk.verify(1).await.unwrap_err(), "the whole book", "unsound", &says);
    let says = ["keinen Auftrag 7"];
    assert_refusal(&desk.review_view(Some(7)).await.unwrap_err(), "no such job", "book-no-job", &says);
    desk.close().await.unwrap();

    let mut bytes = fs::read(&path).unwrap();
    let at = bytes.windows(8).position(|part| part == b"not even").unwrap();
    bytes[at] = b'N';
    fs::write(&path, bytes).unwrap();
    let desk = Desk::open(&path, Arc::new(SystemClock)).await.unwrap();
    desk.set(german()).unwrap();
    let says = ["Auftrag 1, Eintrag 1", "Hash passt nicht", "beschädigt"];
    assert_refusal(&desk.review_view(Some(1)).await.unwrap_err(), "a changed entry", "book-bad-entry", &says);
    let read_only = Book::open_read_only(&path).await.unwrap();
    assert!(read_only.entries(JobId(1)).await.is_err(), "control: the book itself finds it");
}

#[tokio::test]
async fn a_fault_of_a_procedure_is_told_in_german() {
    let bay = Bay::practice(2).await;
    bay.desk.set(german()).unwrap();
    let folder = tempfile::tempdir().unwrap();
    let place = folder.path().join("ours.json");
    let mut document: serde_json::Value = serde_json::from_str(bayhand_procedure::SHIPPED).unwrap();
    document["format"] = 7.into();
    fs::write(&place, document.to_string()).unwrap();
    let refused = bay.desk.look_at_procedure(place.to_str().unwrap()).await.unwrap_err();
    assert_refusal(&refused, "another format", "procedure-form", &["format: sie hat das Format 7", "liest Format 1"]);
}

#[tokio::test]
async fn what_the_system_says_of_a_file_is_said_in_words() {
    let bay = Bay::practice(2).await;
    bay.desk.set(german()).unwrap();
    let refused = bay.desk.look_at_procedure("/no/such/procedure.json").await.unwrap_err();
    assert_refusal(&refused, "no file", "procedure-file", &["diese Datei gibt es nicht"]);
    assert!(!refused.says.contains("os error"), "nothing of the system's own words: {}", refused.says);
    let denied = io::Error::from(io::ErrorKind::PermissionDenied);
    let refused = bay.desk.not_written("sheet", 7, Path::new("sheets/job-7.pdf"), &denied);
    let says = ["Auftrag 7", "sheets/job-7.pdf", "dieser Rechner erlaubt es nicht", "nicht berührt"];
    assert_refusal(&refused, "a sheet", "sheet-not-written", &says);
    bay.desk.set(Preferences::default()).unwrap();
    let full = io::Error::from(io::ErrorKind::StorageFull);
    let refused = bay.desk.not_written("export", 7, Path::new("exports/job-7.json"), &full);
    let says = ["Job 7", "exports/job-7.json", "the disk is full", "not touched", "export it again"];
    assert_refusal(&refused, "an export", "export-not-written", &says);
}
