//! A book that may be read but not written. Run by a user without rights: the superuser may write anything.

#![cfg(unix)]
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use std::fs::{self, Permissions};
use std::os::unix::fs::{MetadataExt as _, PermissionsExt as _};
use std::os::unix::process::CommandExt as _;
use std::path::{Path, PathBuf};
use std::process::Command;

use bayhand_jobbook::{Book, BookError, JobId, Verified};
use common::{at, bodies, place, three_jobs};

/// Set in the process that plays the user without rights.
const FOLDER: &str = "BAYHAND_TEST_READ_ONLY_FOLDER";
/// The user 'nobody' on the systems on which these tests run.
const NOBODY: u32 = 65534;

#[tokio::test]
async fn a_book_that_may_not_be_written_can_still_be_read() {
    match std::env::var_os(FOLDER) {
        Some(folder) => without_rights(&PathBuf::from(folder)).await,
        None => with_rights().await,
    }
}

async fn with_rights() {
    let (folder, path) = place();
    three_jobs(&path).await;
    let open = folder.path().join("open");
    fs::create_dir(&open).unwrap();
    fs::copy(&path, open.join("jobs.db")).unwrap();
    let program = folder.path().join("this-test");
    fs::copy(std::env::current_exe().unwrap(), &program).unwrap();
    for (file, mode) in [
        (path.as_path(), 0o444),
        (&open.join("jobs.db"), 0o444),
        (&open, 0o777),
        (&program, 0o555),
        (folder.path(), 0o555),
    ] {
        fs::set_permissions(file, Permissions::from_mode(mode)).unwrap();
    }

    let mut child = Command::new(&program);
    child.args(["--exact", "a_book_that_may_not_be_written_can_still_be_read", "--nocapture"]);
    child.env(FOLDER, folder.path()).current_dir("/");
    if folder.path().metadata().unwrap().uid() == 0 {
        child.uid(NOBODY).gid(NOBODY);
    }
    let output = child.output().unwrap();
    fs::set_permissions(folder.path(), Permissions::from_mode(0o755)).unwrap();
    let said = String::from_utf8_lossy(&output.stdout);
    assert!(
        output.status.success(),
        "the user without rights found: {said}{}",
        String::from_utf8_lossy(&output.stderr)
    );
    assert!(said.contains("looked at both books"), "the other process did run the checks: {said}");
}

async fn without_rights(folder: &Path) {
    assert!(fs::write(folder.join("probe"), "").is_err(), "control: this user may not write the folder");
    for path in [folder.join("jobs.db"), folder.join("open/jobs.db")] {
        let error = Book::open_or_create(&path).await.err().expect("it must not open for writing");
        assert!(matches!(error, BookError::ReadOnly { .. }), "{}: {error}", path.display());

        let book = Book::open_read_only(&path).await.unwrap();
        assert_eq!(
            book.verify().await.unwrap(),
            Verified { jobs: 3, entries: 8, ..Verified::default() },
            "all of it can be read"
        );
        let error = book.append(JobId(1), 4, &bodies(&["{}"]), at()).await.expect_err("nothing can be written");
        assert!(matches!(error, BookError::ReadOnly { .. }), "{}: {error}", path.display());
    }
    let error = Book::open_or_create(&folder.join("new.db")).await.err().expect("no book can be made here");
    assert!(matches!(error, BookError::ReadOnly { .. }), "{error}");
    println!("looked at both books");
}
