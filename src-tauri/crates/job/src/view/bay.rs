//! The board across the bay. No customer field stands here.

use super::parts::{Footprint, HazardView, TimerView, TradeLine, TurnView};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// Everything that the bay window shows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct BayView {
    /// Revision of the job.
    #[ts(type = "number")]
    pub revision: u64,
    /// Stage and count: 'Read and adjust, round 2'.
    pub stage: String,
    /// 'CAR RAISED', when it is.
    pub raised: Option<String>,
    /// The instruction at the car, or what the bay is waiting for.
    pub instruction: String,
    /// What to turn, at a collar step.
    pub turn: Option<TurnView>,
    /// What to turn at the adjusters of the angles, where they are turned.
    pub adjusters: Vec<super::AdjusterView>,
    /// The trade line, when there is a reading and nothing is being turned.
    pub line: Option<TradeLine>,
    /// Footprints of the last reading.
    pub footprints: Vec<Footprint>,
    /// 'Last reading 11:26': a past reading is never shown as live. None: there is none.
    pub last_reading: Option<String>,
    /// The live hazard: of the step at hand.
    pub hazard: Option<HazardView>,
    /// Least height of a capital letter, mm, for the distance that the board is looked at from.
    pub capital_mm: f64,
    /// Diagonal of the board's screen, mm.
    pub diagonal_mm: f64,
    /// A running wait.
    pub timer: Option<TimerView>,
}
