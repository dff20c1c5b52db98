//! The log of this computer: one file a day beside the data, the last fourteen are kept.
//!
//! It holds what the program did and how that went, by codes and numbers. It never holds what a person entered, a
//! name, initials, a reason or a path (a path may hold a name). What people did is in the job book alone.

use std::path::Path;
use tracing_appender::rolling::{RollingFileAppender, Rotation};

/// Begins logging into the folder `logs` of `data`. Without a log the work goes on, so a failure is only reported.
pub fn begin(data: &Path) {
    match appender(&data.join("logs")) {
        Ok(appender) => {
            // The book and the libraries are left out: they name paths, and might name what was entered.
            let own = tracing_subscriber::EnvFilter::new("off,bayhand=info,bayhand_job=info");
            tracing_subscriber::fmt().with_env_filter(own).with_ansi(false).with_writer(appender).init();
        }
        Err(error) => eprintln!("There is no log: {error}. The job book is not touched by this."),
    }
    let print = std::panic::take_hook();
    std::panic::set_hook(Box::new(move |panic| {
        // The place alone: the message may quote what was entered.
        if let Some(place) = panic.location() {
            tracing::error!(file = place.file(), line = place.line(), "a fault of the program");
        }
        print(panic);
    }));
}

fn appender(folder: &Path) -> Result<RollingFileAppender, Box<dyn std::error::Error>> {
    std::fs::create_dir_all(folder)?;
    let daily = RollingFileAppender::builder().rotation(Rotation::DAILY).max_log_files(14);
    Ok(daily.filename_prefix("bayhand").filename_suffix("log").build(folder)?)
}
