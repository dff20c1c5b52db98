//! Springs and ratios as a guess with a spread.
//!
//! Unknown are logarithms of factors on spring rates and motion ratios, zero at the entered data. Their prior is
//! Gaussian with the stated confidence; data that is missing has a wide one. What was learned at an earlier visit
//! takes the place of both where it is about the same data.

use crate::PlanError;
use crate::knowledge::Knowledge;
use crate::objective::PerStep;
use crate::problem::Problem;
use bayhand_chassis::{Confidence, Sensitivity, UnknownFactor, unknown_factors, with_factors};
use bayhand_vehicle::{Car, Corners};
use nalgebra::{DMatrix, DVector};

/// Change of a logarithm for numerical derivatives: the model is smooth, so errors are of its square.
const NUDGE: f64 = 1e-4;

/// Mean and covariance of the logarithms.
#[derive(Clone, Debug)]
pub(crate) struct Logs {
    pub mean: DVector<f64>,
    pub covariance: DMatrix<f64>,
}

/// A car whose springs and ratios may be scaled.
#[derive(Clone, Debug)]
pub(crate) struct Prior {
    /// The car as entered.
    entered: Car,
    /// The same with its missing data filled in.
    pub filled: Car,
    step_mm: Corners<f64>,
    pub unknowns: Vec<UnknownFactor>,
    pub logs: Logs,
}

impl Prior {
    /// What is believed before any round.
    pub(crate) fn of(problem: &Problem) -> Result<Prior, PlanError> {
        let step_mm = problem.adjusters.map(|a| a.step_mm);
        Prior::with(&problem.car, &problem.confidence, step_mm, problem.known.as_ref())
    }

    /// The same of a car whose collars travel `step_mm` (mm) for a step.
    pub(crate) fn with(
        car: &Car,
        confidence: &Confidence,
        step_mm: Corners<f64>,
        known: Option<&Knowledge>,
    ) -> Result<Prior, PlanError> {
        car.validate().map_err(bayhand_chassis::StaticsError::from)?;
        let filled = with_factors(car, std::iter::empty());
        let unknowns = unknown_factors(car, confidence);
        let variances: Vec<f64> = unknowns.iter().map(|u| u.sigma * u.sigma).collect();
        let logs = Logs {
            mean: DVector::zeros(unknowns.len()),
            covariance: DMatrix::from_diagonal(&DVector::from_vec(variances)),
        };
        let logs = match known {
            Some(known) => known.applied(&unknowns, logs),
            None => logs,
        };
        Ok(Prior { entered: *car, filled, step_mm, unknowns, logs })
    }

    /// The car with the factors `exp(logs)`, held inside what a car can be.
    pub(crate) fn car_at(&self, logs: &DVector<f64>) -> Car {
        with_factors(&self.entered, self.unknowns.iter().zip(logs.iter().copied()))
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

/// A weighted sum.
pub(crate) fn combine(parts: &[(&PerStep, f64)]) -> PerStep {
    let sum = |pick: &dyn Fn(&PerStep) -> &[[f64; 4]; 4]| {
        std::array::from_fn(|i| std::array::from_fn(|j| parts.iter().map(|(part, by)| pick(part)[i][j] * by).sum()))
    };
    PerStep { load_kg: sum(&|p| &p.load_kg), height_mm: sum(&|p| &p.height_mm) }
}
