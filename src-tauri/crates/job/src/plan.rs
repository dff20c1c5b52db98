//! What to turn for a place on the trade line: the problem for `planner`, and its answer as it is kept.

use crate::{
    body::PlanSeen,
    judge::{First, JudgeError, Judged, Wishes},
    known::{Known, axle_of},
    reading::ReadingSet,
};
use bayhand_planner::{Confidence, Knowledge, Limits, Minutes, Plan, PlanError, Price, Problem, Round, Wish};
use bayhand_vehicle::{Adjuster, Corners, Place};

/// The place on the trade line that is aimed at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Aim {
    /// The place where a named wish is met.
    Wish(First),
    /// Any place, by its cross weight, %.
    Place(f64),
}

/// The option that takes any place on the line; its number is entered under [`PLACE`].
pub const TURN_PLACE: &str = "turn-place";
/// Key of the number of [`TURN_PLACE`].
pub const PLACE: &str = "place";

impl Aim {
    /// The named aims, in the order of the options.
    pub const NAMED: [Aim; 3] = [Aim::Wish(First::Cross), Aim::Wish(First::Front), Aim::Wish(First::Rear)];

    /// The aim that an option names by itself; none for options that turn nothing or need a number.
    pub fn of(option: &str) -> Option<Aim> {
        Aim::NAMED.into_iter().find(|aim| aim.option() == option)
    }

    /// The option that chooses it.
    pub fn option(self) -> &'static str {
        match self {
            Aim::Wish(First::Cross) => "turn-cross",
            Aim::Wish(First::Front) => "turn-front",
            Aim::Wish(First::Rear) => "turn-rear",
            Aim::Place(_) => TURN_PLACE,
        }
    }
}

/// Weight of a height beside the figure that is aimed at: heights bend before the aim does, within their limit.
const HEIGHT_WEIGHT: f64 = 0.05;
/// Price of touching a collar and of a step, in the unit of the cost: small against a window, so that a plan with
/// fewer collars wins only where it is all but as good.
const PRICE: Price = Price { per_collar: 0.002, per_step: 0.0002 };

impl Known<'_> {
    /// The best whole-step plan for an aim from a judged set of readings; none before the adjusters were entered.
    ///
    /// # Errors
    /// What `planner` refuses.
    pub fn plan(&self, judged: &Judged, wishes: &Wishes, aim: Aim) -> Option<Result<Plan, PlanError>> {
        Some(bayhand_planner::plan(&self.problem(judged, wishes, aim)?))
    }

    /// What is asked of `planner` for an aim; none before the adjusters were entered.
    pub fn problem(&self, judged: &Judged, wishes: &Wishes, aim: Aim) -> Option<Problem> {
        let (adjusters, per_turn) = self.adjusters()?;
        let agreed = |left: Place, right: Place| wishes.heights_mm.at(left) - wishes.heights_mm.at(right);
        let height = |p: Place| {
            Some(Wish { target: *wishes.heights_mm.at(p), window: wishes.height_window_mm, weight: HEIGHT_WEIGHT })
        };
        let mut asked = bayhand_planner::Wishes { heights_mm: Corners::from_fn(height), ..Default::default() };
        let wish = |target, window| Some(Wish { target, window, weight: 1.0 });
        match aim {
            Aim::Wish(First::Cross) => asked.cross_pct = wish(wishes.cross_pct, wishes.cross_window_pct),
            Aim::Wish(First::Front) => asked.front_diff_kg = wish(0.0, wishes.axle_window_kg),
            Aim::Wish(First::Rear) => asked.rear_diff_kg = wish(0.0, wishes.axle_window_kg),
            Aim::Place(cross_pct) => asked.cross_pct = wish(cross_pct, wishes.cross_window_pct),
        }
        Some(Problem {
            car: judged.car,
            confidence: Confidence::default(),
            adjusters,
            limits: Limits {
                height_diff_front_mm: Some(wishes.side_limit_mm),
                height_diff_rear_mm: Some(wishes.side_limit_mm),
                agreed_diff_front_mm: agreed(Place::Fl, Place::Fr),
                agreed_diff_rear_mm: agreed(Place::Rl, Place::Rr),
                bump_gap_mm: self.value("intake.travel", "travel-kept"),
                droop_gap_mm: self.value("intake.travel", "travel-kept"),
                ..Limits::default()
            },
            wishes: asked,
            price: PRICE,
            pads: judged.instruments.pads(),
            rounds: self.rounds_for_plan(judged, per_turn).ok()?,
            known: self.log.opened.known.clone(),
            minutes: Minutes::default(),
        })
    }

    /// The whole steps that bring the heights nearest to the agreed ones, whatever the loads; none before intake.
    ///
    /// Nothing was weighed yet, so the mass is taken as spread evenly: the springs decide how heights answer.
    ///
    /// # Errors
    /// What `planner` refuses.
    pub fn rough_plan(&self, heights_mm: &Corners<f64>) -> Option<Result<Plan, PlanError>> {
        let wishes = self.wishes()?;
        let loads_kg = Corners::same(self.value("intake.car", "total")? / 4.0);
        let car = self.car(&loads_kg).ok()?;
        let height =
            |p: Place| Some(Wish { target: *wishes.heights_mm.at(p), window: wishes.height_window_mm, weight: 1.0 });
        let problem = Problem {
            car,
            confidence: Confidence::default(),
            adjusters: self.adjusters()?.0,
            limits: Limits::default(),
            wishes: bayhand_planner::Wishes { heights_mm: Corners::from_fn(height), ..Default::default() },
            price: PRICE,
            pads: self.instruments(&car).ok()?.pads(),
            rounds: vec![Round { turned_steps: Corners::same(0.0), loads_kg, heights_mm: *heights_mm }],
            known: None,
            minutes: Minutes::default(),
        };
        Some(bayhand_planner::plan(&problem))
    }

    /// What each collar may still do, and the steps of one turn; none before the adjusters were entered.
    fn adjusters(&self) -> Option<(Corners<Adjuster>, f64)> {
        let (up, down) = (self.axles("intake.adjusters", "turns-up")?, self.axles("intake.adjusters", "turns-down")?);
        let per_turn = self.value("intake.adjusters", "steps-per-turn")?;
        let made = self.turns_made();
        // Left travel is counted in whole steps towards the safe side.
        let left = |turns: f64| (turns * per_turn).max(0.0).floor() as i32;
        let adjusters = Corners::from_fn(|p| Adjuster {
            step_mm: self.step_mm(p),
            up_steps: left(axle_of(p, up.0, up.1) - made.at(p)),
            down_steps: left(axle_of(p, down.0, down.1) + made.at(p)),
        });
        Some((adjusters, per_turn))
    }

    /// Travel of a collar for one step, mm; 0 before the adjusters were entered.
    pub fn step_mm(&self, place: Place) -> f64 {
        self.value("intake.adjusters", "steps-per-turn").map_or(0.0, |steps| self.pitch_mm(place) / steps)
    }

    /// The readings up to the judged set as `planner` takes them, as on level pads.
    fn rounds_for_plan(&self, judged: &Judged, per_turn: f64) -> Result<Vec<Round>, JudgeError> {
        let round = |(turns, set): (Corners<f64>, ReadingSet)| {
            Ok(Round {
                turned_steps: turns.map(|turns| turns * per_turn),
                loads_kg: self.on_level_pads(&judged.car, &set)?,
                heights_mm: set.heights_mm(),
            })
        };
        self.sets_until(&judged.set).into_iter().map(round).collect()
    }

    /// The sets read while collars were being set, up to this one, with the turns that were really made since the set
    /// before; none before the first, since what was turned before it is not evidence.
    pub fn sets_until(&self, now: &ReadingSet) -> Vec<(Corners<f64>, ReadingSet)> {
        let first = |set: &ReadingSet| set.readings.iter().find_map(|r| r.number).unwrap_or(u64::MAX);
        let before = self.rounds_read().into_iter().filter(|set| first(set) < first(now));
        let mut since = None;
        before
            .chain([now.clone()])
            .map(|set| {
                let turns = since.map_or(Corners::same(0.0), |since| self.turned_between(since, first(&set)));
                since = Some(first(&set));
                (turns, set)
            })
            .collect()
    }

    /// Turns made between two entries.
    fn turned_between(&self, after: u64, before: u64) -> Corners<f64> {
        let mut turned = Corners::same(0.0);
        for recording in self.recordings().iter().filter(|r| r.number > after && r.number < before) {
            for place in Place::ALL {
                if recording.step.strip_prefix("loop.turn-") == Some(place.code()) {
                    *turned.at_mut(place) += recording.looks("turns").first().copied().unwrap_or(0.0);
                }
            }
        }
        turned
    }

    /// What the readings of this job taught about the car's springs and ratios, to be kept for its next visit; what was
    /// known before when nothing was turned; none when nothing is known.
    pub fn learned(&self) -> Option<Knowledge> {
        let before = self.log.opened.known.clone();
        let taught = || {
            let set = self.rounds_read().pop()?;
            let on = set.at()?.date_naive().to_string();
            let (judged, wishes) = (self.judged(set).ok()?, self.wishes()?);
            let learned = self.plan(&judged, &wishes, Aim::Wish(wishes.first))?.ok()?.learned?;
            (learned.readings > 1).then(|| learned.kept(&on))
        };
        taught().or(before)
    }

    /// The plan that was accepted last, when collars are to be turned by it.
    pub fn accepted_plan(&self) -> Option<&PlanSeen> {
        let judge = self.recordings().iter().rev().find(|r| r.step == "loop.judge")?;
        judge.seen?.plan.as_ref()
    }

    /// The axle's adjuster turns `turns` for this many whole steps.
    pub fn turns_of(&self, steps: i32) -> f64 {
        let per_turn = self.value("intake.adjusters", "steps-per-turn").unwrap_or(1.0);
        f64::from(steps) / per_turn
    }
}

/// The plan as the record keeps it.
pub fn seen(known: &Known, plan: &Plan, judged: &Judged, aim: Aim, why: String) -> PlanSeen {
    let steps = plan.steps.to_array();
    let along = plan.predicted.loads_kg.fl - judged.loads_kg.fl;
    PlanSeen {
        aim: aim.option().to_owned(),
        steps,
        turns: steps.map(|s| known.turns_of(s).to_string()),
        loads_kg: plan.predicted.loads_kg.to_array().map(|v| v.to_string()),
        heights_mm: plan.predicted.heights_mm.to_array().map(|v| v.to_string()),
        cross_pct: plan.predicted.figures.cross_pct.to_string(),
        along_kg: along.to_string(),
        why,
    }
}
