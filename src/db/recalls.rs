//! Recalls of parts, and the letters that went out by them.

use time::OffsetDateTime;

use super::{Con, Db, Result};
use crate::model::ids::{BranchId, MessageId, PartId, PersonId, RecallId, VehicleId};
use crate::model::recall::{NewRecall, Recall};

/// The recall with this id.
pub async fn find(con: &mut Con, branch: BranchId, id: RecallId) -> Result<Option<Recall>> {
    Ok(sqlx::query_as::<Db, Recall>(
        "select id, branch_id, recalled_by, document, dated_on, category, maker, type_name, batch, serial_from, serial_to,
             remedy, recorded_by, recorded_at
         from recalls
         where id = $1
           and branch_id = $2",
    )
    .bind(id)
    .bind(branch)
    .fetch_optional(con)
    .await?)
}

/// Every recall of a branch, oldest first. One ends part by part ([`is_settled`]), whatever became of its finding.
pub async fn list(con: &mut Con, branch: BranchId) -> Result<Vec<Recall>> {
    Ok(sqlx::query_as::<Db, Recall>(
        "select id, branch_id, recalled_by, document, dated_on, category, maker, type_name, batch, serial_from, serial_to,
             remedy, recorded_by, recorded_at
         from recalls
         where branch_id = $1
         order by recorded_at, id",
    )
    .bind(branch)
    .fetch_all(con)
    .await?)
}

/// Whether what the recall asks of a part was done: its duty is closed.
pub async fn is_settled(con: &mut Con, id: RecallId, part: PartId) -> Result<bool> {
    let closed: i64 = sqlx::query_scalar::<Db, i64>(
        "select count(*) from duties where line = 'recall-' || $1 and part_id = $2 and closed_at is not null",
    )
    .bind(id)
    .bind(part)
    .fetch_one(con)
    .await?;
    Ok(closed > 0)
}

/// Writes a recall down.
pub async fn insert(
    con: &mut Con,
    branch: BranchId,
    new: &NewRecall,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<RecallId> {
    let id = RecallId::new();
    sqlx::query(
        "insert into recalls (id, branch_id, recalled_by, document, dated_on, category, maker, type_name, batch,
             serial_from, serial_to, remedy, recorded_by, recorded_at)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14)",
    )
    .bind(id)
    .bind(branch)
    .bind(&new.recalled_by)
    .bind(&new.document)
    .bind(new.dated_on)
    .bind(new.category)
    .bind(&new.maker)
    .bind(&new.type_name)
    .bind(&new.batch)
    .bind(&new.serial_from)
    .bind(&new.serial_to)
    .bind(&new.remedy)
    .bind(who)
    .bind(now)
    .execute(con)
    .await?;
    Ok(id)
}

/// The letters of a recall, by vehicle.
pub async fn list_letters(con: &mut Con, id: RecallId) -> Result<Vec<(VehicleId, MessageId)>> {
    Ok(sqlx::query_as::<Db, (VehicleId, MessageId)>(
        "select vehicle_id, message_id from recall_letters where recall_id = $1 order by vehicle_id",
    )
    .bind(id)
    .fetch_all(con)
    .await?)
}

/// Remembers that a vehicle's keeper was written to.
pub async fn insert_letter(con: &mut Con, id: RecallId, vehicle: VehicleId, message: MessageId) -> Result<()> {
    sqlx::query("insert into recall_letters (recall_id, vehicle_id, message_id) values ($1, $2, $3)")
        .bind(id)
        .bind(vehicle)
        .bind(message)
        .execute(con)
        .await?;
    Ok(())
}
