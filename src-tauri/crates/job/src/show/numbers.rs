//! The figures of a sealed job as numbers, beside its sheet.

use crate::{
    align::{Aligned, Row, rough_u_deg},
    handover::{FigureNumber, Figures},
    judge::Against,
    known::Known,
    log::Log,
    show::{figures, line, sheet},
};
use bayhand_vehicle::Place;

/// Decimals that are kept: more than any instrument of the trade resolves.
const DECIMALS: f64 = 1e4;

/// The figures of a job; none while it is not sealed. `seal_code` is that of the seal, when it is a signature.
pub fn numbers(log: &Log, seal_code: Option<String>) -> Option<Figures> {
    let (sealed_at, _) = sheet::sealed(log)?;
    let known = Known::of(log);
    let (found, left, wishes) = sheet::found_and_left(&known)?;
    let of_reading = |judged, verdicts| {
        let all = figures::numbers(judged, &wishes).into_iter();
        all.map(move |(name, unit, against)| number(name, unit, &against, verdicts))
    };
    let mut as_found: Vec<_> = found.as_ref().map(|judged| of_reading(judged, false)).into_iter().flatten().collect();
    let mut as_left: Vec<_> = of_reading(&left, true).collect();
    if let Ok(aligned) = known.aligned("final.angles") {
        as_found.extend(rough_angles(&known, &aligned));
        as_left.extend(aligned.rows.iter().map(angle));
    }
    let pressures = [("pressure_working", "used.pressures"), ("pressure_cold", "final.cold")];
    as_left.extend(pressures.into_iter().flat_map(|(name, step)| read_pressures(&known, name, step)));
    Some(Figures {
        job: log.id,
        car: log.opened.car.clone(),
        practice: log.opened.practice.is_some(),
        sealed_at: sealed_at.to_rfc3339(),
        seal_code,
        as_found,
        as_left,
    })
}

fn rounded(value: f64) -> f64 {
    // Plus zero: a negative one is none.
    (value * DECIMALS).round() / DECIMALS + 0.0
}

fn number(name: String, unit: String, against: &Against, verdicts: bool) -> FigureNumber {
    FigureNumber {
        name,
        unit,
        value: rounded(against.value),
        u: Some(rounded(against.u)),
        wanted: against.wanted.map(|(target, window)| (rounded(target), rounded(window))),
        verdict: against.verdict().filter(|_| verdicts).map(line::code),
    }
}

fn named(row: &Row) -> String {
    format!("{}_{}", row.angle.code(), row.place.code().to_lowercase())
}

fn angle(row: &Row) -> FigureNumber {
    FigureNumber {
        name: named(row),
        unit: "deg".into(),
        value: rounded(row.is.deg),
        u: Some(rounded(row.is.expanded_deg())),
        wanted: Some((rounded(row.target_deg), rounded(row.window_deg))),
        verdict: Some(line::code(row.verdict())),
    }
}

/// Angles as they were read roughly before the heights were set.
fn rough_angles(known: &Known, aligned: &Aligned) -> Vec<FigureNumber> {
    let first = known.recordings().iter().find(|r| r.step == "rough.angles");
    let found = |row: &Row| {
        let value = first?.looks(&row.code()).first().copied()?;
        let wanted = Some((rounded(row.target_deg), rounded(row.window_deg)));
        let u = Some(rounded(rough_u_deg(row.angle)));
        Some(FigureNumber { name: named(row), unit: "deg".into(), value: rounded(value), u, wanted, verdict: None })
    };
    aligned.rows.iter().filter_map(found).collect()
}

fn read_pressures(known: &Known, name: &str, step: &str) -> Vec<FigureNumber> {
    let read = known.corners(step, "pressures");
    let one = |p: Place| {
        let value = rounded(*read.as_ref()?.at(p));
        let name = format!("{name}_{}", p.code().to_lowercase());
        Some(FigureNumber { name, unit: "bar".into(), value, u: None, wanted: None, verdict: None })
    };
    Place::ALL.into_iter().filter_map(one).collect()
}
