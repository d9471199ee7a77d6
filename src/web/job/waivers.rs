//! One proof: why it stands as it does, on what it rests, and the form by which a signatory lets it pass.

use askama::Template;
use axum::extract::{Path, State};

use super::page::mark_of;
use super::{JobPage, say};
use crate::model::Coded;
use crate::model::ids::JobId;
use crate::model::job::{Waiver, WaiverKind};
use crate::rules::Proof;
use crate::shop::waivers::NewWaiver;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Choice, JobSheet, Mark};
use crate::web::page::{Frame, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

#[derive(Template)]
#[template(path = "job/waiver.html")]
struct WaiverPage {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    title: String,
    mark: Mark,
    why: String,
    source: String,
    place: String,
    action: String,
    back: String,
    kinds: Vec<Choice>,
    /// The waiver in force: who, when, which, why.
    waived: Option<String>,
    /// Why there is no form; empty where there is one.
    closed: String,
    may_end: bool,
}

/// Whatever may be answered: not applicable only where the rule line allows it.
fn kinds(job: &JobPage, proof: &Proof) -> Vec<Choice> {
    let all = kit::coded::<WaiverKind>(&job.w());
    all.into_iter().filter(|one| proof.may_not_apply || one.value != WaiverKind::NotApplicable.code()).collect()
}

fn closed(job: &JobPage, proof: &Proof, may_sign: bool) -> String {
    let key = match () {
        () if !job.file.job.state.is_live() => "refused-job-ended",
        () if proof.is_never_waived => "waiver-never",
        () if proof.state.is_settled() => "waiver-settled",
        () if !may_sign => "waiver-signatory-only",
        () => return String::new(),
    };
    job.w().t(key)
}

fn in_force<'a>(job: &'a JobPage, proof: &str) -> Option<&'a Waiver> {
    job.file.waivers.iter().find(|waiver| waiver.proof == proof)
}

fn waiver_page(job: JobPage, proof: &Proof, form: Form) -> WaiverPage {
    let w = job.w();
    let may_sign = job.who.actor.may_sign_on(job.today).is_some();
    let waiver = in_force(&job, &proof.id);
    let said = |waiver: &Waiver| {
        w.tv(
            "waiver-said",
            &[
                ("kind", w.t(format!("waiver-kind-{}", waiver.kind.code())).into()),
                ("name", waiver.person_name.as_str().into()),
                ("when", job.when(waiver.at).into()),
                ("reason", waiver.reason.as_str().into()),
            ],
        )
    };
    let source = proof.source.as_str();
    let key = if proof.is_checked || proof.is_practice { "waiver-source" } else { "waiver-source-unread" };
    WaiverPage {
        title: say::proof_title(&w, proof),
        mark: mark_of(proof.state),
        why: say::why(&w, &proof.why),
        source: w.tv(key, &[("source", source.into())]),
        place: job.href(&proof.place),
        action: path::job_waiver(job.id(), &proof.id),
        back: path::job_stage(job.id(), proof.stage),
        kinds: kinds(&job, proof),
        waived: waiver.map(said),
        closed: if waiver.is_some() { String::new() } else { closed(&job, proof, may_sign) },
        may_end: may_sign && job.file.job.state.is_live(),
        sheet: job.sheet(proof.stage),
        frame: job.frame,
        form: form.scoped("waiver"),
    }
}

async fn open(app: &App, who: Visitor, id: JobId, proof: &str) -> Result<(JobPage, Proof), Error> {
    let job = JobPage::open(app, who, id).await?;
    let found = job.proofs.iter().find(|known| known.id == proof).cloned();
    Ok((job, found.ok_or(Error::NotFound)?))
}

/// `GET /jobs/{id}/waivers/{proof}`.
pub async fn show(State(app): State<App>, who: Visitor, Path((id, proof)): Path<(JobId, String)>) -> Answer {
    let (job, proof) = open(&app, who, id, &proof).await?;
    // A single answer is given already.
    let form = match kinds(&job, &proof).as_slice() {
        [only] => Form::blank().with("kind", &only.value),
        _ => Form::blank(),
    };
    page(waiver_page(job, &proof, form))
}

/// `POST /jobs/{id}/waivers/{proof}`.
pub async fn create(
    State(app): State<App>,
    who: Visitor,
    Path((id, proof)): Path<(JobId, String)>,
    typed: Typed,
) -> Answer {
    let (job, proof) = open(&app, who, id, &proof).await?;
    let mut form = Form::from(typed).scoped("waiver");
    let kind = form.choice::<WaiverKind>("kind");
    let reason = form.text("reason", 400);
    let (Some(()), Some(kind), Some(reason)) = (form.sound(), kind, reason) else {
        return retry(waiver_page(job, &proof, form));
    };
    if kind == WaiverKind::NotApplicable && !proof.may_not_apply && !proof.is_never_waived {
        form.fail("kind", Wrong::Rule("refused-always-applies", Vec::new()));
        return retry(waiver_page(job, &proof, form));
    }
    let waiver = NewWaiver { proof: proof.id.clone(), kind, reason };
    match app.shop.waive_proof(&job.who.actor, form.key(), id, waiver).await {
        Ok(_) => see_other(path::job_stage(id, proof.stage)),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(waiver_page(job, &proof, form))
        }
    }
}

/// `POST /jobs/{id}/waivers/{proof}/end`.
pub async fn end(
    State(app): State<App>,
    who: Visitor,
    Path((id, proof)): Path<(JobId, String)>,
    typed: Typed,
) -> Answer {
    let (job, proof) = open(&app, who, id, &proof).await?;
    let form = Form::from(typed);
    let waiver = in_force(&job, &proof.id).map(|waiver| waiver.id);
    // A second tap finds it ended: what was wanted is so.
    if let Some(waiver) = waiver {
        app.shop.end_waiver(&job.who.actor, form.key(), id, waiver).await?;
    }
    see_other(path::job_waiver(id, &proof.id))
}
