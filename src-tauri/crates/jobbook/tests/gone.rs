//! The file is taken away while the book is open: it is said, nothing is recorded into nowhere, and nothing is lost.

#![cfg(unix)]
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_jobbook::{Book, BookError, JobId};
use common::{at, bodies, place, three_jobs};

#[tokio::test]
async fn a_book_that_is_removed_while_it_is_open_is_rescued() {
    let (folder, path) = place();
    three_jobs(&path).await;
    let book = Book::open_existing(&path).await.unwrap();
    book.append(JobId(3), 1, &bodies(&["{}"]), at()).await.unwrap();
    for beside in ["", "-wal", "-shm"] {
        std::fs::remove_file(format!("{}{beside}", path.display())).unwrap();
    }
    for _ in 0..2 {
        let error = book.append(JobId(3), 2, &bodies(&["{}"]), at()).await.unwrap_err();
        assert!(matches!(&error, BookError::Gone { rescued: Some(_), .. }), "{error}");
        assert!(error.to_string().contains("jobs.db.rescued"), "it is said where everything is: {error}");
    }
    assert!(matches!(book.open_job("{}", at()).await, Err(BookError::Gone { .. })), "nor is a job begun");
    let rescued = Book::open_read_only(&folder.path().join("jobs.db.rescued")).await.unwrap();
    assert_eq!(rescued.verify().await.unwrap().entries, 9, "with the last entry");
}

#[tokio::test]
async fn a_book_that_is_exchanged_while_it_is_open_is_not_written() {
    let (folder, path) = place();
    three_jobs(&path).await;
    let book = Book::open_existing(&path).await.unwrap();
    let other = folder.path().join("other.db");
    three_jobs(&other).await;
    std::fs::rename(&other, &path).unwrap();
    let error = book.append(JobId(3), 1, &bodies(&["{}"]), at()).await.unwrap_err();
    assert!(matches!(error, BookError::Gone { .. }), "{error}");
}
