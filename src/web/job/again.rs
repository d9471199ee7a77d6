//! What comes after an inspection: its repeat, or the new one that a repair makes necessary.

use askama::Template;
use axum::extract::{Path, State};

use super::{JobPage, inspection_said};
use crate::db;
use crate::model::ids::JobId;
use crate::model::job::JobKind;
use crate::model::stage::Stage;
use crate::rules::inspection::may_fail;
use crate::rules::term::{repair_restarts, term};
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed};
use crate::web::kit::{self, JobSheet, Verdict};
use crate::web::page::{Frame, page, retry, see_other};
use crate::web::routes::BENCH;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

#[derive(Template)]
#[template(path = "job/again.html")]
struct AgainPage {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    verdict: Option<Verdict>,
    /// The inspection that this one follows, in words; empty where it follows none.
    follows: String,
    /// What the rules say about a repeat.
    rule: String,
    /// A job that repeats this one already: its number and address.
    repeated: Option<(String, String)>,
    action: String,
    repair_action: String,
    may_repair: bool,
    may_act: bool,
}

async fn again_page(app: &App, job: JobPage, form: Form) -> Result<AgainPage, Error> {
    let w = job.w();
    let mut con = app.read().await?;
    let others = db::jobs::list_of_vehicle(&mut con, job.who.branch.id, job.file.vehicle.id).await?;
    let repeated = others.into_iter().find(|other| other.comes_back_from == Some(job.id()));
    let rule = match term(&job.book, job.today) {
        Some(term) => {
            let key = if term.failed_only { "again-rule-failed-only" } else { "again-rule-whole" };
            w.tv(key, &[("by", w.medium_date(term.by_on).into()), ("source", term.source.as_str().into())])
        }
        None => w.t("again-rule-none"),
    };
    let follows = job.file.repeats.as_ref().map(|first| {
        let is_partial = first.is_partial_on(job.day_of(job.file.job.opened_at));
        let key = match (is_partial, first.number.is_empty()) {
            (true, _) => "again-follows-partial",
            (false, true) => "again-follows-job",
            (false, false) => "again-follows-whole",
        };
        let on = first.issued_on.map(|on| w.medium_date(on)).unwrap_or_default();
        let values =
            [("number", first.number.as_str().into()), ("on", on.into()), ("job", first.job_number.as_str().into())];
        w.tv(key, &values)
    });
    Ok(AgainPage {
        verdict: may_fail(job.file.job.kind).then(|| inspection_said::verdict(&job)),
        follows: follows.unwrap_or_default(),
        rule,
        repeated: repeated.map(|other| (other.number, path::job(other.id))),
        action: path::job_repeat(job.id()),
        repair_action: path::job_repair(job.id()),
        may_repair: job.file.job.kind == JobKind::Inspection
            && job.file.job.state.is_live()
            && repair_restarts(&job.book),
        may_act: BENCH.lets(&job.who.actor),
        sheet: job.sheet(Stage::Proving),
        frame: job.frame,
        form: form.scoped("again"),
    })
}

/// `GET /jobs/{id}/repeat`.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<JobId>) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    page(again_page(&app, job, Form::blank()).await?)
}

/// `POST /jobs/{id}/repeat`: the repeat of an inspection that failed is opened.
pub async fn create(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    let form = Form::from(typed);
    let next = app.shop.repeat_inspection(&who.actor, form.key(), id).await?;
    see_other(path::job(next))
}

/// `POST /jobs/{id}/repair`: a repair ends the inspection, and a new one is opened.
pub async fn repair(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    let mut form = Form::from(typed).scoped("again");
    if let Some(what) = form.text("repaired", 400) {
        match app.shop.end_by_repair(&job.who.actor, form.key(), id, what).await {
            Ok(next) => return see_other(path::job(next)),
            Err(refusal) => beside(&mut form, refusal)?,
        }
    }
    retry(again_page(&app, job, form).await?)
}
