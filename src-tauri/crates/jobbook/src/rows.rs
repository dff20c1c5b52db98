//! The SQL: one function for each statement, from and to plain rows. Nothing here judges what it reads.

use sqlx::SqliteConnection;
use sqlx::sqlite::SqliteRow;
use sqlx::{FromRow, Row as _};

use crate::JobId;
use crate::chain::Link;

/// An entry as it lies in the file. Texts are kept as bytes: after tampering they need not be text.
#[derive(FromRow)]
pub(crate) struct Stored {
    pub(crate) number: u64,
    pub(crate) mono: u64,
    pub(crate) at: Vec<u8>,
    pub(crate) body: Vec<u8>,
    pub(crate) hash: Vec<u8>,
}

/// Where the next entry goes: the ends of a job's chain, of the book's own and of the whole book. Nothing is zero.
#[derive(FromRow)]
pub(crate) struct Ends {
    pub(crate) number: u64,
    pub(crate) hash: Vec<u8>,
    pub(crate) book_number: u64,
    pub(crate) book_hash: Vec<u8>,
    pub(crate) mono: u64,
    pub(crate) at: String,
}

/// A job with the length and the last hash of its chain.
#[derive(FromRow)]
pub(crate) struct Job {
    pub(crate) id: i64,
    pub(crate) opened: String,
    pub(crate) len: u64,
    pub(crate) head: Option<Vec<u8>>,
    pub(crate) card: Option<String>,
    pub(crate) card_len: Option<u64>,
}

/// A text told apart, or an imported one, as it lies in the file.
#[derive(FromRow)]
pub(crate) struct Told {
    pub(crate) hash: Vec<u8>,
    pub(crate) salt: Vec<u8>,
    pub(crate) text: Vec<u8>,
}

/// An entry before which the count over the whole book jumps.
#[derive(FromRow)]
pub(crate) struct Jump {
    pub(crate) job: i64,
    pub(crate) number: u64,
    pub(crate) missing: u64,
}

type Answer<T> = Result<T, sqlx::Error>;

pub(crate) async fn application_id(connection: &mut SqliteConnection) -> Answer<i64> {
    sqlx::query_scalar("PRAGMA application_id").fetch_one(connection).await
}

pub(crate) async fn user_version(connection: &mut SqliteConnection) -> Answer<u32> {
    sqlx::query_scalar("PRAGMA user_version").fetch_one(connection).await
}

/// A setting's value as text, whether SQLite gives a number or a word.
pub(crate) async fn setting(connection: &mut SqliteConnection, question: &'static str) -> Answer<String> {
    sqlx::query(question).try_map(|row: SqliteRow| row.try_get_unchecked(0)).fetch_one(connection).await
}

/// Asks for the right to write, and writes nothing.
pub(crate) async fn write_nothing(connection: &mut SqliteConnection) -> Answer<()> {
    sqlx::query("UPDATE job SET opened = opened WHERE false").execute(connection).await?;
    Ok(())
}

pub(crate) async fn has_job(connection: &mut SqliteConnection, job: JobId) -> Answer<bool> {
    sqlx::query_scalar("SELECT EXISTS (SELECT 1 FROM job WHERE id = ?)").bind(job.0).fetch_one(connection).await
}

pub(crate) async fn last_job(connection: &mut SqliteConnection) -> Answer<i64> {
    sqlx::query_scalar("SELECT max(id) FROM job").fetch_one(connection).await
}

pub(crate) async fn ends(connection: &mut SqliteConnection, job: JobId) -> Answer<Ends> {
    sqlx::query_as(
        "SELECT coalesce(j.number, 0) AS number, coalesce(j.hash, x'') AS hash,
                coalesce(b.number, 0) AS book_number, coalesce(b.hash, x'') AS book_hash,
                coalesce(l.mono, 0) AS mono, coalesce(l.at, '') AS at
         FROM (SELECT 1)
         LEFT JOIN (SELECT number, hash FROM entry WHERE job = ? ORDER BY number DESC LIMIT 1) j
         LEFT JOIN (SELECT number, hash FROM entry WHERE job = 0 ORDER BY number DESC LIMIT 1) b
         LEFT JOIN (SELECT mono, at FROM entry ORDER BY mono DESC LIMIT 1) l",
    )
    .bind(job.0)
    .fetch_one(connection)
    .await
}

/// What the list shows of a job, in place of what it showed before; nothing takes that away.
pub(crate) async fn set_card(
    connection: &mut SqliteConnection,
    job: JobId,
    len: u64,
    card: Option<&str>,
) -> Answer<()> {
    match card {
        Some(card) => {
            sqlx::query("INSERT OR REPLACE INTO card (job, len, text) VALUES (?, ?, ?)")
                .bind(job.0)
                .bind(len.cast_signed())
                .bind(card)
                .execute(connection)
                .await?
        }
        None => sqlx::query("DELETE FROM card WHERE job = ?").bind(job.0).execute(connection).await?,
    };
    Ok(())
}

pub(crate) async fn insert_apart(
    connection: &mut SqliteConnection,
    hash: &[u8],
    salt: &[u8],
    text: &str,
) -> Answer<()> {
    sqlx::query("INSERT INTO apart (hash, salt, text) VALUES (?, ?, ?)")
        .bind(hash)
        .bind(salt)
        .bind(text)
        .execute(connection)
        .await?;
    Ok(())
}

pub(crate) async fn remove_apart(connection: &mut SqliteConnection, hash: &[u8]) -> Answer<()> {
    sqlx::query("DELETE FROM apart WHERE hash = ?").bind(hash).execute(connection).await?;
    Ok(())
}

pub(crate) async fn apart_text(connection: &mut SqliteConnection, hash: &[u8]) -> Answer<Option<String>> {
    sqlx::query_scalar("SELECT text FROM apart WHERE hash = ?").bind(hash).fetch_optional(connection).await
}

pub(crate) async fn all_apart(connection: &mut SqliteConnection) -> Answer<Vec<Told>> {
    sqlx::query_as("SELECT hash, salt, text FROM apart ORDER BY hash").fetch_all(connection).await
}

pub(crate) async fn insert_imported(connection: &mut SqliteConnection, hash: &[u8], text: &str) -> Answer<()> {
    sqlx::query("INSERT INTO imported (hash, text) VALUES (?, ?)").bind(hash).bind(text).execute(connection).await?;
    Ok(())
}

pub(crate) async fn all_imported(connection: &mut SqliteConnection) -> Answer<Vec<Told>> {
    sqlx::query_as("SELECT hash, x'' AS salt, text FROM imported ORDER BY hash").fetch_all(connection).await
}

/// Brings everything out of the log into the file and empties it.
pub(crate) async fn empty_log(connection: &mut SqliteConnection) -> Answer<()> {
    sqlx::query("PRAGMA wal_checkpoint(TRUNCATE)").fetch_all(connection).await?;
    Ok(())
}

/// Copies the whole book as it stands at one moment into a new file.
pub(crate) async fn vacuum_into(connection: &mut SqliteConnection, path: &str) -> Answer<()> {
    sqlx::query("VACUUM INTO ?").bind(path).execute(connection).await?;
    Ok(())
}

pub(crate) async fn insert_job(connection: &mut SqliteConnection, job: JobId, opened: &str) -> Answer<()> {
    sqlx::query("INSERT INTO job (id, opened) VALUES (?, ?)").bind(job.0).bind(opened).execute(connection).await?;
    Ok(())
}

/// `at` and `body` are texts, and stored as such.
pub(crate) async fn insert_entry(
    connection: &mut SqliteConnection,
    (job, number, mono): (JobId, u64, u64),
    at: &str,
    body: &str,
    hash: &[u8],
) -> Answer<()> {
    sqlx::query("INSERT INTO entry (mono, job, number, at, body, hash) VALUES (?, ?, ?, ?, ?, ?)")
        .bind(mono.cast_signed())
        .bind(job.0)
        .bind(number.cast_signed())
        .bind(at)
        .bind(body)
        .bind(hash)
        .execute(connection)
        .await?;
    Ok(())
}

pub(crate) async fn stored(connection: &mut SqliteConnection, job: JobId) -> Answer<Vec<Stored>> {
    sqlx::query_as("SELECT number, mono, at, body, hash FROM entry WHERE job = ? ORDER BY number")
        .bind(job.0)
        .fetch_all(connection)
        .await
}

pub(crate) async fn jobs(connection: &mut SqliteConnection) -> Answer<Vec<Job>> {
    sqlx::query_as(
        "SELECT id, opened, coalesce(e.number, 0) AS len, e.hash AS head, card.text AS card, card.len AS card_len
         FROM job
         LEFT JOIN entry e ON e.job = id AND e.number = (SELECT max(number) FROM entry WHERE job = id)
         LEFT JOIN card ON card.job = id
         WHERE id <> 0 ORDER BY id",
    )
    .fetch_all(connection)
    .await
}

/// The highest job number in either table.
pub(crate) async fn highest_job(connection: &mut SqliteConnection) -> Answer<i64> {
    sqlx::query_scalar("SELECT max(coalesce((SELECT max(id) FROM job), 0), coalesce((SELECT max(job) FROM entry), 0))")
        .fetch_one(connection)
        .await
}

pub(crate) async fn first_jump(connection: &mut SqliteConnection) -> Answer<Option<Jump>> {
    sqlx::query_as(
        "SELECT job, number, mono - before - 1 AS missing
         FROM (SELECT job, number, mono, lag(mono, 1, 0) OVER (ORDER BY mono) AS before FROM entry)
         WHERE mono <> before + 1 ORDER BY mono LIMIT 1",
    )
    .fetch_optional(connection)
    .await
}

/// How many rows there are of jobs (the book itself is one), of entries, and of cards.
pub(crate) async fn counts(connection: &mut SqliteConnection) -> Answer<(u64, u64, u64)> {
    sqlx::query_as("SELECT (SELECT count(*) FROM job), (SELECT count(*) FROM entry), (SELECT count(*) FROM card)")
        .fetch_one(connection)
        .await
}

/// SQLite's own check of the file: 'ok', or the first thing that is wrong.
pub(crate) async fn integrity(connection: &mut SqliteConnection) -> Answer<String> {
    sqlx::query_scalar("PRAGMA integrity_check(1)").fetch_one(connection).await
}

/// The definition of every table, index and guard, by name.
pub(crate) async fn definitions(connection: &mut SqliteConnection) -> Answer<Vec<(String, String)>> {
    sqlx::query_as("SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name")
        .fetch_all(connection)
        .await
}

impl Stored {
    /// What this entry's hash covers, in the chain of `job`.
    pub(crate) fn link(&self, job: JobId) -> Link<'_> {
        Link { job: job.0, number: self.number, mono: self.mono, at: &self.at, body: &self.body }
    }
}
