//! A program that is killed while it records has lost nothing of what it said was recorded.

#![cfg(unix)]
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use std::collections::BTreeMap;
use std::io::{BufRead as _, BufReader, Write as _};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use bayhand_jobbook::{Book, JobId, Recorded};
use common::{at, place};

/// Set in the process that records until it is killed.
const BOOK: &str = "BAYHAND_TEST_CRASH_BOOK";
const SEED: u64 = 20_261_125;
const KILLS: u32 = 10;
/// The first kills come as soon as the process runs: while the book is made or opened.
const EARLY_KILLS: u32 = 4;

#[tokio::test]
async fn every_entry_said_to_be_recorded_survives_a_kill() {
    match std::env::var_os(BOOK) {
        Some(path) => record_until_killed(&PathBuf::from(path)).await,
        None => kill_again_and_again().await,
    }
}

/// Appends one to three entries at a time; each says with which number its batch ends.
async fn record_until_killed(path: &Path) {
    let book = Book::open_or_create(path).await.unwrap();
    let (job, mut len) = match book.jobs().await.unwrap().pop() {
        Some(job) => (job.id, job.len),
        None => {
            let (job, first) = book.open_job(r#"{"batch_ends":1}"#, at()).await.unwrap();
            say(&first);
            (job, 1)
        }
    };
    loop {
        let batch = len % 3 + 1;
        let body = format!(r#"{{"batch_ends":{}}}"#, len + batch);
        let recorded = book.append(job, len, &vec![body; batch as usize], at()).await.unwrap();
        recorded.iter().for_each(say);
        len += batch;
    }
}

/// One line, flushed. The test harness leaves its own line open, hence the newline before. Ends the process by a panic
/// when nobody listens any more.
fn say(recorded: &Recorded) {
    let mut out = std::io::stdout().lock();
    write!(out, "\nrecorded {} {}\n", recorded.number, recorded.hash).unwrap();
    out.flush().unwrap();
}

async fn kill_again_and_again() {
    println!("seed {SEED}");
    let mut random = SEED;
    let mut next = |below: u64| {
        // xorshift64 (Marsaglia 2003)
        random ^= random << 13;
        random ^= random >> 7;
        random ^= random << 17;
        random % below
    };
    let (_folder, path) = place();
    let mut said = BTreeMap::new();
    for kill in 0..KILLS {
        let wait_for_lines = if kill < EARLY_KILLS { 0 } else { 1 + next(60) as usize };
        let pause = std::time::Duration::from_micros(next(20_000));
        said.extend(run_and_kill(&path, wait_for_lines, pause));

        let book = Book::open_or_create(&path).await.expect("a killed program leaves no lock and no half book");
        book.verify().await.expect("a killed program leaves a sound book");
        let Some(job) = book.jobs().await.unwrap().pop() else {
            assert!(said.is_empty(), "kill {kill}: the job is gone with {} entries", said.len());
            continue;
        };
        let entries = book.entries(JobId(1)).await.unwrap();
        for (number, hash) in &said {
            let kept = entries.get(*number as usize - 1).map(|entry| &entry.hash);
            assert_eq!(kept, Some(hash), "kill {kill}: entry {number} was said to be recorded");
        }
        let batch_end = format!(r#"{{"batch_ends":{}}}"#, job.len);
        assert_eq!(entries.last().unwrap().body, batch_end, "kill {kill}: a batch is written whole or not at all");
        println!("kill {kill}: {} said, {} kept", said.len(), entries.len());
        book.close().await.unwrap();
    }
    assert!(said.len() > 60, "control: the programs recorded something before they were killed: {}", said.len());
}

/// Lets this very test record in a process of its own, kills it and gives back all that it said.
fn run_and_kill(path: &Path, wait_for_lines: usize, pause: std::time::Duration) -> BTreeMap<u64, String> {
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "every_entry_said_to_be_recorded_survives_a_kill", "--nocapture"])
        .env(BOOK, path)
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut lines = BufReader::new(child.stdout.take().unwrap()).lines().map(|line| line.unwrap());
    let receipt = |line: String| {
        let (number, hash) = line.strip_prefix("recorded ")?.split_once(' ')?;
        Some((number.parse::<u64>().unwrap(), hash.to_owned()))
    };
    let mut said: BTreeMap<_, _> = lines.by_ref().filter_map(receipt).take(wait_for_lines).collect();
    std::thread::sleep(pause);
    child.kill().unwrap(); // SIGKILL
    let status = child.wait().unwrap();
    assert!(!status.success(), "it records for ever, so only the kill can have ended it: {status}");
    // A last line that the kill cut short is no receipt.
    said.extend(lines.filter_map(receipt).filter(|(_, hash)| hash.len() == 64));
    said
}
