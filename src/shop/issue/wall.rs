//! Papers that belong to no job: the sheet for the wall, a letter of the outbox.

use time::{Date, OffsetDateTime};

use super::owner::Named;
use super::{content, of_job, unprintable, words_of};
use crate::clock::Zone;
use crate::db;
use crate::model::branch::Branch;
use crate::model::customer::Customer;
use crate::model::ids::MessageId;
use crate::model::message::MessageKind;
use crate::model::paper::letter::LetterContent;
use crate::model::paper::wall_sheet::{BayOnWall, WallSheetContent};
use crate::model::person::Actor;
use crate::papers;
use crate::shop::{Refusal, Shop};
use crate::words::Words;

impl Shop {
    /// The sheet for the wall as a PDF: what stands in each bay of the branch on a day. `printed_at` on the shop's clock.
    pub async fn wall_sheet_pdf(
        &self,
        branch: &Branch,
        day: Date,
        bays: Vec<BayOnWall>,
        printed_at: OffsetDateTime,
    ) -> Result<Vec<u8>, Refusal> {
        let words = words_of(&branch.language);
        let content = WallSheetContent {
            shop: content::block_of(branch),
            day,
            bays,
            printed_at,
            language: words.tag().to_owned(),
            is_demonstration: self.issuer.is_demo,
        };
        let size = branch.paper_size;
        of_job::drawn(content, move |content| papers::wall_sheet::wall_sheet(content, &words, size)).await
    }

    /// A message of the outbox as a letter, in the customer's language.
    ///
    /// # Errors
    /// [`Refusal::Gone`] when there is no such message in the branch, or it goes to no customer.
    pub async fn letter_pdf(&self, who: &Actor, id: MessageId, at: OffsetDateTime) -> Result<Named, Refusal> {
        let mut con = self.db.read().await?;
        let message = db::outbox::find(&mut con, who.branch, id).await?.ok_or(Refusal::Gone)?;
        let customer = message.customer_id.ok_or(Refusal::Gone)?;
        let to = db::customers::find(&mut con, who.branch, customer).await?.ok_or(Refusal::Gone)?;
        let branch = db::branches::find(&mut con, who.branch).await?.ok_or(Refusal::Gone)?;
        drop(con);
        let zone = Zone::named(&branch.time_zone).map_err(|error| Refusal::Broken(error.to_string()))?;
        let words = Words::for_customer([&*message.language, &branch.language]);
        unprintable::customer(&to)?;
        let printed = |text: &str| on_paper(text, &to);
        let content = LetterContent {
            shop: content::block_of(&branch),
            to_name: unprintable::printed_name(&to).to_owned(),
            to_address: to.address.lines().map(str::to_owned).collect(),
            day: zone.day_of(at),
            subject: printed(&message.subject),
            paragraphs: message.paragraphs_on_paper().map(printed).collect(),
            answers: answers(&words, message.kind == MessageKind::Reminder),
            written_at: message.made_at,
            language: words.tag().to_owned(),
            is_demonstration: self.issuer.is_demo,
        };
        let size = branch.paper_size;
        let pdf = of_job::drawn(content, move |content| papers::post::letter(content, &words, size)).await?;
        Ok((words.t("letter-file-name"), pdf))
    }
}

/// A text of a message as a face can print it: a name beyond the faces by its spelling.
fn on_paper(text: &str, to: &Customer) -> String {
    match papers::first_unprintable(&to.name) {
        Some(_) => text.replace(&to.name, unprintable::printed_name(to)),
        None => text.to_owned(),
    }
}

/// What an answer slip offers to tick; only a reminder can be answered with "no more".
fn answers(words: &Words, is_reminder: bool) -> Vec<String> {
    let keys = ["letter-answer-come", "letter-answer-elsewhere", "letter-answer-sold", "letter-answer-no-more"];
    keys[..if is_reminder { 4 } else { 3 }].iter().map(|key| words.t(*key)).collect()
}
