//! What is asked: the JSON of `bayhand-cli plausible`.

use crate::error::{check_loads, each_within, within};
use crate::{Confidence, Pads, StaticsError};
use bayhand_vehicle::{Adjuster, Car, Corners};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Most readings that are compared at once.
const MOST_ROUNDS: usize = 40;

/// Readings of one car in like state, to be held against each other.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LikeReadings {
    /// The car as entered.
    pub car: Car,
    /// How well its springs and ratios are known; absent: [`Confidence::default`].
    #[serde(default)]
    pub confidence: Confidence,
    /// The collars; only the travel of a step counts here.
    pub adjusters: Corners<Adjuster>,
    /// What is known of pads and readings.
    pub pads: Pads,
    /// The readings, oldest first; each is one look at one settle. Between them only collars were turned, it is said.
    pub rounds: Vec<LikeReading>,
}

/// One reading, and what is said to have been turned since the one before.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LikeReading {
    /// Steps turned at each collar since the reading before, as entered; positive raises. Absent: nothing turned.
    #[serde(default)]
    pub turned_steps: Corners<f64>,
    /// Loads as read, kg.
    pub loads_kg: Corners<f64>,
    /// Heights as read, mm.
    pub heights_mm: Corners<f64>,
}

impl LikeReadings {
    /// Checks that such readings can be. Ranges are physical: what is merely unlikely is for the answer to say.
    ///
    /// # Errors
    /// The first field that cannot be, by its path, with its value and range.
    pub fn validate(&self) -> Result<(), StaticsError> {
        self.car.validate()?;
        self.confidence.validate("confidence")?;
        for (place, a) in self.adjusters.iter() {
            let at = |field: &str| format!("adjusters.{}.{field}", place.code());
            within(&at("step_mm"), a.step_mm, 1e-6, 100.0, "above 0 and at most 100 mm")?;
            within(&at("up_steps"), f64::from(a.up_steps), 0.0, 10_000.0, "from 0 to 10000 steps")?;
            within(&at("down_steps"), f64::from(a.down_steps), 0.0, 10_000.0, "from 0 to 10000 steps")?;
        }
        self.pads.validate("pads")?;
        let count = self.rounds.len();
        if count == 0 || count > MOST_ROUNDS {
            let (at, value) = ("rounds".to_owned(), format!("{count} readings"));
            return Err(StaticsError::Value { at, value, must: "from 1 to 40 readings" });
        }
        for (i, round) in self.rounds.iter().enumerate() {
            let at = |field: &str| format!("rounds[{i}].{field}");
            let must = "from -20000 to 20000 steps";
            each_within(&at("turned_steps"), &round.turned_steps, -20_000.0, 20_000.0, must)?;
            check_loads(&at("loads_kg"), &round.loads_kg)?;
            each_within(&at("heights_mm"), &round.heights_mm, -1_000.0, 5_000.0, "from -1000 to 5000 mm")?;
        }
        Ok(())
    }
}
