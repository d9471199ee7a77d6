//! Which columns of a source are what: said once, remembered for the branch. What stands in the text is for the room of
//! logs to read.

use time::OffsetDateTime;

use super::{Con, Db, Result};
use crate::model::ids::{BranchId, PersonId};

/// What is remembered of a source.
pub async fn find(con: &mut Con, branch: BranchId, source_key: &str) -> Result<Option<String>> {
    Ok(sqlx::query_scalar::<Db, String>(
        "select matched
         from road_matches
         where branch_id = $1
           and source_key = $2",
    )
    .bind(branch)
    .bind(source_key)
    .fetch_optional(con)
    .await?)
}

/// Remembers it, in the place of what was remembered before.
pub async fn save(
    con: &mut Con,
    branch: BranchId,
    (source_key, matched): (&str, &str),
    who: PersonId,
    now: OffsetDateTime,
) -> Result<()> {
    sqlx::query(
        "insert into road_matches (branch_id, source_key, matched, person_id, at)
         values ($1, $2, $3, $4, $5)
         on conflict (branch_id, source_key)
         do update set matched = excluded.matched, person_id = excluded.person_id, at = excluded.at",
    )
    .bind(branch)
    .bind(source_key)
    .bind(matched)
    .bind(who)
    .bind(now)
    .execute(con)
    .await?;
    Ok(())
}
