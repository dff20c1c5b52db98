//! The practice car's bench in this job: what its papers and instruments show for the step at hand.
//!
//! The simulated car stands as the record says it was set: collars as turned, links as released, ballast as strapped.
//! Nothing shown here is ever filled in: the person reads it and types it, as at a real car.

mod angles;
mod faults;
mod papers;

use crate::known::{Known, axle_of};
use crate::log::Recording;
use bayhand_practice::{
    AlignmentState, Configuration, Difference, Freeing, LinkState, Looked, PerAxle, PracticeCar, PracticeError,
    Standing,
};
use bayhand_procedure::{Fact, Kind, Step, Value};
use bayhand_vehicle::{Axle, Corners, Place};
use std::cell::OnceCell;

/// What is shown for one field, or for none in particular.
#[derive(Clone, Debug, PartialEq)]
pub struct Shown {
    /// Key of the field.
    pub key: String,
    /// Id of the words for what shows it: `shows-pad`, `shows-paper`, ...
    pub by: &'static str,
    /// The text, in the unit of the field.
    pub text: String,
}

/// How many looks a reading at the practice car shows.
const LOOKS: u64 = 3;

/// The bench of one job.
pub struct Bench<'a> {
    car: PracticeCar,
    known: &'a Known<'a>,
    /// How the car stands now, once something asked: a car settles once and is looked at often.
    stands: OnceCell<Result<Standing, PracticeError>>,
}

impl<'a> Bench<'a> {
    /// The bench of the job's simulated car; none at a real car.
    pub fn of(known: &'a Known<'a>) -> Option<Bench<'a>> {
        let practice = known.log.opened.practice.as_ref()?;
        let sound = PracticeCar::from_seed(practice.seed);
        let acting = practice.faults.iter().filter(|fault| faults::acts(**fault, known));
        let car = acting.fold(sound, |car, fault| car.with_fault(*fault, 0));
        Some(Bench { car, known, stands: OnceCell::new() })
    }

    /// What is shown for the step.
    ///
    /// # Errors
    /// A configuration that the simulated car cannot be in, such as a collar beyond its travel.
    pub fn shown(&self, step: &Step) -> Result<Vec<Shown>, PracticeError> {
        let mut all = Vec::new();
        for input in &step.inputs {
            for key in input.keys() {
                let shown = match &input.kind {
                    Kind::Check => self.check(&step.id, &key),
                    Kind::Text => papers::text(&self.car, &step.id, &key).map(|text| ("shows-paper", text)),
                    Kind::Choice(_) => papers::choice(&self.car, &key).map(|text| ("shows-paper", text)),
                    Kind::Number(_) => self.number(&step.id, &key)?,
                };
                all.extend(shown.map(|(by, text)| Shown { key, by, text }));
            }
        }
        Ok(all)
    }

    /// The bench as it would be with some of its differences put right.
    pub fn without(&self, differences: &[Difference]) -> Bench<'a> {
        let car = differences.iter().fold(self.car.clone(), |car, difference| car.put_right(*difference));
        Bench { car, known: self.known, stands: OnceCell::new() }
    }

    /// In what car and bench differ from what the record says. For the coach alone.
    pub fn differences(&self) -> Vec<Difference> {
        self.car.differences(&self.configuration(), self.settle())
    }

    fn number(&self, step: &str, key: &str) -> Result<Option<(&'static str, String)>, PracticeError> {
        let (input, suffix) = key.split_once('.').unwrap_or((key, ""));
        let place = Place::ALL.into_iter().find(|p| p.code() == suffix);
        let settle = self.settle();
        let set = self.configuration();
        let shown = match (step, input, place) {
            (_, "loads", Some(place)) => {
                let looks = (0..LOOKS).map(|look| Ok(one(*self.looked(look)?.loads_kg.at(place))));
                Some(("shows-pad", looks.collect::<Result<Vec<_>, PracticeError>>()?.join(" ")))
            }
            (_, "heights", Some(place)) => Some(("shows-height-gauge", one(*self.looked(0)?.heights_mm.at(place)))),
            ("pads.survey", _, Some(place)) => Some(("shows-laser", self.laser(&Corners::same(0.0), 0, place))),
            ("pads.shims", _, Some(place)) => Some(("shows-shims", one(*self.shims_wanted().at(place)))),
            ("pads.level", "set-up-1", Some(place)) => Some(("shows-laser", self.laser(&set.shims_mm, 2, place))),
            ("pads.level", "set-up-2", Some(place)) => Some(("shows-laser", self.laser(&set.shims_mm, 3, place))),
            ("final.level", "set-up-1", Some(place)) => Some(("shows-laser", self.laser(&set.shims_mm, 4, place))),
            ("final.level", "set-up-2", Some(place)) => Some(("shows-laser", self.laser(&set.shims_mm, 5, place))),
            (_, "pressures", Some(place)) => {
                let sheet = self.car.data_sheet();
                let agreed = if step == "final.cold" { sheet.cold_bar } else { sheet.working_bar };
                let after = Configuration { pressures_bar: agreed, ..set };
                Some(("shows-pressure-gauge", two(*self.car.pressures_seen(&after, settle).at(place))))
            }
            ("rough.angles", "camber" | "toe", Some(place)) => {
                let [camber_deg, toe_deg] = *self.car.rough_angles_seen(&set, settle)?.at(place);
                Some(("shows-angle-gauge", two(if input == "camber" { camber_deg } else { toe_deg })))
            }
            ("align.runout" | "align.lines" | "align.caster" | "align.read" | "final.angles", _, _) => {
                self.angles(step, input, suffix, &set)?
            }
            ("lock.gap", "bump-gap", Some(place)) => {
                Some(("shows-rule", one(*self.car.bump_gaps_seen(&set, settle)?.at(place))))
            }
            ("back.front", "link-turns", _) => Some(("shows-link", self.link_turns(Axle::Front)?)),
            ("back.rear", "link-turns", _) => Some(("shows-link", self.link_turns(Axle::Rear)?)),
            _ => papers::number(&self.car, step, key).map(|text| ("shows-paper", text)),
        };
        Ok(shown)
    }

    /// What the pads show with nothing on them, where a person says that they read it; what a level on the steering wheel
    /// shows, where one says that it is straight.
    fn check(&self, step: &str, key: &str) -> Option<(&'static str, String)> {
        if ["steering-straight", "steering-centred", "wheel-straight"].contains(&key) {
            let deg = self.car.steering_seen(&self.configuration(), self.settle());
            return Some(("shows-steering-level", one(deg)));
        }
        (key == "zeros-read").then(|| {
            let wrong =
                |difference: &Difference| matches!(difference, Difference::PadZero { .. } | Difference::Unit { .. });
            // Whoever zeroes the pads reads them after that.
            let zeroed = if step == "pads.zero" { self.differences() } else { Vec::new() };
            let car = zeroed.into_iter().filter(wrong).fold(self.car.clone(), PracticeCar::put_right);
            let zeros_kg = car.zeros_seen(self.settle(), self.known.recordings().len() as u64);
            ("shows-pad", zeros_kg.to_array().map(one).join(" "))
        })
    }

    fn looked(&self, look: u64) -> Result<Looked, PracticeError> {
        let settle = self.settle();
        let stands = self.stands.get_or_init(|| self.car.stand(&self.configuration(), settle)).as_ref();
        stands.map(|stands| self.car.looked(stands, settle, look)).map_err(Clone::clone)
    }

    /// How often the car has rested, waited for and read: a settle's number is all that its noise depends on.
    fn settle(&self) -> u64 {
        settles(self.known.recordings())
    }

    /// The simulated car as the record says it was set.
    fn configuration(&self) -> Configuration {
        let (known, sheet) = (self.known, self.car.data_sheet());
        let found = self.car.as_found();
        let fact = |fact| known.log.state.fact(fact);
        let turns = known.turns_made();
        let link = |which, axle: &str| match fact(which) {
            Value::Released => LinkState::Released,
            _ => {
                LinkState::Connected { adjust_turns: known.value(&format!("back.{axle}"), "link-turns").unwrap_or(0.0) }
            }
        };
        let strapped = if known.log.state.fact(Fact::Ballast) == Value::Strapped {
            known.value("used.ballast", "ballast").unwrap_or(sheet.ballast_kg)
        } else {
            0.0
        };
        Configuration {
            collar_mm: Corners::from_fn(|p| turns.at(p) * known.pitch_mm(p)),
            shims_mm: known.corners("pads.shims", "shims").unwrap_or(found.shims_mm),
            freeing: match fact(Fact::Freeing) {
                Value::SlipPlates => Freeing::SlipPlates,
                Value::RunOffs => Freeing::RunOffs,
                _ => Freeing::Nothing,
            },
            links: PerAxle { front: link(Fact::FrontLink, "front"), rear: link(Fact::RearLink, "rear") },
            ballast_kg: strapped,
            fuel_l: if fact(Fact::Fuel) == Value::Agreed { sheet.fuel_l } else { found.fuel_l },
            pressures_bar: match fact(Fact::Pressures) {
                Value::Working => known.corners("used.pressures", "pressures").unwrap_or(sheet.working_bar),
                Value::Cold => known.corners("final.cold", "pressures").unwrap_or(sheet.cold_bar),
                _ => found.pressures_bar,
            },
            turned: self.turned(),
        }
    }

    /// Alignment adjusters as turned so far.
    fn turned(&self) -> AlignmentState {
        let mut turned = AlignmentState::default();
        for recording in self
            .known
            .recordings()
            .iter()
            .filter(|r| r.step.starts_with("align.change") || r.step == "rough.set-angles")
        {
            for place in Place::ALL {
                let made = |input: &str| recording.looks(&format!("{input}.{}", place.code())).first().copied();
                let caster = made("caster-turns").unwrap_or(0.0);
                match place {
                    Place::Fl => turned.caster_turns.left += caster,
                    Place::Fr => turned.caster_turns.right += caster,
                    Place::Rl | Place::Rr => {}
                }
                *turned.tie_rod_turns.at_mut(place) += made("toe-turns").unwrap_or(0.0);
                *turned.camber_turns.at_mut(place) += made("camber-turns").unwrap_or(0.0);
            }
        }
        turned
    }

    fn laser(&self, shims_mm: &Corners<f64>, set_up: u64, place: Place) -> String {
        one(*self.car.pad_heights_seen(shims_mm, self.settle(), set_up).at(place))
    }

    /// Shims that bring every pad up to the highest, from the survey, in steps of 0.1 mm.
    fn shims_wanted(&self) -> Corners<f64> {
        let survey = self.known.corners("pads.survey", "survey").unwrap_or_default();
        let highest = survey.to_array().into_iter().fold(f64::MIN, f64::max);
        survey.map(|mm| highest - mm)
    }

    /// Turns at which the bolt slides in by hand, tried a quarter at a time from none; the middle of those that do.
    fn link_turns(&self, axle: Axle) -> Result<String, PracticeError> {
        let set = self.configuration();
        let mut fits = Vec::new();
        for quarter in -60..=60 {
            let turns = f64::from(quarter) / 4.0;
            if self.car.link_fit(&set, axle, turns, self.settle())?.bolt_slides_in {
                fits.push(turns);
            }
        }
        Ok(two(fits.get(fits.len() / 2).copied().unwrap_or(0.0)))
    }
}

/// How often the car has rested in these recordings.
fn settles(recordings: &[Recording]) -> u64 {
    recordings.iter().filter(|r| r.step == "settle.wait").count() as u64
}

/// The front's or the rear's, by the suffix of a key.
fn by_suffix<T: Copy>(key: &str, both: &PerAxle<T>) -> Option<T> {
    let (_, suffix) = key.split_once('.')?;
    match suffix {
        "front" => Some(both.front),
        "rear" => Some(both.rear),
        corner => {
            let place = Place::ALL.into_iter().find(|p| p.code() == corner)?;
            Some(axle_of(place, both.front, both.rear))
        }
    }
}

fn one(value: f64) -> String {
    fixed(value, 1)
}

fn two(value: f64) -> String {
    fixed(value, 2)
}

/// Decimal text without a negative zero.
fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    if text.trim_matches(['-', '0', '.']).is_empty() { text.trim_start_matches('-').to_owned() } else { text }
}
