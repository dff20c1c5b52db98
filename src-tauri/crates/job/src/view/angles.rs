//! The angles of the wheels: each as a sliver between where it is and where it is wanted.

use super::parts::{CornerCode, VerdictCode};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// One angle of one wheel.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct AngleView {
    /// Code: `toe.FL`, `camber.RR`, `caster.FL`.
    pub id: String,
    /// The corner.
    pub corner: CornerCode,
    /// Its name: 'Camber, front left'.
    pub name: String,
    /// As it is, with its uncertainty.
    pub value: String,
    /// What is wanted, with its window.
    pub wanted: String,
    /// How far and which way it has to go: '0.42° top out'.
    pub to_go: String,
    /// The verdict.
    pub verdict: VerdictCode,
    /// In words.
    pub verdict_word: String,
    /// How far it is from what is wanted, as drawn: degrees on the screen, positive upwards.
    pub off: f64,
    /// Half the window, as drawn.
    pub window: f64,
    /// Its uncertainty, as drawn.
    pub band: f64,
}

/// The angles at a step that judges them.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct AnglesView {
    /// Rear before front, caster, camber, toe.
    pub rows: Vec<AngleView>,
    /// How much larger than they are the differences are drawn, in words.
    pub scale: String,
    /// What follows from them: thrust, steering wheel, loads, what a change of height has moved.
    pub notes: Vec<String>,
}

/// What to turn at one adjuster.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct AdjusterView {
    /// Code: `toe.FL`.
    pub id: String,
    /// Its name: 'Camber, rear left'.
    pub name: String,
    /// What to do: '1 and a quarter turns, top out (+1.25)'.
    pub does: String,
    /// The same in a table: '+1.25 turns, top out'.
    pub short: String,
    /// The same aloud, with the adjuster's name.
    pub said: String,
    /// How far the angle has to go, and what is expected to be left.
    pub left: String,
    /// What one turn of it does to the angles of its wheel.
    pub besides: String,
    /// True when it is left as it is.
    pub still: bool,
}
