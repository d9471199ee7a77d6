//! Odometer readings: one that goes backwards or too far is asked about, and kept with the answer.

use askama::Template;
use axum::extract::{Path, State};

use crate::db;
use crate::model::ids::VehicleId;
use crate::model::odometer::question;
use crate::model::vehicle::{OdometerExplained, OdometerReading, OdometerUnit, Vehicle};
use crate::unit::Unit;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Choice};
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

/// The most an odometer shows.
const MOST_KM: f64 = 9_999_999.0;

#[derive(Template)]
#[template(path = "vehicles/reading.html")]
struct ReadingPage {
    frame: Frame,
    plate: String,
    action: String,
    back: String,
    unit: Unit,
    form: Form,
    /// The explanations, once one is asked for.
    explanations: Vec<Choice>,
}

impl ReadingPage {
    fn new(who: &Visitor, vehicle: &Vehicle, form: Form) -> Self {
        let frame = who.frame().at(Place::Vehicles);
        let is_asked = form.wrong("explained").is_some() || !form.value("explained").is_empty();
        Self {
            explanations: if is_asked { explanations(who) } else { Vec::new() },
            plate: vehicle.plate.clone(),
            action: format!("{}/readings", path::vehicle(vehicle.id)),
            back: path::vehicle(vehicle.id),
            unit: unit(vehicle.odometer_unit),
            form,
            frame,
        }
    }
}

/// The unit of measure behind an odometer's.
pub fn unit(unit: OdometerUnit) -> Unit {
    match unit {
        OdometerUnit::Km => Unit::Kilometre,
        OdometerUnit::Mi => Unit::Mile,
    }
}

/// What may explain a reading, in words.
pub fn explanations(who: &Visitor) -> Vec<Choice> {
    kit::coded::<OdometerExplained>(&who.words()).into_iter().filter(|one| one.value != "plain").collect()
}

/// Reads `odometer` in the vehicle's unit, `read_on` and `explained`; the unit typed stays with the reading.
pub fn read(form: &mut Form, who: &Visitor, in_unit: Unit, now: time::OffsetDateTime) -> Option<OdometerReading> {
    let most = Unit::Kilometre.convert(MOST_KM, in_unit).unwrap_or(MOST_KM);
    let quantity = form.quantity("odometer", in_unit, 0.0..=most);
    let today = who.zone.day_of(now);
    let read_on = if form.value("read_on").is_empty() { Some(today) } else { form.past_date("read_on", today) };
    let explained = form.opt_choice("explained").unwrap_or(OdometerExplained::Plain);
    form.sound()?;
    let quantity = quantity?;
    // As typed, digits grouped as they were; the unit is added where none was written.
    let mut typed = form.value("odometer").trim().to_owned();
    if typed.ends_with(|c: char| c.is_ascii_digit()) {
        typed = format!("{typed} {}", in_unit.symbol());
    }
    let km = in_unit.convert(quantity.value, Unit::Kilometre)?.round();
    #[expect(clippy::cast_possible_truncation, reason = "within the range asked for above")]
    let km = km as i64;
    Some(OdometerReading { read_on: read_on?, km, typed, explained })
}

/// Says beside the field what the reading is held against.
pub async fn ask(
    app: &App,
    who: &Visitor,
    vehicle: VehicleId,
    form: &mut Form,
    reading: &OdometerReading,
) -> Result<(), Error> {
    let known = db::odometer::list(&mut *app.read().await?, vehicle).await?;
    let Some(question) = question(&known, reading.read_on, reading.km) else { return Ok(()) };
    let ((km, on), w) = (question.against(), who.words());
    form.fail("explained", Wrong::Rule(question.key(), vec![("km", km.into()), ("on", w.date(on).into())]));
    Ok(())
}

async fn find(app: &App, who: &Visitor, id: VehicleId) -> Result<Vehicle, Error> {
    db::vehicles::find(&mut *app.read().await?, who.branch.id, id).await?.ok_or(Error::NotFound)
}

/// `GET /vehicles/{id}/readings/new`.
pub async fn new(State(app): State<App>, who: Visitor, Path(id): Path<VehicleId>) -> Answer {
    let vehicle = find(&app, &who, id).await?;
    let today = app.shop.clock.today(&who.zone);
    let form = Form::blank().scoped("reading").with("read_on", today.to_string());
    page(ReadingPage::new(&who, &vehicle, form))
}

/// `POST /vehicles/{id}/readings`.
pub async fn create(State(app): State<App>, who: Visitor, Path(id): Path<VehicleId>, typed: Typed) -> Answer {
    let vehicle = find(&app, &who, id).await?;
    let mut form = Form::from(typed).scoped("reading");
    let Some(reading) = read(&mut form, &who, unit(vehicle.odometer_unit), app.shop.clock.now()) else {
        return retry(ReadingPage::new(&who, &vehicle, form));
    };
    match app.shop.read_odometer(&who.actor, form.key(), id, None, reading.clone()).await {
        Ok(()) => see_other(path::vehicle(id)),
        Err(refusal) => {
            ask(&app, &who, id, &mut form, &reading).await?;
            beside(&mut form, refusal)?;
            retry(ReadingPage::new(&who, &vehicle, form))
        }
    }
}
