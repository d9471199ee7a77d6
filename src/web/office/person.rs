//! One of the people: who they are, what they may do, whether they sign, where they are signed in.

use askama::Template;
use axum::extract::{Path, State};

use super::people::{CodePage, read_person, read_roles};
use crate::db;
use crate::model::ids::PersonId;
use crate::model::person::{Person, Role};
use crate::shop::Refusal;
use crate::shop::people::NewGrant;
use crate::web::app::App;
use crate::web::error::{beside, meanwhile};
use crate::web::form::{Form, Typed};
use crate::web::kit::{self, Choice};
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

#[derive(Template)]
#[template(path = "office/person.html")]
struct PersonPage {
    frame: Frame,
    person: Person,
    href: String,
    /// Name, initials, mail.
    form: Form,
    /// What they may do.
    roles_form: Form,
    /// The right to sign.
    signing_form: Form,
    roles: Vec<Choice>,
    sessions: i64,
}

enum Sheet {
    Fresh,
    Person(Form),
    Roles(Form),
    Signing(Form),
}

async fn find(app: &App, who: &Visitor, id: PersonId) -> Result<Person, Error> {
    let people = db::people::list(&mut *app.read().await?, who.branch.id).await?;
    people.into_iter().find(|person| person.id == id).ok_or(Error::NotFound)
}

impl PersonPage {
    /// The page with what is kept, except for the one sheet that came back with something wrong.
    async fn of(app: &App, who: &Visitor, id: PersonId, sheet: Sheet) -> Result<Self, Error> {
        let person = find(app, who, id).await?;
        let mut con = app.read().await?;
        let mut form = Form::blank().scoped("person").with("opened_version", person.version.to_string());
        for (name, text) in texts(&person) {
            form.set(name, text);
        }
        let mut roles_form = Form::blank().scoped("person");
        for role in db::people::roles(&mut con, id, who.branch.id).await? {
            roles_form.add("roles", role.to_string());
        }
        let mut signing_form = Form::blank().scoped("person");
        if let Some(grant) = db::people::signatory(&mut con, id, who.branch.id).await? {
            signing_form.set("authorisation_number", grant.authorisation_number);
            signing_form.set("expires_on", grant.expires_on.to_string());
        }
        let now = app.shop.clock.now();
        let open = db::sessions::list(&mut con, id).await?.into_iter().filter(|session| now < session.ends_at).count();
        match sheet {
            Sheet::Fresh => {}
            Sheet::Person(typed) => form = typed,
            Sheet::Roles(typed) => roles_form = typed,
            Sheet::Signing(typed) => signing_form = typed,
        }
        let frame = who.frame().at(Place::Office);
        let (roles, sessions) = (kit::coded::<Role>(&frame.w), i64::try_from(open).unwrap_or(i64::MAX));
        Ok(Self { frame, href: path::person(id), person, form, roles_form, signing_form, roles, sessions })
    }
}

fn texts(person: &Person) -> Vec<(&'static str, String)> {
    vec![
        ("name", person.name.clone()),
        ("initials", person.initials.clone()),
        ("sign_in_name", person.sign_in_name.clone()),
        ("mail", person.mail.clone()),
        ("sees_contacts", if person.sees_contacts { "yes".to_owned() } else { String::new() }),
        ("ended_on", person.ended_on.map(|day| day.to_string()).unwrap_or_default()),
    ]
}

/// `GET /office/people/{id}`.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<PersonId>) -> Answer {
    page(PersonPage::of(&app, &who, id, Sheet::Fresh).await?)
}

/// `POST /office/people/{id}`.
pub async fn update(State(app): State<App>, who: Visitor, Path(id): Path<PersonId>, typed: Typed) -> Answer {
    let kept = find(&app, &who, id).await?;
    let mut form = Form::from(typed).scoped("person");
    let version = form.opened_version().unwrap_or(0);
    let Some(person) = read_person(&mut form, id, version) else {
        return retry(PersonPage::of(&app, &who, id, Sheet::Person(form)).await?);
    };
    let person = Person { language: kept.language, ..person };
    match app.shop.change_person(&who.actor, form.key(), person).await {
        Ok(()) => return see_other(path::person(id)),
        Err(Refusal::Stale) => {
            let now = find(&app, &who, id).await?;
            meanwhile(&mut form, now.version, &texts(&now));
        }
        Err(Refusal::MayNot(why)) => beside(&mut form, Refusal::Field { field: "ended_on", why })?,
        Err(refusal) => beside(&mut form, refusal)?,
    }
    retry(PersonPage::of(&app, &who, id, Sheet::Person(form)).await?)
}

/// `POST /office/people/{id}/roles`. Asks for the manager's own password: a right is given or taken.
pub async fn update_roles(State(app): State<App>, who: Visitor, Path(id): Path<PersonId>, typed: Typed) -> Answer {
    find(&app, &who, id).await?;
    let mut form = Form::from(typed).scoped("person");
    let (roles, password) = (read_roles(&mut form), form.secret("roles_password", 1, 4096));
    let (Some(roles), Some(password)) = (roles, password) else {
        return retry(PersonPage::of(&app, &who, id, Sheet::Roles(form)).await?);
    };
    let done = match app.shop.prove(who.person.id, &password, &who.from.address).await {
        Ok(()) => app.shop.change_roles(&who.actor, form.key(), id, roles).await,
        Err(refusal) => Err(refusal),
    };
    match done {
        Ok(()) => return see_other(path::person(id)),
        Err(Refusal::MayNot(why)) => beside(&mut form, Refusal::Field { field: "roles", why })?,
        Err(Refusal::Field { why, .. }) => beside(&mut form, Refusal::Field { field: "roles_password", why })?,
        Err(refusal) => beside(&mut form, refusal)?,
    }
    retry(PersonPage::of(&app, &who, id, Sheet::Roles(form)).await?)
}

/// `POST /office/people/{id}/signing`. Both fields empty end the right.
pub async fn update_signing(State(app): State<App>, who: Visitor, Path(id): Path<PersonId>, typed: Typed) -> Answer {
    find(&app, &who, id).await?;
    let mut form = Form::from(typed).scoped("person");
    let password = form.secret("signing_password", 1, 4096);
    let grant = if form.value("authorisation_number").trim().is_empty() && form.value("expires_on").trim().is_empty() {
        None
    } else {
        let (number, expires_on) = (form.text("authorisation_number", 100), form.date("expires_on"));
        number.zip(expires_on).map(|(authorisation_number, expires_on)| NewGrant { authorisation_number, expires_on })
    };
    let Some(password) = password.filter(|_| form.sound().is_some()) else {
        return retry(PersonPage::of(&app, &who, id, Sheet::Signing(form)).await?);
    };
    let done = match app.shop.prove(who.person.id, &password, &who.from.address).await {
        Ok(()) => app.shop.change_signing(&who.actor, form.key(), id, grant).await,
        Err(refusal) => Err(refusal),
    };
    match done {
        Ok(()) => return see_other(path::person(id)),
        Err(Refusal::MayNot(why)) => beside(&mut form, Refusal::Field { field: "authorisation_number", why })?,
        Err(Refusal::Field { why, .. }) => beside(&mut form, Refusal::Field { field: "signing_password", why })?,
        Err(refusal) => beside(&mut form, refusal)?,
    }
    retry(PersonPage::of(&app, &who, id, Sheet::Signing(form)).await?)
}

/// `POST /office/people/{id}/password-codes`: a one-time code with which they choose a new password.
pub async fn create_code(State(app): State<App>, who: Visitor, Path(id): Path<PersonId>) -> Answer {
    let person = find(&app, &who, id).await?;
    let code = app.shop.make_password_code(&who.actor, id).await?;
    let frame = who.frame().at(Place::Office);
    page(CodePage { frame, name: person.name, href: path::person(id), code: code.as_text().to_owned() })
}

/// `POST /office/people/{id}/sessions/end`.
pub async fn end_sessions(State(app): State<App>, who: Visitor, Path(id): Path<PersonId>) -> Answer {
    app.shop.end_sessions(&who.actor, id, None).await?;
    see_other(path::person(id))
}
