//! What the gates of a recorded step find, and what a person sees and relies on at it.

use super::Desk;
use crate::{
    align::{JUDGE, READ},
    ask::Refused,
    body::{AnglesSeen, GateSeen, JudgedSeen, PlanSeen, Seen},
    draft::Draft,
    gates::Scene,
    judge::Judged,
    known::Known,
    log::Log,
    plan::{self, Aim},
    show,
    tell::Tell,
};
use bayhand_procedure::{Entered, Evidence, Found, Gate, Intent, Step};
use std::collections::BTreeMap;

impl Desk {
    /// What the gates of a recorded step find, and what the person sees and relies on.
    pub(super) fn evidence(&self, log: &Log, intent: &Intent) -> Result<(Evidence, Option<Seen>), Refused> {
        let Intent::Record { step, by, entries } = intent else { return Ok((Vec::new(), None)) };
        let Some((_, step)) = log.document.step(step) else { return Ok((Vec::new(), None)) };
        let tell = self.tell_to(by);
        let draft = Draft::check(step, entries, tell.words)?;
        let known = Known::with(log, &draft);
        let now = self.clock.now();
        let answers = Scene { known: &known, step, now, tell: &tell, by }.answers();
        // A wait that has not passed is no finding about the car: it is refused, not recorded as a failed try.
        let early = step.gates.iter().zip(&answers).find(|(gate, a)| **gate == Gate::Waited && a.found != Found::Pass);
        if let Some((_, answer)) = early {
            return Err(Refused { code: "wait".into(), field: None, says: answer.says.clone() });
        }
        let judged = judged_at(&known, step);
        let plan = judged.as_ref().and_then(|judged| accepted(&known, step, judged, entries, &tell));
        let evidence = answers.iter().map(|a| a.found).collect();
        let gates = answers.into_iter().map(|a| GateSeen { found: a.found, says: a.says }).collect();
        let judged = judged.as_ref().map(judged_seen);
        let heard = self.heed.of(&step.id, entries);
        let angles = angles_seen(&known, step, entries);
        Ok((evidence, Some(Seen { used: draft.used_texts(), heard, gates, judged, angles, plan })))
    }
}

/// The judgement that the person sees at this step.
fn judged_at(known: &Known, step: &Step) -> Option<Judged> {
    let set = if step.id == "loop.judge" || step.id == "loop.advise" {
        known.judged_set()
    } else {
        known.reading_set(crate::reading::group_of(&step.id)?, false)
    };
    known.judged(set?).ok()
}

/// The plan that is accepted with the chosen place on the trade line.
fn accepted(
    known: &Known,
    step: &Step,
    judged: &Judged,
    entries: &BTreeMap<String, Entered>,
    tell: &Tell,
) -> Option<PlanSeen> {
    if step.id != "loop.judge" {
        return None;
    }
    let aim = match entries.get("next")?.text.as_str() {
        plan::TURN_PLACE => Aim::Place(known.value(&step.id, plan::PLACE)?),
        option => Aim::of(option)?,
    };
    let wishes = known.wishes()?;
    let plan = known.plan(judged, &wishes, aim)?.ok()?;
    let why = show::why(known, &plan, judged, &wishes, aim, tell);
    Some(plan::seen(known, &plan, judged, aim, why))
}

/// The angles that the person sees at a step that judges or reads them, and what is planned for those that are changed.
fn angles_seen(known: &Known, step: &Step, entries: &BTreeMap<String, Entered>) -> Option<AnglesSeen> {
    let aligned = match step.id.as_str() {
        JUDGE => known.aligned(READ),
        READ | "final.angles" => known.aligned(&step.id),
        _ => return None,
    };
    let aligned = aligned.ok()?;
    let rows = aligned.rows.iter().map(|row| {
        let values = [row.is.deg, row.is.expanded_deg(), row.target_deg, row.window_deg];
        (row.code(), values.map(|v| v.to_string()))
    });
    let next = entries.get("next").map_or("", |e| e.text.as_str());
    let plan = next.starts_with("change-").then(|| known.angle_plan(&aligned, next == "change-caster")).flatten();
    let turns = aligned.rows.iter().filter_map(|row| {
        let turns = plan.as_ref()?.at(row.place).turns[row.angle.index()];
        Some((row.code(), turns.to_string()))
    });
    Some(AnglesSeen { rows: rows.collect(), turns: turns.collect() })
}

fn judged_seen(judged: &Judged) -> JudgedSeen {
    let (f, u) = (&judged.figures, &judged.u);
    let figure = |name: &str, value: f64, u: f64| (name.to_owned(), (value.to_string(), u.to_string()));
    JudgedSeen {
        readings: judged.set.readings.iter().filter_map(|r| r.number).collect(),
        loads_kg: judged.loads_kg.to_array().map(|v| v.to_string()),
        heights_mm: judged.heights_mm.to_array().map(|v| v.to_string()),
        figures: BTreeMap::from([
            figure("total_kg", f.total_kg, u.total_kg),
            figure("front_pct", f.front_pct, u.front_pct),
            figure("left_pct", f.left_pct, u.left_pct),
            figure("cross_pct", f.cross_pct, u.cross_pct),
            figure("front_diff_kg", f.front_diff_kg, u.front_diff_kg),
            figure("rear_diff_kg", f.rear_diff_kg, u.rear_diff_kg),
        ]),
    }
}
