//! A message that the shop owes somebody.

use time::{Duration, OffsetDateTime};

use super::coded;
use super::ids::{CustomerId, DutyId, MessageId, VehicleId};

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
        /// No longer wanted: what it was about is done, or the person said no.
        Dropped = "dropped",
    }
}

impl MessageState {
    /// Still to be dealt with, by the program or by a person.
    pub fn is_open(self) -> bool {
        matches!(self, Self::Waiting | Self::Sending | Self::Unknown | Self::Held)
    }
}

coded! {
    /// Why a message is held.
    "held-because" HeldBecause {
        /// It is not.
        Nothing = "no",
        /// The run it belongs to was far above the usual.
        Many = "many",
        /// Somebody held it.
        Hand = "hand",
    }
}

coded! {
    /// What a message is about.
    "message-kind" MessageKind {
        /// Something falls due.
        Reminder = "reminder",
        /// A test message.
        Test = "test",
        /// A customer asks the shop for a slot.
        SlotAsked = "slot-asked",
        /// A paper the customer holds is in doubt, or is taken back. Goes without consent: it is about safety.
        Safety = "safety",
        /// A part of the customer's vehicle is recalled. Goes without consent likewise.
        Recall = "recall",
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
    /// When it went out; of a letter, when it was posted.
    pub sent_at: Option<OffsetDateTime>,
    /// Why it is held.
    pub held_because: HeldBecause,
}

impl Message {
    /// The text as a letter has it: without the lines under the signature sign, and without what is only a link.
    pub fn paragraphs_on_paper(&self) -> impl Iterator<Item = &str> {
        let text = self.body_text.split("\n-- ").next().unwrap_or_default();
        text.split("\n\n").map(str::trim).filter(|part| !part.is_empty() && !part.contains(LINK_MARK))
    }
}

/// A message to be written down.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewMessage {
    /// What about.
    pub kind: MessageKind,
    /// To whom.
    pub customer_id: Option<CustomerId>,
    /// About which vehicle; with several, the first.
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
    /// How it begins: waiting, held, letter.
    pub state: MessageState,
    /// Why it is held.
    pub held_because: HeldBecause,
    /// Not before this.
    pub not_before: OffsetDateTime,
    /// The duties it tells of, each with the lead time that it stands for.
    pub duties: Vec<(DutyId, i64)>,
}

/// Stands in a stored text where the customer's link goes. The link is made when the message goes out, so that the store
/// never holds one that opens anything.
pub const LINK_MARK: &str = "{{own-link}}";
/// The same for the address that ends reminders.
pub const STOP_MARK: &str = "{{stop-link}}";

/// How an attempt to send ended.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Delivery {
    /// Taken by the other side.
    Sent,
    /// Refused for now, or not reached; what was said.
    NotNow(String),
    /// The address was refused for good; what was said.
    Refused(String),
    /// The message was refused for good, whatever the address; what was said.
    Failed(String),
    /// The text was given, the answer never came: perhaps it went out.
    Unknown(String),
}

/// Minutes until the next attempt after the first, second, … that failed for now; beyond the last, about three days after
/// the first, a person must look.
const RETRY_MINUTES: [i64; 8] = [1, 5, 15, 60, 240, 720, 1440, 1800];

/// When to try again after `attempts` that failed for now; `None` when it is enough. `chance`, from 0 to 1, spreads
/// messages that failed together by a fifth to either side.
pub fn retry_after(attempts: i64, chance: f64) -> Option<Duration> {
    let at = usize::try_from(attempts - 1).ok()?;
    let minutes = *RETRY_MINUTES.get(at)?;
    Some(Duration::seconds_f64(60.0 * minutes as f64 * (0.8 + 0.4 * chance.clamp(0.0, 1.0))))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn attempts_spread_over_three_days_and_end() {
        assert_eq!(retry_after(1, 0.5), Some(Duration::minutes(1)));
        assert_eq!(retry_after(2, 0.0), Some(Duration::minutes(4)));
        assert_eq!(retry_after(2, 1.0), Some(Duration::minutes(6)));
        let all: Duration = (1..=8).filter_map(|n| retry_after(n, 0.5)).sum();
        assert!(all > Duration::days(2) && all <= Duration::days(3), "{all}");
        assert_eq!(retry_after(9, 0.5), None);
        assert_eq!(retry_after(0, 0.5), None);
    }
}
