//! Where the model's file lies when nobody names another place.

use std::ffi::OsString;
use std::path::PathBuf;

/// Name of the file in a folder of ours.
const FILE: &str = "voice/tiny-en.model";

/// This person's own place for it, by the convention of the system (on Linux `~/.local/share/bayhand`), beside the job book.
/// `None` when the system names no home folder.
pub fn own() -> Option<PathBuf> {
    directories::ProjectDirs::from("org", "bayhand", "Bayhand").map(|folders| folders.data_dir().join(FILE))
}

/// The person's own where there is one, else the one that a package brought for everybody; the person's own place where
/// there is neither. `None` when there is neither and the system names no home folder.
pub fn usual() -> Option<PathBuf> {
    let own = own();
    first(own.clone().into_iter().chain(shared(std::env::var_os("XDG_DATA_DIRS")))).or(own)
}

/// The places for everybody on Linux, in the order of the XDG base directory specification; elsewhere there are none.
fn shared(folders: Option<OsString>) -> Vec<PathBuf> {
    if !cfg!(target_os = "linux") {
        return Vec::new();
    }
    let folders = folders.filter(|folders| !folders.is_empty()).unwrap_or("/usr/local/share:/usr/share".into());
    // The specification has paths that do not begin at the root passed over.
    std::env::split_paths(&folders)
        .filter(|folder| folder.is_absolute())
        .map(|f| f.join("bayhand").join(FILE))
        .collect()
}

/// The first place at which there is a file.
fn first(places: impl IntoIterator<Item = PathBuf>) -> Option<PathBuf> {
    places.into_iter().find(|place| place.is_file())
}

#[cfg(test)]
mod tests {
    use super::{first, shared};
    use std::path::{Path, PathBuf};

    #[test]
    #[cfg(target_os = "linux")]
    fn a_package_brings_it_for_everybody() {
        let usual = [
            Path::new("/usr/local/share/bayhand/voice/tiny-en.model"),
            Path::new("/usr/share/bayhand/voice/tiny-en.model"),
        ];
        assert_eq!(shared(None), usual);
        assert_eq!(shared(Some("".into())), usual);
        assert_eq!(shared(Some("here:/opt/data".into())), [Path::new("/opt/data/bayhand/voice/tiny-en.model")]);
    }

    #[test]
    fn the_first_that_is_there_is_taken() {
        let folder = tempfile::tempdir().expect("a folder for a test");
        let [own, shared]: [PathBuf; 2] = ["own", "shared"].map(|name| folder.path().join(name));
        let found = || first([own.clone(), shared.clone()]);
        assert_eq!(found(), None);
        std::fs::write(&shared, "model").expect("a file for a test");
        assert_eq!(found().as_ref(), Some(&shared));
        std::fs::write(&own, "model").expect("a file for a test");
        assert_eq!(found().as_ref(), Some(&own));
    }
}
