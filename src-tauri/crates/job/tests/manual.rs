//! The manual: the procedure to be read, in the words that the steps have.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_procedure::{SHIPPED, load};
use common::Bay;

/// Nothing of the procedure is left out, and what is read there is what the window at the car says.
#[tokio::test]
async fn every_step_stands_in_the_manual_in_its_own_words() {
    let bay = Bay::practice_at(1, "lift.equipment").await;
    let manual = bay.desk.manual().await.unwrap();
    let document = load(SHIPPED).unwrap();
    let ids = |stages: Vec<Vec<String>>| stages.concat();
    let told = ids(manual.stages.iter().map(|s| s.steps.iter().map(|step| step.id.clone()).collect()).collect());
    let due = ids(document.stages.iter().map(|s| s.steps.iter().map(|step| step.id.clone()).collect()).collect());
    assert_eq!(told, due);
    let steps = || manual.stages.iter().flat_map(|stage| &stage.steps);
    for step in steps() {
        assert!(!step.instruction.is_empty() && !step.short.is_empty(), "{}", step.id);
        assert!(!step.detail.is_empty(), "{} says how and why", step.id);
        assert!(step.hazards.iter().all(|hazard| !hazard.text.is_empty()), "{}", step.id);
        let without = |texts: &[String]| texts.iter().any(|text| text.is_empty() || text.contains("gate-"));
        assert!(!without(&step.gates) && !without(&step.asks), "{step:?}");
    }
    let at_hand = bay.step();
    let same = steps().find(|step| step.id == at_hand.id).unwrap();
    assert_eq!(same.instruction, at_hand.instruction);
    assert_eq!(same.detail.join(" "), at_hand.detail.split_whitespace().collect::<Vec<_>>().join(" "));
    assert!(at_hand.hazards.iter().all(|hazard| same.hazards.iter().any(|h| h.text == hazard.text)), "{same:?}");
    assert!(manual.says.contains("makers") && manual.says.contains("trained"), "what comes first: {}", manual.says);
    assert!(manual.stages.iter().any(|stage| stage.id == "raise" && stage.when.is_some()), "raising comes when needed");
}
