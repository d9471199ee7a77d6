//! The mail server as configured; its password is never printed.

use std::fmt;

use super::{BadConfig, KEYS, bad};

/// The mail server to hand messages to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Smtp {
    pub host: String,
    pub port: u16,
    /// Encrypted from the first byte (`tls`), after a greeting (`starttls`), or not (`none`; only on this machine).
    pub security: String,
    pub user: Option<String>,
    pub password: Option<Hidden>,
    /// The sender on every message.
    pub from: String,
}

/// Text that is never printed.
#[derive(Clone, PartialEq, Eq)]
pub struct Hidden(pub String);

impl fmt::Debug for Hidden {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("(hidden)")
    }
}

impl Smtp {
    pub(super) fn unset() -> Self {
        let security = "starttls".to_owned();
        Self { host: String::new(), port: 587, security, user: None, password: None, from: String::new() }
    }

    pub(super) fn set(&mut self, place: &str, key: &str, got: &str) -> Result<(), BadConfig> {
        let wrong = |takes: &str| bad(place, &format!("smtp.{key}"), got, takes);
        match key {
            "host" => got.clone_into(&mut self.host),
            "port" => self.port = got.parse().map_err(|_| wrong("a port, like 587"))?,
            "security" if matches!(got, "tls" | "starttls" | "none") => got.clone_into(&mut self.security),
            "security" => return Err(wrong("tls, starttls or none")),
            "user" => self.user = Some(got.to_owned()),
            "password" => self.password = Some(Hidden(got.to_owned())),
            "password_file" => {
                let text = std::fs::read_to_string(got).map_err(|_| wrong("a file that can be read"))?;
                self.password = Some(Hidden(text.trim_end_matches(['\r', '\n']).to_owned()));
            }
            "from" if got.contains('@') && !got.contains(['\r', '\n']) => got.clone_into(&mut self.from),
            "from" => return Err(wrong("a mail address, like shop@example.org")),
            _ => return Err(wrong(&format!("nothing: nobody knows this key. Known: {}", KEYS.join(", ")))),
        }
        Ok(())
    }
}
