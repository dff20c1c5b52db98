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
//! Absent on purpose: the clock (times are passed in), what entries mean, where the book lies by default, and any way
//! to change or remove what was written. No other crate knows SQL.

mod book;
pub mod chain;
mod connection;
mod error;
mod place;
mod rows;
mod verify;

pub use book::{Book, Entry, JobId, JobRow, Recorded};
pub use error::{BadEntry, BookError, Defect};
pub use verify::Verified;
