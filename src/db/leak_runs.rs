//! Pressure-decay tests that run, and their readings.

use sqlx::types::Json;
use time::OffsetDateTime;

use super::{Con, Db, Result, exactly_one};
use crate::model::evidence::{LeakReading, Section};
use crate::model::ids::{BranchId, EvidenceId, JobId, LeakRunId, PersonId};
use crate::model::leak_run::{LeakRun, LeakSetUp};

#[derive(sqlx::FromRow)]
struct Row {
    id: LeakRunId,
    job_id: JobId,
    set_up: Json<LeakSetUp>,
    started_at: OffsetDateTime,
    started_by: PersonId,
}

#[derive(sqlx::FromRow)]
struct Reading {
    at: OffsetDateTime,
    kpa: f64,
    c: f64,
}

/// The test of a section that runs now.
pub async fn find_open(con: &mut Con, branch: BranchId, job: JobId, section: Section) -> Result<Option<LeakRun>> {
    let found = sqlx::query_as::<Db, Row>(
        "select id, job_id, set_up, started_at, started_by
         from leak_runs
         where branch_id = $1
           and job_id = $2
           and section = $3
           and ended_at is null",
    )
    .bind(branch)
    .bind(job)
    .bind(section)
    .fetch_optional(&mut *con)
    .await?;
    let Some(Row { id, job_id, set_up: Json(set_up), started_at, started_by }) = found else {
        return Ok(None);
    };
    let readings = sqlx::query_as::<Db, Reading>("select at, kpa, c from leak_readings where run_id = $1 order by at")
        .bind(id)
        .fetch_all(con)
        .await?;
    let readings = readings.into_iter().map(|Reading { at, kpa, c }| LeakReading { at, kpa, c }).collect();
    Ok(Some(LeakRun { id, job_id, set_up, started_at, started_by, readings }))
}

/// Starts a test; a second open one of the section is refused by the table.
pub async fn insert(
    con: &mut Con,
    branch: BranchId,
    job: JobId,
    set_up: &LeakSetUp,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<LeakRunId> {
    let id = LeakRunId::new();
    sqlx::query(
        "insert into leak_runs (id, branch_id, job_id, section, set_up, started_at, started_by)
         values ($1, $2, $3, $4, $5, $6, $7)",
    )
    .bind(id)
    .bind(branch)
    .bind(job)
    .bind(set_up.section)
    .bind(Json(set_up))
    .bind(now)
    .bind(who)
    .execute(con)
    .await?;
    Ok(id)
}

/// Adds a reading.
pub async fn insert_reading(con: &mut Con, run: LeakRunId, reading: &LeakReading, who: PersonId) -> Result<()> {
    sqlx::query("insert into leak_readings (run_id, at, kpa, c, person_id) values ($1, $2, $3, $4, $5)")
        .bind(run)
        .bind(reading.at)
        .bind(reading.kpa)
        .bind(reading.c)
        .bind(who)
        .execute(con)
        .await?;
    Ok(())
}

/// Ends a test: as this evidence, or given up.
pub async fn end(con: &mut Con, run: LeakRunId, evidence: Option<EvidenceId>, now: OffsetDateTime) -> Result<()> {
    let done = sqlx::query("update leak_runs set ended_at = $2, evidence_id = $3 where id = $1 and ended_at is null")
        .bind(run)
        .bind(now)
        .bind(evidence)
        .execute(con)
        .await?;
    exactly_one(&done)
}
