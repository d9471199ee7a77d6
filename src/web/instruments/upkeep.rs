//! What keeps an instrument's word good: its certificates, its checks; and its end.

use askama::Template;
use axum::extract::{Path, State};
use time::macros::format_description;
use time::{Date, OffsetDateTime};

use crate::attachments::Takes;
use crate::clock::Zone;
use crate::db;
use crate::model::ids::InstrumentId;
use crate::model::instrument::Instrument;
use crate::shop::Refusal;
use crate::shop::attachments::FilePlace;
use crate::shop::instruments::{NewCertificate, NewCheck};
use crate::unit::Unit;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Choice};
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, attachments, path};

const PAPER: &str = "paper";

/// One form of an instrument's upkeep.
#[derive(Template)]
#[template(path = "instruments/upkeep.html")]
struct UpkeepPage {
    frame: Frame,
    form: Form,
    /// "certificates", "checks", "retirement": the last part of the address, and what the words hang on.
    what: &'static str,
    code: String,
    unit: String,
    href: String,
    answers: Vec<Choice>,
    is_retired: bool,
}

impl UpkeepPage {
    fn new(who: &Visitor, one: &Instrument, what: &'static str, form: Form) -> Self {
        let frame = who.frame().at(Place::Instruments);
        let answers = kit::choices(&frame.w, "instrument-check", ["passed", "failed"]);
        let (href, is_retired) = (path::instrument(one.id), one.retired_on.is_some());
        let (code, unit) = (one.code.clone(), one.unit.clone());
        Self { frame, form: form.scoped("instrument"), what, code, unit, href, answers, is_retired }
    }

    fn is(&self, what: &str) -> bool {
        self.what == what
    }

    fn lead(&self) -> String {
        self.frame.t(format!("instrument-{}-lead", self.what))
    }

    fn title(&self) -> String {
        let key = match self.what {
            "retirement" if self.is_retired => "instrument-return-title".to_owned(),
            what => format!("instrument-{what}-title"),
        };
        self.frame.w.tv(&key, &[("code", self.code.as_str().into())])
    }
}

async fn find(app: &App, who: &Visitor, id: InstrumentId) -> Result<Instrument, Error> {
    db::instruments::find(&mut *app.read().await?, who.branch.id, id).await?.ok_or(Error::NotFound)
}

/// `GET /instruments/{id}/certificates/new`.
pub async fn new_certificate(State(app): State<App>, who: Visitor, Path(id): Path<InstrumentId>) -> Answer {
    let one = find(&app, &who, id).await?;
    page(UpkeepPage::new(&who, &one, "certificates", Form::blank().with("coverage_factor", "2")))
}

/// `POST /instruments/{id}/certificates`.
pub async fn create_certificate(
    State(app): State<App>,
    who: Visitor,
    Path(id): Path<InstrumentId>,
    typed: Typed,
) -> Answer {
    let one = find(&app, &who, id).await?;
    let mut form = Form::from(typed).scoped("instrument");
    let read = read_certificate(&mut form, app.shop.clock.today(&who.zone));
    let papers = attachments::sent(&mut form, PAPER, 1);
    if let Some(mut new) = read.filter(|_| form.sound().is_some()) {
        let place = FilePlace::of_shop("document");
        let sorted = app.shop.keep_files(&who.actor, None, place, Takes::Papers, papers).await?;
        attachments::note_unfit(&mut form, &who.frame().w, PAPER, Takes::Papers, &sorted);
        new.attachment_id = sorted.kept.first().copied();
        if form.sound().is_some() {
            match app.shop.record_certificate(&who.actor, form.key(), id, new).await {
                Ok(()) => return see_other(path::instrument(id)),
                Err(refusal) => beside(&mut form, refusal)?,
            }
        }
    }
    retry(UpkeepPage::new(&who, &one, "certificates", form))
}

fn read_certificate(form: &mut Form, today: Date) -> Option<NewCertificate> {
    let number = form.text("certificate_number", 60);
    let laboratory = form.text("laboratory", 120);
    let calibrated_on = form.past_date("calibrated_on", today);
    let due_on = form.date("due_on");
    let expanded_uncertainty = form.opt_number("expanded_uncertainty", Unit::One, 1e-9..=1e6);
    let coverage_factor = form.opt_number("coverage_factor", Unit::One, 1.0..=5.0);
    let found_wrong = form.opt_long_text("found_wrong", 1_000).unwrap_or_default();
    if let (Some(from), Some(to)) = (calibrated_on, due_on)
        && to <= from
    {
        form.fail("due_on", Wrong::EndBeforeStart);
    }
    form.sound()?;
    Some(NewCertificate {
        number: number?,
        laboratory: laboratory?,
        calibrated_on: calibrated_on?,
        due_on: due_on?,
        expanded_uncertainty,
        coverage_factor,
        attachment_id: None,
        found_wrong,
    })
}

/// `GET /instruments/{id}/checks/new`.
pub async fn new_check(State(app): State<App>, who: Visitor, Path(id): Path<InstrumentId>) -> Answer {
    let one = find(&app, &who, id).await?;
    let form = Form::blank().with("checked_at", local(&who.zone, app.shop.clock.now()));
    page(UpkeepPage::new(&who, &one, "checks", form))
}

/// `POST /instruments/{id}/checks`.
pub async fn create_check(State(app): State<App>, who: Visitor, Path(id): Path<InstrumentId>, typed: Typed) -> Answer {
    let one = find(&app, &who, id).await?;
    let mut form = Form::from(typed).scoped("instrument");
    if let Some(new) = read_check(&mut form, &who.zone, app.shop.clock.now()) {
        match app.shop.record_check(&who.actor, form.key(), id, new).await {
            Ok(()) => return see_other(path::instrument(id)),
            Err(refusal) => beside(&mut form, refusal)?,
        }
    }
    retry(UpkeepPage::new(&who, &one, "checks", form))
}

fn read_check(form: &mut Form, zone: &Zone, now: OffsetDateTime) -> Option<NewCheck> {
    // The form shows minutes: one made this very minute is taken as made now, not as one to come.
    let checked_at = form.measured("checked_at", zone, None, now).map(|at| at.min(now));
    let has_passed = match form.value("has_passed") {
        "passed" => Some(true),
        "failed" => Some(false),
        "" => {
            form.fail("has_passed", Wrong::Empty);
            None
        }
        _ => {
            form.fail("has_passed", Wrong::NotAChoice);
            None
        }
    };
    let as_found_error = form.opt_number("as_found_error", Unit::One, -1e6..=1e6);
    let note = form.opt_long_text("check_note", 1_000).unwrap_or_default();
    if has_passed == Some(false) && note.is_empty() {
        form.fail("check_note", Wrong::Rule("instrument-say-what-is-wrong", vec![]));
    }
    form.sound()?;
    Some(NewCheck { checked_at: checked_at?, has_passed: has_passed?, as_found_error, note })
}

/// `GET /instruments/{id}/retirement`.
pub async fn retirement(State(app): State<App>, who: Visitor, Path(id): Path<InstrumentId>) -> Answer {
    let one = find(&app, &who, id).await?;
    let form = Form::blank()
        .with("retired_on", app.shop.clock.today(&who.zone).to_string())
        .with("opened_version", one.version.to_string());
    page(UpkeepPage::new(&who, &one, "retirement", form))
}

/// `POST /instruments/{id}/retirement`: out of use, or, when it is, into use again.
pub async fn retire(State(app): State<App>, who: Visitor, Path(id): Path<InstrumentId>, typed: Typed) -> Answer {
    let one = find(&app, &who, id).await?;
    let mut form = Form::from(typed).scoped("instrument");
    let on = match one.retired_on {
        Some(_) => None,
        None => form.date("retired_on"),
    };
    if form.sound().is_some() {
        let version = form.opened_version().unwrap_or(0);
        match app.shop.retire_instrument(&who.actor, form.key(), id, version, on).await {
            Ok(()) => return see_other(path::instrument(id)),
            Err(Refusal::Stale) => {
                form.fail("retired_on", Wrong::Rule("instrument-saved-meanwhile", vec![]));
                form.set("opened_version", one.version.to_string());
            }
            Err(refusal) => beside(&mut form, refusal)?,
        }
    }
    retry(UpkeepPage::new(&who, &one, "retirement", form))
}

/// An instant as a date-time field shows it.
fn local(zone: &Zone, at: OffsetDateTime) -> String {
    zone.local(at).format(format_description!("[year]-[month]-[day]T[hour]:[minute]")).unwrap_or_default()
}
