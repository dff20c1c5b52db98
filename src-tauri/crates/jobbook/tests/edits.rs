//! Ten thousand edits (in the short form fewer): whatever is changed in a book by other means than the program is found.
//!
//! Each edit is made past the guards in a copy of a book that has all there is: people, a sealed job, a job opened again,
//! a stopped one, customer data set, replaced and erased, an imported job. What is stored after the edit is compared with
//! what was stored before, by this test's own reading, so that an edit that changed nothing does not count.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use std::collections::BTreeMap;
use std::path::Path;

use bayhand_jobbook::event::Closed;
use bayhand_jobbook::{Along, Book, BookEvent, JobId, Mark, Person, Rank};
use common::{
    PASSPHRASE, at, bodies, by_other_means, past_the_guards, person, place, secret, staffed, try_past_the_guards,
};
use sqlx::sqlite::SqliteConnectOptions;
use sqlx::{ConnectOptions as _, Connection as _, Row as _};

const SEED: u64 = 20_261_125;
/// Edits of the usual and of the long form (`BAYHAND_LONG=1`).
const EDITS: (u64, u64) = (300, 10_000);

/// Everything stored: a list of rows for each table, each value as SQLite quotes it.
type Stored = BTreeMap<&'static str, Vec<Vec<String>>>;

/// The list of jobs (`card`) is not among them: it holds nothing of its own. That it shows what the entries make is looked
/// at by whoever knows what they mean, in the tests of `bayhand-job`.
const TABLES: [(&str, &[&str]); 4] = [
    ("entry", &["mono", "job", "number", "at", "body", "hash"]),
    ("job", &["id", "opened"]),
    ("apart", &["hash", "salt", "text"]),
    ("imported", &["hash", "text"]),
];

/// How often an edit was made, changed anything, or was refused.
#[derive(Default)]
struct Count {
    made: u64,
    changed: u64,
    refused: u64,
}

/// xorshift64 (Marsaglia 2003).
struct Random(u64);

impl Random {
    fn below(&mut self, below: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 % below
    }
}

async fn stored(path: &Path) -> Option<Stored> {
    let mut connection = SqliteConnectOptions::new().filename(path).read_only(true).connect().await.ok()?;
    let mut stored = Stored::new();
    for (table, columns) in TABLES {
        let quoted: Vec<_> = columns.iter().map(|column| format!("quote({column})")).collect();
        let sql = format!("SELECT {} FROM {table} ORDER BY 1, 2", quoted.join(", "));
        let rows = sqlx::query(sqlx::AssertSqlSafe(sql)).fetch_all(&mut connection).await.ok()?;
        let row = |row: &sqlx::sqlite::SqliteRow| {
            (0..columns.len())
                .map(|i| String::from_utf8_lossy(&row.get_unchecked::<Vec<u8>, _>(i)).into_owned())
                .collect()
        };
        stored.insert(table, rows.iter().map(row).collect());
    }
    connection.close().await.ok()?;
    Some(stored)
}

/// A book with all there is; closed. Gives the code of the seal of job 1.
async fn model(path: &Path) -> String {
    let (_other_folder, other) = place();
    let (book, _) = staffed(&other).await;
    let (job, _) = book.open_job(r#"{"from":"another bay"}"#, at()).await.unwrap();
    let export = book.export(job).await.unwrap().text();
    book.close().await.unwrap();

    let (book, _) = staffed(path).await;
    let trainee = Person { alone: vec!["walk".into()], ..person("RO", Rank::Trainee) };
    book.enrol("MT", trainee, &secret("1357"), at()).await.unwrap();
    book.set_pin("MT", "RO", &secret("7531"), at()).await.unwrap();
    let _ = book.check_pin("RO", &secret("1111"), at()).await;
    let key = book.unlock("MT", &secret(PASSPHRASE)).await.unwrap();
    let seal = Along { card: Some("sealed"), mark: Mark::IsSealed { by: "MT", key: &key } };
    for job in 1..=3 {
        let (job, _) =
            book.open_job_with(r#"{"first":true}"#, Some("begun"), at()).await.unwrap_or_else(|e| panic!("{job}: {e}"));
        book.append(job, 1, &bodies(&[r#"{"load_kg":"251.5"}"#, r#"{"load_kg":"249.0"}"#]), at()).await.unwrap();
    }
    book.append_with(JobId(1), 3, &bodies(&[r#"{"sealed":true}"#]), seal, at()).await.unwrap();
    book.append_with(JobId(2), 3, &bodies(&[r#"{"sealed":true}"#]), seal, at()).await.unwrap();
    let again = Along { card: Some("again"), mark: Mark::OpensAgain { by: "MT", reason: "a tyre" } };
    book.append_with(JobId(2), 4, &bodies(&["{}"]), again, at()).await.unwrap();
    let stopped = Along { card: None, mark: Mark::Ends(Closed::Stopped) };
    book.append_with(JobId(3), 3, &bodies(&["{}"]), stopped, at()).await.unwrap();
    for text in ["The owner", "The new owner"] {
        let set = |names: Vec<String>| {
            vec![BookEvent::CustomerSet { by: "RO".into(), job: JobId(1), customer: names[0].clone() }]
        };
        book.note(vec![text.into()], set, at()).await.unwrap();
    }
    book.import(&export, "MT", at()).await.unwrap();
    // Something after all of it, so that a cut-off tail has a book behind it. The very end is another matter: the code.
    book.open_job_with("{}", Some("last"), at()).await.unwrap();
    let code = book.seal_of(JobId(1)).await.unwrap().unwrap().0;
    book.verify().await.expect("the model is sound");
    book.close().await.unwrap();
    code
}

/// What is done to the copy: a name for the table, and the SQL.
fn edit(random: &mut Random, stored: &Stored) -> (String, String) {
    let table = ["entry", "entry", "entry", "entry", "job", "job", "apart", "imported"][random.below(8) as usize];
    let columns = TABLES.iter().find(|(name, _)| *name == table).unwrap().1;
    let rows = &stored[table];
    let any = |random: &mut Random| rows[random.below(rows.len() as u64) as usize].clone();
    let (row, other) = (any(random), any(random));
    let key = |row: &[String]| format!("{} IS {}", columns[0], row[0]);
    match random.below(7) {
        0 => (format!("{table}: a row deleted"), format!("DELETE FROM {table} WHERE {}", key(&row))),
        1 => {
            let column = random.below(columns.len() as u64) as usize;
            let (name, value) = (columns[column], &other[column]);
            (
                format!("{table}.{name}: another row's value"),
                format!("UPDATE OR IGNORE {table} SET {name} = {value} WHERE {}", key(&row)),
            )
        }
        2 => {
            let column = random.below(columns.len() as u64) as usize;
            let (name, old) = (columns[column], &row[column]);
            let new = altered(old, random);
            (
                format!("{table}.{name}: altered"),
                format!("UPDATE OR IGNORE {table} SET {name} = {new} WHERE {}", key(&row)),
            )
        }
        3 if table == "entry" => {
            // Two entries exchange all but their places.
            let swap = ["at", "body", "hash"].map(|name| {
                let at = columns.iter().position(|column| *column == name).unwrap();
                format!("{name} = CASE mono WHEN {} THEN {} ELSE {} END", row[0], other[at], row[at])
            });
            let sql = format!("UPDATE entry SET {} WHERE mono IN ({}, {})", swap.join(", "), row[0], other[0]);
            ("entry: two exchanged".into(), sql)
        }
        4 => {
            let job = 1 + random.below(4);
            let parts =
                ["card WHERE job", "entry WHERE job", "job WHERE id"].map(|p| format!("DELETE FROM {p} = {job}"));
            ("a whole job removed".into(), parts.join("; "))
        }
        5 => {
            let job = random.below(5);
            let left = random.below(4);
            let sql =
                format!("DELETE FROM card WHERE job = {job}; DELETE FROM entry WHERE job = {job} AND number > {left}");
            ("a tail of one chain cut off".into(), sql)
        }
        _ => {
            let values: Vec<_> = row.iter().map(|old| altered(old, random)).collect();
            (format!("{table}: a row added"), format!("INSERT OR IGNORE INTO {table} VALUES ({})", values.join(", ")))
        }
    }
}

/// Another value of the same kind: one sign of a quoted text, one digit of a blob, a number nearby.
fn altered(quoted: &str, random: &mut Random) -> String {
    let signs: Vec<char> = quoted.chars().collect();
    if let Ok(number) = quoted.parse::<i64>() {
        return (number + 1 + random.below(3) as i64).to_string();
    }
    let from = if quoted.starts_with('X') { 2 } else { 1 };
    if signs.len() < from + 2 {
        return "'x'".into();
    }
    let at = from + random.below((signs.len() - from - 1) as u64) as usize;
    let (digits, letters) = ("0123456789ABCDEF", "0123456789abcdefghijklmnopqrstuvwxyz");
    let choice = if from == 2 { digits } else { letters };
    let new = choice.chars().nth(random.below(choice.len() as u64) as usize).unwrap();
    // A quote is written twice; leave those alone.
    let signs = signs.into_iter().enumerate().map(|(place, sign)| if place == at && sign != '\'' { new } else { sign });
    signs.collect()
}

#[tokio::test]
async fn every_edit_that_changes_what_is_stored_is_found() {
    let edits = if std::env::var_os("BAYHAND_LONG").is_some() { EDITS.1 } else { EDITS.0 };
    println!("seed {SEED}, {edits} edits");
    let (folder, path) = place();
    let code = model(&path).await;
    let before = stored(&path).await.unwrap();
    let mut random = Random(SEED);
    let mut counts: BTreeMap<String, Count> = BTreeMap::new();
    let mut last_cut = 0;
    for round in 0..edits {
        let copy = folder.path().join(format!("copy-{round}.db"));
        std::fs::copy(&path, &copy).unwrap();
        let (name, sql) = if round % 5 == 4 { flip(&copy, &mut random) } else { edit(&mut random, &before) };
        let refused = !sql.is_empty() && try_past_the_guards(&copy, &sql).await.is_err();
        if refused {
            // The types and keys of the tables do not let it be.
            counts.entry(name).or_default().refused += 1;
            continue;
        }
        let after = stored(&copy).await;
        let changed = after.as_ref() != Some(&before);
        let count = counts.entry(name.clone()).or_default();
        count.made += 1;
        if changed {
            count.changed += 1;
            let found = match Book::open_read_only(&copy).await {
                Ok(book) => {
                    let verified = book.verify().await;
                    let cut = verified.is_ok() && is_tail_cut(&before, after.as_ref());
                    last_cut += u64::from(cut);
                    // The very end of the whole book is found by the code on the sheet or by a copy, not in the book.
                    let beside = || async { book.verify_against(&Book::open_read_only(&path).await.unwrap()).await };
                    verified.is_err() || (cut && beside().await.is_err())
                }
                Err(_) => true,
            };
            assert!(found, "round {round}: {name} is not found: {sql}");
        }
        std::fs::remove_file(&copy).unwrap();
        let _ = std::fs::remove_file(copy.with_extension("db.lock"));
    }
    println!("  made, changed what is stored and were found; refused by types and keys");
    for (name, Count { made, changed, refused }) in &counts {
        println!("{made:6} {changed:6} {refused:6}  {name}");
    }
    println!("of these, cut off the very end and found beside a copy: {last_cut}");
    let changed: u64 = counts.values().map(|count| count.changed).sum();
    assert!(changed > edits / 3, "control: most edits change something, {changed} of {edits}");
    let sound = Book::open_read_only(&path).await.unwrap();
    sound.verify().await.expect("control: the model itself is sound");
    sound.verify_code(JobId(1), &code).await.expect("and carries its seal");
}

/// Whether the edit left a shorter book and nothing else: entries of the end are gone, all others as they were. What the
/// lists derive from entries may go with them.
fn is_tail_cut(before: &Stored, after: Option<&Stored>) -> bool {
    let Some(after) = after else { return false };
    let (long, short) = (&before["entry"], &after["entry"]);
    let mono = |row: &Vec<String>| row[0].parse::<u64>().unwrap();
    let (mut long, mut short) = (long.clone(), short.clone());
    long.sort_by_key(mono);
    short.sort_by_key(mono);
    short.len() < long.len() && long.starts_with(&short)
}

/// One bit of the file itself.
fn flip(copy: &Path, random: &mut Random) -> (String, String) {
    let mut bytes = std::fs::read(copy).unwrap();
    let at = random.below(bytes.len() as u64) as usize;
    bytes[at] ^= 1 << random.below(8);
    std::fs::write(copy, bytes).unwrap();
    ("a bit of the file".into(), String::new())
}

/// Where an edit concerns what cannot stand beside the guards, the guards themselves say so.
#[tokio::test]
async fn the_way_of_editing_alone_is_not_what_is_found() {
    let (_folder, path) = place();
    model(&path).await;
    past_the_guards(&path, "SELECT 1").await;
    Book::open_read_only(&path).await.unwrap().verify().await.expect("guards that went and came back are whole");
    by_other_means(&path, "DROP TRIGGER apart_is_never_changed").await.unwrap();
    assert!(Book::open_read_only(&path).await.unwrap().verify().await.is_err(), "a guard that is gone is found");
}
