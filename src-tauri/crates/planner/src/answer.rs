//! What the planner answers: the JSON of `bayhand-cli plan`.

use crate::WishName;
use bayhand_chassis::{Figures, Mark, State};
use bayhand_vehicle::{Axle, Corners, Place};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A plan, and what to know beside it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Plan {
    /// Whole steps at each collar, positive raises: the best plan, also when `stop` advises to leave it.
    pub steps: Corners<i32>,
    /// Its cost.
    pub cost: f64,
    /// The reading it will give.
    pub predicted: Outcome,
    /// Expanded uncertainties (k = 2) of `predicted`, key by key.
    pub uncertainty: Outcome,
    /// Chance that every wish is inside its window after this plan, 0 to 1.
    pub inside_chance: f64,
    /// Limits that the plan stands at, and what one unit more of each would save. Empty when the height limits cannot
    /// be met: then `excess` says what binds.
    pub binding: Vec<Binding>,
    /// True exactly when no allowed plan raises the chance of being inside by two points over leaving the car alone.
    pub stop: bool,
    /// Why, in one plain English sentence; `reason` carries the same as a code and numbers.
    pub why: String,
    /// Why, as a code and numbers.
    pub reason: Reason,
    /// The named places on the trade line, and the steps that go there.
    pub trade_line: Vec<Reachable>,
    /// The best plans that turn fewer collars, fewest last.
    pub alternatives: Vec<Alternative>,
    /// Wishes that this plan leaves outside their window, and what stands against them.
    pub unreachable: Vec<Unreachable>,
    /// What the rounds taught about springs and ratios; absent with one round or data that is certain.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub learned: Option<Learned>,
    /// What makes the predicted state unlike the one that springs alone describe; absent when nothing does.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub states: Vec<State>,
    /// How far the height limits stay broken; absent when they are kept.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub excess: Option<Excess>,
    /// What was proved of the cost.
    pub proof: Proof,
}

/// Loads, heights and figures after a plan, or their expanded uncertainties.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Outcome {
    /// Loads, kg.
    pub loads_kg: Corners<f64>,
    /// Heights, mm.
    pub heights_mm: Corners<f64>,
    /// Figures of the loads.
    pub figures: Figures,
}

/// A limit of the problem.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "limit", rename_all = "kebab-case", deny_unknown_fields)]
pub enum LimitName {
    /// Steps left that raise at a corner.
    UpSteps {
        /// The corner.
        place: Place,
    },
    /// Steps left that lower at a corner.
    DownSteps {
        /// The corner.
        place: Place,
    },
    /// Side-to-side height difference of an axle.
    HeightDiff {
        /// The axle.
        axle: Axle,
    },
}

/// A limit that the plan stands at.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Binding {
    /// Which limit.
    pub limit: LimitName,
    /// What one unit more of it saves: one step of an adjuster, one mm of a height limit. Above zero, in units of cost.
    pub saves_per_unit: f64,
}

/// The main reason behind the advice.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ReasonCode {
    /// Turning as planned is worth it.
    Turn,
    /// No plan raises the chance of being inside by two points.
    NothingToGain,
    /// The cost is least when nothing is turned, although another plan would raise the chance.
    TurningCostsMore,
    /// The height limits are broken and cannot be met; the plan breaks them least.
    LimitsCannotBeMet,
}

/// The reason behind the advice.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Reason {
    /// Which.
    pub code: ReasonCode,
    /// Chance that all wishes are inside now, 0 to 1.
    pub chance_now: f64,
    /// That chance after the plan.
    pub chance_planned: f64,
    /// The best chance that was found among all allowed plans.
    pub chance_best: f64,
    /// Cost of leaving the car alone.
    pub cost_now: f64,
    /// Cost of the plan.
    pub cost_planned: f64,
}

/// A named place on the trade line, and the whole steps that come nearest to it while they keep the wished heights
/// (or, where none is wished, the heights as they are).
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Reachable {
    /// What is special about the place.
    pub mark: Mark,
    /// Load moved from now along the diagonal pattern, kg at FL.
    pub along_kg: f64,
    /// The figures exactly there.
    pub figures: Figures,
    /// Steps, not whole, that move exactly this load and no height at all.
    pub pattern_steps: Corners<f64>,
    /// Whole steps that come nearest inside adjusters and limits.
    pub steps: Corners<i32>,
    /// Where they take the car.
    pub reached: Outcome,
    /// Their cost under the wishes and prices of the problem.
    pub cost: f64,
}

/// A plan that turns fewer collars.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Alternative {
    /// Collars that it turns.
    pub collars: usize,
    /// Its steps.
    pub steps: Corners<i32>,
    /// Its cost.
    pub cost: f64,
    /// Where it takes the car.
    pub predicted: Outcome,
    /// Chance that every wish is inside its window.
    pub inside_chance: f64,
}

/// What stands against a wish.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum UnreachableBecause {
    /// No steps that the adjusters have left reach the window, whatever else is given up.
    Adjusters,
    /// The adjusters alone reach it; other wishes, limits, prices or the size of a step stand against it.
    OtherWishes,
}

/// A wish that the plan leaves outside its window.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Unreachable {
    /// Which wish.
    pub wish: WishName,
    /// Why.
    pub because: UnreachableBecause,
    /// Predicted value less target, in the unit of the wish.
    pub error: f64,
    /// How far that is outside the window.
    pub outside_by: f64,
    /// The least error, with its sign, that the adjusters could reach if nothing else mattered.
    pub least_error: f64,
    /// Mass × distance (kg mm) to be moved to the left (negative: right) so that collars can meet all load wishes at
    /// once; absent when that is not what stands against it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub move_left_kg_mm: Option<f64>,
}

/// What was learned of the car.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Learned {
    /// Readings that taught it.
    pub readings: usize,
    /// What is believed now, as a factor on the entered or assumed value.
    pub scales: Vec<LearnedScale>,
}

/// What a learned factor multiplies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Scaled {
    /// The spring rate (where no spring was entered: the wheel rate).
    SpringRate,
    /// The motion ratio.
    MotionRatio,
}

/// A learned factor.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LearnedScale {
    /// What it multiplies.
    pub what: Scaled,
    /// At which corners.
    pub places: Vec<Place>,
    /// The factor.
    pub factor: f64,
    /// One sigma of it, percent.
    pub sigma_pct: f64,
    /// One sigma before any round, percent.
    pub prior_sigma_pct: f64,
}

/// How far the height limits stay broken.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Excess {
    /// Beyond the limits after the plan, both axles together, mm.
    pub planned_mm: f64,
    /// Beyond the limits now, mm.
    pub now_mm: f64,
    /// True when it is proved that no steps break them less.
    pub least: bool,
}

/// What was proved of the cost.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Proof {
    /// True when no allowed plan costs less.
    pub optimal: bool,
    /// The optimum is at most this much below the cost; zero when optimal.
    pub gap: f64,
    /// Nodes that the search visited.
    pub nodes: u64,
}
