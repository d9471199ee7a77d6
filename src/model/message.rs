//! A message that the shop owes somebody.

use time::OffsetDateTime;

use super::coded;
use super::ids::{CustomerId, MessageId, VehicleId};

coded! {
    /// Where a message stands.
    "message-state" MessageState {
        /// To go out.
        Waiting = "waiting",
        /// A worker has it.
        Sending = "sending",
        /// Gone out.
        Sent = "sent",
        /// The line dropped after the text was given: perhaps gone out.
        Unknown = "unknown",
        /// Refused for good.
        Failed = "failed",
        /// Waits for a manager.
        Held = "held",
        /// To be printed and posted.
        Letter = "letter",
    }
}

coded! {
    /// What a message is about.
    "message-kind" MessageKind {
        /// Something falls due.
        Reminder = "reminder",
        /// A test message.
        Test = "test",
    }
}

/// A message as stored.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Message {
    /// Name for ever; the Message-ID is made from it.
    pub id: MessageId,
    /// What about.
    pub kind: MessageKind,
    /// To whom.
    pub customer_id: Option<CustomerId>,
    /// About which vehicle.
    pub vehicle_id: Option<VehicleId>,
    /// Address; empty for a letter.
    pub recipient: String,
    /// Language tag.
    pub language: String,
    /// Subject line.
    pub subject: String,
    /// Plain text.
    pub body_text: String,
    /// HTML text.
    pub body_html: String,
    /// Calendar part; empty for none.
    pub calendar: String,
    /// Where it stands.
    pub state: MessageState,
    /// How often tried.
    pub attempts: i64,
    /// Not before this.
    pub not_before: OffsetDateTime,
    /// What the other side said last.
    pub last_error: String,
    /// When it was written.
    pub made_at: OffsetDateTime,
    /// When it went out.
    pub sent_at: Option<OffsetDateTime>,
}
