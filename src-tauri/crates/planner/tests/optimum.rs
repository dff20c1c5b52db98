//! The plan is the optimum over whole steps.

mod common;

use bayhand_planner::{Price, Wish, Wishes, optimum, plan};
use bayhand_vehicle::{Adjuster, Corners};
use common::{Ledger, Random, any_problem, coupe};

/// R: brute force over every step inside the limits on small boxes (checks.md, quadratic programs).
#[test]
fn the_plan_is_what_brute_force_finds() {
    const SEED: u64 = 20_260;
    println!("seed {SEED}");
    let mut random = Random(SEED);
    let mut broken = 0;
    for number in 0..3_000 {
        let problem = any_problem(&mut random, 3);
        let ledger = Ledger::of(&problem);
        let (steps, cost) = ledger.optimum();
        let found = optimum(&problem).expect("a plan");
        let json = || serde_json::to_string(&problem).expect("JSON");
        let near = (found.cost - cost).abs() <= 1e-8 * (1.0 + cost);
        assert!(near, "problem {number}: cost {} is not {cost}: {}", found.cost, json());
        assert_eq!(found.steps.to_array(), steps, "problem {number}: {}", json());
        assert!(found.proof.optimal, "problem {number}: so small a box is searched to the end");
        let excess = ledger.excess_mm(steps);
        assert_eq!(found.excess_mm > 0.0, excess > 1e-9, "problem {number}: broken limits are said");
        if number % 10 == 0 {
            let explained = plan(&problem).expect("a plan");
            assert_eq!((explained.steps, explained.cost), (found.steps, found.cost), "explained, it is the same");
        }
        broken += usize::from(excess > 1e-9);
    }
    assert!((300..2_000).contains(&broken), "limits that cannot be met are among the problems, and not all: {broken}");
}

/// R: the same on large boxes, against plans near the optimum and drawn at random: none is better.
#[test]
fn no_plan_in_a_large_box_is_better() {
    const SEED: u64 = 31_337;
    println!("seed {SEED}");
    let mut random = Random(SEED);
    for number in 0..40 {
        let mut problem = any_problem(&mut random, 4);
        problem.adjusters = problem.adjusters.map(|a| Adjuster { up_steps: 30, down_steps: 30, ..*a });
        problem.limits.collar_change_mm = None;
        let ledger = Ledger::of(&problem);
        let found = plan(&problem).expect("a plan");
        assert!(found.proof.optimal, "problem {number}: searched to the end");
        let best = found.steps.to_array();
        let excess = ledger.excess_mm(best);
        let better = |steps: [i32; 4]| {
            let allowed = ledger.excess_mm(steps) <= excess - 1e-7
                || ledger.excess_mm(steps) <= excess + 1e-12 && ledger.cost(steps) < found.cost * (1.0 - 1e-8) - 1e-8;
            assert!(!allowed, "problem {number}: {steps:?} is better than {best:?}");
        };
        for _ in 0..20_000 {
            better(std::array::from_fn(|_| random.whole(-30, 30)));
        }
        for near in 0..9_i32.pow(4) {
            let steps: [i32; 4] =
                std::array::from_fn(|i| (best[i] + near / 9_i32.pow(i as u32) % 9 - 4).clamp(-30, 30));
            better(steps);
        }
    }
}

/// R: with one wish many plans are equal; fewer collars win, then fewer steps.
#[test]
fn equal_plans_turn_the_fewest_collars() {
    let mut problem = coupe();
    problem.price = Price::default();
    problem.adjusters = Corners::same(Adjuster { step_mm: 0.5, up_steps: 3, down_steps: 3 });
    problem.wishes = Wishes {
        // So wide a step that leaving the car alone is within rounding of nothing.
        front_diff_kg: Some(Wish { target: 34.0, window: 4.0, weight: 1.0 }),
        ..Wishes::default()
    };
    let found = plan(&problem).expect("a plan");
    assert_eq!(found.steps, Corners::same(0), "FL - FR is 34 kg already");
    assert_eq!(found.cost, 0.0, "and costs nothing");
    assert!(found.alternatives.is_empty(), "no plan turns fewer collars than none");
}

/// A single wish leaves three directions free; the search is still exact on ± 30 steps.
#[test]
fn one_wish_on_a_large_box() {
    let mut problem = coupe();
    problem.price = Price::default();
    problem.wishes = Wishes { cross_pct: Some(Wish { target: 50.0, window: 0.2, weight: 1.0 }), ..Wishes::default() };
    let found = plan(&problem).expect("a plan");
    assert!(found.proof.optimal, "searched to the end in {} nodes", found.proof.nodes);
    println!("{} nodes for one wish", found.proof.nodes);
    let few = found.alternatives.last().expect("plans with fewer collars");
    assert!(few.cost >= found.cost, "fewer collars cost no less");
}
