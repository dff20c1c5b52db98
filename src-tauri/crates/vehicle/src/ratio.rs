//! A motion ratio as a person enters it: either convention of the trade, and when to ask back.

use crate::CarError;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Spring travel / wheel travel above which the person is asked whether the other convention was meant: hardly any
/// spring moves more than its wheel, so such a value is most often the inverse of the ratio.
pub const ASK_BACK_ABOVE: f64 = 1.2;

/// Which travel is divided by which. Both are called 'motion ratio' in the trade.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RatioConvention {
    /// Spring travel / wheel travel: the project's own; usually below 1.
    SpringPerWheel,
    /// Wheel travel / spring travel: the inverse; usually above 1.
    WheelPerSpring,
}

impl RatioConvention {
    /// The other one.
    pub fn other(self) -> RatioConvention {
        match self {
            RatioConvention::SpringPerWheel => RatioConvention::WheelPerSpring,
            RatioConvention::WheelPerSpring => RatioConvention::SpringPerWheel,
        }
    }
}

/// A motion ratio with the convention that it was entered in.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EnteredRatio {
    /// The number as entered; no unit.
    pub value: f64,
    /// What it divides by what.
    pub convention: RatioConvention,
}

impl EnteredRatio {
    /// The number that [`crate::Corner::motion_ratio`] carries: spring travel / wheel travel.
    ///
    /// # Errors
    /// A value that is 0.1 to 3 in neither way, by the name `motion_ratio`.
    pub fn spring_per_wheel(&self) -> Result<f64, CarError> {
        let ratio = match self.convention {
            RatioConvention::SpringPerWheel => self.value,
            RatioConvention::WheelPerSpring => 1.0 / self.value,
        };
        if (0.1..=3.0).contains(&ratio) {
            return Ok(ratio);
        }
        Err(CarError {
            at: "motion_ratio".to_owned(),
            value: self.value.to_string(),
            must: match self.convention {
                RatioConvention::SpringPerWheel => "from 0.1 to 3 (spring travel / wheel travel)",
                RatioConvention::WheelPerSpring => "from 0.334 to 10 (wheel travel / spring travel)",
            },
        })
    }

    /// The same number in the other convention, when this one would have the spring move more than
    /// [`ASK_BACK_ABOVE`] times its wheel and the other would not: what the person is asked about. It is never
    /// exchanged without an answer.
    pub fn ask_back(&self) -> Option<EnteredRatio> {
        let meant = EnteredRatio { convention: self.convention.other(), ..*self };
        let doubtful = self.spring_per_wheel().is_ok_and(|r| r > ASK_BACK_ABOVE);
        (doubtful && meant.spring_per_wheel().is_ok()).then_some(meant)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use RatioConvention::{SpringPerWheel, WheelPerSpring};

    /// R: the inverse of each other; model.md: 'asks back above 1.2'.
    #[test]
    fn either_convention_is_taken_and_doubt_is_asked() {
        let check = |value: f64, convention, expected: f64, asks: bool| {
            let entered = EnteredRatio { value, convention };
            let ratio = entered.spring_per_wheel().map_err(|e| e.to_string());
            assert!(
                ratio.as_ref().is_ok_and(|r| (r - expected).abs() < 1e-12),
                "{entered:?}: {ratio:?}, not {expected}"
            );
            assert_eq!(entered.ask_back().is_some(), asks, "{entered:?}");
        };
        check(0.8, SpringPerWheel, 0.8, false);
        check(1.25, WheelPerSpring, 0.8, false);
        check(1.2, SpringPerWheel, 1.2, false);
        check(1.25, SpringPerWheel, 1.25, true);
        check(0.8, WheelPerSpring, 1.25, true);
        let meant = EnteredRatio { value: 1.25, convention: SpringPerWheel }.ask_back();
        assert_eq!(meant, Some(EnteredRatio { value: 1.25, convention: WheelPerSpring }), "the question names it");
    }

    #[test]
    fn impossible_ratios_are_refused_in_their_own_convention() {
        let says = |value, convention| {
            EnteredRatio { value, convention }.spring_per_wheel().map_or_else(|e| e.to_string(), |r| r.to_string())
        };
        assert_eq!(
            says(4.0, SpringPerWheel),
            "motion_ratio is 4; it must be from 0.1 to 3 (spring travel / wheel travel)"
        );
        assert_eq!(
            says(0.0, WheelPerSpring),
            "motion_ratio is 0; it must be from 0.334 to 10 (wheel travel / spring travel)"
        );
        assert!(says(f64::NAN, SpringPerWheel).starts_with("motion_ratio is NaN"), "no number");
    }
}
