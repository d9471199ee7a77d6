//! What a fitting record says: the parts fitted and removed, which injector serves which engine cylinder, the checklist,
//! how the level is known, and photos.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::measured::Quantity;
use super::of_job::{JobOnPaper, PhotoOnPaper, RecordedOnPaper};
use super::work_sheet::WorkProof;
use super::{EnteredLater, RuleSetOnPaper, ShopBlock};

/// Tag at the head of every fitting record's content.
pub const FITTING_RECORD_FORMAT: &str = "fuelwright/fitting-record/1";

/// A fitting record: numbered by the job, not signed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FittingRecordContent {
    /// Always [`FITTING_RECORD_FORMAT`].
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
    /// Parts that are on the vehicle, those of this job first.
    pub fitted: Vec<FittedPart>,
    /// Parts taken off in this job.
    pub removed: Vec<FittedPart>,
    /// Which gas injector serves which engine cylinder.
    pub cylinders: Vec<CylinderOnPaper>,
    /// Who recorded that table.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cylinders_recorded: Option<RecordedOnPaper>,
    /// The checklist, in the order of the rules.
    pub checks: Vec<CheckGroup>,
    /// How the level is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub level: Option<LevelOnPaper>,
    /// How the proofs of the stage stand.
    pub proofs: Vec<WorkProof>,
    /// Photos of the job.
    pub photos: Vec<PhotoOnPaper>,
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

/// A part, with everything that traces it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FittedPart {
    /// What it is, in the paper's language.
    pub description: String,
    /// Maker and type.
    pub maker_and_type: String,
    /// Approval mark; empty if it carries none.
    pub approval_mark: String,
    /// Component class; empty if none stands on it.
    pub component_class: String,
    /// Serial number; empty if it carries none.
    pub serial: String,
    /// Batch; empty if it carries none.
    pub batch: String,
    /// `YYYY-MM-DD`, `YYYY-MM` or `YYYY`; empty if unknown.
    pub made: String,
    /// Water capacity of a container or cylinder.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub capacity: Option<Quantity>,
    /// Test pressure of a container or cylinder.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub test_pressure: Option<Quantity>,
    /// Place on the vehicle.
    pub place: String,
    /// Day of fitting.
    pub fitted_on: Date,
    /// It was on the vehicle before this job.
    pub was_there: bool,
    /// Day of removal.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub removed_on: Option<Date>,
    /// Why it was removed; empty while it is on.
    pub removed_reason: String,
    /// Why two parts share what is written on them; empty where none does.
    pub shared_reason: String,
}

/// One engine cylinder and what serves it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CylinderOnPaper {
    /// Number of the engine cylinder.
    pub engine_cylinder: i64,
    /// Petrol injector connector, in words.
    pub petrol_connector: String,
    /// Control pin, in words.
    pub control_pin: String,
    /// Mark on the harness branch, in words.
    pub branch_mark: String,
    /// Number of the gas injector.
    pub gas_injector: i64,
    /// Nozzle fitted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nozzle: Option<Quantity>,
    /// This engine cylinder alone switched to petrol, and the engine answered.
    pub answers: bool,
}

/// Lines of the checklist that one proof asks for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CheckGroup {
    /// Heading, in the paper's language.
    pub name: String,
    /// Lines.
    pub lines: Vec<CheckOnPaper>,
}

/// How a line of the checklist was answered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum CheckState {
    /// As it should be.
    Pass,
    /// Not as it should be.
    Fail,
    /// Not there on this vehicle.
    NotApplicable,
    /// Not answered yet.
    Open,
}

/// One line of the checklist.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CheckOnPaper {
    /// What is looked at, in the paper's language.
    pub line: String,
    /// Document and paragraph that ask for it.
    pub source: String,
    /// Answer.
    pub state: CheckState,
    /// Note; empty if none was needed.
    pub note: String,
    /// Initials of who looked; empty while open.
    pub initials: String,
    /// When.
    #[serde(default, with = "time::serde::rfc3339::option", skip_serializing_if = "Option::is_none")]
    pub at: Option<OffsetDateTime>,
}

/// How the driver knows how much gas is left.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LevelOnPaper {
    /// In the paper's language.
    pub how: String,
    /// The fill-up routine was explained; absent where a sender makes it needless.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub is_routine_explained: Option<bool>,
    /// Who recorded it.
    pub recorded: RecordedOnPaper,
}
