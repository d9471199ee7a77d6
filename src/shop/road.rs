//! A drive on both fuels: its logs are kept, their columns matched, the comparison made, and accepted as evidence.

use std::sync::LazyLock;

use time::OffsetDateTime;
use tokio::sync::Semaphore;
use uuid::Uuid;

use super::attachments::aside;
use super::{Refusal, Shop, Work};
use crate::attachments::Received;
use crate::calc::road::{Comparison, Plan};
use crate::db;
use crate::logs::{self, CompareError, Layout, Log, LogError, Match};
use crate::model::attachment::Attachment;
use crate::model::deed::Deed;
use crate::model::evidence::{Evidence, NewEvidence, RoadComparison, RoadLogKept};
use crate::model::ids::{AttachmentId, EvidenceId, JobId, RoadSessionId};
use crate::model::job::Job;
use crate::model::person::Actor;
use crate::model::road::{NewRoadSession, RoadSession, Stated};

/// The slot in which logs of a drive are kept.
pub const SLOT: &str = "road-log";

/// Comparisons made at one time: each reads whole logs and keeps a processor busy while it lasts.
static COMPARING: LazyLock<Semaphore> = LazyLock::new(|| Semaphore::new(1));

/// A log that came whole, with the name it had.
#[derive(Debug)]
pub struct SentLog {
    /// The name it had; for people only, never a path.
    pub name: String,
    /// Its bytes, on the disk.
    pub received: Received,
    /// The fuel of the whole log, as the technician states it.
    pub stated: Option<Stated>,
}

/// What the columns of a log are, and the source that it is remembered for.
#[derive(Debug, Clone, PartialEq)]
pub struct RoadMatched {
    /// By what the source is remembered.
    pub source_key: String,
    /// Which column is what.
    pub matched: Match,
}

/// Which drive, as it was when the page was opened.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RoadOpened {
    /// The job.
    pub job: JobId,
    /// The drive.
    pub session: RoadSessionId,
    /// Its version.
    pub version: i64,
}

impl Shop {
    /// How a log is laid out, as far as its first part shows.
    pub async fn look_at_log(&self, path: std::path::PathBuf) -> Result<Result<Layout, LogError>, Refusal> {
        aside(move || logs::look(&path)).await
    }

    /// Reads logs to their end and compares both fuels; waits its turn.
    pub async fn compare_logs(
        &self,
        sources: Vec<Log>,
        plan: Plan,
    ) -> Result<Result<Comparison, CompareError>, Refusal> {
        let turn = COMPARING.acquire().await.map_err(|error| Refusal::Broken(error.to_string()))?;
        // The turn goes with the work: who stops waiting does not make room for another while the first still reads.
        aside(move || {
            let done = logs::compare(&sources, plan);
            drop(turn);
            done
        })
        .await
    }

    /// Keeps the logs of a drive: all of them, or none.
    ///
    /// # Errors
    /// [`Refusal::Gone`] and [`Refusal::Ended`] for the job; [`Refusal::Field`] for a time in the future or before the
    /// vehicle came.
    pub async fn keep_road_logs(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        job: JobId,
        new: NewRoadSession,
        sent: Vec<SentLog>,
    ) -> Result<RoadSessionId, Refusal> {
        if let Some(answer) = self.answered(who, key).await? {
            return Ok(answer);
        }
        // Asked before the bytes are kept, and once more inside the deed.
        let mut con = self.db.read().await?;
        let file = db::jobs::find(&mut con, who.branch, job).await?.ok_or(Refusal::Gone)?;
        drop(con);
        may_be_driven(&file, &new, self.clock.now())?;
        if !file.state.is_live() {
            return Err(Refusal::Ended("refused-job-ended"));
        }
        let now = self.clock.now();
        let rows: Vec<(Attachment, Option<Stated>)> = sent.iter().map(|one| (row(job, one, now), one.stated)).collect();
        let files = self.files();
        let kept = aside(move || sent.into_iter().try_for_each(|one| files.keep_received(one.received))).await?;
        kept.map_err(|error| Refusal::Broken(format!("a log cannot be kept: {error}")))?;
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, person) = (work.who.branch, work.now, work.person()?);
            let file = work.live_job(job).await?;
            may_be_driven(&file, &new, now)?;
            for (one, _) in &rows {
                db::attachments::insert(&mut work, branch, one, person).await?;
                let (slot, sha256) = (one.slot.clone(), one.sha256.clone());
                work.note(Deed::FileKept { file: one.id, job: Some(job), slot, sha256 }).await?;
            }
            let id = db::road_sessions::insert(&mut work, branch, job, (&new, &rows), person, now).await?;
            let phase = new.phase.to_string();
            work.done(Deed::RoadLogsKept { job, session: id, phase, logs: rows.len() }, id).await
        })
        .await
    }

    /// Keeps what the columns of a drive's logs are, log by log, remembers it for their sources, and keeps what the drive
    /// came to.
    ///
    /// # Errors
    /// [`Refusal::Stale`] when somebody matched or accepted it since the page was opened.
    pub async fn record_road_comparison(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        opened: RoadOpened,
        matched: Vec<RoadMatched>,
        comparison: Comparison,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now, person) = (work.who.branch, work.now, work.person()?);
            let RoadOpened { job, session, version } = opened;
            work.live_job(job).await?;
            work.road_session(job, session).await?;
            let mut texts = Vec::with_capacity(matched.len());
            for one in &matched {
                let text = serde_json::to_string(&one.matched).map_err(|error| Refusal::Broken(error.to_string()))?;
                let source = (one.source_key.as_str(), text.as_str());
                db::road_matches::save(&mut work, branch, source, person, now).await?;
                texts.push(text);
            }
            let (at, found) = ((session, version), (texts.as_slice(), &comparison));
            db::road_sessions::save_comparison(&mut work, at, found, person, now).await?;
            let cells = comparison.cells.len();
            work.done(Deed::RoadCompared { job, session, cells }, ()).await
        })
        .await
    }

    /// Accepts what a drive came to as evidence; `replaces` is the evidence that was current when the page was opened.
    ///
    /// # Errors
    /// [`Refusal::Stale`] when drive or evidence changed since; [`Refusal::Field`] for a correction without a reason;
    /// [`Refusal::MayNot`] before the drive was read.
    pub async fn accept_road_comparison(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        opened: RoadOpened,
        replaces: Option<EvidenceId>,
        reason: String,
    ) -> Result<EvidenceId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let RoadOpened { job, session, version } = opened;
            work.live_job(job).await?;
            let found = work.road_session(job, session).await?;
            let new = NewEvidence {
                measured_at: Some(found.driven_at),
                attachments: found.logs.iter().map(|log| log.file.id).collect(),
                body: Evidence::RoadComparison(evidence(found)?),
                replaces_id: replaces,
                replaces_reason: reason.clone(),
                instruments: Vec::new(),
            };
            let evidence = work.record_evidence(job, &new).await?;
            db::road_sessions::accept(&mut work, session, version, evidence).await?;
            let kind = new.body.kind().to_owned();
            let deed = match replaces {
                Some(replaces) => {
                    Box::pin(work.doubt_corrected(job, evidence, &reason)).await?;
                    Deed::EvidenceCorrected { job, evidence, replaces, kind, reason }
                }
                None => Deed::EvidenceRecorded { job, evidence, kind, subject: String::new() },
            };
            work.done(deed, evidence).await
        })
        .await
    }
}

impl Work {
    async fn road_session(&mut self, job: JobId, id: RoadSessionId) -> Result<RoadSession, Refusal> {
        let branch = self.who.branch;
        db::road_sessions::find(self, branch, job, id).await?.ok_or(Refusal::Gone)
    }
}

fn evidence(session: RoadSession) -> Result<RoadComparison, Refusal> {
    let comparison = session.comparison.ok_or(Refusal::MayNot("refused-road-not-read"))?;
    let kept = |log: &crate::model::road::RoadLog| RoadLogKept {
        name: log.file.name.clone(),
        sha256: log.file.sha256.clone(),
        bytes: log.file.bytes,
        stated: log.stated.map(Stated::burned),
    };
    let logs = session.logs.iter().map(kept).collect();
    Ok(RoadComparison { session_id: session.id, phase: session.phase, logs, comparison })
}

fn may_be_driven(job: &Job, new: &NewRoadSession, now: OffsetDateTime) -> Result<(), Refusal> {
    let refused = |why| Err(Refusal::Field { field: "driven_at", why });
    match () {
        () if new.driven_at > now => refused("wrong-future"),
        () if new.driven_at < job.opened_at => refused("wrong-before-intake"),
        () => Ok(()),
    }
}

fn row(job: JobId, one: &SentLog, now: OffsetDateTime) -> Attachment {
    Attachment {
        id: AttachmentId::new(),
        job_id: Some(job),
        vehicle_id: None,
        slot: SLOT.to_owned(),
        sha256: one.received.sha256.clone(),
        media_type: one.received.kind.media_type().to_owned(),
        name: one.name.clone(),
        bytes: i64::try_from(one.received.bytes).unwrap_or(i64::MAX),
        width: None,
        height: None,
        captured_at: None,
        recorded_at: now,
    }
}
