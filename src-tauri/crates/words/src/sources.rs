//! The files of each language, embedded in the program.

/// A file of texts.
#[derive(Clone, Copy, Debug)]
pub struct File {
    /// Where it stands, from the top of the repository.
    pub path: &'static str,
    /// What it says, in Fluent syntax.
    pub text: &'static str,
}

/// A list of files, each by its path from the top of the repository.
macro_rules! files {
    ($($path:literal),+ $(,)?) => {
        &[$(File { path: $path, text: include_str!(concat!("../../../../", $path)) }),+]
    };
}

/// English: the texts of the procedure, then those of the program.
pub const ENGLISH: &[File] = files![
    "procedures/text/en/intake.ftl",
    "procedures/text/en/preparation.ftl",
    "procedures/text/en/balance.ftl",
    "procedures/text/en/handover.ftl",
    "procedures/text/en/moves.ftl",
    "procedures/text/en/hazards.ftl",
    "procedures/text/en/entries.ftl",
    "procedures/text/en/gates.ftl",
    "procedures/text/en/needs.ftl",
    "src-tauri/crates/words/text/en/terms.ftl",
    "src-tauri/crates/words/text/en/job.ftl",
    "src-tauri/crates/words/text/en/record.ftl",
    "src-tauri/crates/words/text/en/book.ftl",
    "src-tauri/crates/words/text/en/coach.ftl",
    "src-tauri/crates/words/text/en/ui.ftl",
];

/// German: the texts of the procedure, then those of the program.
pub const GERMAN: &[File] = files![
    "procedures/text/de/intake.ftl",
    "procedures/text/de/preparation.ftl",
    "procedures/text/de/balance.ftl",
    "procedures/text/de/handover.ftl",
    "procedures/text/de/moves.ftl",
    "procedures/text/de/hazards.ftl",
    "procedures/text/de/entries.ftl",
    "procedures/text/de/gates.ftl",
    "procedures/text/de/needs.ftl",
    "src-tauri/crates/words/text/de/terms.ftl",
    "src-tauri/crates/words/text/de/job.ftl",
    "src-tauri/crates/words/text/de/record.ftl",
    "src-tauri/crates/words/text/de/book.ftl",
    "src-tauri/crates/words/text/de/coach.ftl",
    "src-tauri/crates/words/text/de/ui.ftl",
];
