//! The trade line: its named places, and the stops that whole steps reach.

use crate::PlanError;
use crate::answer::Reachable;
use crate::excess::LeastExcess;
use crate::objective::{Objective, Start, Steps, WishRow, dot};
use crate::outlook::Outlook;
use crate::problem::{Price, Problem, Wish, WishName};
use crate::search::{Found, SIDE_WORK_LIMIT, best};
use bayhand_chassis::{Figures, Rates, TradePoint, diagonal, lift_without_height, trade_line};
use bayhand_vehicle::{Car, Corners, Place};

/// Places between the ends of the line for which the nearest whole steps are sought.
const PLACES: u32 = 64;

/// Nodes that the search for stops visits before it is content with those it has.
const LINE_WORK_LIMIT: u64 = 60_000;

/// Distance along the line that weighs as much as one window of a height, kg at FL.
const HALF_A_KG: f64 = 0.5;

/// The line of one car as it stands.
pub(crate) struct Line {
    loads_kg: Corners<f64>,
    pattern: Corners<f64>,
    /// What one step of each collar moves along the pattern, kg at FL.
    along: [f64; 4],
    /// Steps, not whole, that move one kg at FL and no height.
    steps_per_kg: Corners<f64>,
    marks: Vec<TradePoint>,
    /// The heights to be kept, and last the place on the line.
    nearest: Objective,
}

impl Line {
    pub(crate) fn of(problem: &Problem, car: &Car, objective: &Objective, start: &Start) -> Result<Line, PlanError> {
        let cross = problem.wishes.cross_pct.map_or(50.0, |w| w.target);
        let pattern = diagonal(car);
        let n = pattern.to_array();
        let length: f64 = n.iter().map(|v| v * v).sum();
        let along =
            std::array::from_fn(|j| (0..4).map(|i| n[i] * objective.per_step.load_kg[i][j]).sum::<f64>() / length);
        let ratio = Rates::of(car).adjuster_ratio;
        let lift = lift_without_height(car, 1.0);
        let mut wishes: Vec<WishRow> = Place::ALL.map(|p| height_row(problem, objective, start, p)).to_vec();
        let place = Wish { target: 0.0, window: HALF_A_KG, weight: 1.0 };
        wishes.push(WishRow { name: None, wish: place, error_now: 0.0, per_step: along });
        Ok(Line {
            loads_kg: start.loads_kg,
            pattern,
            along,
            steps_per_kg: Corners::from_fn(|p| lift.at(p) / (ratio.at(p) * problem.adjusters.at(p).step_mm)),
            marks: trade_line(car, &start.loads_kg, cross)?,
            nearest: Objective { wishes, price: Price::default(), ..objective.clone() },
        })
    }

    /// The whole steps that come nearest to a place, inside adjusters and limits: least sum of squares of the distance
    /// along the line in halves of a kilogram, and of the height errors in their windows.
    fn steps_to(&self, along_kg: f64, least: &LeastExcess, guess: Steps) -> Found {
        let mut nearest = self.nearest.clone();
        if let Some(place) = nearest.wishes.last_mut() {
            place.error_now = -along_kg;
        }
        // Leaving the car alone is what remains when the search was cut off before it met a plan.
        let alone = Found { steps: [0; 4], cost: nearest.cost(&[0; 4]), gap: f64::INFINITY, nodes: SIDE_WORK_LIMIT };
        best(&nearest, least, 4, guess, SIDE_WORK_LIMIT).unwrap_or(alone)
    }

    /// A place on the line and what whole steps make of it.
    pub(crate) fn place(
        &self,
        along_kg: f64,
        objective: &Objective,
        outlook: &Outlook,
        least: &LeastExcess,
        guess: Steps,
    ) -> Reachable {
        self.with_steps(along_kg, self.steps_to(along_kg, least, guess).steps, objective, outlook)
    }

    fn with_steps(&self, along_kg: f64, steps: Steps, objective: &Objective, outlook: &Outlook) -> Reachable {
        let there = Corners::from_fn(|p| self.loads_kg.at(p) + along_kg * self.pattern.at(p));
        Reachable {
            mark: None,
            along_kg,
            figures: Figures::of(&there),
            pattern_steps: self.steps_per_kg.map(|per_kg| along_kg * per_kg),
            steps: Corners::from_array(steps),
            reached: outlook.predicted(&steps),
            reached_along_kg: dot(&self.along, &steps),
            cost: objective.cost(&steps),
        }
    }

    /// The named places and the stops between the ends of the line, in the order along it.
    ///
    /// Stops are sought from coarse to fine until [`LINE_WORK_LIMIT`] is used up, so a line that is hard to search has
    /// fewer of them.
    pub(crate) fn whole(&self, objective: &Objective, outlook: &Outlook, least: &LeastExcess) -> Vec<Reachable> {
        let mut line: Vec<Reachable> = Vec::new();
        let mut seen: Vec<(f64, Steps)> = vec![(0.0, [0; 4])];
        let mut nodes = 0;
        let mut steps_to = |along_kg: f64| {
            let near = seen.iter().min_by(|a, b| (a.0 - along_kg).abs().total_cmp(&(b.0 - along_kg).abs()));
            let found = self.steps_to(along_kg, least, near.map_or([0; 4], |(_, steps)| *steps));
            let new = seen.iter().all(|(_, steps)| *steps != found.steps);
            seen.push((along_kg, found.steps));
            nodes += found.nodes;
            (found.steps, new, nodes)
        };
        for point in &self.marks {
            let place = self.with_steps(point.along_kg, steps_to(point.along_kg).0, objective, outlook);
            line.push(Reachable { mark: Some(point.mark), ..place });
        }
        let ends = self.marks.iter().map(|point| point.along_kg).chain([0.0]);
        let (from, to) = ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), v| (a.min(v), b.max(v)));
        for i in coarse_to_fine() {
            let (steps, new, nodes) = steps_to(from + (to - from) * f64::from(i) / f64::from(PLACES));
            if new {
                line.push(self.with_steps(dot(&self.along, &steps), steps, objective, outlook));
            }
            if nodes > LINE_WORK_LIMIT {
                break;
            }
        }
        line.sort_by(|a, b| a.along_kg.total_cmp(&b.along_kg));
        line
    }
}

/// 0 to [`PLACES`]: both ends, the middle, the quarters, and so on.
fn coarse_to_fine() -> impl Iterator<Item = u32> {
    let finer = (0..PLACES.ilog2()).map(|level| PLACES >> (level + 1));
    [0, PLACES].into_iter().chain(finer.flat_map(|half| (half..PLACES).step_by(2 * half as usize)))
}

/// The wished height of a corner, or its height now within a millimetre.
fn height_row(problem: &Problem, objective: &Objective, start: &Start, place: Place) -> WishRow {
    let now = *start.heights_mm.at(place);
    let wished = problem.wishes.heights_mm.at(place).filter(|w| w.weight > 0.0);
    let wish = wished.unwrap_or(Wish { target: now, window: 1.0, weight: 1.0 });
    let per_step = objective.per_step.height_mm[place.index()];
    WishRow { name: Some(WishName::height(place)), wish, error_now: now - wish.target, per_step }
}
