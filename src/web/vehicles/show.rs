//! A vehicle: what it is, who stands behind it, what is fitted, and its life line.

use std::collections::BTreeMap;

use askama::Template;
use axum::extract::{Path, State};
use time::Date;

use crate::calc::vin;
use crate::db;
use crate::db::vehicle_people::Standing;
use crate::db::vehicles::Plate;
use crate::model::ids::VehicleId;
use crate::model::job::{Job, JobState};
use crate::model::note::{About, Note};
use crate::model::part::Part;
use crate::model::vehicle::Vehicle;
use crate::web::app::App;
use crate::web::customers::{contact, said};
use crate::web::form::{Form, Typed};
use crate::web::kit::{self, Cell, Column, LifeEntry, LifeLine, LifeYear, Mark, Row, Table, Tone, Verdict};
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::routes::{DESK, WORKERS};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};
use crate::words::Words;

#[derive(Template)]
#[template(path = "vehicles/show.html")]
struct ShowPage {
    frame: Frame,
    one: Vehicle,
    may_write: bool,
    may_take_in: bool,
    facts: Vec<String>,
    vin_warning: Option<Verdict>,
    people: Vec<Person>,
    plates: Vec<String>,
    parts: Table,
    life: LifeLine,
    notes: Vec<(String, Note)>,
    form: Form,
}

/// One line of who stands behind the vehicle.
#[derive(Debug)]
struct Person {
    role: String,
    role_code: String,
    name: String,
    href: String,
    note: String,
    is_open: bool,
}

/// `GET /vehicles/{id}`.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<VehicleId>) -> Answer {
    page(ShowPage::of(&app, &who, id, Form::blank().scoped("note")).await?)
}

/// `POST /vehicles/{id}/notes`.
pub async fn create_note(State(app): State<App>, who: Visitor, Path(id): Path<VehicleId>, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("note");
    let Some(text) = form.long_text("text", 4_000) else {
        return retry(ShowPage::of(&app, &who, id, form).await?);
    };
    app.shop.write_note(&who.actor, form.key(), About::Vehicle(id), text).await?;
    see_other(path::vehicle(id))
}

impl ShowPage {
    async fn of(app: &App, who: &Visitor, id: VehicleId, form: Form) -> Result<Self, Error> {
        let (w, branch, mut con) = (who.words(), who.branch.id, app.read().await?);
        let one = db::vehicles::find(&mut con, branch, id).await?.ok_or(Error::NotFound)?;
        let people = db::vehicle_people::list(&mut con, branch, id).await?;
        let plates = db::vehicles::plates(&mut con, id).await?;
        let parts = db::parts::list_of_vehicle(&mut con, branch, id).await?;
        let notes = db::notes::list(&mut con, branch, About::Vehicle(id)).await?;
        let mut line = Line { w, today: app.shop.clock.today(&who.zone), past: BTreeMap::new(), ahead: Vec::new() };
        for job in db::jobs::list_of_vehicle(&mut con, branch, id).await? {
            line.job(who.zone.day_of(job.opened_at), &job);
        }
        for reading in db::odometer::list(&mut con, id).await? {
            let title = w.tv("vehicles-reading", &[("typed", reading.typed.as_str().into())]);
            let note = match reading.explained.to_string().as_str() {
                "plain" => String::new(),
                code => w.t(format!("odometer-explained-{code}")),
            };
            line.add(reading.read_on, Mark::NotApplicable, title, None, note);
        }
        for duty in db::duties::list_of_vehicle(&mut con, branch, id).await? {
            let (title, href) = (w.t(format!("duty-kind-{}", duty.kind)), path::duty(duty.id));
            if let Some(at) = duty.closed_at {
                let how = duty.closed_how.map(|how| w.t(format!("closed-how-{how}"))).unwrap_or_default();
                line.add(who.zone.day_of(at), Mark::Met, title, Some(href), how);
            } else {
                let km = duty.due_km.map(|km| w.quantity(km as f64, 0, "km"));
                let note = km.map(|km| w.tv("vehicles-due-km", &[("km", km.into())])).unwrap_or_default();
                line.ahead(duty.due_on, title, href, note);
            }
        }
        for paper in db::search::papers_of_vehicle(&mut con, branch, id).await? {
            let title = w.tv("vehicles-paper", &[("number", paper.number.as_str().into())]);
            let kind = w.find(&format!("paper-kind-{}", paper.kind)).unwrap_or_default();
            line.add(who.zone.day_of(paper.issued_at), Mark::Met, title, Some(path::paper(paper.id)), kind);
        }
        Ok(Self {
            frame: who.frame().at(Place::Vehicles),
            may_write: WORKERS.lets(&who.actor),
            may_take_in: DESK.lets(&who.actor),
            facts: facts(&w, &one),
            vin_warning: vin_warning(&w, &one.vin),
            people: people.iter().map(|one| person(who, one)).collect(),
            plates: if plates.len() > 1 { plates.iter().map(|one| plate(&w, one)).collect() } else { Vec::new() },
            parts: parts_table(&w, &parts),
            life: line.finish(),
            notes: said(who, notes),
            form,
            one,
        })
    }
}

fn facts(w: &Words, one: &Vehicle) -> Vec<String> {
    let mut facts = Vec::new();
    if !one.chassis_number.is_empty() && one.vin.is_empty() {
        facts.push(one.chassis_number.clone());
    }
    if let Some(day) = one.first_registered_on {
        facts.push(w.tv("vehicles-first-registered", &[("day", w.date(day).into())]));
    }
    if let Some(cm3) = one.displacement_cm3 {
        facts.push(w.quantity(cm3 as f64, 0, "cm³"));
    }
    match (one.rated_power_kw, one.rated_rpm) {
        (Some(kw), Some(rpm)) => facts.push(w.tv(
            "vehicles-power",
            &[("power", w.quantity(kw, 0, "kW").into()), ("rpm", w.quantity(rpm as f64, 0, "/min").into())],
        )),
        (Some(kw), None) => facts.push(w.quantity(kw, 0, "kW")),
        _ => {}
    }
    if let Some(n) = one.engine_cylinders {
        facts.push(w.tn("job-engine-cylinders", n));
    }
    let injection = w.t(format!("petrol-injection-{}", one.petrol_injection));
    facts.push(w.tv("vehicles-injection", &[("kind", injection.into())]));
    facts
}

/// A check digit that does not fit is pointed out, never refused.
fn vin_warning(w: &Words, vin: &str) -> Option<Verdict> {
    let checked = vin::check(vin);
    if checked.check_digit_ok {
        return None;
    }
    let wanted = checked.check_digit_expected?.to_string();
    let got = checked.vin.chars().nth(8)?.to_string();
    let key = if checked.check_digit_compulsory { "vehicles-vin-warning-law" } else { "vehicles-vin-warning-more" };
    Some(Verdict {
        tone: Tone::Copper,
        mark: Mark::Undecided,
        title: w.t("vehicles-vin-warning"),
        sentences: vec![w.tv(key, &[("got", got.into()), ("wanted", wanted.into())])],
    })
}

fn person(who: &Visitor, one: &Standing) -> Person {
    let w = who.words();
    let from = w.medium_date(one.from_on);
    let span = match one.to_on {
        Some(to) => format!("{from} – {}", w.medium_date(to)),
        None => w.tv("vehicles-since", &[("from", from.into())]),
    };
    let parts = [contact(who, &one.phone), span];
    Person {
        role: w.t(format!("vehicle-role-{}", one.role)),
        role_code: one.role.to_string(),
        name: one.name.clone(),
        href: path::customer(one.customer_id),
        note: parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" · "),
        is_open: one.to_on.is_none(),
    }
}

fn plate(w: &Words, one: &Plate) -> String {
    let (plate, from) = (one.plate.as_str(), w.medium_date(one.from_on));
    match one.to_on {
        None => w.tv("vehicles-plate-span", &[("plate", plate.into()), ("from", from.into())]),
        Some(to) => w.tv(
            "vehicles-plate-span-ended",
            &[("plate", plate.into()), ("from", from.into()), ("to", w.medium_date(to).into())],
        ),
    }
}

fn parts_table(w: &Words, parts: &[Part]) -> Table {
    let row = |part: &Part| -> Row {
        let maker = format!("{} {}", part.maker, part.type_name);
        vec![
            Cell::link(w.t(format!("part-category-{}", part.category)), path::job(part.fitted_in))
                .with_second(maker.trim()),
            Cell::new(&part.serial).with_second(&part.approval_mark),
            Cell::new(w.medium_date(part.fitted_on)),
        ]
    };
    let columns = ["vehicles-part", "vehicles-serial", "vehicles-fitted"].map(|key| Column::text(w.t(key)));
    let rows = parts.iter().filter(|part| part.is_fitted()).map(row).collect();
    Table { w: *w, caption: w.t("vehicles-parts"), columns: columns.to_vec(), rows }
}

/// The life line while it is put together.
struct Line {
    w: Words,
    today: Date,
    past: BTreeMap<Date, Vec<LifeEntry>>,
    ahead: Vec<(Date, LifeEntry)>,
}

impl Line {
    fn add(&mut self, day: Date, mark: Mark, title: String, href: Option<String>, note: String) {
        let entry = LifeEntry { day: self.w.short_date(day), mark, title, href, note };
        self.past.entry(day).or_default().push(entry);
    }

    fn ahead(&mut self, day: Date, title: String, href: String, note: String) {
        // What is overdue stays below today's line: it is still to come.
        let mark = if day < self.today { Mark::Stops } else { Mark::Missing };
        let entry = LifeEntry { day: self.w.medium_date(day), mark, title, href: Some(href), note };
        self.ahead.push((day, entry));
    }

    fn job(&mut self, day: Date, job: &Job) {
        let kind = self.w.t(format!("job-kind-{}", job.kind));
        let title = self.w.tv("vehicles-job", &[("number", job.number.as_str().into()), ("kind", kind.into())]);
        let mark = match job.state {
            JobState::HandedOver => Mark::Met,
            JobState::Open | JobState::Held => Mark::Undecided,
            JobState::Released => Mark::Missing,
            JobState::Cancelled => Mark::NotApplicable,
        };
        let state = self.w.t(format!("job-state-{}", job.state));
        self.add(day, mark, title, Some(path::job(job.id)), state);
    }

    fn finish(mut self) -> LifeLine {
        let mut years: Vec<LifeYear> = Vec::new();
        for (day, entries) in self.past {
            match years.last_mut() {
                Some(year) if year.year == day.year() => year.entries.extend(entries),
                _ => years.push(LifeYear { year: day.year(), entries }),
            }
        }
        self.ahead.sort_by_key(|(day, _)| *day);
        LifeLine { w: self.w, years, ahead: self.ahead.into_iter().map(|(_, entry)| entry).collect() }
    }
}
