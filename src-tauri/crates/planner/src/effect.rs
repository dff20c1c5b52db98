//! What a collar does at its own corner, by what was learned of the car: to be looked at between two visits.

use crate::PlanError;
use crate::knowledge::Knowledge;
use crate::prior::Prior;
use bayhand_chassis::{COVERAGE, Confidence};
use bayhand_vehicle::{Car, Corners};

/// What raising one corner by a collar's travel does there, with expanded uncertainties (k = 2).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CollarEffect {
    /// Load that it gains, kg.
    pub load_kg: f64,
    /// Its expanded uncertainty, kg.
    pub u_load_kg: f64,
    /// How far it rises, mm.
    pub height_mm: f64,
    /// Its expanded uncertainty, mm.
    pub u_height_mm: f64,
}

/// What `travel_mm` (mm) of each collar does at its own corner of `car` (springs and ratios as entered). With `known`, as
/// it counts at the next visit; without, as the entered data lets expect to the given confidence.
///
/// # Errors
/// A car that cannot be, or one that its springs do not hold upright.
pub fn collar_effects(
    car: &Car,
    confidence: &Confidence,
    travel_mm: Corners<f64>,
    known: Option<&Knowledge>,
) -> Result<Corners<CollarEffect>, PlanError> {
    let prior = Prior::with(car, confidence, travel_mm, known)?;
    let does = prior.per_step_at(&prior.logs.mean)?;
    let slopes = prior.slopes_at(&prior.logs.mean)?;
    // First-order propagation (JCGM 100, 5.2.2): g' C g with the slopes by each logarithm.
    let expanded = |slope: &dyn Fn(usize) -> f64| {
        let n = slopes.len();
        let pairs = (0..n).flat_map(|i| (0..n).map(move |j| (i, j)));
        let variance: f64 = pairs.map(|(i, j)| slope(i) * prior.logs.covariance[(i, j)] * slope(j)).sum();
        COVERAGE * variance.max(0.0).sqrt()
    };
    Ok(Corners::from_fn(|place| {
        let i = place.index();
        CollarEffect {
            load_kg: does.load_kg[i][i],
            u_load_kg: expanded(&|k| slopes[k].load_kg[i][i]),
            height_mm: does.height_mm[i][i],
            u_height_mm: expanded(&|k| slopes[k].height_mm[i][i]),
        }
    }))
}
