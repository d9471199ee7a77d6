//! Canonical content, signature, fingerprint: what makes an issued paper tamper-evident.
//!
//! Content is frozen once into canonical bytes (RFC 8785), signed with Ed25519 (RFC 8032) and kept as it was signed.
//! This room knows no paper, no database and no clock; random bytes are handed in. What it cannot do: it cannot tell
//! whether an issued paper still stands. That takes the shop's [`standing::StandingList`].

pub mod canonical;
pub mod code;
pub mod envelope;
pub mod key_file;
pub mod keys;
pub mod standing;

use serde::Serialize;
use sha2::{Digest, Sha256};

#[cfg(test)]
mod tests;

pub use canonical::{CanonicalError, canonical, freeze, read_canonical};
pub use code::{VerifyCode, verify_code};
pub use envelope::{Proven, Refusal, Sealed, Signed};
pub use keys::{KeyRing, Signer, fingerprint, key_id};

/// SHA-256 as lower-case hexadecimal.
pub fn sha256_hex(bytes: &[u8]) -> String {
    hex(&Sha256::digest(bytes))
}

/// Salted SHA-256 of a detached part: the digest of its canonical bytes, which carry the salt.
///
/// Errors: what [`freeze`] refuses.
pub fn personal_digest<T: Serialize>(personal: &T) -> Result<String, CanonicalError> {
    Ok(sha256_hex(&freeze(personal)?))
}

/// Lower-case hexadecimal.
pub fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::with_capacity(bytes.len() * 2), |mut text, byte| {
        for half in [byte >> 4, byte & 15] {
            text.push(char::from(b"0123456789abcdef"[usize::from(half)]));
        }
        text
    })
}
