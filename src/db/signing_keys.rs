//! Public keys of all times: what a paper of ten years ago is checked with.

use time::OffsetDateTime;

use super::{Con, Db, Result, exactly_one};

/// A public key of the shop.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct SigningKey {
    /// Id: from the key's own hash.
    pub id: String,
    /// Base64.
    pub public_key: String,
    /// The key that vouched for it.
    pub signed_by: Option<String>,
    /// The signed statement by which it did, as JSON; empty for a first key.
    pub endorsement: String,
    /// Since.
    pub in_force_from: OffsetDateTime,
    /// Signatures after this instant are not trusted.
    pub distrusted_after: Option<OffsetDateTime>,
}

/// Every key, oldest first.
pub async fn list(con: &mut Con) -> Result<Vec<SigningKey>> {
    Ok(sqlx::query_as::<Db, SigningKey>(
        "select id, public_key, signed_by, endorsement, in_force_from, distrusted_after from signing_keys order by in_force_from, id",
    )
    .fetch_all(con)
    .await?)
}

/// Remembers a key; one that is known stays as it is.
pub async fn insert(con: &mut Con, id: &str, public_key: &str, now: OffsetDateTime) -> Result<()> {
    sqlx::query(
        "insert into signing_keys (id, public_key, in_force_from) values ($1, $2, $3) on conflict (id) do nothing",
    )
    .bind(id)
    .bind(public_key)
    .bind(now)
    .execute(con)
    .await?;
    Ok(())
}

/// Remembers a key that another vouched for: that key's id and the signed statement.
pub async fn insert_introduced(
    con: &mut Con,
    id: &str,
    public_key: &str,
    (signed_by, endorsement): (&str, &str),
    now: OffsetDateTime,
) -> Result<()> {
    let done = sqlx::query(
        "insert into signing_keys (id, public_key, signed_by, endorsement, in_force_from) values ($1, $2, $3, $4, $5)",
    )
    .bind(id)
    .bind(public_key)
    .bind(signed_by)
    .bind(endorsement)
    .bind(now)
    .execute(con)
    .await?;
    exactly_one(&done)
}

/// Marks a key as not trusted after an instant; an earlier mark stays.
pub async fn distrust(con: &mut Con, id: &str, after: OffsetDateTime) -> Result<()> {
    let done = sqlx::query(
        "update signing_keys
         set distrusted_after = case when distrusted_after < $2 then distrusted_after else $2 end
         where id = $1",
    )
    .bind(id)
    .bind(after)
    .execute(con)
    .await?;
    exactly_one(&done)
}
