//! A version of an estimate as it was written.

use askama::Template;
use axum::extract::{Path, State};

use super::show::lines_table;
use super::{lines_of, open, said, version_of};
use crate::model::ids::JobId;
use crate::model::stage::Stage;
use crate::web::app::App;
use crate::web::kit::{self, JobSheet, Table};
use crate::web::page::{Frame, page};
use crate::web::visitor::Visitor;
use crate::web::{Answer, path};

#[derive(Template)]
#[template(path = "job/estimate_version.html")]
struct VersionPage {
    frame: Frame,
    sheet: JobSheet,
    title: String,
    written: String,
    agreed: String,
    stands: String,
    lines: Table,
    total: String,
    note: String,
    pdf: String,
    csv: String,
    back: String,
}

/// `GET /jobs/{id}/estimate/{number}`: a version as it was written.
pub async fn show(State(app): State<App>, who: Visitor, Path((id, number)): Path<(JobId, String)>) -> Answer {
    let job = open(&app, who, id).await?;
    let (w, version) = (job.w(), version_of(&job, &number)?);
    let by = [("name", (&version.person_name).into()), ("when", job.when(version.written_at).into())];
    let agreement = version.agreement.as_ref();
    let until = version.valid_until_on.map(|day| w.tv("estimate-stood-until", &[("day", w.date(day).into())]));
    page(VersionPage {
        sheet: job.sheet(Stage::Intake),
        title: w.tn("estimate-version", version.number),
        written: w.tv("estimate-written-by", &by),
        agreed: agreement.map_or_else(|| w.t("estimate-not-agreed"), |one| said::agreement_said(&job, version, one)),
        stands: until.unwrap_or_default(),
        lines: lines_table(&w, version, &lines_of(&app, version).await?),
        total: said::total(&w, version),
        note: version.note.clone(),
        pdf: path::job_estimate_pdf(id, version.number),
        csv: path::job_estimate_csv(id, version.number),
        back: path::job_estimate(id),
        frame: job.frame.clone(),
    })
}
