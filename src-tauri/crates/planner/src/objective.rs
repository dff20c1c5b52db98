//! The cost of whole steps: squares of linear errors, prices, and linear limits.

use crate::problem::{Price, Problem, Wish, WishName};
use bayhand_chassis::{Figures, Rates, Sensitivity};
use bayhand_vehicle::{Axle, Car, Corners, Place};

/// Whole steps at each collar in the order FL, FR, RL, RR; positive raises.
pub(crate) type Steps = [i32; 4];

/// What one step at each collar does to loads (kg) and heights (mm): rows are corners, columns collars.
#[derive(Clone, Copy, Debug)]
pub(crate) struct PerStep {
    pub load_kg: [[f64; 4]; 4],
    pub height_mm: [[f64; 4]; 4],
}

impl PerStep {
    pub(crate) fn of(car: &Car, sensitivity: &Sensitivity, step_mm: &Corners<f64>) -> PerStep {
        let ratio = Rates::of(car).adjuster_ratio;
        let lift = Corners::from_fn(|p| step_mm.at(p) * ratio.at(p)).to_array();
        let scale = |m: &[[f64; 4]; 4]| m.map(|row| std::array::from_fn(|j| row[j] * lift[j]));
        PerStep { load_kg: scale(&sensitivity.load_per_mm_wheel), height_mm: scale(&sensitivity.height_per_mm_wheel) }
    }
}

/// One wish as a linear function of the steps.
#[derive(Clone, Copy, Debug)]
pub(crate) struct WishRow {
    /// Whose wish it is; absent: a row of the planner's own.
    pub name: Option<WishName>,
    pub wish: Wish,
    /// Value now less target.
    pub error_now: f64,
    /// Change of the value per step.
    pub per_step: [f64; 4],
}

impl WishRow {
    /// Predicted value less target.
    pub(crate) fn error(&self, steps: &Steps) -> f64 {
        self.error_now + dot(&self.per_step, steps)
    }
}

/// A limit on the height difference of an axle as a linear function of the steps.
#[derive(Clone, Copy, Debug)]
pub(crate) struct LimitRow {
    pub axle: Axle,
    /// Left - right - agreed now, mm.
    pub now_mm: f64,
    pub per_step: [f64; 4],
    pub limit_mm: f64,
}

impl LimitRow {
    /// By how much a departure (mm) is beyond the limit.
    pub(crate) fn excess_of(&self, departure_mm: f64) -> f64 {
        (departure_mm.abs() - self.limit_mm).max(0.0)
    }

    pub(crate) fn departure(&self, steps: &Steps) -> f64 {
        self.now_mm + dot(&self.per_step, steps)
    }
}

/// The whole problem in steps.
#[derive(Clone, Debug)]
pub(crate) struct Objective {
    pub wishes: Vec<WishRow>,
    pub limits: Vec<LimitRow>,
    /// Least and greatest steps of each collar; the least is zero or below, the greatest zero or above.
    pub low: Steps,
    pub high: Steps,
    pub price: Price,
}

impl Objective {
    /// `now_*`: the reading that the plan starts from.
    pub(crate) fn of(
        problem: &Problem,
        per_step: &PerStep,
        now_loads_kg: &Corners<f64>,
        now_heights_mm: &Corners<f64>,
    ) -> Objective {
        let now = Figures::of(now_loads_kg);
        let (load, height) = (&per_step.load_kg, &per_step.height_mm);
        let columns = |make: &dyn Fn(usize) -> f64| std::array::from_fn::<f64, 4, _>(make);
        let wishes = problem
            .wishes
            .given()
            .into_iter()
            .map(|(name, wish)| {
                let height_row = |p: Place| (*now_heights_mm.at(p), height[p.index()]);
                let (value, per_step) = match name {
                    // Collars leave the total alone, so the share is linear in the steps.
                    WishName::CrossPct => {
                        (now.cross_pct, columns(&|j| 100.0 * (load[1][j] + load[2][j]) / now.total_kg))
                    }
                    WishName::FrontDiffKg => (now.front_diff_kg, columns(&|j| load[0][j] - load[1][j])),
                    WishName::RearDiffKg => (now.rear_diff_kg, columns(&|j| load[2][j] - load[3][j])),
                    WishName::HeightFl => height_row(Place::Fl),
                    WishName::HeightFr => height_row(Place::Fr),
                    WishName::HeightRl => height_row(Place::Rl),
                    WishName::HeightRr => height_row(Place::Rr),
                };
                WishRow { name: Some(name), wish, error_now: value - wish.target, per_step }
            })
            .collect();
        let l = &problem.limits;
        let limits = [
            (Axle::Front, Place::Fl, Place::Fr, l.height_diff_front_mm, l.agreed_diff_front_mm),
            (Axle::Rear, Place::Rl, Place::Rr, l.height_diff_rear_mm, l.agreed_diff_rear_mm),
        ]
        .into_iter()
        .filter_map(|(axle, left, right, limit, agreed)| {
            Some(LimitRow {
                axle,
                now_mm: now_heights_mm.at(left) - now_heights_mm.at(right) - agreed,
                per_step: columns(&|j| height[left.index()][j] - height[right.index()][j]),
                limit_mm: limit?,
            })
        })
        .collect();
        Objective {
            wishes,
            limits,
            low: problem.adjusters.map(|a| -a.down_steps).to_array(),
            high: problem.adjusters.map(|a| a.up_steps).to_array(),
            price: problem.price,
        }
    }

    /// The cost of a plan, in the words of the interchange text.
    pub(crate) fn cost(&self, steps: &Steps) -> f64 {
        let wishes: f64 = self.wishes.iter().map(|w| w.wish.weight * (w.error(steps) / w.wish.window).powi(2)).sum();
        wishes + self.price.per_collar * collars(steps) as f64 + self.price.per_step * f64::from(turned(steps))
    }

    /// How far a plan is beyond the height limits, mm, both axles together.
    pub(crate) fn excess(&self, steps: &Steps) -> f64 {
        self.limits.iter().map(|l| l.excess_of(l.departure(steps))).sum()
    }
}

/// Collars that a plan turns.
pub(crate) fn collars(steps: &Steps) -> usize {
    steps.iter().filter(|s| **s != 0).count()
}

/// Steps that a plan turns.
pub(crate) fn turned(steps: &Steps) -> i32 {
    steps.iter().map(|s| s.abs()).sum()
}

pub(crate) fn dot(row: &[f64; 4], steps: &Steps) -> f64 {
    row.iter().zip(steps).map(|(r, s)| r * f64::from(*s)).sum()
}

/// The whole steps of `low..=high` for which `least + rate s <= 0 <= most + rate s`; a little wider than computed, so
/// that rounding shuts no plan out. An empty range has its ends the wrong way round.
pub(crate) fn steps_between(rate: f64, least: f64, most: f64, low: i32, high: i32) -> (i32, i32) {
    if rate == 0.0 {
        return if least > 1e-9 || most < -1e-9 { (1, 0) } else { (low, high) };
    }
    let (a, b) = (-most / rate, -least / rate);
    let (from, to) = (a.min(b) - 1e-6, a.max(b) + 1e-6);
    if from > f64::from(high) || to < f64::from(low) {
        return (1, 0);
    }
    (from.max(f64::from(low)).ceil() as i32, to.min(f64::from(high)).floor() as i32)
}
