//! Angles with what is known of them, and the propagation of uncertainty through any function.

use crate::{COVERAGE, StaticsError, Verdict, judge};

/// An angle and its standard uncertainty, degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KnownAngle {
    /// The angle.
    pub deg: f64,
    /// Its standard uncertainty.
    pub standard_deg: f64,
}

impl KnownAngle {
    /// An angle that is known exactly.
    pub fn exact(deg: f64) -> KnownAngle {
        KnownAngle { deg, standard_deg: 0.0 }
    }

    /// Expanded uncertainty (k = 2), degrees.
    pub fn expanded_deg(&self) -> f64 {
        COVERAGE * self.standard_deg
    }

    /// Against a target and the half width of a window, degrees.
    pub fn against(&self, target_deg: f64, window_deg: f64) -> Verdict {
        judge(self.deg - target_deg, self.expanded_deg(), window_deg)
    }

    /// `a self + b other` of independent angles.
    pub(super) fn combined(&self, a: f64, other: &KnownAngle, b: f64) -> KnownAngle {
        KnownAngle {
            deg: a * self.deg + b * other.deg,
            standard_deg: (a * self.standard_deg).hypot(b * other.standard_deg),
        }
    }
}

/// A value that a result rests on, with its standard uncertainty, both in the value's own unit.
#[derive(Clone, Copy, Debug)]
pub(super) struct Input {
    pub value: f64,
    pub standard: f64,
}

/// What a function gives of independent inputs, and the covariance of it: law of propagation with numerical
/// sensitivities, `(f(x + u) - f(x - u)) / 2` (JCGM 100:2008, 5.1.3 note 2).
pub(super) fn propagate<const N: usize>(
    inputs: &[Input],
    f: impl Fn(&[f64]) -> Result<[f64; N], StaticsError>,
) -> Result<([f64; N], [[f64; N]; N]), StaticsError> {
    let mut values: Vec<f64> = inputs.iter().map(|i| i.value).collect();
    let result = f(&values)?;
    let mut covariance = [[0.0; N]; N];
    for (i, input) in inputs.iter().enumerate().filter(|(_, input)| input.standard > 0.0) {
        let mut moved = |by: f64| {
            values[i] = input.value + by;
            let moved = f(&values);
            values[i] = input.value;
            moved
        };
        let (more, less) = (moved(input.standard)?, moved(-input.standard)?);
        for (row, line) in covariance.iter_mut().enumerate() {
            for (column, cell) in line.iter_mut().enumerate() {
                *cell += (more[row] - less[row]) * (more[column] - less[column]) / 4.0;
            }
        }
    }
    Ok((result, covariance))
}

/// The angles of a result of [`propagate`] whose unit is the degree.
pub(super) fn angles<const N: usize>((deg, covariance): &([f64; N], [[f64; N]; N])) -> [KnownAngle; N] {
    std::array::from_fn(|i| KnownAngle { deg: deg[i], standard_deg: covariance[i][i].sqrt() })
}
