//! A drive whose logs were handed in: before or after the calibration, one log with both fuels or one on each.

use time::OffsetDateTime;

use super::attachment::Attachment;
use super::coded;
use super::ids::{EvidenceId, JobId, RoadSessionId};
use crate::calc::road::{Burned, Comparison};

coded! {
    /// When a drive was made.
    "road-phase" RoadPhase {
        /// Before the corrections: what was found.
        Before = "before",
        /// After them: what became of it.
        After = "after",
    }
}

coded! {
    /// The fuel of a whole log, as the technician states it.
    "road-stated" Stated {
        /// Driven on petrol.
        Petrol = "petrol",
        /// Driven on gas.
        Gas = "gas",
    }
}

impl Stated {
    /// The same for the comparison.
    pub const fn burned(self) -> Burned {
        match self {
            Self::Petrol => Burned::Petrol,
            Self::Gas => Burned::Gas,
        }
    }
}

/// How far a drive has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RoadState {
    /// Logs are kept, nobody has said what their columns are.
    Kept,
    /// Read and judged.
    Judged,
    /// Accepted as evidence.
    Accepted,
}

/// One log of a drive.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RoadLog {
    /// The kept file.
    pub file: Attachment,
    /// The fuel of the whole log; `None` where a column says it row by row.
    pub stated: Option<Stated>,
    /// Which of its columns are what, as the room of logs writes it; `None` before that was said.
    pub matched: Option<String>,
}

/// A drive.
#[derive(Debug, Clone, PartialEq)]
pub struct RoadSession {
    /// Name for ever.
    pub id: RoadSessionId,
    /// Which job.
    pub job_id: JobId,
    /// Before or after the corrections.
    pub phase: RoadPhase,
    /// When it was driven.
    pub driven_at: OffsetDateTime,
    /// When its logs came.
    pub recorded_at: OffsetDateTime,
    /// Who handed them in.
    pub person_name: String,
    /// One or two logs; of two, petrol stands first.
    pub logs: Vec<RoadLog>,
    /// What it came to.
    pub comparison: Option<Comparison>,
    /// Who said what the columns are, and when.
    pub matched: Option<(String, OffsetDateTime)>,
    /// The evidence it became.
    pub evidence_id: Option<EvidenceId>,
    /// Counts its changes.
    pub version: i64,
}

impl RoadSession {
    /// How far it has come.
    pub fn state(&self) -> RoadState {
        match (&self.comparison, self.evidence_id) {
            (_, Some(_)) => RoadState::Accepted,
            (Some(_), None) => RoadState::Judged,
            (None, None) => RoadState::Kept,
        }
    }
}

/// What is handed in as a drive; its files are on the disk already.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NewRoadSession {
    /// Before or after the corrections.
    pub phase: RoadPhase,
    /// When it was driven.
    pub driven_at: OffsetDateTime,
}
