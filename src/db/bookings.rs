//! Bookings: times held in a bay.

use time::OffsetDateTime;

use super::{Con, Db, Result, exactly_one};
use crate::model::booking::{Booking, BookingState, NewBooking};
use crate::model::ids::{BayId, BookingId, BranchId, JobId, PersonId};

/// The booking with this id.
pub async fn find(con: &mut Con, branch: BranchId, id: BookingId) -> Result<Option<Booking>> {
    Ok(sqlx::query_as::<Db, Booking>(
        "select id, bay_id, starts_at, ends_at, name, phone, plate, job_kind, note, state, doubled_reason, job_id,
             version
         from bookings
         where id = $1
           and branch_id = $2",
    )
    .bind(id)
    .bind(branch)
    .fetch_optional(con)
    .await?)
}

/// Bookings that touch the time from `from` to before `to`, in order.
pub async fn list(con: &mut Con, branch: BranchId, from: OffsetDateTime, to: OffsetDateTime) -> Result<Vec<Booking>> {
    Ok(sqlx::query_as::<Db, Booking>(
        "select id, bay_id, starts_at, ends_at, name, phone, plate, job_kind, note, state, doubled_reason, job_id,
             version
         from bookings
         where branch_id = $1
           and starts_at < $3
           and ends_at > $2
         order by starts_at, id",
    )
    .bind(branch)
    .bind(from)
    .bind(to)
    .fetch_all(con)
    .await?)
}

/// Bookings still to come of vehicles in this bay after `from`: those that a bay out of use would hit.
pub async fn list_of_bay(con: &mut Con, branch: BranchId, bay: BayId, from: OffsetDateTime) -> Result<Vec<Booking>> {
    Ok(sqlx::query_as::<Db, Booking>(
        "select id, bay_id, starts_at, ends_at, name, phone, plate, job_kind, note, state, doubled_reason, job_id,
             version
         from bookings
         where branch_id = $1
           and bay_id = $2
           and ends_at > $3
           and state = 'expected'
         order by starts_at, id",
    )
    .bind(branch)
    .bind(bay)
    .bind(from)
    .fetch_all(con)
    .await?)
}

/// Bookings that hold the bay at some moment of that time, called-off ones and `except` aside.
pub async fn list_in_the_way(
    con: &mut Con,
    branch: BranchId,
    new: &NewBooking,
    except: Option<BookingId>,
) -> Result<Vec<Booking>> {
    Ok(sqlx::query_as::<Db, Booking>(
        "select id, bay_id, starts_at, ends_at, name, phone, plate, job_kind, note, state, doubled_reason, job_id,
             version
         from bookings
         where branch_id = $1
           and bay_id = $2
           and starts_at < $4
           and ends_at > $3
           and state in ('expected', 'arrived')
           and ($5 is null or id <> $5)
         order by starts_at, id",
    )
    .bind(branch)
    .bind(new.bay_id)
    .bind(new.starts_at)
    .bind(new.ends_at)
    .bind(except)
    .fetch_all(con)
    .await?)
}

/// Adds a booking, expected.
pub async fn insert(
    con: &mut Con,
    branch: BranchId,
    id: BookingId,
    new: &NewBooking,
    by: PersonId,
    at: OffsetDateTime,
) -> Result<()> {
    sqlx::query(
        "insert into bookings (id, branch_id, bay_id, starts_at, ends_at, name, phone, plate, job_kind, note,
             doubled_reason, made_by, made_at)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13)",
    )
    .bind(id)
    .bind(branch)
    .bind(new.bay_id)
    .bind(new.starts_at)
    .bind(new.ends_at)
    .bind(&new.name)
    .bind(&new.phone)
    .bind(&new.plate)
    .bind(new.job_kind)
    .bind(&new.note)
    .bind(&new.doubled_reason)
    .bind(by)
    .bind(at)
    .execute(con)
    .await?;
    Ok(())
}

/// Saves a booking over the version it was read at.
pub async fn save(con: &mut Con, branch: BranchId, id: BookingId, version: i64, new: &NewBooking) -> Result<()> {
    let done = sqlx::query(
        "update bookings
         set bay_id = $4, starts_at = $5, ends_at = $6, name = $7, phone = $8, plate = $9, job_kind = $10, note = $11,
             doubled_reason = $12, version = version + 1
         where id = $1
           and branch_id = $2
           and version = $3",
    )
    .bind(id)
    .bind(branch)
    .bind(version)
    .bind(new.bay_id)
    .bind(new.starts_at)
    .bind(new.ends_at)
    .bind(&new.name)
    .bind(&new.phone)
    .bind(&new.plate)
    .bind(new.job_kind)
    .bind(&new.note)
    .bind(&new.doubled_reason)
    .execute(con)
    .await?;
    exactly_one(&done)
}

/// Says what became of a booking, over the version it was read at.
pub async fn save_state(
    con: &mut Con,
    branch: BranchId,
    id: BookingId,
    version: i64,
    state: BookingState,
    job: Option<JobId>,
) -> Result<()> {
    let done = sqlx::query(
        "update bookings
         set state = $4, job_id = $5, version = version + 1
         where id = $1
           and branch_id = $2
           and version = $3",
    )
    .bind(id)
    .bind(branch)
    .bind(version)
    .bind(state)
    .bind(job)
    .execute(con)
    .await?;
    exactly_one(&done)
}
