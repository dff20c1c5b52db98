//! A filter that is told the true noise and a prior: many cars drawn as it says, each weighed by how well it explains the
//! readings. It turns along the four-corner pattern by the amount that is inside most likely.

use crate::Work;
use crate::class::{Class, HEIGHT_MM, LOOK_KG, Off, RESOLUTION_KG, Reading, Subject, true_car};
use crate::common::Random;
use bayhand_chassis::{Rates, Sensitivity, diagonal, lift_without_height};
use bayhand_practice::PracticeCar;
use bayhand_vehicle::{Corners, Place};
use nalgebra::{SMatrix, SVector};
use statrs::function::erf::erfc;

const PARTICLES: usize = 1_500;

type Vector8 = SVector<f64, 8>;
type Matrix8 = SMatrix<f64, 8, 8>;
type PerStep = SMatrix<f64, 8, 4>;

struct Particle {
    per_step: PerStep,
    log_weight: f64,
    /// Estimate of how the car stood at first.
    stood: Vector8,
}

/// The cars that may be, and what was read.
pub struct Reference {
    /// The prior: how cars are drawn.
    prior: Off,
    particles: Vec<Particle>,
    read: Vec<(Vector8, SVector<f64, 4>)>,
    turned: SVector<f64, 4>,
    /// Whole steps per kg at FL along the pattern that changes no height, by the data sheet.
    pattern: SVector<f64, 4>,
}

impl Work for Reference {
    fn turn(&mut self, subject: &Subject, class: &Class, readings: &[Reading], turned: [i32; 4]) -> [i32; 4] {
        if self.particles.is_empty() {
            self.begin(subject);
        }
        self.turned += SVector::from(turned.map(f64::from));
        for r in readings {
            let (l, h) = (r.loads_kg.to_array(), r.heights_mm.to_array());
            self.read.push((Vector8::from_fn(|i, _| if i < 4 { l[i] } else { h[i - 4] }), self.turned));
        }
        let noise = noise(subject, class);
        let Some(inverse) = noise.try_inverse() else { return [0; 4] };
        let count = self.read.len() as f64;
        for particle in &mut self.particles {
            let at_first = |(read, turned): &(Vector8, SVector<f64, 4>)| read - particle.per_step * turned;
            let stood = self.read.iter().map(at_first).sum::<Vector8>() / count;
            let squares = self.read.iter().map(|r| {
                let off = at_first(r) - stood;
                off.dot(&(inverse * off))
            });
            particle.log_weight = -0.5 * squares.sum::<f64>();
            particle.stood = stood;
        }
        self.best(class, &noise, count)
    }
}

impl Reference {
    /// Told how cars of the class are drawn.
    pub fn told(class: &Class) -> Reference {
        Reference::with(class.off)
    }

    /// Told what the planner is told where nothing is entered.
    pub fn told_no_more(class: &Class) -> Reference {
        Reference::with(Off::Likely(class.off.said()))
    }

    fn with(prior: Off) -> Reference {
        Reference { prior, particles: vec![], read: vec![], turned: SVector::zeros(), pattern: SVector::zeros() }
    }

    fn begin(&mut self, subject: &Subject) {
        let mut r = Random(subject.seed.wrapping_mul(7) + 5);
        for _ in 0..PARTICLES {
            let mut sheet = subject.sheet;
            if self.prior == Off::Withheld {
                let other = PracticeCar::from_seed(r.next()).data_sheet().entered();
                for place in Place::ALL {
                    let (corner, from) = (sheet.corners.at_mut(place), other.corners.at(place));
                    (corner.spring_n_per_mm, corner.motion_ratio) = (from.spring_n_per_mm, from.motion_ratio);
                }
            }
            let car = true_car(&sheet, self.prior, &mut r);
            let s = Sensitivity::of(&car).expect("a car");
            let ratio = Rates::of(&car).adjuster_ratio.to_array();
            let per_step = PerStep::from_fn(|i, j| {
                let row = if i < 4 { s.load_per_mm_wheel[i] } else { s.height_per_mm_wheel[i - 4] };
                row[j] * ratio[j] * subject.step_mm
            });
            self.particles.push(Particle { per_step, log_weight: 0.0, stood: Vector8::zeros() });
        }
        let lift = lift_without_height(&subject.sheet, 1.0);
        let ratio = Rates::of(&subject.sheet).adjuster_ratio;
        let per_kg = Corners::from_fn(|p| lift.at(p) / (ratio.at(p) * subject.step_mm));
        self.pattern = SVector::from(per_kg.to_array());
    }

    /// The whole steps along the pattern that are inside most likely.
    fn best(&self, class: &Class, noise: &Matrix8, count: f64) -> [i32; 4] {
        let most = self.particles.iter().map(|p| p.log_weight).fold(f64::NEG_INFINITY, f64::max);
        let weighed: Vec<(f64, &Particle)> = self
            .particles
            .iter()
            .map(|p| ((p.log_weight - most).exp(), p))
            .filter(|(weight, _)| *weight > 1e-6)
            .collect();
        let total_kg: f64 = (0..4).map(|i| weighed[0].1.stood[i]).sum();
        let cross = Vector8::from_fn(|i, _| if i == 1 || i == 2 { 100.0 / total_kg } else { 0.0 });
        let sigma = (cross.dot(&(noise * cross)) / count).sqrt();
        // Of each car that may be: its weight, where its cross weight stands now less the target, and what a step does.
        let sum: f64 = weighed.iter().map(|(weight, _)| weight).sum();
        let cars: Vec<(f64, f64, SVector<f64, 4>)> = weighed
            .iter()
            .map(|(weight, p)| {
                let per_step = p.per_step.transpose() * cross;
                (weight / sum, cross.dot(&p.stood) - 50.0 + per_step.dot(&self.turned), per_step)
            })
            .collect();
        let below = |x: f64| 0.5 * erfc(-x / std::f64::consts::SQRT_2);
        let chance = |steps: &SVector<f64, 4>| {
            let inside = |(weight, now, per_step): &(f64, f64, SVector<f64, 4>)| {
                let error = now + per_step.dot(steps);
                weight * (below((class.window_pct - error) / sigma) - below((-class.window_pct - error) / sigma))
            };
            cars.iter().map(inside).sum::<f64>()
        };
        // About the amount that is right on average.
        let now: f64 = cars.iter().map(|(weight, now, _)| weight * now).sum();
        let per_kg: f64 = cars.iter().map(|(weight, _, per_step)| weight * per_step.dot(&self.pattern)).sum();
        let mut best = (chance(&SVector::zeros()), SVector::zeros());
        for fifth in -25..=25 {
            let steps = (self.pattern * (-now / per_kg + f64::from(fifth) * 0.2)).map(f64::round);
            let found = chance(&steps);
            if found > best.0 {
                best = (found, steps);
            }
        }
        std::array::from_fn(|i| best.1[i] as i32)
    }
}

/// The true covariance of a reading.
fn noise(subject: &Subject, class: &Class) -> Matrix8 {
    let n = diagonal(&subject.sheet).to_array();
    let own = |i: usize| if i < 4 { LOOK_KG.powi(2) + RESOLUTION_KG.powi(2) / 12.0 } else { HEIGHT_MM.powi(2) };
    let friction = |i: usize, j: usize| if i < 4 && j < 4 { n[i] * n[j] * class.settle_kg.powi(2) } else { 0.0 };
    Matrix8::from_fn(|i, j| friction(i, j) + if i == j { own(i) } else { 0.0 })
}
