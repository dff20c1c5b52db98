//! What the car's data sheet says: the values that a person copies at intake. They are those of the maker and of the
//! agreement, not those of the car that stands there.

use bayhand_vehicle::{Bars, Beams, Car, Corner, Corners, Place, Sprung, Thread};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One value for the front axle and one for the rear.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PerAxle<T> {
    /// Front axle.
    pub front: T,
    /// Rear axle.
    pub rear: T,
}

impl<T> PerAxle<T> {
    /// The value for the axle of a corner.
    pub fn of(&self, place: Place) -> &T {
        match place {
            Place::Fl | Place::Fr => &self.front,
            Place::Rl | Place::Rr => &self.rear,
        }
    }
}

/// One value for the left side and one for the right.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PerSide<T> {
    /// Left side.
    pub left: T,
    /// Right side.
    pub right: T,
}

/// Where the driver sits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum DriverSide {
    /// On the left.
    Left,
    /// On the right.
    Right,
}

/// A tie rod with its steering arm.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TieRod {
    /// Length of the arm, mm.
    pub arm_mm: f64,
    /// Thread pitch, mm.
    pub pitch_mm: f64,
    /// True for a rod with a right-hand and a left-hand end: one turn moves two pitches.
    pub opposite_threads: bool,
}

/// The figures of the bench's instruments, as their owner knows them from certificates and from use. Spreads are one
/// sigma; each is the sigma of what the instrument really does.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Instruments {
    /// Resolution of a pad, kg.
    pub pad_resolution_kg: f64,
    /// Spread of looks at a pad under a resting load, kg.
    pub pad_look_kg: f64,
    /// Zero that a pad keeps over the job, kg, after it was zeroed.
    pub pad_zero_kg: f64,
    /// Error of a pad's calibration, percent of the load.
    pub pad_calibration_pct: f64,
    /// Spread over settles of a car in good order on slip plates, along the diagonal pattern (1, -1, -tf/tr, +tf/tr),
    /// kg at FL.
    pub settle_kg: f64,
    /// Spread over settles of a height, mm.
    pub settle_height_mm: f64,
    /// Resolution of a height, mm.
    pub height_resolution_mm: f64,
    /// Spread of looks at a height, mm.
    pub height_look_mm: f64,
    /// Resolution of the laser's staff, mm.
    pub laser_resolution_mm: f64,
    /// Spread of a staff reading, mm.
    pub laser_look_mm: f64,
    /// Accuracy of the laser's plane, mm per m, as its maker states it: an interval of about 95 %.
    pub laser_accuracy_mm_per_m: f64,
    /// Resolution of the pressure gauge, bar.
    pub pressure_resolution_bar: f64,
    /// Resolution of the angle gauge, degrees.
    pub angle_resolution_deg: f64,
    /// Spread of looks at an angle, degrees.
    pub angle_look_deg: f64,
    /// Resolution of a turn plate, degrees.
    pub plate_resolution_deg: f64,
    /// Spread of looks at a turn plate, degrees.
    pub plate_look_deg: f64,
    /// Error of a turn plate's scale, percent.
    pub plate_scale_pct: f64,
    /// Resolution of a distance from a wheel to the line beside it, mm.
    pub line_resolution_mm: f64,
    /// Spread of looks at it, mm.
    pub line_look_mm: f64,
    /// Resolution of a distance between the lines, mm.
    pub across_resolution_mm: f64,
    /// Spread of looks at it, mm.
    pub across_look_mm: f64,
    /// How true the steering is held straight, degrees at the wheels.
    pub steering_held_deg: f64,
}

impl Instruments {
    /// Uncertainty of a pad's height that was read in two set-ups of the laser half a turn apart, one sigma, mm: the
    /// plane's tilt is lost in their mean; a staff reading's spread and its rounding are left, by the root of two less.
    pub fn level_mm(&self) -> f64 {
        let rounding_mm = self.laser_resolution_mm / 12.0_f64.sqrt();
        self.laser_look_mm.hypot(rounding_mm) / 2.0_f64.sqrt()
    }
}

/// What one turn of an adjuster moves besides the angle that it is for, degrees.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Couplings {
    /// Toe by the camber adjuster.
    pub camber_moves_toe_deg: PerAxle<f64>,
    /// Camber by the front caster adjuster.
    pub caster_moves_camber_deg: f64,
    /// Toe by the front caster adjuster.
    pub caster_moves_toe_deg: f64,
}

/// What the car's data sheet and the order say.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DataSheet {
    /// Wheelbase, mm.
    pub wheelbase_mm: f64,
    /// Track, mm.
    pub track_mm: PerAxle<f64>,
    /// Whole mass ready to be read, with ballast and agreed fuel, kg.
    pub total_kg: f64,
    /// Share of the front axle in it, percent.
    pub front_share_pct: f64,
    /// Unsprung mass of one corner, kg.
    pub unsprung_kg: PerAxle<f64>,
    /// Height of the sprung mass's centre over the ground, mm.
    pub cg_height_mm: f64,
    /// Height of the roll axis at the mass centre over the ground, mm.
    pub roll_axis_height_mm: f64,
    /// Spring rate at the spring, N/mm.
    pub spring_n_per_mm: PerAxle<f64>,
    /// Motion ratio, spring travel / wheel travel.
    pub motion_ratio: PerAxle<f64>,
    /// Vertical rate of the tyre at its working pressure, N/mm.
    pub tyre_n_per_mm: PerAxle<f64>,
    /// Radius of the unloaded tyre, mm.
    pub tyre_radius_mm: PerAxle<f64>,
    /// Wheel travel from the agreed height to the bump stop, mm.
    pub bump_mm: PerAxle<f64>,
    /// Wheel travel from the agreed height to the droop limit, mm.
    pub droop_mm: PerAxle<f64>,
    /// Rate of the anti-roll bar at the wheels, N/mm.
    pub bar_n_per_mm: PerAxle<f64>,
    /// Thread pitch of the adjustable link (one at each axle, on the left), mm.
    pub link_pitch_mm: f64,
    /// Travel at the wheels for one mm of a link, as its maker draws it.
    pub wheel_per_link: f64,
    /// Thread of the collars.
    pub thread: Thread,
    /// Whole steps of one turn of a collar.
    pub steps_per_turn: u32,
    /// Travel of the collar left upwards (raising the car) as it comes in, mm.
    pub collar_travel_up_mm: f64,
    /// Travel of the collar left downwards as it comes in, mm.
    pub collar_travel_down_mm: f64,
    /// Volume of the tank, l.
    pub tank_l: f64,
    /// Agreed fuel, l.
    pub fuel_l: f64,
    /// Side of the driver's seat.
    pub driver: DriverSide,
    /// Ballast for the driver, kg.
    pub ballast_kg: f64,
    /// Cross weight (FR + RL) wanted, percent.
    pub cross_pct: f64,
    /// Agreed height of the measuring point straight above each wheel over its pad, mm.
    pub heights_mm: Corners<f64>,
    /// Agreed cold pressure, bar.
    pub cold_bar: Corners<f64>,
    /// Agreed working pressure, bar.
    pub working_bar: Corners<f64>,
    /// Agreed toe of each wheel, degrees; in is positive.
    pub toe_deg: Corners<f64>,
    /// Agreed camber, degrees; negative when the top leans in.
    pub camber_deg: Corners<f64>,
    /// Agreed caster of the front wheels, degrees.
    pub caster_deg: PerSide<f64>,
    /// Tie rods (toe links at the rear).
    pub tie_rod: PerAxle<TieRod>,
    /// Camber change for one turn of the camber adjuster, degrees; positive turns lean the top out.
    pub camber_deg_per_turn: PerAxle<f64>,
    /// Caster change for one turn of the front caster adjuster, degrees.
    pub caster_deg_per_turn: f64,
    /// What the camber and caster adjusters move besides, as the drawing of the suspension has it.
    pub couplings: Couplings,
    /// Inclination of the front steering axes, degrees.
    pub inclination_deg: f64,
    /// Camber change for one mm of wheel travel into bump, degrees.
    pub bump_camber_deg_per_mm: f64,
    /// The bench's instruments.
    pub instruments: Instruments,
}

impl DataSheet {
    /// The car as a person enters it from this sheet, links released. The side of the mass centre is not on a
    /// sheet: it is entered in the middle, for the loads to show.
    pub fn entered(&self) -> Car {
        let unsprung_kg = 2.0 * (self.unsprung_kg.front + self.unsprung_kg.rear);
        let sprung_kg = self.total_kg - unsprung_kg;
        let rear_kg = self.total_kg * (1.0 - self.front_share_pct / 100.0) - 2.0 * self.unsprung_kg.rear;
        Car {
            wheelbase_mm: self.wheelbase_mm,
            track_front_mm: self.track_mm.front,
            track_rear_mm: self.track_mm.rear,
            roll_axis_height_mm: self.roll_axis_height_mm,
            sprung: Sprung {
                mass_kg: sprung_kg,
                cg_behind_front_axle_mm: (rear_kg / sprung_kg * self.wheelbase_mm).round(),
                cg_left_mm: 0.0,
                cg_height_mm: self.cg_height_mm,
            },
            torsion_nm_per_deg: None,
            corners: Corners::from_fn(|p| Corner {
                spring_n_per_mm: Some(*self.spring_n_per_mm.of(p)),
                motion_ratio: Some(*self.motion_ratio.of(p)),
                tyre_n_per_mm: *self.tyre_n_per_mm.of(p),
                unsprung_kg: *self.unsprung_kg.of(p),
                tyre_radius_mm: *self.tyre_radius_mm.of(p),
                adjuster_ratio: None,
                bump_mm: Some(*self.bump_mm.of(p)),
                droop_mm: Some(*self.droop_mm.of(p)),
                bump_stop_n_per_mm: None,
                coil_bind_mm: None,
            }),
            bars: Bars::default(),
            beams: Beams::default(),
            sprung_like: None,
            height_points: None,
        }
    }

    /// Collar travel of one whole step, mm.
    pub fn step_mm(&self) -> f64 {
        self.thread.pitch_mm / f64::from(self.steps_per_turn)
    }
}
