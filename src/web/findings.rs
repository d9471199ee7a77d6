//! Findings: those of a job, one of an instrument, and the decision on each.

use askama::Template;
use axum::extract::{Path, State};

use super::app::App;
use super::error::beside;
use super::form::{Form, Typed, Wrong};
use super::kit::{self, Mark};
use super::page::{Frame, Place, page, retry, see_other};
use super::visitor::Visitor;
use super::{Answer, Error, doubts, instruments, path};
use crate::clock::Zone;
use crate::db;
use crate::model::finding::Finding;
use crate::model::ids::{FindingId, InstrumentId, JobId};
use crate::model::job::Job;
use crate::shop::Refusal;
use crate::shop::findings::{FoundIn, NewFinding};
use crate::words::Words;

/// A finding as a page shows it.
#[derive(Debug, Clone)]
pub struct FindingLine {
    pub mark: Mark,
    pub text: String,
    /// What it rests on, and when it was opened.
    pub opened: String,
    /// From when on the instrument is in doubt; empty in a job.
    pub suspect: String,
    /// What was decided and when; empty while open.
    pub decision: String,
    pub href: String,
}

impl FindingLine {
    /// The line of one finding.
    pub fn new(w: &Words, zone: &Zone, one: &Finding, suspect: String) -> Self {
        let key = format!("finding-source-{}", one.source);
        let source = w.find(&key).unwrap_or_else(|| one.source.clone());
        let at = w.date_time(zone.local(one.opened_at));
        let opened = w.tv("finding-opened", &[("at", at.into()), ("source", source.into())]);
        let decided = |at| {
            let at = w.date_time(zone.local(at));
            w.tv("finding-decided", &[("at", at.into()), ("decision", one.decision.as_str().into())])
        };
        Self {
            mark: if one.is_open() { Mark::Stops } else { Mark::Met },
            text: one.text.clone(),
            opened,
            suspect: if one.is_open() { suspect } else { String::new() },
            decision: one.decided_at.map(decided).unwrap_or_default(),
            href: path::finding(one.id),
        }
    }
}

#[derive(Template)]
#[template(path = "findings/list.html")]
struct ListPage {
    frame: Frame,
    form: Form,
    /// "Job 2026-0147" or the code of an instrument, and its page.
    about: String,
    about_href: String,
    action: String,
    findings: Vec<FindingLine>,
    may_open: bool,
}

async fn find_job(app: &App, who: &Visitor, id: JobId) -> Result<(Job, Vec<Finding>), Error> {
    let mut con = app.read().await?;
    let job = db::jobs::find(&mut con, who.branch.id, id).await?.ok_or(Error::NotFound)?;
    Ok((job, db::findings::list(&mut con, id).await?))
}

fn page_of_job(who: &Visitor, job: &Job, findings: &[Finding], form: Form) -> ListPage {
    let frame = who.frame().at(Place::Jobs);
    let w = frame.w;
    ListPage {
        about: w.tv("finding-in-job", &[("number", job.number.as_str().into())]),
        about_href: path::job(job.id),
        action: path::job_findings(job.id),
        findings: findings.iter().map(|one| FindingLine::new(&w, &who.zone, one, String::new())).collect(),
        may_open: job.state.is_live() && instruments::may_change(&who.actor),
        frame,
        form: form.scoped("finding"),
    }
}

/// `GET /jobs/{id}/findings`.
pub async fn list(State(app): State<App>, who: Visitor, Path(id): Path<JobId>) -> Answer {
    let (job, findings) = find_job(&app, &who, id).await?;
    page(page_of_job(&who, &job, &findings, Form::blank()))
}

/// `POST /jobs/{id}/findings`.
pub async fn create(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    let (job, findings) = find_job(&app, &who, id).await?;
    let mut form = Form::from(typed).scoped("finding");
    if let Some(new) = read(&mut form, FoundIn::Job(id)) {
        match app.shop.open_finding(&who.actor, form.key(), new).await {
            Ok(_) => return see_other(path::job_findings(id)),
            Err(refusal) => beside(&mut form, refusal)?,
        }
    }
    retry(page_of_job(&who, &job, &findings, form))
}

/// `GET /instruments/{id}/findings/new`.
pub async fn new_of_instrument(State(app): State<App>, who: Visitor, Path(id): Path<InstrumentId>) -> Answer {
    page(page_of_instrument(&app, &who, id, Form::blank()).await?)
}

/// `POST /instruments/{id}/findings`.
pub async fn create_of_instrument(
    State(app): State<App>,
    who: Visitor,
    Path(id): Path<InstrumentId>,
    typed: Typed,
) -> Answer {
    let mut form = Form::from(typed).scoped("finding");
    if let Some(new) = read(&mut form, FoundIn::Instrument(id)) {
        match app.shop.open_finding(&who.actor, form.key(), new).await {
            Ok(_) => return see_other(path::instrument(id)),
            Err(refusal) => beside(&mut form, refusal)?,
        }
    }
    retry(page_of_instrument(&app, &who, id, form).await?)
}

async fn page_of_instrument(app: &App, who: &Visitor, id: InstrumentId, form: Form) -> Result<ListPage, Error> {
    let mut con = app.read().await?;
    let one = db::instruments::find(&mut con, who.branch.id, id).await?.ok_or(Error::NotFound)?;
    let findings = db::findings::list_of_instrument(&mut con, id).await?;
    let frame = who.frame().at(Place::Instruments);
    let w = frame.w;
    Ok(ListPage {
        about: one.code,
        about_href: path::instrument(id),
        action: path::instrument_findings(id),
        findings: findings.iter().map(|one| FindingLine::new(&w, &who.zone, one, String::new())).collect(),
        may_open: instruments::may_change(&who.actor),
        frame,
        form: form.scoped("finding"),
    })
}

fn read(form: &mut Form, found_in: FoundIn) -> Option<NewFinding> {
    let text = form.long_text("text", 2_000);
    let source = form.text("source", 200);
    form.sound()?;
    Some(NewFinding { found_in, source: source?, text: text?, found_at: None })
}

#[derive(Template)]
#[template(path = "findings/show.html")]
struct ShowPage {
    frame: Frame,
    form: Form,
    line: FindingLine,
    about: String,
    about_href: String,
    may_decide: bool,
}

async fn page_of(app: &App, who: &Visitor, id: FindingId, form: Form) -> Result<ShowPage, Error> {
    let mut con = app.read().await?;
    let one = db::findings::find(&mut con, who.branch.id, id).await?.ok_or(Error::NotFound)?;
    let frame = who.frame();
    let w = frame.w;
    let (about, about_href) = match (one.job_id, one.instrument_id) {
        (Some(job), _) => {
            let job = db::jobs::find(&mut con, who.branch.id, job).await?.ok_or(Error::NotFound)?;
            (w.tv("finding-in-job", &[("number", job.number.as_str().into())]), path::job_findings(job.id))
        }
        (None, Some(id)) => {
            let instrument = db::instruments::find(&mut con, who.branch.id, id).await?.ok_or(Error::NotFound)?;
            (instrument.code, path::instrument(id))
        }
        (None, None) => (w.t("nav-today"), path::TODAY.to_owned()),
    };
    let line = FindingLine::new(&w, &who.zone, &one, String::new());
    let may_decide = one.is_open() && instruments::may_change(&who.actor);
    Ok(ShowPage { frame, form: form.scoped("finding"), line, about, about_href, may_decide })
}

/// `GET /findings/{id}`.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<FindingId>) -> Answer {
    if doubts::has_cause(&app, &who, id).await? {
        return doubts::show(&app, &who, id).await;
    }
    page(page_of(&app, &who, id, Form::blank()).await?)
}

/// `POST /findings/{id}/decision`.
pub async fn decide(State(app): State<App>, who: Visitor, Path(id): Path<FindingId>, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("finding");
    let has_cause = doubts::has_cause(&app, &who, id).await?;
    if let Some(decision) = form.long_text("decision", 2_000) {
        match app.shop.decide_finding(&who.actor, form.key(), id, decision).await {
            Ok(()) if has_cause => return see_other(path::finding(id)),
            Ok(()) => {
                let page = page_of(&app, &who, id, Form::blank()).await?;
                return see_other(page.about_href);
            }
            Err(Refusal::Stale) => form.fail("decision", Wrong::Rule("finding-decided-meanwhile", vec![])),
            Err(refusal) => beside(&mut form, refusal)?,
        }
    }
    if has_cause {
        return retry(doubts::work_page(&app, &who, id, form).await?);
    }
    retry(page_of(&app, &who, id, form).await?)
}
