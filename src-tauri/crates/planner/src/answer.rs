//! What the planner answers: the JSON of `bayhand-cli plan`.

use crate::WishName;
use crate::knowledge::Learned;
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
    /// Limits that the plan stands at, and what one unit more of each would save. Empty when the limits cannot be met:
    /// then `excess` says what binds.
    pub binding: Vec<Binding>,
    /// True exactly when no allowed plan raises the chance of being inside by two points over leaving the car alone.
    pub stop: bool,
    /// Why, in plain English sentences; the other fields carry the same as codes and numbers.
    pub why: String,
    /// Why, as a code and numbers.
    pub reason: Reason,
    /// The trade line in the order along it: its named places, and between them the stops that whole steps reach.
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
    /// Whether settling and reading once more before turning is worth its time.
    pub settle_again: SettleAgain,
    /// How far the limits stay broken; absent when they are kept.
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
    /// Largest travel of one collar in this round.
    CollarChange,
    /// Side-to-side height difference of an axle.
    HeightDiff {
        /// The axle.
        axle: Axle,
    },
    /// Least rake.
    RakeLeast,
    /// Greatest rake.
    RakeMost,
    /// Least travel that stays free to the bump stop of a corner.
    BumpGap {
        /// The corner.
        place: Place,
    },
    /// Least travel that stays free to the droop limit of a corner.
    DroopGap {
        /// The corner.
        place: Place,
    },
    /// Least clearance of a point of the body.
    Clearance {
        /// Which of the points in `limits.clearances`, from 0.
        index: usize,
    },
}

impl LimitName {
    /// The height difference in front.
    pub(crate) const FRONT_DIFF: LimitName = LimitName::HeightDiff { axle: Axle::Front };
    /// The height difference behind.
    pub(crate) const REAR_DIFF: LimitName = LimitName::HeightDiff { axle: Axle::Rear };
}

/// A limit that the plan stands at.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Binding {
    /// Which limit.
    pub limit: LimitName,
    /// What one unit more of it saves: one step of an adjuster, one mm of any other limit. Above zero, in units of
    /// cost.
    pub saves_per_unit: f64,
    /// True when it saves exactly this; false when the search was cut off, and it saves at least this.
    pub exact: bool,
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
    /// The limits are broken and cannot be met; the plan breaks them least.
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
    /// True when it is proved that `stop` is right: a plan that is worth it was found, or no allowed one is.
    pub proved: bool,
    /// Cost of leaving the car alone.
    pub cost_now: f64,
    /// Cost of the plan.
    pub cost_planned: f64,
}

/// A place on the trade line, and the whole steps that come nearest to it while they keep the wished heights (or, where
/// none is wished, the heights as they are).
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Reachable {
    /// What is special about the place; absent: a stop between the named places.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mark: Option<Mark>,
    /// Load moved from now along the diagonal pattern, kg at FL. Of a stop: where its steps take the car.
    pub along_kg: f64,
    /// The figures exactly there.
    pub figures: Figures,
    /// Steps, not whole, that move exactly this load and no height at all.
    pub pattern_steps: Corners<f64>,
    /// Whole steps that come nearest inside adjusters and limits.
    pub steps: Corners<i32>,
    /// Where they take the car.
    pub reached: Outcome,
    /// Load that they move along the diagonal pattern, kg at FL.
    pub reached_along_kg: f64,
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
    /// Collars move load along one line only, and no place on it is inside the windows of all load wishes at once:
    /// mass has to be moved.
    TradeLine,
    /// The load wishes contradict each other: cross weight follows from both side differences, and no car at all meets
    /// the three targets.
    Contradiction,
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
    /// Mass × distance (kg mm) to be moved to the left (negative: right) so that collars can meet the targets of all
    /// load wishes at once; there when `because` is the trade line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub move_left_kg_mm: Option<f64>,
}

/// Whether settling and reading once more before turning is worth its time.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SettleAgain {
    /// True when the time that it saves on average is more than it takes.
    pub worth: bool,
    /// Chance that every wish is inside after the plan, were the car settled and read once more before, 0 to 1.
    pub inside_chance: f64,
    /// Minutes that it saves on average: the chance gained, times the minutes of a round. Not below zero.
    pub saves_min: f64,
    /// Minutes that it takes.
    pub costs_min: f64,
}

/// How far the limits stay broken.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Excess {
    /// Beyond the limits after the plan, all together, mm.
    pub planned_mm: f64,
    /// Beyond the limits now, mm.
    pub now_mm: f64,
    /// True when it is proved that no steps break them less.
    pub least: bool,
    /// The limits that stay broken.
    pub broken: Vec<Broken>,
}

/// A limit that stays broken.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Broken {
    /// Which limit.
    pub limit: LimitName,
    /// How far the plan is beyond it, mm.
    pub by_mm: f64,
}

/// The best plan alone.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Optimum {
    /// Whole steps at each collar, positive raises.
    pub steps: Corners<i32>,
    /// Their cost.
    pub cost: f64,
    /// How far the limits stay broken, all together, mm; zero when they are kept.
    pub excess_mm: f64,
    /// What was proved.
    pub proof: Proof,
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
