//! What is asked of the planner: the JSON of `bayhand-cli plan`.

use crate::{Knowledge, Limits, PlanError};
use bayhand_chassis::{Confidence, Pads};
use bayhand_vehicle::{Adjuster, Car, Corners, Place};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A problem for [`crate::plan`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Problem {
    /// The car as entered.
    pub car: Car,
    /// How well its springs and ratios are known; absent: [`Confidence::default`].
    #[serde(default)]
    pub confidence: Confidence,
    /// What each collar may do.
    pub adjusters: Corners<Adjuster>,
    /// Limits that a plan must keep; absent: none.
    #[serde(default)]
    pub limits: Limits,
    /// What is wanted of the car.
    pub wishes: Wishes,
    /// Price of turning; absent: nothing.
    #[serde(default)]
    pub price: Price,
    /// What is known of pads and readings.
    pub pads: Pads,
    /// The readings of this job, oldest first; the last one is now. Each is one look at one settle: the same state
    /// read again after another settle is a round in which nothing was turned.
    pub rounds: Vec<Round>,
    /// What was learned of this car at an earlier visit; absent: nothing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub known: Option<Knowledge>,
    /// What a settle and a round cost in minutes; absent: [`Minutes::default`].
    #[serde(default)]
    pub minutes: Minutes,
}

/// What settling again and another round cost.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Minutes {
    /// Lift or roll, settle and read once more, min.
    pub settle: f64,
    /// A round: raise, turn, lower, settle, read, min.
    pub round: f64,
}

impl Default for Minutes {
    /// What they take in an ordinary bay: 3 and 20 minutes (common practice, no source).
    fn default() -> Self {
        Minutes { settle: 3.0, round: 20.0 }
    }
}

/// One wish: a target, the half width of its window, and its weight in the cost.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Wish {
    /// Wanted value, in the unit of the wish.
    pub target: f64,
    /// Half width of the window: inside when |predicted - target| <= window. Above zero.
    pub window: f64,
    /// Weight in the cost, zero or more. A wish of weight zero costs nothing but still counts for the chance.
    pub weight: f64,
}

/// What is wanted; each optional.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Wishes {
    /// Cross weight (FR + RL), percent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cross_pct: Option<Wish>,
    /// FL - FR, kg.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub front_diff_kg: Option<Wish>,
    /// RL - RR, kg.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rear_diff_kg: Option<Wish>,
    /// Ride height at each corner, mm; any corner may be absent.
    #[serde(default)]
    pub heights_mm: Corners<Option<Wish>>,
    /// Rake, mm: mean of the rear heights less mean of the front heights.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rake_mm: Option<Wish>,
}

impl Wishes {
    /// The wishes that were given, in a fixed order.
    pub fn given(&self) -> Vec<(WishName, Wish)> {
        let loads = [
            (WishName::CrossPct, self.cross_pct),
            (WishName::FrontDiffKg, self.front_diff_kg),
            (WishName::RearDiffKg, self.rear_diff_kg),
        ];
        let heights = Place::ALL.map(|p| (WishName::height(p), *self.heights_mm.at(p)));
        let all = loads.into_iter().chain(heights).chain([(WishName::Rake, self.rake_mm)]);
        all.filter_map(|(name, wish)| wish.map(|w| (name, w))).collect()
    }
}

/// Which wish; its code is the path of the wish in [`Wishes`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum WishName {
    /// Cross weight.
    #[serde(rename = "cross_pct")]
    CrossPct,
    /// FL - FR.
    #[serde(rename = "front_diff_kg")]
    FrontDiffKg,
    /// RL - RR.
    #[serde(rename = "rear_diff_kg")]
    RearDiffKg,
    /// Height at FL.
    #[serde(rename = "heights_mm.FL")]
    HeightFl,
    /// Height at FR.
    #[serde(rename = "heights_mm.FR")]
    HeightFr,
    /// Height at RL.
    #[serde(rename = "heights_mm.RL")]
    HeightRl,
    /// Height at RR.
    #[serde(rename = "heights_mm.RR")]
    HeightRr,
    /// Rake.
    #[serde(rename = "rake_mm")]
    Rake,
}

impl WishName {
    /// The height wish of a corner.
    pub fn height(place: Place) -> WishName {
        [WishName::HeightFl, WishName::HeightFr, WishName::HeightRl, WishName::HeightRr][place.index()]
    }

    /// The path of the wish in [`Wishes`], as JSON writes it.
    pub fn code(self) -> &'static str {
        match self {
            WishName::CrossPct => "cross_pct",
            WishName::FrontDiffKg => "front_diff_kg",
            WishName::RearDiffKg => "rear_diff_kg",
            WishName::HeightFl => "heights_mm.FL",
            WishName::HeightFr => "heights_mm.FR",
            WishName::HeightRl => "heights_mm.RL",
            WishName::HeightRr => "heights_mm.RR",
            WishName::Rake => "rake_mm",
        }
    }
}

/// Price of turning, in the unit of the cost: one is a wish of weight one at the edge of its window.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Price {
    /// For each collar that is turned at all.
    #[serde(default)]
    pub per_collar: f64,
    /// For each step turned.
    #[serde(default)]
    pub per_step: f64,
}

/// One reading, and what was turned since the one before.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Round {
    /// Steps really turned at each collar since the reading before; positive raises. Absent: nothing turned.
    #[serde(default)]
    pub turned_steps: Corners<f64>,
    /// Loads as read, kg.
    pub loads_kg: Corners<f64>,
    /// Heights as read, mm.
    pub heights_mm: Corners<f64>,
}

impl Problem {
    /// The last reading: how the car is now. [`Problem::validate`] refuses a problem without one.
    pub(crate) fn now(&self) -> &Round {
        &self.rounds[self.rounds.len() - 1]
    }

    /// Checks everything but the car, which statics checks.
    ///
    /// # Errors
    /// The first field that cannot be, by its path, with its value and range.
    pub fn validate(&self) -> Result<(), PlanError> {
        self.confidence.validate("confidence")?;
        for (place, a) in self.adjusters.iter() {
            let at = |field: &str| format!("adjusters.{}.{field}", place.code());
            within(&at("step_mm"), a.step_mm, 1e-6, 100.0, "above 0 and at most 100 mm")?;
            within(&at("up_steps"), f64::from(a.up_steps), 0.0, 10_000.0, "from 0 to 10000 steps")?;
            within(&at("down_steps"), f64::from(a.down_steps), 0.0, 10_000.0, "from 0 to 10000 steps")?;
        }
        self.limits.validate()?;
        self.validate_wishes()?;
        within("price.per_collar", self.price.per_collar, 0.0, 1e9, "from 0 to 1e9")?;
        within("price.per_step", self.price.per_step, 0.0, 1e9, "from 0 to 1e9")?;
        self.pads.validate("pads")?;
        within("minutes.settle", self.minutes.settle, 0.0, 1e4, "from 0 to 10000 min")?;
        within("minutes.round", self.minutes.round, 0.0, 1e4, "from 0 to 10000 min")?;
        if let Some(known) = &self.known {
            known.validate()?;
        }
        self.validate_rounds()
    }

    fn validate_wishes(&self) -> Result<(), PlanError> {
        let given = self.wishes.given();
        for (name, wish) in &given {
            let at = |field: &str| format!("wishes.{}.{field}", name.code());
            let (least, most, must) = match name {
                WishName::CrossPct => (0.0, 100.0, "from 0 to 100 %"),
                WishName::FrontDiffKg | WishName::RearDiffKg => (-5_000.0, 5_000.0, "from -5000 to 5000 kg"),
                _ => (-1_000.0, 5_000.0, "from -1000 to 5000 mm"),
            };
            within(&at("target"), wish.target, least, most, must)?;
            within(&at("window"), wish.window, 1e-6, 10_000.0, "from 0.000001 to 10000")?;
            within(&at("weight"), wish.weight, 0.0, 1e6, "from 0 to 1000000")?;
        }
        let weights: f64 = given.iter().map(|(_, w)| w.weight).sum();
        let must = "at least one wish with a weight above zero";
        if weights > 0.0 { Ok(()) } else { Err(refuse("wishes", &format!("{} wishes of weight 0", given.len()), must)) }
    }

    fn validate_rounds(&self) -> Result<(), PlanError> {
        let count = self.rounds.len();
        if count == 0 || count > 1_000 {
            return Err(refuse("rounds", &format!("{count} readings"), "from 1 to 1000 readings; the last one is now"));
        }
        for (i, round) in self.rounds.iter().enumerate() {
            for place in Place::ALL {
                let at = |field: &str| format!("rounds[{i}].{field}.{}", place.code());
                let turned = *round.turned_steps.at(place);
                within(&at("turned_steps"), turned, -20_000.0, 20_000.0, "from -20000 to 20000 steps")?;
                within(&at("loads_kg"), *round.loads_kg.at(place), 0.0, 5_000.0, "a load from 0 to 5000 kg")?;
                let height = *round.heights_mm.at(place);
                within(&at("heights_mm"), height, -1_000.0, 5_000.0, "from -1000 to 5000 mm")?;
            }
            let l = round.loads_kg;
            if !(l.fl + l.fr > 0.0 && l.rl + l.rr > 0.0) {
                return Err(refuse(&format!("rounds[{i}].loads_kg"), "0 kg on an axle", "a load on each axle"));
            }
        }
        Ok(())
    }
}

pub(crate) fn within(at: &str, value: f64, least: f64, most: f64, must: &'static str) -> Result<(), PlanError> {
    // A NaN is outside every range.
    if value >= least && value <= most { Ok(()) } else { Err(refuse(at, &value.to_string(), must)) }
}

pub(crate) fn refuse(at: &str, value: &str, must: &'static str) -> PlanError {
    PlanError::Value { at: at.to_owned(), value: value.to_owned(), must }
}
