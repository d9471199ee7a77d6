//! The signing key under a passphrase: Argon2id (RFC 9106, 4, second recommended option) makes the key that
//! ChaCha20-Poly1305 (RFC 8439) seals with.

use anyhow::{Context, bail};
use argon2::{Algorithm, Argon2, Params, Version};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use chacha20poly1305::aead::Aead;
use chacha20poly1305::{ChaCha20Poly1305, Key, KeyInit, Nonce};
use serde::{Deserialize, Serialize};

/// Name of the wrapped key in a backup.
pub const NAME: &str = "signing-key.wrapped.json";
const FORMAT: &str = "fuelwright/wrapped-key/1";
const MEMORY_KIB: u32 = 65_536;
const PASSES: u32 = 3;
const LANES: u32 = 4;

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Wrapped {
    format: String,
    salt: String,
    nonce: String,
    sealed: String,
}

/// Wraps the text of a key file.
pub fn wrap(pem: &[u8], passphrase: &str) -> anyhow::Result<Vec<u8>> {
    let (mut salt, mut nonce) = ([0_u8; 16], [0_u8; 12]);
    rand::fill(&mut salt);
    rand::fill(&mut nonce);
    let Ok(sealed) = cipher(passphrase, &salt)?.encrypt(&Nonce::from(nonce), pem) else {
        bail!("the signing key cannot be wrapped");
    };
    let wrapped = Wrapped {
        format: FORMAT.to_owned(),
        salt: STANDARD.encode(salt),
        nonce: STANDARD.encode(nonce),
        sealed: STANDARD.encode(sealed),
    };
    Ok(serde_json::to_vec_pretty(&wrapped)?)
}

/// The text of the key file again.
///
/// # Errors
/// A passphrase that does not fit, or a damaged file: the two cannot be told apart.
pub fn unwrap(json: &[u8], passphrase: &str) -> anyhow::Result<Vec<u8>> {
    let wrapped: Wrapped = serde_json::from_slice(json).context("the wrapped signing key cannot be read")?;
    if wrapped.format != FORMAT {
        bail!("the wrapped signing key has the format {:?}, which this version does not know", wrapped.format);
    }
    let nonce: [u8; 12] = STANDARD.decode(&wrapped.nonce)?.try_into().ok().context("the nonce is not 12 bytes long")?;
    let (salt, sealed) = (STANDARD.decode(&wrapped.salt)?, STANDARD.decode(&wrapped.sealed)?);
    match cipher(passphrase, &salt)?.decrypt(&Nonce::from(nonce), sealed.as_slice()) {
        Ok(pem) => Ok(pem),
        Err(_) => bail!("the passphrase does not open the signing key, or the wrapped key is damaged"),
    }
}

fn cipher(passphrase: &str, salt: &[u8]) -> anyhow::Result<ChaCha20Poly1305> {
    let broken = |error: argon2::Error| anyhow::anyhow!("the passphrase cannot be used: {error}");
    let params = Params::new(MEMORY_KIB, PASSES, LANES, Some(32)).map_err(broken)?;
    let mut key = [0_u8; 32];
    Argon2::new(Algorithm::Argon2id, Version::V0x13, params)
        .hash_password_into(passphrase.as_bytes(), salt, &mut key)
        .map_err(broken)?;
    Ok(ChaCha20Poly1305::new(&Key::from(key)))
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_right_passphrase_opens_it_and_no_other() {
        let wrapped = super::wrap(b"a key", "long enough to type").unwrap();
        assert_eq!(super::unwrap(&wrapped, "long enough to type").unwrap(), b"a key");
        assert!(super::unwrap(&wrapped, "long enough to tipe").is_err());
        assert!(!wrapped.windows(5).any(|five| five == b"a key"));
    }
}
