//! The list of people, for the windows at the car and at the desk.

use super::step::Choice;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// Who there is, and who is at the car.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PeopleView {
    /// False while the book knows nobody: then people sign on by name, and a first supervisor can be made.
    pub authenticates: bool,
    /// What that means, and what to do.
    pub says: String,
    /// Initials of whoever is at the car by PIN; nobody else may act there until they take over.
    pub at_car: Option<String>,
    /// In how many seconds the PIN is asked for again if nothing is done at the car.
    #[ts(type = "number | null")]
    pub asks_again_s: Option<i64>,
    /// Everybody in the list, by initials.
    pub people: Vec<PersonRow>,
    /// The stages that a trainee may be let do alone.
    pub stages: Vec<Choice>,
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
    /// The same in words; empty for other ranks.
    pub alone_says: String,
    /// True when they may no longer sign on.
    pub left: bool,
    /// Fingerprint of a supervisor's key.
    pub fingerprint: Option<String>,
    /// How long the next try of a PIN has to wait, s; 0 when it need not.
    #[ts(type = "number")]
    pub wait_s: i64,
}
