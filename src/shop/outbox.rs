//! The outbox: messages are owed in the transaction of their cause, taken for one attempt at a time under a lease, and
//! what became of each is written down at once.
//!
//! Promise: no message is lost, and none goes out twice but in the moment between "sent" and "written down".

mod attempt;
mod by_hand;
mod hours;

use serde::{Deserialize, Serialize};
use time::Duration;

use super::{Refusal, Shop, Work};
use crate::db;
use crate::db::outbox::Outcome;
use crate::model::deed::Deed;
use crate::model::ids::BranchId;
use crate::model::message::{HeldBecause, Message, MessageState, NewMessage};
use crate::model::person::Actor;

pub use attempt::Claimed;
use hours::{USUAL_OVER_DAYS, is_many};
pub use hours::{is_working_time, working_time_from};

/// The setting that stops all sending of a branch until a manager answers.
pub const PAUSED_SETTING: &str = "sending-paused";

/// What a run of reminders came to.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Written {
    pub mails: i64,
    pub letters: i64,
    /// Of both, how many wait for a manager.
    pub held: i64,
}

impl Shop {
    /// Writes reminders down to go out. Those that somebody wrote meanwhile are left out; a run far above the usual is
    /// held for a manager, all of it.
    pub async fn owe_reminders(&self, branch: BranchId, messages: Vec<NewMessage>) -> Result<Written, Refusal> {
        if messages.is_empty() {
            return Ok(Written::default());
        }
        self.deed(&Actor::program(branch), None, async move |mut work: Work| {
            let now = work.now;
            let told = db::outbox::told(&mut work, branch).await?;
            let is_new = |message: &NewMessage| {
                let recipient = message.customer_id.map(|id| id.to_string()).unwrap_or_default();
                !told.iter().any(|told| {
                    told.recipient == recipient
                        && message.duties.iter().any(|(id, lead)| *id == told.duty_id && *lead == told.lead_days)
                })
            };
            let new: Vec<NewMessage> = messages.into_iter().filter(is_new).collect();
            let midnight = now.replace_time(time::Time::MIDNIGHT);
            let lately =
                db::outbox::count_made(&mut work, branch, midnight - Duration::days(USUAL_OVER_DAYS), midnight).await?;
            let today = db::outbox::count_made(&mut work, branch, midnight, now + Duration::seconds(1)).await?;
            let holds = is_many(i64::try_from(new.len()).unwrap_or(i64::MAX), today, lately);
            let mut written = Written::default();
            for mut message in new {
                if message.state == MessageState::Letter {
                    written.letters += 1;
                } else {
                    written.mails += 1;
                }
                if holds {
                    (message.state, message.held_because) = (MessageState::Held, HeldBecause::Many);
                    written.held += 1;
                }
                db::outbox::insert(&mut work, branch, &message, now).await?;
            }
            let Written { mails, letters, held } = written;
            work.done(Deed::RemindersWritten { branch, messages: mails + letters, letters, held }, written).await
        })
        .await
    }
}

/// The outcome that changes nothing; a base for those that change something.
fn untouched(message: &Message) -> Outcome {
    Outcome {
        state: message.state,
        held_because: message.held_because,
        not_before: message.not_before,
        last_error: message.last_error.clone(),
        is_refused: false,
        sent_at: message.sent_at,
    }
}
