//! A road comparison that was accepted: everything that proofs and papers say of it, so that it stands by itself.

use serde::{Deserialize, Serialize};

use crate::calc::road::{Burned, Comparison};
use crate::model::ids::RoadSessionId;
use crate::model::road::RoadPhase;

/// A log that the comparison rests on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct RoadLogKept {
    /// Its name, as it was handed in.
    pub name: String,
    /// SHA-256 of its bytes, hexadecimal.
    pub sha256: String,
    /// Its size.
    pub bytes: i64,
    /// The fuel that the technician states for the whole of it; `None` where a column says it.
    pub stated: Option<Burned>,
}

/// What driving on both fuels came to, as it was accepted.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct RoadComparison {
    /// The drive.
    pub session_id: RoadSessionId,
    /// Before or after the corrections.
    pub phase: RoadPhase,
    /// The logs.
    pub logs: Vec<RoadLogKept>,
    /// What was found.
    pub comparison: Comparison,
}
