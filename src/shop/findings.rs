//! Findings: opened by whoever found the fault, decided with a reason.

use time::OffsetDateTime;
use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::db;
use crate::model::deed::Deed;
use crate::model::finding::Finding;
use crate::model::ids::{FindingId, InstrumentId, JobId};
use crate::model::person::Actor;

/// In what a fault was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FoundIn {
    Job(JobId),
    Instrument(InstrumentId),
    /// In the shop's records or in parts: the cause beside the finding says in what.
    Records,
}

/// A fault as it is written down.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewFinding {
    pub found_in: FoundIn,
    /// What it rests on: a measurement, a document.
    pub source: String,
    /// In words.
    pub text: String,
    /// When an instrument was found wrong; `None` means now.
    pub found_at: Option<OffsetDateTime>,
}

impl Work {
    /// Opens a finding inside a deed; gives its audit line, which the deed still has to write.
    pub(super) async fn open_finding(&mut self, new: NewFinding) -> Result<(FindingId, Deed), Refusal> {
        let (branch, now, person) = (self.who.branch, self.now, self.person()?);
        let (job_id, instrument_id) = match new.found_in {
            FoundIn::Job(job) => (Some(job), None),
            FoundIn::Instrument(instrument) => (None, Some(instrument)),
            FoundIn::Records => (None, None),
        };
        let finding = Finding {
            id: FindingId::new(),
            job_id,
            instrument_id,
            source: new.source,
            text: new.text,
            opened_at: now,
            decision: String::new(),
            decided_at: None,
        };
        db::findings::insert(self, branch, &finding, person).await?;
        if let Some(mut doubt) = db::doubts::of_finding(self, &finding).await? {
            doubt.found_at = new.found_at.unwrap_or(now);
            db::doubts::save(self, &doubt).await?;
            Box::pin(self.review(finding.id)).await?;
        }
        let (source, text) = (finding.source, finding.text);
        let deed = Deed::FindingOpened { finding: finding.id, job: job_id, instrument: instrument_id, source, text };
        Ok((finding.id, deed))
    }
}

impl Shop {
    /// Writes a fault down; it is open until it is decided.
    ///
    /// # Errors
    /// [`Refusal::Ended`] when the job is no longer alive.
    pub async fn open_finding(&self, who: &Actor, key: Option<Uuid>, new: NewFinding) -> Result<FindingId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            match new.found_in {
                FoundIn::Job(job) => {
                    work.live_job(job).await?;
                }
                FoundIn::Instrument(instrument) => {
                    db::instruments::find(&mut work, branch, instrument).await?.ok_or(Refusal::Gone)?;
                }
                FoundIn::Records => return Err(Refusal::Gone),
            }
            let (id, deed) = work.open_finding(new).await?;
            work.done(deed, id).await
        })
        .await
    }

    /// Decides an open finding, with the reason.
    ///
    /// # Errors
    /// [`Refusal::Stale`] when somebody decided it meanwhile: a decision is not written over. [`Refusal::Field`] while a
    /// paper that rests on it waits for a signatory.
    pub async fn decide_finding(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        finding: FindingId,
        decision: String,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, person) = (work.who.branch, work.now, work.person()?);
            let found = db::findings::find(&mut work, branch, finding).await?.ok_or(Refusal::Gone)?;
            if decision.trim().is_empty() {
                return Err(Refusal::Field { field: "decision", why: "wrong-empty" });
            }
            if found.is_open() && !Box::pin(work.undecided_papers(finding)).await?.is_empty() {
                return Err(Refusal::Field { field: "decision", why: "finding-papers-open" });
            }
            db::findings::decide(&mut work, finding, &decision, person, now).await?;
            let deed = Deed::FindingDecided { finding, job: found.job_id, instrument: found.instrument_id, decision };
            work.done(deed, ()).await
        })
        .await
    }
}
