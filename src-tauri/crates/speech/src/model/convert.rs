//! Makes the model's file from the carrier's two files: `model.bin` (CTranslate2, version 6) and `vocabulary.txt`.
//!
//! The weights are those of Whisper `tiny.en` in 16-bit floats; they are renamed and put in order, not computed with.

use super::file::HEADER;
use super::shape;
use sha2::{Digest, Sha256};
use std::collections::HashMap;
use std::{fs, io, path::Path};

/// SHA-256 of the carrier's `model.bin`.
pub const WEIGHTS_SHA256: &str = "1a5afae06a4db91c975c9a9d78be5cc110ee4ea022ad57d55492e4550e936b2a";

/// SHA-256 of the carrier's `vocabulary.txt`.
pub const VOCABULARY_SHA256: &str = "ff77588746d3a2595d32ab5b69ffd7b95ce2441ac57533cb66fc3eb575a115cf";

/// Why nothing was made.
#[derive(Debug, thiserror::Error)]
pub enum ConvertError {
    /// A file cannot be read or written.
    #[error("{0}")]
    File(#[from] io::Error),
    /// A file is not the one that is pinned.
    #[error("{name} has SHA-256 {is}, not {wanted}: it is another file than the one that was looked at")]
    OtherFile {
        /// Its name.
        name: &'static str,
        /// What it has.
        is: String,
        /// What it must have.
        wanted: &'static str,
    },
    /// A file is the pinned one but this program does not understand it.
    #[error("{0}")]
    Form(String),
}

/// Reads `model.bin` and `vocabulary.txt` from `carrier` and writes the model to `out`, first under another name.
///
/// # Errors
/// A file is missing, is not the pinned one, or cannot be written.
pub fn convert(carrier: &Path, out: &Path) -> Result<(), ConvertError> {
    let weights = pinned(carrier, "model.bin", WEIGHTS_SHA256)?;
    let vocabulary = pinned(carrier, "vocabulary.txt", VOCABULARY_SHA256)?;
    let made = model(&weights, &vocabulary)?;
    if let Some(folder) = out.parent() {
        fs::create_dir_all(folder)?;
    }
    let unfinished = out.with_extension("part");
    fs::write(&unfinished, made)?;
    fs::rename(unfinished, out)?;
    Ok(())
}

fn pinned(folder: &Path, name: &'static str, wanted: &'static str) -> Result<Vec<u8>, ConvertError> {
    let bytes = fs::read(folder.join(name))?;
    let is: String = Sha256::digest(&bytes).iter().map(|byte| format!("{byte:02x}")).collect();
    if is == wanted { Ok(bytes) } else { Err(ConvertError::OtherFile { name, is, wanted }) }
}

fn model(weights: &[u8], vocabulary: &[u8]) -> Result<Vec<u8>, ConvertError> {
    let tensors = variables(weights).ok_or_else(|| ConvertError::Form("model.bin is cut".to_owned()))?;
    let tokens = tokens(vocabulary)?;
    let mut out = HEADER.to_vec();
    out.extend((tokens.len() as u32).to_le_bytes());
    for token in tokens {
        out.push(u8::try_from(token.len()).map_err(|_| ConvertError::Form("a token is too long".to_owned()))?);
        out.extend(token);
    }
    for tensor in shape::tensors() {
        let found = tensors.get(tensor.name.as_str());
        let data = found.filter(|data| data.len() == 2 * tensor.values());
        out.extend_from_slice(
            data.ok_or_else(|| ConvertError::Form(format!("model.bin has no fitting {}", tensor.name)))?,
        );
    }
    let hash = Sha256::digest(&out);
    out.extend_from_slice(&hash);
    Ok(out)
}

/// The variables of a CTranslate2 file, version 6, by name; their bytes as they stand there.
fn variables(mut bytes: &[u8]) -> Option<HashMap<&str, &[u8]>> {
    let rest = &mut bytes;
    let _version = number(rest, 4)?;
    let _spec = name(rest)?;
    let _revision = number(rest, 4)?;
    let mut found = HashMap::new();
    for _ in 0..number(rest, 4)? {
        let name = name(rest)?;
        let rank = number(rest, 1)?;
        let _extents = take(rest, 4 * rank)?;
        let _type = number(rest, 1)?;
        let length = number(rest, 4)?;
        found.insert(name, take(rest, length)?);
    }
    Some(found)
}

fn take<'a>(rest: &mut &'a [u8], bytes: usize) -> Option<&'a [u8]> {
    let (taken, left) = rest.split_at_checked(bytes)?;
    *rest = left;
    Some(taken)
}

fn number(rest: &mut &[u8], bytes: usize) -> Option<usize> {
    Some(take(rest, bytes)?.iter().rev().fold(0, |n, byte| n << 8 | usize::from(*byte)))
}

/// A length and that many bytes, the last of them zero.
fn name<'a>(rest: &mut &'a [u8]) -> Option<&'a str> {
    let length = number(rest, 2)?;
    std::str::from_utf8(take(rest, length)?).ok().map(|name| name.trim_end_matches('\0'))
}

/// The bytes that each token stands for. The list writes a byte that is no printing character of Latin-1 as a character
/// from U+0100 on, in the order of these bytes; that is the way of the byte-level vocabularies.
fn tokens(list: &[u8]) -> Result<Vec<Vec<u8>>, ConvertError> {
    let list = std::str::from_utf8(list).map_err(|_| ConvertError::Form("vocabulary.txt is not UTF-8".to_owned()))?;
    let printing = |byte: u8| matches!(byte, b'!'..=b'~' | 0xa1..=0xac | 0xae..=0xff);
    let mut bytes: HashMap<char, u8> = HashMap::new();
    let mut moved = 0;
    for byte in 0..=255_u8 {
        let character = if printing(byte) {
            Some(char::from(byte))
        } else {
            moved += 1;
            char::from_u32(0xff + moved)
        };
        bytes.extend(character.map(|character| (character, byte)));
    }
    let tokens: Vec<Vec<u8>> =
        list.split('\n').map(|line| line.chars().filter_map(|c| bytes.get(&c).copied()).collect()).collect();
    let last = tokens.iter().rposition(|token| !token.is_empty()).map_or(0, |last| last + 1);
    if last == shape::TOKENS {
        Ok(tokens.into_iter().take(last).collect())
    } else {
        Err(ConvertError::Form(format!("vocabulary.txt has {last} tokens, not {}", shape::TOKENS)))
    }
}
