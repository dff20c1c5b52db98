//! Sealing, opening again, exporting, taking in, telling apart and erasing, the clock, copies.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use std::path::Path;

use bayhand_jobbook::event::Closed;
use bayhand_jobbook::{
    Along, BadEntry, Book, BookError, BookEvent, Defect, Denied, Export, JobId, Mark, Rank, Verified,
};
use chrono::TimeDelta;
use common::{PASSPHRASE, at, bodies, by_other_means, past_the_guards, person, place, secret, staffed};

/// A book with a sealed job of three entries; closed. Gives the seal's code.
async fn sealed(path: &Path) -> String {
    let (book, _) = staffed(path).await;
    let (job, _) = book.open_job_with("{}", Some("begun"), at()).await.unwrap();
    book.append_with(job, 1, &bodies(&["{}"]), card("at work"), at()).await.unwrap();
    let key = book.unlock("MT", &secret(PASSPHRASE)).await.unwrap();
    let along = Along { card: Some("sealed"), mark: Mark::IsSealed { by: "MT", key: &key } };
    book.append_with(job, 2, &bodies(&[r#"{"sealed":true}"#]), along, at()).await.unwrap();
    let (code, _) = book.seal_of(job).await.unwrap().expect("it is sealed");
    book.close().await.unwrap();
    code
}

fn card(text: &str) -> Along<'_> {
    Along { card: Some(text), mark: Mark::GoesOn }
}

fn bad(answer: Result<impl std::fmt::Debug, BookError>) -> BadEntry {
    match answer {
        Err(BookError::BadEntry(bad)) => bad,
        other => panic!("a bad entry should be named: {other:?}"),
    }
}

#[tokio::test]
async fn a_sealed_job_is_ended_and_a_reopening_makes_the_seal_void() {
    let (_folder, path) = place();
    let code = sealed(&path).await;
    let book = Book::open_existing(&path).await.unwrap();
    assert_eq!(book.verify().await.unwrap(), Verified { jobs: 1, entries: 3, seals: 1, ..Verified::default() });
    book.verify_code(JobId(1), &code.to_lowercase()).await.expect("the code on the sheet is that of the book");
    assert_eq!(bad(book.verify_code(JobId(1), "0000-0000-0000").await).what, Defect::NotTheCode);

    let goes_on = book.append(JobId(1), 3, &bodies(&["{}"]), at()).await;
    assert!(matches!(goes_on, Err(BookError::Ended { .. })), "nothing is written behind a seal: {goes_on:?}");
    let again = |by, reason| Along { card: None, mark: Mark::OpensAgain { by, reason } };
    for (by, reason, why) in
        [("MT", " ", Denied::NoReason), ("RO", "a wheel was changed", Denied::Unknown("RO".into()))]
    {
        match book.append_with(JobId(1), 3, &bodies(&["{}"]), again(by, reason), at()).await {
            Err(BookError::Denied(denied)) => assert_eq!(denied, why),
            other => panic!("{by} {reason}: {other:?}"),
        }
    }
    let reopened = bodies(&[r#"{"reopened":true}"#]);
    book.append_with(JobId(1), 3, &reopened, again("MT", "a wheel was changed"), at()).await.unwrap();
    assert_eq!(book.verify().await.unwrap().seals, 0, "the seal is void");
    assert_eq!(book.seal_of(JobId(1)).await.unwrap(), None, "and no code holds");
    let marks = book.export(JobId(1)).await.unwrap().seals();
    assert_eq!((marks.len(), marks[0].void, &marks[0].code), (1, true, &code), "it stays visible, as void");

    let key = book.unlock("MT", &secret(PASSPHRASE)).await.unwrap();
    let seal = Along { card: None, mark: Mark::IsSealed { by: "MT", key: &key } };
    book.append_with(JobId(1), 4, &bodies(&["{}"]), seal, at()).await.unwrap();
    assert_eq!(bad(book.verify_code(JobId(1), &code).await).what, Defect::NotTheCode, "a new seal has another code");
    assert_eq!(book.verify().await.unwrap().seals, 1);
}

#[tokio::test]
async fn a_seal_needs_the_key_that_the_book_knows() {
    let (_folder, path) = place();
    let (book, _) = staffed(&path).await;
    let (job, _) = book.open_job("{}", at()).await.unwrap();
    let old = book.unlock("MT", &secret(PASSPHRASE)).await.unwrap();
    book.set_key("MT", "MT", &secret("a second passphrase"), "the first was seen", at()).await.unwrap();
    let seal = Along { card: None, mark: Mark::IsSealed { by: "MT", key: &old } };
    let by_old = book.append_with(job, 1, &bodies(&["{}"]), seal, at()).await;
    assert!(matches!(by_old, Err(BookError::Denied(Denied::NoKey(_)))), "an old key seals nothing: {by_old:?}");
    assert_eq!(book.entries(job).await.unwrap().len(), 1, "and nothing of it was written");
    let unsigned = Along { card: None, mark: Mark::Ends(Closed::Unsigned) };
    let unsigned = book.append_with(job, 1, &bodies(&["{}"]), unsigned, at()).await;
    assert!(matches!(unsigned, Err(BookError::Denied(_))), "a book that knows people has no unsigned seal");
}

#[tokio::test]
async fn a_tail_cut_off_after_the_seal_is_found() {
    // mono: 1 to 3 people, 4 and 5 the opening, 6 and 7 the job's entries, 8 the seal in the book's own chain.
    let cut = |sql: &'static str| async move {
        let (folder, path) = place();
        let code = sealed(&path).await;
        past_the_guards(&path, sql).await;
        (folder, Book::open_read_only(&path).await.unwrap(), code)
    };
    let (_folder, book, _) = cut("DELETE FROM card; DELETE FROM entry WHERE mono = 7").await;
    let expected = BadEntry { job: JobId::BOOK, number: 5, what: Defect::NotTheJobThatEnded };
    assert_eq!(bad(book.verify().await), expected, "the seal is over an entry that is gone");
    for sql in ["DELETE FROM entry WHERE mono = 8", "DELETE FROM card; DELETE FROM entry WHERE mono >= 7"] {
        let (_folder, book, code) = cut(sql).await;
        book.verify()
            .await
            .expect("the very end of the whole book shows nowhere in it: the limit that RECORD.md states");
        assert_eq!(
            bad(book.verify_code(JobId(1), &code).await).what,
            Defect::NotTheCode,
            "the code on the sheet shows it"
        );
    }
}

#[tokio::test]
async fn a_seal_that_was_made_up_is_found() {
    let (_folder, path) = place();
    sealed(&path).await;
    // Somebody with the file and a hash function, but without the key, gives the seal to another supervisor's letters.
    let book = Book::open_read_only(&path).await.unwrap();
    let own = book.entries(JobId::BOOK).await.unwrap();
    let (before, seal) = (&own[own.len() - 2], &own[own.len() - 1]);
    let body = seal.body.replace(r#""entries":3"#, r#""entries":2"#);
    let link = bayhand_jobbook::chain::Link {
        job: 0,
        number: seal.number,
        mono: seal.mono,
        at: seal.at.as_bytes(),
        body: body.as_bytes(),
    };
    let hash = hex_of(&link.hash(&unhex(&before.hash)));
    book.close().await.unwrap();
    past_the_guards(&path, &format!("UPDATE entry SET body = '{body}', hash = x'{hash}' WHERE mono = {}", seal.mono))
        .await;
    let book = Book::open_read_only(&path).await.unwrap();
    let expected = BadEntry { job: JobId::BOOK, number: seal.number, what: Defect::SealDoesNotFit };
    assert_eq!(bad(book.verify().await), expected, "the chain is sound in itself; the signature is not");
}

fn unhex(text: &str) -> Vec<u8> {
    (0..text.len()).step_by(2).map(|at| u8::from_str_radix(&text[at..at + 2], 16).unwrap()).collect()
}

fn hex_of(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

#[tokio::test]
async fn an_export_is_checked_and_taken_in_once() {
    let (_folder, path) = place();
    sealed(&path).await;
    let text = Book::open_read_only(&path).await.unwrap().export(JobId(1)).await.unwrap().text();
    let export = Export::read(&text).unwrap();
    assert_eq!(export.seals().len(), 1, "the seal goes with it");

    let (_other_folder, other) = place();
    let (book, _) = staffed(&other).await;
    assert!(book.import(&text, "MT", at()).await.unwrap(), "it is new");
    assert!(!book.import(&text, "MT", at()).await.unwrap(), "and then it is not");
    assert_eq!(book.imported().await.unwrap(), [export], "it comes back as it is");
    let verified = book.verify().await.unwrap();
    assert_eq!((verified.jobs, verified.imported), (0, 1), "beside the book's own jobs");
    book.enrol("MT", person("RO", Rank::Trainee), &secret("1357"), at()).await.unwrap();
    let by_trainee = book.import(&format!("{text}\n"), "RO", at()).await;
    assert!(matches!(by_trainee, Ok(false)), "known by its head, whatever its blanks: {by_trainee:?}");
    book.close().await.unwrap();

    for sql in [
        "UPDATE imported SET text = replace(text, 'sealed', 'saeled')",
        "DELETE FROM imported",
        "INSERT INTO imported VALUES (zeroblob(32), '')",
    ] {
        let (_third_folder, third) = place();
        std::fs::copy(&other, &third).unwrap();
        past_the_guards(&third, sql).await;
        let found = bad(Book::open_read_only(&third).await.unwrap().verify().await);
        assert_eq!(found.what, Defect::ImportChanged, "{sql}");
    }
}

#[tokio::test]
async fn a_changed_export_is_refused() {
    let (_folder, path) = place();
    sealed(&path).await;
    let text = Book::open_read_only(&path).await.unwrap().export(JobId(1)).await.unwrap().text();
    for (from, to, says) in [
        ("bayhand job export 1", "bayhand job export 9", "its form"),
        (r#""job": 1"#, r#""job": 2"#, "Job 2, entry 1"),
        ("{\\\"sealed\\\":true}", "{\\\"sealed\\\":false}", "entry 3"),
        (r#"\"entries\":3"#, r#"\"entries\":2"#, "does not match"),
        ("\"entries\": [", "\"entries\": 7, \"entries\": [", "invalid type"),
        ("\"recipe\":", "\"receipt\":", "unknown field"),
    ] {
        assert!(text.contains(from), "control: {from} stands in the export");
        let error = Export::read(&text.replacen(from, to, 1)).expect_err(from).to_string();
        assert!(error.contains(says), "{from} -> {to}: {error}");
    }
    let mut value: serde_json::Value = serde_json::from_str(&text).unwrap();
    value["entries"].as_array_mut().unwrap().pop();
    let cut = Export::read(&value.to_string()).expect_err("a tail that was cut off").to_string();
    assert!(cut.contains("the sealed entry is another"), "{cut}");
}

#[tokio::test]
async fn customer_data_is_erased_and_not_altered() {
    let (folder, path) = place();
    sealed(&path).await;
    let text = "The owner, 12 Any Street";
    let book = Book::open_existing(&path).await.unwrap();
    let mut name = String::new();
    let set = |names: Vec<String>| {
        name.clone_from(&names[0]);
        vec![BookEvent::CustomerSet { by: "MT".into(), job: JobId(1), customer: names[0].clone() }]
    };
    book.note(vec![text.into()], set, at()).await.unwrap();
    assert_eq!(book.apart(&name).await.unwrap().as_deref(), Some(text), "it is there");
    let exported = book.export(JobId(1)).await.unwrap().text();
    assert!(!exported.contains("Any Street") && !exported.contains(&name), "and not in the export");
    assert_eq!(book.verify().await.unwrap().erased, 0);

    let erase = || BookEvent::Erased { by: "MT".into(), customer: name.clone(), reason: "asked for".into() };
    book.note(Vec::new(), |_| vec![erase()], at()).await.unwrap();
    assert_eq!(book.apart(&name).await.unwrap(), None, "it is gone");
    assert_eq!(book.verify().await.unwrap().erased, 1, "erased, not altered");
    let again = book.note(Vec::new(), |_| vec![erase()], at()).await;
    assert!(matches!(again, Err(BookError::Denied(Denied::NoCustomer))), "there is nothing more to erase: {again:?}");
    for file in std::fs::read_dir(folder.path()).unwrap().map(|file| file.unwrap().path()).filter(|f| f.is_file()) {
        let bytes = std::fs::read(&file).unwrap();
        let there = bytes.windows(10).any(|window| window == b"Any Street");
        assert!(!there, "nothing of it is left in {}", file.display());
    }
}

#[tokio::test]
async fn a_text_told_apart_that_was_changed_is_found() {
    let (_folder, path) = place();
    sealed(&path).await;
    for (sql, what) in [
        ("UPDATE apart SET text = replace(text, 'argon2id', 'argon2if')", Defect::ApartGone),
        ("UPDATE apart SET salt = zeroblob(32)", Defect::ApartGone),
        ("DELETE FROM apart", Defect::ApartGone),
        ("INSERT INTO apart VALUES (zeroblob(32), zeroblob(32), '')", Defect::ApartBack),
    ] {
        let (_other_folder, other) = place();
        std::fs::copy(&path, &other).unwrap();
        past_the_guards(&other, sql).await;
        assert_eq!(bad(Book::open_read_only(&other).await.unwrap().verify().await).what, what, "{sql}");
    }
    let refused = by_other_means(&path, "UPDATE apart SET text = ''").await.unwrap_err().to_string();
    assert!(refused.contains("never changed"), "{refused}");
}

#[tokio::test]
async fn a_clock_that_is_set_back_is_noticed_and_recorded() {
    let (_folder, path) = place();
    let book = Book::open_or_create(&path).await.unwrap();
    let (job, _) = book.open_job("{}", at()).await.unwrap();
    let earlier = at() - TimeDelta::hours(1);
    book.append(job, 1, &bodies(&["{}"]), earlier).await.unwrap();
    book.append(job, 2, &bodies(&["{}"]), earlier).await.unwrap();
    let summer = "2026-03-02T08:15:01+02:00".parse().unwrap();
    book.append(job, 3, &bodies(&["{}"]), summer).await.expect("the same moment in another zone is no step back");
    let own = book.entries(JobId::BOOK).await.unwrap();
    assert_eq!(own.len(), 2, "the opening, and one step back");
    let expected = concat!(
        r#"{"version":1,"kind":"clock-set-back","before":"2026-03-02T08:15:00.250+01:00","#,
        r#""now":"2026-03-02T07:15:00.250+01:00"}"#
    );
    assert_eq!(own[1].body, expected, "both times stand in it");
    assert_eq!(own[1].mono + 1, book.entries(job).await.unwrap()[1].mono, "just before the entry that it concerns");
    assert_eq!(book.verify().await.unwrap().clock_set_back, 1);
}

#[tokio::test]
async fn a_copy_is_made_in_use_and_shows_what_is_gone() {
    let (folder, path) = place();
    sealed(&path).await;
    let book = Book::open_existing(&path).await.unwrap();
    let copy_path = folder.path().join("elsewhere/copy.db");
    book.backup(&copy_path).await.unwrap();
    book.backup(&copy_path).await.expect("in place of an earlier copy");
    book.open_job("{}", at()).await.expect("the book goes on");
    let copy = Book::open_read_only(&copy_path).await.unwrap();
    assert_eq!(copy.verify().await.unwrap().jobs, 1, "the copy is a whole book");
    book.verify_against(&copy).await.expect("the book has all that the copy has");
    book.close().await.unwrap();
    past_the_guards(&path, "DELETE FROM card; DELETE FROM entry WHERE mono >= 7; DELETE FROM job WHERE id = 2").await;
    let book = Book::open_read_only(&path).await.unwrap();
    book.verify().await.expect("a tail of the whole book that was cut off shows nowhere in it");
    assert_eq!(bad(book.verify_against(&copy).await).what, Defect::NotAsInTheCopy, "but beside its copy");
    let names: Vec<_> =
        std::fs::read_dir(copy_path.parent().unwrap()).unwrap().map(|f| f.unwrap().file_name()).collect();
    assert!(names.iter().all(|name| !name.to_string_lossy().contains("unfinished")), "nothing is left over: {names:?}");
}

#[tokio::test]
async fn the_card_is_that_of_the_last_entry_or_none() {
    let (_folder, path) = place();
    let book = Book::open_or_create(&path).await.unwrap();
    let (job, _) = book.open_job_with("{}", Some("begun"), at()).await.unwrap();
    let card = || async { book.jobs().await.unwrap()[0].card.clone() };
    assert_eq!(card().await.as_deref(), Some("begun"));
    book.append_with(job, 1, &bodies(&["{}"]), Along { card: Some("further"), mark: Mark::GoesOn }, at())
        .await
        .unwrap();
    assert_eq!(card().await.as_deref(), Some("further"));
    book.append(job, 2, &bodies(&["{}"]), at()).await.unwrap();
    assert_eq!(card().await, None, "an entry without a card leaves none that would be wrong");
    book.verify().await.expect("a list without cards is no damage");
    book.append_with(job, 3, &bodies(&["{}"]), Along { card: Some("on"), mark: Mark::GoesOn }, at()).await.unwrap();
    book.close().await.unwrap();
    by_other_means(&path, "UPDATE card SET len = 3").await.unwrap();
    let found = bad(Book::open_read_only(&path).await.unwrap().verify().await);
    assert_eq!(found.what, Defect::JobRowDiffers, "a card of another entry is found");
}
