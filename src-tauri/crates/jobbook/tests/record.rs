//! What was appended is given back as it was, and nothing else can be written.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_jobbook::{Book, BookError, Entry, JobId, JobRow, Recorded, Verified};
use common::{AT, at, bodies, by_other_means, place, three_jobs};

#[tokio::test]
async fn entries_come_back_byte_for_byte_after_reopening() {
    let (_folder, path) = place();
    // Texts that a parser and printer of JSON would change: spaces, order, trailing zeros, escapes, digits of a float.
    let texts = [r#"{ "b":1.0, "a":1e2 }"#, r#"{"x":0.30000000000000004,"x":"\u00e4ä"}"#, "", "no JSON\r\n\t\0 at all"];

    let book = Book::open_or_create(&path).await.unwrap();
    let (job, first) = book.open_job(texts[0], at()).await.unwrap();
    let rest = book.append(job, 1, &bodies(&texts[1..]), at()).await.unwrap();
    book.close().await.unwrap();

    let book = Book::open_existing(&path).await.unwrap();
    let entries = book.entries(job).await.unwrap();
    assert_eq!(
        entries.iter().map(|entry| entry.body.as_str()).collect::<Vec<_>>(),
        texts,
        "bodies are never re-printed"
    );
    assert!(entries.iter().all(|entry| entry.at == AT), "the offset and the milliseconds of the clock are kept");
    let receipts: Vec<_> = [first].into_iter().chain(rest).collect();
    let from_entries = |entry: &Entry| Recorded { number: entry.number, hash: entry.hash.clone() };
    assert_eq!(receipts, entries.iter().map(from_entries).collect::<Vec<_>>(), "a receipt is what is in the book");
    assert_eq!(receipts.iter().map(|receipt| receipt.number).collect::<Vec<_>>(), [1, 2, 3, 4], "places have no gaps");
}

#[tokio::test]
async fn jobs_are_listed_with_their_heads() {
    let (_folder, path) = place();
    three_jobs(&path).await;
    let book = Book::open_existing(&path).await.unwrap();
    let jobs = book.jobs().await.unwrap();
    for (job, len) in jobs.iter().zip([4, 3, 1]) {
        let last = book.entries(job.id).await.unwrap().pop().unwrap();
        let expected = JobRow { id: job.id, opened_at: AT.into(), len, head_hash: Some(last.hash), card: None };
        assert_eq!(*job, expected, "length and head are those of the job's own chain");
    }
    assert_eq!(jobs.len(), 3, "every job is listed, the book's own chain is not");
    assert_eq!(
        book.verify().await.unwrap(),
        Verified { jobs: 3, entries: 8, ..Verified::default() },
        "what is listed is what verifies"
    );
}

#[tokio::test]
async fn mono_is_the_order_of_writing_over_all_jobs() {
    let (_folder, path) = place();
    three_jobs(&path).await;
    let book = Book::open_read_only(&path).await.unwrap();
    let mut order = Vec::new();
    for job in 0..=3 {
        order.extend(book.entries(JobId(job)).await.unwrap().into_iter().map(|entry| (entry.mono, job)));
    }
    order.sort_unstable();
    let jobs_in_order: Vec<_> = order.iter().map(|&(_, job)| job).collect();
    assert_eq!(
        jobs_in_order,
        [1, 0, 2, 0, 1, 1, 3, 0, 2, 2, 1],
        "as they were written, each opening followed by its note"
    );
    assert!((1..).zip(&order).all(|(place, &(mono, _))| place == mono), "the count has no gaps");
}

#[tokio::test]
async fn a_stale_append_writes_nothing() {
    let (_folder, path) = place();
    three_jobs(&path).await;
    let book = Book::open_existing(&path).await.unwrap();
    for seen in [3, 5, 0] {
        let answer = book.append(JobId(1), seen, &bodies(&["{}", "{}"]), at()).await;
        assert!(
            matches!(answer, Err(BookError::Stale { job: JobId(1), expected, found: 4 }) if expected == seen),
            "a job of 4 entries is not one of {seen}: {answer:?}"
        );
    }
    assert_eq!(book.entries(JobId(1)).await.unwrap().len(), 4, "a refused append leaves no entry");
    book.append(JobId(1), 4, &bodies(&["{}"]), at())
        .await
        .expect("a refusal does not stand in the way of the next one");
}

#[tokio::test]
async fn of_two_who_saw_the_same_length_one_is_refused() {
    let (_folder, path) = place();
    three_jobs(&path).await;
    let book = Book::open_existing(&path).await.unwrap();
    let (one, other) = (bodies(&["{}"]), bodies(&["{}"]));
    let answers = tokio::join!(book.append(JobId(3), 1, &one, at()), book.append(JobId(3), 1, &other, at()));
    assert!(
        matches!(answers, (Ok(_), Err(BookError::Stale { found: 2, .. }))),
        "only one of them can follow what both saw: {answers:?}"
    );
}

#[tokio::test]
async fn a_job_that_is_not_there_is_refused() {
    let (_folder, path) = place();
    three_jobs(&path).await;
    let book = Book::open_existing(&path).await.unwrap();
    for job in [JobId(4), JobId(-1), JobId::BOOK] {
        let answer = book.append(job, 3, &bodies(&["{}"]), at()).await;
        assert!(matches!(answer, Err(BookError::NoSuchJob { .. })), "job {job} is nobody's to write to: {answer:?}");
    }
    assert!(
        matches!(book.entries(JobId(4)).await, Err(BookError::NoSuchJob { job: JobId(4) })),
        "nor is it to be read"
    );
}

#[tokio::test]
async fn an_empty_book_verifies() {
    let (_folder, path) = place();
    let book = Book::open_or_create(&path).await.unwrap();
    assert_eq!(
        book.verify().await.unwrap(),
        Verified { jobs: 0, entries: 0, ..Verified::default() },
        "nothing recorded is nothing wrong"
    );
    assert_eq!(book.jobs().await.unwrap(), [], "and there is nothing to list");
    assert_eq!(book.entries(JobId::BOOK).await.unwrap(), [], "nor in the book's own chain");
}

#[tokio::test]
async fn an_append_of_nothing_only_checks_the_length() {
    let (_folder, path) = place();
    three_jobs(&path).await;
    let book = Book::open_existing(&path).await.unwrap();
    assert_eq!(book.append(JobId(1), 4, &[], at()).await.unwrap(), [], "nothing to write, nothing to receive");
    assert!(
        matches!(book.append(JobId(1), 3, &[], at()).await, Err(BookError::Stale { .. })),
        "the length still counts"
    );
}

#[tokio::test]
async fn the_guards_refuse_every_other_way_of_writing() {
    let (_folder, path) = place();
    three_jobs(&path).await;
    for (sql, refusal) in [
        ("UPDATE entry SET body = '{}' WHERE mono = 1", "an entry is never changed"),
        ("UPDATE OR REPLACE entry SET mono = 1 WHERE mono = 2", "an entry is never changed"),
        ("DELETE FROM entry WHERE mono = 11", "an entry is never removed"),
        (
            "INSERT OR REPLACE INTO entry SELECT mono, job, number, at, '{}', hash FROM entry WHERE mono = 11",
            "at the end",
        ),
        ("INSERT INTO entry VALUES (12, 1, 6, '', '', zeroblob(32))", "at the end"),
        ("INSERT INTO entry VALUES (13, 1, 5, '', '', zeroblob(32))", "at the end"),
        ("INSERT INTO entry VALUES (12, 4, 1, '', '', zeroblob(32))", "FOREIGN KEY"),
        ("INSERT INTO entry VALUES (12, 1, 5, '', x'00', zeroblob(32))", "cannot store BLOB value in TEXT column"),
        ("INSERT INTO entry VALUES (12, 1, 5, '', '', zeroblob(31))", "CHECK"),
        ("UPDATE job SET opened = 'x' WHERE id = 1", "a job is never changed"),
        ("DELETE FROM job WHERE id = 3", "a job is never removed"),
        ("INSERT OR REPLACE INTO job VALUES (3, 'x')", "at the end of the book"),
        ("INSERT INTO job VALUES (5, 'x')", "at the end of the book"),
    ] {
        let answer = by_other_means(&path, sql).await.expect_err(sql).to_string();
        assert!(answer.contains(refusal), "{sql} should be refused with '{refusal}', not '{answer}'");
    }
    let book = Book::open_read_only(&path).await.unwrap();
    assert_eq!(
        book.verify().await.unwrap(),
        Verified { jobs: 3, entries: 8, ..Verified::default() },
        "and nothing of it was written"
    );
}
