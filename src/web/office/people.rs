//! Who works here: the list, and adding somebody.

use askama::Template;
use axum::extract::State;

use crate::db;
use crate::model::ids::PersonId;
use crate::model::person::{Person, Role, SignatoryGrant};
use crate::shop::sign_in::fold;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Cell, Choice, Column, Row, Table};
use crate::web::page::{Frame, Place, page, retry};
use crate::web::visitor::Visitor;
use crate::web::{Answer, path};

#[derive(Template)]
#[template(path = "office/people.html")]
struct PeoplePage {
    frame: Frame,
    is_manager: bool,
    table: Table,
}

/// `GET /office/people`.
pub async fn list(State(app): State<App>, who: Visitor) -> Answer {
    let mut con = app.read().await?;
    let people = db::people::list(&mut con, who.branch.id).await?;
    let grants = db::people::signatories(&mut con, who.branch.id).await?;
    let w = who.words();
    let mut rows: Vec<Row> = vec![];
    for person in &people {
        let roles = db::people::roles(&mut con, person.id, who.branch.id).await?;
        let grant = grants.iter().find(|grant| grant.person_id == person.id);
        rows.push(row(&who, person, &roles, grant));
    }
    let columns = ["people-name", "people-roles", "people-signing", "people-ended"].map(|key| Column::text(w.t(key)));
    let table = Table { w, caption: w.t("people-title"), columns: columns.to_vec(), rows };
    page(PeoplePage { frame: who.frame().at(Place::Office), is_manager: who.actor.is_manager(), table })
}

fn row(who: &Visitor, person: &Person, roles: &[Role], grant: Option<&SignatoryGrant>) -> Row {
    let w = who.words();
    let roles: Vec<String> = roles.iter().map(|role| w.t(format!("role-{role}"))).collect();
    let is_manager = who.actor.is_manager();
    let name = if is_manager { Cell::link(&person.name, path::person(person.id)) } else { Cell::new(&person.name) };
    let signing = grant.map(|grant| Cell::new(w.date(grant.expires_on)).with_second(&grant.authorisation_number));
    vec![
        name.with_second(&person.initials),
        Cell::new(roles.join(", ")),
        signing.unwrap_or_default(),
        Cell::new(person.ended_on.map(|day| w.date(day)).unwrap_or_default()),
    ]
}

#[derive(Template)]
#[template(path = "office/new_person.html")]
struct NewPersonPage {
    frame: Frame,
    form: Form,
    roles: Vec<Choice>,
}

impl NewPersonPage {
    fn new(who: &Visitor, form: Form) -> Self {
        let frame = who.frame().at(Place::Office);
        Self { roles: kit::coded::<Role>(&frame.w), frame, form }
    }
}

/// `GET /office/people/new`.
pub async fn new(who: Visitor) -> Answer {
    page(NewPersonPage::new(&who, Form::blank().scoped("person")))
}

/// What the manager hands on: shown once, never kept.
#[derive(Template)]
#[template(path = "office/password_code.html")]
pub(super) struct CodePage {
    pub frame: Frame,
    pub name: String,
    pub href: String,
    /// Empty when the form came a second time.
    pub code: String,
}

/// `POST /office/people`.
pub async fn create(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("person");
    let person = read_person(&mut form, PersonId::new(), 1);
    let roles = read_roles(&mut form);
    let (Some(person), Some(roles)) = (person, roles) else {
        return retry(NewPersonPage::new(&who, form));
    };
    let name = person.name.clone();
    match app.shop.add_person(&who.actor, form.key(), person, roles).await {
        Ok(added) => {
            let frame = who.frame().at(Place::Office);
            page(CodePage { frame, name, href: path::person(added.person), code: added.code })
        }
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(NewPersonPage::new(&who, form))
        }
    }
}

/// Reads what is typed about a person.
pub fn read_person(form: &mut Form, id: PersonId, version: i64) -> Option<Person> {
    let name = form.text("name", 200);
    let initials = form.text("initials", 8);
    let sign_in_name = form.text("sign_in_name", 100).map(|name| fold(&name));
    if sign_in_name.as_deref().is_some_and(|name| name.contains(char::is_whitespace)) {
        form.fail("sign_in_name", Wrong::Rule("wrong-sign-in-name", vec![]));
    }
    let mail = form.opt_mail("mail").unwrap_or_default();
    let sees_contacts = form.tick("sees_contacts");
    let ended_on = form.opt_date("ended_on");
    form.sound()?;
    Some(Person {
        id,
        name: name?,
        initials: initials?,
        sign_in_name: sign_in_name?,
        mail,
        language: String::new(),
        sees_contacts,
        ended_on,
        version,
    })
}

/// Reads the ticked roles; somebody without any would not be here.
pub(super) fn read_roles(form: &mut Form) -> Option<Vec<Role>> {
    let roles: Vec<Role> = form.ticks("roles");
    if roles.is_empty() {
        form.fail("roles", Wrong::Empty);
    }
    form.sound()?;
    Some(roles)
}
