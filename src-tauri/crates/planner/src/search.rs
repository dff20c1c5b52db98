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

use crate::excess::{LIMIT_SLACK_MM, LeastExcess, Reach, nearest_to_zero, reach};
use crate::objective::{Objective, Steps, steps_between, turned};
use nalgebra::{DMatrix, DVector};

/// Costs closer than this, relative to one plus the cost, are equal.
pub const TIE: f64 = 1e-9;

/// Nodes that one search may visit; a few tenths of a second of work. Boxes of ± 30 steps need at most a tenth of it.
pub const WORK_LIMIT: u64 = 5_000_000;

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
pub(crate) fn best_by_collars(objective: &Objective, least_excess: LeastExcess) -> [Option<Found>; 5] {
    best_within(objective, least_excess, WORK_LIMIT)
}

fn best_within(objective: &Objective, least_excess: LeastExcess, most_nodes: u64) -> [Option<Found>; 5] {
    let mut work = Work::new(most_nodes);
    let LeastExcess { excess_mm, proved: excess_proved } = least_excess;
    let sets = Sets::of(objective);
    let mut best = [None; 5];
    let mut least: Option<(f64, Steps)> = None;
    for (most, answer) in best.iter_mut().enumerate() {
        // The least cost with exactly `most` collars, where it is below that with fewer.
        for set in sets.of_size(most) {
            set.improve(objective, excess_mm, &mut least, &mut work);
        }
        *answer = least.map(|(cost, first)| {
            let lower = cost.min(work.unseen);
            // Cut off by the work limit, the order among equals is not settled, and the first one stands.
            let steps = sets.tie_break(objective, excess_mm, cost, most, &mut work).unwrap_or(first);
            let cost = objective.cost(&steps);
            let gap = (cost - lower).max(0.0);
            // Equal within the tie is exact.
            let gap = if gap <= tie(cost) { 0.0 } else { gap };
            Found { steps, cost, excess_mm, excess_proved, gap, nodes: work.nodes }
        });
    }
    best
}

/// The least cost alone, of the plans that keep the height limits.
pub(crate) fn least_cost(objective: &Objective) -> f64 {
    let mut work = Work::new(WORK_LIMIT);
    let excess_mm = 0.0;
    let sets = Sets::of(objective);
    let mut least = None;
    for set in &sets.0 {
        set.improve(objective, excess_mm, &mut least, &mut work);
    }
    least.map_or(f64::INFINITY, |(cost, _)| cost)
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
    reach: Vec<Reach>,
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
        Set {
            triangle,
            target,
            constant: rest.norm_squared() + objective.price.per_collar * size as f64,
            slack: 1e-13 * b.norm_squared(),
            per_step: objective.price.per_step,
            reach: reach(objective, &collars),
            collars,
        }
    }

    /// Replaces `least` by the least cost of this set and the first plan that has it, when that is less.
    fn improve(&self, objective: &Objective, excess_mm: f64, least: &mut Option<(f64, Steps)>, work: &mut Work) {
        let bound = least.map_or(f64::INFINITY, |(cost, _)| cost);
        self.follow(objective, excess_mm, bound, work, &mut |steps, cost| {
            if least.is_none_or(|(best, _)| cost < best) {
                *least = Some((cost, steps));
            }
            least.map_or(bound, |(best, _)| best)
        });
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
        let (low, high) = self.let_through(level, &departures);
        if low > high {
            return;
        }
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

    /// The steps of a collar for which each limit on its own can still be brought to the excess that is allowed.
    fn let_through(&self, level: usize, departures: &[f64; 2]) -> (i32, i32) {
        let collar = self.set.collars[level];
        let (mut low, mut high) = (self.objective.low[collar], self.objective.high[collar]);
        for ((limit, reach), at) in self.objective.limits.iter().zip(&self.set.reach).zip(departures) {
            let room = limit.limit_mm + self.excess_mm;
            let (least, most) = (at + reach[level].0 - room, at + reach[level].1 + room);
            (low, high) = steps_between(limit.per_step[collar], least, most, low, high);
            if low > high {
                break;
            }
        }
        (low, high)
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::objective::{WishRow, collars};
    use crate::problem::{Price, Wish};

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

    /// A search that is cut off says so, and the optimum is inside the gap that it proves.
    #[test]
    fn a_search_that_is_cut_off_proves_its_gap() {
        let row = |error_now: f64, per_step: [f64; 4]| WishRow {
            name: None,
            wish: Wish { target: 0.0, window: 1.0, weight: 1.0 },
            error_now,
            per_step,
        };
        let objective = Objective {
            wishes: vec![row(17.3, [1.0, -0.7, 0.31, 0.113]), row(-9.1, [0.2, 0.9, -0.53, 1.7])],
            limits: Vec::new(),
            low: [-20; 4],
            high: [20; 4],
            price: Price { per_collar: 0.0, per_step: 0.001 },
        };
        let none = LeastExcess { excess_mm: 0.0, proved: true };
        let full = best_within(&objective, none, u64::MAX)[4].expect("a plan");
        assert_eq!(full.gap, 0.0, "searched to the end");
        let mut cut_off = 0;
        for most_nodes in [20, 60, 200, 600] {
            let cut = best_within(&objective, none, most_nodes)[4].expect("the plans seen so far");
            assert!(cut.cost - cut.gap <= full.cost + 1e-9, "{most_nodes} nodes: {cut:?} against {full:?}");
            assert!(cut.cost >= full.cost, "nothing is below the optimum");
            cut_off += usize::from(cut.gap > 0.0);
        }
        assert!(cut_off > 0, "some of these searches were cut off");
    }

    #[test]
    fn collars_of_a_plan_are_counted() {
        assert_eq!((collars(&[0, -3, 0, 2]), turned(&[0, -3, 0, 2])), (2, 5), "two collars, five steps");
    }
}
