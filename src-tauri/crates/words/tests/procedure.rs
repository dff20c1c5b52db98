//! The texts of the procedure: each id that the document needs is there, and none is there that it does not need.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use bayhand_procedure::{Condition, Document, Kind, SHIPPED, Value, document::Input, load};
use bayhand_words::{Language, Words, id};
use fluent_syntax::{ast::Entry, parser};
use std::collections::BTreeSet;

fn document() -> Document {
    load(SHIPPED).unwrap()
}

/// A message, or an attribute of it, as `id` or `id.attribute`.
fn needed(document: &Document) -> BTreeSet<String> {
    let mut ids = BTreeSet::new();
    for stage in &document.stages {
        ids.insert(id("stage", &[&stage.id]));
    }
    for (_, step) in document.steps() {
        let step_id = id("step", &[&step.id]);
        ids.extend([step_id.clone(), format!("{step_id}.detail"), format!("{step_id}.short")]);
        for gate in &step.gates {
            let gate_id = id("gate", &[&kind_of(gate)]);
            ids.extend([gate_id.clone(), format!("{gate_id}.help")]);
        }
        for holds in step.needs.facts() {
            ids.extend(holds.is.iter().map(|value| id("need", &[&holds.fact.code(), &value.code()])));
        }
        ids.extend(step.inputs.iter().flat_map(options).map(|option| id("option", &[&option])));
    }
    for hazard in &document.hazards {
        let hazard_id = id("hazard", &[&hazard.id]);
        ids.extend([hazard_id.clone(), format!("{hazard_id}.line"), format!("{hazard_id}.text")]);
    }
    ids
}

/// A gate's name: the variant's, as the document writes it.
fn kind_of(gate: &bayhand_procedure::Gate) -> String {
    match serde_json::to_value(gate).unwrap() {
        serde_json::Value::String(name) => name,
        serde_json::Value::Object(map) => map.keys().next().unwrap().clone(),
        other => panic!("a gate is a name or a name with parameters, not {other}"),
    }
}

fn options(input: &Input) -> Vec<String> {
    match &input.kind {
        Kind::Choice(options) => options.iter().map(|o| o.id.clone()).collect(),
        _ => Vec::new(),
    }
}

/// The id that an input's label is found under at a step.
fn label_of(words: &Words, step: &str, input: &str) -> String {
    let own = id("input", &[step, input]);
    if words.has(&own) { own } else { id("input", &[input]) }
}

#[test]
fn every_needed_text_is_there() {
    for language in Language::ALL {
        let words = Words::of(language);
        let missing: Vec<_> = needed(&document())
            .into_iter()
            .filter(|needed| match needed.split_once('.') {
                None => !words.has(needed) || words.text(needed, &[]).starts_with('['),
                Some((message, attribute)) => words.attr(message, attribute, &[]).is_none(),
            })
            .collect();
        assert!(missing.is_empty(), "write these in procedures/text/{}: {missing:#?}", language.code());
    }
}

#[test]
fn every_input_has_a_label() {
    let words = Words::english();
    let document = document();
    let inputs =
        document.steps().flat_map(|(_, step)| step.inputs.iter().map(|input| label_of(&words, &step.id, &input.id)));
    let wrong: BTreeSet<_> =
        inputs.filter(|label| !words.has(label) || words.text(label, &[]).ends_with('.')).collect();
    assert!(wrong.is_empty(), "write these in procedures/text/en/entries.ftl, a label and not a sentence: {wrong:#?}");
}

#[test]
fn no_text_of_the_procedure_is_unused() {
    let (document, words) = (document(), Words::english());
    let mut used = needed(&document);
    for (_, step) in document.steps() {
        used.extend(step.inputs.iter().map(|input| label_of(&words, &step.id, &input.id)));
    }
    let mut unused = Vec::new();
    for file in Language::English.files().iter().filter(|file| file.path.starts_with("procedures/")) {
        for entry in parser::parse(file.text).unwrap().body {
            let Entry::Message(message) = entry else { continue };
            let name = message.id.name;
            if !used.contains(name) {
                unused.push(name.to_owned());
            }
            unused.extend(
                message.attributes.iter().map(|a| format!("{name}.{}", a.id.name)).filter(|a| !used.contains(a)),
            );
        }
    }
    assert!(unused.is_empty(), "nothing in the document shows these: {unused:#?}");
}

#[test]
fn no_text_of_the_procedure_waits_for_an_argument() {
    for file in Language::English.files().iter().filter(|file| file.path.starts_with("procedures/")) {
        assert!(!file.text.contains('$'), "{}: figures stand beside a step, not in its text", file.path);
    }
}

#[test]
fn needs_fit_into_the_sentence_that_gives_the_reason() {
    let (english, german) = (Words::english(), Words::of(Language::German));
    for need in needed(&document()).iter().filter(|id| id.starts_with("need-")) {
        let text = english.text(need, &[]);
        assert!(!text.ends_with('.') && text.starts_with(char::is_lowercase), "'First, because {text}.' ({need})");
        assert!(text.contains(" must ") || text.contains(" may "), "it says what must be so ({need}): {text}");
        let text = german.text(need, &[]);
        assert!(!text.ends_with('.'), "'Zuerst, weil {text}.' ({need})");
        let verb = ["muss", "müssen", "darf"].iter().any(|v| text.split([' ', ',']).any(|word| word == *v));
        assert!(verb, "a clause after 'weil' has its verb at its end ({need}): {text}");
    }
}

#[test]
fn gates_ask_in_one_sentence() {
    for words in Language::ALL.map(Words::of) {
        for gate in needed(&document()).iter().filter(|id| id.starts_with("gate-") && !id.contains('.')) {
            let text = words.text(gate, &[]);
            assert!(text.ends_with('.') && text.matches('.').count() == 1, "{gate}: {text}");
        }
    }
}

#[test]
fn terms_of_the_closed_lists_are_there() {
    let words = Words::english();
    for (kind, values) in [
        ("corner", &["FL", "FR", "RL", "RR"][..]),
        ("axle", &["front", "rear"]),
        ("rank", &["trainee", "technician", "supervisor"]),
        ("signal", &["danger", "warning", "caution", "notice"]),
        ("verdict", &["inside", "outside", "cannot-tell"]),
    ] {
        for value in values {
            assert!(words.has(&id(kind, &[value])), "{kind}-{value} is shown by every window");
        }
    }
}

/// The reverse check would pass with an empty document.
#[test]
fn the_document_is_the_whole_job() {
    let document = document();
    assert!(document.steps().count() > 100, "the shipped document has every stage");
    assert!(document.hazards.len() >= 20, "and every hazard");
    let locked = |c: &Condition| c.facts().iter().any(|h| h.is.contains(&Value::Locked));
    assert!(document.steps().any(|(_, s)| locked(&s.needs)), "some steps need a raised and secured car");
}
