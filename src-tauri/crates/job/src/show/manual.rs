//! The manual, made of a procedure and its words.

use super::{rows::short, step::signal};
use crate::{
    tell::Tell,
    view::{ManualHazard, ManualStage, ManualStep, ManualView},
};
use bayhand_procedure::{Document, Gate, Path, Stage, Step};

/// The whole procedure to be read.
pub fn manual(document: &Document, tell: &Tell) -> ManualView {
    let args = [("id", document.id.clone()), ("version", document.version.clone())];
    ManualView {
        says: tell.text("manual-says", &args),
        stages: document.stages.iter().map(|one| stage(document, one, tell)).collect(),
    }
}

fn stage(document: &Document, stage: &Stage, tell: &Tell) -> ManualStage {
    ManualStage {
        id: stage.id.clone(),
        title: tell.text(&format!("stage-{}", stage.id), &[]),
        when: match stage.path {
            Path::Main => None,
            Path::OnDemand => Some(tell.text("manual-on-demand", &[])),
            Path::Stopped => Some(tell.text("manual-stopped", &[])),
        },
        steps: stage.steps.iter().map(|one| step(document, one, tell)).collect(),
    }
}

fn step(document: &Document, step: &Step, tell: &Tell) -> ManualStep {
    let key = bayhand_words::id("step", &[&step.id]);
    let hazard = |id: &String| {
        let (signal, word) = signal(document.hazard(id)?.signal, tell);
        let key = format!("hazard-{id}");
        let of = |attribute: &str| tell.words.attr(&key, attribute, &[]).unwrap_or_default();
        let line = tell.text("said-hazard", &[("word", word), ("line", of("line"))]);
        Some(ManualHazard { signal, line, text: of("text") })
    };
    let detail = tell.words.attr(&key, "detail", &[]).unwrap_or_default();
    ManualStep {
        id: step.id.clone(),
        short: short(&step.id, tell),
        instruction: tell.text(&key, &[]),
        detail: detail.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect(),
        hazards: step.hazards.iter().filter_map(hazard).collect(),
        asks: step.inputs.iter().map(|input| tell.input(&step.id, &input.id)).collect(),
        gates: step.gates.iter().map(|gate| tell.text(&format!("gate-{}", kind(gate)), &[])).collect(),
    }
}

/// The name of a gate as a document writes it, such as `pads-level`.
fn kind(gate: &Gate) -> String {
    match serde_json::to_value(gate) {
        Ok(serde_json::Value::String(kind)) => kind,
        Ok(serde_json::Value::Object(with)) => with.keys().next().cloned().unwrap_or_default(),
        // A gate is a name, or one name with what belongs to it.
        _ => String::new(),
    }
}
