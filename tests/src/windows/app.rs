//! The built app, started by the driver.

use super::driver::Driver;
use super::{Failure, Tested, Window, wait};
use fantoccini::wd::WindowHandle;
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use rustix::process::{Pid, Signal, kill_process, test_kill_process};
use std::collections::HashMap;
use std::path::{Path, PathBuf};
use tempfile::TempDir;
use tokio::sync::Mutex;

/// The app at work on one book. Drop it, or [`App::close`] it to hear of trouble.
pub struct App {
    // Fields are dropped in this order: the driver before the folder that its app writes into.
    client: Client,
    driver: Driver,
    book: PathBuf,
    _home: TempDir,
    /// Windows found so far by page, and the page that the driver looks at.
    known: Mutex<(HashMap<String, WindowHandle>, Option<String>)>,
}

impl App {
    /// Starts the app on a new book.
    ///
    /// # Errors
    /// In words, when the app or its driver does not start.
    pub async fn start() -> Tested<Self> {
        let home = tempfile::tempdir()?;
        let book = home.path().join("book.db");
        Self::start_in(home, book).await
    }

    /// Starts the app on `book`.
    ///
    /// # Errors
    /// As [`App::start`].
    pub async fn start_on(book: &Path) -> Tested<Self> {
        Self::start_in(tempfile::tempdir()?, book.to_owned()).await
    }

    async fn start_in(home: TempDir, book: PathBuf) -> Tested<Self> {
        let driver = Driver::start(home.path()).await?;
        let options = serde_json::json!({ "binary": Self::binary()?, "args": ["--book", book] });
        let client = ClientBuilder::new(HttpConnector::new())
            .capabilities([("webkitgtk:browserOptions".to_owned(), options)].into_iter().collect())
            .connect(&driver.address())
            .await?;
        Ok(Self { client, driver, book, _home: home, known: Mutex::default() })
    }

    /// The built app, from `BAYHAND_APP`.
    ///
    /// # Errors
    /// When the variable is not set or names no file.
    pub fn binary() -> Tested<PathBuf> {
        let named = std::env::var_os("BAYHAND_APP").map(PathBuf::from);
        named
            .filter(|app| app.is_file())
            .ok_or_else(|| Failure::new("BAYHAND_APP names no built app; `cargo xtask test` builds it and sets this"))
    }

    /// The book that it works on.
    pub fn book(&self) -> &Path {
        &self.book
    }

    /// The window at the car.
    pub fn step(&self) -> Window<'_> {
        self.window("step.html")
    }

    /// The board across the bay.
    pub fn bay(&self) -> Window<'_> {
        self.window("bay.html")
    }

    /// The window at the desk.
    pub fn review(&self) -> Window<'_> {
        self.window("review.html")
    }

    /// The window whose page's address ends with `page`. It is looked for when it is first asked for something.
    pub fn window<'a>(&'a self, page: &'a str) -> Window<'a> {
        Window::new(self, page)
    }

    /// Kills the app as a power cut would, without a chance to tidy up, and waits until it is gone.
    ///
    /// # Errors
    /// When it is not running, or does not go.
    pub async fn kill(self) -> Tested {
        let app = self.driver.app().ok_or_else(|| Failure::new("the app is not running"))?;
        kill_process(app, Signal::KILL)?;
        self.gone(app).await
    }

    /// Waits until the app has ended by itself, as it does when the window at the car is closed.
    ///
    /// # Errors
    /// When it goes on.
    pub async fn ended(&self) -> Tested {
        match self.driver.app() {
            Some(app) => self.gone(app).await,
            None => Ok(()),
        }
    }

    async fn gone(&self, app: Pid) -> Tested {
        // The driver reaps its child, so a process that is still found is still running.
        wait("the app to end", async || test_kill_process(app).err()).await.map(drop)
    }

    /// Waits until no window has a page whose address ends with `page`, as after it was closed.
    ///
    /// # Errors
    /// When it stays.
    pub async fn closed(&self, page: &str) -> Tested {
        let mut known = self.known.lock().await;
        known.0.remove(page);
        known.1 = None;
        wait(format!("the window with {page} to go"), async || match self.find(page).await {
            Some(_) => None,
            None => Some(()),
        })
        .await
    }

    /// Ends the app.
    ///
    /// # Errors
    /// When the driver does not answer any more.
    pub async fn close(self) -> Tested {
        Ok(self.client.clone().close().await?)
    }

    /// The driver's client, looking at the window with `page`.
    pub(super) async fn looking_at(&self, page: &str) -> Tested<&Client> {
        let mut known = self.known.lock().await;
        let (handles, current) = &mut *known;
        if current.as_deref() == Some(page) {
            return Ok(&self.client);
        }
        *current = None;
        if let Some(handle) = handles.get(page) {
            self.client.switch_to_window(handle.clone()).await?;
        } else {
            let handle = wait(format!("a window with {page}"), async || self.find(page).await).await?;
            handles.insert(page.to_owned(), handle);
        }
        *current = Some(page.to_owned());
        Ok(&self.client)
    }

    /// Looks once for the window with `page`; when it is there the driver looks at it.
    async fn find(&self, page: &str) -> Option<WindowHandle> {
        for handle in self.client.windows().await.ok()? {
            // A window that goes between the two calls is not the one that is looked for.
            if self.client.switch_to_window(handle.clone()).await.is_ok()
                && self.client.current_url().await.is_ok_and(|url| url.as_str().ends_with(page))
            {
                return Some(handle);
            }
        }
        None
    }
}
