//! An instrument is entered, and what is written down of it changed.

use askama::Template;
use axum::extract::{Path, State};

use crate::db;
use crate::model::Coded;
use crate::model::ids::InstrumentId;
use crate::model::instrument::{Instrument, InstrumentKind, NewInstrument};
use crate::shop::Refusal;
use crate::unit::Unit;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Choice};
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

#[derive(Template)]
#[template(path = "instruments/form.html")]
struct FormPage {
    frame: Frame,
    form: Form,
    title: String,
    action: String,
    back: String,
    kinds: Vec<Choice>,
}

impl FormPage {
    fn new(who: &Visitor, form: Form, id: Option<InstrumentId>) -> Self {
        let frame = who.frame().at(Place::Instruments);
        let w = frame.w;
        let title = w.t(if id.is_some() { "instrument-edit" } else { "instrument-new" });
        let action = id.map_or_else(|| path::INSTRUMENTS.to_owned(), path::instrument);
        let back = action.clone();
        Self { kinds: kit::coded::<InstrumentKind>(&w), frame, form, title, action, back }
    }
}

/// `GET /instruments/new`.
pub async fn new(who: Visitor) -> Answer {
    page(FormPage::new(&who, Form::blank().scoped("instrument").with("needs_daily_check", "no"), None))
}

/// `POST /instruments`.
pub async fn create(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("instrument");
    let Some(new) = read(&mut form) else { return retry(FormPage::new(&who, form, None)) };
    match app.shop.add_instrument(&who.actor, form.key(), new).await {
        Ok(id) => see_other(path::instrument(id)),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(FormPage::new(&who, form, None))
        }
    }
}

/// `GET /instruments/{id}/edit`.
pub async fn edit(State(app): State<App>, who: Visitor, Path(id): Path<InstrumentId>) -> Answer {
    let one = db::instruments::find(&mut *app.read().await?, who.branch.id, id).await?.ok_or(Error::NotFound)?;
    page(FormPage::new(&who, filled(&one), Some(id)))
}

/// `POST /instruments/{id}`.
pub async fn update(State(app): State<App>, who: Visitor, Path(id): Path<InstrumentId>, typed: Typed) -> Answer {
    let stored = db::instruments::find(&mut *app.read().await?, who.branch.id, id).await?.ok_or(Error::NotFound)?;
    let mut form = Form::from(typed).scoped("instrument");
    let Some(new) = read(&mut form) else { return retry(FormPage::new(&who, form, Some(id))) };
    let version = form.opened_version().unwrap_or(0);
    match app.shop.change_instrument(&who.actor, form.key(), id, version, new).await {
        Ok(()) => see_other(path::instrument(id)),
        Err(Refusal::Stale) => {
            show_both(&mut form, &filled(&stored));
            retry(FormPage::new(&who, form, Some(id)))
        }
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(FormPage::new(&who, form, Some(id)))
        }
    }
}

/// Says beside each field that differs what is stored now; what was typed stays, and the next save goes over it.
fn show_both(form: &mut Form, now: &Form) {
    for name in FIELDS {
        if form.value(name).trim() != now.value(name) {
            let now = now.value(name).to_owned();
            form.fail(name, Wrong::Rule("wrong-changed-meanwhile", vec![("now", now.into())]));
        }
    }
    form.fail("code", Wrong::Rule("instrument-saved-meanwhile", vec![]));
    form.set("opened_version", now.value("opened_version"));
}

const FIELDS: [&str; 9] =
    ["code", "kind", "maker", "type_name", "serial", "unit", "resolution", "standard_uncertainty", "needs_daily_check"];

fn filled(one: &Instrument) -> Form {
    let number = |value: Option<f64>| value.map(|value| value.to_string()).unwrap_or_default();
    Form::blank()
        .scoped("instrument")
        .with("opened_version", one.version.to_string())
        .with("code", &one.code)
        .with("kind", one.kind.code())
        .with("maker", &one.maker)
        .with("type_name", &one.type_name)
        .with("serial", &one.serial)
        .with("unit", &one.unit)
        .with("resolution", number(one.resolution))
        .with("standard_uncertainty", number(one.standard_uncertainty))
        .with("needs_daily_check", if one.needs_daily_check { "yes" } else { "no" })
}

fn read(form: &mut Form) -> Option<NewInstrument> {
    let code = form.text("code", 20);
    let kind = form.choice::<InstrumentKind>("kind");
    let maker = form.opt_text("maker", 100).unwrap_or_default();
    let type_name = form.opt_text("type_name", 100).unwrap_or_default();
    let serial = form.opt_text("serial", 60).unwrap_or_default();
    let unit = form.opt_text("unit", 12).unwrap_or_default();
    let resolution = form.opt_number("resolution", Unit::One, 1e-9..=1e6);
    let standard_uncertainty = form.opt_number("standard_uncertainty", Unit::One, 1e-9..=1e6);
    let needs_daily_check = form.yes_no("needs_daily_check");
    form.sound()?;
    Some(NewInstrument {
        code: code?,
        kind: kind?,
        maker,
        type_name,
        serial,
        resolution,
        standard_uncertainty,
        unit,
        needs_daily_check: needs_daily_check?,
    })
}
