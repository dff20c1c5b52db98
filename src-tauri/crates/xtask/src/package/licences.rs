//! The copyright file: the licences of all that is compiled in.
//!
//! Vite writes those of the pages' libraries, `cargo-about` those of the Rust ones. Each Rust library that `cargo tree` names
//! must be named there too.

use super::read;
use crate::call::{self, Done};
use crate::run::APP_FEATURES;
use crate::ui::modified;
use std::fs;
use std::process::Command;

/// What gathers the licences of the Rust libraries, from its own registry, and its version.
const GATHERER: (&str, &str) = ("cargo-about", "0.9.3");

/// The whole of it.
///
/// # Errors
/// In words: what could not be read or gathered, or which library has no licence in it.
pub fn copyright() -> Done<String> {
    let crates = crates()?;
    let missing = missing(&linked()?, &crates);
    if !missing.is_empty() {
        return Err(format!("No licence was gathered for {}.", missing.join(", ")));
    }
    Ok(read("src-tauri/package/copyright")?
        .replace("{own}", &read("LICENSE-MIT")?)
        .replace("{atkinson}", &read("src-tauri/crates/sheet/fonts/AtkinsonHyperlegibleNext-OFL.txt")?)
        .replace("{dejavu}", &read("src-tauri/crates/sheet/fonts/DejaVu-LICENSE.txt")?)
        .replace("{pages}", &read("ui/dist/licences.md")?)
        .replace("{crates}", &crates))
}

/// Licences of the Rust libraries, each text with the names and versions of those it holds for. Gathering reads every file of
/// every library, which takes minutes, so what was gathered is kept until the libraries change.
fn crates() -> Done<String> {
    let root = call::root();
    let told_by = ["Cargo.lock", "src-tauri/package/about.toml", "src-tauri/package/licences.hbs"];
    let changed = told_by.iter().filter_map(|file| modified(&root.join(file))).max();
    let kept = call::target()?.join("package/licences-of-crates.txt");
    if modified(&kept) < changed {
        let gathered = gather()?;
        fs::write(&kept, gathered).map_err(|error| format!("{} could not be written: {error}.", kept.display()))?;
    }
    fs::read_to_string(&kept).map_err(|error| format!("{} could not be read: {error}.", kept.display()))
}

fn gather() -> Done<String> {
    let (name, version) = GATHERER;
    let tools = call::target()?.join("tools");
    let gatherer = tools.join("bin").join(name);
    if !gatherer.is_file() {
        let mut install = call::cargo();
        install.args(["install", name, "--version", version, "--locked", "--features", "cli", "--root"]);
        call::run(install.arg(&tools))?;
    }
    // The command line links nothing that the app does not.
    let mut gather = Command::new(gatherer);
    gather.current_dir(call::root());
    gather.args(["about", "generate", "--locked", "--fail", "--features", "custom-protocol"]);
    gather.args(["--manifest-path", "src-tauri/Cargo.toml", "--config", "src-tauri/package/about.toml"]);
    call::told(gather.arg("src-tauri/package/licences.hbs"))
}

/// The libraries of others that the programs are made of, as `name version`.
fn linked() -> Done<Vec<String>> {
    let mut tree = call::cargo();
    tree.args(["tree", "--locked", "--package", "bayhand", "--package", "bayhand-cli", "--features", APP_FEATURES]);
    let told = call::told(tree.args(["--edges", "normal,no-proc-macro", "--prefix", "none", "--format", "{p}"]))?;
    let mut linked: Vec<String> = told.lines().filter_map(foreign).collect();
    linked.sort();
    linked.dedup();
    if linked.is_empty() { Err("cargo tree named no library.".to_owned()) } else { Ok(linked) }
}

/// `name version` of a line such as `serde v1.0.2 (proc-macro)`; none for a library of ours, behind which its folder stands.
fn foreign(line: &str) -> Option<String> {
    let (name, rest) = line.split_once(" v")?;
    let version = rest.split(' ').next()?;
    (!rest.contains("(/")).then(|| format!("{name} {version}"))
}

/// Those of `linked` that no line of `licences` names.
fn missing(linked: &[String], licences: &str) -> Vec<String> {
    let named = |library: &&String| !licences.lines().any(|line| line.trim() == library.as_str());
    linked.iter().filter(named).cloned().collect()
}

#[cfg(test)]
mod tests {
    use super::{foreign, missing};

    #[test]
    fn libraries_of_others_are_told_from_ours() {
        assert_eq!(foreign("serde v1.0.228"), Some("serde 1.0.228".to_owned()));
        assert_eq!(foreign("serde_derive v1.0.228 (proc-macro) (*)"), Some("serde_derive 1.0.228".to_owned()));
        assert_eq!(foreign("bayhand-job v0.1.0 (/some/where/job)"), None);
        assert_eq!(foreign(""), None);
    }

    #[test]
    fn a_library_without_a_licence_is_named() {
        let linked = ["serde 1.0.228", "serde 1.0.2"].map(str::to_owned);
        assert_eq!(missing(&linked, "MIT License, for\n  serde 1.0.228\n"), ["serde 1.0.2"]);
        assert_eq!(missing(&linked, "  serde 1.0.2\n  serde 1.0.228\n"), [""; 0]);
    }
}
