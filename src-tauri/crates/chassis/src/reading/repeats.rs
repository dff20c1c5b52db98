//! What a car's own readings say of their spread (type A evaluation, JCGM 100:2008, 4.2).

use crate::StaticsError;
use crate::error::{check_loads, within};
use bayhand_vehicle::{Car, Corners};

/// Spread of looks and settles, found from repeated readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Repeats {
    /// A look at one pad, one sigma, kg: pooled over pads and settles.
    pub look_kg: f64,
    /// Its degrees of freedom.
    pub look_dof: u32,
    /// What friction moves at each settle along the diagonal pattern, one sigma, kg at FL; the part of the looks is
    /// taken out. Zero when the looks alone explain the differences.
    pub settle_kg: f64,
    /// Its degrees of freedom.
    pub settle_dof: u32,
}

/// Finds the spread of looks and settles: for each settle its looks, each with four loads (kg). Nothing may have been
/// changed in between.
///
/// The looks of one settle differ by looking alone. The means of settles differ by friction, which can only move load
/// along the pattern `n`; so each mean `F` is taken as the number `n'F / n'n` along it, whose variance is
/// `settle² + look² / (looks · n'n)`.
///
/// # Errors
/// Fewer than two settles, a settle with fewer than two looks, loads that cannot be.
pub fn repeats(car: &Car, settles: &[Vec<Corners<f64>>]) -> Result<Repeats, StaticsError> {
    car.validate()?;
    within("settles", settles.len() as f64, 2.0, 1e4, "at least 2 settles")?;
    let n = crate::diagonal(car).to_array();
    let length: f64 = n.iter().map(|v| v * v).sum();
    let (mut squares, mut look_dof) = (0.0, 0_u32);
    let mut along = Vec::new();
    let mut part_of_looks = 0.0;
    for (s, looks) in settles.iter().enumerate() {
        within(&format!("settles[{s}]"), looks.len() as f64, 2.0, 1e4, "at least 2 looks")?;
        looks.iter().enumerate().try_for_each(|(l, loads)| check_loads(&format!("settles[{s}][{l}]"), loads))?;
        let count = looks.len() as f64;
        let mean: [f64; 4] = std::array::from_fn(|i| looks.iter().map(|l| l.to_array()[i]).sum::<f64>() / count);
        for loads in looks {
            squares += loads.to_array().iter().zip(mean).map(|(v, m)| (v - m).powi(2)).sum::<f64>();
        }
        look_dof += 4 * (looks.len() as u32 - 1);
        along.push(mean.iter().zip(n).map(|(m, n)| m * n).sum::<f64>() / length);
        part_of_looks += 1.0 / (count * length);
    }
    let look_variance = squares / f64::from(look_dof);
    part_of_looks *= look_variance / along.len() as f64;
    let count = along.len() as f64;
    let mean = along.iter().sum::<f64>() / count;
    let between = along.iter().map(|a| (a - mean).powi(2)).sum::<f64>() / (count - 1.0);
    Ok(Repeats {
        look_kg: look_variance.sqrt(),
        look_dof,
        settle_kg: (between - part_of_looks).max(0.0).sqrt(),
        settle_dof: along.len() as u32 - 1,
    })
}
