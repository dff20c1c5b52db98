//! The chain of hashes, so that anyone can recompute it with the book and a SHA-256 alone.
//!
//! The hash of an entry is SHA-256 over these seven fields in this order, each preceded by its length in bytes as an
//! unsigned 64-bit big-endian number:
//!
//! | field | bytes |
//! |---|---|
//! | domain | the ASCII text `bayhand jobbook entry 1` |
//! | job | `entry.job`, signed 64-bit big-endian; 0 is the book's own chain |
//! | number | `entry.number`, unsigned 64-bit big-endian |
//! | mono | `entry.mono`, unsigned 64-bit big-endian |
//! | at | `entry.at`, the text's UTF-8 bytes as stored |
//! | body | `entry.body`, the text's UTF-8 bytes as stored |
//! | before | the 32 bytes of `entry.hash` of the same job's entry before; no bytes for a job's first entry |
//!
//! A job's first entry is named, with its hash, by an entry in the chain of job 0, so that a missing job shows. `mono`
//! counts over the whole book, so that a tail cut off one job shows as a gap once anything was written after it. What
//! no chain can show is that the last entries of the whole book are gone: keep a job's head hash outside the book too
//! (on the sheet, in the seal).

use sha2::{Digest as _, Sha256};

/// What the hash of every entry starts with. The number is the version of the layout.
pub const DOMAIN: &str = "bayhand jobbook entry 1";

/// What an entry's hash covers, besides the hash before it.
#[derive(Debug, Clone, Copy)]
pub struct Link<'a> {
    /// The job's number in the book; 0 is the book's own chain.
    pub job: i64,
    /// The entry's place in the job's chain, from 1.
    pub number: u64,
    /// The entry's place in the whole book, from 1.
    pub mono: u64,
    /// When it was written: the bytes of the stored text.
    pub at: &'a [u8],
    /// What was written: the bytes of the stored text.
    pub body: &'a [u8],
}

impl Link<'_> {
    /// The hash of this entry after one with the hash `before`, which is empty for a job's first entry.
    pub fn hash(&self, before: &[u8]) -> [u8; 32] {
        let mut hasher = Sha256::new();
        let (job, number, mono) = (self.job.to_be_bytes(), self.number.to_be_bytes(), self.mono.to_be_bytes());
        for field in [DOMAIN.as_bytes(), &job, &number, &mono, self.at, self.body, before] {
            hasher.update((field.len() as u64).to_be_bytes());
            hasher.update(field);
        }
        hasher.finalize().into()
    }
}
