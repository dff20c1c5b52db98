//! Scenarios: the shipped ones, what their form allows, and a workshop's own beside the book.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::{PracticeAsk, Wish};
use bayhand_job::preferences::Preferences;
use bayhand_job::scenario::Scenario;
use bayhand_job::view::{ScenarioView, Screen};
use bayhand_words::{Language, Words};
use common::Bay;
use std::fs;

/// A scenario that keeps to the form, with some text in place of another.
fn with(from: &str, to: &str) -> String {
    let sound = r#"{ "format": 1, "id": "soft-tyre", "title": { "en": "A soft tyre" }, "story": { "en": "Filled last month." },
        "seed": 5, "faults": ["tyre-down"], "drawn": 1 }"#;
    assert!(sound.contains(from), "control: {from} stands in the file");
    sound.replace(from, to)
}

/// Whatever the folder holds is shipped, each tells its story in both languages, and its file is called like it.
#[test]
fn every_file_of_the_folder_is_shipped_and_told_in_both_languages() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../../scenarios");
    let files = fs::read_dir(folder).unwrap().map(|file| file.unwrap().path());
    let mut names: Vec<String> = files
        .filter(|path| path.extension().is_some_and(|end| end == "json"))
        .map(|path| path.file_stem().unwrap().to_string_lossy().into_owned())
        .collect();
    let mut shipped: Vec<String> = Scenario::shipped().iter().map(|one| one.id.clone()).collect();
    names.sort();
    shipped.sort();
    assert_eq!(shipped, names);
    assert_eq!(shipped.len(), 3);
    for one in Scenario::shipped() {
        assert_ne!(one.title(Language::English), one.title(Language::German), "{}", one.id);
        assert_ne!(one.story(Language::English), one.story(Language::German), "{}", one.id);
    }
}

/// The example of the README is one.
#[test]
fn the_example_that_is_told_is_a_scenario() {
    let readme = include_str!("../../../../scenarios/README.md");
    let example = readme.split("```json").nth(1).unwrap().split("```").next().unwrap();
    assert_eq!(Scenario::read(example).unwrap().id, "soft-tyre");
}

/// What does not keep to the form is refused by the name of the key, what stands there, and what may.
#[test]
fn what_is_no_scenario_is_told_by_key_value_and_range() {
    assert!(Scenario::read(&with("1, \"id\"", "1, \"id\"")).is_ok(), "control: as it stands it is one");
    let long = format!("\"{}\"", "x".repeat(61));
    let english = Words::english();
    for (from, to, says) in [
        ("\"format\": 1", "\"format\": 2", &["`format` is 2", "may be 1"][..]),
        ("soft-tyre", "Soft Tyre", &["`id` is \"Soft Tyre\"", "small letters"]),
        ("\"A soft tyre\"", &long, &["`title.en` is 61 characters long", "1 to 60"]),
        ("Filled last month.", " ", &["`story.en`", "1 to 400"]),
        ("\"seed\": 5", "\"seed\": 1000000000000000", &["`seed` is 1000000000000000", "0 to 999999999999999"]),
        ("\"seed\": 5", "\"seed\": -5", &["`seed` is -5", "0 to 999999999999999"]),
        ("[\"tyre-down\"]", "[\"tyre-down\", \"tyre-down\"]", &["`faults` has tyre-down twice"]),
        ("\"drawn\": 1", "\"drawn\": 3", &["are 4 things", "3 at most"]),
        ("tyre-down", "tyre-off", &["`faults` is \"tyre-off\"", "pad-zero"]),
        ("\"drawn\"", "\"drown\"", &["`drown` is no key"]),
        ("\"seed\": 5, ", "", &["`seed` is missing"]),
        ("{ \"en\": \"A soft tyre\" }", "\"A soft tyre\"", &["`title` is \"A soft tyre\"", "by language"]),
        ("\"en\": \"A soft tyre\"", "\"en\": \"A soft tyre\", \"fr\": \"x\"", &["`title.fr` is no key"]),
        ("\"en\": \"Filled last month.\"", "\"de\": \"x\"", &["`story.en` is missing"]),
        ("\"en\": \"Filled last month.\"", "\"en\": 7", &["`story.en` is 7", "a text"]),
        ("\"drawn\": 1", "\"drawn\": 300", &["`drawn` is 300", "0 to 3"]),
        ("\"seed\": 5", "\"seed\" 5", &["no JSON at line 2, column"]),
    ] {
        let error = Scenario::read(&with(from, to)).unwrap_err();
        let why = error.says(&english);
        assert!(says.iter().all(|text| why.contains(text)), "{to}: {why}");
        let german = error.says(&Words::of(Language::German));
        assert!(german != why && !german.contains("{$") && !german.contains('['), "in German too: {german}");
    }
}

fn offered(bay: &Bay) -> Vec<ScenarioView> {
    match &bay.view.screen {
        Screen::Start(start) => start.scenarios.clone(),
        other => panic!("no job is open: {other:?}"),
    }
}

fn begin(id: &str) -> Wish {
    let practice = PracticeAsk { scenario: Some(id.into()), ..PracticeAsk::default() };
    Wish::Begin { car: "Practice coupe".into(), practice: Some(practice) }
}

/// A workshop's own stand behind the shipped ones; a file that is none is told with its reason and begins no job.
#[tokio::test]
async fn a_workshop_keeps_its_own_beside_the_book() {
    let bay = Bay::empty().await;
    let folder = bay.book.parent().unwrap().join("scenarios");
    fs::create_dir(&folder).unwrap();
    fs::write(folder.join("a.json"), with("\"drawn\": 1", "\"drawn\": 0")).unwrap();
    fs::write(folder.join("b.json"), with("\"seed\": 5", "\"seed\": \"five\"")).unwrap();
    fs::write(folder.join("c.json"), with("soft-tyre", "first-morning")).unwrap();
    fs::write(folder.join("notes.txt"), "not looked at").unwrap();
    let mut bay = bay.restart().await;
    let all = offered(&bay);
    let told: Vec<(&str, bool)> = all[3..].iter().map(|one| (one.id.as_str(), one.wrong)).collect();
    assert_eq!(told, [("soft-tyre", false), ("b.json", true), ("c.json", true)]);
    assert!(all[4].story.contains("`seed` is \"five\"; it may be a whole number"), "{}", all[4].story);
    assert!(all[5].story.contains("first-morning"), "{}", all[5].story);
    bay.desk.set(Preferences { language: "de".into(), ..Preferences::default() }).unwrap();
    bay.view = bay.desk.step_view().await;
    let german = offered(&bay)[4].story.clone();
    assert!(german.contains("b.json ist kein Szenario: `seed` ist \"five\"; erlaubt: eine ganze Zahl"), "{german}");
    bay.desk.set(Preferences::default()).unwrap();
    bay.refused("", begin("b.json"), "practice-scenario", &["no such scenario"]).await;
    bay.ask("", begin("soft-tyre")).await.unwrap();
    let opened = bay.body_of(1).await;
    let practice = &opened["what"]["opened"]["practice"];
    assert_eq!(practice, &serde_json::json!({ "seed": 5, "faults": ["tyre-down"] }), "the record holds what it was");
    let shown = serde_json::to_string(&bay.view).unwrap();
    assert!(!shown.contains("tyre-down"), "and no window shows it");
}
