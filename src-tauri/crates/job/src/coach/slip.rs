//! What was written down other than it was shown.

use super::told::values;
use crate::{bench::Bench, body::Seen};
use bayhand_procedure::{Entered, Kind, Step};
use bayhand_vehicle::Place;
use std::collections::BTreeMap;

/// Something that was written down other than it was shown.
#[derive(Clone, Debug, PartialEq)]
pub struct Slip {
    /// Number of the entry.
    pub number: u64,
    /// Its step.
    pub step: String,
    /// Key of the field.
    pub key: String,
    /// What was shown, as text in the field's unit.
    pub shown: String,
    /// What was written, as it was typed.
    pub written: String,
    /// What it looks like, when it looks like something.
    pub looks_like: Option<LooksLike>,
}

/// What a slip looks like.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LooksLike {
    /// What was shown at another corner.
    Corner(Place),
    /// Pounds taken for kilograms, or the other way round.
    PoundsForKilograms,
    /// The sign is the other one.
    Sign,
}

/// Pounds in a kilogram (NIST SP 811 (2008), appendix B.8).
const POUNDS_PER_KG: f64 = 1.0 / 0.453_592_37;

/// What of a recorded step was written other than the bench showed it. Steps that nothing is shown for have no slips, and
/// neither has a field that was left empty.
pub(super) fn slips(
    bench: &Bench,
    step: &Step,
    number: u64,
    entries: &BTreeMap<String, Entered>,
    seen: Option<&Seen>,
) -> Vec<Slip> {
    // What cannot be shown cannot be miswritten.
    let Ok(all_shown) = bench.shown(step) else { return Vec::new() };
    let mut slips = Vec::new();
    for shown in &all_shown {
        let Some(entry) = entries.get(&shown.key) else { continue };
        let slip = |looks_like| Slip {
            number,
            step: step.id.clone(),
            key: shown.key.clone(),
            shown: shown.text.clone(),
            written: entry.text.clone(),
            looks_like,
        };
        match step.input_of(&shown.key).map(|input| &input.kind) {
            Some(Kind::Choice(_)) if entry.text != shown.text => slips.push(slip(None)),
            Some(Kind::Number(_)) => {
                let used = seen.and_then(|s| s.used.get(&shown.key)).map_or(&[][..], Vec::as_slice);
                let used: Vec<f64> = used.iter().filter_map(|text| text.parse().ok()).collect();
                let Some((_, right)) = values(shown).into_iter().next() else { continue };
                if used.is_empty() {
                    continue;
                }
                let written = used.iter().sum::<f64>() / used.len() as f64;
                if !alike(written, right) {
                    let others = all_shown.iter().filter(|other| other.key != shown.key);
                    slips.push(slip(looks_like(written, right, &shown.key, others)));
                }
            }
            _ => {}
        }
    }
    slips
}

/// The same but for the rounding of an average of looks or of a unit.
fn alike(one: f64, other: f64) -> bool {
    (one - other).abs() <= 2e-3 * one.abs().max(other.abs()) + 1e-9
}

fn looks_like<'a>(
    written: f64,
    right: f64,
    key: &str,
    others: impl Iterator<Item = &'a crate::bench::Shown>,
) -> Option<LooksLike> {
    let (input, _) = key.split_once('.').unwrap_or((key, ""));
    if input == "loads" && (alike(written, right * POUNDS_PER_KG) || alike(written, right / POUNDS_PER_KG)) {
        return Some(LooksLike::PoundsForKilograms);
    }
    if alike(written, -right) {
        return Some(LooksLike::Sign);
    }
    for other in others {
        let place = Place::ALL.into_iter().find(|p| other.key == format!("{input}.{}", p.code()));
        if let (Some(place), Some((_, value))) = (place, values(other).into_iter().next())
            && alike(written, value)
        {
            return Some(LooksLike::Corner(place));
        }
    }
    None
}
