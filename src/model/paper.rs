//! What papers say: plain content, frozen before it is signed and printed.
//!
//! Every type here holds text, whole numbers and truths only; a measured number travels as decimal text, so that the
//! canonical form of a paper never depends on how a machine prints a float. Dates are ISO 8601 dates, ids plain strings.
//! Instants are RFC 3339 and are printed with the offset they carry: `issued_at` in UTC, what happened in the workshop
//! with the shop's offset of that moment, so that the paper shows the clock on its wall. Words a reader sees that are not names, marks or typed text come from the paper's
//! language when it is printed; the content keeps their kind.

pub mod audit_pack;
pub mod calibration_record;
pub mod certificate;
pub mod estimate;
pub mod finding_report;
pub mod fitting_record;
pub mod issued;
pub mod letter;
pub mod measured;
pub mod of_job;
pub mod owner_sheet;
pub mod sizing_sheet;
pub mod test_record;
pub mod vehicle_label;
pub mod wall_sheet;
pub mod work_sheet;

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::job::{Fuel, Job, JobKind};

/// The kinds of paper that are signed and numbered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum CertificateKind {
    /// A vehicle was converted to gas.
    Conversion,
    /// A vehicle with a gas system was inspected.
    Inspection,
    /// A gas system was taken out.
    Removal,
    /// An LPG container was fitted, exchanged or tested.
    Container,
    /// A CNG cylinder was fitted, exchanged or tested.
    Cylinder,
}

impl CertificateKind {
    /// The certificate that a job ends with; `None` where its test record is the paper.
    ///
    /// A repair of the low-pressure side alone asks for a tightness and function test, and for no certificate; any larger
    /// repair, an accident or a fire asks for the inspection of the system, with its certificate (StVZO 41a(6), Annex
    /// XVII 2.4). A comeback may have touched anything and is certified like the larger repair.
    pub fn of(job: &Job) -> Option<Self> {
        match job.kind {
            JobKind::Conversion => Some(Self::Conversion),
            JobKind::Removal => Some(Self::Removal),
            JobKind::Exchange if job.fuel == Fuel::Lpg => Some(Self::Container),
            JobKind::Exchange => Some(Self::Cylinder),
            JobKind::Repair if job.is_low_pressure_only => None,
            JobKind::Inspection | JobKind::AfterAccident | JobKind::Repair | JobKind::Comeback => {
                Some(Self::Inspection)
            }
        }
    }

    /// The kind as it stands in content and database.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Conversion => "conversion",
            Self::Inspection => "inspection",
            Self::Removal => "removal",
            Self::Container => "container",
            Self::Cylinder => "cylinder",
        }
    }
}

/// The gas a system runs on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum GasFuel {
    /// Liquefied petroleum gas.
    Lpg,
    /// Compressed natural gas.
    Cng,
}

impl GasFuel {
    /// The fuel as it stands in content and in the keys of words.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Lpg => "lpg",
            Self::Cng => "cng",
        }
    }
}

/// The workshop that issues a paper: letter head and issuing body (ISO/IEC 17025, 7.8.2.1 b; ISO/IEC 17020, 7.4.2 a).
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ShopBlock {
    /// Name as registered.
    pub name: String,
    /// Postal address on one line.
    pub address: String,
    /// Telephone number.
    pub phone: String,
    /// Licence or control number; empty where the country knows none.
    pub licence: String,
    /// Branch, where the shop has more than one; else empty.
    pub branch: String,
}

/// A person who answers for something on a paper.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PersonOnPaper {
    /// Name as printed.
    pub name: String,
    /// Number of the authorisation or training; empty if none is asked.
    pub authorisation: String,
    /// Last day of that authorisation.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub authorised_until_on: Option<Date>,
}

/// A rule set the paper was judged by.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct RuleSetOnPaper {
    /// Name of the set, as its file gives it.
    pub name: String,
    /// Version of the set.
    pub version: String,
    /// SHA-256 of the file, lower-case hexadecimal.
    pub sha256: String,
}

/// How a reader checks the paper.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CheckLine {
    /// Random code of the paper, in groups; at least 80 bits.
    pub code: String,
    /// Full address that answers for this code; absent while the shop has no public address.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub url: Option<String>,
    /// Id of the signing key.
    pub key_id: String,
    /// Fingerprint of the signing key, in short groups.
    pub key_fingerprint: String,
}

/// The paper that this one replaces (ISO/IEC 17025, 7.8.8; ISO/IEC 17020, 7.4.5).
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Supersedes {
    /// Number of the replaced paper.
    pub number: String,
    /// Why it was replaced.
    pub reason: String,
}

/// Mark of something written down later than it happened.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct EnteredLater {
    /// What was entered late: name of the proof, test or answer.
    pub what: String,
    /// When it happened, as entered.
    #[serde(with = "time::serde::rfc3339")]
    pub happened_at: OffsetDateTime,
    /// When it was entered.
    #[serde(with = "time::serde::rfc3339")]
    pub entered_at: OffsetDateTime,
    /// Who entered it.
    pub by: String,
    /// Why it was late.
    pub reason: String,
}

/// Personal data of the keeper, kept apart from the signed content, which holds only its salted digest.
///
/// Serialise it with the canonical form; `salt` is part of it, so that a name cannot be guessed from the digest.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PersonalPart {
    /// Name of the keeper.
    pub name: String,
    /// The same name in letters the paper's fonts have, where the name needs one; else empty.
    #[serde(default)]
    pub name_as_printed: String,
    /// Postal address on one line.
    pub address: String,
    /// Telephone number.
    pub phone: String,
    /// Mail address.
    pub mail: String,
    /// At least 16 random bytes, lower-case hexadecimal.
    pub salt: String,
}

impl PersonalPart {
    /// The name to print: the spelling given for print, else the name.
    pub fn printed_name(&self) -> &str {
        if self.name_as_printed.is_empty() { &self.name } else { &self.name_as_printed }
    }
}
