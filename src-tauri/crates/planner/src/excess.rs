//! Height limits that cannot be met: how far the best plans are beyond them.

use crate::objective::Objective;

/// Nodes that the search for the least excess may visit.
const EXCESS_NODES: u32 = 1_000_000;

/// Slack of the height limits, mm: far below what anybody reads, far above rounding.
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

/// The value nearest to zero in `value + reach.0 ..= value + reach.1`.
pub(crate) fn nearest_to_zero(value: f64, reach: (f64, f64)) -> f64 {
    let (least, most) = (value + reach.0, value + reach.1);
    if least > 0.0 { least } else { most.min(0.0) }
}

/// The least excess over the height limits that any plan inside the box has.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct LeastExcess {
    /// Both axles together, mm.
    pub excess_mm: f64,
    /// False when the work was used up before every branch was closed.
    pub proved: bool,
}

/// Finds the least excess: depth first over all four collars, the bound of a branch being the excess that remains when
/// each limit on its own is brought as near to zero as the open collars allow. For the last collar the excess is
/// convex and piecewise linear, so its least whole value lies beside one of its corners or at an end of the box.
pub(crate) fn least_excess(objective: &Objective) -> LeastExcess {
    let best = objective.excess(&[0; 4]);
    if best == 0.0 {
        return LeastExcess { excess_mm: 0.0, proved: true };
    }
    let reach = reach(objective, &[0, 1, 2, 3]);
    let departures = std::array::from_fn(|i| objective.limits.get(i).map_or(0.0, |limit| limit.now_mm));
    let mut search = ExcessSearch { objective, reach: &reach, best, nodes: EXCESS_NODES };
    search.down(4, departures);
    // What is within the slack of nothing is nothing.
    let excess_mm = if search.best <= LIMIT_SLACK_MM { 0.0 } else { search.best };
    LeastExcess { excess_mm, proved: search.nodes > 0 }
}

struct ExcessSearch<'a> {
    objective: &'a Objective,
    reach: &'a [Reach],
    best: f64,
    nodes: u32,
}

impl ExcessSearch<'_> {
    fn bound(&self, open: usize, departures: &[f64; 2]) -> f64 {
        let limits = self.objective.limits.iter().zip(self.reach).zip(departures);
        limits.map(|((limit, reach), at)| limit.excess_of(nearest_to_zero(*at, reach[open]))).sum()
    }

    fn moved(&self, departures: &[f64; 2], collar: usize, s: i32) -> [f64; 2] {
        let mut moved = *departures;
        for (at, limit) in moved.iter_mut().zip(&self.objective.limits) {
            *at += limit.per_step[collar] * f64::from(s);
        }
        moved
    }

    /// True when nothing below this bound would be an improvement, or none is needed or can be paid for.
    fn closed(&self, bound: f64) -> bool {
        bound >= self.best - LIMIT_SLACK_MM * 0.5 || self.best <= LIMIT_SLACK_MM || self.nodes == 0
    }

    fn down(&mut self, open: usize, departures: [f64; 2]) {
        if self.closed(self.bound(open, &departures)) {
            return;
        }
        self.nodes -= 1;
        let collar = open - 1;
        let (low, high) = (self.objective.low[collar], self.objective.high[collar]);
        if open == 1 {
            self.last(&departures, low, high);
            return;
        }
        // Outwards from leaving the collar alone: small moves first.
        for size in 0..=high.max(-low) {
            for s in if size == 0 { [0, i32::MAX] } else { [size, -size] } {
                if (low..=high).contains(&s) {
                    self.down(collar, self.moved(&departures, collar, s));
                }
            }
        }
    }

    fn last(&mut self, departures: &[f64; 2], low: i32, high: i32) {
        let ends = [f64::from(low), f64::from(high)];
        let corners = self.objective.limits.iter().zip(departures).flat_map(|(limit, at)| {
            let rate = limit.per_step[0];
            [(limit.limit_mm - at) / rate, (-limit.limit_mm - at) / rate]
        });
        for corner in ends.into_iter().chain(corners) {
            // A limit that this collar does not move has no corner.
            if corner.is_finite() {
                let below = corner.clamp(ends[0], ends[1]).floor() as i32;
                for s in [below, (below + 1).min(high)] {
                    let moved = self.moved(departures, 0, s);
                    self.best = self.best.min(self.bound(0, &moved));
                }
            }
        }
    }
}
