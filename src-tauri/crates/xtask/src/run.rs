//! Setting up, building and opening the app.

use crate::call::{self, Done};
use crate::{system, ui};
use std::process::Command;

/// What cargo is told wherever the app is built, so that one build serves running and testing.
pub const APP_FEATURES: &str = "bayhand/custom-protocol";

/// Sets up what is missing, builds the pages and the app, and opens it with `arguments`.
///
/// # Errors
/// In words, when something is missing or does not build, or when the app ends with a failure.
pub fn run(arguments: &[&str]) -> Done {
    system::prepare(system::For::Running)?;
    // The pages first: they are embedded when the app compiles.
    ui::install()?;
    ui::build()?;
    call::run(call::cargo().args(["build", "--workspace", "--bin", "bayhand", "--features", APP_FEATURES]))?;
    call::run(Command::new(call::built("bayhand")?).args(arguments))
}
