//! A signatory lets a proof pass, or says that it does not apply. What is never waived cannot be.

use uuid::Uuid;

use super::assessed::Assessed;
use super::{Refusal, Shop, Work};
use crate::db;
use crate::model::deed::Deed;
use crate::model::ids::{JobId, WaiverId};
use crate::model::job::WaiverKind;
use crate::model::person::Actor;

/// A waiver as asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewWaiver {
    /// Id of the rule line.
    pub proof: String,
    /// Which of the two.
    pub kind: WaiverKind,
    /// Why; printed.
    pub reason: String,
}

/// The setting that keeps people from waiving what they measured themselves.
pub const FOUR_EYES: &str = "four-eyes";

impl Shop {
    /// Waives a proof of a job, or says that it does not apply.
    ///
    /// # Errors
    /// [`Refusal::MayNot`] when the person may not sign today, the proof is never waived, it always applies, or the
    /// person measured it and four eyes are asked for.
    pub async fn waive_proof(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        waiver: NewWaiver,
    ) -> Result<WaiverId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, today, person) = (work.who.branch, work.now, work.today, work.person()?);
            if work.who.may_sign_on(today).is_none() {
                return Err(Refusal::MayNot("refused-signatory-only"));
            }
            let job = work.live_job(job).await?;
            let Assessed { file, proofs, .. } = work.assessed(job.id).await?;
            let proof = proofs.into_iter().find(|proof| proof.id == waiver.proof).ok_or(Refusal::Gone)?;
            if proof.is_never_waived {
                return Err(Refusal::MayNot("refused-never-waived"));
            }
            if waiver.kind == WaiverKind::NotApplicable && !proof.may_not_apply {
                return Err(Refusal::MayNot("refused-always-applies"));
            }
            let four_eyes =
                db::settings::find(&mut work, branch, FOUR_EYES).await?.is_some_and(|set| set.value == "yes");
            let measured_it =
                |at| file.evidence.iter().any(|one| one.person_id == person && Some(one.measured_at) == at);
            if four_eyes && proof.at.is_some() && measured_it(proof.at) {
                return Err(Refusal::MayNot("refused-own-measurement"));
            }
            let NewWaiver { proof, kind, reason } = waiver;
            let id = db::jobs::insert_waiver(&mut work, job.id, &proof, kind, &reason, person, now).await?;
            let how = kind.to_string();
            work.done(Deed::ProofWaived { job: job.id, waiver: id, proof, how, reason }, id).await
        })
        .await
    }

    /// Takes a waiver back.
    pub async fn end_waiver(&self, who: &Actor, key: Option<Uuid>, job: JobId, id: WaiverId) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (now, today, person) = (work.now, work.today, work.person()?);
            if work.who.may_sign_on(today).is_none() {
                return Err(Refusal::MayNot("refused-signatory-only"));
            }
            let job = work.live_job(job).await?;
            db::jobs::end_waiver(&mut work, job.id, id, person, now).await?;
            work.done(Deed::WaiverEnded { job: job.id, waiver: id }, ()).await
        })
        .await
    }
}
