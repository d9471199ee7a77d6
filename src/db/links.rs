//! Links that open one vehicle to one customer. Of the token only the SHA-256 is kept, as hexadecimal text.

use time::{Date, OffsetDateTime};

use super::{Con, Db, Result};
use crate::model::customer::ReminderBasis;
use crate::model::ids::{BranchId, CustomerId, PaperId, VehicleId};

/// A link: whom it lets see what, and until when.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Link {
    pub branch_id: BranchId,
    pub customer_id: CustomerId,
    pub vehicle_id: VehicleId,
    pub made_at: OffsetDateTime,
    /// The last day on which it opens anything.
    pub expires_on: Date,
    pub ended_at: Option<OffsetDateTime>,
}

fn hex(hash: &[u8; 32]) -> String {
    hash.iter().flat_map(|byte| [byte >> 4, byte & 15]).filter_map(|half| char::from_digit(half.into(), 16)).collect()
}

/// Keeps a link.
pub async fn insert(con: &mut Con, token_hash: &[u8; 32], link: &Link) -> Result<()> {
    sqlx::query(
        "insert into capability_links (token_sha256, branch_id, customer_id, vehicle_id, made_at, expires_on)
         values ($1, $2, $3, $4, $5, $6)",
    )
    .bind(hex(token_hash))
    .bind(link.branch_id)
    .bind(link.customer_id)
    .bind(link.vehicle_id)
    .bind(link.made_at)
    .bind(link.expires_on)
    .execute(con)
    .await?;
    Ok(())
}

/// The link of this token, whether or not it still opens anything: ending reminders works for longer than looking.
pub async fn find(con: &mut Con, token_hash: &[u8; 32]) -> Result<Option<Link>> {
    Ok(sqlx::query_as::<Db, Link>(
        "select branch_id, customer_id, vehicle_id, made_at, expires_on, ended_at
         from capability_links
         where token_sha256 = $1",
    )
    .bind(hex(token_hash))
    .fetch_optional(con)
    .await?)
}

/// Ends every link of a customer to a vehicle. Returns how many were open.
pub async fn end_all(con: &mut Con, customer: CustomerId, vehicle: VehicleId, at: OffsetDateTime) -> Result<u64> {
    let done = sqlx::query(
        "update capability_links
         set ended_at = $3
         where customer_id = $1
           and vehicle_id = $2
           and ended_at is null",
    )
    .bind(customer)
    .bind(vehicle)
    .bind(at)
    .execute(con)
    .await?;
    Ok(done.rows_affected())
}

/// Whether this customer has any role with this vehicle of the branch on `day`.
pub async fn may_have(
    con: &mut Con,
    branch: BranchId,
    customer: CustomerId,
    vehicle: VehicleId,
    day: Date,
) -> Result<bool> {
    let found = sqlx::query_scalar::<Db, i64>(
        "select count(*)
         from vehicle_people p
         join vehicles v on v.id = p.vehicle_id
         where v.branch_id = $1
           and p.customer_id = $2
           and p.vehicle_id = $3
           and p.from_on <= $4
           and (p.to_on is null or p.to_on >= $4)",
    )
    .bind(branch)
    .bind(customer)
    .bind(vehicle)
    .bind(day)
    .fetch_one(con)
    .await?;
    Ok(found > 0)
}

/// Whether the branch knows this vehicle.
pub async fn is_vehicle(con: &mut Con, branch: BranchId, vehicle: VehicleId) -> Result<bool> {
    let found = sqlx::query_scalar::<Db, i64>("select count(*) from vehicles where id = $1 and branch_id = $2")
        .bind(vehicle)
        .bind(branch)
        .fetch_one(con)
        .await?;
    Ok(found > 0)
}

/// What a link's page says of its customer and vehicle.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Own {
    pub name: String,
    pub language: String,
    pub reminder_basis: ReminderBasis,
    pub plate: String,
    pub make: String,
    pub model: String,
}

/// The customer and the vehicle of a link.
pub async fn own(con: &mut Con, link: &Link) -> Result<Option<Own>> {
    Ok(sqlx::query_as::<Db, Own>(
        "select c.name, c.language, c.reminder_basis, v.plate, v.make, v.model
         from customers c
         join vehicles v on v.branch_id = c.branch_id
         where c.id = $1
           and v.id = $2
           and v.branch_id = $3",
    )
    .bind(link.customer_id)
    .bind(link.vehicle_id)
    .bind(link.branch_id)
    .fetch_optional(con)
    .await?)
}

/// A paper as its vehicle's keeper sees it.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct IssuedPaper {
    pub id: PaperId,
    pub kind: String,
    pub number: String,
    pub code: String,
    pub issued_at: OffsetDateTime,
    /// Issued since this person has to do with the vehicle; an older one may name somebody else.
    pub is_own: bool,
}

/// The papers of a link's vehicle, the latest first.
pub async fn papers(con: &mut Con, link: &Link) -> Result<Vec<IssuedPaper>> {
    Ok(sqlx::query_as::<Db, IssuedPaper>(
        "select a.id, a.kind, a.number, a.code, a.issued_at,
             exists (select 1
                     from vehicle_people p
                     where p.vehicle_id = a.vehicle_id
                       and p.customer_id = $3
                       and p.from_on <= substr(a.issued_at, 1, 10)) as is_own
         from papers a
         where a.branch_id = $1
           and a.vehicle_id = $2
         order by a.issued_at desc, a.id desc",
    )
    .bind(link.branch_id)
    .bind(link.vehicle_id)
    .bind(link.customer_id)
    .fetch_all(con)
    .await?)
}
