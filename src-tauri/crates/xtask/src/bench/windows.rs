//! What our windows cost beside an empty app of the same three windows, in one run: time from start to drawn, memory, and
//! the processor while nothing happens.
//!
//! Both are release builds, started in turn on a screen on which the windows do not lie over each other. *Drawn* is the first
//! moment at which the screen was, but for a thousandth of its pixels, what it stayed. Memory is the sum of the shares (PSS)
//! of all processes of the app, those of its pages included. On a machine that does other work too the processor's seconds say
//! more than the clock's.

use super::table::Table;
use crate::call::{self, Done};
use crate::run::APP_FEATURES;
use crate::screen::Screen;
use crate::ui;
use processes::Processes;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

mod processes;

/// Starts of each that count, after one that does not.
const STARTS: usize = 7;
/// Every how many pixels the screen is compared, and how often.
const NTH: usize = 4;
const EVERY: Duration = Duration::from_millis(10);
/// Share of the pixels that may still change on what is drawn: a caret, a clock.
const STILL: f64 = 1e-3;
/// For how long the screen must stay so, and when it is given up.
const QUIET: Duration = Duration::from_secs(3);
const PATIENCE: Duration = Duration::from_secs(60);
/// How long the processor is watched.
const IDLE: Duration = Duration::from_secs(60);
/// The titles of the three windows.
const TITLES: [&str; 3] = ["Bayhand: at the car", "Bayhand: bay board", "Bayhand: review"];

/// What was measured of one app.
#[derive(Default)]
struct Seen {
    drawn_s: Vec<f64>,
    processor_s: Vec<f64>,
    memory_mb: Vec<f64>,
    idle_pct: f64,
}

/// Measures both and says the rows of the table.
///
/// # Errors
/// In words: what did not build, or which windows were not drawn.
pub fn windows(table: &mut Table) -> Done {
    let [ours, empty] = build()?;
    let screen = Screen::of(4000, 1000)?;
    let (mut of_ours, mut of_empty) = (Seen::default(), Seen::default());
    for start in 0..=STARTS {
        for (app, seen) in [(&ours, &mut of_ours), (&empty, &mut of_empty)] {
            let mut app = App::start(app, &screen)?;
            let drawn_s = app.drawn(&screen)?;
            let processes = Processes::of(app.child.id());
            let (memory_mb, processor_s) = (processes.memory_mb()?, processes.processor_s()?);
            if start > 0 {
                seen.drawn_s.push(drawn_s);
                seen.memory_mb.push(memory_mb);
                seen.processor_s.push(processor_s);
            }
            if start == STARTS {
                seen.idle_pct = app.idle_pct()?;
            }
            println!(
                "{}: drawn after {drawn_s:.2} s, {processor_s:.2} s of the processor, {memory_mb:.0} MB",
                app.name
            );
        }
    }
    let mut row = |what: &str, unit: &str, [ours, theirs]: [f64; 2], digits: usize, aim: &str| {
        let ratio = ours / theirs;
        table.read(&format!(
            "table: {what} | {ours:.digits$} {unit} | an empty app of the same windows | {theirs:.digits$} {unit} | {ratio:.2} | {aim}"
        ));
    };
    row("start to drawn", "s", [median(of_ours.drawn_s), median(of_empty.drawn_s)], 2, "at most 1.2");
    row("processor for that", "s", [median(of_ours.processor_s), median(of_empty.processor_s)], 2, "");
    row("memory", "MB", [median(of_ours.memory_mb), median(of_empty.memory_mb)], 0, "at most 1.2");
    row("processor, nothing happening", "% of a core", [of_ours.idle_pct, of_empty.idle_pct], 2, "under 1 % of a core");
    Ok(())
}

/// The built app and the empty one.
fn build() -> Done<[PathBuf; 2]> {
    ui::install()?;
    ui::build()?;
    let mut build = call::cargo();
    build.args(["build", "--release", "--features", APP_FEATURES]);
    // With the command line, as the package is made: then nothing is built twice.
    build.args(["bayhand", "bayhand-cli", "bayhand-empty"].iter().flat_map(|name| ["--package", name]));
    call::run(&mut build)?;
    let release = call::target()?.join("release");
    Ok([release.join("bayhand"), release.join("bayhand-empty")])
}

/// An app that was started; it goes when this is dropped.
struct App {
    name: String,
    child: Child,
    began: Instant,
    home: PathBuf,
}

impl App {
    fn start(program: &Path, screen: &Screen) -> Done<Self> {
        let name = program.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let home = call::built(&format!("bench-home-{name}"))?;
        std::fs::create_dir_all(&home).map_err(|error| format!("{} could not be made: {error}.", home.display()))?;
        let mut start = Command::new(program);
        start.env("DISPLAY", screen.display()).env_remove("WAYLAND_DISPLAY").env("HOME", &home);
        start.env("XDG_DATA_HOME", home.join("data")).env("XDG_CACHE_HOME", home.join("cache"));
        let began = Instant::now();
        let child = start.stdout(Stdio::null()).stderr(Stdio::null()).spawn();
        let child = child.map_err(|error| format!("{name} could not be started: {error}."))?;
        Ok(Self { name, child, began, home })
    }

    /// Seconds from the start until all windows were drawn; waits until the screen is quiet.
    fn drawn(&mut self, screen: &Screen) -> Done<f64> {
        let mut pictures = vec![(self.began.elapsed(), screen.picture(NTH)?)];
        loop {
            sleep(EVERY);
            let (at, now) = (self.began.elapsed(), screen.picture(NTH)?);
            let (since, last) = &pictures[pictures.len() - 1];
            if now.differs(last) > STILL {
                pictures.push((at, now));
            } else if at - *since > QUIET && TITLES.iter().all(|title| screen.window(title).is_some()) {
                let still = last.clone();
                let drawn = pictures.iter().find(|(_, picture)| picture.differs(&still) <= STILL);
                return drawn.map(|(at, _)| at.as_secs_f64()).ok_or_else(|| "The screen was never quiet.".to_owned());
            }
            if at > PATIENCE {
                return Err(format!("The windows of {} were not drawn within {} s.", self.name, PATIENCE.as_secs()));
            }
        }
    }

    /// Percent of one core that all its processes use while nothing happens.
    fn idle_pct(&mut self) -> Done<f64> {
        let processes = || Processes::of(self.child.id()).processor_s();
        let (began, before) = (Instant::now(), processes()?);
        sleep(IDLE);
        Ok(100.0 * (processes()? - before) / began.elapsed().as_secs_f64())
    }
}

impl Drop for App {
    fn drop(&mut self) {
        let processes = Processes::of(self.child.id());
        // One that has already ended cannot be killed, and that is what is wanted; its pages end when they lose it.
        let _ = self.child.kill();
        let _ = self.child.wait();
        let patience = Instant::now() + Duration::from_secs(5);
        while processes.any_left() && Instant::now() < patience {
            sleep(Duration::from_millis(20));
        }
        // The next one begins on a new book, but with the caches that any second start finds.
        let _ = std::fs::remove_dir_all(self.home.join("data"));
    }
}

fn median(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    values[values.len() / 2]
}
