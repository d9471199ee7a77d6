//! Public keys of all times: what a paper of ten years ago is checked with.

use time::OffsetDateTime;

use super::{Con, Db, Result};

/// A public key of the shop.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct SigningKey {
    /// Id: from the key's own hash.
    pub id: String,
    /// Base64.
    pub public_key: String,
    /// The key that vouched for it.
    pub signed_by: Option<String>,
    /// Since.
    pub in_force_from: OffsetDateTime,
    /// Signatures after this instant are not trusted.
    pub distrusted_after: Option<OffsetDateTime>,
}

/// Every key, oldest first.
pub async fn list(con: &mut Con) -> Result<Vec<SigningKey>> {
    Ok(sqlx::query_as::<Db, SigningKey>(
        "select id, public_key, signed_by, in_force_from, distrusted_after from signing_keys order by in_force_from, id",
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
