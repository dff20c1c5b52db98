//! Starting, and not being able to: what stands on the screen, what the shell is told.

use bayhand_tests::windows::{App, Tested};
use std::fs;
use std::path::Path;
use std::process::Command;

/// On a new book all three windows draw a view.
#[tokio::test]
async fn three_windows_open_on_a_new_book() -> Tested {
    let app = App::start().await?;
    for window in [app.step(), app.bay(), app.review()] {
        window.wait_for("the first view", |seen| !seen.revision.is_empty()).await?;
    }
    assert!(app.book().is_file(), "the new book got its name");
    app.close().await
}

/// The board may be closed, is opened again from the menu at the car, and the app ends with the window at the car.
#[tokio::test]
async fn windows_are_closed_and_opened_again() -> Tested {
    const AT_THE_CAR: &str = "Bayhand: at the car";
    let app = App::start().await?;
    for window in [app.step(), app.bay(), app.review()] {
        window.wait_for("the first view", |seen| !seen.revision.is_empty()).await?;
    }
    app.press_until("Bayhand: bay board", &["alt+F4"], async || app.closed("bay.html").await).await?;
    app.press_until(AT_THE_CAR, &["alt+w", "Return"], async || {
        let bay = app.bay();
        bay.wait_for("the first view of the new window", |seen| !seen.revision.is_empty()).await.map(drop)
    })
    .await?;
    app.press_until(AT_THE_CAR, &["alt+F4"], async || app.ended().await).await
}

/// What a person reads in the one window there is when `book` cannot be opened.
async fn cannot_start(book: &Path) -> Tested<String> {
    let app = App::start_on(book).await?;
    let says = app.window("localhost/").text("cannot-start").await?;
    app.close().await?;
    Ok(says)
}

fn check(says: &str, book: &Path, parts: &[&str]) {
    let book = book.display().to_string();
    for part in parts.iter().copied().chain([book.as_str()]) {
        assert!(says.contains(part), "{part:?} is not in {says:?}");
    }
}

#[tokio::test]
async fn a_file_that_is_no_book_is_named_and_left_alone() -> Tested {
    let folder = tempfile::tempdir()?;
    let letter = folder.path().join("letter.db");
    fs::write(&letter, "Dear customer")?;
    check(&cannot_start(&letter).await?, &letter, &["not a job book", "not changed"]);
    assert_eq!(fs::read_to_string(&letter)?, "Dear customer", "what is no book is not ours to change");
    Ok(())
}

#[tokio::test]
async fn a_book_in_use_is_not_opened_twice() -> Tested {
    let first = App::start().await?;
    first.step().wait_for("the first view", |seen| !seen.revision.is_empty()).await?;
    check(&cannot_start(first.book()).await?, first.book(), &["in use", "nothing was recorded"]);
    first.step().wait_for("its view still", |seen| !seen.revision.is_empty()).await?;
    first.close().await
}

#[tokio::test]
async fn a_folder_that_is_not_there_is_named() -> Tested {
    let folder = tempfile::tempdir()?;
    let missing = folder.path().join("nowhere");
    check(&cannot_start(&missing.join("book.db")).await?, &missing, &["does not exist"]);
    Ok(())
}

/// Where there is no screen the app says so, and what to do, and fails as a program does: no panic.
#[test]
fn without_a_screen_the_shell_is_told() -> Tested {
    let folder = tempfile::tempdir()?;
    let book = folder.path().join("book.db");
    let told = Command::new(App::binary()?)
        .arg("--book")
        .arg(&book)
        .env_remove("DISPLAY")
        .env_remove("WAYLAND_DISPLAY")
        .env("XDG_DATA_HOME", folder.path())
        .output()?;
    let says = String::from_utf8_lossy(&told.stderr);
    assert_eq!(told.status.code(), Some(1), "{says}");
    assert!(says.contains("no screen") && says.contains("bayhand-cli") && !says.contains("panicked"), "{says}");
    assert!(!book.exists(), "no book is made by an app that could not be seen");
    Ok(())
}
