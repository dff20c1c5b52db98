//! The desktop app: three windows on one [`Desk`](bayhand_job::Desk).
//!
//! - [`commands`]: what a window may call, each a single call into `bayhand-job`. No rule, no arithmetic, no SQL here.
//! - [`windows`]: opening, reopening and closing the windows, and telling them of each commit.
//! - [`sheet_file`]: where the sheet of a sealed job is written.
//! - [`speech`]: the speaker, which says what the job has to say. [`hearing`]: the ear; [`meaning`]: the job's words and the
//!   recogniser's.
//! - [`cannot_start`]: the one window there is when the job book cannot be opened.
//! - [`board`]: the screen that the board fills. [`preferences_file`]: where it is kept how the windows are set.
//! - [`folders`]: where book, sheets and log lie. [`log`]: what is logged, and what never is.
//!
//! Which window may call what stands in `capabilities/`, one file for each; `build.rs` makes that binding.

#![cfg_attr(not(debug_assertions), windows_subsystem = "windows")]

mod board;
mod cannot_start;
mod commands;
mod folders;
mod hearing;
mod log;
mod meaning;
mod preferences_file;
mod sheet_file;
mod speech;
mod windows;

use bayhand_job::{Desk, SystemClock};
use clap::Parser;
use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::Arc;

use preferences_file::PreferencesFile;

/// Corner balance and alignment as a guided job.
#[derive(Parser)]
#[command(name = "bayhand", version)]
struct Arguments {
    /// The job book to work in; it is made when there is none. Without it: the one in your data folder
    #[arg(long, value_name = "FILE")]
    book: Option<PathBuf>,
}

fn main() -> ExitCode {
    let arguments = Arguments::parse();
    if let Err(says) = windows::screen() {
        eprintln!("{says}");
        return ExitCode::FAILURE;
    }
    match open(arguments) {
        Ok((desk, sheets, preferences)) => windows::run(desk, sheets, preferences),
        Err(says) => cannot_start::show(&says),
    }
}

/// Opens the job book; on failure what happened, what it means and what to do.
fn open(arguments: Arguments) -> Result<(Desk, sheet_file::SheetFolder, PreferencesFile), String> {
    let data = folders::data();
    match &data {
        Ok(data) => log::begin(data),
        // A book may still have been named.
        Err(says) => eprintln!("{says}"),
    }
    let book = match arguments.book {
        Some(book) => folders::absolute(book)?,
        None => folders::book_in(&data?)?,
    };
    // The settings lie beside the book: a book that was named is another workshop's, or a test's.
    let preferences = PreferencesFile::in_folder(book.parent().unwrap_or(std::path::Path::new(".")));
    let set = preferences.read();
    let opened = tauri::async_runtime::block_on(Desk::open(&book, Arc::new(SystemClock)));
    let desk = opened.map_err(|error| error.says(&set.language))?;
    tracing::info!(version = env!("CARGO_PKG_VERSION"), "book opened");
    if let Err(refused) = desk.set(set) {
        tracing::warn!(code = refused.code, "the settings that were kept cannot be; the windows are set as at first");
    }
    Ok((desk, sheet_file::SheetFolder::beside(&book), preferences))
}
