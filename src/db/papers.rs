//! Issued papers: frozen rows, and the dated rows that say what became of them.

use time::OffsetDateTime;

use super::{Con, Db, Result};
use crate::model::ids::{BranchId, FindingId, JobId, PaperId, PersonId, VehicleId};
use crate::model::paper::issued::{EventKind, Issued, PaperEvent};

/// A paper to be kept; everything but the row's own id.
#[derive(Debug, Clone)]
pub struct NewPaper {
    pub branch_id: BranchId,
    pub series: String,
    pub number: String,
    pub kind: String,
    pub job_id: JobId,
    pub vehicle_id: VehicleId,
    /// Canonical bytes as signed.
    pub content: Vec<u8>,
    /// The detached personal part as canonical JSON; empty once erased.
    pub personal: String,
    pub signature: Vec<u8>,
    pub key_id: String,
    pub previous_sha256: String,
    pub code: String,
    pub pdf_sha256: String,
    pub supersedes_id: Option<PaperId>,
}

/// A query for issued papers: their columns, listed once, and what follows the table's name.
macro_rules! issued {
    ($rest:literal) => {
        concat!(
            "select id, branch_id, series, number, kind, job_id, vehicle_id, content, personal, signature, key_id, code,
                 pdf_sha256, supersedes_id, issued_by, issued_at
             from papers ",
            $rest
        )
    };
}
pub(super) use issued;

/// Keeps a paper.
pub async fn insert(con: &mut Con, paper: &NewPaper, who: PersonId, now: OffsetDateTime) -> Result<PaperId> {
    let id = PaperId::new();
    sqlx::query(
        "insert into papers (id, branch_id, series, number, kind, job_id, vehicle_id, content, personal, signature,
             key_id, previous_sha256, code, pdf_sha256, supersedes_id, issued_by, issued_at)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16, $17)",
    )
    .bind(id)
    .bind(paper.branch_id)
    .bind(&paper.series)
    .bind(&paper.number)
    .bind(&paper.kind)
    .bind(paper.job_id)
    .bind(paper.vehicle_id)
    .bind(&paper.content)
    .bind(&paper.personal)
    .bind(&paper.signature)
    .bind(&paper.key_id)
    .bind(&paper.previous_sha256)
    .bind(&paper.code)
    .bind(&paper.pdf_sha256)
    .bind(paper.supersedes_id)
    .bind(who)
    .bind(now)
    .execute(con)
    .await?;
    Ok(id)
}

/// The paper with this id.
pub async fn find(con: &mut Con, branch: BranchId, id: PaperId) -> Result<Option<Issued>> {
    Ok(sqlx::query_as::<Db, Issued>(issued!(
        "where id = $1
           and branch_id = $2"
    ))
    .bind(id)
    .bind(branch)
    .fetch_optional(con)
    .await?)
}

/// The paper with this code, whatever its branch: anybody may ask.
pub async fn find_by_code(con: &mut Con, code: &str) -> Result<Option<Issued>> {
    Ok(sqlx::query_as::<Db, Issued>(issued!("where code = $1")).bind(code).fetch_optional(con).await?)
}

/// The papers of a job, newest first.
pub async fn list_of_job(con: &mut Con, branch: BranchId, job: JobId) -> Result<Vec<Issued>> {
    Ok(sqlx::query_as::<Db, Issued>(issued!(
        "where branch_id = $1
           and job_id = $2
         order by issued_at desc, id desc"
    ))
    .bind(branch)
    .bind(job)
    .fetch_all(con)
    .await?)
}

/// The papers of a job that stand, newest first: neither withdrawn nor superseded, though perhaps under review.
pub async fn list_in_force(con: &mut Con, branch: BranchId, job: JobId) -> Result<Vec<Issued>> {
    Ok(sqlx::query_as::<Db, Issued>(issued!(
        "where branch_id = $1
           and job_id = $2
           and not exists (
               select 1
               from paper_events
               where paper_events.paper_id = papers.id
                 and paper_events.kind in ($3, $4))
         order by issued_at desc, id desc"
    ))
    .bind(branch)
    .bind(job)
    .bind(EventKind::Withdrawn)
    .bind(EventKind::Superseded)
    .fetch_all(con)
    .await?)
}

/// What the register is looked through for.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Sought {
    /// Kind; empty means any.
    pub kind: String,
    /// Issued from this instant, until that one, which is not counted in.
    pub span: Option<(OffsetDateTime, OffsetDateTime)>,
    /// Whether it was withdrawn or superseded, or neither; `None` means either.
    pub is_over: Option<bool>,
}

/// The register: papers of a branch, newest first, `limit` of them from `offset`.
pub async fn list(con: &mut Con, branch: BranchId, sought: &Sought, limit: i64, offset: i64) -> Result<Vec<Issued>> {
    Ok(sqlx::query_as::<Db, Issued>(issued!(
        "where branch_id = $1
           and ($4 = '' or kind = $4)
           and ($5 is null or issued_at >= $5)
           and ($6 is null or issued_at < $6)
           and ($7 is null or $7 = exists (
               select 1
               from paper_events
               where paper_events.paper_id = papers.id
                 and paper_events.kind in ($8, $9)))
         order by issued_at desc, id desc
         limit $2 offset $3"
    ))
    .bind(branch)
    .bind(limit)
    .bind(offset)
    .bind(&sought.kind)
    .bind(sought.span.map(|(from, _)| from))
    .bind(sought.span.map(|(_, until)| until))
    .bind(sought.is_over)
    .bind(EventKind::Withdrawn)
    .bind(EventKind::Superseded)
    .fetch_all(con)
    .await?)
}

/// When the first paper of a branch was issued; nothing while there is none.
pub async fn first_at(con: &mut Con, branch: BranchId) -> Result<Option<OffsetDateTime>> {
    Ok(sqlx::query_scalar::<Db, Option<OffsetDateTime>>("select min(issued_at) from papers where branch_id = $1")
        .bind(branch)
        .fetch_one(con)
        .await?)
}

/// Every paper of every branch, in the order of its series: what a check of the whole shop walks.
pub async fn list_all(con: &mut Con) -> Result<Vec<Issued>> {
    Ok(sqlx::query_as::<Db, Issued>(issued!("order by branch_id, series, issued_at, id")).fetch_all(con).await?)
}

/// Check sum of the PDF of the paper with exactly this signed content.
pub async fn find_pdf_sha256(con: &mut Con, content: &[u8]) -> Result<Option<String>> {
    Ok(sqlx::query_scalar::<Db, String>("select pdf_sha256 from papers where content = $1")
        .bind(content)
        .fetch_optional(con)
        .await?)
}

/// The paper of a series with this running number: found by the number, for a clock that was set back makes a later paper look
/// earlier.
pub async fn find_in_series(con: &mut Con, branch: BranchId, series: &str, running: i64) -> Result<Option<Issued>> {
    Ok(sqlx::query_as::<Db, Issued>(issued!(
        "where branch_id = $1
           and series = $2
           and number like $3"
    ))
    .bind(branch)
    .bind(series)
    .bind(format!("%-{running:04}"))
    .fetch_optional(con)
    .await?)
}

/// What became of a paper, oldest first.
pub async fn list_events(con: &mut Con, paper: PaperId) -> Result<Vec<PaperEvent>> {
    Ok(sqlx::query_as::<Db, PaperEvent>(
        "select kind, reason, people.name as person_name, at, finding_id
         from paper_events
         join people on people.id = paper_events.person_id
         where paper_id = $1
         order by at, paper_events.id",
    )
    .bind(paper)
    .fetch_all(con)
    .await?)
}

/// Says what became of a paper.
pub async fn insert_event(
    con: &mut Con,
    paper: PaperId,
    kind: EventKind,
    reason: &str,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<()> {
    insert_event_of(con, paper, kind, (reason, None), who, now).await
}

/// The same with the finding behind it.
pub async fn insert_event_of(
    con: &mut Con,
    paper: PaperId,
    kind: EventKind,
    (reason, finding): (&str, Option<FindingId>),
    who: PersonId,
    now: OffsetDateTime,
) -> Result<()> {
    sqlx::query(
        "insert into paper_events (id, paper_id, kind, reason, person_id, at, finding_id)
         values ($1, $2, $3, $4, $5, $6, $7)",
    )
    .bind(uuid::Uuid::now_v7().to_string())
    .bind(paper)
    .bind(kind)
    .bind(reason)
    .bind(who)
    .bind(now)
    .bind(finding)
    .execute(con)
    .await?;
    Ok(())
}

/// The papers of a vehicle, newest first.
pub async fn list_of_vehicle(con: &mut Con, branch: BranchId, vehicle: VehicleId) -> Result<Vec<Issued>> {
    Ok(sqlx::query_as::<Db, Issued>(issued!(
        "where branch_id = $1
           and vehicle_id = $2
         order by issued_at desc, id desc"
    ))
    .bind(branch)
    .bind(vehicle)
    .fetch_all(con)
    .await?)
}

/// The papers of a branch that somebody looks at again, or once did, and that are neither withdrawn nor superseded.
pub async fn list_reviewed(con: &mut Con, branch: BranchId) -> Result<Vec<Issued>> {
    Ok(sqlx::query_as::<Db, Issued>(issued!(
        "where branch_id = $1
           and exists (select 1
                       from paper_events
                       where paper_events.paper_id = papers.id
                         and paper_events.kind in ($2, $3))
           and not exists (select 1
                           from paper_events
                           where paper_events.paper_id = papers.id
                             and paper_events.kind in ($4, $5))
         order by issued_at, id"
    ))
    .bind(branch)
    .bind(EventKind::ReviewOpened)
    .bind(EventKind::RestsOnCorrected)
    .bind(EventKind::Withdrawn)
    .bind(EventKind::Superseded)
    .fetch_all(con)
    .await?)
}
