//! A program that is killed while it records has lost nothing of what it said was recorded.

#![cfg(unix)]
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use std::collections::BTreeMap;
use std::fs;
use std::io::{BufRead as _, BufReader, Write as _};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use bayhand_jobbook::{Book, JobId, Recorded};
use common::{at, bodies, place};

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

/// A program that is killed while its log moves into the book leaves the book's first page, which tells how long the
/// file is, ahead of the rest of the file. Together with the log the book is whole, and it opens.
#[tokio::test]
async fn a_book_whose_log_was_half_moved_opens_whole() {
    const LOG_HEADER: usize = 32;
    const FRAME_HEADER: usize = 24;
    let (folder, path) = place();
    let book = Book::open_or_create(&path).await.unwrap();
    let (job, _) = book.open_job(r#"{"first":true}"#, at()).await.unwrap();
    let long = format!(r#"{{"note":"{}"}}"#, "x".repeat(60_000));
    book.append(job, 1, &bodies(&[&long]), at()).await.unwrap();
    // https://www.sqlite.org/fileformat.html#the_write_ahead_log: frames of a page number, its checksums and the page.
    let log = fs::read(path.with_file_name("jobs.db-wal")).unwrap();
    let mut file = fs::read(&path).unwrap();
    let page = u32::from_be_bytes(log[8..12].try_into().unwrap()) as usize;
    let mut frames = log[LOG_HEADER..].chunks_exact(FRAME_HEADER + page);
    let first = frames.rfind(|frame| frame[..4] == [0, 0, 0, 1]).unwrap();
    file[..page].copy_from_slice(&first[FRAME_HEADER..]);
    let told = u32::from_be_bytes(file[28..32].try_into().unwrap()) as usize;
    assert!(told * page > file.len(), "control: the first page tells of {told} pages that the file does not have");

    let cut = folder.path().join("cut.db");
    fs::write(&cut, &file).unwrap();
    fs::write(cut.with_file_name("cut.db-wal"), &log).unwrap();
    let read = Book::open_read_only(&cut).await.unwrap();
    assert_eq!(read.entries(job).await.unwrap().len(), 2, "a reader sees both entries");
    drop(read);
    let opened = Book::open_existing(&cut).await.unwrap();
    assert_eq!(opened.entries(job).await.unwrap()[1].body, long, "the program goes on with nothing lost");
}
