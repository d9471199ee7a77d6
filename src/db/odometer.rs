//! Odometer readings. A reading is never changed: a wrong one is explained by the next.

use time::OffsetDateTime;

use super::{Con, Db, Result};
use crate::model::ids::{JobId, PersonId, VehicleId};
use crate::model::vehicle::OdometerReading;

/// Every reading of a vehicle in the order of days; on one day, in the order of entry.
pub async fn list(con: &mut Con, vehicle: VehicleId) -> Result<Vec<OdometerReading>> {
    Ok(sqlx::query_as::<Db, OdometerReading>(
        "select read_on, km, typed, explained
         from odometer_readings
         where vehicle_id = $1
         order by read_on, recorded_at, id",
    )
    .bind(vehicle)
    .fetch_all(con)
    .await?)
}

/// The reading of the latest day.
pub async fn last(con: &mut Con, vehicle: VehicleId) -> Result<Option<OdometerReading>> {
    Ok(sqlx::query_as::<Db, OdometerReading>(
        "select read_on, km, typed, explained
         from odometer_readings
         where vehicle_id = $1
         order by read_on desc, recorded_at desc, id desc
         limit 1",
    )
    .bind(vehicle)
    .fetch_optional(con)
    .await?)
}

/// Adds a reading.
pub async fn insert(
    con: &mut Con,
    vehicle: VehicleId,
    job: Option<JobId>,
    reading: &OdometerReading,
    by: PersonId,
    at: OffsetDateTime,
) -> Result<()> {
    sqlx::query(
        "insert into odometer_readings (id, vehicle_id, job_id, read_on, km, typed, explained, person_id, recorded_at)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9)",
    )
    .bind(uuid::Uuid::now_v7().to_string())
    .bind(vehicle)
    .bind(job)
    .bind(reading.read_on)
    .bind(reading.km)
    .bind(&reading.typed)
    .bind(reading.explained)
    .bind(by)
    .bind(at)
    .execute(con)
    .await?;
    Ok(())
}
