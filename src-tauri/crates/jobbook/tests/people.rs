//! Who is in the list of people, who may change it, and what their secrets do.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_jobbook::{Book, BookError, BookEvent, Denied, JobId, Person, Rank};
use chrono::TimeDelta;
use common::{PASSPHRASE, PIN, at, person, place, secret, staffed};

/// Why a call was denied.
fn denied<T: std::fmt::Debug>(answer: Result<T, BookError>) -> Denied {
    match answer {
        Err(BookError::Denied(denied)) => denied,
        other => panic!("should be denied: {other:?}"),
    }
}

#[tokio::test]
async fn the_first_person_is_a_supervisor_and_there_is_one_first() {
    let (_folder, path) = place();
    let book = Book::open_or_create(&path).await.unwrap();
    assert!(!book.roster().await.unwrap().authenticates(), "a new book knows nobody");
    let first = |rank| book.first_supervisor(person("MT", rank), &PIN_SECRET, &PHRASE_SECRET, at());
    assert_eq!(denied(first(Rank::Technician).await), Denied::FirstIsASupervisor);
    first(Rank::Supervisor).await.unwrap();
    assert_eq!(denied(first(Rank::Supervisor).await), Denied::NotTheFirst);
    let roster = book.roster().await.unwrap();
    assert!(roster.authenticates() && roster.supervisor("MT").is_ok(), "the book knows its supervisor");
    assert_eq!(std::fs::read_dir(path.with_file_name("keys")).unwrap().count(), 1, "no key file was made in vain");
    book.verify().await.expect("and is sound");
}

static PIN_SECRET: std::sync::LazyLock<bayhand_jobbook::Secret> = std::sync::LazyLock::new(|| secret(PIN));
static PHRASE_SECRET: std::sync::LazyLock<bayhand_jobbook::Secret> = std::sync::LazyLock::new(|| secret(PASSPHRASE));

#[tokio::test]
async fn only_a_supervisor_keeps_the_list() {
    let (_folder, path) = place();
    let (book, _) = staffed(&path).await;
    let trainee = Person { alone: vec!["walk".into()], ..person("RO", Rank::Trainee) };
    book.enrol("MT", trainee.clone(), &secret("1357"), at()).await.unwrap();
    book.enrol("MT", person("LB", Rank::Technician), &secret("9753"), at()).await.unwrap();

    let enrol = |by: &'static str, person| {
        let book = &book;
        async move { denied(book.enrol(by, person, &secret("1470"), at()).await) }
    };
    assert_eq!(enrol("LB", person("AB", Rank::Trainee)).await, Denied::NotASupervisor("LB".into()));
    assert_eq!(enrol("XX", person("AB", Rank::Trainee)).await, Denied::Unknown("XX".into()));
    assert_eq!(enrol("MT", person("RO", Rank::Trainee)).await, Denied::Taken("RO".into()));
    assert_eq!(enrol("MT", person("ro", Rank::Trainee)).await, Denied::Initials("ro".into()));
    let alone = Person { alone: vec!["walk".into()], ..person("AB", Rank::Technician) };
    assert_eq!(enrol("MT", alone).await, Denied::AloneIsForTrainees);
    let nameless = Person { name: " ".into(), ..person("AB", Rank::Trainee) };
    assert_eq!(enrol("MT", nameless).await, Denied::Text("The name"));

    let note = |event| {
        let book = &book;
        async move { denied(book.note(Vec::new(), |_| vec![event], at()).await) }
    };
    let mt = |rank| BookEvent::PersonChanged { by: "MT".into(), person: person("MT", rank) };
    assert_eq!(note(mt(Rank::Technician)).await, Denied::LastSupervisor("MT".into()));
    let leave = |initials: &str| BookEvent::PersonLeft { by: "MT".into(), initials: initials.into() };
    assert_eq!(note(leave("MT")).await, Denied::LastSupervisor("MT".into()), "somebody has to keep the list");
    book.note(Vec::new(), |_| vec![leave("LB")], at()).await.unwrap();
    assert_eq!(denied(book.check_pin("LB", &secret("9753"), at()).await), Denied::Unknown("LB".into()), "has left");
    assert_eq!(enrol("MT", person("LB", Rank::Trainee)).await, Denied::Taken("LB".into()), "for ever");

    book.close().await.unwrap();
    let book = Book::open_existing(&path).await.unwrap();
    assert_eq!(book.roster().await.unwrap().member("RO").unwrap().person, trainee, "the list is in the book");
    book.verify().await.expect("which is sound");
}

#[tokio::test]
async fn wrong_pins_are_recorded_and_cost_time() {
    let (_folder, path) = place();
    let (book, _) = staffed(&path).await;
    let wrong = Denied::WrongPin { initials: "MT".into() };
    let wait = |seconds| Denied::Wait { initials: "MT".into(), seconds };
    let try_at = |pin: &'static str, seconds| {
        let book = &book;
        async move { book.check_pin("MT", &secret(pin), at() + TimeDelta::seconds(seconds)).await }
    };
    assert_eq!(try_at(PIN, 0).await.unwrap().initials, "MT", "the right one");
    for second in 0..3 {
        assert_eq!(denied(try_at("1111", second).await), wrong, "a wrong one");
    }
    assert_eq!(denied(try_at(PIN, 12).await), wait(20), "after three, even the right one waits: 30 s from the last");
    assert_eq!(denied(try_at("1111", 40).await), wrong, "a fourth");
    assert_eq!(denied(try_at(PIN, 41).await), wait(59), "the wait doubles");
    assert_eq!(denied(try_at(PIN, -9000).await), wait(60), "a clock that was set back does not make it longer");

    book.close().await.unwrap();
    let book = Book::open_existing(&path).await.unwrap();
    let late = at() + TimeDelta::seconds(70);
    assert_eq!(denied(book.check_pin("MT", &secret(PIN), late).await), wait(30), "a restart does not shorten it");
    book.check_pin("MT", &secret(PIN), at() + TimeDelta::seconds(101)).await.expect("after the wait");
    let later = at() + TimeDelta::seconds(102);
    assert_eq!(denied(book.check_pin("MT", &secret("1111"), later).await), wrong, "the count begins anew");
    let told = book.entries(JobId::BOOK).await.unwrap();
    let count = |kind: &str| told.iter().filter(|entry| entry.body.contains(kind)).count();
    assert_eq!((count("pin-refused"), count("pin-accepted")), (5, 1), "every wrong one stands in the record");
}

#[tokio::test]
async fn no_secret_stands_in_any_file() {
    let (folder, path) = place();
    let (book, code) = staffed(&path).await;
    let phrase = secret("another sentence to keep");
    book.set_pin("MT", "MT", &secret("86420864"), at()).await.unwrap();
    book.set_key("MT", "MT", &phrase, "the old one was seen", at()).await.unwrap();
    let _ = book.check_pin("MT", &secret("97539753"), at()).await;
    let _ = code;
    book.close().await.unwrap();
    let mut looked = 0;
    for file in walk(folder.path()) {
        let bytes = std::fs::read(&file).unwrap();
        for text in ["86420864", "97539753", PASSPHRASE, "another sentence to keep"] {
            let found = bytes.windows(text.len()).any(|window| window == text.as_bytes());
            assert!(!found, "{text} stands in {}", file.display());
        }
        looked += 1;
    }
    assert!(looked >= 4, "control: book, lock and two key files were looked at, {looked}");
}

fn walk(folder: &std::path::Path) -> Vec<std::path::PathBuf> {
    let entries = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    entries.flat_map(|path| if path.is_dir() { walk(&path) } else { vec![path] }).collect()
}

#[tokio::test]
async fn a_lost_secret_is_replaced_and_that_is_recorded() {
    let (_folder, path) = place();
    let (book, code) = staffed(&path).await;
    let (pin, phrase) = (secret("13572468"), secret("a new sentence, longer"));
    let wrong = secret("0000-0000-0000-0000-0000");
    assert_eq!(denied(book.recover("MT", &wrong, &pin, &phrase, at()).await), Denied::WrongCode);
    let next = book.recover("MT", &code, &pin, &phrase, at()).await.unwrap();
    book.check_pin("MT", &pin, at()).await.expect("the new PIN");
    book.unlock("MT", &phrase).await.expect("the new passphrase");
    let old = denied(book.unlock("MT", &secret(PASSPHRASE)).await);
    assert_eq!(old, Denied::WrongPassphrase("MT".into()), "the old one opens nothing any more");
    assert_eq!(denied(book.recover("MT", &code, &pin, &phrase, at()).await), Denied::WrongCode, "a code counts once");
    book.recover("MT", &next, &pin, &phrase, at()).await.expect("the next one counts");
    let told = book.entries(JobId::BOOK).await.unwrap();
    let recovered = told.iter().filter(|entry| entry.body.contains(r#""kind":"recovered""#)).count();
    assert_eq!(recovered, 2, "each recovery stands in the record");
    book.verify().await.expect("what was replaced is gone by right");
}

#[tokio::test]
async fn a_key_file_that_is_gone_or_another_is_told() {
    let (_folder, path) = place();
    let (book, _) = staffed(&path).await;
    let public = book.roster().await.unwrap().supervisor("MT").unwrap().key.clone().unwrap();
    let file = book.key_path("MT", &public);
    let away = file.with_extension("away");
    std::fs::rename(&file, &away).unwrap();
    assert_eq!(denied(book.unlock("MT", &secret(PASSPHRASE)).await), Denied::NoKey("MT".into()));
    std::fs::write(&file, "{}").unwrap();
    assert_eq!(denied(book.unlock("MT", &secret(PASSPHRASE)).await), Denied::BadKeyFile("MT".into()));
    std::fs::rename(&away, &file).unwrap();
    book.unlock("MT", &secret(PASSPHRASE)).await.expect("brought back");
}
