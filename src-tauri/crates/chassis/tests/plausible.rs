//! Each cause by itself, what is never called consistent, and readings that are refused.

#[path = "common/invented.rs"]
mod invented;

use bayhand_chassis::Confidence;
use bayhand_chassis::plausible::{Cause, LikeReading, LikeReadings, Note, Plausibility, Where, plausible};
use bayhand_practice::{BarState, Rig};
use bayhand_vehicle::Corners;
use invented::{Random, Springs, load, question, read, standing, turn};
use proptest::prelude::*;

/// Readings of a car before and after `change`, without noise worth the name.
fn around(seed: u64, change: impl FnOnce(&mut Rig, &bayhand_vehicle::Car, &mut LikeReading)) -> LikeReadings {
    println!("seed {seed}");
    let mut r = Random(seed);
    let car = standing(&mut r, Springs::ByAxle);
    let mut rig = car.rig.clone();
    let first = read(&mut r, &car.entered, &rig, Corners::same(0.0));
    let steps = Corners { fl: 2.0, fr: -1.0, rl: 0.0, rr: 3.0 };
    turn(&mut rig, &steps);
    let mut second = read(&mut r, &car.entered, &rig, steps);
    let noiseless = rig.stand().expect("it finds its rest");
    change(&mut rig, &car.entered, &mut second);
    // What the change does, on top of the noise of the reading.
    let changed = rig.stand().expect("it finds its rest");
    second.loads_kg = Corners::from_fn(|p| second.loads_kg.at(p) + changed.loads_kg.at(p) - noiseless.loads_kg.at(p));
    second.heights_mm =
        Corners::from_fn(|p| second.heights_mm.at(p) + changed.heights_mm.at(p) - noiseless.heights_mm.at(p));
    question(&car.entered, vec![first, second], Confidence::default())
}

fn answer(question: &LikeReadings) -> Plausibility {
    plausible(question).expect("readings that can be")
}

/// The first cause is this one, here, of about this size.
#[track_caller]
fn check(question: &LikeReadings, cause: Cause, place: Option<Where>, size: f64, tolerance: f64) {
    let found = answer(question);
    println!("{found:#?}");
    assert!(!found.consistent, "p {} is no accident", found.p);
    let first = found.causes[0];
    assert_eq!((first.cause, first.place), (cause, place), "the first cause");
    assert!((first.size - size).abs() <= tolerance, "its size {} {:?}, truly {size}", first.size, first.unit);
    let sum: f64 = found.causes.iter().map(|c| c.p).sum();
    assert!(sum <= 1.0 + 1e-9, "probabilities of things that exclude each other");
}

#[test]
fn nothing_happened() {
    let found = answer(&around(100, |_, _, _| {}));
    println!("{found:#?}");
    assert!(found.consistent && found.p >= 0.01, "p {}", found.p);
    assert_eq!(found.dof, 8, "four loads and four heights");
    assert!(found.causes.iter().map(|c| c.p).sum::<f64>() < 0.5, "none of them is likelier than any");
}

#[test]
fn a_pads_zero_moved() {
    check(&around(101, |_, _, read| read.loads_kg.rl -= 5.0), Cause::PadOffset, Some(Where::Rl), -5.0, 1.5);
}

#[test]
fn a_pad_was_lifted() {
    let question = around(102, |rig, _, _| rig.wheels[1].pad_m += 0.004);
    check(&question, Cause::PadOffset, Some(Where::Fr), 4.0, 0.8);
}

#[test]
fn mass_came_and_went() {
    let added = around(103, |rig, car, _| load(rig, car, 15.0, 0.8, -0.3));
    check(&added, Cause::MassAdded, None, 15.0, 2.5);
    let removed = around(104, |rig, car, _| load(rig, car, -12.0, 0.3, 0.3));
    check(&removed, Cause::MassAdded, None, -12.0, 2.5);
    let touching = answer(&removed).causes.into_iter().find(|c| c.cause == Cause::Touching);
    assert!(touching.is_some_and(|c| c.size < -9.0), "something that holds it up does the same: {touching:?}");
}

#[test]
fn mass_slid_to_the_right() {
    let moved = around(105, |rig, car, _| {
        load(rig, car, -10.0, 0.5, 0.4);
        load(rig, car, 10.0, 0.5, -0.3);
    });
    check(&moved, Cause::MassMoved, None, -7_000.0, 1_800.0);
    let patch = answer(&moved).causes.iter().any(|c| c.cause == Cause::WheelOffCentre);
    assert!(patch, "a wheel off its pad's middle does the same");
}

#[test]
fn a_collar_was_turned_the_wrong_way() {
    let question = around(106, |rig, _, _| turn(rig, &Corners { fl: 0.0, fr: 0.0, rl: 0.0, rr: -6.0 }));
    check(&question, Cause::CollarOtherThanEntered, Some(Where::Rr), -6.0, 1.5);
}

/// A tyre stands lower: loads and heights are those of a collar, which is asked first.
#[test]
fn a_tyre_lost_pressure() {
    let question = around(107, |rig, _, _| rig.wheels[0].tyre_n_per_m *= 0.75);
    let found = answer(&question);
    println!("{found:#?}");
    assert!(!found.consistent, "a quarter of a tyre's rate shows");
    let of = |cause| found.causes.iter().find(|c| c.cause == cause).expect("listed");
    let (collar, tyre) = (of(Cause::CollarOtherThanEntered), of(Cause::TyrePressure));
    assert_eq!((collar.place, tyre.place), (Some(Where::Fl), Some(Where::Fl)), "at this corner");
    assert!(collar.p > tyre.p, "equal explanations keep their order");
    assert!(tyre.size < -15.0 && tyre.size > -45.0, "about 25 % softer (33 % by the linear model): {}", tyre.size);
}

#[test]
fn a_link_holds_tension() {
    let question = around(108, |rig, _, _| {
        let struts = rig.stand().expect("it finds its rest").struts_mm;
        // 15 N/mm wound up by 30 mm: 450 N that press the left wheel down.
        let rest_m = (struts.fr - struts.fl) / 1e3 - 0.030;
        rig.bars[0] = Some(BarState { n_per_m: 15_000.0, rest_m });
    });
    let found = answer(&question);
    println!("{found:#?}");
    assert!(!found.consistent, "450 N show");
    let first = found.causes[0];
    assert_eq!((first.cause, first.place), (Cause::LinkTension, Some(Where::Front)), "both collars of an axle at once");
    assert!(first.size > 150.0, "it presses the left wheel down: {} N", first.size);
}

/// Where the car data says how far the stop is, reaching it is asked before the collar.
#[test]
fn a_bump_stop_was_reached() {
    let mut question = around(109, |rig, _, _| {
        turn(rig, &Corners { fl: -30.0, fr: 0.0, rl: 0.0, rr: 0.0 });
        let length_mm = rig.stand().expect("it finds its rest").struts_mm.fl;
        rig.wheels[0].strut.bump_m = Some((length_mm + 6.0) / 1e3);
    });
    question.rounds[1].turned_steps.fl -= 30.0;
    question.car.corners.fl.bump_mm = Some(10.0);
    let found = answer(&question);
    println!("{found:#?}");
    assert!(!found.consistent, "a stop that carries shows");
    let first = found.causes[0];
    assert_eq!((first.cause, first.place), (Cause::OnBumpStop, Some(Where::Fl)), "the stop that was reached");
    question.car.corners.fl.bump_mm = Some(60.0);
    let far = answer(&question).causes[0].cause;
    assert_eq!(far, Cause::CollarOtherThanEntered, "a stop that is far away does nothing");
}

#[test]
fn left_and_right_were_swapped() {
    let swapped = around(110, |_, _, read| {
        let l = read.loads_kg;
        read.loads_kg = Corners { fl: l.fr, fr: l.fl, rl: l.rr, rr: l.rl };
    });
    check(&swapped, Cause::SidesSwapped, None, 1.0, 0.0);
}

#[test]
fn pounds_were_read_as_kilograms() {
    let pounds = 1.0 / 0.453_592_37;
    let one = around(111, |_, _, read| read.loads_kg.fr *= pounds);
    check(&one, Cause::UnitsMixed, Some(Where::Fr), pounds, 1e-9);
    let all = around(112, |_, _, read| read.loads_kg = read.loads_kg.map(|kg| kg * pounds));
    check(&all, Cause::UnitsMixed, None, pounds, 1e-9);
    assert!(matches!(answer(&all).notes[..], [Note::TotalUnlikeCar { more_kg }] if more_kg > 500.0), "and a note");
    let mut both = around(113, |_, _, _| {});
    both.rounds.iter_mut().for_each(|round| round.loads_kg = round.loads_kg.map(|kg| kg * pounds));
    let first = answer(&both).causes[0];
    assert_eq!((first.cause, first.place), (Cause::UnitsMixed, None), "no other reading shows it, the car data does");
    assert!(first.p > 0.99, "by a factor of two: p {}", first.p);
    both.rounds.truncate(1);
    let alone = answer(&both);
    assert_eq!((alone.dof, alone.p, alone.consistent), (0, 1.0, true), "one reading has nothing to agree with");
    assert_eq!(alone.causes[0].cause, Cause::UnitsMixed, "its unit can be in question");
}

/// With more than two readings the answer says with which reading it came, and whether it stayed.
#[test]
fn it_says_with_which_reading_it_came() {
    const SEED: u64 = 120;
    println!("seed {SEED}");
    let mut r = Random(SEED);
    let car = standing(&mut r, Springs::ByAxle);
    let mut rounds: Vec<_> = (0..4).map(|_| read(&mut r, &car.entered, &car.rig, Corners::same(0.0))).collect();
    let quiet = answer(&question(&car.entered, rounds.clone(), Confidence::default()));
    assert!(quiet.consistent, "control: p {}", quiet.p);
    assert_eq!(quiet.dof, 24, "three differences");
    rounds[2].loads_kg.rr += 6.0;
    let found = answer(&question(&car.entered, rounds, Confidence::default()));
    println!("{found:#?}");
    let first = found.causes[0];
    assert!(!found.consistent, "p {}", found.p);
    assert_eq!((first.cause, first.place, first.round), (Cause::PadOffset, Some(Where::Rr), Some(2)), "the third");
    assert!((first.size - 6.0).abs() < 1.5, "for one reading: {} kg", first.size);
}

/// Springs off by much more than stated are noticed, by as much as stated are not: the doubt is of the car data.
#[test]
fn the_confidence_counts() {
    let mut question = around(130, |_, _, _| {});
    let turned = Corners { fl: 12.0, fr: -12.0, rl: -12.0, rr: 12.0 };
    question.rounds[1] = LikeReading { turned_steps: turned, ..question.rounds[0] };
    // The collars of the four-corner pattern should have moved tens of kilograms, and nothing moved.
    let sure = LikeReadings { confidence: Confidence { spring_pct: 0.0, motion_ratio_pct: 0.0 }, ..question.clone() };
    let unsure = LikeReadings { confidence: Confidence { spring_pct: 60.0, motion_ratio_pct: 40.0 }, ..question };
    let (sure, unsure) = (answer(&sure), answer(&unsure));
    assert!(sure.chi2 > 20.0 * unsure.chi2, "{} and {}", sure.chi2, unsure.chi2);
    assert!(!sure.consistent, "p {}", sure.p);
}

proptest! {
    /// Load does not go from the left to the right by collars: whatever the car and the stated spread of its bay.
    #[test]
    fn left_minus_right_falling_by_more_than_20_kg_is_never_consistent(
        seed in any::<u64>(),
        falls_kg in 20.001..200.0_f64,
        moved_mm in prop::array::uniform4(-9.999..9.999_f64),
        turned in prop::array::uniform4(-20.0..20.0_f64),
        spread in prop::array::uniform5(0.0..50.0_f64),
        front in 0.0..1.0_f64,
    ) {
        let mut r = Random(seed);
        let car = invented::car(&mut r);
        let first = LikeReading {
            turned_steps: Corners::same(0.0),
            loads_kg: Corners::from_fn(|_| r.within(220.0, 400.0)),
            heights_mm: Corners::from_fn(|_| r.within(60.0, 140.0)),
        };
        let (f, b) = (falls_kg * front / 2.0, falls_kg * (1.0 - front) / 2.0);
        let l = first.loads_kg;
        let second = LikeReading {
            turned_steps: Corners::from_array(turned.map(f64::round)),
            loads_kg: Corners { fl: l.fl - f, fr: l.fr + f, rl: l.rl - b, rr: l.rr + b },
            heights_mm: Corners::from_fn(|p| first.heights_mm.at(p) + moved_mm[p.index()]),
        };
        let mut question = question(&car, vec![first, second], Confidence { spring_pct: 100.0, motion_ratio_pct: 50.0 });
        let [look_kg, settle_kg, height_mm, patch_mm, resolution_kg] = spread;
        question.pads = bayhand_chassis::Pads { resolution_kg, look_kg, settle_kg, level_mm: 1.0, height_mm, patch_mm };
        let found = answer(&question);
        prop_assert!(!found.consistent, "{falls_kg} kg went across: p {}", found.p);
    }
}

#[test]
fn bad_readings_are_refused_by_field_and_range() {
    fn refused(change: impl FnOnce(&mut LikeReadings), says: &str) {
        let mut question = around(150, |_, _, _| {});
        change(&mut question);
        let why = plausible(&question).expect_err(says);
        assert_eq!(why.to_string(), says);
        assert!(says.starts_with(&why.at()), "the path is the field");
    }
    refused(|q| q.rounds.clear(), "rounds is 0 readings; it must be from 1 to 40 readings");
    refused(|q| q.rounds[1].loads_kg.fr = -1.0, "rounds[1].loads_kg.FR is -1; it must be a load from 0 to 5000 kg");
    refused(
        |q| q.rounds[1].heights_mm.rl = f64::NAN,
        "rounds[1].heights_mm.RL is NaN; it must be from -1000 to 5000 mm",
    );
    refused(
        |q| q.rounds[1].turned_steps.fl = 1e9,
        "rounds[1].turned_steps.FL is 1000000000; it must be from -20000 to 20000 steps",
    );
    refused(|q| q.adjusters.rr.step_mm = 0.0, "adjusters.RR.step_mm is 0; it must be above 0 and at most 100 mm");
    refused(|q| q.confidence.spring_pct = -1.0, "confidence.spring_pct is -1; it must be from 0 to 100 %");
    refused(|q| q.pads.look_kg = f64::INFINITY, "pads.look_kg is inf; it must be from 0 to 100");
    refused(|q| q.car.wheelbase_mm = 2.0, "car.wheelbase_mm is 2; it must be from 500 to 10000 mm");
}
