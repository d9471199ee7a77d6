//! One attempt: a message is taken under a lease, its links are made, and what became of it is written down at once.

use time::{Date, Duration, OffsetDateTime};

use super::untouched;
use crate::clock::Zone;
use crate::db;
use crate::db::outbox::Outcome;
use crate::model::customer::ReminderBasis;
use crate::model::deed::Deed;
use crate::model::ids::BranchId;
use crate::model::message::{
    Delivery, HeldBecause, LINK_MARK, Message, MessageKind, MessageState, STOP_MARK, retry_after,
};
use crate::model::person::Actor;
use crate::shop::{Refusal, Shop, Token, Work};

/// How long a worker has a message to itself.
const LEASE: Duration = Duration::minutes(10);
/// A message taken for one attempt, its links filled in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Claimed {
    pub message: Message,
    /// The state it was in before.
    pub was: MessageState,
    /// The address that ends reminders, for the header of RFC 8058.
    pub stop_url: Option<String>,
}

impl Shop {
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
                crate::shop::owner::keep_link(&mut tx, branch, &token, (customer, vehicle), (now, day)).await?;
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
