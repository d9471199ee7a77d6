//! What a letter says: a message of the outbox on paper, with an answer slip at the foot where it asks for one.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::ShopBlock;

/// A letter.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LetterContent {
    /// Who writes.
    pub shop: ShopBlock,
    /// Whom to.
    pub to_name: String,
    /// Postal address, a line each.
    pub to_address: Vec<String>,
    /// Day of writing.
    pub day: Date,
    /// What it is about.
    pub subject: String,
    /// The text, a paragraph each; lines inside a paragraph are kept.
    pub paragraphs: Vec<String>,
    /// What can be ticked on the slip; empty for a letter that asks for no answer.
    pub answers: Vec<String>,
    /// When the message was written: the letter's own time.
    #[serde(with = "time::serde::rfc3339")]
    pub written_at: OffsetDateTime,
    /// Language tag.
    pub language: String,
    /// A letter of the demonstration shop.
    pub is_demonstration: bool,
}
