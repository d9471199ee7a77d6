//! Evidence: a recorded measurement, part, answer, photo or signature that meets a proof.
//!
//! An entry is never changed. A correction is a new entry that names the old one and says why, so "the evidence" of a
//! job is, for each slot (kind and subject), the last entry of its chain. Units are in the names of the fields; what
//! was typed in another unit is kept beside the number.

mod calibration;
mod discharge;
mod fitting;
mod gas_side;
mod hand_over;
mod inspection;
mod intake;
mod proving;
mod road;
mod sizing;

use serde::{Deserialize, Serialize};
use time::{Duration, OffsetDateTime};

pub use calibration::{AfterDrive, EngineCalibration, Region, TrimPoint, Trims};
pub use discharge::{Discharge, MeasuredWith};
pub use fitting::{CheckAnswer, Checklist, CylinderRow, CylinderTable, ItemAnswer, LevelSensing, LevelSensingKind};
pub use gas_side::{
    CylinderInputs, CylinderResults, CylinderSet, CylinderSizing, HeatInputs, HeatSizing, LineInputs, LineResults,
    LineSizing, SizingVerdict,
};
pub use hand_over::{HandOver, ReceivedHow};
pub use inspection::{
    Deficiencies, FoundDeficiency, Severity, VesselCheck, VesselFinding, VesselInspection, VesselLevel, VesselLooked,
};
pub use intake::{Arrival, Suitability, SuitabilityVerdict};
pub use proving::{
    Exhaust, ExhaustPoint, FillStopHow, FunctionChecks, Joint, JointVerdict, LeakDecay, LeakJoints, LeakMethod,
    LeakReading, PressureKind, Section, TestGas,
};
pub use road::{RoadComparison, RoadLogKept};
pub use sizing::{
    ContainerInputs, ContainerResults, ContainerSet, ContainerSizing, NozzleInputs, NozzleResults, NozzleSizing,
    NozzleVerdict,
};

use super::ids::{AttachmentId, EvidenceId, InstrumentId, JobId, PersonId};
use super::job::Fuel;
use super::stage::Stage;

/// Everything that can be shown, one variant a kind.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Evidence {
    /// How the vehicle came in.
    Arrival(Arrival),
    /// Whether it can be converted.
    Suitability(Suitability),
    /// Which nozzle.
    NozzleSizing(NozzleSizing),
    /// Which container.
    ContainerSizing(ContainerSizing),
    /// What a nozzle really lets through.
    Discharge(Discharge),
    /// Heat of vaporiser or pressure regulator.
    HeatSizing(HeatSizing),
    /// Hoses and liquid line.
    LineSizing(LineSizing),
    /// Which CNG cylinder.
    CylinderSizing(CylinderSizing),
    /// Which injector serves which engine cylinder.
    CylinderTable(CylinderTable),
    /// Answers to the fitting checklist.
    Checklist(Checklist),
    /// How the level is known.
    LevelSensing(LevelSensing),
    /// How the engine was calibrated on gas.
    EngineCalibration(EngineCalibration),
    /// Trims on both fuels.
    Trims(Trims),
    /// Both fuels compared on the road.
    #[serde(rename = "road")]
    RoadComparison(RoadComparison),
    /// Fault codes after driving on both fuels.
    AfterDrive(AfterDrive),
    /// Joints wetted or sniffed.
    LeakJoints(LeakJoints),
    /// Pressure decay of a section.
    LeakDecay(LeakDecay),
    /// Exhaust on one fuel.
    Exhaust(Exhaust),
    /// What must work.
    FunctionChecks(FunctionChecks),
    /// What an inspection found.
    Deficiencies(Deficiencies),
    /// How each container or cylinder was looked at.
    VesselCheck(VesselCheck),
    /// What was handed over, and to whom.
    HandOver(HandOver),
}

impl Evidence {
    /// The kind, as the column, the addresses and the language keys spell it.
    pub fn kind(&self) -> &'static str {
        match self {
            Self::Arrival(_) => "arrival",
            Self::Suitability(_) => "suitability",
            Self::NozzleSizing(_) => "nozzle-sizing",
            Self::ContainerSizing(_) => "container-sizing",
            Self::Discharge(_) => "discharge",
            Self::HeatSizing(_) => "heat-sizing",
            Self::LineSizing(_) => "line-sizing",
            Self::CylinderSizing(_) => "cylinder-sizing",
            Self::CylinderTable(_) => "cylinder-table",
            Self::Checklist(_) => "checklist",
            Self::LevelSensing(_) => "level-sensing",
            Self::EngineCalibration(_) => "engine-calibration",
            Self::Trims(_) => "trims",
            Self::RoadComparison(_) => "road",
            Self::AfterDrive(_) => "after-drive",
            Self::LeakJoints(_) => "leak-joints",
            Self::LeakDecay(_) => "leak-decay",
            Self::Exhaust(_) => "exhaust",
            Self::FunctionChecks(_) => "function-checks",
            Self::Deficiencies(_) => "deficiencies",
            Self::VesselCheck(_) => "vessel-check",
            Self::HandOver(_) => "hand-over",
        }
    }

    /// What tells two entries of one kind apart within a job (a section, a fuel); empty where there is one only.
    pub fn subject(&self) -> &'static str {
        use super::Coded;
        match self {
            Self::LeakJoints(one) => one.section.code(),
            Self::LeakDecay(one) => one.section.code(),
            Self::Exhaust(one) => {
                if one.on_gas {
                    "gas"
                } else {
                    "petrol"
                }
            }
            _ => "",
        }
    }

    /// The stage on which the entry is shown.
    pub fn stage(&self) -> Stage {
        match self {
            Self::Arrival(_) | Self::Suitability(_) => Stage::Intake,
            Self::NozzleSizing(_)
            | Self::ContainerSizing(_)
            | Self::Discharge(_)
            | Self::HeatSizing(_)
            | Self::LineSizing(_)
            | Self::CylinderSizing(_) => Stage::Sizing,
            Self::CylinderTable(_) | Self::Checklist(_) | Self::LevelSensing(_) | Self::VesselCheck(_) => {
                Stage::Fitting
            }
            Self::EngineCalibration(_) | Self::Trims(_) | Self::RoadComparison(_) | Self::AfterDrive(_) => {
                Stage::Calibration
            }
            Self::LeakJoints(_)
            | Self::LeakDecay(_)
            | Self::Exhaust(_)
            | Self::FunctionChecks(_)
            | Self::Deficiencies(_) => Stage::Proving,
            Self::HandOver(_) => Stage::HandOver,
        }
    }

    /// Sections of a system that are leak tested, by gas.
    pub fn sections(fuel: Fuel) -> &'static [Section] {
        match fuel {
            Fuel::Lpg => &[Section::LpgLiquid, Section::LpgVapour],
            Fuel::Cng => &[Section::CngHigh, Section::CngLow],
        }
    }
}

/// One entry as kept.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Name for ever.
    pub id: EvidenceId,
    /// Which job.
    pub job_id: JobId,
    /// What it shows.
    pub body: Evidence,
    /// When it was measured: typed, or told by the device.
    pub measured_at: OffsetDateTime,
    /// When the server wrote it down.
    pub recorded_at: OffsetDateTime,
    /// Who measured.
    pub person_id: PersonId,
    /// Who, in words.
    pub person_name: String,
    /// The entry it corrects.
    pub replaces_id: Option<EvidenceId>,
    /// Why it corrects it; empty for a first entry.
    pub replaces_reason: String,
    /// With what it was measured.
    pub instruments: Vec<InstrumentId>,
    /// Photos and files that belong to it.
    pub attachments: Vec<AttachmentId>,
}

/// More than this between measuring and writing down is printed as "entered later".
pub const ENTERED_LATER: Duration = Duration::minutes(10);

impl Entry {
    /// Written down so long after measuring that papers must say so.
    pub fn is_entered_later(&self) -> bool {
        self.recorded_at - self.measured_at > ENTERED_LATER
    }
}

/// What a technician hands in.
#[derive(Debug, Clone, PartialEq)]
pub struct NewEvidence {
    /// What it shows.
    pub body: Evidence,
    /// When it was measured; `None` means now.
    pub measured_at: Option<OffsetDateTime>,
    /// The entry that was on the screen when the form was opened; `None` when there was none.
    pub replaces_id: Option<EvidenceId>,
    /// Why it is corrected; must be given with `replaces_id`.
    pub replaces_reason: String,
    /// With what it was measured.
    pub instruments: Vec<InstrumentId>,
    /// Photos and files that belong to it.
    pub attachments: Vec<AttachmentId>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_kind_is_the_tag_of_the_stored_text() {
        let one = Evidence::Exhaust(Exhaust::default());
        let text = serde_json::to_value(&one).unwrap();
        assert_eq!(text["kind"], one.kind());
        assert_eq!(serde_json::from_value::<Evidence>(text).unwrap(), one);
    }
}
