//! Secrets that people keep in their heads, and what they are checked against.

use std::fmt;

use argon2::{Algorithm, Argon2, Params, Version};
use serde::{Deserialize, Deserializer};
use zeroize::Zeroizing;

use crate::people::Denied;

/// A PIN, passphrase or recovery code as it was typed. Wiped when dropped; never printed, stored or sent on.
#[derive(Clone)]
pub struct Secret(Zeroizing<String>);

impl Secret {
    /// What was typed.
    pub fn new(text: impl Into<String>) -> Self {
        Self(Zeroizing::new(text.into()))
    }

    /// What was typed, or what was made to be shown once: a recovery code.
    pub fn reveal(&self) -> &str {
        &self.0
    }

    pub(crate) fn bytes(&self) -> &[u8] {
        self.0.as_bytes()
    }

    /// A PIN is 4 to 12 digits, and not one digit again and again.
    ///
    /// # Errors
    /// [`Denied::PinForm`].
    pub fn has_form_of_pin(&self) -> Result<(), Denied> {
        let digits = self.bytes();
        let one_again = digits.first().is_none_or(|first| digits.iter().all(|digit| digit == first));
        let form = (4..=12).contains(&digits.len()) && digits.iter().all(u8::is_ascii_digit);
        if form && !one_again { Ok(()) } else { Err(Denied::PinForm) }
    }

    /// A passphrase has at least 10 characters.
    ///
    /// # Errors
    /// [`Denied::PassphraseForm`].
    pub fn has_form_of_passphrase(&self) -> Result<(), Denied> {
        if self.0.chars().count() >= 10 { Ok(()) } else { Err(Denied::PassphraseForm) }
    }
}

impl fmt::Debug for Secret {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Secret(..)")
    }
}

impl<'de> Deserialize<'de> for Secret {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        String::deserialize(from).map(Self::new)
    }
}

/// Cost of argon2id: memory in KiB, passes, lanes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Cost {
    pub(crate) memory_kib: u32,
    pub(crate) passes: u32,
    pub(crate) lanes: u32,
}

/// For a PIN, which is asked for at the car again and again (the lowest of the settings that OWASP's cheat sheet on
/// storing passwords calls equal).
pub(crate) const PIN: Cost = Cost { memory_kib: 19 * 1024, passes: 2, lanes: 1 };
/// For a passphrase, which guards a key file that can be carried away (RFC 9106, 4: second recommended option).
pub(crate) const PASSPHRASE: Cost = Cost { memory_kib: 64 * 1024, passes: 3, lanes: 4 };
/// What is asked for at most when a stored cost is read back: a changed file must not take all memory.
const MOST: Cost = Cost { memory_kib: 1024 * 1024, passes: 100, lanes: 64 };

impl Cost {
    /// 32 bytes made of a secret and a salt; none for a cost that cannot be.
    pub(crate) fn derive(self, secret: &Secret, salt: &[u8]) -> Option<Zeroizing<[u8; 32]>> {
        if self.memory_kib > MOST.memory_kib || self.passes > MOST.passes || self.lanes > MOST.lanes {
            return None;
        }
        let params = Params::new(self.memory_kib, self.passes, self.lanes, Some(32)).ok()?;
        let mut out = Zeroizing::new([0; 32]);
        Argon2::new(Algorithm::Argon2id, Version::V0x13, params)
            .hash_password_into(secret.bytes(), salt, out.as_mut())
            .ok()?;
        Some(out)
    }
}

/// The text that a PIN or a recovery code is checked against: `argon2id MEMORY PASSES LANES SALT HASH`.
pub(crate) fn verifier(secret: &Secret, cost: Cost, salt: [u8; 16]) -> Option<String> {
    let hash = cost.derive(secret, &salt)?;
    let Cost { memory_kib, passes, lanes } = cost;
    Some(format!("argon2id {memory_kib} {passes} {lanes} {} {}", hex::encode(salt), hex::encode(hash.as_slice())))
}

/// True when the secret is the one that the text was made of.
pub(crate) fn fits(secret: &Secret, verifier: &str) -> bool {
    let parts: Vec<&str> = verifier.split(' ').collect();
    let ["argon2id", memory_kib, passes, lanes, salt, hash] = parts[..] else { return false };
    let (Ok(memory_kib), Ok(passes), Ok(lanes)) = (memory_kib.parse(), passes.parse(), lanes.parse()) else {
        return false;
    };
    let (Ok(salt), Ok(hash)) = (hex::decode(salt), hex::decode(hash)) else { return false };
    let derived = Cost { memory_kib, passes, lanes }.derive(secret, &salt);
    // Compared without stopping at the first difference, so that time tells nothing.
    derived.is_some_and(|derived| {
        derived.len() == hash.len() && derived.iter().zip(&hash).fold(0, |unlike, (a, b)| unlike | (a ^ b)) == 0
    })
}

/// Bytes that nobody can foresee, from the system.
pub(crate) fn random<const N: usize>() -> Result<[u8; N], Denied> {
    let mut bytes = [0; N];
    getrandom::fill(&mut bytes).map_err(|error| Denied::NoRandom(error.to_string()))?;
    Ok(bytes)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]
mod tests {
    use super::*;

    // Source class M: RFC 9106, 5.3, argon2id, from memory: 32 KiB, 3 passes, 4 lanes, password 32 x 01, salt 16 x 02. The vector
    // there has a secret and associated data, which the library takes apart from ours; it is checked with these.
    #[test]
    fn argon2id_is_that_of_the_rfc() {
        let params = argon2::ParamsBuilder::new()
            .m_cost(32)
            .t_cost(3)
            .p_cost(4)
            .data(argon2::AssociatedData::new(&[4; 12]).unwrap())
            .build()
            .unwrap();
        let engine = Argon2::new_with_secret(&[3; 8], Algorithm::Argon2id, Version::V0x13, params).unwrap();
        let mut tag = [0; 32];
        engine.hash_password_into(&[1; 32], &[2; 16], &mut tag).unwrap();
        let expected = "0d640df58d78766c08c037a34a8b53c9d01ef0452d75b65eb52520e96b01e659";
        assert_eq!(hex::encode(tag), expected, "RFC 9106, 5.3");
    }

    #[test]
    fn a_verifier_fits_its_secret_only() {
        let cheap = Cost { memory_kib: 64, passes: 1, lanes: 1 };
        let text = verifier(&Secret::new("2468"), cheap, [7; 16]).unwrap();
        assert!(fits(&Secret::new("2468"), &text), "the secret it was made of");
        assert!(!fits(&Secret::new("2469"), &text), "another");
        assert!(!text.contains("2468"), "the secret itself is not kept");
        let other_cost = text.replacen(" 64 1 1 ", " 64 2 1 ", 1);
        assert!(!fits(&Secret::new("2468"), &other_cost), "the cost counts");
        let huge = text.replacen(" 64 1 1 ", " 4294967295 1 1 ", 1);
        assert!(!fits(&Secret::new("2468"), &huge), "a cost beyond all measure is not tried");
        assert!(!fits(&Secret::new("2468"), "argon2id 64 1"), "a text that is cut short fits nothing");
    }

    #[test]
    fn forms() {
        for (pin, good) in
            [("2468", true), ("123456789012", true), ("246", false), ("1234567890123", false), ("12a4", false)]
        {
            assert_eq!(Secret::new(pin).has_form_of_pin().is_ok(), good, "{pin}");
        }
        assert!(Secret::new("7777").has_form_of_pin().is_err(), "one digit again and again is guessed first");
        assert!(Secret::new("").has_form_of_pin().is_err(), "nothing is no PIN");
        assert!(Secret::new("nine chars").has_form_of_passphrase().is_ok(), "ten characters, the blank counted");
        assert!(Secret::new("ninechars").has_form_of_passphrase().is_err(), "nine do not suffice");
        assert!(Secret::new("äöüäöüäöüä").has_form_of_passphrase().is_ok(), "characters are counted, not bytes");
    }

    #[test]
    fn a_secret_is_not_printed() {
        assert_eq!(format!("{:?}", Secret::new("2468")), "Secret(..)", "a log holds no PIN");
    }
}
