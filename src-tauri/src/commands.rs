//! What a window may call. Each is one call into `bayhand-job`; which window may call which stands in `capabilities/`.
//!
//! A refusal is given back as [`Refused`], with its code, the field that is meant and its words.

use crate::sheet_file::SheetFolder;
use bayhand_job::Desk;
use bayhand_job::ask::{Ask, Refused};
use bayhand_job::view::{BayView, ReviewView, StepView};
use std::collections::BTreeMap;
use tauri::State;

/// The fixed words of the windows, by id.
#[tauri::command]
pub fn labels(desk: State<'_, Desk>) -> BTreeMap<String, String> {
    desk.labels()
}

/// What the window at the car shows.
#[tauri::command]
pub async fn step_view(desk: State<'_, Desk>) -> Result<StepView, Refused> {
    Ok(desk.step_view().await)
}

/// Carries out a wish of the window at the car. Sealing is refused here: it belongs to the desk.
#[tauri::command]
pub async fn act(desk: State<'_, Desk>, ask: Ask) -> Result<StepView, Refused> {
    desk.act(ask).await.inspect_err(log_refusal)
}

/// What the board across the bay shows.
#[tauri::command]
pub async fn bay_view(desk: State<'_, Desk>) -> Result<BayView, Refused> {
    Ok(desk.bay_view().await)
}

/// What the window at the desk shows: all jobs, and `job` step by step.
#[tauri::command]
pub async fn review_view(desk: State<'_, Desk>, job: Option<i64>) -> Result<ReviewView, Refused> {
    desk.review_view(job).await.inspect_err(log_refusal)
}

/// Seals `job` or sends it back.
#[tauri::command]
pub async fn review_act(desk: State<'_, Desk>, job: i64, ask: Ask) -> Result<ReviewView, Refused> {
    desk.review_act(job, ask).await.inspect_err(log_refusal)
}

/// Checks the chain and the seal of `job`, and says what was found.
#[tauri::command]
pub async fn verify(desk: State<'_, Desk>, job: i64) -> Result<String, Refused> {
    desk.verify(job).await.inspect_err(log_refusal)
}

/// Writes the sheet of `job` beside the book, and says where.
#[tauri::command]
pub async fn write_sheet(desk: State<'_, Desk>, sheets: State<'_, SheetFolder>, job: i64) -> Result<String, Refused> {
    let handover = desk.handover(job).await.inspect_err(log_refusal)?;
    let path = sheets.write(job, handover).await.inspect_err(log_refusal)?;
    tracing::info!(job, "sheet written");
    Ok(path.display().to_string())
}

fn log_refusal(refused: &Refused) {
    tracing::info!(code = refused.code, "refused");
}
