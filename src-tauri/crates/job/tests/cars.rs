//! The book by its cars: which visits are whose, what was learned and how old that is, how a car was handed over.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::{Ask, PracticeAsk, Wish};
use common::{Bay, MORNING, assert_refusal, sign_on};

const DAY_S: u32 = 24 * 3600;

/// Ends the open job by the supervisor's seal, and sets it aside.
async fn seal(bay: &mut Bay) {
    bay.lead_to("review.seal").await;
    let ask = Ask { revision: bay.view.revision, by: "MT".into(), wish: Wish::Seal };
    bay.desk.review_act(bay.job(), ask).await.unwrap();
    bay.view = bay.desk.step_view().await;
    bay.ask("", Wish::SetAside).await.unwrap();
}

/// Begins another practice job under this name, and signs people on.
async fn begin(bay: &mut Bay, car: &str, seed: u64) {
    bay.ask("", Wish::Begin { car: car.into(), practice: Some(PracticeAsk::sound(seed)) }).await.unwrap();
    for (initials, rank) in [("RO", "trainee"), ("LB", "technician"), ("MT", "supervisor")] {
        bay.ask("", sign_on(initials, "Somebody", rank)).await.unwrap();
    }
}

/// A number with its sign at the beginning of '+12.3 kg ± 0.4 kg', and the one behind the sign ±.
fn with_u(text: &str) -> (f64, f64) {
    let number = |part: &str| part.trim().split(' ').next().unwrap().parse::<f64>().unwrap();
    let (value, u) = text.split_once('±').unwrap();
    (number(value), number(u))
}

#[tokio::test]
async fn a_new_book_says_what_to_do_first() {
    let bay = Bay::empty().await;
    let cars = bay.desk.cars("").await.unwrap();
    assert!(cars.cars.is_empty());
    assert!(cars.says.unwrap().contains("Begin a job at the car"));
}

#[tokio::test]
async fn a_car_is_found_with_its_visits_and_with_what_was_learned_of_it() {
    let mut bay = Bay::practice(1).await;
    let first = bay.job();
    let fresh = bay.desk.car(first).await.unwrap();
    assert_eq!(fresh.learned, None, "nothing is known before anything was read");
    assert!(fresh.left.is_empty() && fresh.left_says.contains("Nothing was handed over yet"), "{}", fresh.left_says);
    seal(&mut bay).await;
    bay.clock.pass(12 * DAY_S);
    begin(&mut bay, "Practice coupe 1", 1).await;
    let second = bay.job();
    bay.ask("", Wish::SetAside).await.unwrap();
    // Another simulated car of the same name is another car.
    begin(&mut bay, "Practice coupe 1", 2).await;
    let other = bay.job();

    let cars = bay.desk.cars("").await.unwrap();
    let ids: Vec<i64> = cars.cars.iter().map(|car| car.id).collect();
    assert_eq!(ids, [other, first], "each by its first job, the one that was here last first");
    assert!(cars.cars[1].says.contains("Visits: 2"), "{}", cars.cars[1].says);

    let car = bay.desk.car(first).await.unwrap();
    let visits: Vec<(i64, &str)> = car.visits.iter().map(|job| (job.id, job.state.as_str())).collect();
    assert_eq!(visits, [(second, "working"), (first, "sealed")], "the newest first");
    assert!(car.visits[1].says.contains("LB, MT, RO"), "who signed on: {}", car.visits[1].says);

    let learned = car.learned.unwrap();
    let day = MORNING.split('T').next().unwrap();
    assert!(learned.says.contains(day) && learned.says.contains("days ago: 12"), "its age: {}", learned.says);
    assert_eq!(learned.collars.len(), 4, "each collar");
    for collar in &learned.collars {
        let ((load_kg, u_kg), (rise_mm, u_mm)) = (with_u(&collar.load), with_u(&collar.height));
        assert!(load_kg > 0.0 && rise_mm > 0.0, "raising a corner loads it and lifts it: {collar:?}");
        assert!(0.0 < u_kg && u_kg < load_kg && u_mm < rise_mm, "known, and not for certain: {collar:?}");
    }
    assert!(learned.factors.iter().any(|factor| factor.name.contains("Spring rate, front left")), "{learned:?}");

    let left: Vec<&str> = car.left.iter().map(|table| table.title.as_str()).collect();
    assert_eq!(left, ["Figures", "Corners: load, height", "Angles", "Tyre pressures"]);
    assert!(car.left_says.contains(&format!("job {first}")), "the sealed one: {}", car.left_says);
    // The same as stands on its sheet.
    assert_eq!(car.left, bay.desk.handover(first).await.unwrap().tables);
    let none = bay.desk.car(other).await.unwrap();
    assert_eq!(none.learned, None, "what was learned of the one says nothing of the other");
}

#[tokio::test]
async fn cars_are_searched_by_name_person_and_job() {
    let mut bay = Bay::practice(3).await;
    let first = bay.job();
    bay.ask("", Wish::SetAside).await.unwrap();
    bay.ask("", Wish::Begin { car: "Green saloon".into(), practice: Some(PracticeAsk::sound(4)) }).await.unwrap();
    bay.ask("", sign_on("ZK", "Somebody Else", "technician")).await.unwrap();
    let second = bay.job();
    for (search, found) in [
        ("", vec![second, first]),
        ("saloon", vec![second]),
        ("PRACTICE", vec![first]),
        (" zk ", vec![second]),
        ("z", vec![]),
        (&second.to_string(), vec![second]),
    ] {
        let cars = bay.desk.cars(search).await.unwrap();
        assert_eq!(cars.cars.iter().map(|car| car.id).collect::<Vec<_>>(), found, "{search:?}");
        assert_eq!(
            cars.says.is_some(),
            found.is_empty(),
            "{search:?}: that nothing was found is said: {:?}",
            cars.says
        );
    }
    let refused = bay.desk.car(second + 1).await.unwrap_err();
    assert_refusal(&refused, "another number", "no-such-car", &["no such car"]);
}
