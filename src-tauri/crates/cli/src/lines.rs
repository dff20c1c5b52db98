//! A JSON line in, a JSON line out, each flushed before the next is read.

use bayhand_chassis as chassis;
use bayhand_planner as planner;
use bayhand_vehicle::Car;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize, de::DeserializeOwned};
use std::io::{self, BufRead, Write};

/// What `predict` reads.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PredictLine {
    /// The car.
    pub car: Car,
    /// Where it stands.
    pub from: chassis::From,
    /// What is changed.
    pub to: chassis::To,
}

/// The answer to a line that was refused.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Refused {
    /// What was wrong.
    pub error: Wrong,
}

/// What was wrong with a line.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Wrong {
    /// `not-json`, `wrong-form` or `cannot-be`.
    pub code: &'static str,
    /// Path of the field, such as `car.corners.FL.spring_n_per_mm`; empty when it is the line as a whole.
    pub at: String,
    /// What it is and what it must be.
    pub says: String,
}

/// `predict`.
///
/// # Errors
/// A car or a reading that cannot be.
pub fn predict(line: &PredictLine) -> Result<chassis::Predicted, Wrong> {
    chassis::predict(&line.car, &line.from, &line.to).map_err(|e| Wrong {
        code: "cannot-be",
        at: e.at(),
        says: e.to_string(),
    })
}

/// `plan`.
///
/// # Errors
/// A problem that cannot be.
pub fn plan(problem: &planner::Problem) -> Result<planner::Plan, Wrong> {
    planner::plan(problem).map_err(|e| Wrong { code: "cannot-be", at: e.at(), says: e.to_string() })
}

/// `plausible`.
///
/// # Errors
/// Readings that cannot be.
pub fn plausible(readings: &chassis::plausible::LikeReadings) -> Result<chassis::plausible::Plausibility, Wrong> {
    chassis::plausible::plausible(readings).map_err(|e| Wrong { code: "cannot-be", at: e.at(), says: e.to_string() })
}

/// Answers every line until the input ends. A refused line does not end it.
///
/// # Errors
/// Input or output fails.
pub fn answer_all<Q: DeserializeOwned, A: Serialize>(
    input: impl BufRead,
    mut output: impl Write,
    answer: impl Fn(&Q) -> Result<A, Wrong>,
) -> io::Result<()> {
    for line in input.lines() {
        let line = line?;
        if line.trim().is_empty() {
            continue;
        }
        let text = match read(&line).and_then(|question| answer(&question)) {
            Ok(answer) => serde_json::to_string(&answer),
            Err(error) => serde_json::to_string(&Refused { error }),
        };
        writeln!(output, "{}", text.map_err(io::Error::other)?)?;
        output.flush()?;
    }
    Ok(())
}

/// Reads a question; what is wrong is said with its place, and an unknown key with the nearest known one.
fn read<Q: DeserializeOwned>(line: &str) -> Result<Q, Wrong> {
    let mut reader = serde_json::Deserializer::from_str(line);
    let question = serde_path_to_error::deserialize(&mut reader).map_err(|e| {
        let code = if e.inner().is_data() { "wrong-form" } else { "not-json" };
        let says = bayhand_procedure::with_nearest_key(&e.inner().to_string());
        let at = if e.path().iter().next().is_none() { String::new() } else { e.path().to_string() };
        Wrong { code, at, says }
    })?;
    reader.end().map_err(|e| Wrong { code: "not-json", at: String::new(), says: e.to_string() })?;
    Ok(question)
}
