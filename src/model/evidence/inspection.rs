//! What an inspection finds: deficiencies by item, and what was looked at on each container or cylinder.

use serde::{Deserialize, Serialize};
use time::Date;

use crate::model::coded;
use crate::model::ids::{AttachmentId, PartId};

coded! {
    /// How grave a deficiency is (Directive 2014/45/EU, Article 7; wording from memory).
    "severity" Severity {
        /// No effect on safety.
        Minor = "minor",
        /// May harm safety.
        Major = "major",
        /// A direct and immediate risk.
        Dangerous = "dangerous",
    }
}

impl Severity {
    /// The severity as it stands in content and in the keys of words.
    pub fn as_str(self) -> &'static str {
        crate::model::Coded::code(self)
    }
}

/// A deficiency as the inspector wrote it down.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FoundDeficiency {
    /// What it was found on: the id of a proof, or `check:` and the id of a line of the checklist; empty for anything else.
    pub item: String,
    /// Class of the inspection code, for example `6.1.3 f`; empty where the inspector judged without one.
    pub class: String,
    /// How grave.
    pub severity: Severity,
    /// In words: what, and where.
    pub words: String,
    /// A photo of it.
    pub photo: Option<AttachmentId>,
}

/// What was found; an empty list says that nothing was.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, Default)]
pub struct Deficiencies {
    /// One by one.
    pub found: Vec<FoundDeficiency>,
    /// Why the remaining tests were not made: a dangerous deficiency forbids to run the engine or open the gas. Empty when
    /// everything was tested.
    pub not_tested_reason: String,
    /// The gas was shut off and the keeper told not to drive; asked for when something is dangerous.
    pub is_gas_shut_off: Option<bool>,
}

impl Deficiencies {
    /// The gravest severity found.
    pub fn worst(&self) -> Option<Severity> {
        self.found.iter().map(|one| one.severity).max()
    }
}

coded! {
    /// How a container or cylinder was looked at.
    "vessel-inspection" VesselInspection {
        /// From outside, under the straps too.
        Visual = "visual",
        /// From inside.
        Internal = "internal",
        /// Under test pressure.
        Pressure = "pressure",
        /// Valves and joints searched for leaks.
        Tightness = "tightness",
        /// Valves and devices tried.
        Function = "function",
    }
}

coded! {
    /// What a finding on a vessel means for its use (three levels as in ISO 19078; wording from memory).
    "vessel-level" VesselLevel {
        /// Stays in use as it is.
        Acceptable = "acceptable",
        /// To be reworked or looked at by its maker before use.
        Rework = "rework",
        /// Never to be used again.
        Condemned = "condemned",
    }
}

/// Something found on a vessel.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct VesselFinding {
    /// On which.
    pub part_id: PartId,
    /// What it means.
    pub level: VesselLevel,
    /// In words.
    pub words: String,
    /// What was done about it.
    pub action: String,
    /// A photo of it.
    pub photo: Option<AttachmentId>,
}

/// How one vessel was looked at.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct VesselLooked {
    /// Which.
    pub part_id: PartId,
    /// In which ways.
    pub kinds: Vec<VesselInspection>,
}

/// Containers or cylinders looked at one by one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, Default)]
pub struct VesselCheck {
    /// One line a vessel.
    pub looked: Vec<VesselLooked>,
    /// What was found.
    pub findings: Vec<VesselFinding>,
    /// Level or training of who looked, in words.
    pub inspector_level: String,
    /// Another body that made the inspection; empty when it was made here.
    pub from_outside: String,
    /// Day of a test made by that body.
    pub outside_on: Option<Date>,
}
