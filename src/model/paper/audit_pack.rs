//! What an audit pack says: tables over a period, and ten job files that chance picked by a seed that is printed.
//!
//! The texts are in words already; a cell may have a second line. Nothing in it is signed: what it shows stands in the store
//! and in papers that are.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::ShopBlock;

/// Tag at the head of every audit pack's content.
pub const AUDIT_PACK_FORMAT: &str = "fuelwright/audit-pack/1";

/// An audit pack.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct AuditPackContent {
    /// Always [`AUDIT_PACK_FORMAT`].
    pub format: String,
    /// The body that is audited.
    pub shop: ShopBlock,
    /// Number: its first and last day.
    pub number: String,
    /// First day.
    pub from_on: Date,
    /// Last day, counted in.
    pub to_on: Date,
    /// For whom it was drawn.
    pub drawn_for: String,
    /// When it was drawn.
    #[serde(with = "time::serde::rfc3339")]
    pub drawn_at: OffsetDateTime,
    /// The tables, in order.
    pub sections: Vec<PackSection>,
    /// What picked the job files.
    pub seed: String,
    /// Among how many.
    pub picked_from: usize,
    /// The job files, by number.
    pub jobs: Vec<PackJob>,
    /// Language tag of the text.
    pub language: String,
    /// A pack of the demonstration shop.
    pub is_demonstration: bool,
    /// Version of the program.
    pub software_version: String,
}

/// A table under a heading.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PackSection {
    /// Heading.
    pub heading: String,
    /// A sentence over the table; may be empty.
    pub lead: String,
    /// Heads of the columns.
    pub heads: Vec<String>,
    /// Rows of cells.
    pub rows: Vec<Vec<PackCell>>,
    /// What is said where there are no rows.
    pub when_empty: String,
}

/// A text with a second line in small type; that may be empty.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct PackCell {
    /// The text.
    pub text: String,
    /// The second line.
    pub second: String,
}

impl PackCell {
    /// A text alone.
    pub fn new(text: impl Into<String>) -> Self {
        Self { text: text.into(), second: String::new() }
    }

    /// With a second line.
    #[must_use]
    pub fn and(mut self, second: impl Into<String>) -> Self {
        self.second = second.into();
        self
    }
}

/// A job file that chance picked.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PackJob {
    /// Number.
    pub number: String,
    /// Vehicle, kind of job, days.
    pub facts: Vec<(String, String)>,
    /// Proofs, entries and papers.
    pub sections: Vec<PackSection>,
}
