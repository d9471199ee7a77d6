//! The customer's link: what somebody without an account may do for their own vehicle.
//!
//! A link opens one vehicle to one customer for 90 days. A link that is wrong, late or ended is answered alike: it is not
//! there. Only ending reminders works for longer, because a mail may be read late.

use time::{Date, Duration, OffsetDateTime};
use uuid::Uuid;

use super::{Refusal, Shop, Token, Work};
use crate::db::links::Link;
use crate::db::sessions::Failures;
use crate::db::{self, Con};
use crate::model::deed::Deed;
use crate::model::ids::{BranchId, CustomerId, VehicleId};
use crate::model::message::{HeldBecause, MessageKind, MessageState, NewMessage};
use crate::model::person::Actor;

/// Days for which a link opens the page, the day of its making aside.
const HOLDS_DAYS: i64 = 90;

/// Tries with a link that opens nothing, from one address,
const MOST_TRIES: i64 = 20;
/// counted until it has been quiet for so long.
const TRIES_WITHIN: Duration = Duration::minutes(1);

/// A customer's wish to come.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SlotWish {
    /// Subject line for the shop, in ready words.
    pub subject: String,
    /// Text for the shop, in ready words, with what the customer typed.
    pub text: String,
}

/// Keeps a link for this customer and vehicle. `moment`: now, and its day in the shop's zone.
pub(super) async fn keep_link(
    con: &mut Con,
    branch_id: BranchId,
    token: &Token,
    (customer_id, vehicle_id): (CustomerId, VehicleId),
    (now, day): (OffsetDateTime, Date),
) -> Result<(), Refusal> {
    let expires_on = day.checked_add(Duration::days(HOLDS_DAYS)).unwrap_or(Date::MAX);
    let link = Link { branch_id, customer_id, vehicle_id, made_at: now, expires_on, ended_at: None };
    Ok(db::links::insert(con, &token.hash(), &link).await?)
}

impl Shop {
    /// Makes a link to hand out over the counter.
    ///
    /// # Errors
    /// [`Refusal::Gone`] unless the customer has a role with the vehicle today.
    pub async fn make_link(&self, who: &Actor, customer: CustomerId, vehicle: VehicleId) -> Result<Token, Refusal> {
        let token = Token::fresh()?;
        let kept = token.clone();
        self.deed(who, None, async move |mut work: Work| {
            let (branch, now, today) = (work.who.branch, work.now, work.today);
            if !db::links::may_have(&mut work, branch, customer, vehicle, today).await? {
                return Err(Refusal::Gone);
            }
            keep_link(&mut work, branch, &kept, (customer, vehicle), (now, today)).await?;
            work.done(Deed::LinkMade { vehicle, customer }, ()).await
        })
        .await?;
        Ok(token)
    }

    /// The link behind a token that still opens its page, and a line in the log that it was used.
    ///
    /// # Errors
    /// [`Refusal::Gone`] for every other token, whatever is wrong with it; [`Refusal::Throttled`] for an address that
    /// tried twenty such within a minute.
    pub async fn use_link(&self, token: &Token, address: &str) -> Result<Link, Refusal> {
        let subject = format!("link {address}");
        let now = self.clock.now();
        let tries = db::sessions::failures(&mut *self.db.read().await?, &subject).await?;
        let tries = tries.filter(|tries| now - tries.last_at < TRIES_WITHIN);
        if let Some(tries) = &tries
            && tries.failures >= MOST_TRIES
        {
            return Err(Refusal::Throttled(std::time::Duration::from_mins(1)));
        }
        let found = self.open_link(token).await;
        if matches!(found, Err(Refusal::Gone)) {
            let failures =
                Failures { failures: tries.map_or(0, |tries| tries.failures) + 1, last_at: now, free_at: now };
            let mut tx = self.db.write().await?;
            db::sessions::save_failures(&mut tx, &subject, &failures).await?;
            tx.commit().await.map_err(db::Error::from)?;
        }
        found
    }

    async fn open_link(&self, token: &Token) -> Result<Link, Refusal> {
        let hash = token.hash();
        let link = db::links::find(&mut *self.db.read().await?, &hash).await?.ok_or(Refusal::Gone)?;
        self.deed(&Actor::customer(link.branch_id), None, async move |mut work: Work| {
            let link = db::links::find(&mut work, &hash).await?.ok_or(Refusal::Gone)?;
            let today = work.today;
            if link.ended_at.is_some() || today > link.expires_on {
                return Err(Refusal::Gone);
            }
            let Link { branch_id, customer_id: customer, vehicle_id: vehicle, .. } = link;
            if !db::links::may_have(&mut work, branch_id, customer, vehicle, today).await? {
                return Err(Refusal::Gone);
            }
            work.done(Deed::LinkUsed { vehicle, customer }, ()).await
        })
        .await?;
        Ok(link)
    }

    /// Ends reminders for the customer of a link; what has not gone out is dropped. Works with a link that is late or
    /// ended, and a second time too.
    pub async fn end_reminders(&self, token: &Token) -> Result<(), Refusal> {
        let link = db::links::find(&mut *self.db.read().await?, &token.hash()).await?.ok_or(Refusal::Gone)?;
        self.reminders_off(&Actor::customer(link.branch_id), None, link.customer_id).await
    }

    /// Ends reminders for a customer, as the desk does when told.
    pub async fn reminders_off(&self, who: &Actor, key: Option<Uuid>, customer: CustomerId) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            db::outbox::end_reminders(&mut work, customer).await?;
            db::outbox::drop_reminders(&mut work, customer).await?;
            work.done(Deed::RemindersOff { customer }, ()).await
        })
        .await
    }

    /// Passes a customer's wish to come on to the shop's own mailbox.
    pub async fn ask_for_slot(&self, link: &Link, key: Option<Uuid>, wish: SlotWish) -> Result<(), Refusal> {
        let Link { customer_id: customer, vehicle_id: vehicle, branch_id, .. } = *link;
        self.deed(&Actor::customer(branch_id), key, async move |mut work: Work| {
            let now = work.now;
            let branch = db::branches::find(&mut work, branch_id).await?.ok_or(Refusal::Gone)?;
            let message = NewMessage {
                kind: MessageKind::SlotAsked,
                customer_id: None,
                vehicle_id: Some(vehicle),
                state: if branch.mail.is_empty() { MessageState::Held } else { MessageState::Waiting },
                held_because: HeldBecause::Nothing,
                recipient: branch.mail,
                language: branch.language,
                subject: wish.subject,
                body_text: wish.text,
                body_html: String::new(),
                calendar: String::new(),
                not_before: now,
                duties: vec![],
            };
            db::outbox::insert(&mut work, branch_id, &message, now).await?;
            work.done(Deed::SlotAsked { vehicle, customer }, ()).await
        })
        .await
    }
}
