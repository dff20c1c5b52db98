//! Whatever text comes in, the readers of exports and of the book's own entries give a refusal or an answer, never a
//! panic; and what they accept says what it said.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;
#[path = "common/damaged.rs"]
mod damaged;

use bayhand_jobbook::{Book, BookEvent, Export};
use common::{at, bodies, place};
use damaged::{damaged, runner};
use proptest::prelude::*;

#[tokio::test]
async fn a_damaged_export_is_refused_or_says_the_same() {
    let (_folder, path) = place();
    let book = Book::open_or_create(&path).await.unwrap();
    let (job, _) = book.open_job(r#"{"toe":"0.10","note":"Länge"}"#, at()).await.unwrap();
    book.append(job, 1, &bodies(&[r#"{"load_kg":"251.5"}"#]), at()).await.unwrap();
    let export = book.export(job).await.unwrap();
    let entries = export.entries.clone();
    let accepted = std::cell::Cell::new(0);
    let read = |text: String| {
        if let Ok(read) = Export::read(&text) {
            accepted.set(accepted.get() + 1);
            prop_assert_eq!(&read.entries, &entries, "an export that is accepted says what was recorded");
        }
        Ok(())
    };
    runner().run(&damaged(export.text()), read).unwrap();
    println!("{} accepted", accepted.get());
    assert!(accepted.get() > 0, "control: a change of a blank or of the recipe's words is none of the record");
}

#[test]
fn an_entry_of_the_book_is_read_or_refused() {
    let event =
        r#"{"kind":"person-enrolled","by":"MT","person":{"initials":"RO","name":"R","rank":"trainee"},"pin":"0"}"#;
    let read = |text: String| {
        if let Ok(event) = serde_json::from_str::<BookEvent>(&text) {
            let again = serde_json::to_string(&event).unwrap();
            prop_assert_eq!(
                serde_json::from_str::<BookEvent>(&again).unwrap(),
                event,
                "what is read is what is written"
            );
        }
        Ok(())
    };
    runner().run(&damaged(event.into()), read).unwrap();
    runner().run(&any::<String>(), read).unwrap();
}
