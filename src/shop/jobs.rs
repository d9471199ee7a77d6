//! A job file from opening to its end: opened, held, cancelled, released without certificate.

use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::db;
use crate::db::jobs::Ending;
use crate::model::deed::Deed;
use crate::model::ids::{HoldId, JobId, PersonId};
use crate::model::job::{Job, JobState, NewJob, job_number};
use crate::model::person::Actor;

/// How a vehicle leaves without certificate.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Release {
    /// Why.
    pub reason: String,
    /// The gas is shut off.
    pub is_gas_shut_off: bool,
    /// The owner signed for it: the name.
    pub signed_by: String,
}

impl Work {
    /// Who does this deed; the program and customers do no work on a job.
    pub(super) fn person(&self) -> Result<PersonId, Refusal> {
        self.who.person.ok_or(Refusal::MayNot("refused-not-a-person"))
    }

    /// The job, in this branch, still alive.
    pub(super) async fn live_job(&mut self, id: JobId) -> Result<Job, Refusal> {
        let branch = self.who.branch;
        let job = db::jobs::find(self, branch, id).await?.ok_or(Refusal::Gone)?;
        if job.state.is_live() { Ok(job) } else { Err(Refusal::Ended("refused-job-ended")) }
    }
}

impl Shop {
    /// Opens a job file under the next number of the year.
    ///
    /// # Errors
    /// [`Refusal::Field`] when vehicle or keeper are not of this branch, or the job it comes back from is another
    /// vehicle's.
    pub async fn open_job(&self, who: &Actor, key: Option<Uuid>, job: NewJob) -> Result<JobId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let id = work.open_job(&job).await?;
            let branch = work.who.branch;
            let opened = db::jobs::find(&mut work, branch, id).await?.ok_or(Refusal::Gone)?;
            work.done(Deed::JobOpened { job: id, number: opened.number, vehicle: job.vehicle_id }, id).await
        })
        .await
    }

    /// Lets work wait.
    pub async fn begin_hold(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        reason: String,
    ) -> Result<HoldId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (person, now) = (work.person()?, work.now);
            let job = work.live_job(job).await?;
            if job.state == JobState::Held {
                return Err(Refusal::MayNot("refused-held-already"));
            }
            let id = db::jobs::insert_hold(&mut work, job.id, &reason, person, now).await?;
            db::jobs::save_state(&mut work, &job, JobState::Held).await?;
            work.done(Deed::HoldBegun { job: job.id, hold: id, reason }, id).await
        })
        .await
    }

    /// Lets work go on.
    pub async fn end_hold(&self, who: &Actor, key: Option<Uuid>, job: JobId) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (person, now) = (work.person()?, work.now);
            let job = work.live_job(job).await?;
            if !db::jobs::end_hold(&mut work, job.id, person, now).await? {
                return Err(Refusal::MayNot("refused-not-held"));
            }
            db::jobs::save_state(&mut work, &job, JobState::Open).await?;
            work.done(Deed::HoldEnded { job: job.id }, ()).await
        })
        .await
    }

    /// Calls a job off.
    pub async fn cancel_job(&self, who: &Actor, key: Option<Uuid>, job: JobId, reason: String) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let end = Ending { state: JobState::Cancelled, reason: reason.clone(), is_gas_shut_off: None };
            let job = work.end_job(job, &end).await?;
            work.done(Deed::JobCancelled { job: job.id, reason }, ()).await
        })
        .await
    }

    /// Lets a vehicle leave without certificate; the job stays on Today until the vehicle has one.
    pub async fn release_job(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        release: Release,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let Release { reason, is_gas_shut_off, signed_by } = release;
            let reason = if signed_by.is_empty() { reason } else { format!("{reason} ({signed_by})") };
            let end =
                Ending { state: JobState::Released, reason: reason.clone(), is_gas_shut_off: Some(is_gas_shut_off) };
            let job = work.end_job(job, &end).await?;
            work.done(Deed::JobReleased { job: job.id, reason, is_gas_shut_off }, ()).await
        })
        .await
    }
}

impl Work {
    /// Opens a job inside a larger deed (an arrival makes customer, vehicle and job at once).
    pub(super) async fn open_job(&mut self, job: &NewJob) -> Result<JobId, Refusal> {
        let (branch, now, today, person) = (self.who.branch, self.now, self.today, self.person()?);
        if let Some(before) = job.comes_back_from {
            let before = db::jobs::find(self, branch, before).await?.ok_or(Refusal::Gone)?;
            if before.vehicle_id != job.vehicle_id {
                return Err(Refusal::Field { field: "comes_back_from", why: "refused-other-vehicle" });
            }
        }
        let running = db::numbers::take(self, branch, &format!("job-{}", today.year())).await?;
        let number = job_number(today, running);
        Ok(db::jobs::insert(self, branch, &number, job, person, now).await?)
    }

    /// Ends a live job; an open hold ends with it.
    pub(super) async fn end_job(&mut self, id: JobId, end: &Ending) -> Result<Job, Refusal> {
        let (person, now) = (self.person()?, self.now);
        let job = self.live_job(id).await?;
        db::jobs::end_hold(self, job.id, person, now).await?;
        db::jobs::save_ending(self, &job, end, person, now).await?;
        Ok(job)
    }
}
