//! The worst of ten thousand random problems: time of the optimum and of the whole answer, and nodes of the search.
//!
//! Two kinds: problems of full size with seven wishes, and problems of every kind (few wishes, limits that can hardly or
//! not at all be kept) in boxes of 30 steps either way.

#[path = "../tests/common/mod.rs"]
mod common;

use bayhand_planner::{Problem, optimum, plan};
use bayhand_vehicle::Adjuster;
use common::{Random, any_problem, full_problem};
use std::time::Instant;

const SEED: u64 = 70_707;
const PROBLEMS: usize = 10_000;

fn main() {
    println!("seed {SEED}, {PROBLEMS} problems of each kind; times in microseconds");
    println!("{:<44} {:>8} {:>8} {:>9} {:>9}", "", "median", "99 %", "99.9 %", "worst");
    measure("seven wishes", full_problem);
    measure("every kind", |random| {
        let mut problem = any_problem(random, 4);
        problem.adjusters = problem.adjusters.map(|a| Adjuster { up_steps: 30, down_steps: 30, ..*a });
        problem
    });
}

fn measure(kind: &str, make: impl Fn(&mut Random) -> Problem) {
    let mut random = Random(SEED);
    let (mut alone, mut whole, mut nodes) = (Vec::new(), Vec::new(), Vec::new());
    let mut cut_off = 0;
    for _ in 0..PROBLEMS {
        let problem = make(&mut random);
        let began = Instant::now();
        let best = optimum(&problem).expect("a plan");
        alone.push(began.elapsed().as_secs_f64() * 1e6);
        nodes.push(best.proof.nodes as f64);
        cut_off += usize::from(!best.proof.optimal);
        let began = Instant::now();
        let explained = plan(&problem).expect("a plan");
        whole.push(began.elapsed().as_secs_f64() * 1e6);
        assert_eq!(explained.steps, best.steps, "explained, it is the same plan");
    }
    print(&format!("{kind}: the optimum"), "us", alone);
    print(&format!("{kind}: the whole answer"), "us", whole);
    print(&format!("{kind}: nodes of the search"), "", nodes);
    println!("{kind}: {cut_off} searches were cut off before the proof");
}

fn print(what: &str, unit: &str, mut values: Vec<f64>) {
    values.sort_by(f64::total_cmp);
    let at = |share: f64| values[((values.len() - 1) as f64 * share) as usize];
    println!("{what:<44} {:8.0} {:8.0} {:9.0} {:9.0}", at(0.5), at(0.99), at(0.999), at(1.0));
    let (median, worst) = (at(0.5), at(1.0));
    let ratio = worst / median;
    println!(
        "table: worst of {PROBLEMS}, {what} | {worst:.0} {unit} | their median | {median:.0} {unit} | {ratio:.1} |"
    );
}
