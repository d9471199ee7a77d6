//! What was fitted beside the parts themselves: wiring by engine cylinder, the checklist, how the level is known.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use time::OffsetDateTime;

use crate::model::coded;

/// One engine cylinder and what serves it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
pub struct CylinderRow {
    /// Number of the engine cylinder, from 1.
    pub engine_cylinder: i64,
    /// Petrol injector connector, in words.
    pub petrol_connector: String,
    /// Control pin, in words.
    pub control_pin: String,
    /// Mark on the harness branch, in words.
    pub branch_mark: String,
    /// Number of the gas injector.
    pub gas_injector: i64,
    /// Nozzle fitted, mm.
    pub nozzle_mm: f64,
    /// This engine cylinder alone switched to petrol, and the engine answered.
    pub answers: bool,
}

/// Which gas injector serves which engine cylinder.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
pub struct CylinderTable {
    /// One row an engine cylinder.
    pub rows: Vec<CylinderRow>,
}

impl CylinderTable {
    /// A gas injector that is named for two engine cylinders.
    pub fn doubled_injector(&self) -> Option<i64> {
        self.rows.iter().enumerate().find_map(|(n, row)| {
            self.rows[..n].iter().any(|other| other.gas_injector == row.gas_injector).then_some(row.gas_injector)
        })
    }
}

coded! {
    /// An answer to a line of the checklist.
    "check-answer" CheckAnswer {
        /// As it should be.
        Pass = "pass",
        /// Not as it should be.
        Fail = "fail",
        /// Not there on this vehicle.
        NotApplicable = "not-applicable",
    }
}

/// One line answered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ItemAnswer {
    /// Answer.
    pub answer: CheckAnswer,
    /// Note; asked for with fail and not applicable.
    pub note: String,
    /// Initials of who looked.
    pub initials: String,
    /// When.
    #[serde(with = "time::serde::rfc3339")]
    pub at: OffsetDateTime,
}

/// Answers by the id of the checklist line.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
pub struct Checklist {
    /// Line id to answer.
    pub answers: BTreeMap<String, ItemAnswer>,
}

coded! {
    /// How the driver knows how much gas is left.
    "level-sensing" LevelSensingKind {
        /// A sender in the container.
        Sender = "sender",
        /// Reckoned from injection time since the last fill.
        Reckoned = "reckoned",
    }
}

/// How the level is known.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LevelSensing {
    /// By what.
    pub how: LevelSensingKind,
    /// The fill-up routine was explained to the driver; asked for when reckoned.
    pub is_routine_explained: bool,
}
