//! The benchmarks of the planner: time, worst of many, the race against a general solver, rounds until inside; the
//! passes that an axle takes whose angles are out; and the table of the voices.

use crate::call::{self, Done};
use std::path::PathBuf;
use std::process::{Command, Stdio};

const PLANNER: &str = "bayhand-planner";

/// The general solver that the race is against, as its package index names it.
const SOLVER: &str = "pyscipopt==6.3.0";

/// Runs the benchmarks of this name, or all of them, and prints their tables.
///
/// # Errors
/// In words: what did not build or run, an unknown name, an optimum that differs from the solver's.
pub fn bench(only: Option<&str>) -> Done {
    match only {
        None => {
            for name in ["plan", "worst", "rounds"] {
                one(name)?;
            }
            align()?;
            race()
        }
        Some("align") => align(),
        Some("solver") => race(),
        Some(name @ ("plan" | "worst" | "rounds")) => one(name),
        Some(other) => Err(format!("`{other}` is none of plan, worst, rounds, align and solver.")),
    }
}

/// The table of the voices, from a folder of test speech; `words` are the folder and the voices wanted.
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
    call::run(call::cargo().args(["bench", "--package", "bayhand-speech", "--bench", "voice", "--"]).args(words))
}

fn cargo_bench(name: &str) -> Command {
    let mut cargo = call::cargo();
    cargo.args(["bench", "--package", PLANNER, "--bench", name]);
    cargo
}

fn align() -> Done {
    call::run(call::cargo().args(["bench", "--package", "bayhand-job", "--bench", "align"]))
}

fn one(name: &str) -> Done {
    call::run(&mut cargo_bench(name))
}

/// Gives the same problems to the planner and to the solver, which runs in a throwaway Python environment.
fn race() -> Done {
    let python = environment()?;
    let mut ours = cargo_bench("solver")
        .stdout(Stdio::piped())
        .spawn()
        .map_err(|error| format!("cargo could not be started: {error}."))?;
    let Some(problems) = ours.stdout.take() else { return Err("What cargo says cannot be read.".to_owned()) };
    let script = call::root().join("src-tauri/crates/planner/benches/solver.py");
    let compared = call::run(Command::new(python).arg(script).stdin(problems));
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
