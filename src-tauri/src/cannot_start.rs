//! The one window there is when the job book cannot be opened.
//!
//! The three pages need a desk, and there is none. So the words are shown in a window of their own, which belongs to no
//! capability and may call nothing; its page is served from memory, so it does not even need the pages. The same words go
//! to standard error for whoever started the app from a terminal. A system dialog was the other choice: it cannot be
//! read by a test, nor marked and copied by the person.

use std::process::ExitCode;
use tauri::http::{Response, header};
use tauri::{Url, WebviewUrl, WebviewWindowBuilder};

const SCHEME: &str = "cannot-start";
const TITLE: &str = "Bayhand: cannot start";

/// Shows `says` until the window is closed. The exit code is a failure's.
pub fn show(says: &str) -> ExitCode {
    eprintln!("{says}");
    tracing::error!("could not start");
    let body = page(says);
    let built = tauri::Builder::default()
        .register_uri_scheme_protocol(SCHEME, move |_, _| {
            Response::builder()
                .header(header::CONTENT_TYPE, "text/html; charset=utf-8")
                .header(header::CONTENT_SECURITY_POLICY, "default-src 'none'; style-src 'unsafe-inline'")
                .body(body.clone().into_bytes())
                .unwrap_or_default()
        })
        .setup(|app| {
            let url = Url::parse(&format!("{SCHEME}://localhost/"))?;
            WebviewWindowBuilder::new(app, SCHEME, WebviewUrl::CustomProtocol(url))
                .title(TITLE)
                .inner_size(720.0, 360.0)
                .build()?;
            Ok(())
        })
        .build(crate::windows::context());
    match built {
        Ok(app) => {
            app.run_return(|_, _| {});
        }
        Err(error) => eprintln!("{error}"),
    }
    ExitCode::FAILURE
}

/// A page with `says` as text.
fn page(says: &str) -> String {
    let says = says.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
    format!(
        "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>{TITLE}</title>\
         <style>body{{font:20px/1.5 sans-serif;margin:2rem;color:#1b1f24;background:#fbfaf6;overflow-wrap:anywhere}}</style>\
         <h1>The job book was not opened</h1><p role=\"alert\" data-id=\"cannot-start\">{says}</p></html>"
    )
}

#[cfg(test)]
mod tests {
    /// The words may quote a path, and a path may hold anything.
    #[test]
    fn the_words_are_text_and_never_markup() {
        let page = super::page("The job book /tmp/<b>&amp;</b> is in use");
        assert!(page.contains("/tmp/&lt;b&gt;&amp;amp;&lt;/b&gt; is in use"), "{page}");
    }
}
