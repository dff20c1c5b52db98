//! The bench: what a person at a practice job can look at, and nothing of what is hidden.

use crate::configuration::{Configuration, PracticeError, within};
use crate::data_sheet::{DataSheet, PerAxle};
use crate::fault::{Fault, Planted};
use crate::invent;
use crate::links::LinkFit;
use crate::noise::{Draws, Purpose, to_step};
use crate::pads::{Pads, signs};
use crate::reality::{Difference, Reality};
use crate::rig::{CornerState, PointMass, Rig, Standing};
use crate::settle::{self, Rubs};
use crate::truth::Truth;
use bayhand_vehicle::{Axle, Car, Corners, Place};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Resolution of a height, mm.
pub(crate) const HEIGHT_RESOLUTION_MM: f64 = 0.5;
/// Resolution of the pressure gauge, bar.
pub(crate) const PRESSURE_RESOLUTION_BAR: f64 = 0.01;
/// Density of petrol, kg per l (a usual value; EN 228 allows 0.720 to 0.775).
pub(crate) const FUEL_KG_PER_L: f64 = 0.745;
/// Share of a tyre's vertical rate that its carcass gives without pressure. With the rest in proportion to the
/// pressure, one psi moves about 0.4 kg a corner on a stiff one-tonne car, as the trade says.
const CARCASS_SHARE: f64 = 0.15;
/// Spread of looks at a height, one sigma, mm.
pub(crate) const LOOK_HEIGHT_SIGMA_MM: f64 = 0.1;

/// A simulated car on its pads.
#[derive(Clone, Debug)]
pub struct PracticeCar {
    /// The car as its data sheet has a person enter it.
    pub entered: Car,
    pub(crate) seed: u64,
    pub(crate) sheet: DataSheet,
    pub(crate) as_found: Configuration,
    pub(crate) truth: Truth,
    pub(crate) faults: Vec<Planted>,
    /// What was put right of what the faults do.
    pub(crate) put_right: Vec<Difference>,
}

/// What a look at the resting car shows.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Looked {
    /// What the pads show, kg, to 0.1 kg. An unloaded pad can show a little below zero.
    pub loads_kg: Corners<f64>,
    /// Heights of the measuring points over their pads, mm, to 0.5 mm.
    pub heights_mm: Corners<f64>,
    /// What can be seen at each corner.
    pub states: Corners<CornerState>,
}

impl PracticeCar {
    /// A small mid-engined coupe with a driver's ballast, invented from a seed. The same seed gives the same car.
    pub fn from_seed(seed: u64) -> Self {
        invent::car(seed)
    }

    /// The same car with a fault more, which acts from that settle on.
    pub fn with_fault(mut self, fault: Fault, from_settle: u64) -> Self {
        self.faults.push(Planted { fault, from_settle });
        self
    }

    /// What the data sheet and the order say.
    pub fn data_sheet(&self) -> &DataSheet {
        &self.sheet
    }

    /// How the car comes in: links on, no ballast, some fuel, pressures nobody has set.
    pub fn as_found(&self) -> Configuration {
        self.as_found
    }

    /// The car as it is to be read: as found, but links released, ballast in, agreed fuel and working pressures.
    pub fn ready(&self) -> Configuration {
        Configuration {
            links: PerAxle::default(),
            ballast_kg: self.sheet.ballast_kg,
            fuel_l: self.sheet.fuel_l,
            pressures_bar: self.sheet.working_bar,
            ..self.as_found
        }
    }

    /// What the `look`-th look after the `settle`-th settle shows.
    ///
    /// # Errors
    /// A configuration that cannot be set, or a car that finds no rest.
    pub fn look(&self, configuration: &Configuration, settle: u64, look: u64) -> Result<Looked, PracticeError> {
        Ok(self.looked(&self.stand(configuration, settle)?, settle, look))
    }

    /// The same for a car that is known to stand so after that settle: many looks need the car to settle only once.
    pub fn looked(&self, stands: &Standing, settle: u64, look: u64) -> Looked {
        let mut draws = Draws::new(self.seed, Purpose::Look, settle, look);
        let loads_kg = self.pads_show(&stands.loads_kg, settle, &mut draws);
        let heights_mm =
            stands.heights_mm.map(|mm| to_step(mm + draws.normal(LOOK_HEIGHT_SIGMA_MM), HEIGHT_RESOLUTION_MM));
        Looked { loads_kg, heights_mm, states: stands.states }
    }

    /// How the car truly stands after that settle, friction included. For tests and benchmarks: no one at the bench
    /// sees this.
    ///
    /// # Errors
    /// As [`PracticeCar::look`].
    pub fn stand(&self, configuration: &Configuration, settle: u64) -> Result<Standing, PracticeError> {
        configuration.validate(&self.sheet)?;
        let rig = self.rig_at(configuration, settle)?;
        let free = rig.stand()?;
        let rubs = Rubs { strut_n: self.reality(configuration, settle).strut_n, ..self.truth.rubs };
        let mut draws = Draws::new(self.seed, Purpose::Settle, settle, 0);
        Ok(settle::settle(&rig, &free, &rubs, configuration.freeing, &mut draws)?)
    }

    /// What the pads show with the car up, kg.
    pub fn zeros_seen(&self, settle: u64, look: u64) -> Corners<f64> {
        let mut draws = Draws::new(self.seed, Purpose::Zeros, settle, look);
        self.pads_show(&Corners::same(0.0), settle, &mut draws)
    }

    /// What the laser shows of the pads' heights with these shims, mm from their mean, to 0.1 mm. A set-up of odd
    /// number stands half a turn from one of even number: averaged, the two lose the tilt of the laser's plane. `settle` says
    /// when: the last settle before.
    pub fn pad_heights_seen(&self, shims_mm: &Corners<f64>, settle: u64, set_up: u64) -> Corners<f64> {
        let mut draws = Draws::new(self.seed, Purpose::Laser, set_up, 0);
        let (half_m, track) = (self.sheet.wheelbase_mm / 2e3, self.sheet.track_mm);
        let at_m = Corners::from_fn(|p| {
            let (fore, left) = signs(p);
            [fore * half_m, left * track.of(p) / 2e3]
        });
        let pads = Pads { level_mm: self.reality(&self.as_found, settle).pad_mm, ..self.truth.pads };
        pads.laser(shims_mm, &at_m, set_up % 2 == 1, &mut draws)
    }

    /// What a rule shows of the wheel travel left to each bump stop, mm, to 0.5 mm; 0: the stop is touched.
    ///
    /// # Errors
    /// As [`PracticeCar::look`].
    pub fn bump_gaps_seen(&self, configuration: &Configuration, settle: u64) -> Result<Corners<f64>, PracticeError> {
        let stands = self.stand(configuration, settle)?;
        let rig = self.rig_at(configuration, settle)?;
        Ok(Corners::from_fn(|p| {
            let touched_m = rig.wheels[p.index()].strut.bump_m.unwrap_or(0.0);
            to_step((stands.struts_mm.at(p) - 1e3 * touched_m).max(0.0), HEIGHT_RESOLUTION_MM)
        }))
    }

    /// What the gauge shows at each tyre, bar, to 0.01 bar.
    pub fn pressures_seen(&self, configuration: &Configuration, settle: u64) -> Corners<f64> {
        self.reality(configuration, settle).pressures_bar.map(|bar| to_step(*bar, PRESSURE_RESOLUTION_BAR))
    }

    /// How the released link of an axle fits after that many turns since the car came in, with the rest of the
    /// configuration as it is. The state of that axle's own link in it does not matter: it is undone to be tried.
    ///
    /// # Errors
    /// As [`PracticeCar::look`]; turns that cannot be made.
    pub fn link_fit(
        &self,
        configuration: &Configuration,
        axle: Axle,
        adjust_turns: f64,
        settle: u64,
    ) -> Result<LinkFit, PracticeError> {
        within("adjust_turns".to_owned(), adjust_turns, -20.0, 20.0, "turns")?;
        configuration.validate(&self.sheet)?;
        let (number, link, struts) = match axle {
            Axle::Front => (0, &self.truth.links.front, [Place::Fl, Place::Fr]),
            Axle::Rear => (1, &self.truth.links.rear, [Place::Rl, Place::Rr]),
        };
        let mut rig = self.rig_at(configuration, settle)?;
        // A link that was forgotten is found and undone here at last.
        rig.bars[number] = None;
        let stands = rig.stand()?;
        let [left_mm, right_mm] = struts.map(|p| *stands.struts_mm.at(p));
        Ok(link.fit(right_mm - left_mm, adjust_turns))
    }

    /// How the car would truly stand if nothing rubbed: what its settles differ from by chance. For tests and benchmarks.
    ///
    /// # Errors
    /// As [`PracticeCar::look`].
    pub fn at_rest(&self, configuration: &Configuration, settle: u64) -> Result<Standing, PracticeError> {
        configuration.validate(&self.sheet)?;
        Ok(self.rig_at(configuration, settle)?.stand()?)
    }

    /// What truly is at a settle, where the record says `configuration`.
    pub(crate) fn reality(&self, configuration: &Configuration, settle: u64) -> Reality {
        let mut is = Reality::sound(self, configuration);
        for planted in self.faults.iter().filter(|planted| settle >= planted.from_settle) {
            planted.fault.act(&mut is, self.sheet.thread.pitch_mm, self.sheet.bump_mm.rear);
        }
        if !self.put_right.is_empty() {
            let sound = Reality::sound(self, configuration);
            self.put_right.iter().for_each(|difference| is.put_right(*difference, &sound));
        }
        is
    }

    pub(crate) fn rig_at(&self, configuration: &Configuration, settle: u64) -> Result<Rig, PracticeError> {
        let is = self.reality(configuration, settle);
        let shifts = self.truth.geometry.bent(&is.arm_short_mm).shifts(&configuration.turned)?;
        let mut rig = self.truth.rig.clone();
        for place in Place::ALL {
            let wheel = &mut rig.wheels[place.index()];
            wheel.pad_m = (is.pad_mm.at(place) + configuration.shims_mm.at(place)) / 1e3;
            wheel.strut.collar_m = is.collar_mm.at(place) / 1e3;
            wheel.strut.bump_m = wheel.strut.bump_m.map(|touched_m| touched_m + is.bump_lost_mm.at(place) / 1e3);
            let inflated = is.pressures_bar.at(place) / self.sheet.working_bar.at(place);
            wheel.tyre_n_per_m *= CARCASS_SHARE + (1.0 - CARCASS_SHARE) * inflated;
            let (shift, (_, left)) = (shifts.at(place), signs(place));
            wheel.x_m += shift.forward_m;
            wheel.y_m += left * shift.outward_m;
            wheel.strut.longer_by(shift.down_m);
        }
        rig.bars = [self.truth.links.front.bar(is.links.front), self.truth.links.rear.bar(is.links.rear)];
        let seat = &self.truth.seat;
        let [back_m, out_m] = is.ballast_moved_m;
        rig.add(&PointMass {
            mass_kg: is.ballast_kg,
            behind_front_axle_m: seat.behind_front_axle_m + back_m,
            left_m: seat.left_m + out_m * seat.left_m.signum(),
            ..*seat
        });
        rig.add(&PointMass { mass_kg: configuration.fuel_l * FUEL_KG_PER_L, ..self.truth.tank });
        for (place, held_kg) in is.held_kg.iter().filter(|(_, held_kg)| **held_kg != 0.0) {
            rig.add(&self.carried_at_sill(place, *held_kg));
        }
        Ok(rig)
    }

    /// What something under the sill carries, as mass that is not there. It presses straight up at the height of the roll
    /// axis, so that leaning adds no moment.
    fn carried_at_sill(&self, place: Place, held_kg: f64) -> PointMass {
        let (fore, left) = signs(place);
        PointMass {
            mass_kg: -held_kg,
            behind_front_axle_m: self.sheet.wheelbase_mm / 1e3 * (0.5 - 0.25 * fore),
            left_m: left * self.sheet.track_mm.of(place) / 2e3 * 0.9,
            height_m: self.sheet.roll_axis_height_mm / 1e3,
        }
    }

    /// What the pads show under these loads, in the unit that they are set to.
    fn pads_show(&self, loads_kg: &Corners<f64>, settle: u64, draws: &mut Draws) -> Corners<f64> {
        let is = self.reality(&self.as_found, settle);
        let pads = Pads { zero_kg: is.zero_kg, gain_error: is.gain_error, ..self.truth.pads };
        let shown_kg = pads.shown(loads_kg, draws);
        if is.shown_per_kg == 1.0 {
            return shown_kg;
        }
        shown_kg.map(|kg| to_step(kg * is.shown_per_kg, crate::pads::RESOLUTION_KG))
    }
}
