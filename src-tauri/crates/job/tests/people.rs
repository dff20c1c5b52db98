//! A book that knows its people: nobody acts by a name alone, a trainee is not alone at what they may not do alone, and a
//! supervisor who did not work on the job seals it with their key.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::Secret;
use bayhand_job::ask::{Ask, CorrectAsk, JobFilter, PracticeAsk, Refused, StaffAsk, StaffWish, Wish};
use bayhand_job::view::Screen;
use bayhand_jobbook::{Book, Export, JobId};
use common::staff::{PASSPHRASE, lead_to, person, pin, secret, staffed, take_over};
use common::{Bay, assert_refusal, sign_on, who};

const SEED: u64 = 2;
async fn begun() -> Bay {
    let mut bay = staffed().await;
    take_over(&mut bay, "LB").await;
    bay.ask("LB", Wish::Begin { car: "Practice coupe 2".into(), practice: Some(PracticeAsk::sound(SEED)) })
        .await
        .unwrap();
    bay
}

#[tokio::test]
async fn a_real_car_waits_for_people_who_show_who_they_are() {
    let mut bay = Bay::empty().await;
    let begin = |practice| Wish::Begin { car: "Grey saloon".into(), practice };
    bay.refused("", begin(None), "first-supervisor", &["Make the first supervisor"]).await;
    bay.ask("", begin(Some(PracticeAsk::sound(SEED)))).await.expect("whoever wants to look practises by name");
    assert!(!bay.view.staff.authenticates, "the windows are told so");
}

#[tokio::test]
async fn the_windows_are_told_who_is_at_the_car_and_until_when() {
    let mut bay = staffed().await;
    let staff = |bay: &Bay| bay.view.staff.clone();
    bay.view = bay.desk.step_view().await;
    assert_eq!((staff(&bay).at_car, staff(&bay).asks_again_s), (None, None), "nobody yet");
    take_over(&mut bay, "RO").await;
    assert_eq!((staff(&bay).at_car.as_deref(), staff(&bay).asks_again_s), (Some("RO"), Some(30 * 60)));
    bay.clock.pass(29 * 60 + 59);
    assert_eq!(bay.desk.step_view().await.staff.asks_again_s, Some(1), "it runs down");
    bay.clock.pass(1);
    assert_eq!(bay.desk.step_view().await.staff.at_car, None, "the PIN is asked for again");
    let trainee = staff(&bay).people.into_iter().find(|person| person.initials == "RO").unwrap();
    assert_eq!(trainee.alone, ["intake", "walk.tyres"]);
    assert!(trainee.alone_says.starts_with("Intake, "), "in words: {}", trainee.alone_says);
    assert!(staff(&bay).stages.iter().any(|stage| stage.code == "intake" && stage.label == "Intake"));

    for wrong in 1..=3 {
        let refused = bay.desk.hand_over("RO", secret("9999888")).await.unwrap_err();
        assert_eq!((refused.code.as_str(), refused.field.as_deref()), ("wrong-pin", Some("pin")), "try {wrong}");
    }
    let row = bay.desk.people().await.unwrap().people.into_iter().find(|person| person.initials == "RO").unwrap();
    assert_eq!(row.wait_s, 30, "after the third wrong one the next has to wait, and the windows show it");
    let early = bay.desk.hand_over("RO", pin("RO")).await.unwrap_err();
    assert_refusal(&early, "too early", "wait-for-pin", &["30 s"]);
    bay.clock.pass(30);
    take_over(&mut bay, "RO").await;
}

/// A supervisor who comes past lets a gate pass by their PIN; the trainee at the car goes on.
#[tokio::test]
async fn a_gate_is_waived_by_somebody_who_comes_past() {
    let mut bay = begun().await;
    let step = "intake.instruments";
    lead_to(&mut bay, step).await;
    bay.acknowledge("RO").await;
    let mut entries = bay.entries();
    let due = entries.iter_mut().find(|(key, _)| key.ends_with("laser-due")).expect("the laser's calibration");
    due.1.text = "2025-01-31".into();
    bay.record(entries).await.unwrap();
    assert!(bay.step().gate.is_some(), "control: an instrument out of date is held");
    let (revision, reason) = (bay.view.revision, "checked against the site's own level");
    let wrong = bay.desk.waive(revision, "MT", secret("1111222"), step, reason).await.unwrap_err();
    assert_refusal(&wrong, "by a wrong PIN", "wrong-pin", &[]);
    let own = bay.desk.waive(revision, "RO", pin("RO"), step, reason).await.unwrap_err();
    assert!(["at-work", "rank"].contains(&own.code.as_str()), "not by whoever is at work on it: {own:?}");
    let stale = bay.desk.waive(revision - 1, "MT", pin("MT"), step, reason).await.unwrap_err();
    assert_eq!(stale.code, "stale");
    bay.view = bay.desk.waive(revision, "MT", pin("MT"), step, reason).await.unwrap();
    assert_ne!(bay.step().id, step, "the job goes on");
    assert_eq!(bay.view.staff.at_car.as_deref(), Some("RO"), "and RO is at the car still");
    let waived = bay.desk.review_view(None).await.unwrap().job.unwrap().departures;
    assert!(waived.iter().any(|d| d.text.contains(reason) && d.text.contains("MT")), "{waived:?}");
}

#[tokio::test]
async fn nobody_acts_by_a_name_alone() {
    let mut bay = staffed().await;
    let begin = || Wish::Begin { car: "Grey saloon".into(), practice: None };
    bay.refused("", begin(), "pin-first", &["Enter your PIN"]).await;
    let wrong = bay.desk.hand_over("LB", secret("9999")).await.unwrap_err();
    assert_refusal(&wrong, "a PIN of one digit", "wrong-pin", &["is recorded"]);
    take_over(&mut bay, "LB").await;
    bay.ask("LB", begin()).await.unwrap();
    assert_eq!(bay.view.people.len(), 1, "whoever begins a job is signed on at it");
    bay.refused("", sign_on("XX", "Somebody Else", "supervisor"), "with-pin", &["with your PIN"]).await;
    bay.refused("MT", Wish::Hold { reason: "lunch".into() }, "hand-over", &["MT is not the one at the car"]).await;

    take_over(&mut bay, "MT").await;
    assert_eq!(bay.view.people.len(), 2, "whoever takes over is signed on, and the place is kept");
    bay.ask("MT", Wish::Hold { reason: "lunch".into() }).await.unwrap();
    bay.clock.pass(31 * 60);
    bay.refused("MT", Wish::Resume, "pin-first", &["for a while"]).await;
    take_over(&mut bay, "LB").await;
    bay.ask("LB", Wish::Resume).await.expect("after the PIN");
    bay.desk.sign_off();
    bay.refused("LB", Wish::Hold { reason: "x".into() }, "pin-first", &[]).await;

    let by_name = |wish| Ask { revision: bay.view.revision, by: "MT".into(), wish };
    let refused = bay.desk.review_act(bay.job(), by_name(Wish::Seal)).await.unwrap_err();
    assert_refusal(&refused, "seal by name", "with-passphrase", &[]);
    let back = Wish::Reopen { step: "intake.car".into(), reason: "x".into() };
    let refused = bay.desk.review_act(bay.job(), by_name(back)).await.unwrap_err();
    assert_refusal(&refused, "send back by name", "with-pin", &[]);
}

#[tokio::test]
async fn a_trainee_is_not_alone_at_what_they_may_not_do_alone() {
    let mut bay = staffed().await;
    take_over(&mut bay, "RO").await;
    bay.ask("RO", Wish::Begin { car: "Practice coupe 2".into(), practice: Some(PracticeAsk::sound(SEED)) })
        .await
        .unwrap();
    assert!(bay.step().id.starts_with("intake."), "the job begins with the papers");
    bay.do_step().await; // Its stage is in the list.
    while bay.step().id.starts_with("intake.") {
        bay.do_step().await;
    }
    let step = bay.step().id.clone();
    assert!(step.starts_with("walk.") || step.starts_with("lift."), "then the car: {step}");
    if step == "walk.tyres" {
        bay.do_step().await;
    }
    let step = bay.step().id.clone();
    let wish = || Wish::Record { step: step.clone(), entries: bay_entries(&bay) };
    let wish = wish();
    bay.refused("RO", wish.clone(), "not-alone", &["RO may not do this step alone"]).await;
    take_over(&mut bay, "LB").await;
    take_over(&mut bay, "RO").await;
    bay.acknowledge("RO").await;
    bay.ask("RO", wish).await.expect("with a technician at the job");
}

fn bay_entries(bay: &Bay) -> std::collections::BTreeMap<String, bayhand_job::ask::Entry> {
    bay.entries()
}

#[tokio::test]
async fn a_job_is_sealed_with_a_key_and_sent_back() {
    println!("seed {SEED}");
    let mut bay = begun().await;
    let seal_step = bay_seal_step();
    lead_to(&mut bay, &seal_step).await;
    let (job, revision) = (bay.job(), bay.view.revision);

    let wrong = bay.desk.seal(job, revision, "MT", secret("another passphrase")).await.unwrap_err();
    assert_refusal(&wrong, "wrong passphrase", "wrong-passphrase", &["does not open the key of MT"]);
    let by_lb: Refused = bay.desk.seal(job, revision, "LB", secret(PASSPHRASE)).await.unwrap_err();
    assert_refusal(&by_lb, "by a technician", "not-a-supervisor", &[]);
    bay.desk.change_person("MT", secret(PASSPHRASE), person("LB", "supervisor", &[])).await.unwrap();
    bay.desk.set_key("MT", secret(PASSPHRASE), "LB", secret("LB has one as well"), "first").await.unwrap();
    let worked = bay.desk.seal(job, revision, "LB", secret("LB has one as well")).await.unwrap_err();
    assert_refusal(&worked, "by one who did the work", "worked", &["LB worked on this job"]);

    bay.desk.seal(job, revision, "MT", secret(PASSPHRASE)).await.unwrap();
    let sheet = bay.desk.handover(job).await.unwrap();
    let seal: Vec<_> = sheet.seal.iter().map(|row| row.label.as_str()).collect();
    assert!(seal.contains(&"Seal code") && seal.contains(&"Seal key"), "both stand on the sheet: {seal:?}");
    assert_eq!(
        sheet.remarks.len(),
        1,
        "only that it is practice: every name was shown by a secret: {:?}",
        sheet.remarks
    );
    let code = &sheet.seal.iter().find(|row| row.label == "Seal code").unwrap().text;

    let book = Book::open_read_only(&bay.book).await.unwrap();
    book.verify_code(JobId(job), code).await.expect("the code is that of the book");
    assert!(bay.desk.verify(job).await.unwrap().contains("1 seals"), "the book holds");
    let text = bay.desk.export(job).await.unwrap();
    assert_eq!(Export::read(&text).unwrap().seals()[0].code, *code, "and of what is exported");

    let view = bay.desk.review_view(Some(job)).await.unwrap();
    let step = view.job.as_ref().unwrap().send_back.iter().find(|t| t.step == "final.read-1").unwrap().step.clone();
    let trainee = bay.desk.send_back(job, view.revision, "RO", pin("RO"), &step, "a look").await.unwrap_err();
    assert_refusal(&trainee, "a trainee sends back", "rank", &["needs supervisor"]);
    let view = bay.desk.send_back(job, view.revision, "MT", pin("MT"), &step, "a tyre was changed").await.unwrap();
    assert_eq!(view.jobs[0].state, "working", "the job is open again: {:?}", view.jobs);
    assert_eq!(bay.desk.handover(job).await.unwrap_err().code, "no-sheet", "its seal is void, so there is no sheet");
    let text = bay.desk.export(job).await.unwrap();
    assert!(Export::read(&text).unwrap().seals()[0].void, "and visibly so");
    assert!(bay.desk.verify(job).await.unwrap().contains("0 seals"), "the book holds all the same");

    bay.view = bay.desk.step_view().await;
    assert!(matches!(bay.view.screen, Screen::Step(_)), "work goes on at the car");
    lead_to(&mut bay, &seal_step).await;
    bay.desk.seal(job, bay.view.revision, "MT", secret(PASSPHRASE)).await.expect("and is sealed anew");
    assert!(bay.desk.verify(job).await.unwrap().contains("1 seals"));
}

/// The step that ends with the seal.
fn bay_seal_step() -> String {
    let document = bayhand_procedure::load(bayhand_procedure::SHIPPED).unwrap();
    let sealing = document.steps().find(|(_, s)| s.ending == Some(bayhand_procedure::Ending::Seal));
    sealing.unwrap().1.id.clone()
}

#[tokio::test]
async fn a_text_is_corrected_and_both_stay_visible() {
    let mut bay = begun().await;
    let free = loop {
        let body = bay.step().clone();
        let text = body.fields.iter().find(|f| f.kind == bayhand_job::view::FieldKind::Text);
        let gates = bayhand_procedure::load(bayhand_procedure::SHIPPED).unwrap();
        let gated = !gates.step(&body.id).unwrap().1.gates.is_empty();
        let by = who(&body.id);
        take_over(&mut bay, by).await;
        bay.do_step().await;
        if let Some(field) = text.filter(|_| !gated) {
            break (body.id.clone(), field.key.clone(), by);
        }
    };
    let (step, key, by) = free;
    let entry = bay.view.revision;
    let amend = |entry, key: &str, text: &str, reason: &str| Wish::Amend {
        entry,
        key: key.into(),
        text: text.into(),
        reason: reason.into(),
    };
    bay.refused(by, amend(entry, &key, "another word", " "), "no-reason", &[]).await;
    bay.refused(by, amend(entry, &key, " ", "a slip"), "amend-text", &[]).await;
    bay.refused(by, amend(1, &key, "another word", "a slip"), "amend", &["Open its step again"]).await;
    bay.refused(by, amend(entry, "no-such-key", "x", "a slip"), "amend", &[]).await;
    bay.ask(by, amend(entry, &key, "another word", "a slip")).await.unwrap();
    let rows = bay.desk.review_view(None).await.unwrap().job.unwrap().entries;
    let (original, correction) = (&rows[rows.len() - 2], rows.last().unwrap());
    assert_eq!((original.number, correction.number), (entry, entry + 1), "{step}: both stand in the record");
    assert!(original.note.contains(&format!("entry {}", entry + 1)), "the one names the other: {}", original.note);
    assert!(correction.entered.contains("another word") && correction.note == "a slip", "{correction:?}");
    let revision = bay.view.revision;
    let job = bay.job();
    let mut bay = bay.restart().await;
    take_over(&mut bay, by).await;
    bay.ask(by, Wish::TakeUp { job }).await.unwrap();
    assert!(bay.view.revision >= revision, "it is read back");
    assert_eq!(bay.desk.review_view(None).await.unwrap().job.unwrap().entries[..rows.len()], rows, "as it was");
}

#[tokio::test]
async fn customer_data_stands_apart_and_goes() {
    let bay = begun().await;
    let job = bay.job();
    let text = "The owner, 12 Any Street";
    let wrong = bay.desk.set_customer("LB", secret("4321"), job, text).await.unwrap_err();
    assert_eq!(wrong.code, "wrong-pin");
    bay.desk.set_customer("LB", pin("LB"), job, text).await.unwrap();
    assert_eq!(bay.desk.customer(job).await.unwrap().as_deref(), Some(text));
    let told = bay.desk.erase_customer("LB", pin("LB"), job, "asked for").await.unwrap_err();
    assert_eq!(told.code, "not-a-supervisor");
    bay.desk.erase_customer("MT", pin("MT"), job, "asked for").await.unwrap();
    assert_eq!(bay.desk.customer(job).await.unwrap(), None);
    bay.desk.verify(job).await.expect("erased, not altered");
}

#[tokio::test]
async fn the_book_is_copied_when_a_job_ends() {
    let folder = tempfile::tempdir().unwrap();
    let mut bay = Bay::practice(SEED).await;
    let said = bay.desk.copy_to(folder.path().join("copies").to_str().unwrap()).await.unwrap();
    assert!(said.contains("jobs-2026-03-02.db"), "a copy is made at once: {said}");
    bay.ask("MT", Wish::Stop { reason: "the owner calls".into() }).await.unwrap();
    while let Screen::Step(_) = bay.view.screen {
        bay.do_step().await;
    }
    let copy = folder.path().join("copies/jobs-2026-03-02.db");
    assert!(bay.desk.copy_told().unwrap().contains("jobs-2026-03-02.db"), "it is told where");
    let copy = Book::open_read_only(&copy).await.unwrap();
    assert_eq!(copy.entries(JobId(1)).await.unwrap().len() as u64, bay.view.revision, "with the last entry");
    let mut other = Bay::practice(SEED).await;
    std::fs::write(folder.path().join("a-file"), "").unwrap();
    let refused = other.desk.copy_to(folder.path().join("a-file").to_str().unwrap()).await.unwrap_err();
    assert_eq!(refused.field.as_deref(), Some("copies"), "a place that takes no copy is not taken: {}", refused.says);
    assert_eq!(other.desk.book_view().await.unwrap().copies_in, None);
    other.desk.copy_to(folder.path().join("gone").to_str().unwrap()).await.unwrap();
    std::fs::remove_dir_all(folder.path().join("gone")).unwrap();
    std::fs::write(folder.path().join("gone"), "").unwrap();
    other.ask("MT", Wish::Stop { reason: "the owner calls".into() }).await.unwrap();
    while let Screen::Step(_) = other.view.screen {
        other.do_step().await;
    }
    assert!(other.desk.copy_told().unwrap().contains("The job itself is safe"), "a copy that fails is told");
}

#[tokio::test]
async fn another_bays_job_is_taken_in() {
    let from = begun().await;
    let text = from.desk.export(from.job()).await.unwrap();
    let here = staffed().await;
    assert!(here.desk.import("MT", pin("MT"), &text).await.unwrap(), "it is new");
    assert!(!here.desk.import("MT", pin("MT"), &text).await.unwrap(), "once");
    let file = tempfile::tempdir().unwrap();
    let place = file.path().join("job-1.json");
    let missing = here.desk.import_from(place.to_str().unwrap(), "MT", pin("MT")).await.unwrap_err();
    assert_eq!((missing.code.as_str(), missing.field.as_deref()), ("import-file", Some("import")));
    std::fs::write(&place, &text).unwrap();
    let said = here.desk.import_from(place.to_str().unwrap(), "MT", pin("MT")).await.unwrap();
    assert!(said.contains("is here already"), "{said}");
    let jobs = here.desk.imported().await.unwrap();
    assert_eq!((jobs.len(), jobs[0].0.state.as_str()), (1, "working"), "and can be looked at");
    assert_eq!(here.desk.imported_job(1).await.unwrap(), jobs[0].1);
    assert_eq!(here.desk.imported_job(2).await.unwrap_err().code, "no-imported-job");
    assert_eq!(here.desk.book_view().await.unwrap().imported.len(), 1);
    let changed = here.desk.import("MT", pin("MT"), &text.replace("Practice coupe", "Practice couqe")).await;
    assert_eq!(changed.unwrap_err().code, "bad-export");
}

#[tokio::test]
async fn a_changed_pin_counts_at_once_and_who_has_left_does_not_take_over() {
    let bay = staffed().await;
    let code = |answer: Result<_, Refused>| answer.err().map(|refused| refused.code).unwrap_or_default();
    let new = || secret("8642");
    assert_eq!(
        code(bay.desk.change_pin("RO", secret("1111222"), new()).await),
        "wrong-pin",
        "one's own PIN comes first"
    );
    bay.desk.change_pin("RO", pin("RO"), new()).await.unwrap();
    let taken = |answer: Result<_, Refused>| answer.err().map(|refused| refused.code);
    assert_eq!(taken(bay.desk.hand_over("RO", pin("RO")).await).as_deref(), Some("wrong-pin"), "the old one is gone");
    assert_eq!(taken(bay.desk.hand_over("RO", new()).await), None, "the new one counts");

    bay.desk.reset_pin("MT", secret(PASSPHRASE), "LB", new()).await.unwrap();
    assert_eq!(
        taken(bay.desk.hand_over("LB", pin("LB")).await).as_deref(),
        Some("wrong-pin"),
        "what was forgotten is gone"
    );
    let not_mine = bay.desk.reset_pin("LB", secret(PASSPHRASE), "RO", new()).await;
    assert_eq!(code(not_mine), "not-a-supervisor", "only a supervisor sets somebody else's");

    bay.desk.hand_over("RO", new()).await.unwrap();
    let people = bay.desk.let_go("MT", secret(PASSPHRASE), "RO").await.unwrap();
    assert_eq!(people.at_car, None, "who has left is not at the car any more");
    assert!(people.people.iter().any(|p| p.initials == "RO" && p.left), "their name stays");
    assert_eq!(
        taken(bay.desk.hand_over("RO", new()).await).as_deref(),
        Some("person-unknown"),
        "and does not come back"
    );
    let staff = StaffAsk {
        by: "MT".into(),
        passphrase: secret("another passphrase"),
        wish: StaffWish::ResetPin { initials: "LB".into(), pin: pin("LB") },
    };
    assert_eq!(code(bay.desk.keep_people(staff.clone()).await), "wrong-passphrase", "as the windows ask it");
    bay.desk.keep_people(StaffAsk { passphrase: secret(PASSPHRASE), ..staff }).await.unwrap();
    assert_eq!(taken(bay.desk.hand_over("LB", pin("LB")).await), None);
    let last = bay.desk.let_go("MT", secret(PASSPHRASE), "MT").await;
    assert_eq!(code(last), "last-supervisor", "somebody must be left to keep the list");
}

/// The supervisor who was not at the car finds jobs by who, what, when and whether they departed, and what a person did.
#[tokio::test]
async fn jobs_are_found_and_a_persons_record_is_counted() {
    let mut bay = begun().await;
    lead_to(&mut bay, "walk.tyres").await;
    bay.ask("RO", Wish::Reopen { step: "intake.car".into(), reason: "a wrong paper".into() }).await.unwrap();
    bay.ask("RO", Wish::SetAside).await.unwrap();
    bay.clock.pass(3 * 24 * 3600);
    take_over(&mut bay, "LB").await;
    bay.ask("LB", Wish::Begin { car: "Grey saloon".into(), practice: None }).await.unwrap();

    let found = async |filter: JobFilter| {
        let view = bay.desk.review_view_with(None, &filter).await.unwrap();
        view.jobs.iter().map(|job| job.id).collect::<Vec<_>>()
    };
    let all = || JobFilter::default();
    assert_eq!(found(all()).await, [2, 1], "the newest first");
    assert_eq!(found(JobFilter { car: "Grey saloon".into(), ..all() }).await, [2]);
    assert_eq!(found(JobFilter { person: "RO".into(), ..all() }).await, [1]);
    assert_eq!(found(JobFilter { person: "LB".into(), ..all() }).await, [2, 1]);
    assert_eq!(found(JobFilter { departed: true, ..all() }).await, [1], "a step was opened again");
    assert_eq!(found(JobFilter { from: "2026-03-04".into(), ..all() }).await, [2]);
    assert_eq!(found(JobFilter { until: "2026-03-04".into(), ..all() }).await, [1]);
    let view = bay.desk.review_view(None).await.unwrap();
    assert_eq!(view.cars, ["Grey saloon", "Practice coupe 2"], "what there is to choose from");
    assert_eq!(view.persons, ["LB", "RO"]);

    let record = bay.desk.person_record("RO").await.unwrap();
    assert_eq!(record.jobs.len(), 1);
    let intake = record.stages.iter().find(|stage| stage.title == "Intake").unwrap();
    assert!(intake.done >= 10 && intake.held == 0, "{record:?}");
    assert_eq!(bay.desk.person_record("MT").await.unwrap().stages, [], "MT did nothing yet");
    assert!(bay.desk.verify(1).await.is_ok(), "the list of jobs is made of the record and of nothing else");
}

/// What nothing rests on is corrected at the desk too; a job that nobody has open as well.
#[tokio::test]
async fn a_text_is_corrected_at_the_desk_by_pin() {
    let mut bay = begun().await;
    lead_to(&mut bay, "walk.tyres").await;
    let job = bay.job();
    let view = bay.desk.review_view(Some(job)).await.unwrap();
    let row = view.job.unwrap().entries.into_iter().find(|row| !row.texts.is_empty()).expect("a text of the intake");
    let text = row.texts[0].clone();
    bay.ask("RO", Wish::SetAside).await.unwrap();
    let ask = |pin: Secret, revision| CorrectAsk {
        job,
        revision,
        by: "LB".into(),
        pin,
        entry: row.number,
        key: text.key.clone(),
        text: "another word".into(),
        reason: "a slip of the pen".into(),
    };
    let wrong = bay.desk.correct(ask(secret("1111222"), view.revision)).await.unwrap_err();
    assert_eq!(wrong.code, "wrong-pin");
    assert_eq!(bay.desk.correct(ask(pin("LB"), view.revision - 1)).await.unwrap_err().code, "stale");
    let after = bay.desk.correct(ask(pin("LB"), view.revision)).await.unwrap().job.unwrap();
    let last = after.entries.last().unwrap();
    assert!(last.entered.contains("another word") && last.note == "a slip of the pen", "{last:?}");
    let corrected = after.entries.iter().find(|one| one.number == row.number).unwrap();
    assert!(corrected.note.contains(&format!("entry {}", last.number)), "the one names the other: {}", corrected.note);
    assert_eq!(corrected.texts[0].text, "another word", "it would be corrected from here on");
}
