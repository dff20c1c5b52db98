//! From problem to plan.

use crate::PlanError;
use crate::answer::{Alternative, Excess, Optimum, Outcome, Plan, Proof, Reachable, Reason, ReasonCode, SettleAgain};
use crate::belief::Belief;
use crate::binding::{binding, broken};
use crate::excess::{LIMIT_SLACK_MM, LeastExcess, least_excess};
use crate::line::Line;
use crate::objective::{Objective, Start, Steps, collars};
use crate::outlook::Outlook;
use crate::prior::Prior;
use crate::problem::Problem;
use crate::reach::unreachable;
use crate::search::{Found, SIDE_WORK_LIMIT, WORK_LIMIT, best};
use crate::sentence::{About, why};
use crate::stop::{Advice, advise};
use bayhand_chassis::{From as Standing, State, StaticsError, To, predict};
use bayhand_vehicle::{Car, Corners, Place};

/// Plans what to turn, with all that people should know beside it.
///
/// The cost is taken at the mean of what is believed of the car: the data as entered, and what the rounds taught. With
/// certain data and one round the steps are the exact optimum for the car as entered.
///
/// # Errors
/// The first field of the problem that cannot be, by path, value and range; a car that cannot stand.
pub fn plan(problem: &Problem) -> Result<Plan, PlanError> {
    Ok(Planner::of(problem)?.plan())
}

/// The best plan alone, without its explanation: what [`plan`] gives, in a small part of its time.
///
/// # Errors
/// As [`plan`].
pub fn optimum(problem: &Problem) -> Result<Optimum, PlanError> {
    problem.validate()?;
    let objective = if problem.rounds.len() > 1 || problem.known.is_some() {
        let belief = Belief::of(problem)?;
        Objective::of(problem, &belief.car, &belief.per_step, &belief.start)
    } else {
        // One reading teaches nothing: the mean is that of the prior, and the car stands as it was read.
        let prior = Prior::of(problem)?;
        let now = problem.now();
        let start = Start { loads_kg: now.loads_kg, heights_mm: now.heights_mm };
        Objective::of(problem, &prior.filled, &prior.per_step_at(&prior.logs.mean)?, &start)
    };
    let least = least_excess(&objective);
    Ok(optimum_of(&best_or_none(&objective, &least), &least))
}

/// A problem with everything computed that does not depend on the place on the trade line: to be asked again and again
/// while a person drags.
pub struct Planner {
    problem: Problem,
    belief: Belief,
    objective: Objective,
    outlook: Outlook,
    least: LeastExcess,
    line: Line,
}

impl Planner {
    /// Prepares a problem.
    ///
    /// # Errors
    /// As [`plan`].
    pub fn of(problem: &Problem) -> Result<Planner, PlanError> {
        problem.validate()?;
        let belief = Belief::of(problem)?;
        let objective = Objective::of(problem, &belief.car, &belief.per_step, &belief.start);
        let (apart, doubts) = belief.doubts();
        let outlook = Outlook::of(problem, belief.start, belief.per_step, apart, doubts);
        let line = Line::of(problem, &belief.car, &objective, &belief.start)?;
        let least = least_excess(&objective);
        Ok(Planner { problem: problem.clone(), belief, objective, outlook, least, line })
    }

    /// The best plan alone.
    pub fn optimum(&self) -> Optimum {
        optimum_of(&best_or_none(&self.objective, &self.least), &self.least)
    }

    /// The whole steps that come nearest to a place on the trade line, given as load moved from now along the diagonal
    /// pattern, kg at FL, while they keep the wished heights (or, where none is wished, the heights as they are).
    /// Places beyond the ends of the line are answered as well.
    pub fn place(&self, along_kg: f64) -> Reachable {
        self.line.place(along_kg, &self.objective, &self.outlook, &self.least, [0; 4])
    }

    /// Expanded uncertainties (k = 2) of what steps will give.
    pub fn uncertainty(&self, steps: &Corners<i32>) -> Outcome {
        self.outlook.uncertainty(&steps.to_array())
    }

    /// Chance that every wish is inside its window after these steps, 0 to 1.
    pub fn inside_chance(&self, steps: &Corners<i32>) -> f64 {
        self.outlook.chance(&self.objective, &steps.to_array())
    }

    /// The best plan, and what to know beside it.
    pub fn plan(&self) -> Plan {
        let (objective, outlook) = (&self.objective, &self.outlook);
        let found = best_or_none(objective, &self.least);
        let advice = advise(objective, outlook, &found.steps, self.least.excess_mm);
        let predicted = outlook.predicted(&found.steps);
        let kept = self.least.excess_mm == 0.0;
        let excess = (!kept).then(|| Excess {
            planned_mm: self.least.excess_mm,
            now_mm: objective.excess(&[0; 4]),
            least: self.least.proved,
            broken: broken(objective, &found.steps),
        });
        let binding = if kept { binding(&self.problem, objective, found.cost) } else { Vec::new() };
        let unreachable = unreachable(&self.problem, &self.belief.car, objective, &found.steps, &predicted.figures);
        let reason = reason(objective, &found, kept, &advice);
        let settle_again = self.settle_again(&found.steps, advice.chance_planned);
        let proof = optimum_of(&found, &self.least).proof;
        let about = About {
            reason: &reason,
            turns_nothing: found.steps == [0; 4],
            mends_limits: kept && objective.excess(&[0; 4]) > LIMIT_SLACK_MM,
            excess: excess.as_ref(),
            binding: &binding,
            unreachable: &unreachable,
            settle_again: &settle_again,
            learned: self.belief.learned.as_ref(),
            proof: &proof,
        };
        Plan {
            steps: Corners::from_array(found.steps),
            cost: found.cost,
            predicted,
            uncertainty: outlook.uncertainty(&found.steps),
            inside_chance: advice.chance_planned,
            why: why(&about),
            binding,
            stop: advice.stop,
            reason,
            trade_line: self.line.whole(objective, outlook, &self.least),
            alternatives: self.alternatives(&found.steps),
            unreachable,
            learned: self.belief.learned.clone(),
            states: states(&self.problem, &self.belief, &found.steps, &predicted),
            settle_again,
            excess,
            proof,
        }
    }

    /// The best plans that turn fewer collars, fewest last. One that turns fewer still is not named twice.
    fn alternatives(&self, planned: &Steps) -> Vec<Alternative> {
        let with_at_most = |most: usize| best(&self.objective, &self.least, most, [0; 4], SIDE_WORK_LIMIT);
        (0..collars(planned))
            .rev()
            .filter_map(|most| with_at_most(most).filter(|found| collars(&found.steps) == most))
            .map(|found| Alternative {
                collars: collars(&found.steps),
                steps: Corners::from_array(found.steps),
                cost: found.cost,
                predicted: self.outlook.predicted(&found.steps),
                inside_chance: self.outlook.chance(&self.objective, &found.steps),
            })
            .collect()
    }

    /// Weighs one more settle and look before turning. The plan after it would be another one, as near to its targets
    /// as this one; how well it is known is computed, the rest is taken as it is.
    fn settle_again(&self, planned: &Steps, chance: f64) -> SettleAgain {
        let (apart, doubts) = self.belief.doubts_after_another_reading();
        let after = Outlook::of(&self.problem, self.belief.start, self.belief.per_step, apart, doubts);
        let inside_chance = after.chance(&self.objective, planned).max(chance);
        let minutes = &self.problem.minutes;
        let saves_min = (inside_chance - chance) * minutes.round;
        SettleAgain { worth: saves_min > minutes.settle, inside_chance, saves_min, costs_min: minutes.settle }
    }
}

/// The best plan; leaving the car alone where the search was cut off before it met one that breaks the limits least.
fn best_or_none(objective: &Objective, least: &LeastExcess) -> Found {
    let cost = objective.cost(&[0; 4]);
    best(objective, least, 4, [0; 4], WORK_LIMIT).unwrap_or(Found { steps: [0; 4], cost, gap: cost, nodes: WORK_LIMIT })
}

fn optimum_of(found: &Found, least: &LeastExcess) -> Optimum {
    Optimum {
        steps: Corners::from_array(found.steps),
        cost: found.cost,
        excess_mm: least.excess_mm,
        proof: Proof { optimal: found.gap == 0.0 && least.proved, gap: found.gap, nodes: found.nodes },
    }
}

fn reason(objective: &Objective, found: &Found, kept: bool, advice: &Advice) -> Reason {
    let code = if !kept {
        ReasonCode::LimitsCannotBeMet
    } else if advice.stop {
        ReasonCode::NothingToGain
    } else if found.steps == [0; 4] {
        ReasonCode::TurningCostsMore
    } else {
        ReasonCode::Turn
    };
    Reason {
        code,
        chance_now: advice.chance_now,
        chance_planned: advice.chance_planned,
        chance_best: advice.chance_best,
        proved: advice.proved,
        cost_now: objective.cost(&[0; 4]),
        cost_planned: found.cost,
    }
}

/// What makes the predicted state unlike the one that springs alone describe.
fn states(problem: &Problem, belief: &Belief, steps: &Steps, predicted: &Outcome) -> Vec<State> {
    let car: &Car = &belief.car;
    let level = Corners::same(0.0);
    let from = Standing {
        collar_mm: level,
        pads_mm: level,
        loads_kg: belief.start.loads_kg,
        heights_mm: belief.start.heights_mm,
    };
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
