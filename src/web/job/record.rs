//! Recording evidence: one flow for every kind. A kind says its fields, how they are read, how they are shown.
//!
//! The form carries the entry that was current when it was opened. Recording over a newer one shows both and loses
//! neither: the newer stands beside the form, the typed text stays, and sending again is a correction with its reason.

use std::future::Future;

use askama::Template;
use axum::extract::{Path, State};
use serde::Deserialize;
use time::macros::format_description;

use super::JobPage;
use super::facts::Fact;
use super::reckoned::Reckoned;
use crate::model::evidence::{Entry, Evidence, NewEvidence};
use crate::model::ids::{AttachmentId, InstrumentId, JobId};
use crate::model::stage::Stage;
use crate::shop::Refusal;
use crate::web::app::App;
use crate::web::form::{Form, Typed, Wrong};
pub use crate::web::kit::Group;
use crate::web::kit::{self, JobSheet, Verdict};
use crate::web::page::{Frame, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

/// What was read from a form.
#[derive(Debug, Clone, PartialEq)]
pub struct Taken {
    /// What it shows.
    pub body: Evidence,
    /// With what it was measured.
    pub instruments: Vec<InstrumentId>,
    /// Files that were kept for it.
    pub attachments: Vec<AttachmentId>,
}

impl Taken {
    /// Evidence that rests on no instrument and no file.
    pub fn of(body: Evidence) -> Self {
        Self { body, instruments: Vec::new(), attachments: Vec::new() }
    }
}

/// A kind of evidence that can be typed in.
pub trait Recorded: Send + 'static {
    /// Its kind.
    const KIND: &'static str;
    /// Its stage.
    const STAGE: Stage;

    /// Whatever the form needs beside the file (instruments to choose from), read once.
    fn open(app: &App, job: &JobPage, subject: &str) -> impl Future<Output = Result<Self, Error>> + Send
    where
        Self: Sized;

    /// The form as first opened: what is known already, defaults filled in.
    fn blank(&self, job: &JobPage) -> Form;

    /// The form filled from an entry, to correct it.
    fn filled(&self, job: &JobPage, entry: &Entry) -> Form;

    /// The fields.
    fn groups(&self, job: &JobPage, form: &Form) -> Vec<Group>;

    /// What was typed; `None` when something is wrong, noted at its field.
    fn read(&self, job: &JobPage, form: &mut Form) -> Option<Taken>;

    /// Files that came with the form, kept before the deed; by default there are none.
    fn keep(
        &self,
        app: &App,
        job: &JobPage,
        form: &mut Form,
    ) -> impl Future<Output = Result<Vec<AttachmentId>, Error>> + Send {
        let _ = (app, job, form);
        std::future::ready(Ok(Vec::new()))
    }

    /// An entry of this kind, shown again.
    fn facts(job: &JobPage, entry: &Entry) -> Vec<Fact>
    where
        Self: Sized;

    /// What an entry of this kind says, where that takes a sum.
    fn verdict(job: &JobPage, entry: &Entry) -> Option<Verdict>
    where
        Self: Sized,
    {
        let _ = (job, entry);
        None
    }

    /// The form has a button that shows the sums without recording them.
    const RECKONS: bool = false;

    /// The sums of an entry laid out, where the kind has any: on the stage page, and in the form when asked.
    fn reckoned(job: &JobPage, body: &Evidence) -> Option<Reckoned>
    where
        Self: Sized,
    {
        let _ = (job, body);
        None
    }

    /// Where to go after recording; the stage by default.
    fn after(job: &JobPage) -> String
    where
        Self: Sized,
    {
        job.stage_path(Self::STAGE)
    }
}

/// Job, and subject where the kind has several.
#[derive(Debug, Clone, Deserialize)]
pub struct At {
    id: JobId,
    #[serde(default)]
    subject: String,
}

/// The entry that came between opening a form and sending it.
#[derive(Debug, Clone)]
pub struct Meanwhile {
    /// Who and when, in words.
    pub by: String,
    /// What it says.
    pub facts: Vec<Fact>,
}

#[derive(Template)]
#[template(path = "job/record.html")]
struct RecordPage {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    title: String,
    lead: String,
    action: String,
    groups: Vec<Group>,
    /// It corrects an earlier entry: the reason is asked for.
    is_correction: bool,
    meanwhile: Option<Meanwhile>,
    cancel: String,
    may_record: bool,
    reckons: bool,
    reckoned: Option<Reckoned>,
}

/// `GET /jobs/{id}/{kind}`: the form, empty or filled from the entry it would correct.
pub async fn show<K: Recorded>(State(app): State<App>, who: Visitor, Path(at): Path<At>) -> Answer {
    let job = JobPage::open(&app, who, at.id).await?;
    let kind = K::open(&app, &job, &at.subject).await?;
    let form = opened(&kind, &job, &at.subject);
    page(record_page(&kind, job, form, &at.subject, None))
}

/// The form that is open for this slot: empty, or filled from the entry it would correct, measured now.
pub(super) fn opened<K: Recorded>(kind: &K, job: &JobPage, subject: &str) -> Form {
    let form = match job.file.entry(K::KIND, subject) {
        Some(entry) => kind.filled(job, entry).with("replaces_id", entry.id.to_string()),
        None => kind.blank(job),
    };
    form.with("measured_at", local_now(job)).scoped(K::KIND)
}

/// The page of a form that another page filled, to be looked over and recorded.
pub(super) fn look_over<K: Recorded>(kind: &K, job: JobPage, mut form: Form, subject: &str) -> Answer {
    form.set("measured_at", local_now(&job));
    page(record_page(kind, job, form, subject, None))
}

/// `POST /jobs/{id}/{kind}`: recorded, or the form again with what is wrong.
pub async fn create<K: Recorded>(State(app): State<App>, who: Visitor, Path(at): Path<At>, typed: Typed) -> Answer {
    let job = JobPage::open(&app, who, at.id).await?;
    let kind = K::open(&app, &job, &at.subject).await?;
    let mut form = Form::from(typed).scoped(K::KIND);
    if K::RECKONS && form.value("then") == "reckon" {
        let Some(taken) = kind.read(&job, &mut form) else {
            return retry(record_page(&kind, job, form, &at.subject, None));
        };
        let reckoned = K::reckoned(&job, &taken.body);
        return page(RecordPage { reckoned, ..record_page(&kind, job, form, &at.subject, None) });
    }
    let opened_at = job.file.job.opened_at;
    let measured_at = form.measured("measured_at", &job.who.zone, Some(opened_at), job.now);
    let replaces_id = form.opt_choice("replaces_id");
    let replaces_reason = if replaces_id.is_some() { form.text("replaces_reason", 400) } else { None };
    let taken = kind.read(&job, &mut form);
    let kept = kind.keep(&app, &job, &mut form).await?;
    let (Some(()), Some(mut taken)) = (form.sound(), taken) else {
        return retry(record_page(&kind, job, form, &at.subject, None));
    };
    taken.attachments.extend(kept);
    // The minute typed may begin before the vehicle came in the same minute; it was measured after.
    let measured_at = measured_at.map(|at| at.clamp(opened_at, job.now));
    let new = NewEvidence {
        body: taken.body,
        measured_at,
        replaces_id,
        replaces_reason: replaces_reason.unwrap_or_default(),
        instruments: taken.instruments,
        attachments: taken.attachments,
    };
    match app.shop.record_evidence(&job.who.actor, form.key(), at.id, new).await {
        Ok(_) => see_other(K::after(&job)),
        Err(Refusal::Stale) => stale::<K>(&app, &kind, job, form, &at).await,
        Err(Refusal::Field { field, why }) => {
            form.fail(field, Wrong::Rule(why, Vec::new()));
            retry(record_page(&kind, job, form, &at.subject, None))
        }
        Err(refusal) => Err(refusal.into()),
    }
}

/// Somebody was quicker: their entry beside ours, ours still typed, now as a correction of theirs.
async fn stale<K: Recorded>(app: &App, kind: &K, job: JobPage, mut form: Form, at: &At) -> Answer {
    let job = JobPage::open(app, job.who, at.id).await?;
    let Some(entry) = job.file.entry(K::KIND, &at.subject) else {
        return Err(Refusal::Stale.into());
    };
    let by = job.w().tv(
        "record-meanwhile-by",
        &[("name", entry.person_name.as_str().into()), ("when", job.when(entry.recorded_at).into())],
    );
    let meanwhile = Meanwhile { by, facts: K::facts(&job, entry) };
    form.set("replaces_id", entry.id.to_string());
    // The same key would bring back the answer of the send that was refused, if it ever got one.
    form.set("key", uuid::Uuid::now_v7().to_string());
    form.fail("replaces_reason", Wrong::Rule("record-meanwhile", Vec::new()));
    retry(record_page(kind, job, form, &at.subject, Some(meanwhile)))
}

fn record_page<K: Recorded>(
    kind: &K,
    job: JobPage,
    form: Form,
    subject: &str,
    meanwhile: Option<Meanwhile>,
) -> RecordPage {
    let w = job.w();
    let form = form.scoped(K::KIND);
    let key = if subject.is_empty() { K::KIND.to_owned() } else { format!("{}-{subject}", K::KIND) };
    RecordPage {
        sheet: job.sheet(K::STAGE),
        title: w.t(format!("slot-{key}")),
        lead: w.find(&format!("slot-{key}.lead")).unwrap_or_default(),
        action: path::job_slot(job.id(), K::KIND, subject),
        groups: kind.groups(&job, &form),
        is_correction: !form.value("replaces_id").is_empty(),
        cancel: job.stage_path(K::STAGE),
        may_record: job.file.job.state.is_live(),
        reckons: K::RECKONS,
        reckoned: None,
        meanwhile,
        frame: job.frame,
        form,
    }
}

/// Now, as a date-time field shows it.
pub(super) fn local_now(job: &JobPage) -> String {
    let local = job.who.zone.local(job.now);
    local.format(format_description!("[year]-[month]-[day]T[hour]:[minute]")).unwrap_or_default()
}

/// A choice of instruments: code, then whether its word counts today.
pub fn instrument_choices(job: &JobPage, records: &[crate::model::instrument::InstrumentRecord]) -> Vec<kit::Choice> {
    let w = job.w();
    let choice = |record: &crate::model::instrument::InstrumentRecord| {
        let code = record.instrument.code.as_str();
        let label = match (record.trusted(job.now, |at| job.day_of(at)), record.certificate_on(job.today)) {
            (Ok(()), Some(certificate)) => w.tv(
                "instrument-choice-due",
                &[("code", code.into()), ("due", w.short_date(certificate.due_on).into())],
            ),
            (Ok(()), None) => code.to_owned(),
            (Err(_), _) => w.tv("instrument-choice-not-trusted", &[("code", code.into())]),
        };
        kit::Choice::new(record.instrument.id.to_string(), label)
    };
    records.iter().map(choice).collect()
}
