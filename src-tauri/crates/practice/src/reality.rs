//! What truly is at a settle beside what the record says of it, and how the two differ.
//!
//! A fault acts here and nowhere else: as another state of the car or of the bench. Whoever explains a job afterwards
//! compares this state with the one that the record says, and never needs the name of a fault.

use crate::bench::PracticeCar;
use crate::configuration::{Configuration, LinkState};
use crate::data_sheet::PerAxle;
use bayhand_vehicle::{Axle, Corners, Place};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What truly is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Reality {
    /// Travel of each collar since the car came in, mm.
    pub(crate) collar_mm: Corners<f64>,
    /// The link of each axle's bar.
    pub(crate) links: PerAxle<LinkState>,
    /// Ballast aboard, kg.
    pub(crate) ballast_kg: f64,
    /// Way of the ballast from where it was strapped: backwards and outwards, m.
    pub(crate) ballast_moved_m: [f64; 2],
    /// Pressure of each tyre, bar over the air's.
    pub(crate) pressures_bar: Corners<f64>,
    /// Height of each pad without shims, mm.
    pub(crate) pad_mm: Corners<f64>,
    /// What each pad shows with nothing on it, kg.
    pub(crate) zero_kg: Corners<f64>,
    /// What each pad shows too much for one kilogram, kg.
    pub(crate) gain_error: Corners<f64>,
    /// What the pads show for one kilogram: 1, or the pounds in it.
    pub(crate) shown_per_kg: f64,
    /// What something that touches the car takes off it above each wheel, kg.
    pub(crate) held_kg: Corners<f64>,
    /// Wheel travel to the bump stop that is not there, mm.
    pub(crate) bump_lost_mm: Corners<f64>,
    /// Most that friction holds in each strut, N.
    pub(crate) strut_n: Corners<f64>,
    /// Lean of each rim against its spin axis with its mark up: into toe-in and with the top out, degrees.
    pub(crate) rim_deg: Corners<[f64; 2]>,
    /// How much shorter a bent lower arm is, mm.
    pub(crate) arm_short_mm: Corners<f64>,
    /// Where the steering stands when it is taken for straight, degrees at the wheels, to the left.
    pub(crate) steering_deg: f64,
}

/// One way in which what truly is differs from what the record says, or from a sound car and bench. Amounts are what truly
/// is, less what was taken to be.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", tag = "what", deny_unknown_fields)]
pub enum Difference {
    /// A collar stands elsewhere than its turns say.
    Collar {
        /// Where.
        place: Place,
        /// How far, mm; positive raises the car.
        mm: f64,
    },
    /// A link is bolted up and was taken for released.
    LinkLeftOn {
        /// Its axle.
        axle: Axle,
    },
    /// A bolted link was turned further than its turns say.
    LinkTurned {
        /// Its axle.
        axle: Axle,
        /// How far, turns; positive presses the left wheel down.
        turns: f64,
    },
    /// Ballast that is not there, or too much of it.
    Ballast {
        /// How much, kg.
        kg: f64,
    },
    /// Ballast that is not where it was strapped.
    BallastMoved {
        /// Backwards, mm.
        back_mm: f64,
        /// Outwards, mm.
        out_mm: f64,
    },
    /// A tyre's pressure.
    Pressure {
        /// Where.
        place: Place,
        /// How much, bar.
        bar: f64,
    },
    /// A pad's height.
    PadHeight {
        /// Where.
        place: Place,
        /// How much, mm.
        mm: f64,
    },
    /// What a pad shows with nothing on it.
    PadZero {
        /// Where.
        place: Place,
        /// How much, kg.
        kg: f64,
    },
    /// What a pad shows of its load.
    PadGain {
        /// Where.
        place: Place,
        /// How much, percent.
        pct: f64,
    },
    /// The pads show another unit.
    Unit {
        /// What they show for one kilogram.
        shown_per_kg: f64,
    },
    /// Something touches the car and carries part of it.
    Held {
        /// Above which wheel.
        place: Place,
        /// How much, kg.
        kg: f64,
    },
    /// Wheel travel to the bump stop that is not there.
    BumpTravel {
        /// Where.
        place: Place,
        /// How much is missing, mm.
        mm: f64,
    },
    /// A rim that is not as true as it was.
    Rim {
        /// Where.
        place: Place,
        /// How much further it leans into toe-in with its mark up, degrees.
        toe_deg: f64,
        /// How much further its top leans out then, degrees.
        lean_deg: f64,
    },
    /// A bent arm.
    Arm {
        /// Where.
        place: Place,
        /// How much shorter it is, mm.
        mm: f64,
    },
    /// The steering is not where it was taken to be.
    Steering {
        /// How far it stands to the left, degrees at the wheels.
        deg: f64,
    },
    /// A strut that holds more than its friction did when the car came in.
    Friction {
        /// Where.
        place: Place,
        /// How much more, N.
        newton: f64,
    },
}

impl Reality {
    /// What the record says, at a sound car on a sound bench.
    pub(crate) fn sound(car: &PracticeCar, configuration: &Configuration) -> Reality {
        let truth = &car.truth;
        Reality {
            collar_mm: configuration.collar_mm,
            links: configuration.links,
            ballast_kg: configuration.ballast_kg,
            ballast_moved_m: [0.0; 2],
            pressures_bar: configuration.pressures_bar,
            pad_mm: truth.pads.level_mm,
            zero_kg: truth.pads.zero_kg,
            gain_error: truth.pads.gain_error,
            shown_per_kg: 1.0,
            held_kg: Corners::same(0.0),
            bump_lost_mm: Corners::same(0.0),
            strut_n: truth.rubs.strut_n,
            rim_deg: truth.angle_bench.rim_deg,
            arm_short_mm: Corners::same(0.0),
            steering_deg: 0.0,
        }
    }

    /// Makes that what a difference speaks of is as it is in another state.
    pub(crate) fn put_right(&mut self, difference: Difference, taken: &Reality) {
        let corner = |is: &mut Corners<f64>, taken: &Corners<f64>, place: Place| *is.at_mut(place) = *taken.at(place);
        match difference {
            Difference::Collar { place, .. } => corner(&mut self.collar_mm, &taken.collar_mm, place),
            Difference::Pressure { place, .. } => corner(&mut self.pressures_bar, &taken.pressures_bar, place),
            Difference::PadHeight { place, .. } => corner(&mut self.pad_mm, &taken.pad_mm, place),
            Difference::PadZero { place, .. } => corner(&mut self.zero_kg, &taken.zero_kg, place),
            Difference::PadGain { place, .. } => corner(&mut self.gain_error, &taken.gain_error, place),
            Difference::Held { place, .. } => corner(&mut self.held_kg, &taken.held_kg, place),
            Difference::BumpTravel { place, .. } => corner(&mut self.bump_lost_mm, &taken.bump_lost_mm, place),
            Difference::Friction { place, .. } => corner(&mut self.strut_n, &taken.strut_n, place),
            Difference::Arm { place, .. } => corner(&mut self.arm_short_mm, &taken.arm_short_mm, place),
            Difference::Rim { place, .. } => *self.rim_deg.at_mut(place) = *taken.rim_deg.at(place),
            Difference::Steering { .. } => self.steering_deg = taken.steering_deg,
            Difference::LinkLeftOn { axle } | Difference::LinkTurned { axle, .. } => match axle {
                Axle::Front => self.links.front = taken.links.front,
                Axle::Rear => self.links.rear = taken.links.rear,
            },
            Difference::Ballast { .. } => self.ballast_kg = taken.ballast_kg,
            Difference::BallastMoved { .. } => self.ballast_moved_m = taken.ballast_moved_m,
            Difference::Unit { .. } => self.shown_per_kg = taken.shown_per_kg,
        }
    }

    /// In what this differs from another state, in the order of the fields.
    pub(crate) fn differences_from(&self, taken: &Reality) -> Vec<Difference> {
        let mut found = Vec::new();
        let mut at_corners = |is: &Corners<f64>, was: &Corners<f64>, what: fn(Place, f64) -> Difference| {
            found.extend(
                Place::ALL
                    .into_iter()
                    .map(|p| (p, is.at(p) - was.at(p)))
                    .filter(|d| d.1 != 0.0)
                    .map(|(p, by)| what(p, by)),
            );
        };
        at_corners(&self.collar_mm, &taken.collar_mm, |place, mm| Difference::Collar { place, mm });
        at_corners(&self.pressures_bar, &taken.pressures_bar, |place, bar| Difference::Pressure { place, bar });
        at_corners(&self.pad_mm, &taken.pad_mm, |place, mm| Difference::PadHeight { place, mm });
        at_corners(&self.zero_kg, &taken.zero_kg, |place, kg| Difference::PadZero { place, kg });
        at_corners(&self.gain_error, &taken.gain_error, |place, share| Difference::PadGain {
            place,
            pct: 100.0 * share,
        });
        at_corners(&self.held_kg, &taken.held_kg, |place, kg| Difference::Held { place, kg });
        at_corners(&self.bump_lost_mm, &taken.bump_lost_mm, |place, mm| Difference::BumpTravel { place, mm });
        at_corners(&self.strut_n, &taken.strut_n, |place, newton| Difference::Friction { place, newton });
        at_corners(&self.arm_short_mm, &taken.arm_short_mm, |place, mm| Difference::Arm { place, mm });
        for place in Place::ALL {
            let [toe_deg, lean_deg] = [0, 1].map(|i| self.rim_deg.at(place)[i] - taken.rim_deg.at(place)[i]);
            if (toe_deg, lean_deg) != (0.0, 0.0) {
                found.push(Difference::Rim { place, toe_deg, lean_deg });
            }
        }
        if self.steering_deg != taken.steering_deg {
            found.push(Difference::Steering { deg: self.steering_deg - taken.steering_deg });
        }
        for (axle, is, was) in
            [(Axle::Front, self.links.front, taken.links.front), (Axle::Rear, self.links.rear, taken.links.rear)]
        {
            match (is, was) {
                (LinkState::Connected { .. }, LinkState::Released) => found.push(Difference::LinkLeftOn { axle }),
                (LinkState::Connected { adjust_turns: is }, LinkState::Connected { adjust_turns: was })
                    if is != was =>
                {
                    found.push(Difference::LinkTurned { axle, turns: is - was });
                }
                _ => {}
            }
        }
        if self.ballast_kg != taken.ballast_kg {
            found.push(Difference::Ballast { kg: self.ballast_kg - taken.ballast_kg });
        }
        let [back_m, out_m] = [0, 1].map(|i| self.ballast_moved_m[i] - taken.ballast_moved_m[i]);
        if (back_m, out_m) != (0.0, 0.0) && self.ballast_kg > 0.0 {
            found.push(Difference::BallastMoved { back_mm: 1e3 * back_m, out_mm: 1e3 * out_m });
        }
        if self.shown_per_kg != taken.shown_per_kg {
            found.push(Difference::Unit { shown_per_kg: self.shown_per_kg });
        }
        found
    }
}

impl PracticeCar {
    /// In what car and bench truly differ, at a settle, from what the configuration says and from what they were when the
    /// car came in. For whoever explains a job afterwards: no one at the bench sees this.
    pub fn differences(&self, configuration: &Configuration, settle: u64) -> Vec<Difference> {
        self.reality(configuration, settle).differences_from(&Reality::sound(self, configuration))
    }

    /// The same car and bench with one of its differences put right. For whoever explains a job afterwards.
    pub fn put_right(mut self, difference: Difference) -> PracticeCar {
        self.put_right.push(difference);
        self
    }

    /// The same car and bench with nothing wrong.
    pub(crate) fn sound(&self) -> PracticeCar {
        PracticeCar { faults: Vec::new(), ..self.clone() }
    }
}
