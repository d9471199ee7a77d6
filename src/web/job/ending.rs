//! How a job waits and how it ends: hold, hand-over with certificate, release without, cancel.

use askama::Template;
use axum::extract::{Path, State};

use super::JobPage;
use crate::db;
use crate::model::ids::JobId;
use crate::model::job::JobState;
use crate::model::stage::Stage;
use crate::rules::inspection::held_back_from_hand_over;
use crate::shop::jobs::Release;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed};
use crate::web::kit::{self, JobSheet};
use crate::web::page::{Frame, page, retry, see_other};
use crate::web::routes::WORKERS;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

#[derive(Template)]
#[template(path = "job/ending.html")]
struct EndingPage {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    base: String,
    is_live: bool,
    is_held: bool,
    may_act: bool,
    /// Holds, newest first, in words.
    holds: Vec<String>,
    /// Proofs that a certificate waits for.
    open: Vec<(String, String)>,
    /// Nothing that is asked before hand-over is open; whether a certificate stands is for the deed to say.
    may_hand_over: bool,
}

async fn ending_page(app: &App, job: JobPage, form: Form) -> Result<EndingPage, Error> {
    let w = job.w();
    let holds = db::jobs::list_holds(&mut *app.read().await?, job.id()).await?;
    let said = |hold: &crate::model::job::Hold| {
        let (reason, from) = (hold.reason.as_str().into(), job.when(hold.began_at).into());
        match hold.ended_at {
            Some(until) => {
                w.tv("ending-hold-ended", &[("reason", reason), ("from", from), ("until", job.when(until).into())])
            }
            None => w.tv("ending-hold-open", &[("reason", reason), ("from", from)]),
        }
    };
    let open = held_back_from_hand_over(&job.file, &job.proofs);
    Ok(EndingPage {
        base: path::job(job.id()),
        is_live: job.file.job.state.is_live(),
        is_held: job.file.job.state == JobState::Held,
        may_act: WORKERS.lets(&job.who.actor),
        holds: holds.iter().map(said).collect(),
        may_hand_over: open.is_empty(),
        open: open.iter().map(|proof| (super::say::proof_title(&w, proof), job.href(&proof.place))).collect(),
        sheet: job.sheet(Stage::HandOver),
        frame: job.frame,
        form: form.scoped("ending"),
    })
}

/// `GET /jobs/{id}/ending`.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<JobId>) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    page(ending_page(&app, job, Form::blank()).await?)
}

/// `POST /jobs/{id}/ending`: handed over with its certificate.
pub async fn hand_over(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    let form = Form::from(typed);
    app.shop.hand_over(&who.actor, form.key(), id).await?;
    see_other(path::job(id))
}

/// `POST /jobs/{id}/hold`.
pub async fn hold(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    let mut form = Form::from(typed).scoped("ending");
    if let Some(reason) = form.text("hold_reason", 400) {
        match app.shop.begin_hold(&job.who.actor, form.key(), id, reason).await {
            Ok(_) => return see_other(path::job(id)),
            Err(refusal) => beside(&mut form, refusal)?,
        }
    }
    retry(ending_page(&app, job, form).await?)
}

/// `POST /jobs/{id}/hold/end`.
pub async fn end_hold(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    let form = Form::from(typed);
    app.shop.end_hold(&who.actor, form.key(), id).await?;
    see_other(path::job(id))
}

/// `POST /jobs/{id}/cancellation`.
pub async fn cancel(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    let mut form = Form::from(typed).scoped("ending");
    if let Some(reason) = form.text("cancel_reason", 400) {
        match app.shop.cancel_job(&job.who.actor, form.key(), id, reason).await {
            Ok(()) => return see_other(path::job(id)),
            Err(refusal) => beside(&mut form, refusal)?,
        }
    }
    retry(ending_page(&app, job, form).await?)
}

/// `POST /jobs/{id}/release`.
pub async fn release(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    let mut form = Form::from(typed).scoped("ending");
    let reason = form.text("release_reason", 400);
    let is_gas_shut_off = form.yes_no("is_gas_shut_off");
    let signed_by = form.text("signed_by", 200);
    if let (Some(()), Some(reason), Some(is_gas_shut_off), Some(signed_by)) =
        (form.sound(), reason, is_gas_shut_off, signed_by)
    {
        let release = Release { reason, is_gas_shut_off, signed_by };
        match app.shop.release_job(&job.who.actor, form.key(), id, release).await {
            Ok(()) => return see_other(path::job(id)),
            Err(refusal) => beside(&mut form, refusal)?,
        }
    }
    retry(ending_page(&app, job, form).await?)
}
