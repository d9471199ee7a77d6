//! What an auditor asks of a period, read in one go each: from an instant, until an instant not counted in.

use sqlx::types::Json;
use time::{Date, OffsetDateTime};

use super::papers::issued;
use super::{Con, Db, Result};
use crate::model::evidence::Evidence;
use crate::model::ids::{BranchId, FindingId, JobId};
use crate::model::job::WaiverKind;
use crate::model::paper::issued::Issued;
use crate::model::person::Role;

/// A period: from this instant, until that one, which is not in it.
pub type Span = (OffsetDateTime, OffsetDateTime);

/// Series and number of every paper of the branch, in the order of issue: what shows a missing number.
pub async fn numbers(con: &mut Con, branch: BranchId) -> Result<Vec<(String, String)>> {
    Ok(sqlx::query_as::<Db, (String, String)>(
        "select series, number from papers where branch_id = $1 order by series, issued_at, id",
    )
    .bind(branch)
    .fetch_all(con)
    .await?)
}

/// Papers issued in the period, and those of earlier days of which something became in it.
pub async fn papers(con: &mut Con, branch: BranchId, (from, until): Span) -> Result<Vec<Issued>> {
    Ok(sqlx::query_as::<Db, Issued>(issued!(
        "where branch_id = $1
           and (issued_at >= $2 and issued_at < $3
               or exists (
                   select 1
                   from paper_events
                   where paper_events.paper_id = papers.id
                     and paper_events.at >= $2
                     and paper_events.at < $3))
         order by series, issued_at, id"
    ))
    .bind(branch)
    .bind(from)
    .bind(until)
    .fetch_all(con)
    .await?)
}

/// A role that somebody had on some day of the period.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct RoleHeld {
    pub name: String,
    pub initials: String,
    pub role: Role,
    pub began_at: OffsetDateTime,
    pub ended_at: Option<OffsetDateTime>,
    /// The first day on which the account no longer works.
    pub account_ended_on: Option<Date>,
}

/// Roles held in the period, by name.
pub async fn roles(con: &mut Con, branch: BranchId, (from, until): Span) -> Result<Vec<RoleHeld>> {
    Ok(sqlx::query_as::<Db, RoleHeld>(
        "select name, initials, role, began_at, ended_at, people.ended_on as account_ended_on
         from person_roles
         join people on people.id = person_id
         where branch_id = $1
           and began_at < $3
           and (ended_at is null or ended_at >= $2)
         order by name, people.id, began_at, role",
    )
    .bind(branch)
    .bind(from)
    .bind(until)
    .fetch_all(con)
    .await?)
}

/// A right to sign that somebody had on some day of the period.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct GrantHeld {
    pub name: String,
    pub authorisation_number: String,
    pub expires_on: Date,
    pub began_at: OffsetDateTime,
    pub ended_at: Option<OffsetDateTime>,
}

/// Rights to sign held in the period, by name.
pub async fn grants(con: &mut Con, branch: BranchId, (from, until): Span) -> Result<Vec<GrantHeld>> {
    Ok(sqlx::query_as::<Db, GrantHeld>(
        "select name, authorisation_number, expires_on, began_at, ended_at
         from signatory_grants
         join people on people.id = person_id
         where branch_id = $1
           and began_at < $3
           and (ended_at is null or ended_at >= $2)
         order by name, people.id, began_at",
    )
    .bind(branch)
    .bind(from)
    .bind(until)
    .fetch_all(con)
    .await?)
}

/// A waiver given in the period, taken back since or not.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Waived {
    pub job_number: String,
    pub proof: String,
    pub kind: WaiverKind,
    pub reason: String,
    pub person_name: String,
    pub at: OffsetDateTime,
    pub ended_at: Option<OffsetDateTime>,
}

/// Waivers and not-applicables of the period, oldest first.
pub async fn waivers(con: &mut Con, branch: BranchId, (from, until): Span) -> Result<Vec<Waived>> {
    Ok(sqlx::query_as::<Db, Waived>(
        "select jobs.number as job_number, proof, waivers.kind, reason, people.name as person_name, at, waivers.ended_at
         from waivers
         join jobs on jobs.id = waivers.job_id
         join people on people.id = waivers.person_id
         where jobs.branch_id = $1
           and at >= $2
           and at < $3
         order by at, waivers.id",
    )
    .bind(branch)
    .bind(from)
    .bind(until)
    .fetch_all(con)
    .await?)
}

/// An entry written down in the period.
#[derive(Debug, Clone, PartialEq, sqlx::FromRow)]
pub struct Entered {
    pub job_number: String,
    pub body: Json<Evidence>,
    pub measured_at: OffsetDateTime,
    pub recorded_at: OffsetDateTime,
    pub person_name: String,
    pub replaces_reason: String,
    /// When and by whom the entry that it corrects was written down.
    pub earlier_at: Option<OffsetDateTime>,
    pub earlier_by: Option<String>,
}

/// Entries written down in the period that correct another, that were written down later than measured, or that are
/// checklists; oldest first.
pub async fn entries(con: &mut Con, branch: BranchId, (from, until): Span) -> Result<Vec<Entered>> {
    Ok(sqlx::query_as::<Db, Entered>(
        "select jobs.number as job_number, evidence.body, evidence.measured_at, evidence.recorded_at,
             people.name as person_name, evidence.replaces_reason, earlier.recorded_at as earlier_at,
             earlier_people.name as earlier_by
         from evidence
         join jobs on jobs.id = evidence.job_id
         join people on people.id = evidence.person_id
         left join evidence as earlier on earlier.id = evidence.replaces_id
         left join people as earlier_people on earlier_people.id = earlier.person_id
         where evidence.branch_id = $1
           and evidence.recorded_at >= $2
           and evidence.recorded_at < $3
           and (evidence.replaces_id is not null
               or evidence.measured_at <> evidence.recorded_at
               or evidence.kind = 'checklist')
         order by evidence.recorded_at, evidence.id",
    )
    .bind(branch)
    .bind(from)
    .bind(until)
    .fetch_all(con)
    .await?)
}

/// A finding that was open on some day of the period.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct FindingHeld {
    pub id: FindingId,
    pub text: String,
    pub source: String,
    pub job_number: Option<String>,
    pub instrument_code: Option<String>,
    pub opened_at: OffsetDateTime,
    pub decision: String,
    pub decided_at: Option<OffsetDateTime>,
    pub decided_by: Option<String>,
}

/// Findings open in the period, oldest first.
pub async fn findings(con: &mut Con, branch: BranchId, (from, until): Span) -> Result<Vec<FindingHeld>> {
    Ok(sqlx::query_as::<Db, FindingHeld>(
        "select findings.id, text, source, jobs.number as job_number, instruments.code as instrument_code,
             findings.opened_at, decision, decided_at, people.name as decided_by
         from findings
         left join jobs on jobs.id = findings.job_id
         left join instruments on instruments.id = findings.instrument_id
         left join people on people.id = findings.decided_by
         where findings.branch_id = $1
           and findings.opened_at < $3
           and (decided_at is null or decided_at >= $2)
         order by findings.opened_at, findings.id",
    )
    .bind(branch)
    .bind(from)
    .bind(until)
    .fetch_all(con)
    .await?)
}

/// Id and number of the job files that were open on some day of the period, by number.
pub async fn jobs(con: &mut Con, branch: BranchId, (from, until): Span) -> Result<Vec<(JobId, String)>> {
    Ok(sqlx::query_as::<Db, (JobId, String)>(
        "select id, number
         from jobs
         where branch_id = $1
           and opened_at < $3
           and (ended_at is null or ended_at >= $2)
         order by number, id",
    )
    .bind(branch)
    .bind(from)
    .bind(until)
    .fetch_all(con)
    .await?)
}
