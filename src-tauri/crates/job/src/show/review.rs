//! One job for the supervisor at the desk.

use crate::{
    align::READ,
    card::Card,
    judge::Judged,
    known::Known,
    log::Log,
    show::{angle_figures, figures, line, people, plots, rows, times, title},
    tell::Tell,
    view::{FigureRow, JobRow, ReviewJob, SendBackTarget},
};
use bayhand_procedure::{Document, Ending, Next, Path, Standing, State, Status, next};
use std::collections::BTreeSet;

/// Code of how a job stands: `working`, `held`, `for-review`, `stopping`, `sealed`, `stopped`.
pub fn state_code(document: &Document, state: &State) -> &'static str {
    match state.status {
        Status::Sealed => "sealed",
        Status::Stopped => "stopped",
        Status::Stopping => "stopping",
        Status::Working if state.held => "held",
        Status::Working if waits_for_seal(document, state) => "for-review",
        Status::Working => "working",
    }
}

/// True when nothing but the seal is left.
fn waits_for_seal(document: &Document, state: &State) -> bool {
    match next(document, state) {
        Next::Step { id, .. } => document.step(&id).is_some_and(|(_, s)| s.ending == Some(Ending::Seal)),
        _ => false,
    }
}

/// A job in a line.
pub fn card_row(id: i64, card: &Card, tell: &Tell) -> JobRow {
    let stage = card.stage.as_ref().map(|id| tell.text(&format!("stage-{id}"), &[])).unwrap_or_default();
    let args = [("stage", stage), ("at", tell.date(&card.at))];
    JobRow {
        id,
        title: tell.text("job-title", &[("car", card.car.clone()), ("number", id.to_string())]),
        says: tell.text(&format!("job-{}", card.state), &args),
        state: card.state.clone(),
    }
}

/// One job for review.
pub fn review_job(log: &Log, tell: &Tell) -> ReviewJob {
    let known = Known::of(log);
    let wishes = known.wishes();
    let (found, left) = found_and_left(&known);
    let last = left.as_ref().or(found.as_ref());
    let both = last.zip(wishes.as_ref());
    let earlier: Vec<f64> = plots::rounds(&known).iter().map(|judged| judged.figures.cross_pct).collect();
    let departures = rows::departures(log, tell);
    let ready = log.state.status == Status::Working && waits_for_seal(&log.document, &log.state);
    ReviewJob {
        id: log.id,
        title: title(log, tell),
        says: summary(log, tell),
        departures_title: tell.text("departures-title", &[("count", departures.len().to_string())]),
        departures,
        entries: rows::rows(log, tell),
        figures: figures(&known, found.as_ref(), left.as_ref(), tell),
        instruments: super::instruments::of_job(&known, tell),
        plots: wishes.as_ref().map_or_else(Vec::new, |w| plots::all(&known, w, tell)),
        line: both.and_then(|(judged, w)| line::line(judged, w, None, &earlier, tell)).map(|drawn| drawn.line),
        footprints_found: found
            .as_ref()
            .zip(wishes.as_ref())
            .map_or_else(Vec::new, |(judged, w)| line::footprints(judged, w, tell)),
        footprints: both.map_or_else(Vec::new, |(judged, w)| line::footprints(judged, w, tell)),
        footprint_scale: both.map(|_| line::scale(tell)),
        stage_times: times::stage_times(log, tell),
        compromise: compromise(&known, tell),
        people: people(log, tell),
        may_seal: ready,
        seal_says: seal_says(log, ready, tell),
        send_back: send_back(log, tell),
        sheet_ready: log.state.status == Status::Sealed,
        coach_ready: log.opened.practice.is_some() && log.ended(),
    }
}

/// The reading before anything was set, and the last one that counts.
pub fn found_and_left(known: &Known) -> (Option<Judged>, Option<Judged>) {
    let left = known.judged_group("final").or_else(|| known.judged(known.judged_set()?).ok());
    (known.judged_group("baseline"), left)
}

/// Figures, loads, heights and angles as found and as left.
pub fn figures(known: &Known, found: Option<&Judged>, left: Option<&Judged>, tell: &Tell) -> Vec<FigureRow> {
    let of_loads = known.wishes().map(|wishes| {
        let corners = figures::corners(found, left, &wishes, tell);
        figures::rows(found, left, &wishes, tell).into_iter().chain(corners)
    });
    of_loads.into_iter().flatten().chain(angles(known, tell)).collect()
}

fn summary(log: &Log, tell: &Tell) -> String {
    let people = people(log, tell).into_iter().map(|p| p.label).collect::<Vec<_>>().join("; ");
    let last = log.lines.last().map_or(log.opened_at, |l| l.at);
    let args = [
        ("people", people),
        ("from", tell.date(&log.opened_at)),
        ("to", tell.date(&last)),
        ("count", log.revision().to_string()),
    ];
    tell.text("review-summary", &args)
}

fn seal_says(log: &Log, ready: bool, tell: &Tell) -> String {
    if ready {
        return tell.text("seal-ready", &[]);
    }
    match log.state.status {
        Status::Sealed => tell.text("seal-done", &[]),
        Status::Stopped | Status::Stopping => tell.text("seal-stopped", &[]),
        Status::Working => {
            let at_hand = match next(&log.document, &log.state) {
                Next::Step { id, .. } => rows::short(&id, tell),
                _ => String::new(),
            };
            tell.text("seal-not-ready", &[("step", at_hand)])
        }
    }
}

/// The angles as they are handed over, or as they were read last.
fn angles(known: &Known, tell: &Tell) -> Vec<FigureRow> {
    let last = known.aligned("final.angles").or_else(|_| known.aligned(READ));
    last.map_or_else(|_| Vec::new(), |left| angle_figures(known, &left, tell))
}

/// The reason that was written at the last judgement, with the place on the line.
pub fn compromise(known: &Known, tell: &Tell) -> Option<String> {
    let first = known.text("intake.wishes", "first")?;
    let reason = known.text("loop.judge", "reason")?;
    Some(
        tell.text(
            "compromise",
            &[("first", tell.text(&format!("option-{first}"), &[])), ("reason", reason.to_owned())],
        ),
    )
}

/// Steps that were done on the main path, with what would have to be done again.
pub fn send_back(log: &Log, tell: &Tell) -> Vec<SendBackTarget> {
    // A sealed job can be sent back too: that makes its seal void.
    if !matches!(log.state.status, Status::Working | Status::Sealed) {
        return Vec::new();
    }
    log.document
        .steps()
        .filter(|(stage, step)| stage.path == Path::Main && log.state.standing(&step.id) == Standing::Done)
        .map(|(stage, step)| {
            let voided = log.state.would_void(&log.document, &BTreeSet::from([step.id.clone()]));
            let names: Vec<_> = voided.iter().map(|id| rows::short(id, tell)).collect();
            let voids = if names.is_empty() {
                tell.text("send-back-alone", &[])
            } else {
                tell.text("send-back-voids", &[("steps", names.join(", "))])
            };
            let label = format!("{}: {}", tell.text(&format!("stage-{}", stage.id), &[]), rows::short(&step.id, tell));
            SendBackTarget { step: step.id.clone(), label, voids }
        })
        .collect()
}
