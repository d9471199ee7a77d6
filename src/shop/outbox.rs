//! The outbox: messages are owed in the transaction of their cause, taken for one attempt at a time under a lease, and
//! what became of each is written down at once.
//!
//! Promise: no message is lost, and none goes out twice but in the moment between "sent" and "written down".

use serde::{Deserialize, Serialize};
use time::{Date, Duration, OffsetDateTime, Weekday};
use uuid::Uuid;

use super::{Refusal, Shop, Token, Work};
use crate::clock::Zone;
use crate::db;
use crate::db::outbox::Outcome;
use crate::model::customer::ReminderBasis;
use crate::model::deed::Deed;
use crate::model::ids::{BranchId, MessageId};
use crate::model::message::{
    Delivery, HeldBecause, LINK_MARK, Message, MessageKind, MessageState, NewMessage, STOP_MARK, retry_after,
};
use crate::model::person::Actor;

/// The setting that stops all sending of a branch until a manager answers.
pub const PAUSED_SETTING: &str = "sending-paused";
/// How long a worker has a message to itself.
const LEASE: Duration = Duration::minutes(10);
/// Days over which the usual number of reminders is counted.
const USUAL_OVER_DAYS: i64 = 28;
/// A run up to this size never waits: a small shop's usual day is no measure.
const NEVER_MANY: i64 = 20;
/// Reminders go out from this hour of the shop's day, Monday to Friday,
const OPENS: u8 = 9;
/// and no longer from this one.
const CLOSES: u8 = 17;

/// What a run of reminders came to.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Written {
    pub mails: i64,
    pub letters: i64,
    /// Of both, how many wait for a manager.
    pub held: i64,
}

/// A message taken for one attempt, its links filled in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Claimed {
    pub message: Message,
    /// The state it was in before.
    pub was: MessageState,
    /// The address that ends reminders, for the header of RFC 8058.
    pub stop_url: Option<String>,
}

/// Whether reminders may go out at this moment.
pub fn is_working_time(zone: &Zone, at: OffsetDateTime) -> bool {
    let local = zone.local(at);
    is_working_day(local.date()) && (OPENS..CLOSES).contains(&local.hour())
}

fn is_working_day(day: Date) -> bool {
    !matches!(day.weekday(), Weekday::Saturday | Weekday::Sunday)
}

/// The first moment from `at` on at which reminders may go out.
pub fn working_time_from(zone: &Zone, at: OffsetDateTime) -> OffsetDateTime {
    if is_working_time(zone, at) {
        return at;
    }
    let mut day = zone.day_of(at);
    for _ in 0..8 {
        if is_working_day(day)
            && let Some(opens) = zone.instant(day, OPENS, 0)
            && opens >= at
        {
            return opens;
        }
        let Some(next) = day.next_day() else { return at };
        day = next;
    }
    at
}

/// Whether a run is so far above the usual that a manager must look at it first: more than three usual days at once.
///
/// `today`: written today already; `lately`: written in the four weeks before.
pub fn is_many(new: i64, today: i64, lately: i64) -> bool {
    let three_days = (3 * lately + USUAL_OVER_DAYS - 1) / USUAL_OVER_DAYS;
    new + today > three_days.max(NEVER_MANY)
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

    /// Takes the next message that is ready, makes the customer's link for it, and drops on the way what nobody wants any
    /// more. `None`: nothing is ready.
    pub async fn claim_message(
        &self,
        branch: BranchId,
        reminders_too: bool,
        public_url: Option<&str>,
    ) -> Result<Option<Claimed>, Refusal> {
        let program = Actor::program(branch);
        let token = Token::fresh()?;
        let mut tx = self.db.write().await?;
        let now = self.clock.now();
        let day = day_in(&mut tx, branch, now).await?;
        let claimed = loop {
            let Some(mut message) = db::outbox::next_ready(&mut tx, branch, now, reminders_too).await? else {
                break None;
            };
            if let Some(why) = unwanted(&mut tx, branch, &message, day).await? {
                let dropped = Outcome { state: MessageState::Dropped, ..untouched(&message) };
                db::outbox::save_outcome(&mut tx, message.id, message.state, &dropped).await?;
                let deed = Deed::MessageDropped { message: message.id, why: why.to_owned() };
                db::audit::note(&mut tx, &program, now, &deed).await?;
                continue;
            }
            if !db::outbox::claim(&mut tx, &message, now + LEASE).await? {
                continue;
            }
            let was = message.state;
            message.state = MessageState::Sending;
            message.attempts += 1;
            let mut stop_url = None;
            if let (Some(url), Some(customer), Some(vehicle)) = (public_url, message.customer_id, message.vehicle_id) {
                super::owner::keep_link(&mut tx, branch, &token, (customer, vehicle), (now, day)).await?;
                db::audit::note(&mut tx, &program, now, &Deed::LinkMade { vehicle, customer }).await?;
                let own = format!("{url}/own/{}", token.as_text());
                let stop = format!("{url}/unsubscribe/{}", token.as_text());
                for text in [&mut message.body_text, &mut message.body_html, &mut message.calendar] {
                    *text = text.replace(LINK_MARK, &own).replace(STOP_MARK, &stop);
                }
                stop_url = Some(stop);
            }
            break Some(Claimed { message, was, stop_url });
        };
        tx.commit().await.map_err(db::Error::from)?;
        Ok(claimed)
    }

    /// Writes down what became of an attempt. `chance`, from 0 to 1, spreads the next one.
    pub async fn record_delivery(
        &self,
        branch: BranchId,
        claimed: &Claimed,
        delivery: Delivery,
        chance: f64,
    ) -> Result<MessageState, Refusal> {
        let (message, was) = (claimed.message.clone(), claimed.was);
        self.deed(&Actor::program(branch), None, async move |mut work: Work| {
            let outcome = after(&message, was, delivery, work.now, chance);
            db::outbox::save_outcome(&mut work, message.id, MessageState::Sending, &outcome).await?;
            if outcome.is_refused {
                give_up_address(&mut work, &message).await?;
            }
            let deed = match outcome.state {
                MessageState::Sent => Deed::MessageSent { message: message.id },
                state => Deed::MessageFailed { message: message.id, state, said: outcome.last_error },
            };
            work.done(deed, outcome.state).await
        })
        .await
    }

    /// Holds a message that has not gone out.
    pub async fn hold_message(&self, who: &Actor, key: Option<Uuid>, message: MessageId) -> Result<(), Refusal> {
        use MessageState::{Failed, Held, Letter, Unknown, Waiting};
        let from = &[Waiting, Unknown, Failed, Letter];
        self.move_message(who, key, message, from, Deed::MessageHeld { message }, |found, _| Outcome {
            state: Held,
            held_because: HeldBecause::Hand,
            ..untouched(found)
        })
        .await
    }

    /// Lets a held message go; one that a large run had held only a manager may.
    pub async fn release_message(&self, who: &Actor, key: Option<Uuid>, message: MessageId) -> Result<(), Refusal> {
        let found = db::outbox::find(&mut *self.db.read().await?, who.branch, message).await?.ok_or(Refusal::Gone)?;
        if found.held_because == HeldBecause::Many && !who.is_manager() {
            return Err(Refusal::MayNot("refused-release-needs-manager"));
        }
        let deed = Deed::MessageReleased { message };
        self.move_message(who, key, message, &[MessageState::Held], deed, go_on).await
    }

    /// Lets everything go that a large run had held.
    pub async fn release_messages(&self, who: &Actor, key: Option<Uuid>) -> Result<i64, Refusal> {
        if !who.is_manager() {
            return Err(Refusal::MayNot("refused-release-needs-manager"));
        }
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            let count = db::outbox::release_many(&mut work, branch).await?;
            work.done(Deed::MessagesReleased { branch, count }, count).await
        })
        .await
    }

    /// Tries a message again that failed or may have gone out, to the address that is on record now.
    pub async fn retry_message(&self, who: &Actor, key: Option<Uuid>, message: MessageId) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now) = (work.who.branch, work.now);
            let found = db::outbox::find(&mut work, branch, message).await?.ok_or(Refusal::Gone)?;
            if !matches!(found.state, MessageState::Failed | MessageState::Unknown | MessageState::Waiting) {
                return Err(Refusal::Ended("refused-message-gone-out"));
            }
            let to = Outcome { state: MessageState::Waiting, not_before: now, ..untouched(&found) };
            db::outbox::save_outcome(&mut work, message, found.state, &to).await?;
            db::outbox::renew_recipient(&mut work, message).await?;
            work.done(Deed::MessageRetried { message }, ()).await
        })
        .await
    }

    /// Makes a letter of a message that has not gone out.
    pub async fn post_instead(&self, who: &Actor, key: Option<Uuid>, message: MessageId) -> Result<(), Refusal> {
        use MessageState::{Failed, Held, Letter, Unknown, Waiting};
        let deed = Deed::MessageToLetter { message, why: "by hand".to_owned() };
        let from = &[Waiting, Unknown, Failed, Held];
        self.move_message(who, key, message, from, deed, |found, _| Outcome {
            state: Letter,
            held_because: HeldBecause::Nothing,
            ..untouched(found)
        })
        .await
    }

    /// Notes that a letter was printed and posted.
    pub async fn letter_posted(&self, who: &Actor, key: Option<Uuid>, message: MessageId) -> Result<(), Refusal> {
        let deed = Deed::LetterPosted { message };
        self.move_message(who, key, message, &[MessageState::Letter], deed, |found, now| Outcome {
            sent_at: found.sent_at.or(Some(now)),
            ..untouched(found)
        })
        .await
    }

    /// Sets a message aside that nobody wants any more.
    pub async fn drop_message(&self, who: &Actor, key: Option<Uuid>, message: MessageId) -> Result<(), Refusal> {
        use MessageState::{Dropped, Failed, Held, Letter, Unknown, Waiting};
        let deed = Deed::MessageDropped { message, why: "by hand".to_owned() };
        let from = &[Waiting, Unknown, Failed, Held, Letter];
        self.move_message(who, key, message, from, deed, |found, _| Outcome {
            state: Dropped,
            held_because: HeldBecause::Nothing,
            ..untouched(found)
        })
        .await
    }

    async fn move_message(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        message: MessageId,
        from: &'static [MessageState],
        deed: Deed,
        to: impl FnOnce(&Message, OffsetDateTime) -> Outcome,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let (branch, now) = (work.who.branch, work.now);
            let found = db::outbox::find(&mut work, branch, message).await?.ok_or(Refusal::Gone)?;
            if !from.contains(&found.state) || found.sent_at.is_some() {
                return Err(Refusal::Ended("refused-message-gone-out"));
            }
            let to = to(&found, now);
            db::outbox::save_outcome(&mut work, message, found.state, &to).await?;
            work.done(deed, ()).await
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

fn go_on(message: &Message, now: OffsetDateTime) -> Outcome {
    let state = if message.recipient.is_empty() { MessageState::Letter } else { MessageState::Waiting };
    Outcome { state, held_because: HeldBecause::Nothing, not_before: message.not_before.max(now), ..untouched(message) }
}

/// Where an attempt leaves a message.
fn after(message: &Message, was: MessageState, delivery: Delivery, now: OffsetDateTime, chance: f64) -> Outcome {
    let base = Outcome { held_because: HeldBecause::Nothing, ..untouched(message) };
    let failed = |last_error| Outcome { state: MessageState::Failed, last_error, ..base.clone() };
    match delivery {
        Delivery::Sent => {
            Outcome { state: MessageState::Sent, last_error: String::new(), sent_at: Some(now), ..base.clone() }
        }
        Delivery::Refused(said) => Outcome { is_refused: true, ..failed(said) },
        Delivery::Failed(said) => failed(said),
        // One more attempt under the same Message-ID, then a person decides: most receivers show such a pair once.
        Delivery::Unknown(said) if was == MessageState::Unknown => failed(said),
        Delivery::Unknown(last_error) => Outcome {
            state: MessageState::Unknown,
            last_error,
            not_before: now + retry_after(2, chance).unwrap_or(Duration::minutes(5)),
            ..base
        },
        Delivery::NotNow(last_error) => match retry_after(message.attempts, chance) {
            // A message that may have gone out keeps its one retry until the other side is reached.
            Some(wait) => {
                let state = if was == MessageState::Unknown { MessageState::Unknown } else { MessageState::Waiting };
                Outcome { state, last_error, not_before: now + wait, ..base }
            }
            None => failed(last_error),
        },
    }
}

async fn day_in(con: &mut db::Con, branch: BranchId, now: OffsetDateTime) -> Result<Date, Refusal> {
    let branch = db::branches::find(con, branch).await?.ok_or(Refusal::Gone)?;
    Ok(Zone::named(&branch.time_zone).unwrap_or_else(|_| Zone::utc()).day_of(now))
}

/// Why a message must not go out any more, if so.
async fn unwanted(
    con: &mut db::Con,
    branch: BranchId,
    message: &Message,
    day: Date,
) -> Result<Option<&'static str>, Refusal> {
    if message.kind != MessageKind::Reminder {
        return Ok(None);
    }
    let mut open = Vec::new();
    for duty in db::outbox::duties(con, message.id).await? {
        open.extend(db::duties::find(con, branch, duty, day).await?.filter(|owed| owed.duty.closed_at.is_none()));
    }
    Ok(if open.is_empty() {
        Some("what it tells of is done")
    } else if open.iter().all(|owed| owed.keeper_id != message.customer_id) {
        Some("somebody else keeps the vehicle now")
    } else if open.iter().all(|owed| owed.reminder_basis == ReminderBasis::None) {
        Some("the customer wants no reminders")
    } else {
        None
    })
}

/// After the second refusal for good the address counts as bad, and what was to go there goes by post.
async fn give_up_address(work: &mut Work, message: &Message) -> Result<(), Refusal> {
    let Some(customer) = message.customer_id else { return Ok(()) };
    let refused = db::outbox::count_failed(work, customer, &message.recipient).await?;
    if refused >= 2 && db::outbox::mark_address_bad(work, customer, &message.recipient).await? {
        db::outbox::turn_to_letters(work, customer, &message.recipient).await?;
        work.note(Deed::AddressMarkedBad { customer }).await?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use time::macros::datetime;

    use super::*;

    #[test]
    fn reminders_keep_the_working_hours_of_the_shop() {
        let zone = Zone::named("Europe/Berlin").unwrap();
        // Friday, 17:00 in Berlin: too late; the next working moment is Monday, 09:00.
        assert!(!is_working_time(&zone, datetime!(2026-05-15 15:00 UTC)));
        assert_eq!(working_time_from(&zone, datetime!(2026-05-15 15:00 UTC)), datetime!(2026-05-18 07:00 UTC));
        assert_eq!(working_time_from(&zone, datetime!(2026-05-15 14:59 UTC)), datetime!(2026-05-15 14:59 UTC));
        assert_eq!(working_time_from(&zone, datetime!(2026-05-14 22:30 UTC)), datetime!(2026-05-15 07:00 UTC));
    }

    #[test]
    fn three_usual_days_at_once_are_many() {
        assert!(!is_many(20, 0, 0) && is_many(21, 0, 0));
        // 280 in four weeks are 10 a day.
        assert!(!is_many(30, 0, 280) && is_many(31, 0, 280) && is_many(16, 15, 280));
    }
}
