//! The trade line and the footprints of a judged reading.

use crate::{
    judge::{Judged, Wishes},
    known::Known,
    plan::Aim,
    tell::Tell,
    view::{CornerCode, Footprint, LinePoint, LineSpan, TradeLine, VerdictCode},
};
use bayhand_chassis::{Mark, Verdict, diagonal, trade_line};
use bayhand_planner::Plan;
use bayhand_vehicle::Place;

/// How much larger than the load itself a footprint's difference is drawn.
pub const EXAGGERATION: f64 = 12.0;

/// The verdict's code.
pub fn code(verdict: Verdict) -> VerdictCode {
    match verdict {
        Verdict::Inside => VerdictCode::Inside,
        Verdict::Outside => VerdictCode::Outside,
        Verdict::CannotTell => VerdictCode::CannotTell,
    }
}

/// The corner's code.
pub fn corner(place: Place) -> CornerCode {
    match place {
        Place::Fl => CornerCode::Fl,
        Place::Fr => CornerCode::Fr,
        Place::Rl => CornerCode::Rl,
        Place::Rr => CornerCode::Rr,
    }
}

/// The trade line of a judged reading, with the places that whole steps reach and where a plan leads.
///
/// Places are load moved from now along the diagonal pattern, kg at FL, scaled so that everything shown fits. None for
/// a car whose line cannot be drawn.
pub fn line(judged: &Judged, wishes: &Wishes, plan: Option<&Plan>, tell: &Tell) -> Option<TradeLine> {
    let marks = trade_line(&judged.car, &judged.loads_kg, wishes.cross_pct).ok()?;
    let per_kg = cross_per_kg(judged);
    let target = marks.iter().find(|m| m.mark == Mark::CrossWanted)?.along_kg;
    let window = (wishes.cross_window_pct / per_kg).abs();
    let band = (judged.u.cross_pct / per_kg).abs();
    let after = plan.map(|p| p.predicted.loads_kg.fl - judged.loads_kg.fl);
    let stops: Vec<f64> = plan
        .map_or_else(Vec::new, |p| p.trade_line.iter().map(|r| r.reached.loads_kg.fl - judged.loads_kg.fl).collect());
    let shown: Vec<f64> = marks
        .iter()
        .filter(|m| m.mark != Mark::SameLeftShare)
        .map(|m| m.along_kg)
        .chain([band, -band, target - window, target + window])
        .chain(after)
        .chain(stops.iter().copied())
        .collect();
    let (low, high) = (shown.iter().copied().fold(0.0, f64::min), shown.iter().copied().fold(0.0, f64::max));
    let margin = 0.08 * (high - low).max(1.0);
    let place = |along: f64| ((along - low + margin) / (high - low + 2.0 * margin)).clamp(0.0, 1.0);
    let against = judged.cross(wishes);
    let verdict = against.verdict().unwrap_or(Verdict::CannotTell);
    let named = |m: &bayhand_chassis::TradePoint| {
        let id = match m.mark {
            Mark::FrontEven => "mark-front-even",
            Mark::CrossWanted => "mark-cross-wanted",
            Mark::RearEven => "mark-rear-even",
            Mark::SameLeftShare => return None,
        };
        Some(LinePoint { at: place(m.along_kg), label: tell.text(id, &[]), strong: m.mark == Mark::CrossWanted })
    };
    Some(TradeLine {
        marks: marks.iter().filter_map(named).collect(),
        stops: stops.into_iter().map(place).collect(),
        window: LineSpan {
            from: place(target - window),
            to: place(target + window),
            label: tell.text("line-window", &[("window", tell.percent(wishes.cross_window_pct, 2))]),
        },
        now: LinePoint { at: place(0.0), label: tell.text("line-now", &[]), strong: true },
        now_band: LineSpan {
            from: place(-band),
            to: place(band),
            label: tell.text("line-band", &[("u", tell.percent(judged.u.cross_pct, 2))]),
        },
        after: after.map(|along| LinePoint { at: place(along), label: tell.text("line-after", &[]), strong: false }),
        ends: Vec::new(),
        says: tell.text(
            "line-says",
            &[
                ("cross", tell.percent(judged.figures.cross_pct, 2)),
                ("u", tell.percent(judged.u.cross_pct, 2)),
                ("verdict", tell.verdict(verdict)),
            ],
        ),
        verdict: code(verdict),
    })
}

/// Change of the cross weight for one kilogram moved along the diagonal pattern, %.
fn cross_per_kg(judged: &Judged) -> f64 {
    let n = diagonal(&judged.car);
    100.0 * (n.fr + n.rl) / judged.figures.total_kg
}

/// The four contact patches: wanted is the load where the cross weight wanted stands on the trade line.
pub fn footprints(judged: &Judged, wishes: &Wishes, tell: &Tell) -> Vec<Footprint> {
    let Ok(marks) = trade_line(&judged.car, &judged.loads_kg, wishes.cross_pct) else { return Vec::new() };
    let Some(wanted) = marks.iter().find(|m| m.mark == Mark::CrossWanted) else { return Vec::new() };
    let most = wanted.loads_kg.to_array().into_iter().fold(1.0, f64::max);
    Place::ALL
        .into_iter()
        .map(|place| {
            let (is, should) = (*judged.loads_kg.at(place), *wanted.loads_kg.at(place));
            let difference = is - should;
            let id = if difference.abs() < 0.05 {
                "print-right"
            } else if difference > 0.0 {
                "print-heavy"
            } else {
                "print-light"
            };
            Footprint {
                corner: corner(place),
                name: tell.corner(place),
                load: tell.kg_bare(is),
                difference: tell.text(id, &[("kg", tell.kg_bare(difference.abs()))]),
                // Largest is 0.6 of the place, so that an exaggerated difference still fits.
                wanted_area: 0.6 * should / most,
                shown_area: (0.6 * (should + EXAGGERATION * difference) / most).clamp(0.05, 1.0),
            }
        })
        .collect()
}

/// 'Differences are drawn 12 times larger'.
pub fn scale(tell: &Tell) -> String {
    tell.text("print-scale", &[("times", format!("{EXAGGERATION:.0}"))])
}

/// The plan for the wish that comes first, to be drawn on the line.
pub fn first_plan(known: &Known, judged: &Judged, wishes: &Wishes) -> Option<Plan> {
    known.plan(judged, wishes, Aim(wishes.first))?.ok()
}
