//! `fuelwright remind`: what falls due today is written into the outbox and sent; `--dry-run` only says what would be.

use anyhow::bail;
use time::Date;
use time::macros::format_description;

use super::folder::Folder;
use super::{Outcome, Place};
use crate::clock::{Clock, Zone};
use crate::config::Config;
use crate::db;
use crate::mail::{Encryption, Post, Server, Transport};
use crate::rounds::Rounds;
use crate::rounds::remind::{Parcel, plan};
use crate::shop::duties::Way;

#[derive(Debug, clap::Args)]
pub(super) struct Remind {
    /// Say what would go out, a line each; change nothing.
    #[arg(long)]
    pub dry_run: bool,
    /// As on this day (2026-11-25) instead of today; only with --dry-run.
    #[arg(long, value_name = "DATE")]
    pub on: Option<String>,
}

pub(super) async fn run(place: &Place, remind: &Remind) -> anyhow::Result<Outcome> {
    let on = remind.on.as_deref().map(read_day).transpose()?;
    if on.is_some() && !remind.dry_run {
        bail!("--on takes --dry-run beside it; what goes out goes out today");
    }
    let config = super::serve::configuration(place, None)?;
    let folder = Folder::open_existing(&config, Clock::system()).await?;
    if remind.dry_run {
        say_plan(&folder, on).await?;
    } else {
        let shop = folder.shop.clone();
        rounds(&config, folder.shop.clone()).once(true).await?;
        say_outbox(&shop).await?;
    }
    folder.shop.db.close().await;
    Ok(Outcome::Done)
}

fn read_day(text: &str) -> anyhow::Result<Date> {
    match Date::parse(text, format_description!("[year]-[month]-[day]")) {
        Ok(day) => Ok(day),
        Err(_) => bail!("--on is {text:?}; it takes a date like 2026-11-25"),
    }
}

/// The rounds of a shop with this configuration.
pub(super) fn rounds(config: &Config, shop: crate::shop::Shop) -> Rounds {
    Rounds { shop, post: Some(post(config)), public_url: config.public_url.clone(), is_demo: config.is_demo }
}

/// The way out of the house: a demonstration never sends; a mail folder goes before a mail server; with neither, mail
/// lies in the data folder until somebody settles where it goes.
fn post(config: &Config) -> Post {
    let folder = config.mail_folder.clone().unwrap_or_else(|| config.data.join("mail"));
    let from = config.smtp.as_ref().map(|smtp| smtp.from.clone());
    let transport = match &config.smtp {
        Some(smtp) if !config.is_demo && config.mail_folder.is_none() => {
            let encryption = match smtp.security.as_str() {
                "tls" => Encryption::Tls,
                "none" => Encryption::None,
                _ => Encryption::StartTls,
            };
            let login = smtp.user.clone().zip(smtp.password.as_ref().map(|password| password.0.clone()));
            Transport::Smtp(Server::new(&smtp.host, smtp.port, encryption, login))
        }
        _ => Transport::Folder(folder),
    };
    Post { transport, from }
}

async fn say_plan(folder: &Folder, on: Option<Date>) -> anyhow::Result<()> {
    let mut con = folder.shop.db.read().await?;
    for branch in db::branches::list(&mut con).await? {
        let zone = Zone::named(&branch.time_zone)?;
        let day = on.unwrap_or_else(|| folder.shop.clock.today(&zone));
        for parcel in plan(&mut con, &branch, day).await? {
            println!("{}", line(day, &parcel));
        }
    }
    Ok(())
}

/// `2026-05-12  mail    Ana Reyes <ana@example.org>: NM 47 KTR filter by 2026-07-11 (60 days before)`
fn line(day: Date, parcel: &Parcel) -> String {
    let to = parcel.duties.first().map_or(String::new(), |(first, _)| match parcel.way {
        Way::Mail => format!("mail    {} <{}>", first.keeper_name, first.mail),
        Way::Letter => format!("letter  {}", first.keeper_name),
    });
    let what = parcel.duties.iter().map(|(owed, lead)| {
        let when = if *lead < 0 { format!("{} days after", -lead) } else { format!("{lead} days before") };
        format!("{} {} by {} ({when})", owed.plate, owed.duty.kind, owed.duty.due_on)
    });
    format!("{day}  {to}: {}", what.collect::<Vec<_>>().join("; "))
}

async fn say_outbox(shop: &crate::shop::Shop) -> anyhow::Result<()> {
    let mut con = shop.db.read().await?;
    for branch in db::branches::list(&mut con).await? {
        let tally = db::outbox::tally(&mut con, branch.id).await?;
        let counts: Vec<String> = tally.iter().map(|one| format!("{} {}", one.count, one.state)).collect();
        println!("{}: {}", branch.name, if counts.is_empty() { "nothing".to_owned() } else { counts.join(", ") });
    }
    Ok(())
}
