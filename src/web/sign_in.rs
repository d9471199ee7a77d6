//! Coming in and going out, and choosing a password with a one-time code.

use askama::Template;
use axum::Extension;
use axum::extract::{Query, State};
use axum::http::{HeaderMap, HeaderValue, header};
use axum::response::Response;
use serde::Deserialize;

use super::app::App;
use super::error::beside;
use super::form::{Form, Typed};
use super::page::{Frame, page, retry, see_other};
use super::visitor::{Origin, Visitor, cookie, cookie_name};
use super::{Answer, Error, path};
use crate::db;
use crate::model::ids::PersonId;
use crate::shop::Token;
use crate::web::kit::{self, Choice};

/// The cookie of an enrolled tablet.
pub(super) const TABLET: &str = "tablet";

#[derive(Template)]
#[template(path = "sign_in.html")]
struct SignInPage {
    frame: Frame,
    form: Form,
    /// Who may come in with a PIN; empty unless this browser is a tablet of the shop.
    people: Vec<Choice>,
}

impl SignInPage {
    async fn of(app: &App, headers: &HeaderMap, form: Form) -> Result<Self, Error> {
        let mut people = vec![];
        if let Some(tablet) = cookie(headers, TABLET).map(Token::presented)
            && let Some(device) = app.shop.tablet(&tablet).await?
        {
            let known = db::people::with_pin(&mut *app.read().await?, device.branch_id).await?;
            people = known.into_iter().map(|(id, name)| Choice::new(id.to_string(), name)).collect();
        }
        Ok(Self { frame: app.frame(), form, people })
    }
}

/// Where somebody was going when they were asked to sign in.
#[derive(Debug, Deserialize)]
pub struct Wanted {
    #[serde(default)]
    wanted: String,
}

/// `GET /sign-in`.
pub async fn show(State(app): State<App>, headers: HeaderMap, Query(Wanted { wanted }): Query<Wanted>) -> Answer {
    if app.shop.is_new().await? {
        return see_other(path::SET_UP);
    }
    let form = Form::blank().scoped("sign-in").with("wanted", path::inside(&wanted));
    page(SignInPage::of(&app, &headers, form).await?)
}

/// `POST /sign-in`.
pub async fn create(State(app): State<App>, Origin(from): Origin, headers: HeaderMap, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("sign-in");
    let (name, password) = (form.text("sign_in_name", 100), form.secret("password", 1, 4096));
    let (Some(name), Some(password)) = (name, password) else {
        return retry(SignInPage::of(&app, &headers, form).await?);
    };
    match app.shop.sign_in(&name, &password, &from).await {
        Ok(token) => signed_in(&app, &token, path::inside(form.value("wanted"))),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(SignInPage::of(&app, &headers, form).await?)
        }
    }
}

/// `POST /sign-in/pin`: on a tablet of the shop.
pub async fn create_with_pin(State(app): State<App>, Origin(from): Origin, headers: HeaderMap, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("sign-in");
    let (person, pin) = (form.choice::<PersonId>("person"), form.secret("pin", 1, 20));
    let (Some(person), Some(pin)) = (person, pin) else {
        return retry(SignInPage::of(&app, &headers, form).await?);
    };
    let tablet = Token::presented(cookie(&headers, TABLET).unwrap_or_default());
    match app.shop.sign_in_with_pin(&tablet, person, &pin, &from).await {
        Ok(token) => signed_in(&app, &token, path::inside(form.value("wanted"))),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(SignInPage::of(&app, &headers, form).await?)
        }
    }
}

/// Sends a browser on with the cookie of its new session.
pub(super) fn signed_in(app: &App, token: &Token, to: &str) -> Answer {
    let response = see_other(to)?;
    Ok(with_cookie(app, response, cookie_name(app.config.is_https()), token.as_text(), 12 * 60 * 60))
}

/// `POST /sign-out`. Whoever's session has ended meanwhile is out already, and is not told off for asking.
pub async fn delete(State(app): State<App>, who: Option<Extension<Visitor>>) -> Answer {
    if let Some(Extension(who)) = who {
        app.shop.sign_out(&who.actor, who.session.id).await?;
    }
    let mut response = see_other(path::sign_in("/"))?;
    response.headers_mut().insert("clear-site-data", HeaderValue::from_static("\"cache\""));
    Ok(with_cookie(&app, response, cookie_name(app.config.is_https()), "", 0))
}

/// The same answer with a cookie that no script sees and no other site sends.
pub(super) fn with_cookie(app: &App, mut response: Response, name: &str, token: &str, seconds: u32) -> Response {
    let secure = if app.config.is_https() { "; Secure" } else { "" };
    let cookie = format!("{name}={token}; Path=/; HttpOnly; SameSite=Lax; Max-Age={seconds}{secure}");
    // A token is base64 and the rest is ours, so this is always a header.
    if let Ok(cookie) = HeaderValue::from_str(&cookie) {
        response.headers_mut().append(header::SET_COOKIE, cookie);
    }
    response
}

#[derive(Template)]
#[template(path = "welcome.html")]
struct WelcomePage {
    frame: Frame,
    form: Form,
}

/// `GET /welcome`: choosing a password with a one-time code from a manager.
pub async fn welcome(State(app): State<App>) -> Answer {
    page(WelcomePage { frame: app.frame(), form: Form::blank().scoped("welcome") })
}

/// `POST /welcome`.
pub async fn choose(State(app): State<App>, Origin(from): Origin, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("welcome");
    let (code, new) = (form.text("code", 100), new_password(&mut form));
    let (Some(code), Some(new)) = (code, new) else {
        return retry(WelcomePage { frame: app.frame(), form });
    };
    match app.shop.choose_password(&code, &new, &from.address).await {
        Ok(_) => see_other(path::sign_in("/")),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(WelcomePage { frame: app.frame(), form })
        }
    }
}

/// A new password, typed twice. How good it must be is for the shop to say.
pub(super) fn new_password(form: &mut Form) -> Option<String> {
    let new = form.secret("new_password", 8, 4096)?;
    if form.value("new_password_again") != new {
        form.fail("new_password_again", super::form::Wrong::DoesNotMatch);
        return None;
    }
    Some(new)
}
