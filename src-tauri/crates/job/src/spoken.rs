//! What is said aloud: of a view that follows another, and of what is read back. Pure; numbers stay as they are written.
//!
//! A step with open hazards says these alone, for nothing else is to be done then. Once they are acknowledged it says its
//! one instruction, with what to turn or what the reading came to.

use crate::{
    tell::Tell,
    view::{ReadBack, Screen, StepBody, StepView, VerdictCode},
};

/// Words to be said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Spoken {
    /// The words.
    pub words: String,
    /// True for a hazard: it is said to its end, whatever happens.
    pub hazard: bool,
}

impl Spoken {
    /// A line that the next one may cut.
    pub fn plain(words: impl Into<String>) -> Self {
        Self { words: words.into(), hazard: false }
    }
}

/// What is said when `now` follows `before`; all of it without one before. What only looks otherwise, such as in another
/// unit or language, is not said again.
pub fn change(before: Option<&StepView>, now: &StepView, tell: &Tell) -> Vec<Spoken> {
    let moved = before.is_none_or(|before| place(before) != place(now));
    match &now.screen {
        Screen::Start(_) => Vec::new(),
        Screen::SignOn { says } | Screen::Held { says } | Screen::Ended { says } => {
            moved.then(|| Spoken::plain(says)).into_iter().collect()
        }
        Screen::Step(body) if moved => step(body, tell),
        Screen::Step(body) => tried(before, now, body).into_iter().collect(),
    }
}

/// Where somebody stands: another place is another thing to do.
fn place(view: &StepView) -> (Option<i64>, &'static str, &str, &str, bool) {
    let job = view.job.as_ref().map(|job| job.id);
    match &view.screen {
        Screen::Start(_) => (job, "start", "", "", false),
        Screen::SignOn { .. } => (job, "sign-on", "", "", false),
        Screen::Held { .. } => (job, "held", "", "", false),
        Screen::Ended { .. } => (job, "ended", "", "", false),
        Screen::Step(body) => (job, "step", &body.id, &body.count, body.hazards_open),
    }
}

/// A try that did not pass: what its gate found.
fn tried(before: Option<&StepView>, now: &StepView, body: &StepBody) -> Option<Spoken> {
    let gate = body.gate.as_ref()?;
    let before = before?;
    let Screen::Step(was) = &before.screen else { return None };
    let same = was.gate.as_ref().is_some_and(|was| was.says == gate.says);
    (before.revision != now.revision && !same).then(|| Spoken::plain(&gate.says))
}

fn step(body: &StepBody, tell: &Tell) -> Vec<Spoken> {
    if body.hazards_open {
        let open = body.hazards.iter().filter(|hazard| hazard.acknowledged.is_none());
        let said = open.map(|hazard| {
            let args = [("word", hazard.word.clone()), ("line", hazard.line.clone())];
            Spoken { words: tell.text("said-hazard", &args), hazard: true }
        });
        return said.collect();
    }
    let mut parts = vec![body.instruction.clone()];
    parts.splice(0..0, body.because.clone());
    if let Some(turn) = &body.turn {
        parts.push(format!("{}.", turn.car_does));
        parts.push(turn.collar_does.clone());
    }
    if body.id.starts_with("align.change-") {
        parts.extend(body.adjusters.iter().filter(|adjuster| !adjuster.still).map(|adjuster| adjuster.said.clone()));
    }
    let judged = body.angles.iter().flat_map(|angles| &angles.rows).filter(|row| row.verdict != VerdictCode::Inside);
    parts.extend(judged.map(|row| format!("{}: {}.", row.name, row.verdict_word)));
    if let Some(timer) = &body.timer {
        let time = match timer.seconds {
            seconds if seconds > 0 && seconds % 60 == 0 => format!("{} min", seconds / 60),
            seconds => format!("{seconds} s"),
        };
        parts.push(tell.text("said-wait", &[("label", timer.label.clone()), ("time", time)]));
    }
    parts.extend(body.line.as_ref().map(|line| format!("{}.", line.says)));
    parts.extend(body.gate.as_ref().map(|gate| gate.says.clone()));
    vec![Spoken::plain(parts.join(" "))]
}

/// What was understood, number by number with its corner and unit.
pub fn read_back(read: &ReadBack, tell: &Tell) -> Option<Spoken> {
    let number = |number: &crate::view::ReadNumber| {
        let args = [("label", number.label.clone()), ("text", number.text.replace("  ", ", "))];
        tell.text("said-number", &args)
    };
    let numbers: Vec<_> = read.numbers.iter().map(number).collect();
    (!numbers.is_empty()).then(|| Spoken::plain(numbers.join(" ")))
}
