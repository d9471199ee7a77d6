//! Notes: what somebody wrote about a customer, a vehicle or a job, and when. A note is never changed.

use time::OffsetDateTime;

use super::{Con, Db, Result};
use crate::model::ids::{BranchId, JobId, NoteId, PersonId};
use crate::model::note::{About, Note};

/// The notes about one thing, the newest first.
pub async fn list(con: &mut Con, branch: BranchId, about: About) -> Result<Vec<Note>> {
    let (customer, vehicle, job) = about.ids();
    Ok(sqlx::query_as::<Db, Note>(
        "select notes.id, notes.text, notes.person_id, people.name as person_name, notes.written_at
         from notes
         join people on people.id = notes.person_id
         where notes.branch_id = $1
           and (notes.customer_id = $2 or notes.vehicle_id = $3 or notes.job_id = $4)
         order by notes.written_at desc, notes.id desc",
    )
    .bind(branch)
    .bind(customer)
    .bind(vehicle)
    .bind(job)
    .fetch_all(con)
    .await?)
}

/// Whether a job is this branch's, so that a note may be written about it.
pub async fn has_job(con: &mut Con, branch: BranchId, job: JobId) -> Result<bool> {
    let count: i64 = sqlx::query_scalar("select count(*) from jobs where id = $1 and branch_id = $2")
        .bind(job)
        .bind(branch)
        .fetch_one(con)
        .await?;
    Ok(count == 1)
}

/// Adds a note.
pub async fn insert(
    con: &mut Con,
    branch: BranchId,
    id: NoteId,
    about: About,
    text: &str,
    by: PersonId,
    at: OffsetDateTime,
) -> Result<()> {
    let (customer, vehicle, job) = about.ids();
    sqlx::query(
        "insert into notes (id, branch_id, customer_id, vehicle_id, job_id, text, person_id, written_at)
         values ($1, $2, $3, $4, $5, $6, $7, $8)",
    )
    .bind(id)
    .bind(branch)
    .bind(customer)
    .bind(vehicle)
    .bind(job)
    .bind(text)
    .bind(by)
    .bind(at)
    .execute(con)
    .await?;
    Ok(())
}
