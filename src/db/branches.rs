//! Branches.

use super::{Con, Db, Result, exactly_one};
use crate::model::branch::Branch;
use crate::model::ids::BranchId;

/// The branch with this id.
pub async fn find(con: &mut Con, id: BranchId) -> Result<Option<Branch>> {
    Ok(sqlx::query_as::<Db, Branch>(
        "select id, name, address, phone, mail, licence_number, licence_expires_on, country, time_zone, currency,
             language, paper_size, units, version
         from branches
         where id = $1",
    )
    .bind(id)
    .fetch_optional(con)
    .await?)
}

/// Every branch, by name.
pub async fn list(con: &mut Con) -> Result<Vec<Branch>> {
    Ok(sqlx::query_as::<Db, Branch>(
        "select id, name, address, phone, mail, licence_number, licence_expires_on, country, time_zone, currency,
             language, paper_size, units, version
         from branches
         order by name, id",
    )
    .fetch_all(con)
    .await?)
}

/// Adds a branch.
pub async fn insert(con: &mut Con, branch: &Branch) -> Result<()> {
    sqlx::query(
        "insert into branches (id, name, address, phone, mail, licence_number, licence_expires_on, country, time_zone,
             currency, language, paper_size, units)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13)",
    )
    .bind(branch.id)
    .bind(&branch.name)
    .bind(&branch.address)
    .bind(&branch.phone)
    .bind(&branch.mail)
    .bind(&branch.licence_number)
    .bind(branch.licence_expires_on)
    .bind(&branch.country)
    .bind(&branch.time_zone)
    .bind(&branch.currency)
    .bind(&branch.language)
    .bind(branch.paper_size)
    .bind(branch.units.to_string())
    .execute(con)
    .await?;
    Ok(())
}

/// Saves a branch over the version it was read at.
pub async fn save(con: &mut Con, branch: &Branch) -> Result<()> {
    let done = sqlx::query(
        "update branches
         set name = $3, address = $4, phone = $5, mail = $6, licence_number = $7, licence_expires_on = $8,
             country = $9, time_zone = $10, currency = $11, language = $12, paper_size = $13, units = $14, version = version + 1
         where id = $1
           and version = $2",
    )
    .bind(branch.id)
    .bind(branch.version)
    .bind(&branch.name)
    .bind(&branch.address)
    .bind(&branch.phone)
    .bind(&branch.mail)
    .bind(&branch.licence_number)
    .bind(branch.licence_expires_on)
    .bind(&branch.country)
    .bind(&branch.time_zone)
    .bind(&branch.currency)
    .bind(&branch.language)
    .bind(branch.paper_size)
    .bind(branch.units.to_string())
    .execute(con)
    .await?;
    exactly_one(&done)
}
