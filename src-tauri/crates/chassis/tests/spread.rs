//! What is known of a reading, and what can be said against a window.

mod common;

use bayhand_chassis::{Pads, Sensitivity, Spread, Verdict, expanded_figures, judge};
use bayhand_vehicle::Corners;
use common::{near, square_car, square_loads_kg};

const QUIET: Pads =
    Pads { resolution_kg: 0.0, look_kg: 0.0, settle_kg: 0.0, level_mm: 0.0, height_mm: 0.3, patch_mm: 0.0 };

fn spread(pads: Pads, looks: u32, settles: u32) -> Spread {
    Spread::of(&square_car(), &pads, &square_loads_kg(), looks, settles).expect("a spread")
}

/// R: JCGM 100:2008, 4.2.3 (mean of n: s/sqrt n) and F.2.2.1 (a step a wide: a/sqrt 12).
#[test]
fn looks_average_and_rounding_does_not() {
    near(spread(Pads { look_kg: 0.3, ..QUIET }, 3, 3).expanded_loads_kg().fl, 0.2, 1e-12, "0.3 over nine looks, k = 2");
    let step = spread(Pads { resolution_kg: 0.5, ..QUIET }, 3, 3).expanded_loads_kg().rr;
    near(step, 2.0 * 0.5 / 12.0_f64.sqrt(), 1e-12, "a step of 0.5 stays");
}

/// R: friction moves load along the diagonal only: the total and the front share do not feel it, cross weight does.
#[test]
fn settles_move_the_diagonal() {
    let s = spread(Pads { settle_kg: 1.0, ..QUIET }, 3, 4);
    let u = expanded_figures(&square_loads_kg(), &s.total_kg2());
    near(u.total_kg, 0.0, 1e-6, "total");
    near(u.front_pct, 0.0, 1e-6, "front share");
    near(u.front_diff_kg, 2.0, 1e-9, "2 × 0.5 kg at FL, k = 2");
    near(u.cross_pct, 100.0 * 2.0 / (12_000.0 / 9.806_65), 1e-9, "FR and RL each 0.5 kg, k = 2");
}

/// R: one pad 1 mm off moves 7.241379 N at every corner (diagonal example of checks.md); four pads add as squares.
#[test]
fn level_is_constant_over_the_job() {
    let s = spread(Pads { level_mm: 0.1, ..QUIET }, 1, 1);
    near(s.expanded_loads_kg().fl, 2.0 * 2.0 * 0.1 * 7.241_379 / 9.806_65, 1e-6, "four pads of 0.1 mm, k = 2");
    assert_eq!(s.difference_kg2(), [[0.0; 4]; 4], "a difference of two readings does not feel it");
    let more = spread(Pads { level_mm: 0.1, ..QUIET }, 3, 9);
    assert_eq!(s.constant_kg2, more.constant_kg2, "nor do more settles help");
}

/// R: moments: a patch 1 mm to the left under FL carries F × 1 mm; that moment is balanced by the other loads.
#[test]
fn patches_have_levers() {
    let patch = Sensitivity::of(&square_car()).expect("a car").patch;
    for corner in 0..4 {
        let column: Vec<f64> = (0..4).map(|row| patch.left[row][corner]).collect();
        near(column.iter().sum(), 0.0, 1e-12, "the total stays");
        let moment = 750.0 * (column[0] - column[1] + column[2] - column[3]);
        near(moment, -1.0, 1e-9, "one kg mm is balanced about the middle plane");
        let column: Vec<f64> = (0..4).map(|row| patch.forward[row][corner]).collect();
        let moment = 1_200.0 * (column[0] + column[1]) - 1_400.0 * (column[2] + column[3]);
        near(moment, -1.0, 1e-9, "one kg mm is balanced about the axis across the car");
    }
}

/// R: JCGM 106:2012, 8: a guard band of one expanded uncertainty.
#[test]
fn windows_are_judged_with_a_guard_band() {
    for (error, expanded, window, expected) in [
        (0.0, 0.1, 0.2, Verdict::Inside),
        (-0.1, 0.1, 0.2, Verdict::Inside),
        (0.15, 0.1, 0.2, Verdict::CannotTell),
        (-0.25, 0.1, 0.2, Verdict::CannotTell),
        (0.31, 0.1, 0.2, Verdict::Outside),
        (0.0, 0.3, 0.2, Verdict::CannotTell),
        (f64::NAN, 0.1, 0.2, Verdict::CannotTell),
    ] {
        assert_eq!(judge(error, expanded, window), expected, "{error} ± {expanded} against ± {window}");
    }
}

#[test]
fn bad_spreads_are_refused() {
    let refused = |pads: Pads, looks, settles| {
        Spread::of(&square_car(), &pads, &square_loads_kg(), looks, settles).expect_err("refused").to_string()
    };
    let negative = Pads { look_kg: -0.1, ..QUIET };
    assert_eq!(refused(negative, 1, 1), "pads.look_kg is -0.1; it must be from 0 to 100");
    assert_eq!(refused(QUIET, 0, 1), "looks is 0; it must be at least 1");
    assert_eq!(refused(QUIET, 1, 0), "settles is 0; it must be at least 1");
    let loads = Corners { fl: f64::NAN, ..square_loads_kg() };
    let why = Spread::of(&square_car(), &QUIET, &loads, 1, 1).expect_err("refused").to_string();
    assert_eq!(why, "loads_kg.FL is NaN; it must be a load from 0 to 5000 kg");
}
