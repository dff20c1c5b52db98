//! Texts that are damaged in a few places, as many as the form of the test asks for.

use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

const SEED: [u8; 32] = *b"bayhand fuzz of the record, 2026";
/// Texts of the usual and of the long form (`BAYHAND_LONG=1`).
const TEXTS: (u32, u32) = (2_000, 500_000);

/// Runs a property over so many texts, from the printed seed.
pub fn runner() -> TestRunner {
    let cases = if std::env::var_os("BAYHAND_LONG").is_some() { TEXTS.1 } else { TEXTS.0 };
    println!("seed {:?}, {cases} texts", String::from_utf8_lossy(&SEED));
    let config = Config { cases, failure_persistence: None, ..Config::default() };
    TestRunner::new_with_rng(config, TestRng::from_seed(RngAlgorithm::ChaCha, &SEED))
}

/// A text with some of its bytes replaced, removed or doubled.
pub fn damaged(text: String) -> impl Strategy<Value = String> {
    let changes = prop::collection::vec((any::<prop::sample::Index>(), 0..4_u8, any::<u8>()), 1..4);
    changes.prop_map(move |changes| {
        let mut bytes = text.clone().into_bytes();
        for (at, kind, byte) in changes {
            let at = at.index(bytes.len());
            match kind {
                0 => bytes[at] = byte,
                1 => bytes[at] = b"\"{}[]:,0-\\ntf"[byte as usize % 13],
                2 => {
                    bytes.remove(at);
                }
                _ => bytes.insert(at, bytes[at]),
            }
        }
        String::from_utf8_lossy(&bytes).into_owned()
    })
}
