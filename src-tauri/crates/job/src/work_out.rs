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

/// At rough heights: whole steps that bring the heights nearest to the agreed ones. At rough angles: what is missing to
/// the agreed angle, by the angle that one turn gives. At a change of the alignment: the planned whole steps. Empty at
/// other steps and while something is not known.
pub fn suggestions(known: &Known, step: &Step) -> Vec<Suggestion> {
    match step.id.as_str() {
        "rough.set" => rough(known).unwrap_or_default(),
        "rough.set-angles" => keys(step).filter_map(|key| rough_angle(known, key)).collect(),
        id if id.starts_with("align.change-") => planned(known, step).unwrap_or_default(),
        _ => Vec::new(),
    }
}

fn keys(step: &Step) -> impl Iterator<Item = String> {
    step.inputs.iter().flat_map(bayhand_procedure::Input::keys)
}

/// The wheel and the angle of a field of turns.
fn adjuster(key: &str) -> Option<(Place, usize)> {
    let (input, corner) = key.split_once('.')?;
    let place = Place::ALL.into_iter().find(|p| p.code() == corner)?;
    Some((place, ["toe-turns", "camber-turns", "caster-turns"].into_iter().position(|turns| turns == input)?))
}

/// The whole steps that were planned from the last reading.
fn planned(known: &Known, step: &Step) -> Option<Vec<Suggestion>> {
    let plan = known.angle_plan(&known.aligned("align.read").ok()?, known.sets_caster())?;
    let suggestion = |key: String| {
        let (place, angle) = adjuster(&key)?;
        Some(Suggestion { key, text: signed(plan.at(place).turns[angle], 3) })
    };
    Some(keys(step).filter_map(suggestion).collect())
}

fn rough_angle(known: &Known, key: String) -> Option<Suggestion> {
    let (place, angle) = adjuster(&key)?;
    let name = ["toe", "camber"].get(angle)?;
    let (front, rear) = known.axles("intake.angles", &format!("agreed-{name}"))?;
    let per_turn_deg = known.angle_steps(place)?.per_turn_deg[angle];
    let missing = axle_of(place, front, rear) - known.value("rough.angles", &format!("{name}.{}", place.code()))?;
    Some(Suggestion { key, text: signed(missing / per_turn_deg, 1) })
}

/// Signed decimal text without a negative zero, and without zeros at its end.
fn signed(turns: f64, decimals: usize) -> String {
    let scale = 10.0_f64.powi(decimals as i32);
    let turns = (turns * scale).round() / scale;
    if turns == 0.0 { "0".to_owned() } else { format!("{turns:+}") }
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
        ("rough.angles", "camber" | "toe", Some(place)) => {
            let (front, rear) = known.axles("intake.angles", &format!("agreed-{input}"))?;
            Some(format!("{:.2}", axle_of(place, front, rear) + 0.0))
        }
        ("used.ballast" | "restore.ballast", "ballast", None) => {
            Some(format!("{:.1}", known.value("intake.load", "driver")?))
        }
        _ => None,
    }
}
