//! Customers: the list, one with their vehicles and notes, writing down, changing.

use askama::Template;
use axum::extract::{Path, RawQuery, State};
use time::Date;

use crate::db;
use crate::model::customer::{Customer, NewCustomer, ReminderBasis};
use crate::model::ids::CustomerId;
use crate::model::note::{About, Note};
use crate::shop::Refusal;
use crate::shop::issue::unprintable;
use crate::web::app::App;
use crate::web::error::{beside, meanwhile};
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Cell, Choice, Column, Empty, Pages, Row, Table};
use crate::web::language;
use crate::web::listing::Listing;
use crate::web::page::{Frame, Place, page, page_with, retry, see_other};
use crate::web::routes::DESK;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};
use crate::words::Language;

/// More customers than this with one mail address are pointed out: a typing habit, or a stranger's address.
const MANY_OF_ONE_MAIL: i64 = 5;

#[derive(Template)]
#[template(path = "customers/list.html")]
struct ListPage {
    frame: Frame,
    may_write: bool,
    q: String,
    table: Table,
    empty: Option<Empty>,
    pages: Pages,
}

/// `GET /customers`.
pub async fn list(State(app): State<App>, who: Visitor, RawQuery(query): RawQuery) -> Answer {
    let listing = Listing::of(path::CUSTOMERS, query.as_deref());
    let w = who.words();
    let mut con = app.read().await?;
    let mut found =
        db::customers::list(&mut con, who.branch.id, &listing.wanted(), listing.first(), Listing::most()).await?;
    let pages = listing.pages(w, &mut found);
    let empty = found.is_empty().then(|| {
        let key = if listing.q().is_empty() { "customers-none" } else { "customers-none-found" };
        Empty { sentence: w.tv(key, &[("q", listing.q().to_owned().into())]), act: None }
    });
    let rows = found.iter().map(|one| row(&who, one)).collect();
    let columns = ["customers-name", "customers-phone", "customers-mail"].map(|key| Column::text(w.t(key)));
    let table = Table { w, caption: w.t("customers-title"), columns: columns.to_vec(), rows };
    let (frame, may_write) = (who.frame().at(Place::Customers), DESK.lets(&who.actor));
    page(ListPage { frame, may_write, q: listing.q().to_owned(), table, empty, pages })
}

fn row(who: &Visitor, one: &Customer) -> Row {
    let mail = Cell::new(contact(who, &one.mail));
    vec![
        Cell::link(&one.name, path::customer(one.id)).with_second(&one.name_in_latin),
        Cell::new(contact(who, &one.phone)),
        if one.mail_state == "bad" { mail.with_second(who.words().t("customers-mail-bad")) } else { mail },
    ]
}

/// A phone number or mail address as this visitor may see it.
pub fn contact(who: &Visitor, text: &str) -> String {
    if text.is_empty() || who.actor.sees_contacts { text.to_owned() } else { who.words().t("contact-masked") }
}

#[derive(Template)]
#[template(path = "customers/edit.html")]
struct EditPage {
    frame: Frame,
    title: String,
    action: String,
    form: Form,
    bases: Vec<Choice>,
    languages: Vec<Choice>,
}

impl EditPage {
    fn new(who: &Visitor, form: Form, known: Option<&Customer>) -> Self {
        let frame = who.frame().at(Place::Customers);
        Self {
            title: known.map_or_else(|| frame.t("customers-new"), |one| one.name.clone()),
            action: known.map_or_else(|| path::CUSTOMERS.to_owned(), |one| path::customer(one.id)),
            bases: kit::coded::<ReminderBasis>(&frame.w),
            languages: language::choices(form.value("language")),
            form,
            frame,
        }
    }
}

/// `GET /customers/new`.
pub async fn new(who: Visitor) -> Answer {
    let form = Form::blank().scoped("customer").with("language", &who.branch.language).with("reminder_basis", "none");
    page(EditPage::new(&who, form, None))
}

/// `POST /customers`.
pub async fn create(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("customer");
    let Some(new) = read(&mut form, app.shop.clock.today(&who.zone)) else {
        return retry(EditPage::new(&who, form, None));
    };
    match app.shop.add_customer(&who.actor, form.key(), new).await {
        Ok(id) => see_other(path::customer(id)),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(EditPage::new(&who, form, None))
        }
    }
}

/// `GET /customers/{id}/edit`.
pub async fn edit(State(app): State<App>, who: Visitor, Path(id): Path<CustomerId>) -> Answer {
    let known = find(&app, &who, id).await?;
    let mut form = Form::blank().scoped("customer").with("opened_version", known.version.to_string());
    for (name, text) in texts(&known) {
        form.set(name, text);
    }
    page(EditPage::new(&who, form, Some(&known)))
}

/// `POST /customers/{id}`.
pub async fn update(State(app): State<App>, who: Visitor, Path(id): Path<CustomerId>, typed: Typed) -> Answer {
    let known = find(&app, &who, id).await?;
    let mut form = Form::from(typed).scoped("customer");
    let Some(new) = read(&mut form, app.shop.clock.today(&who.zone)) else {
        return retry(EditPage::new(&who, form, Some(&known)));
    };
    let version = form.opened_version().unwrap_or(0);
    match app.shop.change_customer(&who.actor, form.key(), id, version, new).await {
        Ok(()) => see_other(path::customer(id)),
        Err(Refusal::Stale) => {
            let now = find(&app, &who, id).await?;
            meanwhile(&mut form, now.version, &texts(&now));
            page_with(axum::http::StatusCode::CONFLICT, EditPage::new(&who, form, Some(&now)))
        }
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(EditPage::new(&who, form, Some(&known)))
        }
    }
}

async fn find(app: &App, who: &Visitor, id: CustomerId) -> Result<Customer, Error> {
    db::customers::find(&mut *app.read().await?, who.branch.id, id).await?.ok_or(Error::NotFound)
}

fn texts(one: &Customer) -> Vec<(&'static str, String)> {
    vec![
        ("name", one.name.clone()),
        ("name_in_latin", one.name_in_latin.clone()),
        ("address", one.address.clone()),
        ("phone", one.phone.clone()),
        ("mail", one.mail.clone()),
        ("language", one.language.clone()),
        ("reminder_basis", one.reminder_basis.to_string()),
        ("reminder_basis_on", one.reminder_basis_on.map(|day| day.to_string()).unwrap_or_default()),
    ]
}

/// Reads what is typed about a customer.
pub fn read(form: &mut Form, today: Date) -> Option<NewCustomer> {
    let name = form.text("name", 200);
    let name_in_latin = form.opt_text("name_in_latin", 200).unwrap_or_default();
    let address = form.opt_long_text("address", 500).unwrap_or_default();
    let phone = form.opt_text("phone", 40).unwrap_or_default();
    let mail = form.opt_mail("mail").unwrap_or_default();
    if crate::papers::first_unprintable(&name_in_latin).is_some() {
        form.fail("name_in_latin", Wrong::Rule("wrong-beyond-fonts", vec![]));
    }
    let language = form.text("language", 8).map(|tag| tag.to_ascii_lowercase());
    if language.as_deref().is_some_and(|tag| !tag.chars().all(|c| c.is_ascii_alphabetic() || c == '-')) {
        form.fail("language", Wrong::Rule("wrong-language-tag", vec![]));
    }
    let reminder_basis = form.choice("reminder_basis");
    let basis_on = form.opt_past_date("reminder_basis_on", today);
    if reminder_basis.is_some_and(|basis| basis != ReminderBasis::None) && basis_on.is_none() {
        form.fail("reminder_basis_on", Wrong::Rule("wrong-basis-without-day", vec![]));
    }
    form.sound()?;
    Some(NewCustomer {
        name: name?,
        name_in_latin,
        address,
        phone,
        mail,
        language: language?,
        reminder_basis: reminder_basis?,
        reminder_basis_on: basis_on,
    })
}

#[derive(Template)]
#[template(path = "customers/show.html")]
struct ShowPage {
    frame: Frame,
    one: Customer,
    may_write: bool,
    phone: String,
    mail: String,
    basis: String,
    /// The papers have no letters for the name or the address: why, and the field that mends it.
    beyond_fonts: Option<(String, &'static str)>,
    language: String,
    /// How many share the mail address, when that is too many.
    shares_mail: Option<i64>,
    vehicles: Table,
    notes: Vec<(String, Note)>,
    form: Form,
}

/// `GET /customers/{id}`.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<CustomerId>) -> Answer {
    page(show_page(&app, &who, id, Form::blank().scoped("note")).await?)
}

async fn show_page(app: &App, who: &Visitor, id: CustomerId, form: Form) -> Result<ShowPage, Error> {
    let one = find(app, who, id).await?;
    let (w, mut con) = (who.words(), app.read().await?);
    let behind = db::vehicle_people::list_of(&mut con, who.branch.id, id).await?;
    let notes = db::notes::list(&mut con, who.branch.id, About::Customer(id)).await?;
    let sharing = db::customers::count_with_mail(&mut con, who.branch.id, &one.mail).await?;
    let rows = behind.iter().map(|one| {
        let until = one.to_on.map(|day| w.medium_date(day)).unwrap_or_default();
        let name = if one.plate.is_empty() { w.t("vehicles-no-plate") } else { one.plate.clone() };
        vec![
            Cell::link(name, path::vehicle(one.vehicle_id)).with_second(format!("{} {}", one.make, one.model)),
            Cell::new(w.t(format!("vehicle-role-{}", one.role))),
            Cell::new(w.medium_date(one.from_on)),
            Cell::new(until),
        ]
    });
    let columns = ["vehicles-plate", "vehicles-role", "vehicles-from", "vehicles-to"].map(|key| Column::text(w.t(key)));
    let vehicles = Table { w, caption: w.t("customers-vehicles"), columns: columns.to_vec(), rows: rows.collect() };
    let basis = w.t(format!("reminder-basis-{}", one.reminder_basis));
    let basis = match one.reminder_basis_on {
        Some(day) => w.tv("customers-basis-since", &[("basis", basis.into()), ("day", w.date(day).into())]),
        None => basis,
    };
    Ok(ShowPage {
        frame: who.frame().at(Place::Customers),
        may_write: DESK.lets(&who.actor),
        phone: contact(who, &one.phone),
        mail: contact(who, &one.mail),
        basis,
        beyond_fonts: match unprintable::customer(&one) {
            Err(Refusal::Field { field, why }) => Some((w.t(why), field)),
            _ => None,
        },
        language: Language::of_papers(&one.language).map_or_else(|| one.language.clone(), language::own_name),
        shares_mail: (sharing > MANY_OF_ONE_MAIL).then_some(sharing),
        vehicles,
        notes: said(who, notes),
        form,
        one,
    })
}

/// Notes with who wrote them and when, in words.
pub fn said(who: &Visitor, notes: Vec<Note>) -> Vec<(String, Note)> {
    let w = who.words();
    let head = |note: &Note| {
        let at = w.date_time(who.zone.local(note.written_at));
        w.tv("note-by", &[("name", note.person_name.as_str().into()), ("at", at.into())])
    };
    notes.into_iter().map(|note| (head(&note), note)).collect()
}

/// `POST /customers/{id}/notes`.
pub async fn create_note(State(app): State<App>, who: Visitor, Path(id): Path<CustomerId>, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("note");
    let Some(text) = form.long_text("text", 4_000) else {
        return retry(show_page(&app, &who, id, form).await?);
    };
    app.shop.write_note(&who.actor, form.key(), About::Customer(id), text).await?;
    see_other(path::customer(id))
}
