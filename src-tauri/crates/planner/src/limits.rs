//! Limits that a plan must keep.

use crate::PlanError;
use crate::problem::within;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Greatest side-to-side height difference against the agreed one that anybody may ask for, mm. More than 7.5 mm needs
/// a supervisor's waiver, which the procedure asks for; more than this is not planned with one either.
pub const HEIGHT_DIFF_MOST_MM: f64 = 10.0;

/// Points of the body whose clearance is kept, at most.
const CLEARANCES_MOST: usize = 16;

/// Limits that a plan must keep; each is optional, and an absent one limits nothing.
///
/// They act on predicted values: the reading, and what the steps change. A limit that the reading breaks already and
/// that the steps left cannot bring back is broken as little as possible.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Limits {
    /// Greatest |left - right - agreed| of the heights in front, mm; at most [`HEIGHT_DIFF_MOST_MM`].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height_diff_front_mm: Option<f64>,
    /// Greatest |left - right - agreed| of the heights behind, mm; at most [`HEIGHT_DIFF_MOST_MM`].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height_diff_rear_mm: Option<f64>,
    /// Agreed left - right in front, mm.
    #[serde(default)]
    pub agreed_diff_front_mm: f64,
    /// Agreed left - right behind, mm.
    #[serde(default)]
    pub agreed_diff_rear_mm: f64,
    /// Least rake, mm: mean of the rear heights less mean of the front heights.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rake_least_mm: Option<f64>,
    /// Greatest rake, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rake_most_mm: Option<f64>,
    /// Least wheel travel that stays free to the bump stop, mm; for corners whose car data carries `bump_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bump_gap_mm: Option<f64>,
    /// Least wheel travel that stays free to the droop limit, mm; for corners whose car data carries `droop_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub droop_gap_mm: Option<f64>,
    /// Points of the body that must stay clear of the ground.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub clearances: Vec<Clearance>,
    /// Largest travel of one collar in this round, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub collar_change_mm: Option<f64>,
}

/// A point of the body that must stay clear of the ground.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Clearance {
    /// Behind the front axle, mm; negative: before it.
    pub behind_front_axle_mm: f64,
    /// Left of the middle plane, mm.
    pub left_mm: f64,
    /// Clearance now, at the last reading, mm.
    pub now_mm: f64,
    /// Least clearance, mm.
    pub least_mm: f64,
}

impl Limits {
    /// Checks every value.
    ///
    /// # Errors
    /// The first field that cannot be, by its path, with its value and range.
    pub(crate) fn validate(&self) -> Result<(), PlanError> {
        for (at, limit) in [
            ("limits.height_diff_front_mm", self.height_diff_front_mm),
            ("limits.height_diff_rear_mm", self.height_diff_rear_mm),
        ] {
            within(
                at,
                limit.unwrap_or(0.0),
                0.0,
                HEIGHT_DIFF_MOST_MM,
                "from 0 to 10 mm, a supervisor's waiver included",
            )?;
        }
        for (at, value) in [
            ("limits.agreed_diff_front_mm", self.agreed_diff_front_mm),
            ("limits.agreed_diff_rear_mm", self.agreed_diff_rear_mm),
            ("limits.rake_least_mm", self.rake_least_mm.unwrap_or(0.0)),
            ("limits.rake_most_mm", self.rake_most_mm.unwrap_or(0.0)),
        ] {
            within(at, value, -1_000.0, 1_000.0, "from -1000 to 1000 mm")?;
        }
        if let (Some(least), Some(most)) = (self.rake_least_mm, self.rake_most_mm)
            && least > most
        {
            let value = format!("{least}, above rake_most_mm {most}");
            return Err(PlanError::Value {
                at: "limits.rake_least_mm".to_owned(),
                value,
                must: "at most rake_most_mm",
            });
        }
        for (at, gap) in [("limits.bump_gap_mm", self.bump_gap_mm), ("limits.droop_gap_mm", self.droop_gap_mm)] {
            within(at, gap.unwrap_or(0.0), 0.0, 500.0, "from 0 to 500 mm")?;
        }
        within("limits.collar_change_mm", self.collar_change_mm.unwrap_or(0.0), 0.0, 1_000.0, "from 0 to 1000 mm")?;
        if self.clearances.len() > CLEARANCES_MOST {
            let value = format!("{} points", self.clearances.len());
            return Err(PlanError::Value { at: "limits.clearances".to_owned(), value, must: "at most 16 points" });
        }
        for (i, point) in self.clearances.iter().enumerate() {
            let at = |field: &str| format!("limits.clearances[{i}].{field}");
            within(&at("behind_front_axle_mm"), point.behind_front_axle_mm, -3e3, 13e3, "from -3000 to 13000 mm")?;
            within(&at("left_mm"), point.left_mm, -2e3, 2e3, "from -2000 to 2000 mm")?;
            within(&at("now_mm"), point.now_mm, -1e3, 5e3, "from -1000 to 5000 mm")?;
            within(&at("least_mm"), point.least_mm, -1e3, 5e3, "from -1000 to 5000 mm")?;
        }
        Ok(())
    }
}
