//! Hand-over: what was explained, what falls due next, who took the vehicle and signed for it.
//!
//! The signature is drawn on the screen where scripts run, or comes as a photographed or scanned paper; either way it is
//! a file of the job. A correction without a new one keeps the one that was given.

use uuid::Uuid;

use super::JobPage;
use super::facts::{Fact, Facts};
use super::record::{Group, Recorded, Taken};
use crate::attachments::Takes;
use crate::model::Coded;
use crate::model::duty::NewDuty;
use crate::model::evidence::{Entry, Evidence, HandOver, ReceivedHow};
use crate::model::ids::AttachmentId;
use crate::model::paper::certificate::InspectionOutcome;
use crate::model::stage::Stage;
use crate::rules::inspection::{found, judge, may_fail};
use crate::rules::intervals;
use crate::shop::attachments::FilePlace;
use crate::web::app::App;
use crate::web::form::{Form, Wrong};
use crate::web::{Error, attachments, kit};

/// The form of [`HandOver`].
#[derive(Debug)]
pub struct HandOverForm;

const SIGNATURE: &str = "signature";

fn of(entry: &Entry) -> Option<&HandOver> {
    if let Evidence::HandOver(one) = &entry.body { Some(one) } else { None }
}

fn topic_ids(job: &JobPage) -> Vec<String> {
    job.book.topics(&job.file.job).into_iter().map(|topic| topic.id.clone()).collect()
}

/// "First check by 12 Jul 2026 or at 129 930 km".
fn duty(job: &JobPage, duty: &NewDuty) -> String {
    let w = job.w();
    let what = w.t(format!("duty-kind-{}", duty.kind.code()));
    let on = w.medium_date(duty.due_on);
    match duty.due_km {
        Some(km) => {
            let km = format!("{}\u{a0}km", w.integer(km));
            w.tv("hand-over-duty-or", &[("what", what.into()), ("on", on.into()), ("km", km.into())])
        }
        None => w.tv("hand-over-duty", &[("what", what.into()), ("on", on.into())]),
    }
}

/// What falls due when the vehicle leaves today, in one sentence.
fn next(job: &JobPage) -> String {
    let w = job.w();
    let has_failed =
        may_fail(job.file.job.kind) && judge(&job.proofs, found(&job.file)).outcome == Some(InspectionOutcome::Fail);
    let duties = if has_failed {
        intervals::after_a_fail(&job.book, job.today).into_iter().collect()
    } else {
        intervals::duties(&job.file, &job.book, job.today)
    };
    if duties.is_empty() {
        return w.t("hand-over-no-duties");
    }
    let said = duties.iter().map(|one| duty(job, one)).collect::<Vec<_>>().join(" · ");
    w.tv("hand-over-next", &[("duties", said.into())])
}

impl Recorded for HandOverForm {
    const KIND: &'static str = "hand-over";
    const STAGE: Stage = Stage::HandOver;

    async fn open(_: &App, _: &JobPage, _: &str) -> Result<Self, Error> {
        Ok(Self)
    }

    fn blank(&self, job: &JobPage) -> Form {
        Form::blank().with("received_by", &job.file.keeper.name).with("received_how", ReceivedHow::Drawn.code())
    }

    fn filled(&self, _: &JobPage, entry: &Entry) -> Form {
        let Some(seen) = of(entry) else { return Form::blank() };
        let said = |yes: bool| if yes { "yes" } else { "no" };
        let mut form = Form::blank()
            .with("manuals_given", said(seen.manuals_given))
            .with("consents_to_reminders", said(seen.consents_to_reminders))
            .with("received_by", &seen.received_by)
            .with("received_how", seen.received_how.code());
        for topic in &seen.topics {
            form.add("topics", topic);
        }
        form
    }

    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group> {
        let w = job.w();
        let ids = topic_ids(job);
        let topics = kit::choices(&w, "topic", ids.iter().map(String::as_str));
        let how = kit::coded::<ReceivedHow>(&w);
        vec![
            Group::new(
                w.t("hand-over-explained"),
                vec![kit::ticks(form, &w, "topics", &topics), kit::yes_no(form, &w, "manuals_given")],
            ),
            Group::new(w.t("hand-over-due"), vec![kit::yes_no(form, &w, "consents_to_reminders")]).noted(next(job)),
            Group::new(
                w.t("hand-over-received"),
                vec![
                    kit::text(form, &w, "received_by"),
                    kit::pick(form, &w, "received_how", &how),
                    kit::file(form, &w, SIGNATURE, Takes::Papers.accept()).drawn(),
                ],
            ),
        ]
    }

    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken> {
        let known = topic_ids(job);
        let topics = form.ticks::<String>("topics");
        if topics.iter().any(|topic| !known.contains(topic)) {
            form.fail("topics", Wrong::NotAChoice);
        }
        let manuals_given = form.yes_no("manuals_given");
        let consents_to_reminders = form.yes_no("consents_to_reminders");
        let received_by = form.text("received_by", 200);
        let received_how = form.choice::<ReceivedHow>("received_how");
        form.sound()?;
        Some(Taken::of(Evidence::HandOver(HandOver {
            topics,
            received_by: received_by?,
            received_how: received_how?,
            consents_to_reminders: consents_to_reminders?,
            manuals_given: manuals_given?,
        })))
    }

    async fn keep(&self, app: &App, job: &JobPage, form: &mut Form) -> Result<Vec<AttachmentId>, Error> {
        if form.sound().is_none() {
            return Ok(Vec::new());
        }
        let Some(sent) = attachments::sent_signature(form, SIGNATURE) else {
            let given = job.file.entry(Self::KIND, "").map(|entry| entry.attachments.clone()).unwrap_or_default();
            if given.is_empty() {
                form.fail(SIGNATURE, Wrong::Rule("wrong-not-signed", Vec::new()));
            }
            return Ok(given);
        };
        // A key of its own beside the form's: a double tap keeps one file and makes one record.
        let key = form.key().map(|key| Uuid::from_u128(key.as_u128() ^ 1));
        let (place, takes) = (FilePlace::of_job(job.id(), SIGNATURE), Takes::Papers);
        let sorted = app.shop.keep_files(&job.who.actor, key, place, takes, vec![sent]).await?;
        attachments::note_unfit(form, &job.w(), SIGNATURE, takes, &sorted);
        Ok(sorted.kept)
    }

    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact> {
        let Some(seen) = of(entry) else { return Vec::new() };
        let w = job.w();
        let topics = seen.topics.iter().map(|topic| w.t(format!("topic-{topic}"))).collect::<Vec<_>>().join(" · ");
        Facts::new(w, Self::KIND)
            .text("topics", topics)
            .yes_no("manuals_given", seen.manuals_given)
            .yes_no("consents_to_reminders", seen.consents_to_reminders)
            .text("received_by", &seen.received_by)
            .coded("received_how", seen.received_how)
            .done()
    }
}
