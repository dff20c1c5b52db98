//! A straight line through points by least squares, with what is known of it.

use crate::StaticsError;
use crate::error::within;

/// The line `y = intercept + slope x` through points, by ordinary least squares: all scatter is in y and alike.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Value at x = 0, in the unit of y.
    pub intercept: f64,
    /// Unit of y per unit of x.
    pub slope: f64,
    /// Standard deviation of the points about the line, with `dof` degrees of freedom, in the unit of y.
    pub scatter: f64,
    /// Standard uncertainty of the slope from that scatter.
    pub slope_standard: f64,
    /// Sum of the squared distances of x from its mean: the variance of the slope is that of a point over this.
    pub x_squares: f64,
    /// Share of the variance of y that the line explains, 0 to 1. It is 1 when y does not vary.
    pub r_squared: f64,
    /// Degrees of freedom: points less two.
    pub dof: usize,
}

impl Line {
    /// Fits points `(x, y)`.
    ///
    /// The points are centred first, so that the normal equations are diagonal (Draper & Smith, Applied Regression
    /// Analysis, 1.2; from memory), and sums carry their rounding along. The residuals are fitted once more, which
    /// takes out what rounding left in the first fit.
    ///
    /// # Errors
    /// Fewer than three points, a value that is not finite, or x that is everywhere the same.
    pub fn through(points: &[(f64, f64)]) -> Result<Line, StaticsError> {
        within("points", points.len() as f64, 3.0, 1e6, "at least 3 points")?;
        for (x, y) in points {
            within("points.x", *x, f64::MIN, f64::MAX, "a finite number")?;
            within("points.y", *y, f64::MIN, f64::MAX, "a finite number")?;
        }
        let n = points.len() as f64;
        let x_mean = sum(points.iter().map(|(x, _)| *x)) / n;
        let y_mean = sum(points.iter().map(|(_, y)| *y)) / n;
        let x_squares = sum(points.iter().map(|(x, _)| (x - x_mean).powi(2)));
        within("points.x", x_squares, f64::MIN_POSITIVE, f64::MAX, "at least two different values")?;
        let slope_of = |y: &dyn Fn(f64, f64) -> f64| {
            sum(points.iter().map(|&(px, py)| (px - x_mean) * y(px - x_mean, py))) / x_squares
        };
        let first = slope_of(&|_, py| py - y_mean);
        let slope = first + slope_of(&|dx, py| (py - y_mean) - first * dx);
        let left_over = |&(px, py): &(f64, f64)| (py - y_mean) - slope * (px - x_mean);
        let offset = sum(points.iter().map(left_over)) / n;
        let unexplained = sum(points.iter().map(|p| (left_over(p) - offset).powi(2)));
        let y_squares = sum(points.iter().map(|(_, y)| (y - y_mean).powi(2)));
        let dof = points.len() - 2;
        let scatter = (unexplained / dof.max(1) as f64).sqrt();
        Ok(Line {
            intercept: y_mean + offset - slope * x_mean,
            slope,
            scatter,
            slope_standard: scatter / x_squares.sqrt(),
            x_squares,
            r_squared: if y_squares > 0.0 { 1.0 - unexplained / y_squares } else { 1.0 },
            dof,
        })
    }
}

/// A sum that carries its rounding along (Neumaier's form of Kahan's).
fn sum(values: impl Iterator<Item = f64>) -> f64 {
    let (mut total, mut lost) = (0.0_f64, 0.0_f64);
    for v in values {
        let next = total + v;
        lost += if total.abs() >= v.abs() { (total - next) + v } else { (v - next) + total };
        total = next;
    }
    total + lost
}
