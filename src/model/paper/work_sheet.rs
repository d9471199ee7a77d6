//! What a job file says when it is printed: a working paper, neither signed nor numbered.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::of_job::PhotoOnPaper;
use super::{GasFuel, ShopBlock};

/// The printed form of a job file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct WorkSheetContent {
    /// The shop.
    pub shop: ShopBlock,
    /// Number of the job file.
    pub job_number: String,
    /// Kind of job, in the sheet's language.
    pub job_kind: String,
    /// Where the vehicle stands or which bay it is booked into.
    pub place: String,
    /// The gas.
    pub fuel: GasFuel,
    /// Make, model.
    pub vehicle: String,
    /// Full VIN.
    pub vin: String,
    /// Plate.
    pub plate: String,
    /// Odometer at intake, in kilometres.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub odometer_km: Option<i64>,
    /// Name of the customer.
    pub customer_name: String,
    /// Telephone number of the customer.
    pub customer_phone: String,
    /// Day the vehicle came in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub received_on: Option<Date>,
    /// Day promised to the customer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub promised_on: Option<Date>,
    /// What the customer says is wrong; empty for nothing.
    pub reported_faults: String,
    /// What the customer wants or told beside.
    pub wishes: Vec<String>,
    /// Faults found in the job that nobody has decided on yet.
    pub findings: Vec<String>,
    /// Stages with what is to be done in each.
    pub stages: Vec<WorkStage>,
    /// Cautions for the bench, in the sheet's language.
    pub cautions: Vec<String>,
    /// Photos of the job.
    pub photos: Vec<PhotoOnPaper>,
    /// When the sheet was printed.
    #[serde(with = "time::serde::rfc3339")]
    pub printed_at: OffsetDateTime,
    /// Language tag of the text.
    pub language: String,
    /// A sheet of the demonstration shop.
    pub is_demonstration: bool,
}

/// One stage of the job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct WorkStage {
    /// Name of the stage.
    pub name: String,
    /// Proofs of the stage, in order.
    pub proofs: Vec<WorkProof>,
}

/// One proof on the work sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct WorkProof {
    /// The proof, in the sheet's language.
    pub name: String,
    /// How it stands.
    pub state: WorkProofState,
    /// What was recorded, or what is missing.
    pub note: String,
}

/// How a proof stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum WorkProofState {
    /// Evidence meets it.
    Met,
    /// No evidence yet.
    Missing,
    /// Evidence cannot tell.
    Undecided,
    /// Evidence fails it: it stops the paper.
    Stops,
    /// Let go by somebody who may.
    Waived,
    /// Does not apply.
    NotApplicable,
}

impl WorkProofState {
    /// The state as it stands in content and in the keys of words.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Met => "met",
            Self::Missing => "missing",
            Self::Undecided => "undecided",
            Self::Stops => "stops",
            Self::Waived => "waived",
            Self::NotApplicable => "not-applicable",
        }
    }
}
