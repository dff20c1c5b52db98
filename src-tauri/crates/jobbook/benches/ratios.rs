//! What the book costs over doing the same barely, as ratios in one run: `cargo bench -p bayhand-jobbook`.
//!
//! - an append with sync, against one bare commit of the same bytes with the same settings: at most 1.3
//! - verifying 100,000 entries, against fetching, parsing and hashing them barely: at most 2
//! - listing 10,000 jobs and reading one of 2,000 entries, against the bare query of the same rows: at most 3
//!
//! Both sides take turns; the median counts. Exit 1 when a ratio is above its limit.

#![allow(clippy::unwrap_used, reason = "a benchmark that cannot be set up should stop")]

use std::process::ExitCode;
use std::time::{Duration, Instant};

use bayhand_jobbook::{Along, Book, JobId, Mark};
use chrono::{DateTime, FixedOffset};
use sha2::{Digest as _, Sha256};
use sqlx::sqlite::{SqliteConnectOptions, SqliteJournalMode, SqliteSynchronous};
use sqlx::{ConnectOptions as _, Row as _, SqliteConnection};

const APPENDS: usize = 400;
const ENTRIES: u64 = 100_000;
const ENTRIES_OF_A_JOB: u64 = 250;
const JOBS: u64 = 10_000;
const LONG_JOB: u64 = 2_000;
const TURNS: usize = 5;

fn at() -> DateTime<FixedOffset> {
    "2026-03-02T08:15:00.250+01:00".parse().unwrap()
}

/// A body of 316 bytes, as long as those of a practice job are in the middle.
fn body(number: u64) -> String {
    let text = format!(
        r#"{{"v":1,"program":"0.1.0","what":{{"happened":{{"event":{{"event":"done","step":"loop.loads","by":"RO","entries":{{"loads.FL":{{"text":"{number}.5","unit":"kg"}},"loads.FR":{{"text":"249.0","unit":"kg"}}}},"found":["pass"]}},"seen":{{"used":{{"loads.FL":["{number}.5"],"loads.FR":["249"]}}}}}}}},"pad":""#
    );
    let pad = 316_usize.saturating_sub(text.len() + 2);
    format!("{text}{}\"}}", "x".repeat(pad))
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times[times.len() / 2]
}

/// Prints a ratio; true when it keeps to its limit.
fn ratio(what: &str, ours: Vec<Duration>, barely: Vec<Duration>, limit: f64) -> bool {
    let (ours, barely) = (median(ours), median(barely));
    let ratio = ours.as_secs_f64() / barely.as_secs_f64();
    println!("{ratio:5.2} (at most {limit})  {what}: {ours:?} against {barely:?}");
    println!("table: {what} | {ours:.1?} | the same done barely | {barely:.1?} | {ratio:.2} | at most {limit}");
    ratio <= limit
}

async fn bare(path: &std::path::Path) -> SqliteConnection {
    SqliteConnectOptions::new()
        .filename(path)
        .create_if_missing(true)
        .journal_mode(SqliteJournalMode::Wal)
        .synchronous(SqliteSynchronous::Full)
        .foreign_keys(true)
        .pragma("secure_delete", "1")
        .connect()
        .await
        .unwrap()
}

async fn append() -> bool {
    let folder = tempfile::tempdir().unwrap();
    let book = Book::open_or_create(&folder.path().join("jobs.db")).await.unwrap();
    let (job, _) = book.open_job_with(&body(1), Some("begun"), at()).await.unwrap();
    let mut plain = bare(&folder.path().join("bare.db")).await;
    let table = "CREATE TABLE entry (mono INTEGER PRIMARY KEY, job INTEGER NOT NULL, number INTEGER NOT NULL,
                 at TEXT NOT NULL, body TEXT NOT NULL, hash BLOB NOT NULL, UNIQUE (job, number)) STRICT";
    sqlx::query(table).execute(&mut plain).await.unwrap();
    let (mut ours, mut barely) = (Vec::new(), Vec::new());
    for number in 1..=APPENDS as u64 {
        let bodies = [body(number)];
        let begun = Instant::now();
        let along = Along { card: Some(r#"{"car":"Grey saloon","state":"working"}"#), mark: Mark::GoesOn };
        book.append_with(job, number, &bodies, along, at()).await.unwrap();
        ours.push(begun.elapsed());
        let begun = Instant::now();
        sqlx::query("INSERT INTO entry VALUES (?, 1, ?, '2026-03-02T08:15:00.250+01:00', ?, ?)")
            .bind(number as i64)
            .bind(number as i64)
            .bind(&bodies[0])
            .bind(&[7_u8; 32][..])
            .execute(&mut plain)
            .await
            .unwrap();
        barely.push(begun.elapsed());
    }
    ratio("append with sync", ours, barely, 1.3)
}

/// Fetches, parses and hashes the entries of a job; gives how many there were.
async fn fetch(connection: &mut SqliteConnection, job: i64, parse: bool) -> u64 {
    let rows = sqlx::query("SELECT number, mono, at, body, hash FROM entry WHERE job = ? ORDER BY number")
        .bind(job)
        .fetch_all(connection)
        .await
        .unwrap();
    for row in &rows {
        let (body, hash): (&str, &[u8]) = (row.get(3), row.get(4));
        if parse {
            let _: serde_json::Value = serde_json::from_str(body).unwrap();
        }
        std::hint::black_box(Sha256::new().chain_update(hash).chain_update(body).finalize());
    }
    rows.len() as u64
}

async fn verify() -> bool {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("jobs.db");
    let book = Book::open_or_create(&path).await.unwrap();
    for _ in 0..ENTRIES / ENTRIES_OF_A_JOB {
        let (job, _) = book.open_job_with(&body(1), Some("begun"), at()).await.unwrap();
        let bodies: Vec<_> = (2..=ENTRIES_OF_A_JOB).map(body).collect();
        book.append_with(job, 1, &bodies, Along { card: Some("on"), mark: Mark::GoesOn }, at()).await.unwrap();
    }
    let mut plain = bare(&path).await;
    let (mut ours, mut barely) = (Vec::new(), Vec::new());
    for _ in 0..TURNS {
        let begun = Instant::now();
        assert_eq!(book.verify().await.unwrap().entries, ENTRIES);
        ours.push(begun.elapsed());
        let begun = Instant::now();
        let mut fetched = 0;
        for job in 1..=(ENTRIES / ENTRIES_OF_A_JOB) as i64 {
            fetched += fetch(&mut plain, job, true).await;
        }
        assert_eq!(fetched, ENTRIES);
        barely.push(begun.elapsed());
    }
    ratio("verify 100,000 entries", ours, barely, 2.0)
}

async fn list_and_open() -> bool {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("jobs.db");
    let book = Book::open_or_create(&path).await.unwrap();
    for _ in 0..JOBS {
        book.open_job_with(&body(1), Some(r#"{"car":"Grey saloon","state":"working"}"#), at()).await.unwrap();
    }
    let bodies: Vec<_> = (2..=LONG_JOB).map(body).collect();
    book.append(JobId(1), 1, &bodies, at()).await.unwrap();
    let mut plain = bare(&path).await;
    let (mut list, mut bare_list, mut open, mut bare_open) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for _ in 0..TURNS * 4 {
        let begun = Instant::now();
        assert_eq!(book.jobs().await.unwrap().len() as u64, JOBS);
        list.push(begun.elapsed());
        let begun = Instant::now();
        let rows = sqlx::query(
            "SELECT id, opened, number, hash, text FROM job
             JOIN entry ON entry.job = id AND number = (SELECT max(number) FROM entry WHERE job = id)
             LEFT JOIN card ON card.job = id WHERE id <> 0 ORDER BY id",
        )
        .fetch_all(&mut plain)
        .await
        .unwrap();
        bare_list.push(begun.elapsed());
        assert_eq!(rows.len() as u64, JOBS);
        let begun = Instant::now();
        assert_eq!(book.entries(JobId(1)).await.unwrap().len() as u64, LONG_JOB);
        open.push(begun.elapsed());
        let begun = Instant::now();
        fetch(&mut plain, 1, false).await;
        bare_open.push(begun.elapsed());
    }
    let listed = ratio("list 10,000 jobs", list, bare_list, 3.0);
    ratio("read a job of 2,000 entries", open, bare_open, 3.0) && listed
}

#[tokio::main(flavor = "current_thread")]
async fn main() -> ExitCode {
    let kept = [append().await, verify().await, list_and_open().await];
    if kept.iter().all(|kept| *kept) { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
