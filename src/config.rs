//! Flags, then environment, then `fuelwright.toml` in the data folder.
//!
//! Each value is looked for in that order and the first found counts. A key nobody knows is an error that names its
//! line: a setting that is misspelt and silently ignored is worse than a program that does not start.

mod entries;
mod smtp;

use std::fmt;
use std::io::ErrorKind;
use std::net::{IpAddr, SocketAddr};
use std::path::{Path, PathBuf};

use entries::entries;
pub use smtp::{Hidden, Smtp};

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
    /// A demonstration: every page and paper says so, and no mail goes out. Set by the command, never by a file.
    pub is_demo: bool,
    /// What to log: `info`, `fuelwright=debug` and the like.
    pub log: String,
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
            is_demo: false,
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

/// A value that will not do, or a key that nobody knows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BadConfig {
    /// Where it stands: `fuelwright.toml line 3`, `FUELWRIGHT_LISTEN`, `--listen`.
    pub place: String,
    pub key: String,
    /// What was found; a secret is left out.
    pub got: String,
    /// What would do.
    pub takes: String,
}

impl fmt::Display for BadConfig {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { place, key, got, takes } = self;
        write!(f, "{place}: {key} is {got:?}; it takes {takes}")
    }
}

impl std::error::Error for BadConfig {}

/// Every key, as it stands in the file. In the environment it is in capitals behind `FUELWRIGHT_`, with `_` for the dot.
pub const KEYS: &[&str] = &[
    "listen",
    "public_url",
    "insecure_lan",
    "trusted_proxies",
    "network_folder",
    "mail_folder",
    "log",
    "smtp.host",
    "smtp.port",
    "smtp.security",
    "smtp.user",
    "smtp.password",
    "smtp.password_file",
    "smtp.from",
];

/// Variables of the environment that single commands read for themselves: the folder, the words that wrap a key.
const NO_SETTINGS: &[&str] = &["DATA", "BACKUP_PASSPHRASE"];

impl Config {
    /// Reads everything. `flags` are pairs of key and text from the command line; `environment` is the process's, handed
    /// in so that a test can say what it holds.
    ///
    /// # Errors
    /// The first key that nobody knows or value that will not do, with its place.
    pub fn load(
        data: &Path,
        flags: &[(&str, String)],
        environment: impl IntoIterator<Item = (String, String)>,
    ) -> Result<Self, BadConfig> {
        let mut config = Self::of_folder(data);
        let file = data.join("fuelwright.toml");
        match std::fs::read_to_string(&file) {
            Ok(text) => {
                for (line, key, got) in entries(&text)? {
                    config.set(&format!("fuelwright.toml line {line}"), &key, &got)?;
                }
            }
            // A folder that is no folder is for whoever opens it to say.
            Err(error) if matches!(error.kind(), ErrorKind::NotFound | ErrorKind::NotADirectory) => {}
            Err(error) => {
                return Err(bad("fuelwright.toml", "the file", &error.to_string(), "a file that can be read"));
            }
        }
        for (name, got) in environment {
            let Some(rest) = name.strip_prefix("FUELWRIGHT_") else { continue };
            if NO_SETTINGS.contains(&rest) {
                continue;
            }
            let wanted = rest.to_ascii_lowercase();
            let key = KEYS.iter().find(|key| key.replace('.', "_") == wanted);
            config.set(&name, key.copied().unwrap_or(&wanted), &got)?;
        }
        for (key, got) in flags {
            config.set(&format!("--{}", key.replace('_', "-")), key, got)?;
        }
        config.whole()
    }

    fn set(&mut self, place: &str, key: &str, got: &str) -> Result<(), BadConfig> {
        let wrong = |takes: &str| bad(place, key, got, takes);
        match key {
            "listen" => self.listen = got.parse().map_err(|_| wrong("an address and a port, like 127.0.0.1:8460"))?,
            "public_url" => {
                self.public_url = Some(url(got).ok_or_else(|| wrong("a link, like https://shop.example.org"))?);
            }
            "insecure_lan" => self.insecure_lan = truth(got).ok_or_else(|| wrong("true or false"))?,
            "network_folder" => self.network_folder = truth(got).ok_or_else(|| wrong("true or false"))?,
            "trusted_proxies" => {
                let all = got.split(',').map(str::trim).filter(|one| !one.is_empty());
                let read: Result<Vec<IpAddr>, _> = all.map(str::parse).collect();
                self.trusted_proxies = read.map_err(|_| wrong("addresses, like 127.0.0.1, 10.0.0.2"))?;
            }
            "mail_folder" => self.mail_folder = Some(PathBuf::from(got)),
            "log" => got.clone_into(&mut self.log),
            _ => {
                let Some(key) = key.strip_prefix("smtp.") else {
                    return Err(bad(
                        place,
                        key,
                        got,
                        &format!("nothing: nobody knows this key. Known: {}", KEYS.join(", ")),
                    ));
                };
                self.smtp.get_or_insert_with(Smtp::unset).set(place, key, got)?;
            }
        }
        Ok(())
    }

    fn whole(self) -> Result<Self, BadConfig> {
        if let Some(smtp) = &self.smtp {
            for (key, text) in [("smtp.host", &smtp.host), ("smtp.from", &smtp.from)] {
                if text.is_empty() {
                    return Err(bad("configuration", key, "", "a value, as soon as any smtp key is set"));
                }
            }
        }
        let is_local = self.listen.ip().is_loopback();
        if !is_local && !self.is_https() && !self.insecure_lan {
            let takes = "an address of this machine (127.0.0.1), or public_url = \"https://...\" behind a TLS proxy, or \
                         insecure_lan = true where everybody on the network may be trusted";
            return Err(bad("configuration", "listen", &self.listen.to_string(), takes));
        }
        Ok(self)
    }
}

fn bad(place: &str, key: &str, got: &str, takes: &str) -> BadConfig {
    let got = if key == "smtp.password" { "(hidden)" } else { got };
    BadConfig { place: place.to_owned(), key: key.to_owned(), got: got.to_owned(), takes: takes.to_owned() }
}

fn truth(text: &str) -> Option<bool> {
    match text {
        "true" | "1" | "yes" => Some(true),
        "false" | "0" | "no" => Some(false),
        _ => None,
    }
}

fn url(text: &str) -> Option<String> {
    let rest = text.strip_prefix("https://").or_else(|| text.strip_prefix("http://"))?;
    let good = !rest.is_empty() && rest.chars().all(|c| c.is_ascii_graphic() && !"\"<>?#@\\".contains(c));
    good.then(|| text.trim_end_matches('/').to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn load(file: &str, flags: &[(&str, &str)], environment: &[(&str, &str)]) -> Result<Config, BadConfig> {
        let folder = tempfile::tempdir().unwrap();
        std::fs::write(folder.path().join("fuelwright.toml"), file).unwrap();
        let flags: Vec<_> = flags.iter().map(|(key, text)| (*key, (*text).to_owned())).collect();
        let environment = environment.iter().map(|(key, text)| ((*key).to_owned(), (*text).to_owned()));
        Config::load(folder.path(), &flags, environment)
    }

    #[test]
    fn a_flag_beats_the_environment_and_that_the_file() {
        let file = "listen = \"127.0.0.1:1\"\npublic_url = \"https://a.example/\"\nlog = \"warn\"\n";
        let environment = [
            ("FUELWRIGHT_LISTEN", "127.0.0.1:2"),
            ("FUELWRIGHT_LOG", "debug"),
            ("FUELWRIGHT_BACKUP_PASSPHRASE", "words of another command"),
            ("HOME", "/x"),
        ];
        let config = load(file, &[("listen", "127.0.0.1:3")], &environment).unwrap();
        assert_eq!(config.listen.port(), 3);
        assert_eq!(config.log, "debug");
        assert_eq!(config.public_url.as_deref(), Some("https://a.example"));
    }

    #[test]
    fn an_unknown_key_is_named_with_its_line() {
        let error = load("log = \"info\"\n\nlissten = 1\n", &[], &[]).unwrap_err();
        assert_eq!((error.place.as_str(), error.key.as_str()), ("fuelwright.toml line 3", "lissten"));
        let error = load("[smtp]\nhost = \"a\"\nhots = \"b\"\n", &[], &[]).unwrap_err();
        assert_eq!((error.place.as_str(), error.key.as_str()), ("fuelwright.toml line 3", "smtp.hots"));
        let error = load("", &[], &[("FUELWRIGHT_LISSTEN", "1")]).unwrap_err();
        assert_eq!(error.place, "FUELWRIGHT_LISSTEN");
    }

    #[test]
    fn text_that_is_no_toml_is_named_with_its_line() {
        assert_eq!(load("log = \"info\"\nlisten = = 3\n", &[], &[]).unwrap_err().place, "fuelwright.toml line 2");
    }

    #[test]
    fn a_secret_is_never_printed() {
        let file = "[smtp]\nhost = \"m.example\"\nfrom = \"a@m.example\"\npassword = \"hunter2-hunter2\"\n";
        let config = load(file, &[], &[]).unwrap();
        assert!(!format!("{config:?}").contains("hunter2"));
        assert_eq!(config.smtp.unwrap().password, Some(Hidden("hunter2-hunter2".into())));
    }

    #[test]
    fn plain_http_to_the_house_must_be_asked_for() {
        let error = load("", &[("listen", "0.0.0.0:8460")], &[]).unwrap_err();
        assert!(error.takes.contains("insecure_lan"));
        assert!(load("insecure_lan = true", &[("listen", "0.0.0.0:8460")], &[]).is_ok());
        assert!(load("public_url = \"https://a.example\"", &[("listen", "0.0.0.0:8460")], &[]).is_ok());
    }
}
