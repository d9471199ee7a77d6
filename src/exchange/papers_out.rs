//! Every issued paper as a PDF with its signed content beside it, the list of standings, the public keys, and an index.

use std::collections::HashMap;

use anyhow::Context;
use serde_json::{Value, json};

use super::spreadsheet::written;
use super::target::Target;
use crate::attachments::Kept;
use crate::clock::Zone;
use crate::db;
use crate::model::branch::Branch;
use crate::model::paper::issued::Issued;
use crate::papers;
use crate::seal::standing::StandingList;
use crate::seal::{self, KeyRing, Sealed};
use crate::shop::Shop;
use crate::shop::issue::{Found, verify};

/// Name of the index.
pub const INDEX: &str = "index.csv";
/// Name of the keys' file.
pub const KEYS: &str = "keys.json";
/// Name of a list of standings.
pub const STANDING: &str = "standing.json";

const HEADS: [&str; 19] = [
    "branch",
    "kind",
    "series",
    "number",
    "issued_on",
    "issued_at",
    "job",
    "plate",
    "vin",
    "vehicle",
    "signatory",
    "code",
    "standing",
    "replaced_by",
    "pdf",
    "pdf_sha256",
    "signed",
    "content_sha256",
    "key_id",
];

/// What was written, and what was wrong with it.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Written {
    /// How many papers.
    pub papers: usize,
    /// Papers that are not what was issued, one sentence each; they are written all the same.
    pub faults: Vec<String>,
}

/// One paper on its way out.
struct Out<'a> {
    branch: &'a Branch,
    /// The folder of its branch; empty where the shop has one branch alone.
    room: &'a str,
    replaced_by: String,
}

/// Writes everything. The index comes last: a folder without one is not whole.
///
/// # Errors
/// The store or the disk; what was written until then stays.
pub async fn write(shop: &Shop, target: &mut Target) -> anyhow::Result<Written> {
    let mut con = shop.db.read().await?;
    let branches = db::branches::list(&mut con).await?;
    let all = db::papers::list_all(&mut con).await?;
    let ring = shop.key_ring(&mut con).await?;
    let keys = keys(shop, &mut con).await?;
    drop(con);
    let mut done = Written::default();
    let mut rows = vec![HEADS.map(str::to_owned).to_vec()];
    for branch in &branches {
        let room = if branches.len() > 1 { branch.name.as_str() } else { "" };
        let mine: Vec<&Issued> = all.iter().filter(|paper| paper.branch_id == branch.id).collect();
        let list = shop.standing_list(branch.id).await?;
        let replaced = replaced_by(&list);
        for paper in &mine {
            let replaced_by = replaced.get(&seal::sha256_hex(&paper.content)).cloned().unwrap_or_default();
            let out = Out { branch, room, replaced_by };
            rows.push(paper_out(shop, target, &ring, &out, paper, &mut done).await?);
        }
        let place = target.place(&[room], "standing", ".json");
        target.write(&place, &list.to_json())?;
        done.papers += mine.len();
        shop.papers_exported(branch.id, mine.len()).await?;
    }
    target.write(KEYS, &serde_json::to_vec_pretty(&keys)?)?;
    target.write(INDEX, written(rows.iter().map(Vec::as_slice)).as_bytes())?;
    Ok(done)
}

fn replaced_by(list: &Sealed) -> HashMap<String, String> {
    let read: Option<StandingList> = serde_json::from_slice(list.content()).ok();
    let entries = read.map(|list| list.papers).unwrap_or_default();
    entries.into_iter().map(|entry| (entry.content_sha256, entry.replaced_by)).collect()
}

async fn paper_out(
    shop: &Shop,
    target: &mut Target,
    ring: &KeyRing,
    out: &Out<'_>,
    paper: &Issued,
    done: &mut Written,
) -> anyhow::Result<Vec<String>> {
    let told = || format!("paper {}", paper.number);
    let mut con = shop.db.read().await?;
    let found = shop.found(&mut con, paper.clone()).await.with_context(told)?;
    let sealed = shop.envelope(&mut con, paper).await.with_context(told)?;
    drop(con);
    let signed = sealed.to_json();
    let folders = [out.room, paper.kind.as_str()];
    let (mut pdf_place, mut pdf_sha256) = (String::new(), String::new());
    let wrong = match shop.issued_pdf(paper).await {
        Ok(pdf) => {
            pdf_place = target.place(&folders, &paper.number, ".pdf");
            pdf_sha256 = seal::sha256_hex(&pdf);
            target.write(&pdf_place, &pdf)?;
            let kept = shop.kept_pdf(paper).await.with_context(told)?;
            fault(paper, &sealed, ring, (&pdf, kept), &signed)
        }
        // One file gone bad on the disk does not keep the others in.
        Err(refusal) => Some(format!("its PDF is not written: {refusal}")),
    };
    done.faults.extend(wrong.map(|wrong| format!("{}: {wrong}", paper.number)));
    let signed_place = target.place(&folders, &paper.number, ".json");
    target.write(&signed_place, &signed)?;
    Ok(row(out, &found, [pdf_place, pdf_sha256, signed_place]))
}

/// What is wrong with a paper as it is written; nothing when it is the one that was issued.
fn fault(paper: &Issued, sealed: &Sealed, ring: &KeyRing, (pdf, kept): (&[u8], Kept), signed: &[u8]) -> Option<String> {
    if let Err(refusal) = verify(sealed, ring) {
        return Some(format!("not genuine: {refusal}"));
    }
    if papers::embedded(pdf).ok().flatten().as_deref() != Some(signed) {
        return Some("its PDF does not carry its signed content".to_owned());
    }
    if seal::sha256_hex(pdf) != paper.pdf_sha256 {
        let said =
            "its PDF had to be drawn anew and is not byte for byte the one that was issued; the signed content is";
        return Some(said.to_owned());
    }
    (kept == Kept::Altered).then(|| {
        "the file kept by the shop was changed on the disk; what is written here was drawn anew, as it was issued"
            .to_owned()
    })
}

fn row(out: &Out<'_>, Found { paper, content, standing, .. }: &Found, files: [String; 3]) -> Vec<String> {
    let day = |zone: &Zone| zone.day_of(paper.issued_at).to_string();
    let issued_on = Zone::named(&out.branch.time_zone).map(|zone| day(&zone)).unwrap_or_default();
    let instant = paper.issued_at.format(&time::format_description::well_known::Rfc3339).unwrap_or_default();
    let vehicle = [content.vehicle.make.as_str(), content.vehicle.model.as_str()].join(" ");
    let [pdf, pdf_sha256, signed] = files;
    vec![
        out.branch.name.clone(),
        paper.kind.clone(),
        paper.series.clone(),
        paper.number.clone(),
        issued_on,
        instant,
        content.job_number.clone(),
        content.vehicle.plate.clone(),
        content.vehicle.vin.clone(),
        vehicle.trim().to_owned(),
        content.signatory.name.clone(),
        paper.code.clone(),
        standing.as_str().to_owned(),
        out.replaced_by.clone(),
        pdf,
        pdf_sha256,
        signed,
        seal::sha256_hex(&paper.content),
        paper.key_id.clone(),
    ]
}

/// Every public key, oldest first, each with the signed statement by which an older one vouched for it. The key that signs
/// today is among them even where it signed no paper yet: it signed the list of standings.
async fn keys(shop: &Shop, con: &mut db::Con) -> anyhow::Result<Value> {
    let instant = |at: time::OffsetDateTime| at.format(&time::format_description::well_known::Rfc3339).ok();
    let kept = db::signing_keys::list(con).await?;
    let today = shop.issuer.signer();
    let mut keys: Vec<Value> = kept
        .iter()
        .map(|key| {
            json!({
                "key_id": key.id,
                "fingerprint": seal::fingerprint(&key.id),
                "algorithm": "Ed25519",
                "public_key": key.public_key,
                "in_force_from": instant(key.in_force_from),
                "distrusted_after": key.distrusted_after.and_then(instant),
                "signed_by": key.signed_by,
                "introduction": serde_json::from_str::<Value>(&key.endorsement).ok(),
            })
        })
        .collect();
    if kept.iter().all(|key| key.id != today.key_id()) {
        keys.push(json!({
            "key_id": today.key_id(),
            "fingerprint": today.fingerprint(),
            "algorithm": "Ed25519",
            "public_key": today.public_key_base64(),
        }));
    }
    Ok(json!({ "format": "fuelwright/keys/1", "keys": keys }))
}
