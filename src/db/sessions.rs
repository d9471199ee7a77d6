//! Signed-in browsers, failed tries, one-time codes, enrolled tablets. Of every secret only the SHA-256 is kept.

use time::OffsetDateTime;

use super::{Con, Db, Result};
use crate::model::ids::{BranchId, DeviceId, PersonId, SessionId};

/// A signed-in browser.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Session {
    pub id: SessionId,
    pub person_id: PersonId,
    pub branch_id: BranchId,
    /// The enrolled tablet it runs on, if it was opened there with a PIN.
    pub device_id: Option<DeviceId>,
    pub began_at: OffsetDateTime,
    pub seen_at: OffsetDateTime,
    /// When it ends whatever happens.
    pub ends_at: OffsetDateTime,
    pub address: String,
    pub agent: String,
}

/// The tries that failed for one account or one address.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Failures {
    pub failures: i64,
    pub last_at: OffsetDateTime,
    /// Before this moment no further try is looked at.
    pub free_at: OffsetDateTime,
}

/// A one-time code.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Code {
    /// Whose password it sets; `None`: it sets up the shop.
    pub person_id: Option<PersonId>,
    pub expires_at: OffsetDateTime,
}

/// A tablet of the shop.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Device {
    pub id: DeviceId,
    pub branch_id: BranchId,
    pub name: String,
    pub enrolled_at: OffsetDateTime,
}

/// The session of this token, unless it was ended. Whether it is still in time is for the caller to say.
pub async fn find(con: &mut Con, token_hash: &[u8; 32]) -> Result<Option<Session>> {
    Ok(sqlx::query_as::<Db, Session>(
        "select id, person_id, branch_id, device_id, began_at, seen_at, ends_at, address, agent
         from sessions
         where token_hash = $1
           and ended_at is null",
    )
    .bind(token_hash.as_slice())
    .fetch_optional(con)
    .await?)
}

/// The open sessions of a person, the latest seen first.
pub async fn list(con: &mut Con, person: PersonId) -> Result<Vec<Session>> {
    Ok(sqlx::query_as::<Db, Session>(
        "select id, person_id, branch_id, device_id, began_at, seen_at, ends_at, address, agent
         from sessions
         where person_id = $1
           and ended_at is null
         order by seen_at desc",
    )
    .bind(person)
    .fetch_all(con)
    .await?)
}

/// Adds a session.
pub async fn insert(con: &mut Con, session: &Session, token_hash: &[u8; 32]) -> Result<()> {
    sqlx::query(
        "insert into sessions (id, token_hash, person_id, branch_id, device_id, began_at, seen_at, ends_at, address,
             agent)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10)",
    )
    .bind(session.id)
    .bind(token_hash.as_slice())
    .bind(session.person_id)
    .bind(session.branch_id)
    .bind(session.device_id)
    .bind(session.began_at)
    .bind(session.seen_at)
    .bind(session.ends_at)
    .bind(&session.address)
    .bind(&session.agent)
    .execute(con)
    .await?;
    Ok(())
}

/// Notes that a session was used.
pub async fn touch(con: &mut Con, id: SessionId, at: OffsetDateTime) -> Result<()> {
    sqlx::query("update sessions set seen_at = $2 where id = $1").bind(id).bind(at).execute(con).await?;
    Ok(())
}

/// Ends one session of a person. Returns whether it was open.
pub async fn end(con: &mut Con, person: PersonId, id: SessionId, at: OffsetDateTime) -> Result<bool> {
    let done = sqlx::query("update sessions set ended_at = $3 where id = $2 and person_id = $1 and ended_at is null")
        .bind(person)
        .bind(id)
        .bind(at)
        .execute(con)
        .await?;
    Ok(done.rows_affected() > 0)
}

/// Ends every session of a person but `kept`. Returns how many were open.
pub async fn end_all(con: &mut Con, person: PersonId, kept: Option<SessionId>, at: OffsetDateTime) -> Result<u64> {
    let done = sqlx::query(
        "update sessions
         set ended_at = $3
         where person_id = $1
           and ended_at is null
           and ($2 is null or id <> $2)",
    )
    .bind(person)
    .bind(kept)
    .bind(at)
    .execute(con)
    .await?;
    Ok(done.rows_affected())
}

/// The failed tries of an account or address.
pub async fn failures(con: &mut Con, subject: &str) -> Result<Option<Failures>> {
    Ok(sqlx::query_as::<Db, Failures>("select failures, last_at, free_at from sign_in_failures where subject = $1")
        .bind(subject)
        .fetch_optional(con)
        .await?)
}

/// Keeps the count of failed tries.
pub async fn save_failures(con: &mut Con, subject: &str, failures: &Failures) -> Result<()> {
    sqlx::query(
        "insert into sign_in_failures (subject, failures, last_at, free_at)
         values ($1, $2, $3, $4)
         on conflict (subject) do update
         set failures = excluded.failures, last_at = excluded.last_at, free_at = excluded.free_at",
    )
    .bind(subject)
    .bind(failures.failures)
    .bind(failures.last_at)
    .bind(failures.free_at)
    .execute(con)
    .await?;
    Ok(())
}

/// Forgets the failed tries of an account or address.
pub async fn forget_failures(con: &mut Con, subject: &str) -> Result<()> {
    sqlx::query("delete from sign_in_failures where subject = $1").bind(subject).execute(con).await?;
    Ok(())
}

/// Forgets whoever has been quiet since `before`.
pub async fn forget_quiet_failures(con: &mut Con, before: OffsetDateTime) -> Result<u64> {
    Ok(sqlx::query("delete from sign_in_failures where last_at < $1").bind(before).execute(con).await?.rows_affected())
}

/// A one-time code that was not used; the caller looks at the time.
pub async fn code(con: &mut Con, code_hash: &[u8; 32]) -> Result<Option<Code>> {
    Ok(sqlx::query_as::<Db, Code>(
        "select person_id, expires_at from set_up_codes where code_hash = $1 and used_at is null",
    )
    .bind(code_hash.as_slice())
    .fetch_optional(con)
    .await?)
}

/// Keeps a one-time code and spends the earlier ones for the same person (or for the set-up).
pub async fn insert_code(con: &mut Con, code_hash: &[u8; 32], code: &Code, at: OffsetDateTime) -> Result<()> {
    sqlx::query("update set_up_codes set used_at = $2 where used_at is null and person_id is not distinct from $1")
        .bind(code.person_id)
        .bind(at)
        .execute(&mut *con)
        .await?;
    sqlx::query("insert into set_up_codes (code_hash, person_id, made_at, expires_at) values ($1, $2, $3, $4)")
        .bind(code_hash.as_slice())
        .bind(code.person_id)
        .bind(at)
        .bind(code.expires_at)
        .execute(con)
        .await?;
    Ok(())
}

/// Spends a code. Returns whether it was still unspent.
pub async fn spend_code(con: &mut Con, code_hash: &[u8; 32], at: OffsetDateTime) -> Result<bool> {
    let done = sqlx::query("update set_up_codes set used_at = $2 where code_hash = $1 and used_at is null")
        .bind(code_hash.as_slice())
        .bind(at)
        .execute(con)
        .await?;
    Ok(done.rows_affected() > 0)
}

/// The tablet of this token.
pub async fn device(con: &mut Con, token_hash: &[u8; 32]) -> Result<Option<Device>> {
    Ok(sqlx::query_as::<Db, Device>(
        "select id, branch_id, name, enrolled_at from devices where token_hash = $1 and ended_at is null",
    )
    .bind(token_hash.as_slice())
    .fetch_optional(con)
    .await?)
}

/// The tablets of a branch, by name.
pub async fn devices(con: &mut Con, branch: BranchId) -> Result<Vec<Device>> {
    Ok(sqlx::query_as::<Db, Device>(
        "select id, branch_id, name, enrolled_at from devices where branch_id = $1 and ended_at is null order by name, id",
    )
    .bind(branch)
    .fetch_all(con)
    .await?)
}

/// Enrols a tablet.
pub async fn insert_device(con: &mut Con, device: &Device, token_hash: &[u8; 32], by: PersonId) -> Result<()> {
    sqlx::query(
        "insert into devices (id, branch_id, name, token_hash, enrolled_by, enrolled_at) values ($1, $2, $3, $4, $5, $6)",
    )
    .bind(device.id)
    .bind(device.branch_id)
    .bind(&device.name)
    .bind(token_hash.as_slice())
    .bind(by)
    .bind(device.enrolled_at)
    .execute(con)
    .await?;
    Ok(())
}

/// Takes a tablet out of use; sessions on it end. Returns whether it was in use.
pub async fn end_device(con: &mut Con, branch: BranchId, id: DeviceId, at: OffsetDateTime) -> Result<bool> {
    let done = sqlx::query("update devices set ended_at = $3 where id = $2 and branch_id = $1 and ended_at is null")
        .bind(branch)
        .bind(id)
        .bind(at)
        .execute(&mut *con)
        .await?;
    sqlx::query("update sessions set ended_at = $2 where device_id = $1 and ended_at is null")
        .bind(id)
        .bind(at)
        .execute(con)
        .await?;
    Ok(done.rows_affected() > 0)
}

/// Forgets sessions that were over before `before`. Returns how many.
pub async fn forget_ended(con: &mut Con, before: OffsetDateTime) -> Result<u64> {
    let done =
        sqlx::query("delete from sessions where ended_at < $1 or ends_at < $1").bind(before).execute(con).await?;
    Ok(done.rows_affected())
}

/// Forgets one-time codes that were used or are late. Returns how many.
pub async fn forget_codes(con: &mut Con, now: OffsetDateTime) -> Result<u64> {
    let done = sqlx::query("delete from set_up_codes where used_at is not null or expires_at < $1")
        .bind(now)
        .execute(con)
        .await?;
    Ok(done.rows_affected())
}
