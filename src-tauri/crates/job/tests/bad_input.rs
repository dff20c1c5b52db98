//! What a person may type wrong: each is refused in words that name field, value and range, and nothing is recorded. What
//! can be typed but cannot be true is caught by a gate: the try is recorded as such, and the step stays at hand.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::Wish;
use common::{Bay, entry};

/// Types one field of the step at hand wrong, everything else as the setter does.
async fn check(bay: &mut Bay, key: &str, text: &str, unit: Option<&str>, code: &str, says: &[&str]) {
    let step = bay.step().id.clone();
    let mut entries = bay.entries();
    assert!(entries.contains_key(key), "{key} is a field of {step}");
    entries.insert(key.into(), entry(text, unit));
    let refused = bay.refused("RO", Wish::Record { step, entries }, code, says).await;
    assert_eq!(refused.field.as_deref(), Some(key), "the field is named: {}", refused.says);
}

const LOAD: &str = "loads.FL";

#[tokio::test]
async fn a_load_that_is_no_number_is_refused() {
    let mut bay = Bay::practice_at(2, "baseline.read-1").await;
    let bay = &mut bay;
    check(bay, LOAD, "", Some("kg"), "empty", &["Load", "front left", "is empty"]).await;
    check(bay, LOAD, "   ", Some("kg"), "empty", &["is empty"]).await;
    check(bay, LOAD, "heavy", Some("kg"), "not-a-number", &["Load", "'heavy'", "not a number"]).await;
    check(bay, LOAD, "NaN", Some("kg"), "not-a-number", &["'NaN'"]).await;
    check(bay, LOAD, "1e2", Some("kg"), "not-a-number", &["'1e2'"]).await;
    check(bay, LOAD, "1.234,5", Some("kg"), "not-a-number", &["'1.234,5'", "two separators"]).await;
    check(bay, LOAD, "250 251 250 251", Some("kg"), "too-many-looks", &["4 looks", "at most 3"]).await;
    check(bay, "heights.RR", "abc", Some("mm"), "not-a-number", &["rear right", "'abc'"]).await;
}

#[tokio::test]
async fn a_load_that_cannot_be_is_refused_with_its_range() {
    let mut bay = Bay::practice_at(2, "baseline.read-1").await;
    let bay = &mut bay;
    let range = "10 to 1500 kg";
    check(bay, LOAD, "-250", Some("kg"), "out-of-range", &["-250 kg", "below", range]).await;
    check(bay, LOAD, "5", Some("kg"), "out-of-range", &["5 kg", "below", range]).await;
    check(bay, LOAD, "5000", Some("kg"), "out-of-range", &["5000 kg", "above", range]).await;
    check(bay, LOAD, "250 5000", Some("kg"), "out-of-range", &["5000 kg"]).await;
    check(bay, LOAD, "250", Some("psi"), "wrong-quantity", &["psi", "Pressure", "Mass"]).await;
    check(bay, LOAD, "250", Some("stone"), "unknown-unit", &["'stone'"]).await;
}

/// A comma and a point are the same; the record keeps what was typed beside what was used.
#[tokio::test]
async fn comma_and_point_are_one() {
    let mut bay = Bay::practice_at(2, "baseline.read-1").await;
    let mut entries = bay.entries();
    let shown = entries[LOAD].text.clone();
    assert!(shown.contains('.'), "the practice pads show a point: {shown}");
    let typed = shown.replace('.', ",");
    entries.insert(LOAD.into(), entry(&typed, Some("kg")));
    bay.record(entries).await.unwrap();
    let happened = &bay.newest().await["what"]["happened"];
    assert_eq!(happened["event"]["entries"][LOAD]["text"], typed.as_str(), "kept as typed");
    let used: Vec<f64> = shown.split(' ').map(|look| look.parse().unwrap()).collect();
    let kept: Vec<f64> = happened["seen"]["used"][LOAD]
        .as_array()
        .unwrap()
        .iter()
        .map(|look| look.as_str().unwrap().parse().unwrap())
        .collect();
    assert_eq!(kept, used, "used as the point would be");
}

#[tokio::test]
async fn pounds_are_read_as_pounds() {
    let mut bay = Bay::practice_at(2, "baseline.read-1").await;
    let mut entries = bay.entries();
    entries.insert(LOAD.into(), entry("551.2", Some("lb")));
    bay.record(entries).await.unwrap();
    let used =
        bay.newest().await["what"]["happened"]["seen"]["used"][LOAD][0].as_str().unwrap().parse::<f64>().unwrap();
    // R: the international pound is 0.45359237 kg by definition (agreement of 1959).
    assert!((used - 551.2 * 0.453_592_37).abs() < 1e-9, "the record uses kilograms: {used}");
}

/// Records the step at hand with every load of a corner (or of all) multiplied: pounds typed as if they were kilograms.
async fn check_pounds_as_kilograms(corners: &[&str], says: &[&str]) {
    let mut bay = Bay::practice_at(2, "baseline.read-1").await;
    let (length, step) = (bay.recorded().await, bay.step().id.clone());
    let mut entries = bay.entries();
    for corner in corners {
        let key = format!("loads.{corner}");
        let in_pounds = |look: &str| format!("{:.1}", look.parse::<f64>().unwrap() / 0.453_592_37);
        let text = entries[&key].text.split(' ').map(in_pounds).collect::<Vec<_>>().join(" ");
        entries.insert(key, entry(&text, Some("kg")));
    }
    bay.record(entries).await.unwrap();
    assert_eq!(bay.recorded().await, length + 1, "the try is recorded as a try");
    assert_eq!(bay.newest().await["what"]["happened"]["event"]["event"], "tried", "and as nothing else");
    assert_eq!(bay.step().id, step, "the step stays at hand");
    let gate = bay.step().gate.clone().expect("the gate says why");
    says.iter().for_each(|words| assert!(gate.says.contains(words), "{words:?} is said: {}", gate.says));
    bay.do_step().await;
    assert_ne!(bay.step().id, step, "read again in the right unit it goes on");
}

#[tokio::test]
async fn pounds_in_a_kilogram_field_are_implausible() {
    check_pounds_as_kilograms(&["FL", "FR", "RL", "RR"], &["add up to", "was expected", "units"]).await;
    check_pounds_as_kilograms(&["RL"], &["add up to"]).await;
}

#[tokio::test]
async fn what_is_missing_or_not_asked_is_named() {
    let mut bay = Bay::practice_at(2, "baseline.read-1").await;
    let step = bay.step().id.clone();
    let mut entries = bay.entries();
    entries.remove("heights.RL");
    let refused =
        bay.refused("RO", Wish::Record { step: step.clone(), entries }, "missing", &["rear left", "is missing"]).await;
    assert_eq!(refused.field.as_deref(), Some("heights.RL"));
    let mut entries = bay.entries();
    entries.insert("loads.XX".into(), entry("250", Some("kg")));
    bay.refused("RO", Wish::Record { step, entries }, "not-asked", &["loads.XX"]).await;
}

#[tokio::test]
async fn an_answer_that_is_none_of_the_options_is_refused() {
    let mut bay = Bay::practice(2).await;
    check(&mut bay, "use", "racing", None, "no-such-option", &["“racing”"]).await;
    check(&mut bay, "use", "", None, "missing", &["is missing"]).await;
    bay.lead_to("walk.tyres").await;
    check(&mut bay, "tyres-match", "perhaps", None, "no-such-option", &["“perhaps”"]).await;
}

#[tokio::test]
async fn car_data_out_of_range_is_refused() {
    let mut bay = Bay::practice(2).await;
    check(&mut bay, "wheelbase", "2.45", Some("mm"), "out-of-range", &["1500 to 4500 mm"]).await;
    check(&mut bay, "track.front", "0", Some("mm"), "out-of-range", &["900 to 2200 mm"]).await;
    bay.lead_to("intake.springs").await;
    check(&mut bay, "spring.front", "0", Some("n-per-mm"), "out-of-range", &["5 to 1000 N/mm"]).await;
    check(&mut bay, "motion-ratio.rear", "-0.8", Some("ratio"), "out-of-range", &["0.2 to 5.0"]).await;
}

/// Enters a car whose single values can be, but which cannot be as a whole.
async fn check_car(changes: &[(&str, &str)], says: &[&str]) {
    let mut bay = Bay::practice(2).await;
    loop {
        let mut entries = bay.entries();
        for (key, text) in changes {
            if let Some(entry) = entries.get_mut(*key) {
                entry.text = (*text).into();
            }
        }
        let step = bay.step().id.clone();
        bay.record(entries).await.unwrap();
        if step == "intake.springs" {
            break;
        }
    }
    assert_eq!(bay.step().id, "intake.springs", "{changes:?}: the step stays at hand");
    let gate = bay.step().gate.clone().unwrap_or_else(|| panic!("{changes:?}: the gate says why"));
    says.iter().for_each(|words| assert!(gate.says.contains(words), "{words:?} is said: {}", gate.says));
    assert_eq!(gate.may_waive, None, "nobody may wave such a car through");
}

#[tokio::test]
async fn a_car_that_cannot_be_is_held_at_its_data() {
    let heavy_wheels = [("total", "400"), ("unsprung.front", "120"), ("unsprung.rear", "120")];
    check_car(&heavy_wheels, &["cannot be", "sprung.mass_kg is -80", "from 50 to 10000 kg"]).await;
    let top_heavy = [
        ("cg-height", "1200"),
        ("roll-axis-height", "-200"),
        ("spring.front", "5"),
        ("spring.rear", "5"),
        ("motion-ratio.front", "0.2"),
        ("motion-ratio.rear", "0.2"),
    ];
    check_car(&top_heavy, &["cannot be", "cannot hold this body upright"]).await;
}
