//! The uncertainty of each figure of a reading, and where it comes from.

use super::gum::{Input, propagate};
use super::instruments::Instruments;
use super::sources::{Effect, Source, Spreads, effects};
use crate::error::{check_loads, within};
use crate::{COVERAGE, Figures, PadPlane, StaticsError, diagonal};
use bayhand_vehicle::{Car, Corners};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One of the figures that people speak of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Figure {
    /// Sum of the four loads, kg.
    TotalKg,
    /// Share of FL + FR, percent.
    FrontPct,
    /// Share of FL + RL, percent.
    LeftPct,
    /// Share of FR + RL, percent.
    CrossPct,
    /// FL - FR, kg.
    FrontDiffKg,
    /// RL - RR, kg.
    RearDiffKg,
}

impl Figure {
    /// All figures, in the order of [`Figures`].
    pub const ALL: [Figure; 6] =
        [Figure::TotalKg, Figure::FrontPct, Figure::LeftPct, Figure::CrossPct, Figure::FrontDiffKg, Figure::RearDiffKg];

    /// Its value of four loads.
    pub fn of(self, loads_kg: &Corners<f64>) -> f64 {
        let f = Figures::of(loads_kg);
        match self {
            Figure::TotalKg => f.total_kg,
            Figure::FrontPct => f.front_pct,
            Figure::LeftPct => f.left_pct,
            Figure::CrossPct => f.cross_pct,
            Figure::FrontDiffKg => f.front_diff_kg,
            Figure::RearDiffKg => f.rear_diff_kg,
        }
    }
}

/// A reading with everything that makes it uncertain.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Loads, averaged over looks and settles and corrected for the known heights of the pads, kg.
    pub loads_kg: Corners<f64>,
    looks: u32,
    settles: u32,
    effects: Vec<Effect>,
    /// Loads that a millimetre of twist of the pads at FL moves, kg.
    twist_kg_per_mm: Corners<f64>,
}

/// The uncertainty of one figure, in the unit of the figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Budget {
    /// The figure.
    pub value: f64,
    /// Combined standard uncertainty.
    pub standard: f64,
    /// Expanded uncertainty, [`COVERAGE`] times the standard one.
    pub expanded: f64,
    /// Effective degrees of freedom; see [`super::coverage_factor`] for few of them.
    pub dof: f64,
    /// What contributes, most first; sources that contribute nothing are absent.
    pub parts: Vec<Part>,
}

/// What one source contributes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// The source.
    pub source: Source,
    /// Standard uncertainty by it alone, in the unit of the figure.
    pub standard: f64,
    /// Its part of the variance, 0 to 1.
    pub share: f64,
}

/// What an uncertainty is wanted of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Of {
    /// The figure itself.
    Value,
    /// The change of the figure since another such reading of the job: twice what varies, nothing that is constant.
    Change,
}

impl Reading {
    /// A reading of these loads, the mean of `looks` looks at each of `settles` settles.
    ///
    /// # Errors
    /// A car, instruments or loads that cannot be; no look or no settle.
    pub fn of(
        car: &Car,
        instruments: &Instruments,
        loads_kg: &Corners<f64>,
        looks: u32,
        settles: u32,
    ) -> Result<Reading, StaticsError> {
        instruments.validate("instruments")?;
        check_loads("loads_kg", loads_kg)?;
        within("looks", f64::from(looks), 1.0, 1e6, "at least 1")?;
        within("settles", f64::from(settles), 1.0, 1e6, "at least 1")?;
        let effects = effects(car, instruments, loads_kg)?;
        // The pattern of twist 1 mm: it is at right angles to every plane, so it tilts nothing.
        let n = diagonal(car);
        let length: f64 = n.to_array().iter().map(|v| v * v).sum();
        let twist_kg_per_mm = PadPlane::of(car, &n.map(|v| v / length))?.loads_kg;
        Ok(Reading { loads_kg: *loads_kg, looks, settles, effects, twist_kg_per_mm })
    }

    /// The same loads read with other numbers of looks and settles.
    pub fn repeated(&self, looks: u32, settles: u32) -> Reading {
        Reading { looks: looks.max(1), settles: settles.max(1), ..self.clone() }
    }

    /// Change of a figure for a millimetre of twist of the pads at FL.
    pub fn per_mm_of_twist(&self, figure: Figure) -> f64 {
        let moved = |mm: f64| Corners::from_fn(|p| self.loads_kg.at(p) + mm * self.twist_kg_per_mm.at(p));
        figure.of(&moved(0.5)) - figure.of(&moved(-0.5))
    }

    /// Looks at each settle.
    pub fn looks(&self) -> u32 {
        self.looks
    }

    /// Settles.
    pub fn settles(&self) -> u32 {
        self.settles
    }

    /// Covariance of the four loads, kg²: of all sources, or without those that are constant over the job.
    pub fn covariance_kg2(&self, with_constant: bool) -> [[f64; 4]; 4] {
        let mut sum = [[0.0; 4]; 4];
        for e in self.effects.iter().filter(|e| with_constant || e.source.spreads() != Spreads::Constant) {
            let part = e.source.left_in_mean(self.looks, self.settles).powi(2);
            for (i, row) in sum.iter_mut().enumerate() {
                for (j, v) in row.iter_mut().enumerate() {
                    *v += part * e.loads_kg[i] * e.loads_kg[j];
                }
            }
        }
        sum
    }

    /// The uncertainty of a figure.
    pub fn budget(&self, figure: Figure) -> Budget {
        self.budget_of(|loads_kg| figure.of(loads_kg))
    }

    /// The uncertainty of the change of a figure since another such reading of the job. What is constant over the job
    /// drops out (of a calibration the part of the load that moved stays, which is of second order).
    pub fn budget_of_change(&self, figure: Figure) -> Budget {
        self.propagated(Of::Change, |loads_kg| figure.of(loads_kg))
    }

    /// The uncertainty of anything that follows from the four loads.
    pub fn budget_of(&self, equation: impl Fn(&Corners<f64>) -> f64) -> Budget {
        self.propagated(Of::Value, equation)
    }

    fn propagated(&self, of: Of, equation: impl Fn(&Corners<f64>) -> f64) -> Budget {
        let counts: Vec<&Effect> =
            self.effects.iter().filter(|e| of == Of::Value || e.source.spreads() != Spreads::Constant).collect();
        // Each independent input is zero with its own standard uncertainty, counted in units of it.
        let inputs: Vec<Input> = counts
            .iter()
            .map(|e| {
                let readings: f64 = if of == Of::Change { 2.0 } else { 1.0 };
                let standard = e.source.left_in_mean(self.looks, self.settles) * readings.sqrt();
                Input { value: 0.0, standard, dof: e.dof }
            })
            .collect();
        let result = propagate(
            |x| {
                let moved = |i: usize| counts.iter().zip(x).map(|(e, x)| e.loads_kg[i] * x).sum::<f64>();
                equation(&Corners::from_fn(|p| self.loads_kg.at(p) + moved(p.index())))
            },
            &inputs,
        );
        let mut parts: Vec<Part> = Vec::new();
        for (e, c) in counts.iter().zip(&result.contributions) {
            match parts.iter_mut().find(|p| p.source == e.source) {
                Some(part) => part.standard = part.standard.hypot(*c),
                None => parts.push(Part { source: e.source, standard: c.abs(), share: 0.0 }),
            }
        }
        let variance = result.standard * result.standard;
        // What is below a thousandth of a millionth of the whole is rounding of the arithmetic.
        parts.retain(|p| p.standard * p.standard > 1e-9 * variance);
        parts.iter_mut().for_each(|p| p.share = p.standard * p.standard / variance);
        parts.sort_by(|a, b| b.standard.total_cmp(&a.standard));
        Budget {
            value: result.value,
            standard: result.standard,
            expanded: COVERAGE * result.standard,
            dof: result.dof,
            parts,
        }
    }
}

impl Budget {
    /// Standard uncertainty by one source, in the unit of the figure; zero when it contributes nothing.
    pub fn by(&self, source: Source) -> f64 {
        self.parts.iter().find(|p| p.source == source).map_or(0.0, |p| p.standard)
    }
}
