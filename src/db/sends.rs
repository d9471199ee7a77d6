//! What was sent once and must not count twice: the key a form carries, and the answer its first arrival got.

use time::OffsetDateTime;
use uuid::Uuid;

use super::{Con, Db, Result};

/// An earlier arrival.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Send {
    pub deed: String,
    /// The answer as JSON.
    pub answer: String,
}

/// What this actor's key was answered with, if it came before.
pub async fn find(con: &mut Con, actor: &str, key: Uuid) -> Result<Option<Send>> {
    Ok(sqlx::query_as::<Db, Send>("select deed, answer from sends where actor = $1 and key = $2")
        .bind(actor)
        .bind(key.to_string())
        .fetch_optional(con)
        .await?)
}

/// Remembers an answer.
pub async fn insert(con: &mut Con, actor: &str, key: Uuid, send: &Send, at: OffsetDateTime) -> Result<()> {
    sqlx::query("insert into sends (actor, key, deed, answer, at) values ($1, $2, $3, $4, $5)")
        .bind(actor)
        .bind(key.to_string())
        .bind(&send.deed)
        .bind(&send.answer)
        .bind(at)
        .execute(con)
        .await?;
    Ok(())
}

/// Forgets keys older than `before`: no page open so long is sent again. Returns how many.
pub async fn forget(con: &mut Con, before: OffsetDateTime) -> Result<u64> {
    Ok(sqlx::query("delete from sends where at < $1").bind(before).execute(con).await?.rows_affected())
}
