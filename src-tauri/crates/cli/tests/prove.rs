//! `prove DIR` of the built program.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_procedure::SHIPPED;
use common::{complaint, printed, run};
use std::fs;

/// Proves one text in a folder of its own: the exit code and what was printed.
fn proved(text: &str) -> (Option<i32>, String) {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("job.json"), text).unwrap();
    fs::write(folder.path().join("job.schema.json"), "not a procedure").unwrap();
    let output = run(["prove", folder.path().to_str().unwrap()]);
    (output.status.code(), printed(&output))
}

#[test]
fn the_shipped_document_is_proved() {
    let (code, says) = proved(SHIPPED);
    println!("{says}");
    assert_eq!(code, Some(0), "{says}");
    assert_eq!(says.matches(". holds: ").count(), 8, "each safety property is named: {says}");
    assert!(says.contains(" states explored: "), "and the number of states: {says}");
}

#[test]
fn a_document_that_lost_a_guard_is_not_proved_and_the_way_is_told() {
    let counted = SHIPPED.replacen("\"people-out\"", "\"people-away\"", 1);
    assert_ne!(counted, SHIPPED, "control: the text was changed");
    let (code, says) = proved(&counted);
    assert_eq!(code, Some(1), "{says}");
    assert!(says.contains("7. BROKEN"), "the car comes down on somebody: {says}");
    assert!(says.contains("lower.people") && says.contains("to be replayed"), "{says}");
}

#[test]
fn a_fault_is_told_with_its_place() {
    let (code, says) = proved(&SHIPPED.replacen("\"rests_on\"", "\"rest_on\"", 1));
    assert_eq!(code, Some(1), "{says}");
    assert!(says.contains("stages[") && says.contains("rests_on"), "the place and the nearest known key: {says}");
}

#[test]
fn a_folder_without_a_procedure_is_said_to_be_one() {
    let folder = tempfile::tempdir().unwrap();
    let output = run(["prove", folder.path().to_str().unwrap()]);
    assert_eq!(output.status.code(), Some(1));
    assert!(complaint(&output).contains("no procedure"), "{}", complaint(&output));
}
