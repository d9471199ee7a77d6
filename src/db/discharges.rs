//! Discharge coefficients that a branch measured, over all its jobs: so that a nozzle measured once serves every sheet.

use sqlx::types::Json;
use time::OffsetDateTime;

use super::{Con, Db, Result};
use crate::model::evidence::{Discharge, Evidence};
use crate::model::ids::BranchId;

/// A coefficient with where it was measured and with what.
#[derive(Debug, Clone, PartialEq)]
pub struct Measured {
    /// The measurement.
    pub discharge: Discharge,
    /// When it was measured.
    pub measured_at: OffsetDateTime,
    /// Number of the job in which it was recorded.
    pub job_number: String,
    /// Codes of its instruments, "F-1, G-03"; empty for none.
    pub instruments: String,
}

#[derive(sqlx::FromRow)]
struct Row {
    body: Json<Evidence>,
    measured_at: OffsetDateTime,
    job_number: String,
    code: Option<String>,
    evidence_id: String,
}

/// The newest measurements that stand, newest first; `most` of them.
pub async fn list(con: &mut Con, branch: BranchId, most: usize) -> Result<Vec<Measured>> {
    let rows = sqlx::query_as::<Db, Row>(
        "select evidence.body, evidence.measured_at, jobs.number as job_number, instruments.code, evidence.id as evidence_id
         from evidence
         join jobs on jobs.id = evidence.job_id
         left join evidence_instruments on evidence_instruments.evidence_id = evidence.id
         left join instruments on instruments.id = evidence_instruments.instrument_id
         where evidence.branch_id = $1
           and evidence.kind = 'discharge'
           and not exists (select 1 from evidence later where later.replaces_id = evidence.id)
         order by evidence.measured_at desc, evidence.id desc, instruments.code",
    )
    .bind(branch)
    .fetch_all(con)
    .await?;
    let mut all: Vec<(String, Measured)> = Vec::new();
    for Row { body: Json(body), measured_at, job_number, code, evidence_id } in rows {
        let code = code.unwrap_or_default();
        // A measurement comes once for each of its instruments.
        if let Some((id, last)) = all.last_mut()
            && *id == evidence_id
        {
            last.instruments = format!("{}, {code}", last.instruments);
            continue;
        }
        if all.len() == most {
            break;
        }
        if let Evidence::Discharge(discharge) = body {
            all.push((evidence_id, Measured { discharge, measured_at, job_number, instruments: code }));
        }
    }
    Ok(all.into_iter().map(|(_, one)| one).collect())
}
