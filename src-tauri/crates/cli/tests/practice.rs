//! Whole jobs on the practice car, by the built program and by the library that it calls.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_cli::practice;
use bayhand_job::ask::PracticeAsk;
use common::{complaint, printed, run, sealed};
use std::fs;

/// The turning must come to its end within so many rounds.
const MOST_ROUNDS: u32 = 3;

#[test]
fn forty_cars_end_sealed_in_one_book() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("jobs.db");
    println!("{:>4} {:>6} {:>6} {:>7}", "seed", "steps", "rounds", "waivers");
    let mut went_plainly = Vec::new();
    for seed in 1..=40_i64 {
        let output = run(["practice", "--seed", &seed.to_string(), "--into", book.to_str().unwrap()]);
        assert!(output.status.success(), "seed {seed}: {}", complaint(&output));
        let went = sealed(&printed(&output)).unwrap_or_else(|| panic!("seed {seed} says how it ended"));
        println!("{seed:>4} {:>6} {:>6} {:>7}", went.steps, went.rounds, went.waivers);
        if went.waivers == 0 {
            went_plainly.push(seed);
        }
        assert_eq!(went.job, seed, "each is a job of its own in the book");
        assert!(went.rounds <= MOST_ROUNDS, "seed {seed}: {} rounds of turning", went.rounds);
        assert!(went.steps > 100, "seed {seed}: control, a whole job has more than {} steps", went.steps);
    }
    let verified = run(["verify", book.to_str().unwrap()]);
    assert!(verified.status.success(), "the book of all of them verifies: {}", complaint(&verified));
    let says = printed(&verified);
    println!("{}", says.trim());
    assert!(says.starts_with("verified: 40 jobs, "), "and holds all of them: {says}");
    let plain: Vec<String> = went_plainly.iter().map(ToString::to_string).collect();
    assert!(plain.len() >= 20, "most jobs depart in nothing from the procedure: {plain:?}");
    for job in &plain[..2] {
        let sheet = folder.path().join("sheet.pdf");
        let output = run(["sheet", book.to_str().unwrap(), "--job", job, "--out", sheet.to_str().unwrap()]);
        assert!(output.status.success(), "job {job}: {}", complaint(&output));
        let pages = lopdf::Document::load(&sheet).unwrap().get_pages().len();
        assert!(pages <= 2, "job {job}: the customer gets two pages at most where nothing departed: {pages}");
        for kind in ["csv", "json"] {
            let numbers = std::fs::read_to_string(sheet.with_extension(kind)).unwrap();
            assert!(numbers.contains("cross_u_pct"), "job {job}: its figures stand beside it as {kind}");
        }
    }
}

/// The story of one seed, begun at this time, in a new book.
async fn story(seed: u64, start: &str) -> String {
    let folder = tempfile::tempdir().unwrap();
    let mut out = Vec::new();
    practice::run(&folder.path().join("jobs.db"), &PracticeAsk::sound(seed), false, start.parse().unwrap(), &mut out)
        .await
        .unwrap();
    String::from_utf8(out).unwrap()
}

fn without_receipts(story: &str) -> String {
    story.lines().filter(|line| !line.starts_with("recorded ")).map(|line| format!("{line}\n")).collect()
}

#[tokio::test]
async fn one_seed_tells_one_story() {
    const MORNING: &str = "2026-03-02T08:15:00+01:00";
    const EVENING: &str = "2026-07-21T17:40:00+02:00";
    let first = story(3, MORNING).await;
    assert_eq!(first, story(3, MORNING).await, "the same seed at the same time: the same record, hash by hash");
    let later = story(3, EVENING).await;
    assert_ne!(first, later, "control: times are in the hashes");
    assert_eq!(without_receipts(&first), without_receipts(&later), "at another time: the same steps and figures");
    assert_ne!(without_receipts(&first), without_receipts(&story(4, MORNING).await), "control: another car");
}

/// Exit 0 only when sealed; a file that is no book is said to be none and is left as it was.
#[test]
fn a_job_that_cannot_begin_ends_in_words() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("list.txt");
    let text = "bolts, washers\n".repeat(20);
    fs::write(&path, &text).unwrap();
    let output = run(["practice", "--seed", "1", "--into", path.to_str().unwrap()]);
    assert_eq!(output.status.code(), Some(1), "nothing was sealed");
    assert!(complaint(&output).contains("is not a job book"), "{}", complaint(&output));
    assert_eq!(fs::read_to_string(&path).unwrap(), text, "a file of another kind is not touched");
    let missing = run(["verify", folder.path().join("none.db").to_str().unwrap()]);
    assert_eq!(missing.status.code(), Some(1), "there is no book to verify");
    assert!(complaint(&missing).contains("There is no job book"), "{}", complaint(&missing));
}
