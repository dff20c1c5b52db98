//! What to turn: what each adjuster of a wheel does, learned from what was turned, and the best whole steps.

use super::Angle;
use bayhand_chassis::StaticsError;
use bayhand_chassis::align::{Learned, Response};
use bayhand_planner::{Aim, Price, whole_steps};

/// Price of touching an adjuster and of a step, in squares of a window: small, so that a plan with fewer adjusters wins
/// only where it is all but as good.
const PRICE: Price = Price { per_collar: 0.004, per_step: 0.0004 };
/// Most turns of an adjuster in one change.
const MOST_TURNS: f64 = 10.0;
/// How well it is known what an adjuster does to toe, camber and caster, standard, as a share of what it does to the angle
/// that it is for: rows are the adjusters of toe, camber and caster (our choice). A rod's pitch and arm are known well, and
/// it hardly moves anything but toe; camber swings the wheel about joints that a drawing seldom shows, and moves toe.
const KNOWN_SHARE: [[f64; 3]; 3] = [[0.05, 0.05, 0.05], [0.6, 0.12, 0.15], [0.5, 0.3, 0.15]];
/// The same where a drawing or an earlier change tells what an adjuster moves besides (our choice): joints stand a few
/// millimetres from where they were drawn.
const DRAWN_SHARE: [[f64; 3]; 3] = [[0.05, 0.05, 0.05], [0.1, 0.12, 0.08], [0.1, 0.1, 0.15]];

/// One of a wheel's adjusters, named by the angle that it is for.
pub type Knob = Angle;

/// Effects of a wheel's adjusters: toe, camber, caster.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effects([Learned; 3]);

/// What one turn of each adjuster is said to do, degrees, and the whole steps of a turn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Steps {
    /// Toe, camber, caster, degrees for one turn.
    pub per_turn_deg: [f64; 3],
    /// Steps of one turn.
    pub steps: [f64; 3],
}

/// What one turn of an adjuster is said to move besides the angle that it is for, degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Couplings {
    /// Toe by the camber adjuster.
    pub camber_moves_toe_deg: f64,
    /// Camber by the caster adjuster.
    pub caster_moves_camber_deg: f64,
    /// Toe by the caster adjuster.
    pub caster_moves_toe_deg: f64,
}

impl Couplings {
    /// What an adjuster is said to do to the angles that it is not for.
    fn of(&self, knob: usize, angle: usize) -> f64 {
        match (knob, angle) {
            (1, 0) => self.camber_moves_toe_deg,
            (2, 0) => self.caster_moves_toe_deg,
            (2, 1) => self.caster_moves_camber_deg,
            _ => 0.0,
        }
    }
}

/// What to turn at one wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelPlan {
    /// Turns of the toe, camber and caster adjuster.
    pub turns: [f64; 3],
    /// Change that they are expected to make of toe, camber and caster, degrees.
    pub change_deg: [f64; 3],
}

fn of_response(response: &Response) -> [f64; 3] {
    [response.toe_deg, response.camber_deg, response.caster_deg]
}

fn response(deg: [f64; 3]) -> Response {
    Response { toe_deg: deg[0], camber_deg: deg[1], caster_deg: deg[2], ..Response::default() }
}

impl Effects {
    /// As entered: each does what it is for, and may do something else besides; what that is may be known.
    pub fn entered(steps: &Steps, besides: Option<&Couplings>) -> Effects {
        let share = if besides.is_some() { &DRAWN_SHARE } else { &KNOWN_SHARE };
        Effects(std::array::from_fn(|knob| {
            let own = steps.per_turn_deg[knob];
            let mean = |i: usize| if i == knob { own } else { besides.map_or(0.0, |b| b.of(knob, i)) };
            Learned {
                per_unit: response(std::array::from_fn(mean)),
                standard: response(share[knob].map(|share| share * own.abs())),
            }
        }))
    }

    /// After these turns were seen to change the angles so; each angle seen to its own standard uncertainty.
    ///
    /// # Errors
    /// Values that are not numbers.
    pub fn after(&self, turns: [f64; 3], seen_deg: [f64; 3], standard_deg: [f64; 3]) -> Result<Effects, StaticsError> {
        let learned = Learned::together(&self.0, &turns, &response(seen_deg), &response(standard_deg))?;
        Ok(Effects([0, 1, 2].map(|knob| learned[knob])))
    }

    /// Change of an angle by one turn of an adjuster, degrees.
    pub fn per_turn_deg(&self, knob: Knob, of: Angle) -> f64 {
        of_response(&self.0[knob.index()].per_unit)[of.index()]
    }

    /// Change of the three angles by these turns, degrees, with the standard uncertainty of each.
    pub fn change_deg(&self, turns: [f64; 3]) -> ([f64; 3], [f64; 3]) {
        let (mut mean, mut variance) = ([0.0; 3], [0.0_f64; 3]);
        for (learned, turns) in self.0.iter().zip(turns) {
            let (by, standard) = learned.expected(turns);
            for i in 0..3 {
                mean[i] += of_response(&by)[i];
                variance[i] += of_response(&standard)[i].powi(2);
            }
        }
        (mean, variance.map(f64::sqrt))
    }
}

/// The whole steps of a wheel's adjusters that bring its angles nearest to what is wanted, each measured in its window: the
/// optimum, by the search of the collars. `off` and `window`: toe, camber, caster, degrees; an angle without a window is
/// left as it comes, and `free` says which adjusters may be turned. The wheels of an axle do not move each other's angles,
/// so the best of each wheel is the best of the axle.
pub fn wheel_plan(
    effects: &Effects,
    steps: &Steps,
    off_deg: [f64; 3],
    window_deg: [Option<f64>; 3],
    free: [bool; 3],
) -> Option<WheelPlan> {
    let aim = |angle: usize| {
        let per_step = std::array::from_fn(|knob| match knob {
            0..3 => of_response(&effects.0[knob].per_unit)[angle] / steps.steps[knob],
            _ => 0.0,
        });
        Some(Aim { off: off_deg[angle], window: window_deg[angle]?, per_step })
    };
    let aims: Vec<Aim> = (0..3).filter_map(aim).collect();
    let most = |knob: usize| if knob < 3 && free[knob] { (MOST_TURNS * steps.steps[knob]) as i32 } else { 0 };
    let high: [i32; 4] = std::array::from_fn(most);
    let found = whole_steps(&aims, high.map(|s| -s), high, PRICE)?;
    let turns: [f64; 3] = std::array::from_fn(|knob| f64::from(found.steps[knob]) / steps.steps[knob]);
    Some(WheelPlan { turns, change_deg: effects.change_deg(turns).0 })
}
