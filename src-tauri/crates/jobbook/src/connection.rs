//! Connections to the file: how they are set up, and the proof that the settings took.

use std::path::Path;
use std::time::Duration;

use sqlx::migrate::{MigrateError, Migrator};
use sqlx::sqlite::{SqliteConnectOptions, SqliteJournalMode, SqliteSynchronous};
use sqlx::{ConnectOptions as _, Connection as _, SqliteConnection};

use crate::BookError;
use crate::error::{AtPath as _, SQLITE_CANTOPEN, SQLITE_READONLY, primary_code};
use crate::place::Place;
use crate::rows;

/// The formats of the book, oldest first. Each sets `user_version` to its place in this list.
static FORMATS: Migrator = sqlx::migrate!();

/// `application_id` of a book, set by the first migration: 'BYHD' in ASCII.
const APPLICATION_ID: i64 = 0x4259_4844;

/// <https://www.sqlite.org/fileformat.html#the_database_header>
const SQLITE_HEADER_BYTES: u64 = 100;

/// How long to wait for another program's transaction, in milliseconds: a person waits that long for an answer.
const PATIENCE_MS: u64 = 2000;

/// What makes an answer mean 'it is on the disk'. In WAL mode only FULL syncs at every commit; NORMAL may lose the
/// last commits at a power cut (<https://www.sqlite.org/pragma.html#pragma_synchronous>).
const DURABLE: [(&str, &str, &str); 3] = [
    ("journal_mode", "PRAGMA journal_mode", "wal"),
    ("synchronous", "PRAGMA synchronous", "2"),
    ("foreign_keys", "PRAGMA foreign_keys", "1"),
];

/// The newest format that this program knows.
fn newest_format() -> u32 {
    FORMATS.iter().count() as u32
}

/// Connects for writing to a book that exists, brings it to the newest format and proves that it can be written.
pub(crate) async fn writing(place: &Place) -> Result<SqliteConnection, BookError> {
    let path = place.path();
    let mut connection = durable_options(path).connect().await.at_path(path)?;
    identify(&mut connection, path).await?;
    assert_durable(&mut connection, path).await?;
    // SQLite opens a file that it may not write for reading, without a word, and even begins a transaction on it.
    let mut attempt = connection.begin_with("BEGIN IMMEDIATE").await.at_path(path)?;
    rows::write_nothing(&mut attempt).await.at_path(path)?;
    attempt.rollback().await.at_path(path)?;
    bring_up_to_date(&mut connection, path).await?;
    Ok(connection)
}

/// Connects for reading only, without the lock.
pub(crate) async fn reading(place: &Place) -> Result<SqliteConnection, BookError> {
    let path = place.path();
    if !place.has_lock_file() {
        look(place).await?;
    }
    let options = SqliteConnectOptions::new().filename(path).read_only(true);
    let mut connection = options.clone().connect().await.at_path(path)?;
    match rows::application_id(&mut connection).await {
        // Reading a book in WAL mode needs a file beside it. Where none can be made nobody can be writing either, and
        // when there is no log to read the file alone is the whole book.
        Err(error)
            if matches!(primary_code(&error), Some(SQLITE_CANTOPEN | SQLITE_READONLY)) && !has_bytes(&place.log()) =>
        {
            connection = options.immutable(true).connect().await.at_path(path)?;
        }
        _ => {}
    }
    identify(&mut connection, path).await?;
    let (book, program) = (rows::user_version(&mut connection).await.at_path(path)?, newest_format());
    if book < program {
        return Err(BookError::OlderThanProgram { path: path.into(), book, program });
    }
    Ok(connection)
}

/// Makes a new, empty book under another name, and only then gives it its own. Only to be called with the lock held.
pub(crate) async fn create(place: &Place) -> Result<(), BookError> {
    let (path, unfinished) = (place.path(), place.unfinished());
    if place.log().exists() {
        return Err(BookError::LogWithoutBook { path: path.into(), log: place.log() });
    }
    place.clear_unfinished()?;
    let mut connection = durable_options(&unfinished).create_if_missing(true).connect().await.at_path(path)?;
    bring_up_to_date(&mut connection, path).await?;
    // The last connection to close moves everything out of the log and removes it, so that the one file is the book.
    connection.close().await.at_path(path)?;
    place.finish()
}

/// Looks, without leaving a trace beside it, whether a file is a book. Not to be called while a book is open on it in
/// this process: SQLite's locks would be dropped.
///
/// A program that was killed while it moved its log into the file leaves a file that is whole only together with the
/// log, so with a log the file is never looked at alone.
pub(crate) async fn look(place: &Place) -> Result<(), BookError> {
    let path = place.path();
    let alone = !has_bytes(&place.log());
    let options = SqliteConnectOptions::new().filename(path).read_only(true).immutable(alone);
    let mut connection = options.connect().await.at_path(path)?;
    identify(&mut connection, path).await?;
    connection.close().await.at_path(path)
}

/// An empty book in memory: what the tables and guards of a book are.
pub(crate) async fn new_in_memory(path: &Path) -> Result<SqliteConnection, BookError> {
    let mut connection = SqliteConnectOptions::new().in_memory(true).connect().await.at_path(path)?;
    bring_up_to_date(&mut connection, path).await?;
    Ok(connection)
}

fn durable_options(path: &Path) -> SqliteConnectOptions {
    SqliteConnectOptions::new()
        .filename(path)
        .journal_mode(SqliteJournalMode::Wal)
        .synchronous(SqliteSynchronous::Full)
        .foreign_keys(true)
        .busy_timeout(Duration::from_millis(PATIENCE_MS))
        // Where a plain sync stops in the disk's own memory (macOS), these go through to the disk.
        .pragma("fullfsync", "1")
        // What is erased is overwritten, not only left out.
        .pragma("secure_delete", "1")
        .pragma("checkpoint_fullfsync", "1")
}

/// Refuses what is not a book or is newer than this program.
async fn identify(connection: &mut SqliteConnection, path: &Path) -> Result<(), BookError> {
    // SQLite takes a file shorter than its header for a database in which there is nothing yet.
    let not_a_book = |found| Err(BookError::NotABook { path: path.into(), found });
    match path.metadata().at_path(path)?.len() {
        0 => return not_a_book(crate::Instead::Empty),
        1..SQLITE_HEADER_BYTES => return not_a_book(crate::Instead::OtherKind),
        _ => {}
    }
    if rows::application_id(connection).await.at_path(path)? != APPLICATION_ID {
        return not_a_book(crate::Instead::OtherProgram);
    }
    let (book, program) = (rows::user_version(connection).await.at_path(path)?, newest_format());
    if book > program {
        return Err(BookError::NewerThanProgram { path: path.into(), book, program });
    }
    Ok(())
}

/// Reads the settings back and refuses a connection on which an answer would not mean 'it is on the disk'.
async fn assert_durable(connection: &mut SqliteConnection, path: &Path) -> Result<(), BookError> {
    for (setting, question, wanted) in DURABLE {
        let found = rows::setting(connection, question).await.at_path(path)?;
        if found != wanted {
            return Err(BookError::NotDurable { path: path.into(), setting, wanted, found });
        }
    }
    Ok(())
}

async fn bring_up_to_date(connection: &mut SqliteConnection, path: &Path) -> Result<(), BookError> {
    // Not `run`: its `Acquire` makes every future above it one that a window's runtime cannot send between threads.
    FORMATS.run_direct(None, connection, false).await.or_else(|error| match error {
        MigrateError::Execute(error) | MigrateError::ExecuteMigration(error, _) => Err(error).at_path(path),
        other => Err(BookError::Damaged { path: path.into(), detail: other.to_string() }),
    })
}

fn has_bytes(path: &Path) -> bool {
    path.metadata().is_ok_and(|data| data.len() > 0)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]
mod tests {
    use super::*;

    async fn check(options: impl Fn(SqliteConnectOptions) -> SqliteConnectOptions, refused: Option<&str>) {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("book.db");
        let options = options(durable_options(&path).create_if_missing(true));
        let mut connection = options.connect().await.unwrap();
        let found = match assert_durable(&mut connection, &path).await {
            Ok(()) => None,
            Err(BookError::NotDurable { setting, .. }) => Some(setting),
            Err(other) => panic!("only a setting should be refused here, not: {other}"),
        };
        assert_eq!(found, refused, "the settings are read back from SQLite, not believed");
    }

    #[tokio::test]
    async fn the_settings_of_a_book_are_durable() {
        check(|options| options, None).await;
    }

    #[tokio::test]
    async fn a_weaker_setting_is_refused_by_name() {
        check(|options| options.synchronous(SqliteSynchronous::Normal), Some("synchronous")).await;
        check(|options| options.journal_mode(SqliteJournalMode::Delete), Some("journal_mode")).await;
        check(|options| options.foreign_keys(false), Some("foreign_keys")).await;
    }

    #[tokio::test]
    async fn the_newest_format_is_the_number_of_migrations() {
        let mut connection = new_in_memory(Path::new("in memory")).await.unwrap();
        assert_eq!(
            rows::user_version(&mut connection).await.unwrap(),
            newest_format(),
            "a migration that does not set user_version would hide a newer book from an older program"
        );
    }
}
