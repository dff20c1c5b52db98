//! Where on the bench a difference shows: what is shown, held against what would be shown with it put right.

use super::Sighting;
use crate::bench::{Bench, Shown};
use bayhand_practice::Difference;
use bayhand_procedure::Step;
use bayhand_vehicle::Place;

/// What a careful person cannot miss on an instrument, in the unit of its fields. Common practice, no source: more than a
/// settle hides (1 to 3 kg a corner), or than the instrument resolves where nothing settles.
fn cannot_be_missed(by: &str, key: &str) -> Option<f64> {
    Some(match by {
        "shows-pad" if key.starts_with("zeros-read") => 0.3,
        "shows-pad" => 3.0,
        "shows-height-gauge" => 2.5,
        "shows-laser" => 0.4,
        "shows-pressure-gauge" => 0.04,
        "shows-rule" if key.starts_with("runout-") => 1.0,
        "shows-rule" => 3.0,
        "shows-angle-gauge" => 0.4,
        "shows-steering-level" => 1.0,
        _ => return None,
    })
}

/// The field of the step that shows most of these differences; none when nothing that is read there feels it.
pub(super) fn most_told(bench: &Bench, group: &[Difference], step: &Step, number: u64) -> Option<Sighting> {
    // A configuration that the simulated car cannot be in shows nothing, with the fault or without.
    let (shown, sound) = (bench.shown(step).ok()?, bench.without(group).shown(step).ok()?);
    let mut all = Vec::new();
    for one in &shown {
        let Some(other) = sound.iter().find(|other| other.key == one.key) else { continue };
        for ((key, shown), (_, sound)) in values(one).into_iter().zip(values(other)) {
            let Some(much) = cannot_be_missed(one.by, &key) else { continue };
            let ratio = (shown - sound).abs() / much;
            all.push(Sighting { number, step: step.id.clone(), key, shown, sound, ratio });
        }
    }
    all.into_iter().filter(|s| s.ratio > 0.0).max_by(|a, b| a.ratio.total_cmp(&b.ratio))
}

/// What a field shows, by key: the mean of several looks, or a value for each corner where one text holds all four.
pub(super) fn values(shown: &Shown) -> Vec<(String, f64)> {
    let numbers: Vec<f64> = shown.text.split(' ').filter_map(|text| text.parse().ok()).collect();
    if shown.key == "zeros-read" {
        return Place::ALL.iter().zip(numbers).map(|(p, kg)| (format!("zeros-read.{}", p.code()), kg)).collect();
    }
    if numbers.is_empty() {
        return Vec::new();
    }
    vec![(shown.key.clone(), numbers.iter().sum::<f64>() / numbers.len() as f64)]
}
