//! A finding: a fault found, open until it is decided.

use time::OffsetDateTime;

use super::ids::{FindingId, InstrumentId, JobId};

/// A fault found in a vehicle, an instrument or a paper.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Finding {
    /// Name for ever.
    pub id: FindingId,
    /// The job it was found in.
    pub job_id: Option<JobId>,
    /// The instrument it was found in.
    pub instrument_id: Option<InstrumentId>,
    /// What it rests on: a measurement, a document.
    pub source: String,
    /// In words.
    pub text: String,
    /// When.
    pub opened_at: OffsetDateTime,
    /// What was decided; empty while open.
    pub decision: String,
    /// When.
    pub decided_at: Option<OffsetDateTime>,
}

impl Finding {
    /// Not decided yet.
    pub fn is_open(&self) -> bool {
        self.decided_at.is_none()
    }
}
