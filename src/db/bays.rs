//! Bays: where a vehicle is worked on.

use time::Date;

use super::{Con, Db, Result, exactly_one};
use crate::model::booking::Bay;
use crate::model::ids::{BayId, BranchId};

/// The bay with this id, in use or not.
pub async fn find(con: &mut Con, branch: BranchId, id: BayId) -> Result<Option<Bay>> {
    Ok(sqlx::query_as::<Db, Bay>("select id, name from bays where id = $1 and branch_id = $2")
        .bind(id)
        .bind(branch)
        .fetch_optional(con)
        .await?)
}

/// The bays in use on `day`, by name.
pub async fn list(con: &mut Con, branch: BranchId, day: Date) -> Result<Vec<Bay>> {
    Ok(sqlx::query_as::<Db, Bay>(
        "select id, name
         from bays
         where branch_id = $1
           and (ended_on is null or ended_on > $2)
         order by name, id",
    )
    .bind(branch)
    .bind(day)
    .fetch_all(con)
    .await?)
}

/// Adds a bay.
pub async fn insert(con: &mut Con, branch: BranchId, bay: &Bay) -> Result<()> {
    sqlx::query("insert into bays (id, branch_id, name) values ($1, $2, $3)")
        .bind(bay.id)
        .bind(branch)
        .bind(&bay.name)
        .execute(con)
        .await?;
    Ok(())
}

/// Saves a bay's name.
pub async fn save(con: &mut Con, branch: BranchId, bay: &Bay) -> Result<()> {
    let done = sqlx::query("update bays set name = $3 where id = $1 and branch_id = $2")
        .bind(bay.id)
        .bind(branch)
        .bind(&bay.name)
        .execute(con)
        .await?;
    exactly_one(&done)
}

/// Takes a bay out of use; `on` is the first day without it.
pub async fn end(con: &mut Con, branch: BranchId, id: BayId, on: Date) -> Result<()> {
    let done = sqlx::query("update bays set ended_on = $3 where id = $1 and branch_id = $2 and ended_on is null")
        .bind(id)
        .bind(branch)
        .bind(on)
        .execute(con)
        .await?;
    exactly_one(&done)
}
