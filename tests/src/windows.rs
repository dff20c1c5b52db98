//! The built app in real windows, driven by WebDriver as a person drives it: clicks and keys.
//!
//! [`App`] starts the app named by the environment variable `BAYHAND_APP` on a book of its own; [`Window`] is one of
//! its windows. Scripts only read, they never act. Nothing sleeps for a set time: every wait ends as soon as what is
//! waited for is there, and fails with what stood on the screen instead.
//!
//! ```no_run
//! # use bayhand_tests::windows::{App, Tested};
//! # async fn a_job() -> Tested {
//! let app = App::start().await?;
//! let step = app.step();
//! step.fill("seed", "1").await?;
//! let seen = step.go("begin-practice").await?; // clicked, and the window shows what follows
//! assert_eq!(seen.screen, "sign-on");
//! app.bay().wait_for("the same revision", |bay| bay.revision == seen.revision).await?;
//! app.close().await
//! # }
//! ```

mod app;
mod desktop;
mod driver;
mod failure;
mod form;
mod window;

pub use app::App;
pub use failure::{Failure, Tested};
pub use form::{Form, FormField};
pub use window::{Seen, Window};

use std::time::{Duration, Instant};

/// How long anything on a screen may take before a test fails. Two busy cores draw three windows in some seconds.
const PATIENCE: Duration = Duration::from_secs(30);

/// How often is looked.
const LOOK: Duration = Duration::from_millis(20);

/// Looks until `look` finds something; otherwise says what was waited for.
async fn wait<T>(waited_for: impl std::fmt::Display, mut look: impl AsyncFnMut() -> Option<T>) -> Tested<T> {
    let end = Instant::now() + PATIENCE;
    loop {
        if let Some(found) = look().await {
            return Ok(found);
        }
        if Instant::now() > end {
            return Err(Failure::new(format!("waited {} s for {waited_for}", PATIENCE.as_secs())));
        }
        tokio::time::sleep(LOOK).await;
    }
}
