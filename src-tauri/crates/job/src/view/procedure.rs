//! The procedure that the next job begins with.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// A procedure, and whether it is known to be safe.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ProcedureView {
    /// Where it lies; none: it is the one that ships with the program.
    pub place: Option<String>,
    /// Its id, version and the beginning of its hash.
    pub title: String,
    /// Whether it is known to be safe.
    pub trust: TrustCode,
    /// That in words, and what to do.
    pub says: String,
    /// What is not as it should be, in words; empty when it is proved.
    pub found: Vec<String>,
    /// The supervisor who signed that the next job may begin with it all the same.
    pub signed_by: Option<String>,
}

/// Whether a procedure is known to be safe.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum TrustCode {
    /// The one that the program's tests have proved.
    Shipped,
    /// Another one, proved when it was looked at.
    Proved,
    /// Not proved: a supervisor signs for it, or no job begins with it.
    NotProved,
}
