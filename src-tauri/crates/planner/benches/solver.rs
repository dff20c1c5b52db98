//! Our side of the race against a general mixed-integer solver: `solver.py` beside this file starts it, gives the same
//! problems to the solver, and compares.
//!
//! Prints one JSON line for each problem: the quadratic problem as matrices, our steps and cost, and the median time of
//! our plan over some runs.

#[path = "../tests/common/mod.rs"]
mod common;

use bayhand_planner::{Problem, optimum};
use bayhand_vehicle::Place;
use common::{Ledger, Random, full_problem};
use serde_json::{Value, json};
use std::hint::black_box;
use std::time::Instant;

const SEED: u64 = 80_808;
const PROBLEMS: usize = 600;
const RUNS: usize = 25;

fn main() {
    let mut random = Random(SEED);
    println!("{}", json!({ "seed": SEED, "problems": PROBLEMS }));
    for _ in 0..PROBLEMS {
        let problem = full_problem(&mut random);
        let found = optimum(&problem).expect("a plan");
        let mut times: Vec<f64> = (0..RUNS)
            .map(|_| {
                let began = Instant::now();
                black_box(optimum(black_box(&problem)).expect("a plan"));
                began.elapsed().as_secs_f64()
            })
            .collect();
        times.sort_by(f64::total_cmp);
        let mut line = matrices(&problem);
        line["steps"] = json!(found.steps.to_array());
        line["cost"] = json!(found.cost);
        line["seconds"] = json!(times[RUNS / 2]);
        println!("{line}");
    }
}

/// Rows of `|G s + b|²`, limits as `low <= a s <= high`, box and prices.
fn matrices(problem: &Problem) -> Value {
    let ledger = Ledger::of(problem);
    let now = ledger.after([0; 4]);
    let one: Vec<_> = (0..4)
        .map(|j| {
            let mut steps = [0; 4];
            steps[j] = 1;
            ledger.after(steps)
        })
        .collect();
    type Value8 = ([f64; 4], [f64; 4]);
    let total: f64 = now.0.iter().sum();
    let row =
        |of: &dyn Fn(&Value8) -> f64| (of(&now), one.iter().map(|there| of(there) - of(&now)).collect::<Vec<f64>>());
    let mut rows = Vec::new();
    let w = &problem.wishes;
    let mut wish = |wish: Option<bayhand_planner::Wish>, of: &dyn Fn(&Value8) -> f64| {
        if let Some(wish) = wish {
            let (value, per_step) = row(of);
            let scale = wish.weight.sqrt() / wish.window;
            let per_step: Vec<f64> = per_step.iter().map(|v| v * scale).collect();
            rows.push(json!({ "b": (value - wish.target) * scale, "g": per_step }));
        }
    };
    wish(w.cross_pct, &|(l, _)| 100.0 * (l[1] + l[2]) / total);
    wish(w.front_diff_kg, &|(l, _)| l[0] - l[1]);
    wish(w.rear_diff_kg, &|(l, _)| l[2] - l[3]);
    for place in Place::ALL {
        wish(*w.heights_mm.at(place), &|(_, h)| h[place.index()]);
    }
    let l = &problem.limits;
    let limits: Vec<Value> =
        [(0, l.height_diff_front_mm, l.agreed_diff_front_mm), (2, l.height_diff_rear_mm, l.agreed_diff_rear_mm)]
            .into_iter()
            .filter_map(|(left, limit, agreed)| {
                let (value, per_step) = row(&|(_, h)| h[left] - h[left + 1]);
                limit.map(
                    |limit| json!({ "a": per_step, "low": agreed - value - limit, "high": agreed - value + limit }),
                )
            })
            .collect();
    json!({
        "rows": rows,
        "limits": limits,
        "low": problem.adjusters.map(|a| -a.down_steps).to_array(),
        "high": problem.adjusters.map(|a| a.up_steps).to_array(),
        "per_collar": problem.price.per_collar,
        "per_step": problem.price.per_step,
    })
}
