//! `fuelwright backup`: the whole shop into one file, while it serves.

use std::path::PathBuf;

use anyhow::{Context, bail};

use super::{Outcome, Place};
use crate::backup::pack::pack;
use crate::clock::Clock;
use crate::config::Config;
use crate::db::Database;

/// Where the passphrase of the signing key comes from.
pub(super) const PASSPHRASE: &str = "FUELWRIGHT_BACKUP_PASSPHRASE";
const SHORTEST: usize = 12;

#[derive(Debug, clap::Args)]
pub(super) struct Backup {
    /// The file to write; it must not exist.
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    #[command(flatten)]
    pub secret: Secret,
}

/// Where the words that wrap the signing key are.
#[derive(Debug, clap::Args)]
pub(super) struct Secret {
    /// A file that holds the passphrase of the signing key; else FUELWRIGHT_BACKUP_PASSPHRASE counts.
    #[arg(long, value_name = "FILE")]
    pub passphrase_file: Option<PathBuf>,
}

impl Secret {
    /// The passphrase; `None` where nobody gave one. An empty one counts as none.
    pub fn read(&self) -> anyhow::Result<Option<String>> {
        let words = match &self.passphrase_file {
            Some(file) => {
                let text = std::fs::read_to_string(file).with_context(|| format!("cannot read {}", file.display()))?;
                Some(text.trim_end_matches(['\r', '\n']).to_owned())
            }
            None => std::env::var(PASSPHRASE).ok(),
        };
        Ok(words.filter(|words| !words.is_empty()))
    }
}

pub(super) async fn run(place: &Place, Backup { file, secret }: &Backup) -> anyhow::Result<Outcome> {
    let config = Config::of_folder(&place.data);
    if !config.database().exists() {
        bail!("there is no shop in {}; name its folder with --data", config.data.display());
    }
    let passphrase = secret.read()?;
    if passphrase.as_ref().is_some_and(|words| words.chars().count() < SHORTEST) {
        bail!("the passphrase is too short; it takes at least {SHORTEST} characters");
    }
    let db = Database::open_to_read(&config.database()).await?;
    let manifest = pack(&db, &config.data, file, passphrase.as_deref(), Clock::system().now()).await?;
    db.close().await;
    println!(
        "{}: {} files, {} lines of the log, ends at {}",
        file.display(),
        manifest.members.len(),
        manifest.audit_lines,
        manifest.audit_head
    );
    if manifest.has_key {
        println!("the signing key is in it, wrapped by the passphrase");
    } else {
        println!(
            "the signing key is NOT in it; set {PASSPHRASE} or name a --passphrase-file to take it along, or keep signing-key.pem elsewhere"
        );
    }
    if manifest.missing.is_empty() {
        return Ok(Outcome::Done);
    }
    println!("files that rows name and the folder does not hold: {}", manifest.missing.join(", "));
    Ok(Outcome::Failed)
}
