//! A figure of the review leads to its own readings and to no others, as they were typed, and they make it.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::{Ask, Wish};
use bayhand_job::view::{OriginPart, OriginView};
use common::{Bay, assert_refusal};
use std::collections::BTreeSet;

async fn sealed() -> Bay {
    let mut bay = Bay::practice_at(1, "review.seal").await;
    let ask = Ask { revision: bay.view.revision, by: "MT".into(), wish: Wish::Seal };
    bay.desk.review_act(bay.job(), ask).await.unwrap();
    bay.view = bay.desk.step_view().await;
    bay
}

/// Values as they were typed at all readings of a part: input, corner, the rest.
fn typed(part: &OriginPart) -> Vec<(String, String, String)> {
    let mut all = Vec::new();
    for line in part.readings.iter().flat_map(|r| &r.raw) {
        let (input, values) = line.split_once(": ").unwrap();
        for value in values.split(", ") {
            let at =
                ["front left", "front right", "rear left", "rear right"].into_iter().find(|c| value.starts_with(c));
            let rest = at.map_or(value, |at| value[at.len()..].trim());
            all.push((input.to_owned(), at.unwrap_or_default().to_owned(), rest.to_owned()));
        }
    }
    all
}

/// Means of the loads at a corner, one for each settle.
fn means(part: &OriginPart, corner: &str) -> Vec<f64> {
    let typed = typed(part);
    let of_it = typed.iter().filter(|(input, at, _)| input == "Load" && at == corner);
    of_it.map(|(.., text)| text.split_once("(mean ").unwrap().1.split(' ').next().unwrap().parse().unwrap()).collect()
}

/// Corners whose values stand under an input at any reading of a part.
fn corners_of(part: &OriginPart, wanted: &str) -> BTreeSet<String> {
    typed(part).into_iter().filter(|(input, ..)| input.starts_with(wanted)).map(|(_, corner, _)| corner).collect()
}

/// The number before ' kg ±' in 'As found: -24.3 kg ± 0.9 kg'.
fn kg(part: &OriginPart) -> f64 {
    part.says.split_once(": ").unwrap().1.split(' ').next().unwrap().parse().unwrap()
}

fn steps(origin: &OriginView, part: usize) -> Vec<&str> {
    origin.parts[part].readings.iter().map(|r| r.what.as_str()).collect()
}

#[tokio::test]
async fn every_figure_of_a_whole_job_leads_to_readings_that_are_entries_of_it() {
    let bay = sealed().await;
    let job = bay.job();
    let review = bay.desk.review_view(Some(job)).await.unwrap().job.unwrap();
    assert!(review.figures.len() >= 8 + 8 + 10, "figures, corners, angles: {}", review.figures.len());
    let entries: BTreeSet<u64> = review.entries.iter().map(|entry| entry.number).collect();
    for figure in &review.figures {
        let origin = bay.desk.origin(job, &figure.id).await.unwrap();
        assert_eq!(origin.title, figure.name, "{}", figure.id);
        let told: Vec<&String> = figure.found.iter().chain(&figure.left).collect();
        assert_eq!(origin.parts.len(), told.len(), "{}: as found and as left where there are such", figure.id);
        for (part, value) in origin.parts.iter().zip(told) {
            assert!(part.says.ends_with(value.as_str()), "{}: {} tells {value}", figure.id, part.says);
            assert!(!part.readings.is_empty(), "{}: {} has readings", figure.id, part.says);
            for reading in &part.readings {
                assert!(entries.contains(&reading.entry), "{}: {reading:?} is an entry", figure.id);
                assert!(!reading.raw.is_empty() && !reading.who.is_empty(), "{}: {reading:?}", figure.id);
            }
        }
    }
}

#[tokio::test]
async fn the_readings_of_a_figure_make_it_and_no_other_corner_stands_among_them() {
    let bay = sealed().await;
    let job = bay.job();
    let origin = bay.desk.origin(job, "front_diff_kg").await.unwrap();
    // The procedure asks for three settles before, and two at the end.
    for (part, settles) in origin.parts.iter().zip([3, 2]) {
        let (left, right) = (means(part, "front left"), means(part, "front right"));
        assert_eq!((left.len(), right.len()), (settles, settles), "each settle: {part:#?}");
        assert_eq!(corners_of(part, "Load").len(), 2, "the rear axle is none of it: {part:#?}");
        let mean = |of: &[f64]| of.iter().sum::<f64>() / of.len() as f64;
        // The pads' heights add a little, which is told by its own reading.
        let read = mean(&left) - mean(&right);
        assert!((read - kg(part)).abs() < 3.0, "{read} read, {} told", kg(part));
        assert_eq!(corners_of(part, "Height of the pad").len(), 4, "{:#?}", part.readings[0]);
    }
    assert_eq!(&steps(&origin, 0)[1..], ["Settle 1 of 3", "Settle 2 of 3", "Settle 3 of 3"]);
    let (found, left) = (&origin.parts[0].readings[1], &origin.parts[1].readings[1]);
    assert!(found.instrument.starts_with("Pads: "), "{}", found.instrument);
    assert!(found.configuration.contains("front link released"), "{}", found.configuration);
    assert!(found.configuration.contains("ballast strapped in"), "{}", found.configuration);
    assert!(left.configuration.contains("front link on"), "{}", left.configuration);
    assert!(left.configuration.contains("collars turned since the job began"), "{}", left.configuration);
    assert!(origin.parts[1].made_of.as_ref().unwrap().contains('%'), "what its uncertainty comes from");

    let one = bay.desk.origin(job, "load_kg.RR").await.unwrap();
    assert_eq!(corners_of(&one.parts[0], "Load"), BTreeSet::from(["rear right".to_owned()]), "one corner alone");
}

#[tokio::test]
async fn heights_and_angles_lead_to_theirs() {
    let bay = sealed().await;
    let job = bay.job();
    let height = bay.desk.origin(job, "side_rear_mm").await.unwrap();
    let both = BTreeSet::from(["rear left".to_owned(), "rear right".to_owned()]);
    assert_eq!(corners_of(&height.parts[0], ""), both, "two heights at each settle: {:#?}", height.parts[0]);
    assert_eq!(height.parts[0].readings.len(), 3);
    for reading in &height.parts[0].readings {
        assert!(reading.instrument.starts_with("Height gauge: "), "{}", reading.instrument);
    }
    let camber = bay.desk.origin(job, "camber.RL").await.unwrap();
    let own = BTreeSet::from(["rear left".to_owned()]);
    assert_eq!(corners_of(&camber.parts[0], "Camber"), own, "read roughly: {:#?}", camber.parts[0]);
    for read in ["Gauge, mark up", "Gauge, mark down", "Gauge, plus"] {
        assert_eq!(corners_of(&camber.parts[1], read), own, "{read} of its own wheel: {:#?}", camber.parts[1]);
    }
    let refused = bay.desk.origin(job, "cross_pct.FL").await.unwrap_err();
    assert_refusal(&refused, "a figure that is none", "no-such-figure", &["no such figure"]);
}
