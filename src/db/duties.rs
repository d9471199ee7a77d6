//! Duties: what must happen to a vehicle by a day, what ended it, and what was tried to reach its keeper.

use time::{Date, OffsetDateTime};

use super::{Con, Db, Result};
use crate::model::customer::ReminderBasis;
use crate::model::duty::{CallOutcome, ClosedHow, Duty, DutyCall, NewDuty};
use crate::model::ids::{BranchId, CustomerId, DutyId, JobId, PersonId, VehicleId};

/// A duty with its vehicle and whoever keeps that on the day asked for (the owner, where no keeper is known).
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Owed {
    #[sqlx(flatten)]
    pub duty: Duty,
    pub plate: String,
    pub make: String,
    pub model: String,
    /// `None`: nobody is on record for that day.
    pub keeper_id: Option<CustomerId>,
    pub keeper_name: String,
    pub phone: String,
    pub address: String,
    pub mail: String,
    pub mail_state: String,
    pub language: String,
    pub reminder_basis: ReminderBasis,
    pub reminder_basis_on: Option<Date>,
}

/// Which duties to list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Span {
    /// Open ones, or those that have ended.
    pub is_open: bool,
    /// From this day.
    pub from: Date,
    /// To this day, itself included.
    pub to: Date,
}

/// Writes a duty down. Returns its id, or nothing where the same duty of the same day is there already.
pub async fn insert(
    con: &mut Con,
    branch: BranchId,
    vehicle: VehicleId,
    job: Option<JobId>,
    duty: &NewDuty,
    at: OffsetDateTime,
) -> Result<Option<DutyId>> {
    let id = DutyId::new();
    let done = sqlx::query(
        "insert into duties (id, branch_id, vehicle_id, job_id, part_id, line, kind, due_on, due_km, decided_by, source,
             is_checked, made_at)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13)
         on conflict do nothing",
    )
    .bind(id)
    .bind(branch)
    .bind(vehicle)
    .bind(job)
    .bind(duty.part_id)
    .bind(&duty.line)
    .bind(duty.kind)
    .bind(duty.due_on)
    .bind(duty.due_km)
    .bind(duty.decided_by)
    .bind(&duty.source)
    .bind(duty.is_checked)
    .bind(at)
    .execute(con)
    .await?;
    Ok((done.rows_affected() == 1).then_some(id))
}

/// One duty, with whoever keeps its vehicle on `day`.
pub async fn find(con: &mut Con, branch: BranchId, id: DutyId, day: Date) -> Result<Option<Owed>> {
    Ok(sqlx::query_as::<Db, Owed>(
        "select d.id, d.vehicle_id, d.job_id, d.part_id, d.line, d.kind, d.due_on, d.due_km, d.decided_by, d.source,
             d.is_checked, d.made_at, d.closed_at, d.closed_how, d.closed_note, v.plate, v.make, v.model,
             c.id as keeper_id, coalesce(c.name, '') as keeper_name, coalesce(c.phone, '') as phone,
             coalesce(c.address, '') as address, coalesce(c.mail, '') as mail,
             coalesce(c.mail_state, 'good') as mail_state, coalesce(c.language, 'en') as language,
             coalesce(c.reminder_basis, 'none') as reminder_basis, c.reminder_basis_on
         from duties d
         join vehicles v on v.id = d.vehicle_id
         left join vehicle_people p on p.id = (
             select q.id
             from vehicle_people q
             where q.vehicle_id = d.vehicle_id
               and q.role in ('keeper', 'owner')
               and q.from_on <= $3
               and (q.to_on is null or q.to_on >= $3)
             order by q.role, q.from_on desc, q.id desc
             limit 1)
         left join customers c on c.id = p.customer_id
         where d.branch_id = $1
           and d.id = $2",
    )
    .bind(branch)
    .bind(id)
    .bind(day)
    .fetch_optional(con)
    .await?)
}

/// The duties of a branch that fall due within `span`, the first due first, with whoever keeps each vehicle on `day`.
pub async fn list(con: &mut Con, branch: BranchId, span: Span, day: Date) -> Result<Vec<Owed>> {
    Ok(sqlx::query_as::<Db, Owed>(
        "select d.id, d.vehicle_id, d.job_id, d.part_id, d.line, d.kind, d.due_on, d.due_km, d.decided_by, d.source,
             d.is_checked, d.made_at, d.closed_at, d.closed_how, d.closed_note, v.plate, v.make, v.model,
             c.id as keeper_id, coalesce(c.name, '') as keeper_name, coalesce(c.phone, '') as phone,
             coalesce(c.address, '') as address, coalesce(c.mail, '') as mail,
             coalesce(c.mail_state, 'good') as mail_state, coalesce(c.language, 'en') as language,
             coalesce(c.reminder_basis, 'none') as reminder_basis, c.reminder_basis_on
         from duties d
         join vehicles v on v.id = d.vehicle_id
         left join vehicle_people p on p.id = (
             select q.id
             from vehicle_people q
             where q.vehicle_id = d.vehicle_id
               and q.role in ('keeper', 'owner')
               and q.from_on <= $2
               and (q.to_on is null or q.to_on >= $2)
             order by q.role, q.from_on desc, q.id desc
             limit 1)
         left join customers c on c.id = p.customer_id
         where d.branch_id = $1
           and (d.closed_at is null) = $3
           and d.due_on between $4 and $5
         order by d.due_on, d.id",
    )
    .bind(branch)
    .bind(day)
    .bind(span.is_open)
    .bind(span.from)
    .bind(span.to)
    .fetch_all(con)
    .await?)
}

/// Every duty of a vehicle, open or ended, the first due first.
pub async fn list_of_vehicle(con: &mut Con, branch: BranchId, vehicle: VehicleId) -> Result<Vec<Duty>> {
    Ok(sqlx::query_as::<Db, Duty>(
        "select id, vehicle_id, job_id, part_id, line, kind, due_on, due_km, decided_by, source, is_checked, made_at,
             closed_at, closed_how, closed_note
         from duties
         where branch_id = $1
           and vehicle_id = $2
         order by due_on, id",
    )
    .bind(branch)
    .bind(vehicle)
    .fetch_all(con)
    .await?)
}

/// What ends a duty.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct End {
    pub how: ClosedHow,
    /// Document, who, date; or what else is worth remembering.
    pub note: String,
    /// `None`: the program, within a deed on something else.
    pub by: Option<PersonId>,
    /// The job that met it.
    pub job: Option<JobId>,
}

/// Ends a duty. Returns whether it was open.
pub async fn close(con: &mut Con, branch: BranchId, id: DutyId, end: &End, at: OffsetDateTime) -> Result<bool> {
    let done = sqlx::query(
        "update duties
         set closed_at = $3, closed_how = $4, closed_note = $5, closed_by = $6, closed_job_id = $7
         where id = $1
           and branch_id = $2
           and closed_at is null",
    )
    .bind(id)
    .bind(branch)
    .bind(at)
    .bind(end.how)
    .bind(&end.note)
    .bind(end.by)
    .bind(end.job)
    .execute(con)
    .await?;
    Ok(done.rows_affected() == 1)
}

/// Notes an attempt to reach the keeper.
pub async fn insert_call(
    con: &mut Con,
    duty: DutyId,
    outcome: CallOutcome,
    note: &str,
    by: PersonId,
    at: OffsetDateTime,
) -> Result<()> {
    sqlx::query("insert into duty_calls (id, duty_id, outcome, note, person_id, at) values ($1, $2, $3, $4, $5, $6)")
        .bind(DutyId::new())
        .bind(duty)
        .bind(outcome)
        .bind(note)
        .bind(by)
        .bind(at)
        .execute(con)
        .await?;
    Ok(())
}

/// The attempts for every open duty of a branch, the latest first.
pub async fn calls(con: &mut Con, branch: BranchId) -> Result<Vec<DutyCall>> {
    Ok(sqlx::query_as::<Db, DutyCall>(
        "select a.duty_id, a.outcome, a.note, p.name as person_name, a.at
         from duty_calls a
         join duties d on d.id = a.duty_id
         join people p on p.id = a.person_id
         where d.branch_id = $1
           and d.closed_at is null
         order by a.at desc, a.id desc",
    )
    .bind(branch)
    .fetch_all(con)
    .await?)
}
