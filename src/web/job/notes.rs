//! Notes about one visit; they stay when the job has ended.

use askama::Template;
use axum::extract::{Path, State};

use super::JobPage;
use crate::db;
use crate::model::ids::JobId;
use crate::model::note::{About, Note};
use crate::web::app::App;
use crate::web::customers::said;
use crate::web::form::{Form, Typed};
use crate::web::kit::{self, JobSheet};
use crate::web::page::{Frame, page, retry, see_other};
use crate::web::routes::WORKERS;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

#[derive(Template)]
#[template(path = "job/notes.html")]
struct NotesPage {
    frame: Frame,
    sheet: JobSheet,
    may_write: bool,
    notes_href: String,
    notes: Vec<(String, Note)>,
    form: Form,
}

impl NotesPage {
    async fn of(app: &App, who: Visitor, id: JobId, form: Form) -> Result<Self, Error> {
        let notes = db::notes::list(&mut *app.read().await?, who.branch.id, About::Job(id)).await?;
        let (notes, may_write) = (said(&who, notes), WORKERS.lets(&who.actor));
        let job = JobPage::open(app, who, id).await?;
        let sheet = job.sheet(job.stands_at());
        Ok(Self { sheet, may_write, notes_href: path::job_notes(id), notes, form, frame: job.frame })
    }
}

/// `GET /jobs/{id}/notes`.
pub async fn list(State(app): State<App>, who: Visitor, Path(id): Path<JobId>) -> Answer {
    page(NotesPage::of(&app, who, id, Form::blank().scoped("note")).await?)
}

/// `POST /jobs/{id}/notes`.
pub async fn create(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("note");
    let Some(text) = form.long_text("text", 4_000) else {
        return retry(NotesPage::of(&app, who, id, form).await?);
    };
    app.shop.write_note(&who.actor, form.key(), About::Job(id), text).await?;
    see_other(path::job_notes(id))
}
