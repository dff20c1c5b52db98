//! What is known of a plan's outcome.
//!
//! The outcome is off by what the reading is off now (looks, rounding, settle, level, heights, patches) and by what
//! the steps do otherwise than believed (springs and ratios). The first is the same for every plan; the second grows
//! with the steps. Both enter linearly (JCGM 100:2008, 5.1.2).

use crate::PlanError;
use crate::answer::Outcome;
use crate::chance::box_probability;
use crate::objective::{Objective, PerStep, Steps, dot};
use crate::problem::{Problem, WishName};
use bayhand_chassis::{COVERAGE, Figures, Sensitivity, Spread, expanded_figures};
use bayhand_vehicle::{Car, Corners, Place};
use nalgebra::DMatrix;

/// Covariance of four loads (kg) and four heights (mm).
type Covariance8 = [[f64; 8]; 8];

/// What is known before a plan is chosen.
pub(crate) struct Outlook {
    loads_kg: Corners<f64>,
    heights_mm: Corners<f64>,
    per_step: PerStep,
    /// Covariance of the reading.
    reading: Covariance8,
    /// Each row: what a step does, one sigma off, in one of the independent ways.
    doubts: Vec<PerStep>,
    /// Covariance of the wishes from the reading alone.
    wish_reading: DMatrix<f64>,
    /// For each doubt and wish: change per step.
    wish_doubts: Vec<Vec<[f64; 4]>>,
    half: Vec<f64>,
}

impl Outlook {
    pub(crate) fn of(
        problem: &Problem,
        car: &Car,
        per_step: PerStep,
        doubts: Vec<PerStep>,
    ) -> Result<Outlook, PlanError> {
        let now = problem.now();
        let reading = reading_covariance(problem, car, &now.loads_kg)?;
        let wishes = problem.wishes.given();
        let gradients = Figures::gradients(&now.loads_kg);
        let wish_of: Vec<[f64; 8]> = wishes
            .iter()
            .map(|(name, _)| {
                let loads = |g: [f64; 4]| std::array::from_fn(|i| if i < 4 { g[i] } else { 0.0 });
                let height = |p: Place| std::array::from_fn(|i| if i == 4 + p.index() { 1.0 } else { 0.0 });
                match name {
                    WishName::CrossPct => loads(gradients[3]),
                    WishName::FrontDiffKg => loads(gradients[4]),
                    WishName::RearDiffKg => loads(gradients[5]),
                    WishName::HeightFl => height(Place::Fl),
                    WishName::HeightFr => height(Place::Fr),
                    WishName::HeightRl => height(Place::Rl),
                    WishName::HeightRr => height(Place::Rr),
                }
            })
            .collect();
        let wish_reading = DMatrix::from_fn(wishes.len(), wishes.len(), |a, b| {
            (0..8).map(|i| (0..8).map(|j| wish_of[a][i] * reading[i][j] * wish_of[b][j]).sum::<f64>()).sum()
        });
        let wish_doubts = doubts
            .iter()
            .map(|doubt| {
                let row = |of: &[f64; 8]| {
                    std::array::from_fn(|s| {
                        (0..4).map(|i| of[i] * doubt.load_kg[i][s] + of[4 + i] * doubt.height_mm[i][s]).sum()
                    })
                };
                wish_of.iter().map(row).collect()
            })
            .collect();
        Ok(Outlook {
            loads_kg: now.loads_kg,
            heights_mm: now.heights_mm,
            per_step,
            reading,
            doubts,
            wish_reading,
            wish_doubts,
            half: wishes.iter().map(|(_, w)| w.window).collect(),
        })
    }

    /// The reading that a plan gives.
    pub(crate) fn predicted(&self, steps: &Steps) -> Outcome {
        let loads_kg = Corners::from_fn(|p| self.loads_kg.at(p) + dot(&self.per_step.load_kg[p.index()], steps));
        let heights_mm = Corners::from_fn(|p| self.heights_mm.at(p) + dot(&self.per_step.height_mm[p.index()], steps));
        Outcome { loads_kg, heights_mm, figures: Figures::of(&loads_kg) }
    }

    /// Its expanded uncertainties.
    pub(crate) fn uncertainty(&self, steps: &Steps) -> Outcome {
        let mut covariance = self.reading;
        for doubt in &self.doubts {
            let off: [f64; 8] =
                std::array::from_fn(|i| dot(if i < 4 { &doubt.load_kg[i] } else { &doubt.height_mm[i - 4] }, steps));
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

    /// No plan has a better chance than one that would meet every target exactly and need no steps for it: a symmetric
    /// box holds most of a centred Gaussian, and more of a narrower one (T. W. Anderson, 1955).
    pub(crate) fn chance_at_best(&self) -> f64 {
        box_probability(&vec![0.0; self.half.len()], &self.wish_reading, &self.half)
    }

    /// Covariance of the wishes after a plan.
    fn wish_covariance(&self, steps: &Steps) -> DMatrix<f64> {
        let mut covariance = self.wish_reading.clone();
        for doubt in &self.wish_doubts {
            let off: Vec<f64> = doubt.iter().map(|row| dot(row, steps)).collect();
            for i in 0..off.len() {
                for j in 0..off.len() {
                    covariance[(i, j)] += off[i] * off[j];
                }
            }
        }
        covariance
    }

    /// Sigma of one wish after a plan.
    pub(crate) fn wish_sigma(&self, wish: usize, steps: &Steps) -> f64 {
        let doubts: f64 = self.wish_doubts.iter().map(|doubt| dot(&doubt[wish], steps).powi(2)).sum();
        (self.wish_reading[(wish, wish)] + doubts).max(0.0).sqrt()
    }

    /// Greatest sigma of one wish over all steps inside a box that reaches `most` either way.
    pub(crate) fn greatest_wish_sigma(&self, wish: usize, most: &Steps) -> f64 {
        let doubts = self
            .wish_doubts
            .iter()
            .map(|doubt| doubt[wish].iter().zip(most).map(|(d, m)| (d * f64::from(*m)).abs()).sum::<f64>().powi(2));
        (self.wish_reading[(wish, wish)] + doubts.sum::<f64>()).max(0.0).sqrt()
    }

    /// Half widths of the windows, in the order of the wishes.
    pub(crate) fn half(&self) -> &[f64] {
        &self.half
    }
}

/// Covariance of one reading: one look at one settle.
fn reading_covariance(problem: &Problem, car: &Car, loads_kg: &Corners<f64>) -> Result<Covariance8, PlanError> {
    let loads = Spread::of(car, &problem.pads, loads_kg, 1, 1)?.total_kg2();
    let sensitivity = Sensitivity::of(car)?;
    let mut covariance = [[0.0; 8]; 8];
    for i in 0..4 {
        covariance[i][..4].copy_from_slice(&loads[i]);
        covariance[4 + i][4 + i] += problem.pads.height_mm.powi(2);
    }
    // A pad off its level moves loads and heights together; the part on the loads is in their spread already.
    let level = problem.pads.level_mm;
    for pad in 0..4 {
        let load: [f64; 4] = std::array::from_fn(|i| sensitivity.load_per_mm_pad[i][pad] * level);
        let height: [f64; 4] = std::array::from_fn(|i| sensitivity.height_per_mm_pad[i][pad] * level);
        for i in 0..4 {
            for j in 0..4 {
                covariance[4 + i][4 + j] += height[i] * height[j];
                covariance[i][4 + j] += load[i] * height[j];
                covariance[4 + j][i] += load[i] * height[j];
            }
        }
    }
    Ok(covariance)
}
