//! What rounds taught about a car: shown, kept on the car, and used at its next visit.

use crate::PlanError;
use crate::prior::Logs;
use crate::problem::{refuse, within};
use bayhand_chassis::{Scaled, UnknownFactor};
use bayhand_vehicle::Place;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What a factor may change by from one visit to the next, one sigma of its logarithm: springs settle, seats are
/// rebuilt (our choice).
const BETWEEN_VISITS: f64 = 0.02;

/// What was learned of the car.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Learned {
    /// Readings that taught it.
    pub readings: usize,
    /// What is believed now, as a factor on the entered or assumed value.
    pub scales: Vec<LearnedScale>,
    /// Covariance of the logarithms of the factors, in the order of `scales`.
    pub covariance: Vec<Vec<f64>>,
    /// Load that friction moves at each settle along the diagonal pattern, as kg at FL, one sigma, by the stated spread
    /// and what the rounds showed of it.
    pub settle_kg: f64,
    /// Rounds that do not fit the others: something else changed, or other turns were made than entered. They taught
    /// as much less as they are doubted.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub doubted: Vec<Doubted>,
    /// Day of the earlier visit whose knowledge was used, as it was given; absent: none was.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub known_since: Option<String>,
}

impl Learned {
    /// What to keep on the car for its next visit; `on` is today's date as the caller writes it.
    pub fn kept(&self, on: &str) -> Knowledge {
        Knowledge {
            on: on.to_owned(),
            scales: self.scales.clone(),
            covariance: self.covariance.clone(),
            settle_kg: self.settle_kg,
        }
    }
}

/// A round that does not fit the others.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Doubted {
    /// Which reading, from 0: it, or what was turned before it.
    pub round: usize,
    /// Chance that it is bad, 0 to 1; those of a tenth and more are named.
    pub chance: f64,
}

/// A learned factor.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LearnedScale {
    /// What it multiplies.
    pub what: Scaled,
    /// At which corners.
    pub places: Vec<Place>,
    /// The value that it multiplies: N/mm at the spring (where no spring was entered: at the wheel), or a ratio.
    pub base: f64,
    /// True when that value was entered, false when it was assumed.
    pub entered: bool,
    /// The factor.
    pub factor: f64,
    /// One sigma of it, percent.
    pub sigma_pct: f64,
    /// One sigma before any round, percent.
    pub prior_sigma_pct: f64,
}

/// What was learned of a car at an earlier visit.
///
/// It is used where it is about the same data: a spring or ratio that was entered otherwise since is another one.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Knowledge {
    /// Day on which it was learned, as the caller wrote it; shown, never computed with.
    pub on: String,
    /// The factors.
    pub scales: Vec<LearnedScale>,
    /// Covariance of their logarithms.
    pub covariance: Vec<Vec<f64>>,
    /// Friction of a settle, kg at FL, one sigma.
    pub settle_kg: f64,
}

impl Knowledge {
    /// Checks that such knowledge can be.
    ///
    /// # Errors
    /// The first field that cannot be, by its path.
    pub(crate) fn validate(&self) -> Result<(), PlanError> {
        let count = self.scales.len();
        if count > 8 {
            return Err(refuse("known.scales", &format!("{count} factors"), "at most 8 factors"));
        }
        if self.covariance.len() != count || self.covariance.iter().any(|row| row.len() != count) {
            let value = format!("{} rows", self.covariance.len());
            return Err(refuse("known.covariance", &value, "a row and a column for each factor"));
        }
        within("known.settle_kg", self.settle_kg, 0.0, 100.0, "from 0 to 100 kg")?;
        for (i, scale) in self.scales.iter().enumerate() {
            within(&format!("known.scales[{i}].factor"), scale.factor, 0.05, 20.0, "from 0.05 to 20")?;
            within(&format!("known.scales[{i}].base"), scale.base, 1e-3, 1e5, "from 0.001 to 100000")?;
            for j in 0..count {
                let (value, variances) = (self.covariance[i][j], self.covariance[i][i] * self.covariance[j][j]);
                // A covariance is symmetric and no larger than the variances allow.
                let possible = value == self.covariance[j][i] && value * value <= variances * (1.0 + 1e-9) + 1e-30;
                let at = format!("known.covariance[{i}][{j}]");
                if !possible {
                    return Err(refuse(&at, &value.to_string(), "symmetric, and within what the variances allow"));
                }
                within(&at, value, -10.0, 10.0, "from -10 to 10")?;
            }
        }
        Ok(())
    }

    /// The prior with this in place of what it knows better.
    pub(crate) fn applied(&self, unknowns: &[UnknownFactor], mut prior: Logs) -> Logs {
        let place_of = |unknown: &UnknownFactor| {
            self.scales.iter().position(|s| {
                let same = s.what == unknown.what && s.places == unknown.places && s.entered == unknown.entered;
                // An assumed value follows the mass of the car; the factor moves against it.
                same && (!s.entered || (s.base / unknown.base - 1.0).abs() < 1e-9)
            })
        };
        let places: Vec<Option<usize>> = unknowns.iter().map(place_of).collect();
        for (i, a) in places.iter().enumerate() {
            let Some(a) = *a else { continue };
            let scale = &self.scales[a];
            prior.mean[i] = (scale.factor * scale.base / unknowns[i].base).ln();
            for (j, b) in places.iter().enumerate() {
                let Some(b) = *b else { continue };
                let since = if i == j { BETWEEN_VISITS * BETWEEN_VISITS } else { 0.0 };
                prior.covariance[(i, j)] = self.covariance[a][b] + since;
            }
        }
        prior
    }
}
