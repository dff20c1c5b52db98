//! The proof of the shipped document.

use bayhand_procedure::{SHIPPED, hash, load, prove};

#[test]
fn the_shipped_document_is_proved() {
    let document = load(SHIPPED).expect("the shipped document has no fault");
    let began = std::time::Instant::now();
    let proof = prove::prove(&document);
    println!("{:?} {:?} states {:?} jobs {:?}", began.elapsed(), proof.count(), proof.states, proof.jobs);
    for broken in &proof.broken {
        println!(
            "BROKEN {:?} at {}: {} job {:?}\n   {:?}",
            broken.property,
            broken.at,
            broken.says,
            broken.job.as_ref().map(Vec::len),
            broken.shortest
        );
    }
    for fault in &proof.faults {
        println!("FAULT {fault}");
    }
    assert!(proof.holds());
    assert!(prove::is_proved(&hash(SHIPPED)), "write this into src/prove/shipped.sha256: {}", hash(SHIPPED));
}
