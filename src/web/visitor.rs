//! Who is asking, and whether they may: found once per request, before the handler.

use axum::extract::{FromRequestParts, Request, State};
use axum::http::request::Parts;
use axum::http::{HeaderMap, Method, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Redirect, Response};

use super::app::{App, words};
use super::page::{Frame, PersonBadge};
use super::security::LoggedAs;
use super::{Error, client, error, path};
use crate::clock::Zone;
use crate::db::sessions::Session;
use crate::model::branch::Branch;
use crate::model::person::{Actor, Person, Role};
use crate::shop::sign_in::{From, Known};
use crate::shop::{Shop, Token};
use crate::words::Words;

/// Who may come to an address: the third column of the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum May {
    /// Everybody, known or not.
    Anybody,
    /// Whoever is signed in, whatever their role.
    SignedIn,
    /// Whoever holds one of these roles in the branch they are signed in to.
    Roles(&'static [Role]),
    /// Whoever holds the right to sign. Whether it is still in force is for the deed to say.
    Signatory,
}

/// The visitor of a request. A handler that takes it cannot be reached without one.
#[derive(Debug, Clone)]
pub struct Visitor {
    /// What deeds are told: person, branch, roles, right to sign.
    pub actor: Actor,
    pub person: Person,
    pub branch: Branch,
    pub session: Session,
    /// The branch's time zone.
    pub zone: Zone,
    /// Address and browser, for what is logged about signing in.
    pub from: From,
    frame: Frame,
}

impl Visitor {
    /// What stands around each of their pages: words, shop, who is signed in.
    pub fn frame(&self) -> Frame {
        self.frame.clone()
    }

    /// The words of their language: their own, or else the branch's.
    pub fn words(&self) -> Words {
        self.frame.w
    }

    fn new(app: &App, known: Known, from: From) -> Self {
        let Known { session, actor, person, branch, zone } = known;
        let language = if person.language.is_empty() { &branch.language } else { &person.language };
        let role = actor.roles.iter().min().map(ToString::to_string).unwrap_or_default();
        let badge = PersonBadge {
            name: person.name.clone(),
            sign_in_name: person.sign_in_name.clone(),
            role,
            is_signatory: actor.signatory.is_some(),
        };
        let frame =
            Frame { person: Some(badge), ..app.frame_of(Some(&branch), words(language).in_units(branch.units)) };
        Self { actor, person, branch, session, zone, from, frame }
    }
}

/// The visitor of a page that everybody may see, if there is one.
#[derive(Debug, Clone)]
pub struct Perhaps(pub Option<Visitor>);

impl May {
    /// Whether somebody who is signed in may come; also decides which links a page shows.
    pub fn lets(self, actor: &Actor) -> bool {
        match self {
            Self::Anybody | Self::SignedIn => true,
            Self::Roles(roles) => actor.is_one_of(roles),
            Self::Signatory => actor.signatory.is_some(),
        }
    }
}

/// A row of the table as its gate sees it.
#[derive(Debug, Clone)]
pub(super) struct Gate {
    pub app: App,
    pub address: &'static str,
    pub may: May,
}

/// Stands before every handler of the table: finds the visitor and turns away whoever may not.
pub(super) async fn gate(State(gate): State<Gate>, request: Request, next: Next) -> Response {
    let Gate { app, address, may } = gate;
    let (mut parts, body) = request.into_parts();
    if let Some(LoggedAs(logged)) = parts.extensions.get() {
        // Set once: a request passes one gate.
        let _ = logged.set(address);
    }
    let visitor = match find(&app, &parts).await {
        Ok(visitor) => visitor,
        Err(error) => return error.into_response(),
    };
    let frame = visitor.as_ref().map_or_else(|| app.frame(), Visitor::frame);
    match &visitor {
        Some(visitor) if !may.lets(&visitor.actor) => return error::with_page(Error::MayNot.into_response(), frame),
        None if may != May::Anybody => return error::with_page(ask_to_sign_in(&app, &parts).await, frame),
        _ => {}
    }
    if let Some(visitor) = visitor {
        parts.extensions.insert(visitor);
    }
    error::with_page(next.run(Request::from_parts(parts, body)).await, frame)
}

async fn find(app: &App, request: &Parts) -> Result<Option<Visitor>, Error> {
    let Some(token) = token(&request.headers, app.config.is_https()) else { return Ok(None) };
    let from = client::from(&app.config, &request.headers, &request.extensions);
    let known = app.shop.visitor(&token).await?;
    Ok(known.map(|known| Visitor::new(app, known, from)))
}

async fn ask_to_sign_in(app: &App, request: &Parts) -> Response {
    if !matches!(request.method, Method::GET | Method::HEAD) {
        // Whatever was typed is still in the browser: it can be sent again after signing in beside it.
        return Error::SignedOut.into_response();
    }
    if is_new(&app.shop).await {
        return Redirect::to(path::SET_UP).into_response();
    }
    let wanted = request.uri.path_and_query().map_or("/", |wanted| wanted.as_str());
    Redirect::to(&path::sign_in(wanted)).into_response()
}

async fn is_new(shop: &Shop) -> bool {
    shop.is_new().await.unwrap_or(false)
}

/// The name of the session's cookie; browsers hold one that begins `__Host-` to https and to this host alone.
pub fn cookie_name(is_https: bool) -> &'static str {
    if is_https { "__Host-sid" } else { "sid" }
}

/// The session's token among the cookies.
pub fn token(headers: &HeaderMap, is_https: bool) -> Option<Token> {
    cookie(headers, cookie_name(is_https)).map(Token::presented)
}

/// The value of a cookie.
pub fn cookie<'h>(headers: &'h HeaderMap, name: &str) -> Option<&'h str> {
    let lines = headers.get_all(header::COOKIE).iter().filter_map(|line| line.to_str().ok());
    let mut pairs = lines.flat_map(|line| line.split(';')).filter_map(|pair| pair.trim().split_once('='));
    pairs.find(|(key, _)| *key == name).map(|(_, value)| value)
}

impl<S: Send + Sync> FromRequestParts<S> for Visitor {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Error> {
        parts.extensions.get::<Self>().cloned().ok_or(Error::SignedOut)
    }
}

/// Where a request comes from, for the deeds of signing in.
#[derive(Debug, Clone)]
pub struct Origin(pub From);

impl FromRequestParts<App> for Origin {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, app: &App) -> Result<Self, Error> {
        Ok(Self(client::from(&app.config, &parts.headers, &parts.extensions)))
    }
}

impl<S: Send + Sync> FromRequestParts<S> for Perhaps {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Error> {
        Ok(Self(parts.extensions.get::<Visitor>().cloned()))
    }
}
