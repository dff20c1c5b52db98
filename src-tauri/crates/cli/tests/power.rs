//! A whole job by the built program that is killed at any of its own writes and syncs, or whose power goes at any of its
//! syncs: what was said to be recorded is there, the book is sound, and the job stands at the step where it stood.

#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;
#[path = "../../jobbook/tests/common/disk.rs"]
mod disk;

use bayhand_job::log::Log;
use bayhand_job::whole;
use bayhand_jobbook::{Book, Entry, JobId};
use bayhand_procedure::{Next, next};
use common::{cli, receipt};
use disk::{Disk, Event, Fate};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use tempfile::TempDir;

const SEED: u64 = 20_261_125;
/// Seed of the practice car.
const CAR: &str = "5";
/// Kills of the usual and of the long form (`BAYHAND_LONG=1`).
const KILLS: (u64, u64) = (10, 1000);
/// The power goes at every so many-th sync: in the usual and in the long form.
const EVERY: (usize, usize) = (25, 1);

fn long() -> bool {
    std::env::var_os("BAYHAND_LONG").is_some()
}

fn place() -> (TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("jobs.db");
    (folder, path)
}

fn practice(book: &Path) -> Command {
    cli(["practice", "--seed", CAR, "--into", book.to_str().unwrap()])
}

/// xorshift64 (Marsaglia 2003).
fn random() -> impl FnMut(u64) -> u64 {
    let mut state = SEED;
    move |below| {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        state % below
    }
}

/// The step at which the job stands after so many of these entries.
fn step_after(entries: &[Entry]) -> String {
    let log = Log::read(1, entries).unwrap();
    match next(&log.document, &log.state) {
        Next::Step { id, .. } => id,
        other => format!("{other:?}"),
    }
}

/// Everything that must hold of what is left of job 1; how many entries that are, and the steps at which it stands.
async fn check(path: &Path, receipts: &BTreeMap<u64, String>, told: &str) -> (usize, String) {
    if !path.exists() {
        assert!(receipts.is_empty(), "{told}: the book is gone");
        return (0, String::new());
    }
    let book = Book::open_or_create(path).await.unwrap_or_else(|error| panic!("{told}: {error}"));
    whole::verify(&book).await.unwrap_or_else(|error| panic!("{told}: {error}"));
    let none = book.jobs().await.unwrap().is_empty();
    let kept = if none { Vec::new() } else { book.entries(JobId(1)).await.unwrap() };
    book.close().await.unwrap();
    for (number, hash) in receipts {
        let there = kept.get(*number as usize - 1).is_some_and(|entry| entry.hash == *hash);
        assert!(there, "{told}: entry {number} was said to be recorded; {} are kept", kept.len());
    }
    let step = if kept.is_empty() { String::new() } else { step_after(&kept) };
    (kept.len(), step)
}

#[tokio::test]
async fn the_power_goes_at_the_syncs_of_a_whole_job() {
    let every = if long() { EVERY.1 } else { EVERY.0 };
    println!("seed {SEED}, the power goes at every {every}. sync or word");
    let (folder, path) = place();
    let events = disk::record(practice(&path), folder.path());
    let reference = Book::open_read_only(&path).await.unwrap().entries(JobId(1)).await.unwrap();
    let mut random = random();
    let (mut disk, mut crashes, mut kept_in_all) = (Disk::default(), 0, 0);
    let moment = |event: &&Event| matches!(event, Event::Sync { .. } | Event::Said(_));
    let moments = events.iter().filter(moment).count();
    let mut count = 0;
    for event in &events {
        if moment(&event) {
            count += 1;
            if count % every == 0 || count == moments {
                for fate in [Fate::Written, Fate::Dropped, Fate::Trashed] {
                    let (folder, path) = place();
                    disk.crash(folder.path(), fate, &mut random);
                    let told = format!("before sync or word {count} of {moments}, {fate:?}");
                    let (kept, step) = check(&path, &disk.receipts(), &told).await;
                    if kept > 0 {
                        assert_eq!(step, step_after(&reference[..kept]), "{told}: the job stands where it stood");
                    }
                    crashes += 1;
                    kept_in_all += kept;
                }
            }
        }
        disk.happens(event);
    }
    println!("{} entries, {moments} moments, {crashes} crashes, {kept_in_all} entries kept over all", reference.len());
    assert!(crashes >= 30 && kept_in_all > 1000, "control: the power went while there was something to lose");

    // Control: a log whose syncs do nothing, which is what a commit is with synchronous = NORMAL.
    let mut unsafe_disk = Disk::default();
    unsafe_disk.unsynced.insert("jobs.db-wal".to_owned());
    let half = events.len() / 2;
    events[..half].iter().for_each(|event| unsafe_disk.happens(event));
    let (folder, path) = place();
    unsafe_disk.crash(folder.path(), Fate::Dropped, &mut random);
    let said = unsafe_disk.receipts().len() as u64;
    let kept = match Book::open_or_create(&path).await {
        Ok(book) => book.entries(JobId(1)).await.map_or(0, |entries| entries.len() as u64),
        Err(_) => 0,
    };
    println!("control without syncs of the log: {said} said, {kept} kept");
    assert!(kept < said, "control: what is not synced is lost, and that is seen");
}

/// A call that changes or syncs a file: the process's thread, its kind, and the file.
fn calls(trace: &Path) -> Vec<(String, String)> {
    let text = std::fs::read_to_string(trace).unwrap();
    let call = |line: &str| {
        let (thread, call) = line.split_once(' ')?;
        let (name, rest) = call.trim_start().split_once('(')?;
        let file = rest.split_once('<')?.1.split_once('>')?.0;
        let file = match file.rsplit_once('.').map(|(_, end)| end) {
            Some("db-wal") => "the log",
            Some("db") => "the book",
            Some("db-shm") => "the shared memory",
            _ if file.contains(".jobs.db.new") => "a book in the making",
            _ => "a folder",
        };
        let kind = if name == "pwrite64" { "a write to" } else { "a sync of" };
        Some((thread.to_owned(), format!("{kind} {file}")))
    };
    text.lines().filter_map(call).collect()
}

/// So many entries are written between two receipts: who signs on, and what they do.
const AT_ONCE: u64 = 2;
const CALLS: &str = "pwrite64,fsync,fdatasync";

fn strace(arguments: &[&str], command: &Command) -> Command {
    let mut strace = Command::new("strace");
    strace.args(arguments).arg(command.get_program()).args(command.get_args());
    strace.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::null());
    strace
}

#[tokio::test]
async fn a_job_is_killed_at_its_own_writes_and_syncs() {
    let kills = if long() { KILLS.1 } else { KILLS.0 };
    let (folder, path) = place();
    let trace = folder.path().join("calls.trace");
    let filter = format!("trace={CALLS}");
    let traced = strace(&["-f", "-y", "-o", trace.to_str().unwrap(), "-e", &filter], &practice(&path)).output();
    let traced = traced.expect("strace is installed; `cargo xtask test` does that");
    assert!(traced.status.success(), "the job is done");
    let reference = Book::open_read_only(&path).await.unwrap().entries(JobId(1)).await.unwrap();
    let calls = calls(&trace);
    // strace counts the calls of each thread by itself; the connection's own thread makes nearly all of them.
    let mut by_thread: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for (thread, call) in &calls {
        by_thread.entry(thread).or_default().push(call);
    }
    let most = by_thread.values().map(Vec::len).max().unwrap() as u64;
    println!("seed {SEED}, {kills} kills at {most} calls of one thread, {} of all", calls.len());

    // Uniform over all calls; the few kills of the usual form fall on writes and on syncs in turn.
    let busiest = by_thread.values().max_by_key(|calls| calls.len()).unwrap();
    let of_kind = |kind: &str| -> Vec<u64> {
        let calls = (1..).zip(busiest.iter()).filter(|(_, call)| call.starts_with(kind));
        calls.map(|(number, _)| number).collect()
    };
    let kinds = [of_kind("a write"), of_kind("a sync")];
    let mut random = random();
    let mut histogram: BTreeMap<&str, u64> = BTreeMap::new();
    let mut kept_in_all = 0;
    for kill in 0..kills {
        let call = if long() {
            1 + random(most)
        } else {
            let calls = &kinds[kill as usize % kinds.len()];
            calls[random(calls.len() as u64) as usize]
        };
        *histogram.entry(busiest[call as usize - 1]).or_default() += 1;
        let (_folder, path) = place();
        let inject = format!("inject={CALLS}:signal=SIGKILL:when={call}");
        let arguments = ["-f", "-o", "/dev/null", "-e", &filter, "-e", &inject];
        let output = strace(&arguments, &practice(&path)).output().unwrap();
        let said = String::from_utf8_lossy(&output.stdout).into_owned();
        let receipts: BTreeMap<u64, String> = said.lines().filter_map(receipt).collect();
        let told = format!("kill {kill} at call {call}");
        let (kept, step) = check(&path, &receipts, &told).await;
        let told_last = receipts.keys().last().copied().unwrap_or_default();
        assert!(kept as u64 <= told_last + AT_ONCE, "{told}: at most what is asked at once is kept and not yet told");
        if kept > 0 {
            assert_eq!(step, step_after(&reference[..kept]), "{told}: the job stands where it stood");
        }
        kept_in_all += kept;
    }
    println!("kills just before, in the reference run:");
    for (call, count) in &histogram {
        println!("{count:6}  {call}");
    }
    println!("{kept_in_all} entries kept over all");
    assert!(kept_in_all as u64 > kills * 20, "control: jobs were under way when they were killed");
    assert!(histogram.len() >= 2, "control: the kills fell on writes and on syncs");
}
