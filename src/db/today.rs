//! What the opening screen and the list of jobs show: each job with its vehicle and keeper.

use time::{Date, OffsetDateTime};

use super::search::Wanted;
use super::{Con, Db, Result};
use crate::model::ids::{BranchId, JobId, VehicleId};
use crate::model::job::{Fuel, JobKind, JobState};

/// A job in a list.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Listed {
    pub id: JobId,
    pub number: String,
    pub kind: JobKind,
    pub fuel: Fuel,
    pub state: JobState,
    pub vehicle_id: VehicleId,
    pub plate: String,
    pub make: String,
    pub model: String,
    pub keeper_name: String,
    pub bay_name: Option<String>,
    /// Of the open hold.
    pub hold_reason: Option<String>,
    pub hold_began_at: Option<OffsetDateTime>,
    /// Why it was released without certificate; empty otherwise.
    pub ended_reason: String,
    pub opened_at: OffsetDateTime,
    pub ended_at: Option<OffsetDateTime>,
    /// Whether a paper of a later job, or of this one, has put right a release without certificate.
    pub has_paper: bool,
}

/// Jobs whose state is between `states` ("", "open", "held", "ended"), that a query finds; the newest first.
pub async fn list_jobs(
    con: &mut Con,
    branch: BranchId,
    state: &str,
    wanted: &Wanted,
    (first, most): (i64, i64),
) -> Result<Vec<Listed>> {
    Ok(sqlx::query_as::<Db, Listed>(
        "select jobs.id, jobs.number, jobs.kind, jobs.fuel, jobs.state, jobs.vehicle_id, vehicles.plate,
             vehicles.make, vehicles.model, customers.name as keeper_name, bays.name as bay_name,
             holds.reason as hold_reason, holds.began_at as hold_began_at, jobs.ended_reason, jobs.opened_at,
             jobs.ended_at,
             exists (select 1 from papers
                 where papers.vehicle_id = jobs.vehicle_id and papers.issued_at >= jobs.opened_at) as has_paper
         from jobs
         join vehicles on vehicles.id = jobs.vehicle_id
         join customers on customers.id = jobs.keeper_id
         left join bays on bays.id = jobs.bay_id
         left join holds on holds.job_id = jobs.id and holds.ended_at is null
         where jobs.branch_id = $1
           and ($2 = '' or jobs.state = $2 or ($2 = 'live' and jobs.state in ('open', 'held'))
             or ($2 = 'ended' and jobs.state in ('handed-over', 'released', 'cancelled')))
           and ((vehicles.search || customers.search || jobs.number like $3 escape '\\'
                 and vehicles.search || customers.search || jobs.number like $4 escape '\\'
                 and vehicles.search || customers.search || jobs.number like $5 escape '\\'
                 and vehicles.search || customers.search || jobs.number like $6 escape '\\')
             or ($7 <> '%%' and vehicles.search like $7 escape '\\'))
         order by jobs.opened_at desc, jobs.id desc
         limit $8 offset $9",
    )
    .bind(branch)
    .bind(state)
    .bind(wanted.word(0))
    .bind(wanted.word(1))
    .bind(wanted.word(2))
    .bind(wanted.word(3))
    .bind(wanted.whole())
    .bind(most)
    .bind(first)
    .fetch_all(con)
    .await?)
}

/// How many messages wait for the manager to let them go.
pub async fn count_held_messages(con: &mut Con, branch: BranchId) -> Result<i64> {
    Ok(sqlx::query_scalar("select count(*) from messages where branch_id = $1 and state = 'held'")
        .bind(branch)
        .fetch_one(con)
        .await?)
}

/// A certificate of an instrument, the latest, that has run out or will by a day.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct InstrumentDue {
    pub id: crate::model::ids::InstrumentId,
    pub code: String,
    pub due_on: Date,
}

/// Instruments in use whose latest certificate holds no longer than `by`.
pub async fn instruments_due(con: &mut Con, branch: BranchId, by: Date) -> Result<Vec<InstrumentDue>> {
    Ok(sqlx::query_as::<Db, InstrumentDue>(
        "select instruments.id, instruments.code, max(instrument_certificates.due_on) as due_on
         from instruments
         join instrument_certificates on instrument_certificates.instrument_id = instruments.id
         where instruments.branch_id = $1
           and instruments.retired_on is null
         group by instruments.id, instruments.code
         having max(instrument_certificates.due_on) <= $2
         order by due_on, instruments.code",
    )
    .bind(branch)
    .bind(by)
    .fetch_all(con)
    .await?)
}
