//! What was done: the job book, an append-only record in one SQLite file.
//!
//! The book holds jobs, and a job is nothing but its entries in the order in which they were written. What an entry
//! says is the caller's: a body is an opaque text (JSON), stored, hashed and given back byte for byte. Each entry
//! carries a hash over itself and the hash before it ([`chain`] says exactly how), so that [`Book::verify`] can name
//! the first entry that is no longer what was written.
//!
//! An entry has reached the disk before [`Book::append`] answers. [`Book`] owns the one writing connection and, for as
//! long as it lives, the lock on the file beside the book. Everything that can go wrong is a [`BookError`].
//!
//! The book's own chain ([`event`]) tells of the book as a whole: jobs opened and ended, people and their rights
//! ([`people`]), keys and seals ([`seal`]). `RECORD.md` beside this crate's source is the recipe for third parties and
//! says what is detected, by whom, and what is not.
//!
//! Absent on purpose: the clock (times are passed in), what a job's entries mean, where the book lies by default, and any
//! way to change or remove what was written. No other crate knows SQL.

mod apart;
mod backup;
mod book;
pub mod chain;
mod connection;
mod error;
pub mod event;
pub mod export;
mod key_file;
mod ledger;
pub mod people;
mod place;
mod rows;
pub mod seal;
mod secret;
mod staff;
mod verify;
mod write;

pub use book::{Book, Entry, JobId, JobRow, Recorded};
pub use error::{BadEntry, BookError, Defect, Instead};
pub use event::{BookEvent, Person, Rank};
pub use export::Export;
pub use people::{Denied, Roster};
pub use seal::SealingKey;
pub use secret::Secret;
pub use verify::Verified;
pub use write::{Along, Mark};
