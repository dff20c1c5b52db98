//! Where one figure of a job comes from, at the desk.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// One figure, with the readings that it was made from and no others.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct OriginView {
    /// The figure's name.
    pub title: String,
    /// As found, then as left: those that were read.
    pub parts: Vec<OriginPart>,
}

/// A figure at one time.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct OriginPart {
    /// 'As found: 52.76 % ± 0.09 %'.
    pub says: String,
    /// What its uncertainty comes from, where that is worked out.
    pub made_of: Option<String>,
    /// Its readings, in the order of the record.
    pub readings: Vec<OriginReading>,
}

/// One reading of a figure.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct OriginReading {
    /// Its entry.
    #[ts(type = "number")]
    pub entry: u64,
    /// Which settle of how many, or the step.
    pub what: String,
    /// When.
    pub when: String,
    /// By whom.
    pub who: String,
    /// The values as they were typed, each with its name; and the mean of several looks.
    pub raw: Vec<String>,
    /// With which instrument.
    pub instrument: String,
    /// How the car stood: links, ballast, pressures, fuel, collars.
    pub configuration: String,
}
