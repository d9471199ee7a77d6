//! `fuelwright restore`: a backup into an empty folder, proved, checked, and paused until a manager answers.

use std::path::PathBuf;

use super::{Outcome, Place, backup, folder};
use crate::backup::check::check;
use crate::backup::unpack::unpack;
use crate::clock::Clock;
use crate::config::Config;
use crate::db::Database;
use crate::shop::restored;

#[derive(Debug, clap::Args)]
pub(super) struct Restore {
    /// The backup.
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    #[command(flatten)]
    pub secret: backup::Secret,
}

pub(super) async fn run(place: &Place, Restore { file, secret }: &Restore) -> anyhow::Result<Outcome> {
    let (config, now) = (Config::load(&place.data, &[], std::env::vars())?, Clock::system().now());
    let passphrase = secret.read()?;
    // A server must not come up on a folder that is half brought back.
    let _lock = folder::lock(&config)?;
    let manifest = unpack(file, &config.data, passphrase.as_deref()).await?;
    let db = Database::open(&config.database()).await?;
    restored::pause(&db, manifest.made_at, now).await?;
    let lines = check(&mut *db.read().await?, &config.data, now).await?;
    db.close().await;
    println!("restored into {}, as it was at {}", config.data.display(), manifest.made_at);
    match (manifest.has_key, passphrase.is_some()) {
        (true, true) => println!("the signing key is back"),
        (true, false) => println!(
            "the signing key was left out: set {} or name a --passphrase-file and restore again, or the next start makes a new key",
            backup::PASSPHRASE
        ),
        (false, _) => {
            println!("the backup holds no signing key: put signing-key.pem back, or the next start makes a new one");
        }
    }
    println!("sending and issuing wait until a manager answers in Office whether this is now the only one");
    Ok(super::check::say(&lines))
}
