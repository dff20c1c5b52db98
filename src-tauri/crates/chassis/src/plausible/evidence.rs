//! Generalised least squares on the differences of consecutive readings, and how well each suspect explains them.
//!
//! With `d` the differences less what the turned collars should have done, `N` their covariance by noise and friction,
//! `G` the slopes of what the collars do by each unknown factor `u` of the car data (scaled to one sigma), the
//! reconciliation minimises `(d - G u)' N⁻¹ (d - G u) + u'u`. Its minimum is `d' C⁻¹ d` with `C = N + G G'`: chi-square
//! with as many degrees of freedom as there are differences, since each unknown brings its own prior knowledge
//! along. In coordinates in which `N` is one, `C⁻¹ = 1 - G (1 + G'G)⁻¹ G'` (Woodbury).
//!
//! A suspect of size `b` adds `b (e + E u)` to the differences: `e` its effect, `E` the slopes of that by the unknowns,
//! so that `G` becomes `G + b E`. With `b` normal about zero (standard deviation `s`) the probability density of `d` is,
//! up to what all suspects share, `a = e'C⁻¹e`, `m = e'C⁻¹d`:
//!
//! ```text
//!   ln density = -1/2 [ d'C⁻¹d - m² / (a + 1/s²) + ln(1 + a s²) + ln det(1 + G'G) ]
//! ```
//!
//! and `b` is `m / (a + 1/s²)` on average. The term `ln(1 + a s²)` is what a free size costs: a cause that had to be
//! tuned is believed less than one that says as much by itself.

use super::response::Eight;
use super::suspects::Size;
use nalgebra::{Cholesky, DMatrix, DVector, Dyn};
use statrs::distribution::{ContinuousCDF, Normal};

/// What a suspect has for itself.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Evidence {
    /// Logarithm of the probability density of the differences, up to a constant that is the same for all.
    pub(crate) ln_density: f64,
    /// Size on average, as it is reported.
    pub(crate) size: f64,
}

/// The differences and what may be wrong with them, in coordinates in which their noise is one.
pub(crate) struct Differences {
    /// Lower Cholesky factor of the noise.
    noise: DMatrix<f64>,
    differences: DVector<f64>,
    /// Slopes of what the collars do by each unknown, one sigma each.
    doubts: DMatrix<f64>,
}

/// `C` in those coordinates, ready to be divided by.
struct Weighing<'a> {
    doubts: &'a DMatrix<f64>,
    inner: Cholesky<f64, Dyn>,
}

impl<'a> Weighing<'a> {
    fn of(doubts: &'a DMatrix<f64>) -> Option<Weighing<'a>> {
        let count = doubts.ncols();
        let inner = (DMatrix::identity(count, count) + doubts.transpose() * doubts).cholesky()?;
        Some(Weighing { doubts, inner })
    }

    /// `x' C⁻¹ y`.
    fn product(&self, x: &DVector<f64>, y: &DVector<f64>) -> f64 {
        let (x_in, y_in) = (self.doubts.transpose() * x, self.doubts.transpose() * y);
        x.dot(y) - x_in.dot(&self.inner.solve(&y_in))
    }

    /// `ln det C`.
    fn ln_det(&self) -> f64 {
        2.0 * self.inner.l_dirty().diagonal().iter().map(|v| v.ln()).sum::<f64>()
    }
}

impl Differences {
    /// From the differences of consecutive readings less what collars should have done, the covariance of one
    /// reading, and the slopes by each unknown, scaled to one sigma. None when the covariance is not one.
    pub(crate) fn between(differences: &[Eight], of_reading: &DMatrix<f64>, doubts: &[Vec<Eight>]) -> Option<Self> {
        let count = 8 * differences.len();
        let covariance = DMatrix::from_fn(count, count, |i, j| {
            // Neighbouring differences share a reading, one with plus and one with minus.
            let share = match (i / 8).abs_diff(j / 8) {
                0 => 2.0,
                1 => -1.0,
                _ => 0.0,
            };
            share * of_reading[(i % 8, j % 8)]
        });
        let doubts = DMatrix::from_fn(count, doubts.len(), |i, j| doubts[j][i / 8][i % 8]);
        Self::of(&DVector::from_fn(count, |i, _| differences[i / 8][i % 8]), covariance, &doubts)
    }

    /// From any differences that should be zero, their covariance, and their slopes by each unknown, one sigma.
    fn of(differences: &DVector<f64>, covariance: DMatrix<f64>, doubts: &DMatrix<f64>) -> Option<Self> {
        let noise = covariance.cholesky()?;
        let lower = noise.l();
        let (differences, doubts) = (lower.solve_lower_triangular(differences)?, lower.solve_lower_triangular(doubts)?);
        Some(Differences { noise: lower, differences, doubts })
    }

    /// Chi-square of the rest after reconciliation, and the log density when nothing else happened.
    pub(crate) fn of_nothing(&self) -> Option<(f64, f64)> {
        let weighing = Weighing::of(&self.doubts)?;
        let chi2 = weighing.product(&self.differences, &self.differences);
        Some((chi2, -0.5 * (chi2 + weighing.ln_det())))
    }

    /// What a suspect has for itself. `slopes`: of its effect by each unknown, scaled to one sigma.
    pub(crate) fn of_suspect(
        &self,
        size: Size,
        effect: &[(usize, Eight)],
        slopes: &[Vec<(usize, Eight)>],
    ) -> Option<Evidence> {
        let effect = self.whitened(effect)?;
        let (scales, reported, positive) = match size {
            Size::Fixed(size) => {
                let weighing = Weighing::of(&self.doubts)?;
                let rest = &self.differences - effect;
                let ln_density = -0.5 * (weighing.product(&rest, &rest) + weighing.ln_det());
                return Some(Evidence { ln_density, size });
            }
            Size::Any { scales, reported } => (scales, reported, false),
            Size::Positive { scales, reported } => (scales, reported, true),
        };
        // First its size with the doubts of the collars alone, then with those of its own effect at that size.
        let weighing = Weighing::of(&self.doubts)?;
        let widest = scales[2];
        let about = weighing.product(&effect, &self.differences)
            / (weighing.product(&effect, &effect) + 1.0 / (widest * widest));
        let mut doubts = self.doubts.clone();
        for (mut column, slope) in doubts.column_iter_mut().zip(slopes) {
            column += self.whitened(slope)? * about;
        }
        let weighing = Weighing::of(&doubts)?;
        let (a, m) = (weighing.product(&effect, &effect), weighing.product(&effect, &self.differences));
        let rest = weighing.product(&self.differences, &self.differences) + weighing.ln_det();
        let each = scales.map(|s| {
            let sharp = a + 1.0 / (s * s);
            let mut ln = -0.5 * (rest - m * m / sharp + (1.0 + a * s * s).ln());
            if positive {
                // Half of the normal prior, doubled: the share of the posterior above zero.
                ln += (2.0 * standard_normal_below(m / sharp.sqrt())).max(f64::MIN_POSITIVE).ln();
            }
            (ln, m / sharp)
        });
        let best = each.iter().map(|e| e.0).fold(f64::NEG_INFINITY, f64::max);
        let sum: f64 = each.iter().map(|e| (e.0 - best).exp()).sum();
        let size = each.iter().map(|e| (e.0 - best).exp() * e.1).sum::<f64>() / sum;
        let size = if positive { size.max(0.0) } else { size };
        Some(Evidence { ln_density: best + (sum / 3.0).ln(), size: size * reported })
    }

    fn whitened(&self, blocks: &[(usize, Eight)]) -> Option<DVector<f64>> {
        let mut stacked = DVector::zeros(self.differences.len());
        for (pair, block) in blocks {
            let mut here = stacked.rows_mut(8 * pair, 8);
            here += block;
        }
        self.noise.solve_lower_triangular(&stacked)
    }
}

fn standard_normal_below(z: f64) -> f64 {
    Normal::standard().cdf(z)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]
mod tests {
    use super::*;

    fn near(found: f64, expected: f64, tolerance: f64, why: &str) {
        assert!((found - expected).abs() <= tolerance, "{why}: {found} is not {expected}");
    }

    /// M: Narasimhan & Jordache, Data Reconciliation and Gross Error Detection, example 1.1 (from memory): flows 101.91,
    /// 64.45, 34.65, 64.20, 36.44, 98.88 of equal weight round f1 = f2 + f3, f2 = f4, f3 = f5, f4 + f5 = f6: statistic
    /// 6.4075.
    #[test]
    fn the_statistic_is_that_of_the_flow_example() {
        let flows = DVector::from_vec(vec![101.91, 64.45, 34.65, 64.20, 36.44, 98.88]);
        #[rustfmt::skip]
        let nodes = DMatrix::from_row_slice(4, 6, &[
            1.0, -1.0, -1.0,  0.0,  0.0,  0.0,
            0.0,  1.0,  0.0, -1.0,  0.0,  0.0,
            0.0,  0.0,  1.0,  0.0, -1.0,  0.0,
            0.0,  0.0,  0.0,  1.0,  1.0, -1.0,
        ]);
        let covariance = &nodes * nodes.transpose();
        let balance = Differences::of(&(&nodes * &flows), covariance, &DMatrix::zeros(4, 0)).unwrap();
        let (chi2, _) = balance.of_nothing().unwrap();
        near(chi2, 6.4075, 5e-5, "the rest after reconciliation");
        assert!(chi2 < 9.488, "below chi-square 95 % for four nodes: the flows agree");
    }

    /// R: one difference, noise 2, doubt 1.5 (one sigma): C = 4 + 2.25. A suspect of effect 0.5 with sizes about 3.
    #[test]
    fn one_difference_by_hand() {
        let one = |v: f64| DMatrix::from_element(1, 1, v);
        let all = Differences::of(&DVector::from_vec(vec![5.0]), one(4.0), &one(1.5)).unwrap();
        let (chi2, ln) = all.of_nothing().unwrap();
        near(chi2, 25.0 / 6.25, 1e-12, "d²/C");
        // Up to ln det N: the density of a normal of variance C.
        near(ln, -0.5 * (25.0 / 6.25 + (6.25_f64 / 4.0).ln()), 1e-12, "its density");
        // The first value of an otherwise silent difference of eight.
        let mut effect = Eight::zeros();
        effect[0] = 0.5;
        let eight = |first: f64| {
            DMatrix::from_fn(8, 8, |i, j| {
                if i != j {
                    0.0
                } else if i == 0 {
                    first
                } else {
                    1.0
                }
            })
        };
        let mut doubt = DMatrix::zeros(8, 1);
        doubt[0] = 1.5;
        let mut seen = DVector::zeros(8);
        seen[0] = 5.0;
        let all = Differences::of(&seen, eight(4.0), &doubt).unwrap();
        let size = Size::Any { scales: [3.0; 3], reported: 2.0 };
        let found = all.of_suspect(size, &[(0, effect)], &[Vec::new()]).unwrap();
        let (a, m) = (0.25 / 6.25, 0.5 * 5.0 / 6.25);
        near(found.size, 2.0 * m / (a + 1.0 / 9.0), 1e-12, "size on average, as reported");
        // Marginal variance of the difference: C + e² s².
        let variance: f64 = 6.25 + 0.25 * 9.0;
        near(found.ln_density, -0.5 * (25.0 / variance + (variance / 4.0).ln()), 1e-12, "density with any size");
        let fixed = all.of_suspect(Size::Fixed(10.0), &[(0, effect * 10.0)], &[]).unwrap();
        near(fixed.ln_density, -0.5 * (6.25_f64 / 4.0).ln(), 1e-12, "a size that explains all of it");
        let size = Size::Positive { scales: [3.0; 3], reported: 1.0 };
        let against = all.of_suspect(size, &[(0, -effect)], &[Vec::new()]).unwrap();
        assert_eq!(against.size, 0.0, "what can only push does not pull");
        assert!(against.ln_density < found.ln_density - 1.0, "and is believed less");
    }
}
