//! What the coach found, in words.

use super::rows::short;
use crate::{
    coach::{Coached, LooksLike, Sighting, Slip, Wrong, spot},
    draft::{field_name, unit},
    log::Log,
    tell::Tell,
    view::{CoachRow, CoachView, ScoreRow},
};
use bayhand_measure::Unit;
use bayhand_practice::Difference;
use bayhand_procedure::Kind;

/// The coach's view of a job.
pub fn coach(log: &Log, coached: &Coached, tell: &Tell) -> CoachView {
    let (points, taken) = coached.score.points(coached.slips.len());
    let says = if coached.wrong.is_empty() && coached.slips.is_empty() {
        tell.text("coach-nothing", &[])
    } else {
        let found = coached.wrong.iter().filter(|w| w.held.is_some()).count();
        let args = [
            ("wrong", coached.wrong.len().to_string()),
            ("found", found.to_string()),
            ("slips", coached.slips.len().to_string()),
        ];
        tell.text("coach-says", &args)
    };
    CoachView {
        says,
        points: tell.text("coach-points", &[("points", points.to_string())]),
        wrong: coached.wrong.iter().map(|wrong| row(log, wrong, tell)).collect(),
        slips: coached.slips.iter().map(|slip| slip_row(log, slip, tell)).collect(),
        score: score(coached, taken, tell),
    }
}

fn row(log: &Log, wrong: &Wrong, tell: &Tell) -> CoachRow {
    let mut text = Vec::new();
    match (&wrong.first, &wrong.most) {
        (Some(first), Some(most)) => {
            text.push(sighting("coach-first", log, first, tell));
            if most.number != first.number {
                text.push(sighting("coach-most", log, most, tell));
            }
        }
        (None, Some(most)) => text.push(sighting("coach-too-little", log, most, tell)),
        _ => text.push(tell.text("coach-nowhere", &[])),
    }
    let number = |n: u64| [("number", n.to_string())];
    let entry = |id: &str, n: Option<u64>| n.map(|n| tell.text(id, &number(n)));
    text.extend(entry("coach-held", wrong.held));
    text.extend(entry("coach-let-pass", wrong.let_pass));
    text.extend(entry("coach-ended", wrong.ended));
    let outcome = match wrong {
        Wrong { let_pass: Some(_), .. } => "coach-outcome-let-pass",
        Wrong { held: Some(_), ended: Some(_), .. } => "coach-outcome-put-right",
        Wrong { held: Some(_), .. } => "coach-outcome-found",
        Wrong { ended: Some(_), .. } => "coach-outcome-passed",
        Wrong { first: None, .. } => "coach-outcome-hidden",
        _ => "coach-outcome-missed",
    };
    let title = wrong.what.iter().map(|one| what(one, tell)).collect::<Vec<_>>().join(" ");
    CoachRow { title, text, outcome: tell.text(outcome, &[]) }
}

fn sighting(id: &str, log: &Log, seen: &Sighting, tell: &Tell) -> String {
    let args = [
        ("number", seen.number.to_string()),
        ("step", short(&seen.step, tell)),
        ("field", field(&seen.step, &seen.key, tell)),
        ("shown", value(log, &seen.step, &seen.key, seen.shown, tell)),
        ("sound", value(log, &seen.step, &seen.key, seen.sound, tell)),
    ];
    tell.text(id, &args)
}

fn field(step: &str, key: &str, tell: &Tell) -> String {
    match key.strip_prefix("zeros-read.") {
        Some(corner) => tell.text("coach-zero", &[("where", tell.text(&format!("corner-{corner}"), &[]))]),
        None => field_name(tell.words, step, key),
    }
}

/// A value of a field with its unit, as the person reads it.
fn value(log: &Log, step: &str, key: &str, value: f64, tell: &Tell) -> String {
    let input = log.document.step(step).and_then(|(_, step)| step.input_of(key));
    let own = match input.map(|input| &input.kind) {
        Some(Kind::Number(number)) => unit(&number.unit),
        _ if key.starts_with("zeros-read") => Some(Unit::Kilogram),
        // A level on the steering wheel is all else that is shown beside a check.
        Some(Kind::Check) => Some(Unit::Degree),
        _ => None,
    };
    match own {
        Some(Unit::Kilogram) => tell.kg(value),
        Some(Unit::Millimetre) => tell.mm(value, 1),
        Some(Unit::Bar) => tell.bar(value),
        Some(Unit::Degree) => tell.deg(value),
        Some(unit) => format!("{value:.2} {}", unit.symbol()),
        None => format!("{value:.2}"),
    }
}

fn what(difference: &Difference, tell: &Tell) -> String {
    let place = match spot(difference) {
        (Some(place), _) => tell.corner(place),
        (_, Some(axle)) => tell.text(&format!("axle-{}", code(axle)), &[]),
        _ => String::new(),
    };
    let (id, size, more) = match *difference {
        Difference::Collar { mm, .. } => ("coach-what-collar", tell.signed_mm(mm), String::new()),
        Difference::LinkLeftOn { .. } => ("coach-what-link-left-on", String::new(), String::new()),
        Difference::LinkTurned { turns, .. } => ("coach-what-link-turned", tell.turns(turns), String::new()),
        Difference::Ballast { kg } => ("coach-what-ballast", tell.signed_kg(kg), String::new()),
        Difference::BallastMoved { back_mm, out_mm } => {
            ("coach-what-ballast-moved", tell.signed_mm(back_mm), tell.signed_mm(out_mm))
        }
        Difference::Rim { toe_deg, lean_deg, .. } => {
            ("coach-what-rim", tell.deg(toe_deg.hypot(lean_deg)), String::new())
        }
        Difference::Arm { mm, .. } => ("coach-what-arm", tell.mm(mm, 1), String::new()),
        Difference::Steering { deg } => ("coach-what-steering", tell.signed_deg(deg), String::new()),
        Difference::Pressure { bar, .. } => {
            let sign = if bar > 0.0 { "+" } else { "" };
            ("coach-what-pressure", format!("{sign}{}", tell.bar(bar)), String::new())
        }
        Difference::PadHeight { mm, .. } => ("coach-what-pad-height", tell.signed_mm(mm), String::new()),
        Difference::PadZero { kg, .. } => ("coach-what-pad-zero", tell.signed_kg(kg), String::new()),
        Difference::PadGain { pct, .. } => ("coach-what-pad-gain", tell.percent(pct, 1), String::new()),
        Difference::Unit { shown_per_kg } => ("coach-what-unit", format!("{shown_per_kg:.3}"), String::new()),
        Difference::Held { kg, .. } => ("coach-what-held", tell.kg(kg), String::new()),
        Difference::BumpTravel { mm, .. } => ("coach-what-bump", tell.mm(mm, 1), String::new()),
        Difference::Friction { newton, .. } => ("coach-what-friction", format!("{newton:.0} N"), String::new()),
    };
    tell.text(id, &[("where", place), ("size", size), ("more", more)])
}

fn code(axle: bayhand_vehicle::Axle) -> &'static str {
    match axle {
        bayhand_vehicle::Axle::Front => "front",
        bayhand_vehicle::Axle::Rear => "rear",
    }
}

fn slip_row(log: &Log, slip: &Slip, tell: &Tell) -> CoachRow {
    let choice = log.document.step(&slip.step).and_then(|(_, step)| step.input_of(&slip.key)).map(|i| &i.kind);
    let text = |text: &str| match choice {
        Some(Kind::Choice(_)) => tell.text(&format!("option-{text}"), &[]),
        _ => text.to_owned(),
    };
    let args = [
        ("number", slip.number.to_string()),
        ("step", short(&slip.step, tell)),
        ("shown", text(&slip.shown)),
        ("written", text(&slip.written)),
    ];
    let looks = slip.looks_like.map(|looks| match looks {
        LooksLike::Corner(place) => tell.text("coach-looks-corner", &[("where", tell.corner(place))]),
        LooksLike::PoundsForKilograms => tell.text("coach-looks-pounds", &[]),
        LooksLike::Sign => tell.text("coach-looks-sign", &[]),
    });
    CoachRow {
        title: field(&slip.step, &slip.key, tell),
        text: [Some(tell.text("coach-slip", &args)), looks].into_iter().flatten().collect(),
        outcome: tell.text("coach-outcome-slip", &[]),
    }
}

fn score(coached: &Coached, taken: [u32; 6], tell: &Tell) -> Vec<ScoreRow> {
    let score = &coached.score;
    let counts = [
        ("sealed-in", score.sealed_in),
        ("let-pass-wrong", score.let_pass_wrong.len()),
        ("let-pass", score.let_pass.len()),
        ("voided", score.voided_readings),
        ("slips", coached.slips.len()),
        ("rounds", score.rounds as usize),
    ];
    let mut rows: Vec<ScoreRow> = counts
        .into_iter()
        .zip(taken)
        .map(|((id, count), taken)| ScoreRow {
            name: tell.text(&format!("coach-score-{id}"), &[]),
            text: count.to_string(),
            taken: if taken > 0 { format!("−{taken}") } else { String::new() },
        })
        .collect();
    let (hours, minutes) = (score.minutes / 60, score.minutes % 60);
    let args = [("hours", hours.to_string()), ("minutes", minutes.to_string())];
    rows.push(ScoreRow {
        name: tell.text("coach-score-time", &[]),
        text: tell.text("coach-time", &args),
        taken: String::new(),
    });
    rows
}
