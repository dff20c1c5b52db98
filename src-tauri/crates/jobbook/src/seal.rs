//! The seal: an Ed25519 signature (RFC 8032) over a job, and the marks by which people compare it.
//!
//! Signed are these nine fields in this order, each preceded by its length in bytes as an unsigned 64-bit big-endian
//! number:
//!
//! | field | bytes |
//! |---|---|
//! | domain | the ASCII text `bayhand jobbook seal 1` |
//! | job | the job's number, signed 64-bit big-endian |
//! | entries | how many entries it has, unsigned 64-bit big-endian |
//! | head | the 32 bytes of the hash of the last of them |
//! | by | the supervisor's initials, UTF-8 |
//! | at | the text of the time of the entry in the book's own chain that holds the seal |
//! | number | the number of that entry, unsigned 64-bit big-endian |
//! | mono | its place in the whole book, unsigned 64-bit big-endian |
//! | before | the 32 bytes of the hash of the entry before it in the book's own chain |
//!
//! So a seal is over the whole job and over all that the book knew of people, rights and other jobs when it was made.
//! The code on the sheet is SHA-256 over the signature, its first 60 bits in Crockford's base 32; the fingerprint of a
//! key is SHA-256 over the public key's 32 bytes, its first 80 bits likewise. Both in groups of four.

use data_encoding::Encoding;
use ed25519_dalek::{Signature, Signer as _, SigningKey, VerifyingKey};
use sha2::{Digest as _, Sha256};
use std::sync::LazyLock;
use zeroize::Zeroizing;

use crate::event::Seal;

const DOMAIN: &str = "bayhand jobbook seal 1";

/// What a seal covers.
#[derive(Debug, Clone, Copy)]
pub struct Sealed<'a> {
    /// The job's number in the book.
    pub job: i64,
    /// How many entries it has.
    pub entries: u64,
    /// Hash of the last of them.
    pub head: &'a [u8],
    /// The supervisor's initials.
    pub by: &'a str,
    /// Time of the entry that holds the seal, as stored.
    pub at: &'a str,
    /// Number of that entry in the book's own chain.
    pub number: u64,
    /// Its place in the whole book.
    pub mono: u64,
    /// Hash of the entry before it in the book's own chain.
    pub before: &'a [u8],
}

impl Sealed<'_> {
    /// The bytes that are signed.
    pub fn message(&self) -> Vec<u8> {
        let (job, entries) = (self.job.to_be_bytes(), self.entries.to_be_bytes());
        let (number, mono) = (self.number.to_be_bytes(), self.mono.to_be_bytes());
        let fields: [&[u8]; 9] = [
            DOMAIN.as_bytes(),
            &job,
            &entries,
            self.head,
            self.by.as_bytes(),
            self.at.as_bytes(),
            &number,
            &mono,
            self.before,
        ];
        let mut message = Vec::new();
        for field in fields {
            message.extend((field.len() as u64).to_be_bytes());
            message.extend(field);
        }
        message
    }
}

/// A supervisor's key, opened. Wiped when dropped.
pub struct SealingKey(SigningKey);

impl SealingKey {
    /// The key that a seed of 32 bytes makes.
    pub fn of_seed(seed: &[u8; 32]) -> Self {
        Self(SigningKey::from_bytes(seed))
    }

    pub(crate) fn seed(&self) -> Zeroizing<[u8; 32]> {
        Zeroizing::new(self.0.to_bytes())
    }

    /// The public key, hex.
    pub fn public(&self) -> String {
        hex::encode(self.0.verifying_key().as_bytes())
    }

    /// The signature of a message, hex.
    pub fn sign(&self, message: &[u8]) -> String {
        hex::encode(self.0.sign(message).to_bytes())
    }
}

impl std::fmt::Debug for SealingKey {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "SealingKey({})", fingerprint(&self.public()).unwrap_or_default())
    }
}

/// True when the signature is the key's over the message. Strict: keys and signatures that could be read in more than
/// one way fit nothing.
pub fn fits(key: &str, signature: &str, message: &[u8]) -> bool {
    let mut key_bytes = [0; 32];
    let mut signature_bytes = [0; 64];
    if hex::decode_to_slice(key, &mut key_bytes).is_err()
        || hex::decode_to_slice(signature, &mut signature_bytes).is_err()
    {
        return false;
    }
    VerifyingKey::from_bytes(&key_bytes)
        .is_ok_and(|key| key.verify_strict(message, &Signature::from_bytes(&signature_bytes)).is_ok())
}

impl Seal {
    /// The short code that stands on the sheet: twelve signs in groups of four.
    pub fn code(&self) -> String {
        let signature = hex::decode(&self.signature).unwrap_or_default();
        grouped(&Sha256::digest(signature), 12)
    }
}

/// The fingerprint of a public key given in hex: sixteen signs in groups of four. None when it is no hex.
pub fn fingerprint(key: &str) -> Option<String> {
    Some(grouped(&Sha256::digest(hex::decode(key).ok()?), 16))
}

/// Base 32 as Douglas Crockford gives it: no I, L, O or U, which are misread.
static BASE_32: LazyLock<Option<Encoding>> = LazyLock::new(|| {
    let mut letters = data_encoding::Specification::new();
    letters.symbols.push_str("0123456789ABCDEFGHJKMNPQRSTVWXYZ");
    letters.encoding().ok()
});

/// The first signs of the bytes in base 32, in groups of four.
pub(crate) fn grouped(bytes: &[u8], signs: usize) -> String {
    let text = BASE_32.as_ref().map(|base| base.encode(bytes)).unwrap_or_default();
    let mut grouped = String::new();
    for (place, sign) in text.chars().take(signs).enumerate() {
        if place > 0 && place % 4 == 0 {
            grouped.push('-');
        }
        grouped.push(sign);
    }
    grouped
}

/// A code as somebody typed it off a sheet, in the form in which it is compared: signs only, those that are misread
/// taken for what they look like.
pub fn typed(code: &str) -> String {
    let sign = |sign: char| match sign.to_ascii_uppercase() {
        'O' => Some('0'),
        'I' | 'L' => Some('1'),
        sign => sign.is_ascii_alphanumeric().then_some(sign),
    };
    code.chars().filter_map(sign).collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]
mod tests {
    use super::*;

    // Source class P: RFC 8032, 7.1, TEST 3; seed, message and signature as in the RFC.
    #[test]
    fn signatures_are_those_of_the_rfc() {
        let seed = "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7";
        let mut bytes = [0; 32];
        hex::decode_to_slice(seed, &mut bytes).unwrap();
        let key = SealingKey::of_seed(&bytes);
        let message = hex::decode("af82").unwrap();
        let expected = concat!(
            "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac",
            "18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a"
        );
        assert_eq!(key.sign(&message), expected, "RFC 8032, 7.1, TEST 3");
        assert!(fits(&key.public(), expected, &message), "and it fits");
        assert!(!fits(&key.public(), expected, &[]), "another message");
        let mut other = expected.to_owned();
        other.replace_range(0..2, "63");
        assert!(!fits(&key.public(), &other, &message), "another signature");
        assert!(!fits(&key.public(), "6291", &message), "one that is cut short");
    }

    // Source class R: the point of order one (y = 1) is a public key under which, with R = identity and S = 0, the plain
    // equation [S]B = R + [k]A holds for every message. RFC 8032's plain check lets it pass; the strict one does not.
    #[test]
    fn a_key_that_fits_everything_fits_nothing() {
        let identity = format!("01{}", "00".repeat(31));
        let signature = format!("{identity}{}", "00".repeat(32));
        assert!(!fits(&identity, &signature, b"any message"), "a key of small order signs nothing");
    }

    #[test]
    fn every_field_of_a_seal_counts() {
        let (head, before) = ([1; 32], [2; 32]);
        let seal = Sealed { job: 1, entries: 2, head: &head, by: "MT", at: "now", number: 3, mono: 4, before: &before };
        let others = [
            (Sealed { job: 2, ..seal }, "job"),
            (Sealed { entries: 3, ..seal }, "entries"),
            (Sealed { head: &before, ..seal }, "head"),
            (Sealed { by: "M", at: "Tnow", ..seal }, "where the initials end"),
            (Sealed { at: "then", ..seal }, "at"),
            (Sealed { number: 4, mono: 3, ..seal }, "which number is which"),
            (Sealed { before: &head, ..seal }, "the hash before"),
        ];
        for (other, what) in others {
            assert_ne!(other.message(), seal.message(), "signed is {what}");
        }
    }

    #[test]
    fn codes_are_typed_as_they_are_read() {
        // Source class R: Python, hashlib.sha256(bytes(64)) = f5a5fd42d16a2030..., first 60 bits in Crockford's signs.
        let seal = Seal {
            job: crate::JobId(1),
            entries: 1,
            head: String::new(),
            by: String::new(),
            key: String::new(),
            signature: "00".repeat(64),
        };
        assert_eq!(seal.code(), "YPJZ-TGPH-D8G3", "twelve signs in groups of four");
        assert_eq!(typed("ypjz tgph-d8g3"), typed("YPJZ-TGPH-D8G3"), "blanks, hyphens and case do not count");
        assert_eq!(typed("OIL"), "011", "letters that are misread");
    }
}
