//! The bench: what a person at a practice job can look at, and nothing of what is hidden.

use crate::alignment::{AlignmentState, Angles};
use crate::configuration::{Configuration, LinkState, PracticeError, within};
use crate::data_sheet::{DataSheet, PerAxle};
use crate::fault::{self, Fault, Planted};
use crate::invent;
use crate::links::LinkFit;
use crate::noise::{Draws, Purpose, to_step};
use crate::pads::{Pads, signs};
use crate::rig::{CornerState, PointMass, Rig, Standing};
use crate::settle;
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
    pub(crate) fault: Option<Planted>,
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

    /// The same car with a fault that acts from that settle on.
    pub fn with_fault(mut self, fault: Fault, from_settle: u64) -> Self {
        self.fault = Some(Planted { fault, from_settle });
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
        let loads_kg = self.pads_at(settle).shown(&stands.loads_kg, &mut draws);
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
        let rig = self.rig_at(configuration, settle);
        let free = rig.stand()?;
        let mut rubs = self.truth.rubs;
        if self.acts(Fault::StickyStrut, settle) {
            rubs.strut_n.rl = fault::STICKY_N;
        }
        let mut draws = Draws::new(self.seed, Purpose::Settle, settle, 0);
        Ok(settle::settle(&rig, &free, &rubs, configuration.freeing, &mut draws)?)
    }

    /// What the pads show with the car up, kg.
    pub fn zeros_seen(&self, settle: u64, look: u64) -> Corners<f64> {
        let mut draws = Draws::new(self.seed, Purpose::Zeros, settle, look);
        self.pads_at(settle).shown(&Corners::same(0.0), &mut draws)
    }

    /// What the laser shows of the pads' heights with these shims, mm from their mean, to 0.1 mm. A set-up of odd
    /// number stands half a turn from one of even number: averaged, the two lose the tilt of the laser's plane.
    pub fn pad_heights_seen(&self, shims_mm: &Corners<f64>, set_up: u64) -> Corners<f64> {
        let mut draws = Draws::new(self.seed, Purpose::Laser, set_up, 0);
        let (half_m, track) = (self.sheet.wheelbase_mm / 2e3, self.sheet.track_mm);
        let at_m = Corners::from_fn(|p| {
            let (fore, left) = signs(p);
            [fore * half_m, left * track.of(p) / 2e3]
        });
        self.truth.pads.laser(shims_mm, &at_m, set_up % 2 == 1, &mut draws)
    }

    /// What the gauge shows at each tyre, bar, to 0.01 bar.
    pub fn pressures_seen(&self, configuration: &Configuration, settle: u64) -> Corners<f64> {
        self.pressures_at(configuration, settle).map(|bar| to_step(*bar, PRESSURE_RESOLUTION_BAR))
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
        let mut rig = self.rig_at(configuration, settle);
        // A link that was forgotten is found and undone here at last.
        rig.bars[number] = None;
        let stands = rig.stand()?;
        let [left_mm, right_mm] = struts.map(|p| *stands.struts_mm.at(p));
        Ok(link.fit(right_mm - left_mm, adjust_turns))
    }

    /// What the angle gauge shows, degrees, to 0.05 degrees.
    ///
    /// # Errors
    /// As [`PracticeCar::look`]; turns that cannot be made.
    pub fn angles_seen(
        &self,
        turned: &AlignmentState,
        configuration: &Configuration,
        settle: u64,
        look: u64,
    ) -> Result<Angles, PracticeError> {
        let mut draws = Draws::new(self.seed, Purpose::Angles, settle, look);
        Ok(self.angles(turned, configuration, settle)?.shown(&mut draws))
    }

    /// The true angles, degrees. For tests and benchmarks: no one at the bench sees this.
    ///
    /// # Errors
    /// As [`PracticeCar::angles_seen`].
    pub fn angles(
        &self,
        turned: &AlignmentState,
        configuration: &Configuration,
        settle: u64,
    ) -> Result<Angles, PracticeError> {
        turned.validate()?;
        let stands = self.at_rest(configuration, settle)?;
        Ok(self.truth.geometry.angles(turned, &stands, &self.truth.came))
    }

    /// How the car would truly stand if nothing rubbed: what its settles differ from by chance. For tests and benchmarks.
    ///
    /// # Errors
    /// As [`PracticeCar::look`].
    pub fn at_rest(&self, configuration: &Configuration, settle: u64) -> Result<Standing, PracticeError> {
        configuration.validate(&self.sheet)?;
        Ok(self.rig_at(configuration, settle).stand()?)
    }

    fn acts(&self, fault: Fault, settle: u64) -> bool {
        Planted::acts(self.fault, fault, settle)
    }

    fn rig_at(&self, configuration: &Configuration, settle: u64) -> Rig {
        let mut rig = self.truth.rig.clone();
        let pressures_bar = self.pressures_at(configuration, settle);
        for place in Place::ALL {
            let wheel = &mut rig.wheels[place.index()];
            wheel.pad_m = (self.truth.pads.level_mm.at(place) + configuration.shims_mm.at(place)) / 1e3;
            wheel.strut.collar_m = configuration.collar_mm.at(place) / 1e3;
            let inflated = pressures_bar.at(place) / self.sheet.working_bar.at(place);
            wheel.tyre_n_per_m *= CARCASS_SHARE + (1.0 - CARCASS_SHARE) * inflated;
        }
        let mut front_link = configuration.links.front;
        if self.acts(Fault::LinkLeftOn, settle) && front_link == LinkState::Released {
            front_link = LinkState::Connected { adjust_turns: 0.0 };
        }
        rig.bars = [self.truth.links.front.bar(front_link), self.truth.links.rear.bar(configuration.links.rear)];
        let mut seat = PointMass { mass_kg: configuration.ballast_kg, ..self.truth.seat };
        if self.acts(Fault::BallastSlides, settle) {
            seat.left_m += fault::BALLAST_OUT_M * seat.left_m.signum();
            seat.behind_front_axle_m += fault::BALLAST_BACK_M;
        }
        rig.add(&seat);
        rig.add(&PointMass { mass_kg: configuration.fuel_l * FUEL_KG_PER_L, ..self.truth.tank });
        rig
    }

    fn pressures_at(&self, configuration: &Configuration, settle: u64) -> Corners<f64> {
        let mut bar = configuration.pressures_bar;
        if self.acts(Fault::TyreDown, settle) {
            bar.fl = (bar.fl - fault::TYRE_DOWN_BAR).max(0.0);
        }
        bar
    }

    fn pads_at(&self, settle: u64) -> Pads {
        let mut pads = self.truth.pads;
        if self.acts(Fault::PadZero, settle) {
            pads.zero_kg.fr += fault::PAD_ZERO_KG;
        }
        pads
    }
}
