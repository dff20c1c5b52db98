//! The people of the practice bay, as whoever keeps a book would enter them. Their secrets stand here for all to read: a
//! book that knows them is for practice only.

use bayhand_job::ask::{PersonAsk, Refused};
use bayhand_job::{Desk, Secret};

/// One of the people, with their PIN.
struct Hand {
    initials: &'static str,
    name: &'static str,
    rank: &'static str,
    pin: &'static str,
}

/// Who begins the job and does most of it.
pub const TRAINEE: &str = "RO";
/// Who looks after them, and is the second person.
pub const TECHNICIAN: &str = "LB";
/// Who checks and seals, and never works on the car.
pub const SUPERVISOR: &str = "MT";
const PASSPHRASE: &str = "rain on a tin roof";

const CREW: [Hand; 3] = [
    Hand { initials: SUPERVISOR, name: "Morgan Thwaite", rank: "supervisor", pin: "2468" },
    Hand { initials: TECHNICIAN, name: "Lee Barrow", rank: "technician", pin: "9753" },
    Hand { initials: TRAINEE, name: "Robin Oakes", rank: "trainee", pin: "1357" },
];

/// Enters those who are not in the list yet. A book that knows other people only has no supervisor here who could.
///
/// # Errors
/// A refusal in words.
pub async fn enrol(desk: &Desk) -> Result<(), Refused> {
    let known = desk.people().await?;
    for Hand { initials, name, rank, pin } in CREW {
        if known.people.iter().any(|person| person.initials == initials) {
            continue;
        }
        let person = PersonAsk { initials: initials.into(), name: name.into(), rank: rank.into(), alone: Vec::new() };
        if initials == SUPERVISOR && !known.authenticates {
            desk.first_supervisor(person, Secret::new(pin), passphrase()).await?;
        } else {
            desk.enrol(SUPERVISOR, passphrase(), person, Secret::new(pin)).await?;
        }
    }
    Ok(())
}

/// Whoever works on a practice car; nobody's is empty.
pub fn pin(initials: &str) -> Secret {
    Secret::new(CREW.iter().find(|hand| hand.initials == initials).map_or("", |hand| hand.pin))
}

/// What opens the supervisor's key.
pub fn passphrase() -> Secret {
    Secret::new(PASSPHRASE)
}

/// Who they are and what they keep secret, in a line: whoever opens the book in the windows needs it.
pub fn told() -> String {
    let each = CREW.map(|hand| format!("{} ({}) PIN {}", hand.initials, hand.rank, hand.pin));
    format!("people: {}; passphrase of {SUPERVISOR}: {PASSPHRASE}", each.join(", "))
}
