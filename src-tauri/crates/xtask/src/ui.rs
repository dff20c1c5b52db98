//! The windows' pages: installing, checking, testing, building.

use crate::call::{self, Done};
use crate::count::Count;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::SystemTime;

/// Folders of `ui/` that are made, not written.
const MADE: [&str; 4] = ["node_modules", "dist", "dist-gallery", ".views"];

/// Installs what the lock file names, when it changed since.
///
/// # Errors
/// When npm fails.
pub fn install() -> Done {
    let ui = call::root().join("ui");
    // npm writes this file at the end of an installation.
    let installed = modified(&ui.join("node_modules/.package-lock.json"));
    if installed.is_some() && installed >= modified(&ui.join("package-lock.json")) {
        return Ok(());
    }
    call::run(npm().args(["ci", "--no-audit", "--no-fund"]))
}

/// Builds the pages, when anything of theirs changed since.
///
/// # Errors
/// When the build fails.
pub fn build() -> Done {
    let ui = call::root().join("ui");
    let built = ["step.html", "bay.html", "review.html"].map(|page| modified(&ui.join("dist").join(page)));
    let built = built.into_iter().min().flatten();
    if built.is_some() && built >= newest(&ui) {
        return Ok(());
    }
    call::run(npm().args(["run", "build"]))
}

/// Checks the types of the pages.
///
/// # Errors
/// When they do not hold.
pub fn check() -> Done {
    call::run(npm().args(["run", "check"]))
}

/// Runs the tests of the pages and counts them.
///
/// # Errors
/// When one fails.
pub fn test(count: &mut Count) -> Done {
    call::run_reading(npm().args(["run", "test"]).env("NO_COLOR", "1"), |line| count.read(line))
}

/// The folder that the Rust tests write the views of a whole job into, for the tests of the drawn pages.
pub fn views() -> PathBuf {
    call::root().join("ui/.views")
}

/// A browser that can draw the pages: the one that `BAYHAND_BROWSER` names, or one on the search path.
pub fn browser() -> Option<PathBuf> {
    let named = std::env::var_os("BAYHAND_BROWSER").map(PathBuf::from);
    named.or_else(|| ["chromium", "google-chrome"].into_iter().find_map(call::found_on_path))
}

/// Draws the pages in a browser and measures them; `long` draws every size, light and dark, in both
/// languages and sets of units.
///
/// # Errors
/// When one fails.
pub fn drawn(browser: &Path, long: bool, count: &mut Count) -> Done {
    let mut run = npm();
    run.args(["run", "pages"]).env("NO_COLOR", "1").env("BAYHAND_VIEWS", views()).env("BAYHAND_BROWSER", browser);
    if long {
        run.env("BAYHAND_LONG", "1");
    }
    call::run_reading(&mut run, |line| count.read(line))
}

fn npm() -> Command {
    let mut command = Command::new(if cfg!(windows) { "npm.cmd" } else { "npm" });
    command.current_dir(call::root().join("ui"));
    command
}

/// When a file was changed; none when there is no such file.
pub fn modified(path: &Path) -> Option<SystemTime> {
    fs::metadata(path).and_then(|metadata| metadata.modified()).ok()
}

/// When the newest written file below `folder` was changed.
fn newest(folder: &Path) -> Option<SystemTime> {
    let entries = fs::read_dir(folder).ok()?.flatten();
    let written = entries.filter(|entry| !MADE.iter().any(|made| entry.file_name() == *made)).map(|entry| entry.path());
    written.filter_map(|path| if path.is_dir() { newest(&path).max(modified(&path)) } else { modified(&path) }).max()
}
