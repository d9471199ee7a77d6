//! What comes after an inspection: a repeat of one that failed, or a new one because a repair ended it.

use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::db;
use crate::db::jobs::Ending;
use crate::model::deed::Deed;
use crate::model::ids::JobId;
use crate::model::job::{Job, JobKind, JobState, NewJob};
use crate::model::paper::certificate::{CertificateContent, InspectionOutcome};
use crate::model::person::Actor;
use crate::rules::{inspection, term};

impl Work {
    /// Opens the job that comes after an inspection, on the same vehicle and system.
    async fn open_after(&mut self, before: &Job) -> Result<JobId, Refusal> {
        let branch = self.who.branch;
        let others = db::jobs::list_of_vehicle(self, branch, before.vehicle_id).await?;
        if others.iter().any(|job| job.comes_back_from == Some(before.id) && job.state != JobState::Cancelled) {
            return Err(Refusal::MayNot("refused-repeated-already"));
        }
        let new = NewJob {
            kind: before.kind,
            fuel: before.fuel,
            system_kind: before.system_kind,
            vehicle_id: before.vehicle_id,
            keeper_id: before.keeper_id,
            bay_id: before.bay_id,
            is_low_pressure_only: false,
            comes_back_from: Some(before.id),
            reported_faults: String::new(),
        };
        let next = self.open_job(&new).await?;
        let opened = db::jobs::find(self, branch, next).await?.ok_or(Refusal::Gone)?;
        self.note(Deed::JobOpened { job: next, number: opened.number, vehicle: before.vehicle_id }).await?;
        Ok(next)
    }
}

impl Shop {
    /// Opens the repeat of an inspection whose certificate says fail. Within the term of the rules it looks at what failed
    /// alone; later it is a whole new inspection. Either quotes the first certificate.
    ///
    /// # Errors
    /// [`Refusal::MayNot`] without a standing certificate that says fail, or when it is repeated already.
    pub async fn repeat_inspection(&self, who: &Actor, key: Option<Uuid>, job: JobId) -> Result<JobId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            let before = db::jobs::find(&mut work, branch, job).await?.ok_or(Refusal::Gone)?;
            let papers = db::papers::list_in_force(&mut work, branch, job).await?;
            let has_failed = papers.first().is_some_and(|paper| {
                let content: Option<CertificateContent> = serde_json::from_slice(&paper.content).ok();
                let said = content.and_then(|content| content.inspection);
                said.is_some_and(|said| said.outcome == InspectionOutcome::Fail)
            });
            if !has_failed || !inspection::may_fail(before.kind) {
                return Err(Refusal::MayNot("refused-nothing-failed"));
            }
            let next = work.open_after(&before).await?;
            work.done(Deed::InspectionRepeated { job, next }, next).await
        })
        .await
    }

    /// Ends an inspection because something is repaired, and opens a new one that quotes it.
    ///
    /// # Errors
    /// [`Refusal::MayNot`] where the rules in force let a repair go on inside an inspection, for another kind of job, and
    /// once a certificate was issued: then the inspection is finished, and a repair is a job of its own.
    pub async fn end_by_repair(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        what: String,
    ) -> Result<JobId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            let before = work.live_job(job).await?;
            let book = work.assessed(job).await?.book;
            if before.kind != JobKind::Inspection || !term::repair_restarts(&book) {
                return Err(Refusal::MayNot("refused-repair-goes-on"));
            }
            if !db::papers::list_in_force(&mut work, branch, job).await?.is_empty() {
                return Err(Refusal::MayNot("refused-inspection-finished"));
            }
            let end = Ending { state: JobState::Cancelled, reason: what.clone(), is_gas_shut_off: None };
            work.end_job(job, &end).await?;
            let next = work.open_after(&before).await?;
            work.done(Deed::InspectionEndedByRepair { job, what, next }, next).await
        })
        .await
    }
}
