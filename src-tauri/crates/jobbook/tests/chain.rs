//! The hash of an entry, against values that were computed without this crate.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_jobbook::chain::Link;
use bayhand_jobbook::{Book, JobId};
use common::{AT, at, bodies, place};

const FIRST: (&str, &str) =
    (r#"{"kind":"opened","toe":"0.10"}"#, "9455e8af1a581b240e9ca38b9c40cf249dad6b175e015252ca593b2382469e91");
const OPENING: &str = "348920c875e951048ab9a930546dda97ba523e334147acf98ef683dabcf8fe2d";
// The blank is a no-break space: two bytes of UTF-8, as is the letter before it.
const SECOND: (&str, &str) =
    ("{\"note\":\"Länge 2\u{a0}mm\"}", "33f14f4d9f77bbfe6856d3909e4eb9edc9bce53ad9a46a6577e765a834a859c1");

// Source class R: recomputed with Python's hashlib from the table in the text of `chain`, not with this crate.
#[tokio::test]
async fn the_hashes_in_a_book_are_those_of_the_published_layout() {
    let (_folder, path) = place();
    let book = Book::open_or_create(&path).await.unwrap();
    let (job, first) = book.open_job(FIRST.0, at()).await.unwrap();
    assert_eq!(first.hash, FIRST.1, "job 1, number 1, mono 1, nothing before");
    let opening = &book.entries(JobId::BOOK).await.unwrap()[0];
    assert_eq!(opening.hash, OPENING, "job 0, number 1, mono 2, nothing before, naming the hash above");
    let second = &book.append(job, 1, &bodies(&[SECOND.0]), at()).await.unwrap()[0];
    assert_eq!(second.hash, SECOND.1, "job 1, number 2, mono 3, after the first");
}

#[test]
fn every_field_counts_and_none_runs_into_the_next() {
    let link = Link { job: 1, number: 2, mono: 3, at: AT.as_bytes(), body: b"{}" };
    let (at, tail) = AT.as_bytes().split_at(AT.len() - 1);
    let shifted = [tail, b"{}"].concat();
    let others = [
        (Link { job: 2, ..link }, &[7; 32][..], "job"),
        (Link { number: 3, ..link }, &[7; 32], "number"),
        (Link { mono: 4, ..link }, &[7; 32], "mono"),
        (Link { at: b"", ..link }, &[7; 32], "at"),
        (Link { body: b"{ }", ..link }, &[7; 32], "body"),
        (link, &[8; 32], "the hash before"),
        (Link { number: 3, mono: 2, ..link }, &[7; 32], "which number is which"),
        (Link { at, body: &shifted, ..link }, &[7; 32], "where one text ends"),
    ];
    for (other, before, what) in others {
        assert_ne!(other.hash(before), link.hash(&[7; 32]), "the hash covers {what}");
    }
}
