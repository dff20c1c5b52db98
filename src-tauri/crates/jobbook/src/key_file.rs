//! A supervisor's key file: the seed of the key, encrypted under a passphrase.
//!
//! Argon2id makes a key of the passphrase, XChaCha20-Poly1305 encrypts the seed under it; the public key and the cost are
//! bound in as associated data, so that neither can be exchanged. The file is text (JSON) and can be kept anywhere.

use std::fs::{self, File, OpenOptions};
use std::io::{self, Write as _};
use std::path::Path;

use chacha20poly1305::aead::{Aead as _, Payload};
use chacha20poly1305::{KeyInit as _, XChaCha20Poly1305, XNonce};
use serde::{Deserialize, Serialize};
use zeroize::Zeroizing;

use crate::people::Denied;
use crate::seal::SealingKey;
use crate::secret::{Cost, PASSPHRASE, Secret, random};

const FORM: &str = "bayhand key 1";

/// What stands in the file. Bytes are in hexadecimal.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KeyFile {
    form: String,
    /// The public key.
    pub public: String,
    memory_kib: u32,
    passes: u32,
    lanes: u32,
    salt: String,
    nonce: String,
    encrypted_seed: String,
}

impl KeyFile {
    /// A new key under a passphrase.
    ///
    /// # Errors
    /// [`Denied::PassphraseForm`], [`Denied::NoRandom`].
    pub fn make(passphrase: &Secret) -> Result<(Self, SealingKey), Denied> {
        passphrase.has_form_of_passphrase()?;
        let seed = Zeroizing::new(random::<32>()?);
        Self::lock(SealingKey::of_seed(&seed), passphrase, PASSPHRASE)
    }

    fn lock(key: SealingKey, passphrase: &Secret, cost: Cost) -> Result<(Self, SealingKey), Denied> {
        let (salt, nonce) = (random::<16>()?, random::<24>()?);
        let mut file = Self {
            form: FORM.into(),
            public: key.public(),
            memory_kib: cost.memory_kib,
            passes: cost.passes,
            lanes: cost.lanes,
            salt: hex::encode(salt),
            nonce: hex::encode(nonce),
            encrypted_seed: String::new(),
        };
        let cannot = || Denied::NoRandom("argon2id cannot be computed".into());
        let under = cost.derive(passphrase, &salt).ok_or_else(cannot)?;
        let bound = file.bound();
        let seed = key.seed();
        let payload = Payload { msg: seed.as_slice(), aad: bound.as_bytes() };
        let encrypted = cipher(&under).encrypt(&XNonce::from(nonce), payload).map_err(|_| cannot())?;
        file.encrypted_seed = hex::encode(encrypted);
        Ok((file, key))
    }

    /// The key, when the passphrase is the right one. `initials` are for the words of the refusal.
    ///
    /// # Errors
    /// [`Denied::WrongPassphrase`] (also for a file that was changed), [`Denied::BadKeyFile`].
    pub fn open(&self, passphrase: &Secret, initials: &str) -> Result<SealingKey, Denied> {
        let bad = || Denied::BadKeyFile(initials.to_owned());
        let mut nonce = [0; 24];
        hex::decode_to_slice(&self.nonce, &mut nonce).map_err(|_| bad())?;
        let salt = hex::decode(&self.salt).map_err(|_| bad())?;
        let encrypted = hex::decode(&self.encrypted_seed).map_err(|_| bad())?;
        let cost = Cost { memory_kib: self.memory_kib, passes: self.passes, lanes: self.lanes };
        let under = cost.derive(passphrase, &salt).ok_or_else(bad)?;
        let bound = self.bound();
        let payload = Payload { msg: encrypted.as_slice(), aad: bound.as_bytes() };
        let wrong = |_| Denied::WrongPassphrase(initials.to_owned());
        let seed = Zeroizing::new(cipher(&under).decrypt(&XNonce::from(nonce), payload).map_err(wrong)?);
        let seed: Zeroizing<[u8; 32]> = Zeroizing::new(seed.as_slice().try_into().map_err(|_| bad())?);
        let key = SealingKey::of_seed(&seed);
        if key.public() == self.public { Ok(key) } else { Err(bad()) }
    }

    /// Everything but the nonce and the encrypted seed, bound in.
    fn bound(&self) -> String {
        let Self { form, public, memory_kib, passes, lanes, salt, .. } = self;
        format!("{form} {public} {memory_kib} {passes} {lanes} {salt}")
    }

    /// Reads a key file; none when there is none.
    ///
    /// # Errors
    /// [`Denied::BadKeyFile`].
    pub fn read(path: &Path, initials: &str) -> Result<Option<Self>, Denied> {
        let bad = || Denied::BadKeyFile(initials.to_owned());
        let text = match fs::read_to_string(path) {
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
            read => read.map_err(|_| bad())?,
        };
        let file: Self = serde_json::from_str(&text).map_err(|_| bad())?;
        if file.form == FORM { Ok(Some(file)) } else { Err(bad()) }
    }

    /// Writes the file whole or not at all, for its owner's eyes only, synced.
    ///
    /// # Errors
    /// The system refuses.
    pub fn write(&self, path: &Path) -> io::Result<()> {
        let unfinished = path.with_extension("new");
        if let Some(folder) = path.parent() {
            fs::create_dir_all(folder)?;
        }
        let mut options = OpenOptions::new();
        options.write(true).create(true).truncate(true);
        #[cfg(unix)]
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
        let mut file = options.open(&unfinished)?;
        file.write_all(serde_json::to_string_pretty(self)?.as_bytes())?;
        file.sync_all()?;
        fs::rename(&unfinished, path)?;
        match path.parent() {
            Some(folder) if cfg!(unix) => File::open(folder)?.sync_all(),
            _ => Ok(()),
        }
    }
}

fn cipher(under: &Zeroizing<[u8; 32]>) -> XChaCha20Poly1305 {
    XChaCha20Poly1305::new(&(**under).into())
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]
mod tests {
    use super::*;

    const CHEAP: Cost = Cost { memory_kib: 64, passes: 1, lanes: 1 };

    #[test]
    fn only_the_passphrase_opens_the_file_and_only_as_it_is() {
        let passphrase = Secret::new("rain on a tin roof");
        let (file, key) = KeyFile::lock(SealingKey::of_seed(&[7; 32]), &passphrase, CHEAP).unwrap();
        assert_eq!(file.open(&passphrase, "MT").unwrap().public(), key.public(), "the passphrase opens it");
        let wrong = file.open(&Secret::new("rain on a tin rood"), "MT").unwrap_err();
        assert_eq!(wrong, Denied::WrongPassphrase("MT".into()), "another does not");

        let other = SealingKey::of_seed(&[8; 32]).public();
        let changed = KeyFile { public: other, ..file.clone() };
        assert!(changed.open(&passphrase, "MT").is_err(), "under another public key it does not open");
        let weaker = KeyFile { passes: 2, ..file.clone() };
        assert!(weaker.open(&passphrase, "MT").is_err(), "nor with another cost");
        let text = serde_json::to_string(&file).unwrap();
        assert!(!text.contains(&"07".repeat(8)), "the seed does not stand in it");
    }

    #[test]
    fn a_file_comes_back_as_it_was_written() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("keys/MT.key");
        assert_eq!(KeyFile::read(&path, "MT"), Ok(None), "none is none");
        let (file, _) = KeyFile::lock(SealingKey::of_seed(&[7; 32]), &Secret::new("x"), CHEAP).unwrap();
        file.write(&path).unwrap();
        assert_eq!(KeyFile::read(&path, "MT"), Ok(Some(file)), "what was written");
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt as _;
            assert_eq!(path.metadata().unwrap().permissions().mode() & 0o777, 0o600, "for its owner's eyes only");
        }
        fs::write(&path, "{}").unwrap();
        assert_eq!(KeyFile::read(&path, "MT"), Err(Denied::BadKeyFile("MT".into())), "a damaged one is told");
    }
}
