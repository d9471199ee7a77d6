//! Coming in and going out, and choosing a password with a one-time code.

use askama::Template;
use axum::extract::{Query, State};
use axum::http::{HeaderValue, header};
use axum::response::Response;
use serde::Deserialize;

use super::Answer;
use super::app::App;
use super::error::beside;
use super::form::{Form, Typed};
use super::page::{Frame, page, retry, see_other};
use super::path;
use super::visitor::{Origin, Visitor, cookie_name};
use crate::shop::Token;
use crate::web::kit;

#[derive(Template)]
#[template(path = "sign_in.html")]
struct SignInPage {
    frame: Frame,
    form: Form,
}

/// Where somebody was going when they were asked to sign in.
#[derive(Debug, Deserialize)]
pub struct Wanted {
    #[serde(default)]
    wanted: String,
}

/// `GET /sign-in`.
pub async fn show(State(app): State<App>, Query(Wanted { wanted }): Query<Wanted>) -> Answer {
    if app.shop.is_new().await? {
        return see_other(path::SET_UP);
    }
    let form = Form::blank().scoped("sign-in").with("wanted", path::inside(&wanted));
    page(SignInPage { frame: app.frame(), form })
}

/// `POST /sign-in`.
pub async fn create(State(app): State<App>, Origin(from): Origin, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("sign-in");
    let (name, password) = (form.text("sign_in_name", 100), form.secret("password", 1, 4096));
    let (Some(name), Some(password)) = (name, password) else {
        return retry(SignInPage { frame: app.frame(), form });
    };
    match app.shop.sign_in(&name, &password, &from).await {
        Ok(token) => signed_in(&app, &token, path::inside(form.value("wanted"))),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(SignInPage { frame: app.frame(), form })
        }
    }
}

/// Sends a browser on with the cookie of its new session.
pub(super) fn signed_in(app: &App, token: &Token, to: &str) -> Answer {
    let response = see_other(to)?;
    Ok(with_cookie(app, response, token.as_text(), 12 * 60 * 60))
}

/// `POST /sign-out`.
pub async fn delete(State(app): State<App>, who: Visitor) -> Answer {
    app.shop.sign_out(&who.actor, who.session.id).await?;
    let mut response = see_other(path::sign_in("/"))?;
    response.headers_mut().insert("clear-site-data", HeaderValue::from_static("\"cache\""));
    Ok(with_cookie(&app, response, "", 0))
}

fn with_cookie(app: &App, mut response: Response, token: &str, seconds: u32) -> Response {
    let is_https = app.config.is_https();
    let secure = if is_https { "; Secure" } else { "" };
    let name = cookie_name(is_https);
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
