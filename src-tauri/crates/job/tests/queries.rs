//! What windows ask without anything being recorded: a place on the trade line, reading back, units, settings.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::Wish;
use bayhand_job::preferences::{Preferences, Units};
use bayhand_job::view::{FieldKind, Outlook};
use bayhand_measure::Unit;
use common::{Bay, entry};
use std::collections::BTreeMap;

/// Text of a cross weight, '49.87 % ± 0.30 %', as a number.
fn percent(outlook: &Outlook) -> f64 {
    let cross = outlook.figures.iter().find(|f| f.id == "cross_pct").unwrap();
    cross.value.split(' ').next().unwrap().parse().unwrap()
}

#[tokio::test]
async fn a_place_on_the_trade_line_is_asked_for_and_taken() {
    let mut bay = Bay::practice_at(1, "loop.judge").await;
    let before = bay.recorded().await;
    let line = bay.step().line.clone().unwrap();

    let mut last = f64::NEG_INFINITY;
    let sign = (percent(&bay.desk.preview("RO", 1.0).await.unwrap())
        - percent(&bay.desk.preview("RO", 0.0).await.unwrap()))
    .signum();
    for at in [0.0, 0.25, 0.5, 0.75, 1.0] {
        let outlook = bay.desk.preview("RO", at).await.unwrap();
        assert_eq!(outlook.turns.len(), 4, "a turn for each corner");
        assert!((outlook.at - at).abs() < 0.01, "the aim stands under the finger: {} for {at}", outlook.at);
        assert!(sign * percent(&outlook) >= last, "further along, further moved: {outlook:?}");
        last = sign * percent(&outlook);
        let sentences = outlook.why.matches(". ").count() + usize::from(outlook.why.ends_with('.'));
        assert_eq!(sentences, 2, "two sentences: {}", outlook.why);
    }
    assert_eq!(bay.recorded().await, before, "a query records nothing");

    // The place where the cross weight is wanted is what the option of that name plans too.
    let wanted = line.marks.iter().find(|mark| mark.strong).unwrap().at;
    let there = bay.desk.preview("RO", wanted).await.unwrap();
    let FieldKind::Choice { options } = &bay.step().fields[0].kind else { panic!("the first field is the choice") };
    let named = options.iter().find(|o| o.code == "turn-cross").unwrap().outlook.clone().unwrap();
    assert_eq!(there.turns, named.turns, "the same place, the same turns");

    let place = bay.desk.preview("RO", 0.6).await.unwrap();
    let text = place.place.clone().unwrap();
    let mut entries = BTreeMap::from([
        ("next".to_owned(), entry("turn-place", None)),
        ("reason".to_owned(), entry("a step towards it first", None)),
    ]);
    let step = "loop.judge".to_owned();
    let missing = Wish::Record { step: step.clone(), entries: entries.clone() };
    bay.refused("RO", missing, "missing", &["Cross weight aimed at"]).await;
    entries.insert("place".into(), entry(&text, Some("percent")));
    bay.ask("RO", Wish::Record { step, entries }).await.unwrap();
    let plan = bay.newest().await["what"]["happened"]["seen"]["plan"].clone();
    assert_eq!(plan["aim"], "turn-place");
    let kept: f64 = plan["cross_pct"].as_str().unwrap().parse().unwrap();
    assert!((kept - percent(&place)).abs() < 0.006, "what was shown is what was kept: {kept} and {place:?}");
}

#[tokio::test]
async fn the_place_belongs_to_its_option_alone() {
    let mut bay = Bay::practice_at(1, "loop.judge").await;
    let entries = BTreeMap::from([
        ("next".to_owned(), entry("turn-cross", None)),
        ("place".to_owned(), entry("50", Some("percent"))),
        ("reason".to_owned(), entry("none", None)),
    ]);
    bay.refused(
        "RO",
        Wish::Record { step: "loop.judge".into(), entries },
        "not-asked",
        &["not asked for at this step"],
    )
    .await;
    let mut elsewhere = Bay::practice_at(1, "walk.tyres").await;
    assert_eq!(elsewhere.desk.preview("RO", 0.5).await.unwrap_err().code, "nothing-to-choose");
    elsewhere.do_step().await;
}

#[tokio::test]
async fn numbers_are_read_back_as_they_were_understood() {
    let bay = Bay::practice_at(1, "baseline.read-1").await;
    let step = bay.step().id.clone();
    let asked = |text: &str, unit: &str| BTreeMap::from([("loads.FL".to_owned(), entry(text, Some(unit)))]);
    let check = async |text: &str, unit: &str, understood: &str| {
        let back = bay.desk.read_back("RO", &step, asked(text, unit)).await.unwrap();
        assert_eq!(back.numbers.len(), 1);
        assert_eq!(back.numbers[0].text, understood, "{text:?} in {unit}");
    };
    check("196,2 196.4 196,3", "kg", "196.2  196.4  196.3 kg").await;
    check("432.71", "lb", "432.71 lb").await;
    let before = bay.recorded().await;
    let refused = bay.desk.read_back("RO", &step, asked("1962", "kg")).await.unwrap_err();
    assert_eq!((refused.code.as_str(), refused.field.as_deref()), ("out-of-range", Some("loads.FL")));
    assert_eq!(bay.recorded().await, before, "a query records nothing");
}

#[tokio::test]
async fn each_sees_and_types_in_their_own_units_and_the_record_keeps_what_was_typed() {
    let mut bay = Bay::practice_at(1, "baseline.read-1").await;
    let pounds = Units { mass: Unit::Pound, length: Unit::Inch, pressure: Unit::Psi, angle: Unit::DegreeMinute };
    let people = BTreeMap::from([("RO".to_owned(), pounds)]);
    bay.desk.set(Preferences { people, ..Preferences::default() }).unwrap();
    let load = |view: &bayhand_job::view::StepView| match &view.screen {
        bayhand_job::view::Screen::Step(body) => body.fields.iter().find(|f| f.key == "loads.FL").unwrap().clone(),
        _ => panic!("a step is at hand"),
    };
    let first = |view: &bayhand_job::view::StepView| match load(view).kind {
        FieldKind::Number { units, .. } => units[0].code.clone(),
        _ => panic!("a load is a number"),
    };
    let (own, other) = (bay.desk.step_view_for("RO").await, bay.desk.step_view_for("LB").await);
    assert_eq!((first(&own).as_str(), first(&other).as_str()), ("lb", "kg"), "RO chose pounds, LB nothing");
    assert!(load(&own).range.unwrap().contains("lb"), "the range is told in the unit that is typed in");

    // The practice car's pads are switched to the reader's unit, so that what they show can be typed.
    bay.view = own;
    let entries = bay.entries();
    let typed = entries["loads.FL"].clone();
    assert_eq!(typed.unit.as_deref(), Some("lb"));
    bay.record(entries).await.unwrap();
    let happened = bay.newest().await["what"]["happened"].clone();
    let kept = &happened["event"]["entries"]["loads.FL"];
    assert_eq!(
        (kept["text"].as_str(), kept["unit"].as_str()),
        (Some(typed.text.as_str()), Some("lb")),
        "exactly as typed"
    );
    let used: f64 = happened["seen"]["used"]["loads.FL"][0].as_str().unwrap().parse().unwrap();
    let first: f64 = typed.text.split(' ').next().unwrap().parse().unwrap();
    assert!((used - first * 0.453_592_37).abs() < 1e-9, "one pound is 0.453 592 37 kg (NIST SP 811): {used}");
}

#[tokio::test]
async fn what_cannot_be_set_is_refused_and_nothing_changes() {
    let bay = Bay::empty().await;
    let before = bay.desk.settings();
    let language = Preferences { language: "tlh".into(), ..Preferences::default() };
    assert_eq!(bay.desk.set(language).unwrap_err().code, "language-unknown");
    let mut far = Preferences::default();
    far.board.distance_m = "300".into();
    let refused = bay.desk.set(far).unwrap_err();
    assert_eq!(refused.field.as_deref(), Some("distance"));
    assert_eq!(bay.desk.settings(), before);
}
