//! Where it is kept how the windows are set: `preferences.json` beside the book.

use bayhand_job::preferences::Preferences;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// The file.
pub struct PreferencesFile(PathBuf);

impl PreferencesFile {
    /// The file in `folder`.
    pub fn in_folder(folder: &Path) -> Self {
        Self(folder.join("preferences.json"))
    }

    /// What is kept; as a new installation is set when there is none, or none that can be read. A job never waits for
    /// this file.
    pub fn read(&self) -> Preferences {
        let Ok(text) = fs::read_to_string(&self.0) else { return Preferences::default() };
        serde_json::from_str(&text).unwrap_or_else(|_| {
            tracing::warn!("the settings could not be read; the windows are set as at first");
            Preferences::default()
        })
    }

    /// Keeps `preferences` for the next start. Written under another name first, so that half a file is never read.
    ///
    /// # Errors
    /// When the disk refuses.
    pub fn write(&self, preferences: &Preferences) -> io::Result<()> {
        if let Some(folder) = self.0.parent() {
            fs::create_dir_all(folder)?;
        }
        let unfinished = self.0.with_extension("json.new");
        fs::write(&unfinished, serde_json::to_string_pretty(preferences)?)?;
        fs::rename(unfinished, &self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_kept_comes_back_and_what_cannot_be_read_is_as_at_first() -> io::Result<()> {
        let folder = tempfile::tempdir()?;
        let file = PreferencesFile::in_folder(folder.path());
        assert_eq!(file.read(), Preferences::default(), "nothing was kept yet");
        let set = Preferences { pedal: Some("F13".into()), ..Preferences::default() };
        file.write(&set)?;
        assert_eq!(file.read(), set);
        fs::write(folder.path().join("preferences.json"), "{\"pedal\": 3")?;
        assert_eq!(file.read(), Preferences::default(), "a damaged file stops nobody");
        Ok(())
    }
}
