//! Findings: what was found wrong, and what was decided.

use time::OffsetDateTime;

use super::{Con, Db, Result, exactly_one};
use crate::model::finding::Finding;
use crate::model::ids::{BranchId, FindingId, InstrumentId, JobId, PersonId};

/// The finding with this id.
pub async fn find(con: &mut Con, branch: BranchId, id: FindingId) -> Result<Option<Finding>> {
    Ok(sqlx::query_as::<Db, Finding>(
        "select id, job_id, instrument_id, source, text, opened_at, decision, decided_at
         from findings
         where id = $1
           and branch_id = $2",
    )
    .bind(id)
    .bind(branch)
    .fetch_optional(con)
    .await?)
}

/// The findings of a job, oldest first.
pub async fn list(con: &mut Con, job: JobId) -> Result<Vec<Finding>> {
    Ok(sqlx::query_as::<Db, Finding>(
        "select id, job_id, instrument_id, source, text, opened_at, decision, decided_at
         from findings
         where job_id = $1
         order by opened_at, id",
    )
    .bind(job)
    .fetch_all(con)
    .await?)
}

/// The findings of an instrument, newest first.
pub async fn list_of_instrument(con: &mut Con, instrument: InstrumentId) -> Result<Vec<Finding>> {
    Ok(sqlx::query_as::<Db, Finding>(
        "select id, job_id, instrument_id, source, text, opened_at, decision, decided_at
         from findings
         where instrument_id = $1
         order by opened_at desc, id desc",
    )
    .bind(instrument)
    .fetch_all(con)
    .await?)
}

/// Every finding of the branch that waits for a decision, oldest first.
pub async fn list_open(con: &mut Con, branch: BranchId) -> Result<Vec<Finding>> {
    Ok(sqlx::query_as::<Db, Finding>(
        "select id, job_id, instrument_id, source, text, opened_at, decision, decided_at
         from findings
         where branch_id = $1
           and decided_at is null
         order by opened_at, id",
    )
    .bind(branch)
    .fetch_all(con)
    .await?)
}

/// Opens a finding.
pub async fn insert(con: &mut Con, branch: BranchId, one: &Finding, who: PersonId) -> Result<()> {
    sqlx::query(
        "insert into findings (id, branch_id, job_id, instrument_id, source, text, opened_at, opened_by)
         values ($1, $2, $3, $4, $5, $6, $7, $8)",
    )
    .bind(one.id)
    .bind(branch)
    .bind(one.job_id)
    .bind(one.instrument_id)
    .bind(&one.source)
    .bind(&one.text)
    .bind(one.opened_at)
    .bind(who)
    .execute(con)
    .await?;
    Ok(())
}

/// Decides an open finding; one that was decided meanwhile is [`super::Error::Stale`].
pub async fn decide(con: &mut Con, id: FindingId, decision: &str, who: PersonId, now: OffsetDateTime) -> Result<()> {
    let done = sqlx::query(
        "update findings
         set decision = $2, decided_at = $3, decided_by = $4
         where id = $1
           and decided_at is null",
    )
    .bind(id)
    .bind(decision)
    .bind(now)
    .bind(who)
    .execute(con)
    .await?;
    exactly_one(&done)
}
