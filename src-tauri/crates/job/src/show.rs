//! From what is known to what is shown: each window's view, and the sheet.

mod angles;
mod bay;
mod cars;
mod coach;
mod fields;
mod figures;
mod instruments;
mod line;
mod manual;
mod numbers;
mod origin;
mod outlook;
mod plots;
mod review;
mod rows;
mod sheet;
mod step;
mod times;
mod turn;

pub use angles::{figure_rows as angle_figures, name as angle_name, with_u as angle_with_u};
pub use bay::bay_view;
pub use cars::car;
pub use coach::coach;
pub use fields::preset;
pub use instruments::of_book as instruments;
pub use manual::manual;
pub use numbers::numbers;
pub use origin::origin;
pub use outlook::why;
pub use review::{card_row, review_job, state_code};
pub use rows::short;
pub use sheet::handover;
pub use step::{ended_screen, hazards, preview, step_body};

use crate::{
    log::Log,
    preferences::BoardPlace,
    tell::Tell,
    view::{PathStage, PersonView, StateCode},
};
use bayhand_procedure::{Document, Next, Path, Standing, State, Status, next, to_do};

/// 'Practice coupe, job 3'.
pub fn title(log: &Log, tell: &Tell) -> String {
    tell.text("job-title", &[("car", log.opened.car.clone()), ("number", log.id.to_string())])
}

/// 'RO, trainee'.
pub fn person(log: &Log, initials: &str, tell: &Tell) -> String {
    let rank = log.state.people().get(initials).map(|rank| rank_code(*rank)).unwrap_or_default();
    tell.text("person", &[("initials", initials.to_owned()), ("rank", tell.text(&format!("rank-{rank}"), &[]))])
}

/// Code of a rank.
pub fn rank_code(rank: bayhand_procedure::Rank) -> &'static str {
    match rank {
        bayhand_procedure::Rank::Trainee => "trainee",
        bayhand_procedure::Rank::Technician => "technician",
        bayhand_procedure::Rank::Supervisor => "supervisor",
    }
}

/// People signed on.
pub fn people(log: &Log, tell: &Tell) -> Vec<PersonView> {
    let view = |(initials, rank): (&String, &bayhand_procedure::Rank)| PersonView {
        initials: initials.clone(),
        rank: rank_code(*rank).to_owned(),
        label: person(log, initials, tell),
    };
    log.state.people().iter().map(view).collect()
}

/// 'corner-balance-and-alignment 1, 0a1b2c3d4e5f': id, version and the beginning of the hash.
pub fn procedure_title(document: &Document, hash: &str) -> String {
    format!("{} {}, {}", document.id, document.version, hash.get(..12).unwrap_or(hash))
}

/// The stage at hand: of the step that the job is led to, not of a step on the way to it.
pub fn stage_at_hand(document: &Document, state: &State) -> Option<String> {
    let Next::Step { id, because } = next(document, state) else { return None };
    let goal = because.map_or(id, |(goal, _)| goal);
    document.step(&goal).map(|(stage, _)| stage.id.clone())
}

/// The stages as a ribbon of words.
pub fn path(log: &Log, tell: &Tell) -> Vec<PathStage> {
    let path = if matches!(log.state.status, Status::Stopping | Status::Stopped) { Path::Stopped } else { Path::Main };
    let now = stage_at_hand(&log.document, &log.state);
    let stages: Vec<_> = log.document.stages.iter().filter(|stage| stage.path == path).collect();
    let at_hand = stages.iter().position(|stage| now.as_deref() == Some(stage.id.as_str())).unwrap_or(stages.len());
    stages
        .iter()
        .enumerate()
        .map(|(index, stage)| {
            let to_do: Vec<_> = stage.steps.iter().filter(|step| to_do(&log.state, step)).collect();
            let void = to_do.iter().any(|step| log.state.standing(&step.id) == Standing::Void);
            let begun = stage.steps.iter().any(|step| log.state.standing(&step.id) == Standing::Done);
            // A stage behind the one at hand with nothing to do is done, also when nothing of it belongs to this car.
            let state = match (index == at_hand, void, to_do.is_empty()) {
                (true, _, _) => StateCode::Now,
                (_, true, _) => StateCode::Again,
                (_, _, true) if begun || index < at_hand => StateCode::Done,
                _ => StateCode::ToCome,
            };
            let word = match state {
                StateCode::Done => "state-done",
                StateCode::Now => "state-now",
                StateCode::Again => "state-again",
                StateCode::ToCome => "state-to-come",
            };
            PathStage {
                id: stage.id.clone(),
                title: tell.text(&format!("stage-{}", stage.id), &[]),
                state,
                state_word: tell.text(word, &[]),
            }
        })
        .collect()
}

/// What the board's distance and screen come to.
pub fn board_says(board: &BoardPlace, tell: &Tell) -> String {
    let (capital_mm, diagonal_mm) = board.legible();
    // Of a screen of 16 to 9: what is larger than this leaves no room for a step's words.
    let share = capital_mm / CAPITAL / (diagonal_mm * 9.0 / 16.0_f64.hypot(9.0));
    let percent = tell.percent(100.0 * share, 0);
    let args =
        [("distance", board.distance_m.clone()), ("mm", format!("{:.0} mm", capital_mm / CAPITAL)), ("share", percent)];
    tell.text(if share > 0.09 { "board-too-far" } else { "board-says" }, &args)
}

/// Height of a capital of the windows' typeface in type sizes (its OS/2 table: 668 of 1000).
const CAPITAL: f64 = 0.668;

/// '11:26'.
pub fn clock(at: &chrono::DateTime<chrono::FixedOffset>) -> String {
    at.format("%H:%M").to_string()
}
