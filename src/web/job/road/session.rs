//! What a drive came to: verdict first, then what to drive, pictures with their tables, what to correct; and whether it
//! is accepted as evidence.

use askama::Template;
use axum::extract::{Path, State};

use super::super::record::{self, Recorded};
use super::super::{EngineCalibrationForm, JobPage};
use super::columns::{At, find, said_log};
use super::{SCOPE, compared, said, tables};
use crate::db;
use crate::model::road::{RoadPhase, RoadSession, RoadState};
use crate::model::stage::Stage;
use crate::papers::road;
use crate::shop::Refusal;
use crate::shop::road::RoadOpened;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, JobSheet, Mark, Table, Verdict};
use crate::web::page::{Frame, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};
use tables::Pictured;

/// A log with its address and its checksum.
struct LogLine {
    said: String,
    href: String,
    sum: String,
}

#[derive(Template)]
#[template(path = "job/road_session.html")]
struct SessionPage {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    title: String,
    came: String,
    logs: Vec<LogLine>,
    /// What needs a hand first.
    alarms: Vec<Verdict>,
    /// The nozzle does not serve: where it is sized.
    sizing: Option<String>,
    verdict: Verdict,
    warnings: Vec<String>,
    /// Marks of a warning and of what is accepted.
    doubt: Mark,
    met: Mark,
    drive: Vec<String>,
    pictures: Vec<Pictured>,
    corrections: Option<Table>,
    corrections_href: String,
    side_by_side: Option<Table>,
    /// How it stands as evidence; empty while it may be accepted.
    standing: String,
    is_correction: bool,
    may_accept: bool,
    action: String,
    columns: String,
    all: String,
}

/// `GET /jobs/{id}/road/{session}`.
pub async fn show(State(app): State<App>, who: Visitor, Path(at): Path<At>) -> Answer {
    let job = JobPage::open(&app, who, at.id).await?;
    let session = find(&app, &job, at).await?;
    if session.state() == RoadState::Kept {
        return see_other(path::job_road_columns(at.id, at.session));
    }
    let current = job.file.entry("road", "").map(|entry| entry.id.to_string()).unwrap_or_default();
    let form = Form::blank().with("opened_version", session.version.to_string()).with("replaces_id", current);
    page(session_page(&app, job, session, form).await?)
}

/// `POST /jobs/{id}/road/{session}/acceptance`: the drive becomes evidence.
pub async fn accept(State(app): State<App>, who: Visitor, Path(at): Path<At>, typed: Typed) -> Answer {
    let job = JobPage::open(&app, who, at.id).await?;
    let session = find(&app, &job, at).await?;
    let mut form = Form::from(typed).scoped(SCOPE);
    let replaces = form.opt_choice("replaces_id");
    let reason = if replaces.is_some() { form.text("replaces_reason", 400) } else { None };
    if form.sound().is_none() {
        return retry(session_page(&app, job, session, form).await?);
    }
    let version = form.opened_version().unwrap_or_default();
    let opened = RoadOpened { job: at.id, session: at.session, version };
    let done =
        app.shop.accept_road_comparison(&job.who.actor, form.key(), opened, replaces, reason.unwrap_or_default()).await;
    match done {
        Ok(_) => see_other(path::job_road_session(at.id, at.session)),
        // Somebody accepted another drive, or read this one anew: what stands now is shown, and asked again.
        Err(Refusal::Stale) => {
            let job = JobPage::open(&app, job.who, at.id).await?;
            let session = find(&app, &job, at).await?;
            let current = job.file.entry("road", "").map(|entry| entry.id.to_string()).unwrap_or_default();
            form.set("opened_version", session.version.to_string());
            form.set("replaces_id", current);
            form.set("key", uuid::Uuid::now_v7().to_string());
            form.fail("replaces_reason", Wrong::Rule("road-accept-meanwhile", Vec::new()));
            retry(session_page(&app, job, session, form).await?)
        }
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(session_page(&app, job, session, form).await?)
        }
    }
}

/// `GET /jobs/{id}/road/{session}/corrections`: the form of the engine calibration with these corrections as its regions.
pub async fn corrections(State(app): State<App>, who: Visitor, Path(at): Path<At>) -> Answer {
    let job = JobPage::open(&app, who, at.id).await?;
    let session = find(&app, &job, at).await?;
    let found = session.comparison.ok_or(Error::NotFound)?;
    let kind = EngineCalibrationForm::open(&app, &job, "").await?;
    let mut form = record::opened(&kind, &job, "");
    for row in form.rows("regions") {
        form.set(&row.name("region"), "");
        form.set(&row.name("correction_percent"), "");
    }
    for (i, (region, percent)) in road::correction_lines(&job.w(), &found).into_iter().enumerate() {
        form.set(&format!("regions[{i}][region]"), region);
        form.set(&format!("regions[{i}][correction_percent]"), percent.to_string());
    }
    record::look_over(&kind, job, form, "")
}

/// The last drive before the corrections, for a drive after them.
async fn before(app: &App, job: &JobPage, session: &RoadSession) -> Result<Option<RoadSession>, Error> {
    if session.phase == RoadPhase::Before {
        return Ok(None);
    }
    let all = db::road_sessions::list(&mut *app.read().await?, job.who.branch.id, job.id()).await?;
    Ok(all.into_iter().rfind(|one| one.phase == RoadPhase::Before && one.comparison.is_some()))
}

async fn session_page(app: &App, job: JobPage, session: RoadSession, form: Form) -> Result<SessionPage, Error> {
    let w = job.w();
    let earlier = before(app, &job, &session).await?.and_then(|one| one.comparison);
    let state = session.state();
    let found = session.comparison.as_ref().ok_or(Error::NotFound)?;
    let current = job.file.entry("road", "").map(|entry| entry.id);
    let log = |log: &crate::model::road::RoadLog| LogLine {
        said: said_log(&w, log),
        href: path::attachment(log.file.id),
        sum: log.file.sha256.clone(),
    };
    let standing = match session.evidence_id {
        Some(id) if Some(id) == current => w.t("road-is-accepted"),
        Some(_) => w.t("road-was-accepted"),
        None => String::new(),
    };
    let values = [
        ("driven", job.when(session.driven_at).into()),
        ("name", session.person_name.as_str().into()),
        ("when", job.when(session.recorded_at).into()),
    ];
    let nozzle = road::nozzle(&w, found).is_some();
    Ok(SessionPage {
        sheet: job.sheet(Stage::Calibration),
        title: w.t(format!("road-session-{}", session.phase)),
        came: w.tv("road-came", &values),
        logs: session.logs.iter().map(log).collect(),
        alarms: said::alarms(&w, found),
        sizing: nozzle.then(|| path::job_slot(job.id(), "nozzle-sizing", "")),
        verdict: said::verdict_of(&w, found),
        warnings: road::warnings(&w, found),
        doubt: Mark::Undecided,
        met: Mark::Met,
        drive: road::drive(&w, found),
        pictures: tables::pictured(&w, found),
        corrections: tables::corrections(&w, found),
        corrections_href: path::job_road_corrections(job.id(), session.id),
        side_by_side: earlier.as_ref().and_then(|earlier| compared::table(&w, earlier, found)),
        standing,
        is_correction: !form.value("replaces_id").is_empty(),
        may_accept: job.file.job.state.is_live() && state == RoadState::Judged,
        action: path::job_road_acceptance(job.id(), session.id),
        columns: path::job_road_columns(job.id(), session.id),
        all: path::job_road(job.id()),
        form: form.scoped(SCOPE),
        frame: job.frame,
    })
}
