//! Drives on both fuels: their logs are handed in here, matched column by column, and read on a page of their own.

mod columns;
mod compared;
mod said;
mod session;
mod tables;
mod upload;

use askama::Template;
use axum::extract::{Path, Request, State};

pub use columns::{show as columns, update as match_columns};
pub use said::{facts, verdict};
pub use session::{accept, corrections, show};
pub use tables::picture_of_panels;

use super::JobPage;
use super::record::Group;
use crate::attachments::MOST_LOG_BYTES;
use crate::db;
use crate::logs::LogError;
use crate::model::ids::JobId;
use crate::model::road::{NewRoadSession, RoadPhase, RoadSession, RoadState, Stated};
use crate::model::stage::Stage;
use crate::rules::road::RoadOutcome;
use crate::shop::Refusal;
use crate::shop::road::SentLog;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Wrong};
use crate::web::kit::{self, Cell, Column, JobSheet, Mark, Table};
use crate::web::page::{Frame, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};
use upload::{Came, Log, Uploaded};

/// Where labels of these forms are looked up.
const SCOPE: &str = "road";
/// Fields of the logs: two logs, one on each fuel; or one of both.
const FIELDS: [(&str, Option<Stated>); 3] =
    [("log_petrol", Some(Stated::Petrol)), ("log_gas", Some(Stated::Gas)), ("log_both", None)];

#[derive(Template)]
#[template(path = "job/road_list.html")]
struct ListPage {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    sessions: Option<Table>,
    groups: Vec<Group>,
    action: String,
    cancel: String,
    may_record: bool,
}

async fn sessions_of(app: &App, job: &JobPage) -> Result<Vec<RoadSession>, Error> {
    Ok(db::road_sessions::list(&mut *app.read().await?, job.who.branch.id, job.id()).await?)
}

/// `GET /jobs/{id}/road`: the drives so far, and the form that takes logs in.
pub async fn list(State(app): State<App>, who: Visitor, Path(id): Path<JobId>) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    let sessions = sessions_of(&app, &job).await?;
    let phase = if sessions.iter().any(|one| one.phase == RoadPhase::Before) { "after" } else { "before" };
    let form = Form::blank().with("phase", phase).with("driven_at", super::record::local_now(&job));
    page(list_page(job, &sessions, form))
}

/// `POST /jobs/{id}/road`: logs are taken in as they come, all of them or none; then on to their columns.
pub async fn create(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, request: Request) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    let Uploaded { typed, logs } = upload::read(request, &app).await?;
    let mut form = Form::from(typed).scoped(SCOPE);
    let phase = form.choice::<RoadPhase>("phase");
    let opened_at = job.file.job.opened_at;
    let driven_at = form.measured("driven_at", &job.who.zone, Some(opened_at), job.now);
    let logs = sorted(&mut form, logs);
    for (field, log) in &logs {
        let path = log.received.path().to_owned();
        if let Err(error) = app.shop.look_at_log(path).await? {
            form.fail(field, wrong_log(&log.name, &error));
        }
    }
    let (Some(()), Some(phase), Some(driven_at)) = (form.sound(), phase, driven_at) else {
        let sessions = sessions_of(&app, &job).await?;
        return retry(list_page(job, &sessions, form));
    };
    let new = NewRoadSession { phase, driven_at: driven_at.clamp(opened_at, job.now) };
    let logs = logs.into_iter().map(|(_, log)| log).collect();
    match app.shop.keep_road_logs(&job.who.actor, form.key(), id, new, logs).await {
        Ok(session) => see_other(path::job_road_columns(id, session)),
        Err(refusal @ Refusal::Field { .. }) => {
            beside(&mut form, refusal)?;
            let sessions = sessions_of(&app, &job).await?;
            retry(list_page(job, &sessions, form))
        }
        Err(refusal) => Err(refusal.into()),
    }
}

/// The logs by field, petrol first; what cannot stand together is noted at its field.
fn sorted(form: &mut Form, came: Vec<Log>) -> Vec<(&'static str, SentLog)> {
    let mut logs: Vec<(&'static str, SentLog)> = Vec::new();
    for Log { field, name, came } in came {
        let Some((field, stated)) = FIELDS.into_iter().find(|(known, _)| *known == field) else { continue };
        match came {
            Came::Whole(_) if logs.iter().any(|(known, _)| *known == field) => {
                form.fail(field, Wrong::TooMany { most: 1 });
            }
            Came::Whole(received) => logs.push((field, SentLog { name, received, stated })),
            Came::Empty => form.fail(field, Wrong::FileEmpty { file: name }),
            Came::TooLarge => {
                let most_mb = usize::try_from(MOST_LOG_BYTES / (1024 * 1024)).unwrap_or(usize::MAX);
                form.fail(field, Wrong::FileTooLarge { file: name, most_mb });
            }
        }
    }
    let order = |field: &str| FIELDS.iter().position(|(known, _)| *known == field);
    logs.sort_by_key(|(field, _)| order(field));
    let has = |field: &str| logs.iter().any(|(known, _)| *known == field);
    let rule = |key| Wrong::Rule(key, Vec::new());
    match (has("log_petrol"), has("log_gas"), has("log_both")) {
        (true, true, false) if logs[0].1.received.sha256 == logs[1].1.received.sha256 => {
            form.fail("log_gas", rule("road-same-file"));
        }
        (true, true, false) | (false, false, true) => {}
        (false, true, false) => form.fail("log_petrol", rule("road-other-missing")),
        (true, false, false) => form.fail("log_gas", rule("road-other-missing")),
        (false, false, false) => form.fail("log_petrol", Wrong::FileMissing),
        _ => form.fail("log_both", rule("road-one-or-two")),
    }
    logs
}

/// Why a log is not taken.
fn wrong_log(name: &str, error: &LogError) -> Wrong {
    let (key, more) = match error {
        LogError::Empty => return Wrong::FileEmpty { file: name.to_owned() },
        LogError::NoColumn { column } => ("road-log-no-column", column.clone()),
        LogError::Workbook(why) => ("road-log-workbook", why.clone()),
        LogError::Disk(why) => ("road-log-disk", why.clone()),
        _ => ("road-log-no-table", String::new()),
    };
    Wrong::Rule(key, vec![("file", name.to_owned().into()), ("more", more.into())])
}

fn list_page(job: JobPage, sessions: &[RoadSession], form: Form) -> ListPage {
    let w = job.w();
    let form = form.scoped(SCOPE);
    let accept = ".csv,.txt,.tsv,.log,.xlsx,text/csv,text/plain";
    let file = |name: &str| kit::file(&form, &w, name, accept);
    let groups = vec![
        Group::new(
            w.t("road-group-drive"),
            vec![kit::pick(&form, &w, "phase", &kit::coded::<RoadPhase>(&w)), kit::moment(&form, &w, "driven_at")],
        ),
        Group::new(w.t("road-group-two"), vec![file("log_petrol"), file("log_gas")]).noted(w.t("road-note-two")),
        Group::new(w.t("road-group-one"), vec![file("log_both")]).noted(w.t("road-note-one")),
    ];
    ListPage {
        sheet: job.sheet(Stage::Calibration),
        sessions: (!sessions.is_empty()).then(|| sessions_table(&job, sessions)),
        groups,
        action: path::job_road(job.id()),
        cancel: job.stage_path(Stage::Calibration),
        may_record: job.file.job.state.is_live(),
        frame: job.frame,
        form,
    }
}

fn sessions_table(job: &JobPage, sessions: &[RoadSession]) -> Table {
    let w = job.w();
    let row = |one: &RoadSession| {
        let (mark, said) = standing(job, one);
        let href = match one.state() {
            RoadState::Kept => path::job_road_columns(job.id(), one.id),
            _ => path::job_road_session(job.id(), one.id),
        };
        let came =
            w.tv("record-by", &[("name", one.person_name.as_str().into()), ("when", job.when(one.recorded_at).into())]);
        let names: Vec<&str> = one.logs.iter().map(|log| log.file.name.as_str()).collect();
        vec![
            Cell::link(job.when(one.driven_at), href).with_second(came),
            Cell::new(w.t(format!("road-phase-{}", one.phase))),
            Cell::new(names.join(", ")),
            Cell::new(said).marked(mark),
        ]
    };
    let columns = ["road-column-driven", "road-column-phase", "road-column-logs", "road-column-standing"];
    Table {
        w,
        caption: w.t("road-sessions"),
        columns: columns.into_iter().map(|key| Column::text(w.t(key))).collect(),
        rows: sessions.iter().map(row).collect(),
    }
}

/// How a drive stands, in a few words.
fn standing(job: &JobPage, one: &RoadSession) -> (Mark, String) {
    let w = job.w();
    let Some(found) = &one.comparison else { return (Mark::Missing, w.t("road-standing-kept")) };
    let outcome = RoadOutcome::of(found);
    let said = w.t(format!("road-title-{}", outcome.key()));
    let current = job.file.entry("road", "").map(|entry| entry.id);
    let said = match one.evidence_id {
        Some(id) if Some(id) == current => w.tv("road-standing-accepted", &[("said", said.into())]),
        Some(_) => w.tv("road-standing-earlier", &[("said", said.into())]),
        None => said,
    };
    (said::mark(outcome), said)
}
