//! The form of a vehicle: what is asked, how it is read, and what a wrong entry hears.

use askama::Template;
use axum::extract::{Path, RawQuery, State};
use axum::http::StatusCode;
use time::Date;

use crate::calc::vin::{self, Malformed};
use crate::db;
use crate::model::ids::{CustomerId, VehicleId};
use crate::model::vehicle::{
    Aspiration, NewVehicle, OdometerUnit, PetrolInjection, Vehicle, VehicleCategory, VehicleRole,
};
use crate::shop::Refusal;
use crate::unit::Unit;
use crate::web::app::App;
use crate::web::error::{beside, meanwhile};
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Choice};
use crate::web::page::{Frame, Place, page, page_with, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

/// The answers of the vehicle's closed lists.
#[derive(Debug)]
pub struct Lists {
    pub fuels: Vec<Choice>,
    pub categories: Vec<Choice>,
    pub aspirations: Vec<Choice>,
    pub injections: Vec<Choice>,
    pub units: Vec<Choice>,
}

impl Lists {
    /// In the visitor's words.
    pub fn new(who: &Visitor) -> Self {
        let w = &who.words();
        Self {
            fuels: kit::choices(w, "engine-fuel", ["petrol", "diesel"]),
            categories: kit::coded::<VehicleCategory>(w),
            aspirations: kit::coded::<Aspiration>(w),
            injections: kit::coded::<PetrolInjection>(w),
            units: kit::coded::<OdometerUnit>(w),
        }
    }
}

#[derive(Template)]
#[template(path = "vehicles/edit.html")]
struct EditPage {
    frame: Frame,
    title: String,
    action: String,
    form: Form,
    lists: Lists,
    /// The vehicle that has this VIN already: plate or make, and its address.
    twin: Option<(String, String)>,
    /// Whose vehicle it will be.
    customer: Option<String>,
}

impl EditPage {
    async fn of(app: &App, who: &Visitor, form: Form, known: Option<&Vehicle>) -> Result<Self, Error> {
        let frame = who.frame().at(Place::Vehicles);
        let mut con = app.read().await?;
        let mut twin = None;
        if form.wrong("vin") == Some(&Wrong::Taken)
            && let Some(id) =
                db::vehicles::find_by_vin(&mut con, who.branch.id, &vin::check(form.value("vin")).vin).await?
            && let Some(other) = db::vehicles::find(&mut con, who.branch.id, id).await?
        {
            twin = Some((name(&frame, &other), path::vehicle(id)));
        }
        let customer = match form.value("customer").parse::<CustomerId>() {
            Ok(id) => db::customers::find(&mut con, who.branch.id, id).await?.map(|one| one.name),
            Err(_) => None,
        };
        Ok(Self {
            title: known.map_or_else(|| frame.t("vehicles-new"), |one| name(&frame, one)),
            action: known.map_or_else(|| path::VEHICLES.to_owned(), |one| path::vehicle(one.id)),
            lists: Lists::new(who),
            form,
            twin,
            customer,
            frame,
        })
    }
}

fn name(frame: &Frame, one: &Vehicle) -> String {
    if one.plate.is_empty() {
        frame.w.tv("vehicles-title-without-plate", &[("title", one.title().into())])
    } else {
        one.plate.clone()
    }
}

/// A form as a new vehicle begins.
pub fn blank(who: &Visitor) -> Form {
    let mut form = Form::blank().scoped("vehicle");
    for (name, text) in [
        ("plate_country", who.branch.country.as_str()),
        ("engine_fuel", "petrol"),
        ("category", "M1"),
        ("aspiration", "natural"),
        ("petrol_injection", "port"),
        ("has_catalyst", "yes"),
        ("is_closed_loop", "yes"),
        ("odometer_unit", "km"),
    ] {
        form.set(name, text);
    }
    form
}

/// `GET /vehicles/new?customer=…`.
pub async fn new(State(app): State<App>, who: Visitor, RawQuery(query): RawQuery) -> Answer {
    let asked = Form::from(Typed::from_query(query.as_deref().unwrap_or_default()));
    let form = blank(&who).with("customer", asked.value("customer"));
    page(EditPage::of(&app, &who, form, None).await?)
}

/// `POST /vehicles`.
pub async fn create(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("vehicle");
    let customer: Option<CustomerId> = form.opt_choice("customer");
    let Some(new) = read(&mut form, app.shop.clock.today(&who.zone)) else {
        return retry(EditPage::of(&app, &who, form, None).await?);
    };
    let people = customer.map(|id| vec![(VehicleRole::Owner, id), (VehicleRole::Keeper, id)]).unwrap_or_default();
    match app.shop.add_vehicle(&who.actor, form.key(), new, form.tick("is_vin_shared"), people).await {
        Ok(id) => see_other(path::vehicle(id)),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(EditPage::of(&app, &who, form, None).await?)
        }
    }
}

async fn find(app: &App, who: &Visitor, id: VehicleId) -> Result<Vehicle, Error> {
    db::vehicles::find(&mut *app.read().await?, who.branch.id, id).await?.ok_or(Error::NotFound)
}

/// `GET /vehicles/{id}/edit`.
pub async fn edit(State(app): State<App>, who: Visitor, Path(id): Path<VehicleId>) -> Answer {
    let known = find(&app, &who, id).await?;
    let mut form = Form::blank().scoped("vehicle").with("opened_version", known.version.to_string());
    for (name, text) in texts(&known) {
        form.set(name, text);
    }
    page(EditPage::of(&app, &who, form, Some(&known)).await?)
}

/// `POST /vehicles/{id}`.
pub async fn update(State(app): State<App>, who: Visitor, Path(id): Path<VehicleId>, typed: Typed) -> Answer {
    let known = find(&app, &who, id).await?;
    let mut form = Form::from(typed).scoped("vehicle");
    let Some(new) = read(&mut form, app.shop.clock.today(&who.zone)) else {
        return retry(EditPage::of(&app, &who, form, Some(&known)).await?);
    };
    let opened = (id, form.opened_version().unwrap_or(0));
    match app.shop.change_vehicle(&who.actor, form.key(), opened, new, form.tick("is_vin_shared")).await {
        Ok(()) => see_other(path::vehicle(id)),
        Err(Refusal::Stale) => {
            let now = find(&app, &who, id).await?;
            meanwhile(&mut form, now.version, &texts(&now));
            page_with(StatusCode::CONFLICT, EditPage::of(&app, &who, form, Some(&now)).await?)
        }
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(EditPage::of(&app, &who, form, Some(&known)).await?)
        }
    }
}

fn texts(one: &Vehicle) -> Vec<(&'static str, String)> {
    fn or_empty<T: ToString>(value: Option<T>) -> String {
        value.map(|value| value.to_string()).unwrap_or_default()
    }
    let tick = |set: bool| if set { "yes".to_owned() } else { String::new() };
    vec![
        ("plate", one.plate.clone()),
        ("plate_country", one.plate_country.clone()),
        ("vin", one.vin.clone()),
        ("chassis_number", one.chassis_number.clone()),
        ("category", one.category.to_string()),
        ("make", one.make.clone()),
        ("model", one.model.clone()),
        ("first_registered_on", or_empty(one.first_registered_on)),
        ("engine_fuel", "petrol".to_owned()),
        ("engine_code", one.engine_code.clone()),
        ("engine_number", one.engine_number.clone()),
        ("displacement_cm3", or_empty(one.displacement_cm3)),
        ("engine_cylinders", or_empty(one.engine_cylinders)),
        ("rated_power_kw", or_empty(one.rated_power_kw)),
        ("rated_rpm", or_empty(one.rated_rpm)),
        ("aspiration", one.aspiration.to_string()),
        ("boost_kpa", or_empty(one.boost_kpa)),
        ("petrol_injection", one.petrol_injection.to_string()),
        ("injector_connector", one.injector_connector.clone()),
        ("control_pin", one.control_pin.clone()),
        ("gross_mass_kg", or_empty(one.gross_mass_kg)),
        ("rear_axle_reserve_kg", or_empty(one.rear_axle_reserve_kg)),
        ("has_catalyst", tick(one.has_catalyst)),
        ("is_closed_loop", tick(one.is_closed_loop)),
        ("maker_idle_co_percent", or_empty(one.maker_idle_co_percent)),
        ("maker_raised_co_percent", or_empty(one.maker_raised_co_percent)),
        ("maker_lambda_least", or_empty(one.maker_lambda_least)),
        ("maker_lambda_most", or_empty(one.maker_lambda_most)),
        ("emission_class", one.emission_class.clone()),
        ("obd_standard", one.obd_standard.clone()),
        ("has_start_stop", tick(one.has_start_stop)),
        ("is_hybrid", tick(one.is_hybrid)),
        ("odometer_unit", one.odometer_unit.to_string()),
    ]
}

/// Reads what is typed about a vehicle. Petrol engines only.
pub fn read(form: &mut Form, today: Date) -> Option<NewVehicle> {
    let text = |form: &mut Form, name: &str, most| form.opt_text(name, most).unwrap_or_default();
    let plate = text(form, "plate", 20).to_uppercase();
    let plate_country = text(form, "plate_country", 3).to_uppercase();
    let vin = read_vin(form);
    let chassis_number = text(form, "chassis_number", 40);
    if ["plate", "vin", "chassis_number"].iter().all(|name| form.value(name).trim().is_empty()) {
        form.fail("plate", Wrong::Rule("wrong-vehicle-unnamed", vec![]));
    }
    if form.choice::<String>("engine_fuel").is_some_and(|fuel| fuel != "petrol") {
        form.fail("engine_fuel", Wrong::Rule("wrong-diesel", vec![]));
    }
    let (category, make, aspiration) = (form.choice("category"), form.text("make", 80), form.choice("aspiration"));
    for name in ["make", "model", "plate"] {
        if crate::papers::first_unprintable(form.value(name)).is_some() {
            form.fail(name, Wrong::Rule("wrong-beyond-fonts", vec![]));
        }
    }
    let (petrol_injection, odometer_unit) = (form.choice("petrol_injection"), form.choice("odometer_unit"));
    let new = NewVehicle {
        plate,
        plate_country,
        vin,
        chassis_number,
        category: category.unwrap_or(VehicleCategory::M1),
        make: make.unwrap_or_default(),
        model: text(form, "model", 80),
        first_registered_on: form.opt_past_date("first_registered_on", today),
        engine_code: text(form, "engine_code", 40),
        engine_number: text(form, "engine_number", 40),
        displacement_cm3: form.opt_integer("displacement_cm3", 50..=30_000),
        engine_cylinders: form.opt_integer("engine_cylinders", 1..=12),
        rated_power_kw: form.opt_number("rated_power_kw", Unit::Kilowatt, 1.0..=2_000.0),
        rated_rpm: form.opt_integer("rated_rpm", 500..=20_000),
        aspiration: aspiration.unwrap_or(Aspiration::Natural),
        boost_kpa: form.opt_number("boost_kpa", Unit::Kilopascal, 0.0..=300.0),
        petrol_injection: petrol_injection.unwrap_or(PetrolInjection::Port),
        injector_connector: text(form, "injector_connector", 200),
        control_pin: text(form, "control_pin", 200),
        gross_mass_kg: form.opt_integer("gross_mass_kg", 100..=60_000),
        rear_axle_reserve_kg: form.opt_integer("rear_axle_reserve_kg", 0..=20_000),
        has_catalyst: form.tick("has_catalyst"),
        is_closed_loop: form.tick("is_closed_loop"),
        maker_idle_co_percent: form.opt_number("maker_idle_co_percent", Unit::Percent, 0.0..=10.0),
        maker_raised_co_percent: form.opt_number("maker_raised_co_percent", Unit::Percent, 0.0..=10.0),
        maker_lambda_least: form.opt_number("maker_lambda_least", Unit::One, 0.5..=2.0),
        maker_lambda_most: form.opt_number("maker_lambda_most", Unit::One, 0.5..=2.0),
        emission_class: text(form, "emission_class", 40),
        obd_standard: text(form, "obd_standard", 40),
        has_start_stop: form.tick("has_start_stop"),
        is_hybrid: form.tick("is_hybrid"),
        odometer_unit: odometer_unit.unwrap_or(OdometerUnit::Km),
    };
    if let (Some(least), Some(most)) = (new.maker_lambda_least, new.maker_lambda_most)
        && most < least
    {
        form.fail("maker_lambda_most", Wrong::Rule("wrong-most-below-least", vec![]));
    }
    form.sound()?;
    Some(new)
}

/// A malformed number is refused with what is wrong; a check digit that does not fit is only pointed out later.
fn read_vin(form: &mut Form) -> String {
    let typed = form.opt_text("vin", 40).unwrap_or_default();
    if typed.is_empty() {
        return typed;
    }
    let checked = vin::check(&typed);
    if let Some(malformed) = checked.malformed {
        let (key, got) = match malformed {
            Malformed::Length => ("wrong-vin-length", checked.vin.chars().count()),
            Malformed::Alphabet => ("wrong-vin-alphabet", 0),
            Malformed::LastFour => ("wrong-vin-last-four", 0),
        };
        form.fail("vin", Wrong::Rule(key, vec![("got", got.into())]));
    }
    checked.vin
}
