//! What a finding report says: cause, time in doubt, error as found, each result old beside new, each paper with what was
//! decided of it. Not signed itself; the decisions in it are, and their signatures are printed.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::ShopBlock;
use crate::model::doubt::Sort;

/// Tag at the head of every finding report's content.
pub const FINDING_REPORT_FORMAT: &str = "fuelwright/finding-report/1";

/// A finding report.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FindingReportContent {
    /// Always [`FINDING_REPORT_FORMAT`].
    pub format: String,
    /// The body that reports.
    pub shop: ShopBlock,
    /// Number: the day it was opened and the end of its name.
    pub number: String,
    /// Day of the report.
    pub printed_on: Date,
    /// When it was printed.
    #[serde(with = "time::serde::rfc3339")]
    pub printed_at: OffsetDateTime,
    /// What was found.
    pub text: String,
    /// When and by what it was found.
    pub opened: String,
    /// The cause: name and value pairs, the instrument's certificate and the time in doubt among them.
    pub facts: Vec<(String, String)>,
    /// The error as found, one line a quantity; empty where there is none to take out.
    pub errors: Vec<String>,
    /// Whether this cause knows an error at all.
    pub has_error: bool,
    /// How the results came out, in one sentence.
    pub tally: String,
    /// The results.
    pub results: Vec<ResultOnReport>,
    /// The papers.
    pub papers: Vec<PaperOnReport>,
    /// The decision that closed the finding, and when; empty while it is open.
    pub closed: String,
    /// What is still open, one line each.
    pub still_open: Vec<String>,
    /// Language tag of the text.
    pub language: String,
    /// A report of the demonstration shop.
    pub is_demonstration: bool,
    /// Version of the program.
    pub software_version: String,
}

/// A result in doubt.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ResultOnReport {
    /// Number of the job.
    pub job: String,
    /// Plate.
    pub plate: String,
    /// What it is.
    pub what: String,
    /// When it was measured.
    pub measured: String,
    /// Name, number as written with its limit, number reckoned again with its limit.
    pub figures: Vec<[String; 5]>,
    /// How it stands.
    pub sort: Sort,
    /// The same in words.
    pub sort_said: String,
    /// Why.
    pub why: String,
}

/// A paper in doubt.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PaperOnReport {
    /// Its number.
    pub number: String,
    /// Plate and vehicle.
    pub vehicle: String,
    /// How it stands today.
    pub standing: String,
    /// The decisions, oldest first.
    pub decisions: Vec<DecisionOnReport>,
}

/// A signed decision.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DecisionOnReport {
    /// What was decided.
    pub decision: String,
    /// Why.
    pub reason: String,
    /// Person, authorisation and time.
    pub by: String,
    /// The letter, and what became of it; empty where none was owed.
    pub letter: String,
    /// The re-test; empty where none was called.
    pub re_test: String,
    /// Key and signature.
    pub signature: String,
}
