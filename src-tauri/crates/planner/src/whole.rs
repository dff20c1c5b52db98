//! The exact optimum over whole steps of any four adjusters: the search of the collars, for what is not a collar.

use crate::excess::least_excess;
use crate::objective::{Objective, PerStep, WishRow};
use crate::problem::{Price, Wish};
use crate::search::{WORK_LIMIT, best};

/// Something that is wanted of a few adjusters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aim {
    /// How far off it is now, in a unit of its own: value less target.
    pub off: f64,
    /// Half the width of its window, in that unit; above zero.
    pub window: f64,
    /// What one step of each adjuster adds.
    pub per_step: [f64; 4],
}

/// The best whole steps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WholeSteps {
    /// Steps of each adjuster.
    pub steps: [i32; 4],
    /// Sum of the squares of what is then left in windows, and the price of turning.
    pub cost: f64,
    /// The optimum is at most this much below; zero: these steps are the optimum.
    pub gap: f64,
}

/// The whole steps, each from `low` to `high` (zero among them), that bring all aims nearest in units of their windows.
pub fn whole_steps(aims: &[Aim], low: [i32; 4], high: [i32; 4], price: Price) -> Option<WholeSteps> {
    let row = |aim: &Aim| WishRow {
        name: None,
        wish: Wish { target: 0.0, window: aim.window, weight: 1.0 },
        error_now: aim.off,
        per_step: aim.per_step,
    };
    let wishes = aims.iter().map(row).collect();
    let objective = Objective { wishes, limits: Vec::new(), low, high, price, per_step: PerStep::default() };
    let found = best(&objective, &least_excess(&objective), 4, [0; 4], WORK_LIMIT)?;
    Some(WholeSteps { steps: found.steps, cost: found.cost, gap: found.gap })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Toe and camber of two wheels, each adjuster of which moves both: the same as every combination tried.
    #[test]
    fn the_best_of_every_combination() {
        for number in 0..40 {
            let vary = |k: u32| f64::from((number * 37 + k * 101) % 97) / 97.0 - 0.5;
            let row = |k: u32, per_step| Aim { off: 1.6 * vary(k), window: 0.1, per_step };
            let aims = [
                row(1, [0.12, 0.03 * vary(9), 0.0, 0.0]),
                row(2, [0.02, 0.08 + 0.02 * vary(8), 0.0, 0.0]),
                row(3, [0.0, 0.0, 0.10, -0.04]),
                row(4, [0.0, 0.0, 0.01, 0.09]),
            ];
            let price = Price { per_collar: 0.002, per_step: 0.0002 };
            let (low, high) = ([-12; 4], [12; 4]);
            let found = whole_steps(&aims, low, high, price);
            let cost = |steps: [i32; 4]| {
                let left = |aim: &Aim| {
                    let moved: f64 = aim.per_step.iter().zip(steps).map(|(rate, s)| rate * f64::from(s)).sum();
                    ((aim.off + moved) / aim.window).powi(2)
                };
                let turned = steps.iter().filter(|s| **s != 0).count() as f64;
                let all: i32 = steps.iter().map(|s| s.abs()).sum();
                aims.iter().map(left).sum::<f64>() + 0.002 * turned + 0.0002 * f64::from(all)
            };
            let mut least = f64::INFINITY;
            // The two wheels know nothing of each other, so each is tried by itself.
            let one = |first: bool, a: i32, b: i32| if first { [a, b, 0, 0] } else { [0, 0, a, b] };
            let parts = [true, false].map(|first| {
                let all = (-12..=12).flat_map(|a| (-12..=12).map(move |b| (a, b)));
                let best = all.min_by(|x, y| cost(one(first, x.0, x.1)).total_cmp(&cost(one(first, y.0, y.1))));
                best.unwrap_or_default()
            });
            least = f64::min(least, cost([parts[0].0, parts[0].1, parts[1].0, parts[1].1]));
            let found = found.map_or(f64::NAN, |f| f.cost);
            assert!((found - least).abs() < 1e-9, "case {number}: {found}, and {least} by trying all");
        }
    }
}
