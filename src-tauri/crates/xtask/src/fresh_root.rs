//! The package on a system that has nothing but itself: installed by apt, opened, used, removed.
//!
//! `mmdebstrap` makes a Debian of the least packages in a folder, runs our script in it, and throws it away. What the package
//! does not name in its `Depends` is not there.

use crate::call::{self, Done};
use crate::screen::{self, Screen};
use std::fs;
use std::path::PathBuf;
use std::process::{Child, Command};
use std::thread;
use std::time::{Duration, Instant};

/// Title of the window that is waited for.
const TITLE: &str = "Bayhand: at the car";
/// How long making the system, installing and opening may take.
const PATIENCE: Duration = Duration::from_secs(1_500);
/// How long a window that is open may stay blank.
const DRAWING: Duration = Duration::from_secs(60);

/// Why it cannot be done here, if it cannot.
pub fn hindrance() -> Option<String> {
    let root = call::told(Command::new("id").arg("-u")).is_ok_and(|told| told.trim() == "0");
    let missing = ["mmdebstrap", "dpkg-deb", "dpkg-shlibdeps"].into_iter().find(|tool| !call::on_path(tool));
    let missing = missing.map(|tool| format!("{tool} is missing here.")).or_else(screen::hindrance);
    match (missing, release()) {
        (Some(says), _) => Some(says),
        (None, None) => Some("This system does not say which release of Debian or Ubuntu it is.".to_owned()),
        (None, Some(_)) if !root => Some("Only root may change into the fresh system.".to_owned()),
        (None, Some(_)) => None,
    }
}

/// Installs the packages on a fresh system of this machine's release, leads a practice job, and opens the app until its
/// window is drawn; the picture goes to `pictures/fresh-root.ppm` in the target folder.
///
/// # Errors
/// In words: what failed. What the fresh system said stands above.
pub fn install_and_open(packages: &[PathBuf]) -> Done {
    let release = release().ok_or("This system does not say which release it is.")?;
    let screen = Screen::start()?;
    if screen.picture(1)?.is_drawn() {
        return Err("An empty screen counts as drawn, so nothing would be shown by this.".to_owned());
    }
    let names: Vec<_> = packages.iter().map(|package| package.as_os_str().to_string_lossy()).collect();
    let mut fresh = Command::new("mmdebstrap")
        .args(["--variant=minbase", "--format=null"])
        .arg(format!("--customize-hook={}", call::root().join("src-tauri/package/fresh-root.sh").display()))
        .arg(release)
        .env("DISPLAY", screen.display())
        .env("BAYHAND_PACKAGES", names.join("\n"))
        .env("BAYHAND_SOUNDS", call::root().join("src-tauri/crates/speech/tests/data"))
        .spawn()
        .map_err(|error| format!("mmdebstrap could not be started: {error}."))?;
    let seen = see(&screen, &mut fresh);
    // The app ends with its window, after which the script goes on; where no window came, its own time runs out.
    let closed = seen.and_then(|()| screen.close(TITLE));
    let status = fresh.wait().map_err(|error| format!("mmdebstrap was lost: {error}."))?;
    closed?;
    if status.success() { Ok(()) } else { Err(format!("On the fresh system something failed ({status}); see above.")) }
}

/// Waits until the window is drawn, and keeps the picture.
fn see(screen: &Screen, fresh: &mut Child) -> Done {
    let began = Instant::now();
    let mut opened = None;
    loop {
        thread::sleep(Duration::from_millis(500));
        if let Ok(Some(status)) = fresh.try_wait() {
            return Err(format!("The fresh system ended before a window was there ({status})."));
        }
        if let Some([x, y, width, height]) = screen.window(TITLE) {
            let opened = *opened.get_or_insert_with(Instant::now);
            if screen.picture(1)?.part(x, y, width, height).is_drawn() {
                // What was drawn first is seldom all.
                thread::sleep(Duration::from_secs(3));
                return keep(screen);
            }
            if opened.elapsed() > DRAWING {
                keep(screen)?;
                return Err(format!("The window stayed blank for {} s.", DRAWING.as_secs()));
            }
        }
        if began.elapsed() > PATIENCE {
            return Err(format!("No window was there after {} s.", PATIENCE.as_secs()));
        }
    }
}

fn keep(screen: &Screen) -> Done {
    let folder = call::target()?.join("pictures");
    fs::create_dir_all(&folder).map_err(|error| format!("{} could not be made: {error}.", folder.display()))?;
    let file = folder.join("fresh-root.ppm");
    screen.picture(1)?.write(&file)?;
    println!("What stands on the screen: {}", file.display());
    Ok(())
}

/// The release's own name, such as `bookworm`.
fn release() -> Option<String> {
    let release = fs::read_to_string("/etc/os-release").ok()?;
    release.lines().find_map(|line| line.strip_prefix("VERSION_CODENAME=")).map(str::to_owned)
}
