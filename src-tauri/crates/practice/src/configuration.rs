//! What a person has set on the car and on the bench, and what cannot be set.

use crate::alignment::AlignmentState;
use crate::data_sheet::{DataSheet, PerAxle};
use crate::equilibrium::EquilibriumError;
use bayhand_vehicle::{Corners, Place};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// One end of an axle's bar link.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum LinkState {
    /// Undone; the bar hangs free.
    #[default]
    Released,
    /// Bolted up.
    Connected {
        /// Turns of the link's thread since the car came in; positive presses the left wheel down harder.
        adjust_turns: f64,
    },
}

/// What lets the tyres go sideways on their pads when the car settles.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Freeing {
    /// Slip plates under the tyres.
    #[default]
    SlipPlates,
    /// The car is rolled off its pads and on again.
    RunOffs,
    /// Nothing: the tyres hold on to the pads as they were let down.
    Nothing,
}

/// Everything that was set, turned, loaded or filled.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Configuration {
    /// Travel of each collar since the car came in, mm; positive raises the car.
    pub collar_mm: Corners<f64>,
    /// Shims under each pad, mm.
    pub shims_mm: Corners<f64>,
    /// What lets the tyres go sideways.
    pub freeing: Freeing,
    /// The link of each axle's bar.
    pub links: PerAxle<LinkState>,
    /// Ballast for the driver, at the driver's seat, kg.
    pub ballast_kg: f64,
    /// Fuel, litres.
    pub fuel_l: f64,
    /// Pressure that each tyre was set to, bar over the air's.
    pub pressures_bar: Corners<f64>,
    /// Turns made at the adjusters of the alignment.
    #[serde(default)]
    pub turned: AlignmentState,
}

/// Why the bench has nothing to show.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum PracticeError {
    /// A value that cannot be set on this car.
    #[error("{at} is {value}; it must be {must}")]
    Range {
        /// Path of the field, such as `collar_mm.FL`.
        at: String,
        /// The value as given.
        value: f64,
        /// What it must be.
        must: String,
    },
    /// Turns so far that a wheel's links cannot be closed.
    #[error("the links at {} cannot be closed: an adjuster was turned too far", .place.code())]
    Linkage {
        /// The wheel.
        place: Place,
    },
    /// The car does not come to rest.
    #[error(transparent)]
    Equilibrium(#[from] EquilibriumError),
}

impl Configuration {
    /// Checks that a person can have set this on the car of that data sheet.
    ///
    /// # Errors
    /// The first value out of its range.
    pub fn validate(&self, sheet: &DataSheet) -> Result<(), PracticeError> {
        for (place, mm) in self.collar_mm.iter() {
            let at = format!("collar_mm.{}", place.code());
            within(at, *mm, -sheet.collar_travel_down_mm, sheet.collar_travel_up_mm, "mm")?;
        }
        for (place, mm) in self.shims_mm.iter() {
            within(format!("shims_mm.{}", place.code()), *mm, 0.0, 20.0, "mm")?;
        }
        for (axle, link) in [("front", self.links.front), ("rear", self.links.rear)] {
            if let LinkState::Connected { adjust_turns } = link {
                within(format!("links.{axle}.adjust_turns"), adjust_turns, -20.0, 20.0, "turns")?;
            }
        }
        within("ballast_kg".to_owned(), self.ballast_kg, 0.0, 150.0, "kg")?;
        within("fuel_l".to_owned(), self.fuel_l, 0.0, sheet.tank_l, "l")?;
        for (place, bar) in self.pressures_bar.iter() {
            within(format!("pressures_bar.{}", place.code()), *bar, 0.5, 4.0, "bar")?;
        }
        self.turned.validate()
    }
}

/// Refuses a value outside its range; a NaN is outside every range.
pub(crate) fn within(at: String, value: f64, least: f64, most: f64, unit: &str) -> Result<(), PracticeError> {
    if value >= least && value <= most {
        Ok(())
    } else {
        Err(PracticeError::Range { at, value, must: format!("from {least} to {most} {unit}") })
    }
}
