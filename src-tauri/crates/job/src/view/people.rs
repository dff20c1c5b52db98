//! The list of people, for the windows at the car and at the desk.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// Who there is, and who is at the car.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PeopleView {
    /// False while the book knows nobody: then people sign on by name, and a first supervisor can be made.
    pub authenticates: bool,
    /// What that means, and what to do.
    pub says: String,
    /// Initials of whoever is at the car by PIN; nobody else may act there until they take over.
    pub at_car: Option<String>,
    /// Everybody in the list, by initials.
    pub people: Vec<PersonRow>,
}

/// Somebody in the list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PersonRow {
    /// Initials.
    pub initials: String,
    /// Name.
    pub name: String,
    /// Code of the rank.
    pub rank: String,
    /// 'RO, trainee'.
    pub label: String,
    /// What a trainee may do alone: codes of steps or stages.
    pub alone: Vec<String>,
    /// True when they may no longer sign on.
    pub left: bool,
    /// Fingerprint of a supervisor's key.
    pub fingerprint: Option<String>,
    /// How long the next try of a PIN has to wait, s; 0 when it need not.
    #[ts(type = "number")]
    pub wait_s: i64,
}
