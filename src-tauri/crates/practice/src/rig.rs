//! A car as bodies and springs in space, with every value known.
//!
//! The sprung body is two halves over the axles, hinged on the roll axis; a rigid body is the same with the hinge
//! locked. Each wheel moves straight up and down over its pad. Struts are springs along the line from a point of the
//! body, level with the roll axis and straight above the wheel at rest, down to the wheel; tyres are vertical springs
//! that push and never pull. This is the convention of the reference data in `tests/data`.

use crate::equilibrium::{self, EquilibriumError, Frame, STATES};
use crate::friction::DryFriction;
use crate::pose::BodyPoint;
use crate::strut::Strut;
use bayhand_vehicle::{Bar, Car, CarError, Corners, Place, STANDARD_GRAVITY};
use nalgebra::{SMatrix, SVector, Vector3};
use thiserror::Error;

/// Length of a strut's line at rest, m. It matters only in the second order of the car's lean.
const STRUT_M: f64 = 0.30;

/// A wheel with its tyre, pad and strut. SI units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wheel {
    /// Place of wheel and pad: forward of the body's hinge, m.
    pub x_m: f64,
    /// Place of wheel and pad: left of the middle plane, m.
    pub y_m: f64,
    /// Height of the pad, m.
    pub pad_m: f64,
    /// Vertical rate of the tyre, N/m.
    pub tyre_n_per_m: f64,
    /// Radius of the unloaded tyre, m.
    pub tyre_radius_m: f64,
    /// Unsprung mass, kg.
    pub unsprung_kg: f64,
    /// Height of the measuring point in the body, m over the roll axis.
    pub measuring_point_m: f64,
    /// The strut.
    pub strut: Strut,
}

/// Half of the sprung body, as its weight acts on it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Half {
    /// Mass, kg.
    pub(crate) mass_kg: f64,
    /// Mass times its centre's distance to the left, kg m.
    pub(crate) left_kg_m: f64,
    /// Mass times its centre's height over the roll axis, kg m.
    pub(crate) up_kg_m: f64,
}

/// A connected anti-roll bar between the two struts of an axle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BarState {
    /// Rate at the wheels, N/m.
    pub n_per_m: f64,
    /// Right minus left strut length at which the bar is not wound up, m.
    pub rest_m: f64,
}

/// How the two tyres of an axle hold on to their pads sideways. A wheel that moves up also moves outwards; what the pads
/// do not let go presses both wheels inwards with one force, for the body is free to move sideways between them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scrub {
    /// Way outwards of the left and of the right contact patch for one metre of upward travel of its wheel.
    pub outwards: [f64; 2],
    /// The hold, on the width between the patches: its force presses the wheels inwards where it is positive, and its
    /// length is minus the way outwards.
    pub hold: DryFriction,
}

impl Scrub {
    /// Nothing is held.
    pub const NONE: Scrub = Scrub { outwards: [0.0; 2], hold: DryFriction::NONE };

    /// The length that its friction acts on, for these lengths of the struts (left, right), m.
    pub(crate) fn length_m(&self, struts_m: [f64; 2]) -> f64 {
        self.outwards[0] * struts_m[0] + self.outwards[1] * struts_m[1]
    }
}

/// A mass aboard, above the mass of the empty car.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PointMass {
    /// Mass, kg.
    pub mass_kg: f64,
    /// Behind the front axle, m.
    pub behind_front_axle_m: f64,
    /// Left of the middle plane, m.
    pub left_m: f64,
    /// Above the pad plane in the design position, m.
    pub height_m: f64,
}

/// A car with every value known, as it stands on its pads.
#[derive(Clone, Debug, PartialEq)]
pub struct Rig {
    /// Wheels in the order FL, FR, RL, RR.
    pub wheels: [Wheel; 4],
    /// Connected bars, front and rear.
    pub bars: [Option<BarState>; 2],
    /// How the tyres of each axle hold on sideways, front and rear.
    pub scrubs: [Scrub; 2],
    pub(crate) halves: [Half; 2],
    /// Stiffness of the body in torsion, Nm/rad; none: rigid.
    pub(crate) torsion_nm_per_rad: Option<f64>,
    pub(crate) roll_axis_m: f64,
    /// Push of hands on the body above each wheel, N; positive presses it down.
    pub(crate) pushed_n: [f64; 4],
    /// State to start the search from.
    pub(crate) start: SVector<f64, STATES>,
}

/// What a car is said to show in its first state.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Loads at the pads, kg.
    pub loads_kg: Corners<f64>,
    /// Heights of the measuring points over their pads, mm.
    pub heights_mm: Corners<f64>,
    /// Heights of the pads, mm.
    pub pads_mm: Corners<f64>,
    /// Height of each measuring point over its pad in the design position, mm, in which the mass centre stands at
    /// its given height.
    pub design_heights_mm: Corners<f64>,
}

/// How a car stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Standing {
    /// Loads at the pads, kg; never negative.
    pub loads_kg: Corners<f64>,
    /// Heights of the measuring points over their own pads, mm.
    pub heights_mm: Corners<f64>,
    /// Length of each strut's line, mm.
    pub struts_mm: Corners<f64>,
    /// What friction holds in each strut, N; positive presses wheel and body apart.
    pub friction_n: Corners<f64>,
    /// Side force by which the pads press both wheels of an axle inwards, front and rear, N.
    pub side_n: [f64; 2],
    /// Roll of the body over each axle, front and rear, rad; positive raises the left side.
    pub roll_rad: [f64; 2],
    /// Pitch of the body, rad; positive lowers the nose.
    pub pitch_rad: f64,
    /// What is unusual at each corner.
    pub states: Corners<CornerState>,
}

/// What can be seen at a corner beside its figures.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, serde::Serialize, serde::Deserialize, schemars::JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CornerState {
    /// The tyre does not touch its pad.
    pub wheel_lifted: bool,
    /// The bump stop is touched.
    pub on_bump_stop: bool,
    /// The strut hangs at its droop limit, or its spring is loose.
    pub topped_out: bool,
}

/// Why a car cannot be built from a reading.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum RigError {
    /// The car cannot be.
    #[error(transparent)]
    Car(#[from] CarError),
    /// A value that a complete car needs is not given.
    #[error("{at} is missing; a simulated car needs it")]
    Missing {
        /// Path of the field.
        at: String,
    },
    /// A load too small for its wheel to hang on the spring.
    #[error("loads_kg.{place} is {load_kg} kg; it must be above the corner's unsprung {unsprung_kg} kg", place = .place.code())]
    Load {
        /// Corner.
        place: Place,
        /// Load as given, kg.
        load_kg: f64,
        /// Unsprung mass, kg.
        unsprung_kg: f64,
    },
    /// The heights do not fix how the body stands.
    #[error("heights_mm do not fix how the body stands; they must be within 1000 mm of the design heights")]
    Heights,
}

impl Rig {
    /// Builds the car that shows this reading: free lengths are chosen so that every strut carries its share there.
    /// The car's bars are connected with the preload that they have in this reading.
    ///
    /// # Errors
    /// A car that cannot be, lacks a spring or ratio, or a reading that no such car shows.
    pub fn from_reading(car: &Car, reading: &Reading) -> Result<Self, RigError> {
        car.validate()?;
        let hinge_behind_m = car.sprung.cg_behind_front_axle_mm / 1e3;
        let mut rig = Rig {
            wheels: build_wheels(car, reading)?,
            bars: [None; 2],
            scrubs: [Scrub::NONE; 2],
            halves: [Half::default(); 2],
            torsion_nm_per_rad: car.torsion_nm_per_deg.map(|t| t * 180.0 / std::f64::consts::PI),
            roll_axis_m: car.roll_axis_height_mm / 1e3,
            pushed_n: [0.0; 4],
            start: SVector::zeros(),
        };
        rig.add(&PointMass {
            mass_kg: car.sprung.mass_kg,
            behind_front_axle_m: hinge_behind_m,
            left_m: car.sprung.cg_left_mm / 1e3,
            height_m: car.sprung.cg_height_mm / 1e3,
        });
        rig.start = rig.body_from_heights(&reading.heights_mm.to_array())?;
        rig.set_free_lengths(car, reading)?;
        Ok(rig)
    }

    /// Loads a mass, shared between the halves of the body by its place along the car.
    pub fn add(&mut self, mass: &PointMass) {
        let front_axle = self.wheels[0].x_m;
        let wheelbase = front_axle - self.wheels[2].x_m;
        let rear_share = mass.behind_front_axle_m / wheelbase;
        for (half, share) in self.halves.iter_mut().zip([1.0 - rear_share, rear_share]) {
            half.mass_kg += share * mass.mass_kg;
            half.left_kg_m += share * mass.mass_kg * mass.left_m;
            half.up_kg_m += share * mass.mass_kg * (mass.height_m - self.roll_axis_m);
        }
    }

    /// The whole mass on the pads, kg.
    pub fn total_kg(&self) -> f64 {
        self.halves.iter().map(|h| h.mass_kg).sum::<f64>() + self.wheels.iter().map(|w| w.unsprung_kg).sum::<f64>()
    }

    /// Where the car comes to rest.
    ///
    /// # Errors
    /// No position of rest was found: the car falls over or the values are beyond all sense.
    pub fn stand(&self) -> Result<Standing, EquilibriumError> {
        Ok(self.standing(&equilibrium::find(self)?))
    }

    /// What shows in a state of rest.
    pub(crate) fn standing(&self, state: &SVector<f64, STATES>) -> Standing {
        let frame = Frame::of(self, state);
        let lengths_m = self.strut_lengths(state);
        let standing = Standing {
            loads_kg: Corners::from_fn(|p| {
                self.wheels[p.index()].tyre_force_n(state[4 + p.index()]) / STANDARD_GRAVITY
            }),
            heights_mm: Corners::from_fn(|p| {
                let point = self.measuring_point(&frame, p.index());
                (point.z.value - self.wheels[p.index()].pad_m) * 1e3
            }),
            struts_mm: Corners::from_array(lengths_m.map(|m| m * 1e3)),
            friction_n: Corners::from_fn(|p| self.wheels[p.index()].strut.friction.force_n(lengths_m[p.index()])),
            side_n: std::array::from_fn(|axle| {
                let scrub = &self.scrubs[axle];
                scrub.hold.force_n(scrub.length_m([lengths_m[2 * axle], lengths_m[2 * axle + 1]]))
            }),
            roll_rad: frame.halves.map(|h| h.roll_rad),
            pitch_rad: frame.halves[0].pitch_rad,
            states: Corners::default(),
        };
        let states = Corners::from_fn(|p| {
            let strut = &self.wheels[p.index()].strut;
            let length_m = lengths_m[p.index()];
            CornerState {
                wheel_lifted: *standing.loads_kg.at(p) <= 0.0,
                on_bump_stop: strut.on_bump_stop(length_m),
                topped_out: strut.topped_out(length_m),
            }
        });
        Standing { states, ..standing }
    }

    /// Length of each strut's line in a state, m.
    pub(crate) fn strut_lengths(&self, state: &SVector<f64, STATES>) -> [f64; 4] {
        let frame = Frame::of(self, state);
        std::array::from_fn(|corner| self.strut_length(&frame, corner, state[4 + corner]))
    }

    /// Top of a strut in its half of the body, m from the hinge.
    pub(crate) fn strut_top(&self, corner: usize) -> Vector3<f64> {
        let w = &self.wheels[corner];
        Vector3::new(w.x_m, w.y_m, 0.0)
    }

    /// Place of the wheel's end of a strut for a wheel centre at height `wheel_m`.
    pub(crate) fn strut_foot(&self, corner: usize, wheel_m: f64) -> Vector3<f64> {
        let w = &self.wheels[corner];
        Vector3::new(w.x_m, w.y_m, wheel_m - w.tyre_radius_m + self.roll_axis_m - STRUT_M)
    }

    fn strut_length(&self, frame: &Frame, corner: usize, wheel_m: f64) -> f64 {
        let top = frame.halves[corner / 2].place(self.strut_top(corner));
        let foot = self.strut_foot(corner, wheel_m);
        (Vector3::new(top.x.value, top.y.value, top.z.value) - foot).norm()
    }

    fn measuring_point(&self, frame: &Frame, corner: usize) -> BodyPoint {
        let w = &self.wheels[corner];
        frame.halves[corner / 2].place(Vector3::new(w.x_m, w.y_m, w.measuring_point_m))
    }

    /// Heave, pitch, roll and twist that show these heights (over the pads, mm), in the least-squares sense.
    fn body_from_heights(&self, heights_mm: &[f64; 4]) -> Result<SVector<f64, STATES>, RigError> {
        let mut state = SVector::<f64, STATES>::zeros();
        state[0] = self.roll_axis_m;
        for _ in 0..20 {
            let frame = Frame::of(self, &state);
            let mut slopes = SMatrix::<f64, 4, 4>::zeros();
            let mut wrong = SVector::<f64, 4>::zeros();
            for (corner, height_mm) in heights_mm.iter().enumerate() {
                let z = self.measuring_point(&frame, corner).z;
                wrong[corner] = height_mm / 1e3 + self.wheels[corner].pad_m - z.value;
                let g = z.gradient;
                slopes.set_row(corner, &nalgebra::RowVector4::new(g.x, g.y, g.z, g.z * frame.twist_share(corner / 2)));
            }
            let mut normal = slopes.transpose() * slopes;
            if self.torsion_nm_per_rad.is_none() {
                normal[(3, 3)] = 1.0;
            }
            let step = normal.lu().solve(&(slopes.transpose() * wrong)).ok_or(RigError::Heights)?;
            for k in 0..4 {
                state[k] += step[k];
            }
            if step.amax() < 1e-14 {
                break;
            }
        }
        let moved = [state[0] - self.roll_axis_m, state[1], state[2], state[3]];
        // A NaN is not within a metre and a radian either.
        if !moved.iter().all(|v| v.abs() < 1.0) {
            return Err(RigError::Heights);
        }
        Ok(state)
    }

    fn set_free_lengths(&mut self, car: &Car, reading: &Reading) -> Result<(), RigError> {
        let loads_n = reading.loads_kg.map(|kg| kg * STANDARD_GRAVITY).to_array();
        for (corner, (w, load_n)) in self.wheels.iter().zip(loads_n).enumerate() {
            self.start[4 + corner] = w.pad_m + w.tyre_radius_m - load_n / w.tyre_n_per_m;
        }
        let frame = Frame::of(self, &self.start);
        let lengths: [f64; 4] = std::array::from_fn(|c| self.strut_length(&frame, c, self.start[4 + c]));
        for (axle, bar) in [car.bars.front, car.bars.rear].into_iter().enumerate() {
            self.bars[axle] = bar.map(|b| bar_at(&b, lengths[2 * axle + 1] - lengths[2 * axle]));
        }
        let preload = [car.bars.front, car.bars.rear].map(|b| b.map_or(0.0, |b| b.preload_n));
        for place in Place::ALL {
            let corner = place.index();
            let top = frame.halves[corner / 2].place(self.strut_top(corner)).z.value;
            let upright = (top - self.strut_foot(corner, self.start[4 + corner]).z) / lengths[corner];
            let bar_n = if place.is_left() { preload[corner / 2] } else { -preload[corner / 2] };
            let w = &mut self.wheels[corner];
            let line_n = (loads_n[corner] - w.unsprung_kg * STANDARD_GRAVITY) / upright - bar_n;
            if line_n.is_nan() || line_n <= 0.0 {
                let (load_kg, unsprung_kg) = (*reading.loads_kg.at(place), w.unsprung_kg);
                return Err(RigError::Load { place, load_kg, unsprung_kg });
            }
            w.strut.free_m = lengths[corner] + line_n / w.strut.wheel_rate_n_per_m();
            let limits = car.corners.at(place);
            w.strut.bump_m = limits.bump_mm.map(|mm| lengths[corner] - mm / 1e3);
            w.strut.droop_m = limits.droop_mm.map(|mm| lengths[corner] + mm / 1e3);
        }
        Ok(())
    }
}

impl Wheel {
    /// Force of the pad on the tyre with the wheel's centre at this height, N; never negative.
    pub(crate) fn tyre_force_n(&self, wheel_m: f64) -> f64 {
        self.tyre_n_per_m * (self.pad_m + self.tyre_radius_m - wheel_m).max(0.0)
    }
}

fn bar_at(bar: &Bar, difference_m: f64) -> BarState {
    let n_per_m = bar.n_per_mm * 1e3;
    // A bar without a rate cannot hold a preload either.
    let wound_m = if n_per_m > 0.0 { bar.preload_n / n_per_m } else { 0.0 };
    BarState { n_per_m, rest_m: difference_m - wound_m }
}

fn build_wheels(car: &Car, reading: &Reading) -> Result<[Wheel; 4], RigError> {
    let front_m = car.sprung.cg_behind_front_axle_mm / 1e3;
    let wheel = |place: Place| -> Result<Wheel, RigError> {
        let corner = car.corners.at(place);
        let missing = |field: &str| RigError::Missing { at: format!("corners.{}.{field}", place.code()) };
        let spring = corner.spring_n_per_mm.ok_or_else(|| missing("spring_n_per_mm"))?;
        let motion_ratio = corner.motion_ratio.ok_or_else(|| missing("motion_ratio"))?;
        let (x_m, track_mm) = match place {
            Place::Fl | Place::Fr => (front_m, car.track_front_mm),
            Place::Rl | Place::Rr => (front_m - car.wheelbase_mm / 1e3, car.track_rear_mm),
        };
        Ok(Wheel {
            x_m,
            y_m: if place.is_left() { track_mm / 2e3 } else { -track_mm / 2e3 },
            pad_m: reading.pads_mm.at(place) / 1e3,
            tyre_n_per_m: corner.tyre_n_per_mm * 1e3,
            tyre_radius_m: corner.tyre_radius_mm / 1e3,
            unsprung_kg: corner.unsprung_kg,
            measuring_point_m: (reading.design_heights_mm.at(place) - car.roll_axis_height_mm) / 1e3,
            strut: Strut {
                free_m: 0.0,
                collar_m: 0.0,
                adjuster_ratio: corner.adjuster_ratio.unwrap_or(1.0 / motion_ratio),
                spring_n_per_m: spring * 1e3,
                motion_ratio,
                bump_m: None,
                droop_m: None,
                friction: DryFriction::NONE,
            },
        })
    };
    Ok([wheel(Place::Fl)?, wheel(Place::Fr)?, wheel(Place::Rl)?, wheel(Place::Rr)?])
}
