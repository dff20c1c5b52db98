//! Uncertainty of ride heights and of what follows from them.

use super::instruments::HeightGauge;
use crate::COVERAGE;

/// Expanded uncertainties (k = 2) of heights, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeightSpread {
    /// Of one height.
    pub one_mm: f64,
    /// Of a difference of two heights of a reading, such as left less right or rake: the zero of the gauge drops out.
    pub difference_mm: f64,
    /// Of the change of one height since another such reading: the zero drops out as well.
    pub change_mm: f64,
}

/// The spread of heights read as the mean of so many looks at each of so many settles. The heights of a reading are
/// taken as independent but for the gauge's zero.
pub fn height_spread(gauge: &HeightGauge, looks: u32, settles: u32) -> HeightSpread {
    let varying = gauge.varying_mm(looks, settles);
    let two = COVERAGE * varying * 2.0_f64.sqrt();
    HeightSpread { one_mm: COVERAGE * varying.hypot(gauge.zero_mm), difference_mm: two, change_mm: two }
}
