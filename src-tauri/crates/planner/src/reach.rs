//! Wishes that a plan leaves outside, and what stands against them.

use crate::answer::{Unreachable, UnreachableBecause};
use crate::objective::{Objective, Steps};
use crate::problem::{Problem, WishName};
use bayhand_chassis::{Figures, moment_to_left_kg_mm};
use bayhand_vehicle::Car;

/// Wishes that the plan leaves outside their window.
pub(crate) fn unreachable(
    problem: &Problem,
    car: &Car,
    objective: &Objective,
    planned: &Steps,
    figures: &Figures,
) -> Vec<Unreachable> {
    let against = against_loads(problem, car, figures);
    objective
        .wishes
        .iter()
        .filter_map(|row| {
            let (wish, error) = (row.name?, row.error(planned));
            let outside_by = error.abs() - row.wish.window;
            if outside_by <= 0.0 {
                return None;
            }
            let (mut low, mut high) = (row.error_now, row.error_now);
            for collar in 0..4 {
                let ends = [objective.low[collar], objective.high[collar]].map(|s| row.per_step[collar] * f64::from(s));
                low += ends[0].min(ends[1]);
                high += ends[0].max(ends[1]);
            }
            let least_error = if low > 0.0 { low } else { high.min(0.0) };
            let of_loads = matches!(wish, WishName::CrossPct | WishName::FrontDiffKg | WishName::RearDiffKg);
            let (because, move_left_kg_mm) = if least_error.abs() > row.wish.window {
                (UnreachableBecause::Adjusters, None)
            } else {
                match against {
                    Against::Line { move_left_kg_mm } if of_loads => {
                        (UnreachableBecause::TradeLine, Some(move_left_kg_mm))
                    }
                    Against::Themselves if of_loads => (UnreachableBecause::Contradiction, None),
                    _ => (UnreachableBecause::OtherWishes, None),
                }
            };
            Some(Unreachable { wish, because, error, outside_by, least_error, move_left_kg_mm })
        })
        .collect()
}

/// What stands against the load wishes as a whole.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Against {
    /// Some place on the trade line is inside all of their windows.
    Nothing,
    /// No place on the line is; moving this moment to the left makes one that meets all their targets.
    Line { move_left_kg_mm: f64 },
    /// No car at all meets them: cross weight follows from both side differences.
    Themselves,
}

/// With `a` kg moved at FL along the pattern (1, -1, -t, t) the front difference gains 2 a, the rear one loses 2 t a, and
/// the cross weight loses (1 + t) a, as kg on FR + RL.
fn against_loads(problem: &Problem, car: &Car, figures: &Figures) -> Against {
    let w = &problem.wishes;
    let t = car.track_front_mm / car.track_rear_mm;
    let total = figures.total_kg;
    let kg_per_pct = total / 100.0 / (1.0 + t);
    // Where each wish wants the car on the line: the middle of its window, and its half width, kg at FL.
    let places = [
        w.front_diff_kg.map(|w| ((w.target - figures.front_diff_kg) / 2.0, w.window / 2.0)),
        w.rear_diff_kg.map(|w| ((figures.rear_diff_kg - w.target) / (2.0 * t), w.window / (2.0 * t))),
        w.cross_pct.map(|w| ((figures.cross_pct - w.target) * kg_per_pct, w.window * kg_per_pct)),
    ];
    let given: Vec<(f64, f64)> = places.into_iter().flatten().collect();
    let low = given.iter().map(|(at, half)| at - half).fold(f64::NEG_INFINITY, f64::max);
    let high = given.iter().map(|(at, half)| at + half).fold(f64::INFINITY, f64::min);
    if low <= high {
        return Against::Nothing;
    }
    // cross = (front - front_diff) / 2 + (rear + rear_diff) / 2, so rear_diff - front_diff = 2 cross - total.
    let apart = w.cross_pct.map(|c| total * (2.0 * c.target / 100.0 - 1.0));
    let (front, rear) = match (w.front_diff_kg, w.rear_diff_kg, w.cross_pct, apart) {
        (Some(front), Some(rear), Some(cross), _) => {
            let follows_pct = 50.0 + 50.0 * (rear.target - front.target) / total;
            if (follows_pct - cross.target).abs() > cross.window {
                return Against::Themselves;
            }
            (front.target, rear.target)
        }
        (Some(front), Some(rear), None, _) => (front.target, rear.target),
        (Some(front), None, _, Some(apart)) => (front.target, front.target + apart),
        (None, Some(rear), _, Some(apart)) => (rear.target - apart, rear.target),
        _ => return Against::Nothing,
    };
    Against::Line { move_left_kg_mm: moment_to_left_kg_mm(car, figures, front, rear) }
}
