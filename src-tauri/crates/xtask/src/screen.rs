//! The screen that the window tests run on: Xvfb with a window manager, on a display that nobody else uses.

use crate::call::Done;
use std::io::{BufRead as _, BufReader};
use std::process::{Child, Command, Stdio};
use std::thread;
use std::time::{Duration, Instant};

/// A screen of its own; it goes when this is dropped.
pub struct Screen {
    server: Child,
    manager: Child,
    display: String,
}

impl Screen {
    /// Starts one.
    ///
    /// # Errors
    /// In words, when Xvfb or openbox cannot be started.
    pub fn start() -> Done<Self> {
        // `-displayfd 1`: the server itself finds a free display and prints its number once it can be used.
        // `-terminate`: it ends, and tidies up, when its last client has gone.
        let mut server = Command::new("Xvfb")
            .args(["-displayfd", "1", "-screen", "0", "1920x1200x24", "-nolisten", "tcp", "-terminate"])
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
            Ok(manager) => Ok(Self { server, manager, display }),
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
    }
}

/// Ends a child of ours, that one process alone.
fn stop(child: &mut Child) {
    // A child that has already ended cannot be killed, and that is what is wanted.
    let _ = child.kill();
    let _ = child.wait();
}
