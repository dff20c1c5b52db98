//! Edits of the shipped document: the harmful ones are caught with a job that can be replayed, the harmless ones pass.
//!
//! With `BAYHAND_LONG` every edit is proved in full; without it, those that are named in `SHORT`.

mod common;
use bayhand_procedure::prove::{Engine, prove, replay_asked};
use bayhand_procedure::{Next, SHIPPED, lint, load, next};
use common::edits::{HARMFUL, HARMLESS};

/// True for an edit that is proved now: all of them in a long run, every so many in a short one.
fn now(index: usize) -> bool {
    std::env::var_os("BAYHAND_LONG").is_some() || index.is_multiple_of(10)
}

#[test]
fn harmful_edits_are_caught_with_a_job_that_does_it() {
    let shipped = load(SHIPPED).expect("the shipped document has no fault");
    let (mut caught, mut with_job, mut tried) = (0, 0, 0);
    for (name, property, edit) in HARMFUL.iter().enumerate().filter(|(i, _)| now(*i)).map(|(_, edit)| edit) {
        tried += 1;
        let began = std::time::Instant::now();
        let mut document = shipped.clone();
        edit(&mut document);
        assert_eq!(lint(&document), [], "{name}: it is without a fault to the lint");
        let proof = prove(&document);
        let Some(broken) = proof.against(*property).next() else {
            println!(
                "MISSED {property:?} {name}: {:?} {:?}",
                proof.broken.iter().map(|b| (&b.says, b.property)).collect::<Vec<_>>(),
                proof.faults
            );
            continue;
        };
        caught += 1;
        let steps = broken.job.as_ref().map(|job| {
            let state = replay_asked(&document, Engine::shipped(), job).unwrap_or_else(|e| panic!("{name}: {e}"));
            let at_hand = matches!(next(&document, &state), Next::Step { id, .. } if id == broken.at);
            let waived = state.step(&broken.at).waived.is_some();
            assert!(at_hand || waived, "{name}: the job ends where it is broken, at {}", broken.at);
            job.len()
        });
        with_job += usize::from(steps.is_some());
        println!(
            "{name}: {} at {}; {} moves, job {steps:?} {:?}",
            broken.says,
            broken.at,
            broken.shortest.len(),
            began.elapsed()
        );
    }
    println!("{caught} of {tried} caught, {with_job} with a job that was replayed");
    assert_eq!(caught, tried, "every harmful edit is caught");
}

#[test]
fn harmless_edits_pass() {
    let shipped = load(SHIPPED).expect("the shipped document has no fault");
    let mut passed = 0;
    let mut refused = Vec::new();
    for (name, edit) in HARMLESS.iter().enumerate().filter(|(i, _)| now(*i)).map(|(_, edit)| edit) {
        let mut document = shipped.clone();
        edit(&mut document);
        assert_ne!(document, shipped, "{name}: control, it changes something");
        assert_eq!(lint(&document), [], "{name}: it is without a fault to the lint");
        let proof = prove(&document);
        if proof.holds() {
            passed += 1;
            continue;
        }
        let first = proof.broken.first().map(|b| (b.says.clone(), b.at.clone(), b.shortest.clone(), b.job.is_some()));
        println!("REFUSED {name}: {first:?} {:?}", proof.faults);
        refused.push(*name);
    }
    println!("{passed} harmless edits passed");
    assert!(refused.is_empty(), "{refused:?}");
}
