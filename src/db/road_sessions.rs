//! Drives whose logs were handed in, and what they came to.

use std::collections::HashMap;

use sqlx::types::Json;
use time::OffsetDateTime;

use super::{Con, Db, Result, attachments, exactly_one};
use crate::calc::road::Comparison;
use crate::model::attachment::Attachment;
use crate::model::ids::{AttachmentId, BranchId, EvidenceId, JobId, PersonId, RoadSessionId};
use crate::model::road::{NewRoadSession, RoadLog, RoadPhase, RoadSession, Stated};

#[derive(sqlx::FromRow)]
struct Row {
    id: RoadSessionId,
    job_id: JobId,
    phase: RoadPhase,
    driven_at: OffsetDateTime,
    recorded_at: OffsetDateTime,
    person_name: String,
    comparison: Option<Json<Comparison>>,
    matched_name: Option<String>,
    matched_at: Option<OffsetDateTime>,
    evidence_id: Option<EvidenceId>,
    version: i64,
}

#[derive(sqlx::FromRow)]
struct LogRow {
    session_id: RoadSessionId,
    attachment_id: AttachmentId,
    stated: Option<Stated>,
    matched: Option<String>,
}

/// The drives of a job, first handed in first.
pub async fn list(con: &mut Con, branch: BranchId, job: JobId) -> Result<Vec<RoadSession>> {
    let rows = sqlx::query_as::<Db, Row>(
        "select road_sessions.id, job_id, phase, driven_at, recorded_at, people.name as person_name, comparison,
             matcher.name as matched_name, matched_at, evidence_id, road_sessions.version
         from road_sessions
         join people on people.id = road_sessions.person_id
         left join people as matcher on matcher.id = road_sessions.matched_by
         where road_sessions.job_id = $1
           and road_sessions.branch_id = $2
         order by recorded_at, road_sessions.id",
    )
    .bind(job)
    .bind(branch)
    .fetch_all(&mut *con)
    .await?;
    let logs = sqlx::query_as::<Db, LogRow>(
        "select session_id, attachment_id, stated, matched
         from road_logs
         join road_sessions on road_sessions.id = session_id
         where road_sessions.job_id = $1
         order by session_id, position",
    )
    .bind(job)
    .fetch_all(&mut *con)
    .await?;
    let files = attachments::list(con, job).await?;
    let mut by_session: HashMap<RoadSessionId, Vec<RoadLog>> = HashMap::new();
    for LogRow { session_id, attachment_id, stated, matched } in logs {
        if let Some(file) = files.iter().find(|file| file.id == attachment_id).cloned() {
            by_session.entry(session_id).or_default().push(RoadLog { file, stated, matched });
        }
    }
    let session = |row: Row| RoadSession {
        id: row.id,
        job_id: row.job_id,
        phase: row.phase,
        driven_at: row.driven_at,
        recorded_at: row.recorded_at,
        person_name: row.person_name,
        logs: by_session.remove(&row.id).unwrap_or_default(),
        comparison: row.comparison.map(|Json(comparison)| comparison),
        matched: row.matched_name.zip(row.matched_at),
        evidence_id: row.evidence_id,
        version: row.version,
    };
    Ok(rows.into_iter().map(session).collect())
}

/// One drive of a job.
pub async fn find(con: &mut Con, branch: BranchId, job: JobId, id: RoadSessionId) -> Result<Option<RoadSession>> {
    Ok(list(con, branch, job).await?.into_iter().find(|session| session.id == id))
}

/// Writes a drive down with its logs; their files are named by rows already.
pub async fn insert(
    con: &mut Con,
    branch: BranchId,
    job: JobId,
    (new, logs): (&NewRoadSession, &[(Attachment, Option<Stated>)]),
    who: PersonId,
    now: OffsetDateTime,
) -> Result<RoadSessionId> {
    let id = RoadSessionId::new();
    sqlx::query(
        "insert into road_sessions (id, branch_id, job_id, phase, driven_at, recorded_at, person_id)
         values ($1, $2, $3, $4, $5, $6, $7)",
    )
    .bind(id)
    .bind(branch)
    .bind(job)
    .bind(new.phase)
    .bind(new.driven_at)
    .bind(now)
    .bind(who)
    .execute(&mut *con)
    .await?;
    for (position, (file, stated)) in (0_i64..).zip(logs) {
        sqlx::query(
            "insert into road_logs (session_id, position, attachment_id, stated)
             values ($1, $2, $3, $4)",
        )
        .bind(id)
        .bind(position)
        .bind(file.id)
        .bind(stated)
        .execute(&mut *con)
        .await?;
    }
    Ok(id)
}

/// Keeps what the columns of its logs are, in their order, and what came of it; refused when somebody was quicker, and
/// once it is evidence.
pub async fn save_comparison(
    con: &mut Con,
    (id, opened_version): (RoadSessionId, i64),
    (matched, comparison): (&[String], &Comparison),
    who: PersonId,
    now: OffsetDateTime,
) -> Result<()> {
    let done = sqlx::query(
        "update road_sessions
         set comparison = $3, matched_by = $4, matched_at = $5, version = version + 1
         where id = $1
           and version = $2
           and evidence_id is null",
    )
    .bind(id)
    .bind(opened_version)
    .bind(Json(comparison))
    .bind(who)
    .bind(now)
    .execute(&mut *con)
    .await?;
    exactly_one(&done)?;
    for (position, text) in (0_i64..).zip(matched) {
        sqlx::query("update road_logs set matched = $3 where session_id = $1 and position = $2")
            .bind(id)
            .bind(position)
            .bind(text)
            .execute(&mut *con)
            .await?;
    }
    Ok(())
}

/// Says which evidence it became; refused when it changed since the page was opened.
pub async fn accept(con: &mut Con, id: RoadSessionId, opened_version: i64, evidence: EvidenceId) -> Result<()> {
    let done = sqlx::query(
        "update road_sessions
         set evidence_id = $3, version = version + 1
         where id = $1
           and version = $2
           and evidence_id is null",
    )
    .bind(id)
    .bind(opened_version)
    .bind(evidence)
    .execute(con)
    .await?;
    exactly_one(&done)
}
