//! Wheels that lift and struts that reach their ends, where the rest can be worked out on paper.

mod common;

use bayhand_chassis::{From, State, StaticsError, To, predict};
use bayhand_vehicle::{Beam, Car, Corners, HeightPoint, Place};
use common::{near, square_car, square_loads_kg};

const G: f64 = 9.806_65;

/// Heights measured at the roll axis, where the lean of the body adds nothing to them.
fn reading(loads_kg: Corners<f64>) -> From {
    From { collar_mm: Corners::same(0.0), pads_mm: Corners::same(0.0), loads_kg, heights_mm: Corners::same(300.0) }
}

fn collars(fl: f64, fr: f64, rl: f64, rr: f64) -> To {
    To { collar_mm: Corners { fl, fr, rl, rr }, pads_mm: Corners::same(0.0) }
}

fn after(car: &Car, to: &To) -> bayhand_chassis::Predicted {
    predict(car, &reading(square_loads_kg()), to).expect("a prediction")
}

/// R: moments. On three wheels the loads do not depend on the springs: with RR off, the middle of a car whose centre
/// lies 1.2 m behind the front axle of 2.6 m gives RL 12000 x 1.2/2.6 N, FR as much for the balance across, FL the rest.
#[test]
fn three_wheels_carry_the_car_by_moments() {
    let lifted = after(&square_car(), &collars(0.0, 600.0, 0.0, 0.0));
    let rear_n = 12_000.0 * 1.2 / 2.6;
    near(lifted.loads_kg.rl * G, rear_n, 1e-6, "RL has the rear axle's load to itself");
    near(lifted.loads_kg.fl * G, 12_000.0 - 2.0 * rear_n - lifted.loads_kg.fr * G + rear_n, 1e-6, "the total");
    near((lifted.loads_kg.fl + lifted.loads_kg.rl) * G, 6_000.0, 1e-6, "the balance across");
    // A lifted wheel hangs on its spring: turning its collar moves nothing else.
    let hanging = after(&square_car(), &collars(0.0, 600.0, 0.0, -50.0));
    for place in Place::ALL {
        near(*hanging.loads_kg.at(place), *lifted.loads_kg.at(place), 1e-9, "loads as before");
        near(*hanging.heights_mm.at(place), *lifted.heights_mm.at(place), 1e-9, "heights as before");
    }
}

/// R: moments. A body hung 0.2 m below its roll axis can rest on two wheels. Its centre lies `d` off the line through
/// FR and RL; about that line the axis swings by `W d / (W h)`: here the car is even, so the line passes through the
/// centre and nothing has to swing.
#[test]
fn a_hung_body_can_stand_on_two_wheels() {
    let mut car = square_car();
    car.sprung.cg_behind_front_axle_mm = 1_300.0;
    car.sprung.cg_height_mm = 100.0;
    car.corners = Corners::same(car.corners.fl);
    let even = Corners::same(12_000.0 / 4.0 / G);
    let found = predict(&car, &reading(even), &collars(0.0, 300.0, 300.0, 0.0)).expect("a prediction");
    let (off_fl, off_rr) = (State::WheelLifted { place: Place::Fl }, State::WheelLifted { place: Place::Rr });
    assert_eq!(found.states, [off_fl, off_rr], "one diagonal off");
    near(found.loads_kg.fr * G, 6_000.0, 1e-6, "half each");
    near(found.loads_kg.rl * G, 6_000.0, 1e-6, "half each");
    car.sprung.cg_height_mm = 600.0;
    let found = predict(&car, &reading(even), &collars(0.0, 300.0, 300.0, 0.0)).expect("it rocks over");
    let off = found.states.iter().filter(|s| matches!(s, State::WheelLifted { .. })).count();
    assert_eq!(off, 1, "a body above its axis falls to one side: {:?}", found.states);
    near(found.figures.total_kg * G, 12_000.0, 1e-6, "and the other three carry it");
}

/// R: moments: with its centre over the rear axle, a car whose front is light rears up when the rest would take two
/// wheels off. Nothing holds it: an error, not a load.
#[test]
fn a_car_that_falls_is_an_error() {
    let mut car = square_car();
    car.sprung.cg_height_mm = 1_500.0;
    let loads = Corners { fl: 1.0, fr: 1.0, rl: 610.0, rr: 611.0 };
    let why = predict(&car, &reading(loads), &collars(400.0, 400.0, -400.0, -400.0)).expect_err("it falls");
    assert_eq!(why, StaticsError::TooFewWheels);
    assert_eq!(why.at(), "to");
}

/// R: springs in series and beside each other. FL pressed onto its stop: 3 mm of travel are free, then the stop's
/// 30 N/mm stand beside the spring. The reading that a stiffer spring gives from there on is the same.
#[test]
fn a_bump_stop_helps_its_spring() {
    let mut car = square_car();
    car.corners.fl.bump_mm = Some(3.0);
    let free = after(&car, &collars(-20.0, 0.0, 0.0, 0.0));
    assert_eq!(free.states, [State::OnBumpStop { place: Place::Fl }], "no rate known: only reported");
    car.corners.fl.bump_stop_n_per_mm = Some(30.0);
    let stopped = after(&car, &collars(-20.0, 0.0, 0.0, 0.0));
    assert_eq!(stopped.states, free.states, "the stop is reported");
    assert!(stopped.loads_kg.fl > free.loads_kg.fl, "and carries load");
    // Travel into the body: what the height lost less what the tyre gave way less.
    let tyre_mm = (stopped.loads_kg.fl - square_loads_kg().fl) * G / 4_000.0;
    let travel = 300.0 - stopped.heights_mm.fl - tyre_mm;
    let spring = 1.0 / (1.0 / 30.0 - 1.0 / 4_000.0);
    let force = spring * (travel - 20.0) + 30.0 * (travel - 3.0);
    near((stopped.loads_kg.fl - square_loads_kg().fl) * G, force, 1e-6, "spring and stop together");
    let short = after(&car, &collars(-1.0, 0.0, 0.0, 0.0));
    assert!(short.states.is_empty(), "the stop is not reached");
    car.corners.fl.bump_mm = Some(0.0);
    let touched = after(&car, &collars(0.0, 0.0, 0.0, 0.0));
    assert_eq!(touched.states, [State::OnBumpStop { place: Place::Fl }], "no travel left: it is touched");
    near(touched.loads_kg.fl, square_loads_kg().fl, 1e-9, "but not pressed");
}

/// R: a spring whose coils touch is a rod: raising its collar by d lifts the wheel's free height by d, with nothing but
/// the tyre to give way.
#[test]
fn coils_that_touch_make_a_rod() {
    let mut car = square_car();
    car.corners.fl.coil_bind_mm = Some(0.0);
    let bound = after(&car, &collars(6.0, 0.0, 0.0, 0.0));
    assert_eq!(bound.states, [State::CoilBound { place: Place::Fl }], "reported");
    let mut rod = square_car();
    rod.corners.fl.spring_n_per_mm = Some(5_000.0);
    rod.corners.fl.motion_ratio = Some(3.0);
    rod.corners.fl.adjuster_ratio = Some(1.0);
    let stiff = after(&rod, &collars(6.0, 0.0, 0.0, 0.0));
    near(bound.loads_kg.fl, stiff.loads_kg.fl, 0.02, "as a spring of 45000 N/mm does");
    let lowered = after(&car, &collars(-6.0, 0.0, 0.0, 0.0));
    assert!(lowered.states.is_empty(), "lowered, the coils part");
    // At its droop limit the spring cannot be longer; the collar that closes its coils there can go no further.
    car.corners.fl.coil_bind_mm = Some(40.0);
    car.corners.fl.droop_mm = Some(2.0);
    let why = predict(&car, &reading(square_loads_kg()), &collars(60.0, 0.0, 0.0, 0.0)).expect_err("pressed solid");
    assert_eq!(why.at(), "to.collar_mm.FL");
}

/// R: a spring loose in its seats carries nothing, so its wheel has only itself on the pad: here 20 kg of it.
#[test]
fn a_loose_spring_leaves_its_wheel_on_the_pad() {
    let mut car = square_car();
    for place in Place::ALL {
        car.corners.at_mut(place).unsprung_kg = 20.0;
    }
    car.corners.rr.droop_mm = Some(400.0);
    let loads = square_loads_kg().map(|kg| kg + 20.0);
    let found = predict(&car, &reading(loads), &collars(0.0, 500.0, 0.0, 0.0)).expect("a prediction");
    assert_eq!(found.states, [State::SpringLoose { place: Place::Rr }], "RR has come loose");
    near(found.loads_kg.rr, 20.0, 1e-9, "only the wheel is left");
    // Without a droop limit something must hold the wheel: the spring is taken to, and the wheel can lift.
    car.corners.rr.droop_mm = None;
    let held = predict(&car, &reading(loads), &collars(0.0, 600.0, 0.0, 0.0)).expect("a prediction");
    let rr = [State::WheelLifted { place: Place::Rr }, State::SpringLoose { place: Place::Rr }];
    assert_eq!(held.states, rr, "it hangs on its spring");
}

/// R: a beam of spring base b on a track t has the springs' rate in heave and (b / t)² of it in roll; equal bases make
/// it two wheels sprung apart.
#[test]
fn a_beam_is_softer_in_roll() {
    let mut beam = square_car();
    beam.beams.rear = Some(Beam { spring_base_mm: 1_500.0 });
    let to = collars(3.0, 0.0, 2.0, -1.0);
    let (apart, wide) = (after(&square_car(), &to), after(&beam, &to));
    near(wide.loads_kg.fl, apart.loads_kg.fl, 1e-9, "springs over the wheels: no difference");
    beam.beams.rear = Some(Beam { spring_base_mm: 750.0 });
    // Twist: front 30 N/mm each, rear a quarter of the spring's rate in series with its tyre.
    let spring = 1.0 / (1.0 / 28.0 - 1.0 / 4_000.0);
    let rear = 1.0 / (4.0 / spring + 1.0 / 4_000.0);
    let moved_n = 1.0 / (2.0 / 30.0 + 2.0 / rear);
    let found = after(&beam, &collars(1.0, 0.0, 0.0, 0.0));
    near((found.loads_kg.fl - square_loads_kg().fl) * G, moved_n, 1e-6, "1 mm at FL");
    // A collar of the beam acts at its spring, half as far out: half of it at the wheel in roll, half up, in all
    // `s b / t`. The lift of the axle at the wheels is s/2 in heave and s t / (2 b) in roll.
    let found = after(&beam, &collars(0.0, 0.0, 1.0, 0.0));
    near((found.loads_kg.fl - square_loads_kg().fl) * G, -2.0 * moved_n, 1e-6, "twice the roll at the wheels");
    let both = after(&beam, &collars(0.0, 0.0, 1.0, 1.0));
    near(both.heights_mm.rl - 300.0, 1.0, 1e-9, "both together lift the axle");
}

/// R: a plane. Points of the body away from the wheels rise as the plane through the wheels does, and over the floor a
/// pad takes nothing from them.
#[test]
fn heights_are_measured_where_the_car_says() {
    let mut car = square_car();
    let point = |behind_front_axle_mm, left_mm| HeightPoint { behind_front_axle_mm, left_mm };
    car.height_points = Some(Corners {
        fl: point(650.0, 600.0),
        fr: point(650.0, -600.0),
        rl: point(1_950.0, 600.0),
        rr: point(1_950.0, -600.0),
    });
    let to = collars(4.0, 1.0, -2.0, 3.0);
    let (at_wheels, at_points) = (after(&square_car(), &to).heights_mm, after(&car, &to).heights_mm);
    let front = (at_wheels.fl + at_wheels.fr, at_wheels.fl - at_wheels.fr);
    let rear = (at_wheels.rl + at_wheels.rr, at_wheels.rl - at_wheels.rr);
    let middle = front.0 / 2.0 + (rear.0 - front.0) / 2.0 / 4.0;
    near((at_points.fl + at_points.fr) / 2.0, middle, 1e-4, "a quarter of the way back");
    near(at_points.fl - at_points.fr, front.1 * 1_200.0 / 1_500.0, 1e-4, "600 mm out instead of 750");
    near(rear.1, front.1, 1e-9, "a rigid body");
    let pads = To { collar_mm: Corners::same(0.0), pads_mm: Corners::same(2.0) };
    near(after(&square_car(), &pads).heights_mm.fl, 300.0, 1e-9, "over its own pad nothing changes");
    near(after(&car, &pads).heights_mm.fl, 302.0, 1e-9, "over the floor it does");
}
