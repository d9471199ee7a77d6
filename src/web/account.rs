//! A person's own account: their password, and where they are signed in.

use askama::Template;
use axum::extract::{Path, State};

use super::app::App;
use super::error::beside;
use super::form::{Form, Typed};
use super::page::{Frame, page, retry, see_other};
use super::sign_in::new_password;
use super::visitor::Visitor;
use super::{Answer, path};
use crate::db;
use crate::db::sessions::Session;
use crate::model::ids::SessionId;
use crate::shop::Refusal;
use crate::web::kit;

#[derive(Template)]
#[template(path = "account.html")]
struct AccountPage {
    frame: Frame,
    form: Form,
    sessions: Vec<Line>,
}

struct Line {
    id: SessionId,
    browser: String,
    seen: String,
    is_this: bool,
}

impl AccountPage {
    async fn of(app: &App, who: &Visitor, form: Form) -> Result<Self, super::Error> {
        let open = db::sessions::list(&mut *app.read().await?, who.actor.person.unwrap_or(who.person.id)).await?;
        let now = app.shop.clock.now();
        let sessions = open.into_iter().filter(|session| now < session.ends_at);
        let line = |session: Session| Line {
            id: session.id,
            browser: format!("{} {}", session.address, session.agent).trim().to_owned(),
            seen: who.words().date_time(who.zone.local(session.seen_at)),
            is_this: session.id == who.session.id,
        };
        Ok(Self { sessions: sessions.map(line).collect(), frame: who.frame(), form })
    }
}

/// `GET /account`.
pub async fn show(State(app): State<App>, who: Visitor) -> Answer {
    page(AccountPage::of(&app, &who, Form::blank().scoped("account")).await?)
}

/// `POST /account/password`.
pub async fn change_password(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("account");
    let (current, new) = (form.secret("current_password", 1, 4096), new_password(&mut form));
    let (Some(current), Some(new)) = (current, new) else {
        return retry(AccountPage::of(&app, &who, form).await?);
    };
    match app.shop.change_password(&who.actor, who.session.id, &current, &new, &who.from).await {
        Ok(()) => see_other(path::ACCOUNT),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(AccountPage::of(&app, &who, form).await?)
        }
    }
}

/// `POST /account/pin`: six digits for the shop's tablets.
pub async fn choose_pin(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("account");
    let (pin, password) = (form.secret("pin", 1, 20), form.secret("pin_password", 1, 4096));
    let (Some(pin), Some(password)) = (pin, password) else {
        return retry(AccountPage::of(&app, &who, form).await?);
    };
    match app.shop.choose_pin(&who.actor, &pin, &password, &who.from).await {
        Ok(()) => return see_other(path::ACCOUNT),
        Err(Refusal::Field { field: "current_password", why }) => {
            beside(&mut form, Refusal::Field { field: "pin_password", why })?;
        }
        Err(refusal) => beside(&mut form, refusal)?,
    }
    retry(AccountPage::of(&app, &who, form).await?)
}

/// `POST /account/sessions/{id}/end`.
pub async fn end_session(State(app): State<App>, who: Visitor, Path(id): Path<SessionId>) -> Answer {
    app.shop.end_sessions(&who.actor, who.person.id, Some(id)).await?;
    see_other(path::ACCOUNT)
}
