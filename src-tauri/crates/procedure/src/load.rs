//! Reading a procedure document: what is wrong with it is said with its place.

use crate::{Condition, Document, Ending, Fault, Gate, Input, Kind, Path, Step, Wrong};
use std::collections::BTreeSet;

/// The format that this program reads.
pub const FORMAT: u32 = 1;

/// Reads a document and checks its references.
///
/// # Errors
/// Every fault that was found; one when the text is not a document at all.
pub fn load(text: &str) -> Result<Document, Vec<Fault>> {
    let mut reader = serde_json::Deserializer::from_str(text);
    let document: Document = serde_path_to_error::deserialize(&mut reader).map_err(|e| {
        vec![Fault { at: e.path().to_string(), what: Wrong::Form(with_nearest_key(&e.inner().to_string())) }]
    })?;
    let faults = lint(&document);
    if faults.is_empty() { Ok(document) } else { Err(faults) }
}

/// Adds to serde's message about an unknown key the known key that is most like it.
pub fn with_nearest_key(message: &str) -> String {
    let mut quoted = message.split('`').skip(1).step_by(2);
    let nearest = (message.starts_with("unknown field") || message.starts_with("unknown variant"))
        .then(|| quoted.next())
        .flatten()
        .and_then(|given| quoted.max_by(|a, b| strsim::jaro(given, a).total_cmp(&strsim::jaro(given, b))));
    match nearest {
        Some(known) => format!("{message}; the nearest known one is `{known}`"),
        None => message.to_owned(),
    }
}

/// Everything in a document that the types alone do not rule out.
pub fn lint(document: &Document) -> Vec<Fault> {
    let mut faults = Faults::default();
    if document.format != FORMAT {
        faults.add("format", Wrong::Format { is: document.format, reads: FORMAT });
    }
    faults.unique("hazards", document.hazards.iter().map(|h| h.id.as_str()));
    faults.unique("stages", document.stages.iter().map(|s| s.id.as_str()));
    faults.unique("stages.steps", document.steps().map(|(_, s)| s.id.as_str()));
    let nodes: BTreeSet<String> = document
        .topics
        .iter()
        .cloned()
        .chain(crate::Fact::ALL.iter().map(|f| f.code()))
        .chain(document.steps().filter(|(stage, _)| stage.path != Path::OnDemand).map(|(_, s)| s.id.clone()))
        .collect();
    for (stage, step) in document.steps() {
        if !step.id.starts_with(&format!("{}.", stage.id)) {
            faults.add(&step.id, Wrong::NotOfItsStage(stage.id.clone()));
        }
        step_faults(document, step, &nodes, &mut faults);
    }
    for hazard in &document.hazards {
        condition_faults(&hazard.id, "when", &hazard.when, &mut faults);
    }
    for lapse in &document.lapses {
        let at = format!("lapses {}", lapse.fact.code());
        condition_faults(&at, "when", &lapse.when, &mut faults);
        if !lapse.fact.values().contains(&lapse.to) {
            faults.add(&at, cannot_be("to", &lapse.fact.code(), &lapse.to.code()));
        }
        for id in lapse.except.iter().filter(|id| document.step(id).is_none()) {
            faults.add(&at, nothing("except", "step", id));
        }
    }
    for ending in [Ending::Seal, Ending::Stopped] {
        let wanted = if ending == Ending::Seal { Path::Main } else { Path::Stopped };
        let count = document.steps().filter(|(st, s)| st.path == wanted && s.ending == Some(ending)).count();
        if count != 1 {
            faults.add("stages", Wrong::Endings { count, ending: format!("{ending:?}") });
        }
    }
    faults.0
}

fn step_faults(document: &Document, step: &Step, nodes: &BTreeSet<String>, faults: &mut Faults) {
    for node in &step.rests_on {
        if !nodes.contains(node) {
            faults.add(&step.id, nothing("rests_on", "fact, topic or step", node));
        }
    }
    let options = step.inputs.iter().filter_map(|i| match &i.kind {
        Kind::Choice(options) => Some(options.iter()),
        _ => None,
    });
    let options: Vec<_> = options.flatten().collect();
    for topic in step.changes.iter().chain(options.iter().flat_map(|o| o.changes.iter())) {
        if !document.topics.contains(topic) {
            faults.add(&step.id, nothing("changes", "topic", topic));
        }
    }
    for becomes in step.sets.iter().chain(options.iter().flat_map(|o| o.sets.iter())) {
        if !becomes.fact.values().contains(&becomes.to) {
            faults.add(&step.id, cannot_be("sets", &becomes.fact.code(), &becomes.to.code()));
        }
    }
    for (name, condition) in [("when", &step.when), ("needs", &step.needs)] {
        condition_faults(&step.id, name, condition, faults);
    }
    if contains_not(&step.needs) {
        faults.add(&step.id, Wrong::NotInNeeds);
    }
    for hazard in &step.hazards {
        if document.hazard(hazard).is_none() {
            faults.add(&step.id, nothing("hazards", "hazard", hazard));
        }
    }
    for gate in &step.gates {
        let of = match gate {
            Gate::SecondPerson { of }
            | Gate::CountedBack { of }
            | Gate::SameAs { of, .. }
            | Gate::Unchanged { since: of } => of,
            _ => continue,
        };
        if document.step(of).is_none() {
            faults.add(&step.id, nothing("gates", "step", of));
        }
    }
    faults.unique(&step.id, step.inputs.iter().map(|i| i.id.as_str()));
    for input in &step.inputs {
        if !input.with.is_empty() && step.brought_by(input).is_none() {
            let option = input.with.join(", ");
            faults.add(&step.id, Wrong::NoSuchChoice { input: input.id.clone(), option });
        }
        input_faults(&step.id, input, faults);
    }
}

fn condition_faults(step: &str, name: &str, condition: &Condition, faults: &mut Faults) {
    if condition.depth() > 2 {
        faults.add(step, Wrong::TooDeep(name.to_owned()));
    }
    for holds in condition.facts() {
        if holds.is.is_empty() {
            faults.add(step, Wrong::NoValue { within: name.to_owned(), fact: holds.fact.code() });
        }
        for value in holds.is.iter().filter(|v| !holds.fact.values().contains(v)) {
            faults.add(step, cannot_be(name, &holds.fact.code(), &value.code()));
        }
    }
}

fn contains_not(condition: &Condition) -> bool {
    match condition {
        Condition::Not(_) => true,
        Condition::Fact(_) => false,
        Condition::All(list) | Condition::Any(list) => list.iter().any(contains_not),
    }
}

fn input_faults(step: &str, input: &Input, faults: &mut Faults) {
    let decimal = |text: &str| {
        let digits = text.strip_prefix('-').unwrap_or(text);
        let (whole, part) = digits.split_once('.').unwrap_or((digits, "0"));
        !whole.is_empty() && !part.is_empty() && (whole.to_owned() + part).bytes().all(|b| b.is_ascii_digit())
    };
    match &input.kind {
        Kind::Number(number) => {
            for (name, text) in [("min", &number.min), ("max", &number.max)] {
                if !decimal(text) {
                    let (input, text) = (input.id.clone(), text.clone());
                    faults.add(step, Wrong::NotDecimal { input, limit: name, text });
                }
            }
            if number.looks == 0 {
                faults.add(step, Wrong::NoLook(input.id.clone()));
            }
        }
        Kind::Choice(options) => {
            if options.len() < 2 {
                faults.add(step, Wrong::NoChoice(input.id.clone()));
            }
            faults.unique(step, options.iter().map(|o| o.id.as_str()));
        }
        Kind::Check | Kind::Text => {}
    }
}

fn nothing(within: &str, kind: &'static str, name: &str) -> Wrong {
    Wrong::Nothing { within: within.to_owned(), kind, name: name.to_owned() }
}

fn cannot_be(within: &str, fact: &str, value: &str) -> Wrong {
    Wrong::CannotBe { within: within.to_owned(), fact: fact.to_owned(), value: value.to_owned() }
}

#[derive(Default)]
struct Faults(Vec<Fault>);

impl Faults {
    fn add(&mut self, at: &str, what: Wrong) {
        self.0.push(Fault { at: at.to_owned(), what });
    }

    fn unique<'a>(&mut self, at: &str, ids: impl Iterator<Item = &'a str>) {
        let mut seen = BTreeSet::new();
        for id in ids {
            if !seen.insert(id) {
                self.add(at, Wrong::Twice(id.to_owned()));
            }
        }
    }
}
