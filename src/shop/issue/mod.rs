//! A certificate is issued: numbered, frozen, signed, printed, kept; all of it or nothing.
//!
//! Drawing takes too long to do it while everybody else waits for the store. So the content is built and signed and the
//! PDF drawn first, for the number that comes next; then, inside the one transaction, the content is built again and
//! must come out the same to the byte. If anything moved meanwhile (a number taken, a proof lost), nothing is written and
//! it starts over. One issue at a time in this process keeps that from happening often.

mod calibrating;
mod content;
mod estimate;
mod files;
mod fitting;
mod ground;
mod inspection;
mod keys;
mod label;
mod measured;
mod of_job;
mod owner;
pub mod pages;
mod record;
mod sizing;
mod standing;
pub mod unprintable;
mod vessels;
mod wall;
mod work;

use std::path::PathBuf;
use std::sync::{Arc, PoisonError, RwLock};

use time::{Date, OffsetDateTime};
use tokio::sync::Mutex;
use uuid::Uuid;

use super::assessed::Assessed;
use super::{Refusal, Shop, Work};
use crate::db;
use crate::model::deed::Deed;
use crate::model::ids::{JobId, PaperId};
use crate::model::paper::certificate::CertificateContent;
use crate::model::paper::issued::EventKind;
use crate::model::paper::{CertificateKind, PersonOnPaper, PersonalPart, Supersedes};
use crate::model::person::Actor;
use crate::model::stage::Stage;
use crate::papers::certificate::{Certificate, certificate_on as draw};
use crate::rules;
use crate::seal::{self, Sealed, Signer};
use crate::words::Words;

pub(super) use content::block_of;
pub(super) use ground::Ground;
pub(super) use ground::words_of;
pub use ground::{Spoken, keeper_language, official_language};
pub use standing::{Found, Verified, kept_keys, verify};

/// With what this process signs, and what it prints on papers.
#[derive(Debug, Clone)]
pub struct Issuer {
    /// The key of now; another takes its place when a manager begins one.
    signer: Arc<RwLock<Arc<Signer>>>,
    /// Where the key lies; nowhere in a shop that lives in memory.
    key_file: Option<PathBuf>,
    /// Address under which anybody can ask; papers carry a code without it.
    public_url: Option<String>,
    /// A demonstration shop: every paper says so.
    is_demo: bool,
    turn: Arc<Mutex<()>>,
}

impl Issuer {
    /// An issuer with this key.
    pub fn new(signer: Signer, public_url: Option<String>, is_demo: bool) -> Self {
        let signer = Arc::new(RwLock::new(Arc::new(signer)));
        Self { signer, key_file: None, public_url, is_demo, turn: Arc::default() }
    }

    /// The same, with the file that its key came from, so that a new key can be kept there.
    #[must_use]
    pub fn kept_in(self, key_file: PathBuf) -> Self {
        Self { key_file: Some(key_file), ..self }
    }

    fn swap(&self, new: Signer) {
        *self.signer.write().unwrap_or_else(PoisonError::into_inner) = Arc::new(new);
    }

    /// The public half of the key.
    pub fn public_key(&self) -> [u8; 32] {
        self.signer().public_key()
    }

    /// A demonstration shop: every paper and letter says so.
    pub fn is_demo(&self) -> bool {
        self.is_demo
    }

    /// The key that signs.
    pub fn signer(&self) -> Arc<Signer> {
        // A poisoned lock means that somebody panicked while swapping one pointer; the pointer is whole either way.
        Arc::clone(&self.signer.read().unwrap_or_else(PoisonError::into_inner))
    }
}

/// What one issue adds to the ground: number, time, chance, person.
#[derive(Debug, Clone)]
pub(super) struct Issue<'a> {
    pub number: String,
    pub previous_sha256: String,
    pub on: Date,
    pub at: OffsetDateTime,
    pub salt: &'a str,
    pub code: String,
    pub url: Option<String>,
    pub key_id: String,
    pub signatory: PersonOnPaper,
    pub supersedes: Option<Supersedes>,
    pub is_demonstration: bool,
    /// Slots of photos that the signatory ticked as seen.
    pub photos_seen: &'a [String],
}

/// What is asked when a certificate is issued.
#[derive(Debug, Clone, Default)]
pub struct NewIssue {
    /// The paper it replaces, and why.
    pub supersedes: Option<(PaperId, String)>,
    /// Slots of photos that the signatory looked at and ticked.
    pub photos_seen: Vec<String>,
    /// The keeper's language beside that of the rules.
    pub beside: bool,
}

impl NewIssue {
    /// A first certificate, with the photos of these slots ticked as seen.
    pub fn seen<S: AsRef<str>>(slots: &[S]) -> Self {
        let photos_seen = slots.iter().map(|slot| slot.as_ref().to_owned()).collect();
        Self { supersedes: None, photos_seen, beside: false }
    }
}

/// A paper drawn, before or after issue.
#[derive(Debug, Clone)]
pub struct Drawn {
    /// What it says.
    pub content: CertificateContent,
    /// The PDF.
    pub pdf: Vec<u8>,
}

/// Everything random of one issue, drawn once so that both buildings agree.
struct Chance {
    salt: String,
    code: String,
}

impl Chance {
    fn draw() -> Self {
        let (mut salt, mut code) = ([0_u8; 16], [0_u8; 10]);
        rand::fill(&mut salt);
        rand::fill(&mut code);
        Self { salt: seal::hex(&salt), code: seal::verify_code(code).as_str().to_owned() }
    }
}

/// How often an issue starts over when something moves under it.
const TRIES: usize = 20;

struct Prepared {
    content: CertificateContent,
    personal: PersonalPart,
    sealed: Sealed,
    pdf: Vec<u8>,
}

impl Shop {
    /// Issues the certificate of a job.
    ///
    /// The caller has proved the signatory's secret just before ([`Shop::prove`]).
    ///
    /// # Errors
    /// [`Refusal::Missing`] with the proofs that are not settled; [`Refusal::MayNot`] when the person may not sign today,
    /// the shop's licence has run out, a valid certificate of this job exists already, or a name cannot be printed.
    pub async fn issue_certificate(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        new: NewIssue,
    ) -> Result<PaperId, Refusal> {
        let _turn = self.issuer.turn.lock().await;
        if let Some(id) = self.answered(who, key).await? {
            return Ok(id);
        }
        let chance = Chance::draw();
        for _ in 0..TRIES {
            let at = self.clock.now();
            let prepared = Box::pin(self.prepare(who, job, &new, &chance, at)).await?;
            match Box::pin(self.keep(who, key, job, &new, &chance, at, prepared)).await {
                Err(Refusal::Stale) => {}
                outcome => return outcome,
            }
        }
        Err(Refusal::Stale)
    }

    /// The certificate as it would be, drawn without number and signature.
    pub async fn preview_certificate(&self, who: &Actor, job: JobId) -> Result<Drawn, Refusal> {
        let mut con = self.db.read().await?;
        let at = self.clock.now();
        let loaded = Assessed::read(&mut con, who.branch, job, at).await?;
        let signatory = PersonOnPaper { name: String::new(), authorisation: String::new(), authorised_until_on: None };
        let issue = Issue {
            number: String::new(),
            previous_sha256: String::new(),
            on: loaded.zone.day_of(at),
            at,
            salt: "",
            code: String::new(),
            url: None,
            key_id: self.issuer.signer().key_id(),
            signatory,
            supersedes: None,
            is_demonstration: self.issuer.is_demo,
            photos_seen: &[],
        };
        loaded.with_official(|ground| {
            let content = content::certificate(ground, &issue).map_err(|error| Refusal::Broken(error.to_string()))?;
            let personal = content::personal_part(ground, "");
            unprintable::customer(&ground.file.keeper)?;
            unprintable::vehicle(&ground.file.vehicle)?;
            let paper = Certificate { content: &content, personal: Some(&personal), sealed: None };
            let pdf = draw(&paper, &ground.w, ground.branch.paper_size)
                .map_err(|error| Refusal::Broken(error.to_string()))?;
            Ok(Drawn { content, pdf })
        })
    }

    async fn prepare(
        &self,
        who: &Actor,
        job: JobId,
        new: &NewIssue,
        chance: &Chance,
        at: OffsetDateTime,
    ) -> Result<Prepared, Refusal> {
        let mut con = self.db.read().await?;
        let loaded = Assessed::read(&mut con, who.branch, job, at).await?;
        let (content, personal) = self.build(&mut con, who, &loaded, new, chance, at).await?;
        drop(con);
        unprintable::signatory(who)?;
        unprintable::customer(&loaded.file.keeper)?;
        unprintable::vehicle(&loaded.file.vehicle)?;
        let sealed =
            Sealed::seal(&content, &self.issuer.signer()).map_err(|error| Refusal::Broken(error.to_string()))?;
        let (to_draw, with, envelope) = (content.clone(), personal.clone(), sealed.to_json());
        let (words, size) = (Words::for_customer([&*content.language]), loaded.branch.paper_size);
        let drawing = tokio::task::spawn_blocking(move || {
            draw(&Certificate { content: &to_draw, personal: Some(&with), sealed: Some(&envelope) }, &words, size)
        });
        let pdf = drawing
            .await
            .map_err(|error| Refusal::Broken(error.to_string()))?
            .map_err(|error| Refusal::Broken(error.to_string()))?;
        Ok(Prepared { content, personal, sealed, pdf })
    }

    /// The content for the number that comes next. Reading only: the number is taken when it is kept.
    async fn build(
        &self,
        con: &mut db::Con,
        who: &Actor,
        loaded: &Assessed,
        new: &NewIssue,
        chance: &Chance,
        at: OffsetDateTime,
    ) -> Result<(CertificateContent, PersonalPart), Refusal> {
        let today = loaded.zone.day_of(at);
        if super::restored::is_pending(con, who.branch).await? {
            return Err(Refusal::MayNot("refused-restored-pending"));
        }
        let in_force = db::papers::list_in_force(con, who.branch, loaded.file.job.id).await?;
        if new.supersedes.is_none() && !in_force.is_empty() {
            return Err(Refusal::MayNot("refused-issued-already"));
        }
        let grant = who.may_sign_on(today).ok_or(Refusal::MayNot("refused-signatory-only"))?;
        if !loaded.branch.licence_holds_on(today) {
            return Err(Refusal::MayNot("refused-licence-expired"));
        }
        let kind = CertificateKind::of(&loaded.file.job).ok_or(Refusal::MayNot("refused-test-record-is-the-paper"))?;
        if !rules::inspection::may_certify(&loaded.file, &loaded.proofs) {
            let open = rules::inspection::held_back(&loaded.file, &loaded.proofs);
            return Err(Refusal::Missing(open.into_iter().map(|proof| format!("proof-{}", proof.id)).collect()));
        }
        if is_own_measurement(con, who, loaded).await? {
            return Err(Refusal::MayNot("refused-own-measurement-signing"));
        }
        if photo_slots(&loaded.proofs).iter().any(|slot| !new.photos_seen.contains(slot)) {
            return Err(Refusal::MayNot("refused-photos-not-seen"));
        }
        let supersedes = match &new.supersedes {
            None => None,
            Some((id, reason)) => {
                let old = db::papers::find(con, who.branch, *id).await?.ok_or(Refusal::Gone)?;
                if old.job_id != loaded.file.job.id {
                    return Err(Refusal::Gone);
                }
                // A paper has one successor: else two certificates of a job would stand side by side.
                if in_force.iter().all(|paper| paper.id != old.id) {
                    return Err(Refusal::Ended("refused-paper-ended"));
                }
                Some(Supersedes { number: old.number, reason: reason.clone() })
            }
        };
        let series = kind.as_str().to_owned();
        let next = db::numbers::peek(con, who.branch, &series).await?;
        let last = db::papers::find_in_series(con, who.branch, &series, next - 1).await?;
        let issue = Issue {
            number: number(kind, today, next),
            previous_sha256: last.map(|paper| seal::sha256_hex(&paper.content)).unwrap_or_default(),
            on: today,
            at,
            salt: &chance.salt,
            code: chance.code.clone(),
            url: self
                .issuer
                .public_url
                .as_ref()
                .map(|url| format!("{}/verify/{}", url.trim_end_matches('/'), chance.code)),
            key_id: self.issuer.signer().key_id(),
            signatory: PersonOnPaper {
                name: who.name.clone(),
                authorisation: grant.authorisation_number.clone(),
                authorised_until_on: Some(grant.expires_on),
            },
            supersedes,
            is_demonstration: self.issuer.is_demo,
            photos_seen: &new.photos_seen,
        };
        let made = loaded.with_official(|ground| {
            let personal = content::personal_part(ground, &chance.salt);
            content::certificate(ground, &issue).map(|content| (content, personal))
        });
        let whole = made.and_then(|(content, personal)| {
            let asked =
                new.beside.then(|| loaded.with_keeper(|keeper| content::with_beside(content.clone(), keeper, &issue)));
            Ok((asked.transpose()?.unwrap_or(content), personal))
        });
        whole.map_err(|error| Refusal::Broken(error.to_string()))
    }

    #[expect(clippy::too_many_arguments, reason = "the two halves of one deed; bundling them would only hide that")]
    async fn keep(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        new: &NewIssue,
        chance: &Chance,
        at: OffsetDateTime,
        prepared: Prepared,
    ) -> Result<PaperId, Refusal> {
        let pdf_sha256 = self.keep_pdf(prepared.pdf.clone()).await?;
        self.deed(who, key, async move |mut work: Work| {
            let (who, person) = (work.who.clone(), work.person()?);
            work.live_job(job).await?;
            let loaded = Assessed::read(&mut work, who.branch, job, at).await?;
            let (again, _) = self.build(&mut work, &who, &loaded, new, chance, at).await?;
            if seal::freeze(&again).ok().as_deref() != Some(prepared.sealed.content()) {
                return Err(Refusal::Stale);
            }
            // One series per kind of paper and branch; the year is in the number, the running part never starts again.
            let series = prepared.content.kind.as_str().to_owned();
            db::numbers::take(&mut work, who.branch, &series).await?;
            let public = self.issuer.signer().public_key_base64();
            db::signing_keys::insert(&mut work, prepared.sealed.key_id(), &public, at).await?;
            let personal =
                serde_json::to_string(&prepared.personal).map_err(|error| Refusal::Broken(error.to_string()))?;
            let paper = db::papers::NewPaper {
                branch_id: who.branch,
                series,
                number: prepared.content.number.clone(),
                kind: prepared.content.kind.as_str().to_owned(),
                job_id: job,
                vehicle_id: loaded.file.vehicle.id,
                content: prepared.sealed.content().to_vec(),
                personal,
                signature: prepared.sealed.signature(),
                key_id: prepared.sealed.key_id().to_owned(),
                previous_sha256: prepared.content.previous_sha256.clone(),
                code: prepared.content.check.code.clone(),
                pdf_sha256,
                supersedes_id: new.supersedes.as_ref().map(|(id, _)| *id),
            };
            let id = db::papers::insert(&mut work, &paper, person, at).await?;
            if let Some((old, reason)) = &new.supersedes {
                db::papers::insert_event(&mut work, *old, EventKind::Superseded, reason, person, at).await?;
            }
            Box::pin(work.review_new_paper()).await?;
            work.done(Deed::CertificateIssued { paper: id, job, number: paper.number }, id).await
        })
        .await
    }
}

/// Slots whose photo the rules ask for: what a signatory looks at before signing.
pub fn photo_slots(proofs: &[rules::Proof]) -> Vec<String> {
    let asked = proofs.iter().filter(|proof| proof.state == rules::State::Met);
    asked
        .filter_map(|proof| match &proof.place {
            rules::Place::Photo(slot) => Some(slot.clone()),
            _ => None,
        })
        .collect()
}

/// Four eyes: whoever measured does not sign for it, where the branch asks so.
async fn is_own_measurement(con: &mut db::Con, who: &Actor, loaded: &Assessed) -> Result<bool, Refusal> {
    let set = db::settings::find(con, who.branch, super::waivers::FOUR_EYES).await?;
    let measured = loaded
        .file
        .evidence
        .iter()
        .filter(|entry| matches!(entry.body.stage(), Stage::Fitting | Stage::Calibration | Stage::Proving));
    Ok(set.is_some_and(|set| set.value == "yes") && measured.into_iter().any(|one| Some(one.person_id) == who.person))
}

/// "C-2026-0093": the letter of the kind, the year of issue, the running number of the series.
fn number(kind: CertificateKind, today: Date, running: i64) -> String {
    let letter = match kind {
        CertificateKind::Conversion => "C",
        CertificateKind::Inspection => "I",
        CertificateKind::Removal => "R",
        CertificateKind::Container => "V",
        CertificateKind::Cylinder => "Y",
    };
    format!("{letter}-{}-{running:04}", today.year())
}
