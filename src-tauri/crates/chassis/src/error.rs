//! Why something of a car cannot be computed.

use bayhand_vehicle::{CarError, Corners};
use thiserror::Error;

/// Why something of a car cannot be computed.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum StaticsError {
    /// Such a car cannot be.
    #[error("car.{0}")]
    Car(#[from] CarError),
    /// A value of a reading or of a setting cannot be.
    #[error("{at} is {value}; it must be {must}")]
    Value {
        /// Path of the field, such as `from.loads_kg.FL`.
        at: String,
        /// The value as given.
        value: String,
        /// What it must be.
        must: &'static str,
    },
    /// The springs do not hold the body upright: the weight of the sprung mass above the roll axis outweighs them.
    #[error(
        "car.corners: the springs cannot hold this body upright (sprung mass {mass_kg} kg, {height_mm} mm above the roll axis)"
    )]
    TipsOver {
        /// Sprung mass, kg.
        mass_kg: f64,
        /// Height of its centre above the roll axis, mm.
        height_mm: f64,
    },
    /// So many wheels are off their pads that loads do not follow from the springs any more.
    #[error("to: fewer than three wheels would stay on their pads; the loads cannot be computed")]
    TooFewWheels,
}

impl StaticsError {
    /// Path of the field that is wrong, as JSON names it.
    pub fn at(&self) -> String {
        match self {
            StaticsError::Car(e) => format!("car.{}", e.at),
            StaticsError::Value { at, .. } => at.clone(),
            StaticsError::TipsOver { .. } => "car.corners".to_owned(),
            StaticsError::TooFewWheels => "to".to_owned(),
        }
    }
}

/// Refuses a value outside `least..=most`; a NaN is outside every range.
pub(crate) fn within(at: &str, value: f64, least: f64, most: f64, must: &'static str) -> Result<(), StaticsError> {
    if value >= least && value <= most {
        Ok(())
    } else {
        Err(StaticsError::Value { at: at.to_owned(), value: value.to_string(), must })
    }
}

/// Refuses the first of four values that is outside `least..=most`.
pub(crate) fn each_within(
    at: &str,
    values: &Corners<f64>,
    least: f64,
    most: f64,
    must: &'static str,
) -> Result<(), StaticsError> {
    values.iter().try_for_each(|(place, &v)| within(&format!("{at}.{}", place.code()), v, least, most, must))
}

/// Refuses loads that no scale under a wheel shows, and four loads that carry nothing.
pub(crate) fn check_loads(at: &str, loads_kg: &Corners<f64>) -> Result<(), StaticsError> {
    each_within(at, loads_kg, 0.0, 5_000.0, "a load from 0 to 5000 kg")?;
    let total: f64 = loads_kg.to_array().iter().sum();
    let (front, rear) = (loads_kg.fl + loads_kg.fr, loads_kg.rl + loads_kg.rr);
    if front > 0.0 && rear > 0.0 {
        Ok(())
    } else {
        Err(StaticsError::Value { at: at.to_owned(), value: format!("{total} kg"), must: "a load on each axle" })
    }
}
