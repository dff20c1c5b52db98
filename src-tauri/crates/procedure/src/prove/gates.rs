//! Gates that can never pass, whatever is measured: what they compare is not entered anywhere, or nobody could pass them.

use crate::{Document, Fault, Gate, Step, Wrong};

/// Every gate that cannot be met, with its place.
pub fn unmeetable(document: &Document) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (_, step) in document.steps() {
        for (index, gate) in step.gates.iter().enumerate() {
            if let Some(why) = missing(document, step, gate) {
                faults.push(Fault { at: format!("{}: gates[{index}]", step.id), what: Wrong::Unmeetable(why) });
            }
        }
    }
    faults
}

fn asks(step: &Step, input: &str) -> bool {
    step.inputs.iter().any(|i| i.id == input)
}

fn asked_anywhere(document: &Document, input: &str) -> bool {
    document.steps().any(|(_, step)| asks(step, input))
}

/// What a gate compares and nobody enters.
fn missing(document: &Document, step: &Step, gate: &Gate) -> Option<String> {
    let own = |inputs: &[&str]| {
        let first = inputs.iter().find(|input| !asks(step, input));
        first.map(|input| format!("it cannot be met: the step has no input {input:?}"))
    };
    let agreed = |inputs: &[&str]| {
        let first = inputs.iter().find(|input| !asked_anywhere(document, input));
        first.map(|input| format!("it cannot be met: no step asks for {input:?}"))
    };
    let earlier = |of: &str| -> Option<String> {
        let (mut mine, mut its) = (None, None);
        for (index, (_, other)) in document.steps().enumerate() {
            if other.id == step.id {
                mine = Some(index);
            }
            if other.id == of {
                its = Some(index);
            }
        }
        (its == mine).then(|| "it cannot be met: it compares the step with itself".to_owned())
    };
    match gate {
        Gate::ChecksYes => step.inputs.is_empty().then(|| "it asks for checks, and the step has none".to_owned()),
        Gate::SecondPerson { of } => earlier(of),
        Gate::CountedBack { of } => earlier(of).or_else(|| own(&["parts"])).or_else(|| {
            let counted = document.step(of).is_some_and(|(_, s)| asks(s, "parts"));
            (!counted).then(|| format!("it cannot be met: {of} counts no parts"))
        }),
        Gate::SameAs { of, input, .. } => earlier(of).or_else(|| own(&[input])).or_else(|| {
            let entered = document.step(of).is_some_and(|(_, s)| asks(s, input));
            (!entered).then(|| format!("it cannot be met: {of} has no input {input:?}"))
        }),
        Gate::Unchanged { since } => earlier(since).or_else(|| own(&["loads", "heights"])),
        Gate::Pressures { .. } => own(&["pressures"]).or_else(|| agreed(&["cold", "working"])),
        Gate::HeightsNear { .. } => own(&["heights"]).or_else(|| agreed(&["agreed-height"])),
        Gate::AnglesNear { .. } => own(&["camber", "toe"]).or_else(|| agreed(&["agreed-camber", "agreed-toe"])),
        Gate::RimsTrue { .. } => own(&["runout-camber-up", "runout-edge-up"]),
        Gate::AnglesAgreed => {
            agreed(&["camber", "agreed-camber", "agreed-toe", "angle-window", "caster-window", "toe-window"])
        }
        Gate::AnglesResolve => {
            own(&["gauge-accuracy", "line-accuracy"]).or_else(|| agreed(&["angle-window", "toe-window"]))
        }
        Gate::SettlesAgree { .. } => own(&["loads"]).or_else(|| {
            let other = |id: &String| document.step(id).is_some_and(|(_, s)| asks(s, "loads"));
            let none = !step.rests_on.iter().any(other);
            none.then(|| "it cannot be met: the step rests on no other settle".to_owned())
        }),
        Gate::Plausible => own(&["loads"]).or_else(|| agreed(&["total"])),
        Gate::PadsLevel | Gate::PadsStill { .. } => own(&["set-up-1", "set-up-2"]),
        Gate::TravelLeft => own(&["turns"]).or_else(|| agreed(&["turns-up", "turns-down"])),
        Gate::BumpGap => own(&["bump-gap"]).or_else(|| agreed(&["travel-kept"])),
        Gate::Windows => agreed(&["cross-target", "cross-window", "side-limit"]),
        Gate::Waited => agreed(&["wait"]),
        Gate::InstrumentsResolve => agreed(&["pads-resolution"]),
        Gate::InstrumentsInDate | Gate::CarPossible => {
            step.inputs.is_empty().then(|| "it cannot be met: the step has no input".to_owned())
        }
    }
}
