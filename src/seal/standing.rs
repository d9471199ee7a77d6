//! The shop's signed, dated list of how its papers stand, for readers who cannot ask the shop.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::envelope::{Sealed, Signed};

/// How a paper stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// It stands.
    Valid,
    /// A later paper names it.
    Superseded,
    /// The shop took it back.
    Withdrawn,
    /// The shop looks at what it rests on.
    UnderReview,
    /// It stands, but a duty it names has passed.
    DutyPassed,
}

impl Standing {
    /// The standing as it stands in lists and in the keys of words.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Valid => "valid",
            Self::Superseded => "superseded",
            Self::Withdrawn => "withdrawn",
            Self::UnderReview => "under-review",
            Self::DutyPassed => "duty-passed",
        }
    }
}

/// One line of the list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct StandingEntry {
    /// Number of the paper.
    pub number: String,
    /// Kind of paper, as its content names it.
    pub kind: String,
    /// SHA-256 of its canonical content, lower-case hexadecimal: two papers may share a number across branches.
    pub content_sha256: String,
    /// SHA-256 of the PDF as it was issued; empty in lists made before this was written down.
    #[serde(default)]
    pub pdf_sha256: String,
    /// How it stands.
    pub standing: Standing,
    /// Since this day.
    pub since_on: Date,
    /// Number of the paper that replaces it; empty if none does.
    pub replaced_by: String,
}

/// A key with the instant after which it is not trusted.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DistrustedKey {
    /// Id of the key.
    pub key_id: String,
    /// Not trusted after this instant.
    #[serde(with = "time::serde::rfc3339")]
    pub after: OffsetDateTime,
}

/// The list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct StandingList {
    /// Always [`Signed::FORMAT`].
    pub format: String,
    /// Name of the shop.
    pub shop: String,
    /// The list holds for this instant.
    #[serde(with = "time::serde::rfc3339")]
    pub listed_at: OffsetDateTime,
    /// Papers, in the order of issue.
    pub papers: Vec<StandingEntry>,
    /// Keys no longer trusted.
    pub distrusted_keys: Vec<DistrustedKey>,
    /// Signed statements by which each key vouched for the next, oldest first: who knows one key can follow them.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub introductions: Vec<Sealed>,
}

impl Signed for StandingList {
    const FORMAT: &'static str = "fuelwright/standing/1";
}

impl StandingList {
    /// The line of the paper with this content, if the list knows it.
    pub fn find(&self, content_sha256: &str) -> Option<&StandingEntry> {
        self.papers.iter().find(|entry| entry.content_sha256 == content_sha256)
    }
}
