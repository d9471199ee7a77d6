//! The customer's word on the last version: how, who, when.

use axum::extract::{Path, State};
use time::{Duration, OffsetDateTime};

use super::show::{Forms, show_page};
use super::{SCOPE, open};
use crate::model::estimate::NewAgreement;
use crate::model::ids::JobId;
use crate::shop::Refusal;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::job::JobPage;
use crate::web::page::{retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, path};

/// A field shows minutes, the store keeps seconds: the minute of the version itself is not before it, and the minute that
/// runs is not in the future.
fn settled(job: &JobPage, at: OffsetDateTime) -> OffsetDateTime {
    let written_at = job.estimates.last().map_or(at, |last| last.written_at);
    match () {
        () if at < written_at && written_at - at < Duration::MINUTE => written_at,
        () if at > job.now && at - job.now < Duration::MINUTE => job.now,
        () => at,
    }
}

/// `POST /jobs/{id}/estimate/agreement`.
pub async fn create(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    let job = open(&app, who, id).await?;
    let mut form = Form::from(typed).scoped(SCOPE);
    let (how, agreed_by) = (form.choice("agreed_how"), form.text("agreed_by", 200));
    let agreed_at = form.moment("agreed_at", &job.who.zone);
    let number = form.opened_version().unwrap_or(0);
    let (Some(()), Some(how), Some(agreed_by), Some(agreed_at)) = (form.sound(), how, agreed_by, agreed_at) else {
        return again(&app, job, form).await;
    };
    let new = NewAgreement { number, how, agreed_by, agreed_at: settled(&job, agreed_at) };
    match app.shop.agree_estimate(&job.who.actor, form.key(), id, new).await {
        Ok(_) => see_other(path::job_estimate(id)),
        Err(Refusal::Stale) => {
            let job = open(&app, job.who, id).await?;
            let last = job.estimates.last().ok_or(Refusal::Stale)?;
            // What was typed was about a version that is no longer the last: whoever sends it again has seen the new one.
            form.set("opened_version", last.number.to_string());
            form.set("key", uuid::Uuid::now_v7().to_string());
            form.fail("agreed_by", Wrong::Rule("estimate-agree-meanwhile", vec![("number", last.number.into())]));
            again(&app, job, form).await
        }
        Err(refusal) => {
            beside(&mut form, refusal)?;
            again(&app, job, form).await
        }
    }
}

async fn again(app: &App, job: JobPage, form: Form) -> Answer {
    let forms = Forms::blank(&job).agreed(form);
    retry(show_page(app, job, forms).await?)
}
