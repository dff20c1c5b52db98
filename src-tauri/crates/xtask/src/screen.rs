//! The screen that windows are tried on: Xvfb with a window manager, on a display that nobody else uses.

use crate::call::{self, Done};
use crate::picture::Picture;
use std::fs;
use std::io::{BufRead as _, BufReader};
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};
use std::thread;
use std::time::{Duration, Instant};

/// A screen of its own; it goes when this is dropped.
pub struct Screen {
    server: Child,
    manager: Child,
    display: String,
    /// Where the server keeps what stands on it.
    drawing: PathBuf,
}

/// Why there can be none here, if so.
pub fn hindrance() -> Option<String> {
    let missing = ["Xvfb", "openbox", "xdotool"].into_iter().find(|tool| !call::on_path(tool));
    missing.map(|tool| format!("{tool} is missing here."))
}

impl Screen {
    /// Starts one of the size that the window tests are made for.
    ///
    /// # Errors
    /// As [`Screen::of`].
    pub fn start() -> Done<Self> {
        Self::of(1920, 1200)
    }

    /// Starts one of this size in pixels.
    ///
    /// # Errors
    /// In words, when Xvfb or openbox cannot be started.
    pub fn of(width: u32, height: u32) -> Done<Self> {
        let drawing = call::built(&format!("screen-{}", std::process::id()))?;
        fs::create_dir_all(&drawing).map_err(|e| format!("{} could not be made: {e}.", drawing.display()))?;
        // `-displayfd 1`: the server itself finds a free display and prints its number once it can be used.
        // `-terminate`: it ends, and tidies up, when its last client has gone.
        let mut server = Command::new("Xvfb")
            .args(["-displayfd", "1", "-nolisten", "tcp", "-terminate", "-screen", "0"])
            .args([&format!("{width}x{height}x24"), "-fbdir"])
            .arg(&drawing)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .map_err(|error| format!("Xvfb could not be started: {error}."))?;
        let mut number = String::new();
        let read = server.stdout.take().map(|output| BufReader::new(output).read_line(&mut number));
        if !matches!(read, Some(Ok(read)) if read > 0) {
            stop(&mut server);
            return Err("Xvfb ended without a display.".into());
        }
        let display = format!(":{}", number.trim());
        // Fullscreen is a window manager's work: without one a window keeps its size.
        match Command::new("openbox").env("DISPLAY", &display).stdout(Stdio::null()).stderr(Stdio::null()).spawn() {
            Ok(manager) => Ok(Self { server, manager, display, drawing }),
            Err(error) => {
                stop(&mut server);
                Err(format!("openbox could not be started: {error}."))
            }
        }
    }

    /// Its name, for `DISPLAY`.
    pub fn display(&self) -> &str {
        &self.display
    }

    /// What stands on it, every `nth` pixel of every `nth` row.
    ///
    /// # Errors
    /// When the server keeps no such picture.
    pub fn picture(&self, nth: usize) -> Done<Picture> {
        let file = self.drawing.join("Xvfb_screen0");
        let dump = fs::read(&file).map_err(|error| format!("{} could not be read: {error}.", file.display()))?;
        Picture::of_dump(&dump, nth)
    }

    /// Where the window of this title lies, once it is shown: column and row of its corner, width and height. None while
    /// there is no such window.
    pub fn window(&self, title: &str) -> Option<[usize; 4]> {
        let mut search = self.xdotool();
        search.args(["search", "--onlyvisible", "--name", &anchored(title), "getwindowgeometry", "--shell"]);
        let told = search.stderr(Stdio::null()).output().ok()?;
        let told = String::from_utf8_lossy(&told.stdout).into_owned();
        let value = |name: &str| told.lines().find_map(|line| line.strip_prefix(name)?.strip_prefix('=')?.parse().ok());
        Some([value("X")?, value("Y")?, value("WIDTH")?, value("HEIGHT")?])
    }

    /// Closes the window of this title as a person does, by its frame: three tries at most, since a desktop that is slow to
    /// move its focus may lose a key.
    ///
    /// # Errors
    /// When it stays.
    pub fn close(&self, title: &str) -> Done {
        for _ in 0..3 {
            let mut front = self.xdotool();
            call::run(front.args(["search", "--onlyvisible", "--name", &anchored(title), "windowactivate", "--sync"]))?;
            // A call of its own: behind a search the key would go to the window past its frame.
            call::run(self.xdotool().args(["key", "alt+F4"]))?;
            let patience = Instant::now() + Duration::from_secs(10);
            while Instant::now() < patience {
                if self.window(title).is_none() {
                    return Ok(());
                }
                thread::sleep(Duration::from_millis(200));
            }
        }
        Err(format!("The window `{title}` could not be closed."))
    }

    fn xdotool(&self) -> Command {
        let mut tool = Command::new("xdotool");
        tool.env("DISPLAY", &self.display);
        tool
    }
}

impl Drop for Screen {
    fn drop(&mut self) {
        stop(&mut self.manager);
        // Its last client has gone, so the server ends by itself and removes its socket and lock.
        let patience = Instant::now() + Duration::from_secs(3);
        while matches!(self.server.try_wait(), Ok(None)) && Instant::now() < patience {
            thread::sleep(Duration::from_millis(20));
        }
        stop(&mut self.server);
        // Its file goes with it; a folder that stays is in nobody's way.
        let _ = fs::remove_dir_all(&self.drawing);
    }
}

/// The pattern that this title matches and no longer one.
fn anchored(title: &str) -> String {
    format!("^{title}$")
}

/// Ends a child of ours, that one process alone.
fn stop(child: &mut Child) {
    // A child that has already ended cannot be killed, and that is what is wanted.
    let _ = child.kill();
    let _ = child.wait();
}
