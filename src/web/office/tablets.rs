//! The shop's tablets: the list, enrolling this browser, taking one out of use.

use askama::Template;
use axum::extract::{Path, State};

use crate::db;
use crate::model::ids::DeviceId;
use crate::web::app::App;
use crate::web::form::{Form, Typed};
use crate::web::kit;
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::sign_in::{TABLET, with_cookie};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

#[derive(Template)]
#[template(path = "office/tablets.html")]
struct TabletsPage {
    frame: Frame,
    form: Form,
    tablets: Vec<Line>,
}

struct Line {
    id: DeviceId,
    name: String,
    since: String,
}

impl TabletsPage {
    async fn of(app: &App, who: &Visitor, form: Form) -> Result<Self, Error> {
        let devices = db::sessions::devices(&mut *app.read().await?, who.branch.id).await?;
        let w = who.words();
        let line = |device: db::sessions::Device| Line {
            id: device.id,
            since: w.date(who.zone.day_of(device.enrolled_at)),
            name: device.name,
        };
        let tablets = devices.into_iter().map(line).collect();
        Ok(Self { tablets, form, frame: who.frame().at(Place::Office) })
    }
}

/// `GET /office/tablets`.
pub async fn list(State(app): State<App>, who: Visitor) -> Answer {
    page(TabletsPage::of(&app, &who, Form::blank().scoped("tablet")).await?)
}

/// `POST /office/tablets`: enrols the browser this comes from.
pub async fn create(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("tablet");
    let Some(name) = form.text("name", 100) else {
        return retry(TabletsPage::of(&app, &who, form).await?);
    };
    let token = app.shop.enrol_tablet(&who.actor, form.key(), &name).await?;
    let mut response = see_other(path::TABLETS)?;
    // Sent again, the form enrolled nothing more, and the cookie of the first time must stay.
    if app.shop.tablet(&token).await?.is_some() {
        response = with_cookie(&app, response, TABLET, token.as_text(), 400 * 24 * 60 * 60);
    }
    Ok(response)
}

/// `POST /office/tablets/{id}/end`.
pub async fn end(State(app): State<App>, who: Visitor, Path(id): Path<DeviceId>) -> Answer {
    app.shop.end_tablet(&who.actor, id).await?;
    see_other(path::TABLETS)
}
