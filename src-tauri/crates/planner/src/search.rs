//! The exact optimum over whole steps: sphere decoding, one set of collars at a time.
//!
//! **What is minimised.** `cost(s) = |G s + b|² + per_step Σ|s_i| + per_collar #{s_i ≠ 0}` over whole `s` in a box,
//! among those plans that break the height limits least (normally: not at all).
//!
//! **Why the answer is the optimum.** For each of the 16 sets of collars, plans that turn exactly this set pay a fixed
//! price per collar, so `per_collar` is a constant of the set. With `G = Q R` on its columns,
//! `|G s + b|² = c₀ + Σ_k (R_kk s_k + Σ_{j>k} R_kj s_j - y_k)²`, `y = -Q'b`, a sum of terms that are never negative; term
//! `k` needs only the collars from `k` on. Fixing collars from the last to the first, the terms known so far (with
//! their price per step) are a lower bound for everything below. A branch is left only when this bound is above the
//! best cost found, or when no choice of the remaining collars inside their box brings the height limits back to the
//! least excess. At one collar the term is a convex function of its steps: values are taken outwards from its minimum, so
//! the first one above the bound ends that direction. Every other branch is followed to its end, where the cost is
//! computed afresh from its definition. Bounds are compared with a slack far above their rounding, so rounding can
//! only make the search look at more. Where `R_kk` is zero (fewer wishes than collars) the bound does not depend on
//! that collar and all of its steps are followed.
//!
//! **Ties.** Costs closer than [`TIE`] (relative) to the least are equal. Among them: fewer collars, then fewer steps,
//! then the more evenly spread (least sum of squares), then the least in the order FL, FR, RL, RR.
//!
//! **Work** is bounded by [`WORK_LIMIT`] nodes. Beyond it the least bound among the branches not followed is kept:
//! the optimum cannot be below it, so `gap` is proved.

use crate::objective::{Objective, Steps, turned};
use nalgebra::{DMatrix, DVector};

/// Costs closer than this, relative to one plus the cost, are equal.
pub const TIE: f64 = 1e-9;

/// Nodes that one search may visit; about a second of work.
pub const WORK_LIMIT: u64 = 20_000_000;

/// Nodes that the search for the least excess may visit.
const EXCESS_NODES: u32 = 1_000_000;

/// Slack of the height limits, mm: far below what anybody reads, far above rounding.
const LIMIT_SLACK_MM: f64 = 1e-9;

/// The best plan, and what was proved about it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Found {
    pub steps: Steps,
    pub cost: f64,
    /// Beyond the height limits, mm; the least that is possible.
    pub excess_mm: f64,
    /// True when it is proved that no plan breaks the limits less.
    pub excess_proved: bool,
    /// The optimum is at most this much below `cost`; zero: it is the optimum.
    pub gap: f64,
    pub nodes: u64,
}

/// The best plans with at most 0, 1, 2, 3 and 4 collars, in that order; absent where the height limits cannot be kept
/// with so few.
pub(crate) fn best_by_collars(objective: &Objective) -> [Option<Found>; 5] {
    let mut work = Work::new(WORK_LIMIT);
    let (excess_mm, excess_proved) = least_excess(objective);
    let sets = Sets::of(objective);
    let mut best = [None; 5];
    let mut least = f64::INFINITY;
    for (most, answer) in best.iter_mut().enumerate() {
        // The least cost with exactly `most` collars, where it is below that with fewer.
        for set in sets.of_size(most) {
            least = set.least_cost(objective, excess_mm, least, &mut work);
        }
        if least.is_finite() {
            let lower = least.min(work.unseen);
            *answer = sets.tie_break(objective, excess_mm, least, most, &mut work).map(|steps| {
                let cost = objective.cost(&steps);
                Found { steps, cost, excess_mm, excess_proved, gap: (cost - lower).max(0.0), nodes: work.nodes }
            });
        }
        // Equal within the tie is exact.
        if let Some(found) = answer
            && found.gap <= tie(found.cost)
        {
            found.gap = 0.0;
        }
    }
    best
}

/// The least cost alone.
pub(crate) fn least_cost(objective: &Objective) -> f64 {
    let mut work = Work::new(WORK_LIMIT);
    let (excess_mm, _) = least_excess(objective);
    let sets = Sets::of(objective);
    let mut least = f64::INFINITY;
    for set in &sets.0 {
        least = set.least_cost(objective, excess_mm, least, &mut work);
    }
    least
}

fn tie(cost: f64) -> f64 {
    TIE * (1.0 + cost)
}

/// What has been looked at, and the least bound of what was not.
struct Work {
    nodes: u64,
    most: u64,
    unseen: f64,
}

impl Work {
    fn new(most: u64) -> Work {
        Work { nodes: 0, most, unseen: f64::INFINITY }
    }

    /// True when one more node may be visited.
    fn take(&mut self) -> bool {
        self.nodes += 1;
        self.nodes <= self.most
    }
}

/// One set of collars with its triangular form.
struct Set {
    /// The collars, in the order in which columns were taken.
    collars: Vec<usize>,
    triangle: [[f64; 4]; 4],
    target: [f64; 4],
    /// `c₀` and the price of turning these collars.
    constant: f64,
    /// Slack of the bounds: rounding of the triangular form.
    slack: f64,
    per_step: f64,
    /// For each limit and number of collars still open: least and greatest change they can make.
    reach: Vec<[(f64, f64); 5]>,
}

struct Sets(Vec<Set>);

impl Sets {
    /// All 16, fewest collars first.
    fn of(objective: &Objective) -> Sets {
        let mut sets: Vec<Set> = (0_usize..16)
            .map(|bits| Set::of(objective, (0..4).filter(|collar| bits >> collar & 1 == 1).collect()))
            .collect();
        sets.sort_by_key(|set| set.collars.len());
        Sets(sets)
    }

    fn of_size(&self, size: usize) -> impl Iterator<Item = &Set> {
        self.0.iter().filter(move |set| set.collars.len() == size)
    }

    /// Among the plans with at most `most` collars whose cost is equal to the least: the one that comes first.
    fn tie_break(
        &self,
        objective: &Objective,
        excess_mm: f64,
        least: f64,
        most: usize,
        work: &mut Work,
    ) -> Option<Steps> {
        let bound = least + tie(least);
        for size in 0..=most {
            let mut first: Option<Steps> = None;
            for set in self.of_size(size) {
                set.follow(objective, excess_mm, bound, work, &mut |steps, cost| {
                    if cost <= bound && first.is_none_or(|best| order(&steps) < order(&best)) {
                        first = Some(steps);
                    }
                    bound
                });
            }
            if first.is_some() {
                return first;
            }
        }
        None
    }
}

/// What comes first among plans of equal cost and equally many collars.
fn order(steps: &Steps) -> (i32, i64, Steps) {
    (turned(steps), steps.iter().map(|s| i64::from(*s) * i64::from(*s)).sum(), *steps)
}

impl Set {
    fn of(objective: &Objective, collars: Vec<usize>) -> Set {
        let rows: Vec<_> = objective.wishes.iter().filter(|w| w.wish.weight > 0.0).collect();
        let scale: Vec<f64> = rows.iter().map(|w| w.wish.weight.sqrt() / w.wish.window).collect();
        let b = DVector::from_fn(rows.len(), |i, _| rows[i].error_now * scale[i]);
        let size = collars.len();
        let mut triangle = [[0.0; 4]; 4];
        let mut target = [0.0; 4];
        let mut rest = b.clone();
        if size > 0 {
            let qr = DMatrix::from_fn(rows.len(), size, |i, j| rows[i].per_step[collars[j]] * scale[i]).qr();
            let (q, r) = (qr.q(), qr.r());
            let y = -(q.transpose() * &b);
            rest += &q * &y;
            for i in 0..r.nrows() {
                target[i] = y[i];
                for j in 0..size {
                    triangle[i][j] = r[(i, j)];
                }
            }
        }
        let reach = objective
            .limits
            .iter()
            .map(|limit| {
                let mut open = [(0.0, 0.0); 5];
                for (level, &collar) in collars.iter().enumerate() {
                    let ends =
                        [objective.low[collar], objective.high[collar]].map(|s| limit.per_step[collar] * f64::from(s));
                    open[level + 1] = (open[level].0 + ends[0].min(ends[1]), open[level].1 + ends[0].max(ends[1]));
                }
                open
            })
            .collect();
        Set {
            triangle,
            target,
            constant: rest.norm_squared() + objective.price.per_collar * size as f64,
            slack: 1e-13 * b.norm_squared(),
            per_step: objective.price.per_step,
            reach,
            collars,
        }
    }

    /// The least cost of this set, or `least` when it is not below that.
    fn least_cost(&self, objective: &Objective, excess_mm: f64, least: f64, work: &mut Work) -> f64 {
        let mut best = least;
        self.follow(objective, excess_mm, least, work, &mut |_, cost| {
            best = best.min(cost);
            best
        });
        best
    }

    /// Visits every plan of this set whose bound is not above `bound`; `leaf` is given the plan and its cost and gives
    /// the bound to go on with.
    fn follow(
        &self,
        objective: &Objective,
        excess_mm: f64,
        bound: f64,
        work: &mut Work,
        leaf: &mut dyn FnMut(Steps, f64) -> f64,
    ) {
        let mut walk = Walk { set: self, objective, excess_mm: excess_mm + LIMIT_SLACK_MM, bound, work, leaf };
        let departures: [f64; 2] = std::array::from_fn(|i| objective.limits.get(i).map_or(0.0, |limit| limit.now_mm));
        walk.down(self.collars.len(), self.constant, [0; 4], self.target, departures);
    }
}

/// One descent through a set.
struct Walk<'a> {
    set: &'a Set,
    objective: &'a Objective,
    excess_mm: f64,
    bound: f64,
    work: &'a mut Work,
    leaf: &'a mut dyn FnMut(Steps, f64) -> f64,
}

impl Walk<'_> {
    fn too_dear(&self, cost: f64) -> bool {
        cost > self.bound + TIE * 0.5 * (1.0 + self.bound.min(1e300)) + self.set.slack
    }

    /// `open` collars are still to be fixed; `known` is the cost of what is fixed, `target` the remaining targets of
    /// each term, `departures` what the limits stand at.
    fn down(&mut self, open: usize, known: f64, steps: Steps, target: [f64; 4], departures: [f64; 2]) {
        if self.too_dear(known) || !self.limits_in_reach(open, &departures) {
            return;
        }
        if !self.work.take() {
            self.work.unseen = self.work.unseen.min(known);
            return;
        }
        if open == 0 {
            if self.objective.excess(&steps) <= self.excess_mm {
                self.bound = (self.leaf)(steps, self.objective.cost(&steps));
            }
            return;
        }
        let level = open - 1;
        let collar = self.set.collars[level];
        let (low, high) = (self.objective.low[collar], self.objective.high[collar]);
        let (rate, price, aim) = (self.set.triangle[level][level], self.set.per_step, target[level]);
        let term = |s: i32| (rate * f64::from(s) - aim).powi(2) + price * f64::from(s.abs());
        // Outwards from the least value of a convex function.
        let mut below = lowest(rate, aim, price, low, high);
        let mut above = below + 1;
        loop {
            let (down, up) = (
                if below >= low { term(below) } else { f64::INFINITY },
                if above <= high { term(above) } else { f64::INFINITY },
            );
            let (s, cost) = if down <= up { (below, down) } else { (above, up) };
            if cost.is_infinite() || self.too_dear(known + cost) {
                return;
            }
            if down <= up {
                below -= 1;
            } else {
                above += 1;
            }
            // Plans that leave this collar alone belong to a smaller set.
            if s == 0 {
                continue;
            }
            let mut next = steps;
            next[collar] = s;
            let mut aims = target;
            for (aim, row) in aims.iter_mut().zip(&self.set.triangle).take(level) {
                *aim -= row[level] * f64::from(s);
            }
            let mut moved = departures;
            for (departure, limit) in moved.iter_mut().zip(&self.objective.limits) {
                *departure += limit.per_step[collar] * f64::from(s);
            }
            self.down(level, known + cost, next, aims, moved);
        }
    }

    /// True when the open collars can still bring the limits to the excess that is allowed.
    fn limits_in_reach(&self, open: usize, departures: &[f64; 2]) -> bool {
        let least: f64 = self
            .objective
            .limits
            .iter()
            .zip(&self.set.reach)
            .zip(departures)
            .map(|((limit, reach), departure)| limit.excess_of(nearest_to_zero(*departure, reach[open])))
            .sum();
        least <= self.excess_mm
    }
}

/// The whole value of `low..=high` at or next below where `(rate s - aim)² + price |s|` is least.
fn lowest(rate: f64, aim: f64, price: f64, low: i32, high: i32) -> i32 {
    let at = if rate == 0.0 {
        0.0
    } else {
        let free = aim / rate;
        free.signum() * (free.abs() - price / (2.0 * rate * rate)).max(0.0)
    };
    // Beyond the box the end of the box is where it is least; the conversion is exact inside it.
    at.clamp(f64::from(low), f64::from(high)).floor() as i32
}

/// The value nearest to zero in `value + reach.0 ..= value + reach.1`.
fn nearest_to_zero(value: f64, reach: (f64, f64)) -> f64 {
    let (least, most) = (value + reach.0, value + reach.1);
    if least > 0.0 { least } else { most.min(0.0) }
}

/// The least excess over the height limits that any plan inside the box has, mm.
///
/// Depth first over all four collars; the bound of a branch is the excess that remains when each limit on its own is
/// brought as near to zero as the open collars allow. The second value is false when the work was used up before
/// every branch was closed.
fn least_excess(objective: &Objective) -> (f64, bool) {
    let best = objective.excess(&[0; 4]);
    if best == 0.0 {
        return (0.0, true);
    }
    let all = Set::of(objective, vec![0, 1, 2, 3]);
    let mut search = ExcessSearch { objective, reach: &all.reach, best, nodes: EXCESS_NODES };
    search.down(4, [0; 4]);
    // What is within the slack of nothing is nothing.
    (if search.best <= LIMIT_SLACK_MM { 0.0 } else { search.best }, search.nodes > 0)
}

struct ExcessSearch<'a> {
    objective: &'a Objective,
    reach: &'a [[(f64, f64); 5]],
    best: f64,
    nodes: u32,
}

impl ExcessSearch<'_> {
    fn bound(&self, open: usize, steps: &Steps) -> f64 {
        let limits = self.objective.limits.iter().zip(self.reach);
        limits.map(|(limit, reach)| limit.excess_of(nearest_to_zero(limit.departure(steps), reach[open]))).sum()
    }

    fn down(&mut self, open: usize, steps: Steps) {
        if open == 0 {
            self.best = self.best.min(self.objective.excess(&steps));
            return;
        }
        let collar = open - 1;
        let mut choices: Vec<(f64, i32)> = (self.objective.low[collar]..=self.objective.high[collar])
            .map(|s| {
                let mut next = steps;
                next[collar] = s;
                (self.bound(collar, &next), s)
            })
            .collect();
        choices.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.abs().cmp(&b.1.abs())).then(a.1.cmp(&b.1)));
        for (bound, s) in choices {
            // An improvement below the slack of the limits is none.
            if bound >= self.best - LIMIT_SLACK_MM * 0.5 || self.best <= LIMIT_SLACK_MM || self.nodes == 0 {
                return;
            }
            self.nodes -= 1;
            let mut next = steps;
            next[collar] = s;
            self.down(collar, next);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::objective::collars;

    /// The start of the outward walk is at or next below the least value of the convex term.
    #[test]
    fn the_walk_starts_at_the_least_value() {
        for (rate, aim, price) in
            [(1.0, 3.4, 0.0), (-2.0, 3.0, 0.5), (0.3, -9.0, 0.2), (0.0, 5.0, 1.0), (1e-3, 50.0, 0.0)]
        {
            let term = |s: i32| (rate * f64::from(s) - aim).powi(2) + price * f64::from(s.abs());
            let start = lowest(rate, aim, price, -10, 10);
            let least = (-10..=10).map(term).fold(f64::INFINITY, f64::min);
            let near = term(start).min(if start < 10 { term(start + 1) } else { f64::INFINITY });
            assert_eq!(near, least, "rate {rate}, aim {aim}, price {price}: start {start}");
        }
    }

    #[test]
    fn collars_of_a_plan_are_counted() {
        assert_eq!((collars(&[0, -3, 0, 2]), turned(&[0, -3, 0, 2])), (2, 5), "two collars, five steps");
    }
}
