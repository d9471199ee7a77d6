//! The form that writes a version. It names the version it was opened at; a save over a newer one shows both and loses
//! neither: the newer stands beside, the typed lines stay, and sending again makes the next version.

use askama::Template;
use axum::extract::{Path, State};

use super::{SCOPE, currency, lines, lines_of, may_write, open, said, show};
use crate::model::estimate::NewEstimate;
use crate::model::ids::JobId;
use crate::model::stage::Stage;
use crate::shop::Refusal;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::job::JobPage;
use crate::web::kit::{self, Field, JobSheet, Table};
use crate::web::page::{Frame, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

/// A version that came between opening the form and sending it.
struct Meanwhile {
    by: String,
    table: Table,
    total: String,
    note: String,
}

#[derive(Template)]
#[template(path = "job/estimate_form.html")]
struct FormPage {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    title: String,
    action: String,
    columns: Vec<String>,
    rows: Vec<Vec<Field>>,
    row_count: usize,
    /// What the lines come to.
    so_far: String,
    meanwhile: Option<Meanwhile>,
    may_write: bool,
}

fn form_page(job: JobPage, form: Form, meanwhile: Option<Meanwhile>) -> Result<FormPage, Error> {
    let (w, currency) = (job.w(), currency(&job)?);
    let form = form.scoped(SCOPE);
    let shown = lines::rows(&form);
    let number = job.estimates.last().map_or(1, |last| last.number + 1);
    let so_far = lines::so_far(&form, currency).map(|minor| w.money(minor, currency.code()));
    Ok(FormPage {
        sheet: job.sheet(Stage::Intake),
        title: w.tn("estimate-new-version", number),
        action: path::job_estimate(job.id()),
        columns: lines::columns(&w),
        rows: shown.iter().map(|row| lines::fields(&form, &w, row, currency)).collect(),
        row_count: shown.len(),
        so_far: so_far.map(|sum| w.tv("estimate-so-far", &[("sum", sum.into())])).unwrap_or_default(),
        meanwhile,
        may_write: may_write(&job),
        frame: job.frame,
        form,
    })
}

/// `GET /jobs/{id}/estimate/new`: empty, or filled from the last version.
pub async fn new(State(app): State<App>, who: Visitor, Path(id): Path<JobId>) -> Answer {
    let job = open(&app, who, id).await?;
    let form = match job.estimates.last() {
        Some(last) => {
            let until = last.valid_until_on.filter(|day| *day >= job.today);
            lines::filled(Form::blank(), &lines_of(&app, last).await?, last.currency)
                .with("valid_until_on", until.map(|day| day.to_string()).unwrap_or_default())
                .with("note", &last.note)
                .with("opened_version", last.number.to_string())
        }
        None => Form::blank().with("opened_version", "0"),
    };
    page(form_page(job, form, None)?)
}

/// `POST /jobs/{id}/estimate`: a version is written; with `then=line` the form comes again with one more line.
pub async fn create(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    let job = open(&app, who, id).await?;
    let mut form = Form::from(typed).scoped(SCOPE);
    if form.value("then") == "line" {
        let more = lines::rows(&form).len() + 1;
        return page(form_page(job, form.with("rows", more.to_string()), None)?);
    }
    let Some(new) = read(&job, &mut form)? else {
        return retry(form_page(job, form, None)?);
    };
    match app.shop.write_estimate(&job.who.actor, form.key(), id, new).await {
        Ok(_) => see_other(path::job_estimate(id)),
        Err(Refusal::Stale) => stale(&app, job, form).await,
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(form_page(job, form, None)?)
        }
    }
}

fn read(job: &JobPage, form: &mut Form) -> Result<Option<NewEstimate>, Error> {
    let lines = lines::read(form, currency(job)?);
    let valid_until_on = form.opt_date("valid_until_on");
    if valid_until_on.is_some_and(|day| day < job.today) {
        form.fail("valid_until_on", Wrong::Past);
    }
    let note = form.opt_long_text("note", 2_000).unwrap_or_default();
    let opened_at_number = form.opened_version().unwrap_or(0);
    Ok(form.sound().map(|()| NewEstimate { opened_at_number, lines, valid_until_on, note }))
}

/// Somebody was quicker: their version beside ours, ours still typed, now as the one after theirs.
async fn stale(app: &App, job: JobPage, mut form: Form) -> Answer {
    let id = job.id();
    let job = open(app, job.who, id).await?;
    let Some(last) = job.estimates.last() else { return Err(Refusal::Stale.into()) };
    let w = job.w();
    let values = [
        ("number", last.number.into()),
        ("name", (&last.person_name).into()),
        ("when", job.when(last.written_at).into()),
    ];
    let meanwhile = Meanwhile {
        by: w.tv("estimate-meanwhile-by", &values),
        table: show::lines_table(&w, last, &lines_of(app, last).await?),
        total: said::total(&w, last),
        note: last.note.clone(),
    };
    form.set("opened_version", last.number.to_string());
    // The same key would bring back the answer of the send that was refused, if it ever got one.
    form.set("key", uuid::Uuid::now_v7().to_string());
    form.fail("note", Wrong::Rule("estimate-meanwhile", Vec::new()));
    retry(form_page(job, form, Some(meanwhile))?)
}
