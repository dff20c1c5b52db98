//! How words are asked for.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use bayhand_words::{Arg, Words, id};

#[test]
fn a_message_is_found_by_its_id() {
    assert_eq!(Words::english().text("corner-FL", &[]), "front left", "a plain message");
}

#[test]
fn a_missing_message_shows_its_id() {
    let words = Words::english();
    assert_eq!(words.text("step-x", &[]), "[step-x]", "seen on the screen, so that it is reported");
    assert_eq!(words.attr("step-x", "detail", &[]), None, "no message, no attribute");
    assert_eq!(words.attr("corner-FL", "detail", &[]), None, "a message without that attribute");
    assert!(!words.has("step-x"), "and it is not said to be there");
}

#[test]
fn line_ends_in_the_files_do_not_reach_a_reader() {
    let words = Words::english();
    let detail = words.attr("step-settle-touch", "detail", &[]).unwrap();
    assert!(!detail.contains('\n'), "a text is one paragraph: {detail}");
    assert!(!detail.contains("  "), "indentation of the file is not part of it: {detail}");
    assert!(detail.contains("the wing. A trolley"), "sentences are parted by a space: {detail}");
}

#[test]
fn numbers_and_texts_are_arguments() {
    assert_eq!(Arg::from("12.5 kg"), Arg::Text("12.5 kg"), "a formatted value is text");
    assert_eq!(Arg::from(&String::from("ab")), Arg::Text("ab"), "owned text is borrowed");
    assert_eq!(Arg::from(3), Arg::Count(3), "a count chooses plurals");
}

#[test]
fn ids_of_the_document_become_ids_of_messages() {
    assert_eq!(id("step", &["loop.turn-FL"]), "step-loop-turn-FL", "dots become hyphens");
    assert_eq!(id("need", &["stance", "locked"]), "need-stance-locked", "parts are joined");
    assert_eq!(id("input", &["back.front", "parts"]), "input-back-front-parts", "step and input");
}

#[test]
fn an_input_may_mean_something_else_at_a_step() {
    let words = Words::english();
    assert_eq!(words.input("links.front-release", "parts"), "Parts taken off", "the shared label");
    assert_eq!(words.input("back.front", "parts"), "Parts put back", "the step's own label goes first");
}

#[test]
fn labels_are_the_messages_of_the_windows() {
    let labels = Words::english().labels();
    assert!(labels.contains_key("ui-path"), "a label that every window shows");
    assert!(labels.keys().all(|id| id.starts_with("ui-")), "nothing else is sent to the windows: {labels:?}");
}

#[test]
fn words_are_shared_between_threads() {
    fn shared<T: Send + Sync>(_: &T) {}
    shared(&Words::english());
}
