//! The log of deeds: a chain in which each line holds the hash of the line before.

use serde_json::json;
use sha2::{Digest, Sha256};
use time::OffsetDateTime;

use super::{Con, Db, Result};
use crate::model::deed::Deed;
use crate::model::ids::{BranchId, PersonId};
use crate::model::person::Actor;

/// One line of the log as it is kept.
#[derive(Debug, Clone, PartialEq, sqlx::FromRow)]
pub struct Line {
    pub sequence: i64,
    pub at: OffsetDateTime,
    pub branch_id: Option<BranchId>,
    pub person_id: Option<PersonId>,
    /// Who, in the name of that day.
    pub actor: String,
    pub deed: String,
    pub subject_kind: String,
    pub subject_id: String,
    /// The whole deed as JSON, byte for byte as it was hashed.
    pub body: String,
    pub previous_hash: Vec<u8>,
    pub hash: Vec<u8>,
}

impl Line {
    /// The deed, unless a newer program wrote it.
    pub fn deed(&self) -> Option<Deed> {
        serde_json::from_str(&self.body).ok()
    }

    /// The hash this line must carry: SHA-256 of the previous hash and the line's other columns as one JSON array.
    pub fn reckoned_hash(&self) -> [u8; 32] {
        let text = json!([
            self.sequence,
            self.at.unix_timestamp_nanos().to_string(),
            self.branch_id,
            self.person_id,
            self.actor,
            self.deed,
            self.subject_kind,
            self.subject_id,
            self.body
        ]);
        Sha256::new().chain_update(&self.previous_hash).chain_update(text.to_string()).finalize().into()
    }
}

/// Where the chain ends: the number of lines and the hash of the last.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Head {
    pub sequence: i64,
    pub hash: Vec<u8>,
}

/// A place where the chain does not hold.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Break {
    /// The line with this number is not the one that was written.
    Altered(i64),
    /// A line should have this number, and is not there.
    Missing(i64),
}

/// The end of the chain; an empty log ends at nought with 32 zero bytes.
pub async fn head(con: &mut Con) -> Result<Head> {
    let last = sqlx::query_as::<Db, Head>("select sequence, hash from audit order by sequence desc limit 1")
        .fetch_optional(con)
        .await?;
    Ok(last.unwrap_or(Head { sequence: 0, hash: vec![0; 32] }))
}

/// Adds a line. Only inside a write transaction: the next number is free for nobody else meanwhile.
pub async fn note(con: &mut Con, who: &Actor, at: OffsetDateTime, deed: &Deed) -> Result<()> {
    let head = head(con).await?;
    let (subject_kind, subject_id) = deed.subject();
    let mut line = Line {
        sequence: head.sequence + 1,
        at,
        branch_id: Some(who.branch),
        person_id: who.person,
        actor: who.name.clone(),
        deed: deed.tag().to_owned(),
        subject_kind: subject_kind.to_owned(),
        subject_id,
        body: serde_json::to_string(deed).map_err(|error| sqlx::Error::Encode(Box::new(error)))?,
        previous_hash: head.hash,
        hash: vec![],
    };
    line.hash = line.reckoned_hash().to_vec();
    sqlx::query(
        "insert into audit (sequence, at, branch_id, person_id, actor, deed, subject_kind, subject_id, body,
             previous_hash, hash)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)",
    )
    .bind(line.sequence)
    .bind(line.at)
    .bind(line.branch_id)
    .bind(line.person_id)
    .bind(line.actor)
    .bind(line.deed)
    .bind(line.subject_kind)
    .bind(line.subject_id)
    .bind(line.body)
    .bind(line.previous_hash)
    .bind(line.hash)
    .execute(con)
    .await?;
    Ok(())
}

/// The newest lines of a branch, at most `limit`, older than `before` when given.
pub async fn list(con: &mut Con, branch: BranchId, before: Option<i64>, limit: i64) -> Result<Vec<Line>> {
    Ok(sqlx::query_as::<Db, Line>(
        "select sequence, at, branch_id, person_id, actor, deed, subject_kind, subject_id, body, previous_hash, hash
         from audit
         where branch_id = $1
           and ($2 is null or sequence < $2)
         order by sequence desc
         limit $3",
    )
    .bind(branch)
    .bind(before)
    .bind(limit)
    .fetch_all(con)
    .await?)
}

/// Everything that was done to one thing, oldest first.
pub async fn about(con: &mut Con, branch: BranchId, kind: &str, id: &str) -> Result<Vec<Line>> {
    Ok(sqlx::query_as::<Db, Line>(
        "select sequence, at, branch_id, person_id, actor, deed, subject_kind, subject_id, body, previous_hash, hash
         from audit
         where subject_kind = $2
           and subject_id = $3
           and branch_id = $1
         order by sequence",
    )
    .bind(branch)
    .bind(kind)
    .bind(id)
    .fetch_all(con)
    .await?)
}

/// The later of two kinds of deed that were done to a branch as a whole; nothing when neither ever was.
pub async fn last_of(con: &mut Con, branch: BranchId, deeds: [&str; 2]) -> Result<Option<String>> {
    Ok(sqlx::query_scalar::<Db, String>(
        "select deed
         from audit
         where subject_kind = 'branch'
           and subject_id = $1
           and deed in ($2, $3)
         order by sequence desc
         limit 1",
    )
    .bind(branch.to_string())
    .bind(deeds[0])
    .bind(deeds[1])
    .fetch_optional(con)
    .await?)
}

/// Walks the whole chain and names the first place where it breaks. A tail cut off leaves no mark in the chain itself;
/// compare [`head`] with a copy kept elsewhere for that.
pub async fn check(con: &mut Con) -> Result<Option<Break>> {
    let (mut sequence, mut previous) = (0, vec![0; 32]);
    loop {
        let lines = sqlx::query_as::<Db, Line>(
            "select sequence, at, branch_id, person_id, actor, deed, subject_kind, subject_id, body, previous_hash, hash
             from audit
             where sequence > $1
             order by sequence
             limit 1000",
        )
        .bind(sequence)
        .fetch_all(&mut *con)
        .await?;
        if lines.is_empty() {
            return Ok(None);
        }
        for line in lines {
            if line.sequence != sequence + 1 {
                return Ok(Some(Break::Missing(sequence + 1)));
            }
            if line.previous_hash != previous || line.hash != line.reckoned_hash() {
                return Ok(Some(Break::Altered(line.sequence)));
            }
            (sequence, previous) = (line.sequence, line.hash);
        }
    }
}
