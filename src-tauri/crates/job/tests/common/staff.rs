//! A book that knows its people: a supervisor, a technician and a trainee.

use super::{Bay, who};
use bayhand_job::Secret;
use bayhand_job::ask::PersonAsk;

pub const PASSPHRASE: &str = "rain on a tin roof";

pub fn secret(text: &str) -> Secret {
    Secret::new(text)
}

pub fn person(initials: &str, rank: &str, alone: &[&str]) -> PersonAsk {
    PersonAsk {
        initials: initials.into(),
        name: format!("Somebody {initials}"),
        rank: rank.into(),
        alone: alone.iter().map(|&id| id.into()).collect(),
    }
}

/// Everybody's PIN.
pub fn pin(initials: &str) -> Secret {
    secret(match initials {
        "RO" => "1357",
        "LB" => "9753",
        _ => "2468",
    })
}

/// A bay whose book knows MT (supervisor), LB (technician) and RO (trainee).
pub async fn staffed() -> Bay {
    let bay = Bay::empty().await;
    know_people(&bay).await;
    bay
}

/// The book of this bay gets to know these three.
pub async fn know_people(bay: &Bay) {
    bay.desk.first_supervisor(person("MT", "supervisor", &[]), pin("MT"), secret(PASSPHRASE)).await.unwrap();
    for (initials, rank, alone) in [("LB", "technician", &[][..]), ("RO", "trainee", &["intake", "walk.tyres"])] {
        bay.desk.enrol("MT", secret(PASSPHRASE), person(initials, rank, alone), pin(initials)).await.unwrap();
    }
}

pub async fn take_over(bay: &mut Bay, initials: &str) {
    bay.view = bay.desk.hand_over(initials, pin(initials)).await.unwrap();
}

/// Does the steps up to this one, each by the one whose step it is, who takes over first.
pub async fn lead_to(bay: &mut Bay, step: &str) {
    for _ in 0..400 {
        if bay.step().id == step {
            return;
        }
        let by = who(&bay.step().id);
        if bay.desk.people().await.unwrap().at_car.as_deref() != Some(by) {
            take_over(bay, by).await;
        }
        bay.do_step().await;
    }
    panic!("the job never comes to {step}");
}
