//! Limits that cannot be met: how far the best plans are beyond them.

use crate::objective::{LimitRow, Objective, Steps};

/// Nodes that the search for the least excess may visit.
const EXCESS_NODES: u32 = 1_000_000;

/// Plans that break the limits least which are kept at most.
const PLANS: usize = 2_000;

/// Slack of the limits, mm: far below what anybody reads, far above rounding.
pub(crate) const LIMIT_SLACK_MM: f64 = 1e-9;

/// For a limit: the least and greatest change (mm) that the first 0, 1, 2, 3 and 4 collars of a set can make to it.
pub(crate) type Reach = [(f64, f64); 5];

/// The reach of a set of collars on each limit.
pub(crate) fn reach(objective: &Objective, collars: &[usize]) -> Vec<Reach> {
    let one = |per_step: &[f64; 4]| {
        let mut open = [(0.0, 0.0); 5];
        for (level, &collar) in collars.iter().enumerate() {
            let ends = [objective.low[collar], objective.high[collar]].map(|s| per_step[collar] * f64::from(s));
            open[level + 1] = (open[level].0 + ends[0].min(ends[1]), open[level].1 + ends[0].max(ends[1]));
        }
        open
    };
    objective.limits.iter().map(|limit| one(&limit.per_step)).collect()
}

impl LimitRow {
    /// The least excess of any value in `value_mm + reach.0 ..= value_mm + reach.1`.
    pub(crate) fn excess_in_reach(&self, value_mm: f64, reach: (f64, f64)) -> f64 {
        (value_mm + reach.0 - self.most_mm).max(self.least_mm - value_mm - reach.1).max(0.0)
    }
}

/// The least excess over the limits that any plan inside the box has.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct LeastExcess {
    /// All limits together, mm.
    pub excess_mm: f64,
    /// False when the work was used up before every branch was closed.
    pub proved: bool,
    /// All plans that have it, where limits cannot be kept and these plans are few.
    pub plans: Option<Vec<Steps>>,
}

impl LeastExcess {
    /// The limits can be kept.
    pub(crate) const NONE: LeastExcess = LeastExcess { excess_mm: 0.0, proved: true, plans: None };
}

/// Finds the least excess: depth first over all four collars, the bound of a branch being the excess that remains when
/// each limit on its own is brought as far back as the open collars allow. For the last collar the excess is convex
/// and piecewise linear, so its least whole value lies beside one of its corners or at an end of the box.
pub(crate) fn least_excess(objective: &Objective) -> LeastExcess {
    let best = objective.excess(&[0; 4]);
    if best == 0.0 {
        return LeastExcess::NONE;
    }
    let count = objective.limits.len();
    let mut values = vec![0.0; 5 * count];
    for (value, limit) in values[4 * count..].iter_mut().zip(&objective.limits) {
        *value = limit.now_mm;
    }
    let reach = reach(objective, &[0, 1, 2, 3]);
    let mut search = ExcessSearch { objective, reach, count, values, best, plans: vec![[0; 4]], nodes: EXCESS_NODES };
    search.down(4, [0; 4]);
    // What is within the slack of nothing is nothing.
    if search.best <= LIMIT_SLACK_MM {
        return LeastExcess::NONE;
    }
    let proved = search.nodes > 0;
    let all = proved && search.plans.len() < PLANS;
    LeastExcess { excess_mm: search.best, proved, plans: all.then_some(search.plans) }
}

struct ExcessSearch<'a> {
    objective: &'a Objective,
    reach: Vec<Reach>,
    /// Number of limits.
    count: usize,
    /// What the limits stand at with 0, 1, 2, 3 and 4 collars open, one after the other.
    values: Vec<f64>,
    best: f64,
    /// The plans seen that have the best excess.
    plans: Vec<Steps>,
    nodes: u32,
}

impl ExcessSearch<'_> {
    fn bound(&self, open: usize) -> f64 {
        let limits = self.objective.limits.iter().zip(&self.reach).zip(&self.values[open * self.count..]);
        limits.map(|((limit, reach), value)| limit.excess_in_reach(*value, reach[open])).sum()
    }

    /// Turns the last of the open collars.
    fn turn(&mut self, open: usize, s: i32) {
        let (less, more) = self.values.split_at_mut(open * self.count);
        let turned = &mut less[(open - 1) * self.count..];
        for ((turned, value), limit) in turned.iter_mut().zip(more).zip(&self.objective.limits) {
            *turned = *value + limit.per_step[open - 1] * f64::from(s);
        }
    }

    /// True when nothing below this bound is as good as the best, or none is needed or can be paid for.
    fn closed(&self, bound: f64) -> bool {
        bound > self.best + LIMIT_SLACK_MM || self.best <= LIMIT_SLACK_MM || self.nodes == 0
    }

    fn down(&mut self, open: usize, steps: Steps) {
        if self.closed(self.bound(open)) {
            return;
        }
        if open == 1 {
            self.last(steps);
            return;
        }
        let (low, high) = (self.objective.low[open - 1], self.objective.high[open - 1]);
        // Outwards from leaving the collar alone: small moves first.
        for size in 0..=high.max(-low) {
            for s in if size == 0 { [0, i32::MAX] } else { [size, -size] } {
                if (low..=high).contains(&s) {
                    // Every value that is looked at is work, followed or not.
                    if self.nodes == 0 {
                        return;
                    }
                    self.nodes -= 1;
                    let mut next = steps;
                    next[open - 1] = s;
                    self.turn(open, s);
                    self.down(open - 1, next);
                }
            }
        }
    }

    /// The excess with this many steps at the last collar.
    fn with_last(&self, s: i32) -> f64 {
        let limits = self.objective.limits.iter().zip(&self.values[self.count..]);
        limits.map(|(limit, value)| limit.excess_of(value + limit.per_step[0] * f64::from(s))).sum()
    }

    fn last(&mut self, steps: Steps) {
        let (low, high) = (self.objective.low[0], self.objective.high[0]);
        let (mut least, mut at) = (f64::INFINITY, low);
        let mut try_at = |corner: f64| {
            // A limit that this collar does not move, or that is open to one side, has no corner there.
            if corner.is_finite() {
                let below = corner.clamp(f64::from(low), f64::from(high)).floor() as i32;
                for s in [below, (below + 1).min(high)] {
                    let excess = self.with_last(s);
                    if excess < least {
                        (least, at) = (excess, s);
                    }
                }
            }
        };
        try_at(f64::from(low));
        try_at(f64::from(high));
        for (limit, value) in self.objective.limits.iter().zip(&self.values[self.count..]) {
            try_at((limit.most_mm - value) / limit.per_step[0]);
            try_at((limit.least_mm - value) / limit.per_step[0]);
        }
        if least > self.best + LIMIT_SLACK_MM {
            return;
        }
        if least < self.best - LIMIT_SLACK_MM {
            self.plans.clear();
        }
        self.best = self.best.min(least);
        // All that are equal lie next to each other: the excess is convex.
        for side in [-1, 1] {
            let mut s = if side < 0 { at } else { at + 1 };
            while (low..=high).contains(&s)
                && self.plans.len() < PLANS
                && self.with_last(s) <= self.best + LIMIT_SLACK_MM
            {
                self.plans.push([s, steps[1], steps[2], steps[3]]);
                s += side;
            }
        }
    }
}
