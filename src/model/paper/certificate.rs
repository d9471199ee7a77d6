//! What a certificate says: conversion, inspection, removal, container and cylinder share one content.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

pub use crate::model::evidence::Severity;
use crate::seal::Signed;

use super::measured::{InstrumentOnPaper, MeasuredRow, Quantity};
use super::{CertificateKind, CheckLine, EnteredLater, GasFuel, PersonOnPaper, RuleSetOnPaper, ShopBlock, Supersedes};

/// Tag at the head of every certificate's content; a later shape takes another.
pub const CERTIFICATE_FORMAT: &str = "fuelwright/certificate/1";

/// Everything a certificate says, but for the keeper's personal data.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CertificateContent {
    /// Always [`CERTIFICATE_FORMAT`].
    pub format: String,
    /// Number in the series of this kind and branch.
    pub number: String,
    /// SHA-256 of the canonical content before this one in the series, lower-case hexadecimal; empty for the first.
    pub previous_sha256: String,
    /// Kind of paper.
    pub kind: CertificateKind,
    /// Language tag of the text, for example `en`.
    pub language: String,
    /// A paper of the demonstration shop: it proves nothing and says so on every page.
    pub is_demonstration: bool,
    /// Day of issue at the shop.
    pub issued_on: Date,
    /// Instant of issue by the server's clock.
    #[serde(with = "time::serde::rfc3339")]
    pub issued_at: OffsetDateTime,
    /// Place of issue.
    pub place: String,
    /// Issuing body.
    pub shop: ShopBlock,
    /// Number of the job file.
    pub job_number: String,
    /// Salted SHA-256 of the detached [`super::PersonalPart`], lower-case hexadecimal.
    pub personal_digest: String,
    /// The vehicle.
    pub vehicle: VehicleOnPaper,
    /// Its engine.
    pub engine: EngineOnPaper,
    /// The gas system.
    pub system: SystemOnPaper,
    /// Parts of the system, containers too.
    pub parts: Vec<PartOnPaper>,
    /// Containers or cylinders, one by one.
    pub containers: Vec<ContainerOnPaper>,
    /// Parts that this job took off.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub removed: Vec<RemovedOnPaper>,
    /// Photos that the signatory ticked as seen.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub photos_seen: Vec<SeenPhoto>,
    /// First and last day of the work.
    pub work: WorkDays,
    /// Tests and their results.
    pub measured: Vec<MeasuredRow>,
    /// The instruments named by the results.
    pub instruments: Vec<InstrumentOnPaper>,
    /// How the proof list stood.
    pub proofs: ProofSummary,
    /// Everything written down late.
    pub entered_later: Vec<EnteredLater>,
    /// Inspection only: outcome and deficiencies.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub inspection: Option<InspectionOnPaper>,
    /// What the paper states conformity with; empty for a paper that states none.
    pub conformity: Vec<ConformityStatement>,
    /// Print the statement that the system's approval does not itself cover the check of the fitting, which was done
    /// here (UN R115, 1.3).
    pub states_fitting_check: bool,
    /// Entries to change in the vehicle's papers, one sentence each.
    pub changes_for_vehicle_papers: Vec<String>,
    /// What falls due next.
    pub next_duties: Vec<DutyOnPaper>,
    /// Name of the authority's own test that is still to come; empty when none is.
    pub authority_test_to_come: String,
    /// Remarks, one sentence each.
    pub remarks: Vec<String>,
    /// Who signs.
    pub signatory: PersonOnPaper,
    /// Who did the work.
    pub technician: PersonOnPaper,
    /// Rule sets the job was judged by.
    pub rule_sets: Vec<RuleSetOnPaper>,
    /// Cautions that the rule sets ask to print, in the paper's language.
    pub cautions: Vec<String>,
    /// The paper this one replaces.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub supersedes: Option<Supersedes>,
    /// How to check the paper.
    pub check: CheckLine,
    /// Version of the program that made the content.
    pub software_version: String,
    /// The same in the keeper's language, to be read beside it; it states nothing of its own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub beside: Option<Box<CertificateContent>>,
}

impl Signed for CertificateContent {
    const FORMAT: &'static str = CERTIFICATE_FORMAT;
}

/// A vehicle as its papers name it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct VehicleOnPaper {
    /// Maker.
    pub make: String,
    /// Model or type.
    pub model: String,
    /// Type or variant code of the vehicle's papers; empty if unknown.
    pub type_code: String,
    /// Vehicle category, for example `M1`; empty if unknown.
    pub category: String,
    /// Full VIN or chassis number.
    pub vin: String,
    /// Plate; empty if not registered.
    pub plate: String,
    /// Distinguishing sign or code of the country of registration.
    pub plate_country: String,
    /// Day, month or year of first registration: `YYYY-MM-DD`, `YYYY-MM` or `YYYY`; empty if unknown.
    pub first_registered: String,
    /// Odometer at the test, in kilometres; absent where the vehicle has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub odometer_km: Option<i64>,
}

/// The engine.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct EngineOnPaper {
    /// Engine code; empty if unknown.
    pub code: String,
    /// Engine number; empty if unknown.
    pub number: String,
    /// Rated power with unit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub power: Option<Quantity>,
    /// Displacement with unit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub displacement: Option<Quantity>,
    /// Number of engine cylinders.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub engine_cylinders: Option<i64>,
}

/// The gas system as approved.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SystemOnPaper {
    /// The gas.
    pub fuel: GasFuel,
    /// Maker or trade mark.
    pub make: String,
    /// Type.
    pub type_name: String,
    /// Approval number with series of amendments; empty where the system has no approval as a whole.
    pub approval_number: String,
    /// Holder of the approval.
    pub approval_holder: String,
    /// Control unit: maker, type, serial number.
    pub control_unit: String,
}

/// A part as fitted.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PartOnPaper {
    /// What it is, in the paper's language.
    pub description: String,
    /// Maker and type.
    pub maker_and_type: String,
    /// Approval mark; empty if the part carries none.
    pub approval_mark: String,
    /// Serial number, or the batch where parts carry only that.
    pub serial_or_batch: String,
    /// Month of manufacture, `YYYY-MM`, or year; empty if unknown.
    pub made: String,
    /// What falls due for this part; empty if nothing does.
    pub next_duty: Vec<DutyOnPaper>,
    /// It was found on the vehicle; this shop did not fit it.
    #[serde(default, skip_serializing_if = "is_false")]
    pub is_found: bool,
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "the shape serde asks for")]
fn is_false(it: &bool) -> bool {
    !*it
}

/// A part that was taken off.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct RemovedOnPaper {
    /// What it was, in the paper's language.
    pub description: String,
    /// Maker and type.
    pub maker_and_type: String,
    /// Approval mark; empty if the part carries none.
    pub approval_mark: String,
    /// Serial number, or the batch where parts carry only that.
    pub serial_or_batch: String,
    /// Day it was taken off.
    pub removed_on: Date,
    /// Why.
    pub reason: String,
    /// Where it went; empty if nobody said.
    pub whereabouts: String,
}

/// Photos that the signatory looked at before signing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SeenPhoto {
    /// Slot, as the rules name it.
    pub slot: String,
    /// SHA-256 of each file in the slot, lower-case hexadecimal.
    pub sha256: Vec<String>,
}

/// A container or cylinder, one by one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ContainerOnPaper {
    /// Maker.
    pub maker: String,
    /// Approval mark.
    pub approval_mark: String,
    /// Serial number.
    pub serial: String,
    /// Shape or type class, for example "toroidal" or `CNG-1`.
    pub shape: String,
    /// Water capacity with unit, as stamped.
    pub water_capacity: Quantity,
    /// The same in whole litres, rounded down.
    pub water_capacity_floor_l: i64,
    /// Filling limit as whole per cent of the water capacity (LPG).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fill_limit_percent: Option<i64>,
    /// Working pressure with unit (CNG).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub working_pressure: Option<Quantity>,
    /// Test pressure with unit, as stamped.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub test_pressure: Option<Quantity>,
    /// Month of manufacture, `YYYY-MM`.
    pub made: String,
    /// Month of the last test, `YYYY-MM`; empty if it is new.
    pub last_tested: String,
    /// Kind of the last or the present inspection, in the paper's language; empty if none.
    pub inspection_kind: String,
    /// Last day it may be used before its next test.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub next_test_on: Option<Date>,
    /// Last day it may be used at all; absent where no code ends its life.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub end_of_life_on: Option<Date>,
    /// Where it sits in the vehicle.
    pub location: String,
    /// What was found on it, one sentence each, with level and what was done.
    pub findings: Vec<String>,
    /// Level or training of who looked at it, or the body from outside that did; empty if nobody looked.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub inspected_by: String,
    /// It was found on the vehicle; this shop did not fit it.
    #[serde(default, skip_serializing_if = "is_false")]
    pub is_found: bool,
}

/// First and last day of the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct WorkDays {
    /// Day the vehicle was received.
    pub received_on: Date,
    /// Day the fitting or inspection was finished.
    pub finished_on: Date,
}

/// How the proof list stood at issue.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ProofSummary {
    /// Number of proofs that the rules asked.
    pub asked: i64,
    /// Number that evidence met.
    pub met: i64,
    /// Everything that is not plainly met, with person and reason.
    pub exceptions: Vec<ProofException>,
    /// Lines of the rule sets that nobody has confirmed yet, each with its source.
    pub to_be_confirmed: Vec<String>,
}

/// Why a proof is not plainly met.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ExceptionKind {
    /// Asked for, and let go by somebody who may.
    Waived,
    /// Does not apply to this vehicle.
    NotApplicable,
    /// Met under a looser limit of the shop.
    ShopLimit,
    /// Measured, and not met; the paper says fail.
    Failed,
    /// Not tested, because something dangerous forbade it; the paper says fail.
    NotTested,
}

impl ExceptionKind {
    /// The kind as it stands in content and in the keys of words.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Waived => "waived",
            Self::NotApplicable => "not-applicable",
            Self::ShopLimit => "shop-limit",
            Self::Failed => "failed",
            Self::NotTested => "not-tested",
        }
    }
}

/// One proof that is not plainly met.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ProofException {
    /// Why.
    pub kind: ExceptionKind,
    /// The proof, in the paper's language.
    pub proof: String,
    /// The rule line that asked for it.
    pub rule_line: String,
    /// Who decided.
    pub person: String,
    /// The reason given.
    pub reason: String,
    /// When.
    #[serde(with = "time::serde::rfc3339")]
    pub decided_at: OffsetDateTime,
}

/// Result of an inspection.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum InspectionOutcome {
    /// Nothing found.
    Pass,
    /// Minor deficiencies only.
    PassWithMinor,
    /// A major or dangerous deficiency.
    Fail,
}

impl InspectionOutcome {
    /// The outcome as it stands in content and in the keys of words.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Pass => "pass",
            Self::PassWithMinor => "pass-with-minor",
            Self::Fail => "fail",
        }
    }
}

/// A deficiency found by an inspection.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Deficiency {
    /// Item of the inspection code, for example `6.1.3 f`.
    pub item: String,
    /// What was found.
    pub reason: String,
    /// How grave.
    pub severity: Severity,
    /// Place in the vehicle and what was done; empty if nothing is to be said.
    pub note: String,
    /// Where the class comes from; empty for the inspector's own judgement.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub class_source: String,
    /// SHA-256 of its photo, lower-case hexadecimal; empty without one.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub photo_sha256: String,
}

/// What an inspection certificate says beyond the rest (Directive 2014/45/EU, Annex II).
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct InspectionOnPaper {
    /// Result.
    pub outcome: InspectionOutcome,
    /// Deficiencies, gravest first.
    pub deficiencies: Vec<Deficiency>,
    /// Place of the test.
    pub place: String,
    /// When the inspection ended.
    #[serde(with = "time::serde::rfc3339")]
    pub ended_at: OffsetDateTime,
    /// Day of the next test, or end of this certificate.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub next_test_on: Option<Date>,
    /// Last day to bring the vehicle again after a fail.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub present_again_by_on: Option<Date>,
    /// Number of the first inspection, where this one repeats it; else empty.
    pub repeats_number: String,
    /// Number or mark of the inspector.
    pub inspector_id: String,
    /// Kind of test (StVZO, Annex XVII, 2.4 a): a code, `periodic`, `repeat`, `after-repair`, `after-accident`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub kind_of_test: String,
    /// Day of the first certificate, where this one repeats it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub repeats_on: Option<Date>,
    /// Proofs that a repeat looked at again, in the paper's language; empty for a whole inspection.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub repeated: Vec<String>,
    /// Proofs that failed or could not be tested, by the ids of their rule lines: what a repeat looks at.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub to_repeat: Vec<String>,
    /// Within the term only these need to be looked at again.
    #[serde(default, skip_serializing_if = "is_false")]
    pub may_repeat_failed_only: bool,
    /// What sets the term.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub term_source: String,
    /// The gas was shut off and the keeper told not to drive.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub is_gas_shut_off: Option<bool>,
}

/// One statement of conformity.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ConformityStatement {
    /// What is met: approval or national rule, with number and paragraph.
    pub against: String,
    /// Which results or items the statement covers, in the paper's language.
    pub covers: String,
    /// Whether it is met.
    pub is_met: bool,
}

/// A duty with who decided it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DutyOnPaper {
    /// What is due, in the paper's language.
    pub what: String,
    /// By this day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub due_on: Option<Date>,
    /// Or by this odometer reading.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub due_at_km: Option<i64>,
    /// Or after this distance, where the reading is not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub every_km: Option<i64>,
    /// Or after this many months.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub every_months: Option<i64>,
    /// Rule line, part or shop line that decided it.
    pub decided_by: String,
}
