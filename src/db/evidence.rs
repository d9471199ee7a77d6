//! Evidence: rows that are only ever added.

use std::collections::HashMap;

use sqlx::types::Json;
use time::OffsetDateTime;

use super::{Con, Db, Result};
use crate::model::evidence::{Entry, Evidence, NewEvidence};
use crate::model::ids::{AttachmentId, BranchId, EvidenceId, InstrumentId, JobId, PersonId};

#[derive(sqlx::FromRow)]
struct Row {
    id: EvidenceId,
    job_id: JobId,
    body: Json<Evidence>,
    measured_at: OffsetDateTime,
    recorded_at: OffsetDateTime,
    person_id: PersonId,
    person_name: String,
    replaces_id: Option<EvidenceId>,
    replaces_reason: String,
}

#[derive(sqlx::FromRow)]
struct Pair<T> {
    evidence_id: EvidenceId,
    other_id: T,
}

/// Every entry of a job, corrected ones included, oldest first.
pub async fn list(con: &mut Con, branch: BranchId, job: JobId) -> Result<Vec<Entry>> {
    let rows = sqlx::query_as::<Db, Row>(
        "select evidence.id, job_id, body, measured_at, recorded_at, person_id, people.name as person_name,
             replaces_id, replaces_reason
         from evidence
         join people on people.id = evidence.person_id
         where evidence.job_id = $1
           and evidence.branch_id = $2
         order by recorded_at, evidence.id",
    )
    .bind(job)
    .bind(branch)
    .fetch_all(&mut *con)
    .await?;
    let instruments = sqlx::query_as::<Db, Pair<InstrumentId>>(
        "select evidence_id, instrument_id as other_id
         from evidence_instruments
         join evidence on evidence.id = evidence_id
         where evidence.job_id = $1
         order by instrument_id",
    )
    .bind(job)
    .fetch_all(&mut *con)
    .await?;
    let attachments = sqlx::query_as::<Db, Pair<AttachmentId>>(
        "select evidence_id, attachment_id as other_id
         from evidence_attachments
         join evidence on evidence.id = evidence_id
         where evidence.job_id = $1
         order by attachment_id",
    )
    .bind(job)
    .fetch_all(con)
    .await?;
    let (mut instruments, mut attachments) = (grouped(instruments), grouped(attachments));
    let entry = |row: Row| Entry {
        id: row.id,
        job_id: row.job_id,
        body: row.body.0,
        measured_at: row.measured_at,
        recorded_at: row.recorded_at,
        person_id: row.person_id,
        person_name: row.person_name,
        replaces_id: row.replaces_id,
        replaces_reason: row.replaces_reason,
        instruments: instruments.remove(&row.id).unwrap_or_default(),
        attachments: attachments.remove(&row.id).unwrap_or_default(),
    };
    Ok(rows.into_iter().map(entry).collect())
}

fn grouped<T>(pairs: Vec<Pair<T>>) -> HashMap<EvidenceId, Vec<T>> {
    let mut groups: HashMap<EvidenceId, Vec<T>> = HashMap::new();
    for pair in pairs {
        groups.entry(pair.evidence_id).or_default().push(pair.other_id);
    }
    groups
}

/// The job of an entry.
pub async fn find_job(con: &mut Con, branch: BranchId, id: EvidenceId) -> Result<Option<JobId>> {
    Ok(sqlx::query_scalar::<Db, JobId>("select job_id from evidence where id = $1 and branch_id = $2")
        .bind(id)
        .bind(branch)
        .fetch_optional(con)
        .await?)
}

/// Of all entries, those that no other entry replaces.
pub fn current(all: &[Entry]) -> Vec<Entry> {
    let is_replaced = |entry: &&Entry| !all.iter().any(|other| other.replaces_id == Some(entry.id));
    all.iter().filter(is_replaced).cloned().collect()
}

/// Writes an entry down. Two first entries of one slot, or two successors of one entry, are refused by the table.
pub async fn insert(
    con: &mut Con,
    branch: BranchId,
    job: JobId,
    new: &NewEvidence,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<EvidenceId> {
    let id = EvidenceId::new();
    sqlx::query(
        "insert into evidence (id, branch_id, job_id, kind, subject, body, measured_at, recorded_at, person_id,
             replaces_id, replaces_reason)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)",
    )
    .bind(id)
    .bind(branch)
    .bind(job)
    .bind(new.body.kind())
    .bind(new.body.subject())
    .bind(Json(&new.body))
    .bind(new.measured_at.unwrap_or(now))
    .bind(now)
    .bind(who)
    .bind(new.replaces_id)
    .bind(&new.replaces_reason)
    .execute(&mut *con)
    .await?;
    for instrument in &new.instruments {
        sqlx::query("insert into evidence_instruments (evidence_id, instrument_id) values ($1, $2)")
            .bind(id)
            .bind(instrument)
            .execute(&mut *con)
            .await?;
    }
    for attachment in &new.attachments {
        sqlx::query("insert into evidence_attachments (evidence_id, attachment_id) values ($1, $2)")
            .bind(id)
            .bind(attachment)
            .execute(&mut *con)
            .await?;
    }
    Ok(id)
}

/// How many of these instruments the branch has.
pub async fn count_instruments(con: &mut Con, branch: BranchId, ids: &[InstrumentId]) -> Result<usize> {
    let mut count = 0;
    for id in ids {
        let found: Option<i64> =
            sqlx::query_scalar::<Db, i64>("select 1 from instruments where id = $1 and branch_id = $2")
                .bind(id)
                .bind(branch)
                .fetch_optional(&mut *con)
                .await?;
        count += usize::from(found.is_some());
    }
    Ok(count)
}

/// How many of these attachments belong to the job.
pub async fn count_attachments(con: &mut Con, job: JobId, ids: &[AttachmentId]) -> Result<usize> {
    let mut count = 0;
    for id in ids {
        let found: Option<i64> =
            sqlx::query_scalar::<Db, i64>("select 1 from attachments where id = $1 and job_id = $2")
                .bind(id)
                .bind(job)
                .fetch_optional(&mut *con)
                .await?;
        count += usize::from(found.is_some());
    }
    Ok(count)
}
