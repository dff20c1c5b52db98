//! Rates, the diagonal pattern, and what stands in for missing data.

mod common;

use bayhand_chassis::{
    Confidence, Rates, Scaled, Sensitivity, StaticsError, UnknownFactor, diagonal, diagonal_gain, in_series,
    lift_without_height, unknown_factors, wheel_rate, with_factors,
};
use bayhand_vehicle::{Bar, Car, Corners, Place, SprungLike};
use common::{near, square_car};

/// P: Barton & Fieldhouse, Automotive Chassis Engineering (Springer), p. 179: wheel rate = spring rate × lever ratio².
/// R: the figures, recomputed from that and from springs in series.
#[test]
fn wheel_and_ride_rates() {
    near(wheel_rate(25.0, 0.8), 16.0, 1e-12, "25 N/mm at motion ratio 0.8");
    near(in_series(16.0, 200.0), 14.8148, 5e-5, "with a tyre of 200 N/mm");
}

/// R: null vector of the three equilibrium conditions; dF = n (n.s) / sum(n_i²/K_i). Tracks 1.5/1.5 m, axles at
/// +1.2/-1.4 m, K = 30, 30, 28, 28 N/mm: one mm at FL moves 7.241379 N.
#[test]
fn one_millimetre_moves_the_diagonal() {
    let car = square_car();
    assert_eq!(diagonal(&car).to_array(), [1.0, -1.0, -1.0, 1.0], "equal tracks");
    near(diagonal_gain(&car).fl, 7.241_379, 5e-7, "closed form");
    let moved = Sensitivity::of(&car).expect("a car").load_per_mm_wheel;
    for (row, sign) in [1.0, -1.0, -1.0, 1.0].into_iter().enumerate() {
        near(moved[row][0] * 9.806_65, sign * 7.241_379, 5e-7, "the whole system, mass centre on the roll axis");
    }
}

/// R: model.md, statics 4: `dL_i = a n_i / ke_i` changes loads by `a n` and no height, whatever the springs.
#[test]
fn the_four_corner_pattern_moves_load_and_no_height() {
    let mut car = square_car();
    car.track_rear_mm = 1_430.0;
    car.sprung.cg_height_mm = 480.0;
    car.corners.rr.spring_n_per_mm = Some(90.0);
    let lift = lift_without_height(&car, 10.0);
    let s = Sensitivity::of(&car).expect("a car");
    let answer = |m: &[[f64; 4]; 4], i: usize| (0..4).map(|j| m[i][j] * lift.to_array()[j]).sum::<f64>();
    for place in Place::ALL {
        let i = place.index();
        near(answer(&s.height_per_mm_wheel, i), 0.0, 1e-9, "no height changes");
        near(answer(&s.load_per_mm_wheel, i), 10.0 * diagonal(&car).to_array()[i], 1e-9, "load follows the pattern");
    }
}

/// R: equilibrium: whatever is moved, the total stays, and collars leave the front share alone.
#[test]
fn loads_only_move_around() {
    let mut car = square_car();
    car.sprung.cg_height_mm = 520.0;
    car.torsion_nm_per_deg = Some(6_000.0);
    car.bars.front = Some(Bar { n_per_mm: 20.0, preload_n: 0.0 });
    let s = Sensitivity::of(&car).expect("a car");
    for j in 0..4 {
        for m in [&s.load_per_mm_wheel, &s.load_per_mm_pad] {
            near((0..4).map(|i| m[i][j]).sum(), 0.0, 1e-9, "the total stays");
        }
    }
}

/// R: a bar of no rate is no bar; a bar does not feel both wheels of its axle lifted alike; it does stiffen the twist.
#[test]
fn bars_stiffen_twist_only() {
    let free = Sensitivity::of(&square_car()).expect("a car");
    let mut car = square_car();
    car.bars.front = Some(Bar { n_per_mm: 0.0, preload_n: 0.0 });
    let none = Sensitivity::of(&car).expect("a car");
    near(none.load_per_mm_wheel[0][0], free.load_per_mm_wheel[0][0], 1e-12, "a bar of no rate");
    car.bars.front = Some(Bar { n_per_mm: 30.0, preload_n: 0.0 });
    let stiff = Sensitivity::of(&car).expect("a car");
    for i in 0..4 {
        let both = |s: &Sensitivity| s.height_per_mm_wheel[i][0] + s.height_per_mm_wheel[i][1];
        near(both(&stiff), both(&free), 1e-9, "the axle lifted alike");
    }
    assert!(stiff.load_per_mm_pad[0][0] > free.load_per_mm_pad[0][0], "a pad under one wheel winds the bar up");
}

/// C: interchange.md, no data: wheel rate of 2.4 Hz on the corner's sprung load. R: the numbers.
#[test]
fn missing_data_has_a_documented_stand_in() {
    let mut car = square_car();
    car.corners = car.corners.map(|c| bayhand_vehicle::Corner { spring_n_per_mm: None, motion_ratio: None, ..*c });
    // 12000 N over 9.80665, 1.4 / 2.6 of it in front, half of that left: 329.447 kg; (2 pi 2.4)^2 m = 74.9148 N/mm.
    let rates = Rates::of(&car);
    near(rates.wheel_n_per_mm.fl, 74.9148, 5e-4, "2.4 Hz on 329.447 kg");
    near(rates.adjuster_ratio.fl, 1.25, 1e-12, "a spring seat at motion ratio 0.8");
    car.corners.fl.spring_n_per_mm = Some(100.0);
    near(Rates::of(&car).wheel_n_per_mm.fl, 74.9148, 5e-4, "the ratio is found from the usual rate");
    car.corners.fl.spring_n_per_mm = Some(1_000.0);
    near(Rates::of(&car).wheel_n_per_mm.fl, 360.0, 1e-9, "but is at least 0.6");
}

/// C: springs that nobody knows are taken to be what cars of the kind have, and are doubted by how much those differ. R:
/// the geometric middle of 2 and 3 Hz is 2.449 Hz; a rate goes with the square of its frequency, and the span is four sigmas
/// wide: 2 ln(3 / 2) / 4 = 0.2027.
#[test]
fn what_a_car_is_sprung_like_says_what_is_likely_of_its_springs() {
    let mut car = square_car();
    car.corners = car.corners.map(|c| bayhand_vehicle::Corner { spring_n_per_mm: None, motion_ratio: None, ..*c });
    let of = |like: Option<SprungLike>| {
        let car = bayhand_vehicle::Car { sprung_like: like, ..car };
        let doubt = unknown_factors(&car, &Confidence::default());
        let spring = doubt.iter().find(|u| u.what == Scaled::SpringRate).expect("not entered").sigma;
        (Rates::of(&car).wheel_n_per_mm.fl, spring)
    };
    let (track, doubt) = of(Some(SprungLike::Track));
    near(track / of(None).0, 6.0 / (2.4 * 2.4), 1e-12, "2.449 Hz beside 2.4 Hz, squared");
    near(doubt, 0.2027, 5e-5, "2 to 3 Hz");
    let softer = of(Some(SprungLike::Road)).0 < of(Some(SprungLike::FastRoad)).0;
    assert!(softer && track < of(Some(SprungLike::Downforce)).0, "the harder a car is driven the stiffer it is sprung");
    assert!(doubt < of(None).1, "who says what kind of car it is knows more than who says nothing");
}

#[test]
fn what_cannot_stand_is_refused() {
    let mut car = square_car();
    car.sprung.cg_height_mm = 3_000.0;
    car.corners = Corners::same(bayhand_vehicle::Corner { spring_n_per_mm: Some(1.0), ..car.corners.fl });
    assert!(matches!(Sensitivity::of(&car), Err(StaticsError::TipsOver { .. })), "it would fall over");
    let mut car = square_car();
    car.corners.rl.tyre_n_per_mm = f64::NAN;
    let why = Sensitivity::of(&car).expect_err("no number");
    assert_eq!(why.to_string(), "car.corners.RL.tyre_n_per_mm is NaN; it must be from 20 to 5000 N/mm");
    car.corners.rl.tyre_n_per_mm = 200.0;
    car.sprung.cg_behind_front_axle_mm = 2_700.0;
    let why = Sensitivity::of(&car).expect_err("mass centre behind the car");
    assert_eq!(why.at(), "car.sprung.cg_behind_front_axle_mm");
}

/// Entered data is scaled by what is not known of it; a wheel rate that was assumed stays when the ratio changes, since
/// it is the wheel rate that was assumed, and an entered spring stays the spring that it is.
#[test]
fn factors_scale_what_they_name() {
    let mut car = square_car();
    car.corners.rl.spring_n_per_mm = None;
    car.corners.rr.spring_n_per_mm = None;
    let factors = unknown_factors(&car, &Confidence::default());
    let log = |u: &UnknownFactor| match u.what {
        Scaled::SpringRate => 1.1_f64.ln(),
        Scaled::MotionRatio => 0.95_f64.ln(),
    };
    let scaled = with_factors(&car, factors.iter().map(|u| (u, log(u))));
    let front_n_per_mm = car.corners.fl.spring_n_per_mm.expect("entered");
    near(scaled.corners.fl.spring_n_per_mm.expect("kept"), 1.1 * front_n_per_mm, 1e-9, "the entered spring, scaled");
    near(scaled.corners.fr.motion_ratio.expect("kept"), 0.95, 1e-12, "the entered ratio, scaled");
    let (assumed, now) = (Rates::of(&car).wheel_n_per_mm.rl, Rates::of(&scaled).wheel_n_per_mm.rl);
    near(now, 1.1 * assumed, 1e-9, "an assumed wheel rate feels its own factor and not the ratio's");
    let huge = with_factors(&car, factors.iter().map(|u| (u, 20.0)));
    let held = (huge.corners.fl.spring_n_per_mm, huge.corners.fl.motion_ratio);
    assert_eq!(held, (Some(5_000.0), Some(3.0)), "inside what a car can be, whatever a search tries");
}

/// Left and right that were entered alike share what is not known of them; entered apart, each has its own.
#[test]
fn alike_sides_share_their_doubt() {
    let mut car = square_car();
    let of = |car: &Car, pct: f64| {
        let confidence = Confidence { spring_pct: pct, motion_ratio_pct: 0.0 };
        unknown_factors(car, &confidence).iter().map(|u| u.places.len()).collect::<Vec<_>>()
    };
    assert_eq!(of(&car, 10.0), [2, 2], "an axle, an axle; ratios that are certain are not among them");
    car.corners.fr.spring_n_per_mm = Some(80.0);
    assert_eq!(of(&car, 10.0), [1, 1, 2], "left, right, and the rear axle");
    assert_eq!(of(&car, 0.0), [0_usize; 0], "certain data leaves nothing to learn");
}
