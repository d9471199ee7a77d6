//! What a calibration record says: preconditions as measured, settings, thresholds, corrections, who holds the lock of the
//! control unit, files with their checksums, trims of each bank on both fuels, and the codes after driving.

use serde::{Deserialize, Serialize};
use time::Date;

use super::measured::{InstrumentOnPaper, Quantity};
use super::of_job::{FileOnPaper, JobOnPaper, RecordedOnPaper};
use super::work_sheet::WorkProof;
use super::{EnteredLater, RuleSetOnPaper, ShopBlock};
use crate::calc::road::Comparison;
use crate::model::evidence::RoadLogKept;

/// Tag at the head of every calibration record's content.
pub const CALIBRATION_RECORD_FORMAT: &str = "fuelwright/calibration-record/1";

/// A calibration record: numbered by the job, not signed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CalibrationRecordContent {
    /// Always [`CALIBRATION_RECORD_FORMAT`].
    pub format: String,
    /// Title, in the paper's language.
    pub title: String,
    /// The shop.
    pub shop: ShopBlock,
    /// Number, on every page.
    pub number: String,
    /// Day of printing.
    pub printed_on: Date,
    /// The job and its vehicle.
    pub job: JobOnPaper,
    /// How gas was set against petrol.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub calibration: Option<CalibrationOnPaper>,
    /// Trims on both fuels.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trims: Option<TrimsOnPaper>,
    /// Both fuels compared on the road.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub road: Option<RoadOnPaper>,
    /// Codes and readiness after driving.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub after_drive: Option<AfterDriveOnPaper>,
    /// Files kept with the job, the control unit's among them.
    pub files: Vec<FileOnPaper>,
    /// How the proofs of the stage stand.
    pub proofs: Vec<WorkProof>,
    /// The instruments named.
    pub instruments: Vec<InstrumentOnPaper>,
    /// What of this stage was written down late.
    pub entered_later: Vec<EnteredLater>,
    /// Cautions.
    pub cautions: Vec<String>,
    /// Rules in force on the day of printing.
    pub rule_sets: Vec<RuleSetOnPaper>,
    /// Language tag.
    pub language: String,
    /// Tag of the language whose text counts, where this one is only to be read beside it; else empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub beside_of: String,
    /// It belongs to the demonstration shop.
    pub is_demonstration: bool,
    /// Version of the program.
    pub software_version: String,
}

/// How the engine was calibrated on gas.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CalibrationOnPaper {
    /// Who and when.
    pub recorded: RecordedOnPaper,
    /// Coolant.
    pub coolant: Option<Quantity>,
    /// LPG vaporiser, or CNG regulator outlet.
    pub vaporiser: Option<Quantity>,
    /// The petrol computer ran in closed loop.
    pub was_closed_loop: bool,
    /// Fault codes before calibrating; empty for none.
    pub fault_codes: String,
    /// Set gas pressure over manifold.
    pub set_pressure: Option<Quantity>,
    /// Gas temperature at the rail.
    pub gas_temperature: Option<Quantity>,
    /// How it was done, in own words.
    pub how: String,
    /// The nozzle serves.
    pub is_nozzle_adequate: bool,
    /// Changeover at this coolant temperature.
    pub changeover: Option<Quantity>,
    /// Falls back to petrol below this gas pressure over manifold.
    pub fall_back: Option<Quantity>,
    /// Corrections, where and by how much.
    pub regions: Vec<RegionOnPaper>,
    /// Who holds the lock of the control unit.
    pub lock_holder: String,
}

/// A correction over a region.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct RegionOnPaper {
    /// Where, in words.
    pub region: String,
    /// By how much.
    pub by: Option<Quantity>,
}

/// Trims on both fuels.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct TrimsOnPaper {
    /// Who and when.
    pub recorded: RecordedOnPaper,
    /// Points and banks.
    pub points: Vec<TrimOnPaper>,
    /// The difference farthest from zero.
    pub worst: Option<Quantity>,
}

/// Trims of one bank at one point.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct TrimOnPaper {
    /// Operating point, in words.
    pub point: String,
    /// Bank.
    pub bank: i64,
    /// Short trim on petrol.
    pub petrol_short: Option<Quantity>,
    /// Long trim on petrol.
    pub petrol_long: Option<Quantity>,
    /// Short trim on gas.
    pub gas_short: Option<Quantity>,
    /// Long trim on gas.
    pub gas_long: Option<Quantity>,
    /// What the petrol computer adds on gas beyond what it adds on petrol.
    pub difference: Option<Quantity>,
}

/// Both fuels compared on the road, as it was accepted.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct RoadOnPaper {
    /// Who and when.
    pub recorded: RecordedOnPaper,
    /// Before or after the corrections, in words.
    pub phase: String,
    /// The logs it rests on.
    pub logs: Vec<RoadLogKept>,
    /// What was found.
    pub comparison: Comparison,
}

/// Codes and readiness after driving on both fuels.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct AfterDriveOnPaper {
    /// Who and when.
    pub recorded: RecordedOnPaper,
    /// Driven on petrol.
    pub on_petrol: Option<Quantity>,
    /// Driven on gas.
    pub on_gas: Option<Quantity>,
    /// Fault codes; empty for none.
    pub fault_codes: String,
    /// Those that were not there before.
    pub new_codes: Vec<String>,
    /// Monitors not complete; empty for none.
    pub not_ready: String,
}
