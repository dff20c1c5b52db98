//! Every part of the tests in order, timed.

use crate::call::{self, Done};
use crate::count::Count;
use crate::run::APP_FEATURES;
use crate::screen::Screen;
use crate::{fresh_root, package, system, ui, voice};
use std::process::Command;
use std::time::{Duration, Instant};

/// How much is tested.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// What every change must pass.
    Usual,
    /// The same tests with their long forms: more kills, more screens, more random cars.
    Long,
}

/// The parts so far, with how long each took.
#[derive(Default)]
struct Table(Vec<(&'static str, Duration)>);

impl Table {
    fn part(&mut self, name: &'static str, work: impl FnOnce() -> Done) -> Done {
        println!("\n==== {name}");
        let began = Instant::now();
        let done = work().map_err(|says| format!("RED: {name}. {says}"));
        self.0.push((name, began.elapsed()));
        done
    }

    fn print(&self) {
        println!("\nminutes  part");
        let total = self.0.iter().map(|(_, took)| *took).sum::<Duration>();
        for (name, took) in self.0.iter().copied().chain([("all of it", total)]) {
            println!("{:7.1}  {name}", took.as_secs_f64() / 60.0);
        }
    }
}

/// Runs all tests, stops at the first red part, and prints the minutes of each.
///
/// # Errors
/// In words: which part is red, or what is missing.
pub fn test(form: Form) -> Done {
    let mut table = Table::default();
    let mut count = Count::default();
    let done = parts(form, &mut table, &mut count);
    table.print();
    // A part that is red without a failed test stopped tests from running; then a count would say too little.
    if done.is_ok() || count.failed > 0 {
        println!("\n{} passed, {} failed", count.passed, count.failed);
    }
    done
}

fn parts(form: Form, table: &mut Table, count: &mut Count) -> Done {
    // Every call of cargo names the whole workspace and the same features, so that each library is built once.
    let with = |features: &'static str| {
        move |command: &str| {
            let mut cargo = call::cargo();
            cargo.args([command, "--workspace", "--features", features]);
            if form == Form::Long {
                cargo.env("BAYHAND_LONG", "1");
            }
            cargo
        }
    };
    let cargo = with(APP_FEATURES);
    let cargo_windows = with("bayhand/custom-protocol,bayhand-tests/windows");

    table.part("set-up", || system::prepare(system::For::Testing).and_then(|()| ui::install()))?;
    table.part("format", || call::run(call::cargo().args(["fmt", "--all", "--check"])))?;
    table.part("pages: types", ui::check)?;
    table.part("pages: tests", || ui::test(count))?;
    table.part("pages: build", ui::build)?;
    table.part("build", || call::run(cargo("build").arg("--all-targets")))?;
    table.part("lints", || call::run(cargo_windows("clippy").args(["--all-targets", "--", "-D", "warnings"])))?;
    table.part("tests", || counted(cargo("test").arg("--no-fail-fast").env("BAYHAND_VIEWS", ui::views()), count))?;
    // The model is fetched once. Where it cannot be, the rest of the tests still counts.
    match voice::voice() {
        Ok(()) => table.part("voice", || {
            let mut tests = cargo("test");
            counted(tests.args(["--no-fail-fast", "--test", "voice*", "--", "--ignored"]), count)
        })?,
        Err(says) => println!("\n==== voice: NOT RUN. {says}"),
    }
    // After the tests: one of them writes the views that are drawn here.
    match ui::browser() {
        Some(browser) => table.part("pages: drawn", || ui::drawn(&browser, form == Form::Long, count))?,
        None => {
            println!("\n==== pages: drawn: NOT RUN, no browser is here (chromium, or one that BAYHAND_BROWSER names)")
        }
    }
    table.part("window tests", || {
        let screen = Screen::start()?;
        let mut tests = cargo_windows("test");
        tests.args(["--no-fail-fast", "--test", "windows*", "--", "--test-threads", "1"]);
        tests
            .env("DISPLAY", screen.display())
            .env_remove("WAYLAND_DISPLAY")
            .env("BAYHAND_APP", call::built("bayhand")?);
        counted(&mut tests, count)
    })?;
    if form == Form::Long {
        match fresh_root::hindrance() {
            None => table.part("fresh-root install", || fresh_root::install_and_open(&package::package()?))?,
            Some(says) => println!("\n==== fresh-root install: NOT RUN. {says}"),
        }
    }
    Ok(())
}

fn counted(command: &mut Command, count: &mut Count) -> Done {
    call::run_reading(command, |line| count.read(line))
}
