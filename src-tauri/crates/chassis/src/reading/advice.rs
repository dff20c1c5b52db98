//! Inside, outside or cannot tell; what would help; and whether these instruments can tell at all.

use super::budget::{Budget, Figure, Reading};
use super::conformity::{Decision, Interval};
use super::instruments::Instruments;
use super::sources::Source;
use crate::error::within;
use crate::{COVERAGE, StaticsError, Verdict, judge, side_tilt_limit_mm, twist_limit_mm};
use bayhand_vehicle::{Car, Corners, Place};

/// Most settles that anyone is asked for (our choice: each takes a lift and minutes).
const MOST_SETTLES: u32 = 20;
/// Most looks at one settle that anyone is asked for.
const MOST_LOOKS: u32 = 20;
/// Part of a window that the level of the pads may use up: a third, as for a measuring device and its tolerance (common
/// practice).
const LEVEL_PART: f64 = 1.0 / 3.0;

/// A figure against its window.
#[derive(Clone, Debug, PartialEq)]
pub struct Judgement {
    /// The figure and what is known of it.
    pub budget: Budget,
    /// Inside, outside or cannot tell, with a guard band of one expanded uncertainty.
    pub verdict: Verdict,
    /// The same in four words.
    pub decision: Decision,
    /// Probability that the true value is inside.
    pub inside_chance: f64,
    /// When it cannot tell: what would make it tell if the figure stays what it is, what works on the greatest
    /// contribution first; a wider window last.
    pub helps: Vec<Help>,
}

/// Something that would make a reading tell.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Help {
    /// So many looks at each settle, in all.
    MoreLooks {
        /// Looks.
        looks: u32,
    },
    /// So many settles, in all.
    MoreSettles {
        /// Settles.
        settles: u32,
    },
    /// Pads of which the twist is known better.
    BetterLevel {
        /// Expanded uncertainty (k = 2) of the twist at FL that would do, mm.
        twist_mm: f64,
    },
    /// A window of this half width holds the figure with its whole uncertainty.
    WiderWindow {
        /// In the unit of the figure.
        window: f64,
    },
}

/// Judges a figure of a reading against a window of half width `window` about `target`, in the unit of the figure.
pub fn judge_figure(reading: &Reading, figure: Figure, target: f64, window: f64) -> Judgement {
    let budget = reading.budget(figure);
    let off = budget.value - target;
    let verdict = judge(off, budget.expanded, window);
    let interval = Interval::about(target, window);
    let helps = if verdict == Verdict::CannotTell { helps(reading, figure, off, window) } else { Vec::new() };
    Judgement {
        decision: interval.decide(budget.value, budget.expanded),
        inside_chance: interval.probability(budget.value, budget.standard),
        verdict,
        helps,
        budget,
    }
}

fn helps(reading: &Reading, figure: Figure, off: f64, window: f64) -> Vec<Help> {
    let tells = |reading: &Reading| judge(off, reading.budget(figure).expanded, window) != Verdict::CannotTell;
    let (looks, settles) = (reading.looks(), reading.settles());
    let budget = reading.budget(figure);
    let mut found: Vec<(f64, Help)> = Vec::new();
    let mut offer = |sources: &[Source], help: Help| {
        found.push((sources.iter().map(|s| budget.by(*s).powi(2)).sum(), help));
    };
    if let Some(looks) = (looks + 1..=MOST_LOOKS).find(|&n| tells(&reading.repeated(n, settles))) {
        offer(&[Source::Looks], Help::MoreLooks { looks });
    }
    if let Some(settles) = (settles + 1..=MOST_SETTLES).find(|&n| tells(&reading.repeated(looks, n))) {
        offer(&[Source::Friction, Source::Patches, Source::Looks], Help::MoreSettles { settles });
    }
    // What the twist may contribute so that the whole is as small as the way to the edge of the window.
    let twist = budget.by(Source::LevelTwist);
    let edge = (window - off.abs()).abs() / COVERAGE;
    let left = edge.powi(2) - (budget.standard.powi(2) - twist.powi(2));
    if twist > 0.0 && left > 0.0 {
        let twist_mm = COVERAGE * left.sqrt() / reading.per_mm_of_twist(figure).abs();
        offer(&[Source::LevelTwist], Help::BetterLevel { twist_mm });
    }
    found.sort_by(|a, b| b.0.total_cmp(&a.0));
    let mut helps: Vec<Help> = found.into_iter().map(|(_, help)| help).collect();
    helps.push(Help::WiderWindow { window: off.abs() + budget.expanded });
    helps
}

/// Whether a window can be judged with these instruments.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Capability {
    /// The figure.
    pub figure: Figure,
    /// Half width of its window.
    pub window: f64,
    /// Expanded uncertainty with the looks and settles that are planned.
    pub planned: f64,
    /// Expanded uncertainty that no number of looks and settles gets below.
    pub at_best: f64,
    /// Settles, with the looks that are planned, after which a figure on its target is seen to be inside; none: not
    /// with twenty, and never when `at_best` is not below the window.
    pub settles_needed: Option<u32>,
    /// What leaves most of `at_best`.
    pub greatest: Option<Source>,
}

/// Tells for each window, before anything is read, whether a figure in its middle could ever be seen to be inside.
///
/// # Errors
/// A car or instruments that cannot be; a window that is not above zero.
pub fn capability(
    car: &Car,
    instruments: &Instruments,
    looks: u32,
    settles: u32,
    windows: &[(Figure, f64)],
) -> Result<Vec<Capability>, StaticsError> {
    let reading = Reading::of(car, instruments, &loads_by_data(car), looks, settles)?;
    let endless = reading.repeated(u32::MAX, u32::MAX);
    windows
        .iter()
        .enumerate()
        .map(|(i, &(figure, window))| {
            within(&format!("windows[{i}]"), window, f64::MIN_POSITIVE, 1e6, "above 0")?;
            let best = endless.budget(figure);
            Ok(Capability {
                figure,
                window,
                planned: reading.budget(figure).expanded,
                at_best: best.expanded,
                settles_needed: (1..=MOST_SETTLES)
                    .find(|&n| reading.repeated(looks, n).budget(figure).expanded < window),
                greatest: best.parts.first().map(|p| p.source),
            })
        })
        .collect()
}

/// The loads of a car as its data say, on level pads and not leaning, kg.
pub fn loads_by_data(car: &Car) -> Corners<f64> {
    let s = &car.sprung;
    let to_rear = s.cg_behind_front_axle_mm / car.wheelbase_mm;
    Corners::from_fn(|p: Place| {
        let front = p.index() < 2;
        let (share, track) = if front { (1.0 - to_rear, car.track_front_mm) } else { (to_rear, car.track_rear_mm) };
        let side = if p.is_left() { 1.0 } else { -1.0 };
        car.corners.at(p).unsprung_kg + s.mass_kg * share * (0.5 + side * s.cg_left_mm / track)
    })
}

/// How level the pads must be known to be for this car.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LevelLimits {
    /// Expanded uncertainty of the twist at FL, mm, that uses up a third of the window of the cross weight.
    pub twist_mm: f64,
    /// Side tilt, mm left above right, that uses up a third of the window of the left share. Infinite when the mass
    /// centre is on the roll axis.
    pub side_tilt_mm: f64,
}

/// The level limits of the pads for a car and its windows (half widths, percent).
///
/// # Errors
/// A car that cannot be; windows that are not above 0 and at most 50 %.
pub fn level_limits(car: &Car, cross_window_pct: f64, left_window_pct: f64) -> Result<LevelLimits, StaticsError> {
    Ok(LevelLimits {
        twist_mm: LEVEL_PART * twist_limit_mm(car, cross_window_pct)?,
        side_tilt_mm: LEVEL_PART * side_tilt_limit_mm(car, left_window_pct)?,
    })
}
