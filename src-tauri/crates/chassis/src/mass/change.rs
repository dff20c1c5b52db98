//! What moving, adding or removing mass does to the loads.
//!
//! By reciprocity (Maxwell-Betti; the matrix of [`crate::Sensitivity`] is symmetric): of a kilogram on the body at a
//! place, a pad carries as many kilograms as that place rises for a millimetre of that pad. So the rise of the body
//! over the wheels, which is known, says it all.

use crate::error::{each_within, within};
use crate::{Figures, Sensitivity, StaticsError};
use bayhand_vehicle::{Car, Corners, Place};

/// A place on the sprung body, seen from above, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// Behind the front axle; negative in front of it.
    pub behind_front_axle_mm: f64,
    /// Left of the middle plane; negative on the right.
    pub left_mm: f64,
}

/// A change of mass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MassChange {
    /// Mass that comes aboard.
    Added {
        /// kg.
        kg: f64,
        /// Where.
        at: Spot,
    },
    /// Mass that goes.
    Removed {
        /// kg.
        kg: f64,
        /// Where it was.
        at: Spot,
    },
    /// Mass that moves.
    Moved {
        /// kg.
        kg: f64,
        /// Where it was.
        from: Spot,
        /// Where it is now.
        to: Spot,
    },
}

/// What changes of mass do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MassEffect {
    /// Change of each load, kg.
    pub change_kg: Corners<f64>,
    /// The loads then, kg.
    pub loads_kg: Corners<f64>,
    /// Their figures.
    pub figures: Figures,
}

/// What each pad carries of one kilogram at a place on the sprung body, kg/kg; the four add up to one. Negative where
/// the place lies outside the wheels and tips the car away from a pad.
///
/// With torsion the mass stands on both halves of the body, divided by its distance from the axles.
///
/// # Errors
/// A car that cannot be, or a place off the body: more than 5 m from the axles or the middle plane.
pub fn carried(car: &Car, at: &Spot) -> Result<Corners<f64>, StaticsError> {
    Carriers::of(car)?.carried(at)
}

/// The loads after changes of mass, from those on level pads before: first order, for masses that are small against
/// the car. Heights of the masses do not matter, for the car leans little.
///
/// # Errors
/// A car, loads, masses or places that cannot be; a wheel that would leave its pad.
pub fn after_mass_change(
    car: &Car,
    loads_kg: &Corners<f64>,
    changes: &[MassChange],
) -> Result<MassEffect, StaticsError> {
    crate::error::check_loads("loads_kg", loads_kg)?;
    Carriers::of(car)?.after(loads_kg, changes)
}

/// Rise of the body over each wheel (row) per mm of each pad (column).
pub(super) struct Carriers<'a> {
    car: &'a Car,
    rise: [[f64; 4]; 4],
}

impl Carriers<'_> {
    pub(super) fn of(car: &Car) -> Result<Carriers<'_>, StaticsError> {
        let mut rise = Sensitivity::of(car)?.height_per_mm_pad;
        for (i, row) in rise.iter_mut().enumerate() {
            // Heights are over the wheel's own pad, which rose by that millimetre.
            row[i] += 1.0;
        }
        Ok(Carriers { car, rise })
    }

    pub(super) fn carried(&self, at: &Spot) -> Result<Corners<f64>, StaticsError> {
        within("at.behind_front_axle_mm", at.behind_front_axle_mm, -5_000.0, 15_000.0, "from -5000 to 15000 mm")?;
        within("at.left_mm", at.left_mm, -5_000.0, 5_000.0, "from -5000 to 5000 mm")?;
        let to_rear = at.behind_front_axle_mm / self.car.wheelbase_mm;
        Ok(Corners::from_fn(|pad| {
            let rise = |place: Place| self.rise[place.index()][pad.index()];
            let over = |left, right, track: f64| {
                let (left, right) = (rise(left), rise(right));
                (left + right) / 2.0 + at.left_mm * (left - right) / track
            };
            let front = over(Place::Fl, Place::Fr, self.car.track_front_mm);
            let rear = over(Place::Rl, Place::Rr, self.car.track_rear_mm);
            front * (1.0 - to_rear) + rear * to_rear
        }))
    }

    pub(super) fn after(&self, loads_kg: &Corners<f64>, changes: &[MassChange]) -> Result<MassEffect, StaticsError> {
        let mut change_kg = Corners::same(0.0);
        let mut add = |kg: f64, at: &Spot| -> Result<(), StaticsError> {
            let parts = self.carried(at)?;
            change_kg = Corners::from_fn(|p| change_kg.at(p) + kg * parts.at(p));
            Ok(())
        };
        for (i, change) in changes.iter().enumerate() {
            let check = |kg| within(&format!("changes[{i}].kg"), kg, 0.0, 5_000.0, "from 0 to 5000 kg");
            match change {
                MassChange::Added { kg, at } => {
                    check(*kg)?;
                    add(*kg, at)?;
                }
                MassChange::Removed { kg, at } => {
                    check(*kg)?;
                    add(-kg, at)?;
                }
                MassChange::Moved { kg, from, to } => {
                    check(*kg)?;
                    add(-kg, from)?;
                    add(*kg, to)?;
                }
            }
        }
        let loads_kg = Corners::from_fn(|p| loads_kg.at(p) + change_kg.at(p));
        each_within(
            "changes.loads_kg",
            &loads_kg,
            0.0,
            5_000.0,
            "a load from 0 to 5000 kg: the wheel stays on its pad",
        )?;
        Ok(MassEffect { change_kg, loads_kg, figures: Figures::of(&loads_kg) })
    }
}
