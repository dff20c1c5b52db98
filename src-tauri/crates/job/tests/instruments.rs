//! The instruments of the book: told apart, due or not, checked, and where they were used.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::{PracticeAsk, Wish};
use bayhand_job::view::{DueCode, InstrumentView};
use common::{Bay, entry, sign_on};

const DAY_S: u32 = 24 * 3600;

async fn instruments(bay: &Bay) -> Vec<InstrumentView> {
    bay.desk.instruments().await.unwrap().instruments
}

fn of<'i>(all: &'i [InstrumentView], kind: &str) -> &'i InstrumentView {
    all.iter().find(|one| one.id.starts_with(kind)).unwrap_or_else(|| panic!("{kind} is among {all:#?}"))
}

#[tokio::test]
async fn a_new_book_says_where_instruments_come_from() {
    let bay = Bay::empty().await;
    let view = bay.desk.instruments().await.unwrap();
    assert!(view.instruments.is_empty() && view.says.unwrap().contains("Intake asks"));
}

#[tokio::test]
async fn what_was_written_of_an_instrument_is_told_and_the_rest_is_not_recorded() {
    let mut bay = Bay::practice_at(1, "intake.place").await;
    assert!(instruments(&bay).await.is_empty(), "nothing is written yet");
    bay.lead_to("baseline.read-1").await;
    let job = bay.job();
    let all = instruments(&bay).await;
    let kinds: Vec<&str> = all.iter().map(|one| one.name.as_str()).collect();
    assert_eq!(all.len(), 5, "pads, laser and three gauges: {kinds:?}");

    let pads = of(&all, "pads");
    let labels: Vec<&str> = pads.stated.iter().map(|one| one.label.as_str()).collect();
    assert_eq!(labels, ["Pads, resolution", "Pads, zero kept over the job, ±", "Pads, calibration, ± of the load"]);
    assert!(pads.stated[0].text.ends_with(" kg"), "as entered, with its unit: {:?}", pads.stated);
    assert!(pads.calibrated.contains("Not recorded"), "no job asks for it: {}", pads.calibrated);
    assert_eq!(pads.due, DueCode::InDate, "the gate at intake asked for that: {}", pads.due_says);
    assert!(pads.checks[0].contains(&format!("job {job}")) && pads.checks[0].contains("RO"), "{:?}", pads.checks);
    assert_eq!(pads.jobs.iter().map(|row| row.id).collect::<Vec<_>>(), [job]);

    // The two set-ups as they stand in the record, read past the desk.
    let mut apart_mm = None;
    for number in 1..=bay.recorded().await as usize {
        let body = bay.body_of(number).await;
        let happened = &body["what"]["happened"];
        if happened["event"]["step"] == "pads.level" && happened["event"]["event"] == "done" {
            let of = |set_up: &str, corner: &str| -> f64 {
                happened["seen"]["used"][format!("{set_up}.{corner}")][0].as_str().unwrap().parse().unwrap()
            };
            let apart = ["FL", "FR", "RL", "RR"].map(|corner| (of("set-up-1", corner) - of("set-up-2", corner)).abs());
            apart_mm = Some(apart.into_iter().fold(0.0, f64::max));
        }
    }
    let wanted = format!("at most {:.2} mm apart", apart_mm.unwrap());
    let laser = of(&all, "laser");
    assert!(laser.checks[0].contains(&wanted), "{wanted}: {:?}", laser.checks);
    for kind in ["height-gauge", "pressure-gauge"] {
        let one = of(&all, kind);
        assert!(one.stated.is_empty(), "no step asks how well it measures");
        assert!(one.checks[0].contains("Not recorded"), "{:?}", one.checks);
    }
}

#[tokio::test]
async fn an_instrument_is_overdue_after_its_day_and_stands_first_then() {
    let mut bay = Bay::practice_at(1, "intake.pads").await;
    let mut entries = bay.entries();
    // The job begins on 2 March 2026.
    entries.insert("pads-due".into(), entry("2026-03-20", None));
    bay.record(entries).await.unwrap();
    bay.lead_to("intake.angle-instruments").await;
    let due = |all: &[InstrumentView]| (of(all, "pads").due, of(all, "pads").due_says.clone());
    let before = instruments(&bay).await;
    assert_eq!(due(&before).0, DueCode::InDate, "{}", due(&before).1);
    assert!(due(&before).1.contains("days left: 18"), "{}", due(&before).1);
    bay.clock.pass(18 * DAY_S);
    assert_eq!(due(&instruments(&bay).await).0, DueCode::InDate, "to the end of its day");
    bay.clock.pass(DAY_S);
    let after = instruments(&bay).await;
    assert_eq!(due(&after).0, DueCode::Overdue, "{}", due(&after).1);
    assert!(due(&after).1.contains("2026-03-20 (days past: 1)"), "{}", due(&after).1);
    assert!(after[0].id.starts_with("pads"), "what is overdue is seen first: {:?}", after[0].id);
}

#[tokio::test]
async fn one_instrument_in_two_jobs_is_one_and_another_serial_is_another() {
    let mut bay = Bay::practice_at(1, "intake.instruments").await;
    let first = bay.job();
    bay.ask("", Wish::SetAside).await.unwrap();
    bay.ask("", Wish::Begin { car: "Another".into(), practice: Some(PracticeAsk::sound(1)) }).await.unwrap();
    for (initials, rank) in [("RO", "trainee"), ("LB", "technician"), ("MT", "supervisor")] {
        bay.ask("", sign_on(initials, "Somebody", rank)).await.unwrap();
    }
    let second = bay.job();
    bay.lead_to("intake.pads").await;
    let (kept, mut other) = (bay.entries(), bay.entries());
    other.insert("pads-id".into(), entry("another set", None));
    bay.record(other).await.unwrap();
    let jobs = |all: &[InstrumentView]| -> Vec<Vec<i64>> {
        all.iter().filter(|one| one.id.starts_with("pads")).map(|one| one.jobs.iter().map(|j| j.id).collect()).collect()
    };
    let mut apart = jobs(&instruments(&bay).await);
    apart.sort();
    assert_eq!(apart, [vec![first], vec![second]], "two sets of pads");
    bay.ask("MT", Wish::Reopen { step: "intake.pads".into(), reason: "the wrong set was written".into() })
        .await
        .unwrap();
    bay.record(kept).await.unwrap();
    assert_eq!(jobs(&instruments(&bay).await), [vec![second, first]], "one set in two jobs, the newest first");
}
