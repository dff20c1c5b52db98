//! The figures that people speak of, from four loads.

use bayhand_vehicle::Corners;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The figures of four wheel loads, or the expanded uncertainties of these figures.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Figures {
    /// Sum of the four loads, kg.
    pub total_kg: f64,
    /// Share of FL + FR, percent of the total.
    pub front_pct: f64,
    /// Share of FL + RL, percent of the total.
    pub left_pct: f64,
    /// Cross weight: share of FR + RL, percent of the total.
    pub cross_pct: f64,
    /// FL - FR, kg.
    pub front_diff_kg: f64,
    /// RL - RR, kg.
    pub rear_diff_kg: f64,
}

impl Figures {
    /// The figures of four loads in kg. Without a load (total 0) the shares are 50 %: nothing leans to either side.
    pub fn of(loads_kg: &Corners<f64>) -> Figures {
        let Corners { fl, fr, rl, rr } = *loads_kg;
        let total_kg = fl + fr + rl + rr;
        let share = |part: f64| if total_kg > 0.0 { 100.0 * part / total_kg } else { 50.0 };
        Figures {
            total_kg,
            front_pct: share(fl + fr),
            left_pct: share(fl + rl),
            cross_pct: share(fr + rl),
            front_diff_kg: fl - fr,
            rear_diff_kg: rl - rr,
        }
    }

    /// How each figure changes with each load, in the order of the fields: per kg at FL, FR, RL, RR.
    /// A share changes by the load's own part less what the total takes: `(100 [in part] - share) / total`.
    pub fn gradients(loads_kg: &Corners<f64>) -> [[f64; 4]; 6] {
        let f = Figures::of(loads_kg);
        let share =
            |pct: f64, part: [bool; 4]| part.map(|inside| (if inside { 100.0 } else { 0.0 } - pct) / f.total_kg);
        [
            [1.0; 4],
            share(f.front_pct, [true, true, false, false]),
            share(f.left_pct, [true, false, true, false]),
            share(f.cross_pct, [false, true, true, false]),
            [1.0, -1.0, 0.0, 0.0],
            [0.0, 0.0, 1.0, -1.0],
        ]
    }

    /// From values in the order of the fields.
    pub fn from_array(v: [f64; 6]) -> Figures {
        let [total_kg, front_pct, left_pct, cross_pct, front_diff_kg, rear_diff_kg] = v;
        Figures { total_kg, front_pct, left_pct, cross_pct, front_diff_kg, rear_diff_kg }
    }
}
