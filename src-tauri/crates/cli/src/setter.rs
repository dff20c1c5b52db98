//! What a careful setter at the practice car enters at a step, read off the view that the window at the car shows: from
//! its fields, its displays and its turn, and from nothing else.

use bayhand_job::ask::Entry;
use bayhand_job::view::{Field, FieldKind, StepBody, VerdictCode};
use std::collections::BTreeMap;

/// The reason that this setter writes at a judgement.
pub const REASON: &str = "the same feel left and right comes first";
/// The reason that the supervisor writes for a waiver.
pub const WAIVER: &str = "what is left is smaller than the readings can show";

/// Key of the check that each empty pad shows a steady zero.
pub const ZEROS: &str = "zeros-read";
/// What an empty pad may show, kg: five times the spread of its zero and of a look together, and rounding.
const ZERO_KG: f64 = 0.5;

/// Keys of the checks beside which a level on the steering wheel is shown.
const LEVELS: [&str; 3] = ["steering-straight", "steering-centred", "wheel-straight"];
/// What a level on a straight steering wheel may show, degrees: four times the spread of holding it.
const STRAIGHT_DEG: f64 = 1.0;

/// Everything to be entered at a step.
pub fn entries(body: &StepBody) -> BTreeMap<String, Entry> {
    let entry = |field: &Field| (field.key.clone(), Entry { text: text(body, field), unit: unit(field) });
    let asks = |key: &str| body.fields.iter().find(|field| field.key == key).map(|field| text(body, field));
    let chosen = |field: &&Field| {
        field.only_with.as_ref().is_none_or(|with| asks(&with.key).is_some_and(|option| with.options.contains(&option)))
    };
    body.fields.iter().filter(chosen).map(entry).collect()
}

fn unit(field: &Field) -> Option<String> {
    match &field.kind {
        FieldKind::Number { units, .. } => units.first().map(|u| u.code.clone()),
        _ => None,
    }
}

/// What is entered into one field.
pub fn text(body: &StepBody, field: &Field) -> String {
    let shown = body.displays.iter().find(|d| d.key.as_ref() == Some(&field.key)).map(|d| d.text.clone());
    match &field.kind {
        FieldKind::Number { .. } => shown.or_else(|| turn(body)).unwrap_or_else(|| "0".into()),
        FieldKind::Check { .. } if field.key == ZEROS && !shown.as_deref().is_none_or(at_zero) => "no".into(),
        FieldKind::Check { .. } if LEVELS.contains(&field.key.as_str()) && !shown.as_deref().is_none_or(straight) => {
            "no".into()
        }
        FieldKind::Check { .. } => "yes".into(),
        FieldKind::Text if field.key == "reason" => REASON.into(),
        FieldKind::Text => shown.unwrap_or_else(|| "none".into()),
        FieldKind::Choice { options } => {
            let by_label = options.iter().find(|o| shown.as_deref() == Some(o.label.as_str()));
            by_label.map(|o| o.code.clone()).unwrap_or_else(|| decision(body).into())
        }
    }
}

/// True when every empty pad shows no more than it may.
fn at_zero(shown: &str) -> bool {
    shown.split_whitespace().all(|kg| kg.parse::<f64>().is_ok_and(|kg| kg.abs() <= ZERO_KG))
}

/// True when the level on the steering wheel shows no more than it may.
fn straight(shown: &str) -> bool {
    shown.parse::<f64>().is_ok_and(|deg| deg.abs() <= STRAIGHT_DEG)
}

/// True when what a gate held may pass: when all that it found is that the readings cannot tell.
pub fn lets_pass(held: &StepBody) -> bool {
    held.gate.as_ref().is_some_and(|gate| gate.may_waive.is_some() && gate.verdict == VerdictCode::CannotTell)
}

/// The turns that the window asks for, entered as turned.
fn turn(body: &StepBody) -> Option<String> {
    body.turn.as_ref().map(|turn| turn.turns.clone())
}

/// The way on at a step that asks for a decision.
fn decision(body: &StepBody) -> &'static str {
    // A gate that held the last try says that something is to be changed first.
    let held = body.gate.is_some();
    match body.id.as_str() {
        "loop.judge" if satisfied(body) => "go-on",
        "loop.judge" => "turn-cross",
        "rough.heights" => {
            if held {
                "set-heights"
            } else {
                "heights-near"
            }
        }
        "rough.angles" => {
            if held {
                "set-angles"
            } else {
                "angles-near"
            }
        }
        "align.judge" => angles(body),
        "back.front-read" | "back.rear-read" => {
            if held {
                "link-again"
            } else {
                "link-right"
            }
        }
        _ => "none",
    }
}

/// Angles stay when all are inside or nothing can be turned that helps; the caster is set where it is not inside.
fn angles(body: &StepBody) -> &'static str {
    let inside = |id: &str| {
        let rows = body.angles.iter().flat_map(|angles| &angles.rows);
        rows.filter(|row| row.id.starts_with(id)).all(|row| row.verdict == VerdictCode::Inside)
    };
    if inside("") || body.adjusters.iter().all(|adjuster| adjuster.still) {
        "angles-good"
    } else if inside("caster") {
        "change-angles"
    } else {
        "change-caster"
    }
}

/// True when the wish that comes first and both height differences are inside.
fn satisfied(body: &StepBody) -> bool {
    let wished = ["cross_pct", "side_front_mm", "side_rear_mm"];
    body.figures.iter().filter(|f| wished.contains(&f.id.as_str())).all(|f| f.verdict == Some(VerdictCode::Inside))
}

/// Who does a step: the technician where a second person or a higher rank is asked for, else the trainee.
pub fn who(step: &str) -> &'static str {
    match step {
        "lock.nuts-second" | "align.fasteners-second" => "LB",
        "lift.equipment" | "walk.high-voltage" | "loop.advise" | "final.drive" | "final.high-voltage" => "LB",
        _ => "RO",
    }
}
