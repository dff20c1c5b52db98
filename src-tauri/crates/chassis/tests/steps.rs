//! Whole steps along the trade line, and what roll and pitch move beside it.

mod common;

use bayhand_chassis::{diagonal, one_step, reached_in_whole_steps, share_shift};
use bayhand_vehicle::{Adjuster, Corners, Place};
use common::{near, square_car};

const HALF_MM: Adjuster = Adjuster { step_mm: 0.5, up_steps: 6, down_steps: 4 };

/// R: the diagonal load of checks.md: 1 mm at FL moves 7.241379 N; a step of 0.5 mm half of it, an adjuster ratio of
/// 1.25 a quarter more.
#[test]
fn one_step_moves_its_part_of_the_diagonal() {
    let mut car = square_car();
    car.corners.rr.adjuster_ratio = Some(1.25);
    let one = one_step(&car, &Corners::same(0.5)).expect("steps");
    let kg = 0.5 * 7.241_379 / 9.806_65;
    near(one.fl.along_kg, kg, 1e-7, "FL up");
    near(one.fr.along_kg, -kg, 1e-7, "FR up takes load off FL");
    near(one.rr.along_kg, 1.25 * kg, 1e-7, "RR with its adjuster ratio");
    for place in Place::ALL {
        near(*one.fl.loads_kg.at(place), kg * diagonal(&car).at(place), 1e-7, "all along the pattern");
    }
    let why = one_step(&car, &Corners { fl: 0.5, fr: 0.0, rl: 0.5, rr: 0.5 }).expect_err("no step");
    assert_eq!(why.to_string(), "adjusters.FR.step_mm is 0; it must be above 0 and at most 50 mm");
}

/// R: model.md, statics 4: lifts `a n_i / ke_i` move no height. Rates of 30 and 28 N/mm: the rear needs 30/28 of the
/// front's steps, so the rear leads and the front follows as near as whole steps come.
#[test]
fn the_four_corner_pattern_in_whole_steps() {
    let car = square_car();
    let line = reached_in_whole_steps(&car, &Corners::same(HALF_MM)).expect("places");
    let steps: Vec<[i32; 4]> = line.iter().map(|r| r.steps.to_array()).collect();
    // 4 steps down at most: at FR and RL for the one end of the line, at FL and RR for the other.
    assert_eq!(steps.first(), Some(&[-4, 4, 4, -4]), "the one end");
    assert_eq!(steps.last(), Some(&[4, -4, -4, 4]), "the other end");
    assert!(steps.contains(&[0; 4]), "where nothing is turned");
    let kg = 0.5 * 7.241_379 / 9.806_65;
    for reached in &line {
        let whole = reached.steps;
        let expected = f64::from(whole.fl - whole.fr - whole.rl + whole.rr) * kg;
        near(reached.along_kg, expected, 1e-6, "each step its part");
    }
    // One whole step each: the front needs 28/30 of a step, so it gives 1/15 of half a mm too much, shared with the
    // ground by the springs: loads along the pattern give way by a n / ke. Body: lift less what springs give.
    let first = line.iter().find(|r| r.steps.fl == 1).expect("one step");
    let a_n: f64 = 4.0 * 0.5 * 7.241_379;
    near(first.height_mm, (0.5_f64 - a_n / 28.0).abs().max((0.5_f64 - a_n / 30.0).abs()), 1e-6, "what rounding leaves");
    for pair in line.windows(2) {
        assert!(pair[0].along_kg < pair[1].along_kg, "in order along the line");
    }
    let endless = Corners::same(Adjuster { up_steps: 20_000, ..HALF_MM });
    assert!(reached_in_whole_steps(&car, &endless).is_err(), "no adjuster has 20000 steps");
}

/// R: moments. The mass centre 0.35 m over the roll axis moves by `h d / t` as one side rises by `d`: left minus right
/// changes by `-2 m h / t²` a mm, the front load by `-m h / wheelbase²`.
#[test]
fn roll_and_pitch_move_the_shares() {
    let mut car = square_car();
    near(share_shift(&car).expect("a car").left_minus_right_kg, 0.0, 1e-12, "no lever, no shift");
    car.sprung.cg_height_mm = 650.0;
    car.sprung.mass_kg = 1_000.0;
    let shift = share_shift(&car).expect("a car");
    near(shift.left_minus_right_kg, -2.0 * 1_000.0 * 350.0 / 1_500.0_f64.powi(2), 1e-9, "0.31 kg a mm, away from it");
    near(shift.front_kg, -1_000.0 * 350.0 / 2_600.0_f64.powi(2), 1e-9, "and off the raised axle");
}
