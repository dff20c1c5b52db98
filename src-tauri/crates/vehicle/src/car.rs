//! What statics needs to know of a car, and what such a car cannot be.

use crate::{Corners, Place, SprungLike};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// The sprung mass.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Sprung {
    /// Sprung mass, kg.
    pub mass_kg: f64,
    /// Its centre's distance behind the front axle, mm.
    pub cg_behind_front_axle_mm: f64,
    /// Its centre's distance left of the middle plane, mm (left positive, ISO 8855).
    pub cg_left_mm: f64,
    /// Its centre's height above the pad plane, mm.
    pub cg_height_mm: f64,
}

/// One corner.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Corner {
    /// Spring rate at the spring, N/mm. Absent: not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub spring_n_per_mm: Option<f64>,
    /// Motion ratio, spring travel / wheel travel. Absent: not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub motion_ratio: Option<f64>,
    /// Vertical rate of the tyre, N/mm.
    pub tyre_n_per_mm: f64,
    /// Unsprung mass of the corner, kg.
    pub unsprung_kg: f64,
    /// Radius of the unloaded tyre, mm.
    pub tyre_radius_mm: f64,
    /// mm at the wheel for one mm at the adjuster; absent: 1 / motion ratio (a spring seat).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub adjuster_ratio: Option<f64>,
    /// Wheel travel left to the bump stop, mm, in the reading that the car is used with; 0: the stop is touched.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bump_mm: Option<f64>,
    /// Wheel travel left to the droop limit, mm, in the reading that the car is used with; 0: the strut hangs on it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub droop_mm: Option<f64>,
    /// Rate of the bump stop along the line of the spring, N/mm; it acts beside the spring and through the same
    /// motion ratio. Absent: not known, and the stop is reported but adds no force.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bump_stop_n_per_mm: Option<f64>,
    /// Wheel travel left until the coils of the spring touch, mm, in the reading that the car is used with. Raising
    /// the collar under a spring uses it up as well.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub coil_bind_mm: Option<f64>,
}

/// A beam axle: both wheels on one rigid beam, so that the springs see heave and roll of the axle differently.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Beam {
    /// Distance between the springs across the car, mm. Over the track it is the ratio of the motion ratio in roll to
    /// that in heave, which the corners carry (about 1 with the springs on the beam).
    pub spring_base_mm: f64,
}

/// The axles that are beams; an absent one has its wheels sprung apart.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Beams {
    /// Front beam.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub front: Option<Beam>,
    /// Rear beam.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rear: Option<Beam>,
}

impl Beams {
    /// True when neither axle is a beam.
    pub fn is_empty(&self) -> bool {
        self.front.is_none() && self.rear.is_none()
    }
}

/// A point of the body whose height over the floor is measured instead of that over the wheel.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HeightPoint {
    /// Behind the front axle, mm; negative: before it.
    pub behind_front_axle_mm: f64,
    /// Left of the middle plane, mm.
    pub left_mm: f64,
}

/// A connected anti-roll bar.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Bar {
    /// Rate at the wheels, N/mm of travel difference.
    pub n_per_mm: f64,
    /// Force at the left wheel from preload, N, positive when it presses the left wheel down.
    pub preload_n: f64,
}

/// The connected bars; an absent one is released or not fitted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Bars {
    /// Front bar.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub front: Option<Bar>,
    /// Rear bar.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rear: Option<Bar>,
}

/// What statics needs to know of a car.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Car {
    /// Wheelbase, mm.
    pub wheelbase_mm: f64,
    /// Front track, mm.
    pub track_front_mm: f64,
    /// Rear track, mm.
    pub track_rear_mm: f64,
    /// Height of the roll axis at the mass centre above the pad plane, mm.
    pub roll_axis_height_mm: f64,
    /// The sprung mass.
    pub sprung: Sprung,
    /// Torsional stiffness of the body between the axles, Nm per degree; absent or null: rigid.
    #[serde(default)]
    pub torsion_nm_per_deg: Option<f64>,
    /// The corners.
    pub corners: Corners<Corner>,
    /// What is likely of springs that were not entered. Absent: any road or track car.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sprung_like: Option<SprungLike>,
    /// Connected anti-roll bars.
    #[serde(default)]
    pub bars: Bars,
    /// Axles that are beams.
    #[serde(default, skip_serializing_if = "Beams::is_empty")]
    pub beams: Beams,
    /// Where heights are measured, over the floor. Absent: straight above each wheel, over that wheel's own pad.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height_points: Option<Corners<HeightPoint>>,
}

/// What is wrong with a car: the field as JSON names it, its value, and what it can be.
#[derive(Clone, Debug, PartialEq, Error)]
#[error("{at} is {value}; it must be {must}")]
pub struct CarError {
    /// Path of the field, such as `corners.FL.spring_n_per_mm`.
    pub at: String,
    /// The value as given.
    pub value: String,
    /// What it must be.
    pub must: &'static str,
}

impl Car {
    /// Checks that such a car can be. Ranges are wide: they refuse what no wheeled car is, not what is unusual.
    ///
    /// # Errors
    /// The first field that cannot be, by its path.
    pub fn validate(&self) -> Result<(), CarError> {
        within("wheelbase_mm", self.wheelbase_mm, 500.0, 10_000.0, "from 500 to 10000 mm")?;
        within("track_front_mm", self.track_front_mm, 300.0, 4_000.0, "from 300 to 4000 mm")?;
        within("track_rear_mm", self.track_rear_mm, 300.0, 4_000.0, "from 300 to 4000 mm")?;
        within("roll_axis_height_mm", self.roll_axis_height_mm, -1_000.0, 2_000.0, "from -1000 to 2000 mm")?;
        let s = &self.sprung;
        within("sprung.mass_kg", s.mass_kg, 50.0, 10_000.0, "from 50 to 10000 kg")?;
        if !(s.cg_behind_front_axle_mm > 0.0 && s.cg_behind_front_axle_mm < self.wheelbase_mm) {
            return Err(error("sprung.cg_behind_front_axle_mm", s.cg_behind_front_axle_mm, "between the axles"));
        }
        let half_track = self.track_front_mm.min(self.track_rear_mm) / 2.0;
        if s.cg_left_mm.is_nan() || s.cg_left_mm.abs() >= half_track {
            return Err(error("sprung.cg_left_mm", s.cg_left_mm, "between the wheels"));
        }
        within("sprung.cg_height_mm", s.cg_height_mm, 50.0, 3_000.0, "from 50 to 3000 mm")?;
        if let Some(t) = self.torsion_nm_per_deg {
            within("torsion_nm_per_deg", t, 10.0, 1e7, "above 10 Nm per degree, or absent")?;
        }
        for (place, c) in self.corners.iter() {
            c.validate(place)?;
        }
        for (axle, bar) in [("front", self.bars.front), ("rear", self.bars.rear)] {
            if let Some(b) = bar {
                within(&format!("bars.{axle}.n_per_mm"), b.n_per_mm, 0.0, 1e4, "from 0 to 10000 N/mm")?;
                within(&format!("bars.{axle}.preload_n"), b.preload_n, -1e4, 1e4, "from -10000 to 10000 N")?;
            }
        }
        for (axle, beam) in [("front", self.beams.front), ("rear", self.beams.rear)] {
            if let Some(b) = beam {
                let at = format!("beams.{axle}.spring_base_mm");
                within(&at, b.spring_base_mm, 100.0, 4_000.0, "from 100 to 4000 mm")?;
            }
        }
        if let Some(points) = &self.height_points {
            for (place, p) in points.iter() {
                let at = |field: &str| format!("height_points.{}.{field}", place.code());
                within(&at("behind_front_axle_mm"), p.behind_front_axle_mm, -3e3, 13e3, "from -3000 to 13000 mm")?;
                within(&at("left_mm"), p.left_mm, -2e3, 2e3, "from -2000 to 2000 mm")?;
            }
        }
        Ok(())
    }
}

impl Corner {
    fn validate(&self, place: Place) -> Result<(), CarError> {
        let at = |field: &str| format!("corners.{}.{field}", place.code());
        if let Some(v) = self.spring_n_per_mm {
            within(&at("spring_n_per_mm"), v, 1.0, 5_000.0, "from 1 to 5000 N/mm")?;
        }
        if let Some(v) = self.motion_ratio {
            within(&at("motion_ratio"), v, 0.1, 3.0, "from 0.1 to 3 (spring travel / wheel travel)")?;
        }
        within(&at("tyre_n_per_mm"), self.tyre_n_per_mm, 20.0, 5_000.0, "from 20 to 5000 N/mm")?;
        within(&at("unsprung_kg"), self.unsprung_kg, 0.0, 1_000.0, "from 0 to 1000 kg")?;
        within(&at("tyre_radius_mm"), self.tyre_radius_mm, 50.0, 1_500.0, "from 50 to 1500 mm")?;
        if let Some(v) = self.adjuster_ratio {
            within(&at("adjuster_ratio"), v, 0.05, 20.0, "from 0.05 to 20")?;
        }
        if let Some(v) = self.bump_mm {
            within(&at("bump_mm"), v, 0.0, 500.0, "from 0 to 500 mm")?;
        }
        if let Some(v) = self.droop_mm {
            within(&at("droop_mm"), v, 0.0, 500.0, "from 0 to 500 mm")?;
        }
        if let Some(v) = self.bump_stop_n_per_mm {
            within(&at("bump_stop_n_per_mm"), v, 0.0, 1e5, "from 0 to 100000 N/mm")?;
        }
        if let Some(v) = self.coil_bind_mm {
            within(&at("coil_bind_mm"), v, 0.0, 500.0, "from 0 to 500 mm")?;
        }
        Ok(())
    }
}

fn within(at: &str, value: f64, least: f64, most: f64, must: &'static str) -> Result<(), CarError> {
    // A NaN is outside every range.
    if value >= least && value <= most { Ok(()) } else { Err(error(at, value, must)) }
}

fn error(at: &str, value: f64, must: &'static str) -> CarError {
    CarError { at: at.to_owned(), value: value.to_string(), must }
}
