//! Estimates are written, agreed, and paid in advance: each a new line, none ever changed, all on a live job.

use time::Date;
use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::db;
use crate::model::Coded;
use crate::model::deed::Deed;
use crate::model::deposit::{Deposit, NewDeposit, NewReturn};
use crate::model::estimate::{Estimates, NewAgreement, NewEstimate, total_of};
use crate::model::ids::{DepositId, EstimateId, JobId};
use crate::model::money::Currency;
use crate::model::person::Actor;

impl Work {
    /// What is known of a live job's money, and its currency: that of its first line, else the branch's.
    async fn estimates(&mut self, job: JobId) -> Result<(Estimates, Currency), Refusal> {
        let (branch, job) = (self.who.branch, self.live_job(job).await?);
        let known = db::estimates::find_of_job(self, branch, job.id).await?;
        if let Some(currency) = known.currency() {
            return Ok((known, currency));
        }
        let branch = db::branches::find(self, branch).await?.ok_or(Refusal::Gone)?;
        let currency = branch.currency.parse().map_err(|_| Refusal::MayNot("refused-currency-unknown"))?;
        Ok((known, currency))
    }

    fn refuse_future(&self, field: &'static str, day: Date) -> Result<(), Refusal> {
        if day > self.today { Err(Refusal::Field { field, why: "wrong-future" }) } else { Ok(()) }
    }
}

impl Shop {
    /// Writes a version of an estimate.
    ///
    /// # Errors
    /// [`Refusal::Stale`] when somebody wrote a version since the form was opened; [`Refusal::Field`] for no line, or a
    /// total below nought or beyond what can be kept; [`Refusal::Ended`] when the job is no longer live.
    pub async fn write_estimate(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        new: NewEstimate,
    ) -> Result<EstimateId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, person, now) = (work.who.branch, work.person()?, work.now);
            let (known, currency) = work.estimates(job).await?;
            let last = known.last().map_or(0, |version| version.number);
            if last != new.opened_at_number {
                return Err(Refusal::Stale);
            }
            if new.lines.is_empty() {
                return Err(Refusal::Field { field: "lines", why: "estimate-no-line" });
            }
            let total_minor =
                total_of(&new.lines).ok_or(Refusal::Field { field: "lines", why: "estimate-too-much" })?;
            if total_minor < 0 {
                return Err(Refusal::Field { field: "lines", why: "estimate-below-nought" });
            }
            let number = last + 1;
            let version = (number, currency, total_minor);
            let id = db::estimates::insert(&mut work, (branch, job), version, &new, person, now).await?;
            let currency = currency.code().to_owned();
            work.done(Deed::EstimateWritten { job, estimate: id, number, total_minor, currency }, id).await
        })
        .await
    }

    /// Notes that the customer agreed to the last version: its total, how, who, when.
    ///
    /// # Errors
    /// [`Refusal::Stale`] when a newer version was written since the form was opened; [`Refusal::MayNot`] when this one
    /// is agreed already; [`Refusal::Field`] for a time in the future or before the version was written.
    pub async fn agree_estimate(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        new: NewAgreement,
    ) -> Result<EstimateId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (person, now) = (work.person()?, work.now);
            let (known, currency) = work.estimates(job).await?;
            let last = known.last().ok_or(Refusal::Gone)?;
            if last.number != new.number {
                return Err(Refusal::Stale);
            }
            if last.agreement.is_some() {
                return Err(Refusal::MayNot("refused-agreed-already"));
            }
            if new.agreed_at > now {
                return Err(Refusal::Field { field: "agreed_at", why: "wrong-future" });
            }
            if new.agreed_at < last.written_at {
                return Err(Refusal::Field { field: "agreed_at", why: "wrong-before-estimate" });
            }
            let (id, amount_minor) = (last.id, last.total_minor);
            db::estimates::insert_agreement(&mut work, (id, amount_minor), &new, person, now).await?;
            let deed = Deed::EstimateAgreed {
                job,
                estimate: id,
                number: new.number,
                amount_minor,
                currency: currency.code().to_owned(),
                how: new.how.code().to_owned(),
            };
            work.done(deed, id).await
        })
        .await
    }

    /// Takes a deposit.
    ///
    /// # Errors
    /// [`Refusal::Field`] for a day in the future; [`Refusal::Ended`] when the job is no longer live.
    pub async fn take_deposit(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        new: NewDeposit,
    ) -> Result<DepositId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, person, now) = (work.who.branch, work.person()?, work.now);
            let (_, currency) = work.estimates(job).await?;
            work.refuse_future("received_on", new.received_on)?;
            let id = db::deposits::insert(&mut work, (branch, job, currency), &new, person, now).await?;
            let (amount_minor, currency) = (new.amount_minor, currency.code().to_owned());
            work.done(Deed::DepositTaken { job, deposit: id, amount_minor, currency }, id).await
        })
        .await
    }

    /// Takes a deposit back, by a new line with its reason.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when the job has no such deposit; [`Refusal::MayNot`] when it was taken back already;
    /// [`Refusal::Field`] for a day in the future or before the money came.
    pub async fn take_back_deposit(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        new: NewReturn,
    ) -> Result<DepositId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, person, now, by) = (work.who.branch, work.person()?, work.now, work.who.name.clone());
            let (known, _) = work.estimates(job).await?;
            let is_this = |one: &&Deposit| one.id == new.takes_back;
            let taken = known.deposits.iter().find(is_this).filter(|one| one.takes_back_id.is_none());
            let taken = taken.ok_or(Refusal::Gone)?;
            if known.taken_back(taken.id).is_some() {
                return Err(Refusal::MayNot("refused-taken-back-already"));
            }
            work.refuse_future("returned_on", new.returned_on)?;
            if new.returned_on < taken.received_on {
                return Err(Refusal::Field { field: "returned_on", why: "wrong-end-before-start" });
            }
            let id = db::deposits::insert_return(&mut work, (branch, job), (taken, &by), &new, person, now).await?;
            work.done(Deed::DepositTakenBack { job, deposit: id, takes_back: taken.id, reason: new.reason }, id).await
        })
        .await
    }
}
