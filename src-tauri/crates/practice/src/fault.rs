//! What can be wrong with a practice job, each as it acts on the car and not as a label.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A fault that is hidden from the person at the job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Fault {
    /// The pad at front right shows 2 kg too much: its zero has moved.
    PadZero,
    /// The ballast has slid 120 mm outwards on its seat and 80 mm back.
    BallastSlides,
    /// The link of the front bar stays bolted up though it is taken for released.
    LinkLeftOn,
    /// The tyre at front left holds 0.4 bar less than it was set to.
    TyreDown,
    /// The strut at rear left sticks: its friction holds up to 250 N, more than a hand frees.
    StickyStrut,
}

impl Fault {
    /// All faults.
    pub const ALL: [Fault; 5] =
        [Fault::PadZero, Fault::BallastSlides, Fault::LinkLeftOn, Fault::TyreDown, Fault::StickyStrut];

    /// The name as JSON and the command line write it.
    pub fn code(self) -> &'static str {
        match self {
            Fault::PadZero => "pad-zero",
            Fault::BallastSlides => "ballast-slides",
            Fault::LinkLeftOn => "link-left-on",
            Fault::TyreDown => "tyre-down",
            Fault::StickyStrut => "sticky-strut",
        }
    }
}

/// Shift of the zero, kg.
pub(crate) const PAD_ZERO_KG: f64 = 2.0;
/// Way of the ballast outwards, m.
pub(crate) const BALLAST_OUT_M: f64 = 0.12;
/// Way of the ballast backwards, m.
pub(crate) const BALLAST_BACK_M: f64 = 0.08;
/// Loss of pressure, bar.
pub(crate) const TYRE_DOWN_BAR: f64 = 0.4;
/// Most that the sticking strut holds, N.
pub(crate) const STICKY_N: f64 = 250.0;

/// A fault and when it begins.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Planted {
    pub(crate) fault: Fault,
    pub(crate) from_settle: u64,
}

impl Planted {
    /// True when this fault acts at that settle.
    pub(crate) fn acts(planted: Option<Planted>, fault: Fault, settle: u64) -> bool {
        planted.is_some_and(|p| p.fault == fault && settle >= p.from_settle)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]
mod tests {
    use super::*;

    /// The code is what serde writes, so that command line and record agree.
    #[test]
    fn codes_are_the_serialised_names() {
        for fault in Fault::ALL {
            assert_eq!(serde_json::to_value(fault).unwrap(), fault.code(), "{fault:?}");
        }
    }
}
