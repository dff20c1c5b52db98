//! Figures, the trade line, the mass centre, pads and predicted states.

mod common;

use bayhand_chassis::{
    Figures, From, Mark, PadPlane, State, StaticsError, To, mass_centre, moment_to_left_kg_mm, predict,
    side_tilt_limit_mm, trade_line, twist_limit_mm,
};
use bayhand_vehicle::{Corners, Place};
use common::{near, square_car, square_loads_kg};

fn reading(loads_kg: Corners<f64>) -> From {
    From { collar_mm: Corners::same(0.0), pads_mm: Corners::same(0.0), loads_kg, heights_mm: Corners::same(100.0) }
}

/// R: worked out by hand from the definitions.
#[test]
fn figures_of_four_loads() {
    let f = Figures::of(&Corners { fl: 210.0, fr: 190.0, rl: 310.0, rr: 290.0 });
    assert_eq!(
        [f.total_kg, f.front_pct, f.left_pct, f.cross_pct, f.front_diff_kg, f.rear_diff_kg],
        [1000.0, 40.0, 52.0, 50.0, 20.0, 20.0]
    );
}

/// R: the gradients are the derivatives of the figures (central difference).
#[test]
fn gradients_are_derivatives() {
    let loads = Corners { fl: 210.0, fr: 190.0, rl: 310.0, rr: 290.0 };
    let fields = |f: Figures| [f.total_kg, f.front_pct, f.left_pct, f.cross_pct, f.front_diff_kg, f.rear_diff_kg];
    for place in Place::ALL {
        let moved = |kg: f64| {
            let mut l = loads;
            *l.at_mut(place) += kg;
            fields(Figures::of(&l))
        };
        let (more, less) = (moved(0.01), moved(-0.01));
        for (i, row) in Figures::gradients(&loads).iter().enumerate() {
            near(row[place.index()], (more[i] - less[i]) / 0.02, 1e-6, "derivative");
        }
    }
}

/// R: mass centre from wheel loads, school textbook problem: 1800 kg, wheelbase 1.8 m, centre 1.05 m behind the front
/// axle, g 9.8: 3675 N on each front wheel, 5145 N on each rear wheel.
#[test]
fn mass_centre_of_the_textbook() {
    let mut car = square_car();
    car.wheelbase_mm = 1_800.0;
    let loads = Corners { fl: 3675.0, fr: 3675.0, rl: 5145.0, rr: 5145.0 }.map(|n| n / 9.8);
    let centre = mass_centre(&car, &loads).expect("loads");
    near(centre.behind_front_axle_mm, 1_050.0, 1e-9, "moments about the front axle");
    near(centre.left_mm, 0.0, 1e-9, "even loads");
}

/// R: model.md, statics 3: all even at once only with a left share of one half.
#[test]
fn the_trade_line_passes_its_marks() {
    let mut car = square_car();
    car.track_rear_mm = 1_450.0;
    let loads = Corners { fl: 300.0, fr: 310.0, rl: 275.0, rr: 240.0 };
    let line = trade_line(&car, &loads, 50.0).expect("a line");
    assert_eq!(line.len(), 4, "four marks");
    for pair in line.windows(2) {
        assert!(pair[0].along_kg <= pair[1].along_kg, "in order along the line");
    }
    let now = mass_centre(&car, &loads).expect("loads");
    for point in &line {
        let f = point.figures;
        match point.mark {
            Mark::FrontEven => near(f.front_diff_kg, 0.0, 1e-9, "front even"),
            Mark::RearEven => near(f.rear_diff_kg, 0.0, 1e-9, "rear even"),
            Mark::CrossWanted => near(f.cross_pct, 50.0, 1e-9, "cross wanted"),
            Mark::SameLeftShare => {
                let l = point.loads_kg;
                near(l.fl / (l.fl + l.fr), l.rl / (l.rl + l.rr), 1e-12, "same left share");
            }
        }
        let there = mass_centre(&car, &point.loads_kg).expect("loads");
        near(there.left_mm, now.left_mm, 1e-9, "collars leave the moment about the middle plane alone");
        near(f.front_pct, line[0].figures.front_pct, 1e-9, "and the front share");
    }
    let even = trade_line(&square_car(), &Corners { fl: 305.0, fr: 300.0, rl: 250.0, rr: 255.0 }, 50.0);
    for point in even.expect("a line") {
        near(point.along_kg, -2.5, 1e-9, "left share one half: all marks fall together");
    }
}

/// R: 10 kg moved 100 mm to the left on equal tracks of 1.5 m: 1000 kg mm, 1.333 kg of left minus right.
#[test]
fn moving_mass_moves_the_left_share() {
    let car = square_car();
    let now = Figures::of(&square_loads_kg());
    near(moment_to_left_kg_mm(&car, &now, 2.0 / 3.0, 2.0 / 3.0), 1_000.0, 1e-9, "moments about the middle plane");
}

/// R: one pad up acts as one mm at the wheel; a tilted plane has no twist. Example of the diagonal, checks.md.
#[test]
fn pads_are_taken_apart() {
    let car = square_car();
    let one = PadPlane::of(&car, &Corners { fl: 1.0, fr: 0.0, rl: 0.0, rr: 0.0 }).expect("pads");
    near(one.twist_mm, 1.0, 1e-12, "one pad up is a twist of as much");
    near(one.loads_kg.fl * 9.806_65, 7.241_379, 5e-7, "the load it adds");
    let tilted = PadPlane::of(&car, &Corners { fl: 2.5, fr: 0.5, rl: 1.5, rr: -0.5 }).expect("pads");
    near(tilted.twist_mm, 0.0, 1e-12, "a plane has no twist");
    near(tilted.mean_mm, 1.0, 1e-12, "mean");
    near(tilted.pitch_mm, 1.0, 1e-12, "front above rear");
    near(tilted.side_tilt_mm, 2.0, 1e-12, "left above right");
    near(tilted.loads_kg.fl, 0.0, 1e-9, "and moves no load with the mass centre on the roll axis");
    // A twist of w moves w × 7.241379 N at FL; off FR and RL together twice that.
    let limit = twist_limit_mm(&car, 0.2).expect("a window");
    near(limit, 0.002 * 12_000.0 / (2.0 * 7.241_379), 1e-6, "twist that uses up a window of 0.2 %");
    assert!(side_tilt_limit_mm(&car, 0.2).expect("a window") > 1e9, "no lever, no limit but rounding");
    let mut tall = square_car();
    tall.sprung.cg_height_mm = 500.0;
    let tilt = side_tilt_limit_mm(&tall, 0.1).expect("a window");
    // A whole side up by d leans the body by d / track; the weight × lever × (lean with the springs) / track moves.
    assert!(tilt.is_finite() && tilt > 1.0, "a tilt of {tilt} mm");
    assert!(twist_limit_mm(&car, 0.0).is_err(), "a window of nothing");
}

/// R: the marks of the nonlinear states, by hand.
#[test]
fn states_are_reported_and_no_load_is_negative() {
    let from = reading(square_loads_kg());
    let one = |place: Place, mm: f64| {
        let mut to = To { collar_mm: Corners::same(0.0), pads_mm: Corners::same(0.0) };
        *to.collar_mm.at_mut(place) = mm;
        to
    };
    let mut car = square_car();
    car.corners.fl.bump_mm = Some(3.0);
    let ordinary = predict(&car, &from, &one(Place::Fr, 2.0)).expect("a prediction");
    assert!(ordinary.states.is_empty(), "2 mm is nothing: {:?}", ordinary.states);
    let much = predict(&car, &from, &one(Place::Fr, 600.0)).expect("a prediction");
    assert!(much.states.contains(&State::WheelLifted { place: Place::Rr }), "RR is pulled up: {:?}", much.states);
    assert_eq!(much.loads_kg.rr, 0.0, "a pad does not pull");
    near(much.figures.total_kg, 12_000.0 / 9.806_65, 1e-6, "the other three carry the car");
    let lowered = predict(&car, &from, &one(Place::Fl, -20.0)).expect("a prediction");
    assert_eq!(lowered.states, [State::OnBumpStop { place: Place::Fl }], "only 3 mm left");

    let mut car = square_car();
    car.corners.fr.droop_mm = Some(5.0);
    let higher = predict(&car, &from, &one(Place::Fr, 100.0)).expect("a prediction");
    let highest = predict(&car, &from, &one(Place::Fr, 200.0)).expect("a prediction");
    assert_eq!(higher.states, [State::ToppedOut { place: Place::Fr }], "FR runs out of droop");
    for place in Place::ALL {
        let (a, b) = (higher.loads_kg.at(place), highest.loads_kg.at(place));
        near(*b, *a, 1e-9, "at the droop limit a collar only preloads its spring");
        near(*highest.heights_mm.at(place), *higher.heights_mm.at(place), 1e-9, "and raises nothing");
    }
}

#[test]
fn bad_readings_are_refused_by_field_and_range() {
    fn check(change: impl FnOnce(&mut From, &mut To), says: &str) {
        let mut from = reading(square_loads_kg());
        let mut to = To { collar_mm: from.collar_mm, pads_mm: from.pads_mm };
        change(&mut from, &mut to);
        let why = predict(&square_car(), &from, &to).expect_err(says);
        assert_eq!(why.to_string(), says);
        assert!(says.starts_with(&StaticsError::at(&why)), "the path is the field");
    }
    check(|f, _| f.loads_kg.rl = -3.0, "from.loads_kg.RL is -3; it must be a load from 0 to 5000 kg");
    check(|f, _| f.loads_kg.fl = f64::NAN, "from.loads_kg.FL is NaN; it must be a load from 0 to 5000 kg");
    check(|f, _| f.loads_kg = Corners::same(0.0), "from.loads_kg is 0 kg; it must be a load on each axle");
    check(|_, t| t.collar_mm.rr = 1e9, "to.collar_mm.RR is 1000000000; it must be from -1000 to 1000 mm");
    check(|_, t| t.pads_mm.fr = f64::INFINITY, "to.pads_mm.FR is inf; it must be from -500 to 500 mm");
}
