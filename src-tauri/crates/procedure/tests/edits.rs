//! Edits of the shipped document: the harmful ones are caught, most with a whole job that can be replayed; the harmless
//! ones pass. A proof takes seconds: without `BAYHAND_LONG` only the first tenth of them is proved.

mod common;
use bayhand_procedure::prove::{Engine, prove, replay_asked};
use bayhand_procedure::{Document, Next, SHIPPED, lint, load, next};
use common::edits::{Edit, HARMFUL, HARMLESS};
use std::time::Instant;

/// The edits of one tenth; none of a later tenth in a short run.
fn of_tenth<T>(edits: &'static [T], tenth: usize) -> impl Iterator<Item = &'static T> {
    let long = std::env::var_os("BAYHAND_LONG").is_some();
    edits.iter().enumerate().filter(move |(i, _)| i % 10 == tenth && (long || tenth == 0)).map(|(_, edit)| edit)
}

/// The shipped document after an edit that neither the schema nor the lint objects to.
fn edited(name: &str, edit: Edit) -> Document {
    let shipped = load(SHIPPED).expect("the shipped document has no fault");
    let mut document = shipped.clone();
    edit(&mut document);
    assert_ne!(document, shipped, "{name}: control, it changes something");
    assert_eq!(lint(&document), [], "{name}: it is without a fault to the lint");
    document
}

fn harmful(tenth: usize) {
    for (name, property, edit) in of_tenth(HARMFUL, tenth) {
        let began = Instant::now();
        let document = edited(name, *edit);
        let proof = prove(&document);
        let broken = proof.against(*property).next();
        let says: Vec<_> = proof.broken.iter().map(|b| (b.property, &b.says)).collect();
        let broken =
            broken.unwrap_or_else(|| panic!("{name}: {property:?} is not broken; {says:?} {:?}", proof.faults));
        let job = broken.job.as_ref().map(|job| {
            let state = replay_asked(&document, Engine::shipped(), job);
            let state = state.unwrap_or_else(|e| panic!("{name}: the job is not one: {e}"));
            let at_hand = matches!(next(&document, &state), Next::Step { id, .. } if id == broken.at);
            let waived = state.step(&broken.at).waived.is_some();
            assert!(at_hand || waived, "{name}: the job ends where it is broken, at {}", broken.at);
            job.len()
        });
        let (says, at, moves) = (&broken.says, &broken.at, broken.shortest.len());
        println!("HARMFUL | {name} | {says} at {at} | {moves} moves | job {job:?} | {:?}", began.elapsed());
    }
}

fn harmless(tenth: usize) {
    for (name, edit) in of_tenth(HARMLESS, tenth) {
        let proof = prove(&edited(name, *edit));
        let first = proof.broken.first().map(|b| (&b.says, &b.at, &b.shortest));
        assert!(proof.holds(), "{name}: {first:?} {:?}", proof.faults);
        println!("HARMLESS | {name} | {} states", proof.count());
    }
}

macro_rules! tenths {
    ($($tenth:literal $harmful:ident $harmless:ident;)+) => {
        $(
            #[test]
            fn $harmful() {
                harmful($tenth);
            }

            #[test]
            fn $harmless() {
                harmless($tenth);
            }
        )+
    };
}

tenths! {
    0 harmful_edits_are_caught_0 harmless_edits_pass_0;
    1 harmful_edits_are_caught_1 harmless_edits_pass_1;
    2 harmful_edits_are_caught_2 harmless_edits_pass_2;
    3 harmful_edits_are_caught_3 harmless_edits_pass_3;
    4 harmful_edits_are_caught_4 harmless_edits_pass_4;
    5 harmful_edits_are_caught_5 harmless_edits_pass_5;
    6 harmful_edits_are_caught_6 harmless_edits_pass_6;
    7 harmful_edits_are_caught_7 harmless_edits_pass_7;
    8 harmful_edits_are_caught_8 harmless_edits_pass_8;
    9 harmful_edits_are_caught_9 harmless_edits_pass_9;
}

#[test]
fn there_are_enough_of_them() {
    assert!(HARMFUL.len() >= 30 && HARMLESS.len() >= 20, "{} and {}", HARMFUL.len(), HARMLESS.len());
}
