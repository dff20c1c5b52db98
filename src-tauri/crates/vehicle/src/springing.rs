//! What springs a car is likely to have when nobody knows them.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Cars whose springs are of about the same stiffness for their load.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SprungLike {
    /// A road car as it was delivered.
    Road,
    /// A road car on stiffer springs, or a rally car.
    FastRoad,
    /// A track car without much downforce.
    Track,
    /// A car whose springs carry downforce.
    Downforce,
}
