//! An update of the program while a job is open: the book of the older format is brought to the newer one, and the job
//! goes on.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use std::path::Path;

use bayhand_jobbook::chain::Link;
use bayhand_jobbook::{Book, BookError, JobId, Verified};
use common::{AT, at, bodies, place};
use sqlx::migrate::Migrator;
use sqlx::sqlite::SqliteConnectOptions;
use sqlx::{ConnectOptions as _, Connection as _};

/// The first format, as it was shipped.
const FIRST_FORMAT: &str = "migrations/20261125090000_record.sql";

/// A book of the first format with one job of two entries, written as the program of that time wrote it.
async fn first_format(path: &Path) {
    let formats = tempfile::tempdir().unwrap();
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(FIRST_FORMAT);
    std::fs::copy(&file, formats.path().join(file.file_name().unwrap())).unwrap();
    let mut connection = SqliteConnectOptions::new().filename(path).create_if_missing(true).connect().await.unwrap();
    Migrator::new(formats.path()).await.unwrap().run(&mut connection).await.unwrap();
    sqlx::query("INSERT INTO job VALUES (1, ?)").bind(AT).execute(&mut connection).await.unwrap();
    let first = link(1, 1, 1, "{}").hash(&[]);
    let hex: String = first.iter().map(|byte| format!("{byte:02x}")).collect();
    // The opening as the first program printed it: `version` after `kind`.
    let opening = format!(r#"{{"kind":"job-opened","version":1,"job":1,"first_hash":"{hex}"}}"#);
    let second = link(1, 2, 3, "{}").hash(&first);
    let opening_hash = link(0, 1, 2, &opening).hash(&[]);
    for (mono, job, number, body, hash) in
        [(1, 1, 1, "{}", first), (2, 0, 1, opening.as_str(), opening_hash), (3, 1, 2, "{}", second)]
    {
        sqlx::query("INSERT INTO entry VALUES (?, ?, ?, ?, ?, ?)")
            .bind(mono)
            .bind(job)
            .bind(number)
            .bind(AT)
            .bind(body)
            .bind(hash.as_slice())
            .execute(&mut connection)
            .await
            .unwrap();
    }
    connection.close().await.unwrap();
}

fn link(job: i64, number: u64, mono: u64, body: &str) -> Link<'_> {
    Link { job, number, mono, at: AT.as_bytes(), body: body.as_bytes() }
}

#[tokio::test]
async fn a_book_of_the_first_format_goes_on() {
    let (_folder, path) = place();
    first_format(&path).await;
    let reading = Book::open_read_only(&path).await.err().expect("a reader changes nothing, so it cannot bring it up");
    assert!(matches!(reading, BookError::OlderThanProgram { book: 1, program: 2, .. }), "{reading}");

    let book = Book::open_existing(&path).await.expect("whoever writes brings it up");
    let before = book.entries(JobId(1)).await.unwrap();
    book.append(JobId(1), 2, &bodies(&["{}"]), at()).await.expect("the open job goes on");
    let after = book.entries(JobId(1)).await.unwrap();
    assert_eq!(after[..2], before, "what was written before stays as it was, byte for byte");
    assert_eq!(book.verify().await.unwrap(), Verified { jobs: 1, entries: 3, ..Verified::default() });
}
