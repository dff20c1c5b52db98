//! What a set of readings says of the car: figures with uncertainty, and how they stand to what was agreed.

use crate::{
    known::{Known, axle_of},
    reading::ReadingSet,
};
use bayhand_chassis::reading::{Figure, HeightSpread, Instruments, Reading, height_spread};
use bayhand_chassis::{COVERAGE, Figures, StaticsError, Verdict, expanded_figures, judge, mass_centre};
use bayhand_vehicle::{
    Bars, Beam, Beams, Car, Corner, Corners, EnteredRatio, Place, RatioConvention, Sprung, SprungLike,
};
use thiserror::Error;

/// Where beams, wheel travel and the stiffness of the body are written.
const TRAVEL: &str = "intake.travel";
const SPRINGS: &str = "intake.springs";

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
    /// What is known of the instruments.
    pub instruments: Instruments,
    /// Where the uncertainty of the loads comes from.
    pub reading: Reading,
    /// Mean loads as they would be on level pads, kg.
    pub loads_kg: Corners<f64>,
    /// Their expanded uncertainty (k = 2), kg.
    pub u_loads_kg: Corners<f64>,
    /// Mean heights, mm.
    pub heights_mm: Corners<f64>,
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

impl First {
    /// The figure that it is about.
    pub fn figure(self) -> Figure {
        match self {
            First::Cross => Figure::CrossPct,
            First::Front => Figure::FrontDiffKg,
            First::Rear => Figure::RearDiffKg,
        }
    }
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

    /// The motion ratios as entered, front first, with the convention that they were entered in; none where nobody knows
    /// them.
    pub fn ratios(&self) -> Option<[EnteredRatio; 2]> {
        let (front, rear) = self.axles(SPRINGS, "motion-ratio")?;
        let convention = match self.text(SPRINGS, "ratio-way") {
            Some("ratio-wheel-per-spring") => RatioConvention::WheelPerSpring,
            _ => RatioConvention::SpringPerWheel,
        };
        Some([front, rear].map(|value| EnteredRatio { value, convention }))
    }

    /// What is said of springs that nobody knows.
    fn sprung_like(&self) -> Option<SprungLike> {
        match self.text(SPRINGS, "sprung-like")? {
            "like-road" => Some(SprungLike::Road),
            "like-fast-road" => Some(SprungLike::FastRoad),
            "like-track" => Some(SprungLike::Track),
            "like-downforce" => Some(SprungLike::Downforce),
            _ => None,
        }
    }

    /// The car as entered, with its masses from four loads.
    ///
    /// # Errors
    /// What is not known yet.
    pub fn car(&self, loads_kg: &Corners<f64>) -> Result<Car, JudgeError> {
        let axles = |step, key, what| self.axles(step, key).ok_or(JudgeError::NotKnown(what));
        let once = |key, what| self.value("intake.car", key).ok_or(JudgeError::NotKnown(what));
        // Neither may be known: the planner then begins with what is likely, and learns.
        let spring = self.axles(SPRINGS, "spring");
        let ratio = match self.ratios().map(|ratios| ratios.map(|entered| entered.spring_per_wheel())) {
            Some([front, rear]) => Some((front.map_err(StaticsError::from)?, rear.map_err(StaticsError::from)?)),
            None => None,
        };
        let tyre = axles(SPRINGS, "tyre", "the tyre rate")?;
        let unsprung = axles(SPRINGS, "unsprung", "the unsprung mass")?;
        let radius = axles(SPRINGS, "tyre-radius", "the tyre radius")?;
        let (track_front_mm, track_rear_mm) = axles("intake.car", "track", "the track")?;
        let wheelbase_mm = once("wheelbase", "the wheelbase")?;
        let corner = |p: Place| Corner {
            spring_n_per_mm: spring.map(|(front, rear)| axle_of(p, front, rear)),
            motion_ratio: ratio.map(|(front, rear)| axle_of(p, front, rear)),
            tyre_n_per_mm: axle_of(p, tyre.0, tyre.1),
            unsprung_kg: axle_of(p, unsprung.0, unsprung.1),
            tyre_radius_mm: axle_of(p, radius.0, radius.1),
            adjuster_ratio: None,
            bump_mm: None,
            droop_mm: None,
            bump_stop_n_per_mm: None,
            coil_bind_mm: None,
        };
        // Not sprung yet: what the wheels carry of the sprung mass says where it is.
        let sprung_kg = Corners::from_fn(|p| loads_kg.at(p) - axle_of(p, unsprung.0, unsprung.1));
        let mass_kg = sprung_kg.iter().map(|(_, kg)| kg).sum();
        let mut car = Car {
            wheelbase_mm,
            track_front_mm,
            track_rear_mm,
            roll_axis_height_mm: once("roll-axis-height", "the height of the roll axis")?,
            sprung: Sprung {
                mass_kg,
                cg_behind_front_axle_mm: wheelbase_mm / 2.0,
                cg_left_mm: 0.0,
                cg_height_mm: once("cg-height", "the height of the mass centre")?,
            },
            torsion_nm_per_deg: self.value(TRAVEL, "torsion"),
            corners: Corners::from_fn(corner),
            bars: Bars::default(),
            beams: Beams { front: self.beam("front"), rear: self.beam("rear") },
            sprung_like: self.sprung_like(),
            height_points: None,
        };
        let centre = mass_centre(&car, &sprung_kg)?;
        car.sprung.cg_behind_front_axle_mm = centre.behind_front_axle_mm;
        car.sprung.cg_left_mm = centre.left_mm;
        Ok(car)
    }

    /// The beam of an axle, when it has one.
    fn beam(&self, axle: &str) -> Option<Beam> {
        Some(Beam { spring_base_mm: self.value(TRAVEL, &format!("{axle}-spring-base"))? })
    }

    /// The car with the wheel travel that is left at these heights, where the travel at the agreed heights is known: a
    /// body that stands higher over its wheel has more travel left to the bump stop and less to the droop limit.
    fn with_travel(&self, mut car: Car, heights_mm: &Corners<f64>) -> Car {
        let (Some(bump), Some(droop), Some(agreed)) = (
            self.axles(TRAVEL, "bump-travel"),
            self.axles(TRAVEL, "droop-travel"),
            self.corners("intake.heights", "agreed-height"),
        ) else {
            return car;
        };
        for place in Place::ALL {
            let higher_mm = heights_mm.at(place) - agreed.at(place);
            let corner = car.corners.at_mut(place);
            // No less than none: who stands on the stop has used up the travel.
            corner.bump_mm = Some((axle_of(place, bump.0, bump.1) + higher_mm).max(0.0));
            corner.droop_mm = Some((axle_of(place, droop.0, droop.1) - higher_mm).max(0.0));
        }
        car
    }

    /// The newest set of a group, judged, void or not: it stays true of how the car stood then.
    pub fn judged_group(&self, group: &str) -> Option<Judged> {
        self.judged(self.reading_set(group, true)?).ok()
    }

    /// Judges a set of readings.
    ///
    /// # Errors
    /// What is not known yet; a car that cannot be.
    pub fn judged(&self, set: ReadingSet) -> Result<Judged, JudgeError> {
        let car = self.car(&set.loads_kg())?;
        let loads_kg = self.on_level_pads(&car, &set)?;
        let car = self.with_travel(self.car(&loads_kg)?, &set.heights_mm());
        let instruments = self.instruments(&car)?;
        let reading = Reading::of(&car, &instruments, &loads_kg, set.looks(), set.settles())?;
        let covariance_kg2 = reading.covariance_kg2(true);
        let u_of = |p: Place| COVERAGE * covariance_kg2[p.index()][p.index()].sqrt();
        Ok(Judged {
            car,
            instruments,
            loads_kg,
            u_loads_kg: Corners::from_fn(u_of),
            heights_mm: set.heights_mm(),
            figures: Figures::of(&loads_kg),
            u: expanded_figures(&loads_kg, &covariance_kg2),
            reading,
            set,
        })
    }
}

impl Judged {
    /// Expanded uncertainties of the heights.
    pub fn spread_of_heights(&self) -> HeightSpread {
        height_spread(&self.instruments.heights, 1, self.set.settles())
    }

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
            u: self.spread_of_heights().difference_mm,
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
