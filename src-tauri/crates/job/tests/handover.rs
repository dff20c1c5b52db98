//! What is handed over of a whole job: the sheet in the language of the workshop, and its figures as numbers.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::{Ask, Wish};
use bayhand_job::preferences::Preferences;
use bayhand_job::view::VerdictCode;
use common::Bay;

#[tokio::test]
async fn a_whole_job_is_handed_over_in_either_language_and_as_numbers() {
    let mut bay = Bay::practice_at(1, "review.seal").await;
    let job = bay.job();
    assert_eq!(bay.desk.figures(job).await.unwrap_err().code, "no-sheet", "a job is handed over once it is sealed");
    let ask = Ask { revision: bay.view.revision, by: "MT".into(), wish: Wish::Seal };
    bay.desk.review_act(job, ask).await.unwrap();
    bay.view = bay.desk.step_view().await;

    let english = bay.desk.handover(job).await.unwrap();
    let numbers = bay.desk.figures(job).await.unwrap();
    bay.desk.set(Preferences { language: "de".into(), ..Preferences::default() }).unwrap();
    let german = bay.desk.handover(job).await.unwrap();
    assert_eq!((english.language.as_str(), german.language.as_str()), ("en", "de"), "what a screen reader is told");
    assert_eq!(german.title, "Radlasten und Achseinstellung");
    assert_eq!(bay.desk.figures(job).await.unwrap(), numbers, "numbers are the same in every language");

    // The first table of the sheet says the same, rounded.
    let names = ["cross", "front_diff", "rear_diff", "front", "left", "total", "side_front", "side_rear"];
    for (row, name) in english.tables[0].rows.iter().zip(names) {
        for (cell, part) in row.cells.iter().zip([&numbers.as_found, &numbers.as_left]) {
            let number = part.iter().find(|one| one.name == name).unwrap_or_else(|| panic!("{name} is among {part:?}"));
            let told: Vec<f64> = cell.split_whitespace().filter_map(|word| word.parse().ok()).collect();
            let half = if number.unit == "pct" { 0.00501 } else { 0.0501 };
            let said = [number.value, number.u.unwrap()];
            for (told, exact) in told.iter().zip(said) {
                assert!((told - exact).abs() <= half, "{name}: {cell} tells {said:?}");
            }
        }
        let left = numbers.as_left.iter().find(|one| one.name == name).unwrap();
        assert_eq!(left.verdict, row.verdict.as_ref().map(|(code, _)| *code), "{name}");
    }
    // 8 figures, 4 loads, 4 heights, 10 angles (caster in front alone), 8 pressures.
    assert_eq!(numbers.as_left.len(), 8 + 4 + 4 + 10 + 8, "{:?}", numbers.as_left);
    assert!(numbers.as_found.iter().all(|one| one.verdict.is_none()), "nothing was judged as found");

    // What is not inside is told, with what stands against more.
    let not_inside = english.tables[0]
        .rows
        .iter()
        .filter(|row| row.verdict.as_ref().is_some_and(|(code, _)| *code != VerdictCode::Inside));
    let not_inside: Vec<_> = not_inside.map(|row| row.name.as_str()).collect();
    assert!(!not_inside.is_empty(), "control: this job leaves something");
    for name in &not_inside {
        assert!(english.beyond.iter().any(|line| line.starts_with(name)), "{name}: {:?}", english.beyond);
    }
    assert_eq!(english.beyond.len(), not_inside.len() + 1, "and why it stays: {:?}", english.beyond);
}
