//! Secrets: tokens that name a session, and slow hashes of what people choose.

use std::sync::Arc;

use argon2::password_hash::{PasswordHasher, PasswordVerifier};
use argon2::{Algorithm, Argon2, Params, Version};
use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use rand::TryRng;
use sha2::{Digest, Sha256};
use tokio::sync::Semaphore;

use super::Refusal;

/// 256 random bits, shown once to whoever holds them; we keep only their SHA-256.
#[derive(Clone)]
pub struct Token(String);

impl std::fmt::Debug for Token {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Token(..)")
    }
}

impl Token {
    /// A new token from the system's source of randomness.
    pub fn fresh() -> Result<Self, Refusal> {
        let mut bytes = [0_u8; 32];
        rand::rngs::SysRng
            .try_fill_bytes(&mut bytes)
            .map_err(|error| Refusal::Broken(format!("no randomness from the system: {error}")))?;
        Ok(Self(URL_SAFE_NO_PAD.encode(bytes)))
    }

    /// What somebody presents as a token.
    pub fn presented(text: &str) -> Self {
        Self(text.to_owned())
    }

    /// The text to hand out.
    pub fn as_text(&self) -> &str {
        &self.0
    }

    /// What is kept of it.
    pub fn hash(&self) -> [u8; 32] {
        Sha256::digest(self.0.as_bytes()).into()
    }
}

/// Hashes passwords and PINs with Argon2id, a bounded number at a time and never on the threads that serve pages.
#[derive(Debug, Clone)]
pub struct Hasher {
    memory_kib: u32,
    passes: u32,
    places: Arc<Semaphore>,
}

impl Hasher {
    /// The shop's parameters: 64 MiB, 3 passes (OWASP's least is 19 MiB and 2 passes).
    pub fn new() -> Self {
        let cores = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
        Self { memory_kib: 65_536, passes: 3, places: Arc::new(Semaphore::new(2 * cores)) }
    }

    /// The cheapest hash the library takes, so that tests of other things stay quick.
    pub fn quick() -> Self {
        Self { memory_kib: Params::MIN_M_COST, passes: 1, ..Self::new() }
    }

    /// The hash of a secret, as a PHC string with its own salt.
    pub async fn hash(&self, secret: &str) -> Result<String, Refusal> {
        let secret = secret.to_owned();
        self.run(move |argon| {
            argon.hash_password(secret.as_bytes()).map(|phc| phc.to_string()).map_err(|error| error.to_string())
        })
        .await?
        .map_err(Refusal::Broken)
    }

    /// Whether `secret` belongs to `phc`. Without a hash a dummy is worked through, so that an unknown name takes as long
    /// as a known one.
    pub async fn fits(&self, secret: &str, phc: Option<String>) -> Result<bool, Refusal> {
        let secret = secret.to_owned();
        self.run(move |argon| {
            if let Some(phc) = phc {
                return argon.verify_password(secret.as_bytes(), phc.as_str()).is_ok();
            }
            let _ = argon.hash_password(secret.as_bytes());
            false
        })
        .await
    }

    /// Whether a stored hash is cheaper than what we make today.
    pub fn is_outdated(&self, phc: &str) -> bool {
        !phc.starts_with(&format!("$argon2id$v=19$m={},t={},p=1$", self.memory_kib, self.passes))
    }

    async fn run<T: Send + 'static>(
        &self,
        job: impl FnOnce(Argon2<'static>) -> T + Send + 'static,
    ) -> Result<T, Refusal> {
        // No queue: a flood of sign-ins gets "try again" and leaves the memory alone.
        let Ok(place) = Arc::clone(&self.places).try_acquire_owned() else {
            return Err(Refusal::Throttled(std::time::Duration::from_secs(1)));
        };
        let params = Params::new(self.memory_kib, self.passes, 1, None);
        let params = params.map_err(|error| Refusal::Broken(error.to_string()))?;
        tokio::task::spawn_blocking(move || {
            let _place = place;
            job(Argon2::new(Algorithm::Argon2id, Version::V0x13, params))
        })
        .await
        .map_err(|error| Refusal::Broken(error.to_string()))
    }
}

impl Default for Hasher {
    fn default() -> Self {
        Self::new()
    }
}
