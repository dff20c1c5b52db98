//! What is answered.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Least chance-probability at which readings are called consistent.
pub const CONSISTENT_P: f64 = 0.01;

/// Whether readings of like state agree with each other, and what single cause would explain it if they do not.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Plausibility {
    /// `p` is at least [`CONSISTENT_P`].
    pub consistent: bool,
    /// What is left of the differences after reconciliation, in squares of standard uncertainties.
    pub chi2: f64,
    /// Its degrees of freedom: eight for each reading after the first.
    pub dof: usize,
    /// Probability of a rest this great or greater when nothing but what is allowed for has changed.
    pub p: f64,
    /// Causes, likeliest first; none when no cause is worth a look.
    pub causes: Vec<Suspicion>,
    /// What stands out and is no disagreement between readings; absent when nothing does.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<Note>,
}

/// One cause with its place, size and probability.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Suspicion {
    /// What may have happened.
    pub cause: Cause,
    /// Where; null when it has no place on the car (mass, a whole reading).
    #[serde(rename = "where")]
    pub place: Option<Where>,
    /// Its size in `unit`, signed as the cause says.
    pub size: f64,
    /// Unit of `size`.
    pub unit: Unit,
    /// Posterior probability among these causes and 'none of them'.
    pub p: f64,
    /// Number of the reading (the first is 0) that it came with; only with more than two readings.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub round: Option<usize>,
}

/// A single thing that may have happened between readings. The order is that in which equal explanations rank.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Cause {
    /// A pad shows too much by `kg`, or stands higher by `mm`.
    PadOffset,
    /// Mass came aboard, `kg`; negative: it went.
    MassAdded,
    /// Mass slid on the car, `kg mm`: to the left positive; forward positive where it did not go across.
    MassMoved,
    /// A collar stands `steps` higher than what was entered.
    CollarOtherThanEntered,
    /// A link presses the left wheel of its axle down by `N` more.
    LinkTension,
    /// The vertical rate of a tyre rose by `pct`; it follows the pressure.
    TyrePressure,
    /// Something outside presses on the body by `kg`; negative: it holds it up. The place is the nearest corner.
    Touching,
    /// A contact patch moved by `mm`: to the left positive; forward positive where it did not go across.
    WheelOffCentre,
    /// A bump stop carries `N`.
    OnBumpStop,
    /// Left and right were exchanged in a reading; size 1.
    SidesSwapped,
    /// Pounds were read as kilograms (`factor` 2.2046) or the other way about (0.4536).
    UnitsMixed,
}

/// A place on the car.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
pub enum Where {
    /// Front left.
    #[serde(rename = "FL")]
    Fl,
    /// Front right.
    #[serde(rename = "FR")]
    Fr,
    /// Rear left.
    #[serde(rename = "RL")]
    Rl,
    /// Rear right.
    #[serde(rename = "RR")]
    Rr,
    /// The front axle.
    #[serde(rename = "front")]
    Front,
    /// The rear axle.
    #[serde(rename = "rear")]
    Rear,
}

impl From<bayhand_vehicle::Place> for Where {
    fn from(place: bayhand_vehicle::Place) -> Self {
        [Where::Fl, Where::Fr, Where::Rl, Where::Rr][place.index()]
    }
}

/// Unit of a size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
pub enum Unit {
    /// Kilograms.
    #[serde(rename = "kg")]
    Kg,
    /// Kilograms times millimetres.
    #[serde(rename = "kg mm")]
    KgMm,
    /// Millimetres.
    #[serde(rename = "mm")]
    Mm,
    /// Steps of a collar.
    #[serde(rename = "steps")]
    Steps,
    /// Newtons.
    #[serde(rename = "N")]
    Newton,
    /// Percent.
    #[serde(rename = "pct")]
    Percent,
    /// A factor.
    #[serde(rename = "factor")]
    Factor,
    /// Nothing but whether.
    #[serde(rename = "1")]
    One,
}

/// Something that stands out.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "note", rename_all = "snake_case", deny_unknown_fields)]
pub enum Note {
    /// The last reading weighs more than the car data says by more than a tenth of it; negative: less.
    TotalUnlikeCar {
        /// Read less entered, kg.
        more_kg: f64,
    },
}
