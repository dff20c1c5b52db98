//! What a set of readings says of the car: figures with uncertainty, and how they stand to what was agreed.

use crate::{
    known::{Known, axle_of},
    reading::ReadingSet,
};
use bayhand_chassis::{Figures, Pads, Spread, StaticsError, Verdict, diagonal, expanded_figures, judge};
use bayhand_vehicle::{Bars, Beams, Car, Corner, Corners, Place, Sprung};
use thiserror::Error;

/// Why nothing can be said.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum JudgeError {
    /// Something was not entered yet.
    #[error("{0} is not known yet")]
    NotKnown(&'static str),
    /// The car as entered cannot be.
    #[error(transparent)]
    Statics(#[from] StaticsError),
}

/// A set of readings, judged.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged {
    /// The readings.
    pub set: ReadingSet,
    /// The car, with the masses that the readings give.
    pub car: Car,
    /// What is known of the pads.
    pub pads: Pads,
    /// Mean loads, kg.
    pub loads_kg: Corners<f64>,
    /// Their expanded uncertainty (k = 2), kg.
    pub u_loads_kg: Corners<f64>,
    /// Mean heights, mm.
    pub heights_mm: Corners<f64>,
    /// Expanded uncertainty (k = 2) of a height, mm.
    pub u_height_mm: f64,
    /// The figures.
    pub figures: Figures,
    /// Their expanded uncertainties (k = 2).
    pub u: Figures,
}

/// What was agreed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wishes {
    /// Cross weight wanted, %, on FR and RL.
    pub cross_pct: f64,
    /// Half width of its window, %.
    pub cross_window_pct: f64,
    /// Half width of the window of a difference left minus right, kg.
    pub axle_window_kg: f64,
    /// Agreed heights, mm.
    pub heights_mm: Corners<f64>,
    /// Half width of a height's window, mm.
    pub height_window_mm: f64,
    /// Most difference of heights side to side against the agreed one, mm.
    pub side_limit_mm: f64,
    /// Which wish comes first.
    pub first: First,
}

/// Which wish comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum First {
    /// The cross weight: the same feel left and right.
    Cross,
    /// The front axle even: braking.
    Front,
    /// The rear axle even: traction of a car driven there.
    Rear,
}

/// One figure against what was agreed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Against {
    /// The figure.
    pub value: f64,
    /// Its expanded uncertainty (k = 2).
    pub u: f64,
    /// Target and half width of the window; none: it is only told.
    pub wanted: Option<(f64, f64)>,
}

impl Against {
    /// Inside, outside or cannot tell; none where nothing was agreed.
    pub fn verdict(&self) -> Option<Verdict> {
        self.wanted.map(|(target, window)| judge(self.value - target, self.u, window))
    }
}

/// Assumed repeatability of a settle before anything was read, kg at FL, one sigma (1 to 3 kg a corner over settles is
/// common practice with sticky struts; half a kilogram for a car in good order).
const SETTLE_PRIOR_KG: f64 = 0.5;
/// How many observed settles the assumption weighs as much as.
const SETTLE_PRIOR_WEIGHT: f64 = 2.0;
/// Repeatability of a look at a resting car, kg, one sigma (0.1 to 0.2 kg, common practice).
const LOOK_KG: f64 = 0.1;
/// Repeatability of a height read with a gauge, mm, one sigma (common practice).
const HEIGHT_GAUGE_MM: f64 = 0.3;

impl Known<'_> {
    /// What was agreed; none before intake.
    pub fn wishes(&self) -> Option<Wishes> {
        let wish = |key| self.value("intake.wishes", key);
        Some(Wishes {
            cross_pct: wish("cross-target")?,
            cross_window_pct: wish("cross-window")?,
            axle_window_kg: wish("axle-window")?,
            heights_mm: self.corners("intake.heights", "agreed-height")?,
            height_window_mm: wish("height-window")?,
            side_limit_mm: wish("side-limit")?,
            first: match self.text("intake.wishes", "first")? {
                "front-first" => First::Front,
                "rear-first" => First::Rear,
                _ => First::Cross,
            },
        })
    }

    /// The car as entered, with its masses from four loads.
    ///
    /// # Errors
    /// What is not known yet.
    pub fn car(&self, loads_kg: &Corners<f64>) -> Result<Car, JudgeError> {
        let axles = |step, key, what| self.axles(step, key).ok_or(JudgeError::NotKnown(what));
        let once = |key, what| self.value("intake.car", key).ok_or(JudgeError::NotKnown(what));
        let springs = "intake.springs";
        let spring = axles(springs, "spring", "the spring rate")?;
        let ratio = axles(springs, "motion-ratio", "the motion ratio")?;
        let tyre = axles(springs, "tyre", "the tyre rate")?;
        let unsprung = axles(springs, "unsprung", "the unsprung mass")?;
        let radius = axles(springs, "tyre-radius", "the tyre radius")?;
        let (track_front_mm, track_rear_mm) = axles("intake.car", "track", "the track")?;
        let wheelbase_mm = once("wheelbase", "the wheelbase")?;
        let corner = |p| Corner {
            spring_n_per_mm: Some(axle_of(p, spring.0, spring.1)),
            motion_ratio: Some(axle_of(p, ratio.0, ratio.1)),
            tyre_n_per_mm: axle_of(p, tyre.0, tyre.1),
            unsprung_kg: axle_of(p, unsprung.0, unsprung.1),
            tyre_radius_mm: axle_of(p, radius.0, radius.1),
            adjuster_ratio: None,
            bump_mm: None,
            droop_mm: None,
            bump_stop_n_per_mm: None,
            coil_bind_mm: None,
        };
        // The sprung mass and its centre follow from the loads less the unsprung masses, by moments about the axles
        // and the middle plane.
        let sprung = Corners::from_fn(|p| loads_kg.at(p) - axle_of(p, unsprung.0, unsprung.1));
        let mass_kg: f64 = sprung.to_array().iter().sum();
        let left = |l: f64, r: f64, track: f64| (l - r) * track / 2.0;
        let moment = left(sprung.fl, sprung.fr, track_front_mm) + left(sprung.rl, sprung.rr, track_rear_mm);
        Ok(Car {
            wheelbase_mm,
            track_front_mm,
            track_rear_mm,
            roll_axis_height_mm: once("roll-axis-height", "the height of the roll axis")?,
            sprung: Sprung {
                mass_kg,
                cg_behind_front_axle_mm: (sprung.rl + sprung.rr) / mass_kg * wheelbase_mm,
                cg_left_mm: moment / mass_kg,
                cg_height_mm: once("cg-height", "the height of the mass centre")?,
            },
            torsion_nm_per_deg: None,
            corners: Corners::from_fn(corner),
            bars: Bars::default(),
            beams: Beams::default(),
            height_points: None,
        })
    }

    /// What is known of the pads, with the settles that were seen so far.
    ///
    /// # Errors
    /// What is not known yet.
    pub fn pads(&self, car: &Car) -> Result<Pads, JudgeError> {
        let at = |key, what| self.value("intake.instruments", key).ok_or(JudgeError::NotKnown(what));
        Ok(Pads {
            resolution_kg: at("pads-resolution", "the pads' resolution")?,
            look_kg: LOOK_KG,
            settle_kg: self.settle_kg(car),
            // The laser's accuracy is entered as an interval of about 95 %.
            level_mm: at("laser-accuracy", "the laser's accuracy")? / 2.0,
            height_mm: HEIGHT_GAUGE_MM,
            patch_mm: 0.0,
        })
    }

    /// Repeatability over settles, kg at FL along the diagonal pattern, one sigma: the settles seen in this job, pooled
    /// over the sets, with an assumption that weighs as much as two of them.
    fn settle_kg(&self, car: &Car) -> f64 {
        let n = diagonal(car).to_array();
        let length: f64 = n.iter().map(|v| v * v).sum();
        let mut squares = SETTLE_PRIOR_WEIGHT * SETTLE_PRIOR_KG.powi(2);
        let mut weight = SETTLE_PRIOR_WEIGHT;
        let sets = self.rounds_read().into_iter().chain(self.reading_set("final", true));
        for set in sets.filter(|set| set.readings.len() > 1) {
            let mean = set.loads_kg().to_array();
            for reading in &set.readings {
                let loads = reading.loads_kg().to_array();
                let along: f64 = (0..4).map(|i| (loads[i] - mean[i]) * n[i]).sum::<f64>() / length;
                squares += along * along;
            }
            weight += set.readings.len() as f64 - 1.0;
        }
        (squares / weight).sqrt()
    }

    /// Judges a set of readings.
    ///
    /// # Errors
    /// What is not known yet; a car that cannot be.
    pub fn judged(&self, set: ReadingSet) -> Result<Judged, JudgeError> {
        let loads_kg = set.loads_kg();
        let car = self.car(&loads_kg)?;
        let pads = self.pads(&car)?;
        let spread = Spread::of(&car, &pads, &loads_kg, set.looks(), set.settles())?;
        Ok(Judged {
            car,
            pads,
            loads_kg,
            u_loads_kg: spread.expanded_loads_kg(),
            heights_mm: set.heights_mm(),
            u_height_mm: 2.0 * pads.height_mm / f64::from(set.settles()).sqrt(),
            figures: Figures::of(&loads_kg),
            u: expanded_figures(&loads_kg, &spread.total_kg2()),
            set,
        })
    }
}

impl Judged {
    /// A figure against what was agreed.
    pub fn cross(&self, wishes: &Wishes) -> Against {
        let wanted = Some((wishes.cross_pct, wishes.cross_window_pct));
        Against { value: self.figures.cross_pct, u: self.u.cross_pct, wanted }
    }

    /// Left minus right at the front.
    pub fn front(&self, wishes: &Wishes) -> Against {
        let wanted = Some((0.0, wishes.axle_window_kg));
        Against { value: self.figures.front_diff_kg, u: self.u.front_diff_kg, wanted }
    }

    /// Left minus right at the rear.
    pub fn rear(&self, wishes: &Wishes) -> Against {
        let wanted = Some((0.0, wishes.axle_window_kg));
        Against { value: self.figures.rear_diff_kg, u: self.u.rear_diff_kg, wanted }
    }

    /// Heights left minus right of an axle, against the agreed difference.
    pub fn side(&self, wishes: &Wishes, left: Place, right: Place) -> Against {
        let of = |heights: &Corners<f64>| heights.at(left) - heights.at(right);
        Against {
            value: of(&self.heights_mm),
            u: self.u_height_mm * 2.0_f64.sqrt(),
            wanted: Some((of(&wishes.heights_mm), wishes.side_limit_mm)),
        }
    }

    /// The wish that comes first.
    pub fn first(&self, wishes: &Wishes) -> Against {
        match wishes.first {
            First::Cross => self.cross(wishes),
            First::Front => self.front(wishes),
            First::Rear => self.rear(wishes),
        }
    }
}
