//! Springs and ratios as a guess with a spread, and what readings teach about them.
//!
//! Unknown are logarithms of factors on spring rates and motion ratios, zero at the entered data. Their prior is
//! Gaussian with the stated confidence; data that is missing has a wide one. Each round is evidence: what was turned,
//! and how loads and heights answered. The update is linear-Gaussian (a Kalman filter over the factors and the true
//! reading), linearised again at its own answer until it settles.

use crate::PlanError;
use crate::answer::{Learned, LearnedScale, Scaled};
use crate::chance::semidefinite_cholesky;
use crate::objective::PerStep;
use crate::problem::Problem;
use bayhand_chassis::{Rates, Sensitivity, Spread};
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

/// Times that the update is linearised again.
const PASSES: usize = 4;

/// Least spread of a reading in the update, kg and mm: pads said to be perfect still leave an update that is defined.
const LEAST_SPREAD: f64 = 1e-3;

/// One unknown factor.
#[derive(Clone, Debug)]
struct Unknown {
    what: Scaled,
    places: Vec<Place>,
    sigma: f64,
}

/// What is believed of the car.
#[derive(Clone, Debug)]
pub(crate) struct Belief {
    /// The car as entered, its missing data filled in.
    filled: Car,
    /// Corners whose spring was entered: their wheel rate follows the motion ratio.
    spring_entered: Corners<bool>,
    step_mm: Corners<f64>,
    unknowns: Vec<Unknown>,
    mean: DVector<f64>,
    covariance: DMatrix<f64>,
}

impl Belief {
    /// What is believed before any round.
    pub(crate) fn prior(problem: &Problem) -> Result<Belief, PlanError> {
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
        let unknowns: Vec<Unknown> = [[Place::Fl, Place::Fr], [Place::Rl, Place::Rr]]
            .iter()
            .flat_map(|axle| {
                let springs = axle.map(|p| problem.car.corners.at(p).spring_n_per_mm);
                let ratios = axle.map(|p| problem.car.corners.at(p).motion_ratio);
                let (c, wide) = (&problem.confidence, (wide_rate(), wide_ratio()));
                let mut of_axle = unknowns_of(Scaled::SpringRate, axle, springs, c.spring_pct / 100.0, wide.0);
                of_axle.extend(unknowns_of(Scaled::MotionRatio, axle, ratios, c.motion_ratio_pct / 100.0, wide.1));
                of_axle
            })
            .filter(|unknown| unknown.sigma > 0.0)
            .collect();
        let variances: Vec<f64> = unknowns.iter().map(|u| u.sigma * u.sigma).collect();
        Ok(Belief {
            filled,
            spring_entered: problem.car.corners.map(|c| c.spring_n_per_mm.is_some()),
            step_mm: problem.adjusters.map(|a| a.step_mm),
            mean: DVector::zeros(unknowns.len()),
            covariance: DMatrix::from_diagonal(&DVector::from_vec(variances)),
            unknowns,
        })
    }

    /// The car at the mean of what is believed.
    pub(crate) fn car(&self) -> Car {
        self.car_at(&self.mean)
    }

    /// The car with the factors `exp(logs)`, held inside what a car can be.
    fn car_at(&self, logs: &DVector<f64>) -> Car {
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

    /// What one step does at the mean.
    pub(crate) fn per_step(&self) -> Result<PerStep, PlanError> {
        self.per_step_at(&self.mean)
    }

    fn per_step_at(&self, logs: &DVector<f64>) -> Result<PerStep, PlanError> {
        let car = self.car_at(logs);
        Ok(PerStep::of(&car, &Sensitivity::of(&car)?, &self.step_mm))
    }

    /// How what one step does changes with each unknown, at `logs`.
    fn slopes_at(&self, logs: &DVector<f64>) -> Result<Vec<PerStep>, PlanError> {
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

    /// Independent ways in which what one step does may be wrong, one sigma each.
    pub(crate) fn doubts(&self) -> Result<Vec<PerStep>, PlanError> {
        let slopes = self.slopes_at(&self.mean)?;
        let factor = semidefinite_cholesky(&self.covariance);
        Ok((0..slopes.len())
            .map(|j| {
                let parts: Vec<(&PerStep, f64)> =
                    slopes.iter().enumerate().map(|(i, slope)| (slope, factor[(i, j)])).collect();
                combine(&parts)
            })
            .collect())
    }

    /// What is believed after the rounds of the problem.
    pub(crate) fn after_rounds(self, problem: &Problem) -> Result<Belief, PlanError> {
        if problem.rounds.len() < 2 || self.unknowns.is_empty() {
            return Ok(self);
        }
        let mut about = self.mean.clone();
        let mut learned = self.clone();
        for _ in 0..PASSES {
            (learned.mean, learned.covariance) = self.filtered(problem, &about)?;
            about.clone_from(&learned.mean);
        }
        Ok(learned)
    }

    /// One pass of the filter, linearised about `about`. The state is the unknowns, then the true loads and heights.
    fn filtered(&self, problem: &Problem, about: &DVector<f64>) -> Result<(DVector<f64>, DMatrix<f64>), PlanError> {
        let count = self.unknowns.len();
        let (per_step, slopes) = (self.per_step_at(about)?, self.slopes_at(about)?);
        let first = &problem.rounds[0];
        let spread = Spread::of(&self.filled, &problem.pads, &first.loads_kg, 1, 1)?.varying_kg2;
        let noise = DMatrix::from_fn(8, 8, |i, j| {
            let floor = if i == j { LEAST_SPREAD * LEAST_SPREAD } else { 0.0 };
            match (i < 4, j < 4) {
                (true, true) => spread[i][j] + floor,
                (false, false) if i == j => problem.pads.height_mm.powi(2) + floor,
                _ => 0.0,
            }
        });
        let reading = |round: &crate::Round| {
            let (loads, heights) = (round.loads_kg.to_array(), round.heights_mm.to_array());
            DVector::from_fn(8, |i, _| if i < 4 { loads[i] } else { heights[i - 4] })
        };
        // After the first reading: the prior, and a true reading known as well as that reading.
        let mut mean = DVector::zeros(count + 8);
        mean.rows_mut(0, count).copy_from(&self.mean);
        mean.rows_mut(count, 8).copy_from(&reading(first));
        let mut covariance = DMatrix::zeros(count + 8, count + 8);
        covariance.view_mut((0, 0), (count, count)).copy_from(&self.covariance);
        covariance.view_mut((count, count), (8, 8)).copy_from(&noise);
        for round in &problem.rounds[1..] {
            let turned = round.turned_steps.to_array();
            // The true reading moves by (M + sum (x - about) slope) turned.
            let mut moves = DMatrix::identity(count + 8, count + 8);
            let mut shift = answer_to(&per_step, &turned);
            for (i, slope) in slopes.iter().enumerate() {
                let column = answer_to(slope, &turned);
                shift -= &column * about[i];
                moves.view_mut((count, i), (8, 1)).copy_from(&column);
            }
            mean = &moves * mean;
            let mut moved = mean.rows_mut(count, 8);
            moved += shift;
            covariance = &moves * covariance * moves.transpose();
            // Then it is read.
            let seen = covariance.view((0, count), (count + 8, 8)).into_owned();
            let innovation = covariance.view((count, count), (8, 8)) + &noise;
            // Positive definite: the noise has a floor. Without an inverse the round teaches nothing.
            let Some(weight) = innovation.cholesky().map(|c| c.inverse()) else { continue };
            let gain = &seen * weight;
            let surprise = reading(round) - mean.rows(count, 8);
            mean += &gain * surprise;
            covariance -= &gain * seen.transpose();
        }
        Ok((mean.rows(0, count).into_owned(), covariance.view((0, 0), (count, count)).into_owned()))
    }

    /// What to tell of what was learned.
    pub(crate) fn learned(&self, problem: &Problem) -> Option<Learned> {
        if problem.rounds.len() < 2 || self.unknowns.is_empty() {
            return None;
        }
        let scales = self.unknowns.iter().enumerate().map(|(i, unknown)| LearnedScale {
            what: unknown.what,
            places: unknown.places.clone(),
            factor: self.mean[i].exp(),
            sigma_pct: 100.0 * self.covariance[(i, i)].max(0.0).sqrt(),
            prior_sigma_pct: 100.0 * unknown.sigma,
        });
        Some(Learned { readings: problem.rounds.len(), scales: scales.collect() })
    }
}

/// The unknowns of one axle: one where left and right were entered equal (or not at all), else one for each side.
fn unknowns_of(what: Scaled, axle: &[Place; 2], entered: [Option<f64>; 2], stated: f64, wide: f64) -> Vec<Unknown> {
    let sigma = |value: Option<f64>| if value.is_some() { stated } else { wide };
    if entered[0] == entered[1] {
        vec![Unknown { what, places: axle.to_vec(), sigma: sigma(entered[0]) }]
    } else {
        axle.iter().zip(entered).map(|(p, v)| Unknown { what, places: vec![*p], sigma: sigma(v) }).collect()
    }
}

/// A weighted sum.
fn combine(parts: &[(&PerStep, f64)]) -> PerStep {
    let sum = |pick: &dyn Fn(&PerStep) -> &[[f64; 4]; 4]| {
        std::array::from_fn(|i| std::array::from_fn(|j| parts.iter().map(|(part, by)| pick(part)[i][j] * by).sum()))
    };
    PerStep { load_kg: sum(&|p| &p.load_kg), height_mm: sum(&|p| &p.height_mm) }
}

/// Loads and heights that turned steps move.
fn answer_to(per_step: &PerStep, turned: &[f64; 4]) -> DVector<f64> {
    DVector::from_fn(8, |i, _| {
        let row = if i < 4 { per_step.load_kg[i] } else { per_step.height_mm[i - 4] };
        row.iter().zip(turned).map(|(r, t)| r * t).sum()
    })
}
