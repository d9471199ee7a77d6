//! Who is asking, and whether they may: found once per request, before the handler.

use axum::extract::{FromRequestParts, Request, State};
use axum::http::request::Parts;
use axum::http::{HeaderMap, Method, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Redirect, Response};

use super::app::App;
use super::{Error, client, path};
use crate::clock::Zone;
use crate::db::sessions::Session;
use crate::model::branch::Branch;
use crate::model::person::{Actor, Person, Role};
use crate::shop::sign_in::{From, Known};
use crate::shop::{Shop, Token};

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
}

impl Visitor {
    pub fn frame(&self) -> crate::web::page::Frame {
        crate::web::page::Frame::default()
    }

    /// The language of their pages: their own, or else the branch's.
    pub fn language(&self) -> &str {
        if self.person.language.is_empty() { &self.branch.language } else { &self.person.language }
    }
}

/// The visitor of a page that everybody may see, if there is one.
#[derive(Debug, Clone)]
pub struct Perhaps(pub Option<Visitor>);

impl May {
    fn lets(self, actor: &Actor) -> bool {
        match self {
            Self::Anybody | Self::SignedIn => true,
            Self::Roles(roles) => actor.is_one_of(roles),
            Self::Signatory => actor.signatory.is_some(),
        }
    }
}

/// Stands before every handler of the table: finds the visitor and turns away whoever may not.
pub(super) async fn gate(State((app, may)): State<(App, May)>, request: Request, next: Next) -> Response {
    let (mut parts, body) = request.into_parts();
    let visitor = match find(&app, &parts).await {
        Ok(visitor) => visitor,
        Err(error) => return error.into_response(),
    };
    match &visitor {
        Some(visitor) if !may.lets(&visitor.actor) => return Error::MayNot.into_response(),
        None if may != May::Anybody => return ask_to_sign_in(&app, &parts).await,
        _ => {}
    }
    if let Some(visitor) = visitor {
        parts.extensions.insert(visitor);
    }
    next.run(Request::from_parts(parts, body)).await
}

async fn find(app: &App, request: &Parts) -> Result<Option<Visitor>, Error> {
    let Some(token) = token(&request.headers, app.config.is_https()) else { return Ok(None) };
    let from = client::from(&app.config, &request.headers, &request.extensions);
    let known = app.shop.visitor(&token).await?;
    Ok(known.map(|Known { session, actor, person, branch, zone }| Visitor {
        actor,
        person,
        branch,
        session,
        zone,
        from,
    }))
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

impl<S: Send + Sync> FromRequestParts<S> for Perhaps {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Error> {
        Ok(Self(parts.extensions.get::<Visitor>().cloned()))
    }
}
