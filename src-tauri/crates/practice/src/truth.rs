//! What is hidden: the car and the pads as they really are.

use crate::alignment::Geometry;
use crate::angle_bench::AngleBench;
use crate::bench::PracticeCar;
use crate::configuration::{Configuration, PracticeError};
use crate::data_sheet::PerAxle;
use crate::links::TrueLink;
use crate::pads::Pads;
use crate::rig::{PointMass, Rig, Standing};
use crate::settle::Rubs;
use bayhand_vehicle::{Corners, Place};

/// What no one at the bench can see.
#[derive(Clone, Debug)]
pub(crate) struct Truth {
    /// The car without ballast and fuel, links released, on level pads, collars as it came in.
    pub(crate) rig: Rig,
    /// Where ballast is strapped in; its mass is that of the configuration.
    pub(crate) seat: PointMass,
    /// Where fuel is; its mass is that of the configuration.
    pub(crate) tank: PointMass,
    pub(crate) links: PerAxle<TrueLink>,
    /// How the ready car stood when it came in.
    pub(crate) came: Standing,
    pub(crate) geometry: Geometry,
    /// Instruments of the alignment, and how true the rims are.
    pub(crate) angle_bench: AngleBench,
    pub(crate) pads: Pads,
    /// What rubs in struts and tyres.
    pub(crate) rubs: Rubs,
}

/// True values of a practice car, for tests and benchmarks that compare estimates with the truth. No one at the bench
/// sees them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TrueValues {
    /// Spring rate at the spring, N/mm.
    pub spring_n_per_mm: Corners<f64>,
    /// Motion ratio, spring travel / wheel travel.
    pub motion_ratio: Corners<f64>,
    /// Vertical rate of the tyre at its working pressure, N/mm.
    pub tyre_n_per_mm: Corners<f64>,
    /// Unsprung mass, kg.
    pub unsprung_kg: Corners<f64>,
    /// Stiffness of the body in torsion, Nm/deg; none: rigid.
    pub torsion_nm_per_deg: Option<f64>,
    /// Preload of each bar with its link as it came in, N at the left wheel, positive pressing it down, where the ready
    /// car came in.
    pub preload_n: PerAxle<f64>,
    /// Most that friction holds in each strut, N.
    pub friction_n: Corners<f64>,
    /// Height of each pad without shims, mm.
    pub level_mm: Corners<f64>,
    /// What each pad shows with nothing on it, kg, faults apart.
    pub zero_kg: Corners<f64>,
    /// What each pad shows too much for one kilogram, kg.
    pub gain_error: Corners<f64>,
    /// Tilt of the laser's plane in set-ups of even number, mm per m: rising forward, rising to the left.
    pub laser_tilt_mm_per_m: [f64; 2],
}

impl PracticeCar {
    /// The true values.
    pub fn truth(&self) -> TrueValues {
        let truth = &self.truth;
        let of = |value: fn(&crate::rig::Wheel) -> f64| Corners::from_fn(|p| value(&truth.rig.wheels[p.index()]));
        let preload = |link: &TrueLink, left: Place, right: Place| {
            let difference_mm = truth.came.struts_mm.at(right) - truth.came.struts_mm.at(left);
            link.n_per_mm * (difference_mm - link.rest_mm)
        };
        TrueValues {
            spring_n_per_mm: of(|w| w.strut.spring_n_per_m / 1e3),
            motion_ratio: of(|w| w.strut.motion_ratio),
            tyre_n_per_mm: of(|w| w.tyre_n_per_m / 1e3),
            unsprung_kg: of(|w| w.unsprung_kg),
            torsion_nm_per_deg: truth.rig.torsion_nm_per_rad.map(|t| t * std::f64::consts::PI / 180.0),
            preload_n: PerAxle {
                front: preload(&truth.links.front, Place::Fl, Place::Fr),
                rear: preload(&truth.links.rear, Place::Rl, Place::Rr),
            },
            friction_n: truth.rubs.strut_n,
            level_mm: truth.pads.level_mm,
            zero_kg: truth.pads.zero_kg,
            gain_error: truth.pads.gain_error,
            laser_tilt_mm_per_m: truth.pads.laser_tilt_mm_per_m,
        }
    }

    /// How the car would stand in this configuration if nothing rubbed, nothing were wrong with it and its pads lay
    /// level: what a reading that is corrected for the known heights of its pads estimates.
    ///
    /// # Errors
    /// As [`PracticeCar::look`].
    pub fn on_level_pads(&self, configuration: &Configuration) -> Result<Standing, PracticeError> {
        let mut sound = self.sound();
        sound.truth.pads.level_mm = Corners::same(0.0);
        sound.at_rest(&Configuration { shims_mm: Corners::same(0.0), ..*configuration }, 0)
    }
}
