//! How issued papers stand: asked by anybody, withdrawn by a signatory, listed and signed for who cannot ask.

use time::Date;
use uuid::Uuid;

use crate::attachments::Kept;
use crate::clock::Zone;
use crate::db;
use crate::model::branch::PaperSize;
use crate::model::deed::Deed;
use crate::model::ids::{BranchId, FindingId, PaperId};
use crate::model::paper::certificate::CertificateContent;
use crate::model::paper::issued::{EventKind, Issued, PaperEvent, standing};
use crate::model::person::Actor;
use crate::papers::certificate::{Certificate, certificate_on as draw};
use crate::seal::keys::read_public_key;
use crate::seal::standing::{DistrustedKey, Standing, StandingEntry, StandingList};
use crate::seal::{self, KeyRing, Proven, Sealed, Signed, VerifyCode};
use crate::shop::{Refusal, Shop, Work};
use crate::words::Words;

/// A paper with what became of it.
#[derive(Debug, Clone)]
pub struct Found {
    /// The row.
    pub paper: Issued,
    /// What it says.
    pub content: CertificateContent,
    /// What became of it.
    pub events: Vec<PaperEvent>,
    /// How it stands today.
    pub standing: Standing,
}

/// What a signed file is worth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Verified {
    /// Genuine as issued.
    Genuine(Box<CertificateContent>),
    /// Sound, but signed by a key that is not known here.
    UnknownKey(Box<CertificateContent>),
}

/// Checks an envelope against a ring of keys.
///
/// # Errors
/// [`seal::Refusal`] names what is wrong with it.
pub fn verify(sealed: &Sealed, ring: &KeyRing) -> Result<Verified, seal::Refusal> {
    Ok(match sealed.open::<CertificateContent>(ring)? {
        Proven::Genuine(content) => Verified::Genuine(Box::new(content)),
        Proven::SoundButUnknownKey(content) => Verified::UnknownKey(Box::new(content)),
    })
}

/// The ring of every key that the store remembers, each with its mark of distrust.
pub async fn kept_keys(con: &mut db::Con) -> Result<KeyRing, Refusal> {
    let mut ring = KeyRing::new();
    for key in db::signing_keys::list(con).await? {
        let public = read_public_key(&key.public_key).map_err(|error| Refusal::Broken(error.to_string()))?;
        ring.trust(&public);
        if let Some(after) = key.distrusted_after {
            ring.distrust_after(&key.id, after);
        }
    }
    Ok(ring)
}

/// The earliest day by which something the paper names must be done.
fn next_due_on(content: &CertificateContent) -> Option<Date> {
    content.next_duties.iter().filter_map(|duty| duty.due_on).min()
}

impl Work {
    /// Takes a certificate back inside a larger deed, which still has to write the audit line that this gives.
    pub(in crate::shop) async fn withdraw(
        &mut self,
        id: PaperId,
        reason: String,
        finding: Option<FindingId>,
    ) -> Result<Deed, Refusal> {
        let (branch, now, today, person) = (self.who.branch, self.now, self.today, self.person()?);
        if self.who.may_sign_on(today).is_none() {
            return Err(Refusal::MayNot("refused-signatory-only"));
        }
        let paper = db::papers::find(self, branch, id).await?.ok_or(Refusal::Gone)?;
        let events = db::papers::list_events(self, id).await?;
        if matches!(standing(&events, None, today), Standing::Withdrawn | Standing::Superseded) {
            return Err(Refusal::Ended("refused-paper-ended"));
        }
        db::papers::insert_event_of(self, id, EventKind::Withdrawn, (&reason, finding), person, now).await?;
        Ok(Deed::CertificateWithdrawn { paper: id, job: paper.job_id, number: paper.number, reason })
    }
}

impl Shop {
    /// Every key of this shop that its papers were ever signed with.
    pub async fn key_ring(&self, con: &mut db::Con) -> Result<KeyRing, Refusal> {
        let mut ring = kept_keys(con).await?;
        ring.trust(&self.issuer.public_key());
        Ok(ring)
    }

    /// The paper behind a code, for anybody. A code that is no code and one that nobody issued answer alike.
    pub async fn find_by_code(&self, typed: &str) -> Result<Option<Found>, Refusal> {
        let Some(code) = VerifyCode::read(typed) else { return Ok(None) };
        let mut con = self.db.read().await?;
        let Some(paper) = db::papers::find_by_code(&mut con, code.as_str()).await? else { return Ok(None) };
        Ok(Some(self.found(&mut con, paper).await?))
    }

    /// A paper of a branch.
    pub async fn find_paper(&self, branch: BranchId, id: PaperId) -> Result<Option<Found>, Refusal> {
        let mut con = self.db.read().await?;
        let Some(paper) = db::papers::find(&mut con, branch, id).await? else { return Ok(None) };
        Ok(Some(self.found(&mut con, paper).await?))
    }

    /// A row with its content opened and its standing worked out.
    pub async fn found(&self, con: &mut db::Con, paper: Issued) -> Result<Found, Refusal> {
        let content: CertificateContent =
            serde_json::from_slice(&paper.content).map_err(|error| Refusal::Broken(error.to_string()))?;
        let events = db::papers::list_events(con, paper.id).await?;
        let branch = db::branches::find(con, paper.branch_id).await?.ok_or(Refusal::Gone)?;
        let zone = Zone::named(&branch.time_zone).map_err(|error| Refusal::Broken(error.to_string()))?;
        let standing = standing(&events, next_due_on(&content), self.clock.today(&zone));
        Ok(Found { paper, content, events, standing })
    }

    /// The signed envelope of a paper, as a JSON file.
    pub async fn envelope(&self, con: &mut db::Con, paper: &Issued) -> Result<Sealed, Refusal> {
        let keys = db::signing_keys::list(con).await?;
        let key = keys.into_iter().find(|key| key.id == paper.key_id).ok_or(Refusal::Gone)?;
        let public = read_public_key(&key.public_key).map_err(|error| Refusal::Broken(error.to_string()))?;
        Sealed::from_kept(paper.content.clone(), &public, &paper.signature)
            .map_err(|error| Refusal::Broken(error.to_string()))
    }

    /// The PDF as it was issued; drawn anew from the frozen content when the file is gone or is no longer what it was, which
    /// gives the same bytes. Nobody is handed a file that was changed on the disk.
    pub async fn issued_pdf(&self, paper: &Issued) -> Result<Vec<u8>, Refusal> {
        match self.read_pdf(&paper.pdf_sha256).await? {
            Some(bytes) if seal::sha256_hex(&bytes) == paper.pdf_sha256 => return Ok(bytes),
            Some(_) => tracing::error!(number = paper.number, "the kept PDF was changed on the disk; drawn anew"),
            None => tracing::warn!(number = paper.number, "the kept PDF is gone; drawn anew"),
        }
        let sha256 = paper.pdf_sha256.clone();
        let mut con = self.db.read().await?;
        let envelope = self.envelope(&mut con, paper).await?.to_json();
        let content: CertificateContent =
            serde_json::from_slice(&paper.content).map_err(|error| Refusal::Broken(error.to_string()))?;
        let personal = serde_json::from_str(&paper.personal).ok();
        let paper = Certificate { content: &content, personal: personal.as_ref(), sealed: Some(&envelope) };
        // The shop may print on another size today; the checksum tells on which the paper was issued.
        let (words, mut drawn) = (Words::for_customer([&*content.language]), Vec::new());
        for size in [PaperSize::Letter, PaperSize::A4] {
            drawn = draw(&paper, &words, size).map_err(|error| Refusal::Broken(error.to_string()))?;
            if seal::sha256_hex(&drawn) == sha256 {
                break;
            }
        }
        Ok(drawn)
    }

    /// Whether the PDF that was kept at issue still is what it was.
    pub async fn kept_pdf(&self, paper: &Issued) -> Result<Kept, Refusal> {
        let (files, sha256) = (self.paper_files(), paper.pdf_sha256.clone());
        let state = tokio::task::spawn_blocking(move || files.state(&sha256)).await;
        state.map_err(|error| Refusal::Broken(error.to_string()))?.map_err(|error| Refusal::Broken(error.to_string()))
    }

    /// Takes a certificate back. The caller has proved the signatory's secret just before.
    pub async fn withdraw_certificate(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        id: PaperId,
        reason: String,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let deed = work.withdraw(id, reason, None).await?;
            work.done(deed, ()).await
        })
        .await
    }

    /// The signed, dated list of how every paper of a branch stands.
    pub async fn standing_list(&self, branch: BranchId) -> Result<Sealed, Refusal> {
        let mut con = self.db.read().await?;
        let shop = db::branches::find(&mut con, branch).await?.ok_or(Refusal::Gone)?;
        let zone = Zone::named(&shop.time_zone).map_err(|error| Refusal::Broken(error.to_string()))?;
        let all: Vec<Issued> =
            db::papers::list_all(&mut con).await?.into_iter().filter(|paper| paper.branch_id == branch).collect();
        let mut papers = Vec::with_capacity(all.len());
        for paper in &all {
            let found = self.found(&mut con, paper.clone()).await?;
            let moved = found.events.iter().rev().find(|event| event.kind.moves_standing());
            let since_at = moved.map_or(paper.issued_at, |event| event.at);
            let later = all.iter().find(|other| other.supersedes_id == Some(paper.id));
            papers.push(StandingEntry {
                number: paper.number.clone(),
                kind: paper.kind.clone(),
                content_sha256: seal::sha256_hex(&paper.content),
                pdf_sha256: paper.pdf_sha256.clone(),
                standing: found.standing,
                since_on: zone.day_of(since_at),
                replaced_by: later.map(|other| other.number.clone()).unwrap_or_default(),
            });
        }
        let keys = db::signing_keys::list(&mut con).await?;
        let introductions: Vec<Sealed> =
            keys.iter().filter_map(|key| Sealed::from_json(key.endorsement.as_bytes()).ok()).collect();
        let distrusted =
            keys.into_iter().filter_map(|key| Some(DistrustedKey { key_id: key.id, after: key.distrusted_after? }));
        let list = StandingList {
            format: StandingList::FORMAT.to_owned(),
            shop: shop.name,
            listed_at: self.clock.now(),
            papers,
            distrusted_keys: distrusted.collect(),
            introductions,
        };
        Sealed::seal(&list, &self.issuer.signer()).map_err(|error| Refusal::Broken(error.to_string()))
    }
}
