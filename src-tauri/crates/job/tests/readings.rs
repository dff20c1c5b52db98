//! What the job says of its readings: how sure they are and why, whether they fit together, and what a bar's link holds.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::{Ask, Entry, PracticeAsk, Wish};
use common::Bay;
use std::collections::BTreeMap;

/// What the gates of the newest try found, and what was said.
async fn tried(bay: &mut Bay, entries: BTreeMap<String, Entry>) -> String {
    let step = bay.step().id.clone();
    bay.acknowledge(common::who(&step)).await;
    bay.record(entries).await.unwrap();
    assert_eq!(bay.step().id, step, "the step stays at hand");
    bay.step().gate.clone().unwrap_or_else(|| panic!("{step}: its gate holds it")).says
}

/// C: both ways of writing a motion ratio are in use; hardly any spring moves more than its wheel.
#[tokio::test]
async fn a_ratio_that_is_probably_upside_down_is_asked_back() {
    let mut bay = Bay::practice_at(2, "intake.springs").await;
    let with = |bay: &Bay, way: &str, ratio: &str| {
        let mut entries = bay.entries();
        entries.get_mut("ratio-way").unwrap().text = way.into();
        entries.get_mut("motion-ratio.front").unwrap().text = ratio.into();
        entries.get_mut("motion-ratio.rear").unwrap().text = ratio.into();
        entries
    };
    let asked = with(&bay, "ratio-spring-per-wheel", "1.25");
    let says = tried(&mut bay, asked).await;
    for words in ["front 1.25", "more than its wheel", "ratio wheel / spring"] {
        assert!(says.contains(words), "{words:?} is said: {says}");
    }
    let meant = with(&bay, "ratio-wheel-per-spring", "1.25");
    bay.record(meant).await.unwrap();
    assert_ne!(bay.step().id, "intake.springs", "1.25 wheel over spring is 0.8, and is taken");
    let mut bay = Bay::practice_at(2, "intake.springs").await;
    let insisted = with(&bay, "ratio-above-one", "1.25");
    bay.record(insisted).await.unwrap();
    assert_ne!(bay.step().id, "intake.springs", "who says that it is meant so is believed");
}

/// R: a zero kept within ± 2 kg (k = 2) at each of four pads leaves about ± 4 kg on a difference of two axles' loads and
/// ± 0.2 % of 1000 kg on the cross weight, however often it is read: no window of 0.1 % can be judged with it.
#[tokio::test]
async fn instruments_that_can_never_judge_a_window_are_told_at_intake() {
    let mut bay = Bay::practice_at(2, "intake.pads").await;
    let mut entries = bay.entries();
    entries.get_mut("pads-zero").unwrap().text = "5".into();
    bay.record(entries).await.unwrap();
    let entries = bay.entries();
    let says = tried(&mut bay, entries).await;
    for words in ["Cross weight", "However often it is read", "the pads' zero", "wider window"] {
        assert!(says.contains(words), "{words:?} is said: {says}");
    }
}

/// A reading with mass on one corner that was not there before is no effect of a collar. The person is told what it looks
/// like, decides, and gives a reason; what was let pass is the new state and is not asked again.
#[tokio::test]
async fn a_reading_that_does_not_fit_those_before_it_is_told_with_its_likely_cause() {
    let mut bay = Bay::practice_at(2, "baseline.read-2").await;
    let heavier = |bay: &Bay| {
        let mut entries = bay.entries();
        for look in ["loads.RL", "loads.RR"] {
            let entry = entries.get_mut(look).unwrap();
            let looks = entry.text.split(' ').map(|look| format!("{:.1}", look.parse::<f64>().unwrap() + 8.0));
            entry.text = looks.collect::<Vec<_>>().join(" ");
        }
        entries
    };
    let unlike = heavier(&bay);
    let says = tried(&mut bay, unlike.clone()).await;
    println!("{says}");
    for words in ["does not fit those before it", "Mass may have come or gone", "look for tools"] {
        assert!(says.contains(words), "{words:?} is said: {says}");
    }
    let step = bay.step().id.clone();
    bay.ask("LB", Wish::Waive { step, reason: "tools were left in the boot and stay there".into() }).await.unwrap();
    bay.lead_to("baseline.read-3").await;
    let again = heavier(&bay);
    let says = tried(&mut bay, again).await;
    assert!(!says.contains("does not fit"), "what was let pass is the new state: {says}");
    assert!(says.contains("The settles differ"), "but one set is not made of two states: {says}");
}

/// A sound reading fits, and its uncertainty says where it comes from.
#[tokio::test]
async fn a_judged_reading_says_what_its_uncertainty_is_made_of() {
    let bay = Bay::practice_at(2, "loop.judge").await;
    let cross = bay.step().figures.iter().find(|row| row.id == "cross_pct").unwrap();
    let made_of = cross.made_of.as_deref().unwrap();
    println!("{made_of}");
    assert!(made_of.contains("settles") && made_of.contains(" %"), "settles count most on slip plates: {made_of}");
    let height = bay.step().figures.iter().find(|row| row.id == "side_front_mm").unwrap();
    assert_eq!(height.made_of, None, "heights have no budget of loads");
}

/// The practice car's links come in with a preload that presses one wheel down, and go back on by hand: what the reading
/// says of it is kept with the step, passed or not.
#[tokio::test]
async fn connecting_a_link_says_what_preload_it_holds() {
    let mut bay = Bay::practice_at(2, "back.front").await;
    let mut entries = bay.entries();
    let turns = &mut entries.get_mut("link-turns").unwrap().text;
    // Four turns too many: the bolt would not have slid in by hand.
    *turns = format!("{:.2}", turns.parse::<f64>().unwrap() + 4.0);
    bay.acknowledge("RO").await;
    bay.record(entries).await.unwrap();
    bay.lead_to("back.front-read").await;
    let entries = bay.entries();
    let says = tried(&mut bay, entries).await;
    println!("{says}");
    for words in
        ["Something moved", "The front bar presses the left wheel down with +", "turns of its link take it out"]
    {
        assert!(says.contains(words), "{words:?} is said: {says}");
    }
    let told: f64 = says.split("About ").nth(1).unwrap().split(' ').next().unwrap().parse().unwrap();
    assert!((-5.5..=-2.5).contains(&told), "about four turns back: {told}");
}

/// What turning taught about the springs is kept, and used at the car's next visit with its age.
#[tokio::test]
async fn what_was_learned_of_a_car_is_used_at_its_next_visit() {
    let mut bay = Bay::practice_at(2, "review.seal").await;
    let ask = Ask { revision: bay.view.revision, by: "MT".into(), wish: Wish::Seal };
    bay.desk.review_act(bay.job(), ask).await.unwrap();
    bay.clock.pass(14 * 24 * 3600);
    bay.view = bay.desk.step_view().await;
    bay.ask("", Wish::SetAside).await.unwrap();
    let again = Wish::Begin { car: "Practice coupe 2".into(), practice: Some(PracticeAsk::sound(2)) };
    bay.ask("", again).await.unwrap();
    let opened = &bay.newest().await["what"]["opened"];
    assert_eq!(opened["known"]["on"], "2026-03-02", "with the day on which it was learned: {}", opened["known"]);
    for (initials, rank) in [("RO", "trainee"), ("LB", "technician"), ("MT", "supervisor")] {
        bay.ask("", common::sign_on(initials, initials, rank)).await.unwrap();
    }
    bay.lead_to("loop.judge").await;
    let why = bay.desk.preview("RO", 0.5).await.unwrap().why;
    println!("{why}");
    assert!(why.contains("learned on this car on 2026-03-02, 14 days before"), "its age is told: {why}");

    let other = Bay::practice(3).await;
    assert!(other.newest().await["what"]["opened"]["known"].is_null(), "another car knows nothing of it");
}

/// P: model.md's limits. Travel that is known at the agreed heights and must stay free keeps the plan from using it up, and
/// the answer names the limit.
#[tokio::test]
async fn a_plan_keeps_the_wheel_travel_that_was_asked_for() {
    let why_with = async |kept: &str| {
        let mut bay = Bay::practice_at(2, "intake.travel").await;
        let mut entries = bay.entries();
        entries.get_mut("bump-travel.front").unwrap().text = "40".into();
        entries.get_mut("bump-travel.rear").unwrap().text = "40".into();
        entries.get_mut("travel-kept").unwrap().text = kept.into();
        bay.record(entries).await.unwrap();
        bay.lead_to("loop.judge").await;
        bay.desk.preview("RO", 1.0).await.unwrap().why
    };
    let free = why_with("10").await;
    let tight = why_with("41").await;
    println!("{free}\n{tight}");
    assert!(!free.contains("bump stop"), "travel that is there limits nothing: {free}");
    assert!(tight.contains("bump stop"), "the limit is named: {tight}");
}

/// I: a beam with its springs as far apart as its wheels holds like springs at the wheels, one with a shorter base holds
/// less in roll; a body all but stiff passes every turn across, one that twists does not (model.md, Statics).
#[tokio::test]
async fn what_is_entered_of_beams_and_body_is_what_the_plan_computes_with() {
    let turns_with = async |changes: &[(&str, &str, Option<&str>)]| {
        let mut bay = Bay::practice_at(2, "intake.travel").await;
        let mut entries = bay.entries();
        for (key, text, unit) in changes {
            entries.insert((*key).into(), Entry { text: (*text).into(), unit: unit.map(str::to_owned) });
        }
        bay.record(entries).await.unwrap();
        bay.lead_to("loop.judge").await;
        let outlook = bay.desk.preview("RO", 1.0).await.unwrap();
        println!("{changes:?}: {}", outlook.why);
        outlook.turns
    };
    let track = Bay::practice_at(2, "intake.car").await.entries()["track.rear"].text.clone();
    let beam = async |base: &str| {
        turns_with(&[("rear-axle", "rear-beam", None), ("rear-spring-base", base, Some("mm"))]).await
    };
    let torsion = async |stiffness: &str| {
        turns_with(&[("body", "body-twists", None), ("torsion", stiffness, Some("nm-per-deg"))]).await
    };
    let plain = turns_with(&[]).await;
    assert_eq!(beam(&track).await, plain, "springs at the wheels of a beam are springs at the wheels");
    assert_ne!(beam("700").await, plain, "a short base is another car");
    assert_eq!(torsion("100000").await, plain, "a body all but stiff is a stiff one");
    assert_ne!(torsion("2000").await, plain, "a body that twists is another car");
}
