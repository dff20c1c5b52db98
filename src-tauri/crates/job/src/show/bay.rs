//! The board across the bay.

use crate::{
    known::Known,
    log::Log,
    preferences::BoardPlace,
    show::{line, step, turn},
    tell::Tell,
    view::{BayView, HazardView},
};
use bayhand_procedure::{Fact, Next, Step, Value, next};
use bayhand_vehicle::Place;

/// What the bay sees of the open job; of none, what it waits for.
pub fn bay_view(log: Option<&Log>, board: &BoardPlace, tell: &Tell) -> BayView {
    let (capital_mm, diagonal_mm) = board.legible();
    BayView { capital_mm, diagonal_mm, ..of(log, tell) }
}

fn of(log: Option<&Log>, tell: &Tell) -> BayView {
    let Some(log) = log else {
        return waiting(0, tell.text("bay-no-job", &[]));
    };
    let revision = log.revision();
    if log.state.held {
        return BayView { raised: raised(log, tell), ..waiting(revision, tell.text("bay-held", &[])) };
    }
    let Some(body) = step::step_body(log, tell) else {
        return waiting(revision, tell.text("bay-ended", &[]));
    };
    let Next::Step { id, .. } = next(&log.document, &log.state) else { return waiting(revision, String::new()) };
    let known = Known::of(log);
    let turning = id.strip_prefix("loop.turn-").and_then(|c| Place::ALL.into_iter().find(|p| p.code() == c));
    let turn = turning.and_then(|place| turn::turn(&known, place, tell));
    // The line is shown where loads are read or judged, not while somebody works under the car.
    let shows_line = turn.is_none()
        && ["baseline", "loop", "locked", "back", "final", "review"]
            .iter()
            .any(|stage| log.document.step(&id).is_some_and(|(s, _)| s.id == *stage));
    let judged = known.last_set().and_then(|set| Some((set.at(), known.judged(set).ok()?)));
    let wishes = known.wishes();
    let shown = judged.as_ref().zip(wishes.as_ref()).filter(|_| shows_line);
    let hazard = log.document.step(&id).and_then(|(_, step)| live_hazard(log, step, tell));
    BayView {
        revision,
        stage: body.count,
        raised: raised(log, tell),
        instruction: body.instruction,
        line: shown.as_ref().and_then(|((_, judged), wishes)| {
            let plan = line::first_plan(&known, judged, wishes);
            line::line(judged, wishes, plan.as_ref(), &[], tell).map(|drawn| drawn.line)
        }),
        footprints: shown
            .as_ref()
            .map_or_else(Vec::new, |((_, judged), wishes)| line::footprints(judged, wishes, tell)),
        last_reading: shown
            .and_then(|((at, _), _)| *at)
            .map(|at| tell.text("bay-last-reading", &[("at", super::clock(&at))])),
        turn,
        adjusters: if id.starts_with("align.change-") { body.adjusters } else { Vec::new() },
        hazard,
        timer: body.timer,
        capital_mm: 0.0,
        diagonal_mm: 0.0,
    }
}

fn waiting(revision: u64, instruction: String) -> BayView {
    BayView {
        revision,
        stage: String::new(),
        raised: None,
        instruction,
        turn: None,
        adjusters: Vec::new(),
        line: None,
        footprints: Vec::new(),
        last_reading: None,
        hazard: None,
        timer: None,
        capital_mm: 0.0,
        diagonal_mm: 0.0,
    }
}

fn raised(log: &Log, tell: &Tell) -> Option<String> {
    matches!(log.state.fact(Fact::Stance), Value::Clear | Value::Locked).then(|| tell.text("bay-raised", &[]))
}

/// The gravest hazard of the step at hand; with the car up and none at the step, the raised car itself.
fn live_hazard(log: &Log, step: &Step, tell: &Tell) -> Option<HazardView> {
    step::hazards(log, step, tell).into_iter().min_by_key(|h| h.signal)
}
