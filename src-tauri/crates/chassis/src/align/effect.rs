//! What an adjuster does besides: entered, or learned from what the last change did.

use crate::StaticsError;
use crate::error::within;

/// Changes at one corner, or changes per unit of its adjuster, or the standard uncertainties of either.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Response {
    /// Toe, degrees.
    pub toe_deg: f64,
    /// Camber, degrees.
    pub camber_deg: f64,
    /// Caster, degrees.
    pub caster_deg: f64,
    /// Ride height over the wheel, mm.
    pub height_mm: f64,
    /// Load on the wheel, kg.
    pub load_kg: f64,
}

impl Response {
    /// From values in the order of the fields.
    fn from_fn(make: impl Fn(usize) -> f64) -> Response {
        Response { toe_deg: make(0), camber_deg: make(1), caster_deg: make(2), height_mm: make(3), load_kg: make(4) }
    }

    fn to_array(self) -> [f64; 5] {
        [self.toe_deg, self.camber_deg, self.caster_deg, self.height_mm, self.load_kg]
    }

    fn validate(&self, at: &str, least: f64) -> Result<(), StaticsError> {
        let fields = ["toe_deg", "camber_deg", "caster_deg", "height_mm", "load_kg"];
        for (field, value) in fields.into_iter().zip(self.to_array()) {
            let must = if least < 0.0 { "from -1000 to 1000" } else { "from 0 to 1000" };
            within(&format!("{at}.{field}"), value, least, 1_000.0, must)?;
        }
        Ok(())
    }
}

/// What is known of an adjuster: what one unit of it (a turn, a shim, a millimetre, a degree) does at its corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Learned {
    /// Per unit.
    pub per_unit: Response,
    /// Standard uncertainty of that. Nothing entered: zero per unit with a wide uncertainty.
    pub standard: Response,
}

impl Learned {
    /// What `units` of this adjuster are expected to do, and the standard uncertainty of it.
    pub fn expected(&self, units: f64) -> (Response, Response) {
        let (mean, standard) = (self.per_unit.to_array(), self.standard.to_array());
        (Response::from_fn(|i| units * mean[i]), Response::from_fn(|i| units.abs() * standard[i]))
    }

    /// What is known after `units` were seen to change things by `seen`, each known to `spread` (standard): a
    /// linear-Gaussian update of each effect by itself. What was known exactly stays.
    ///
    /// # Errors
    /// Values that are not numbers or beyond any adjuster; a negative uncertainty.
    pub fn after(&self, units: f64, seen: &Response, spread: &Response) -> Result<Learned, StaticsError> {
        let both = Learned::together(&[*self], &[units], seen, spread)?;
        Ok(both[0])
    }

    /// What is known of several adjusters of one wheel after all were moved at once, each by its `units`, and things were
    /// seen to change by `seen` in all, known to `spread` (standard): a linear-Gaussian update, in which the adjusters share
    /// what was seen by how little each was known. What they then know of each other is left out.
    ///
    /// # Errors
    /// As [`Learned::after`]; another number of units than of adjusters.
    pub fn together(
        all: &[Learned],
        units: &[f64],
        seen: &Response,
        spread: &Response,
    ) -> Result<Vec<Learned>, StaticsError> {
        within("units", units.len() as f64, all.len() as f64, all.len() as f64, "as many as adjusters")?;
        for (learned, units) in all.iter().zip(units) {
            within("units", *units, -1_000.0, 1_000.0, "from -1000 to 1000")?;
            learned.per_unit.validate("per_unit", -1_000.0)?;
            learned.standard.validate("standard", 0.0)?;
        }
        seen.validate("seen", -1_000.0)?;
        spread.validate("spread", 0.0)?;
        let (seen, spread) = (seen.to_array(), spread.to_array());
        let known = |learned: &Learned| (learned.per_unit.to_array(), learned.standard.to_array());
        let each = || all.iter().map(known).zip(units);
        let sum = |of: &dyn Fn(f64, f64, f64) -> f64, i: usize| -> f64 {
            each().map(|((mean, prior), units)| of(*units, mean[i], prior[i])).sum()
        };
        let missed: [f64; 5] = std::array::from_fn(|i| seen[i] - sum(&|units, mean, _| units * mean, i));
        let variance: [f64; 5] =
            std::array::from_fn(|i| sum(&|units, _, prior| (units * prior).powi(2), i) + spread[i].powi(2));
        let gain = |units: f64, prior: f64, i: usize| {
            if variance[i] > 0.0 { units * prior.powi(2) / variance[i] } else { 0.0 }
        };
        let learned = each().map(|((mean, prior), units)| Learned {
            per_unit: Response::from_fn(|i| mean[i] + gain(*units, prior[i], i) * missed[i]),
            // Rounding may leave a share of zero just below it.
            standard: Response::from_fn(|i| prior[i] * (1.0 - gain(*units, prior[i], i) * units).max(0.0).sqrt()),
        });
        Ok(learned.collect())
    }
}
