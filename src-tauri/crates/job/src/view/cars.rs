//! The cars of the book, at the desk.

use super::review::JobRow;
use crate::handover::Table;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// The cars of the book, or those that a search found.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct CarsView {
    /// What to do first when there is none, or that nothing was found.
    pub says: Option<String>,
    /// The cars, the one that was here last first.
    pub cars: Vec<CarRow>,
}

/// A car in a line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct CarRow {
    /// Number of its first job, by which it is asked for.
    #[ts(type = "number")]
    pub id: i64,
    /// Its name.
    pub name: String,
    /// How often it was here, and how its newest job stands.
    pub says: String,
}

/// One car.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct CarView {
    /// Number of its first job.
    #[ts(type = "number")]
    pub id: i64,
    /// Its name.
    pub name: String,
    /// That it is a simulated one, and which.
    pub says: Option<String>,
    /// Its jobs, the newest first, with how they stand and who signed on.
    pub visits: Vec<JobRow>,
    /// What was learned of it.
    pub learned: Option<LearnedView>,
    /// What is said where nothing was learned.
    pub learned_none: String,
    /// When it was handed over last, or that it was not yet.
    pub left_says: String,
    /// How: loads, heights, angles, pressures.
    pub left: Vec<Table>,
}

/// What visits taught about a car.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct LearnedView {
    /// When it was learned, and how long that is ago.
    pub says: String,
    /// What one turn of each collar does at its own corner.
    pub collars: Vec<CollarRow>,
    /// Springs and ratios against what was entered or assumed.
    pub factors: Vec<FactorRow>,
    /// How much a settle moves.
    pub settle: String,
}

/// What one turn of a collar does at its own corner, with expanded uncertainties (k = 2).
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct CollarRow {
    /// The corner.
    pub corner: String,
    /// Travel of the collar for one turn.
    pub travel: String,
    /// Load that the corner gains.
    pub load: String,
    /// How far it rises.
    pub height: String,
}

/// A learned spring or ratio.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct FactorRow {
    /// Which, and where.
    pub name: String,
    /// How it stands to what was entered or assumed.
    pub text: String,
}
