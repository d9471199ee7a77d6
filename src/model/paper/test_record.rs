//! What a test record says: the items of ISO/IEC 17025:2017, 7.8.2.1, and the fields of a leak test.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::measured::{InstrumentOnPaper, MeasuredRow, Quantity, Verdict};
use super::{EnteredLater, GasFuel, PersonOnPaper, RuleSetOnPaper, ShopBlock, Supersedes};

/// Tag at the head of every test record's content.
pub const TEST_RECORD_FORMAT: &str = "fuelwright/test-record/1";

/// A test record. The letters are the items of ISO/IEC 17025:2017, 7.8.2.1.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct TestRecordContent {
    /// Always [`TEST_RECORD_FORMAT`].
    pub format: String,
    /// a: title, in the paper's language.
    pub title: String,
    /// b: the body.
    pub shop: ShopBlock,
    /// c: where the work was done, also if away from the shop.
    pub place: String,
    /// d: number; printed on every page, with page x of y and an end line.
    pub number: String,
    /// Number of the job file.
    pub job_number: String,
    /// e: the customer's name, as printed. Test records are not signed, so it stands here.
    pub customer_name: String,
    /// e: how to reach the customer.
    pub customer_contact: String,
    /// f: method with version.
    pub method: String,
    /// g: the item: vehicle and what of it was tested.
    pub item: TestedItem,
    /// h: day of receipt.
    pub received_on: Date,
    /// i: begin of the work.
    #[serde(with = "time::serde::rfc3339")]
    pub began_at: OffsetDateTime,
    /// i: end of the work.
    #[serde(with = "time::serde::rfc3339")]
    pub ended_at: OffsetDateTime,
    /// j: day of issue.
    pub issued_on: Date,
    /// k: sampling plan; empty prints that nothing was sampled.
    pub sampling: String,
    /// m: results.
    pub measured: Vec<MeasuredRow>,
    /// m: leak tests in full.
    pub leak_tests: Vec<LeakTestOnPaper>,
    /// n: additions to, deviations or exclusions from the method; empty prints "none".
    pub deviations: String,
    /// o: who authorised it.
    pub authorised_by: PersonOnPaper,
    /// Who tested.
    pub technician: PersonOnPaper,
    /// Instruments with their calibration.
    pub instruments: Vec<InstrumentOnPaper>,
    /// Test conditions, name and value (7.8.3.1 a).
    pub conditions: Vec<Condition>,
    /// Data that the customer supplied, one line each (7.8.2.2).
    pub customer_supplied: Vec<String>,
    /// Everything written down late.
    pub entered_later: Vec<EnteredLater>,
    /// Rule sets.
    pub rule_sets: Vec<RuleSetOnPaper>,
    /// Cautions that the rule sets ask to print.
    pub cautions: Vec<String>,
    /// The record this one replaces (7.8.8).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub supersedes: Option<Supersedes>,
    /// Language tag of the text.
    pub language: String,
    /// Tag of the language whose text counts, where this one is only to be read beside it; else empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub beside_of: String,
    /// A record of the demonstration shop.
    pub is_demonstration: bool,
    /// Version of the program.
    pub software_version: String,
}

/// g: the item tested.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct TestedItem {
    /// Make and model.
    pub vehicle: String,
    /// Full VIN.
    pub vin: String,
    /// Plate.
    pub plate: String,
    /// Odometer in kilometres.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub odometer_km: Option<i64>,
    /// The gas.
    pub fuel: GasFuel,
    /// What of the vehicle was tested.
    pub tested: String,
    /// Condition on receipt, where it matters; empty if not.
    pub condition: String,
}

/// A test condition.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Condition {
    /// Its name, in the paper's language.
    pub name: String,
    /// Its value.
    pub value: Quantity,
}

/// Whether a pressure counts from vacuum or from the air around.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PressureReference {
    /// From vacuum.
    Absolute,
    /// From the air around.
    Gauge,
}

impl PressureReference {
    /// The reference as it stands in content and in the keys of words.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Absolute => "absolute",
            Self::Gauge => "gauge",
        }
    }
}

/// A leak test of one section.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LeakTestOnPaper {
    /// The section.
    pub section: String,
    /// Its boundaries: what closes it at each end.
    pub boundaries: String,
    /// Test gas.
    pub test_gas: String,
    /// How pressures count.
    pub pressure_reference: PressureReference,
    /// Pressure at the start.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pressure_start: Option<Quantity>,
    /// Pressure at the end.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pressure_end: Option<Quantity>,
    /// Air pressure around, where gauge pressures were read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ambient_pressure: Option<Quantity>,
    /// Temperature of wall or gas at the start.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature_start: Option<Quantity>,
    /// Temperature of wall or gas at the end.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature_end: Option<Quantity>,
    /// Air temperature.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature_ambient: Option<Quantity>,
    /// Start.
    #[serde(with = "time::serde::rfc3339")]
    pub began_at: OffsetDateTime,
    /// End.
    #[serde(with = "time::serde::rfc3339")]
    pub ended_at: OffsetDateTime,
    /// Volume of the section.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub volume: Option<Quantity>,
    /// How the volume is known.
    pub volume_known_by: String,
    /// Joints wetted or sniffed, one name each.
    pub joints: Vec<String>,
    /// Leak rate found.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rate: Option<Quantity>,
    /// Expanded uncertainty of the rate.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rate_uncertainty: Option<Quantity>,
    /// Coverage factor as decimal text.
    pub coverage_factor: String,
    /// Limit of the rate.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limit: Option<Quantity>,
    /// Where the limit comes from.
    pub limit_source: String,
    /// What came out.
    pub verdict: Verdict,
    /// What was repaired before this test; empty if nothing was.
    pub repair: String,
    /// 1 for a first test, 2 for its first repetition, and so on.
    pub attempt: i64,
    /// Who tested.
    pub by: String,
}
