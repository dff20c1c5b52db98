//! The figures of a job for other programs, as CSV (RFC 4180) and JSON (RFC 8259).
//!
//! Both have the same names, each ending in its unit: `cross_pct` is the value, `cross_u_pct` its expanded uncertainty
//! (k = 2), `cross_target_pct` and `cross_window_pct` what was agreed and half the width of its window, `cross_verdict` how it
//! stands to that. The CSV has a row for the car as found and one for it as left, so that the rows of many jobs can stand
//! under each other.

use crate::SheetError;
use bayhand_job::handover::{FigureNumber, Figures};
use serde_json::{Map, Value, json};

/// Names and values of a car at one time, in order.
fn cells(figures: &[FigureNumber]) -> Vec<(String, Value)> {
    let of = |one: &FigureNumber| {
        let name = |part: &str| format!("{}{part}_{}", one.name, one.unit);
        let mut all = vec![(name(""), json!(one.value))];
        all.extend(one.u.map(|u| (name("_u"), json!(u))));
        if let Some((target, window)) = one.wanted {
            all.extend([(name("_target"), json!(target)), (name("_window"), json!(window))]);
        }
        all.extend(one.verdict.map(|verdict| (format!("{}_verdict", one.name), json!(verdict))));
        all
    };
    figures.iter().flat_map(of).collect()
}

/// The figures as JSON: what the job is, then `as_found` and `as_left`.
///
/// # Errors
/// [`SheetError::Contents`] when a number is none.
pub fn json(figures: &Figures) -> Result<String, SheetError> {
    let part = |of: &[FigureNumber]| Value::Object(cells(of).into_iter().collect::<Map<_, _>>());
    let whole = json!({
        "job": figures.job,
        "car": figures.car,
        "practice": figures.practice,
        "sealed_at": figures.sealed_at,
        "seal_code": figures.seal_code,
        "as_found": part(&figures.as_found),
        "as_left": part(&figures.as_left),
    });
    Ok(serde_json::to_string_pretty(&whole)? + "\n")
}

/// The figures as CSV: a header, a row for the car as found, a row for it as left. What is not known is empty.
///
/// # Errors
/// [`SheetError::Csv`] when the rows cannot be written.
pub fn csv(figures: &Figures) -> Result<Vec<u8>, SheetError> {
    let (found, left) = (cells(&figures.as_found), cells(&figures.as_left));
    let mut names: Vec<&String> = left.iter().map(|(name, _)| name).collect();
    names.extend(found.iter().map(|(name, _)| name).filter(|name| !left.iter().any(|(other, _)| other == *name)));
    let mut to = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    let first = ["job", "car", "practice", "sealed_at", "seal_code", "state"];
    to.write_record(first.into_iter().chain(names.iter().map(|name| name.as_str())))?;
    for (state, row) in [("as found", &found), ("as left", &left)] {
        let of_job = [
            figures.job.to_string(),
            figures.car.clone(),
            figures.practice.to_string(),
            figures.sealed_at.clone(),
            figures.seal_code.clone().unwrap_or_default(),
            state.to_owned(),
        ];
        let values = names.iter().map(|name| {
            let value = row.iter().find(|(other, _)| other == *name).map(|(_, value)| value);
            value.map_or_else(String::new, |value| value.as_str().map_or_else(|| value.to_string(), str::to_owned))
        });
        to.write_record(of_job.into_iter().chain(values))?;
    }
    to.into_inner().map_err(|error| SheetError::Csv(error.into_error().into()))
}
