//! A vehicle comes in: a booking, or somebody at the door, becomes customer, vehicle and job.
//!
//! Who it may be is offered first: by phone and name, by plate. Anybody else in the books is found by searching; whoever
//! is new is written down on the same page.

use askama::Template;
use axum::extract::{RawQuery, State};
use axum::http::StatusCode;

use crate::db;
use crate::db::search::Wanted;
use crate::model::booking::Booking;
use crate::model::ids::{BookingId, CustomerId, JobId, VehicleId};
use crate::model::job::{Fuel, JobKind, SystemKind};
use crate::model::vehicle::{OdometerReading, OdometerUnit, Vehicle};
use crate::shop::Refusal;
use crate::shop::arrivals::{Arrival, Brought, Comer};
use crate::unit::Unit;
use crate::web::app::App;
use crate::web::error::{beside, meanwhile};
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Choice};
use crate::web::page::{Frame, Place, page, page_with, retry, see_other};
use crate::web::vehicles::form::{self as vehicle_form, Lists};
use crate::web::vehicles::readings;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, customers, path};

/// Most customers and vehicles offered.
const MOST: i64 = 6;
/// What is chosen for somebody, or something, not in the books.
const NEW: &str = "new";

#[derive(Template)]
#[template(path = "arrivals.html")]
struct ArrivalPage {
    frame: Frame,
    form: Form,
    booking: Option<String>,
    customers: Vec<Choice>,
    vehicles: Vec<Choice>,
    earlier: Vec<Choice>,
    kinds: Vec<Choice>,
    fuels: Vec<Choice>,
    systems: Vec<Choice>,
    bays: Vec<Choice>,
    bases: Vec<Choice>,
    languages: Vec<Choice>,
    lists: Lists,
    explanations: Vec<Choice>,
}

impl ArrivalPage {
    async fn of(app: &App, who: &Visitor, mut form: Form) -> Result<Self, Error> {
        let (w, branch, mut con) = (who.words(), who.branch.id, app.read().await?);
        let today = app.shop.clock.today(&who.zone);
        let (customers, vehicles) = offered(&mut con, who, &form).await?;
        for (name, choices) in [("customer", &customers), ("vehicle", &vehicles)] {
            // Nobody likely: then it is somebody new, until a search says otherwise.
            if choices.len() == 1 && form.value(name).is_empty() {
                form.set(name, NEW);
            }
        }
        let mut earlier = Vec::new();
        if let Ok(id) = form.value("vehicle").parse::<VehicleId>() {
            for job in db::jobs::list_of_vehicle(&mut con, branch, id).await? {
                let day = w.medium_date(who.zone.day_of(job.opened_at));
                let label = format!("{}, {}, {day}", job.number, w.t(format!("job-kind-{}", job.kind)));
                earlier.push(Choice::new(job.id.to_string(), label));
            }
        }
        let booking = match form.value("booking").parse::<BookingId>() {
            Ok(id) => db::bookings::find(&mut con, branch, id).await?.map(|one| {
                let at = w.short_date_time(who.zone.local(one.starts_at));
                w.tv("intake-booked", &[("name", one.name.into()), ("at", at.into())])
            }),
            Err(_) => None,
        };
        let bays = db::bays::list(&mut con, branch, today).await?;
        let asks = form.wrong("explained").is_some() || !form.value("explained").is_empty();
        Ok(Self {
            frame: who.frame().at(Place::BayPlan),
            booking,
            customers,
            vehicles,
            earlier,
            kinds: kit::coded::<JobKind>(&w),
            fuels: kit::coded::<Fuel>(&w),
            systems: kit::coded::<SystemKind>(&w),
            bays: bays.into_iter().map(|bay| Choice::new(bay.id.to_string(), bay.name)).collect(),
            bases: kit::coded::<crate::model::customer::ReminderBasis>(&w),
            languages: super::language::choices(form.value("language")),
            lists: Lists::new(who),
            explanations: if asks { readings::explanations(who) } else { Vec::new() },
            form,
        })
    }
}

/// Who and what it may be: what is chosen already, what the booking's words point to, what is searched for.
async fn offered(con: &mut db::Con, who: &Visitor, form: &Form) -> Result<(Vec<Choice>, Vec<Choice>), Error> {
    let (w, branch, q) = (who.words(), who.branch.id, form.value("q").trim());
    let mut people = db::customers::list_likely(&mut *con, branch, form.value("name"), form.value("phone")).await?;
    let mut cars = db::vehicles::list_called(&mut *con, branch, form.value("plate")).await?;
    if !q.is_empty() {
        let wanted = Wanted::new(q);
        people.extend(db::customers::list(&mut *con, branch, &wanted, 0, MOST).await?);
        cars.extend(db::vehicles::list(&mut *con, branch, &wanted, 0, MOST).await?);
    }
    if let Ok(id) = form.value("customer").parse::<CustomerId>() {
        people.extend(db::customers::find(&mut *con, branch, id).await?);
    }
    if let Ok(id) = form.value("vehicle").parse::<VehicleId>()
        && let Some(one) = db::vehicles::find(&mut *con, branch, id).await?
    {
        cars.extend(
            db::vehicles::list(&mut *con, branch, &Wanted::new(&one.plate), 0, 50)
                .await?
                .into_iter()
                .filter(|car| car.id == id),
        );
    }
    for car in &cars {
        if let Some(keeper) = car.keeper_id {
            people.extend(db::customers::find(&mut *con, branch, keeper).await?);
        }
    }
    let known: Vec<CustomerId> = people.iter().map(|one| one.id).collect();
    for id in known {
        for one in
            db::vehicle_people::list_of(&mut *con, branch, id).await?.into_iter().filter(|one| one.to_on.is_none())
        {
            if !one.plate.is_empty() {
                cars.extend(db::vehicles::list_called(&mut *con, branch, &one.plate).await?);
            }
        }
    }
    let mut customers: Vec<Choice> = Vec::new();
    for one in people {
        let hint = if one.phone.is_empty() { one.mail } else { one.phone };
        push(&mut customers, Choice { value: one.id.to_string(), label: one.name, hint });
    }
    push(&mut customers, Choice::new(NEW, w.t("intake-new-customer")));
    let mut vehicles: Vec<Choice> = Vec::new();
    for one in cars {
        let label = if one.plate.is_empty() { w.t("vehicles-no-plate") } else { one.plate };
        let hint = [format!("{} {}", one.make, one.model), one.keeper_name.unwrap_or_default()];
        let hint = hint.into_iter().filter(|part| !part.trim().is_empty()).collect::<Vec<_>>().join(" · ");
        push(&mut vehicles, Choice { value: one.id.to_string(), label, hint });
    }
    push(&mut vehicles, Choice::new(NEW, w.t("intake-new-vehicle")));
    Ok((customers, vehicles))
}

fn push(choices: &mut Vec<Choice>, one: Choice) {
    if !choices.iter().any(|known| known.value == one.value) {
        choices.push(one);
    }
}

/// `GET /arrivals/new?booking=…&customer=…&vehicle=…&q=…`.
pub async fn new(State(app): State<App>, who: Visitor, RawQuery(query): RawQuery) -> Answer {
    let asked = Form::from(Typed::from_query(query.as_deref().unwrap_or_default()));
    let mut form = vehicle_form::blank(&who).scoped("intake");
    for (name, text) in [("kind", "conversion"), ("fuel", "lpg"), ("system_kind", "vapour-injection")] {
        form.set(name, text);
    }
    form.set("language", &who.branch.language);
    form.set("reminder_basis", "none");
    for name in ["q", "booking", "customer", "vehicle"] {
        form.set(name, asked.value(name));
    }
    let mut con = app.read().await?;
    if let Ok(id) = asked.value("booking").parse::<BookingId>() {
        let booking = db::bookings::find(&mut con, who.branch.id, id).await?.ok_or(Error::NotFound)?;
        fill(&mut form, &booking);
    }
    if let (Ok(id), "") = (asked.value("vehicle").parse::<VehicleId>(), asked.value("customer"))
        && let Some(keeper) = db::vehicle_people::keeper(&mut con, id).await?
    {
        form.set("customer", keeper.to_string());
    }
    if let Ok(id) = asked.value("vehicle").parse::<VehicleId>() {
        let vehicle = db::vehicles::find(&mut con, who.branch.id, id).await?.ok_or(Error::NotFound)?;
        form.set("odometer_unit", vehicle.odometer_unit.to_string());
    }
    drop(con);
    page(ArrivalPage::of(&app, &who, form).await?)
}

fn fill(form: &mut Form, booking: &Booking) {
    form.set("opened_version", booking.version.to_string());
    for (name, text) in [
        ("name", booking.name.clone()),
        ("phone", booking.phone.clone()),
        ("plate", booking.plate.clone()),
        ("kind", booking.job_kind.to_string()),
        ("bay_id", booking.bay_id.to_string()),
        ("reported_faults", booking.note.clone()),
    ] {
        form.set(name, text);
    }
}

/// `POST /arrivals`: with `then=look` it only looks again who it may be; otherwise it takes the vehicle in.
pub async fn create(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("intake");
    if form.value("then") == "look" {
        return page(ArrivalPage::of(&app, &who, form).await?);
    }
    let Some(arrival) = read(&app, &who, &mut form).await? else {
        return retry(ArrivalPage::of(&app, &who, form).await?);
    };
    let booking: Option<BookingId> = form.opt_choice("booking");
    let booking = booking.map(|id| (id, form.opened_version().unwrap_or(0)));
    let (vehicle, reading) = (known(&arrival), arrival.reading.clone());
    match app.shop.arrive(&who.actor, form.key(), booking, arrival).await {
        Ok(job) => see_other(path::job(job)),
        Err(Refusal::Stale) => {
            // The booking was changed meanwhile: everything typed stays, and what it says now stands on top.
            let (id, _) = booking.ok_or(Refusal::Stale)?;
            let now = db::bookings::find(&mut *app.read().await?, who.branch.id, id).await?.ok_or(Error::NotFound)?;
            meanwhile(&mut form, now.version, &[]);
            page_with(StatusCode::CONFLICT, ArrivalPage::of(&app, &who, form).await?)
        }
        Err(refusal) => {
            if let (Refusal::Field { field: "explained", .. }, Some(id), Some(reading)) = (&refusal, vehicle, &reading)
            {
                readings::ask(&app, &who, id, &mut form, reading).await?;
            }
            beside(&mut form, refusal)?;
            retry(ArrivalPage::of(&app, &who, form).await?)
        }
    }
}

fn known(arrival: &Arrival) -> Option<VehicleId> {
    match arrival.brought {
        Brought::Known(id) => Some(id),
        Brought::New(..) => None,
    }
}

async fn read(app: &App, who: &Visitor, form: &mut Form) -> Result<Option<Arrival>, Error> {
    let (now, today) = (app.shop.clock.now(), app.shop.clock.today(&who.zone));
    // Each part reads its own fields and stops at its own faults; together they show all faults at once.
    let comer = match form.value("customer").trim() {
        NEW => customers::read(form, today).map(Comer::New),
        _ => form.choice("customer").map(Comer::Known),
    };
    let brought = match form.value("vehicle").trim() {
        NEW => vehicle_form::read(form, today).map(|new| Brought::New(Box::new(new), form.tick("is_vin_shared"))),
        _ => form.choice("vehicle").map(Brought::Known),
    };
    let unit = match &brought {
        Some(Brought::Known(id)) => vehicle(app, who, *id).await?.map(|one| one.odometer_unit),
        Some(Brought::New(new, _)) => Some(new.odometer_unit),
        None => form.value("odometer_unit").parse().ok(),
    };
    let unit = readings::unit(unit.unwrap_or(OdometerUnit::Km));
    let reading = read_odometer(form, who, unit, now);
    let (kind, fuel, system_kind) = (form.choice("kind"), form.choice("fuel"), form.choice("system_kind"));
    let comes_back_from: Option<JobId> = form.opt_choice("comes_back_from");
    if kind == Some(JobKind::Comeback) && comes_back_from.is_none() {
        form.fail("comes_back_from", Wrong::Rule("wrong-comeback-of-nothing", vec![]));
    }
    let bay_id = form.opt_choice("bay_id");
    let reported_faults = form.opt_long_text("reported_faults", 4_000).unwrap_or_default();
    let is_low_pressure_only = form.tick("is_low_pressure_only");
    let (Some(()), Some(comer), Some(brought), Some(kind), Some(fuel), Some(system_kind)) =
        (form.sound(), comer, brought, kind, fuel, system_kind)
    else {
        return Ok(None);
    };
    Ok(Some(Arrival {
        comer,
        brought,
        kind,
        fuel,
        system_kind,
        bay_id,
        is_low_pressure_only,
        comes_back_from,
        reported_faults,
        reading,
    }))
}

fn read_odometer(form: &mut Form, who: &Visitor, unit: Unit, now: time::OffsetDateTime) -> Option<OdometerReading> {
    if form.value("odometer").trim().is_empty() {
        return None;
    }
    readings::read(form, who, unit, now)
}

async fn vehicle(app: &App, who: &Visitor, id: VehicleId) -> Result<Option<Vehicle>, Error> {
    Ok(db::vehicles::find(&mut *app.read().await?, who.branch.id, id).await?)
}
