//! The reading after collars and pads were moved.

use crate::error::{check_loads, each_within};
use crate::statics::{Cause, System};
use crate::{Figures, Rates, StaticsError};
use bayhand_vehicle::{Car, Corners, Place, STANDARD_GRAVITY};
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
    /// Heights of the body straight above each wheel, over that wheel's own pad, mm.
    pub heights_mm: Corners<f64>,
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
    /// Heights over each wheel's own pad, mm.
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
    /// The wheel moves further into the body than the travel to its bump stop.
    OnBumpStop {
        /// The corner.
        place: Place,
    },
    /// The wheel moves further out of the body than its droop limit lets it.
    ToppedOut {
        /// The corner.
        place: Place,
    },
}

/// Predicts loads, heights and figures after collars and pads were moved from one setting to another.
///
/// Linear about the reading; a wheel that would be pulled off its pad is let go, and the other three carry the car.
/// Bump stops and droop limits are reported as states, their stiffness is not part of the car data.
///
/// # Errors
/// A car that cannot be, values outside physical ranges (named by field), or more than one wheel off its pad.
pub fn predict(car: &Car, from: &From, to: &To) -> Result<Predicted, StaticsError> {
    let system = System::of(car)?;
    for (at, values) in [("from.collar_mm", &from.collar_mm), ("to.collar_mm", &to.collar_mm)] {
        each_within(at, values, -1_000.0, 1_000.0, "from -1000 to 1000 mm")?;
    }
    for (at, values) in [("from.pads_mm", &from.pads_mm), ("to.pads_mm", &to.pads_mm)] {
        each_within(at, values, -500.0, 500.0, "from -500 to 500 mm")?;
    }
    check_loads("from.loads_kg", &from.loads_kg)?;
    each_within("from.heights_mm", &from.heights_mm, -1_000.0, 5_000.0, "from -1000 to 5000 mm")?;

    let ratio = Rates::of(car).adjuster_ratio;
    let pads_mm = Corners::from_fn(|p| to.pads_mm.at(p) - from.pads_mm.at(p));
    let free_mm = Corners::from_fn(|p| (to.collar_mm.at(p) - from.collar_mm.at(p)) * ratio.at(p));
    let lift = system.lift_of_collars(free_mm.to_array());
    let mut cause = Cause { lift_mm: std::array::from_fn(|i| lift[i] + pads_mm.to_array()[i]), ..Cause::default() };
    let mut answer = system.solve(&cause)?;
    let newton = from.loads_kg.map(|kg| kg * STANDARD_GRAVITY).to_array();
    let after = |answer: &crate::statics::Answer, i: usize| newton[i] + answer.load_n[i];
    // A pad can push and not pull: let go of the wheel that would pull most.
    if let Some(lightest) = (0..4).min_by(|&a, &b| after(&answer, a).total_cmp(&after(&answer, b)))
        && after(&answer, lightest) < 0.0
    {
        cause.lost_n[lightest] = Some(newton[lightest]);
        answer = system.solve(&cause)?;
        if (0..4).any(|i| i != lightest && after(&answer, i) < 0.0) {
            return Err(StaticsError::TooFewWheels);
        }
    }
    // What is left of a lifted wheel's load is rounding, and zero by construction.
    let loads_kg = Corners::from_fn(|p| {
        let i = p.index();
        if cause.lost_n[i].is_some() { 0.0 } else { from.loads_kg.at(p) + answer.load_n[i] / STANDARD_GRAVITY }
    });
    let heights_mm = Corners::from_fn(|p| from.heights_mm.at(p) + answer.rise_mm[p.index()] - pads_mm.at(p));
    Ok(Predicted {
        loads_kg,
        heights_mm,
        figures: Figures::of(&loads_kg),
        states: states(car, from, &loads_kg, &heights_mm),
    })
}

/// Wheels that are lifted, and wheels that travel further than the car data leaves them.
fn states(car: &Car, from: &From, loads_kg: &Corners<f64>, heights_mm: &Corners<f64>) -> Vec<State> {
    let mut found = Vec::new();
    for place in Place::ALL {
        let corner = car.corners.at(place);
        if *loads_kg.at(place) <= 0.0 {
            found.push(State::WheelLifted { place });
        }
        // The body comes down on the wheel by what its height loses, less what the tyre gives way more.
        let tyre_mm = (loads_kg.at(place) - from.loads_kg.at(place)) * STANDARD_GRAVITY / corner.tyre_n_per_mm;
        let into_bump_mm = from.heights_mm.at(place) - heights_mm.at(place) - tyre_mm;
        if corner.bump_mm.is_some_and(|left| into_bump_mm > left) {
            found.push(State::OnBumpStop { place });
        }
        if corner.droop_mm.is_some_and(|left| -into_bump_mm > left) {
            found.push(State::ToppedOut { place });
        }
    }
    found
}
