//! The mass centre, its height from a lift, what moving mass does, and what to move.

mod common;

use bayhand_chassis::{
    AxleRates, COVERAGE, Figures, Going, HeightPart, LengthSpread, Lift, LiftSpread, LiftStep, LiftTest, MassChange,
    Movable, Pads, Share, Short, Spot, Spread, Suspension, after_mass_change, ballast_to_reach, carried, centre_height,
    mass_centre, mass_centre_height_mm, mass_centre_spread, reach,
};
use bayhand_vehicle::{Axle, Car, Corners};
use common::draws::Draws;
use common::{near, square_car, square_loads_kg};
use serde::Deserialize;

/// Rates of a car whose lift is given as an angle and whose suspension is locked: they do not matter.
const ANY: AxleRates = AxleRates { front_n_per_mm: 400.0, rear_n_per_mm: 400.0 };

fn up_and_down(lifts: &[f64], lift: impl Fn(f64) -> Lift, grounded_kg: impl Fn(f64) -> f64) -> Vec<LiftStep> {
    let one = |&size: &f64, going| LiftStep { lift: lift(size), going, grounded_kg: grounded_kg(size) };
    let up = lifts.iter().map(|size| one(size, Going::Up));
    up.chain(lifts.iter().rev().map(|size| one(size, Going::Down))).collect()
}

/// The car of the check: 1500 kg, wheelbase 2.6 m, centre 1.2 m behind the front axle and 0.55 m high, radius 0.30 m.
fn lifted_rear() -> LiftTest {
    let front_kg = |deg: f64| 1_500.0 * (1.4 + 0.25 * deg.to_radians().tan()) / 2.6;
    LiftTest {
        raised: Axle::Rear,
        wheelbase_mm: 2_600.0,
        radius_front_mm: 300.0,
        radius_rear_mm: 300.0,
        total_kg: 1_500.0,
        suspension: Suspension::Locked,
        tyres: ANY,
        steps: up_and_down(&[0.0, 5.0, 10.0, 15.0, 20.0], |deg| Lift::BodyAngle { deg }, front_kg),
    }
}

/// R: ISO 10392:2011, 6.2 (method), recomputed: m 1500 kg, g 9.81, 15 degrees: 7923.4615 N level, 8302.5839 N tilted.
#[test]
fn the_published_method() {
    let test = lifted_rear();
    let front_n = |i: usize| test.steps[i].grounded_kg * 9.81;
    near(front_n(0), 7_923.461_5, 5e-5, "front axle, level");
    near(front_n(3), 8_302.583_9, 5e-5, "front axle at 15 degrees");
    let kg = |n: f64| n / 9.81;
    let one = mass_centre_height_mm(2_600.0, 300.0, 1_500.0, kg(7_923.461_5), kg(8_302.583_9), 15.0);
    near(one.expect("a height"), 550.0, 1e-3, "from one angle");
    let found = centre_height(&test, &LiftSpread::default()).expect("a height");
    near(found.height_mm, 550.0, 1e-9, "from several, up and down");
    near(found.standard_mm, 0.0, 1e-9, "no scatter, nothing uncertain");
    near(found.line.intercept, 1_200.0, 1e-9, "the line starts at the place of the mass centre");
    near(found.up_less_down_mm, 0.0, 1e-9, "no friction");
}

/// R: the same car with its front axle raised: the rear axle carries 1500 (1.2 + 0.25 t) / 2.6.
#[test]
fn either_axle_may_be_raised() {
    let mut test = lifted_rear();
    test.raised = Axle::Front;
    let rear_kg = |deg: f64| 1_500.0 * (1.2 + 0.25 * deg.to_radians().tan()) / 2.6;
    test.steps = up_and_down(&[0.0, 4.0, 8.0, 12.0], |deg| Lift::BodyAngle { deg }, rear_kg);
    let found = centre_height(&test, &LiftSpread::default()).expect("a height");
    near(found.height_mm, 550.0, 1e-9, "height");
    near(found.line.intercept, 1_400.0, 1e-9, "distance from the rear axle");
}

#[derive(Deserialize)]
struct LiftCases {
    cases: Vec<LiftCase>,
}

#[derive(Deserialize)]
struct LiftCase {
    free: bool,
    total_kg: f64,
    wheelbase_mm: f64,
    radius_grounded_mm: f64,
    radius_raised_mm: f64,
    tyre_grounded_n_per_mm: f64,
    tyre_raised_n_per_mm: f64,
    spring_grounded_n_per_mm: f64,
    spring_raised_n_per_mm: f64,
    height_mm: f64,
    steps: Vec<ReferenceStep>,
}

#[derive(Deserialize)]
struct ReferenceStep {
    pad_rise_mm: f64,
    centre_rise_mm: f64,
    angle_deg: f64,
    grounded_kg: f64,
}

/// I: 20 cars at rest with an axle raised, found by minimising their energy; origin in data/ORIGIN.md. Unequal radii;
/// tyres give way; ten of them with a locked and ten with a free suspension.
#[test]
fn an_independent_minimiser_lifts_the_same_cars() {
    let reference: LiftCases = serde_json::from_str(include_str!("data/lift.json")).expect("cases");
    let mut worst = 0.0_f64;
    for case in &reference.cases {
        let suspension = if case.free {
            Suspension::Free(AxleRates {
                front_n_per_mm: case.spring_grounded_n_per_mm,
                rear_n_per_mm: case.spring_raised_n_per_mm,
            })
        } else {
            Suspension::Locked
        };
        let by: [fn(&ReferenceStep) -> Lift; 3] = [
            |s| Lift::BodyAngle { deg: s.angle_deg },
            |s| Lift::PadRise { mm: s.pad_rise_mm },
            |s| Lift::CentreRise { mm: s.centre_rise_mm },
        ];
        for lift in by {
            let step = |(i, s): (usize, &ReferenceStep), going| LiftStep {
                // The minimiser leaves a level car tilted by its last digits.
                lift: if i == 0 { Lift::PadRise { mm: 0.0 } } else { lift(s) },
                going,
                grounded_kg: s.grounded_kg,
            };
            let up = case.steps.iter().enumerate().map(|s| step(s, Going::Up));
            let down = case.steps.iter().enumerate().map(|s| step(s, Going::Down));
            let test = LiftTest {
                raised: Axle::Rear,
                wheelbase_mm: case.wheelbase_mm,
                radius_front_mm: case.radius_grounded_mm,
                radius_rear_mm: case.radius_raised_mm,
                total_kg: case.total_kg,
                suspension,
                tyres: AxleRates {
                    front_n_per_mm: case.tyre_grounded_n_per_mm,
                    rear_n_per_mm: case.tyre_raised_n_per_mm,
                },
                steps: up.chain(down).collect(),
            };
            let found = centre_height(&test, &LiftSpread::default()).expect("a height");
            worst = worst.max((found.height_mm - case.height_mm).abs());
            near(found.height_mm, case.height_mm, 0.01, "height of the mass centre");
        }
    }
    println!("{} cars, three ways to say how high: worst {worst:.6} mm", reference.cases.len());
    assert_eq!(reference.cases.len(), 20, "all cars were read");
}

/// Control: without the springs' travel the height of a free suspension comes out wrong by centimetres.
#[test]
fn a_suspension_that_was_not_held_spoils_the_height() {
    let reference: LiftCases = serde_json::from_str(include_str!("data/lift.json")).expect("cases");
    let free = reference.cases.iter().find(|c| c.free).expect("a car with a free suspension");
    let last = free.steps.last().expect("a step");
    let taken_as_locked = mass_centre_height_mm(
        free.wheelbase_mm,
        free.radius_grounded_mm,
        free.total_kg,
        free.steps[0].grounded_kg,
        last.grounded_kg,
        last.angle_deg,
    );
    let off = (taken_as_locked.expect("a height") - free.height_mm).abs();
    println!("taken as locked the height is {off:.1} mm off");
    assert!(off > 5.0, "only {off} mm: springs would not matter");
}

/// R: JCGM 100:2008, 5.1.2, by hand for the locked car: dh/dL = (h - r)/L, dh/dm = -(h - r)/m at equal loads,
/// dh/dr = 1, and an angle error e common to all angles moves the slope.
#[test]
fn the_budget_of_the_height() {
    let part = |spread: LiftSpread, which: HeightPart| {
        let found = centre_height(&lifted_rear(), &spread).expect("a height");
        let (_, mm) = found.budget.into_iter().find(|(p, _)| *p == which).expect("every part is in the budget");
        near(found.standard_mm, mm, 1e-9, "the only part that counts");
        near(found.expanded_mm, COVERAGE * mm, 1e-6, "k = 2 where the scatter does not count");
        mm
    };
    let none = LiftSpread::default();
    near(part(LiftSpread { wheelbase_mm: 2.6, ..none }, HeightPart::Wheelbase), 0.25, 1e-9, "250 mm × 2.6 / 2600");
    near(part(LiftSpread { look_kg: 1.0, ..none }, HeightPart::Scatter), 2_600.0 / 1_500.0 / 0.406_1, 0.01, "L/m/Sxx");
    let angle = part(LiftSpread { angle_deg: 0.1, ..none }, HeightPart::Lift);
    assert!(angle > 0.5 && angle < 4.0, "a tenth of a degree on all angles: {angle} mm");
    let rates = centre_height(&lifted_rear(), &LiftSpread { rate_fraction: 0.2, ..none }).expect("a height");
    near(rates.standard_mm, 0.0, 1e-9, "a locked suspension and measured angles need no rates");
    // Unequal radii: the ground line through both is not the line of the wheel centres.
    let radii = part(LiftSpread { radius_mm: 1.0, ..none }, HeightPart::Radii);
    assert!(radii > 0.3 && radii < 1.5, "a millimetre of radius: {radii} mm");
}

/// R: JCGM 101:2008: over simulated lifts with noise on every reading the stated interval holds the true height as
/// often as it says. Student's t is what makes that true with only eight degrees of freedom.
#[test]
fn the_stated_interval_holds_the_height() {
    const LIFTS: usize = 4_000;
    let mut draws = Draws::from_seed(4_711);
    let held = (0..LIFTS)
        .filter(|_| {
            let mut test = lifted_rear();
            for step in &mut test.steps {
                step.grounded_kg += draws.normal(0.8);
            }
            let found = centre_height(&test, &LiftSpread::default()).expect("a height");
            assert!(found.coverage > 2.2, "eight degrees of freedom: {}", found.coverage);
            (found.height_mm - 550.0).abs() <= found.expanded_mm
        })
        .count();
    let pct = 100.0 * held as f64 / LIFTS as f64;
    println!("{pct:.2} % of {LIFTS} lifts, 95.45 % stated");
    assert!((94.4..=96.5).contains(&pct), "{pct} %");
}

/// R: JCGM 101:2008 against JCGM 100:2008: 200,000 draws of four loads with their covariance and of the lengths.
#[test]
fn the_mass_centre_has_the_spread_of_its_draws() {
    let mut car = square_car();
    car.track_rear_mm = 1_420.0;
    let loads = Corners { fl: 330.0, fr: 318.0, rl: 275.0, rr: 290.0 };
    let pads = Pads { resolution_kg: 0.5, look_kg: 0.3, settle_kg: 1.5, level_mm: 0.5, height_mm: 0.3, patch_mm: 3.0 };
    let lengths = LengthSpread { wheelbase_mm: 2.0, track_mm: 3.0 };
    let covariance = Spread::of(&car, &pads, &loads, 3, 2).expect("a spread").total_kg2();
    let stated = mass_centre_spread(&car, &loads, &covariance, &lengths).expect("a spread");
    let root = nalgebra::Matrix4::from_fn(|i, j| covariance[i][j]).cholesky().expect("a covariance").l();
    let mut draws = Draws::from_seed(90_210);
    let n = 200_000;
    let (mut sums, mut squares) = ([0.0; 2], [[0.0; 2]; 2]);
    let first = mass_centre(&car, &loads).expect("a centre");
    for _ in 0..n {
        let noise = root * nalgebra::Vector4::from_fn(|_, _| draws.normal(1.0));
        let drawn = Corners::from_array([0, 1, 2, 3].map(|i| loads.to_array()[i] + noise[i]));
        let mut other = car;
        other.wheelbase_mm += draws.normal(lengths.wheelbase_mm);
        other.track_front_mm += draws.normal(lengths.track_mm);
        other.track_rear_mm += draws.normal(lengths.track_mm);
        let c = mass_centre(&other, &drawn).expect("a centre");
        let off = [c.behind_front_axle_mm - first.behind_front_axle_mm, c.left_mm - first.left_mm];
        for i in 0..2 {
            sums[i] += off[i];
            for j in 0..2 {
                squares[i][j] += off[i] * off[j];
            }
        }
    }
    let moment = |i: usize, j: usize| squares[i][j] / n as f64 - sums[i] * sums[j] / (n as f64).powi(2);
    for (name, i, expanded) in
        [("lengthwise", 0, stated.expanded.behind_front_axle_mm), ("sideways", 1, stated.expanded.left_mm)]
    {
        let drawn = COVERAGE * moment(i, i).sqrt();
        println!("{name}: propagated {expanded:.4} mm, drawn {drawn:.4} mm");
        assert!((expanded / drawn - 1.0).abs() < 0.02, "{name}: {expanded} is not {drawn} within 2 %");
    }
    let scale = (stated.covariance_mm2[0][0] * stated.covariance_mm2[1][1]).sqrt();
    near(stated.covariance_mm2[0][1] / scale, moment(0, 1) / scale, 0.01, "correlation");
}

#[derive(Deserialize)]
struct MassCases {
    cases: Vec<MassCase>,
}

#[derive(Deserialize)]
struct MassCase {
    car: Car,
    loads_kg: Corners<f64>,
    extra: Extra,
    loads_with_extra_kg: Corners<f64>,
}

#[derive(Deserialize)]
struct Extra {
    kg: f64,
    behind_front_axle_mm: f64,
    left_mm: f64,
}

impl Extra {
    fn at(&self) -> Spot {
        Spot { behind_front_axle_mm: self.behind_front_axle_mm, left_mm: self.left_mm }
    }
}

/// I: 40 cars with a mass somewhere on the body, from a stiffness matrix with eight unknowns; origin in
/// data/ORIGIN.md. Torsion, bars, unequal tracks and springs included; no reciprocity is used there.
#[test]
fn an_independent_model_carries_added_mass_alike() {
    let reference: MassCases = serde_json::from_str(include_str!("data/mass.json")).expect("cases");
    assert_eq!(reference.cases.len(), 40, "all cars were read");
    let mut worst = 0.0_f64;
    for case in &reference.cases {
        let added = MassChange::Added { kg: case.extra.kg, at: case.extra.at() };
        let found = after_mass_change(&case.car, &case.loads_kg, &[added]).expect("an effect");
        for (place, wanted) in case.loads_with_extra_kg.iter() {
            worst = worst.max((found.loads_kg.at(place) - wanted).abs());
            near(*found.loads_kg.at(place), *wanted, 1e-4, place.code());
        }
        let removed = MassChange::Removed { kg: case.extra.kg, at: case.extra.at() };
        let back = after_mass_change(&case.car, &found.loads_kg, &[removed]).expect("an effect");
        near(back.loads_kg.fl, case.loads_kg.fl, 1e-9, "taken out again, the car is as it was");
    }
    println!("40 cars: worst {worst:.7} kg");
}

/// R: by hand on the square car: front share 1 - x/L; a moment about the middle plane goes to the axles as their roll
/// rates, ke tf²/2: 30 to 28.
#[test]
fn a_mass_is_carried_by_moments_and_roll_rates() {
    let parts = carried(&square_car(), &Spot { behind_front_axle_mm: 650.0, left_mm: 300.0 }).expect("parts");
    near(parts.fl, 0.375 + 300.0 / 1_500.0 * 30.0 / 58.0, 1e-9, "FL");
    near(parts.fr, 0.375 - 300.0 / 1_500.0 * 30.0 / 58.0, 1e-9, "FR");
    near(parts.rl, 0.125 + 300.0 / 1_500.0 * 28.0 / 58.0, 1e-9, "RL");
    near(parts.rr, 0.125 - 300.0 / 1_500.0 * 28.0 / 58.0, 1e-9, "RR");
}

fn box_of(kg: f64, left_mm: f64, room_mm: f64) -> Movable {
    let at = Spot { behind_front_axle_mm: 1_300.0, left_mm };
    let off = |by: f64| Spot { behind_front_axle_mm: 1_300.0 + by, left_mm: left_mm + by };
    Movable { kg, at, least: off(-room_mm), most: off(room_mm) }
}

/// R: moments, by hand: 12 kg too little on the left of 1223.7 kg on a track of 1.5 m is 18,000 kg mm... to the left.
#[test]
fn what_to_move_for_a_left_share() {
    let car = square_car();
    let loads = square_loads_kg();
    let total = 12_000.0 / 9.806_65;
    let wanted = 50.0 + 100.0 * 12.0 / total;
    let items = [box_of(20.0, 0.0, 300.0), box_of(30.0, -400.0, 500.0)];
    let found = reach(&car, &loads, Share::Left, wanted, &items).expect("a plan");
    near(found.moment_kg_mm, 18_000.0, 1e-6, "12 kg × 1.5 m");
    assert_eq!(found.moves.len(), 2, "30 kg × 500 mm are 15,000 kg mm; the rest is the other's");
    assert_eq!((found.moves[0].item, found.moves[1].item), (1, 0), "the one that can do most goes first");
    near(found.moves[0].by_mm, 500.0, 1e-9, "all the way");
    near(found.moves[1].by_mm, 150.0, 1e-6, "3,000 kg mm of 20 kg");
    near(found.alone_mm[1], 600.0, 1e-6, "alone the 30 kg would have to go 600 mm");
    near(found.effect.figures.left_pct, wanted, 1e-9, "reached");
    near(found.effect.figures.front_pct, found_front(&loads), 1e-9, "the front share stays");
    assert_eq!(found.short, None, "nothing is missing");
    let too_far = reach(&car, &loads, Share::Left, wanted, &items[..1]).expect("an answer");
    match too_far.short {
        Some(Short::AtBounds { still_kg }) => near(still_kg, 12.0 - 20.0 * 300.0 / 1_500.0, 1e-9, "8 kg are missing"),
        other => panic!("20 kg by 300 mm cannot do it: {other:?}"),
    }
    assert_eq!(reach(&car, &loads, Share::Left, wanted, &[]).expect("an answer").short, Some(Short::NothingToMove));
    let there = reach(&car, &loads, Share::Left, 50.0, &items).expect("an answer");
    assert!(there.moves.is_empty() && there.short.is_none(), "it is there already: {there:?}");
}

fn found_front(loads: &Corners<f64>) -> f64 {
    Figures::of(loads).front_pct
}

/// R: moments: 20 kg forward by 260 mm on a wheelbase of 2.6 m put 2 kg to the front axle.
#[test]
fn what_to_move_for_a_front_share() {
    let loads = square_loads_kg();
    let wanted = found_front(&loads) + 100.0 * 2.0 / (12_000.0 / 9.806_65);
    let found = reach(&square_car(), &loads, Share::Front, wanted, &[box_of(20.0, 0.0, 300.0)]).expect("a plan");
    near(found.moves[0].by_mm, 260.0, 1e-6, "forward");
    near(found.moves[0].to.behind_front_axle_mm, 1_040.0, 1e-6, "to there");
    near(found.effect.figures.front_pct, wanted, 1e-9, "reached");
    let back = reach(&square_car(), &loads, Share::Front, 0.0, &[box_of(20.0, 0.0, 300.0)]).expect("an answer");
    near(back.moves[0].by_mm, -300.0, 1e-9, "all the way back");
    assert!(matches!(back.short, Some(Short::AtBounds { .. })), "nobody stands a car on its rear axle with 20 kg");
}

/// R: m = W (w - s) / (g - w): a mass over the left wheels' line has a left share of 100 %.
#[test]
fn how_much_ballast_for_a_share() {
    let (car, loads) = (square_car(), square_loads_kg());
    let total = 12_000.0 / 9.806_65;
    let at = |left_mm| Spot { behind_front_axle_mm: 1_200.0, left_mm };
    let found = ballast_to_reach(&car, &loads, Share::Left, 51.0, &at(750.0), (0.0, 50.0)).expect("an answer");
    near(found.kg, total * 0.01 / 0.49, 1e-9, "of its own share 100 %");
    near(found.effect.figures.left_pct, 51.0, 1e-9, "reached");
    let wrong = ballast_to_reach(&car, &loads, Share::Left, 51.0, &at(-300.0), (0.0, 50.0)).expect("an answer");
    match wrong.short {
        Some(Short::WrongPlace { own_pct }) => near(own_pct, 30.0, 1e-9, "its own share is on the right"),
        other => panic!("mass on the right does not raise the left share: {other:?}"),
    }
    near(wrong.kg, 0.0, 0.0, "and none is added");
    let out = ballast_to_reach(&car, &loads, Share::Left, 51.0, &at(-300.0), (-60.0, 0.0)).expect("an answer");
    near(out.kg, -total * 0.01 / 0.21, 1e-9, "taking mass away there does");
    near(out.effect.figures.left_pct, 51.0, 1e-9, "reached");
    let bound = ballast_to_reach(&car, &loads, Share::Left, 51.0, &at(750.0), (0.0, 10.0)).expect("an answer");
    near(bound.kg, 10.0, 0.0, "as much as there is");
    assert!(matches!(bound.short, Some(Short::AtBounds { .. })), "is not enough: {bound:?}");
}

#[test]
fn bad_input_is_refused_by_field_and_range() {
    fn lift(change: impl FnOnce(&mut LiftTest), says: &str) {
        let mut test = lifted_rear();
        change(&mut test);
        let why = centre_height(&test, &LiftSpread::default()).expect_err(says);
        assert_eq!(why.to_string(), says);
    }
    lift(|t| t.steps.truncate(3), "steps up is 2; it must be at least three different lifts");
    lift(|t| t.steps.truncate(5), "steps down is 0; it must be at least three different lifts");
    lift(|t| t.steps[2].grounded_kg = 1_600.0, "steps[2].grounded_kg is 1600; it must be from 0 to the total");
    lift(
        |t| t.steps.retain(|s| !s.lift.is_level()),
        "steps is without one on level ground; it must be at least one step with a lift of zero",
    );
    lift(
        |t| t.steps[1].lift = Lift::BodyAngle { deg: 60.0 },
        "steps[1].lift.deg is 60; it must be from 0 to 45 degrees",
    );
    let heavy = MassChange::Removed { kg: 2_000.0, at: Spot { behind_front_axle_mm: 0.0, left_mm: 0.0 } };
    let why = after_mass_change(&square_car(), &square_loads_kg(), &[heavy]).expect_err("a wheel would leave its pad");
    assert!(why.to_string().contains("the wheel stays on its pad"), "{why}");
    let outside = Movable { at: Spot { behind_front_axle_mm: 0.0, left_mm: 0.0 }, ..box_of(20.0, 0.0, 300.0) };
    let why =
        reach(&square_car(), &square_loads_kg(), Share::Left, 51.0, &[outside]).expect_err("not in its rectangle");
    assert_eq!(why.at(), "items[0].at.behind_front_axle_mm");
    assert!(mass_centre_height_mm(2_600.0, 300.0, 1_500.0, 800.0, 850.0, 0.0).is_err(), "no angle, no height");
}
