//! The exact optimum over whole steps: sphere decoding with limits and prices.
//!
//! **What is minimised.** `cost(s) = |G s + b|² + per_step Σ|s_i| + per_collar #{s_i ≠ 0}` over whole `s` in a box,
//! among those plans that break the limits least (normally: not at all).
//!
//! **Why the answer is the optimum.** With `G = Q R`,
//! `|G s + b|² = c₀ + Σ_k (R_kk s_k + Σ_{j>k} R_kj s_j - y_k)²`, `y = -Q'b`: a sum of terms that are never negative,
//! and term `k` needs only the collars from `k` on. Fixing collars from the last to the first, the terms known so far
//! with their prices are a lower bound for everything below. A branch is left only when this bound is above the best
//! cost found, or when no choice of the remaining collars inside their box brings a limit back. At one collar the
//! term without its price per collar is a convex function of the steps: values are taken outwards from its least, so
//! the first one above the bound ends them all. Every other branch is followed to its end, where the cost is
//! computed afresh from its definition. Bounds are compared with a slack far above their rounding, so rounding can
//! only make the search look at more.
//!
//! **Ties.** Costs closer than [`TIE`] (relative) to the least are equal. Among them: fewer collars, then fewer steps,
//! then the more evenly spread (least sum of squares), then the least in the order FL, FR, RL, RR.
//!
//! **Work** is bounded by a number of nodes, so it is the same on every machine. Beyond it the least bound among the
//! branches not followed is kept: the optimum cannot be below it, so `gap` is proved.

use crate::excess::{LIMIT_SLACK_MM, LeastExcess, Reach, reach};
use crate::objective::{Objective, Steps, collars, steps_between, turned};
use crate::triangle::Triangle;

/// Costs closer than this, relative to one plus the cost, are equal.
pub const TIE: f64 = 1e-9;

/// Nodes that the search for the plan may visit; a few tenths of a second of work.
pub const WORK_LIMIT: u64 = 5_000_000;

/// Nodes that a search beside the plan may visit: for an alternative, a stop on the trade line, one unit more of a limit.
pub(crate) const SIDE_WORK_LIMIT: u64 = 100_000;

/// The sets of collars by their number.
const SETS: [&[&[usize]]; 5] = [
    &[&[]],
    &[&[0], &[1], &[2], &[3]],
    &[&[0, 1], &[0, 2], &[0, 3], &[1, 2], &[1, 3], &[2, 3]],
    &[&[0, 1, 2], &[0, 1, 3], &[0, 2, 3], &[1, 2, 3]],
    &[&[0, 1, 2, 3]],
];

/// The best plan, and what was proved about it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Found {
    pub steps: Steps,
    pub cost: f64,
    /// The optimum is at most this much below `cost`; zero: it is the optimum.
    pub gap: f64,
    pub nodes: u64,
}

/// The best plan with at most so many collars; none where the limits cannot be kept with so few. `guess` is any plan:
/// the nearer to the best, the less work.
pub(crate) fn best(
    objective: &Objective,
    least: &LeastExcess,
    most_collars: usize,
    guess: Steps,
    most_nodes: u64,
) -> Option<Found> {
    let mut search = Search::new(objective, least.excess_mm, f64::INFINITY, most_nodes);
    search.most_collars = most_collars;
    for known in [[0; 4], guess] {
        search.meet(known);
    }
    search.over(least, most_collars);
    let met = search.met?;
    // A plan that was equal to a least that has fallen since is not equal any more: look again below the last one.
    let drifted = met.cost > met.least + tie(met.least);
    let met = if drifted {
        search.met = None;
        search.set_bound(met.least);
        search.over(least, most_collars);
        search.met.unwrap_or(met)
    } else {
        met
    };
    let gap = (met.cost - met.cost.min(search.unseen)).max(0.0);
    // Equal within the tie is exact.
    let gap = if gap <= tie(met.cost) { 0.0 } else { gap };
    Some(Found { steps: met.steps, cost: met.cost, gap, nodes: search.nodes })
}

/// A plan that keeps all limits and costs less than `bound`, and whether all were looked at.
pub(crate) fn below(objective: &Objective, bound: f64, most_nodes: u64) -> (Option<f64>, bool) {
    let mut search = Search::new(objective, 0.0, bound, most_nodes);
    search.follow(SETS[4][0]);
    let less = search.met.map(|met| met.least).filter(|least| *least < bound - tie(bound));
    (less, search.unseen.is_infinite())
}

fn tie(cost: f64) -> f64 {
    TIE * (1.0 + cost)
}

/// What comes first among plans of equal cost.
fn order(steps: &Steps) -> (usize, i32, i64, Steps) {
    let squares = steps.iter().map(|s| i64::from(*s) * i64::from(*s)).sum();
    (collars(steps), turned(steps), squares, *steps)
}

#[derive(Clone, Copy)]
struct Met {
    least: f64,
    /// The first, in order, of those equal to the least.
    steps: Steps,
    cost: f64,
}

struct Search<'a> {
    objective: &'a Objective,
    /// Excess that is allowed, with its slack.
    excess_mm: f64,
    /// True when the sum over all limits has to be watched, not only each alone.
    any_excess: bool,
    met: Option<Met>,
    bound: f64,
    /// The bound with its slacks.
    cutoff: f64,
    slack: f64,
    most_collars: usize,
    nodes: u64,
    most_nodes: u64,
    /// The least bound of what was not followed for lack of work.
    unseen: f64,
    triangle: Triangle,
    reach: Vec<Reach>,
    /// What each limit stands at with 0, 1, 2, 3 and 4 collars open.
    values: Vec<[f64; 5]>,
}

impl<'a> Search<'a> {
    fn new(objective: &'a Objective, excess_mm: f64, bound: f64, most_nodes: u64) -> Search<'a> {
        let mut search = Search {
            objective,
            excess_mm: excess_mm + LIMIT_SLACK_MM,
            any_excess: excess_mm > 0.0,
            met: None,
            bound,
            cutoff: f64::INFINITY,
            slack: 0.0,
            most_collars: 4,
            nodes: 0,
            most_nodes,
            unseen: f64::INFINITY,
            triangle: Triangle::of(&[], &[]),
            reach: Vec::new(),
            values: vec![[0.0; 5]; objective.limits.len()],
        };
        search.set_bound(bound);
        search
    }

    fn set_bound(&mut self, bound: f64) {
        self.bound = bound;
        self.cutoff = bound + TIE * (1.0 + bound) + self.slack;
    }

    /// Looks at all plans with at most so many collars.
    fn over(&mut self, least: &LeastExcess, most_collars: usize) {
        if let Some(plans) = &least.plans {
            self.nodes += plans.len() as u64;
            plans.iter().for_each(|plan| self.meet(*plan));
        } else {
            SETS[most_collars].iter().for_each(|set| self.follow(set));
        }
    }

    /// Visits every plan that turns no other collar than these and whose bound is not above the cutoff.
    fn follow(&mut self, set: &[usize]) {
        let triangle = Triangle::of(&self.objective.wishes, set);
        let order = &triangle.collars[..set.len()];
        if !self.objective.limits.is_empty() {
            self.reach = reach(self.objective, order);
        }
        for (values, limit) in self.values.iter_mut().zip(&self.objective.limits) {
            values[set.len()] = limit.now_mm;
        }
        self.slack = 1e-13 * triangle.size;
        self.set_bound(self.bound);
        self.triangle = triangle;
        self.down(set.len(), triangle.constant, [0; 4], triangle.aim);
    }

    /// `open` collars are still to be fixed; `known` is the cost of what is fixed, `aims` what each term still misses.
    fn down(&mut self, open: usize, known: f64, steps: Steps, aims: [f64; 4]) {
        if known > self.cutoff {
            return;
        }
        if open == 0 {
            self.meet(steps);
            return;
        }
        let level = open - 1;
        let collar = self.triangle.collars[level];
        let (low, high) = self.let_through(open);
        if low > high {
            return;
        }
        let (rate, price, aim) = (self.triangle.rate[level][level], self.objective.price, aims[level]);
        let term = |s: i32| (rate * f64::from(s) - aim).powi(2) + price.per_step * f64::from(s.abs());
        // Outwards from the least of a convex function.
        let mut below = lowest(rate, aim, price.per_step, low, high);
        let mut above = below + 1;
        let (mut down, mut up) = (term(below), if above <= high { term(above) } else { f64::INFINITY });
        loop {
            let (s, cost) = if down <= up { (below, down) } else { (above, up) };
            if known + cost > self.cutoff || cost.is_infinite() {
                return;
            }
            // Every value that is looked at is work, followed or not; those after it cost no less.
            if self.nodes >= self.most_nodes {
                self.unseen = self.unseen.min(known + cost);
                return;
            }
            self.nodes += 1;
            if down <= up {
                below -= 1;
                down = if below >= low { term(below) } else { f64::INFINITY };
            } else {
                above += 1;
                up = if above <= high { term(above) } else { f64::INFINITY };
            }
            let cost = if s == 0 { cost } else { cost + price.per_collar };
            if known + cost > self.cutoff {
                continue;
            }
            let mut next = steps;
            next[collar] = s;
            let mut left = aims;
            for (aim, row) in left.iter_mut().zip(&self.triangle.rate).take(level) {
                *aim -= row[level] * f64::from(s);
            }
            for (values, limit) in self.values.iter_mut().zip(&self.objective.limits) {
                values[level] = values[open] + limit.per_step[collar] * f64::from(s);
            }
            if self.any_excess && self.least_excess(level) > self.excess_mm {
                continue;
            }
            self.down(level, known + cost, next, left);
        }
    }

    /// A whole plan: kept when it is allowed and comes before the one that was kept.
    fn meet(&mut self, steps: Steps) {
        if collars(&steps) > self.most_collars || self.objective.excess(&steps) > self.excess_mm {
            return;
        }
        let cost = self.objective.cost(&steps);
        let met = match self.met {
            Some(met) if cost > met.least + tie(met.least) => met,
            Some(met) if cost >= met.least - tie(met.least) => {
                let first = if order(&steps) < order(&met.steps) { Met { steps, cost, ..met } } else { met };
                Met { least: met.least.min(cost), ..first }
            }
            _ => Met { least: cost, steps, cost },
        };
        self.met = Some(met);
        if met.least < self.bound {
            self.set_bound(met.least);
        }
    }

    /// The steps of the last open collar for which each limit on its own can still be kept, or brought to the excess
    /// that is allowed, by the collars before it.
    fn let_through(&self, open: usize) -> (i32, i32) {
        let level = open - 1;
        let collar = self.triangle.collars[level];
        let (mut low, mut high) = (self.objective.low[collar], self.objective.high[collar]);
        for ((limit, reach), values) in self.objective.limits.iter().zip(&self.reach).zip(&self.values) {
            let least = limit.least_mm - self.excess_mm - values[open] - reach[level].1;
            let most = limit.most_mm + self.excess_mm - values[open] - reach[level].0;
            (low, high) = steps_between(limit.per_step[collar], least, most, low, high);
            if low > high {
                break;
            }
        }
        (low, high)
    }

    /// The excess that remains when the open collars bring each limit, on its own, as far back as they can.
    fn least_excess(&self, open: usize) -> f64 {
        let limits = self.objective.limits.iter().zip(&self.reach).zip(&self.values);
        limits.map(|((limit, reach), values)| limit.excess_in_reach(values[open], reach[open])).sum()
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
    use crate::objective::WishRow;
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
            per_step: Default::default(),
        };
        let full = best(&objective, &LeastExcess::NONE, 4, [0; 4], u64::MAX).expect("a plan");
        assert_eq!(full.gap, 0.0, "searched to the end");
        let mut cut_off = 0;
        for most_nodes in [20, 60, 200, 600] {
            let cut = best(&objective, &LeastExcess::NONE, 4, [0; 4], most_nodes).expect("the plans seen so far");
            assert!(cut.cost - cut.gap <= full.cost + 1e-9, "{most_nodes} nodes: {cut:?} against {full:?}");
            assert!(cut.cost >= full.cost, "nothing is below the optimum");
            cut_off += usize::from(cut.gap > 0.0);
        }
        assert!(cut_off > 0, "some of these searches were cut off");
    }

    /// Fewer collars, then fewer steps, then the more even, then the order of the corners.
    #[test]
    fn equal_plans_have_an_order() {
        let in_order = [[0, 0, 0, 3], [0, 9, 0, 0], [-1, 1, 0, 0], [0, 0, 2, 2], [0, 0, 3, 1], [1, 1, 1, 0]];
        for pair in in_order.windows(2) {
            assert!(order(&pair[0]) < order(&pair[1]), "{:?} comes before {:?}", pair[0], pair[1]);
        }
    }
}
