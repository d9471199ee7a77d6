//! What people do with a message: hold it, let it go, try it again, post it as a letter, set it aside.

use time::OffsetDateTime;
use uuid::Uuid;

use super::untouched;
use crate::db;
use crate::db::outbox::Outcome;
use crate::model::deed::Deed;
use crate::model::ids::MessageId;
use crate::model::message::{HeldBecause, Message, MessageState};
use crate::model::person::Actor;
use crate::shop::{Refusal, Shop, Work};

impl Shop {
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

/// A held message goes on its way: by mail where there is an address.
fn go_on(message: &Message, now: OffsetDateTime) -> Outcome {
    let state = if message.recipient.is_empty() { MessageState::Letter } else { MessageState::Waiting };
    Outcome { state, held_because: HeldBecause::Nothing, not_before: message.not_before.max(now), ..untouched(message) }
}
