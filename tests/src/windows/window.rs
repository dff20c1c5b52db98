//! One window: what a person sees and does there.

use super::{App, Failure, Tested, wait};
use fantoccini::elements::Element;
use fantoccini::key::Key;
use fantoccini::{Client, Locator};
use serde::Deserialize;
use serde_json::Value;
use std::path::Path;

/// One window of the app. Elements are named by their `data-id`.
#[derive(Clone, Copy)]
pub struct Window<'a> {
    app: &'a App,
    page: &'a str,
}

/// Where a window stands.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
pub struct Seen {
    /// What the window is for now (`start`, `sign-on`, `step`, ...); empty before its first view.
    pub screen: String,
    /// Code of the step, where there is one.
    pub step: String,
    /// Revision of the view.
    pub revision: String,
    /// Words of the refusals that stand on the screen.
    pub refusal: String,
}

/// Reads [`Seen`]; a plain reading of what stands in the page.
const SEEN: &str = "
    const main = document.querySelector('main[data-screen]');
    const refusals = [...document.querySelectorAll('[data-id=refusal]')].map((one) => one.textContent.trim());
    return {
      screen: main?.dataset.screen ?? '',
      step: main?.dataset.step ?? '',
      revision: main?.dataset.revision ?? '',
      refusal: refusals.join(' '),
    };";

impl<'a> Window<'a> {
    pub(super) fn new(app: &'a App, page: &'a str) -> Self {
        Self { app, page }
    }

    /// The end of its page's address.
    pub fn page(&self) -> &'a str {
        self.page
    }

    /// Clicks an element as soon as it can be clicked.
    ///
    /// # Errors
    /// When it does not come, or stays disabled or covered.
    pub async fn click(&self, id: &str) -> Tested {
        let client = self.app.looking_at(self.page).await?;
        let mut last = String::from("it is not there");
        let clicked = wait(format!("`{id}` to be clicked"), async || match click_once(client, id).await {
            Ok(()) => Some(()),
            Err(failure) => {
                last = format!("{failure:?}");
                None
            }
        });
        match clicked.await {
            Ok(()) => Ok(()),
            Err(failure) => Err(self.told(format!("{failure:?}: {last}")).await),
        }
    }

    /// Clicks an element and waits until the window shows another revision, step or screen.
    ///
    /// # Errors
    /// As [`Window::click`]; when a refusal appears: its words.
    pub async fn go(&self, id: &str) -> Tested<Seen> {
        let before = self.seen().await?;
        self.click(id).await?;
        self.changed_from(&before).await
    }

    /// Clicks an element and waits for a refusal, which must leave step and revision as they were. Gives its words.
    ///
    /// # Errors
    /// When there is none.
    pub async fn refused(&self, id: &str) -> Tested<String> {
        let before = self.seen().await?;
        self.click(id).await?;
        let after = self
            .wait_for(format!("`{id}` to be refused"), |seen| {
                seen.refusal != before.refusal && !seen.refusal.is_empty()
            })
            .await?;
        if (&after.step, &after.revision) != (&before.step, &before.revision) {
            return Err(self.told(format!("`{id}` was refused but the job went on from {before:?}")).await);
        }
        Ok(after.refusal)
    }

    /// Replaces what stands in a field with `text`, typed key by key.
    ///
    /// # Errors
    /// When the field does not come or does not take keys.
    pub async fn fill(&self, id: &str, text: &str) -> Tested {
        let element = self.element(id).await?;
        element.click().await?;
        // Without a chord: this driver would hold the control key for the letters that follow it.
        let there = element.prop("value").await?.unwrap_or_default().chars().count();
        let end = char::from(Key::End).to_string();
        let rubbed_out = char::from(Key::Backspace).to_string().repeat(there);
        element.send_keys(&(end + &rubbed_out + text)).await?;
        Ok(())
    }

    /// Presses `keys`, one after the other, wherever the focus is; special keys by [`Key`].
    ///
    /// # Errors
    /// When the window takes no keys.
    pub async fn press(&self, keys: &str) -> Tested {
        let client = self.app.looking_at(self.page).await?;
        client.active_element().await?.send_keys(keys).await?;
        Ok(())
    }

    /// The text of an element, as soon as it is there.
    ///
    /// # Errors
    /// When it does not come.
    pub async fn text(&self, id: &str) -> Tested<String> {
        Ok(self.element(id).await?.text().await?)
    }

    /// What stands in a field, as soon as the field is there.
    ///
    /// # Errors
    /// When the field does not come.
    pub async fn value(&self, id: &str) -> Tested<String> {
        Ok(self.element(id).await?.prop("value").await?.unwrap_or_default())
    }

    /// True when an element is on the page now.
    ///
    /// # Errors
    /// When the driver does not answer.
    pub async fn has(&self, id: &str) -> Tested<bool> {
        let client = self.app.looking_at(self.page).await?;
        Ok(!client.find_all(Locator::Css(&css(id))).await?.is_empty())
    }

    /// Waits until an element is not on the page any more, such as a dialog that was answered.
    ///
    /// # Errors
    /// When it stays.
    pub async fn gone(&self, id: &str) -> Tested {
        let gone = wait(format!("`{id}` to go"), async || (!self.has(id).await.ok()?).then_some(())).await;
        match gone {
            Ok(()) => Ok(()),
            Err(failure) => Err(self.told(format!("{failure:?}")).await),
        }
    }

    /// The ids on the page that begin with `prefix`, in their order on the page.
    ///
    /// # Errors
    /// When the driver does not answer.
    pub async fn ids(&self, prefix: &str) -> Tested<Vec<String>> {
        let script =
            "return [...document.querySelectorAll(`[data-id^=\"${arguments[0]}\"]`)].map((one) => one.dataset.id);";
        Ok(serde_json::from_value(self.read(script, vec![prefix.into()]).await?)?)
    }

    /// Where the window stands.
    ///
    /// # Errors
    /// When the driver does not answer.
    pub async fn seen(&self) -> Tested<Seen> {
        Ok(serde_json::from_value(self.read(SEEN, vec![]).await?)?)
    }

    /// Waits until the window shows what `wanted` wants.
    ///
    /// # Errors
    /// When it does not: what it shows instead.
    pub async fn wait_for(&self, waited_for: impl std::fmt::Display, wanted: impl Fn(&Seen) -> bool) -> Tested<Seen> {
        match wait(waited_for, async || self.seen().await.ok().filter(|seen| wanted(seen))).await {
            Ok(seen) => Ok(seen),
            Err(failure) => Err(self.told(format!("{failure:?}")).await),
        }
    }

    /// Waits until the window shows another revision, step or screen than `before`.
    ///
    /// # Errors
    /// When a refusal appears instead: its words; when nothing happens.
    pub async fn changed_from(&self, before: &Seen) -> Tested<Seen> {
        let place = |seen: &Seen| (seen.screen.clone(), seen.step.clone(), seen.revision.clone());
        let new_refusal = |seen: &Seen| !seen.refusal.is_empty() && seen.refusal != before.refusal;
        let after = self
            .wait_for(format!("a change from {before:?}"), |seen| place(seen) != place(before) || new_refusal(seen))
            .await?;
        if place(&after) == place(before) {
            return Err(Failure::new(format!("{}, {before:?}: refused: {}", self.page, after.refusal)));
        }
        Ok(after)
    }

    /// Takes a picture of the window into `path`, making its folder, once its words are there and what stands on the
    /// page is drawn too: a driver clicks faster than a window is painted.
    ///
    /// # Errors
    /// When it cannot be taken or written.
    pub async fn screenshot(&self, path: &Path) -> Tested {
        let client = self.app.looking_at(self.page).await?;
        // A window behind another one may draw no frame at all: half a second is enough for any that does.
        let drawn = "
            const [done] = arguments;
            const frame = () => new Promise((next) => requestAnimationFrame(next));
            const pause = (ms) => new Promise((next) => setTimeout(next, ms));
            const frames = async () => { for (let n = 0; n < 4; n += 1) await frame(); await pause(150); };
            const words = async () => {
              for (let n = 0; n < 40 && !document.querySelector('h1, h2')?.textContent.trim(); n += 1) await pause(50);
            };
            words().then(() => Promise.race([frames(), pause(500)])).then(() => done(null));";
        client.execute_async(drawn, vec![]).await?;
        let png = client.screenshot().await?;
        if let Some(folder) = path.parent() {
            std::fs::create_dir_all(folder)?;
        }
        Ok(std::fs::write(path, png)?)
    }

    /// Calls a command from this window as a page would that does not keep to its own commands. Only to test rights.
    ///
    /// # Errors
    /// What the program answered instead: a refusal, or that the window has no right to call.
    pub async fn invoke(&self, command: &str, arguments: Value) -> Tested<Result<Value, Value>> {
        let script = "
            const [command, given, done] = arguments;
            window.__TAURI_INTERNALS__.invoke(command, given).then((Ok) => done({ Ok }), (Err) => done({ Err }));";
        let client = self.app.looking_at(self.page).await?;
        let answer = client.execute_async(script, vec![command.into(), arguments]).await?;
        Ok(serde_json::from_value(answer)?)
    }

    pub(super) async fn read(&self, script: &str, arguments: Vec<Value>) -> Tested<Value> {
        Ok(self.app.looking_at(self.page).await?.execute(script, arguments).await?)
    }

    async fn element(&self, id: &str) -> Tested<Element> {
        let client = self.app.looking_at(self.page).await?;
        let found = wait(format!("`{id}`"), async || client.find(Locator::Css(&css(id))).await.ok()).await;
        match found {
            Ok(element) => Ok(element),
            Err(failure) => Err(self.told(format!("{failure:?}")).await),
        }
    }

    /// A failure with what stands in the window.
    async fn told(&self, says: String) -> Failure {
        let seen = self.seen().await;
        Failure::new(format!("{}: {says}; the window shows {seen:?}", self.page))
    }
}

async fn click_once(client: &Client, id: &str) -> Tested {
    let element = client.find(Locator::Css(&css(id))).await?;
    if !element.is_enabled().await? {
        return Err(Failure::new("it is disabled"));
    }
    Ok(element.click().await?)
}

fn css(id: &str) -> String {
    format!("[data-id=\"{id}\"]")
}
