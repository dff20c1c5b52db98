//! Writing again what is generated from the Rust types and committed.

use crate::call::{self, Done};

/// Writes the windows' types into `ui/src/generated` and the procedure's schema into `procedures`.
///
/// The test that fails when they differ is the one that writes them: there is one list of what is generated.
///
/// # Errors
/// When the test package does not build, or a file cannot be written.
pub fn write() -> Done {
    let mut cargo = call::cargo();
    cargo.args(["test", "--package", "bayhand-tests", "--test", "generated"]).env("BAYHAND_WRITE_GENERATED", "1");
    call::run(&mut cargo)
}
