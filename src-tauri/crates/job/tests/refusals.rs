//! What may not be asked, or not now, or not by this person: each refused in words with its code, and nothing recorded.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::{Ask, PracticeAsk, Wish};
use bayhand_job::view::Screen;
use common::{Bay, assert_refusal, sign_on};
use std::collections::BTreeMap;

fn acknowledge(step: &str, hazard: &str) -> Wish {
    Wish::Acknowledge { step: step.into(), hazard: hazard.into() }
}

fn waive(step: &str, reason: &str) -> Wish {
    Wish::Waive { step: step.into(), reason: reason.into() }
}

fn reopen(step: &str, reason: &str) -> Wish {
    Wish::Reopen { step: step.into(), reason: reason.into() }
}

fn nothing_entered(step: &str) -> Wish {
    Wish::Record { step: step.into(), entries: BTreeMap::new() }
}

#[tokio::test]
async fn steps_out_of_order() {
    let mut bay = Bay::practice(2).await;
    let entries = bay.entries();
    bay.refused("RO", nothing_entered("loop.dance"), "no-such-step", &["loop.dance"]).await;
    bay.refused("RO", nothing_entered("walk.tyres"), "not-now", &["The step at hand"]).await;
    bay.record(entries.clone()).await.unwrap();
    let again = Wish::Record { step: "intake.car".into(), entries };
    bay.refused("RO", again, "not-now", &["is not the step at hand"]).await;
}

#[tokio::test]
async fn a_window_that_shows_an_older_job_is_told_so() {
    let mut bay = Bay::practice(2).await;
    let old = Ask {
        revision: bay.view.revision,
        by: "RO".into(),
        wish: Wish::Record { step: "intake.car".into(), entries: bay.entries() },
    };
    bay.desk.act(old.clone()).await.unwrap();
    let length = bay.recorded().await;
    for revision in [old.revision, old.revision + 7, 0] {
        let refused = bay.desk.act(Ask { revision, ..old.clone() }).await.unwrap_err();
        assert_refusal(&refused, &format!("revision {revision}"), "stale", &["Nothing was recorded", "again"]);
    }
    assert_eq!(bay.recorded().await, length, "a doubled press records once");
    bay.view = bay.desk.step_view().await;
    bay.do_step().await;
}

#[tokio::test]
async fn hazards_are_acknowledged_one_by_one() {
    let mut bay = Bay::practice_at(2, "walk.leaks").await;
    let entries = bay.entries();
    let record = Wish::Record { step: "walk.leaks".into(), entries };
    bay.refused("RO", record.clone(), "hazard-open", &["acknowledge the hazard first"]).await;
    bay.refused("RO", acknowledge("walk.leaks", "dragons"), "no-such-hazard", &["dragons"]).await;
    bay.refused("XX", acknowledge("walk.leaks", "fuel-fire"), "not-signed-on", &["XX"]).await;
    bay.ask("RO", acknowledge("walk.leaks", "fuel-fire")).await.unwrap();
    bay.refused("RO", acknowledge("walk.leaks", "fuel-fire"), "already-acknowledged", &[]).await;
    bay.refused("RO", record, "hazard-open", &[]).await;
    bay.do_step().await;
    bay.refused("RO", acknowledge("walk.leaks", "hot-parts"), "not-now", &[]).await;
}

#[tokio::test]
async fn a_wait_is_waited_for() {
    let mut bay = Bay::practice_at(2, "settle.wait").await;
    bay.acknowledge("RO").await;
    bay.refused("RO", nothing_entered("settle.wait"), "wait", &["left"]).await;
    bay.do_step().await;
}

#[tokio::test]
async fn who_may_waive_what() {
    let mut bay = Bay::practice_at(2, "walk.tyres").await;
    bay.refused("MT", waive("walk.tyres", "seen"), "nothing-to-waive", &[]).await;
    bay.refused("MT", waive("walk.moon", "seen"), "no-such-step", &[]).await;
    let mut entries = bay.entries();
    entries.get_mut("tyres-match").unwrap().text = "no".into();
    bay.ask("LB", Wish::Record { step: "walk.tyres".into(), entries: entries.clone() }).await.unwrap();
    assert!(bay.step().gate.is_some(), "a tyre that was found wrong holds the job");
    bay.refused("XX", waive("walk.tyres", "seen"), "not-signed-on", &["XX"]).await;
    bay.refused("LB", waive("walk.tyres", "seen"), "rank", &["LB", "technician", "supervisor"]).await;
    bay.refused("MT", waive("walk.tyres", "  "), "no-reason", &["reason"]).await;
    bay.ask("MT", Wish::Record { step: "walk.tyres".into(), entries }).await.unwrap();
    bay.refused("MT", waive("walk.tyres", "seen"), "at-work", &["MT", "somebody else"]).await;
    bay.ask("", sign_on("KS", "Kim Stone", "supervisor")).await.unwrap();
    bay.ask("KS", waive("walk.tyres", "the customer knows")).await.unwrap();
    assert_ne!(bay.step().id, "walk.tyres", "waived by somebody who was not at work on it");

    bay.lead_to("walk.leaks").await;
    bay.acknowledge("RO").await;
    let mut entries = bay.entries();
    entries.get_mut("no-leaks").unwrap().text = "no".into();
    bay.record(entries).await.unwrap();
    bay.refused("KS", waive("walk.leaks", "it will do"), "not-waivable", &[]).await;
}

#[tokio::test]
async fn who_may_seal() {
    let mut bay = Bay::practice_at(2, "review.seal").await;
    let job = bay.job();
    bay.refused("MT", Wish::Seal, "seal-in-review", &["review window"]).await;
    bay.refused("MT", nothing_entered("review.seal"), "by-seal-only", &["review window"]).await;
    let length = bay.recorded().await;
    bay.ask("", sign_on("KS", "Kim Stone", "supervisor")).await.unwrap();
    for (by, code) in [("XX", "not-signed-on"), ("RO", "rank"), ("LB", "rank")] {
        let ask = Ask { revision: bay.view.revision, by: by.into(), wish: Wish::Seal };
        let refused = bay.desk.review_act(job, ask).await.unwrap_err();
        assert_refusal(&refused, by, code, &[by]);
    }
    assert_eq!(bay.recorded().await, length + 1, "only the sign-on is recorded");
    let ask = Ask { revision: bay.view.revision, by: "KS".into(), wish: Wish::Seal };
    bay.desk.review_act(job, ask).await.unwrap();
    bay.view = bay.desk.step_view().await;
    assert!(matches!(bay.view.screen, Screen::Ended { .. }), "sealed");
    bay.refused("KS", Wish::Hold { reason: "too late".into() }, "ended", &[]).await;
    bay.refused("KS", sign_on("ZZ", "Zoe Zell", "trainee"), "ended", &[]).await;
}

#[tokio::test]
async fn a_supervisor_who_worked_does_not_seal() {
    let mut bay = Bay::practice(2).await;
    let first = Wish::Record { step: "intake.car".into(), entries: bay.entries() };
    bay.ask("MT", first).await.unwrap();
    let ask = Ask { revision: bay.view.revision, by: "MT".into(), wish: Wish::Seal };
    let refused = bay.desk.review_act(bay.job(), ask).await.unwrap_err();
    assert_refusal(&refused, "half-way", "not-ready", &["To do first"]);
    bay.lead_to("review.seal").await;
    let length = bay.recorded().await;
    let ask = Ask { revision: bay.view.revision, by: "MT".into(), wish: Wish::Seal };
    let refused = bay.desk.review_act(bay.job(), ask).await.unwrap_err();
    assert_refusal(&refused, "worked", "worked", &["MT", "did not"]);
    assert_eq!(bay.recorded().await, length, "nothing is recorded");
}

#[tokio::test]
async fn people_sign_on_with_what_can_be_told_apart() {
    let mut bay = Bay::practice(2).await;
    bay.refused("", sign_on("ro", "Rose Ott", "trainee"), "already-signed-on", &["RO"]).await;
    bay.refused("", sign_on("", "Rose Ott", "trainee"), "initials", &["one to four letters"]).await;
    bay.refused("", sign_on("ROSES", "Rose Ott", "trainee"), "initials", &["ROSES"]).await;
    bay.refused("", sign_on("R2", "Rose Ott", "trainee"), "initials", &["R2"]).await;
    let refused = bay.refused("", sign_on("RS", " ", "trainee"), "name", &["name"]).await;
    assert_eq!(refused.field.as_deref(), Some("name"));
    let refused = bay.refused("", sign_on("RS", "Rose Ott", "boss"), "rank-unknown", &["trainee, technician"]).await;
    assert_eq!(refused.field.as_deref(), Some("rank"));
    let record = Wish::Record { step: "intake.car".into(), entries: bay.entries() };
    bay.refused("XX", record.clone(), "not-signed-on", &["XX", "Sign on first"]).await;
    bay.refused("", record, "not-signed-on", &[]).await;
}

#[tokio::test]
async fn hold_reopen_and_stop_need_their_time_and_reason() {
    let mut bay = Bay::practice_at(2, "intake.bars").await;
    bay.refused("RO", Wish::Hold { reason: " ".into() }, "no-reason", &[]).await;
    bay.refused("RO", Wish::Stop { reason: "".into() }, "no-reason", &[]).await;
    bay.refused("RO", Wish::Resume {}, "not-on-hold", &[]).await;
    bay.refused("RO", reopen("walk.tyres", "look again"), "not-done", &[]).await;
    bay.refused("RO", reopen("intake.moon", "look again"), "no-such-step", &["intake.moon"]).await;
    bay.refused("RO", reopen("intake.car", ""), "no-reason", &[]).await;
    let record = Wish::Record { step: "intake.bars".into(), entries: bay.entries() };
    bay.ask("RO", Wish::Hold { reason: "lunch".into() }).await.unwrap();
    bay.refused("RO", record, "on-hold", &["Go on with it first"]).await;
    bay.ask("LB", Wish::Resume).await.unwrap();
    bay.ask("RO", Wish::Stop { reason: "the customer wants it back".into() }).await.unwrap();
    bay.refused("RO", Wish::Stop { reason: "again".into() }, "stopping", &[]).await;
    bay.refused("RO", reopen("intake.car", "look again"), "stopping", &[]).await;
}

#[tokio::test]
async fn jobs_are_begun_and_taken_up_one_at_a_time() {
    let mut bay = Bay::empty().await;
    let begin = |car: &str| Wish::Begin { car: car.into(), practice: Some(PracticeAsk::sound(2)) };
    for wish in [Wish::SetAside, Wish::Resume, sign_on("RO", "Robin Oakes", "trainee"), nothing_entered("intake.car")] {
        bay.refused("RO", wish, "no-job", &["No job is open"]).await;
    }
    bay.refused("", Wish::TakeUp { job: 9 }, "book-no-job", &["no job 9"]).await;
    for car in ["", "   ", &"x".repeat(61)] {
        let refused = bay.refused("", begin(car), "car-name", &["60"]).await;
        assert_eq!(refused.field.as_deref(), Some("car"));
    }
    bay.ask("", begin(&"x".repeat(60))).await.unwrap();
    bay.refused("", begin("another"), "job-open", &["Set it aside first"]).await;
    bay.refused("", Wish::TakeUp { job: 1 }, "job-open", &[]).await;
    let seal = Ask { revision: 1, by: "MT".into(), wish: Wish::Seal };
    assert_refusal(&bay.desk.review_act(9, seal.clone()).await.unwrap_err(), "seal job 9", "book-no-job", &["9"]);
    assert_refusal(&bay.desk.review_view(Some(9)).await.unwrap_err(), "look at job 9", "book-no-job", &["9"]);
    assert_refusal(&bay.desk.verify(9).await.unwrap_err(), "verify job 9", "book-no-job", &["9"]);
    assert_refusal(&bay.desk.handover(9).await.unwrap_err(), "sheet of job 9", "book-no-job", &["9"]);
    assert_refusal(&bay.desk.handover(1).await.unwrap_err(), "sheet of an open job", "no-sheet", &["sealed"]);
    let hold = Ask { wish: Wish::Hold { reason: "rain".into() }, ..seal };
    assert_refusal(&bay.desk.review_act(1, hold).await.unwrap_err(), "hold at the desk", "review-only", &[]);
}

/// What a window sends is read strictly: an unknown key or kind is no wish.
#[test]
fn an_unknown_wish_is_none() {
    let check = |text: &str, says: &str| {
        let error = serde_json::from_str::<Ask>(text).expect_err(text).to_string();
        assert!(error.contains(says), "{text}: {error}");
    };
    check(r#"{"revision":1,"by":"RO","wish":{"kind":"explode"}}"#, "unknown variant `explode`");
    check(r#"{"revision":1,"by":"RO","wish":{"kind":"hold","reason":"x","until":"noon"}}"#, "unknown field `until`");
    check(r#"{"revision":-1,"by":"RO","wish":{"kind":"resume"}}"#, "-1");
    check(r#"{"by":"RO","wish":{"kind":"resume"}}"#, "missing field `revision`");
}
