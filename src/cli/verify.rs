//! `fuelwright verify`: whether a paper is genuine as issued; how it stands only when a signed list is named.
//!
//! The signature covers the content. Of a PDF the pages and the keeper's part are held against that content too, because
//! whoever looks at a paper reads its pages.

use std::path::{Path, PathBuf};

use anyhow::{Context, bail};

use super::{Outcome, Place};
use crate::config::Config;
use crate::db::Database;
use crate::model::paper::certificate::CertificateContent;
use crate::papers;
use crate::seal::standing::StandingList;
use crate::seal::{self, KeyRing, Proven, Sealed};
use crate::shop::issue::pages::{Difference, KeeperPart, Pages, keeper_part, pages};
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
    /// The keeper's part kept beside the signed JSON (name and address with their salt).
    #[arg(long, value_name = "FILE")]
    pub keeper: Option<PathBuf>,
}

/// A file as it was read.
struct Given {
    sealed: Sealed,
    /// The file itself when it is a PDF.
    pdf: Option<Vec<u8>>,
    /// The keeper's part, from inside the PDF or beside the JSON.
    keeper: Option<Vec<u8>>,
}

/// What the reader knows of the shop.
struct Known {
    ring: KeyRing,
    /// Check sum of the PDF that the shop issued with this content.
    pdf_sha256: Option<String>,
}

/// Fewest digits of a key id that name a key: as many as papers print.
const FEWEST_DIGITS: usize = 12;

pub(super) async fn run(place: &Place, asked: &Verify) -> anyhow::Result<Outcome> {
    let given = read_paper(asked)?;
    let list = asked.standing.as_deref().map(read).transpose()?;
    let known = known(place, asked, &given.sealed, list.as_ref()).await?;
    let (content, is_known) = match verify(&given.sealed, &known.ring) {
        Ok(Verified::Genuine(content)) => (content, true),
        Ok(Verified::UnknownKey(content)) => (content, false),
        Err(refusal) => {
            println!("not genuine: {refusal}");
            return Ok(Outcome::Failed);
        }
    };
    describe(&content);
    let from_list = list.as_ref().and_then(|list| listed_pdf(list, &given.sealed, &known.ring));
    let is_one = say_pages(&given, &content, known.pdf_sha256.or(from_list).as_deref());
    let is_keepers = say_keeper(&given, &content);
    if !is_known {
        println!("sound, but signed by a key not known here ({})", seal::fingerprint(given.sealed.key_id()));
        return Ok(Outcome::Failed);
    }
    if is_one && is_keepers {
        println!("genuine as issued");
    } else {
        println!("the signed content is genuine, this file is not the paper: go by the lines above, not by the file");
    }
    let standing = list.map_or(Outcome::Done, |list| say_standing(&list, &given.sealed, &known.ring));
    Ok(if is_one && is_keepers { standing } else { Outcome::Failed })
}

fn read_paper(asked: &Verify) -> anyhow::Result<Given> {
    let (file, shown) = (&asked.file, asked.file.display());
    let bytes = std::fs::read(file).with_context(|| format!("cannot read {shown}"))?;
    let beside = asked.keeper.as_deref();
    let beside = beside.map(|file| std::fs::read(file).with_context(|| format!("cannot read {}", file.display())));
    let sealed = sealed(file, &bytes)?;
    if !is_pdf(&bytes) {
        return Ok(Given { sealed, pdf: None, keeper: beside.transpose()? });
    }
    let inside = papers::embedded_personal(&bytes).map_err(|error| anyhow::anyhow!("{shown}: {error}"))?;
    Ok(Given { sealed, keeper: beside.transpose()?.or(inside), pdf: Some(bytes) })
}

fn is_pdf(bytes: &[u8]) -> bool {
    bytes.starts_with(b"%PDF")
}

/// Whether the pages are those of the content; nothing is said of a bare JSON.
fn say_pages(given: &Given, content: &CertificateContent, issued: Option<&str>) -> bool {
    let Some(pdf) = &given.pdf else { return true };
    match pages(pdf, content, issued) {
        Ok(Pages::AsIssued) => println!("pages    the file is the issued one, byte for byte"),
        Ok(Pages::AsDrawn) => println!("pages    the file is what the signed content gives, byte for byte"),
        Ok(Pages::Other(difference)) => {
            println!("pages    NOT those of the signed content, or drawn by another version of this program");
            if difference == Difference::default() {
                println!("         their words agree; something else in the file was changed");
            } else {
                println!("         the file says           {}", shown(&difference.file));
                println!("         the content would give  {}", shown(&difference.content));
            }
            return false;
        }
        Err(error) => {
            println!("pages    cannot be compared with the signed content: {error}");
            return false;
        }
    }
    true
}

fn shown(words: &str) -> String {
    if words.is_empty() { "nothing more".to_owned() } else { format!("\u{201c}{words}\u{201d}") }
}

/// Whether name and address are those that were certified.
fn say_keeper(given: &Given, content: &CertificateContent) -> bool {
    let part = keeper_part(given.keeper.as_deref(), content);
    match part {
        KeeperPart::Absent => {}
        KeeperPart::Certified => println!("keeper   name and address are those that were certified"),
        KeeperPart::Another => {
            println!(
                "keeper   NOT the one certified: the digest of name and address is not the one in the signed content"
            );
        }
    }
    part != KeeperPart::Another
}

/// The check sum of the issued PDF, as a genuine list of the shop names it.
fn listed_pdf(list: &Sealed, paper: &Sealed, ring: &KeyRing) -> Option<String> {
    let Ok(Proven::Genuine(list)) = list.open::<StandingList>(ring) else { return None };
    let entry = list.find(&seal::sha256_hex(paper.content()))?;
    (!entry.pdf_sha256.is_empty()).then(|| entry.pdf_sha256.clone())
}

/// A PDF with signed content, or that content itself.
fn read(file: &Path) -> anyhow::Result<Sealed> {
    let bytes = std::fs::read(file).with_context(|| format!("cannot read {}", file.display()))?;
    sealed(file, &bytes)
}

fn sealed(file: &Path, bytes: &[u8]) -> anyhow::Result<Sealed> {
    let embedded = if is_pdf(bytes) {
        let found = papers::embedded(bytes).map_err(|error| anyhow::anyhow!("{}: {error}", file.display()))?;
        Some(found.with_context(|| format!("{} carries no signed content", file.display()))?)
    } else {
        None
    };
    Sealed::from_json(embedded.as_deref().unwrap_or(bytes))
        .map_err(|error| anyhow::anyhow!("{}: {error}", file.display()))
}

async fn known(place: &Place, asked: &Verify, sealed: &Sealed, list: Option<&Sealed>) -> anyhow::Result<Known> {
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
        return Ok(Known { ring, pdf_sha256: None });
    }
    let file = Config::of_folder(&place.data).database();
    if !file.exists() {
        return Ok(Known { ring: KeyRing::new(), pdf_sha256: None });
    }
    let db = Database::open_to_read(&file).await?;
    let mut con = db.read().await?;
    let ring = kept_keys(&mut con).await?;
    let pdf_sha256 = crate::db::papers::find_pdf_sha256(&mut con, sealed.content()).await?;
    drop(con);
    db.close().await;
    Ok(Known { ring, pdf_sha256 })
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
    println!("vehicle  {}, plate {}, VIN ends in {tail}", content.vehicle.make, content.vehicle.plate);
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
