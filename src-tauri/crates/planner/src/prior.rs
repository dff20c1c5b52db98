//! Springs and ratios as a guess with a spread.
//!
//! Unknown are logarithms of factors on spring rates and motion ratios, zero at the entered data. Their prior is
//! Gaussian with the stated confidence; data that is missing has a wide one. What was learned at an earlier visit
//! takes the place of both where it is about the same data.

use crate::PlanError;
use crate::knowledge::Scaled;
use crate::objective::PerStep;
use crate::problem::Problem;
use bayhand_chassis::{Rates, Sensitivity};
use bayhand_vehicle::{Car, Corner, Corners, Place};
use nalgebra::{DMatrix, DVector};

/// One sigma of the logarithm of a wheel rate that nobody entered: a ride frequency of 1.7 to 3.2 Hz as two sigmas
/// either way (the rate goes with its square). Common practice, no source.
fn wide_rate() -> f64 {
    2.0 * (3.2_f64 / 1.7).ln() / 4.0
}

/// One sigma of the logarithm of a motion ratio that nobody entered: 0.6 to 1 as two sigmas either way. Common
/// practice, no source.
fn wide_ratio() -> f64 {
    (1.0_f64 / 0.6).ln() / 4.0
}

/// Change of a logarithm for numerical derivatives: the model is smooth, so errors are of its square.
const NUDGE: f64 = 1e-4;

/// One unknown factor.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Unknown {
    pub what: Scaled,
    pub places: Vec<Place>,
    /// What the factor multiplies: a spring rate (N/mm), a wheel rate where no spring was entered, or a ratio.
    pub base: f64,
    /// True when the base was entered, false when it was assumed.
    pub entered: bool,
    /// One sigma before any evidence.
    pub sigma: f64,
}

/// Mean and covariance of the logarithms.
#[derive(Clone, Debug)]
pub(crate) struct Logs {
    pub mean: DVector<f64>,
    pub covariance: DMatrix<f64>,
}

/// A car whose springs and ratios may be scaled.
#[derive(Clone, Debug)]
pub(crate) struct Prior {
    /// The car as entered, its missing data filled in.
    pub filled: Car,
    /// Corners whose spring was entered: their wheel rate follows the motion ratio.
    spring_entered: Corners<bool>,
    step_mm: Corners<f64>,
    pub unknowns: Vec<Unknown>,
    pub logs: Logs,
}

impl Prior {
    /// What is believed before any round.
    pub(crate) fn of(problem: &Problem) -> Result<Prior, PlanError> {
        problem.car.validate().map_err(bayhand_chassis::StaticsError::from)?;
        let rates = Rates::of(&problem.car);
        let filled = Car {
            corners: Corners::from_fn(|p| {
                let ratio = *rates.motion_ratio.at(p);
                Corner {
                    motion_ratio: Some(ratio),
                    spring_n_per_mm: Some(rates.wheel_n_per_mm.at(p) / (ratio * ratio)),
                    ..*problem.car.corners.at(p)
                }
            }),
            ..problem.car
        };
        let unknowns = unknowns(problem, &rates);
        let variances: Vec<f64> = unknowns.iter().map(|u| u.sigma * u.sigma).collect();
        let logs = Logs {
            mean: DVector::zeros(unknowns.len()),
            covariance: DMatrix::from_diagonal(&DVector::from_vec(variances)),
        };
        let logs = match &problem.known {
            Some(known) => known.applied(&unknowns, logs),
            None => logs,
        };
        Ok(Prior {
            filled,
            spring_entered: problem.car.corners.map(|c| c.spring_n_per_mm.is_some()),
            step_mm: problem.adjusters.map(|a| a.step_mm),
            unknowns,
            logs,
        })
    }

    /// The car with the factors `exp(logs)`, held inside what a car can be.
    pub(crate) fn car_at(&self, logs: &DVector<f64>) -> Car {
        let log_of = |what: Scaled, place: Place| -> f64 {
            let here = self.unknowns.iter().zip(logs.iter());
            here.filter(|(u, _)| u.what == what && u.places.contains(&place)).map(|(_, log)| log).sum()
        };
        let corners = Corners::from_fn(|p| {
            let corner = self.filled.corners.at(p);
            let (Some(spring), Some(ratio)) = (corner.spring_n_per_mm, corner.motion_ratio) else { return *corner };
            let factor = log_of(Scaled::MotionRatio, p).exp();
            // A wheel rate that was assumed stays when the ratio changes; an entered spring does.
            let follows = if *self.spring_entered.at(p) { 1.0 } else { 1.0 / (factor * factor) };
            Corner {
                motion_ratio: Some((ratio * factor).clamp(0.1, 3.0)),
                spring_n_per_mm: Some((spring * follows * log_of(Scaled::SpringRate, p).exp()).clamp(1.0, 5_000.0)),
                ..*corner
            }
        });
        Car { corners, ..self.filled }
    }

    /// What one step does with these factors.
    pub(crate) fn per_step_at(&self, logs: &DVector<f64>) -> Result<PerStep, PlanError> {
        let car = self.car_at(logs);
        Ok(PerStep::of(&car, &Sensitivity::of(&car)?, &self.step_mm))
    }

    /// How what one step does changes with each unknown, at `logs`.
    pub(crate) fn slopes_at(&self, logs: &DVector<f64>) -> Result<Vec<PerStep>, PlanError> {
        (0..self.unknowns.len())
            .map(|i| {
                let nudged = |by: f64| {
                    let mut there = logs.clone();
                    there[i] += by;
                    self.per_step_at(&there)
                };
                let (more, less) = (nudged(NUDGE)?, nudged(-NUDGE)?);
                Ok(combine(&[(&more, 0.5 / NUDGE), (&less, -0.5 / NUDGE)]))
            })
            .collect()
    }
}

/// The unknown factors: of each axle one for springs and one for ratios where left and right were entered equal (or not
/// at all), else one for each side. What is certain is not among them.
fn unknowns(problem: &Problem, rates: &Rates) -> Vec<Unknown> {
    let confidence = &problem.confidence;
    let mut all = Vec::new();
    for axle in [[Place::Fl, Place::Fr], [Place::Rl, Place::Rr]] {
        let springs = axle.map(|p| problem.car.corners.at(p).spring_n_per_mm);
        let ratios = axle.map(|p| problem.car.corners.at(p).motion_ratio);
        let rate_of = |p: Place| springs[usize::from(!p.is_left())].unwrap_or(*rates.wheel_n_per_mm.at(p));
        let ratio_of = |p: Place| *rates.motion_ratio.at(p);
        let stated = [confidence.spring_pct / 100.0, confidence.motion_ratio_pct / 100.0];
        for (what, entered, base_of, stated, wide) in [
            (Scaled::SpringRate, springs, &rate_of as &dyn Fn(Place) -> f64, stated[0], wide_rate()),
            (Scaled::MotionRatio, ratios, &ratio_of, stated[1], wide_ratio()),
        ] {
            let one = |places: Vec<Place>, value: Option<f64>| Unknown {
                what,
                base: base_of(places[0]),
                places,
                entered: value.is_some(),
                sigma: if value.is_some() { stated } else { wide },
            };
            if entered[0] == entered[1] {
                all.push(one(axle.to_vec(), entered[0]));
            } else {
                all.extend(axle.into_iter().zip(entered).map(|(p, v)| one(vec![p], v)));
            }
        }
    }
    all.retain(|unknown| unknown.sigma > 0.0);
    all
}

/// A weighted sum.
pub(crate) fn combine(parts: &[(&PerStep, f64)]) -> PerStep {
    let sum = |pick: &dyn Fn(&PerStep) -> &[[f64; 4]; 4]| {
        std::array::from_fn(|i| std::array::from_fn(|j| parts.iter().map(|(part, by)| pick(part)[i][j] * by).sum()))
    };
    PerStep { load_kg: sum(&|p| &p.load_kg), height_mm: sum(&|p| &p.height_mm) }
}
