//! A write that the system refuses half way: nothing of the step is kept, and the book goes on without being reopened.

#![cfg(unix)]
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use std::path::{Path, PathBuf};
use std::process::Command;

use bayhand_jobbook::{Book, BookError, Verified};
use common::{at, bodies, place};

/// Set in the process whose files may not grow.
const BOOK: &str = "BAYHAND_TEST_FAILING_WRITES_BOOK";

/// Limits every file of the process to 1024 blocks of 512 bytes; writing beyond is an error rather than a signal.
const LIMITED: &str = r#"trap "" XFSZ; ulimit -f 1024; exec "$0" "$@""#;

#[tokio::test]
async fn a_write_that_fails_half_way_leaves_a_book_that_goes_on() {
    if let Some(path) = std::env::var_os(BOOK) {
        return record_beyond_the_limit(&PathBuf::from(path)).await;
    }
    let (_folder, path) = place();
    let output = Command::new("sh")
        .args(["-c", LIMITED])
        .arg(std::env::current_exe().unwrap())
        .args(["--exact", "a_write_that_fails_half_way_leaves_a_book_that_goes_on", "--nocapture"])
        .env(BOOK, &path)
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&output.stdout);
    assert!(output.status.success(), "found: {said}{}", String::from_utf8_lossy(&output.stderr));
    let book = Book::open_read_only(&path).await.unwrap();
    assert_eq!(
        book.verify().await.unwrap(),
        Verified { jobs: 1, entries: 2, ..Verified::default() },
        "the two small entries are in the book"
    );
}

async fn record_beyond_the_limit(path: &Path) {
    let book = Book::open_or_create(path).await.unwrap();
    let (job, _) = book.open_job("{}", at()).await.unwrap();
    let long = "x".repeat(3_000_000);
    let refused = book.append(job, 1, &bodies(&["{}", &long]), at()).await;
    assert!(matches!(refused, Err(BookError::Storage { .. })), "the long body cannot be written: {refused:?}");
    book.append(job, 1, &bodies(&["{}"]), at()).await.expect("a step that can be written is recorded");
    book.close().await.unwrap();
}
