//! Who stands behind a vehicle: somebody becomes owner, keeper, payer or contact from a day on, or ceases to be.

use askama::Template;
use axum::extract::{Path, RawQuery, State};

use crate::db;
use crate::db::search::Wanted;
use crate::model::ids::VehicleId;
use crate::model::vehicle::{Vehicle, VehiclePerson, VehicleRole};
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed};
use crate::web::kit::{self, Choice};
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

/// Most customers offered.
const MOST: i64 = 20;

#[derive(Template)]
#[template(path = "vehicles/person.html")]
struct PersonPage {
    frame: Frame,
    plate: String,
    href: String,
    q: String,
    form: Form,
    roles: Vec<Choice>,
    customers: Vec<Choice>,
}

impl PersonPage {
    async fn of(app: &App, who: &Visitor, id: VehicleId, form: Form) -> Result<Self, Error> {
        let vehicle = find(app, who, id).await?;
        let frame = who.frame().at(Place::Vehicles);
        let q = form.value("q").trim().to_owned();
        let mut con = app.read().await?;
        let found = if q.is_empty() {
            Vec::new()
        } else {
            db::customers::list(&mut con, who.branch.id, &Wanted::new(&q), 0, MOST).await?
        };
        let customers = found.into_iter().map(|one| {
            let hint = [one.phone, one.mail].into_iter().find(|text| !text.is_empty()).unwrap_or_default();
            Choice { value: one.id.to_string(), label: one.name, hint }
        });
        Ok(Self {
            roles: kit::coded::<VehicleRole>(&frame.w),
            customers: customers.collect(),
            plate: vehicle.plate,
            href: path::vehicle(id),
            q,
            form,
            frame,
        })
    }
}

async fn find(app: &App, who: &Visitor, id: VehicleId) -> Result<Vehicle, Error> {
    db::vehicles::find(&mut *app.read().await?, who.branch.id, id).await?.ok_or(Error::NotFound)
}

/// `GET /vehicles/{id}/people/new?q=…`: first somebody is looked for, then chosen.
pub async fn new(State(app): State<App>, who: Visitor, Path(id): Path<VehicleId>, RawQuery(query): RawQuery) -> Answer {
    let asked = Form::from(Typed::from_query(query.as_deref().unwrap_or_default()));
    let role = if asked.value("role").is_empty() { "keeper" } else { asked.value("role") };
    let today = app.shop.clock.today(&who.zone);
    let form = Form::blank().scoped("standing").with("q", asked.value("q")).with("role", role);
    page(PersonPage::of(&app, &who, id, form.with("from_on", today.to_string())).await?)
}

/// `POST /vehicles/{id}/people`.
pub async fn create(State(app): State<App>, who: Visitor, Path(id): Path<VehicleId>, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("standing");
    let (customer, role) = (form.choice("customer"), form.choice("role"));
    let from_on = form.past_date("from_on", app.shop.clock.today(&who.zone));
    let (Some(customer_id), Some(role), Some(from_on), Some(())) = (customer, role, from_on, form.sound()) else {
        return retry(PersonPage::of(&app, &who, id, form).await?);
    };
    let one = VehiclePerson { vehicle_id: id, customer_id, role, from_on, to_on: None };
    match app.shop.begin_role(&who.actor, form.key(), one).await {
        Ok(()) => see_other(path::vehicle(id)),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(PersonPage::of(&app, &who, id, form).await?)
        }
    }
}

/// `POST /vehicles/{id}/people/{role}/end`: today is the last day.
pub async fn end(
    State(app): State<App>,
    who: Visitor,
    Path((id, role)): Path<(VehicleId, String)>,
    typed: Typed,
) -> Answer {
    let role: VehicleRole = role.parse().map_err(|_| Error::NotFound)?;
    let today = app.shop.clock.today(&who.zone);
    app.shop.end_role(&who.actor, Form::from(typed).key(), id, role, today).await?;
    see_other(path::vehicle(id))
}
