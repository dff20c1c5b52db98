//! When a fault of the practice car begins, and what a person does that puts it right.

use super::settles;
use crate::{known::Known, log::Line};
use bayhand_practice::Fault;
use bayhand_procedure::Event;

/// True while a fault acts. What moves, leaks or drifts begins with the settle after turning was first decided on, so that
/// a sound reading stands before it; the rest is there from the start.
pub(super) fn acts(fault: Fault, known: &Known) -> bool {
    begun(fault, known).is_some_and(|from| !put_right(fault, known, from))
}

/// How many recordings there were when it began; none before it has.
fn begun(fault: Fault, known: &Known) -> Option<usize> {
    if fault.from_the_start() {
        return Some(0);
    }
    let recordings = known.recordings();
    let decided = recordings.iter().position(|r| r.step == "loop.judge")?;
    (settles(recordings) > settles(&recordings[..decided])).then_some(decided + 1)
}

/// Who does its step again, or was held at it, looks at what the step is about and finds it. A step that comes with every
/// round finds it only once a gate has held, since nobody looks for what nothing told of.
fn put_right(fault: Fault, known: &Known, from: usize) -> bool {
    let recordings = known.recordings();
    let began = from.checked_sub(1).map_or(0, |last| recordings[last].number);
    let (lines, remedy) = (&known.log.lines, remedy(fault));
    let since: Vec<_> = lines.iter().filter(|line| line.number > began).filter_map(held).collect();
    if since.iter().any(|(_, step)| remedy.alone.contains(step)) {
        return true;
    }
    let held = since.first().map(|(number, _)| *number);
    recordings.iter().enumerate().skip(from).any(|(place, recording)| {
        let again = recordings[..place].iter().any(|before| before.step == recording.step);
        let told = held.is_some_and(|number| number < recording.number);
        again && (remedy.alone.contains(&recording.step) || told && remedy.once_told.contains(&recording.step))
    })
}

/// Number and step of an entry that a gate held.
fn held(line: &Line) -> Option<(u64, &str)> {
    match &line.happened.event {
        Event::Tried { step, .. } => Some((line.number, step)),
        _ => None,
    }
}

/// Steps that put a fault right when they are done again.
struct Remedy {
    /// Done again for no other reason than to look at just that.
    alone: &'static [&'static str],
    /// Done again in each round, or on the way.
    once_told: &'static [&'static str],
}

fn remedy(fault: Fault) -> Remedy {
    let (alone, once_told): (&[&str], &[&str]) = match fault {
        Fault::PadZero | Fault::PoundsShown => (&["pads.zero"], &["lower.zeros"]),
        Fault::PadLow => (&["pads.place", "pads.survey", "pads.shims", "pads.level"], &[]),
        Fault::OffPadMiddle => (&["baseline.placed"], &["lower.pads"]),
        Fault::BallastForgotten | Fault::BallastSlides => (&["used.ballast"], &["restore.ballast"]),
        Fault::LinkLeftOn => (&["links.front-release"], &[]),
        Fault::BarPreload => (&["back.rear"], &[]),
        Fault::TyreDown | Fault::HotPressure => (&["used.pressures", "final.cold"], &["restore.pressures"]),
        Fault::StickyStrut => (&["raised.dampers", "raised.play"], &[]),
        Fault::OnBumpStop => (&["raised.dampers"], &[]),
        Fault::ArmTouches => (&[], &["settle.touch"]),
        Fault::CollarSlips => (&[], &["loop.turn-FR"]),
        Fault::RimRunOut => (&["align.runout"], &[]),
        Fault::BentArm => (&["raised.play"], &[]),
        Fault::SteeringOff => (&["align.plates", "settle.steering"], &[]),
        Fault::WrongCorner => (&[], &["loop.turn-RL", "loop.turn-RR"]),
    };
    Remedy { alone, once_told }
}
