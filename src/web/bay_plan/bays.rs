//! The shop's bays: a manager adds one, renames it, takes it out of use.

use askama::Template;
use axum::extract::{Path, State};

use crate::db;
use crate::model::booking::{Bay, Booking};
use crate::model::ids::BayId;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed};
use crate::web::kit;
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

#[derive(Template)]
#[template(path = "bay_plan/bays.html")]
struct BaysPage {
    frame: Frame,
    bays: Vec<(String, String)>,
    form: Form,
}

#[derive(Template)]
#[template(path = "bay_plan/bay.html")]
struct BayPage {
    frame: Frame,
    bay: Bay,
    href: String,
    form: Form,
    /// Bookings that taking it out of use would hit: who and when, where.
    hits: Vec<(String, String)>,
}

impl BaysPage {
    async fn of(app: &App, who: &Visitor, form: Form) -> Result<Self, Error> {
        let today = app.shop.clock.today(&who.zone);
        let bays = db::bays::list(&mut *app.read().await?, who.branch.id, today).await?;
        let bays = bays.into_iter().map(|bay| (path::bay(bay.id), bay.name)).collect();
        Ok(Self { frame: who.frame().at(Place::BayPlan), bays, form })
    }
}

impl BayPage {
    /// The bay with what is kept, and the entries of the form that came back.
    async fn of(app: &App, who: &Visitor, id: BayId, typed: Option<Form>) -> Result<Self, Error> {
        let (now, mut con) = (app.shop.clock.now(), app.read().await?);
        let bay = db::bays::find(&mut con, who.branch.id, id).await?.ok_or(Error::NotFound)?;
        let mut form = typed.unwrap_or_else(blank);
        if form.value("name").is_empty() && form.wrong("name").is_none() {
            form.set("name", &bay.name);
        }
        if form.value("ended_on").is_empty() {
            form.set("ended_on", who.zone.day_of(now).to_string());
        }
        let mut hits = Vec::new();
        if form.wrong("ended_on").is_some() {
            hits = db::bookings::list_of_bay(&mut con, who.branch.id, id, now).await?;
        }
        let hit = |one: &Booking| {
            let at = who.words().short_date_time(who.zone.local(one.starts_at));
            (format!("{at}, {}", one.name), path::booking(one.id))
        };
        let hits = hits.iter().map(hit).collect();
        Ok(Self { frame: who.frame().at(Place::BayPlan), href: path::bay(id), bay, form, hits })
    }
}

fn blank() -> Form {
    Form::blank().scoped("bay")
}

/// `GET /bay-plan/bays`.
pub async fn list(State(app): State<App>, who: Visitor) -> Answer {
    page(BaysPage::of(&app, &who, blank()).await?)
}

/// `GET /bay-plan/bays/{id}`.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<BayId>) -> Answer {
    page(BayPage::of(&app, &who, id, None).await?)
}

/// `POST /bay-plan/bays`.
pub async fn create(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("bay");
    let Some(name) = form.text("name", 60) else {
        return retry(BaysPage::of(&app, &who, form).await?);
    };
    match app.shop.add_bay(&who.actor, form.key(), name).await {
        Ok(_) => see_other(path::BAYS),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(BaysPage::of(&app, &who, form).await?)
        }
    }
}

/// `POST /bay-plan/bays/{id}`.
pub async fn update(State(app): State<App>, who: Visitor, Path(id): Path<BayId>, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("bay");
    let Some(name) = form.text("name", 60) else {
        return retry(BayPage::of(&app, &who, id, Some(form)).await?);
    };
    match app.shop.rename_bay(&who.actor, form.key(), Bay { id, name }).await {
        Ok(()) => see_other(path::BAYS),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(BayPage::of(&app, &who, id, Some(form)).await?)
        }
    }
}

/// `POST /bay-plan/bays/{id}/end`.
pub async fn end(State(app): State<App>, who: Visitor, Path(id): Path<BayId>, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("bay");
    let Some(on) = form.date("ended_on") else {
        return retry(BayPage::of(&app, &who, id, Some(form)).await?);
    };
    match app.shop.end_bay(&who.actor, form.key(), id, on).await {
        Ok(()) => see_other(path::BAYS),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(BayPage::of(&app, &who, id, Some(form)).await?)
        }
    }
}
