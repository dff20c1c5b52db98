//! From problem to plan.

use crate::PlanError;
use crate::answer::{Alternative, Excess, Outcome, Plan, Proof, Reason, ReasonCode};
use crate::belief::Belief;
use crate::excess::least_excess;
use crate::explain;
use crate::objective::{Objective, Steps, collars};
use crate::outlook::Outlook;
use crate::problem::Problem;
use crate::search::{Found, best_by_collars};
use crate::stop::{Advice, advise};
use bayhand_chassis::{From as Standing, State, StaticsError, To, predict};
use bayhand_vehicle::{Car, Corners, Place};

/// Plans what to turn.
///
/// The cost is taken at the mean of what is believed of the car: the data as entered, and what the rounds taught. With
/// certain data and one round the steps are the exact optimum for the car as entered.
///
/// # Errors
/// The first field of the problem that cannot be, by path, value and range; a car that cannot stand.
pub fn plan(problem: &Problem) -> Result<Plan, PlanError> {
    problem.validate()?;
    let belief = Belief::prior(problem)?.after_rounds(problem)?;
    let car = belief.car();
    let per_step = belief.per_step()?;
    let now = problem.now();
    let objective = Objective::of(problem, &per_step, &now.loads_kg, &now.heights_mm);
    let outlook = Outlook::of(problem, &car, per_step, belief.doubts()?)?;

    let least = least_excess(&objective);
    let by_collars = best_by_collars(&objective, least);
    // With all four collars allowed there is always a plan that breaks the limits least; leaving the car alone is
    // what remains when the search was cut off before it met one.
    let alone = Found {
        steps: [0; 4],
        cost: objective.cost(&[0; 4]),
        excess_mm: objective.excess(&[0; 4]),
        excess_proved: false,
        gap: objective.cost(&[0; 4]),
        nodes: 0,
    };
    let best = by_collars[4].unwrap_or(alone);
    let advice = advise(&objective, &outlook, &best.steps, best.excess_mm);
    let predicted = outlook.predicted(&best.steps);
    let alternatives = (0..collars(&best.steps))
        .rev()
        .filter_map(|most| by_collars[most].filter(|found| collars(&found.steps) == most))
        .map(|found| Alternative {
            collars: collars(&found.steps),
            steps: Corners::from_array(found.steps),
            cost: found.cost,
            predicted: outlook.predicted(&found.steps),
            inside_chance: outlook.chance(&objective, &found.steps),
        })
        .collect();
    let reason = reason(&objective, &best, &advice);
    Ok(Plan {
        steps: Corners::from_array(best.steps),
        cost: best.cost,
        predicted,
        uncertainty: outlook.uncertainty(&best.steps),
        inside_chance: advice.chance_planned,
        binding: if best.excess_mm > 0.0 { Vec::new() } else { explain::binding(&objective, &best.steps, best.cost) },
        stop: advice.stop,
        why: sentence(&reason, &best),
        reason,
        trade_line: explain::reachable(problem, &car, &objective, &outlook, least)?,
        alternatives,
        unreachable: explain::unreachable(problem, &objective, &best.steps, &predicted.figures),
        learned: belief.learned(problem),
        states: states(problem, &car, &best.steps, &predicted),
        excess: (best.excess_mm > 0.0).then(|| Excess {
            planned_mm: best.excess_mm,
            now_mm: objective.excess(&[0; 4]),
            least: best.excess_proved,
        }),
        proof: Proof { optimal: best.gap == 0.0 && best.excess_proved, gap: best.gap, nodes: best.nodes },
    })
}

fn reason(objective: &Objective, best: &Found, advice: &Advice) -> Reason {
    let code = if best.excess_mm > 0.0 {
        ReasonCode::LimitsCannotBeMet
    } else if advice.stop {
        ReasonCode::NothingToGain
    } else if best.steps == [0; 4] {
        ReasonCode::TurningCostsMore
    } else {
        ReasonCode::Turn
    };
    Reason {
        code,
        chance_now: advice.chance_now,
        chance_planned: advice.chance_planned,
        chance_best: advice.chance_best,
        cost_now: objective.cost(&[0; 4]),
        cost_planned: best.cost,
    }
}

fn sentence(reason: &Reason, best: &Found) -> String {
    let percent = |chance: f64| format!("{:.0} %", 100.0 * chance);
    let (now, planned, top) = (percent(reason.chance_now), percent(reason.chance_planned), percent(reason.chance_best));
    match reason.code {
        ReasonCode::Turn => {
            format!("Turning as planned takes the chance that all wishes are inside from {now} to {planned}.")
        }
        ReasonCode::NothingToGain => {
            let nearer = if best.steps == [0; 4] { "" } else { " The steps given still bring the car nearest." };
            format!(
                "No steps raise the chance that all wishes are inside by two points: {now} now, {top} at best.{nearer}"
            )
        }
        ReasonCode::TurningCostsMore => {
            format!("Turning costs more than it brings, although the chance could rise from {now} to {top}.")
        }
        ReasonCode::LimitsCannotBeMet => format!(
            "The height limits cannot be met with the steps left; this plan breaks them least, by {:.1} mm.",
            best.excess_mm
        ),
    }
}

/// What makes the predicted state unlike the one that springs alone describe.
fn states(problem: &Problem, car: &Car, steps: &Steps, predicted: &Outcome) -> Vec<State> {
    let now = problem.now();
    let level = Corners::same(0.0);
    let from = Standing { collar_mm: level, pads_mm: level, loads_kg: now.loads_kg, heights_mm: now.heights_mm };
    let collar_mm = Corners::from_fn(|p| f64::from(steps[p.index()]) * problem.adjusters.at(p).step_mm);
    match predict(car, &from, &To { collar_mm, pads_mm: level }) {
        Ok(found) => found.states,
        // More than one wheel off its pad, or collars moved beyond any car: the linear loads say which wheels.
        Err(StaticsError::TooFewWheels | StaticsError::Value { .. }) => Place::ALL
            .into_iter()
            .filter(|p| *predicted.loads_kg.at(*p) <= 0.0)
            .map(|place| State::WheelLifted { place })
            .collect(),
        // The car has stood already: its sensitivities were computed.
        Err(StaticsError::Car(_) | StaticsError::TipsOver { .. }) => Vec::new(),
    }
}
