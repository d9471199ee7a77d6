//! `fuelwright demo`: a shop with jobs in every stage, made by the same deeds as the screens', then served.

use std::fs;
use std::path::Path;

use anyhow::{Context, bail};

use super::folder::Folder;
use super::{Outcome, Place, serve};
use crate::clock::Clock;
use crate::config::Config;
use crate::demo;
use crate::demo::cast::{PASSWORD, PEOPLE};
use crate::rounds::Rounds;

#[derive(Debug, clap::Args)]
pub(super) struct Demo {
    /// Address and port to listen on.
    #[arg(long, value_name = "ADDR")]
    pub listen: Option<String>,
    /// Make the shop and stop.
    #[arg(long)]
    pub only_make: bool,
}

/// A file that marks a folder as a demonstration; a folder with a shop in it and without this file is left alone.
const MARK: &str = "DEMONSTRATION";
/// What the mark says once the shop is whole.
const WHOLE: &str = "An invented shop. Nothing in this folder proves anything.\n";

/// The folder holds a demonstration, whichever command opens it.
pub(super) fn is_demonstration(data: &Path) -> bool {
    data.join(MARK).exists()
}

pub(super) async fn run(place: &Place, Demo { listen, only_make }: &Demo) -> anyhow::Result<Outcome> {
    let data = &place.data;
    let mark = data.join(MARK);
    let is_whole = fs::read_to_string(&mark).is_ok_and(|text| text == WHOLE);
    if mark.exists() && !is_whole {
        bail!("the demonstration in {} was not finished; delete that folder and start again", data.display());
    }
    if !mark.exists() && !is_empty(data)? {
        bail!("{} is not empty and no demonstration; name an empty folder with --data", data.display());
    }
    if !is_whole {
        fs::create_dir_all(data).with_context(|| format!("cannot make the folder {}", data.display()))?;
        fs::write(&mark, "being made\n").with_context(|| format!("cannot write into {}", data.display()))?;
        let config = configuration(place, listen.as_deref())?;
        println!("Making the demonstration in {} ...", data.display());
        Box::pin(make(&config)).await?;
        fs::write(&mark, WHOLE).context("cannot finish the demonstration")?;
    }
    say_who();
    if *only_make {
        return Ok(Outcome::Done);
    }
    let config = configuration(place, listen.as_deref())?;
    serve::start_log(&config)?;
    let folder = Folder::open(&config, Clock::system()).await?;
    serve::serve(config, &folder).await
}

fn configuration(place: &Place, listen: Option<&str>) -> anyhow::Result<Config> {
    let mut config = serve::configuration(place, listen)?;
    config.is_demo = true;
    Ok(config)
}

fn is_empty(data: &Path) -> anyhow::Result<bool> {
    match fs::read_dir(data) {
        Ok(mut entries) => Ok(entries.next().is_none()),
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => Ok(true),
        Err(error) => Err(error).with_context(|| format!("cannot look into {}", data.display())),
    }
}

/// Tells the shop with a clock of its own that ends today, then writes today's reminders into the outbox.
async fn make(config: &Config) -> anyhow::Result<()> {
    let until = Clock::system().now();
    let clock = Clock::standing_at(until - time::Duration::days(1_100));
    let folder = Folder::open(config, clock.clone()).await?;
    Box::pin(demo::shop::tell(&folder.shop, &clock, until)).await?;
    let rounds = Rounds { shop: folder.shop.clone(), post: None, public_url: config.public_url.clone(), is_demo: true };
    rounds.once(true).await?;
    folder.shop.db.close().await;
    Ok(())
}

fn say_who() {
    println!("Sign in as one of these; the password of each is: {PASSWORD}");
    for (sign_in_name, name, _, role) in PEOPLE {
        let signs = if sign_in_name == "tolland" { ", signatory" } else { "" };
        println!("    {sign_in_name:<10} {name} ({role}{signs})");
    }
}
