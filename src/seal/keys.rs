//! Signing keys and the ring of keys a reader trusts.

use std::collections::BTreeMap;
use std::fmt;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use ed25519_dalek::{Signer as _, SigningKey, VerifyingKey};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use time::OffsetDateTime;

use super::envelope::{Proven, Refusal, Sealed, Signed};

/// Id of a public key: the first 16 bytes of its SHA-256, lower-case hexadecimal.
pub fn key_id(public_key: &[u8; 32]) -> String {
    super::hex(&Sha256::digest(public_key)[..16])
}

/// The id cut short for a reader's eye: its first 12 digits in groups of four, `5f2a 91c0 77de`.
pub fn fingerprint(key_id: &str) -> String {
    let digits: Vec<char> = key_id.chars().take(12).collect();
    digits.chunks(4).map(|group| group.iter().collect::<String>()).collect::<Vec<_>>().join(" ")
}

/// A key that can sign. Its secret is wiped from memory when it is dropped, and never printed.
#[derive(Clone)]
pub struct Signer(SigningKey);

impl fmt::Debug for Signer {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Signer({})", self.key_id())
    }
}

impl Signer {
    /// The key these 32 random bytes are (RFC 8032, 5.1.5).
    pub fn from_random(secret: &[u8; 32]) -> Self {
        Self(SigningKey::from_bytes(secret))
    }

    pub(super) fn from_dalek(key: SigningKey) -> Self {
        Self(key)
    }

    pub(super) fn dalek(&self) -> &SigningKey {
        &self.0
    }

    /// The public half.
    pub fn public_key(&self) -> [u8; 32] {
        self.0.verifying_key().to_bytes()
    }

    /// The public half as base64, as it is published and kept.
    pub fn public_key_base64(&self) -> String {
        STANDARD.encode(self.public_key())
    }

    /// Id of the key.
    pub fn key_id(&self) -> String {
        key_id(&self.public_key())
    }

    /// Fingerprint as printed on papers.
    pub fn fingerprint(&self) -> String {
        fingerprint(&self.key_id())
    }

    /// Signature over exactly these bytes.
    pub fn sign(&self, bytes: &[u8]) -> [u8; 64] {
        self.0.sign(bytes).to_bytes()
    }

    /// A statement, signed by this key, that `new` is the shop's next key.
    pub fn introduce(&self, new: &Signer, made_at: OffsetDateTime) -> Result<Sealed, super::CanonicalError> {
        Sealed::seal(
            &Introduction {
                format: Introduction::FORMAT.to_owned(),
                key_id: new.key_id(),
                public_key: new.public_key_base64(),
                made_at,
            },
            self,
        )
    }
}

/// Content of the statement by which an old key vouches for a new one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Introduction {
    /// Always [`Signed::FORMAT`].
    pub format: String,
    /// Id of the new key.
    pub key_id: String,
    /// The new public key, base64.
    pub public_key: String,
    /// When it was introduced.
    #[serde(with = "time::serde::rfc3339")]
    pub made_at: OffsetDateTime,
}

impl Signed for Introduction {
    const FORMAT: &'static str = "fuelwright/key/1";
}

/// Why a public key is of no use.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NotAKey;

impl fmt::Display for NotAKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not an Ed25519 public key: 32 bytes in base64 are wanted")
    }
}

impl std::error::Error for NotAKey {}

/// Reads a public key from base64.
pub fn read_public_key(base64: &str) -> Result<[u8; 32], NotAKey> {
    let bytes: [u8; 32] = STANDARD.decode(base64.trim()).ok().and_then(|b| b.try_into().ok()).ok_or(NotAKey)?;
    VerifyingKey::from_bytes(&bytes).map_err(|_| NotAKey)?;
    Ok(bytes)
}

/// Keys a reader trusts, each perhaps only up to a day.
#[derive(Debug, Clone, Default)]
pub struct KeyRing {
    keys: BTreeMap<String, Option<OffsetDateTime>>,
}

impl KeyRing {
    /// A ring that trusts nobody yet.
    pub fn new() -> Self {
        Self::default()
    }

    /// Trusts a key, without end.
    pub fn trust(&mut self, public_key: &[u8; 32]) {
        self.keys.entry(key_id(public_key)).or_insert(None);
    }

    /// Marks a key as not trusted after an instant; a key not on the ring stays off it. The earlier mark wins.
    pub fn distrust_after(&mut self, key_id: &str, instant: OffsetDateTime) {
        if let Some(end) = self.keys.get_mut(key_id) {
            *end = Some(end.map_or(instant, |before| before.min(instant)));
        }
    }

    /// Follows an introduction: trusts the new key when a key of this ring vouches for it. Returns the new key's id.
    pub fn follow(&mut self, introduction: &Sealed) -> Result<String, Refusal> {
        match introduction.open::<Introduction>(self)? {
            Proven::Genuine(content) => {
                let public_key = read_public_key(&content.public_key).map_err(|_| Refusal::PublicKey)?;
                if key_id(&public_key) != content.key_id {
                    return Err(Refusal::KeyId);
                }
                self.trust(&public_key);
                Ok(content.key_id)
            }
            Proven::SoundButUnknownKey(_) => Err(Refusal::NotVouchedFor),
        }
    }

    /// `None` for a key not on the ring; else the instant after which it is not trusted, if there is one.
    pub fn find(&self, key_id: &str) -> Option<Option<OffsetDateTime>> {
        self.keys.get(key_id).copied()
    }
}
