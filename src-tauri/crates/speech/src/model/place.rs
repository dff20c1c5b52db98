//! Where the model's file lies when nobody names another place.

use std::path::PathBuf;

/// Name of the file.
const FILE: &str = "voice/tiny-en.model";

/// In the folder for this person's data by the convention of the system (on Linux `~/.local/share/bayhand`), beside the job
/// book. `None` when the system names no home folder.
pub fn usual() -> Option<PathBuf> {
    directories::ProjectDirs::from("org", "bayhand", "Bayhand").map(|folders| folders.data_dir().join(FILE))
}
