//! What people should know beside the plan.

use crate::PlanError;
use crate::answer::{Binding, LimitName, Reachable, Unreachable, UnreachableBecause};
use crate::excess::LeastExcess;
use crate::objective::{Objective, Steps, WishRow};
use crate::outlook::Outlook;
use crate::problem::{Price, Problem, Wish, WishName};
use crate::search::{TIE, best_by_collars, least_cost};
use bayhand_chassis::{Figures, Rates, diagonal, lift_without_height, moment_to_left_kg_mm, trade_line};
use bayhand_vehicle::{Car, Corners, Place};

/// Limits that the plan stands at, and what one unit more of each saves: the problem is solved again with it. For a plan
/// that keeps the height limits; where they cannot be kept, the excess says what binds.
pub(crate) fn binding(objective: &Objective, planned: &Steps, cost: f64) -> Vec<Binding> {
    let mut wider: Vec<(LimitName, Objective)> = Vec::new();
    for place in Place::ALL {
        let i = place.index();
        if planned[i] == objective.high[i] {
            let mut more = objective.clone();
            more.high[i] += 1;
            wider.push((LimitName::UpSteps { place }, more));
        }
        if planned[i] == objective.low[i] {
            let mut more = objective.clone();
            more.low[i] -= 1;
            wider.push((LimitName::DownSteps { place }, more));
        }
    }
    for (i, limit) in objective.limits.iter().enumerate() {
        let largest_step = limit.per_step.iter().fold(0.0_f64, |most, s| most.max(s.abs()));
        if limit.departure(planned).abs() + largest_step > limit.limit_mm {
            let mut more = objective.clone();
            more.limits[i].limit_mm += 1.0;
            wider.push((LimitName::HeightDiff { axle: limit.axle }, more));
        }
    }
    wider
        .into_iter()
        .map(|(limit, more)| Binding { limit, saves_per_unit: cost - least_cost(&more) })
        .filter(|b| b.saves_per_unit > TIE * (1.0 + cost))
        .collect()
}

/// The named places on the trade line, each with the whole steps that come nearest.
///
/// Nearest: least sum of squares of the distance along the line in halves of a kilogram and of the height errors, by
/// their wish, or in millimetres from where they are now.
pub(crate) fn reachable(
    problem: &Problem,
    car: &Car,
    objective: &Objective,
    outlook: &Outlook,
    least_excess: LeastExcess,
) -> Result<Vec<Reachable>, PlanError> {
    let now = problem.now();
    let cross = problem.wishes.cross_pct.map_or(50.0, |w| w.target);
    let n = diagonal(car).to_array();
    let length: f64 = n.iter().map(|v| v * v).sum();
    let ratio = Rates::of(car).adjuster_ratio;
    let one = outlook.predicted(&[0; 4]).loads_kg.to_array();
    // What one step of each collar moves along the pattern.
    let along: [f64; 4] = std::array::from_fn(|j| {
        let mut step = [0; 4];
        step[j] = 1;
        let moved = outlook.predicted(&step).loads_kg.to_array();
        (0..4).map(|i| n[i] * (moved[i] - one[i])).sum::<f64>() / length
    });
    let heights: Vec<WishRow> = Place::ALL.map(|p| height_row(problem, outlook, p)).to_vec();
    trade_line(car, &now.loads_kg, cross)?
        .into_iter()
        .filter_map(|point| {
            let there = Wish { target: point.along_kg, window: 0.5, weight: 1.0 };
            let mut nearest = objective.clone();
            nearest.price = Price::default();
            nearest.wishes.clone_from(&heights);
            nearest.wishes.push(WishRow { name: None, wish: there, error_now: -point.along_kg, per_step: along });
            let steps = best_by_collars(&nearest, least_excess)[4]?.steps;
            let lift = lift_without_height(car, point.along_kg);
            let pattern = |p: Place| lift.at(p) / (ratio.at(p) * problem.adjusters.at(p).step_mm);
            Some(Ok(Reachable {
                mark: point.mark,
                along_kg: point.along_kg,
                figures: point.figures,
                pattern_steps: Corners::from_fn(pattern),
                steps: Corners::from_array(steps),
                reached: outlook.predicted(&steps),
                cost: objective.cost(&steps),
            }))
        })
        .collect()
}

/// The wished height of a corner, or its height now within a millimetre.
fn height_row(problem: &Problem, outlook: &Outlook, place: Place) -> WishRow {
    let now = *problem.now().heights_mm.at(place);
    let wish = problem.wishes.heights_mm.at(place).unwrap_or(Wish { target: now, window: 1.0, weight: 1.0 });
    let still = outlook.predicted(&[0; 4]).heights_mm;
    let per_step = std::array::from_fn(|j| {
        let mut step = [0; 4];
        step[j] = 1;
        outlook.predicted(&step).heights_mm.at(place) - still.at(place)
    });
    WishRow { name: None, wish, error_now: now - wish.target, per_step }
}

/// Wishes that the plan leaves outside their window.
pub(crate) fn unreachable(
    problem: &Problem,
    objective: &Objective,
    planned: &Steps,
    figures: &Figures,
) -> Vec<Unreachable> {
    let moment = moment_for_all(problem, figures);
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
            let alone = least_error.abs() <= row.wish.window;
            let of_loads = matches!(wish, WishName::CrossPct | WishName::FrontDiffKg | WishName::RearDiffKg);
            Some(Unreachable {
                wish,
                because: if alone { UnreachableBecause::OtherWishes } else { UnreachableBecause::Adjusters },
                error,
                outside_by,
                least_error,
                move_left_kg_mm: if alone && of_loads { moment } else { None },
            })
        })
        .collect()
}

/// Mass × distance to the left that would let all load targets be met at once; none with fewer than two load wishes.
///
/// With cross weight and one side difference wanted, the other difference follows: FR + RL = cross share of the total.
fn moment_for_all(problem: &Problem, figures: &Figures) -> Option<f64> {
    let w = &problem.wishes;
    let total = figures.total_kg;
    // cross = (front - front_diff) / 2 + (rear + rear_diff) / 2, so rear_diff - front_diff = 2 cross - total.
    let apart = w.cross_pct.map(|c| total * (2.0 * c.target / 100.0 - 1.0));
    let (front, rear) = match (w.front_diff_kg, w.rear_diff_kg, apart) {
        (Some(front), Some(rear), _) => (front.target, rear.target),
        (Some(front), None, Some(apart)) => (front.target, front.target + apart),
        (None, Some(rear), Some(apart)) => (rear.target - apart, rear.target),
        _ => return None,
    };
    Some(moment_to_left_kg_mm(&problem.car, figures, front, rear))
}
