//! Words for numbers, corners and units: said and heard.

pub mod grammar;
pub mod number;
pub mod reading;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A corner of the car.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
pub enum Corner {
    /// Front left.
    #[serde(rename = "front left", alias = "FL")]
    FrontLeft,
    /// Front right.
    #[serde(rename = "front right", alias = "FR")]
    FrontRight,
    /// Rear left.
    #[serde(rename = "rear left", alias = "RL")]
    RearLeft,
    /// Rear right.
    #[serde(rename = "rear right", alias = "RR")]
    RearRight,
}

impl Corner {
    /// All four.
    pub const ALL: [Self; 4] = [Self::FrontLeft, Self::FrontRight, Self::RearLeft, Self::RearRight];

    /// As it is said in English.
    pub const fn words(self) -> &'static str {
        match self {
            Self::FrontLeft => "front left",
            Self::FrontRight => "front right",
            Self::RearLeft => "rear left",
            Self::RearRight => "rear right",
        }
    }
}
