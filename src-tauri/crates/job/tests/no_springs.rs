//! A car of whose springs nothing is known is set all the same: the person says what it is sprung like, the first plan is
//! more of a guess and is said to be, and the rounds teach what the springs do.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::Entry;
use bayhand_job::view::{FieldKind, StepBody};
use common::{Bay, entry};
use std::collections::BTreeMap;

/// The job of seed 3 at its first judgement, with this said of the springs; what is not asked beside it is not entered.
async fn judged_with(said: &str) -> (Bay, StepBody) {
    let mut bay = Bay::practice_at(3, "intake.springs").await;
    let mut entries: BTreeMap<String, Entry> = bay.entries();
    let way = match said {
        "springs-known" => "ratio-spring-per-wheel",
        "rate-known" => "rate-known",
        like => {
            entries.insert("sprung-like".into(), entry(like, None));
            "springs-unknown"
        }
    };
    entries.insert("ratio-way".into(), entry(way, None));
    let unknown = |key: &str| match way {
        "rate-known" => key.starts_with("motion-ratio"),
        "springs-unknown" => key.starts_with("spring.") || key.starts_with("motion-ratio"),
        _ => false,
    };
    entries.retain(|key, _| !unknown(key));
    bay.record(entries).await.unwrap();
    bay.lead_to("loop.judge").await;
    let body = bay.step().clone();
    (bay, body)
}

/// Why the cross weight would be turned for at the first judgement, as the window says it.
fn why(body: &StepBody) -> &str {
    let options = body.fields.iter().find_map(|field| match &field.kind {
        FieldKind::Choice { options } => options.iter().find(|option| option.code == "turn-cross"),
        _ => None,
    });
    &options.unwrap().outlook.as_ref().unwrap().why
}

/// The chance that the plan brings everything inside, percent: 'lifts the chance that ... from 4 % to 78 %'.
fn chance_pct(why: &str) -> f64 {
    let (_, to) = why.split_once(" % to ").unwrap_or_else(|| panic!("a chance is told: {why}"));
    to.split_once(' ').unwrap().0.parse().unwrap()
}

/// R: what is less known promises less; 10 % of a spring is less than a span of ride frequencies.
#[tokio::test]
async fn the_less_is_known_of_the_springs_the_less_the_first_plan_promises() {
    let mut chances = Vec::new();
    for said in ["springs-known", "rate-known", "like-track", "like-any"] {
        let (_, body) = judged_with(said).await;
        let why = why(&body);
        assert_eq!(why.contains("assumed"), said != "springs-known", "{said}: a guess is called one: {why}");
        chances.push(chance_pct(why));
    }
    println!("{chances:?} %");
    assert!(chances.is_sorted_by(|more, less| more >= less), "from everything to nothing known: {chances:?}");
    assert!(chances[0] > chances[3], "and not all alike");
}

/// The whole job comes to its seal with nothing known of the springs.
#[tokio::test]
async fn a_car_without_any_spring_data_is_set_to_its_seal() {
    let (mut bay, _) = judged_with("like-track").await;
    bay.lead_to("review.seal").await;
}
