//! Jobs, their holds and their waivers.

use time::OffsetDateTime;

use super::{Con, Db, Result, exactly_one};
use crate::model::ids::{BayId, BranchId, CustomerId, HoldId, JobId, PersonId, VehicleId, WaiverId};
use crate::model::job::{Hold, Job, JobState, NewJob, Waiver, WaiverKind};

/// The job with this id.
pub async fn find(con: &mut Con, branch: BranchId, id: JobId) -> Result<Option<Job>> {
    Ok(sqlx::query_as::<Db, Job>(
        "select id, branch_id, number, kind, fuel, system_kind, vehicle_id, keeper_id, bay_id, comes_back_from,
             is_low_pressure_only, reported_faults, state, ended_reason, is_gas_shut_off, opened_at, opened_by, ended_at,
             version
         from jobs
         where id = $1
           and branch_id = $2",
    )
    .bind(id)
    .bind(branch)
    .fetch_optional(con)
    .await?)
}

/// The jobs of a branch that stand so, newest first.
pub async fn list_by_state(con: &mut Con, branch: BranchId, state: JobState) -> Result<Vec<Job>> {
    Ok(sqlx::query_as::<Db, Job>(
        "select id, branch_id, number, kind, fuel, system_kind, vehicle_id, keeper_id, bay_id, comes_back_from,
             is_low_pressure_only, reported_faults, state, ended_reason, is_gas_shut_off, opened_at, opened_by, ended_at,
             version
         from jobs
         where branch_id = $1
           and state = $2
         order by opened_at desc, id desc
         limit 500",
    )
    .bind(branch)
    .bind(state)
    .fetch_all(con)
    .await?)
}

/// The jobs of a vehicle, newest first.
pub async fn list_of_vehicle(con: &mut Con, branch: BranchId, vehicle: VehicleId) -> Result<Vec<Job>> {
    Ok(sqlx::query_as::<Db, Job>(
        "select id, branch_id, number, kind, fuel, system_kind, vehicle_id, keeper_id, bay_id, comes_back_from,
             is_low_pressure_only, reported_faults, state, ended_reason, is_gas_shut_off, opened_at, opened_by, ended_at,
             version
         from jobs
         where branch_id = $1
           and vehicle_id = $2
         order by opened_at desc, id desc",
    )
    .bind(branch)
    .bind(vehicle)
    .fetch_all(con)
    .await?)
}

/// Opens a job under this number.
pub async fn insert(
    con: &mut Con,
    branch: BranchId,
    number: &str,
    job: &NewJob,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<JobId> {
    let id = JobId::new();
    sqlx::query(
        "insert into jobs (id, branch_id, number, kind, fuel, system_kind, vehicle_id, keeper_id, bay_id,
             comes_back_from, is_low_pressure_only, reported_faults, opened_at, opened_by)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14)",
    )
    .bind(id)
    .bind(branch)
    .bind(number)
    .bind(job.kind)
    .bind(job.fuel)
    .bind(job.system_kind)
    .bind(job.vehicle_id)
    .bind(job.keeper_id)
    .bind(job.bay_id)
    .bind(job.comes_back_from)
    .bind(job.is_low_pressure_only)
    .bind(&job.reported_faults)
    .bind(now)
    .bind(who)
    .execute(con)
    .await?;
    Ok(id)
}

/// Moves a job to another state, over the version it was read at.
pub async fn save_state(con: &mut Con, job: &Job, state: JobState) -> Result<()> {
    let done = sqlx::query("update jobs set state = $3, version = version + 1 where id = $1 and version = $2")
        .bind(job.id)
        .bind(job.version)
        .bind(state)
        .execute(con)
        .await?;
    exactly_one(&done)
}

/// How a job ended.
#[derive(Debug, Clone)]
pub struct Ending {
    pub state: JobState,
    /// Why; empty for a hand-over with certificate.
    pub reason: String,
    /// Released with the gas shut off.
    pub is_gas_shut_off: Option<bool>,
}

/// Ends a job, over the version it was read at.
pub async fn save_ending(con: &mut Con, job: &Job, end: &Ending, who: PersonId, now: OffsetDateTime) -> Result<()> {
    let done = sqlx::query(
        "update jobs
         set state = $3, ended_reason = $4, is_gas_shut_off = $5, ended_at = $6, ended_by = $7, version = version + 1
         where id = $1
           and version = $2",
    )
    .bind(job.id)
    .bind(job.version)
    .bind(end.state)
    .bind(&end.reason)
    .bind(end.is_gas_shut_off)
    .bind(now)
    .bind(who)
    .execute(con)
    .await?;
    exactly_one(&done)
}

/// The keeper of a job whose vehicle changed hands while it was here.
pub async fn save_keeper(con: &mut Con, job: &Job, keeper: CustomerId) -> Result<()> {
    let done = sqlx::query("update jobs set keeper_id = $3, version = version + 1 where id = $1 and version = $2")
        .bind(job.id)
        .bind(job.version)
        .bind(keeper)
        .execute(con)
        .await?;
    exactly_one(&done)
}

/// The holds of a job, newest first.
pub async fn list_holds(con: &mut Con, job: JobId) -> Result<Vec<Hold>> {
    Ok(sqlx::query_as::<Db, Hold>(
        "select id, job_id, reason, began_at, ended_at from holds where job_id = $1 order by began_at desc",
    )
    .bind(job)
    .fetch_all(con)
    .await?)
}

/// Begins a hold; a second open one is refused by the table.
pub async fn insert_hold(
    con: &mut Con,
    job: JobId,
    reason: &str,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<HoldId> {
    let id = HoldId::new();
    sqlx::query("insert into holds (id, job_id, reason, began_at, began_by) values ($1, $2, $3, $4, $5)")
        .bind(id)
        .bind(job)
        .bind(reason)
        .bind(now)
        .bind(who)
        .execute(con)
        .await?;
    Ok(id)
}

/// Ends the open hold of a job, if there is one.
pub async fn end_hold(con: &mut Con, job: JobId, who: PersonId, now: OffsetDateTime) -> Result<bool> {
    let done = sqlx::query("update holds set ended_at = $2, ended_by = $3 where job_id = $1 and ended_at is null")
        .bind(job)
        .bind(now)
        .bind(who)
        .execute(con)
        .await?;
    Ok(done.rows_affected() > 0)
}

/// The waivers in force on a job.
pub async fn list_waivers(con: &mut Con, job: JobId) -> Result<Vec<Waiver>> {
    Ok(sqlx::query_as::<Db, Waiver>(
        "select waivers.id, job_id, proof, kind, reason, person_id, people.name as person_name, at
         from waivers
         join people on people.id = waivers.person_id
         where job_id = $1
           and ended_at is null
         order by at",
    )
    .bind(job)
    .fetch_all(con)
    .await?)
}

/// Lets a proof pass; a second waiver for one proof is refused by the table.
pub async fn insert_waiver(
    con: &mut Con,
    job: JobId,
    proof: &str,
    kind: WaiverKind,
    reason: &str,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<WaiverId> {
    let id = WaiverId::new();
    sqlx::query(
        "insert into waivers (id, job_id, proof, kind, reason, person_id, at) values ($1, $2, $3, $4, $5, $6, $7)",
    )
    .bind(id)
    .bind(job)
    .bind(proof)
    .bind(kind)
    .bind(reason)
    .bind(who)
    .bind(now)
    .execute(con)
    .await?;
    Ok(id)
}

/// Takes a waiver back.
pub async fn end_waiver(con: &mut Con, job: JobId, id: WaiverId, who: PersonId, now: OffsetDateTime) -> Result<()> {
    let done = sqlx::query(
        "update waivers set ended_at = $3, ended_by = $4 where id = $2 and job_id = $1 and ended_at is null",
    )
    .bind(job)
    .bind(id)
    .bind(now)
    .bind(who)
    .execute(con)
    .await?;
    exactly_one(&done)
}

/// The name of a bay.
pub async fn bay_name(con: &mut Con, id: BayId) -> Result<Option<String>> {
    Ok(sqlx::query_scalar::<Db, String>("select name from bays where id = $1").bind(id).fetch_optional(con).await?)
}
