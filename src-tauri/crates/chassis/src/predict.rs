//! The reading after collars and pads were moved.

use crate::error::{check_loads, each_within};
use crate::lean::Lean;
use crate::rest::{ROUNDING, Rest, come_to_rest};
use crate::system::{Before, Cause, End, System};
use crate::{Figures, Rates, StaticsError};
use bayhand_vehicle::{Car, Corners, Place, STANDARD_GRAVITY};
use nalgebra::DVector;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A reading, with where collars and pads stood. Positive collars and pads raise the car at their corner; only their
/// difference to [`To`] acts.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct From {
    /// Travel of each collar, mm.
    pub collar_mm: Corners<f64>,
    /// Height of each pad, mm.
    pub pads_mm: Corners<f64>,
    /// Loads as read, kg.
    pub loads_kg: Corners<f64>,
    /// Heights of the body straight above each wheel, over that wheel's own pad, mm; with
    /// [`Car::height_points`] the heights of those points over the floor.
    pub heights_mm: Corners<f64>,
}

impl From {
    /// Refuses values that no such reading has; `at` is its path.
    pub(crate) fn check(&self, at: &str) -> Result<(), StaticsError> {
        check_places(at, &self.collar_mm, &self.pads_mm)?;
        check_loads(&format!("{at}.loads_kg"), &self.loads_kg)?;
        each_within(&format!("{at}.heights_mm"), &self.heights_mm, -1_000.0, 5_000.0, "from -1000 to 5000 mm")
    }
}

fn check_places(at: &str, collar_mm: &Corners<f64>, pads_mm: &Corners<f64>) -> Result<(), StaticsError> {
    each_within(&format!("{at}.collar_mm"), collar_mm, -1_000.0, 1_000.0, "from -1000 to 1000 mm")?;
    each_within(&format!("{at}.pads_mm"), pads_mm, -500.0, 500.0, "from -500 to 500 mm")
}

/// Where collars and pads are moved.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct To {
    /// Travel of each collar, mm.
    pub collar_mm: Corners<f64>,
    /// Height of each pad, mm.
    pub pads_mm: Corners<f64>,
}

/// A predicted reading.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Predicted {
    /// Loads, kg; never negative.
    pub loads_kg: Corners<f64>,
    /// Heights, measured as in [`From`], mm.
    pub heights_mm: Corners<f64>,
    /// The figures of these loads.
    pub figures: Figures,
    /// What makes this state unlike the one that springs alone describe; absent when nothing does.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub states: Vec<State>,
}

/// A corner that does not stand on its spring and tyre alone any more.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "state", rename_all = "kebab-case", deny_unknown_fields)]
pub enum State {
    /// The wheel is off its pad.
    WheelLifted {
        /// The corner.
        place: Place,
    },
    /// The wheel has used up its travel to the bump stop. Where the rate of the stop is known, its force is in the
    /// loads.
    OnBumpStop {
        /// The corner.
        place: Place,
    },
    /// The strut hangs at its droop limit: from there its wheel follows the body.
    ToppedOut {
        /// The corner.
        place: Place,
    },
    /// The coils of the spring touch: from there it is a rod.
    CoilBound {
        /// The corner.
        place: Place,
    },
    /// The spring would have to pull. Where a droop limit is known it comes loose in its seats instead; where none is,
    /// the spring is taken to be held at both ends and carries its wheel.
    SpringLoose {
        /// The corner.
        place: Place,
    },
}

/// Predicts loads, heights and figures after collars and pads were moved from one setting to another.
///
/// Linear about the reading, but for what the lean of the body adds, as long as every wheel stands on its pad and no
/// strut comes to an end of its travel. From there on the contacts that change are followed one by one: a pad never pulls, a strut at its droop limit carries
/// its wheel along, a bump stop of known rate helps its spring, coils that touch make a rod. The travels in the car
/// data count from this reading, and so does a wheel whose load is zero here: it is taken to just touch its pad.
///
/// # Errors
/// A car that cannot be, values outside physical ranges (named by field), a setting in which the car falls off its
/// wheels, or one that presses a spring solid at its droop limit.
pub fn predict(car: &Car, from: &From, to: &To) -> Result<Predicted, StaticsError> {
    let system = System::of(car)?;
    from.check("from")?;
    check_places("to", &to.collar_mm, &to.pads_mm)?;

    let ratio = Rates::of(car).adjuster_ratio;
    let pads_mm = Corners::from_fn(|p| to.pads_mm.at(p) - from.pads_mm.at(p));
    let free_mm = Corners::from_fn(|p| (to.collar_mm.at(p) - from.collar_mm.at(p)) * ratio.at(p));
    let newton = from.loads_kg.map(|kg| kg * STANDARD_GRAVITY).to_array();
    let spring_n = system.suspension.spring_loads_n(car, newton);
    let before = before(car, &system, newton, spring_n);
    let cause = Cause { free_mm: free_mm.to_array(), pads_mm: pads_mm.to_array(), ..Cause::default() };
    let lean = Lean::of(car, from);
    let (rest, beyond_mm) = leaning(&system, &lean, &before, cause)?;
    let loads_kg = Corners::from_fn(|p| rest.load_n[p.index()] / STANDARD_GRAVITY);
    let over_own_pad = car.height_points.is_none();
    let heights_mm = Corners::from_fn(|p| {
        let floor_mm = if over_own_pad { *pads_mm.at(p) } else { 0.0 };
        from.heights_mm.at(p) + rest.height_mm[p.index()] + beyond_mm[p.index()] - floor_mm
    });
    let states = Place::ALL.into_iter().flat_map(|p| states(car, &system, spring_n, &rest, p)).collect();
    Ok(Predicted { loads_kg, heights_mm, figures: Figures::of(&loads_kg), states })
}

/// Corrections for the lean of the body after which it moves no further; each is a thousand times smaller than the one
/// before.
const MOST_CORRECTIONS: usize = 12;
/// Movement of the body (mm, mm per metre) that is no movement.
const STILL: f64 = 1e-9;

/// Brings a cause on, with what the lean of the body adds to forces and to measured heights (mm).
fn leaning(
    system: &System,
    lean: &Lean,
    before: &[Before; 4],
    mut cause: Cause,
) -> Result<(Rest, [f64; 4]), StaticsError> {
    let modes = system.body.modes();
    let mut rest = come_to_rest(system, before, &cause)?;
    for _ in 0..MOST_CORRECTIONS {
        let was = rest.movement;
        let left_out = lean.left_out(&system.body, &DVector::from_column_slice(&was[..modes]));
        cause.body_n = std::array::from_fn(|k| if k < modes { left_out[k] } else { 0.0 });
        rest = come_to_rest(system, before, &cause)?;
        if rest.movement.iter().zip(was).all(|(now, was)| (now - was).abs() < STILL) {
            break;
        }
    }
    let beyond_mm = lean.height_mm(&DVector::from_column_slice(&rest.movement[..modes]));
    Ok((rest, beyond_mm))
}

/// What is known of the corners in a reading.
fn before(car: &Car, system: &System, load_n: [f64; 4], spring_n: [f64; 4]) -> [Before; 4] {
    std::array::from_fn(|i| {
        let corner = car.corners.at(Place::ALL[i]);
        let along = |wheel_mm: f64| wheel_mm * system.suspension.ratio[i];
        Before {
            load_n: load_n[i],
            loose_from_n: corner.droop_mm.and((spring_n[i] > 0.0).then_some(spring_n[i])),
            bump: corner.bump_mm.map(along).zip(corner.bump_stop_n_per_mm),
            droop_mm: corner.droop_mm.map(along),
            coils_mm: corner.coil_bind_mm.map(along),
        }
    })
}

/// What makes a corner stand otherwise than on its spring and tyre.
fn states(car: &Car, system: &System, spring_n: [f64; 4], rest: &Rest, place: Place) -> Vec<State> {
    let i = place.index();
    let contact = rest.contacts[i];
    let mut found = Vec::new();
    if rest.load_n[i] <= 0.0 {
        found.push(State::WheelLifted { place });
    }
    let travel_mm = -rest.growth_mm[i] / system.suspension.ratio[i];
    if car.corners.at(place).bump_mm.is_some_and(|left| travel_mm >= left) {
        found.push(State::OnBumpStop { place });
    }
    match contact.end {
        Some(End::Droop) => found.push(State::ToppedOut { place }),
        Some(End::Coils) => found.push(State::CoilBound { place }),
        None => {}
    }
    let captive_pull = spring_n[i] > 0.0 && spring_n[i] + rest.spring_n[i] < -ROUNDING;
    if !contact.seated || captive_pull {
        found.push(State::SpringLoose { place });
    }
    found
}
