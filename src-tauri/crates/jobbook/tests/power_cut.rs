//! The power goes at any moment while entries are recorded: every entry that was said to be recorded is there.
//!
//! The control records in the same file with `synchronous = NORMAL`, where a commit is not synced: it must lose entries,
//! or this test would see nothing.

#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;
#[path = "common/disk.rs"]
mod disk;

use std::path::{Path, PathBuf};
use std::process::Command;

use bayhand_jobbook::chain::Link;
use bayhand_jobbook::{Along, Book, JobId, Mark};
use common::{AT, at, bodies, place};
use disk::{Disk, Event, Fate};
use sqlx::sqlite::{SqliteConnectOptions, SqliteJournalMode, SqliteSynchronous};
use sqlx::{ConnectOptions as _, Connection as _};

const SEED: u64 = 20_261_125;
/// Set in the process that records.
const BOOK: &str = "BAYHAND_TEST_POWER_CUT_BOOK";
/// Set besides in the process of the control.
const NORMAL: &str = "BAYHAND_TEST_POWER_CUT_NORMAL";
/// Entries of the usual and of the long form (`BAYHAND_LONG=1`).
const ENTRIES: (u64, u64) = (25, 250);

fn entries() -> u64 {
    if std::env::var_os("BAYHAND_LONG").is_some() { ENTRIES.1 } else { ENTRIES.0 }
}

#[tokio::test]
async fn every_entry_said_to_be_recorded_survives_a_power_cut() {
    if let Some(path) = std::env::var_os(BOOK) {
        return match std::env::var_os(NORMAL) {
            None => record(&PathBuf::from(path)).await,
            Some(_) => record_unsafely(&PathBuf::from(path)).await,
        };
    }
    println!("seed {SEED}, {} entries", entries());
    let lost = cut_everywhere(&recorded(false)).await;
    println!("FULL: {lost:?}");
    assert!(lost.crashes > entries() && lost.receipts > 0, "control: there were crashes with receipts before them");
    assert_eq!((lost.crashes_with_loss, lost.unsound), (0, 0), "nothing that was said to be recorded is lost");
    let control = cut_everywhere(&recorded(true)).await;
    println!("NORMAL: {control:?}");
    assert!(control.crashes_with_loss > 0, "control: a commit that is not synced loses entries, and that is seen");
}

/// What this very test does as a process of its own.
fn recorded(unsafely: bool) -> Vec<Event> {
    let (folder, path) = place();
    let mut command = Command::new(std::env::current_exe().unwrap());
    command.args(["--exact", "every_entry_said_to_be_recorded_survives_a_power_cut", "--nocapture"]).env(BOOK, &path);
    if unsafely {
        command.env(NORMAL, "1");
    }
    disk::record(command, folder.path())
}

async fn record(path: &Path) {
    let book = Book::open_or_create(path).await.unwrap();
    let (job, first) = book.open_job_with("{}", Some("begun"), at()).await.unwrap();
    println!("\nrecorded 1 {}", first.hash);
    for len in 1..entries() {
        // From short ones to some that fill pages.
        let body = format!(r#"{{"step":{len},"what":"{}"}}"#, "x".repeat((len * len % 3000) as usize));
        let along = Along { card: Some("at work"), mark: Mark::GoesOn };
        let recorded = book.append_with(job, len, &bodies(&[&body]), along, at()).await.unwrap();
        println!("\nrecorded {} {}", recorded[0].number, recorded[0].hash);
    }
    book.close().await.unwrap();
}

/// The same entries past the book, on a connection that does not sync a commit.
async fn record_unsafely(path: &Path) {
    let book = Book::open_or_create(path).await.unwrap();
    let (_, first) = book.open_job("{}", at()).await.unwrap();
    println!("\nrecorded 1 {}", first.hash);
    book.close().await.unwrap();
    let options = SqliteConnectOptions::new().filename(path).journal_mode(SqliteJournalMode::Wal);
    let mut connection = options.synchronous(SqliteSynchronous::Normal).connect().await.unwrap();
    let mut before: Vec<u8> =
        sqlx::query_scalar("SELECT hash FROM entry WHERE mono = 1").fetch_one(&mut connection).await.unwrap();
    for number in 2..=entries() {
        let link = Link { job: 1, number, mono: number + 1, at: AT.as_bytes(), body: b"{}" };
        before = link.hash(&before).to_vec();
        sqlx::query("INSERT INTO entry (mono, job, number, at, body, hash) VALUES (?, 1, ?, ?, '{}', ?)")
            .bind(number as i64 + 1)
            .bind(number as i64)
            .bind(AT)
            .bind(&before)
            .execute(&mut connection)
            .await
            .unwrap();
        println!("\nrecorded {number} {}", before.iter().map(|byte| format!("{byte:02x}")).collect::<String>());
    }
    connection.close().await.unwrap();
}

/// What became of it over all crashes.
#[derive(Debug, Default)]
struct Lost {
    crashes: u64,
    /// Receipts over all crashes.
    receipts: u64,
    crashes_with_loss: u64,
    unsound: u64,
}

/// Lets the power go before each sync, and lets what was not synced have each fate.
async fn cut_everywhere(events: &[Event]) -> Lost {
    let mut state = SEED;
    let mut random = move |below: u64| {
        // xorshift64 (Marsaglia 2003)
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        state % below
    };
    let mut disk = Disk::default();
    let mut lost = Lost::default();
    for event in events {
        if matches!(event, Event::Sync { .. } | Event::Said(_)) {
            for fate in [Fate::Written, Fate::Dropped, Fate::Trashed] {
                let (folder, path) = place();
                disk.crash(folder.path(), fate, &mut random);
                look(&path, &disk, &mut lost).await;
            }
        }
        disk.happens(event);
    }
    lost
}

async fn look(path: &Path, disk: &Disk, lost: &mut Lost) {
    let receipts = disk.receipts();
    lost.crashes += 1;
    lost.receipts += receipts.len() as u64;
    if !path.exists() {
        lost.crashes_with_loss += u64::from(!receipts.is_empty());
        return;
    }
    let book = Book::open_or_create(path).await.unwrap_or_else(|error| panic!("after a power cut: {error}"));
    lost.unsound += u64::from(book.verify().await.is_err());
    let kept = book.entries(JobId(1)).await.unwrap_or_default();
    let there =
        |(number, hash): (&u64, &String)| kept.get(*number as usize - 1).is_some_and(|entry| entry.hash == *hash);
    lost.crashes_with_loss += u64::from(!receipts.iter().all(there));
    book.close().await.unwrap();
}
