//! What the tests of the book share: a folder of its own for each, one fixed time, and a way past the guards.

#![allow(dead_code, reason = "each test file uses its own part")]
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use std::path::{Path, PathBuf};

use bayhand_jobbook::{Book, JobId, Person, Rank, Secret};
use chrono::{DateTime, FixedOffset};
use sqlx::sqlite::SqliteConnectOptions;
use sqlx::{AssertSqlSafe, ConnectOptions as _, Connection as _};
use tempfile::TempDir;

/// The time of every entry of the tests.
pub const AT: &str = "2026-03-02T08:15:00.250+01:00";

pub fn at() -> DateTime<FixedOffset> {
    AT.parse().unwrap()
}

/// A folder that is removed at the end, and a path in it where there is no file yet.
pub fn place() -> (TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("jobs.db");
    (folder, path)
}

pub fn bodies(texts: &[&str]) -> Vec<String> {
    texts.iter().map(|&text| text.into()).collect()
}

/// Makes a book with three jobs, written in turns: 1, 2, 1, 3, 2, 1. Lengths 4, 3 and 1.
pub async fn three_jobs(path: &Path) {
    let book = Book::open_or_create(path).await.unwrap();
    for job in 1..=2 {
        let (opened, _) = book.open_job(r#"{"first":true}"#, at()).await.unwrap();
        assert_eq!(opened, JobId(job), "jobs are numbered from 1 without gaps");
    }
    book.append(JobId(1), 1, &bodies(&[r#"{"load_kg":"251.5"}"#, r#"{"load_kg":"249.0"}"#]), at()).await.unwrap();
    book.open_job(r#"{"first":true}"#, at()).await.unwrap();
    book.append(JobId(2), 1, &bodies(&[r#"{"turns":"1.25"}"#, r#"{"turns":"0.50"}"#]), at()).await.unwrap();
    book.append(JobId(1), 3, &bodies(&[r#"{"sealed":true}"#]), at()).await.unwrap();
    book.close().await.unwrap();
}

/// Does to the file what another program could do, and says what SQLite said.
pub async fn by_other_means(path: &Path, sql: &str) -> Result<(), sqlx::Error> {
    let mut connection = SqliteConnectOptions::new().filename(path).create_if_missing(true).connect().await?;
    let answer = sqlx::raw_sql(AssertSqlSafe(sql)).execute(&mut connection).await;
    connection.close().await?;
    answer.map(|_| ())
}

/// The first supervisor of the tests' books, with their PIN and passphrase.
pub const PIN: &str = "2468";
pub const PASSPHRASE: &str = "rain on a tin roof";

pub fn secret(text: &str) -> Secret {
    Secret::new(text)
}

pub fn person(initials: &str, rank: Rank) -> Person {
    Person { initials: initials.into(), name: format!("Somebody {initials}"), rank, alone: Vec::new() }
}

/// A new book with the supervisor MT, and the recovery code.
pub async fn staffed(path: &Path) -> (Book, Secret) {
    let book = Book::open_or_create(path).await.unwrap();
    let mt = person("MT", Rank::Supervisor);
    let code = book.first_supervisor(mt, &secret(PIN), &secret(PASSPHRASE), at()).await.unwrap();
    (book, code)
}

/// The guards of a book, taken away and put back, so that what lies between them can do anything.
pub async fn past_the_guards(path: &Path, sql: &str) {
    try_past_the_guards(path, sql).await.unwrap();
}

/// The same, for what the types and keys of the tables may still refuse.
pub async fn try_past_the_guards(path: &Path, sql: &str) -> Result<(), sqlx::Error> {
    let (away, back) = GUARDS.get_or_init(guards).await;
    by_other_means(path, &format!("PRAGMA foreign_keys = OFF; {away} {sql}; {back}")).await
}

/// What takes the guards of every book away, and what puts them back.
static GUARDS: tokio::sync::OnceCell<(String, String)> = tokio::sync::OnceCell::const_new();

async fn guards() -> (String, String) {
    let (_folder, model) = place();
    Book::open_or_create(&model).await.unwrap().close().await.unwrap();
    let mut connection = SqliteConnectOptions::new().filename(&model).connect().await.unwrap();
    let guards: Vec<(String, String)> = sqlx::query_as("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
        .fetch_all(&mut connection)
        .await
        .unwrap();
    connection.close().await.unwrap();
    let away = guards.iter().map(|(name, _)| format!("DROP TRIGGER {name};")).collect();
    let back = guards.iter().map(|(_, sql)| format!("{sql};")).collect();
    (away, back)
}
