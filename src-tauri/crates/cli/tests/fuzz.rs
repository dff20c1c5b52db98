//! Whatever text comes in, the readers of procedures, scenarios, a job's entries and the lines of the command line give a
//! refusal or an answer, never a panic.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

#[path = "../../planner/tests/common/mod.rs"]
mod boxes;
#[path = "../../jobbook/tests/common/damaged.rs"]
mod damaged;

use bayhand_cli::{align, lines, practice};
use bayhand_job::{ask::PracticeAsk, log::Log, scenario::Scenario};
use bayhand_jobbook::{Book, JobId};
use bayhand_procedure::{SHIPPED, load};
use boxes::{Random, any_problem};
use damaged::{damaged, runner};
use proptest::prelude::*;
use serde_json::{Value, json};
use std::cell::Cell;

/// Runs a reader over damaged forms of a text; some are still read, and some are not.
fn read_damaged(text: &str, read: impl Fn(&str) -> bool) {
    assert!(read(text), "control: the text as it is can be read");
    let (taken, refused) = (Cell::new(0), Cell::new(0));
    let count = |text: String| {
        let one = if read(&text) { &taken } else { &refused };
        one.set(one.get() + 1);
        Ok(())
    };
    runner().run(&damaged(text.to_owned()), count).unwrap();
    println!("{} read, {} refused", taken.get(), refused.get());
    assert!(refused.get() > 0, "control: damage is met");
}

#[test]
fn a_damaged_procedure_is_refused_or_read() {
    // Without blanks, so that damage hits what is said.
    let document: Value = serde_json::from_str(SHIPPED).unwrap();
    read_damaged(&document.to_string(), |text| load(text).is_ok());
}

#[test]
fn a_damaged_scenario_is_refused_or_read() {
    read_damaged(include_str!("../../../../scenarios/after-a-kerb.json"), |text| Scenario::read(text).is_ok());
    let any_text = |text: String| {
        prop_assert!(Scenario::read(&text).is_err(), "a text of chance is no scenario");
        Ok(())
    };
    runner().run(&any::<String>(), any_text).unwrap();
}

/// Entries of a whole job, one of them damaged: the job is told to be unreadable at that entry, or read.
#[tokio::test]
async fn a_damaged_entry_of_a_job_is_refused_or_read() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("jobs.db");
    let start = "2026-03-02T08:15:00+01:00".parse().unwrap();
    practice::run(&path, &PracticeAsk::sound(2), false, start, &mut std::io::sink()).await.unwrap();
    let mut entries = Book::open_read_only(&path).await.unwrap().entries(JobId(1)).await.unwrap();
    entries.truncate(30);
    assert!(Log::read(1, &entries).is_ok(), "control: the job as it is can be read");
    let last = entries.pop().unwrap();
    read_damaged(&last.body.clone(), |body| {
        let mut job = entries.clone();
        job.push(bayhand_jobbook::Entry { body: body.into(), ..last.clone() });
        Log::read(1, &job).is_ok()
    });
}

fn answers<Q: serde::de::DeserializeOwned, A: serde::Serialize>(
    text: &str,
    answer: impl Fn(&Q) -> Result<A, lines::Wrong>,
) -> bool {
    let mut out = Vec::new();
    // A line of a text is a question of its own; a text that is no UTF-8 never gets here.
    lines::answer_all(text.as_bytes(), &mut out, answer).unwrap();
    let out = String::from_utf8(out).unwrap();
    let asked = text.lines().filter(|line| !line.trim().is_empty()).count();
    assert_eq!(out.lines().count(), asked, "a line for each line: {text}");
    !out.is_empty() && out.lines().all(|line| !line.starts_with("{\"error\""))
}

#[test]
fn damaged_lines_are_refused_or_answered() {
    let reference: Value = serde_json::from_str(include_str!("../../chassis/tests/data/statics.json")).unwrap();
    let case = &reference["cases"][0];
    let (from, to) = (&case["readings"][0], &case["readings"][1]);
    let to = json!({ "collar_mm": to["collar_mm"], "pads_mm": to["pads_mm"] });
    let predict = json!({ "car": case["car"], "from": from, "to": to }).to_string();
    read_damaged(&predict, |text| answers(text, lines::predict));
    let plan = serde_json::to_string(&any_problem(&mut Random(1), 3)).unwrap();
    read_damaged(&plan, |text| answers(text, lines::plan));
    let sweep = json!({ "angle_deg": 20, "camber_out_deg": 1.2, "camber_in_deg": -3.5, "inclination_deg": 14 });
    let align = json!({ "sweep": sweep }).to_string();
    read_damaged(&align, |text| answers(text, align::align));
}
