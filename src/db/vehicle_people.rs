//! Who stands behind a vehicle on which day: owner, keeper, payer, contact.

use time::{Date, OffsetDateTime};

use super::{Con, Db, Result};
use crate::model::ids::{BranchId, CustomerId, VehicleId};
use crate::model::vehicle::{VehiclePerson, VehicleRole};

/// A role as a vehicle's page shows it.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Standing {
    pub customer_id: CustomerId,
    pub name: String,
    pub phone: String,
    pub role: VehicleRole,
    pub from_on: Date,
    /// `None`: still.
    pub to_on: Option<Date>,
}

/// A role as a customer's page shows it.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Behind {
    pub vehicle_id: VehicleId,
    pub plate: String,
    pub make: String,
    pub model: String,
    pub role: VehicleRole,
    pub from_on: Date,
    pub to_on: Option<Date>,
}

/// Everybody who stands, or stood, behind a vehicle; those of today first.
pub async fn list(con: &mut Con, branch: BranchId, vehicle: VehicleId) -> Result<Vec<Standing>> {
    Ok(sqlx::query_as::<Db, Standing>(
        "select customers.id as customer_id, customers.name, customers.phone, vehicle_people.role,
             vehicle_people.from_on, vehicle_people.to_on
         from vehicle_people
         join customers on customers.id = vehicle_people.customer_id
         where vehicle_people.vehicle_id = $1
           and customers.branch_id = $2
         order by vehicle_people.to_on is not null, vehicle_people.role, vehicle_people.from_on desc, vehicle_people.id",
    )
    .bind(vehicle)
    .bind(branch)
    .fetch_all(con)
    .await?)
}

/// The vehicles behind which a customer stands or stood; those of today first.
pub async fn list_of(con: &mut Con, branch: BranchId, customer: CustomerId) -> Result<Vec<Behind>> {
    Ok(sqlx::query_as::<Db, Behind>(
        "select vehicles.id as vehicle_id, vehicles.plate, vehicles.make, vehicles.model, vehicle_people.role,
             vehicle_people.from_on, vehicle_people.to_on
         from vehicle_people
         join vehicles on vehicles.id = vehicle_people.vehicle_id
         where vehicle_people.customer_id = $1
           and vehicles.branch_id = $2
         order by vehicle_people.to_on is not null, vehicles.plate, vehicle_people.role, vehicle_people.id",
    )
    .bind(customer)
    .bind(branch)
    .fetch_all(con)
    .await?)
}

/// Who keeps a vehicle now; reminders go there.
pub async fn keeper(con: &mut Con, vehicle: VehicleId) -> Result<Option<CustomerId>> {
    Ok(sqlx::query_scalar(
        "select customer_id
         from vehicle_people
         where vehicle_id = $1
           and role = 'keeper'
           and to_on is null",
    )
    .bind(vehicle)
    .fetch_optional(con)
    .await?)
}

/// Adds a role.
pub async fn insert(con: &mut Con, one: &VehiclePerson) -> Result<()> {
    sqlx::query(
        "insert into vehicle_people (id, vehicle_id, customer_id, role, from_on, to_on)
         values ($1, $2, $3, $4, $5, $6)",
    )
    .bind(uuid::Uuid::now_v7().to_string())
    .bind(one.vehicle_id)
    .bind(one.customer_id)
    .bind(one.role)
    .bind(one.from_on)
    .bind(one.to_on)
    .execute(con)
    .await?;
    Ok(())
}

/// The open row of a role, if somebody holds it.
pub async fn open(con: &mut Con, vehicle: VehicleId, role: VehicleRole) -> Result<Option<VehiclePerson>> {
    Ok(sqlx::query_as::<Db, VehiclePerson>(
        "select vehicle_id, customer_id, role, from_on, to_on
         from vehicle_people
         where vehicle_id = $1
           and role = $2
           and to_on is null",
    )
    .bind(vehicle)
    .bind(role)
    .fetch_optional(con)
    .await?)
}

/// Ends the open row of a role; `on` is its last day. Returns whether there was one.
pub async fn end(con: &mut Con, vehicle: VehicleId, role: VehicleRole, on: Date) -> Result<bool> {
    let done =
        sqlx::query("update vehicle_people set to_on = $3 where vehicle_id = $1 and role = $2 and to_on is null")
            .bind(vehicle)
            .bind(role)
            .bind(on)
            .execute(con)
            .await?;
    Ok(done.rows_affected() > 0)
}

/// Ends the links by which a customer sees this vehicle, unless a role still ties them to it.
pub async fn end_links_of_strangers(
    con: &mut Con,
    vehicle: VehicleId,
    customer: CustomerId,
    at: OffsetDateTime,
) -> Result<()> {
    sqlx::query(
        "update capability_links
         set ended_at = $3
         where vehicle_id = $1
           and customer_id = $2
           and ended_at is null
           and not exists (
               select 1 from vehicle_people where vehicle_id = $1 and customer_id = $2 and to_on is null)",
    )
    .bind(vehicle)
    .bind(customer)
    .bind(at)
    .execute(con)
    .await?;
    Ok(())
}
