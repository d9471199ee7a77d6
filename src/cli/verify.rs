//! `fuelwright verify`: whether a paper is genuine as issued; how it stands only when a signed list is named.

use std::path::{Path, PathBuf};

use anyhow::{Context, bail};

use super::{Outcome, Place};
use crate::config::Config;
use crate::db::Database;
use crate::model::paper::certificate::CertificateContent;
use crate::papers;
use crate::seal::standing::StandingList;
use crate::seal::{self, KeyRing, Proven, Sealed};
use crate::shop::issue::{Verified, kept_keys, verify};

#[derive(Debug, clap::Args)]
pub(super) struct Verify {
    /// The paper: its PDF, or the signed JSON.
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// Trust the key with this fingerprint or id instead of the keys of a shop's folder.
    #[arg(long, value_name = "F")]
    pub fingerprint: Option<String>,
    /// The shop's signed list of how its papers stand.
    #[arg(long, value_name = "FILE")]
    pub standing: Option<PathBuf>,
}

/// Fewest digits of a key id that name a key: as many as papers print.
const FEWEST_DIGITS: usize = 12;

pub(super) async fn run(place: &Place, asked: &Verify) -> anyhow::Result<Outcome> {
    let sealed = read(&asked.file)?;
    let list = asked.standing.as_deref().map(read).transpose()?;
    let ring = ring(place, asked, &sealed, list.as_ref()).await?;
    let (content, is_known) = match verify(&sealed, &ring) {
        Ok(Verified::Genuine(content)) => (content, true),
        Ok(Verified::UnknownKey(content)) => (content, false),
        Err(refusal) => {
            println!("not genuine: {refusal}");
            return Ok(Outcome::Failed);
        }
    };
    describe(&content);
    if !is_known {
        println!("sound, but signed by a key not known here ({})", seal::fingerprint(sealed.key_id()));
        return Ok(Outcome::Failed);
    }
    println!("genuine as issued");
    match list {
        Some(list) => Ok(say_standing(&list, &sealed, &ring)),
        None => Ok(Outcome::Done),
    }
}

/// A PDF with signed content, or that content itself.
fn read(file: &Path) -> anyhow::Result<Sealed> {
    let bytes = std::fs::read(file).with_context(|| format!("cannot read {}", file.display()))?;
    let json = if bytes.starts_with(b"%PDF") {
        let found = papers::embedded(&bytes).map_err(|error| anyhow::anyhow!("{}: {error}", file.display()))?;
        found.with_context(|| format!("{} carries no signed content", file.display()))?
    } else {
        bytes
    };
    Sealed::from_json(&json).map_err(|error| anyhow::anyhow!("{}: {error}", file.display()))
}

async fn ring(place: &Place, asked: &Verify, sealed: &Sealed, list: Option<&Sealed>) -> anyhow::Result<KeyRing> {
    if let Some(typed) = &asked.fingerprint {
        let digits: String = typed.chars().filter(char::is_ascii_alphanumeric).collect::<String>().to_lowercase();
        if digits.len() < FEWEST_DIGITS || !digits.bytes().all(|byte| byte.is_ascii_hexdigit()) {
            bail!(
                "--fingerprint is {typed:?}; it takes at least {FEWEST_DIGITS} hexadecimal digits, as the paper shows"
            );
        }
        let mut ring = KeyRing::new();
        if sealed.key_id().starts_with(&digits)
            && let Some(key) = sealed.public_key()
        {
            ring.trust(&key);
        }
        follow(&mut ring, &digits, list);
        return Ok(ring);
    }
    let file = Config::of_folder(&place.data).database();
    if !file.exists() {
        return Ok(KeyRing::new());
    }
    let db = Database::open_to_read(&file).await?;
    let ring = kept_keys(&mut *db.read().await?).await?;
    db.close().await;
    Ok(ring)
}

/// Follows the statements of a list from the key with these digits to the keys after it. The list itself proves nothing
/// here: each statement stands on the signature of the key before.
fn follow(ring: &mut KeyRing, digits: &str, list: Option<&Sealed>) {
    let Some(list) = list.and_then(|list| serde_json::from_slice::<StandingList>(list.content()).ok()) else { return };
    for introduction in &list.introductions {
        if introduction.key_id().starts_with(digits)
            && let Some(key) = introduction.public_key()
        {
            ring.trust(&key);
        }
        // One that nobody on the ring vouches for is not followed.
        let _ = ring.follow(introduction);
    }
}

fn describe(content: &CertificateContent) {
    let vin: Vec<char> = content.vehicle.vin.chars().collect();
    let tail: String = vin[vin.len().saturating_sub(4)..].iter().collect();
    if content.is_demonstration {
        println!("DEMONSTRATION: this paper certifies nothing");
    }
    println!("number   {}", content.number);
    println!("kind     {}", content.kind.as_str());
    if let Some(inspection) = &content.inspection {
        println!("result   {}", inspection.outcome.as_str());
    }
    println!("date     {}", content.issued_on);
    println!("shop     {}", content.shop.name);
    println!("vehicle  {}, VIN ends in {tail}", content.vehicle.make);
}

fn say_standing(list: &Sealed, paper: &Sealed, ring: &KeyRing) -> Outcome {
    let list = match list.open::<StandingList>(ring) {
        Ok(Proven::Genuine(list)) => list,
        Ok(Proven::SoundButUnknownKey(_)) => {
            println!("the list of standings is signed by a key not known here");
            return Outcome::Failed;
        }
        Err(refusal) => {
            println!("the list of standings is not genuine: {refusal}");
            return Outcome::Failed;
        }
    };
    if let Some(key) = list.distrusted_keys.iter().find(|key| key.key_id == paper.key_id()) {
        let mut stricter = ring.clone();
        stricter.distrust_after(&key.key_id, key.after);
        if let Err(refusal) = paper.check(&stricter) {
            println!("not genuine: {refusal}");
            return Outcome::Failed;
        }
    }
    let Some(entry) = list.find(&seal::sha256_hex(paper.content())) else {
        println!("standing unknown: the list of {} does not name this paper", list.listed_at);
        return Outcome::Failed;
    };
    let by = if entry.replaced_by.is_empty() { String::new() } else { format!(", replaced by {}", entry.replaced_by) };
    println!("standing {} since {}{by}, as listed at {}", entry.standing.as_str(), entry.since_on, list.listed_at);
    Outcome::Done
}
