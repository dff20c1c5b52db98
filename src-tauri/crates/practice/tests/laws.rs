//! What no car can break, over random cars, collars and pads, lifted wheels and touched stops included.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use bayhand_practice::{DryFriction, EquilibriumError, PointMass, Reading, Rig, RigError, Scrub, Standing};
use bayhand_vehicle::{Bar, Bars, Beams, Car, Corner, Corners, Place, STANDARD_GRAVITY, Sprung};
use nalgebra::{Rotation3, Vector3};
use proptest::prelude::*;
use proptest::test_runner::{Config, RngSeed, TestRunner};
use std::cell::RefCell;

/// Fixed, so that a failure repeats. Proptest prints the failing input.
const SEED: u64 = 20_261_125;

fn corner() -> impl Strategy<Value = Corner> {
    (20.0..250.0, 0.5..1.0, 150.0..300.0, 20.0..50.0, 10.0..60.0, 10.0..60.0).prop_map(
        |(spring, ratio, tyre, unsprung_kg, bump, droop)| Corner {
            spring_n_per_mm: Some(spring),
            motion_ratio: Some(ratio),
            tyre_n_per_mm: tyre,
            unsprung_kg,
            tyre_radius_mm: 300.0,
            adjuster_ratio: None,
            bump_mm: Some(bump),
            droop_mm: Some(droop),
            bump_stop_n_per_mm: None,
            coil_bind_mm: None,
        },
    )
}

fn bar() -> impl Strategy<Value = Option<Bar>> {
    prop::option::of((5.0..40.0, -300.0..300.0).prop_map(|(n_per_mm, preload_n)| Bar { n_per_mm, preload_n }))
}

fn car() -> impl Strategy<Value = Car> {
    let sizes = (2200.0..2900.0, 1350.0..1650.0, 1350.0..1650.0, 20.0..120.0);
    let body = (550.0..1500.0, 0.35..0.65, -45.0..45.0, 360.0..560.0);
    let springs = (corner(), corner(), corner(), corner());
    (sizes, body, springs, prop::option::of(3_000.0..16_000.0), bar(), bar()).prop_map(
        |((wheelbase_mm, front, rear, axis), (mass_kg, share, left, height), (fl, fr, rl, rr), torsion, bf, br)| Car {
            wheelbase_mm,
            track_front_mm: front,
            track_rear_mm: rear,
            roll_axis_height_mm: axis,
            sprung: Sprung {
                mass_kg,
                cg_behind_front_axle_mm: share * wheelbase_mm,
                cg_left_mm: left,
                cg_height_mm: height,
            },
            torsion_nm_per_deg: torsion,
            corners: Corners { fl, fr, rl, rr },
            bars: Bars { front: bf, rear: br },
            beams: Beams::default(),
            sprung_like: None,
            height_points: None,
        },
    )
}

fn four(range: std::ops::Range<f64>) -> impl Strategy<Value = Corners<f64>> {
    prop::array::uniform4(range).prop_map(Corners::from_array)
}

/// A reading for the car: each axle's load halved, which is near enough for free lengths to be chosen.
fn halved(car: &Car) -> Reading {
    let rear = car.sprung.cg_behind_front_axle_mm / car.wheelbase_mm;
    Reading {
        loads_kg: Corners::from_fn(|p| {
            let share = if p.index() < 2 { 1.0 - rear } else { rear };
            car.sprung.mass_kg * share / 2.0 + car.corners.at(p).unsprung_kg
        }),
        heights_mm: Corners::same(car.roll_axis_height_mm),
        pads_mm: Corners::same(0.0),
        design_heights_mm: Corners::same(car.roll_axis_height_mm),
    }
}

/// What is left over of the moments on the body about its two free axes, kg m: about the lateral axis and about the
/// roll axis, both through the hinge.
///
/// By cross products of forces at places, where the crate differentiates an energy. Each strut pushes along the line
/// from its wheel, which is guided straight up and down, with the load that its pad shows less the wheel's own weight.
fn moments_left_over(car: &Car, rig: &Rig, stands: &Standing) -> [f64; 2] {
    let turn = |half: usize| {
        Rotation3::from_axis_angle(&Vector3::y_axis(), stands.pitch_rad)
            * Rotation3::from_axis_angle(&Vector3::x_axis(), stands.roll_rad[half])
    };
    let mut moment = Vector3::zeros();
    for p in Place::ALL {
        let w = &rig.wheels[p.index()];
        let top = turn(p.index() / 2) * Vector3::new(w.x_m, w.y_m, 0.0);
        let aside = Vector3::new(top.x - w.x_m, top.y - w.y_m, 0.0);
        let upright = ((stands.struts_mm.at(p) / 1e3).powi(2) - aside.norm_squared()).sqrt();
        let push_kg = stands.loads_kg.at(p) - w.unsprung_kg;
        moment += top.cross(&((aside + Vector3::z() * upright) * (push_kg / upright)));
    }
    let rear = car.sprung.cg_behind_front_axle_mm / car.wheelbase_mm;
    let left_m = car.sprung.cg_left_mm / 1e3;
    let over_m = (car.sprung.cg_height_mm - car.roll_axis_height_mm) / 1e3;
    for (half, share) in [1.0 - rear, rear].into_iter().enumerate() {
        let centre = turn(half) * Vector3::new(rig.wheels[2 * half].x_m, left_m, over_m);
        moment += centre.cross(&(Vector3::z() * (-share * car.sprung.mass_kg)));
    }
    let roll_axis = turn(0) * Vector3::x();
    [moment.y, moment.dot(&roll_axis)]
}

fn check_laws(car: &Car, rig: &Rig) -> Result<Standing, TestCaseError> {
    let stands = rig.stand().map_err(|e| TestCaseError::fail(e.to_string()))?;
    let upright = Place::ALL.iter().all(|p| *stands.heights_mm.at(*p) > -200.0);
    prop_assert!(upright, "the body rests on its struts and has not leapt through them: {stands:?}");
    let figures = [stands.loads_kg, stands.heights_mm, stands.struts_mm].map(|c| c.to_array()).concat();
    prop_assert!(figures.iter().all(|v| v.is_finite()), "every figure is a number: {figures:?}");
    prop_assert!(stands.loads_kg.to_array().iter().all(|kg| *kg >= 0.0), "a pad never pulls: {stands:?}");
    let total_kg: f64 = stands.loads_kg.to_array().iter().sum();
    let weight_kg = car.sprung.mass_kg + Place::ALL.map(|p| car.corners.at(p).unsprung_kg).iter().sum::<f64>();
    prop_assert!((total_kg - weight_kg).abs() < 1e-6, "the pads carry {total_kg} kg of {weight_kg} kg");
    for (axis, left_over) in ["lateral", "roll"].into_iter().zip(moments_left_over(car, rig, &stands)) {
        prop_assert!(left_over.abs() < 1e-5, "{left_over} kg m are left over about the {axis} axis");
    }
    Ok(stands)
}

proptest! {
    #![proptest_config(config())]

    /// Weight and both moments are carried, and no pad pulls, at usual settings.
    #[test]
    fn usual_settings_keep_the_laws(car in car(), collars in four(-8.0..8.0), pads in four(-3.0..3.0)) {
        let mut rig = Rig::from_reading(&car, &halved(&car)).unwrap();
        set(&mut rig, &collars, &pads);
        check_laws(&car, &rig)?;
    }
}

/// The same far beyond usual settings; and these are such that wheels lift, stops are touched and springs come loose.
#[test]
fn wild_settings_keep_the_laws() {
    let mut runner = TestRunner::new(config());
    let seen = RefCell::new([0_usize; 3]);
    let wild = (car(), four(-40.0..40.0), four(-90.0..90.0));
    runner
        .run(&wild, |(car, collars, pads)| {
            let mut rig = Rig::from_reading(&car, &halved(&car)).unwrap();
            set(&mut rig, &collars, &pads);
            for (_, state) in check_laws(&car, &rig)?.states.iter() {
                let unusual = [state.wheel_lifted, state.on_bump_stop, state.topped_out];
                seen.borrow_mut().iter_mut().zip(unusual).for_each(|(n, here)| *n += usize::from(here));
            }
            Ok(())
        })
        .unwrap();
    let seen = seen.into_inner();
    println!("corners lifted, on a bump stop, topped out: {seen:?}");
    assert!(seen.iter().all(|n| *n > 100), "wild settings reach what they are meant to: {seen:?}");
}

proptest! {
    #![proptest_config(config())]

    /// Whatever friction holds in struts and tyres, it changes neither the total nor the moments; and no strut holds
    /// more than its limit.
    #[test]
    fn friction_changes_no_total_and_no_moment(
        car in car(), limits in four(0.0..400.0), anchors in four(-10.0..10.0), side_n in 0.0_f64..1500.0,
    ) {
        let mut rig = Rig::from_reading(&car, &halved(&car)).unwrap();
        let free = check_laws(&car, &rig)?;
        for p in Place::ALL {
            let anchor_m = (free.struts_mm.at(p) + anchors.at(p)) / 1e3;
            rig.wheels[p.index()].strut.friction =
                DryFriction { limit_n: *limits.at(p), rate_n_per_m: 1e5, anchor_m };
        }
        rig.scrubs = [[0.09, 0.11], [0.13, 0.12]].map(|outwards| Scrub {
            outwards,
            // Far wider than the car comes to stand: the pads press inwards with all that they can.
            hold: DryFriction { limit_n: side_n, rate_n_per_m: 6e4, anchor_m: 1.0 },
        });
        let held = check_laws(&car, &rig)?;
        for (place, limit_n) in limits.iter() {
            prop_assert!(held.friction_n.at(place).abs() <= limit_n + 1e-9, "{place:?} holds no more than it can");
        }
        prop_assert!(held.side_n.iter().all(|n| (n - side_n).abs() < 1e-9), "{:?} N of {side_n} N", held.side_n);
    }

    /// Collars on level pads move load along n = (1, -1, -tf/tr, +tf/tr) and nowhere else, up to the moment by which
    /// the mass centre moves sideways and lengthways as the body leans: no more than mass x height over the roll axis x
    /// angle, over the lengths that it acts on.
    #[test]
    fn collars_move_load_along_the_diagonal_alone(car in car(), collars in four(-8.0..8.0)) {
        let mut rig = Rig::from_reading(&car, &halved(&car)).unwrap();
        let before = check_laws(&car, &rig)?;
        set(&mut rig, &collars, &Corners::same(0.0));
        let after = check_laws(&car, &rig)?;
        let pattern = Corners::from_array(diagonal(&car));
        let moved = Corners::from_fn(|p| after.loads_kg.at(p) - before.loads_kg.at(p));
        let length: f64 = pattern.to_array().iter().map(|n| n * n).sum();
        let along_kg = Place::ALL.iter().map(|p| moved.at(*p) * pattern.at(*p)).sum::<f64>() / length;
        let roll = (0..2).map(|half| (after.roll_rad[half] - before.roll_rad[half]).abs()).fold(0.0, f64::max);
        let pitch = (after.pitch_rad - before.pitch_rad).abs();
        let over_mm = (car.sprung.cg_height_mm - car.roll_axis_height_mm).abs() + car.sprung.cg_left_mm.abs();
        let shift_kg = car.sprung.mass_kg
            * over_mm
            * (roll / car.track_front_mm.min(car.track_rear_mm) + pitch / car.wheelbase_mm);
        // A body that leans also swings its mass centre by the second order of the angle.
        let bound_kg = shift_kg + car.sprung.mass_kg * (roll + pitch).powi(2) + 1e-6;
        for (place, n) in pattern.iter() {
            let beside_kg = (moved.at(place) - n * along_kg).abs();
            prop_assert!(beside_kg <= bound_kg, "{place:?}: {beside_kg} kg beside the pattern, at most {bound_kg}");
        }
    }
}

/// The pattern of loads that needs no moment: (1, -1, -tf/tr, +tf/tr).
fn diagonal(car: &Car) -> [f64; 4] {
    let tracks = car.track_front_mm / car.track_rear_mm;
    [1.0, -1.0, -tracks, tracks]
}

fn config() -> Config {
    Config { cases: 600, rng_seed: RngSeed::Fixed(SEED), failure_persistence: None, ..Config::default() }
}

fn set(rig: &mut Rig, collars_mm: &Corners<f64>, pads_mm: &Corners<f64>) {
    for p in Place::ALL {
        rig.wheels[p.index()].strut.collar_m = collars_mm.at(p) / 1e3;
        rig.wheels[p.index()].pad_m = pads_mm.at(p) / 1e3;
    }
}

/// A plain car: axles at +1.2 and -1.4 m, tracks 1.5 m, wheels without mass, mass centre on the roll axis.
fn plain(weight_n: f64, rates_n_per_mm: [f64; 2]) -> (Car, Rig) {
    let tyre = 5_000.0;
    let corner = |rate: f64| Corner {
        // In series with its tyre the strut has the rate wanted.
        spring_n_per_mm: Some(rate * tyre / (tyre - rate)),
        motion_ratio: Some(1.0),
        tyre_n_per_mm: tyre,
        unsprung_kg: 0.0,
        tyre_radius_mm: 300.0,
        adjuster_ratio: None,
        bump_mm: None,
        droop_mm: None,
        bump_stop_n_per_mm: None,
        coil_bind_mm: None,
    };
    let [front, rear] = rates_n_per_mm.map(corner);
    let car = Car {
        wheelbase_mm: 2600.0,
        track_front_mm: 1500.0,
        track_rear_mm: 1500.0,
        roll_axis_height_mm: 100.0,
        sprung: Sprung {
            mass_kg: weight_n / STANDARD_GRAVITY,
            cg_behind_front_axle_mm: 1200.0,
            cg_left_mm: 0.0,
            cg_height_mm: 100.0,
        },
        torsion_nm_per_deg: None,
        corners: Corners { fl: front, fr: front, rl: rear, rr: rear },
        bars: Bars::default(),
        beams: Beams::default(),
        sprung_like: None,
        height_points: None,
    };
    let rig = Rig::from_reading(&car, &halved(&car)).unwrap();
    (car, rig)
}

fn check_loads(stands: &Standing, expected_n: [f64; 4], tolerance_n: f64) {
    for (load_kg, expected_n) in stands.loads_kg.to_array().into_iter().zip(expected_n) {
        let load_n = load_kg * STANDARD_GRAVITY;
        assert!((load_n - expected_n).abs() < tolerance_n, "{load_n} N, expected {expected_n} N");
    }
}

/// Source class R (null vector of the three conditions of equilibrium): 12000 N, rates 30 and 28 N/mm: 3230.769 N in
/// front and 2769.231 N behind; 1 mm at front left moves 7.241379 N along the diagonal. The published figure is
/// linear; a millimetre of real lean changes it by less than a thousandth of a newton.
#[test]
fn one_millimetre_moves_load_along_the_diagonal() {
    let (_, mut rig) = plain(12_000.0, [30.0, 28.0]);
    check_loads(&rig.stand().unwrap(), [3230.769, 3230.769, 2769.231, 2769.231], 1e-3);
    rig.wheels[0].strut.collar_m = 1e-3;
    let moved = 7.241379;
    check_loads(&rig.stand().unwrap(), [3230.769 + moved, 3230.769 - moved, 2769.231 - moved, 2769.231 + moved], 2e-3);
}

/// Source class R (model: one mm of one pad acts as one mm at the wheel, and only the twist of the four does): a stiff
/// car reads a pad 1 mm up like a collar 1 mm up; a plane that is tilted by far more reads like a level one.
#[test]
fn pads_act_by_their_twist_alone() {
    let (_, rig) = plain(12_000.0, [30.0, 28.0]);
    let level = rig.stand().unwrap();
    let stand = |pads_mm: [f64; 4]| {
        let mut on = rig.clone();
        set(&mut on, &Corners::same(0.0), &Corners::from_array(pads_mm));
        on.stand().unwrap()
    };
    let moved = |stands: &Standing, p: Place| (stands.loads_kg.at(p) - level.loads_kg.at(p)) * STANDARD_GRAVITY;
    let one = stand([1.0, 0.0, 0.0, 0.0]);
    for (place, expected_n) in Place::ALL.into_iter().zip([7.241379, -7.241379, -7.241379, 7.241379]) {
        assert!((moved(&one, place) - expected_n).abs() < 2e-3, "{place:?}: {} N", moved(&one, place));
    }
    // Four times the moved load of one corner: each of the four is half a millimetre out of plane.
    let twist = stand([1.0, -1.0, -1.0, 1.0]);
    assert!((moved(&twist, Place::Fl) - 4.0 * 7.241379).abs() < 0.01, "a twist adds up: {}", moved(&twist, Place::Fl));
    // The mass centre of this car lies on its roll axis; what is left is the second order of the lean.
    for (what, tilted) in [("side", [1.0, 0.0, 1.0, 0.0]), ("end", [1.0, 1.0, 0.0, 0.0])] {
        for place in Place::ALL {
            let off_n = moved(&stand(tilted), place);
            assert!(off_n.abs() < 1e-4, "one {what} up moves {off_n} N at {place:?}");
        }
    }
}

/// A stop that is touched carries load beside the spring, the more the deeper: each millimetre of lowering at that
/// corner moves more load off it than the one before.
#[test]
fn a_bump_stop_stiffens_as_it_is_pressed() {
    let (mut car, _) = plain(12_000.0, [30.0, 28.0]);
    car.corners.fl.bump_mm = Some(3.0);
    let built = Rig::from_reading(&car, &halved(&car)).unwrap();
    let at = |pad_mm: f64| {
        let mut rig = built.clone();
        rig.wheels[0].pad_m = pad_mm / 1e3;
        rig.stand().unwrap()
    };
    let free = at(2.0).loads_kg.fl - at(0.0).loads_kg.fl;
    assert!(!at(2.0).states.fl.on_bump_stop, "not touched yet");
    let mut last = free / 2.0;
    for pad_mm in [20.0, 30.0, 40.0, 50.0] {
        assert!(at(pad_mm).states.fl.on_bump_stop, "touched at {pad_mm} mm");
        let per_mm = (at(pad_mm + 1.0).loads_kg.fl - at(pad_mm - 1.0).loads_kg.fl) / 2.0;
        assert!(per_mm > last + 0.005, "{per_mm} kg/mm at {pad_mm} mm, {last} before");
        last = per_mm;
    }
}

/// With a pad sunk out of reach its wheel hangs at its droop limit, its pad shows nothing, and three wheels carry all.
#[test]
fn a_wheel_lifts_and_three_carry_the_car() {
    let (mut car, _) = plain(10_000.0, [30.0, 28.0]);
    for p in Place::ALL {
        car.corners.at_mut(p).droop_mm = Some(40.0);
        car.corners.at_mut(p).unsprung_kg = 30.0;
    }
    let mut rig = Rig::from_reading(&car, &halved(&car)).unwrap();
    // Moved forward, so that the three wheels left can carry the car at all.
    rig.add(&PointMass { mass_kg: 60.0, behind_front_axle_m: 2.4, left_m: -0.5, height_m: 0.1 });
    rig.wheels[0].pad_m = -0.4;
    let stands = rig.stand().unwrap();
    assert_eq!(stands.loads_kg.fl, 0.0, "nothing on the sunk pad");
    assert!(stands.states.fl.wheel_lifted && stands.states.fl.topped_out, "the wheel hangs: {:?}", stands.states.fl);
    let total_kg: f64 = stands.loads_kg.to_array().iter().sum();
    assert!((total_kg - rig.total_kg()).abs() < 1e-6, "three wheels carry {total_kg} of {} kg", rig.total_kg());
}

/// A bar's preload moves load along the diagonal; left is pressed down by a positive one.
#[test]
fn a_preloaded_bar_presses_its_left_wheel_down() {
    let (mut car, released) = plain(12_000.0, [30.0, 28.0]);
    car.bars.front = Some(Bar { n_per_mm: 20.0, preload_n: 100.0 });
    let reading = halved(&car);
    let connected = Rig::from_reading(&car, &reading).unwrap();
    let with = connected.stand().unwrap();
    assert!((with.loads_kg.fl - released.stand().unwrap().loads_kg.fl).abs() < 1e-6, "the reading was with the bar on");
    let mut undone = connected.clone();
    undone.bars = [None; 2];
    let without = undone.stand().unwrap();
    assert!(without.loads_kg.fl < with.loads_kg.fl - 1.0, "undone, the left wheel carries less");
    assert!(without.heights_mm.fl < with.heights_mm.fl, "and the left side sinks");
}

/// A mass 3 m up on soft springs falls over; that is said, and no figure is made up.
#[test]
fn a_top_heavy_car_falls_over() {
    let (mut car, _) = plain(12_000.0, [10.0, 10.0]);
    car.sprung.cg_height_mm = 3000.0;
    car.sprung.cg_left_mm = 5.0;
    let rig = Rig::from_reading(&car, &halved(&car)).unwrap();
    let error = rig.stand().unwrap_err();
    assert!(matches!(error, EquilibriumError::FallsOver { .. }), "{error}");
}

/// A car without a spring rate cannot be simulated, and a load below the wheel's own weight is no reading of one.
#[test]
fn an_impossible_reading_builds_no_car() {
    let (car, _) = plain(12_000.0, [30.0, 28.0]);
    let mut unknown = car;
    unknown.corners.rl.spring_n_per_mm = None;
    let error = Rig::from_reading(&unknown, &halved(&car)).unwrap_err();
    assert!(matches!(&error, RigError::Missing { at } if at == "corners.RL.spring_n_per_mm"), "{error}");
    let mut light = halved(&car);
    light.loads_kg.fr = -1.0;
    let error = Rig::from_reading(&car, &light).unwrap_err();
    assert!(matches!(error, RigError::Load { place: Place::Fr, .. }), "{error}");
    let mut nowhere = halved(&car);
    nowhere.heights_mm.fl = f64::NAN;
    assert_eq!(Rig::from_reading(&car, &nowhere).unwrap_err(), RigError::Heights, "not a number is no height");
}
