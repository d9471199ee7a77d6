//! A content with its signature, as one JSON file that a reader can keep and check without us.

use std::fmt;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use ed25519_dalek::{Signature, VerifyingKey};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use time::OffsetDateTime;
use time::format_description::well_known::Rfc3339;

use super::canonical::{CanonicalError, freeze, read_canonical};
use super::keys::{KeyRing, Signer, key_id, read_public_key};

/// Tag of the envelope itself.
const ENVELOPE_FORMAT: &str = "fuelwright/sealed/1";

/// Names, at the top of a content, of the instant it was signed at.
const SIGNED_AT: [&str; 3] = ["issued_at", "listed_at", "made_at"];

/// A content that is signed: its `format` field carries a tag, so that a signature on one kind never serves another.
pub trait Signed: Serialize + DeserializeOwned {
    /// The tag.
    const FORMAT: &'static str;
}

/// Content, signature and key, ready to be kept, sent or put into a PDF.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sealed {
    format: String,
    /// The canonical content, byte for byte, as one JSON text.
    content: String,
    algorithm: String,
    key_id: String,
    public_key: String,
    signature: String,
}

/// Why an envelope proves nothing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refusal {
    /// The file is no envelope of ours.
    NotSealed(String),
    /// The envelope or its content has another format tag than was wanted.
    Format(String),
    /// The public key is no key.
    PublicKey,
    /// The key id does not belong to the public key.
    KeyId,
    /// The signature does not fit the content: one of the two was altered.
    Signature,
    /// The content is not in its canonical form or misses fields.
    Content(String),
    /// The key is marked as not trusted from before this was signed.
    NotTrustedAfter(OffsetDateTime),
    /// A new key was introduced by a key that is not known.
    NotVouchedFor,
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotSealed(why) => write!(f, "this is no signed content: {why}"),
            Self::Format(found) => write!(f, "the format tag is {found:?}, which is not the one asked for"),
            Self::PublicKey => f.write_str("the public key is not an Ed25519 key"),
            Self::KeyId => f.write_str("the key id does not belong to the public key"),
            Self::Signature => f.write_str("the signature does not fit the content: one of them was altered"),
            Self::Content(why) => write!(f, "the content is damaged: {why}"),
            Self::NotTrustedAfter(instant) => write!(f, "signed with a key that is not trusted after {instant}"),
            Self::NotVouchedFor => f.write_str("the new key was introduced by a key that is not known here"),
        }
    }
}

impl std::error::Error for Refusal {}

impl From<CanonicalError> for Refusal {
    fn from(error: CanonicalError) -> Self {
        Self::Content(error.to_string())
    }
}

/// What a sound signature is worth to this reader.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Proven<T> {
    /// Signed by a key this reader trusts.
    Genuine(T),
    /// The signature is sound, but this reader does not know the key.
    SoundButUnknownKey(T),
}

impl Sealed {
    /// Freezes a content and signs it.
    pub fn seal<T: Signed>(content: &T, signer: &Signer) -> Result<Self, CanonicalError> {
        Self::seal_bytes(freeze(content)?, signer)
    }

    /// Signs bytes that [`freeze`] gave. Refused when they are not canonical.
    pub fn seal_bytes(content: Vec<u8>, signer: &Signer) -> Result<Self, CanonicalError> {
        read_canonical(&content)?;
        let signature = STANDARD.encode(signer.sign(&content));
        Self::from_parts(content, &signer.public_key(), signature)
    }

    /// Puts kept parts together again; nothing is checked until [`Sealed::open`].
    pub fn from_kept(content: Vec<u8>, public_key: &[u8; 32], signature: &[u8]) -> Result<Self, CanonicalError> {
        Self::from_parts(content, public_key, STANDARD.encode(signature))
    }

    fn from_parts(content: Vec<u8>, public_key: &[u8; 32], signature: String) -> Result<Self, CanonicalError> {
        Ok(Self {
            format: ENVELOPE_FORMAT.to_owned(),
            content: String::from_utf8(content).map_err(|e| CanonicalError::NotJson(e.to_string()))?,
            algorithm: "Ed25519".to_owned(),
            key_id: key_id(public_key),
            public_key: STANDARD.encode(public_key),
            signature,
        })
    }

    /// The envelope as a JSON file.
    pub fn to_json(&self) -> Vec<u8> {
        let mut json = serde_json::to_vec_pretty(self).unwrap_or_default();
        json.push(b'\n');
        json
    }

    /// Reads a JSON file. Nothing is checked until [`Sealed::open`].
    pub fn from_json(json: &[u8]) -> Result<Self, Refusal> {
        serde_json::from_slice(json).map_err(|e| Refusal::NotSealed(e.to_string()))
    }

    /// The bytes that were signed.
    pub fn content(&self) -> &[u8] {
        self.content.as_bytes()
    }

    /// Id of the key that signed.
    pub fn key_id(&self) -> &str {
        &self.key_id
    }

    /// The public key the envelope carries, if it is one and belongs to its id.
    pub fn public_key(&self) -> Option<[u8; 32]> {
        read_public_key(&self.public_key).ok().filter(|key| key_id(key) == self.key_id)
    }

    /// The 64 bytes of the signature; empty when the envelope holds none.
    pub fn signature(&self) -> Vec<u8> {
        STANDARD.decode(&self.signature).unwrap_or_default()
    }

    /// The format tag inside the content, to tell which kind to open; nothing is checked.
    pub fn content_format(&self) -> Option<String> {
        let value: serde_json::Value = serde_json::from_str(&self.content).ok()?;
        Some(value.get("format")?.as_str()?.to_owned())
    }

    /// Checks signature, key, canonical form and tag, and gives the content out.
    pub fn open<T: Signed>(&self, ring: &KeyRing) -> Result<Proven<T>, Refusal> {
        let is_trusted = self.check(ring)?;
        let value = read_canonical(self.content())?;
        let tag = value.get("format").and_then(|tag| tag.as_str()).unwrap_or_default();
        if tag != T::FORMAT {
            return Err(Refusal::Format(tag.to_owned()));
        }
        let content = serde_json::from_value(value).map_err(|e| Refusal::Content(e.to_string()))?;
        Ok(if is_trusted { Proven::Genuine(content) } else { Proven::SoundButUnknownKey(content) })
    }

    /// Checks everything but the kind of content. `true` when the ring trusts the key, `false` when it is unknown.
    pub fn check(&self, ring: &KeyRing) -> Result<bool, Refusal> {
        if self.format != ENVELOPE_FORMAT {
            return Err(Refusal::Format(self.format.clone()));
        }
        if self.algorithm != "Ed25519" {
            return Err(Refusal::Format(self.algorithm.clone()));
        }
        let public_key = read_public_key(&self.public_key).map_err(|_| Refusal::PublicKey)?;
        if key_id(&public_key) != self.key_id {
            return Err(Refusal::KeyId);
        }
        let signature: [u8; 64] = self.signature().try_into().map_err(|_| Refusal::Signature)?;
        let verifying = VerifyingKey::from_bytes(&public_key).map_err(|_| Refusal::PublicKey)?;
        // Strict: refuses weak keys and the second form a signature may have.
        verifying.verify_strict(self.content(), &Signature::from_bytes(&signature)).map_err(|_| Refusal::Signature)?;
        let value = read_canonical(self.content())?;
        match ring.find(&self.key_id) {
            None => Ok(false),
            Some(None) => Ok(true),
            Some(Some(end)) => match signed_at(&value) {
                Some(at) if at <= end => Ok(true),
                _ => Err(Refusal::NotTrustedAfter(end)),
            },
        }
    }
}

fn signed_at(content: &serde_json::Value) -> Option<OffsetDateTime> {
    let text = SIGNED_AT.iter().find_map(|name| content.get(name)?.as_str())?;
    OffsetDateTime::parse(text, &Rfc3339).ok()
}
