//! What is said aloud at the car: hazards before all else and to their end, one instruction, what to turn one corner at a
//! time, waits, what was read.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::Wish;
use bayhand_job::preferences::{Preferences, Speech, Units};
use bayhand_job::spoken::Spoken;
use bayhand_job::view::{Screen, StepView, VerdictCode};
use bayhand_job::{Lack, Missing};
use bayhand_measure::Unit;
use common::Bay;
use std::collections::BTreeMap;

/// What is said to RO of the view at hand.
fn said(bay: &Bay) -> Vec<Spoken> {
    bay.desk.to_say("RO", &bay.view).lines
}

fn words(lines: &[Spoken]) -> String {
    lines.iter().map(|line| line.words.as_str()).collect::<Vec<_>>().join(" ")
}

#[tokio::test]
async fn hazards_are_said_first_and_alone_then_the_instruction() {
    let mut bay = Bay::practice_at(1, "raise.check").await;
    let open = said(&bay);
    assert_eq!(open.len(), 2, "each hazard of the step, and nothing else before they are acknowledged: {open:?}");
    assert!(open.iter().all(|line| line.hazard), "a hazard is said to its end");
    assert_eq!(open[0].words, "DANGER. Keep out until it is locked.");
    bay.acknowledge("RO").await;
    let line = said(&bay);
    assert!(line.len() == 1 && !line[0].hazard, "{line:?}");
    assert!(line[0].words.contains(&bay.step().instruction), "{line:?}");
    assert_eq!(said(&bay), [], "the same view says nothing more");
    assert_eq!(bay.desk.to_say_again("RO", &bay.view).lines, line, "unless it is asked for");
}

#[tokio::test]
async fn turns_are_said_one_corner_at_a_time() {
    let mut bay = Bay::practice_at(1, "loop.turn-FL").await;
    bay.acknowledge("RO").await;
    let says = words(&said(&bay));
    let turn = bay.step().turn.clone().unwrap();
    assert!(says.contains(&turn.car_does) && says.contains(&turn.collar_does), "{says}");
    assert!(!says.contains("front right"), "no other corner: {says}");
}

#[tokio::test]
async fn angles_that_are_not_inside_are_said_and_each_adjuster_that_is_turned() {
    let mut bay = Bay::practice_at(1, "align.judge").await;
    let says = words(&said(&bay));
    for row in &bay.step().angles.as_ref().unwrap().rows {
        let inside = row.verdict == VerdictCode::Inside;
        assert_eq!(says.contains(&format!("{}: {}.", row.name, row.verdict_word)), !inside, "{}: {says}", row.id);
    }
    bay.lead_to("align.change-front").await;
    bay.acknowledge("RO").await;
    let says = words(&said(&bay));
    let (turned, still): (Vec<_>, Vec<_>) = bay.step().adjusters.iter().partition(|adjuster| !adjuster.still);
    assert!(!turned.is_empty(), "something is to be turned at the front axle of this car");
    assert!(turned.iter().all(|adjuster| says.contains(&adjuster.said)), "{says}");
    assert!(still.iter().all(|adjuster| !says.contains(&adjuster.name)), "what stays as it is is not said: {says}");
    assert!(says.contains("of a turn, ") && !says.contains("0.083"), "turns as they are counted at a nut: {says}");
}

#[tokio::test]
async fn a_wait_is_said_and_so_is_its_end() {
    let mut bay = Bay::practice_at(1, "settle.wait").await;
    let to_say = bay.desk.to_say("RO", &bay.view);
    assert!(words(&to_say.lines).contains("Let the car rest: "), "{to_say:?}");
    let seconds = bay.step().timer.clone().unwrap().seconds;
    let (after_ms, over) = to_say.later.unwrap();
    assert!(after_ms <= u64::from(seconds) * 1000, "{after_ms} ms of {seconds} s");
    assert_eq!(over, Spoken::plain("The wait is over."));
    bay.clock.pass(seconds);
    assert_eq!(bay.desk.to_say_again("RO", &bay.view).later, None, "a wait that is over needs no end");
    bay.ask("RO", Wish::Hold { reason: "lunch".into() }).await.unwrap();
    assert!(words(&said(&bay)).contains("On hold since"), "a hold is said");
}

#[tokio::test]
async fn what_was_read_is_said_with_its_corner_look_by_look() {
    let bay = Bay::practice_at(1, "baseline.read-1").await;
    let mut entries = bay.entries();
    entries.get_mut("loads.FL").unwrap().text = "221.4 221.5 221.50".into();
    let read = bay.desk.read_back("RO", "baseline.read-1", entries).await.unwrap();
    let says = bay.desk.to_say_back("RO", &read).unwrap().words;
    assert!(says.contains("Load, front left: 221.40, 221.50, 221.50 kg."), "{says}");
    assert!(says.contains("Ride height, rear right: "), "{says}");
}

#[tokio::test]
async fn a_gate_that_holds_says_what_it_found_once() {
    let mut bay = Bay::practice_at(1, "used.pressures").await;
    said(&bay);
    let mut entries = bay.entries();
    entries.get_mut("pressures.RL").unwrap().text = "1.00".into();
    bay.record(entries.clone()).await.unwrap();
    let found = said(&bay);
    assert_eq!(words(&found), bay.step().gate.clone().unwrap().says);
    let units = Units { pressure: Unit::Psi, ..Units::default() };
    bay.desk.set(Preferences { units, ..Preferences::default() }).unwrap();
    bay.view = bay.desk.step_view().await;
    assert_eq!(said(&bay), [], "another unit is nothing new");
}

#[tokio::test]
async fn each_is_spoken_to_in_their_own_way_or_not_at_all() {
    let bay = Bay::practice_at(1, "used.kit").await;
    let quiet = Speech { say: false, ..Speech::default() };
    let preferences = Preferences {
        language: "de".into(),
        speech_of: BTreeMap::from([("LB".to_owned(), quiet)]),
        ..Preferences::default()
    };
    bay.desk.set(preferences).unwrap();
    let view: StepView = bay.desk.step_view_for("LB").await;
    let Screen::Step(body) = &view.screen else { panic!("a step is at hand: {view:?}") };
    assert_eq!(bay.desk.to_say("LB", &view).lines, [], "LB chose silence");
    let says = words(&bay.desk.to_say_again("RO", &view).lines);
    assert!(says.contains(&body.instruction), "German, for it is shown in German: {says}");
}

#[tokio::test]
async fn what_is_missing_for_speech_is_told_once_and_the_job_goes_on() {
    let mut bay = Bay::practice(1).await;
    assert_eq!(bay.view.notice, None, "nothing is missing yet");
    let missing = || Missing::Voice(Lack::Program("espeak-ng".into()));
    assert!(bay.desk.miss(missing()), "the first time");
    assert!(!bay.desk.miss(missing()), "and never again");
    let entries = bay.entries();
    bay.record(entries).await.unwrap();
    let notice = bay.view.notice.clone().unwrap();
    assert!(notice.contains("espeak-ng: not on this computer") && notice.contains("the job goes on"), "{notice}");
}
