//! Uncertainty of readings: propagation, conformity, budgets, what would help, against published values and Monte Carlo.

mod common;
#[path = "common/invented.rs"]
mod invented;

use bayhand_chassis::reading::{
    Decision, Figure, HeightGauge, Help, Input, Instruments, Interval, Level, Reading, Source, capability,
    class_iii_limit_kg, coverage_factor, effective_dof, height_spread, judge_figure, level_limits, loads_by_data,
    propagate, repeats, standard_of_limits,
};
use bayhand_chassis::{Figures, PadPlane, Spread, Verdict, diagonal, expanded_figures, twist_limit_mm};
use bayhand_vehicle::{Car, Corners, Place};
use common::{near, square_car, square_loads_kg};
use invented::Random;

/// Usual instruments of a good bay (invented for the tests).
const BAY: Instruments = Instruments {
    pad_resolution_kg: 0.1,
    pad_look_kg: 0.1,
    pad_zero_kg: 0.06,
    pad_calibration_pct: 0.03,
    settle_kg: 0.3,
    settle_dof: None,
    patch_mm: 0.5,
    level: Level { resolution_mm: 0.1, look_mm: 0.05, plane_mm_per_m: 0.1, set_ups: 2, turned: false },
    heights: HeightGauge { resolution_mm: 0.5, look_mm: 0.1, settle_mm: 0.2, zero_mm: 0.3 },
};

/// Nothing is uncertain.
const PERFECT: Instruments = Instruments {
    pad_resolution_kg: 0.0,
    pad_look_kg: 0.0,
    pad_zero_kg: 0.0,
    pad_calibration_pct: 0.0,
    settle_kg: 0.0,
    settle_dof: None,
    patch_mm: 0.0,
    level: Level { resolution_mm: 0.0, look_mm: 0.0, plane_mm_per_m: 0.0, set_ups: 1, turned: false },
    heights: HeightGauge { resolution_mm: 0.0, look_mm: 0.0, settle_mm: 0.0, zero_mm: 0.0 },
};

/// A coupe whose mass centre is high above the roll axis, with unequal tracks.
fn coupe() -> Car {
    let mut car = square_car();
    car.track_rear_mm = 1_430.0;
    car.sprung.cg_height_mm = 520.0;
    car
}

fn read(car: &Car, instruments: &Instruments, looks: u32, settles: u32) -> Reading {
    Reading::of(car, instruments, &loads_by_data(car), looks, settles).expect("a reading")
}

/// P: JCGM 100:2008, H.1, end-gauge calibration, in nm and degrees: 50.000838 mm, u 32 nm, 16 degrees of freedom,
/// k99 2.92, U99 93 nm; with second-order terms 34 nm.
#[test]
fn end_gauge_of_the_gum() {
    let exact = f64::INFINITY;
    let input = |value, standard, dof| Input { value, standard, dof };
    let inputs = [
        input(50_000_623.0, 25.0, 18.0), // l_s
        input(215.0, 9.7, 25.6),         // d
        input(11.5e-6, 1.2e-6, exact),   // alpha_s
        input(-0.1, 0.41, exact),        // theta
        input(0.0, 0.58e-6, 50.0),       // d_alpha
        input(0.0, 0.029, 2.0),          // d_theta
    ];
    let found = propagate(|x| x[0] + x[1] - x[0] * (x[4] * x[3] + x[2] * x[5]), &inputs);
    near(found.value, 50_000_838.0, 1e-6, "the gauge");
    near(found.standard, 32.0, 0.5, "first order, as printed");
    near(found.standard_second_order, 34.0, 0.5, "with the terms of second order, as printed");
    assert_eq!(found.dof.floor(), 16.0, "effective degrees of freedom {}", found.dof);
    let k = coverage_factor(0.99, found.dof);
    near(k, 2.92, 0.005, "t at 99 %");
    near((k * found.standard).round(), 93.0, 0.0, "U99");
    near(found.contributions[2], 0.0, 1e-9, "alpha_s does not count in first order");
}

/// R: the quantile of Student's t; two at 95.45 % with many degrees of freedom. Welch-Satterthwaite of equals.
#[test]
fn coverage_and_degrees_of_freedom() {
    near(coverage_factor(0.9545, f64::INFINITY), 2.0, 1e-4, "normal");
    near(coverage_factor(0.95, 1.9), 12.706, 1e-3, "truncated to one");
    near(coverage_factor(0.95, 1e6), 1.959_966, 2e-6, "and so is t with a million");
    near(coverage_factor(0.95, 10.0), 2.228, 5e-4, "a table's ten");
    near(effective_dof([(1.0, 5.0), (1.0, 5.0)].into_iter()), 10.0, 1e-12, "two equals");
    assert_eq!(effective_dof([(1.0, f64::INFINITY)].into_iter()), f64::INFINITY, "exactly known");
    assert_eq!(effective_dof([(0.0, 3.0)].into_iter()), f64::INFINITY, "nothing that is uncertain");
}

/// M: JCGM 106:2012, 7 (from memory): 13.6 with u 1.8 in [12.5, 16.3]: 0.6626; Phi(1.40) = 0.9192, Phi(2.29) = 0.9890.
#[test]
fn probability_of_conformity() {
    near(Interval { least: 12.5, most: 16.3 }.probability(13.6, 1.8), 0.6626, 5e-5, "inside both limits");
    let below = Interval { least: f64::NEG_INFINITY, most: 1.40 };
    near(below.probability(0.0, 1.0), 0.9192, 5e-5, "one limit");
    near(Interval { most: 2.29, ..below }.probability(0.0, 1.0), 0.9890, 5e-5, "one limit");
    assert_eq!(below.probability(1.40, 0.0), 1.0, "certain, on the edge");
}

/// P: JCGM 106:2012, 9.5.4, bearing run-out: limit 2 um, true values Gamma(4, scale 1/4), u 0.25 um: 4.238 % out untested;
/// consumer's risk 0.802 % without guard band; acceptance limit 1.6718 um gives 0.1 %.
#[test]
fn consumer_risk_of_the_bearings() {
    let density = |x: f64| 4.0_f64.powi(4) * x.powi(3) * (-4.0 * x).exp() / 6.0;
    let limit = Interval { least: f64::NEG_INFINITY, most: 2.0 };
    let risk = |accepted: &Interval| 100.0 * limit.consumer_risk(accepted, 0.25, density, 0.0, 12.0);
    near(risk(&Interval { most: f64::INFINITY, ..limit }), 4.238, 5e-4, "every one accepted");
    near(risk(&limit), 0.802, 5e-4, "no guard band");
    near(risk(&limit.guarded(2.0 - 1.6718)), 0.1, 5e-4, "the guard band of the example");
}

/// P: ILAC-G8:09/2019, 4.2.3: pass, conditional pass, conditional fail, fail with a guard band.
#[test]
fn decisions_with_a_guard_band() {
    let window = Interval::about(50.0, 0.5);
    for (value, expected) in [
        (50.0, Decision::Pass),
        (50.3, Decision::Pass),
        (50.4, Decision::ConditionalPass),
        (49.55, Decision::ConditionalPass),
        (49.4, Decision::ConditionalFail),
        (50.69, Decision::ConditionalFail),
        (50.75, Decision::Fail),
        (f64::NAN, Decision::Fail),
    ] {
        assert_eq!(window.decide(value, 0.2), expected, "{value} against 50 ± 0.5 with a guard of 0.2");
    }
}

/// P: OIML R 76-1, table 6, class III: e 0.5 kg at 300 kg: ±0.5 kg, in service ±1 kg; the edges of its rows.
#[test]
fn class_iii_scales() {
    assert_eq!(class_iii_limit_kg(300.0, 0.5, false), Some(0.5));
    assert_eq!(class_iii_limit_kg(300.0, 0.5, true), Some(1.0));
    assert_eq!(class_iii_limit_kg(250.0, 0.5, false), Some(0.25), "500 e");
    assert_eq!(class_iii_limit_kg(1_000.0, 0.5, false), Some(0.5), "2000 e");
    assert_eq!(class_iii_limit_kg(1_000.5, 0.5, false), Some(0.75), "above");
    assert_eq!(class_iii_limit_kg(5_000.5, 0.5, false), None, "beyond 10000 e");
    near(standard_of_limits(0.5), 0.288_675, 1e-6, "R: JCGM 100:2008, 4.3.7, a rectangle");
}

/// R: what the fewer words of plans and plausibility say is the same covariance, where they say the same.
#[test]
fn the_covariance_is_that_of_the_pads() {
    let car = coupe();
    let instruments = Instruments {
        pad_zero_kg: 0.0,
        pad_calibration_pct: 0.0,
        level: Level { plane_mm_per_m: 0.0, ..BAY.level },
        ..BAY
    };
    let reading = read(&car, &instruments, 3, 2);
    let spread = Spread::of(&car, &instruments.pads(), &reading.loads_kg, 3, 2).expect("a spread");
    for i in 0..4 {
        for j in 0..4 {
            near(reading.covariance_kg2(true)[i][j], spread.total_kg2()[i][j], 1e-12, "whole");
            near(reading.covariance_kg2(false)[i][j], spread.varying_kg2[i][j], 1e-12, "what varies");
        }
    }
    let figures = expanded_figures(&reading.loads_kg, &spread.total_kg2());
    near(reading.budget(Figure::CrossPct).expanded, figures.cross_pct, 1e-6, "and so are the figures");
}

/// R: zero and calibration are of each pad by itself: the total has the root of four zeros, and each load its percent.
#[test]
fn zero_and_calibration_of_the_total() {
    let zero = read(&square_car(), &Instruments { pad_zero_kg: 0.1, ..PERFECT }, 1, 1).budget(Figure::TotalKg);
    near(zero.standard, 0.2, 1e-9, "four zeros of 0.1 kg");
    near(zero.parts[0].share, 1.0, 1e-12, "nothing else");
    let calibration = read(&square_car(), &Instruments { pad_calibration_pct: 0.1, ..PERFECT }, 1, 1);
    let loads = square_loads_kg().to_array();
    let squares: f64 = loads.iter().map(|l| (0.001 * l).powi(2)).sum();
    near(calibration.budget(Figure::TotalKg).standard, squares.sqrt(), 1e-9, "a tenth of a percent of each");
}

/// R: the twist moves load by the closed form and nothing but; a tilted plane moves none when nothing leans, and some
/// across when the mass centre is high.
#[test]
fn twist_and_tilt_are_kept_apart() {
    let level = Level { resolution_mm: 0.0, look_mm: 0.1, plane_mm_per_m: 0.2, set_ups: 1, turned: false };
    let flat = read(&square_car(), &Instruments { level, ..PERFECT }, 1, 1).budget(Figure::FrontDiffKg);
    near(flat.by(Source::LevelTilt), 0.0, 1e-9, "nothing leans");
    // Four pads of 0.1 mm have a twist of 0.2 mm; each mm moves 7.241379 N at FL and takes as much from FR.
    near(flat.by(Source::LevelTwist), 0.2 * 2.0 * 7.241_379 / 9.806_65, 1e-6, "the closed form");
    let tall = read(&coupe(), &Instruments { level, ..PERFECT }, 1, 1);
    let (left, cross) = (tall.budget(Figure::LeftPct), tall.budget(Figure::CrossPct));
    assert!(left.by(Source::LevelTilt) > 3.0 * left.by(Source::LevelTwist), "left share feels tilt: {left:?}");
    assert!(cross.by(Source::LevelTwist) > 3.0 * cross.by(Source::LevelTilt), "cross feels twist: {cross:?}");
    // Turned by half a turn, the laser's own plane is lost and the staff is averaged.
    let turned = Level { set_ups: 2, turned: true, ..level };
    let after = read(&coupe(), &Instruments { level: turned, ..PERFECT }, 1, 1).budget(Figure::LeftPct);
    assert!(after.standard < 0.5 * left.standard, "{} and {}", after.standard, left.standard);
    near(Level { set_ups: 3, ..turned }.tilt_mm_per_m(), 0.2 / 3.0, 1e-12, "one of three set-ups is left over");
}

/// R: a difference of two readings carries no zero, calibration or level, and what varies twice.
#[test]
fn differences_carry_nothing_constant() {
    let reading = read(&coupe(), &BAY, 2, 3);
    for figure in Figure::ALL {
        let change = reading.budget_of_change(figure);
        for constant in [Source::Zero, Source::Calibration, Source::LevelTwist, Source::LevelTilt] {
            assert_eq!(change.by(constant), 0.0, "{figure:?}");
        }
        let whole = reading.budget(figure);
        let varying = [Source::Looks, Source::Rounding, Source::Friction, Source::Patches];
        let squares: f64 = varying.iter().map(|s| whole.by(*s).powi(2)).sum();
        near(change.standard, (2.0 * squares).sqrt(), 1e-6, "what varies, twice");
        near(whole.parts.iter().map(|p| p.share).sum(), 1.0, 1e-6, "shares add up");
        assert!(whole.parts.windows(2).all(|p| p[0].standard >= p[1].standard), "most first");
    }
}

/// R: Welch and Satterthwaite on a budget: friction learned from three settles.
#[test]
fn few_settles_leave_few_degrees_of_freedom() {
    let learned = read(&coupe(), &Instruments { settle_dof: Some(2), ..BAY }, 1, 3).budget(Figure::CrossPct);
    let friction = learned.by(Source::Friction);
    near(learned.dof, 2.0 * (learned.standard / friction).powi(4), 1e-6, "u^4 over the part with two");
    assert_eq!(read(&coupe(), &BAY, 1, 3).budget(Figure::CrossPct).dof, f64::INFINITY, "stated");
}

/// R: JCGM 101: 200,000 draws of everything that was stated, each from its own distribution and through the pads'
/// heights, against propagation: within 2 % for every figure and load.
#[test]
fn monte_carlo_agrees_with_propagation() {
    const SEED: u64 = 101;
    const DRAWS: usize = 200_000;
    println!("seed {SEED}, {DRAWS} draws");
    let (car, looks, settles) = (coupe(), 2, 3);
    let reading = read(&car, &BAY, looks, settles);
    let truth = reading.loads_kg;
    let mut r = Random(SEED);
    let n = diagonal(&car);
    let patch = bayhand_chassis::Sensitivity::of(&car).expect("a car").patch;
    let behind = |p: Place| if p.index() < 2 { 0.0 } else { car.wheelbase_mm / 1e3 };
    let left = |p: Place| {
        let half = if p.index() < 2 { car.track_front_mm } else { car.track_rear_mm } / 2e3;
        if p.is_left() { half } else { -half }
    };
    let mut draw = || {
        // Two set-ups of the laser, not turned, so that its plane tilts alike in both.
        let tilt = [BAY.level.plane_mm_per_m * r.gauss(), BAY.level.plane_mm_per_m * r.gauss()];
        let pads_mm = Corners::from_fn(|p| {
            let staff: f64 = (0..2).map(|_| BAY.level.look_mm * r.gauss() + r.within(-0.05, 0.05)).sum::<f64>() / 2.0;
            staff - tilt[0] * behind(p) + tilt[1] * left(p)
        });
        let by_level = PadPlane::of(&car, &pads_mm).expect("pads").loads_kg;
        let mut shown = Corners::from_fn(|p| {
            let gain = 1.0 + BAY.pad_calibration_pct / 100.0 * r.gauss();
            (truth.at(p) + by_level.at(p)) * gain + BAY.pad_zero_kg * r.gauss() + r.within(-0.05, 0.05)
        });
        for _ in 0..settles {
            let held = BAY.settle_kg * r.gauss();
            let mut moved = Corners::from_fn(|p| held * n.at(p));
            for p in Place::ALL {
                let (forward, left) = (BAY.patch_mm * r.gauss(), BAY.patch_mm * r.gauss());
                for q in Place::ALL {
                    let (i, j) = (q.index(), p.index());
                    *moved.at_mut(q) += truth.at(p) * (patch.forward[i][j] * forward + patch.left[i][j] * left);
                }
            }
            for p in Place::ALL {
                let seen: f64 = (0..looks).map(|_| BAY.pad_look_kg * r.gauss()).sum::<f64>() / f64::from(looks);
                *shown.at_mut(p) += (moved.at(p) + seen) / f64::from(settles);
            }
        }
        shown
    };
    let (mut sums, mut squares) = ([0.0; 10], [0.0; 10]);
    for _ in 0..DRAWS {
        let loads = draw();
        for (k, (sum, square)) in sums.iter_mut().zip(&mut squares).enumerate() {
            let off = if k < 6 {
                Figure::ALL[k].of(&loads) - Figure::ALL[k].of(&truth)
            } else {
                loads.to_array()[k - 6] - truth.to_array()[k - 6]
            };
            *sum += off;
            *square += off * off;
        }
    }
    let covariance = reading.covariance_kg2(true);
    for k in 0..10 {
        let mean = sums[k] / DRAWS as f64;
        let drawn = (squares[k] / DRAWS as f64 - mean * mean).sqrt();
        let propagated = if k < 6 { reading.budget(Figure::ALL[k]).standard } else { covariance[k - 6][k - 6].sqrt() };
        println!("{k}: drawn {drawn:.5}, propagated {propagated:.5}, ratio {:.4}", drawn / propagated);
        assert!((drawn / propagated - 1.0).abs() < 0.02, "figure or load {k}: {drawn} and {propagated}");
    }
}

/// R: by hand on one source: with friction alone m settles leave 2 × 0.6 / sqrt m of a side difference (twice 0.3 at FL).
#[test]
fn it_says_what_would_help() {
    let friction = Instruments { settle_kg: 0.3, ..PERFECT };
    let reading = read(&square_car(), &friction, 1, 1);
    // Off target by the whole of 0: window 0.5 kg; U = 1.2 kg; 1.2 / sqrt m <= 0.5 at m = 6.
    let judged = judge_figure(&reading, Figure::FrontDiffKg, 0.0, 0.5);
    assert_eq!((judged.verdict, judged.decision), (Verdict::CannotTell, Decision::ConditionalPass));
    let expected = [Help::MoreSettles { settles: 6 }, Help::WiderWindow { window: judged.budget.expanded }];
    assert_eq!(judged.helps, expected, "settles are what counts, looks and level cannot help");
    near(judged.budget.expanded, 1.2, 1e-6, "2 × 2 × 0.3");
    near(judged.inside_chance, 0.595_3, 1e-3, "P(|x| < 0.5) with u 0.6");

    let level = Level { look_mm: 0.1, set_ups: 1, ..PERFECT.level };
    let twisted = Instruments { pad_look_kg: 0.01, level, ..PERFECT };
    let reading = read(&square_car(), &twisted, 1, 1);
    let judged = judge_figure(&reading, Figure::FrontDiffKg, 0.0, 0.3);
    let Help::BetterLevel { twist_mm } = judged.helps[0] else { panic!("level counts: {:?}", judged.helps) };
    // 1 mm of twist moves 2 × 7.241379 N of front difference; looks leave (0.15² - 2 × 0.01²) kg² of variance.
    let kg_per_mm = 2.0 * 7.241_379 / 9.806_65;
    near(twist_mm, 2.0 * (0.15_f64.powi(2) - 2e-4).sqrt() / kg_per_mm, 1e-5, "the twist that would do");
    // Levelled so, it tells.
    let better = Instruments { level: Level { look_mm: twist_mm / 4.0 * 0.999, ..level }, ..twisted };
    let again = judge_figure(&read(&square_car(), &better, 1, 1), Figure::FrontDiffKg, 0.0, 0.3);
    assert_eq!((again.verdict, again.helps.len()), (Verdict::Inside, 0), "twist is twice a pad's height, k = 2");
    // With looks alone wider than the way to the window's edge no level helps, and a perfect one cannot be bettered.
    for (pad_look_kg, level) in [(0.2, level), (0.2, PERFECT.level)] {
        let loud = Instruments { pad_look_kg, level, ..PERFECT };
        let judged = judge_figure(&read(&square_car(), &loud, 1, 1), Figure::FrontDiffKg, 0.0, 0.3);
        let level_helps = judged.helps.iter().any(|h| matches!(h, Help::BetterLevel { .. }));
        assert!(judged.verdict == Verdict::CannotTell && !level_helps, "{:?}", judged.helps);
    }
}

/// R: at intake, before anything is read.
#[test]
fn it_says_whether_these_instruments_can_tell() {
    let windows = [(Figure::CrossPct, 0.2), (Figure::CrossPct, 1e-3), (Figure::TotalKg, 5.0)];
    let [usual, never, total] = capability(&coupe(), &BAY, 2, 1, &windows).expect("a bay")[..] else {
        panic!("one for each window")
    };
    assert!(usual.settles_needed.is_some_and(|n| n <= 3) && usual.at_best < usual.planned, "{usual:?}");
    assert_eq!((never.settles_needed, never.greatest), (None, Some(Source::LevelTwist)), "{never:?}");
    assert!(total.settles_needed == Some(1), "{total:?}");
    let planned = read(&coupe(), &BAY, 2, 1).budget(Figure::CrossPct).expanded;
    near(usual.planned, planned, 1e-12, "as it will be read");
    let why = capability(&coupe(), &BAY, 2, 1, &[(Figure::CrossPct, 0.0)]).expect_err("no window");
    assert!(why.to_string().starts_with("windows[0] is 0"), "{why}");
}

/// C: a third of the window; R: of the twist that uses all of it.
#[test]
fn level_limits_of_a_car() {
    let limits = level_limits(&coupe(), 0.2, 0.2).expect("windows");
    near(limits.twist_mm, twist_limit_mm(&coupe(), 0.2).expect("a window") / 3.0, 1e-12, "a third");
    assert!(limits.side_tilt_mm > 5.0 * limits.twist_mm, "tilt matters little: {limits:?}");
    assert!(level_limits(&coupe(), 0.0, 0.2).is_err(), "no window");
}

/// R: type A evaluation finds what was put in: 400 settles of 3 looks, within four standard errors.
#[test]
fn repeats_find_looks_and_settles() {
    const SEED: u64 = 202;
    println!("seed {SEED}");
    let (mut r, car, n) = (Random(SEED), coupe(), diagonal(&coupe()));
    let count = 400;
    let settles: Vec<Vec<_>> = (0..count)
        .map(|_| {
            let held = 0.4 * r.gauss();
            (0..3).map(|_| Corners::from_fn(|p| 300.0 + held * n.at(p) + 0.2 * r.gauss())).collect()
        })
        .collect();
    let found = repeats(&car, &settles).expect("repeats");
    assert_eq!((found.look_dof, found.settle_dof), (4 * 2 * count, count - 1));
    near(found.look_kg, 0.2, 4.0 * 0.2 / (2.0 * f64::from(found.look_dof)).sqrt(), "looks");
    near(found.settle_kg, 0.4, 4.0 * 0.42 / (2.0 * f64::from(found.settle_dof)).sqrt(), "settles");
    let still: Vec<Vec<_>> = vec![vec![square_loads_kg(); 2]; 2];
    assert_eq!(repeats(&car, &still).expect("repeats").settle_kg, 0.0, "looks alone explain it");
    assert!(repeats(&car, &still[..1]).is_err(), "one settle says nothing of settles");
}

/// R: by hand, with a scale so coarse that the same step is shown again, and one so fine that rounding does not count.
#[test]
fn heights_lose_the_gauges_zero_in_differences() {
    let coarse = HeightGauge { resolution_mm: 5.0, ..BAY.heights };
    let spread = height_spread(&coarse, 1, 1);
    let varying: f64 = 0.01 + 0.04 + 25.0 / 12.0;
    near(spread.one_mm, 2.0 * f64::sqrt(varying + 0.09), 1e-12, "one height");
    near(spread.difference_mm, 2.0 * f64::sqrt(2.0 * varying), 1e-12, "left less right");
    near(spread.change_mm, spread.difference_mm, 1e-12, "since before");
    let fine = HeightGauge { resolution_mm: 0.0, ..BAY.heights };
    near(fine.varying_mm(2, 4), f64::sqrt(0.01 / 8.0 + 0.04 / 4.0), 1e-12, "looks and settles alone");
    let still = HeightGauge { look_mm: 0.0, settle_mm: 0.0, ..BAY.heights };
    near(still.varying_mm(5, 5), 0.5 / 12.0_f64.sqrt(), 1e-4, "a car that shows the same step again");
}

/// R: 200,000 heights drawn, rounded and averaged: within 2 % of what is stated, from no averaging of the rounding to
/// full averaging.
#[test]
fn rounding_of_heights_is_averaged_as_drawn() {
    const SEED: u64 = 303;
    println!("seed {SEED}");
    let mut r = Random(SEED);
    for (look_mm, settle_mm) in [(0.01, 0.0), (0.05, 0.05), (0.08, 0.1), (0.1, 0.2), (0.3, 0.0)] {
        let gauge = HeightGauge { look_mm, settle_mm, ..BAY.heights };
        let (draws, looks, settles) = (200_000, 2, 3);
        let mut squares = 0.0;
        for _ in 0..draws {
            let truth = r.within(90.0, 110.0);
            let mut mean = 0.0;
            for _ in 0..settles {
                let settled = truth + settle_mm * r.gauss();
                for _ in 0..looks {
                    let seen = settled + look_mm * r.gauss();
                    mean += (seen / 0.5).round() * 0.5 / f64::from(looks * settles);
                }
            }
            squares += (mean - truth).powi(2);
        }
        let (drawn, stated) = ((squares / f64::from(draws)).sqrt(), gauge.varying_mm(looks as u32, settles as u32));
        println!("look {look_mm}, settle {settle_mm}: drawn {drawn:.5}, stated {stated:.5}");
        assert!((drawn / stated - 1.0).abs() < 0.02, "look {look_mm}, settle {settle_mm}: {drawn} and {stated}");
    }
}

#[test]
fn anything_of_the_loads_has_a_budget() {
    let reading = read(&coupe(), &BAY, 1, 1);
    let total = reading.budget_of(|l| Figures::of(l).total_kg);
    near(total.standard, reading.budget(Figure::TotalKg).standard, 1e-12, "the same figure another way");
}

#[test]
fn bad_instruments_are_refused_by_field() {
    let refused = |instruments: Instruments, looks, says: &str| {
        let why = Reading::of(&coupe(), &instruments, &square_loads_kg(), looks, 1).expect_err(says);
        assert_eq!(why.to_string(), says);
    };
    refused(Instruments { pad_zero_kg: -0.1, ..BAY }, 1, "instruments.pad_zero_kg is -0.1; it must be from 0 to 100");
    let level = Level { set_ups: 0, ..BAY.level };
    refused(Instruments { level, ..BAY }, 1, "instruments.level.set_ups is 0; it must be at least 1");
    refused(Instruments { settle_dof: Some(0), ..BAY }, 1, "instruments.settle_dof is 0; it must be at least 1");
    refused(BAY, 0, "looks is 0; it must be at least 1");
}
