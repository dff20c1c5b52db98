//! The model's file: a header, the vocabulary, the weights in 16-bit floats, and the SHA-256 of all of it.
//!
//! Written by [`super::convert`], read here. Little-endian throughout. Nothing in it is trusted: every length is held
//! against what is left, and the hash is checked first.

use super::shape;
use sha2::{Digest, Sha256};
use std::{fs, io, path::Path};

/// First bytes of the file.
pub(super) const HEADER: &[u8] = b"bayhand voice model 1\n";

/// Bytes of the hash at its end.
pub(super) const HASH: usize = 32;

/// Why a file gives no model.
#[derive(Debug, thiserror::Error)]
pub enum ModelError {
    /// It cannot be read.
    #[error("the voice model cannot be read: {0}")]
    Unreadable(#[from] io::Error),
    /// It is something else.
    #[error("this file is not a voice model; `cargo xtask voice` makes one")]
    NotAModel,
    /// It begins like one but is cut or changed.
    #[error("this voice model is damaged: {0}")]
    Damaged(&'static str),
}

/// What a file holds: the text of each token as bytes, and the weights by their place in [`shape::tensors`].
pub(super) struct Contents {
    pub vocabulary: Vec<Vec<u8>>,
    pub weights: Vec<Vec<f32>>,
}

/// Reads and checks a file.
///
/// # Errors
/// It cannot be read, is another file, or is damaged.
pub(super) fn read(path: &Path) -> Result<Contents, ModelError> {
    parse(&fs::read(path)?)
}

/// Reads and checks its bytes.
pub(super) fn parse(bytes: &[u8]) -> Result<Contents, ModelError> {
    if !bytes.starts_with(HEADER) {
        return Err(ModelError::NotAModel);
    }
    let Some(end) = bytes.len().checked_sub(HASH).filter(|end| *end >= HEADER.len()) else {
        return Err(ModelError::Damaged("it is cut"));
    };
    let (held, hash) = bytes.split_at(end);
    if Sha256::digest(held)[..] != *hash {
        return Err(ModelError::Damaged("its contents do not have the hash that stands at its end"));
    }
    let mut rest = Rest(&held[HEADER.len()..]);
    let count = rest.take(4)?.iter().rev().fold(0_usize, |n, byte| n << 8 | usize::from(*byte));
    if count != shape::TOKENS {
        return Err(ModelError::Damaged("its vocabulary has another size"));
    }
    let mut vocabulary = Vec::with_capacity(count);
    for _ in 0..count {
        let length = rest.take(1)?[0];
        vocabulary.push(rest.take(usize::from(length))?.to_vec());
    }
    let mut weights = Vec::new();
    for tensor in shape::tensors() {
        let halves = rest.take(2 * tensor.values())?;
        weights
            .push(halves.chunks_exact(2).map(|pair| half_to_single(u16::from_le_bytes([pair[0], pair[1]]))).collect());
    }
    if rest.0.is_empty() { Ok(Contents { vocabulary, weights }) } else { Err(ModelError::Damaged("it is too long")) }
}

/// What has not been read yet.
struct Rest<'a>(&'a [u8]);

impl<'a> Rest<'a> {
    fn take(&mut self, bytes: usize) -> Result<&'a [u8], ModelError> {
        let (taken, rest) = self.0.split_at_checked(bytes).ok_or(ModelError::Damaged("it is too short"))?;
        self.0 = rest;
        Ok(taken)
    }
}

/// A 16-bit float (IEEE 754 binary16) as a 32-bit one, exactly.
fn half_to_single(half: u16) -> f32 {
    let sign = u32::from(half & 0x8000) << 16;
    let exponent = u32::from(half >> 10 & 0x1f);
    let fraction = u32::from(half & 0x3ff);
    match exponent {
        // Subnormal: the fraction counts steps of 2^-24.
        0 => f32::from_bits(sign | 0x3f80_0000) * (fraction as f32) * 2.0_f32.powi(-24),
        0x1f => f32::from_bits(sign | 0x7f80_0000 | fraction << 13),
        _ => f32::from_bits(sign | (exponent + 112) << 23 | fraction << 13),
    }
}

#[cfg(test)]
mod tests {
    use super::half_to_single;

    /// The table of IEEE 754-2008 binary16 as its annexes and every textbook give it.
    #[test]
    fn sixteen_bits_become_the_same_value() {
        for (half, value) in [
            (0x3c00, 1.0),
            (0xc000, -2.0),
            (0x7bff, 65504.0),
            (0x0400, 6.103_515_6e-5),
            (0x0001, 5.960_464_5e-8),
            (0x3555, 0.333_251_95),
            (0x0000, 0.0),
        ] {
            assert_eq!(half_to_single(half), value, "{half:#06x}");
        }
    }
}
