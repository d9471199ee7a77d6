//! The shop's own rule lines, and files in the place of shipped sets: every version ever put in force.

use time::{Date, OffsetDateTime};

use super::{Con, Db, Result};
use crate::model::ids::{BranchId, PersonId};

/// One version of a rule file.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct RuleFile {
    /// Name for ever.
    pub id: String,
    /// Name of the set: "shop".
    pub name: String,
    pub text: String,
    /// SHA-256 of the text, hexadecimal.
    pub sha256: String,
    /// First day in force.
    pub from_on: Date,
    pub person_id: PersonId,
    /// Who stood behind a looser line beside the writer.
    pub second_person_id: Option<PersonId>,
    pub recorded_at: OffsetDateTime,
}

/// The version in force on a day: of those that begin by then, the one with the latest beginning; of two with the same
/// beginning, the one written later.
pub async fn find_in_force(con: &mut Con, branch: BranchId, name: &str, on: Date) -> Result<Option<RuleFile>> {
    Ok(sqlx::query_as::<Db, RuleFile>(
        "select id, name, text, sha256, from_on, person_id, second_person_id, recorded_at
         from rule_files
         where branch_id = $1
           and name = $2
           and from_on <= $3
         order by from_on desc, recorded_at desc, id desc
         limit 1",
    )
    .bind(branch)
    .bind(name)
    .bind(on)
    .fetch_optional(con)
    .await?)
}

/// Every version, the latest written first.
pub async fn list(con: &mut Con, branch: BranchId, name: &str) -> Result<Vec<RuleFile>> {
    Ok(sqlx::query_as::<Db, RuleFile>(
        "select id, name, text, sha256, from_on, person_id, second_person_id, recorded_at
         from rule_files
         where branch_id = $1
           and name = $2
         order by recorded_at desc, id desc",
    )
    .bind(branch)
    .bind(name)
    .fetch_all(con)
    .await?)
}

/// Adds a version.
pub async fn insert(con: &mut Con, branch: BranchId, file: &RuleFile) -> Result<()> {
    sqlx::query(
        "insert into rule_files (id, branch_id, name, text, sha256, from_on, person_id, second_person_id,
             recorded_at)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9)",
    )
    .bind(&file.id)
    .bind(branch)
    .bind(&file.name)
    .bind(&file.text)
    .bind(&file.sha256)
    .bind(file.from_on)
    .bind(file.person_id)
    .bind(file.second_person_id)
    .bind(file.recorded_at)
    .execute(con)
    .await?;
    Ok(())
}
