//! Where the board hangs: the screens of this computer, and filling the one that was chosen.

use bayhand_job::view::ScreenChoice;
use tauri::{AppHandle, Manager, PhysicalPosition, WebviewWindow};

/// Label of the board's window.
const BAY: &str = "bay";
/// Label of the window at the car.
const STEP: &str = "step";

/// The screens of this computer, in the system's order.
pub fn screens(app: &AppHandle) -> Vec<ScreenChoice> {
    let here = app.get_webview_window(STEP).and_then(|window| window.current_monitor().ok().flatten());
    let here = here.map(|monitor| *monitor.position());
    let monitors = app.available_monitors().unwrap_or_default();
    let choice = |(index, monitor): (usize, &tauri::Monitor)| ScreenChoice {
        name: name(index, monitor),
        size: format!("{} x {}", monitor.size().width, monitor.size().height),
        here: Some(*monitor.position()) == here,
    };
    monitors.iter().enumerate().map(choice).collect()
}

/// The system's name of a screen, or its number where it has none.
fn name(index: usize, monitor: &tauri::Monitor) -> String {
    monitor.name().cloned().unwrap_or_else(|| (index + 1).to_string())
}

/// Fills the screen of that name with the board; without one, or when that screen is gone, the board is a window.
pub fn hang(app: &AppHandle, screen: Option<&str>) {
    let Some(window) = app.get_webview_window(BAY) else { return };
    let monitors = app.available_monitors().unwrap_or_default();
    let chosen = screen.and_then(|wanted| monitors.iter().enumerate().find(|(i, m)| name(*i, m) == wanted));
    let hung = match chosen {
        Some((_, monitor)) => fill(&window, *monitor.position()),
        None => window.set_fullscreen(false),
    };
    if let Err(error) = hung {
        tracing::error!(%error, "the board could not be put on its screen");
    }
}

fn fill(window: &WebviewWindow, corner: PhysicalPosition<i32>) -> tauri::Result<()> {
    // A full screen is the one that the window stands on, so it leaves that first and goes over.
    window.set_fullscreen(false)?;
    window.set_position(corner)?;
    window.set_fullscreen(true)
}
