//! Chances and uncertainties.

mod common;

use bayhand_chassis::{Figures, Sensitivity, diagonal};
use bayhand_planner::{Confidence, Problem, Wish, Wishes, box_probability, plan};
use bayhand_vehicle::{Adjuster, Corners, Place};
use common::{Ledger, Random, coupe};
use nalgebra::DMatrix;

fn check(mean: &[f64], covariance: &[f64], half: &[f64], expected: f64, why: &str) {
    let found = box_probability(mean, &DMatrix::from_row_slice(mean.len(), mean.len(), covariance), half);
    assert!((found - expected).abs() < 0.002, "{why}: {found} is not {expected}");
}

/// R: closed forms. 0.682689 is the share of a Gaussian within one sigma.
#[test]
fn chances_with_a_closed_form() {
    check(&[0.0], &[1.0], &[1.0], 0.682_689, "one sigma");
    // M: JCGM 106:2012, section 7: Phi(1.40) = 0.9192, and 13.6 with u 1.8 in [12.5, 16.3], the middle of which is 14.4.
    check(&[98.6], &[1.0], &[100.0], 0.919_2, "one edge at 1.40 sigma");
    check(&[13.6 - 14.4], &[1.8 * 1.8], &[1.9], 0.662_6, "a window that is not about the value");
    check(
        &[0.0, 0.0],
        &[1.0, 0.0, 0.0, 1.0],
        &[1.0, 1.0],
        0.682_689_f64.powi(2),
        "two that know nothing of each other",
    );
    check(&[0.0, 0.0], &[1.0, 1.0, 1.0, 1.0], &[1.0, 2.0], 0.682_689, "two that are one");
    check(&[0.0, 0.0], &[1.0, 1.0, 1.0, 1.0], &[2.0, 1.0], 0.682_689, "the same the other way round");
    check(&[0.5, 3.0], &[0.0, 0.0, 0.0, 0.0], &[1.0, 1.0], 0.0, "no spread, outside");
    check(&[0.5, 0.3], &[0.0, 0.0, 0.0, 0.0], &[1.0, 1.0], 1.0, "no spread, inside");
    // Windows so wide on one side that only signs matter; correlation 1/2: 1/4 + asin(1/2) / (2 pi) = 1/3.
    let far = 1e3;
    check(&[far, far], &[1.0, 0.5, 0.5, 1.0], &[far, far], 1.0 / 3.0, "both below their edge at zero");
}

/// R: plain simulation, JCGM 101:2008: 200000 draws, so 0.0011 is one sigma of the simulation.
#[test]
fn chances_of_seven_wishes_by_simulation() {
    const SEED: u64 = 77;
    println!("seed {SEED}");
    let mut r = Random(SEED);
    for _ in 0..4 {
        let factor: Vec<f64> = (0..49).map(|_| r.gauss() * 0.5).collect();
        let factor = DMatrix::from_row_slice(7, 7, &factor);
        let covariance = &factor * factor.transpose();
        let half: Vec<f64> = (0..7).map(|i| 1.8 * covariance[(i, i)].sqrt()).collect();
        let mean: Vec<f64> = half.iter().map(|h| h * r.within(-0.5, 0.5)).collect();
        let draws = 200_000;
        let mut inside = 0;
        for _ in 0..draws {
            let z: [f64; 7] = std::array::from_fn(|_| r.gauss());
            let kept = (0..7).all(|i| {
                let value = mean[i] + (0..7).map(|j| factor[(i, j)] * z[j]).sum::<f64>();
                value.abs() <= half[i]
            });
            inside += u32::from(kept);
        }
        let seen = f64::from(inside) / f64::from(draws);
        let found = box_probability(&mean, &covariance, &half);
        assert!((found - seen).abs() < 0.006, "{found} is not {seen}");
    }
}

/// A car near its wishes, so that the chance is neither nothing nor certain.
fn near() -> Problem {
    let mut p = coupe();
    p.rounds[0].loads_kg = Corners { fl: 246.3, fr: 245.1, rl: 296.9, rr: 298.1 };
    p.rounds[0].heights_mm = Corners { fl: 100.4, fr: 99.8, rl: 100.3, rr: 99.5 };
    p
}

/// R: JCGM 101:2008: the reading simulated as the interchange text says it comes about, springs and ratios drawn too.
#[test]
fn what_is_said_of_a_plan_agrees_with_simulation() {
    const SEED: u64 = 4_711;
    println!("seed {SEED}");
    let mut r = Random(SEED);
    for confidence in
        [Confidence { spring_pct: 0.0, motion_ratio_pct: 0.0 }, Confidence { spring_pct: 10.0, motion_ratio_pct: 3.0 }]
    {
        let mut problem = near();
        problem.confidence = confidence;
        problem.rounds[0].loads_kg = Corners { fl: 250.3, fr: 241.1, rl: 292.9, rr: 302.1 };
        let found = plan(&problem).expect("a plan");
        let steps = found.steps.to_array();
        assert!(steps != [0; 4], "there is something to turn");
        let s = Sensitivity::of(&problem.car).expect("a car");
        let n = diagonal(&problem.car).to_array();
        let draws = 40_000;
        let (mut inside, mut cross, mut height) = (0, Vec::new(), Vec::new());
        for _ in 0..draws {
            let mut car = problem.clone();
            for axle in [[Place::Fl, Place::Fr], [Place::Rl, Place::Rr]] {
                let spring = 1.0 + r.gauss() * confidence.spring_pct / 100.0;
                let ratio = 1.0 + r.gauss() * confidence.motion_ratio_pct / 100.0;
                for p in axle {
                    let corner = car.car.corners.at_mut(p);
                    corner.spring_n_per_mm = corner.spring_n_per_mm.map(|v| v * spring);
                    corner.motion_ratio = corner.motion_ratio.map(|v| v * ratio);
                }
            }
            let p = &problem.pads;
            let (level, friction): ([f64; 4], f64) =
                (std::array::from_fn(|_| r.gauss() * p.level_mm), r.gauss() * p.settle_kg);
            let (loads, heights) = Ledger::of(&car).after(steps);
            let by_pads = |m: &[f64; 4]| m.iter().zip(level).map(|(m, l)| m * l).sum::<f64>();
            let loads = Corners::from_array(std::array::from_fn(|i| {
                let rounding = (r.unit() - 0.5) * p.resolution_kg;
                loads[i] + r.gauss() * p.look_kg + rounding + friction * n[i] + by_pads(&s.load_per_mm_pad[i])
            }));
            let heights: [f64; 4] =
                std::array::from_fn(|i| heights[i] + r.gauss() * p.height_mm + by_pads(&s.height_per_mm_pad[i]));
            let f = Figures::of(&loads);
            let w = &problem.wishes;
            let ok = |wish: Option<Wish>, value: f64| wish.is_none_or(|w| (value - w.target).abs() <= w.window);
            let all = ok(w.cross_pct, f.cross_pct)
                && ok(w.front_diff_kg, f.front_diff_kg)
                && ok(w.rear_diff_kg, f.rear_diff_kg)
                && Place::ALL.into_iter().all(|p| ok(*w.heights_mm.at(p), heights[p.index()]));
            inside += u32::from(all);
            cross.push(f.cross_pct);
            height.push(heights[0]);
        }
        let seen = f64::from(inside) / f64::from(draws);
        // Two sigma of the simulation are half a point.
        let chance = found.inside_chance;
        assert!((chance - seen).abs() < 0.015, "{confidence:?}: chance {chance} is not {seen}");
        assert!(chance > 0.05 && chance < 0.999, "the test says something: {chance}");
        let twice_sigma = |v: &[f64]| {
            let mean = v.iter().sum::<f64>() / v.len() as f64;
            2.0 * (v.iter().map(|x| (x - mean).powi(2)).sum::<f64>() / (v.len() - 1) as f64).sqrt()
        };
        for (what, said, seen) in [
            ("cross weight", found.uncertainty.figures.cross_pct, twice_sigma(&cross)),
            ("height FL", found.uncertainty.heights_mm.fl, twice_sigma(&height)),
        ] {
            assert!((said / seen - 1.0).abs() < 0.05, "{confidence:?}: U of the {what}: {said} is not {seen}");
        }
    }
}

/// R: JCGM 101:2008, on many problems with certain data: within a point of simulation. 200000 draws, so a tenth of a point
/// is one sigma of the simulation.
#[test]
fn chances_are_within_a_point_of_simulation() {
    const SEED: u64 = 8_086;
    println!("seed {SEED}");
    let mut r = Random(SEED);
    let (mut worst, mut between) = (0.0_f64, 0);
    for number in 0..24 {
        let mut problem = near();
        let p = &mut problem.pads;
        (p.look_kg, p.settle_kg, p.level_mm) = (r.within(0.05, 0.6), r.within(0.0, 0.8), r.within(0.0, 0.3));
        let target = problem.rounds[0].loads_kg.fl - problem.rounds[0].loads_kg.fr + r.within(-1.0, 1.0);
        if r.chance(0.5) {
            problem.wishes.front_diff_kg = Some(Wish { target, window: r.within(0.5, 3.0), weight: 0.5 });
        }
        if r.chance(0.5) {
            problem.wishes.rake_mm = Some(Wish { target: 0.0, window: r.within(0.3, 1.0), weight: 0.2 });
        }
        let found = plan(&problem).expect("a plan");
        let s = Sensitivity::of(&problem.car).expect("a car");
        let n = diagonal(&problem.car).to_array();
        let (loads, heights) = Ledger::of(&problem).after(found.steps.to_array());
        let total: f64 = loads.iter().sum();
        let (p, w) = (&problem.pads, &problem.wishes);
        let draws = 200_000;
        let mut inside = 0;
        for _ in 0..draws {
            let (level, friction): ([f64; 4], f64) =
                (std::array::from_fn(|_| r.gauss() * p.level_mm), r.gauss() * p.settle_kg);
            let by_pads = |m: &[f64; 4]| m.iter().zip(level).map(|(m, l)| m * l).sum::<f64>();
            let l: [f64; 4] = std::array::from_fn(|i| {
                let rounding = (r.unit() - 0.5) * p.resolution_kg;
                loads[i] + r.gauss() * p.look_kg + rounding + friction * n[i] + by_pads(&s.load_per_mm_pad[i])
            });
            let h: [f64; 4] =
                std::array::from_fn(|i| heights[i] + r.gauss() * p.height_mm + by_pads(&s.height_per_mm_pad[i]));
            let ok = |wish: Option<Wish>, value: f64| wish.is_none_or(|w| (value - w.target).abs() <= w.window);
            let cross = 50.0 + 100.0 * (l[1] + l[2] - 0.5 * l.iter().sum::<f64>()) / total;
            let all = ok(w.cross_pct, cross)
                && ok(w.front_diff_kg, l[0] - l[1])
                && ok(w.rear_diff_kg, l[2] - l[3])
                && Place::ALL.into_iter().all(|p| ok(*w.heights_mm.at(p), h[p.index()]))
                && ok(w.rake_mm, (h[2] + h[3] - h[0] - h[1]) / 2.0);
            inside += u32::from(all);
        }
        let seen = f64::from(inside) / f64::from(draws);
        let off = (found.inside_chance - seen).abs();
        assert!(off < 0.01, "problem {number}: {} is not {seen}", found.inside_chance);
        worst = worst.max(off);
        between += u32::from((0.05..0.95).contains(&seen));
    }
    println!("at most {:.2} points apart", 100.0 * worst);
    assert!(between > 10, "the test says something: {between} chances are neither nothing nor certain");
}

/// R: by definition: no allowed plan raises the chance by two points. Every plan of small boxes is asked in turn, by
/// moving the reading to where that plan takes the car.
#[test]
fn stop_is_what_every_plan_says() {
    const SEED: u64 = 99;
    println!("seed {SEED}");
    let mut r = Random(SEED);
    let mut stops = 0;
    for number in 0..40 {
        let mut problem = near();
        problem.adjusters = Corners::same(Adjuster { step_mm: 0.5, up_steps: 1, down_steps: 1 });
        problem.rounds[0].loads_kg.fl += r.within(-1.5, 1.5);
        problem.rounds[0].loads_kg.rr += r.within(-1.5, 1.5);
        problem.rounds[0].heights_mm.rl += r.within(-1.0, 1.0);
        if r.chance(0.5) {
            problem.wishes.heights_mm = Corners::same(None);
        }
        if r.chance(0.3) {
            problem.price.per_collar = 1.0;
        }
        let ledger = Ledger::of(&problem);
        let chance = |steps: [i32; 4]| {
            let (loads, heights) = ledger.after(steps);
            let mut there = problem.clone();
            there.rounds[0].loads_kg = Corners::from_array(loads);
            there.rounds[0].heights_mm = Corners::from_array(heights);
            there.adjusters = Corners::same(Adjuster { step_mm: 0.5, up_steps: 0, down_steps: 0 });
            plan(&there).expect("a plan").inside_chance
        };
        let now = chance([0; 4]);
        let allowed = ledger.all().into_iter().filter(|s| ledger.excess_mm(*s) <= 1e-9);
        let best = allowed.map(chance).fold(0.0, f64::max);
        let found = plan(&problem).expect("a plan");
        // A plan within rounding of two points may fall on either side.
        if (best - now - 0.02).abs() > 1e-6 {
            assert_eq!(found.stop, best < now + 0.02, "problem {number}: {now} now, {best} at best: {}", found.why);
        }
        stops += u32::from(found.stop);
    }
    assert!((5..35).contains(&stops), "both answers occur: {stops} stops");
}

/// C: a wish inside its window ten times over needs nothing.
#[test]
fn a_car_that_is_right_is_left_alone() {
    let mut problem = near();
    problem.rounds[0].loads_kg = Corners { fl: 245.0, fr: 245.0, rl: 298.0, rr: 298.0 };
    problem.wishes = Wishes { cross_pct: Some(Wish { target: 50.0, window: 2.0, weight: 1.0 }), ..Wishes::default() };
    let found = plan(&problem).expect("a plan");
    assert!(found.stop && found.inside_chance > 0.999, "{}", found.why);
    assert_eq!(found.steps, Corners::same(0), "turning has a price");
}
