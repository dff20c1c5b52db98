//! Opening, reopening and closing the windows, and telling them of each commit.
//!
//! The three windows with their titles and sizes stand in `tauri.conf.json`. Closing the window at the car ends the app;
//! the other two may be closed and are opened again from that window's menu.

use crate::board;
use crate::commands;
use crate::hearing::Hearing;
use crate::preferences_file::PreferencesFile;
use crate::sheet_file::SheetFolder;
use crate::speech::Speech;
use bayhand_job::Desk;
use std::process::ExitCode;
use tauri::menu::{Menu, MenuItem, Submenu};
use tauri::utils::config::WindowConfig;
use tauri::{AppHandle, Emitter, Manager, WebviewWindowBuilder, WindowEvent};

/// Label of the window at the car.
const STEP: &str = "step";

/// What every window hears after each commit.
#[derive(Clone, Copy, serde::Serialize)]
struct Changed {
    /// Revision of the open job.
    revision: u64,
}

/// Has the pages painted by the processor, unless whoever starts the app set it otherwise. Our pages stand still most of the
/// time: to build the programs that a graphics unit paints with takes longer than to paint them, longest where that unit
/// is the processor again. How pages are put together on the screen stays as it is.
#[cfg(target_os = "linux")]
fn paint_by_processor() {
    if let Err(error) = gtk::glib::setenv("WEBKIT_SKIA_ENABLE_CPU_RENDERING", "1", false) {
        tracing::warn!(%error, "pages are painted as the system does it");
    }
}

/// Checks that windows can be opened at all; otherwise says what is missing.
///
/// # Errors
/// In words, when there is no screen: Tauri itself would panic.
pub fn screen() -> Result<(), String> {
    #[cfg(target_os = "linux")]
    paint_by_processor();
    #[cfg(target_os = "linux")]
    gtk::init().map_err(|_| {
        "There is no screen here on which windows could be opened (DISPLAY or WAYLAND_DISPLAY). Nothing was opened or \
         recorded. Start the app from a desktop, or use bayhand-cli, which needs no window."
    })?;
    Ok(())
}

/// Pages, windows and rights, as compiled in.
pub fn context() -> tauri::Context {
    tauri::generate_context!()
}

/// Runs the three windows on `desk` until the one at the car is closed.
pub fn run(desk: Desk, sheets: SheetFolder, preferences: PreferencesFile) -> ExitCode {
    let mut revisions = desk.watch();
    let built = tauri::Builder::default()
        .manage(desk)
        .manage(sheets)
        .manage(preferences)
        .invoke_handler(tauri::generate_handler![
            commands::labels,
            commands::step_view,
            commands::say_again,
            commands::attend,
            commands::talk,
            commands::confirm_heard,
            commands::act,
            commands::first_supervisor,
            commands::recover,
            commands::hand_over,
            commands::sign_off,
            commands::change_pin,
            commands::keep_people,
            commands::waive,
            commands::look_at_procedure,
            commands::shipped_procedure,
            commands::sign_for_procedure,
            commands::preview,
            commands::read_back,
            commands::settings,
            commands::set_preferences,
            commands::pedal,
            commands::bay_view,
            commands::review_view,
            commands::review_act,
            commands::seal,
            commands::send_back,
            commands::correct,
            commands::person_record,
            commands::cars,
            commands::manual,
            commands::car,
            commands::instruments,
            commands::origin,
            commands::book_view,
            commands::copy_to,
            commands::export_job,
            commands::import_job,
            commands::imported_job,
            commands::customer,
            commands::set_customer,
            commands::erase_customer,
            commands::verify,
            commands::coach,
            commands::write_sheet,
        ])
        .setup(|app| {
            // Before the windows, which call it with their first view.
            app.manage(Speech::start(app.handle()));
            app.manage(Hearing::new(app.handle()));
            app.state::<Hearing>().set(&app.state::<Desk>().settings().set.hearing);
            // The one at the car last, so that it is in front: there the work begins.
            for window in app.config().app.windows.iter().rev() {
                open(app.handle(), window)?;
            }
            hang_board(app.handle());
            let app = app.handle().clone();
            tauri::async_runtime::spawn(async move {
                while revisions.changed().await.is_ok() {
                    let revision = *revisions.borrow_and_update();
                    if let Err(error) = app.emit("changed", Changed { revision }) {
                        tracing::error!(%error, "the windows were not told of a commit");
                    }
                }
            });
            Ok(())
        })
        .on_menu_event(|app, item| show(app, item.id().as_ref()))
        .on_window_event(|window, event| {
            if window.label() == STEP && matches!(event, WindowEvent::Destroyed) {
                window.app_handle().exit(0);
            }
        })
        .build(context());
    match built {
        Ok(app) => {
            app.run_return(|_, _| {});
            tracing::info!("closed");
            ExitCode::SUCCESS
        }
        Err(error) => {
            eprintln!("The windows could not be opened: {error}. Nothing was recorded.");
            tracing::error!("the windows could not be opened");
            ExitCode::FAILURE
        }
    }
}

/// Opens a window as it is described in `tauri.conf.json`.
fn open(app: &AppHandle, window: &WindowConfig) -> tauri::Result<()> {
    let builder = WebviewWindowBuilder::from_config(app, window)?;
    let builder = if window.label == STEP { builder.menu(menu(app)?) } else { builder };
    builder.build()?;
    Ok(())
}

/// Puts the board on the screen that was chosen for it.
fn hang_board(app: &AppHandle) {
    board::hang(app, app.state::<Desk>().settings().set.board.screen.as_deref());
}

/// The menu of the window at the car: the other windows by their titles.
fn menu(app: &AppHandle) -> tauri::Result<Menu<tauri::Wry>> {
    let windows = Submenu::new(app, "&Windows", true)?;
    for window in app.config().app.windows.iter().filter(|window| window.label != STEP) {
        windows.append(&MenuItem::with_id(app, &window.label, &window.title, true, None::<&str>)?)?;
    }
    Menu::with_items(app, &[&windows])
}

/// Brings the window `label` to the front, opening it again when it was closed.
fn show(app: &AppHandle, label: &str) {
    let shown = match (app.get_webview_window(label), app.config().app.windows.iter().find(|w| w.label == label)) {
        (Some(window), _) => window.unminimize().and_then(|()| window.set_focus()),
        (None, Some(window)) => open(app, window).map(|()| hang_board(app)),
        (None, None) => Ok(()),
    };
    if let Err(error) = shown {
        tracing::error!(window = label, %error, "a window could not be shown");
    }
}
