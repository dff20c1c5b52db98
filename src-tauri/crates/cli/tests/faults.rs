//! Jobs on a simulated car with which something is wrong: what the program finds today, and how the job ends.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use common::{complaint, printed, run, sealed};
use std::process::Output;

/// The first two cars. Not every car shows every fault: the front link of car 3 comes in with so little preload that
/// leaving it on is less than settles explain, and that job is sealed.
const SEEDS: [u64; 2] = [1, 2];

fn job(seed: u64, fault: Option<&str>) -> Output {
    let seed = seed.to_string();
    let mut arguments = vec!["practice", "--seed", &seed];
    arguments.extend(fault.iter().flat_map(|name| ["--fault", *name]));
    run(arguments)
}

/// The job is stopped, the car made safe, and the reason told: the step that was held and what its gate found.
fn check_stopped(fault: &str, step: &str, found: &str, shown: &str) {
    for seed in SEEDS {
        let output = job(seed, Some(fault));
        let (says, why) = (printed(&output), complaint(&output));
        println!("seed {seed}, {fault}: {}", why.trim());
        assert_eq!(output.status.code(), Some(1), "seed {seed}, {fault}: nothing was sealed");
        assert!(why.contains(step) && why.contains(found), "seed {seed}, {fault}: held at {step}, {found}: {why}");
        let last = says.lines().last().unwrap();
        assert!(last.starts_with("stopped: job 1, ") && last.contains(step), "seed {seed}, {fault}: {last}");
        assert!(says.contains("| stop.tag |"), "seed {seed}, {fault}: the car is made safe and tagged");
        assert!(says.contains(shown), "seed {seed}, {fault}: what shows it is printed: {shown}");
    }
}

/// A zero that has moved shows before the car is let down on the pads again.
#[test]
fn a_moved_zero_is_found_at_the_next_zeros() {
    check_stopped("pad-zero", "lower.zeros", "steady zero", " 2.");
}

/// A tyre that loses air is found when cold pressures are set.
#[test]
fn a_tyre_that_is_down_is_found_at_the_pressures() {
    check_stopped("tyre-down", "final.cold", "front left", "| final.cold |");
}

/// A strut that sticks does not let settles agree.
#[test]
fn a_sticking_strut_is_found_by_settles_that_differ() {
    check_stopped("sticky-strut", "read-", "The settles differ", "held: The settles differ");
}

/// A link that was left on held its preload all along: when it goes back without, loads and heights move.
#[test]
fn a_link_left_on_is_found_when_it_goes_back() {
    check_stopped("link-left-on", "back.front-read", "Something moved", "held: Something moved");
}

/// Left share at each judgement, %.
fn left_shares(says: &str) -> Vec<f64> {
    let values = says.lines().filter_map(|line| line.trim().strip_prefix("Left share: "));
    values.map(|value| value.split(' ').next().unwrap().parse().unwrap()).collect()
}

/// Ballast that slides moves what collars cannot move: the left share that is printed at each judgement. No gate holds
/// the job for it yet.
#[test]
fn sliding_ballast_shows_in_the_left_share() {
    for seed in SEEDS {
        let moved = |fault| {
            let output = job(seed, fault);
            let says = printed(&output);
            assert!(sealed(&says).is_some(), "seed {seed}, {fault:?}: sealed: {}", complaint(&output));
            let shares = left_shares(&says);
            assert!(shares.len() >= 2, "seed {seed}: control, there is a judgement before and one after");
            (shares[shares.len() - 1] - shares[0]).abs()
        };
        let (sound, slid) = (moved(None), moved(Some("ballast-slides")));
        println!("seed {seed}: left share moves by {sound:.2} % in sound, by {slid:.2} % with sliding ballast");
        assert!(sound < 0.15, "seed {seed}: collars hardly move the left share: {sound} %");
        assert!(slid > 0.4, "seed {seed}: ballast does: {slid} %");
    }
}

/// A fault that does not exist is named no fault; the answer lists those that there are, and the nearest.
#[test]
fn an_unknown_fault_gets_the_names_and_the_nearest() {
    for (typed, nearest) in [("pad-zer", "pad-zero"), ("tire-down", "tyre-down"), ("link", "link-left-on")] {
        let output = job(1, Some(typed));
        let why = complaint(&output);
        assert!(!output.status.success(), "{typed} begins no job");
        assert!(why.contains(&format!("the nearest is {nearest}")), "{typed}: {why}");
        for name in ["pad-zero", "ballast-slides", "link-left-on", "tyre-down", "sticky-strut"] {
            assert!(why.contains(name), "{typed}: {name} is listed: {why}");
        }
    }
}

/// A job that was stopped is a whole record: the book verifies.
#[test]
fn a_stopped_job_verifies() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("jobs.db");
    let book = book.to_str().unwrap();
    let output = run(["practice", "--seed", "1", "--fault", "pad-zero", "--into", book]);
    assert_eq!(output.status.code(), Some(1), "stopped: {}", complaint(&output));
    let verified = run(["verify", book]);
    assert!(verified.status.success(), "{}", complaint(&verified));
    assert!(printed(&verified).starts_with("verified: 1 jobs, "), "{}", printed(&verified));
}
