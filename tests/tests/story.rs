//! The whole job of seed 1 as a story to be read: what the window at the car says at each step, who does what, what is
//! entered, what gates find, and the figures. No times and no hashes.
//!
//! `INSTA_UPDATE=always cargo test -p bayhand-tests --test story` accepts a story that was changed on purpose; read the
//! difference first.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

// The bay of the tests of `bayhand-job`.
#[path = "../../src-tauri/crates/job/tests/common/mod.rs"]
mod common;

use bayhand_job::ask::{Ask, Wish};
use bayhand_job::view::{Screen, StepBody};
use common::{Bay, who};
use std::collections::BTreeMap;
use std::fmt::Write as _;

#[tokio::test]
async fn the_whole_job_of_seed_1() {
    let mut bay = Bay::practice(1).await;
    let mut story = String::new();
    let people: Vec<_> = bay.view.people.iter().map(|p| p.label.as_str()).collect();
    writeln!(story, "{}\nSigned on: {}", bay.view.job.as_ref().unwrap().title, people.join("; ")).unwrap();
    while !bay.step().seal_in_review {
        let body = bay.step().clone();
        tell(&mut story, &body, &bay.entries());
        bay.do_step().await;
        if let Some(gate) = bay.step().gate.as_ref().filter(|_| bay.step().id == body.id) {
            writeln!(story, "  Gate: {}", gate.says).unwrap();
        }
    }
    let body = bay.step().clone();
    tell(&mut story, &body, &BTreeMap::new());
    let ask = Ask { revision: bay.view.revision, by: "MT".into(), wish: Wish::Seal };
    bay.desk.review_act(bay.job(), ask).await.unwrap();
    let Screen::Ended { says } = bay.desk.step_view().await.screen else { panic!("a sealed job has ended") };
    writeln!(story, "\nMT seals. {says}").unwrap();
    insta::assert_snapshot!(story);
}

/// One step, as the window shows it and as it is entered.
fn tell(story: &mut String, body: &StepBody, entries: &BTreeMap<String, bayhand_job::ask::Entry>) {
    writeln!(story, "\n{} [{}]\n{}", body.count, body.id, body.instruction).unwrap();
    if let Some(because) = &body.because {
        writeln!(story, "  {because}").unwrap();
    }
    for hazard in &body.hazards {
        writeln!(story, "  {}: {}", hazard.word, hazard.line).unwrap();
    }
    if let Some(turn) = &body.turn {
        writeln!(story, "  {}. {}", turn.car_does, turn.collar_does).unwrap();
    }
    if let Some(line) = &body.line {
        writeln!(story, "  {}", line.says).unwrap();
    }
    for figure in &body.figures {
        let left = figure.left.as_deref().unwrap_or("-");
        let verdict = figure.verdict_word.as_deref().unwrap_or_default();
        writeln!(story, "{}", format!("  {}: {left} {verdict}", figure.name).trim_end()).unwrap();
    }
    for field in &body.fields {
        let Some(entry) = entries.get(&field.key) else { continue };
        let unit = entry.unit.as_deref().unwrap_or_default();
        let told = format!("  {} > {}: {} {unit}", who(&body.id), field.label, entry.text);
        writeln!(story, "{}", told.trim_end()).unwrap();
    }
}
