//! Texts told apart from the record, so that they can go without the record being altered.

use sha2::{Digest as _, Sha256};

use crate::people::Denied;
use crate::secret::random;

/// A text with the salt that keeps anybody from finding it out by trying texts.
pub(crate) struct Apart {
    pub(crate) salt: [u8; 32],
    pub(crate) text: String,
}

impl Apart {
    pub(crate) fn new(text: String) -> Result<Self, Denied> {
        Ok(Self { salt: random()?, text })
    }

    /// The name under which the record knows it, hex.
    pub(crate) fn name(&self) -> String {
        hex::encode(hash(&self.salt, self.text.as_bytes()))
    }
}

/// SHA-256 over the salt's 32 bytes and the text's UTF-8 bytes.
pub(crate) fn hash(salt: &[u8], text: &[u8]) -> [u8; 32] {
    Sha256::new().chain_update(salt).chain_update(text).finalize().into()
}
