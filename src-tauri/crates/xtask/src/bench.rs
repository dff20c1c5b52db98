//! The benchmarks: one of them, or all in one table beside what each is compared with.
//!
//! - The planner: time, worst of many, the race against a general solver, rounds until inside.
//! - The passes that an axle takes whose angles are out; what the record costs over doing the same barely.
//! - [`windows`]: what our windows cost beside empty ones. The table of the voices. [`table`]: all of it in one table.

mod table;
mod windows;

use crate::call::{self, Done};
use crate::screen;
use std::ffi::OsString;
use std::path::PathBuf;
use std::process::{Command, Stdio};
use table::Table;

const PLANNER: &str = "bayhand-planner";

/// Benchmarks that cargo runs alone: name, package, what cargo calls it.
const OF_CARGO: [(&str, &str, &str); 5] = [
    ("plan", PLANNER, "plan"),
    ("worst", PLANNER, "worst"),
    ("rounds", PLANNER, "rounds"),
    ("align", "bayhand-job", "align"),
    ("record", "bayhand-jobbook", "ratios"),
];

/// The general solver that the race is against, as its package index names it.
const SOLVER: &str = "pyscipopt==6.3.0";

/// Runs the benchmark of this name and shows what it says; without a name all of them, and one table of what they said.
///
/// # Errors
/// In words: what did not build or run, an unknown name, a limit that was not kept, an optimum that differs from the
/// solver's.
pub fn bench(only: Option<&str>) -> Done {
    match only {
        None => all(),
        Some("solver") => race(&mut |_| ()),
        Some("windows") => {
            let mut table = Table::default();
            windows::windows(&mut table)?;
            println!("\n{}", table.text());
            Ok(())
        }
        Some(name) => match OF_CARGO.iter().find(|(known, ..)| *known == name) {
            Some((_, package, bench)) => call::run(&mut of_cargo(package, bench)),
            None => Err(format!(
                "`{name}` is none of {}, solver, windows and voice.",
                OF_CARGO.map(|(name, ..)| name).join(", ")
            )),
        },
    }
}

/// Every benchmark that needs nothing but this machine; one that fails does not keep the others from running.
fn all() -> Done {
    let mut table = Table::default();
    let mut failed = Vec::new();
    for (name, package, bench) in OF_CARGO {
        let mut one = Table::default();
        if let Err(says) = call::run_reading(&mut of_cargo(package, bench), |line| one.read(line)) {
            failed.push(format!("{name}: {says}"));
        }
        table.add(one);
    }
    if let Err(says) = race(&mut |line| table.read(line)) {
        failed.push(format!("solver: {says}"));
    }
    match screen::hindrance() {
        Some(says) => table.not_run("windows", &says),
        None => {
            if let Err(says) = windows::windows(&mut table) {
                failed.push(format!("windows: {says}"));
            }
        }
    }
    table.not_run("voice", "needs a folder of test speech: cargo xtask bench voice FOLDER");
    println!("\n{}", table.text());
    if failed.is_empty() { Ok(()) } else { Err(failed.join("\n")) }
}

/// The table of the voices, from a folder of test speech, and before it how long a reaction takes; `words` are the folder and the
/// voices wanted.
///
/// # Errors
/// In words: no model, no folder, or what did not build or run.
pub fn voice(words: &[&str]) -> Done {
    crate::voice::voice()?;
    // Cargo runs a benchmark in its package's folder.
    let words = words.iter().enumerate().map(|(n, word)| match std::path::absolute(word) {
        Ok(folder) if n == 0 => folder.into_os_string(),
        _ => (*word).into(),
    });
    let words: Vec<OsString> = words.collect();
    for bench in ["reaction", "voice"] {
        call::run(of_cargo("bayhand-speech", bench).arg("--").args(&words))?;
    }
    Ok(())
}

fn of_cargo(package: &str, bench: &str) -> Command {
    let mut cargo = call::cargo();
    cargo.args(["bench", "--package", package, "--bench", bench]);
    cargo
}

/// Gives the same problems to the planner and to the solver, which runs in a throwaway Python environment; `line` gets what
/// is said.
fn race(line: &mut dyn FnMut(&str)) -> Done {
    let python = environment()?;
    let mut ours = of_cargo(PLANNER, "solver")
        .stdout(Stdio::piped())
        .spawn()
        .map_err(|error| format!("cargo could not be started: {error}."))?;
    let Some(problems) = ours.stdout.take() else { return Err("What cargo says cannot be read.".to_owned()) };
    let script = call::root().join("src-tauri/crates/planner/benches/solver.py");
    let compared = call::run_reading(Command::new(python).arg(script).stdin(problems), line);
    let status = ours.wait().map_err(|error| format!("cargo was lost: {error}."))?;
    if status.success() { compared } else { Err(format!("The planner's side of the race failed ({status}).")) }
}

/// A Python with the solver in it, made beside the built programs on the first run.
fn environment() -> Done<PathBuf> {
    if !call::on_path("python3") {
        return Err("The race against a general solver needs python3 with its venv module.".to_owned());
    }
    let folder = call::built("solver-environment")?;
    let programs = folder.join(if cfg!(windows) { "Scripts" } else { "bin" });
    let python = programs.join("python");
    if !python.exists() {
        call::run(Command::new("python3").args(["-m", "venv"]).arg(&folder))?;
    }
    call::run(Command::new(&python).args(["-m", "pip", "install", "--quiet", SOLVER]))?;
    Ok(python)
}
