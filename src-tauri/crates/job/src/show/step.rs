//! The step at hand, for the window at the car.

use crate::{
    bench::Bench,
    judge::{Judged, Wishes},
    known::Known,
    log::Log,
    plan::Aim,
    show::{angles, fields, figures, line, line::Drawn, outlook, plots, rank_code, turn},
    tell::Tell,
    view::{Display, GateView, HazardView, Outlook, Screen, SignalCode, StepBody, TimerView, VerdictCode},
};
use bayhand_procedure::{Ending, Event, Found, Gate, Kind, Next, Signal, Standing, Status, Step, next};
use bayhand_vehicle::Place;

/// The step at hand; none when the job has ended or its document leads nowhere.
pub fn step_body(log: &Log, tell: &Tell) -> Option<StepBody> {
    let Next::Step { id, because } = next(&log.document, &log.state) else { return None };
    let (_, step) = log.document.step(&id)?;
    let known = Known::of(log);
    let state = log.state.step(&id);
    let judges = judges(step);
    let judged = judges.then(|| known.judged_set().or_else(|| known.last_set())).flatten();
    let judged = judged.and_then(|set| known.judged(set).ok());
    let wishes = known.wishes();
    let found = (judges && known.rounds() > 0).then(|| known.reading_set("baseline", true)).flatten();
    let found = found.and_then(|set| known.judged(set).ok());
    let both = judged.as_ref().zip(wishes.as_ref());
    // Where a plan would lead is shown only where it can be chosen.
    let drawn = both.and_then(|both| judge_line(&known, both, id == "loop.judge", tell));
    let place = drawn.as_ref().map(|drawn| drawn.scale);
    let follows = |option: &str| {
        let aim = Aim::of(option)?;
        outlook::outlook(&known, both?, aim, &place?, tell)
    };
    let hazards = hazards(log, step, tell);
    let key = bayhand_words::id("step", &[&id]);
    let turning = id.strip_prefix("loop.turn-").and_then(|c| Place::ALL.into_iter().find(|p| p.code() == c));
    Some(StepBody {
        count: count(log, &known, &id, because.as_ref().map(|(goal, _)| goal.as_str()), tell),
        instruction: tell.text(&key, &[]),
        because: because.map(|(_, fact)| {
            let need = need(log, &fact, tell);
            tell.text("because", &[("need", need)])
        }),
        detail: tell.words.attr(&key, "detail", &[]).unwrap_or_default(),
        fields: fields::fields(&known, step, tell, &follows),
        displays: displays(&known, step, tell),
        action: tell.text(if judges || angles::judges_angles(step) { "action-decide" } else { "action-record" }, &[]),
        hazards_open: hazards.iter().any(|h| h.acknowledged.is_none()),
        hazards,
        gate: (state.standing == Standing::Tried).then(|| gate(log, step, tell)).flatten(),
        turn: turning.and_then(|place| turn::turn(&known, place, tell)),
        line: drawn.map(|drawn| drawn.line),
        footprints: both.map_or_else(Vec::new, |(judged, wishes)| line::footprints(judged, wishes, tell)),
        footprint_scale: both.map(|_| line::scale(tell)),
        figures: both
            .map_or_else(Vec::new, |(judged, wishes)| figures::rows(found.as_ref(), Some(judged), wishes, tell)),
        came: wishes
            .as_ref()
            .filter(|_| judges && known.rounds() > 0)
            .map_or_else(Vec::new, |wishes| plots::of_wishes(&known, wishes, tell)),
        angles: angles::angles(&known, step, tell),
        adjusters: angles::adjusters(&known, step, tell),
        timer: timer(log, &known, step, tell),
        seal_in_review: step.ending == Some(Ending::Seal),
        stopping: log.state.status == Status::Stopping,
        reopen: super::review::send_back(log, tell),
        id,
    })
}

/// What would follow from turning for a place on the trade line, 0 to 1; none where no place can be chosen.
pub fn preview(log: &Log, at: f64, tell: &Tell) -> Option<Outlook> {
    let Next::Step { id, .. } = next(&log.document, &log.state) else { return None };
    if id != "loop.judge" {
        return None;
    }
    let known = Known::of(log);
    let judged = known.judged_set().and_then(|set| known.judged(set).ok())?;
    let wishes = known.wishes()?;
    // The measure alone, without the stops: they are not asked for again while a finger moves.
    let plan = line::first_plan(&known, &judged, &wishes);
    let scale = line::line(&judged, &wishes, plan.as_ref(), &[], tell)?.scale;
    // What is shown is what is recorded: hundredths of a percent.
    let cross_pct = (scale.cross_pct(at) * 100.0).round() / 100.0;
    outlook::outlook(&known, (&judged, &wishes), Aim::Place(cross_pct), &scale, tell)
}

/// A job that has ended: sealed or stopped.
pub fn ended_screen(log: &Log, tell: &Tell) -> Screen {
    let id = if log.state.status == Status::Sealed { "ended-sealed" } else { "ended-stopped" };
    let coach = log.opened.practice.as_ref().map(|_| tell.text("ended-coach", &[]));
    Screen::Ended { says: [Some(tell.text(id, &[])), coach].into_iter().flatten().collect::<Vec<_>>().join(" ") }
}

/// True for steps at which a judged reading is shown.
pub fn judges(step: &Step) -> bool {
    matches!(step.id.as_str(), "loop.judge" | "loop.advise" | "review.seal")
}

/// The need of the goal that the step at hand leads to.
fn need(log: &Log, fact: &bayhand_procedure::Fact, tell: &Tell) -> String {
    let Next::Step { because: Some((goal, _)), .. } = next(&log.document, &log.state) else { return String::new() };
    let wanted = log.document.step(&goal).and_then(|(_, step)| {
        let facts = step.needs.facts();
        facts.into_iter().find(|h| h.fact == *fact).and_then(|h| h.is.first().copied())
    });
    wanted.map_or_else(String::new, |value| tell.text(&bayhand_words::id("need", &[&fact.code(), &value.code()]), &[]))
}

/// 'Read and adjust, round 2'; for a step on the way, where it leads.
fn count(log: &Log, known: &Known, id: &str, goal: Option<&str>, tell: &Tell) -> String {
    let Some((stage, _)) = log.document.step(goal.unwrap_or(id)) else { return String::new() };
    let title = tell.text(&format!("stage-{}", stage.id), &[]);
    let rounds = known.rounds();
    if stage.id == "loop" && rounds > 0 {
        return tell.text("count-round", &[("stage", title), ("round", rounds.to_string())]);
    }
    let position = stage.steps.iter().position(|s| Some(s.id.as_str()) == goal.or(Some(id))).unwrap_or(0) + 1;
    let args = [("stage", title), ("number", position.to_string()), ("of", stage.steps.len().to_string())];
    tell.text("count-step", &args)
}

/// A signal word, by code and in words.
pub(super) fn signal(signal: Signal, tell: &Tell) -> (SignalCode, String) {
    let (code, word) = match signal {
        Signal::Danger => (SignalCode::Danger, "signal-danger"),
        Signal::Warning => (SignalCode::Warning, "signal-warning"),
        Signal::Caution => (SignalCode::Caution, "signal-caution"),
        Signal::Notice => (SignalCode::Notice, "signal-notice"),
    };
    (code, tell.text(word, &[]))
}

/// The step's hazards that hold for this car and bay, and whose hand acknowledged them for this doing.
pub fn hazards(log: &Log, step: &Step, tell: &Tell) -> Vec<HazardView> {
    let state = log.state.step(&step.id);
    let view = |id: &String| {
        let hazard = log.document.hazard(id)?;
        let (signal, word) = signal(hazard.signal, tell);
        let key = format!("hazard-{id}");
        let acknowledged = state.acknowledged.get(id).map(|by| {
            let at = log.lines.iter().rev().find_map(|line| match &line.happened.event {
                Event::Acknowledged { step: s, hazard: h, .. } if *s == step.id && h == id => Some(line.at),
                _ => None,
            });
            let at = at.map(|at| super::clock(&at)).unwrap_or_default();
            tell.text("acknowledged", &[("by", by.clone()), ("at", at)])
        });
        Some(HazardView {
            id: id.clone(),
            signal,
            word,
            line: tell.words.attr(&key, "line", &[]).unwrap_or_default(),
            text: tell.words.attr(&key, "text", &[]).unwrap_or_default(),
            acknowledged,
        })
    };
    log.document.hazards_at(&log.state, step).filter_map(|hazard| view(&hazard.id)).collect()
}

/// The gate of the last try, as it was shown then.
fn gate(log: &Log, step: &Step, tell: &Tell) -> Option<GateView> {
    let line = log
        .lines
        .iter()
        .rev()
        .find(|line| matches!(&line.happened.event, Event::Tried { step: s, .. } if *s == step.id))?;
    let Event::Tried { found, .. } = &line.happened.event else { return None };
    let gates = line.happened.seen.as_ref().map(|s| s.gates.as_slice()).unwrap_or_default();
    let failed: Vec<_> = gates.iter().filter(|g| g.found != Found::Pass).map(|g| g.says.clone()).collect();
    let verdict = if found.contains(&Found::Fail) { VerdictCode::Outside } else { VerdictCode::CannotTell };
    Some(GateView {
        verdict,
        says: failed.join(" "),
        may_waive: step.waive.map(|rank| {
            let rank = tell.text(&format!("rank-{}", rank_code(rank)), &[]);
            tell.text("may-waive", &[("rank", rank)])
        }),
    })
}

/// The trade line of a step that judges; where the place on it is chosen, with its stops and where the first plan leads.
pub fn judge_line(known: &Known, both: (&Judged, &Wishes), choosing: bool, tell: &Tell) -> Option<Drawn> {
    let (judged, wishes) = both;
    let plan = if choosing { line::first_plan(known, judged, wishes) } else { None };
    let mut drawn = line::line(judged, wishes, plan.as_ref(), &[], tell)?;
    if choosing {
        line::reach(known, judged, wishes, &mut drawn);
    }
    Some(drawn)
}

fn displays(known: &Known, step: &Step, tell: &Tell) -> Vec<Display> {
    let worked_out = crate::work_out::suggestions(known, step);
    let worked_out = worked_out.into_iter().map(|s| (s.key, "shows-worked-out", s.text));
    let agreed = crate::work_out::agreed(known, step).into_iter().map(|s| (s.key, "shows-agreed", s.text));
    let shown = match Bench::of(known).map(|bench| bench.shown(step)) {
        Some(Ok(shown)) => shown,
        // A setting that the simulated car cannot be in: what was entered is refused by its gate before this.
        Some(Err(why)) => {
            return vec![Display { key: None, label: tell.text("shows-nothing", &[]), text: why.to_string() }];
        }
        None => Vec::new(),
    };
    let shown = shown.into_iter().map(|s| {
        let text = if s.by == "shows-paper" && is_choice(step, &s.key) {
            tell.text(&format!("option-{}", s.text), &[])
        } else {
            s.text
        };
        (s.key, s.by, text)
    });
    shown
        .chain(worked_out)
        .chain(agreed)
        .map(|(key, by, text)| {
            // An instrument that can be switched shows the unit of whoever reads it.
            let number = step.input_of(&key).and_then(|input| match &input.kind {
                Kind::Number(number) => crate::draft::unit(&number.unit),
                _ => None,
            });
            let text = number.map_or_else(|| text.clone(), |unit| tell.instrument(&text, unit));
            Display { key: Some(key), label: tell.text(by, &[]), text }
        })
        .collect()
}

fn is_choice(step: &Step, key: &str) -> bool {
    step.input_of(key).is_some_and(|input| matches!(input.kind, Kind::Choice(_)))
}

/// The wait of a step that waits.
pub fn timer(log: &Log, known: &Known, step: &Step, tell: &Tell) -> Option<TimerView> {
    if !step.gates.contains(&Gate::Waited) {
        return None;
    }
    let seconds = known.value("intake.place", "wait")?;
    Some(TimerView {
        seconds: seconds.ceil() as u32,
        began_ms: log.step_began().timestamp_millis(),
        label: tell.text("timer-settle", &[]),
    })
}
