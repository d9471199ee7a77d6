//! Number series without gaps: the next number is taken inside the transaction that uses it, so it is used or was
//! never taken.

use super::{Con, Db, Result};
use crate::model::ids::BranchId;

/// Takes the next number of a series, from 1.
pub async fn take(con: &mut Con, branch: BranchId, series: &str) -> Result<i64> {
    Ok(sqlx::query_scalar::<Db, i64>(
        "insert into number_series (branch_id, series, next)
         values ($1, $2, 2)
         on conflict (branch_id, series) do update set next = number_series.next + 1
         returning next - 1",
    )
    .bind(branch)
    .bind(series)
    .fetch_one(con)
    .await?)
}

/// The number that [`take`] would give.
pub async fn peek(con: &mut Con, branch: BranchId, series: &str) -> Result<i64> {
    let next = sqlx::query_scalar::<Db, i64>("select next from number_series where branch_id = $1 and series = $2")
        .bind(branch)
        .bind(series)
        .fetch_optional(con)
        .await?;
    Ok(next.unwrap_or(1))
}
