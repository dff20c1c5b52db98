//! What readings teach about springs and ratios, and about how the car stands now.
//!
//! Each round is evidence: what was turned, and how loads and heights answered. Under one hypothesis the update is
//! linear-Gaussian: a Kalman filter over the factors and the true reading, linearised again at its own answer until it
//! settles. Hypotheses differ in what nobody stated for certain: how much friction a settle really holds, whether the
//! stated confidence was too bold, and whether one round is bad (something else changed, or other turns were made than
//! entered; or its reading alone is off). Each is weighed by how well it foresaw the readings (Bayes). Friction and
//! boldness are those of the likeliest hypothesis: what was stated, until readings speak against it. Over bad rounds
//! the weighted mean is taken. So one bad round is seen as such and teaches little, and friction is not taken for a
//! spring.

use crate::PlanError;
use crate::chance::semidefinite_cholesky;
use crate::knowledge::{Doubted, Learned, LearnedScale};
use crate::objective::{PerStep, Start};
use crate::outlook::{Covariance8, Doubt};
use crate::prior::{Prior, combine};
use crate::problem::{Problem, Round};
use bayhand_chassis::{Pads, Sensitivity, Spread, diagonal};
use bayhand_vehicle::{Car, Corners};
use nalgebra::{DMatrix, DVector};

/// Times that the update is linearised again.
const PASSES: usize = 3;

/// Least spread of a reading in the update, kg and mm: pads said to be perfect still leave an update that is defined.
const LEAST_SPREAD: f64 = 1e-3;

/// What friction may be as a multiple of what was stated, and how likely each is beforehand (our choice). It is never
/// taken for less: that a few settles agree is as often luck.
const SETTLE: [(f64, f64); 5] = [(1.0, 0.6), (1.5, 0.15), (2.0, 0.12), (3.0, 0.08), (4.0, 0.05)];

/// What the spread of springs and ratios may be as a multiple of what was stated, and how likely (our choice).
const BOLD: [(f64, f64); 2] = [(1.0, 0.85), (2.0, 0.15)];

/// How likely a round is bad beforehand (our choice).
const BAD: f64 = 0.02;

/// What a bad round may be off, one sigma: a pad's zero, a mass that moved, another collar (our choice).
const BAD_KG: f64 = 5.0;
const BAD_MM: f64 = 3.0;

/// Rounds that may be the bad one: those that were foreseen worst.
const SUSPECTS: usize = 3;

/// A round is suspect when its eight values are off by this much, as the sum of squares over their variance: one round
/// in twenty is by chance (chi-square, 8 degrees of freedom).
const SUSPECT_ABOVE: f64 = 15.5;

/// A chance of being bad that is worth naming.
const NAMED: f64 = 0.1;

/// What is believed of the car, and how it stands.
pub(crate) struct Belief {
    /// The car at the mean of what is believed.
    pub car: Car,
    /// What one step does there.
    pub per_step: PerStep,
    /// Where the car stands.
    pub start: Start,
    pub learned: Option<Learned>,
    spread: Joint,
}

/// How well the factors and the car's stand are known together.
#[derive(Clone)]
struct Joint {
    /// Covariance of the factors, then of loads (kg) and heights (mm), without what all readings share.
    covariance: DMatrix<f64>,
    /// What a step does otherwise per unit of each factor.
    slopes: Vec<PerStep>,
    /// Covariance of what all readings share.
    constant: Covariance8,
    /// Covariance of one more reading, of what changes from reading to reading.
    one_reading: DMatrix<f64>,
}

impl Belief {
    pub(crate) fn of(problem: &Problem) -> Result<Belief, PlanError> {
        let prior = Prior::of(problem)?;
        let now = problem.now();
        let car = prior.car_at(&prior.logs.mean);
        let spread = Spread::of(&car, &problem.pads, &now.loads_kg, 1, 1)?;
        let one_reading = varying(&spread, &problem.pads);
        let constant = constant(&spread, &Sensitivity::of(&car)?, &problem.pads);
        // Data that is certain is not taught: the car stands as it was read last.
        let taught = !prior.unknowns.is_empty() && (problem.rounds.len() > 1 || problem.known.is_some());
        let (mean, covariance, learned) = if taught {
            let noise = Noise { one: one_reading.clone(), pattern: pattern(&car, &problem.pads) };
            let weighed = weigh(problem, &prior, &noise)?;
            let learned = weighed.learned(problem, &prior);
            (weighed.mean, weighed.covariance, Some(learned))
        } else {
            let (mean, covariance) = before_reading(&prior, now, &one_reading, 1.0);
            (mean, covariance, None)
        };
        let count = prior.unknowns.len();
        let logs = mean.rows(0, count).into_owned();
        let stands = mean.rows(count, 8);
        Ok(Belief {
            car: prior.car_at(&logs),
            per_step: prior.per_step_at(&logs)?,
            start: Start {
                loads_kg: Corners::from_array([stands[0], stands[1], stands[2], stands[3]]),
                heights_mm: Corners::from_array([stands[4], stands[5], stands[6], stands[7]]),
            },
            learned,
            spread: Joint { covariance, slopes: prior.slopes_at(&logs)?, constant, one_reading },
        })
    }

    /// Covariance of where the car stands but for the doubts, and the doubts.
    pub(crate) fn doubts(&self) -> (Covariance8, Vec<Doubt>) {
        self.spread.doubts()
    }

    /// The same after one more settle and look at the car as it stands.
    pub(crate) fn doubts_after_another_reading(&self) -> (Covariance8, Vec<Doubt>) {
        let count = self.spread.slopes.len();
        let covariance = &self.spread.covariance;
        let seen = covariance.view((0, count), (count + 8, 8)).into_owned();
        let floor = DMatrix::identity(8, 8) * (LEAST_SPREAD * LEAST_SPREAD);
        let foreseen = covariance.view((count, count), (8, 8)) + &self.spread.one_reading + floor;
        let Some(factor) = foreseen.cholesky() else { return self.doubts() };
        let covariance = covariance - &seen * factor.solve(&seen.transpose());
        Joint { covariance, ..self.spread.clone() }.doubts()
    }
}

impl Joint {
    fn doubts(&self) -> (Covariance8, Vec<Doubt>) {
        let count = self.slopes.len();
        let factor = semidefinite_cholesky(&self.covariance);
        let doubt = |j: usize| {
            let parts: Vec<(&PerStep, f64)> =
                self.slopes.iter().enumerate().map(|(i, s)| (s, factor[(i, j)])).collect();
            Doubt { at_rest: std::array::from_fn(|i| factor[(count + i, j)]), per_step: combine(&parts) }
        };
        let rest = factor.view((count, count), (8, 8));
        let rest = rest * rest.transpose();
        let apart = std::array::from_fn(|i| std::array::from_fn(|j| rest[(i, j)] + self.constant[i][j]));
        (apart, (0..count).map(doubt).collect())
    }
}

/// What changes from one reading to the next.
struct Noise {
    /// Covariance of one reading with friction as stated.
    one: DMatrix<f64>,
    /// The part of it that is friction.
    pattern: DMatrix<f64>,
}

impl Noise {
    fn with_settle(&self, times: f64) -> DMatrix<f64> {
        let floor = LEAST_SPREAD * LEAST_SPREAD;
        &self.one + &self.pattern * (times * times - 1.0) + DMatrix::identity(8, 8) * floor
    }
}

/// Covariance of what changes from reading to reading: loads, then heights.
fn varying(spread: &Spread, pads: &Pads) -> DMatrix<f64> {
    DMatrix::from_fn(8, 8, |i, j| match (i < 4, j < 4) {
        (true, true) => spread.varying_kg2[i][j],
        (false, false) if i == j => pads.height_mm.powi(2),
        _ => 0.0,
    })
}

/// Covariance of what all readings of a job share: pads off their level move loads and heights together.
fn constant(spread: &Spread, sensitivity: &Sensitivity, pads: &Pads) -> Covariance8 {
    let mut covariance = [[0.0; 8]; 8];
    for (row, loads) in covariance.iter_mut().zip(&spread.constant_kg2) {
        row[..4].copy_from_slice(loads);
    }
    for pad in 0..4 {
        let of = |m: &[[f64; 4]; 4]| -> [f64; 4] { std::array::from_fn(|i| m[i][pad] * pads.level_mm) };
        let (load, height) = (of(&sensitivity.load_per_mm_pad), of(&sensitivity.height_per_mm_pad));
        for i in 0..4 {
            for j in 0..4 {
                covariance[4 + i][4 + j] += height[i] * height[j];
                covariance[i][4 + j] += load[i] * height[j];
                covariance[4 + j][i] += load[i] * height[j];
            }
        }
    }
    covariance
}

fn pattern(car: &Car, pads: &Pads) -> DMatrix<f64> {
    let n = diagonal(car).to_array();
    let at = |i: usize| if i < 4 { n[i] * pads.settle_kg } else { 0.0 };
    DMatrix::from_fn(8, 8, |i, j| at(i) * at(j))
}

/// What is bad, if anything.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Bad {
    None,
    /// What happened before this reading was not what was entered.
    Before(usize),
    /// This reading alone is off.
    Reading(usize),
}

#[derive(Clone, Copy, Debug)]
struct Hypothesis {
    settle: f64,
    bold: f64,
    bad: Bad,
    log_prior: f64,
}

/// What a hypothesis says after the readings.
struct Said {
    hypothesis: Hypothesis,
    mean: DVector<f64>,
    covariance: DMatrix<f64>,
    /// Logarithm of its prior times how well it foresaw the readings.
    log_weight: f64,
    /// How far each reading but the first was off what was foreseen: sum of squares over variance.
    surprise: Vec<f64>,
}

/// The weighted mean of the hypotheses with the likeliest friction and boldness.
struct Weighed {
    mean: DVector<f64>,
    covariance: DMatrix<f64>,
    /// Friction as a multiple of what was stated.
    settle: f64,
    /// Chance that each round is bad.
    bad: Vec<f64>,
}

fn weigh(problem: &Problem, prior: &Prior, noise: &Noise) -> Result<Weighed, PlanError> {
    let mut about = prior.logs.mean.clone();
    let mut pass = 1;
    loop {
        let model = Model {
            problem,
            prior,
            noise,
            per_step: prior.per_step_at(&about)?,
            slopes: prior.slopes_at(&about)?,
            about: about.clone(),
        };
        let weighed = Weighed::of(&model.all(), problem.rounds.len());
        about = weighed.mean.rows(0, prior.unknowns.len()).into_owned();
        if pass == PASSES {
            return Ok(weighed);
        }
        pass += 1;
    }
}

/// The factors and how the car stands after the first reading: the prior, and a true reading known as well as it.
fn before_reading(prior: &Prior, first: &Round, noise: &DMatrix<f64>, bold: f64) -> (DVector<f64>, DMatrix<f64>) {
    let count = prior.unknowns.len();
    let mut mean = DVector::zeros(count + 8);
    mean.rows_mut(0, count).copy_from(&prior.logs.mean);
    mean.rows_mut(count, 8).copy_from(&values(first));
    let mut covariance = DMatrix::zeros(count + 8, count + 8);
    covariance.view_mut((0, 0), (count, count)).copy_from(&(&prior.logs.covariance * (bold * bold)));
    covariance.view_mut((count, count), (8, 8)).copy_from(noise);
    (mean, covariance)
}

fn values(round: &Round) -> DVector<f64> {
    let (loads, heights) = (round.loads_kg.to_array(), round.heights_mm.to_array());
    DVector::from_fn(8, |i, _| if i < 4 { loads[i] } else { heights[i - 4] })
}

/// The rounds, linear about some factors.
struct Model<'a> {
    problem: &'a Problem,
    prior: &'a Prior,
    noise: &'a Noise,
    per_step: PerStep,
    slopes: Vec<PerStep>,
    about: DVector<f64>,
}

impl Model<'_> {
    /// What every hypothesis says: first those without a bad round; then, where the best of them did not foresee a
    /// reading, those with one.
    fn all(&self) -> Vec<Said> {
        let settles: &[(f64, f64)] = if self.problem.pads.settle_kg > 0.0 { &SETTLE } else { &[(1.0, 1.0)] };
        let mut said = Vec::new();
        for &(settle, how_likely) in settles {
            for (bold, bold_likely) in BOLD {
                let log_prior = (how_likely * bold_likely).ln();
                said.push(self.filtered(Hypothesis { settle, bold, bad: Bad::None, log_prior }));
            }
        }
        let Some(best) = said.iter().max_by(|a, b| a.log_weight.total_cmp(&b.log_weight)) else { return said };
        let mut suspects: Vec<(usize, f64)> =
            best.surprise.iter().enumerate().map(|(i, s)| (i + 1, *s)).filter(|(_, s)| *s > SUSPECT_ABOVE).collect();
        suspects.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
        let ordinary: Vec<Hypothesis> = said.iter().map(|s| s.hypothesis).collect();
        for &(round, _) in suspects.iter().take(SUSPECTS) {
            let mut bad = vec![Bad::Before(round)];
            // A reading that is off on its own is seen by the one after it.
            if round + 1 < self.problem.rounds.len() {
                bad.push(Bad::Reading(round));
            }
            for bad in bad {
                for h in &ordinary {
                    let log_prior = h.log_prior + (BAD / (1.0 - BAD)).ln();
                    said.push(self.filtered(Hypothesis { bad, log_prior, ..*h }));
                }
            }
        }
        said
    }

    /// The filter under one hypothesis. The state is the unknowns, then the true loads and heights.
    fn filtered(&self, hypothesis: Hypothesis) -> Said {
        let count = self.prior.unknowns.len();
        let noise = self.noise.with_settle(hypothesis.settle);
        let off = |i: usize| if i < 4 { BAD_KG * BAD_KG } else { BAD_MM * BAD_MM };
        let bad = DMatrix::from_fn(8, 8, |i, j| if i == j { off(i) } else { 0.0 });
        let (mut mean, mut covariance) = before_reading(self.prior, &self.problem.rounds[0], &noise, hypothesis.bold);
        let mut said = Said {
            hypothesis,
            mean: DVector::zeros(0),
            covariance: DMatrix::zeros(0, 0),
            log_weight: hypothesis.log_prior,
            surprise: Vec::new(),
        };
        for (number, round) in self.problem.rounds.iter().enumerate().skip(1) {
            let turned = round.turned_steps.to_array();
            // The true reading moves by (M + sum (x - about) slope) turned.
            let mut moves = DMatrix::identity(count + 8, count + 8);
            let mut shift = answer_to(&self.per_step, &turned);
            for (i, slope) in self.slopes.iter().enumerate() {
                let column = answer_to(slope, &turned);
                shift -= &column * self.about[i];
                moves.view_mut((count, i), (8, 1)).copy_from(&column);
            }
            mean = &moves * mean;
            let mut moved = mean.rows_mut(count, 8);
            moved += shift;
            covariance = &moves * covariance * moves.transpose();
            if hypothesis.bad == Bad::Before(number) {
                let mut stands = covariance.view_mut((count, count), (8, 8));
                stands += &bad;
            }
            // Then it is read.
            let seen = covariance.view((0, count), (count + 8, 8)).into_owned();
            let mut foreseen = covariance.view((count, count), (8, 8)) + &noise;
            if hypothesis.bad == Bad::Reading(number) {
                foreseen += &bad;
            }
            // Positive definite: the noise has a floor. Without a factor the round teaches nothing.
            let Some(factor) = foreseen.cholesky() else { continue };
            let surprise = values(round) - mean.rows(count, 8);
            let weighed = factor.solve(&surprise);
            let square = surprise.dot(&weighed);
            let log_size: f64 = factor.l_dirty().diagonal().iter().map(|d| d.ln()).sum();
            said.log_weight -= 0.5 * square + log_size;
            said.surprise.push(square);
            mean += &seen * weighed;
            covariance -= &seen * factor.solve(&seen.transpose());
        }
        said.mean = mean;
        said.covariance = covariance;
        said
    }
}

impl Weighed {
    fn of(said: &[Said], rounds: usize) -> Weighed {
        let most = said.iter().map(|s| s.log_weight).fold(f64::NEG_INFINITY, f64::max);
        let weight = |s: &Said| (s.log_weight - most).exp();
        let alike =
            |a: &Said, b: &Said| (a.hypothesis.settle, a.hypothesis.bold) == (b.hypothesis.settle, b.hypothesis.bold);
        let with_all_rounds = |s: &Said| said.iter().filter(|other| alike(s, other)).map(weight).sum::<f64>();
        let mut likeliest = &said[0];
        for s in said {
            if with_all_rounds(s) > with_all_rounds(likeliest) {
                likeliest = s;
            }
        }
        let total = with_all_rounds(likeliest);
        let shares: Vec<(&Said, f64)> =
            said.iter().filter(|s| alike(s, likeliest)).map(|s| (s, weight(s) / total)).collect();
        let size = likeliest.mean.len();
        let mut weighed = Weighed {
            mean: DVector::zeros(size),
            covariance: DMatrix::zeros(size, size),
            settle: likeliest.hypothesis.settle,
            bad: vec![0.0; rounds],
        };
        for (s, share) in &shares {
            weighed.mean += &s.mean * *share;
            if let Bad::Before(round) | Bad::Reading(round) = s.hypothesis.bad {
                weighed.bad[round] += share;
            }
        }
        for (s, share) in &shares {
            let apart = &s.mean - &weighed.mean;
            weighed.covariance += (&s.covariance + &apart * apart.transpose()) * *share;
        }
        weighed
    }

    /// What to tell of what was learned.
    fn learned(&self, problem: &Problem, prior: &Prior) -> Learned {
        let count = prior.unknowns.len();
        let scale = |(i, unknown): (usize, &bayhand_chassis::UnknownFactor)| LearnedScale {
            what: unknown.what,
            places: unknown.places.clone(),
            base: unknown.base,
            entered: unknown.entered,
            factor: self.mean[i].exp(),
            sigma_pct: 100.0 * self.covariance[(i, i)].max(0.0).sqrt(),
            prior_sigma_pct: 100.0 * unknown.sigma,
        };
        // Both halves of a covariance are made the same to the last bit: it is kept as text and read again.
        let covariance = |i: usize, j: usize| 0.5 * (self.covariance[(i, j)] + self.covariance[(j, i)]);
        let doubted = self.bad.iter().enumerate().filter(|(_, chance)| **chance >= NAMED);
        Learned {
            readings: problem.rounds.len(),
            scales: prior.unknowns.iter().enumerate().map(scale).collect(),
            covariance: (0..count).map(|i| (0..count).map(|j| covariance(i, j)).collect()).collect(),
            settle_kg: problem.pads.settle_kg * self.settle,
            doubted: doubted.map(|(round, chance)| Doubted { round, chance: *chance }).collect(),
            known_since: problem.known.as_ref().map(|known| known.on.clone()),
        }
    }
}

/// Loads and heights that turned steps move.
fn answer_to(per_step: &PerStep, turned: &[f64; 4]) -> DVector<f64> {
    DVector::from_fn(8, |i, _| {
        let row = if i < 4 { per_step.load_kg[i] } else { per_step.height_mm[i - 4] };
        row.iter().zip(turned).map(|(r, t)| r * t).sum()
    })
}
