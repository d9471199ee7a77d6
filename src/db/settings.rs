//! Settings of a branch: a name, a value, and who set it when.

use time::OffsetDateTime;

use super::{Con, Db, Result};
use crate::model::ids::{BranchId, PersonId};

/// One setting.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Setting {
    pub name: String,
    pub value: String,
    pub changed_at: OffsetDateTime,
    pub changed_by: PersonId,
}

/// The setting of this name, if somebody set it.
pub async fn find(con: &mut Con, branch: BranchId, name: &str) -> Result<Option<Setting>> {
    Ok(sqlx::query_as::<Db, Setting>(
        "select name, value, changed_at, changed_by from settings where branch_id = $1 and name = $2",
    )
    .bind(branch)
    .bind(name)
    .fetch_optional(con)
    .await?)
}

/// Everything that was set in a branch.
pub async fn list(con: &mut Con, branch: BranchId) -> Result<Vec<Setting>> {
    Ok(sqlx::query_as::<Db, Setting>(
        "select name, value, changed_at, changed_by from settings where branch_id = $1 order by name",
    )
    .bind(branch)
    .fetch_all(con)
    .await?)
}

/// Sets a value, whether or not there was one.
pub async fn save(con: &mut Con, branch: BranchId, setting: &Setting) -> Result<()> {
    sqlx::query(
        "insert into settings (branch_id, name, value, changed_at, changed_by)
         values ($1, $2, $3, $4, $5)
         on conflict (branch_id, name) do update
         set value = excluded.value, changed_at = excluded.changed_at, changed_by = excluded.changed_by",
    )
    .bind(branch)
    .bind(&setting.name)
    .bind(&setting.value)
    .bind(setting.changed_at)
    .bind(setting.changed_by)
    .execute(con)
    .await?;
    Ok(())
}
