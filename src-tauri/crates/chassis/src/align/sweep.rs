//! Caster and steering-axis inclination from a sweep, exactly.
//!
//! Whatever is fixed to the wheel keeps its angle to the steering axis k while the wheel steers. In axes mirrored so
//! that the wheel's own side is the left, with `T = tan caster`, `S = tan inclination`, `k = (-T, -S, 1)`, heading φ
//! towards the own side and inclination g to the floor's normal, the spin axis is `n = (-cos g sin φ, cos g cos φ,
//! -sin g)`, and `k·n` is the same at every steer angle:
//!
//! ```text
//!   T cos g sin φ - S cos g cos φ - sin g = K          one equation for each reading across the wheel
//!   -T fx - S fy + fz = K'                             one for each reading along it, f the line that the gauge lies on
//! ```
//!
//! They are linear in T, S, K and K', so two readings give the caster where the inclination is known, three give both,
//! and more are fitted. For two readings at +d and -d this is `tan caster = tan(D/2)/sin d (1 - tan inclination cos d
//! tan m)`, D their difference and m their mean. Readings across the wheel alone know little of the inclination
//! (`1 - cos φ` is small); readings along it, brakes held, know it well.
//!
//! The axis is taken to stay where it is in the car, and the car where it is on the floor.

use super::gauge::FloorSlope;
use super::known::{Input, KnownAngle, angles, propagate};
use super::wheel::{GaugeCamber, Side};
use crate::StaticsError;
use crate::error::within;
use nalgebra::{DMatrix, DVector};

/// Least change of heading over a sweep, degrees.
const LEAST_SWEEP_DEG: f64 = 5.0;

/// One position of a sweep.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SweepReading {
    /// What the turn plate shows, degrees, growing as the wheel steers towards its own side.
    pub plate_deg: f64,
    /// What the gravity gauge across the wheel shows, degrees, positive when the top leans out.
    pub gauge_deg: f64,
    /// What a gauge along the wheel shows, degrees, positive when its front is up; the brakes must hold the wheel from
    /// the first reading to the last.
    pub along_deg: Option<f64>,
}

/// A sweep of one wheel.
#[derive(Clone, Debug, PartialEq)]
pub struct Sweep {
    /// The wheel's side.
    pub side: Side,
    /// What the turn plate shows with the steering straight ahead, degrees.
    pub straight_plate_deg: f64,
    /// Toe of the wheel with the steering straight ahead, degrees.
    pub toe_deg: f64,
    /// What the gauge across the wheel shows on a level place, degrees (see [`super::reversed`]).
    pub gauge_bias_deg: f64,
    /// The floor.
    pub floor: FloorSlope,
    /// Inclination of the axis, where it is known from elsewhere.
    pub inclination: Option<KnownAngle>,
    /// The positions.
    pub readings: Vec<SweepReading>,
}

/// Standard uncertainties of a sweep, degrees.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SweepSpread {
    /// One reading of a gauge, across or along.
    pub gauge_deg: f64,
    /// One reading of the turn plate, the one straight ahead included.
    pub plate_deg: f64,
    /// Scale of the turn plate: a common error of all its angles, as a fraction.
    pub plate_fraction: f64,
    /// The bias of the gauge across, common to all readings.
    pub bias_deg: f64,
    /// The toe.
    pub toe_deg: f64,
    /// Either slope of the floor.
    pub floor_deg: f64,
}

/// The usual closed form, as a cross-check.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Usual {
    /// `1 / (sin φ1 - sin φ2)` of the outermost readings; `1 / (2 sin d)` for equal angles.
    pub factor: f64,
    /// Caster by this factor times the difference of the readings, degrees.
    pub caster_deg: f64,
    /// How far it is from the exact one, degrees.
    pub error_deg: f64,
}

/// What a sweep says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Swept {
    /// Caster.
    pub caster: KnownAngle,
    /// Steering-axis inclination: found, or as it was given.
    pub inclination: KnownAngle,
    /// The usual closed form beside it.
    pub usual: Usual,
}

/// Caster (degrees) from the gauge readings at a change of heading of ±d from straight ahead, wheel without toe; the
/// module's head has the formula. `out`: the wheel steered towards its own side.
///
/// # Errors
/// An angle outside 5 to 60 degrees, readings or an inclination beyond 60 degrees.
pub fn caster_of_symmetric_sweep_deg(
    angle_deg: f64,
    camber_out_deg: f64,
    camber_in_deg: f64,
    inclination_deg: f64,
) -> Result<f64, StaticsError> {
    within("angle_deg", angle_deg, LEAST_SWEEP_DEG, 60.0, "from 5 to 60 degrees")?;
    within("camber_out_deg", camber_out_deg, -60.0, 60.0, "from -60 to 60 degrees")?;
    within("camber_in_deg", camber_in_deg, -60.0, 60.0, "from -60 to 60 degrees")?;
    within("inclination_deg", inclination_deg, -60.0, 60.0, "from -60 to 60 degrees")?;
    let d = angle_deg.to_radians();
    let half = (camber_out_deg - camber_in_deg).to_radians() / 2.0;
    let mean = (camber_out_deg + camber_in_deg).to_radians() / 2.0;
    let tan = half.tan() / d.sin() * (1.0 - inclination_deg.to_radians().tan() * d.cos() * mean.tan());
    Ok(tan.atan().to_degrees())
}

impl Sweep {
    /// Caster and inclination with their uncertainty.
    ///
    /// # Errors
    /// Values that cannot be; too few readings: two across the wheel and the inclination, or two across and two along,
    /// or three across; a sweep of less than 5 degrees.
    pub fn solve(&self, spread: &SweepSpread) -> Result<Swept, StaticsError> {
        self.validate()?;
        spread.validate()?;
        let mut inputs = Vec::new();
        for r in &self.readings {
            inputs.push(Input { value: r.plate_deg, standard: spread.plate_deg });
            inputs.push(Input { value: r.gauge_deg, standard: spread.gauge_deg });
            // A reading that was not taken stays out of the equations.
            let along = r.along_deg.map_or(0.0, |_| spread.gauge_deg);
            inputs.push(Input { value: r.along_deg.unwrap_or(0.0), standard: along });
        }
        let inclination = self.inclination.unwrap_or(KnownAngle::exact(0.0));
        inputs.push(Input { value: self.straight_plate_deg, standard: spread.plate_deg });
        inputs.push(Input { value: 1.0, standard: spread.plate_fraction });
        inputs.push(Input { value: self.gauge_bias_deg, standard: spread.bias_deg });
        inputs.push(Input { value: self.toe_deg, standard: spread.toe_deg });
        inputs.push(Input { value: self.floor.rise_forward_deg, standard: spread.floor_deg });
        inputs.push(Input { value: self.floor.rise_left_deg, standard: spread.floor_deg });
        inputs.push(Input { value: inclination.deg, standard: inclination.standard_deg });
        let [caster, inclination] = angles(&propagate(&inputs, |values| {
            let (sweep, scale) = self.with(values);
            sweep.axis_deg(scale)
        })?);
        Ok(Swept { caster, inclination, usual: self.usual(caster.deg)? })
    }

    /// The same sweep with other values, in the order of [`Sweep::solve`]; also the scale of the turn plate.
    fn with(&self, values: &[f64]) -> (Sweep, f64) {
        let (readings, rest) = values.split_at(3 * self.readings.len());
        let readings = readings
            .chunks_exact(3)
            .zip(&self.readings)
            .map(|(v, old)| SweepReading { plate_deg: v[0], gauge_deg: v[1], along_deg: old.along_deg.map(|_| v[2]) })
            .collect();
        let sweep = Sweep {
            side: self.side,
            straight_plate_deg: rest[0],
            toe_deg: rest[3],
            gauge_bias_deg: rest[2],
            floor: FloorSlope { rise_forward_deg: rest[4], rise_left_deg: rest[5] },
            inclination: self.inclination.map(|_| KnownAngle::exact(rest[6])),
            readings,
        };
        (sweep, rest[1])
    }

    /// Heading towards the own side (rad), and inclination to the floor (rad) of one position.
    fn stands(&self, reading: &SweepReading, scale: f64) -> Result<(f64, f64), StaticsError> {
        // Toe-in points away from the wheel's own side.
        let heading_deg = scale * (reading.plate_deg - self.straight_plate_deg) - self.toe_deg;
        let shown = GaugeCamber { deg: reading.gauge_deg - self.gauge_bias_deg };
        let lean = self.floor.taken_out(self.side, self.side.sign() * heading_deg, shown)?;
        Ok((heading_deg.to_radians(), lean.deg.to_radians()))
    }

    /// Caster and inclination, degrees: the equations of the module's head, by least squares.
    fn axis_deg(&self, scale: f64) -> Result<[f64; 2], StaticsError> {
        let known = self.inclination.map(|i| i.deg.to_radians().tan());
        let mut rows: Vec<([f64; 4], f64)> = Vec::new();
        for reading in &self.readings {
            let (heading, lean) = self.stands(reading, scale)?;
            let (forward, across) = (lean.cos() * heading.sin(), -lean.cos() * heading.cos());
            rows.push(([forward, across, -1.0, 0.0], lean.sin()));
            if let Some(shown_deg) = reading.along_deg {
                let lean_deg = GaugeCamber { deg: lean.to_degrees() };
                let heading_deg = self.side.sign() * heading.to_degrees();
                let up = self.floor.taken_out_along(self.side, heading_deg, lean_deg, shown_deg)?.to_radians();
                // f = h cos q + w sin q, h forward in the floor and w = h × n.
                let [fx, fy, fz] = [
                    heading.cos() * up.cos() - heading.sin() * lean.sin() * up.sin(),
                    heading.sin() * up.cos() + heading.cos() * lean.sin() * up.sin(),
                    lean.cos() * up.sin(),
                ];
                rows.push(([-fx, -fy, 0.0, -1.0], -fz));
            }
        }
        // A known inclination goes to the right; without a reading along the wheel there is no K'.
        let with_along = self.readings.iter().any(|r| r.along_deg.is_some());
        let columns: Vec<usize> = (0..4).filter(|&c| (c != 1 || known.is_none()) && (c != 3 || with_along)).collect();
        let left = DMatrix::from_fn(rows.len(), columns.len(), |r, c| rows[r].0[columns[c]]);
        let right = DVector::from_fn(rows.len(), |r, _| rows[r].1 - known.map_or(0.0, |s| s * rows[r].0[1]));
        let found = left.svd(true, true).solve(&right, f64::EPSILON).map_err(|_| too_few(self.readings.len()))?;
        let inclination = known.unwrap_or_else(|| found[1]);
        Ok([found[0].atan().to_degrees(), inclination.atan().to_degrees()])
    }

    /// The usual closed form of the outermost readings.
    fn usual(&self, exact_deg: f64) -> Result<Usual, StaticsError> {
        let outermost = |better: fn(f64, f64) -> bool| {
            let first = self.readings[0];
            self.readings.iter().fold(first, |best, r| if better(r.plate_deg, best.plate_deg) { *r } else { best })
        };
        let (out, inward) = (outermost(|a, b| a > b), outermost(|a, b| a < b));
        let ((phi_out, g_out), (phi_in, g_in)) = (self.stands(&out, 1.0)?, self.stands(&inward, 1.0)?);
        let factor = 1.0 / (phi_out.sin() - phi_in.sin());
        let caster_deg = factor * (g_out - g_in).to_degrees();
        Ok(Usual { factor, caster_deg, error_deg: caster_deg - exact_deg })
    }

    fn validate(&self) -> Result<(), StaticsError> {
        within("straight_plate_deg", self.straight_plate_deg, -180.0, 180.0, "from -180 to 180 degrees")?;
        within("toe_deg", self.toe_deg, -15.0, 15.0, "from -15 to 15 degrees")?;
        within("gauge_bias_deg", self.gauge_bias_deg, -10.0, 10.0, "from -10 to 10 degrees")?;
        if let Some(known) = self.inclination {
            within("inclination.deg", known.deg, -45.0, 45.0, "from -45 to 45 degrees")?;
            within("inclination.standard_deg", known.standard_deg, 0.0, 10.0, "from 0 to 10 degrees")?;
        }
        let along = self.readings.iter().filter(|r| r.along_deg.is_some()).count();
        let enough = match (self.readings.len(), self.inclination, along) {
            (0 | 1, _, _) => false,
            (2, None, along) => along == 2,
            (_, _, along) => along != 1,
        };
        if !enough {
            return Err(too_few(self.readings.len()));
        }
        let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
        for (i, r) in self.readings.iter().enumerate() {
            let at = |field: &str| format!("readings[{i}].{field}");
            let turned = r.plate_deg - self.straight_plate_deg;
            within(&at("plate_deg"), turned, -60.0, 60.0, "at most 60 degrees from straight ahead")?;
            within(&at("gauge_deg"), r.gauge_deg, -45.0, 45.0, "from -45 to 45 degrees")?;
            within(&at("along_deg"), r.along_deg.unwrap_or(0.0), -45.0, 45.0, "from -45 to 45 degrees")?;
            (least, most) = (least.min(turned), most.max(turned));
        }
        within("readings.plate_deg", most - least, LEAST_SWEEP_DEG, 120.0, "a sweep of at least 5 degrees")
    }
}

impl SweepSpread {
    fn validate(&self) -> Result<(), StaticsError> {
        for (field, value) in [
            ("gauge_deg", self.gauge_deg),
            ("plate_deg", self.plate_deg),
            ("bias_deg", self.bias_deg),
            ("toe_deg", self.toe_deg),
            ("floor_deg", self.floor_deg),
        ] {
            within(&format!("spread.{field}"), value, 0.0, 5.0, "from 0 to 5 degrees")?;
        }
        within("spread.plate_fraction", self.plate_fraction, 0.0, 0.5, "from 0 to 0.5")
    }
}

fn too_few(readings: usize) -> StaticsError {
    StaticsError::Value {
        at: "readings".to_owned(),
        value: format!("{readings} readings"),
        must: "two across the wheel with the inclination known, or with two along it, or three across",
    }
}
