//! A person who does what a gate tells of finds what is wrong and mends it; the coach says afterwards what it was.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::{PracticeAsk, Wish};
use bayhand_job::coach::coach;
use bayhand_job::log::Log;
use bayhand_job::view::CoachView;
use bayhand_jobbook::{Book, JobId};
use bayhand_practice::Fault;
use common::Bay;

fn car(faults: &[Fault]) -> PracticeAsk {
    PracticeAsk { seed: 1, faults: faults.to_vec(), drawn: 0, scenario: None }
}

/// Stops the job, makes the car safe, and asks the coach.
async fn coached(bay: &mut Bay) -> CoachView {
    let job = bay.job();
    let early = bay.desk.coach(job).await.unwrap_err();
    assert_eq!(early.code, "coach-not-yet", "whoever is at work is told nothing: {}", early.says);
    bay.ask("MT", Wish::Stop { reason: "the practice ends here".into() }).await.unwrap();
    for _ in 0..60 {
        match bay.desk.coach(job).await {
            Ok(view) => return view,
            Err(_) => bay.do_step().await,
        }
    }
    panic!("the car is made safe in sixty steps; it stands at {}", bay.step().id);
}

/// The step at hand is held; what its gate says.
async fn held(bay: &mut Bay) -> String {
    let step = bay.step().id.clone();
    bay.do_step().await;
    assert_eq!(bay.step().id, step, "a gate holds it");
    bay.step().gate.clone().unwrap().says
}

/// A gate names the pad; the person opens the zeroing again, does it, and the next reading fits.
#[tokio::test]
async fn a_zero_that_a_gate_told_of_is_put_right() {
    let mut bay = Bay::practice_on(car(&[Fault::PadZero])).await;
    bay.lead_to("loop.read-1").await;
    let says = held(&mut bay).await;
    assert!(says.contains("pad at front right"), "{says}");
    bay.ask("LB", Wish::Reopen { step: "pads.zero".into(), reason: "the zero has moved".into() }).await.unwrap();
    bay.lead_to("loop.read-1").await;
    bay.do_step().await;
    assert_ne!(bay.step().id, "loop.read-1", "the reading fits now");
    let view = coached(&mut bay).await;
    assert_eq!(view.wrong.len(), 1, "{view:#?}");
    assert!(view.wrong[0].title.contains("The pad at front right showed +2.0 kg"), "{view:#?}");
    assert_eq!(view.wrong[0].outcome, "held, and put right");
}

/// A gate that held for something wrong and was let pass takes more than one that is let pass on a sound car.
#[tokio::test]
async fn what_was_let_pass_though_wrong_is_told() {
    let mut bay = Bay::practice_on(car(&[Fault::BallastSlides])).await;
    bay.lead_to("loop.read-1").await;
    held(&mut bay).await;
    let step = bay.step().id.clone();
    bay.ask("MT", Wish::Waive { step, reason: "it looks right to me".into() }).await.unwrap();
    let view = coached(&mut bay).await;
    assert_eq!(view.wrong[0].outcome, "held, and let pass", "{view:#?}");
    assert_eq!(view.points, "85 of 100", "{view:#?}");
}

/// What is typed other than the papers show is a slip, with what it looks like; the car itself was sound.
#[tokio::test]
async fn a_slip_of_the_pen_is_told() {
    let mut bay = Bay::practice_on(car(&[])).await;
    bay.lead_to("intake.pressures").await;
    let mut entries = bay.entries();
    let key = entries.keys().find(|key| key.starts_with("working") && key.ends_with(".FL")).unwrap().clone();
    entries.get_mut(&key).unwrap().text = "2.90".into();
    bay.acknowledge("LB").await;
    bay.record(entries).await.unwrap();
    let view = coached(&mut bay).await;
    assert!(view.wrong.is_empty(), "{view:#?}");
    assert_eq!(view.slips.len(), 1, "{view:#?}");
    assert!(view.slips[0].text[0].contains("written 2.90"), "{view:#?}");
}

/// C: pads that are zeroed again make every load read before void; that was time for nothing, and counts.
#[tokio::test]
async fn readings_that_become_void_are_counted() {
    let mut bay = Bay::practice_on(car(&[])).await;
    bay.lead_to("baseline.read-3").await;
    bay.ask("LB", Wish::Reopen { step: "pads.zero".into(), reason: "warmed up since".into() }).await.unwrap();
    let view = coached(&mut bay).await;
    let voided = view.score.iter().find(|row| row.name.starts_with("Readings voided")).unwrap();
    assert_eq!((voided.text.as_str(), voided.taken.as_str()), ("2", "−4"), "{view:#?}");
}

/// At a real car nobody knows the hidden truth, and the coach has nothing to say.
#[tokio::test]
async fn a_real_car_has_no_coach() {
    let mut bay = Bay::practice_on(car(&[Fault::PadZero])).await;
    bay.do_step().await;
    let entries = Book::open_read_only(&bay.book).await.unwrap().entries(JobId(bay.job())).await.unwrap();
    let mut log = Log::read(bay.job(), &entries).unwrap();
    assert!(coach(&log).is_some(), "a simulated car");
    log.opened.practice = None;
    assert_eq!(coach(&log), None, "a real one");
}
