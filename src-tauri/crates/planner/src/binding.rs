//! Which limits bind, and what one unit more of each would buy.

use crate::answer::{Binding, Broken, LimitName};
use crate::excess::LIMIT_SLACK_MM;
use crate::objective::{LimitRow, Objective, Steps, box_of, steps_in};
use crate::problem::Problem;
use crate::search::{SIDE_WORK_LIMIT, below};
use bayhand_vehicle::Place;

/// Limits that cost something, the dearest first: the problem is solved again with one unit more of each in turn. For a
/// plan that keeps the limits; where they cannot be kept, the excess says what binds.
pub(crate) fn binding(problem: &Problem, objective: &Objective, cost: f64) -> Vec<Binding> {
    let mut wider: Vec<(LimitName, Objective)> = Vec::new();
    for place in Place::ALL {
        let (i, adjuster) = (place.index(), problem.adjusters.at(place));
        // A plan that is only possible with the new step turns it, so the collar is held there.
        let held = |steps: i32| {
            let mut more = objective.clone();
            (more.low[i], more.high[i]) = (steps, steps);
            more
        };
        let most = steps_in(problem.limits.collar_change_mm, adjuster.step_mm);
        if adjuster.up_steps < most {
            wider.push((LimitName::UpSteps { place }, held(objective.high[i] + 1)));
        }
        if adjuster.down_steps < most {
            wider.push((LimitName::DownSteps { place }, held(objective.low[i] - 1)));
        }
    }
    if let Some(change) = problem.limits.collar_change_mm {
        let mut more = objective.clone();
        [more.low, more.high] = box_of(problem, Some(change + 1.0));
        if (more.low, more.high) != (objective.low, objective.high) {
            wider.push((LimitName::CollarChange, more));
        }
    }
    for (i, limit) in objective.limits.iter().enumerate() {
        let mut more = objective.clone();
        more.limits[i] = limit.with_one_mm_more();
        wider.push((limit.name, more));
    }
    let mut binding: Vec<Binding> = wider
        .into_iter()
        .filter_map(|(limit, more)| {
            let (less, exact) = below(&more, cost, SIDE_WORK_LIMIT);
            less.map(|less| Binding { limit, saves_per_unit: cost - less, exact })
        })
        .collect();
    binding.sort_by(|a, b| b.saves_per_unit.total_cmp(&a.saves_per_unit));
    binding
}

/// The limits that a plan breaks.
pub(crate) fn broken(objective: &Objective, planned: &Steps) -> Vec<Broken> {
    let broken = |limit: &LimitRow| Broken { limit: limit.name, by_mm: limit.excess_of(limit.value(planned)) };
    objective.limits.iter().map(broken).filter(|b| b.by_mm > LIMIT_SLACK_MM).collect()
}
