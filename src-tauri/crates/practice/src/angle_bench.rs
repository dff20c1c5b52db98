//! The instruments of the alignment: a gravity gauge with a bias, turn plates with an error of scale, a line on either side
//! of the car that never runs quite along it, and rims that are never quite true.
//!
//! A mark on each rim is turned up for every reading. The rim leans against the spin axis by its wobble, about the same
//! way each time; half a turn on it leans the other way.

use crate::alignment::{self, Angles, WheelStands};
use crate::bench::PracticeCar;
use crate::configuration::{Configuration, PracticeError};
use crate::data_sheet::PerSide;
use crate::noise::{Draws, Purpose, to_step};
use crate::pads::signs;
use crate::reality::Reality;
use crate::rig::{Rig, Standing};
use bayhand_vehicle::{Corners, Place};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Resolution of the gauge, degrees.
pub(crate) const GAUGE_RESOLUTION_DEG: f64 = 0.01;
/// Spread of looks at the gauge, one sigma, degrees.
pub(crate) const GAUGE_LOOK_DEG: f64 = 0.02;
/// Bias of the gauge, one sigma, degrees.
const GAUGE_BIAS_DEG: f64 = 0.12;
/// Resolution of a turn plate, degrees.
pub(crate) const PLATE_RESOLUTION_DEG: f64 = 0.1;
/// Spread of looks at a turn plate, one sigma, degrees.
pub(crate) const PLATE_LOOK_DEG: f64 = 0.05;
/// Error of a turn plate's scale, one sigma, percent.
pub(crate) const PLATE_SCALE_PCT: f64 = 0.5;
/// Resolution of a distance to a line, mm.
pub(crate) const LINE_RESOLUTION_MM: f64 = 0.1;
/// Spread of looks at a distance to a line, one sigma, mm.
pub(crate) const LINE_LOOK_MM: f64 = 0.05;
/// Resolution of a distance across the car, mm.
pub(crate) const ACROSS_RESOLUTION_MM: f64 = 0.5;
/// Spread of a distance across the car, one sigma, mm.
pub(crate) const ACROSS_LOOK_MM: f64 = 0.3;
/// How far an end of a line stands off where it should, one sigma, mm.
const SKEW_MM: f64 = 1.5;
/// From a hub face to the line beside it, about, mm.
const TO_LINE_MM: f64 = 250.0;
/// From a wheel's centre to its hub face, mm.
const HUB_MM: f64 = 40.0;
/// How far the lines reach over the wheelbase, both ends together, mm.
const OVER_MM: f64 = 1000.0;
/// Wobble of a rim, least and most, degrees.
const WOBBLE_DEG: [f64; 2] = [0.03, 0.2];
/// How true the steering is held at its centre, one sigma, degrees at the wheels.
pub(crate) const HELD_DEG: f64 = 0.015;
/// Turn of the steering wheel for one of the wheels.
const STEERING_RATIO: f64 = 15.0;
/// Resolution of the level on the steering wheel, degrees.
const STEERING_RESOLUTION_DEG: f64 = 0.1;
/// Spread of a toe that is taken roughly, without lines, one sigma, degrees.
const ROUGH_TOE_DEG: f64 = 0.08;
/// How far the wheels are swept, degrees on the plate of the wheel that leads.
const SWEEP_DEG: f64 = 20.0;
/// Rack travel per degree at the wheels, m: where the search for a heading begins.
const RACK_M_PER_DEG: f64 = 0.002;

/// What is hidden of the instruments and rims.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct AngleBench {
    /// What the gauge shows on a level place, degrees.
    bias_deg: f64,
    /// Error of each turn plate's scale, as a fraction.
    plates: PerSide<f64>,
    /// Lean of each rim with its mark up: into toe-in and with the top out, degrees.
    pub(crate) rim_deg: Corners<[f64; 2]>,
}

/// What is read at one wheel that stands on its plate, mark up.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WheelSeen {
    /// The gauge across the wheel, degrees, positive with the top out.
    pub camber_deg: f64,
    /// From the rim's front edge to the line, mm.
    pub front_mm: f64,
    /// From its rear edge, mm.
    pub rear_mm: f64,
    /// From the hub face, mm.
    pub hub_mm: f64,
}

/// What is read of the lines.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LinesSeen {
    /// Between the lines before the car, mm.
    pub front_mm: f64,
    /// Between them behind it, mm.
    pub rear_mm: f64,
    /// Along the lines from one to the other, mm.
    pub apart_mm: f64,
}

/// What is read at a wheel that hangs, its mark up and half a turn on.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RunOutSeen {
    /// The gauge with the mark up and down, degrees.
    pub camber_deg: [f64; 2],
    /// From the rim's front edge to a stand beside it, with the mark up and down, mm.
    pub edge_mm: [f64; 2],
}

/// What is read at a front wheel with the steering to the left and then to the right.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SweepSeen {
    /// The turn plate, degrees, growing towards the wheel's own side.
    pub plate_deg: [f64; 2],
    /// The gauge, degrees.
    pub gauge_deg: [f64; 2],
}

impl AngleBench {
    /// Invents instruments and rims.
    pub(crate) fn invent(draws: &mut Draws) -> Self {
        let mut scale = || draws.normal(PLATE_SCALE_PCT / 100.0);
        let plates = PerSide { left: scale(), right: scale() };
        AngleBench {
            bias_deg: draws.normal(GAUGE_BIAS_DEG),
            plates,
            rim_deg: Corners::from_fn(|_| {
                let (size, phase) = (draws.even(WOBBLE_DEG[0], WOBBLE_DEG[1]), draws.even(0.0, std::f64::consts::TAU));
                [size * phase.cos(), size * phase.sin()]
            }),
        }
    }

    fn gauge(&self, lean_deg: f64, draws: &mut Draws) -> f64 {
        to_step(lean_deg + self.bias_deg + draws.normal(GAUGE_LOOK_DEG), GAUGE_RESOLUTION_DEG)
    }
}

/// The two lines of a set-up, as seen from above: where the left and the right one cross the middle of the car, and their
/// slopes to the left.
struct Lines {
    left: [f64; 2],
    right: [f64; 2],
    half_mm: f64,
}

impl Lines {
    fn across_mm(&self, line: [f64; 2], x_mm: f64) -> f64 {
        line[0] + line[1] * x_mm
    }
}

impl PracticeCar {
    /// Distance between the places on a rim that toe is measured at, mm.
    pub fn rim_mm(&self) -> f64 {
        // The specified diameter of a 16 inch rim (ETRTO, ISO 4000-1).
        405.6
    }

    /// The true angles, degrees. For tests and benchmarks: no one at the bench sees this.
    ///
    /// # Errors
    /// As [`PracticeCar::look`].
    pub fn angles(&self, configuration: &Configuration, settle: u64) -> Result<Angles, PracticeError> {
        let (rig, stands) = self.rig_and_rest(configuration, settle)?;
        let is = self.reality(configuration, settle);
        let wheels = self.wheels(configuration, &rig, &stands, &is, 0.0)?;
        Ok(alignment::angles(&wheels, &pads_m(&rig)))
    }

    /// Camber and toe as they are taken roughly, degrees: by the gauge as it is and a tape, nothing taken out.
    ///
    /// # Errors
    /// As [`PracticeCar::look`].
    pub fn rough_angles_seen(
        &self,
        configuration: &Configuration,
        settle: u64,
    ) -> Result<Corners<[f64; 2]>, PracticeError> {
        let (rig, stands) = self.rig_and_rest(configuration, settle)?;
        let is = self.reality(configuration, settle);
        let wheels = self.wheels(configuration, &rig, &stands, &is, 0.0)?;
        let angles = alignment::angles(&wheels, &pads_m(&rig));
        let mut draws = Draws::new(self.seed, Purpose::Angles, settle, 0);
        Ok(Corners::from_fn(|p| {
            let [toe_deg, lean_deg] = *is.rim_deg.at(p);
            let toe_deg = angles.toe_deg.at(p) + toe_deg + draws.normal(ROUGH_TOE_DEG);
            [self.truth.angle_bench.gauge(wheels.at(p).lean_deg(p) + lean_deg, &mut draws), to_step(toe_deg, 0.05)]
        }))
    }

    /// What the gauge shows on one place and, turned end for end, on it again, degrees.
    pub fn gauge_reversed_seen(&self, look: u64) -> [f64; 2] {
        let mut draws = Draws::new(self.seed, Purpose::Gauge, look, 0);
        let place_deg = draws.even(-0.4, 0.4);
        [place_deg, -place_deg].map(|deg| self.truth.angle_bench.gauge(deg, &mut draws))
    }

    /// What is read at the hanging wheels for the run-out of their rims.
    pub fn run_out_seen(&self, configuration: &Configuration, settle: u64, look: u64) -> Corners<RunOutSeen> {
        let mut draws = Draws::new(self.seed, Purpose::RunOut, look, 0);
        let bench = &self.truth.angle_bench;
        let is = self.reality(configuration, settle);
        Corners::from_fn(|p| {
            let [toe_deg, lean_deg] = *is.rim_deg.at(p);
            let (hangs_deg, stand_mm) = (draws.even(-2.0, 0.0), draws.even(20.0, 40.0));
            let toe_mm = self.rim_mm() / 2.0 * toe_deg.to_radians().sin();
            RunOutSeen {
                camber_deg: [lean_deg, -lean_deg].map(|deg| bench.gauge(hangs_deg + deg, &mut draws)),
                // Toe-in takes the front edge away from the stand.
                edge_mm: [toe_mm, -toe_mm].map(|mm| line_shows(stand_mm + mm, &mut draws)),
            }
        })
    }

    /// What is read of the lines as they stand after that set-up.
    pub fn lines_seen(&self, set_up: u64) -> LinesSeen {
        let lines = self.lines(set_up);
        let mut draws = Draws::new(self.seed, Purpose::Lines, set_up, 1);
        let mut between = |x_mm: f64| {
            let mm = lines.across_mm(lines.left, x_mm) - lines.across_mm(lines.right, x_mm);
            across_shows(mm, &mut draws)
        };
        LinesSeen { front_mm: between(lines.half_mm), rear_mm: between(-lines.half_mm), apart_mm: 2.0 * lines.half_mm }
    }

    /// What a level on the steering wheel shows when the steering is taken for straight, degrees; positive: turned to the left.
    pub fn steering_seen(&self, configuration: &Configuration, settle: u64) -> f64 {
        let mut draws = Draws::new(self.seed, Purpose::Steering, settle, 0);
        let is = self.reality(configuration, settle);
        to_step(STEERING_RATIO * (is.steering_deg + draws.normal(HELD_DEG)), STEERING_RESOLUTION_DEG)
    }

    /// What is read at the four wheels, with the lines of that set-up.
    ///
    /// # Errors
    /// As [`PracticeCar::look`].
    pub fn wheels_seen(
        &self,
        configuration: &Configuration,
        settle: u64,
        set_up: u64,
        look: u64,
    ) -> Result<Corners<WheelSeen>, PracticeError> {
        let mut draws = Draws::new(self.seed, Purpose::Wheels, settle, look);
        let (rig, stands) = self.rig_and_rest(configuration, settle)?;
        let rack_m = draws.normal(HELD_DEG) * RACK_M_PER_DEG;
        let is = self.reality(configuration, settle);
        let wheels = self.wheels(configuration, &rig, &stands, &is, rack_m)?;
        let lines = self.lines(set_up);
        let middle_m = (wheels.fl.centre_m.x + wheels.rl.centre_m.x) / 2.0;
        let bench = &self.truth.angle_bench;
        Ok(Corners::from_fn(|p| {
            let (_, side) = signs(p);
            let line = if p.is_left() { lines.left } else { lines.right };
            let wheel = wheels.at(p);
            let [toe_deg, lean_deg] = *is.rim_deg.at(p);
            // The rim's own heading, and its hub face, seen from above.
            let heading = (wheel.heading_deg() - side * toe_deg).to_radians();
            let hub_mm = [(wheel.centre_m.x - middle_m) * 1e3, wheel.centre_m.y * 1e3 + side * HUB_MM];
            let mut to_line = |along_mm: f64| {
                let [x, y] = [hub_mm[0] + along_mm * heading.cos(), hub_mm[1] + along_mm * heading.sin()];
                line_shows(side * (lines.across_mm(line, x) - y), &mut draws)
            };
            let half_mm = self.rim_mm() / 2.0;
            let [front_mm, rear_mm, hub_mm] = [half_mm, -half_mm, 0.0].map(&mut to_line);
            WheelSeen { camber_deg: bench.gauge(wheel.lean_deg(p) + lean_deg, &mut draws), front_mm, rear_mm, hub_mm }
        }))
    }

    /// What is read at the front wheels with the steering to the left and then to the right, brakes held.
    ///
    /// # Errors
    /// As [`PracticeCar::look`].
    pub fn sweep_seen(
        &self,
        configuration: &Configuration,
        settle: u64,
        look: u64,
    ) -> Result<PerSide<SweepSeen>, PracticeError> {
        let mut draws = Draws::new(self.seed, Purpose::Sweep, settle, look);
        let (rig, stands) = self.rig_and_rest(configuration, settle)?;
        let is = self.reality(configuration, settle);
        let at = |rack_m: f64| self.wheels(configuration, &rig, &stands, &is, rack_m);
        let straight = at(0.0)?;
        let mut seen = [SweepSeen { plate_deg: [0.0; 2], gauge_deg: [0.0; 2] }; 2];
        // To the left until the left wheel's plate shows the sweep, to the right until the right wheel's does.
        for (number, (leads, to_left)) in [(Place::Fl, 1.0), (Place::Fr, -1.0)].into_iter().enumerate() {
            let wanted_deg = straight.at(leads).heading_deg() + to_left * (SWEEP_DEG + draws.even(-0.4, 0.4));
            let wheels = steered(&at, leads, wanted_deg)?;
            for (wheel, place) in [Place::Fl, Place::Fr].into_iter().enumerate() {
                let (_, side) = signs(place);
                let scale = if place.is_left() {
                    self.truth.angle_bench.plates.left
                } else {
                    self.truth.angle_bench.plates.right
                };
                let turned_deg = side * (wheels.at(place).heading_deg() - straight.at(place).heading_deg());
                let shown_deg = turned_deg * (1.0 + scale) + draws.normal(PLATE_LOOK_DEG);
                let [_, lean_deg] = *is.rim_deg.at(place);
                seen[wheel].plate_deg[number] = to_step(shown_deg, PLATE_RESOLUTION_DEG);
                seen[wheel].gauge_deg[number] =
                    self.truth.angle_bench.gauge(wheels.at(place).lean_deg(place) + lean_deg, &mut draws);
            }
        }
        Ok(PerSide { left: seen[0], right: seen[1] })
    }

    fn rig_and_rest(&self, configuration: &Configuration, settle: u64) -> Result<(Rig, Standing), PracticeError> {
        configuration.validate(&self.sheet)?;
        let rig = self.rig_at(configuration, settle)?;
        let stands = rig.stand()?;
        Ok((rig, stands))
    }

    fn wheels(
        &self,
        configuration: &Configuration,
        rig: &Rig,
        stands: &Standing,
        is: &Reality,
        rack_m: f64,
    ) -> Result<Corners<WheelStands>, PracticeError> {
        let geometry = self.truth.geometry.bent(&is.arm_short_mm);
        // The rack stands behind the axle: to the left it steers to the right.
        let rack_m = rack_m - is.steering_deg * RACK_M_PER_DEG;
        geometry.wheels(&configuration.turned, rig, stands, &self.truth.came, rack_m)
    }

    fn lines(&self, set_up: u64) -> Lines {
        let mut draws = Draws::new(self.seed, Purpose::Lines, set_up, 0);
        let half_mm = (self.sheet.wheelbase_mm + OVER_MM) / 2.0;
        let track_mm = f64::max(self.sheet.track_mm.front, self.sheet.track_mm.rear);
        let at_mm = track_mm / 2.0 + HUB_MM + TO_LINE_MM;
        let mut line = |side: f64| {
            let ends_mm = [draws.normal(SKEW_MM), draws.normal(SKEW_MM)];
            [side * at_mm + (ends_mm[0] + ends_mm[1]) / 2.0, (ends_mm[0] - ends_mm[1]) / (2.0 * half_mm)]
        };
        Lines { left: line(1.0), right: line(-1.0), half_mm }
    }
}

/// The wheels with the rack so far that a wheel has that heading: false position, whose slope a rack hardly changes.
fn steered(
    at: &impl Fn(f64) -> Result<Corners<WheelStands>, PracticeError>,
    leads: Place,
    wanted_deg: f64,
) -> Result<Corners<WheelStands>, PracticeError> {
    let off = |rack_m: f64| Ok::<_, PracticeError>(at(rack_m)?.at(leads).heading_deg() - wanted_deg);
    let (mut before_m, mut rack_m) = (0.0, -wanted_deg * RACK_M_PER_DEG);
    let (mut before_deg, mut now_deg) = (off(before_m)?, off(rack_m)?);
    for _ in 0..20 {
        if now_deg.abs() < 1e-9 || now_deg == before_deg {
            break;
        }
        let next_m = rack_m - now_deg * (rack_m - before_m) / (now_deg - before_deg);
        (before_m, before_deg) = (rack_m, now_deg);
        rack_m = next_m;
        now_deg = off(rack_m)?;
    }
    at(rack_m)
}

fn pads_m(rig: &Rig) -> Corners<f64> {
    Corners::from_fn(|p| rig.wheels[p.index()].pad_m)
}

fn line_shows(mm: f64, draws: &mut Draws) -> f64 {
    to_step(mm + draws.normal(LINE_LOOK_MM), LINE_RESOLUTION_MM)
}

fn across_shows(mm: f64, draws: &mut Draws) -> f64 {
    to_step(mm + draws.normal(ACROSS_LOOK_MM), ACROSS_RESOLUTION_MM)
}
