//! A procedure document that somebody edited wrong: what is wrong is said with its place and, where there is one, with
//! what was probably meant.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use bayhand_procedure::{Fault, SHIPPED, load};
use serde_json::Value;

/// The shipped document with one value changed is refused; one of the faults is at this place and says this.
fn check(change: impl FnOnce(&mut Value), at: &str, says: &[&str]) {
    let mut document: Value = serde_json::from_str(SHIPPED).unwrap();
    change(&mut document);
    let faults: Vec<Fault> = load(&document.to_string()).expect_err("the change is a fault");
    let found = faults.iter().find(|f| f.at == at && says.iter().all(|words| f.what.to_string().contains(words)));
    assert!(found.is_some(), "at {at}, {says:?} is said: {faults:?}");
}

fn step<'d>(document: &'d mut Value, id: &str) -> &'d mut Value {
    let stages = document["stages"].as_array_mut().unwrap();
    let mut steps = stages.iter_mut().flat_map(|stage| stage["steps"].as_array_mut().unwrap());
    steps.find(|step| step["id"] == id).unwrap()
}

/// Control: the document as shipped is none of this.
#[test]
fn the_shipped_document_has_no_fault() {
    load(SHIPPED).expect("no fault");
}

#[test]
fn an_unknown_key_is_named_with_the_nearest_known_one() {
    let tyres = |document: &mut Value| {
        let stage = &document["stages"].as_array().unwrap().iter().position(|s| s["id"] == "walk").unwrap();
        let steps = document["stages"][stage]["steps"].as_array().unwrap();
        format!("stages[{stage}].steps[{}]", steps.iter().position(|s| s["id"] == "walk.tyres").unwrap())
    };
    let at = tyres(&mut serde_json::from_str(SHIPPED).unwrap());
    let says = ["unknown field `waiver`", "the nearest known one is `waive`"];
    let misspell = |document: &mut Value| step(document, "walk.tyres")["waiver"] = "supervisor".into();
    check(misspell, &format!("{at}.waiver"), &says);
    let unknown_gate = |document: &mut Value| step(document, "walk.tyres")["gates"] = serde_json::json!(["checks-ye"]);
    check(
        unknown_gate,
        &format!("{at}.gates[0]"),
        &["unknown variant `checks-ye`", "nearest known one is `checks-yes`"],
    );
}

#[test]
fn a_dangling_reference_is_named() {
    let hazard = |d: &mut Value| step(d, "walk.leaks")["hazards"] = serde_json::json!(["fuel-flood"]);
    check(hazard, "walk.leaks", &["hazards", "no hazard \"fuel-flood\""]);
    let rests_on = |d: &mut Value| step(d, "walk.tyres")["rests_on"] = serde_json::json!(["moon-phase"]);
    check(rests_on, "walk.tyres", &["rests_on", "\"moon-phase\""]);
    let changes = |d: &mut Value| step(d, "walk.tyres")["changes"] = serde_json::json!(["tea-time"]);
    check(changes, "walk.tyres", &["changes", "no topic \"tea-time\""]);
    let gate = |d: &mut Value| {
        step(d, "lock.nuts-second")["gates"] = serde_json::json!([{ "second-person": { "of": "lock.bolts" } }]);
    };
    check(gate, "lock.nuts-second", &["gates", "no step \"lock.bolts\""]);
    let twice = |d: &mut Value| step(d, "walk.tyres")["id"] = "walk.leaks".into();
    check(twice, "stages.steps", &["walk.leaks"]);
}

#[test]
fn what_is_no_document_is_said_to_be_none() {
    let faults = load("{\"format\": 1, ").unwrap_err();
    assert_eq!(faults.len(), 1, "one fault: it is not a document at all");
    assert!(faults[0].what.to_string().contains("EOF"), "{}", faults[0]);
    check(|d| d["format"] = 7.into(), "format", &["is 7", "reads format 1"]);
}
