//! The trade line: all that collars can do to the loads of a car on level pads.

use crate::error::{check_loads, within};
use crate::{Figures, StaticsError, diagonal};
use bayhand_vehicle::{Car, Corners};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A named place on the trade line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Mark {
    /// FL and FR carry the same.
    FrontEven,
    /// The cross weight is the one that is wanted.
    CrossWanted,
    /// RL and RR carry the same.
    RearEven,
    /// The left side's share of either axle is the same.
    SameLeftShare,
}

/// A place on the trade line.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TradePoint {
    /// What is special about it.
    pub mark: Mark,
    /// Load moved from now along the diagonal pattern, kg at FL.
    pub along_kg: f64,
    /// The four loads there, kg.
    pub loads_kg: Corners<f64>,
    /// Their figures.
    pub figures: Figures,
}

/// The named places on the line `loads + a n` (n: [`diagonal`]), in the order along it.
///
/// Total and front share stay. One number is left, so front even, cross wanted and rear even fall together only when
/// the left share is one half.
///
/// # Errors
/// A car that cannot be, loads outside 0 to 5000 kg, a wanted cross weight outside 0 to 100 %.
pub fn trade_line(car: &Car, loads_kg: &Corners<f64>, cross_wanted_pct: f64) -> Result<Vec<TradePoint>, StaticsError> {
    car.validate()?;
    check_loads("loads_kg", loads_kg)?;
    within("cross_wanted_pct", cross_wanted_pct, 0.0, 100.0, "from 0 to 100 %")?;
    let n = diagonal(car);
    let now = Figures::of(loads_kg);
    let (front, rear) = (loads_kg.fl + loads_kg.fr, loads_kg.rl + loads_kg.rr);
    // Along the line FL gains a, FR loses a, RL loses t a and RR gains t a.
    let t = n.rr;
    let places = [
        (Mark::FrontEven, -now.front_diff_kg / 2.0),
        (Mark::CrossWanted, (now.cross_pct - cross_wanted_pct) / 100.0 * now.total_kg / (1.0 + t)),
        (Mark::RearEven, now.rear_diff_kg / (2.0 * t)),
        (Mark::SameLeftShare, (loads_kg.rl / rear - loads_kg.fl / front) / (1.0 / front + t / rear)),
    ];
    let mut line: Vec<TradePoint> = places
        .into_iter()
        .map(|(mark, along_kg)| {
            let there = Corners::from_fn(|p| loads_kg.at(p) + along_kg * n.at(p));
            TradePoint { mark, along_kg, loads_kg: there, figures: Figures::of(&there) }
        })
        .collect();
    line.sort_by(|a, b| a.along_kg.total_cmp(&b.along_kg));
    Ok(line)
}
