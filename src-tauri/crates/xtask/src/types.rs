//! Writing again what is generated and committed: types, schema, and the pictures of the model.

use crate::call::{self, Done};

/// Writes the windows' types into `ui/src/generated` and the procedure's schema into `procedures`.
///
/// The test that fails when they differ is the one that writes them: there is one list of what is generated.
///
/// # Errors
/// When the test package does not build, or a file cannot be written.
pub fn write() -> Done {
    by_its_test("generated")
}

/// Draws the pictures of `docs/model.md` and prints the figures that its text has.
///
/// # Errors
/// As [`write`].
pub fn pictures() -> Done {
    by_its_test("pictures")
}

fn by_its_test(test: &str) -> Done {
    let mut cargo = call::cargo();
    cargo.args(["test", "--package", "bayhand-tests", "--test", test, "--", "--nocapture"]);
    call::run(cargo.env("BAYHAND_WRITE_GENERATED", "1"))
}
