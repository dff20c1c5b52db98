//! What is known of a plan's outcome.
//!
//! The outcome is off by what the start is off (looks, rounding, settles, level, heights, patches) and by what the
//! steps do otherwise than believed (springs and ratios). The first is the same for every plan; the second grows with
//! the steps. After some rounds the two know of each other: a car that was taken for softer than it is was also taken
//! to stand elsewhere. Both enter linearly (JCGM 100:2008, 5.1.2).

use crate::answer::Outcome;
use crate::chance::box_probability;
use crate::objective::{Objective, PerStep, RAKE, Start, Steps, dot};
use crate::problem::{Problem, WishName};
use bayhand_chassis::{COVERAGE, Figures, expanded_figures};
use bayhand_vehicle::{Corners, Place};
use nalgebra::DMatrix;

/// Covariance of four loads (kg) and four heights (mm).
pub(crate) type Covariance8 = [[f64; 8]; 8];

/// One of the independent ways in which what is believed may be off, one sigma of it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Doubt {
    /// What the start is off: loads (kg), then heights (mm).
    pub at_rest: [f64; 8],
    /// What a step does otherwise.
    pub per_step: PerStep,
}

/// What is known before a plan is chosen.
pub(crate) struct Outlook {
    start: Start,
    per_step: PerStep,
    /// Covariance of the start but for the doubts.
    apart: Covariance8,
    doubts: Vec<Doubt>,
    /// Covariance of the wishes from `apart`.
    wish_apart: DMatrix<f64>,
    /// For each doubt and wish: off at rest, and change per step.
    wish_doubts: Vec<Vec<(f64, [f64; 4])>>,
    half: Vec<f64>,
}

impl Outlook {
    pub(crate) fn of(
        problem: &Problem,
        start: Start,
        per_step: PerStep,
        apart: Covariance8,
        doubts: Vec<Doubt>,
    ) -> Outlook {
        let wishes = problem.wishes.given();
        let gradients = Figures::gradients(&start.loads_kg);
        let wish_of: Vec<[f64; 8]> = wishes.iter().map(|(name, _)| gradient(*name, &gradients)).collect();
        let wish_apart = DMatrix::from_fn(wishes.len(), wishes.len(), |a, b| {
            (0..8).map(|i| (0..8).map(|j| wish_of[a][i] * apart[i][j] * wish_of[b][j]).sum::<f64>()).sum()
        });
        let wish_doubts = doubts
            .iter()
            .map(|doubt| {
                let row = |of: &[f64; 8]| {
                    let at_rest = of.iter().zip(doubt.at_rest).map(|(g, off)| g * off).sum();
                    let per_step = std::array::from_fn(|s| {
                        let p = &doubt.per_step;
                        (0..4).map(|i| of[i] * p.load_kg[i][s] + of[4 + i] * p.height_mm[i][s]).sum()
                    });
                    (at_rest, per_step)
                };
                wish_of.iter().map(row).collect()
            })
            .collect();
        let half = wishes.iter().map(|(_, w)| w.window).collect();
        Outlook { start, per_step, apart, doubts, wish_apart, wish_doubts, half }
    }

    /// The reading that a plan gives.
    pub(crate) fn predicted(&self, steps: &Steps) -> Outcome {
        let (loads, heights) = (&self.per_step.load_kg, &self.per_step.height_mm);
        let loads_kg = Corners::from_fn(|p| self.start.loads_kg.at(p) + dot(&loads[p.index()], steps));
        let heights_mm = Corners::from_fn(|p| self.start.heights_mm.at(p) + dot(&heights[p.index()], steps));
        Outcome { loads_kg, heights_mm, figures: Figures::of(&loads_kg) }
    }

    /// Its expanded uncertainties.
    pub(crate) fn uncertainty(&self, steps: &Steps) -> Outcome {
        let mut covariance = self.apart;
        for doubt in &self.doubts {
            let p = &doubt.per_step;
            let off: [f64; 8] = std::array::from_fn(|i| {
                doubt.at_rest[i] + dot(if i < 4 { &p.load_kg[i] } else { &p.height_mm[i - 4] }, steps)
            });
            for i in 0..8 {
                for j in 0..8 {
                    covariance[i][j] += off[i] * off[j];
                }
            }
        }
        let loads: [[f64; 4]; 4] = std::array::from_fn(|i| std::array::from_fn(|j| covariance[i][j]));
        let expanded =
            |first: usize| Corners::from_fn(|p| COVERAGE * covariance[first + p.index()][first + p.index()].sqrt());
        Outcome {
            loads_kg: expanded(0),
            heights_mm: expanded(4),
            figures: expanded_figures(&self.predicted(steps).loads_kg, &loads),
        }
    }

    /// Chance that every wish is inside its window after a plan.
    pub(crate) fn chance(&self, objective: &Objective, steps: &Steps) -> f64 {
        let mean: Vec<f64> = objective.wishes.iter().map(|w| w.error(steps)).collect();
        box_probability(&mean, &self.wish_covariance(steps), &self.half)
    }

    /// No plan has a better chance than one that would meet every target exactly and that no doubt touches: a symmetric
    /// box holds most of a centred Gaussian, and more of a narrower one (T. W. Anderson, 1955).
    pub(crate) fn chance_at_best(&self) -> f64 {
        box_probability(&vec![0.0; self.half.len()], &self.wish_apart, &self.half)
    }

    /// Covariance of the wishes after a plan.
    fn wish_covariance(&self, steps: &Steps) -> DMatrix<f64> {
        let mut covariance = self.wish_apart.clone();
        let mut off = [0.0; 8];
        for doubt in &self.wish_doubts {
            for (off, (at_rest, row)) in off.iter_mut().zip(doubt) {
                *off = at_rest + dot(row, steps);
            }
            for i in 0..doubt.len() {
                for j in 0..doubt.len() {
                    covariance[(i, j)] += off[i] * off[j];
                }
            }
        }
        covariance
    }

    /// Sigma of one wish after a plan.
    pub(crate) fn wish_sigma(&self, wish: usize, steps: &Steps) -> f64 {
        let doubts = self.wish_doubts.iter().map(|doubt| {
            let (at_rest, row) = &doubt[wish];
            (at_rest + dot(row, steps)).powi(2)
        });
        (self.wish_apart[(wish, wish)] + doubts.sum::<f64>()).max(0.0).sqrt()
    }

    /// Least and greatest sigma of one wish over all steps inside a box that reaches `most` either way.
    pub(crate) fn wish_sigma_between(&self, wish: usize, most: &Steps) -> (f64, f64) {
        let apart = self.wish_apart[(wish, wish)].max(0.0);
        let doubts = self.wish_doubts.iter().map(|doubt| {
            let (at_rest, row) = &doubt[wish];
            let moved: f64 = row.iter().zip(most).map(|(d, m)| (d * f64::from(*m)).abs()).sum();
            (at_rest.abs() + moved).powi(2)
        });
        (apart.sqrt(), (apart + doubts.sum::<f64>()).sqrt())
    }

    /// Half widths of the windows, in the order of the wishes.
    pub(crate) fn half(&self) -> &[f64] {
        &self.half
    }
}

/// How a wish changes with each load (kg) and height (mm).
fn gradient(name: WishName, figures: &[[f64; 4]; 6]) -> [f64; 8] {
    let loads = |g: [f64; 4]| std::array::from_fn(|i| if i < 4 { g[i] } else { 0.0 });
    let height = |p: Place| std::array::from_fn(|i| if i == 4 + p.index() { 1.0 } else { 0.0 });
    match name {
        WishName::CrossPct => loads(figures[3]),
        WishName::FrontDiffKg => loads(figures[4]),
        WishName::RearDiffKg => loads(figures[5]),
        WishName::HeightFl => height(Place::Fl),
        WishName::HeightFr => height(Place::Fr),
        WishName::HeightRl => height(Place::Rl),
        WishName::HeightRr => height(Place::Rr),
        WishName::Rake => std::array::from_fn(|i| if i < 4 { 0.0 } else { RAKE[i - 4] }),
    }
}
