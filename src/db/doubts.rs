//! What findings put in doubt: causes, errors as found, signed decisions, and the records in which to look for what rests
//! on a cause.

use time::OffsetDateTime;

use super::{Con, Db, Result, evidence, papers, parts};
use crate::model::doubt::{AsFound, CauseKind, Doubt, PaperDecision, PaperUnder, Records, Span};
use crate::model::finding::Finding;
use crate::model::ids::{BookingId, BranchId, FindingId, InstrumentId, JobId, MessageId, PaperId, PersonId, VehicleId};
use crate::model::paper::issued::{EventKind, Issued};
use crate::model::part::PartCategory;

/// The cause of a finding. One in an instrument that nobody wrote a cause for was found when it was opened; one in a job
/// has none.
pub async fn of_finding(con: &mut Con, finding: &Finding) -> Result<Option<Doubt>> {
    let stored = sqlx::query_as::<Db, Doubt>(
        "select finding_id, cause, found_at, stated_from, stated_reason, instrument_id, evidence_id, recall_id, rule_line,
             rule_from_on
         from doubts
         where finding_id = $1",
    )
    .bind(finding.id)
    .fetch_optional(con)
    .await?;
    let plain = || {
        finding.instrument_id.map(|instrument| Doubt {
            finding_id: finding.id,
            cause: CauseKind::Instrument,
            found_at: finding.opened_at,
            stated_from: None,
            stated_reason: String::new(),
            instrument_id: Some(instrument),
            evidence_id: None,
            recall_id: None,
            rule_line: String::new(),
            rule_from_on: None,
        })
    };
    Ok(stored.or_else(plain))
}

/// Writes a cause down, or (for the beginning that somebody states) over the one that was there.
pub async fn save(con: &mut Con, doubt: &Doubt) -> Result<()> {
    sqlx::query(
        "insert into doubts (finding_id, cause, found_at, stated_from, stated_reason, instrument_id, evidence_id,
             recall_id, rule_line, rule_from_on)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10)
         on conflict (finding_id) do update set stated_from = $4, stated_reason = $5",
    )
    .bind(doubt.finding_id)
    .bind(doubt.cause)
    .bind(doubt.found_at)
    .bind(doubt.stated_from)
    .bind(&doubt.stated_reason)
    .bind(doubt.instrument_id)
    .bind(doubt.evidence_id)
    .bind(doubt.recall_id)
    .bind(&doubt.rule_line)
    .bind(doubt.rule_from_on)
    .execute(con)
    .await?;
    Ok(())
}

/// The error as found, by its latest entry.
pub async fn list_errors(con: &mut Con, finding: FindingId) -> Result<Vec<AsFound>> {
    Ok(sqlx::query_as::<Db, AsFound>(
        "select quantity, reads_high_by, how_known, people.name as person_name, entered_at
         from as_found_errors
         join people on people.id = as_found_errors.person_id
         where finding_id = $1
           and entered_at = (select max(last.entered_at) from as_found_errors as last where last.finding_id = $1)
         order by quantity",
    )
    .bind(finding)
    .fetch_all(con)
    .await?)
}

/// Enters an error, one quantity of it.
pub async fn insert_error(
    con: &mut Con,
    finding: FindingId,
    error: &AsFound,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<()> {
    sqlx::query(
        "insert into as_found_errors (finding_id, quantity, reads_high_by, how_known, person_id, entered_at)
         values ($1, $2, $3, $4, $5, $6)
         on conflict (finding_id, entered_at, quantity) do update set reads_high_by = $3, how_known = $4",
    )
    .bind(finding)
    .bind(error.quantity)
    .bind(error.reads_high_by)
    .bind(&error.how_known)
    .bind(who)
    .bind(now)
    .execute(con)
    .await?;
    Ok(())
}

/// A decision as kept.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Decided {
    pub paper_id: PaperId,
    pub decision: PaperDecision,
    pub reason: String,
    /// Canonical bytes as signed.
    pub content: Vec<u8>,
    pub signature: Vec<u8>,
    pub key_id: String,
    pub message_id: Option<MessageId>,
    pub booking_id: Option<BookingId>,
    pub person_name: String,
    pub at: OffsetDateTime,
}

/// The decisions of a finding, oldest first.
pub async fn list_decisions(con: &mut Con, finding: FindingId) -> Result<Vec<Decided>> {
    Ok(sqlx::query_as::<Db, Decided>(
        "select paper_id, decision, reason, content, signature, key_id, message_id, booking_id,
             people.name as person_name, at
         from paper_decisions
         join people on people.id = paper_decisions.person_id
         where finding_id = $1
         order by at, paper_decisions.id",
    )
    .bind(finding)
    .fetch_all(con)
    .await?)
}

/// Keeps a decision.
pub async fn insert_decision(con: &mut Con, finding: FindingId, one: &Decided, who: PersonId) -> Result<()> {
    sqlx::query(
        "insert into paper_decisions (id, finding_id, paper_id, decision, reason, content, signature, key_id, message_id,
             booking_id, person_id, at)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12)",
    )
    .bind(uuid::Uuid::now_v7().to_string())
    .bind(finding)
    .bind(one.paper_id)
    .bind(one.decision)
    .bind(&one.reason)
    .bind(&one.content)
    .bind(&one.signature)
    .bind(&one.key_id)
    .bind(one.message_id)
    .bind(one.booking_id)
    .bind(who)
    .bind(one.at)
    .execute(con)
    .await?;
    Ok(())
}

/// Jobs with an entry that names the instrument within the span.
pub async fn records_of_instrument(
    con: &mut Con,
    branch: BranchId,
    instrument: InstrumentId,
    span: Span,
) -> Result<Records> {
    let jobs = sqlx::query_scalar::<Db, JobId>(
        "select distinct evidence.job_id
         from evidence
         join evidence_instruments on evidence_instruments.evidence_id = evidence.id
         where evidence_instruments.instrument_id = $1
           and evidence.branch_id = $2
           and evidence.measured_at >= $3
           and evidence.measured_at <= $4
         order by evidence.job_id",
    )
    .bind(instrument)
    .bind(branch)
    .bind(span.from.unwrap_or(OffsetDateTime::UNIX_EPOCH))
    .bind(span.to)
    .fetch_all(&mut *con)
    .await?;
    records_of_jobs(con, branch, &jobs).await
}

/// Jobs with an entry measured from an instant on.
pub async fn records_since(con: &mut Con, branch: BranchId, from: OffsetDateTime) -> Result<Records> {
    let jobs = sqlx::query_scalar::<Db, JobId>(
        "select distinct job_id from evidence where branch_id = $1 and measured_at >= $2 order by job_id",
    )
    .bind(branch)
    .bind(from)
    .fetch_all(&mut *con)
    .await?;
    records_of_jobs(con, branch, &jobs).await
}

/// Entries and papers of these jobs.
pub async fn records_of_jobs(con: &mut Con, branch: BranchId, jobs: &[JobId]) -> Result<Records> {
    let mut records = Records::default();
    for job in jobs {
        records.entries.extend(evidence::list(&mut *con, branch, *job).await?);
        let issued = papers::list_of_job(&mut *con, branch, *job).await?;
        records.papers.extend(under(&mut *con, issued).await?);
    }
    records.papers.sort_by_key(|paper| (paper.issued_at, paper.id));
    Ok(records)
}

/// Parts of a category on vehicles of the branch, now or once, with the papers of those vehicles.
pub async fn records_of_category(con: &mut Con, branch: BranchId, category: PartCategory) -> Result<Records> {
    let vehicles = sqlx::query_scalar::<Db, VehicleId>(
        "select distinct vehicle_id from parts where branch_id = $1 and category = $2 order by vehicle_id",
    )
    .bind(branch)
    .bind(category)
    .fetch_all(&mut *con)
    .await?;
    let mut records = Records::default();
    for vehicle in vehicles {
        records.parts.extend(parts::list_of_vehicle(&mut *con, branch, vehicle).await?);
        let issued = papers::list_of_vehicle(&mut *con, branch, vehicle).await?;
        records.papers.extend(under(&mut *con, issued).await?);
    }
    records.papers.sort_by_key(|paper| (paper.issued_at, paper.id));
    Ok(records)
}

async fn under(con: &mut Con, issued: Vec<Issued>) -> Result<Vec<PaperUnder>> {
    let mut all = Vec::with_capacity(issued.len());
    for paper in issued {
        let events = papers::list_events(con, paper.id).await?;
        let ended = events.iter().find(|event| matches!(event.kind, EventKind::Withdrawn | EventKind::Superseded));
        all.push(PaperUnder {
            id: paper.id,
            ended_at: ended.map(|event| event.at),
            number: paper.number,
            job_id: paper.job_id,
            vehicle_id: paper.vehicle_id,
            issued_at: paper.issued_at,
        });
    }
    Ok(all)
}
