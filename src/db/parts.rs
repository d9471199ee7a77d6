//! Parts on vehicles, now and once.

use time::{Date, OffsetDateTime};

use super::{Con, Db, Result, exactly_one};
use crate::model::ids::{BranchId, JobId, PartId, PersonId, VehicleId};
use crate::model::part::{NewPart, Part, PartCategory};

/// The part with this id.
pub async fn find(con: &mut Con, branch: BranchId, id: PartId) -> Result<Option<Part>> {
    Ok(sqlx::query_as::<Db, Part>(
        "select id, vehicle_id, fitted_in, removed_in, category, maker, type_name, approval_mark, component_class,
             serial, batch, made_on, made_precision, capacity_l, test_pressure_kpa, working_pressure_kpa, last_tested_on,
             end_of_life_on, place, fitted_on, origin, removed_on, removed_reason, whereabouts, shared_reason, entered_by, entered_at, version
         from parts
         where id = $1
           and branch_id = $2",
    )
    .bind(id)
    .bind(branch)
    .fetch_optional(con)
    .await?)
}

/// Every part a vehicle carries or carried, in the order of the list of kinds.
pub async fn list_of_vehicle(con: &mut Con, branch: BranchId, vehicle: VehicleId) -> Result<Vec<Part>> {
    Ok(sqlx::query_as::<Db, Part>(
        "select id, vehicle_id, fitted_in, removed_in, category, maker, type_name, approval_mark, component_class,
             serial, batch, made_on, made_precision, capacity_l, test_pressure_kpa, working_pressure_kpa, last_tested_on,
             end_of_life_on, place, fitted_on, origin, removed_on, removed_reason, whereabouts, shared_reason, entered_by, entered_at, version
         from parts
         where vehicle_id = $1
           and branch_id = $2
         order by entered_at, id",
    )
    .bind(vehicle)
    .bind(branch)
    .fetch_all(con)
    .await?)
}

/// Parts of one kind that are fitted to any vehicle of the branch and carry a serial: where a doubled one is looked for.
pub async fn list_fitted_with_serial(con: &mut Con, branch: BranchId, category: PartCategory) -> Result<Vec<Part>> {
    Ok(sqlx::query_as::<Db, Part>(
        "select id, vehicle_id, fitted_in, removed_in, category, maker, type_name, approval_mark, component_class,
             serial, batch, made_on, made_precision, capacity_l, test_pressure_kpa, working_pressure_kpa, last_tested_on,
             end_of_life_on, place, fitted_on, origin, removed_on, removed_reason, whereabouts, shared_reason, entered_by, entered_at, version
         from parts
         where branch_id = $1
           and category = $2
           and removed_on is null
           and serial <> ''",
    )
    .bind(branch)
    .bind(category)
    .fetch_all(con)
    .await?)
}

/// A signatory's word that a part shares mark and serial with another.
#[derive(Debug, Clone)]
pub struct Shared {
    pub reason: String,
    pub by: PersonId,
}

/// Writes a fitted part down.
pub async fn insert(
    con: &mut Con,
    branch: BranchId,
    (vehicle, job): (VehicleId, JobId),
    part: &NewPart,
    shared: Option<&Shared>,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<PartId> {
    let id = PartId::new();
    sqlx::query(
        "insert into parts (id, branch_id, vehicle_id, fitted_in, category, maker, type_name, approval_mark,
             component_class, serial, batch, made_on, made_precision, capacity_l, test_pressure_kpa, place, fitted_on,
             shared_reason, shared_by, entered_by, entered_at, working_pressure_kpa, last_tested_on, end_of_life_on, origin)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16, $17, $18, $19, $20, $21, $22, $23,
             $24, $25)",
    )
    .bind(id)
    .bind(branch)
    .bind(vehicle)
    .bind(job)
    .bind(part.category)
    .bind(&part.maker)
    .bind(&part.type_name)
    .bind(&part.approval_mark)
    .bind(&part.component_class)
    .bind(&part.serial)
    .bind(&part.batch)
    .bind(part.made_on)
    .bind(part.made_precision)
    .bind(part.capacity_l)
    .bind(part.test_pressure_kpa)
    .bind(&part.place)
    .bind(part.fitted_on)
    .bind(shared.map_or("", |shared| shared.reason.as_str()))
    .bind(shared.map(|shared| shared.by))
    .bind(who)
    .bind(now)
    .bind(part.working_pressure_kpa)
    .bind(part.last_tested_on)
    .bind(part.end_of_life_on)
    .bind(part.origin)
    .execute(con)
    .await?;
    Ok(id)
}

/// Saves what is written on a part, over the version it was read at.
pub async fn save(con: &mut Con, id: PartId, version: i64, part: &NewPart) -> Result<()> {
    let done = sqlx::query(
        "update parts
         set category = $3, maker = $4, type_name = $5, approval_mark = $6, component_class = $7, serial = $8,
             batch = $9, made_on = $10, made_precision = $11, capacity_l = $12, test_pressure_kpa = $13, place = $14,
             fitted_on = $15, working_pressure_kpa = $16, last_tested_on = $17, end_of_life_on = $18, origin = $19,
             version = version + 1
         where id = $1
           and version = $2
           and removed_on is null",
    )
    .bind(id)
    .bind(version)
    .bind(part.category)
    .bind(&part.maker)
    .bind(&part.type_name)
    .bind(&part.approval_mark)
    .bind(&part.component_class)
    .bind(&part.serial)
    .bind(&part.batch)
    .bind(part.made_on)
    .bind(part.made_precision)
    .bind(part.capacity_l)
    .bind(part.test_pressure_kpa)
    .bind(&part.place)
    .bind(part.fitted_on)
    .bind(part.working_pressure_kpa)
    .bind(part.last_tested_on)
    .bind(part.end_of_life_on)
    .bind(part.origin)
    .execute(con)
    .await?;
    exactly_one(&done)
}

/// Why a part is taken off, and where it goes.
#[derive(Debug, Clone, Default)]
pub struct Removal {
    pub reason: String,
    pub whereabouts: String,
}

/// Takes a part off its vehicle, in a job.
pub async fn save_removal(con: &mut Con, part: &Part, job: JobId, on: Date, removal: &Removal) -> Result<()> {
    let done = sqlx::query(
        "update parts
         set removed_in = $3, removed_on = $4, removed_reason = $5, whereabouts = $6, version = version + 1
         where id = $1
           and version = $2
           and removed_on is null",
    )
    .bind(part.id)
    .bind(part.version)
    .bind(job)
    .bind(on)
    .bind(&removal.reason)
    .bind(&removal.whereabouts)
    .execute(con)
    .await?;
    exactly_one(&done)
}
