//! What the unsigned papers of a job share: which job and vehicle, who recorded a thing and when, photos and files.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::GasFuel;

/// The job a paper belongs to, and its vehicle.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct JobOnPaper {
    /// Number of the job file.
    pub number: String,
    /// What for, in the paper's language.
    pub job_kind: String,
    /// Day of receipt.
    pub received_on: Date,
    /// Make and model.
    pub vehicle: String,
    /// Plate; empty if not registered.
    pub plate: String,
    /// VIN or chassis number.
    pub vin: String,
    /// Engine: code, displacement, engine cylinders, power, in words.
    pub engine: String,
    /// Odometer at intake, in kilometres.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub odometer_km: Option<i64>,
    /// The gas.
    pub fuel: GasFuel,
    /// How the gas is metered, in the paper's language.
    pub system: String,
    /// Name of who keeps the vehicle.
    pub customer_name: String,
}

/// Who recorded a thing, and when.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct RecordedOnPaper {
    /// Who.
    pub by: String,
    /// When it was measured or done.
    #[serde(with = "time::serde::rfc3339")]
    pub at: OffsetDateTime,
    /// When it was written down, if more than some minutes later.
    #[serde(default, with = "time::serde::rfc3339::option", skip_serializing_if = "Option::is_none")]
    pub entered_at: Option<OffsetDateTime>,
    /// Why an earlier entry was corrected; empty for a first entry.
    pub corrected: String,
    /// Instruments, by the shop's own marks.
    pub instruments: Vec<String>,
}

/// A photo.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PhotoOnPaper {
    /// What it shows, in the paper's language.
    pub what: String,
    /// When it was taken, or came in where the camera did not say.
    #[serde(with = "time::serde::rfc3339")]
    pub taken_at: OffsetDateTime,
    /// Name of the file, where it cannot be printed and must be looked up; else empty.
    pub name: String,
    /// SHA-256 of the kept file, by which the picture is found.
    pub picture: String,
}

/// A file kept with the job that is not printed itself.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FileOnPaper {
    /// Name of the file.
    pub name: String,
    /// Size in bytes.
    pub bytes: i64,
    /// SHA-256, lower-case hexadecimal.
    pub sha256: String,
    /// When it came in.
    #[serde(with = "time::serde::rfc3339")]
    pub kept_at: OffsetDateTime,
}
