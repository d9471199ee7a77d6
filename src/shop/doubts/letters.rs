//! Letters about safety: a paper in doubt, a part recalled. They go without consent and say why; where there is no good mail
//! address they are printed and posted.

use crate::db;
use crate::db::vehicle_people;
use crate::model::customer::Customer;
use crate::model::ids::{JobId, MessageId, VehicleId};
use crate::model::message::{HeldBecause, MessageKind, MessageState, NewMessage};
use crate::shop::{Refusal, Work};
use crate::words::{Value, Words};

/// A letter before it is put into words.
#[derive(Debug, Clone, Copy)]
pub(super) struct Letter {
    pub kind: MessageKind,
    pub vehicle: VehicleId,
    /// Key of its words: the subject under it, the text under `KEY-text`.
    pub key: &'static str,
    pub is_demo: bool,
}

impl Work {
    /// Who keeps a vehicle today; where nobody is known to, whoever kept it when the job was done.
    pub(super) async fn keeper_of(&mut self, vehicle: VehicleId, job: JobId) -> Result<Customer, Refusal> {
        let branch = self.who.branch;
        let keeper = match vehicle_people::keeper(self, vehicle).await? {
            Some(keeper) => keeper,
            None => db::jobs::find(self, branch, job).await?.ok_or(Refusal::Gone)?.keeper_id,
        };
        db::customers::find(self, branch, keeper).await?.ok_or(Refusal::Gone)
    }

    /// Writes a letter into the outbox, in the customer's language.
    pub(super) async fn write_letter<'a>(
        &mut self,
        letter: &Letter,
        to: &Customer,
        values: impl FnOnce(&Words) -> Vec<(&'static str, Value<'a>)>,
    ) -> Result<MessageId, Refusal> {
        let (branch_id, now) = (self.who.branch, self.now);
        let branch = db::branches::find(self, branch_id).await?.ok_or(Refusal::Gone)?;
        let w = Words::for_customer([&*to.language, &branch.language]);
        let values = values(&w);
        let subject = w.tv(letter.key, &values);
        let demo = if letter.is_demo { w.t("paper-demonstration-notice") } else { String::new() };
        let parts = [
            demo,
            w.tv("letter-dear", &[("name", to.name.as_str().into())]),
            w.tv(&format!("{}-text", letter.key), &values),
            w.t("letter-without-consent"),
            w.tv("letter-reach-us", &[("phone", branch.phone.as_str().into()), ("shop", branch.name.as_str().into())]),
        ];
        let text: Vec<String> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        let has_mail = !to.mail.is_empty() && to.mail_state == "good";
        let message = NewMessage {
            kind: letter.kind,
            customer_id: Some(to.id),
            vehicle_id: Some(letter.vehicle),
            recipient: if has_mail { to.mail.clone() } else { String::new() },
            language: w.tag().to_owned(),
            // Names come from people; a line break in one must not reach a header.
            subject: subject.split_whitespace().collect::<Vec<_>>().join(" "),
            body_text: text.join("\n\n"),
            body_html: String::new(),
            calendar: String::new(),
            state: if has_mail { MessageState::Waiting } else { MessageState::Letter },
            held_because: HeldBecause::Nothing,
            not_before: now,
            duties: Vec::new(),
        };
        Ok(db::outbox::insert(self, branch_id, &message, now).await?)
    }
}
