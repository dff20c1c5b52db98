//! A procedure that is not the shipped one is proved before a job begins with it; one that is not proved begins a job only
//! when a supervisor signs for it, and then the record and the sheet say so.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::{PracticeAsk, Wish};
use bayhand_job::view::{ProcedureView, Screen, TrustCode};
use bayhand_procedure::{Document, Ending, Rank, SHIPPED, Step, load};
use common::staff::{PASSPHRASE, lead_to, secret, staffed, take_over};
use common::{Bay, assert_refusal};
use std::path::{Path, PathBuf};

fn begin() -> Wish {
    Wish::Begin { car: "Practice coupe 2".into(), practice: Some(PracticeAsk::sound(2)) }
}

/// The shipped procedure after an edit to one step, written beside.
fn edited(folder: &Path, id: &str, edit: fn(&mut Step)) -> PathBuf {
    let mut document: Document = load(SHIPPED).unwrap();
    let steps = document.stages.iter_mut().flat_map(|stage| stage.steps.iter_mut());
    edit(steps.into_iter().find(|step| step.id == id).unwrap());
    let place = folder.join("ours.json");
    std::fs::write(&place, serde_json::to_string_pretty(&document).unwrap()).unwrap();
    place
}

/// What the start screen says of the procedure of the next job.
async fn shown(bay: &Bay) -> ProcedureView {
    match bay.desk.step_view().await.screen {
        Screen::Start(start) => start.procedure,
        other => panic!("no job is open, so a procedure can be chosen: {other:?}"),
    }
}

#[tokio::test]
async fn a_harmless_edit_is_proved_and_begins() {
    let folder = tempfile::tempdir().unwrap();
    let place = edited(folder.path(), "raise.clear", |step| step.by = Rank::Technician);
    let mut bay = staffed().await;
    take_over(&mut bay, "LB").await;
    assert_eq!(shown(&bay).await.trust, TrustCode::Shipped, "nothing else was chosen");
    let looked = bay.desk.look_at_procedure(place.to_str().unwrap()).await.unwrap();
    assert_eq!((looked.trust, looked.found.as_slice()), (TrustCode::Proved, &[][..]), "{}", looked.says);
    assert_eq!(shown(&bay).await, looked, "and the start screen says so");
    let nothing = bay.desk.sign_for_procedure("MT", secret(PASSPHRASE), "x").await.unwrap_err();
    assert_eq!(nothing.code, "nothing-to-sign");
    bay.ask("LB", begin()).await.unwrap();
    let opening = bay.body_of(1).await;
    let opened = &opening["what"]["opened"];
    assert_eq!(opened["document"], std::fs::read_to_string(&place).unwrap(), "the job keeps this text");
    assert_eq!(opened["signed_for"], serde_json::Value::Null, "nobody had to sign for it");
}

#[tokio::test]
async fn a_harmful_edit_begins_only_when_a_supervisor_signs_and_the_sheet_says_so() {
    const REASON: &str = "tried on the simulated car only";
    let folder = tempfile::tempdir().unwrap();
    // Valid by schema and lint: the trainee may let the second person's check of the nuts pass.
    let place = edited(folder.path(), "lock.nuts-second", |step| step.waive = Some(Rank::Trainee));
    let mut bay = staffed().await;
    take_over(&mut bay, "LB").await;
    let looked = bay.desk.look_at_procedure(place.to_str().unwrap()).await.unwrap();
    assert_eq!(looked.trust, TrustCode::NotProved);
    assert!(looked.found.iter().any(|found| found.contains("no gate is waived by the wrong person")), "{looked:?}");
    bay.view = bay.desk.step_view().await;
    bay.refused("LB", begin(), "procedure-not-proved", &["A supervisor signs for it first"]).await;

    let refused = bay.desk.sign_for_procedure("LB", secret(PASSPHRASE), REASON).await.unwrap_err();
    assert_refusal(&refused, "a technician signs", "not-a-supervisor", &[]);
    let refused = bay.desk.sign_for_procedure("MT", secret("another passphrase"), REASON).await.unwrap_err();
    assert_refusal(&refused, "by another passphrase", "wrong-passphrase", &[]);
    let refused = bay.desk.sign_for_procedure("MT", secret(PASSPHRASE), "  ").await.unwrap_err();
    assert_refusal(&refused, "without a reason", "no-reason", &[]);
    bay.refused("LB", begin(), "procedure-not-proved", &[]).await;
    let signed = bay.desk.sign_for_procedure("MT", secret(PASSPHRASE), REASON).await.unwrap();
    assert_eq!(signed.signed_by.as_deref(), Some("MT"));
    bay.ask("LB", begin()).await.unwrap();
    assert_eq!(bay.body_of(1).await["what"]["opened"]["signed_for"]["reason"], REASON, "it stands in the first entry");

    let review = bay.desk.review_view(None).await.unwrap().job.unwrap();
    assert!(review.entries[0].note.contains(REASON), "the record says so: {:?}", review.entries[0]);
    let departure = &review.departures[0];
    assert!(departure.text.contains("Somebody MT (MT) signed for it") && departure.text.contains("wrong person"));

    let seal = load(SHIPPED).unwrap().steps().find(|(_, s)| s.ending == Some(Ending::Seal)).unwrap().1.id.clone();
    lead_to(&mut bay, &seal).await;
    let job = bay.job();
    // Signing for the procedure is no work at the car.
    bay.desk.seal(job, bay.view.revision, "MT", secret(PASSPHRASE)).await.unwrap();
    let sheet = bay.desk.handover(job).await.unwrap();
    assert!(sheet.remarks.iter().any(|remark| remark.contains("not proved") && remark.contains(REASON)), "{sheet:?}");
    assert!(sheet.departures.iter().any(|departure| departure.starts_with("Procedure not proved")), "{sheet:?}");
    assert!(bay.desk.verify(job).await.is_ok(), "the book holds");

    bay.view = bay.desk.step_view().await;
    bay.ask("LB", Wish::SetAside).await.unwrap();
    assert_eq!(shown(&bay).await.signed_by, None, "a signature is for one job");
    bay.refused("LB", begin(), "procedure-not-proved", &[]).await;
    assert_eq!(bay.desk.choose_shipped_procedure().trust, TrustCode::Shipped);
    bay.view = bay.desk.step_view().await;
    bay.ask("LB", begin()).await.expect("the shipped one begins");
}

/// What cannot be read, or is no procedure, is told with its place, and changes nothing.
#[tokio::test]
async fn a_place_without_a_procedure_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let bay = Bay::empty().await;
    let check = async |place: &Path, code: &str, says: &[&str]| {
        let refused = bay.desk.look_at_procedure(place.to_str().unwrap()).await.unwrap_err();
        assert_refusal(&refused, &place.display().to_string(), code, says);
        assert_eq!(refused.field.as_deref(), Some("place"));
        assert_eq!(shown(&bay).await.trust, TrustCode::Shipped, "what was chosen stays chosen");
    };
    check(&folder.path().join("none.json"), "procedure-file", &["none.json", "stays chosen"]).await;
    check(folder.path(), "procedure-file", &["no file"]).await;
    let text = folder.path().join("notes.json");
    std::fs::write(&text, "bolts, washers").unwrap();
    check(&text, "procedure-form", &["is no procedure"]).await;
    let mut value: serde_json::Value = serde_json::from_str(SHIPPED).unwrap();
    value["stages"][0]["steps"][0]["need"] = value["stages"][0]["steps"][0]["needs"].take();
    std::fs::write(&text, value.to_string()).unwrap();
    check(&text, "procedure-form", &["need"]).await;
}
