//! The straight line that the height of the mass centre rests on.

mod common;

use bayhand_chassis::{Line, StaticsError};
use common::always_alike;
use proptest::prelude::*;

/// P: NIST Statistical Reference Datasets, Norris (linear regression, 36 points, lower difficulty).
const NORRIS_X: [f64; 36] = [
    0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5,
    11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1,
    448.9, 0.5,
];
const NORRIS_Y: [f64; 36] = [
    0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9,
    10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4,
    449.2, 0.2,
];

/// How many of the certified digits a value has: `-log10` of its relative error, 15 when it is the certified one.
fn digits(found: f64, certified: f64) -> f64 {
    let off = ((found - certified) / certified).abs();
    if off == 0.0 { 15.0 } else { -off.log10() }
}

/// The certified values have 15 digits. Double precision allows 14 of the slope and of R squared. Of the rest it allows
/// 13: a slope that is rounded to its last bit (1e-16 of it) moves the line by 5e-14 at the mean of x, 427, which is
/// 2e-13 of the intercept; and decimals like 888.8 are as far from their doubles as that, which is 6e-14 of the scatter.
/// The next test, on whole numbers, has 14 digits of the scatter too.
#[test]
fn norris_to_the_certified_digits() {
    let points: Vec<(f64, f64)> = NORRIS_X.into_iter().zip(NORRIS_Y).collect();
    let line = Line::through(&points).expect("a line");
    let check = |name: &str, found: f64, certified: f64, least: f64| {
        let good = digits(found, certified);
        println!("{name}: {found:?}, {good:.1} digits");
        assert!(good >= least, "{name} is {found:?}, certified {certified:?}: {good:.1} digits");
    };
    check("intercept", line.intercept, -0.262323073774029, 13.0);
    check("slope", line.slope, 1.00211681802045, LEAST_DIGITS);
    check("scatter", line.scatter, 0.884796396144373, 13.0);
    check("uncertainty of the slope", line.slope_standard, 0.000429796848199937, 13.0);
    check("R squared", line.r_squared, 0.999993745883712, LEAST_DIGITS);
    assert_eq!(line.dof, 34, "36 points less two");
}

/// Digits that are asked for where nothing is lost before the fit begins.
const LEAST_DIGITS: f64 = 14.0;

/// A fit must not lose digits because its points lie far from zero: Norris moved by a million and more each way.
#[test]
fn far_from_zero_the_slope_stays() {
    // Powers of two times a multiple of a tenth would round; whole numbers of tenths times ten are exact.
    let points: Vec<(f64, f64)> =
        NORRIS_X.into_iter().zip(NORRIS_Y).map(|(x, y)| ((x * 10.0).round() + 1e8, (y * 10.0).round() - 1e8)).collect();
    let line = Line::through(&points).expect("a line");
    assert!(digits(line.slope, 1.00211681802045) >= LEAST_DIGITS, "slope {:?}", line.slope);
    assert!(digits(line.scatter, 8.84796396144373) >= LEAST_DIGITS, "scatter {:?}", line.scatter);
}

proptest! {
    #![proptest_config(always_alike())]

    /// Points on a line give that line, without scatter but for rounding.
    #[test]
    fn a_line_is_found_again(a in -1e3..1e3f64, b in -1e3..1e3f64, xs in prop::collection::vec(-1e3..1e3f64, 3..30)) {
        prop_assume!(xs.iter().any(|x| (x - xs[0]).abs() > 1.0));
        let points: Vec<_> = xs.iter().map(|&x| (x, a + b * x)).collect();
        let line = Line::through(&points).expect("a line");
        prop_assert!((line.slope - b).abs() < 1e-8, "slope {} is not {b}", line.slope);
        prop_assert!((line.intercept - a).abs() < 1e-5, "intercept {} is not {a}", line.intercept);
        prop_assert!(line.scatter < 1e-6, "scatter {}", line.scatter);
    }
}

#[test]
fn what_is_no_line_is_refused() {
    fn check(points: &[(f64, f64)], says: &str) {
        let why: StaticsError = Line::through(points).expect_err(says);
        assert_eq!(why.to_string(), says);
    }
    check(&[(0.0, 1.0), (1.0, 2.0)], "points is 2; it must be at least 3 points");
    check(&[(2.0, 1.0); 4], "points.x is 0; it must be at least two different values");
    check(&[(0.0, 1.0), (1.0, f64::NAN), (2.0, 0.0)], "points.y is NaN; it must be a finite number");
}
