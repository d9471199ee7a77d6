//! The codes on vehicle labels, each of which opens the public page of its vehicle.

use time::OffsetDateTime;

use super::{Con, Db, Result};
use crate::model::ids::{BranchId, PersonId, VehicleId};

/// What the public page says of a vehicle: nothing that names anybody.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Labelled {
    pub branch_id: BranchId,
    pub vehicle_id: VehicleId,
    pub make: String,
    pub vin: String,
    pub chassis_number: String,
}

/// Keeps the code of a vehicle.
pub async fn insert(
    con: &mut Con,
    branch: BranchId,
    vehicle: VehicleId,
    code: &str,
    by: PersonId,
    at: OffsetDateTime,
) -> Result<()> {
    sqlx::query(
        "insert into vehicle_labels (code, branch_id, vehicle_id, made_at, made_by)
         values ($1, $2, $3, $4, $5)",
    )
    .bind(code)
    .bind(branch)
    .bind(vehicle)
    .bind(at)
    .bind(by)
    .execute(con)
    .await?;
    Ok(())
}

/// The code of a vehicle, if its label was ever made.
pub async fn find_of_vehicle(con: &mut Con, branch: BranchId, vehicle: VehicleId) -> Result<Option<String>> {
    Ok(sqlx::query_scalar("select code from vehicle_labels where branch_id = $1 and vehicle_id = $2")
        .bind(branch)
        .bind(vehicle)
        .fetch_optional(con)
        .await?)
}

/// The vehicle behind a code.
pub async fn find_by_code(con: &mut Con, code: &str) -> Result<Option<Labelled>> {
    Ok(sqlx::query_as::<Db, Labelled>(
        "select vehicle_labels.branch_id, vehicle_labels.vehicle_id, vehicles.make, vehicles.vin,
             vehicles.chassis_number
         from vehicle_labels
         join vehicles on vehicles.id = vehicle_labels.vehicle_id
         where vehicle_labels.code = $1",
    )
    .bind(code)
    .fetch_optional(con)
    .await?)
}
