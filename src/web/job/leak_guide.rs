//! Joints searched one after the other, with one hand: a joint a page, its name large, three targets for a glove.
//!
//! Nothing is kept until the last joint: each page carries what was said before, and the last one is the form of
//! [`super::leak_joints`], filled, to be looked over and recorded. So a double tap or a way back loses nothing and records
//! nothing twice, and no script is needed.

use askama::Template;
use axum::extract::{Path, State};
use serde::Deserialize;

use super::JobPage;
use super::leak_joints::LeakJointsForm;
use super::record::{self, Recorded};
use crate::model::Coded;
use crate::model::evidence::{JointVerdict, LeakMethod};
use crate::model::ids::JobId;
use crate::model::job::Fuel;
use crate::model::stage::Stage;
use crate::web::app::App;
use crate::web::form::{Form, Row, Typed, unit_name};
use crate::web::kit::{self, Group, JobSheet, Mark};
use crate::web::page::{Frame, page, retry};
use crate::web::visitor::Visitor;
use crate::web::{Answer, path};

/// Job and section of an address.
#[derive(Debug, Clone, Deserialize)]
pub struct At {
    id: JobId,
    subject: String,
}

/// What is carried from page to page beside the joints.
const CARRIED: [&str; 7] =
    ["key", "replaces_id", "method", "pressure_gauge_kpa", "foam_batch", "foam_expires_on", "detector_id"];

#[derive(Template)]
#[template(path = "job/leak_guide.html")]
struct GuidePage {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    title: String,
    action: String,
    cancel: String,
    /// What the next page must know: names and texts.
    carried: Vec<(String, String)>,
    /// Method and means, before the first joint.
    groups: Vec<Group>,
    joint: Option<Joint>,
    may_record: bool,
}

/// The joint that is looked at.
struct Joint {
    /// Its place, from 0.
    at: usize,
    count: String,
    name: String,
    how: String,
    dry: String,
    leaks: String,
    /// What was said of the others.
    so_far: Vec<(Mark, String)>,
    has_leak: bool,
}

/// `GET /jobs/{id}/leak-joints/{subject}/guide`: with what it is searched.
pub async fn show(State(app): State<App>, who: Visitor, Path(at): Path<At>) -> Answer {
    let job = JobPage::open(&app, who, at.id).await?;
    let kind = LeakJointsForm::open(&app, &job, &at.subject).await?;
    let mut form = record::opened(&kind, &job, &at.subject);
    // A search begins anew: what an earlier one showed is not taken over as if it had been looked at again.
    for row in named(&form) {
        form.set(&row.name("verdict"), JointVerdict::NotTested.code());
    }
    page(guide(job, &kind, &at.subject, form, None))
}

/// `POST /jobs/{id}/leak-joints/{subject}/guide`: what a joint showed, and on to the next; after the last, the whole form.
pub async fn step(State(app): State<App>, who: Visitor, Path(at): Path<At>, typed: Typed) -> Answer {
    let job = JobPage::open(&app, who, at.id).await?;
    let kind = LeakJointsForm::open(&app, &job, &at.subject).await?;
    let mut form = Form::from(typed).scoped(LeakJointsForm::KIND);
    let rows = named(&form);
    let here = form.value("at").parse::<usize>().ok().filter(|n| *n < rows.len());
    let next = match (form.value("then"), here) {
        ("back", Some(here)) => here.checked_sub(1),
        (said, Some(here)) => {
            // An answer that is none leaves the joint as it was and asks again.
            let Ok(verdict) = said.parse::<JointVerdict>() else {
                return retry(guide(job, &kind, &at.subject, form, Some(here)));
            };
            form.set(&rows[here].name("verdict"), verdict.code());
            Some(here + 1)
        }
        // From the first page on: method and means must be sound before anybody kneels down.
        (_, None) => {
            if kind.read(&job, &mut form).is_none() {
                return retry(guide(job, &kind, &at.subject, form, None));
            }
            Some(0)
        }
    };
    match next {
        Some(next) if next >= rows.len() => record::look_over(&kind, job, form, &at.subject),
        next => page(guide(job, &kind, &at.subject, form, next)),
    }
}

/// The joints that have a name.
fn named(form: &Form) -> Vec<Row> {
    let rows = form.rows_shown("joints", 0, 0);
    rows.into_iter().filter(|row| !form.value(&row.name("name")).trim().is_empty()).collect()
}

fn guide(job: JobPage, kind: &LeakJointsForm, subject: &str, form: Form, at: Option<usize>) -> GuidePage {
    let w = job.w();
    let rows = named(&form);
    let mut carried: Vec<(String, String)> = Vec::new();
    let mut take = |name: &str| {
        if !form.value(name).is_empty() {
            carried.push((name.to_owned(), form.value(name).to_owned()));
        }
    };
    // On the first page method and means are fields, not carried.
    let shown = if at.is_none() { &CARRIED[1..2] } else { &CARRIED[..] };
    for name in shown {
        take(name);
    }
    if at.is_some() {
        take(&unit_name("pressure_gauge_kpa"));
    }
    for row in &rows {
        take(&row.name("name"));
        take(&row.name("verdict"));
    }
    let here = path::job_guide(job.id(), LeakJointsForm::KIND, subject);
    GuidePage {
        sheet: job.sheet(Stage::Proving),
        title: w.t(format!("slot-leak-joints-{subject}")),
        action: here,
        cancel: path::job_stage(job.id(), Stage::Proving),
        groups: if at.is_none() { kind.groups(&job, &form).into_iter().take(2).collect() } else { Vec::new() },
        joint: at.and_then(|at| joint(&job, &form, &rows, at)),
        may_record: job.file.job.state.is_live(),
        carried,
        frame: job.frame,
        form,
    }
}

fn joint(job: &JobPage, form: &Form, rows: &[Row], at: usize) -> Option<Joint> {
    let w = job.w();
    let verdict_of = |row: &Row| form.value(&row.name("verdict")).parse().unwrap_or(JointVerdict::NotTested);
    let said = rows.iter().map(|row| (form.value(&row.name("name")).to_owned(), verdict_of(row)));
    let so_far = said.clone().filter(|(_, verdict)| *verdict != JointVerdict::NotTested).map(|(name, verdict)| {
        let mark = if verdict == JointVerdict::Leaks { Mark::Stops } else { Mark::Met };
        let word = w.t(format!("joint-verdict-{verdict}"));
        (mark, w.tv("leak-joints-said", &[("name", name.as_str().into()), ("verdict", word.into())]))
    });
    let method = form.value("method").parse().unwrap_or(LeakMethod::Foam);
    let how = match (method, job.file.job.fuel) {
        (LeakMethod::Foam, _) => "leak-guide-foam",
        (LeakMethod::Detector, Fuel::Lpg) => "leak-guide-detector-lpg",
        (LeakMethod::Detector, Fuel::Cng) => "leak-guide-detector-cng",
    };
    Some(Joint {
        at,
        count: w.tv("leak-guide-at", &[("n", (at + 1).into()), ("all", rows.len().into())]),
        name: form.value(&rows.get(at)?.name("name")).to_owned(),
        how: w.t(how),
        dry: w.t(format!("leak-guide-dry-{method}")),
        leaks: w.t(format!("leak-guide-leaks-{method}")),
        has_leak: said.into_iter().any(|(_, verdict)| verdict == JointVerdict::Leaks),
        so_far: so_far.collect(),
    })
}
