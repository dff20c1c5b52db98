//! The angles of the wheels from raw readings, how they stand to what was agreed, and what to turn.
//!
//! - [`Raw`]: what was read, as the instruments showed it; [`Raw::angles`] and [`Raw::caster`] clear it of run-out, bias,
//!   skew and floor by `chassis::align`, with uncertainty.
//! - [`Agreed`], [`rows`]: each angle against its target: inside, outside, cannot tell.
//! - [`Effects`]: what one turn of each adjuster does, entered and then learned; [`wheel_plan`]: whole steps by the exact
//!   search of `planner`.
//!
//! Plain values in, plain values out: the record's side stands in `known_angles`.

mod plan;
mod record;

pub use plan::{Couplings, Effects, Knob, Steps, WheelPlan, wheel_plan};
pub use record::{Aligned, JUDGE, READ};

use bayhand_chassis::align::{
    AxleToe, CamberReading, CamberSpread, Closing, FloorSlope, KnownAngle, LineSpread, Lines, Side, Sweep,
    SweepReading, SweepSpread, WheelToLine, front_toe_for_straight_deg, reversed, steering_off,
};
use bayhand_chassis::{StaticsError, Verdict};
use bayhand_vehicle::{Axle, Corners, Place};

/// How true the steering is held at its centre: a level on the steering wheel to a quarter degree, by a usual ratio of 15
/// (our choice); standard uncertainty, degrees at the wheels.
const STEERING_HELD_DEG: f64 = 0.015;
/// How well a maker's drawing tells the inclination of the steering axis, standard uncertainty, degrees (our choice).
const INCLINATION_DEG: f64 = 1.0;
/// Distance between the places on a rim that gauge and rule meet, before it is measured, mm: that of a 16 inch rim (ETRTO,
/// ISO 4000-1). The rims of other cars are within a quarter of it.
pub const USUAL_RIM_MM: f64 = 405.6;
/// What the floor's slope is known to, standard uncertainty, degrees: a tenth of a millimetre on two metres, and more.
const FLOOR_DEG: f64 = 0.005;
/// Toe of a wheel while nothing better is known than that it was taken roughly, standard uncertainty, degrees.
const ROUGH_TOE_DEG: f64 = 0.2;

/// Standard uncertainties of one reading of each instrument.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Instruments {
    /// The gravity gauge, degrees.
    pub gauge_deg: f64,
    /// A turn plate, degrees.
    pub plate_deg: f64,
    /// A turn plate's scale, as a fraction.
    pub plate_fraction: f64,
    /// A distance from a wheel to the line beside it, mm.
    pub line_mm: f64,
    /// A distance across the car, mm.
    pub across_mm: f64,
}

/// What is read at a hanging wheel with its mark up and half a turn on.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct RunOut {
    /// The gauge, degrees.
    pub camber_deg: [f64; 2],
    /// From the rim's front edge to a stand beside it, mm.
    pub edge_mm: [f64; 2],
}

/// What is read at one wheel, mark up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AtWheel {
    /// The gauge across the wheel, degrees, positive with the top out.
    pub camber_deg: f64,
    /// From the rim's front edge to the line, mm.
    pub front_mm: f64,
    /// From its rear edge, mm.
    pub rear_mm: f64,
    /// From the hub face, mm.
    pub hub_mm: f64,
}

/// What is read at a front wheel with the steering to the left and then to the right.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AtSweep {
    /// The turn plate, degrees, growing towards the wheel's own side.
    pub plate_deg: [f64; 2],
    /// The gauge, degrees.
    pub gauge_deg: [f64; 2],
}

/// What all readings of the angles share.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bench {
    /// The instruments.
    pub instruments: Instruments,
    /// The gauge on one place, and turned end for end on it, degrees.
    pub gauge_deg: [f64; 2],
    /// How the plane of the pads lies.
    pub floor: FloorSlope,
    /// The rims.
    pub run_out: Corners<RunOut>,
}

/// A reading of all four wheels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Raw {
    /// What it shares with the others.
    pub bench: Bench,
    /// Wheelbase, mm.
    pub wheelbase_mm: f64,
    /// Between the places on the rims, front and rear, mm.
    pub rim_mm: (f64, f64),
    /// Between the lines before the car and behind it, and along them, mm.
    pub lines_mm: [f64; 3],
    /// The wheels.
    pub wheels: Corners<AtWheel>,
}

/// The angles of the wheels as they stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Angles {
    /// Toe of each wheel against the middle line of the car.
    pub toe: Corners<KnownAngle>,
    /// Camber, as the standard defines it.
    pub camber: Corners<KnownAngle>,
    /// Total toe, front and rear.
    pub total: (KnownAngle, KnownAngle),
    /// Thrust angle, positive when the rear wheels point left.
    pub thrust: KnownAngle,
    /// How far the front wheels point away from the thrust line with the steering wheel straight, positive to the left.
    pub steering_off: KnownAngle,
}

impl Instruments {
    /// How well toe, camber and caster of a front wheel are known from readings as planned: straight lines, a level floor,
    /// a sweep of 20 degrees to each side, an axis inclined by ten.
    ///
    /// # Errors
    /// A wheelbase that cannot be.
    pub fn planned(&self, wheelbase_mm: f64, agreed: &Agreed) -> Result<[KnownAngle; 3], StaticsError> {
        let floor = FloorSlope::default();
        let run_out = Corners::same(RunOut::default());
        let bench = Bench { instruments: *self, gauge_deg: [0.0; 2], floor, run_out };
        let wheel = AtWheel { camber_deg: agreed.camber_deg.0, front_mm: 250.0, rear_mm: 250.0, hub_mm: 250.0 };
        let across_mm = 2_000.0;
        let raw = Raw {
            bench,
            wheelbase_mm,
            rim_mm: (USUAL_RIM_MM, USUAL_RIM_MM),
            lines_mm: [across_mm, across_mm, wheelbase_mm + 1_000.0],
            wheels: Corners::same(wheel),
        };
        let angles = raw.angles()?;
        let lean_deg = agreed.caster_deg * 20.0_f64.to_radians().sin();
        let swept = AtSweep { plate_deg: [20.0, -20.0], gauge_deg: [lean_deg, -lean_deg] };
        Ok([angles.toe.fl, angles.camber.fl, bench.caster(Place::Fl, &swept, angles.toe.fl, 10.0)?])
    }
}

impl Bench {
    /// Bias of the gauge.
    fn bias(&self) -> KnownAngle {
        reversed(self.gauge_deg[0], self.gauge_deg[1], self.instruments.gauge_deg).bias
    }

    /// How far the rim's lean with its mark up is from that half a turn on, degrees.
    fn wobble_deg(&self, place: Place) -> f64 {
        let [up, down] = self.run_out.at(place).camber_deg;
        up - down
    }

    /// Caster of a front wheel, with the inclination that its maker states.
    ///
    /// # Errors
    /// Readings that cannot be.
    pub fn caster(
        &self,
        place: Place,
        at: &AtSweep,
        toe: KnownAngle,
        inclination_deg: f64,
    ) -> Result<KnownAngle, StaticsError> {
        let bias = self.bias();
        let reading =
            |i: usize| SweepReading { plate_deg: at.plate_deg[i], gauge_deg: at.gauge_deg[i], along_deg: None };
        let sweep = Sweep {
            side: side_of(place),
            straight_plate_deg: 0.0,
            toe_deg: toe.deg,
            // The mark stays up and the brakes are held, so the rim's lean is in both readings alike.
            gauge_bias_deg: bias.deg + self.wobble_deg(place) / 2.0,
            floor: self.floor,
            inclination: Some(KnownAngle { deg: inclination_deg, standard_deg: INCLINATION_DEG }),
            readings: vec![reading(0), reading(1)],
        };
        let swept = sweep.solve(&SweepSpread {
            gauge_deg: self.instruments.gauge_deg,
            plate_deg: self.instruments.plate_deg,
            plate_fraction: self.instruments.plate_fraction,
            bias_deg: bias.standard_deg.hypot(self.instruments.gauge_deg / std::f64::consts::SQRT_2),
            toe_deg: toe.standard_deg,
            floor_deg: FLOOR_DEG,
        })?;
        Ok(swept.caster)
    }
}

impl Raw {
    /// The angles, cleared of run-out, bias, skew and floor.
    ///
    /// # Errors
    /// Readings that cannot be.
    pub fn angles(&self) -> Result<Angles, StaticsError> {
        let of = self.bench.instruments;
        let to_line = |p: Place| {
            let (at, [up, down]) = (self.wheels.at(p), self.bench.run_out.at(p).edge_mm);
            let wobble_mm = (up - down) / 2.0;
            WheelToLine {
                front_mm: at.front_mm - wobble_mm,
                rear_mm: at.rear_mm + wobble_mm,
                between_mm: axle_of(p, self.rim_mm),
                hub_mm: at.hub_mm,
            }
        };
        let [front_mm, rear_mm, apart_mm] = self.lines_mm;
        let lines = Lines {
            wheelbase_mm: self.wheelbase_mm,
            wheels: Corners::from_fn(to_line),
            closing: Closing::Ends { front_mm, rear_mm, apart_mm },
        };
        // A wobble is half the difference of two readings, and is in both edges with opposite signs.
        let wobble_mm = of.line_mm / std::f64::consts::SQRT_2;
        let spread = LineSpread {
            edge_mm: of.line_mm.hypot(wobble_mm * std::f64::consts::SQRT_2),
            hub_mm: of.line_mm,
            across_mm: of.across_mm,
        };
        let found = lines.angles(&spread)?;
        let held = |toe: &KnownAngle| wider(toe, STEERING_HELD_DEG);
        let toe = Corners { fl: held(&found.toe.fl), fr: held(&found.toe.fr), ..found.toe };
        let camber = |p: Place| self.camber(p, toe.at(p));
        let camber = [camber(Place::Fl)?, camber(Place::Fr)?, camber(Place::Rl)?, camber(Place::Rr)?];
        let axle = |left: KnownAngle, right: KnownAngle| AxleToe { left, right };
        Ok(Angles {
            camber: Corners::from_array(camber),
            total: (found.total_front, found.total_rear),
            thrust: found.thrust,
            steering_off: steering_off(&axle(toe.fl, toe.fr), &axle(toe.rl, toe.rr)),
            toe,
        })
    }

    fn camber(&self, place: Place, toe: &KnownAngle) -> Result<KnownAngle, StaticsError> {
        let bias = self.bench.bias();
        let shown_deg = self.wheels.at(place).camber_deg;
        let reading = CamberReading {
            side: side_of(place),
            toe_deg: toe.deg,
            shown_deg,
            // The rim's lean was measured with the wheel hanging; half a turn on it would show here too.
            half_a_turn_on_deg: Some(shown_deg - self.bench.wobble_deg(place)),
            bias_deg: bias.deg,
            floor: self.bench.floor,
        };
        let gauge_deg = self.bench.instruments.gauge_deg;
        let known = reading.camber(&CamberSpread {
            // One look here and two at the hanging wheel, of which half the difference is taken.
            gauge_deg: gauge_deg * 3.0_f64.sqrt(),
            bias_deg: bias.standard_deg,
            toe_deg: toe.standard_deg,
            floor_deg: FLOOR_DEG,
            run_out_deg: 0.0,
        })?;
        Ok(known.standard)
    }
}

/// The same angle, less well known.
fn wider(angle: &KnownAngle, standard_deg: f64) -> KnownAngle {
    KnownAngle { deg: angle.deg, standard_deg: angle.standard_deg.hypot(standard_deg) }
}

fn side_of(place: Place) -> Side {
    if place.is_left() { Side::Left } else { Side::Right }
}

fn axle_of<T: Copy>(place: Place, both: (T, T)) -> T {
    match place.axle() {
        Axle::Front => both.0,
        Axle::Rear => both.1,
    }
}

/// What was agreed, front and rear; degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Agreed {
    /// Camber.
    pub camber_deg: (f64, f64),
    /// Toe of one wheel.
    pub toe_deg: (f64, f64),
    /// Caster.
    pub caster_deg: f64,
    /// Half width of the window of camber.
    pub window_deg: f64,
    /// Half width of the window of caster.
    pub caster_window_deg: f64,
    /// Half width of the window of one wheel's toe.
    pub toe_window_deg: f64,
}

/// One of the angles that are set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Angle {
    /// Toe of a wheel.
    Toe,
    /// Camber of a wheel.
    Camber,
    /// Caster of a front wheel.
    Caster,
}

impl Angle {
    /// Its place in a list of toe, camber, caster.
    pub fn index(self) -> usize {
        match self {
            Angle::Toe => 0,
            Angle::Camber => 1,
            Angle::Caster => 2,
        }
    }

    /// Its code.
    pub fn code(self) -> &'static str {
        ["toe", "camber", "caster"][self.index()]
    }
}

/// An angle of one wheel against what is wanted of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// Which.
    pub angle: Angle,
    /// Of which wheel.
    pub place: Place,
    /// As it is.
    pub is: KnownAngle,
    /// What is wanted, degrees.
    pub target_deg: f64,
    /// Half width of its window, degrees.
    pub window_deg: f64,
}

impl Row {
    /// Code: `toe.FL`.
    pub fn code(&self) -> String {
        format!("{}.{}", self.angle.code(), self.place.code())
    }

    /// Inside, outside, cannot tell.
    pub fn verdict(&self) -> Verdict {
        self.is.against(self.target_deg, self.window_deg)
    }
}

impl Agreed {
    /// Toe that is wanted of a wheel while the rear axle pushes the car along this line: the front wheels point along it
    /// with the steering wheel straight.
    pub fn toe_target_deg(&self, place: Place, thrust_deg: f64) -> f64 {
        let (left, right) = front_toe_for_straight_deg(2.0 * self.toe_deg.0, thrust_deg);
        match place {
            Place::Fl => left,
            Place::Fr => right,
            Place::Rl | Place::Rr => self.toe_deg.1,
        }
    }
}

/// Every angle against what was agreed: rear before front, caster, camber, toe.
pub fn rows(agreed: &Agreed, angles: &Angles, caster: Option<&[KnownAngle; 2]>) -> Vec<Row> {
    let mut all = Vec::new();
    for places in [[Place::Rl, Place::Rr], [Place::Fl, Place::Fr]] {
        let front = places[0].axle() == Axle::Front;
        let mut push = |angle, place, is, target_deg, window_deg| {
            all.push(Row { angle, place, is, target_deg, window_deg });
        };
        if let Some(caster) = caster.filter(|_| front) {
            for (place, is) in places.into_iter().zip(caster) {
                push(Angle::Caster, place, *is, agreed.caster_deg, agreed.caster_window_deg);
            }
        }
        for place in places {
            push(Angle::Camber, place, *angles.camber.at(place), axle_of(place, agreed.camber_deg), agreed.window_deg);
        }
        for place in places {
            let toe = angles.toe.at(place);
            // What the front wheels are to point along is itself only measured.
            let is = if front { wider(toe, angles.thrust.standard_deg) } else { *toe };
            let target_deg = agreed.toe_target_deg(place, angles.thrust.deg);
            push(Angle::Toe, place, is, target_deg, agreed.toe_window_deg);
        }
    }
    all
}

/// Expanded uncertainty of an angle that was read roughly, degrees: gauge bias and run-out are in it, and a toe by tape
/// (our choice).
pub fn rough_u_deg(angle: Angle) -> f64 {
    if angle == Angle::Toe { 2.0 * ROUGH_TOE_DEG } else { 0.3 }
}

/// Toe of a wheel before its lines were read.
pub fn rough_toe(toe_deg: f64) -> KnownAngle {
    KnownAngle { deg: toe_deg, standard_deg: ROUGH_TOE_DEG }
}
