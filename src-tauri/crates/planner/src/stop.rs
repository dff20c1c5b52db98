//! Whether any allowed plan is worth turning for.
//!
//! `stop` is true exactly when no allowed plan raises the chance that all wishes are inside by [`WORTHWHILE`]. Looking at
//! every plan would be far too much, so the question is settled by the first of these that answers it:
//!
//! 1. The chance now is so good that nothing can add two points: stop.
//! 2. The plan at hand, or one that a climb from it over single steps reaches, adds two points: go on.
//! 3. Even a plan that met every target exactly would not (see [`Outlook::chance_at_best`]): stop.
//! 4. The chance of all wishes is at most the chance of each alone. Depth first over all steps, a branch is left when
//!    some wish alone cannot reach the chance asked for, whatever the open collars do. Every plan that remains is
//!    computed in full, the most promising first, until one adds two points.
//!
//! Each answer is proved, unless the work of 4 is used up; then the rest is taken to be no better, and `proved` says so.

use crate::chance::{inside_one, quantile};
use crate::objective::{Objective, Steps, steps_between};
use crate::outlook::Outlook;

/// What makes turning worthwhile: two points of the chance that all wishes are inside.
pub const WORTHWHILE: f64 = 0.02;

/// Plans whose chance is computed in full at most.
const COMPUTED: usize = 400;

/// Nodes that step 4 visits at most.
const NODES: u32 = 100_000;

/// Whether to stop, and the chances behind it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Advice {
    pub stop: bool,
    pub proved: bool,
    pub chance_now: f64,
    pub chance_planned: f64,
    pub chance_best: f64,
}

/// Answers the question of this module for the plan at hand.
pub(crate) fn advise(objective: &Objective, outlook: &Outlook, planned: &Steps, excess_mm: f64) -> Advice {
    let chance = |steps: &Steps| outlook.chance(objective, steps);
    let chance_planned = chance(planned);
    let chance_now = if *planned == [0; 4] { chance_planned } else { chance(&[0; 4]) };
    let asked = chance_now + WORTHWHILE;
    let chance_best = chance_now.max(chance_planned);
    let mut advice = Advice { stop: true, proved: true, chance_now, chance_planned, chance_best };
    if asked > 1.0 {
        return advice;
    }
    let allowed = Allowed { objective, excess_mm: excess_mm + 1e-9 };
    if chance_planned < asked {
        let top = climb(&allowed, outlook, planned);
        if top != *planned {
            advice.chance_best = advice.chance_best.max(chance(&top));
        }
        if advice.chance_best < asked && outlook.chance_at_best() >= asked {
            let (kept, all) = promising(&allowed, outlook, asked);
            advice.proved = all && kept.len() <= COMPUTED;
            for (_, steps) in kept.iter().take(COMPUTED) {
                advice.chance_best = advice.chance_best.max(chance(steps));
                if advice.chance_best >= asked {
                    break;
                }
            }
        }
    }
    advice.stop = advice.chance_best < asked;
    advice.proved |= !advice.stop;
    advice
}

/// The plans inside adjusters that break the limits no more than they must.
struct Allowed<'a> {
    objective: &'a Objective,
    excess_mm: f64,
}

impl Allowed<'_> {
    fn has(&self, steps: &Steps) -> bool {
        let in_box = (0..4).all(|i| (self.objective.low[i]..=self.objective.high[i]).contains(&steps[i]));
        in_box && self.objective.excess(steps) <= self.excess_mm
    }
}

/// Where a climb over single steps ends that follows the product of the single chances of all wishes.
fn climb(allowed: &Allowed<'_>, outlook: &Outlook, from: &Steps) -> Steps {
    let score =
        |steps: &Steps| alone(allowed.objective, outlook, steps).map(|chance| chance.max(1e-300).ln()).sum::<f64>();
    let (mut at, mut best) = (*from, score(from));
    for _ in 0..20 {
        let mut next = None;
        for collar in 0..4 {
            for by in [-1, 1] {
                let mut there = at;
                there[collar] += by;
                let found = score(&there);
                if found > best && allowed.has(&there) {
                    (next, best) = (Some(there), found);
                }
            }
        }
        match next {
            Some(there) => at = there,
            None => break,
        }
    }
    at
}

/// The chance of each wish alone after a plan.
fn alone<'a>(objective: &'a Objective, outlook: &'a Outlook, steps: &'a Steps) -> impl Iterator<Item = f64> + 'a {
    objective
        .wishes
        .iter()
        .enumerate()
        .map(|(i, wish)| inside_one(wish.error(steps), outlook.wish_sigma(i, steps), outlook.half()[i]))
}

/// The plans that each wish alone lets through, most promising first, and whether these are all.
fn promising(allowed: &Allowed<'_>, outlook: &Outlook, asked: f64) -> (Vec<(f64, Steps)>, bool) {
    let objective = allowed.objective;
    let most: Steps = std::array::from_fn(|i| objective.high[i].max(-objective.low[i]));
    let radius = (0..objective.wishes.len()).map(|w| greatest_error(outlook, w, asked, &most)).collect();
    let mut sieve = Sieve { allowed, outlook, asked, radius, nodes: NODES, kept: Vec::new() };
    sieve.down(4, [0; 4]);
    let (mut kept, all) = (sieve.kept, sieve.nodes > 0);
    kept.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    (kept, all)
}

/// The greatest error at which one wish can still have the chance asked for. Up to the edge of the window the chance is
/// greatest with the least sigma; beyond it, it is at most that of the near edge with the greatest sigma.
fn greatest_error(outlook: &Outlook, wish: usize, asked: f64, most: &Steps) -> f64 {
    let half = outlook.half()[wish];
    let (least, greatest) = outlook.wish_sigma_between(wish, most);
    if asked < 0.5 {
        return half + greatest * -quantile(asked);
    }
    // Halving: the chance falls as the error grows.
    let (mut low, mut high) = (0.0, half);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if inside_one(middle, least, half) >= asked { low = middle } else { high = middle }
    }
    high
}

/// The branches that single chances leave open.
struct Sieve<'a> {
    allowed: &'a Allowed<'a>,
    outlook: &'a Outlook,
    asked: f64,
    radius: Vec<f64>,
    nodes: u32,
    kept: Vec<(f64, Steps)>,
}

impl Sieve<'_> {
    fn down(&mut self, open: usize, steps: Steps) {
        if self.nodes == 0 {
            return;
        }
        self.nodes -= 1;
        if open == 0 {
            self.keep(steps);
            return;
        }
        let collar = open - 1;
        let (low, high) = self.let_through(collar, &steps);
        for s in low..=high {
            let mut next = steps;
            next[collar] = s;
            self.down(collar, next);
        }
    }

    /// The steps of a collar for which each wish on its own can still be brought inside its radius by the collars
    /// before it.
    fn let_through(&self, collar: usize, steps: &Steps) -> (i32, i32) {
        let objective = self.allowed.objective;
        let (mut low, mut high) = (objective.low[collar], objective.high[collar]);
        for (wish, radius) in objective.wishes.iter().zip(&self.radius) {
            let (mut least, mut most) = (-radius - wish.error(steps), radius - wish.error(steps));
            for before in 0..collar {
                let ends =
                    [objective.low[before], objective.high[before]].map(|s| wish.per_step[before] * f64::from(s));
                least -= ends[0].max(ends[1]);
                most -= ends[0].min(ends[1]);
            }
            (low, high) = steps_between(wish.per_step[collar], least, most, low, high);
            if low > high {
                break;
            }
        }
        (low, high)
    }

    fn keep(&mut self, steps: Steps) {
        if !self.allowed.has(&steps) {
            return;
        }
        let mut score = 0.0;
        for chance in alone(self.allowed.objective, self.outlook, &steps) {
            if chance < self.asked {
                return;
            }
            score += chance.ln();
        }
        self.kept.push((score, steps));
    }
}
