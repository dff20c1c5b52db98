//! The cost of whole steps: squares of linear errors, prices, and linear limits.

use crate::answer::LimitName;
use crate::problem::{Price, Problem, Wish, WishName};
use bayhand_chassis::{Figures, Rates, Sensitivity};
use bayhand_vehicle::{Car, Corners, Place, STANDARD_GRAVITY};

/// Whole steps at each collar in the order FL, FR, RL, RR; positive raises.
pub(crate) type Steps = [i32; 4];

/// What one step at each collar does to loads (kg) and heights (mm): rows are corners, columns collars.
#[derive(Clone, Copy, Debug, Default)]
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

    /// The change of a weighted sum of the four loads per step.
    fn of_loads(&self, weights: [f64; 4]) -> [f64; 4] {
        sum_of(&self.load_kg, weights)
    }

    /// The change of a weighted sum of the four heights per step.
    fn of_heights(&self, weights: [f64; 4]) -> [f64; 4] {
        sum_of(&self.height_mm, weights)
    }
}

fn sum_of(rows: &[[f64; 4]; 4], weights: [f64; 4]) -> [f64; 4] {
    std::array::from_fn(|j| (0..4).map(|i| weights[i] * rows[i][j]).sum())
}

/// Loads and heights that steps start from.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Start {
    pub loads_kg: Corners<f64>,
    pub heights_mm: Corners<f64>,
}

/// Rake as weights of the four heights: mean of the rear less mean of the front.
pub(crate) const RAKE: [f64; 4] = [-0.5, -0.5, 0.5, 0.5];

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
    fn of(name: WishName, wish: Wish, per_step: &PerStep, start: &Start) -> WishRow {
        let now = Figures::of(&start.loads_kg);
        let (value, per_step) = match name {
            // Collars leave the total alone, so the share is linear in the steps.
            WishName::CrossPct => {
                let share = 100.0 / now.total_kg;
                (now.cross_pct, per_step.of_loads([0.0, share, share, 0.0]))
            }
            WishName::FrontDiffKg => (now.front_diff_kg, per_step.of_loads([1.0, -1.0, 0.0, 0.0])),
            WishName::RearDiffKg => (now.rear_diff_kg, per_step.of_loads([0.0, 0.0, 1.0, -1.0])),
            WishName::HeightFl => height(Place::Fl, per_step, start),
            WishName::HeightFr => height(Place::Fr, per_step, start),
            WishName::HeightRl => height(Place::Rl, per_step, start),
            WishName::HeightRr => height(Place::Rr, per_step, start),
            WishName::Rake => (weighed(&start.heights_mm, RAKE), per_step.of_heights(RAKE)),
        };
        WishRow { name: Some(name), wish, error_now: value - wish.target, per_step }
    }

    /// Predicted value less target.
    pub(crate) fn error(&self, steps: &Steps) -> f64 {
        self.error_now + dot(&self.per_step, steps)
    }
}

fn height(place: Place, per_step: &PerStep, start: &Start) -> (f64, [f64; 4]) {
    (*start.heights_mm.at(place), per_step.height_mm[place.index()])
}

fn weighed(values: &Corners<f64>, weights: [f64; 4]) -> f64 {
    values.to_array().iter().zip(weights).map(|(v, w)| v * w).sum()
}

/// A limit on a linear function of the steps, mm.
#[derive(Clone, Copy, Debug)]
pub(crate) struct LimitRow {
    pub name: LimitName,
    /// Its value now.
    pub now_mm: f64,
    pub per_step: [f64; 4],
    /// Least value, or minus infinity.
    pub least_mm: f64,
    /// Greatest value, or infinity.
    pub most_mm: f64,
}

impl LimitRow {
    /// By how much a value is beyond the limit.
    pub(crate) fn excess_of(&self, value_mm: f64) -> f64 {
        (value_mm - self.most_mm).max(self.least_mm - value_mm).max(0.0)
    }

    pub(crate) fn value(&self, steps: &Steps) -> f64 {
        self.now_mm + dot(&self.per_step, steps)
    }

    /// The same limit with one mm more of it.
    pub(crate) fn with_one_mm_more(&self) -> LimitRow {
        LimitRow { least_mm: self.least_mm - 1.0, most_mm: self.most_mm + 1.0, ..*self }
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
    pub per_step: PerStep,
}

impl Objective {
    pub(crate) fn of(problem: &Problem, car: &Car, per_step: &PerStep, start: &Start) -> Objective {
        let wishes = problem.wishes.given().into_iter().map(|(name, w)| WishRow::of(name, w, per_step, start));
        let [low, high] = box_of(problem, problem.limits.collar_change_mm);
        Objective {
            wishes: wishes.collect(),
            limits: limit_rows(problem, car, per_step, start),
            low,
            high,
            price: problem.price,
            per_step: *per_step,
        }
    }

    /// The cost of a plan, in the words of the interchange text.
    pub(crate) fn cost(&self, steps: &Steps) -> f64 {
        let wishes: f64 = self.wishes.iter().map(|w| w.wish.weight * (w.error(steps) / w.wish.window).powi(2)).sum();
        wishes + self.price.per_collar * collars(steps) as f64 + self.price.per_step * f64::from(turned(steps))
    }

    /// How far a plan is beyond the limits, mm, all limits together.
    pub(crate) fn excess(&self, steps: &Steps) -> f64 {
        self.limits.iter().map(|l| l.excess_of(l.value(steps))).sum()
    }
}

/// Least and greatest steps of each collar: what its adjuster has left, and no more than the change of one round.
pub(crate) fn box_of(problem: &Problem, change_mm: Option<f64>) -> [Steps; 2] {
    let low = problem.adjusters.map(|a| -a.down_steps.min(steps_in(change_mm, a.step_mm)));
    let high = problem.adjusters.map(|a| a.up_steps.min(steps_in(change_mm, a.step_mm)));
    [low.to_array(), high.to_array()]
}

/// Steps that the change of one round lets a collar be turned.
pub(crate) fn steps_in(change_mm: Option<f64>, step_mm: f64) -> i32 {
    // A hair more, so that 5 mm are ten steps of half a millimetre whatever the rounding.
    let steps = |change_mm: f64| (change_mm / step_mm * (1.0 + 1e-12)).floor().min(f64::from(i32::MAX)) as i32;
    change_mm.map_or(i32::MAX, steps)
}

fn limit_rows(problem: &Problem, car: &Car, per_step: &PerStep, start: &Start) -> Vec<LimitRow> {
    let l = &problem.limits;
    let heights = |name, weights, offset_mm, least_mm, most_mm| LimitRow {
        name,
        now_mm: weighed(&start.heights_mm, weights) - offset_mm,
        per_step: per_step.of_heights(weights),
        least_mm,
        most_mm,
    };
    let none = f64::INFINITY;
    let mut rows = Vec::new();
    if let Some(limit) = l.height_diff_front_mm {
        rows.push(heights(LimitName::FRONT_DIFF, [1.0, -1.0, 0.0, 0.0], l.agreed_diff_front_mm, -limit, limit));
    }
    if let Some(limit) = l.height_diff_rear_mm {
        rows.push(heights(LimitName::REAR_DIFF, [0.0, 0.0, 1.0, -1.0], l.agreed_diff_rear_mm, -limit, limit));
    }
    if let Some(least) = l.rake_least_mm {
        rows.push(heights(LimitName::RakeLeast, RAKE, 0.0, least, none));
    }
    if let Some(most) = l.rake_most_mm {
        rows.push(heights(LimitName::RakeMost, RAKE, 0.0, -none, most));
    }
    for (index, point) in l.clearances.iter().enumerate() {
        let weights = rise_of(car, point.behind_front_axle_mm, point.left_mm);
        let row = heights(LimitName::Clearance { index }, weights, 0.0, point.least_mm, none);
        rows.push(LimitRow { now_mm: point.now_mm, ..row });
    }
    for place in Place::ALL {
        let (i, corner) = (place.index(), car.corners.at(place));
        // The wheel comes down from the body by what the height gains, and by what the tyre gives way more.
        let tyre_mm_per_kg = STANDARD_GRAVITY / corner.tyre_n_per_mm;
        let out_mm: [f64; 4] =
            std::array::from_fn(|j| per_step.height_mm[i][j] + tyre_mm_per_kg * per_step.load_kg[i][j]);
        let mut gap = |name, left: Option<f64>, limit: Option<f64>, per_step| {
            if let (Some(now_mm), Some(least_mm)) = (left, limit) {
                rows.push(LimitRow { name, now_mm, per_step, least_mm, most_mm: none });
            }
        };
        gap(LimitName::BumpGap { place }, corner.bump_mm, l.bump_gap_mm, out_mm);
        gap(LimitName::DroopGap { place }, corner.droop_mm, l.droop_gap_mm, out_mm.map(|v| -v));
    }
    rows
}

/// The rise of a point of the body as weights of the rises at the four wheels: straight along the car, and across it
/// with the roll of the body there (that of an axle beyond it).
fn rise_of(car: &Car, behind_front_axle_mm: f64, left_mm: f64) -> [f64; 4] {
    let along = behind_front_axle_mm / car.wheelbase_mm;
    let rear_roll = along.clamp(0.0, 1.0);
    let (front, rear) = ((1.0 - along) / 2.0, along / 2.0);
    let front_side = left_mm / car.track_front_mm * (1.0 - rear_roll);
    let rear_side = left_mm / car.track_rear_mm * rear_roll;
    [front + front_side, front - front_side, rear + rear_side, rear - rear_side]
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

/// The whole steps of `low..=high` for which `least <= rate s <= most`; a little wider than computed, so that rounding
/// shuts no plan out. An empty range has its ends the wrong way round.
pub(crate) fn steps_between(rate: f64, least: f64, most: f64, low: i32, high: i32) -> (i32, i32) {
    if rate == 0.0 {
        return if least > 1e-9 || most < -1e-9 { (1, 0) } else { (low, high) };
    }
    let (a, b) = (most / rate, least / rate);
    let (from, to) = (a.min(b) - 1e-6, a.max(b) + 1e-6);
    if from > f64::from(high) || to < f64::from(low) {
        return (1, 0);
    }
    (from.max(f64::from(low)).ceil() as i32, to.min(f64::from(high)).floor() as i32)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The rise of a rigid body is a plane: every point of it follows from the four wheels.
    #[test]
    fn a_point_of_the_body_rises_with_its_plane() {
        let reference: serde_json::Value =
            serde_json::from_str(include_str!("../../chassis/tests/data/statics.json")).expect("JSON");
        let car: Car = serde_json::from_value(reference["cases"][0]["car"].clone()).expect("a car");
        let plane = |x: f64, y: f64| 1.0 - 0.002 * x + 0.0007 * y;
        let half = [car.track_front_mm / 2.0, car.track_rear_mm / 2.0];
        let back = car.wheelbase_mm;
        let rises = [plane(0.0, half[0]), plane(0.0, -half[0]), plane(back, half[1]), plane(back, -half[1])];
        for (x, y) in [(0.0, 0.0), (-800.0, 300.0), (1_200.0, -500.0), (back + 600.0, 0.0), (back, half[1])] {
            let rise: f64 = rise_of(&car, x, y).iter().zip(rises).map(|(w, r)| w * r).sum();
            assert!((rise - plane(x, y)).abs() < 1e-12, "at {x} mm behind the front axle, {y} mm left: {rise}");
        }
    }
}
