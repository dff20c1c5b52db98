//! Plausibility between readings of like state: do they agree, and if not, what single thing explains it best?
//!
//! Between two readings only collars were turned, it is said. So the change of loads and heights is known but for
//! noise (looks, rounding, heights, contact patches), for friction along the diagonal pattern, and for what is not
//! known of the car's rates and ratios. The readings are reconciled onto that by generalised least squares (see
//! `evidence`), and what is left is tested against chi-square. What is constant over the job, such as the level of the
//! pads, drops out of differences.
//!
//! Then every single cause of [`Cause`] is tried at every place. What a cause does to the car follows from the same
//! statics (see `response`); its size is integrated out, so that a cause with a free size or place has to earn it;
//! the posterior probability is among all causes and 'none of them'. A person decides.

mod answer;
mod balance;
mod evidence;
mod question;
mod response;
mod suspects;

pub use answer::{CONSISTENT_P, Cause, Note, Plausibility, Suspicion, Unit, Where};
pub use question::{LikeReading, LikeReadings};

use crate::{Spread, StaticsError, unknown_factors, with_factors};
use evidence::Differences;
use nalgebra::DMatrix;
use response::{Eight, Response};
use statrs::distribution::{ChiSquared, ContinuousCDF};
use suspects::{NOTHING, Suspect};

/// Change of a logarithm for numerical derivatives: the model is smooth, so errors are of its square.
const NUDGE: f64 = 1e-4;
/// Spread of a reading that is always there, kg and mm: the linear model's own error and the rounding of figures.
const LEAST_SPREAD: f64 = 0.02;
/// Causes less likely than this are not worth a look.
const LEAST_P: f64 = 0.001;
/// Most causes that are listed.
const MOST_CAUSES: usize = 12;
/// Part of the car's weight by which a total may differ from the car data without a note.
const TOTAL_PART: f64 = 0.1;

/// Tells whether readings of like state agree, and what single cause would explain them best.
///
/// One reading has nothing to agree with: no degree of freedom, `p` is one; only its unit can be in question.
///
/// # Errors
/// A car, adjusters, pads or readings that cannot be, by field; a car that its springs do not hold upright.
pub fn plausible(question: &LikeReadings) -> Result<Plausibility, StaticsError> {
    question.validate()?;
    let noise = noise_of_reading(question)?;
    let model = Model::of(question)?;
    // The noise has a floor on its diagonal, so there is a factor of it; only figures beyond all sense leave none.
    let beyond = || StaticsError::Value {
        at: "rounds".to_owned(),
        value: "no finite difference".to_owned(),
        must: "readings whose differences can be weighed",
    };
    let differences = Differences::between(&model.differences, &noise, &model.doubts).ok_or_else(beyond)?;
    let (chi2, ln_nothing) = differences.of_nothing().ok_or_else(beyond)?;
    let dof = 8 * model.differences.len();
    let p = survival(chi2, dof).min(balance::least_p(&question.rounds));
    let mut causes = Vec::new();
    for (suspect, slopes) in model.suspects.iter().zip(&model.slopes) {
        let found = differences.of_suspect(suspect.size, &suspect.effect, slopes).ok_or_else(beyond)?;
        causes.push((suspect, (suspect.prior * suspect.total_odds).ln() + found.ln_density, found.size));
    }
    Ok(Plausibility {
        consistent: p >= CONSISTENT_P,
        chi2,
        dof,
        p,
        causes: ranked(&causes, NOTHING.ln() + ln_nothing, question.rounds.len() > 2),
        notes: notes(question),
    })
}

/// What should have changed, how well that is known, and what the suspects would have done.
struct Model {
    /// Differences of consecutive readings less what the collars should have done.
    differences: Vec<Eight>,
    /// Slope of what the collars should have done, by each unknown, one sigma.
    doubts: Vec<Vec<Eight>>,
    suspects: Vec<Suspect>,
    /// For each suspect, by each unknown, the slope of its effect, one sigma.
    slopes: Vec<Vec<Vec<(usize, Eight)>>>,
}

impl Model {
    fn of(question: &LikeReadings) -> Result<Model, StaticsError> {
        let response = Response::of(&question.car)?;
        let suspects = suspects::suspects(question, &response);
        let differences = question
            .rounds
            .windows(2)
            .zip(collars(question, &response))
            .map(|(two, expected)| reading(&two[1]) - reading(&two[0]) - expected)
            .collect();
        let mut doubts = Vec::new();
        let mut slopes = vec![Vec::new(); suspects.len()];
        for unknown in &unknown_factors(&question.car, &question.confidence) {
            let nudged = |log: f64| Response::of(&with_factors(&question.car, std::iter::once((unknown, log))));
            let (more, less) = (nudged(NUDGE)?, nudged(-NUDGE)?);
            let per_sigma = unknown.sigma / (2.0 * NUDGE);
            let slope = |(a, b): (&Eight, &Eight)| (a - b) * per_sigma;
            doubts.push(collars(question, &more).iter().zip(&collars(question, &less)).map(slope).collect());
            let (more, less) = (suspects::suspects(question, &more), suspects::suspects(question, &less));
            for (all, (a, b)) in slopes.iter_mut().zip(more.iter().zip(&less)) {
                all.push(a.effect.iter().zip(&b.effect).map(|(a, b)| (a.0, slope((&a.1, &b.1)))).collect());
            }
        }
        Ok(Model { differences, doubts, suspects, slopes })
    }
}

/// The eight values of a reading.
fn reading(round: &LikeReading) -> Eight {
    let (loads, heights) = (round.loads_kg.to_array(), round.heights_mm.to_array());
    Eight::from_fn(|i, _| if i < 4 { loads[i] } else { heights[i - 4] })
}

/// What the collars should have done between consecutive readings.
fn collars(question: &LikeReadings, response: &Response) -> Vec<Eight> {
    let step = question.adjusters.map(|a| a.step_mm).to_array();
    question.rounds[1..]
        .iter()
        .map(|round| response.collars(&std::array::from_fn(|i| round.turned_steps.to_array()[i] * step[i])))
        .collect()
}

/// Covariance of one reading, kg² and mm²: what changes from one reading to the next.
fn noise_of_reading(question: &LikeReadings) -> Result<DMatrix<f64>, StaticsError> {
    let loads = Spread::of(&question.car, &question.pads, &question.rounds[0].loads_kg, 1, 1)?.varying_kg2;
    Ok(DMatrix::from_fn(8, 8, |i, j| {
        let floor = if i == j { LEAST_SPREAD * LEAST_SPREAD } else { 0.0 };
        match (i < 4, j < 4) {
            (true, true) => loads[i][j] + floor,
            (false, false) if i == j => question.pads.height_mm.powi(2) + floor,
            _ => 0.0,
        }
    }))
}

/// Probability of a chi-square this great or greater.
fn survival(chi2: f64, dof: usize) -> f64 {
    // Without a degree of freedom nothing is left to chance.
    ChiSquared::new(dof as f64).map_or(1.0, |law| law.sf(chi2.max(0.0)))
}

/// Adds up the ways of each cause at each place; likeliest first, then in the order of causes.
fn ranked(causes: &[(&Suspect, f64, f64)], ln_nothing: f64, number_rounds: bool) -> Vec<Suspicion> {
    let most = causes.iter().map(|c| c.1).fold(ln_nothing, f64::max);
    let total = causes.iter().map(|c| (c.1 - most).exp()).sum::<f64>() + (ln_nothing - most).exp();
    let mut found: Vec<Suspicion> = Vec::new();
    for (suspect, ln, size) in causes {
        let p = (ln - most).exp() / total;
        let round = number_rounds.then_some(suspect.round);
        let (cause, place, unit) = (suspect.cause, suspect.place, suspect.unit);
        match found.iter_mut().find(|s| (s.cause, s.place, s.unit, s.round) == (cause, place, unit, round)) {
            // Sizes are averaged by probability.
            Some(same) => {
                let sum = same.p + p;
                if sum > 0.0 {
                    same.size = (same.size * same.p + size * p) / sum;
                }
                same.p = sum;
            }
            None => found.push(Suspicion { cause, place, size: *size, unit, p, round }),
        }
    }
    found.sort_by(|a, b| b.p.total_cmp(&a.p).then(a.cause.cmp(&b.cause)));
    found.retain(|s| s.p >= LEAST_P);
    found.truncate(MOST_CAUSES);
    found
}

fn notes(question: &LikeReadings) -> Vec<Note> {
    let car_kg = suspects::total_of_car_kg(&question.car);
    let last = question.rounds.last().map_or(car_kg, |r| r.loads_kg.to_array().iter().sum());
    let more_kg = last - car_kg;
    if more_kg.abs() > TOTAL_PART * car_kg { vec![Note::TotalUnlikeCar { more_kg }] } else { Vec::new() }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// R: chi-square 95 % for 1 to 6 degrees of freedom.
    #[test]
    fn chi_square_is_the_usual_one() {
        for (dof, edge) in [(1, 3.841), (2, 5.991), (3, 7.815), (4, 9.488), (5, 11.070), (6, 12.592)] {
            let p = survival(edge, dof);
            assert!((p - 0.05).abs() < 5e-5, "{p} of {edge} with {dof}");
        }
        assert_eq!(survival(0.0, 0), 1.0, "nothing is left to chance");
    }
}
