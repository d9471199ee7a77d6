//! Flags, then environment, then `fuelwright.toml` in the data folder.
//!
//! Each value is looked for in that order and the first found counts. A key nobody knows is an error that names its
//! line: a setting that is misspelt and silently ignored is worse than a program that does not start.

use std::fmt;
use std::net::{IpAddr, SocketAddr};
use std::path::{Path, PathBuf};

/// Where a server without other instruction listens.
pub const DEFAULT_LISTEN: SocketAddr = SocketAddr::new(IpAddr::V4(std::net::Ipv4Addr::LOCALHOST), 8460);

/// Everything that is settled before the shop opens.
#[derive(Debug, Clone, PartialEq)]
pub struct Config {
    /// The folder of the database, the attachments and the key.
    pub data: PathBuf,
    /// Address and port to listen on.
    pub listen: SocketAddr,
    /// Where the outside reaches us, without a slash at the end; links in mails and codes on papers need it.
    pub public_url: Option<String>,
    /// Plain http to other machines in the house is accepted, with shorter sessions and a banner.
    pub insecure_lan: bool,
    /// Whose word about the client's address (X-Forwarded-For) is taken.
    pub trusted_proxies: Vec<IpAddr>,
    /// A data folder on a network file system is accepted, at the owner's risk.
    pub network_folder: bool,
    /// Write each mail as a file here instead of sending it.
    pub mail_folder: Option<PathBuf>,
    /// The mail server.
    pub smtp: Option<Smtp>,
    /// What to log: `info`, `fuelwright=debug` and the like.
    pub log: String,
}

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

impl Config {
    /// A server with nothing settled but its folder.
    pub fn of_folder(data: &Path) -> Self {
        Self {
            data: data.to_owned(),
            listen: DEFAULT_LISTEN,
            public_url: None,
            insecure_lan: false,
            trusted_proxies: vec![],
            network_folder: false,
            mail_folder: None,
            smtp: None,
            log: "info".to_owned(),
        }
    }

    /// Whether browsers reach us by https.
    pub fn is_https(&self) -> bool {
        self.public_url.as_deref().is_some_and(|url| url.starts_with("https://"))
    }

    /// The database file.
    pub fn database(&self) -> PathBuf {
        self.data.join("fuelwright.db")
    }
}
