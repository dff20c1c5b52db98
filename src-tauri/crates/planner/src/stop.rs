//! Whether any allowed plan is worth turning for.
//!
//! `stop` is true exactly when no allowed plan raises the chance that all wishes are inside by [`WORTHWHILE`]. Looking at
//! every plan would be far too much, so the question is settled by the first of these that answers it:
//!
//! 1. The chance now is so good that nothing can add two points: stop.
//! 2. The plan at hand, or one that a climb from it over single steps reaches, adds two points: go on.
//! 3. Even a plan that met every target exactly would not (see [`Outlook::chance_at_best`]): stop.
//! 4. The chance of all wishes is at most the chance of each alone. Depth first over all steps, a branch is left when
//!    some wish alone cannot reach the chance asked for, whatever the open collars do. What remains is few; the most
//!    promising [`KEPT`] (by the product of their single chances) are computed in full.
//!
//! Each answer is sound except one: when more than [`KEPT`] plans remain in 4, or its work is used up, the rest is taken
//! to be no better than the most promising ones.

use crate::chance::{inside_one, quantile};
use crate::objective::{Objective, Steps};
use crate::outlook::Outlook;

/// What makes turning worthwhile: two points of the chance that all wishes are inside.
pub const WORTHWHILE: f64 = 0.02;

/// Plans that are computed in full at most.
const KEPT: usize = 48;

/// Nodes that step 4 visits at most.
const NODES: u32 = 200_000;

/// Whether to stop, and the chances behind it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Advice {
    pub stop: bool,
    pub chance_now: f64,
    pub chance_planned: f64,
    pub chance_best: f64,
}

pub(crate) fn advise(objective: &Objective, outlook: &Outlook, planned: &Steps, excess_mm: f64) -> Advice {
    let chance = |steps: &Steps| outlook.chance(objective, steps);
    let (chance_now, chance_planned) = (chance(&[0; 4]), chance(planned));
    let asked = chance_now + WORTHWHILE;
    let mut advice = Advice { stop: true, chance_now, chance_planned, chance_best: chance_now.max(chance_planned) };
    if asked > 1.0 {
        return advice;
    }
    let allowed = Allowed { objective, excess_mm: excess_mm + 1e-9 };
    if chance_planned < asked {
        advice.chance_best = advice.chance_best.max(climb(&allowed, planned, chance_planned, asked, &chance));
        if advice.chance_best < asked && outlook.chance_at_best() >= asked {
            let kept = promising(&allowed, outlook, asked);
            for (_, steps) in kept {
                advice.chance_best = advice.chance_best.max(chance(&steps));
                if advice.chance_best >= asked {
                    break;
                }
            }
        }
    }
    advice.stop = advice.chance_best < asked;
    advice
}

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

/// The best chance on a climb by single steps, ended as soon as it is what was asked for.
fn climb(allowed: &Allowed<'_>, from: &Steps, from_chance: f64, asked: f64, chance: &dyn Fn(&Steps) -> f64) -> f64 {
    let (mut at, mut best) = (*from, from_chance);
    for _ in 0..8 {
        let mut next = None;
        for collar in 0..4 {
            for by in [-1, 1] {
                let mut there = at;
                there[collar] += by;
                if allowed.has(&there) {
                    let found = chance(&there);
                    if found > best {
                        (next, best) = (Some(there), found);
                    }
                }
            }
        }
        match next {
            Some(there) if best < asked => at = there,
            _ => break,
        }
    }
    best
}

/// The plans that each wish alone lets through, most promising first.
fn promising(allowed: &Allowed<'_>, outlook: &Outlook, asked: f64) -> Vec<(f64, Steps)> {
    let objective = allowed.objective;
    let most: Steps = std::array::from_fn(|i| objective.high[i].max(-objective.low[i]));
    let radius = (0..objective.wishes.len()).map(|w| greatest_error(outlook, w, asked, &most)).collect();
    let mut sieve = Sieve { allowed, outlook, asked, radius, nodes: NODES, kept: Vec::new() };
    sieve.down(4, [0; 4]);
    let mut kept = sieve.kept;
    kept.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    kept.truncate(KEPT);
    kept
}

/// The greatest error at which one wish can still have the chance asked for. Up to the edge of the window the chance is
/// greatest with the least sigma; beyond it, it is at most that of the near edge with the greatest sigma.
fn greatest_error(outlook: &Outlook, wish: usize, asked: f64, most: &Steps) -> f64 {
    let half = outlook.half()[wish];
    let (least, greatest) = (outlook.wish_sigma(wish, &[0; 4]), outlook.greatest_wish_sigma(wish, most));
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
        if self.nodes == 0 || !self.can_reach(open, &steps) {
            return;
        }
        self.nodes -= 1;
        if open == 0 {
            self.keep(steps);
            return;
        }
        let collar = open - 1;
        for s in self.allowed.objective.low[collar]..=self.allowed.objective.high[collar] {
            let mut next = steps;
            next[collar] = s;
            self.down(collar, next);
        }
    }

    fn can_reach(&self, open: usize, steps: &Steps) -> bool {
        let objective = self.allowed.objective;
        objective.wishes.iter().zip(&self.radius).all(|(wish, radius)| {
            let (mut least, mut most) = (wish.error(steps), wish.error(steps));
            for collar in 0..open {
                let ends =
                    [objective.low[collar], objective.high[collar]].map(|s| wish.per_step[collar] * f64::from(s));
                least += ends[0].min(ends[1]);
                most += ends[0].max(ends[1]);
            }
            least <= *radius && most >= -*radius
        })
    }

    fn keep(&mut self, steps: Steps) {
        if !self.allowed.has(&steps) {
            return;
        }
        let mut score = 0.0;
        for (i, wish) in self.allowed.objective.wishes.iter().enumerate() {
            let alone = inside_one(wish.error(&steps), self.outlook.wish_sigma(i, &steps), self.outlook.half()[i]);
            if alone < self.asked {
                return;
            }
            score += alone.ln();
        }
        self.kept.push((score, steps));
    }
}
