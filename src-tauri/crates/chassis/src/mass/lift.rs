//! One axle raised: where the wheel centres go, and so what the load on the other axle says.
//!
//! Seen from the side, in axes fixed to the body, which is level before the lift: the grounded axle's wheel centre at
//! `(0, zs)`, the raised one's at `(L, zr)`, the mass centre at `(a, h)`; z from the level ground. The body turned by
//! the angle θ about a crosswise axis, `t = tan θ`, a load F at the raised wheels and the total m:
//!
//! ```text
//!   F (L - (zr - zs) t) = m (a - (h - zs) t)        moments about the grounded wheel centre, divided by cos θ
//!   y := F (L - (zr - zs) t) / m - (zs - rs) t      so that  y = a - (h - rs) t   exactly
//! ```
//!
//! With a locked suspension `zs = rs` and `zr = rr`, the loaded radii on level ground. With a free one the grounded
//! wheels go up into the body by what their springs give way, and the raised ones come down out of it; along the
//! body's vertical a spring carries `F cos θ`. Tyres change the angle that a lift in mm makes, not these levers: each
//! load acts straight below its wheel centre, for the wheels must be free to roll.
//!
//! Left out: that the unsprung mass stays behind when the body moves on its springs, and that fluids flow.

use crate::StaticsError;
use crate::error::within;
use bayhand_vehicle::{Axle, STANDARD_GRAVITY};

/// A rate for either axle, N/mm, both of its wheels together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AxleRates {
    /// Both front wheels.
    pub front_n_per_mm: f64,
    /// Both rear wheels.
    pub rear_n_per_mm: f64,
}

/// How the suspension was during the lift.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Suspension {
    /// Held where it stood on level ground, by rods or blocks.
    Locked,
    /// Free on its springs, with these rates at the wheels; it is taken to travel along the body's vertical.
    Free(AxleRates),
}

/// How high the axle was raised.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lift {
    /// Rotation of the body from level, degrees, 0 to 45: an inclinometer on the body, zeroed on level ground.
    BodyAngle {
        /// Degrees.
        deg: f64,
    },
    /// Rise of the level pads under the tyres of the raised axle, mm.
    PadRise {
        /// Millimetres.
        mm: f64,
    },
    /// Rise of the wheel centres of the raised axle above where they were on level ground, mm.
    CentreRise {
        /// Millimetres.
        mm: f64,
    },
}

/// On the way up or on the way down. Friction holds back on either way; both together cancel it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Going {
    /// On the way up.
    Up,
    /// On the way down.
    Down,
}

/// One step of the lift; a step on level ground has a lift of zero.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiftStep {
    /// How high.
    pub lift: Lift,
    /// Which way it was come from.
    pub going: Going,
    /// Load of the axle that stays on the ground, kg.
    pub grounded_kg: f64,
}

/// A whole lift of one axle. The wheels roll freely: brakes off, neutral; the raised axle is carried at its wheels.
#[derive(Clone, Debug, PartialEq)]
pub struct LiftTest {
    /// The axle that is raised.
    pub raised: Axle,
    /// Wheelbase, mm.
    pub wheelbase_mm: f64,
    /// Height of the front wheel centres on level ground, mm: the loaded radius.
    pub radius_front_mm: f64,
    /// Height of the rear wheel centres on level ground, mm.
    pub radius_rear_mm: f64,
    /// The whole car, kg.
    pub total_kg: f64,
    /// Locked or free.
    pub suspension: Suspension,
    /// Vertical rates of the tyres. They matter where the lift is given in mm.
    pub tyres: AxleRates,
    /// The steps, in any order, at least one of them on level ground.
    pub steps: Vec<LiftStep>,
}

impl Lift {
    /// True on level ground.
    pub fn is_level(self) -> bool {
        self.size() == 0.0
    }

    /// Degrees or millimetres.
    pub(super) fn size(self) -> f64 {
        match self {
            Lift::BodyAngle { deg } => deg,
            Lift::PadRise { mm } | Lift::CentreRise { mm } => mm,
        }
    }
}

impl LiftTest {
    /// The axle that stays on the ground.
    pub fn grounded(&self) -> Axle {
        match self.raised {
            Axle::Front => Axle::Rear,
            Axle::Rear => Axle::Front,
        }
    }

    /// Height of the wheel centres of an axle on level ground, mm.
    pub(super) fn radius_mm(&self, axle: Axle) -> f64 {
        match axle {
            Axle::Front => self.radius_front_mm,
            Axle::Rear => self.radius_rear_mm,
        }
    }

    /// Mean load of the grounded axle over the steps on level ground, kg; `None` without such a step.
    pub(super) fn level_kg(&self) -> Option<f64> {
        let level: Vec<f64> = self.steps.iter().filter(|s| s.lift.is_level()).map(|s| s.grounded_kg).collect();
        if level.is_empty() { None } else { Some(level.iter().sum::<f64>() / level.len() as f64) }
    }

    /// `(t, y)` of one step, as the module's head has them; y in mm.
    pub(super) fn point(&self, level_kg: f64, step: &LiftStep) -> Result<(f64, f64), StaticsError> {
        let (grounded_kg, raised_kg) = (step.grounded_kg, self.total_kg - step.grounded_kg);
        let (rs, rr) = (self.radius_mm(self.grounded()), self.radius_mm(self.raised));
        let mut angle = match step.lift {
            Lift::BodyAngle { deg } => deg.to_radians(),
            Lift::PadRise { .. } | Lift::CentreRise { .. } => 0.0,
        };
        // What the springs give way depends on the angle, and the angle of a lift in mm on them: each pass is ten
        // times closer or better, for a spring gives way by little of the wheelbase.
        for _ in 0..PASSES {
            let (zs, zr) = match self.suspension {
                Suspension::Locked => (rs, rr),
                Suspension::Free(rates) => {
                    let gives = |kg: f64, axle| kg * STANDARD_GRAVITY / rates.of(axle);
                    (
                        rs + gives(grounded_kg * angle.cos() - level_kg, self.grounded()),
                        rr + gives(raised_kg * angle.cos() - (self.total_kg - level_kg), self.raised),
                    )
                }
            };
            let next = self.angle(step, level_kg, zr - zs)?;
            if (next - angle).abs() < 1e-15 {
                angle = next;
                let t = angle.tan();
                let lever = self.wheelbase_mm - (zr - zs) * t;
                return Ok((t, raised_kg * lever / self.total_kg - (zs - rs) * t));
            }
            angle = next;
        }
        Err(no_angle(step.lift))
    }

    /// Angle of the body, rad, when the wheel centres of the raised axle stand `apart_mm` higher in the body than the
    /// grounded ones.
    fn angle(&self, step: &LiftStep, level_kg: f64, apart_mm: f64) -> Result<f64, StaticsError> {
        let squash = |more_kg: f64, axle| more_kg * STANDARD_GRAVITY / self.tyres.of(axle);
        let gained_kg = step.grounded_kg - level_kg;
        let grounded_mm = self.radius_mm(self.grounded()) - squash(gained_kg, self.grounded());
        let raised_mm = match step.lift {
            Lift::BodyAngle { deg } => return Ok(deg.to_radians()),
            Lift::PadRise { mm } => self.radius_mm(self.raised) + mm + squash(gained_kg, self.raised),
            Lift::CentreRise { mm } => self.radius_mm(self.raised) + mm,
        };
        let sine = (raised_mm - grounded_mm) / self.wheelbase_mm.hypot(apart_mm);
        if sine.abs() < 1.0 {
            Ok(sine.asin() - (apart_mm / self.wheelbase_mm).atan())
        } else {
            Err(no_angle(step.lift))
        }
    }

    /// Refuses what cannot be, by its field.
    pub(super) fn validate(&self) -> Result<(), StaticsError> {
        within("wheelbase_mm", self.wheelbase_mm, 500.0, 10_000.0, "from 500 to 10000 mm")?;
        within("radius_front_mm", self.radius_front_mm, 50.0, 1_500.0, "from 50 to 1500 mm")?;
        within("radius_rear_mm", self.radius_rear_mm, 50.0, 1_500.0, "from 50 to 1500 mm")?;
        within("total_kg", self.total_kg, 50.0, 20_000.0, "from 50 to 20000 kg")?;
        self.tyres.validate("tyres")?;
        if let Suspension::Free(rates) = self.suspension {
            rates.validate("suspension")?;
        }
        for (i, step) in self.steps.iter().enumerate() {
            let at = |field: &str| format!("steps[{i}].{field}");
            within(&at("grounded_kg"), step.grounded_kg, 0.0, self.total_kg, "from 0 to the total")?;
            match step.lift {
                Lift::BodyAngle { deg } => within(&at("lift.deg"), deg, 0.0, 45.0, "from 0 to 45 degrees")?,
                Lift::PadRise { mm } | Lift::CentreRise { mm } => {
                    within(&at("lift.mm"), mm, 0.0, self.wheelbase_mm * 0.7, "from 0 to 0.7 of the wheelbase")?;
                }
            }
        }
        Ok(())
    }
}

/// Most passes of the angle.
const PASSES: usize = 100;

/// A lift whose springs give way by so much that no angle is found.
fn no_angle(lift: Lift) -> StaticsError {
    StaticsError::Value {
        at: "steps.lift".to_owned(),
        value: lift.size().to_string(),
        must: "a lift that this wheelbase and these rates allow",
    }
}

impl AxleRates {
    /// The rate of an axle, N/mm.
    pub fn of(&self, axle: Axle) -> f64 {
        match axle {
            Axle::Front => self.front_n_per_mm,
            Axle::Rear => self.rear_n_per_mm,
        }
    }

    fn validate(&self, at: &str) -> Result<(), StaticsError> {
        for (field, rate) in [("front_n_per_mm", self.front_n_per_mm), ("rear_n_per_mm", self.rear_n_per_mm)] {
            within(&format!("{at}.{field}"), rate, 1.0, 20_000.0, "from 1 to 20000 N/mm for both wheels")?;
        }
        Ok(())
    }
}
