//! What the program shows beside a field: turns worked out from the last heights or angles, and what was agreed at intake.

use crate::known::{Known, axle_of};
use bayhand_procedure::Step;
use bayhand_vehicle::Place;

/// Turns suggested at one adjuster, or a value agreed for one field.
#[derive(Clone, Debug, PartialEq)]
pub struct Suggestion {
    /// Key of the field.
    pub key: String,
    /// Signed turns (positive for toe-in, or for the camber to grow), or the agreed value in the field's unit.
    pub text: String,
}

/// At rough heights: whole steps that bring the heights nearest to the agreed ones. At a step that changes the
/// alignment: what is missing to the agreed angle, by the angle that
/// one turn gives. Empty at other steps and while something is not known.
pub fn suggestions(known: &Known, step: &Step) -> Vec<Suggestion> {
    if step.id == "rough.set" {
        return rough(known).unwrap_or_default();
    }
    let read_at = match step.id.as_str() {
        "rough.set-angles" => "rough.angles",
        id if id.starts_with("align.change") => "align.read",
        _ => return Vec::new(),
    };
    let keys = step.inputs.iter().flat_map(bayhand_procedure::Input::keys);
    keys.filter_map(|key| suggestion(known, read_at, key)).collect()
}

fn suggestion(known: &Known, read_at: &str, key: String) -> Option<Suggestion> {
    let (input, corner) = key.split_once('.')?;
    let place = Place::ALL.into_iter().find(|p| p.code() == corner)?;
    let (angle, share) = match input {
        // The agreed toe is the total of the axle; each wheel takes its half.
        "toe-turns" => ("toe", 0.5),
        "camber-turns" => ("camber", 1.0),
        _ => return None,
    };
    let (front, rear) = known.axles("intake.angles", &format!("agreed-{angle}"))?;
    let (front_turn, rear_turn) = known.axles("intake.angles", &format!("{angle}-per-turn"))?;
    let read = known.value(read_at, &format!("{angle}.{corner}"))?;
    let missing = axle_of(place, front, rear) * share - read;
    let turns = (missing / axle_of(place, front_turn, rear_turn) * 10.0).round() / 10.0;
    // No negative zero.
    let turns = if turns == 0.0 { 0.0 } else { turns };
    Some(Suggestion { key, text: format!("{turns:+.1}") })
}

fn rough(known: &Known) -> Option<Vec<Suggestion>> {
    let read = known.corners("rough.heights", "heights")?;
    let steps = known.rough_plan(&read)?.ok()?.steps;
    let suggestion = |p: Place| {
        // Three decimals show any step of up to a twenty-fourth of a turn well enough to be counted.
        let turns = (known.turns_of(*steps.at(p)) * 1000.0).round() / 1000.0;
        Suggestion { key: format!("turns.{}", p.code()), text: format!("{turns:+}") }
    };
    Some(Place::ALL.map(suggestion).to_vec())
}

/// What was agreed at intake for the fields of a step that reads or sets it: pressures, rough heights, angles, ballast.
pub fn agreed(known: &Known, step: &Step) -> Vec<Suggestion> {
    let keys = step.inputs.iter().flat_map(bayhand_procedure::Input::keys);
    keys.filter_map(|key| {
        let text = agreed_at(known, &step.id, &key)?;
        Some(Suggestion { key, text })
    })
    .collect()
}

fn agreed_at(known: &Known, step: &str, key: &str) -> Option<String> {
    let (input, suffix) = key.split_once('.').unwrap_or((key, ""));
    let place = Place::ALL.into_iter().find(|p| p.code() == suffix);
    match (step, input, place) {
        ("used.pressures" | "restore.pressures", "pressures", Some(_)) => {
            Some(format!("{:.2}", known.value("intake.pressures", &format!("working.{suffix}"))?))
        }
        ("final.cold", "pressures", Some(_)) => {
            Some(format!("{:.2}", known.value("intake.pressures", &format!("cold.{suffix}"))?))
        }
        ("rough.heights", "heights", Some(_)) => {
            Some(format!("{:.1}", known.value("intake.heights", &format!("agreed-height.{suffix}"))?))
        }
        ("rough.angles" | "align.read" | "final.angles", "camber" | "toe", Some(place)) => {
            let (front, rear) = known.axles("intake.angles", &format!("agreed-{input}"))?;
            // The agreed toe is the total of the axle; each wheel has its half.
            let share = if input == "toe" { 0.5 } else { 1.0 };
            Some(format!("{:.2}", axle_of(place, front, rear) * share + 0.0))
        }
        ("used.ballast" | "restore.ballast", "ballast", None) => {
            Some(format!("{:.1}", known.value("intake.load", "driver")?))
        }
        _ => None,
    }
}
