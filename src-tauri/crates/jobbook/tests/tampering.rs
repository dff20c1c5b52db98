//! A book that was changed past its guards does not verify, and the first bad entry is named.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_jobbook::{BadEntry, Book, BookError, Defect, JobId, Verified};
use common::{at, bodies, by_other_means, past_the_guards, place, three_jobs};

/// Tampers with a book of three jobs (of 4, 3 and 1 entries) and says which entry must be named.
async fn check(sql: &str, job: i64, number: u64, what: Defect) {
    let (_folder, path) = place();
    three_jobs(&path).await;
    past_the_guards(&path, sql).await;
    let book = Book::open_read_only(&path).await.unwrap();
    let expected = BadEntry { job: JobId(job), number, what };
    match book.verify().await {
        Err(BookError::BadEntry(found)) => assert_eq!(found, expected, "after: {sql}"),
        other => panic!("{expected} should be found, not {other:?}, after: {sql}"),
    }
}

#[tokio::test]
async fn a_book_whose_guards_went_and_came_back_is_sound() {
    let (_folder, path) = place();
    three_jobs(&path).await;
    past_the_guards(&path, "SELECT 1").await;
    let book = Book::open_read_only(&path).await.unwrap();
    assert_eq!(
        book.verify().await.unwrap(),
        Verified { jobs: 3, entries: 8, ..Verified::default() },
        "the way of tampering is not by itself what the other tests find"
    );
}

#[tokio::test]
async fn a_change_of_any_column_is_found() {
    use Defect::HashDiffers;
    check("UPDATE entry SET body = replace(body, '251.5', '251.6') WHERE mono = 5", 1, 2, HashDiffers).await;
    check("UPDATE entry SET at = replace(at, '08:15', '08:16') WHERE mono = 5", 1, 2, HashDiffers).await;
    check("UPDATE entry SET hash = zeroblob(32) WHERE mono = 9", 2, 2, HashDiffers).await;
    check("UPDATE entry SET mono = 12 WHERE mono = 9", 2, 2, HashDiffers).await;
    check("UPDATE entry SET number = 5 WHERE mono = 11", 1, 4, Defect::Missing).await;
    check("UPDATE entry SET body = body || ' ' WHERE mono = 8", 0, 3, HashDiffers).await;
    check("UPDATE entry SET body = CAST(x'ff' AS TEXT) WHERE mono = 5", 1, 2, HashDiffers).await;
}

#[tokio::test]
async fn of_two_changes_the_first_is_named() {
    let both = "UPDATE entry SET body = '{}' WHERE mono IN (6, 9)";
    check(both, 1, 3, Defect::HashDiffers).await;
}

#[tokio::test]
async fn a_missing_entry_is_found() {
    check("DELETE FROM entry WHERE mono = 5", 1, 2, Defect::Missing).await;
    check("DELETE FROM entry WHERE mono = 3", 2, 1, Defect::Missing).await;
    check("DELETE FROM entry WHERE mono = 4", 0, 2, Defect::Missing).await;
}

#[tokio::test]
async fn entries_exchanged_or_moved_to_another_job_are_found() {
    let exchanged = "UPDATE entry SET number = -number WHERE mono IN (5, 6);
                     UPDATE entry SET number = 5 + number WHERE mono IN (5, 6)";
    check(&format!("PRAGMA ignore_check_constraints = ON; {exchanged}"), 1, 2, Defect::HashDiffers).await;
    let moved = "DELETE FROM entry WHERE job = 3; UPDATE entry SET job = 3, number = 1 WHERE mono = 11";
    check(moved, 3, 1, Defect::HashDiffers).await;
}

#[tokio::test]
async fn a_missing_job_is_found() {
    check("DELETE FROM entry WHERE job = 3; DELETE FROM job WHERE id = 3", 3, 1, Defect::Missing).await;
    check("DELETE FROM entry WHERE job = 3", 3, 1, Defect::Missing).await;
    check("DELETE FROM entry WHERE job = 1; DELETE FROM job WHERE id = 1", 1, 1, Defect::Missing).await;
    check("DELETE FROM job WHERE id = 3", 3, 1, Defect::JobRowDiffers).await;
    check("UPDATE job SET opened = 'yesterday' WHERE id = 2", 2, 1, Defect::JobRowDiffers).await;
    check("DELETE FROM entry WHERE mono = 8", 0, 3, Defect::Missing).await;
    check("INSERT INTO job VALUES (4, 'never')", 4, 1, Defect::Missing).await;
}

#[tokio::test]
async fn a_job_opened_with_another_entry_is_found() {
    // Job 3 is rewritten whole, with a chain that is sound in itself: taken from a book in which it began otherwise.
    let (_other_folder, other) = place();
    let book = Book::open_or_create(&other).await.unwrap();
    for first in ["{}", "{}", r#"{"another":"first"}"#] {
        book.open_job(first, at()).await.unwrap();
        if book.jobs().await.unwrap().len() == 2 {
            book.append(JobId(1), 1, &bodies(&["{}", "{}"]), at()).await.unwrap();
        }
    }
    book.close().await.unwrap();
    let rewritten = format!(
        "ATTACH '{}' AS other; DELETE FROM entry WHERE job = 3; INSERT INTO entry SELECT * FROM other.entry WHERE job = 3",
        other.display()
    );
    check(&rewritten, 3, 1, Defect::NotTheFirst).await;
}

#[tokio::test]
async fn a_tail_cut_off_one_job_shows_when_the_book_went_on() {
    // The last two entries of job 2 are gone; job 1 had one written after them.
    check("DELETE FROM entry WHERE mono IN (9, 10)", 1, 4, Defect::EarlierOnesGone { missing: 2 }).await;
}

#[tokio::test]
async fn a_tail_cut_off_the_whole_book_shows_only_in_the_head() {
    let (_folder, path) = place();
    three_jobs(&path).await;
    let head = |jobs: Vec<bayhand_jobbook::JobRow>| jobs[0].head_hash.clone().unwrap();
    let before = head(Book::open_read_only(&path).await.unwrap().jobs().await.unwrap());
    past_the_guards(&path, "DELETE FROM entry WHERE mono = 11").await;
    let book = Book::open_read_only(&path).await.unwrap();
    assert_eq!(
        book.verify().await.unwrap(),
        Verified { jobs: 3, entries: 7, ..Verified::default() },
        "no chain can show that its own end is gone: this is the limit that the crate's text states"
    );
    assert_ne!(head(book.jobs().await.unwrap()), before, "which is why the head is kept on the sheet as well");
}

#[tokio::test]
async fn a_bad_job_is_neither_replayed_nor_is_a_gutted_one_appended_to() {
    let (_folder, path) = place();
    three_jobs(&path).await;
    past_the_guards(&path, "UPDATE entry SET body = '{}' WHERE mono = 5; DELETE FROM entry WHERE job = 3").await;
    let book = Book::open_existing(&path).await.unwrap();
    let changed = book.entries(JobId(1)).await;
    assert!(matches!(&changed, Err(BookError::BadEntry(bad)) if bad.number == 2), "not replayed: {changed:?}");
    let gutted = book.append(JobId(3), 0, &bodies(&["{}"]), at()).await;
    assert!(matches!(&gutted, Err(BookError::BadEntry(bad)) if bad.number == 1), "not appended to: {gutted:?}");
    assert_eq!(book.entries(JobId(2)).await.unwrap().len(), 3, "the other jobs go on");
    let gutted = book.jobs().await.unwrap().pop().unwrap();
    assert_eq!((gutted.len, gutted.head_hash), (0, None), "and the list can still be shown");
}

#[tokio::test]
async fn a_missing_or_weakened_guard_is_found() {
    for (sql, named) in [
        ("DROP TRIGGER entry_is_never_changed", "entry_is_never_changed"),
        (
            "DROP TRIGGER job_is_never_removed;
             CREATE TRIGGER job_is_never_removed BEFORE DELETE ON job BEGIN SELECT 1; END",
            "job_is_never_removed",
        ),
        ("CREATE TRIGGER spy AFTER INSERT ON entry BEGIN SELECT 1; END", "spy"),
    ] {
        let (_folder, path) = place();
        three_jobs(&path).await;
        by_other_means(&path, sql).await.unwrap();
        let answer = Book::open_read_only(&path).await.unwrap().verify().await;
        assert!(
            matches!(&answer, Err(BookError::Damaged { detail, .. }) if detail.contains(named)),
            "{named} should be named after: {sql}; {answer:?}"
        );
    }
}

#[tokio::test]
async fn a_byte_changed_in_the_file_itself_is_found() {
    let (_folder, path) = place();
    three_jobs(&path).await;
    let mut bytes = std::fs::read(&path).unwrap();
    let place = bytes.windows(5).position(|window| window == b"249.0").expect("the text lies in the file as it is");
    bytes[place] = b'3';
    std::fs::write(&path, bytes).unwrap();
    let answer = Book::open_read_only(&path).await.unwrap().verify().await;
    let expected = BadEntry { job: JobId(1), number: 3, what: Defect::HashDiffers };
    assert!(
        matches!(&answer, Err(BookError::BadEntry(found)) if *found == expected),
        "{expected} not found: {answer:?}"
    );
}
