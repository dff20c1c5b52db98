//! The single causes that are tried, each as a direction in the differences of the readings.
//!
//! A cause that can act in several ways (mass at any place, a patch moved any way) stands here once for each of a few
//! of them; its probability is their sum. How likely a cause is before anything is read is common practice and has no
//! source: the four everyday ones are alike, the rest are rarer. That also ranks causes which explain the same.

use super::answer::{Cause, Unit, Where};
use super::question::LikeReadings;
use super::response::{Eight, Response};
use bayhand_vehicle::{Car, Corners, Place, STANDARD_GRAVITY};

/// Probability, before anything is read, that none of the causes acted between the readings.
pub(crate) const NOTHING: f64 = 0.95;

/// Kilograms in a pound (exactly; international yard and pound agreement of 1959).
const POUND_KG: f64 = 0.453_592_37;

/// One cause at one place, acting in one way.
#[derive(Clone, Debug)]
pub(crate) struct Suspect {
    pub(crate) cause: Cause,
    pub(crate) place: Option<Where>,
    pub(crate) unit: Unit,
    /// The reading that it came with.
    pub(crate) round: usize,
    /// Share of the prior probability of all causes together.
    pub(crate) prior: f64,
    /// How much better than as read the total fits the car data, were it this suspect; one when it says nothing of that.
    pub(crate) total_odds: f64,
    pub(crate) size: Size,
    /// What it does to each difference of consecutive readings, for size one: the differences not named feel nothing.
    pub(crate) effect: Vec<(usize, Eight)>,
}

/// How a cause is tried: in which unit, of what size, and how likely against its other ways.
#[derive(Clone, Copy, Debug)]
struct Way {
    cause: Cause,
    unit: Unit,
    size: Size,
    likely: f64,
}

/// What is known of the size before anything is read.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Size {
    /// It just is: reported so.
    Fixed(f64),
    /// Normal about zero with either of these standard deviations, alike likely; in units of the effect.
    Any {
        scales: [f64; 3],
        /// Reported size for one unit of the effect.
        reported: f64,
    },
    /// The same, but it can only be positive.
    Positive { scales: [f64; 3], reported: f64 },
}

/// Prior weight of a cause; only ratios count. Earlier causes are a little ahead, so that equal explanations rank.
fn weight(cause: Cause) -> f64 {
    match cause {
        Cause::PadOffset => 1.0,
        Cause::MassAdded => 0.95,
        Cause::MassMoved => 0.9,
        Cause::CollarOtherThanEntered => 0.85,
        Cause::LinkTension => 0.2,
        Cause::TyrePressure => 0.1,
        Cause::Touching => 0.095,
        Cause::WheelOffCentre => 0.09,
        Cause::OnBumpStop => 0.085,
        Cause::SidesSwapped => 0.08,
        Cause::UnitsMixed => 0.075,
    }
}

/// Places along and across the car where mass may come aboard, as parts of wheelbase and half track.
const ALONG: [f64; 8] = [-0.15, 0.05, 0.25, 0.4, 0.55, 0.75, 0.95, 1.2];
const ACROSS: [f64; 7] = [-0.9, -0.6, -0.3, 0.0, 0.3, 0.6, 0.9];

/// Ways in which mass or a patch may move, degrees from straight to the left, and how likely.
const WAYS: [(f64, f64); 5] = [(0.0, 0.6), (35.0, 0.1), (-35.0, 0.1), (75.0, 0.1), (-75.0, 0.1)];

/// All suspects, always in the same order for readings of the same number.
pub(crate) fn suspects(question: &LikeReadings, response: &Response) -> Vec<Suspect> {
    let mut list = List { question, response, all: Vec::new() };
    for pair in 0..question.rounds.len().saturating_sub(1) {
        list.steps_of(pair);
    }
    for round in 0..question.rounds.len() {
        list.misreadings_of(round);
    }
    let total: f64 = list.all.iter().map(|s| s.prior).sum();
    list.all.iter_mut().for_each(|s| s.prior *= (1.0 - NOTHING) / total);
    list.all
}

struct List<'a> {
    question: &'a LikeReadings,
    response: &'a Response,
    all: Vec<Suspect>,
}

impl List<'_> {
    /// What came with the second reading of a pair.
    fn steps_of(&mut self, pair: usize) {
        self.at_corners(pair);
        let response = self.response;
        for (spot, newton) in [(Where::Front, [1.0, -1.0, 0.0, 0.0]), (Where::Rear, [0.0, 0.0, 1.0, -1.0])] {
            let link = way(Cause::LinkTension, Unit::Newton, [50.0, 200.0, 800.0], 1.0);
            self.add(pair, Some(spot), link, response.pressed_apart(&newton));
        }
        let car = &self.question.car;
        for (behind_mm, left_mm) in places(car) {
            let weight = response.weight_at(behind_mm, left_mm);
            let sizes = [4.0, 12.0, 40.0];
            self.add(pair, None, way(Cause::MassAdded, Unit::Kg, sizes, 1.0), weight);
            let touching = way(Cause::Touching, Unit::Kg, sizes, 1.0);
            self.passing(pair, nearest(car, behind_mm, left_mm), touching, weight);
        }
        for (degrees, likely) in WAYS {
            let (forward, left) = f64::to_radians(degrees).sin_cos();
            let moved = response.weight_moved(car.sprung.cg_behind_front_axle_mm, forward, left);
            let slid = Way { likely, ..way(Cause::MassMoved, Unit::KgMm, [2_000.0, 6_000.0, 20_000.0], 1.0) };
            self.add(pair, None, slid, moved);
        }
    }

    /// The part of it that has a corner.
    fn at_corners(&mut self, pair: usize) {
        let (question, response) = (self.question, self.response);
        let round = &question.rounds[pair + 1];
        for p in Place::ALL {
            let spot = Some(p.into());
            let pad = way(Cause::PadOffset, Unit::Kg, [2.0, 6.0, 20.0], 1.0);
            self.passing(pair, p, pad, Response::pad_shows_more(p));
            let raised = Way { likely: 0.1, ..way(Cause::PadOffset, Unit::Mm, [0.5, 1.5, 5.0], 1.0) };
            self.add(pair, spot, raised, response.pad_raised(p));
            let one: [f64; 4] = std::array::from_fn(|i| if i == p.index() { 1.0 } else { 0.0 });
            let steps_per_mm = 1.0 / question.adjusters.at(p).step_mm;
            let collar = way(Cause::CollarOtherThanEntered, Unit::Steps, [0.5, 1.5, 5.0], steps_per_mm);
            self.add(pair, spot, collar, response.collars(&one));
            let load_n = (round.loads_kg.at(p) * STANDARD_GRAVITY).max(1.0);
            // By which part of its rate a tyre that stands a millimetre higher under its load is stiffer.
            let pct_per_mm = 100.0 * question.car.corners.at(p).tyre_n_per_mm / load_n;
            let tyre = way(Cause::TyrePressure, Unit::Percent, [0.3, 1.0, 3.0], pct_per_mm);
            self.add(pair, spot, tyre, response.tyre_stands_higher(p));
            for (degrees, likely) in WAYS {
                let (forward, left) = f64::to_radians(degrees).sin_cos();
                let off = Way { likely, ..way(Cause::WheelOffCentre, Unit::Mm, [5.0, 15.0, 40.0], 1.0) };
                self.add(pair, spot, off, response.patch_moved(p, *round.loads_kg.at(p), forward, left));
            }
            let stop = Way {
                cause: Cause::OnBumpStop,
                unit: Unit::Newton,
                size: Size::Positive { scales: [100.0, 400.0, 1_600.0], reported: 1.0 },
                likely: bump_stop_reached(question, pair, p),
            };
            self.add(pair, spot, stop, response.pressed_apart(&one));
        }
    }

    /// What is wrong with one reading as it was written down.
    fn misreadings_of(&mut self, round: usize) {
        let read = &self.question.rounds[round];
        let (loads, heights) = (read.loads_kg.to_array(), read.heights_mm.to_array());
        let swapped = |v: [f64; 4], axles: [bool; 2]| -> [f64; 4] {
            std::array::from_fn(|i| if axles[i / 2] { v[i] - v[i ^ 1] } else { 0.0 })
        };
        for (place, axles, with_heights) in [
            (None, [true, true], false),
            (None, [true, true], true),
            (Some(Where::Front), [true, false], false),
            (Some(Where::Rear), [false, true], false),
        ] {
            let load = swapped(loads, axles);
            let height = if with_heights { swapped(heights, axles) } else { [0.0; 4] };
            let error = Eight::from_fn(|i, _| if i < 4 { load[i] } else { height[i - 4] });
            let swap = fixed(Cause::SidesSwapped, Unit::One, 1.0);
            self.misread(round, place, swap, 1.0, error);
        }
        for (factor, true_part) in [(1.0 / POUND_KG, POUND_KG), (POUND_KG, 1.0 / POUND_KG)] {
            let error =
                |corner: Option<usize>| {
                    Eight::from_fn(|i, _| {
                        if i < 4 && corner.is_none_or(|c| c == i) { loads[i] * (1.0 - true_part) } else { 0.0 }
                    })
                };
            let mixed = fixed(Cause::UnitsMixed, Unit::Factor, factor);
            let odds = total_odds(self.question, &[(round, true_part)]);
            self.misread(round, None, mixed, odds, error(None));
            for p in Place::ALL {
                let one = Way { likely: 0.1, ..mixed };
                self.misread(round, Some(p.into()), one, 1.0, error(Some(p.index())));
            }
            if round == 0 {
                self.all_misread(mixed, true_part);
            }
        }
    }

    /// Every reading in the wrong unit.
    fn all_misread(&mut self, way: Way, true_part: f64) {
        let rounds = &self.question.rounds;
        let scaled: Vec<(usize, f64)> = (0..rounds.len()).map(|k| (k, true_part)).collect();
        let effect = rounds
            .windows(2)
            .enumerate()
            .map(|(pair, two)| {
                let changes = |i: usize| two[1].loads_kg.to_array()[i] - two[0].loads_kg.to_array()[i];
                (pair, Eight::from_fn(|i, _| if i < 4 { changes(i) * (1.0 - true_part) } else { 0.0 }))
            })
            .collect();
        let prior = weight(way.cause) * way.likely;
        self.push(0, None, way, prior, total_odds(self.question, &scaled), effect);
    }

    /// A cause that came with the second reading of a pair and stayed.
    fn add(&mut self, pair: usize, place: Option<Where>, way: Way, effect: Eight) {
        self.push(pair + 1, place, way, self.prior_of_step(&way), 1.0, vec![(pair, effect)]);
    }

    /// A cause that stayed, or was gone again at the next reading.
    fn passing(&mut self, pair: usize, place: Place, way: Way, effect: Eight) {
        self.add(pair, Some(place.into()), way, effect);
        if pair + 2 < self.question.rounds.len() {
            let there_and_back = vec![(pair, effect), (pair + 1, -effect)];
            self.push(pair + 1, Some(place.into()), way, self.prior_of_step(&way), 1.0, there_and_back);
        }
    }

    /// An error of one reading alone, of this very size.
    fn misread(&mut self, round: usize, place: Option<Where>, way: Way, total_odds: f64, error: Eight) {
        let mut effect = Vec::new();
        if round > 0 {
            effect.push((round - 1, error));
        }
        if round + 1 < self.question.rounds.len() {
            effect.push((round, -error));
        }
        let prior = weight(way.cause) * way.likely / f64::from(ways_of(way.cause)) / (pairs(self.question) + 1.0);
        self.push(round, place, way, prior, total_odds, effect);
    }

    fn prior_of_step(&self, way: &Way) -> f64 {
        weight(way.cause) * way.likely / f64::from(ways_of(way.cause)) / pairs(self.question)
    }

    fn push(
        &mut self,
        round: usize,
        place: Option<Where>,
        way: Way,
        prior: f64,
        total_odds: f64,
        effect: Vec<(usize, Eight)>,
    ) {
        let Way { cause, unit, size, .. } = way;
        self.all.push(Suspect { cause, place, unit, round, prior, total_odds, size, effect });
    }
}

fn way(cause: Cause, unit: Unit, scales: [f64; 3], reported: f64) -> Way {
    Way { cause, unit, size: Size::Any { scales, reported }, likely: 1.0 }
}

fn fixed(cause: Cause, unit: Unit, size: f64) -> Way {
    Way { cause, unit, size: Size::Fixed(size), likely: 1.0 }
}

fn pairs(question: &LikeReadings) -> f64 {
    (question.rounds.len().max(2) - 1) as f64
}

/// In how many ways a cause is tried with one reading, so that trying it often does not make it likelier.
fn ways_of(cause: Cause) -> u16 {
    match cause {
        Cause::MassMoved => 1,
        Cause::LinkTension => 2,
        Cause::MassAdded | Cause::Touching => (ALONG.len() * ACROSS.len()) as u16,
        _ => 4,
    }
}

/// Places where mass may come aboard: behind the front axle and left of the middle, mm.
fn places(car: &Car) -> impl Iterator<Item = (f64, f64)> {
    let (wheelbase, half) = (car.wheelbase_mm, (car.track_front_mm + car.track_rear_mm) / 4.0);
    ALONG.into_iter().flat_map(move |x| ACROSS.into_iter().map(move |y| (x * wheelbase, y * half)))
}

fn nearest(car: &Car, behind_mm: f64, left_mm: f64) -> Place {
    let front = behind_mm < car.wheelbase_mm / 2.0;
    match (front, left_mm >= 0.0) {
        (true, true) => Place::Fl,
        (true, false) => Place::Fr,
        (false, true) => Place::Rl,
        (false, false) => Place::Rr,
    }
}

/// How likely a bump stop is reached at a corner: rarely when nobody says where it is; hardly when it is said to be
/// further away than the wheel has moved into the body since the first reading; as an everyday cause when it is not.
fn bump_stop_reached(question: &LikeReadings, pair: usize, place: Place) -> f64 {
    let corner = question.car.corners.at(place);
    let Some(bump_mm) = corner.bump_mm else { return 1.0 };
    let (first, now) = (&question.rounds[0], &question.rounds[pair + 1]);
    let of = |v: &Corners<f64>| *v.at(place);
    let tyre_mm = (of(&now.loads_kg) - of(&first.loads_kg)) * STANDARD_GRAVITY / corner.tyre_n_per_mm;
    let into_mm = of(&first.heights_mm) - of(&now.heights_mm) - tyre_mm;
    // Rates and measuring points leave a few millimetres of doubt.
    if into_mm > bump_mm - 3.0 { 10.0 } else { 0.01 }
}

/// How much better the totals fit the car data when these readings are scaled by their factors. The total of a car
/// is known to about a tenth (fuel, driver, ballast); rarely it is far off, which Student's t with four degrees of
/// freedom allows for.
fn total_odds(question: &LikeReadings, scaled: &[(usize, f64)]) -> f64 {
    let car_kg = total_of_car_kg(&question.car);
    let fits = |kg: f64| (1.0 + ((kg / car_kg).ln() / 0.1).powi(2) / 4.0).powf(-2.5);
    let total = |k: usize| question.rounds[k].loads_kg.to_array().iter().sum::<f64>();
    scaled.iter().map(|&(k, factor)| fits(total(k) * factor) / fits(total(k))).product()
}

/// What the car weighs by its data, kg.
pub(crate) fn total_of_car_kg(car: &Car) -> f64 {
    car.sprung.mass_kg + car.corners.iter().map(|(_, c)| c.unsprung_kg).sum::<f64>()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]
mod tests {
    use super::super::question::LikeReading;
    use super::super::response::common::{square_car, square_loads_kg};
    use super::*;
    use crate::{Confidence, Pads};
    use bayhand_vehicle::Adjuster;

    /// However many readings there are: something happened in one of twenty of them, and the everyday causes are likelier
    /// than the rare ones.
    #[test]
    fn what_is_likely_before_anything_is_read() {
        let reading = LikeReading {
            turned_steps: Corners::same(0.0),
            loads_kg: square_loads_kg(),
            heights_mm: Corners::same(120.0),
        };
        let adjuster = Adjuster { step_mm: 0.5, up_steps: 40, down_steps: 40 };
        let pads =
            Pads { resolution_kg: 0.1, look_kg: 0.3, settle_kg: 0.3, level_mm: 0.05, height_mm: 0.3, patch_mm: 0.0 };
        for count in [2, 3, 7] {
            let question = LikeReadings {
                car: square_car(),
                confidence: Confidence::default(),
                adjusters: Corners::same(adjuster),
                pads,
                rounds: vec![reading; count],
            };
            let all = suspects(&question, &Response::of(&question.car).unwrap());
            let of =
                |wanted: &[Cause]| -> f64 { all.iter().filter(|s| wanted.contains(&s.cause)).map(|s| s.prior).sum() };
            assert!((all.iter().map(|s| s.prior).sum::<f64>() - 0.05).abs() < 1e-12, "{count} readings");
            let everyday = of(&[Cause::PadOffset, Cause::MassAdded, Cause::MassMoved, Cause::CollarOtherThanEntered]);
            assert!(everyday > 0.03 && everyday < 0.05, "{count} readings: {everyday} of 0.05");
        }
    }
}
