//! Which files are kept with what. The bytes lie in the folder of `crate::attachments`, under their checksum.

use super::{Con, Db, Result};
use crate::model::attachment::Attachment;
use crate::model::ids::{AttachmentId, BranchId, JobId, PersonId};

/// The file with this id.
pub async fn find(con: &mut Con, branch: BranchId, id: AttachmentId) -> Result<Option<Attachment>> {
    Ok(sqlx::query_as::<Db, Attachment>(
        "select id, job_id, vehicle_id, slot, sha256, media_type, name, bytes, width, height, captured_at, recorded_at
         from attachments
         where id = $1
           and branch_id = $2",
    )
    .bind(id)
    .bind(branch)
    .fetch_optional(con)
    .await?)
}

/// The files of a job, oldest first.
pub async fn list(con: &mut Con, job: JobId) -> Result<Vec<Attachment>> {
    Ok(sqlx::query_as::<Db, Attachment>(
        "select id, job_id, vehicle_id, slot, sha256, media_type, name, bytes, width, height, captured_at, recorded_at
         from attachments
         where job_id = $1
         order by recorded_at, id",
    )
    .bind(job)
    .fetch_all(con)
    .await?)
}

/// The files in one slot of a job, oldest first.
pub async fn list_in_slot(con: &mut Con, job: JobId, slot: &str) -> Result<Vec<Attachment>> {
    Ok(sqlx::query_as::<Db, Attachment>(
        "select id, job_id, vehicle_id, slot, sha256, media_type, name, bytes, width, height, captured_at, recorded_at
         from attachments
         where job_id = $1
           and slot = $2
         order by recorded_at, id",
    )
    .bind(job)
    .bind(slot)
    .fetch_all(con)
    .await?)
}

/// Every checksum that a row of the whole shop names, each once; for the self-check and for backups.
pub async fn list_checksums(con: &mut Con) -> Result<Vec<String>> {
    Ok(sqlx::query_scalar("select distinct sha256 from attachments order by sha256").fetch_all(con).await?)
}

/// Names a file whose bytes are on the disk.
pub async fn insert(con: &mut Con, branch: BranchId, one: &Attachment, who: PersonId) -> Result<()> {
    sqlx::query(
        "insert into attachments (id, branch_id, job_id, vehicle_id, slot, sha256, media_type, name, bytes, width,
             height, captured_at, recorded_at, person_id)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14)",
    )
    .bind(one.id)
    .bind(branch)
    .bind(one.job_id)
    .bind(one.vehicle_id)
    .bind(&one.slot)
    .bind(&one.sha256)
    .bind(&one.media_type)
    .bind(&one.name)
    .bind(one.bytes)
    .bind(one.width)
    .bind(one.height)
    .bind(one.captured_at)
    .bind(one.recorded_at)
    .bind(who)
    .execute(con)
    .await?;
    Ok(())
}
