//! The store as a whole: what a self-check asks, and what a backup counts.

use time::OffsetDateTime;

use super::{Con, Db, Result};
use crate::model::ids::BranchId;

/// How this connection stands to the file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Settings {
    /// Version of the library.
    pub library: String,
    /// How changes are kept until they are folded in (`wal`).
    pub journal: String,
    /// Whether references are enforced.
    pub has_foreign_keys: bool,
    /// The last step of the schema that the file took.
    pub step: i64,
}

/// A series of numbers: whose, its name, the number that comes next.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Series {
    /// Branch.
    pub branch_id: BranchId,
    /// Name of the series.
    pub series: String,
    /// The number that comes next.
    pub next: i64,
}

/// Reads the settings in force.
pub async fn settings(con: &mut Con) -> Result<Settings> {
    let library = sqlx::query_scalar::<Db, String>("select sqlite_version()").fetch_one(&mut *con).await?;
    let journal = sqlx::query_scalar::<Db, String>("pragma journal_mode").fetch_one(&mut *con).await?;
    let keys = sqlx::query_scalar::<Db, i64>("pragma foreign_keys").fetch_one(&mut *con).await?;
    let step =
        sqlx::query_scalar::<Db, Option<i64>>("select max(version) from _sqlx_migrations").fetch_one(con).await?;
    Ok(Settings { library, journal, has_foreign_keys: keys == 1, step: step.unwrap_or(0) })
}

/// What the engine finds wrong with its file; empty when it is sound.
pub async fn integrity(con: &mut Con) -> Result<Vec<String>> {
    let said = sqlx::query_scalar::<Db, String>("pragma integrity_check").fetch_all(con).await?;
    Ok(said.into_iter().filter(|line| line != "ok").collect())
}

/// Rows that refer to a row that is not there, as "table row -> table".
pub async fn lost_references(con: &mut Con) -> Result<Vec<String>> {
    let rows =
        sqlx::query_as::<Db, (String, Option<i64>, String, i64)>("pragma foreign_key_check").fetch_all(con).await?;
    let line = |(table, row, parent, _): (String, Option<i64>, String, i64)| {
        format!("{table} row {} -> {parent}", row.unwrap_or(0))
    };
    Ok(rows.into_iter().map(line).collect())
}

/// Every series of numbers.
pub async fn series(con: &mut Con) -> Result<Vec<Series>> {
    Ok(sqlx::query_as::<Db, Series>("select branch_id, series, next from number_series order by branch_id, series")
        .fetch_all(con)
        .await?)
}

/// When the last line of the log was written.
pub async fn last_deed_at(con: &mut Con) -> Result<Option<OffsetDateTime>> {
    Ok(sqlx::query_scalar::<Db, OffsetDateTime>("select at from audit order by sequence desc limit 1")
        .fetch_optional(con)
        .await?)
}

/// Every checksum that an issued paper names, each once.
pub async fn paper_checksums(con: &mut Con) -> Result<Vec<String>> {
    Ok(sqlx::query_scalar::<Db, String>("select distinct pdf_sha256 from papers order by pdf_sha256")
        .fetch_all(con)
        .await?)
}

/// Every table of the shop with the number of its rows, by name.
pub async fn counts(con: &mut Con) -> Result<Vec<(String, i64)>> {
    let names = sqlx::query_scalar::<Db, String>(
        "select name from sqlite_master where type = 'table' and name not like 'sqlite%' order by name",
    )
    .fetch_all(&mut *con)
    .await?;
    let mut counts = Vec::with_capacity(names.len());
    for name in names {
        // The name comes from the schema; what is not a plain word is none of ours.
        if !name.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'_') {
            continue;
        }
        let text = sqlx::AssertSqlSafe(format!("select count(*) from \"{name}\""));
        let count = sqlx::query_scalar::<Db, i64>(text).fetch_one(&mut *con).await?;
        counts.push((name, count));
    }
    Ok(counts)
}
