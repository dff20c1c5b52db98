//! The proof of the shipped document.

use bayhand_procedure::prove::{self, Property, deeds::Deed};
use bayhand_procedure::{SHIPPED, hash, load};

#[test]
fn the_shipped_document_is_proved() {
    let document = load(SHIPPED).expect("the shipped document has no fault");
    let proof = prove::prove(&document);
    println!("{} states explored: {:?}", proof.count(), proof.states);
    println!("{} whole jobs over {} states", proof.jobs.0, proof.jobs.1);
    for broken in &proof.broken {
        println!("{:?}: {} at {}; {:?}", broken.property, broken.says, broken.at, broken.shortest);
    }
    for fault in &proof.faults {
        println!("{fault}");
    }
    assert!(proof.holds(), "every property holds, and no step is in vain");
    assert!(proof.count() > 50_000, "control: states were explored");
    for (part, states) in &proof.states {
        assert!(
            *states > 1,
            "control: something happens in every part, also in {part}: an answer that is refused proves nothing"
        );
    }
    assert!(prove::is_proved(&hash(SHIPPED)), "write this into src/prove/shipped.sha256: {}", hash(SHIPPED));
    assert_eq!(Property::ALL.len(), 8, "the eight properties of the trade");
}

#[test]
fn reserved_ids_stand_in_the_readme() {
    const README: &str = include_str!("../../../../procedures/README.md");
    let document = load(SHIPPED).expect("the shipped document has no fault");
    let intake = document.steps().filter(|(stage, _)| stage.id == "intake");
    let stated: Vec<&str> = intake.flat_map(|(_, step)| step.options().map(|o| o.id.as_str())).collect();
    for word in Deed::ALL.iter().filter_map(|deed| deed.word()).filter(|word| !stated.contains(word)) {
        assert!(README.contains(&format!("`{word}`")), "whoever edits a document must know that {word} is reserved");
    }
}

#[test]
fn every_reserved_id_is_used_by_the_shipped_document() {
    let document = load(SHIPPED).expect("the shipped document has no fault");
    for word in Deed::ALL.iter().filter_map(|deed| deed.word()) {
        let input = document.steps().any(|(_, step)| step.inputs.iter().any(|i| i.id == word));
        let option = document.steps().any(|(_, step)| step.options().any(|o| o.id == word));
        assert!(input || option, "a deed that nothing tells of would make its rules empty: {word}");
    }
}
