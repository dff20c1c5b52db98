//! The trade line and the footprints of a judged reading.

use crate::{
    judge::{Judged, Wishes},
    known::Known,
    plan::Aim,
    tell::Tell,
    view::{CornerCode, Footprint, LinePoint, LineSpan, TradeLine, VerdictCode},
};
use bayhand_chassis::{Mark, Verdict, diagonal, trade_line};
use bayhand_planner::{Plan, Planner};
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

/// The trade line's measure: load moved from now along the diagonal pattern, kg at FL, to a place from 0 to 1, so that
/// everything shown fits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    low_kg: f64,
    high_kg: f64,
    /// Change of the cross weight for one kilogram, %.
    per_kg: f64,
    /// The cross weight now, %.
    now_pct: f64,
}

impl Scale {
    /// Where a load moved stands.
    pub fn place(&self, along_kg: f64) -> f64 {
        ((along_kg - self.low_kg) / (self.high_kg - self.low_kg)).clamp(0.0, 1.0)
    }

    /// The load moved at a place, kg at FL.
    pub fn along_kg(&self, at: f64) -> f64 {
        self.low_kg + at.clamp(0.0, 1.0) * (self.high_kg - self.low_kg)
    }

    /// The cross weight at a place, %.
    pub fn cross_pct(&self, at: f64) -> f64 {
        self.now_pct + self.per_kg * self.along_kg(at)
    }

    /// Where a cross weight stands.
    pub fn place_of(&self, cross_pct: f64) -> f64 {
        self.place((cross_pct - self.now_pct) / self.per_kg)
    }
}

/// A trade line with its measure.
pub struct Drawn {
    /// As it is shown.
    pub line: TradeLine,
    /// How its places are found.
    pub scale: Scale,
}

/// The trade line of a judged reading, with the places that whole steps reach and where a plan leads.
///
/// `earlier` are the cross weights of the rounds to look back on, %. None for a car whose line cannot be drawn.
pub fn line(judged: &Judged, wishes: &Wishes, plan: Option<&Plan>, earlier: &[f64], tell: &Tell) -> Option<Drawn> {
    let marks = trade_line(&judged.car, &judged.loads_kg, wishes.cross_pct).ok()?;
    let per_kg = cross_per_kg(judged);
    let target = marks.iter().find(|m| m.mark == Mark::CrossWanted)?.along_kg;
    let window = (wishes.cross_window_pct / per_kg).abs();
    let band = (judged.u.cross_pct / per_kg).abs();
    let after = plan.map(|p| p.predicted.loads_kg.fl - judged.loads_kg.fl);
    let stops: Vec<f64> = plan
        .map_or_else(Vec::new, |p| p.trade_line.iter().map(|r| r.reached.loads_kg.fl - judged.loads_kg.fl).collect());
    let earlier: Vec<f64> = earlier.iter().map(|cross| (cross - judged.figures.cross_pct) / per_kg).collect();
    let shown: Vec<f64> = marks
        .iter()
        .filter(|m| m.mark != Mark::SameLeftShare)
        .map(|m| m.along_kg)
        .chain([band, -band, target - window, target + window])
        .chain(after)
        .chain(stops.iter().copied())
        .chain(earlier.iter().copied())
        .collect();
    let (low, high) = (shown.iter().copied().fold(0.0, f64::min), shown.iter().copied().fold(0.0, f64::max));
    let margin = 0.08 * (high - low).max(1.0);
    let scale = Scale { low_kg: low - margin, high_kg: high + margin, per_kg, now_pct: judged.figures.cross_pct };
    let place = |along: f64| scale.place(along);
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
    let rounds = earlier.iter().enumerate().map(|(index, along)| {
        let label = if index == 0 { tell.text("plot-found", &[]) } else { index.to_string() };
        LinePoint { at: place(*along), label, strong: false }
    });
    let line = TradeLine {
        marks: marks.iter().filter_map(named).collect(),
        stops: stops.iter().copied().map(place).collect(),
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
        rounds: rounds.collect(),
        says: tell.text(
            "line-says",
            &[
                ("cross", tell.percent(judged.figures.cross_pct, 2)),
                ("u", tell.percent(judged.u.cross_pct, 2)),
                ("verdict", tell.verdict(verdict)),
            ],
        ),
        verdict: code(verdict),
    };
    Some(Drawn { line, scale })
}

/// The ticks of a line: where whole steps lead when places all along it are aimed at, and where limits end it.
pub fn reach(known: &Known, judged: &Judged, wishes: &Wishes, drawn: &mut Drawn) {
    let scale = drawn.scale;
    let planner = known.problem(judged, wishes, Aim::Wish(wishes.first)).and_then(|problem| Planner::of(&problem).ok());
    let Some(planner) = planner else { return };
    let reached = |i: u32| scale.place(planner.place(scale.along_kg(f64::from(i) / f64::from(AIMS))).reached_along_kg);
    let mut stops: Vec<f64> = (0..=AIMS).map(reached).collect();
    stops.sort_by(f64::total_cmp);
    stops.dedup_by(|a, b| (*a - *b).abs() < 0.004);
    // A limit ends the line where the whole stretch beyond it leads to the same stop.
    let beyond = |at: Option<&f64>, left: bool| at.copied().filter(|at| if left { *at > 0.12 } else { *at < 0.88 });
    drawn.line.ends = beyond(stops.first(), true).into_iter().chain(beyond(stops.last(), false)).collect();
    drawn.line.stops = stops;
}

/// How many places along the line are aimed at to find its stops.
const AIMS: u32 = 24;

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
    known.plan(judged, wishes, Aim::Wish(wishes.first))?.ok()
}
