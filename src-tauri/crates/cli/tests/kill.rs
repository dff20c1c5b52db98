//! A whole job that is killed at any moment: all that was said to be recorded is there, the book verifies, and the same
//! call takes the job up and ends it sealed.
#![cfg(unix)]
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_jobbook::{Book, Entry};
use common::{cli, complaint, printed, receipt, run, sealed};
use std::collections::BTreeMap;
use std::fs;
use std::io::{BufRead as _, BufReader};
use std::path::Path;
use std::process::Stdio;
use std::thread::sleep;
use std::time::Duration;

const SEED: u64 = 20_261_125;
/// Kills of the usual and of the long form (`BAYHAND_LONG=1`).
const KILLS: (u64, u64) = (9, 200);
/// So many jobs are put into one book, then a new book is begun: killed jobs meet a log that earlier jobs filled.
const JOBS_IN_A_BOOK: u64 = 6;
/// A job of the practice car has about so many entries.
const ENTRIES: u64 = 250;

/// When the program is killed.
#[derive(Clone, Copy, Debug)]
enum When {
    /// While the book is made or opened and the job begun.
    Early(Duration),
    /// After so many lines `recorded`, and a moment.
    After(u64, Duration),
    /// Once the job is sealed: while the book is being closed.
    Sealed(Duration),
}

#[tokio::test]
async fn a_job_that_is_killed_loses_nothing_and_is_taken_up() {
    let kills = if std::env::var_os("BAYHAND_LONG").is_some() { KILLS.1 } else { KILLS.0 };
    println!("seed {SEED}, {kills} kills");
    let mut random = SEED;
    let mut next = |below: u64| {
        // xorshift64 (Marsaglia 2003)
        random ^= random << 13;
        random ^= random >> 7;
        random ^= random << 17;
        random % below
    };
    let mut kept_in_all = 0;
    let mut folder = tempfile::tempdir().unwrap();
    for kill in 0..kills {
        if kill % JOBS_IN_A_BOOK == 0 {
            folder = tempfile::tempdir().unwrap();
        }
        let (book, seed) = (folder.path().join("jobs.db"), 1 + kill % 20);
        let when = match kill % 4 {
            0 => When::Early(Duration::from_micros(next(400_000))),
            1 | 2 => When::After(1 + next(ENTRIES - 10), Duration::from_micros(next(8_000))),
            _ => When::Sealed(Duration::from_micros(next(4_000))),
        };
        let jobs_before = jobs(&book).await;
        let said = run_and_kill(&book, seed, when);
        let entries = newest_job_after(&book, jobs_before).await;
        kept_in_all += entries.len();
        println!("kill {kill}, seed {seed}, {when:?}: {} said, {} kept", said.len(), entries.len());
        let missing = missing(&said, &entries);
        assert!(missing.is_empty(), "kill {kill}: said to be recorded, and not in the book: {missing:?}");
        if book.exists() {
            verifies(&book, &format!("kill {kill}"));
        }

        let ended = entries.last().is_some_and(|e| e.body.contains(r#""event":"sealed""#));
        let again = run(["practice", "--seed", &seed.to_string(), "--into", book.to_str().unwrap()]);
        assert!(again.status.success(), "kill {kill}: the same call goes on: {}", complaint(&again));
        let went = sealed(&printed(&again)).expect("it says how it ended");
        if !ended && !entries.is_empty() {
            assert_eq!(went.job, jobs_before + 1, "kill {kill}: the job that was killed is taken up, no new one begun");
            let whole = newest_job_after(&book, jobs_before).await;
            assert_eq!(whole[..entries.len()], entries, "kill {kill}: what was recorded stays as it was");
        }
        verifies(&book, &format!("kill {kill}, taken up and sealed"));
    }
    assert!(kept_in_all > 250, "control: jobs were under way when they were killed: {kept_in_all} entries");
}

/// Control: the checks above see a receipt whose entry is gone or another, and a changed body.
#[tokio::test]
async fn a_lost_or_changed_entry_is_seen() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("jobs.db");
    let mut said = run_and_kill(&book, 5, When::After(40, Duration::ZERO));
    let entries = newest_job_after(&book, 0).await;
    assert_eq!(missing(&said, &entries), Vec::<u64>::new(), "all of them are there");
    let (last, _) = said.last_key_value().unwrap();
    assert_eq!(missing(&said, &entries[..*last as usize - 1]), [*last], "a book that lost its tail is seen");
    said.insert(7, "0".repeat(64));
    assert_eq!(missing(&said, &entries), [7], "another entry in its place is seen");

    run(["practice", "--seed", "5", "--into", book.to_str().unwrap()]);
    verifies(&book, "as it was written");
    // Everywhere: SQLite leaves old copies of what it moved in unused places of the file.
    let (name, other) = (b"Lee Barrow", b"Lea Barrow");
    let mut bytes = fs::read(&book).unwrap();
    let places: Vec<usize> = (0..bytes.len() - name.len()).filter(|at| bytes[*at..].starts_with(name)).collect();
    assert!(!places.is_empty(), "a name stands in the record as it was typed");
    places.iter().for_each(|at| bytes[*at..*at + name.len()].copy_from_slice(other));
    fs::write(&book, bytes).unwrap();
    let verified = run(["verify", book.to_str().unwrap()]);
    assert_eq!(verified.status.code(), Some(1), "a changed name is seen");
    assert!(complaint(&verified).contains("Job 0, entry 4"), "first in the list of people: {}", complaint(&verified));
}

/// Lets the program do a job, kills it and gives back every receipt that it printed.
fn run_and_kill(book: &Path, seed: u64, when: When) -> BTreeMap<u64, String> {
    let mut child = cli(["practice", "--seed", &seed.to_string(), "--into", book.to_str().unwrap()])
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut lines = BufReader::new(child.stdout.take().unwrap()).lines().map(|line| line.unwrap());
    let mut said = BTreeMap::new();
    let pause = match when {
        When::Early(pause) => pause,
        When::After(count, pause) => {
            said.extend(lines.by_ref().filter_map(|line| receipt(&line)).take(count as usize));
            pause
        }
        When::Sealed(pause) => {
            said.extend(lines.by_ref().take_while(|l| !l.starts_with("sealed: ")).filter_map(|line| receipt(&line)));
            pause
        }
    };
    sleep(pause);
    child.kill().unwrap(); // SIGKILL
    child.wait().unwrap();
    said.extend(lines.filter_map(|line| receipt(&line)));
    said
}

/// Numbers of the receipts for which there is no such entry.
fn missing(said: &BTreeMap<u64, String>, entries: &[Entry]) -> Vec<u64> {
    let there = |number: &u64, hash: &String| entries.get(*number as usize - 1).is_some_and(|e| &e.hash == hash);
    said.iter().filter(|(number, hash)| !there(number, hash)).map(|(number, _)| *number).collect()
}

async fn jobs(book: &Path) -> i64 {
    if !book.exists() {
        return 0;
    }
    Book::open_read_only(book).await.unwrap().jobs().await.unwrap().len() as i64
}

/// The entries of the job that was begun after so many jobs; none when none was.
async fn newest_job_after(book: &Path, before: i64) -> Vec<Entry> {
    if jobs(book).await == before {
        return Vec::new();
    }
    let id = bayhand_jobbook::JobId(before + 1);
    Book::open_read_only(book).await.unwrap().entries(id).await.unwrap()
}

fn verifies(book: &Path, when: &str) {
    let verified = run(["verify", book.to_str().unwrap()]);
    assert!(verified.status.success(), "{when}: the book verifies: {}", complaint(&verified));
}
