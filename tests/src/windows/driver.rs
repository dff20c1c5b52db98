//! The WebDriver of WebKitGTK as a child process.

use super::{Failure, PATIENCE, Tested, wait};
use rustix::process::{Pid, Signal, kill_process};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::Instant;

/// A driver on a port of its own; it ends, with the app that it started, when this is dropped.
pub(super) struct Driver {
    child: Child,
    port: u16,
}

impl Driver {
    /// Starts one. The app that it starts keeps its own files below `home`, never in the home of who runs the tests.
    pub(super) async fn start(home: &Path) -> Tested<Self> {
        // The system names a free port; it is free again when the listener is dropped.
        let port = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?.local_addr()?.port();
        let child = Command::new("WebKitWebDriver")
            .args([format!("--port={port}"), "--host=127.0.0.1".into()])
            .env("XDG_DATA_HOME", home.join("data"))
            .env("XDG_CONFIG_HOME", home.join("config"))
            .env("XDG_CACHE_HOME", home.join("cache"))
            .env("MESA_SHADER_CACHE_DISABLE", "true")
            // Tauri lets a driver into its windows only when this is set.
            .env("TAURI_WEBVIEW_AUTOMATION", "true")
            .stdin(Stdio::null())
            .spawn()
            .map_err(|error| Failure::new(format!("WebKitWebDriver (package webkit2gtk-driver): {error}")))?;
        let driver = Self { child, port };
        wait("WebKitWebDriver to listen", async || TcpStream::connect((Ipv4Addr::LOCALHOST, port)).ok()).await?;
        Ok(driver)
    }

    /// Where it listens.
    pub(super) fn address(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }

    /// The app that it started, if that is running.
    pub(super) fn app(&self) -> Option<Pid> {
        let pid = self.child.id();
        let children = std::fs::read_to_string(format!("/proc/{pid}/task/{pid}/children")).ok()?;
        children.split_whitespace().next().and_then(|pid| pid.parse().ok()).and_then(Pid::from_raw)
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        let app = self.app();
        // SIGTERM, each to one process: killed outright, the driver would leave its children behind.
        let _ = kill_process(Pid::from_child(&self.child), Signal::TERM);
        let end = Instant::now() + PATIENCE;
        while matches!(self.child.try_wait(), Ok(None)) && Instant::now() < end {
            std::thread::sleep(super::LOOK);
        }
        if let Some(app) = app {
            // Usually gone with the driver.
            let _ = kill_process(app, Signal::TERM);
        }
    }
}
