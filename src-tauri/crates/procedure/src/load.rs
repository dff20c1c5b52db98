//! Reading a procedure document: what is wrong with it is said with its place.

use crate::{Condition, Document, Ending, Gate, Input, Kind, Path, Step};
use std::collections::BTreeSet;
use thiserror::Error;

/// The format that this program reads.
pub const FORMAT: u32 = 1;

/// Something wrong with a document.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{at}: {says}")]
pub struct Fault {
    /// Where: a path such as `stages[3].steps[2].gates[0]`, or a step's id.
    pub at: String,
    /// What is wrong and what would be right.
    pub says: String,
}

/// Reads a document and checks its references.
///
/// # Errors
/// Every fault that was found; one when the text is not a document at all.
pub fn load(text: &str) -> Result<Document, Vec<Fault>> {
    let mut reader = serde_json::Deserializer::from_str(text);
    let document: Document = serde_path_to_error::deserialize(&mut reader)
        .map_err(|e| vec![Fault { at: e.path().to_string(), says: with_nearest_key(&e.inner().to_string()) }])?;
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
        faults.add("format", format!("is {}; this program reads format {FORMAT}", document.format));
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
            faults.add(&step.id, format!("its id must begin with that of its stage, '{}.'", stage.id));
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
            faults.add(&at, format!("it cannot be {}", lapse.to.code()));
        }
        for id in lapse.except.iter().filter(|id| document.step(id).is_none()) {
            faults.add(&at, format!("except: there is no step {id:?}"));
        }
    }
    for ending in [Ending::Seal, Ending::Stopped] {
        let wanted = if ending == Ending::Seal { Path::Main } else { Path::Stopped };
        let count = document.steps().filter(|(st, s)| st.path == wanted && s.ending == Some(ending)).count();
        if count != 1 {
            faults.add("stages", format!("{count} steps end the job as {ending:?}; exactly one must, on its own path"));
        }
    }
    faults.0
}

fn step_faults(document: &Document, step: &Step, nodes: &BTreeSet<String>, faults: &mut Faults) {
    for node in &step.rests_on {
        if !nodes.contains(node) {
            faults.add(&step.id, format!("rests_on: there is no fact, topic or step {node:?}"));
        }
    }
    let options = step.inputs.iter().filter_map(|i| match &i.kind {
        Kind::Choice(options) => Some(options.iter()),
        _ => None,
    });
    let options: Vec<_> = options.flatten().collect();
    for topic in step.changes.iter().chain(options.iter().flat_map(|o| o.changes.iter())) {
        if !document.topics.contains(topic) {
            faults.add(&step.id, format!("changes: there is no topic {topic:?}"));
        }
    }
    for becomes in step.sets.iter().chain(options.iter().flat_map(|o| o.sets.iter())) {
        if !becomes.fact.values().contains(&becomes.to) {
            faults.add(&step.id, format!("sets: {} cannot be {}", becomes.fact.code(), becomes.to.code()));
        }
    }
    for (name, condition) in [("when", &step.when), ("needs", &step.needs)] {
        condition_faults(&step.id, name, condition, faults);
    }
    if contains_not(&step.needs) {
        faults.add(&step.id, "needs: 'not' cannot be brought about; name the values that will do".into());
    }
    for hazard in &step.hazards {
        if document.hazard(hazard).is_none() {
            faults.add(&step.id, format!("hazards: there is no hazard {hazard:?}"));
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
            faults.add(&step.id, format!("gates: there is no step {of:?}"));
        }
    }
    faults.unique(&step.id, step.inputs.iter().map(|i| i.id.as_str()));
    for input in &step.inputs {
        if input.with.is_some() && step.brought_by(input).is_none() {
            faults.add(&step.id, format!("input {}: with: no choice of the step offers {:?}", input.id, input.with));
        }
        input_faults(&step.id, input, faults);
    }
}

fn condition_faults(step: &str, name: &str, condition: &Condition, faults: &mut Faults) {
    if condition.depth() > 2 {
        faults.add(step, format!("{name}: all, any and not may be nested two deep"));
    }
    for holds in condition.facts() {
        if holds.is.is_empty() {
            faults.add(step, format!("{name}: no value is given for {}", holds.fact.code()));
        }
        for value in holds.is.iter().filter(|v| !holds.fact.values().contains(v)) {
            faults.add(step, format!("{name}: {} cannot be {}", holds.fact.code(), value.code()));
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
                    faults.add(step, format!("input {}: {name} must be a decimal text, not {text:?}", input.id));
                }
            }
            if number.looks == 0 {
                faults.add(step, format!("input {}: at least one look", input.id));
            }
        }
        Kind::Choice(options) => {
            if options.len() < 2 {
                faults.add(step, format!("input {}: a choice needs two options or more", input.id));
            }
            faults.unique(step, options.iter().map(|o| o.id.as_str()));
        }
        Kind::Check | Kind::Text => {}
    }
}

#[derive(Default)]
struct Faults(Vec<Fault>);

impl Faults {
    fn add(&mut self, at: &str, says: String) {
        self.0.push(Fault { at: at.to_owned(), says });
    }

    fn unique<'a>(&mut self, at: &str, ids: impl Iterator<Item = &'a str>) {
        let mut seen = BTreeSet::new();
        for id in ids {
            if !seen.insert(id) {
                self.add(at, format!("{id:?} stands twice"));
            }
        }
    }
}
