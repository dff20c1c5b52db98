//! What a person does at the desktop and not in a page: keys to a window's frame and menu, by `xdotool`.

use super::{App, Failure, Tested, wait};
use std::process::Command;

impl App {
    /// Presses `keys` at the window with this title until `effect` is seen, as a person does: three times at most, since
    /// a desktop that is slow to move its focus may lose a key.
    ///
    /// # Errors
    /// When nothing comes of it: what was waited for.
    pub async fn press_until(&self, title: &str, keys: &[&str], effect: impl AsyncFn() -> Tested) -> Tested {
        for _ in 0..2 {
            self.press_at(title, keys).await?;
            if effect().await.is_ok() {
                return Ok(());
            }
        }
        self.press_at(title, keys).await?;
        effect().await
    }

    /// Brings the window with this title to the front and presses `keys` there, named as X names them (`alt+F4`).
    ///
    /// # Errors
    /// When there is no such window, or no `xdotool`.
    async fn press_at(&self, title: &str, keys: &[&str]) -> Tested {
        let name = format!("^{title}$");
        // Tried again: the search stumbles over windows that come or go meanwhile.
        let front = ["search", "--onlyvisible", "--name", &name, "windowactivate", "--sync"];
        wait(format!("`{title}` at the front"), async || {
            xdotool(&front).ok()?;
            // Keys go where the focus is, and a window that opened a moment ago may have taken it back.
            let focused = xdotool(&["getwindowfocus", "getwindowname"]).ok()?;
            (focused.trim() == title).then_some(())
        })
        .await?;
        // As fast as a hand, so that a menu has opened before the next key.
        xdotool(&[&["key", "--delay", "200"], keys].concat()).map(drop)
    }
}

fn xdotool(words: &[&str]) -> Tested<String> {
    let told = Command::new("xdotool").args(words).output();
    let told = told.map_err(|error| Failure::new(format!("xdotool (package xdotool): {error}")))?;
    if told.status.success() {
        return Ok(String::from_utf8_lossy(&told.stdout).into_owned());
    }
    Err(Failure::new(format!("xdotool {}: {}", words.join(" "), String::from_utf8_lossy(&told.stderr))))
}
