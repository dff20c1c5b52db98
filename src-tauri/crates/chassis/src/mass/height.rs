//! The height of the mass centre from a lift test, and how well it is known.

use super::lift::{AxleRates, Going, Lift, LiftStep, LiftTest, Suspension};
use crate::error::within;
use crate::regression::Line;
use crate::{COVERAGE, StaticsError};
use statrs::distribution::{ContinuousCDF, StudentsT};

/// Fewest different heights to which the axle is raised, on either way (ISO 10392:2011, 6.2).
const FEWEST_STEPS: usize = 3;

/// Standard uncertainties of what a lift test rests on; all of them are constant over the test except `look_kg`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct LiftSpread {
    /// One reading of the grounded axle, kg: looks and resolution. The scatter that is found is never taken to be
    /// less than this.
    pub look_kg: f64,
    /// Of the wheelbase, mm.
    pub wheelbase_mm: f64,
    /// Of either loaded radius, mm, independent.
    pub radius_mm: f64,
    /// Of the total, kg.
    pub total_kg: f64,
    /// Common error of every angle off level, degrees, where the lift is an angle.
    pub angle_deg: f64,
    /// Common error of every lift in mm.
    pub lift_mm: f64,
    /// Of each rate of springs and tyres that the result uses, as a fraction, independent.
    pub rate_fraction: f64,
}

/// What a contribution to the uncertainty of the height comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeightPart {
    /// The points about the line.
    Scatter,
    /// The wheelbase.
    Wheelbase,
    /// The loaded radii.
    Radii,
    /// The total.
    Total,
    /// The angles or lifts, by a common error.
    Lift,
    /// Rates of springs and tyres.
    Rates,
}

/// The height of the mass centre above level ground, with what is known of it.
#[derive(Clone, Debug, PartialEq)]
pub struct CentreHeight {
    /// Height, mm.
    pub height_mm: f64,
    /// Combined standard uncertainty, mm.
    pub standard_mm: f64,
    /// Effective degrees of freedom (Welch-Satterthwaite, JCGM 100:2008, G.4.1); infinite when the scatter is not
    /// what counts.
    pub dof: f64,
    /// Coverage factor for 95.45 % at these degrees of freedom (Student's t, JCGM 100:2008, G.3.2): at least 2.
    pub coverage: f64,
    /// Expanded uncertainty, mm: coverage × standard.
    pub expanded_mm: f64,
    /// What each part contributes, as a standard uncertainty in mm, greatest first.
    pub budget: Vec<(HeightPart, f64)>,
    /// The line `y = a - (h - rs) t` that was fitted.
    pub line: Line,
    /// Height from the way up less height from the way down, mm, level steps in both: friction. Far more than the
    /// expanded uncertainty says that the wheels did not roll or the suspension was not held.
    pub up_less_down_mm: f64,
}

/// The height of the mass centre from raising one axle to several heights, up and down again: regression of the axle
/// load against the tangent of the angle. Method of ISO 10392:2011, 6.2; the levers are exact for unequal radii and
/// for springs that give way.
///
/// # Errors
/// A value that cannot be; no step on level ground; fewer than three different lifts on the way up or down.
pub fn centre_height(test: &LiftTest, spread: &LiftSpread) -> Result<CentreHeight, StaticsError> {
    test.validate()?;
    spread.validate()?;
    for (going, way) in [(Going::Up, "steps up"), (Going::Down, "steps down")] {
        let mut lifts: Vec<f64> =
            test.steps.iter().filter(|s| s.going == going && !s.lift.is_level()).map(|s| s.lift.size()).collect();
        lifts.sort_by(f64::total_cmp);
        lifts.dedup();
        within(way, lifts.len() as f64, FEWEST_STEPS as f64, 1e6, "at least three different lifts")?;
    }
    let all = |_: &LiftStep| true;
    let line = fit(test, all)?;
    let height_mm = height_of(test, &line);
    let mut budget = budget(test, spread, height_mm)?;
    let stated_mm = spread.look_kg * test.wheelbase_mm / test.total_kg;
    let scatter_is_stated = stated_mm > line.scatter;
    let scatter_mm = stated_mm.max(line.scatter) / line.x_squares.sqrt();
    budget.push((HeightPart::Scatter, scatter_mm));
    budget.sort_by(|a, b| b.1.total_cmp(&a.1));
    let standard_mm = budget.iter().map(|(_, mm)| mm * mm).sum::<f64>().sqrt();
    let dof = if scatter_is_stated || scatter_mm == 0.0 {
        f64::INFINITY
    } else {
        line.dof as f64 * (standard_mm / scatter_mm).powi(4)
    };
    let coverage = coverage_factor(dof);
    let way = |going| fit(test, |s| s.going == going || s.lift.is_level()).map(|line| height_of(test, &line));
    Ok(CentreHeight {
        height_mm,
        standard_mm,
        dof,
        coverage,
        expanded_mm: coverage * standard_mm,
        budget,
        line,
        up_less_down_mm: way(Going::Up)? - way(Going::Down)?,
    })
}

/// The line through the steps for which `which` is true.
fn fit(test: &LiftTest, which: impl Fn(&LiftStep) -> bool) -> Result<Line, StaticsError> {
    let Some(level_kg) = test.level_kg() else {
        return Err(StaticsError::Value {
            at: "steps".to_owned(),
            value: "without one on level ground".to_owned(),
            must: "at least one step with a lift of zero",
        });
    };
    let points: Result<Vec<_>, _> = test.steps.iter().filter(|s| which(s)).map(|s| test.point(level_kg, s)).collect();
    Line::through(&points?)
}

/// From `slope = -(h - rs)`.
fn height_of(test: &LiftTest, line: &Line) -> f64 {
    test.radius_mm(test.grounded()) - line.slope
}

/// How far each input's standard uncertainty moves the height: numerical sensitivities, JCGM 100:2008, 5.1.3 note 2.
fn budget(test: &LiftTest, spread: &LiftSpread, height_mm: f64) -> Result<Vec<(HeightPart, f64)>, StaticsError> {
    let moved = |change: &dyn Fn(&mut LiftTest)| {
        let mut other = test.clone();
        change(&mut other);
        fit(&other, |_| true).map(|line| height_of(&other, &line) - height_mm)
    };
    let more = |rate: &mut f64| *rate *= 1.0 + spread.rate_fraction;
    let springs = |change: &dyn Fn(&mut AxleRates)| {
        moved(&|t| {
            if let Suspension::Free(rates) = &mut t.suspension {
                change(rates);
            }
        })
    };
    let raise = |t: &mut LiftTest| {
        for step in t.steps.iter_mut().filter(|s| !s.lift.is_level()) {
            match &mut step.lift {
                Lift::BodyAngle { deg } => *deg += spread.angle_deg,
                Lift::PadRise { mm } | Lift::CentreRise { mm } => *mm += spread.lift_mm,
            }
        }
    };
    let together = |parts: &[f64]| parts.iter().map(|mm| mm * mm).sum::<f64>().sqrt();
    Ok(vec![
        (HeightPart::Wheelbase, together(&[moved(&|t| t.wheelbase_mm += spread.wheelbase_mm)?])),
        (
            HeightPart::Radii,
            together(&[
                moved(&|t| t.radius_front_mm += spread.radius_mm)?,
                moved(&|t| t.radius_rear_mm += spread.radius_mm)?,
            ]),
        ),
        (HeightPart::Total, together(&[moved(&|t| t.total_kg += spread.total_kg)?])),
        (HeightPart::Lift, together(&[moved(&raise)?])),
        (
            HeightPart::Rates,
            together(&[
                springs(&|r| more(&mut r.front_n_per_mm))?,
                springs(&|r| more(&mut r.rear_n_per_mm))?,
                moved(&|t| more(&mut t.tyres.front_n_per_mm))?,
                moved(&|t| more(&mut t.tyres.rear_n_per_mm))?,
            ]),
        ),
    ])
}

/// Coverage factor for 95.45 %, from Student's t; 2 for many degrees of freedom.
fn coverage_factor(dof: f64) -> f64 {
    // Beyond this the two differ by less than 1e-5; a degree of freedom below one cannot come from three steps.
    if dof > 1e5 {
        return COVERAGE;
    }
    StudentsT::new(0.0, 1.0, dof).map_or(f64::INFINITY, |t| t.inverse_cdf((1.0 + 0.9545) / 2.0))
}

impl LiftSpread {
    fn validate(&self) -> Result<(), StaticsError> {
        for (field, value) in [
            ("look_kg", self.look_kg),
            ("wheelbase_mm", self.wheelbase_mm),
            ("radius_mm", self.radius_mm),
            ("total_kg", self.total_kg),
            ("lift_mm", self.lift_mm),
        ] {
            within(&format!("spread.{field}"), value, 0.0, 100.0, "from 0 to 100")?;
        }
        within("spread.angle_deg", self.angle_deg, 0.0, 5.0, "from 0 to 5 degrees")?;
        within("spread.rate_fraction", self.rate_fraction, 0.0, 0.9, "from 0 to 0.9")
    }
}

/// Height of the mass centre (mm) from one angle alone, suspension locked and equal radii: `r + L (F' - F) / (m t)`.
/// A quick look; [`centre_height`] says how well it is known.
///
/// # Errors
/// An angle outside 1 to 45 degrees, lengths or loads that cannot be.
pub fn mass_centre_height_mm(
    wheelbase_mm: f64,
    wheel_radius_mm: f64,
    total_kg: f64,
    front_level_kg: f64,
    front_raised_kg: f64,
    lift_angle_deg: f64,
) -> Result<f64, StaticsError> {
    within("wheelbase_mm", wheelbase_mm, 500.0, 10_000.0, "from 500 to 10000 mm")?;
    within("wheel_radius_mm", wheel_radius_mm, 50.0, 1_500.0, "from 50 to 1500 mm")?;
    within("total_kg", total_kg, 50.0, 20_000.0, "from 50 to 20000 kg")?;
    within("front_level_kg", front_level_kg, 0.0, total_kg, "from 0 to the total")?;
    within("front_raised_kg", front_raised_kg, 0.0, total_kg, "from 0 to the total")?;
    within("lift_angle_deg", lift_angle_deg, 1.0, 45.0, "from 1 to 45 degrees")?;
    let moved = (front_raised_kg - front_level_kg) / total_kg;
    Ok(wheel_radius_mm + moved * wheelbase_mm / lift_angle_deg.to_radians().tan())
}
