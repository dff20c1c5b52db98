//! Time of one plan: the optimum alone, a place on the trade line while it is dragged, and the whole answer.
//!
//! Problems of full size (boxes of 30 steps either way, seven wishes), a new one each time.
#![allow(missing_docs, reason = "criterion's macros make public items")]

#[path = "../tests/common/mod.rs"]
mod common;

use bayhand_planner::{Confidence, Planner, Problem, optimum, plan};
use common::{Random, full_problem};
use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;

const SEED: u64 = 60_606;
const PROBLEMS: usize = 500;

fn problems() -> Vec<Problem> {
    println!("seed {SEED}, {PROBLEMS} problems");
    let mut random = Random(SEED);
    (0..PROBLEMS).map(|_| full_problem(&mut random)).collect()
}

fn bench(criterion: &mut Criterion) {
    let problems = problems();
    let mut next = problems.iter().cycle();
    criterion.bench_function("one plan: the optimum", |b| {
        b.iter(|| optimum(black_box(next.next().expect("cycle never ends"))));
    });
    criterion.bench_function("one plan: the whole answer, data certain", |b| {
        b.iter(|| plan(black_box(next.next().expect("cycle never ends"))));
    });
    let uncertain: Vec<Problem> =
        problems.iter().map(|p| Problem { confidence: Confidence::default(), ..p.clone() }).collect();
    let mut next = uncertain.iter().cycle();
    criterion.bench_function("one plan: the whole answer, data uncertain", |b| {
        b.iter(|| plan(black_box(next.next().expect("cycle never ends"))));
    });
    let planners: Vec<Planner> = problems.iter().map(|p| Planner::of(p).expect("a problem")).collect();
    let mut next = planners.iter().cycle();
    let mut along_kg = -10.0;
    criterion.bench_function("one place on the trade line", |b| {
        b.iter(|| {
            along_kg = if along_kg > 10.0 { -10.0 } else { along_kg + 0.37 };
            next.next().expect("cycle never ends").place(black_box(along_kg))
        });
    });
}

criterion_group!(benches, bench);
criterion_main!(benches);
