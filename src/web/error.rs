//! An error as an answer: the one place where kinds of "no" become a status and a page.

use std::sync::Arc;

use askama::Template;
use axum::body::Body;
use axum::http::{HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};

use super::form::{Form, Wrong};
use super::page::Frame;
use crate::db;
use crate::shop::Refusal;
use crate::words::Words;

/// Why a request got no proper answer.
#[derive(Debug)]
pub enum Error {
    /// There is no such thing, or not in this branch.
    NotFound,
    /// Nobody is signed in, and somebody must be.
    SignedOut,
    /// The visitor's role does not allow it.
    MayNot,
    /// The browser says that another site sent this.
    CrossSite,
    /// The request cannot be read; the text is for the log.
    Unreadable(String),
    /// The shop said no.
    Refused(Refusal),
    /// The program failed; the text is for the log.
    Broken(String),
}

impl From<db::Error> for Error {
    fn from(error: db::Error) -> Self {
        Self::from(Refusal::from(error))
    }
}

impl From<Refusal> for Error {
    fn from(refusal: Refusal) -> Self {
        match refusal {
            Refusal::Gone => Self::NotFound,
            Refusal::Broken(said) => Self::Broken(said),
            other => Self::Refused(other),
        }
    }
}

impl Error {
    /// The status this becomes.
    pub fn status(&self) -> StatusCode {
        match self {
            Self::NotFound => StatusCode::NOT_FOUND,
            Self::SignedOut => StatusCode::UNAUTHORIZED,
            Self::MayNot | Self::CrossSite => StatusCode::FORBIDDEN,
            Self::Unreadable(_) => StatusCode::BAD_REQUEST,
            Self::Broken(_) => StatusCode::INTERNAL_SERVER_ERROR,
            Self::Refused(refusal) => match refusal {
                Refusal::MayNot(_) => StatusCode::FORBIDDEN,
                Refusal::Throttled(_) => StatusCode::TOO_MANY_REQUESTS,
                Refusal::Taken { .. } | Refusal::Field { .. } => StatusCode::UNPROCESSABLE_ENTITY,
                Refusal::Gone => StatusCode::NOT_FOUND,
                Refusal::Broken(_) => StatusCode::INTERNAL_SERVER_ERROR,
                Refusal::Missing(_) | Refusal::Ended(_) | Refusal::Stale | Refusal::KeyUsed => StatusCode::CONFLICT,
            },
        }
    }
}

/// A refused answer on its way out, still without a page: the page needs the visitor's words, which the gate knows.
#[derive(Debug, Clone)]
struct Failed {
    error: Arc<Error>,
    /// What the visitor can quote and the log can be searched for.
    reference: String,
}

impl IntoResponse for Error {
    fn into_response(self) -> Response {
        let status = self.status();
        let reference = uuid::Uuid::now_v7().simple().to_string();
        // The inside of a failure goes to the log, once; the visitor sees the reference.
        match &self {
            Self::Broken(said) => tracing::error!(%reference, said, "failed"),
            Self::Unreadable(said) => tracing::info!(%reference, said, "unreadable request"),
            other => tracing::debug!(%reference, ?other, "refused"),
        }
        let mut response = status.into_response();
        if let Self::Refused(Refusal::Throttled(wait)) = &self {
            response.headers_mut().insert(header::RETRY_AFTER, (wait.as_secs() + 1).into());
        }
        response.extensions_mut().insert(Failed { error: Arc::new(self), reference });
        response
    }
}

#[derive(Template)]
#[template(path = "error.html")]
struct ErrorPage {
    frame: Frame,
    title: String,
    sentence: String,
    /// What is still missing, in words.
    missing: Vec<String>,
    reference: String,
    sign_in: Option<String>,
}

/// Gives a refused answer its page; any other answer passes unchanged.
pub(super) fn with_page(mut response: Response, frame: Frame) -> Response {
    let Some(Failed { error, reference }) = response.extensions_mut().remove::<Failed>() else { return response };
    let key = error.key();
    let sentence = error.sentence(&frame.w).unwrap_or_else(|| frame.w.t(format!("{key}-more")));
    let missing = match &*error {
        Error::Refused(Refusal::Missing(what)) => what.iter().map(|key| frame.w.t(key)).collect(),
        _ => vec![],
    };
    let sign_in = matches!(*error, Error::SignedOut).then(|| super::path::sign_in("/"));
    let page = ErrorPage { title: frame.w.t(key), sentence, missing, reference, sign_in, frame };
    let (mut parts, _) = response.into_parts();
    match page.render() {
        Ok(html) => {
            parts.headers.insert(header::CONTENT_TYPE, HeaderValue::from_static("text/html; charset=utf-8"));
            parts.headers.remove(header::CONTENT_LENGTH);
            Response::from_parts(parts, html.into())
        }
        Err(error) => {
            tracing::error!(%error, "the page of an error cannot be drawn");
            Response::from_parts(parts, Body::empty())
        }
    }
}

impl Error {
    /// The key of the page's title; with `-more` of its sentence.
    fn key(&self) -> &'static str {
        match self {
            Self::NotFound | Self::Refused(Refusal::Gone) => "error-not-found",
            Self::SignedOut => "error-signed-out",
            Self::MayNot => "error-may-not",
            Self::CrossSite => "error-cross-site",
            Self::Unreadable(_) => "error-unreadable",
            Self::Broken(_) | Self::Refused(Refusal::Broken(_)) => "error-broken",
            Self::Refused(refusal) => match refusal {
                Refusal::Throttled(_) => "error-throttled",
                Refusal::Stale => "error-stale",
                Refusal::KeyUsed => "error-key-used",
                Refusal::Missing(_) => "error-missing",
                Refusal::Taken { .. } => "error-taken",
                _ => "error-refused",
            },
        }
    }

    /// The sentence that only this refusal has.
    fn sentence(&self, w: &Words) -> Option<String> {
        let Self::Refused(refusal) = self else { return None };
        match refusal {
            Refusal::MayNot(key) | Refusal::Ended(key) | Refusal::Field { why: key, .. } => Some(w.t(key)),
            Refusal::Throttled(wait) => {
                let seconds = i64::try_from(wait.as_secs()).unwrap_or(i64::MAX).saturating_add(1);
                Some(w.tn("error-throttled-more", seconds))
            }
            _ => None,
        }
    }
}

/// Puts a refusal that speaks of a field beside that field, for the form to be shown again; any other is passed on.
pub fn beside(form: &mut Form, refusal: Refusal) -> Result<(), Error> {
    match refusal {
        Refusal::Taken { field } => form.fail(&field, Wrong::Taken),
        Refusal::Field { field, why } => form.fail(field, Wrong::Rule(why, vec![])),
        other => return Err(other.into()),
    }
    Ok(())
}

/// Shows both versions after [`Refusal::Stale`]: what was typed stays in each field, what is kept now stands beside it,
/// and the form may be sent again over the version it has now seen.
pub fn meanwhile(form: &mut Form, version: i64, kept: &[(&str, String)]) {
    form.set("opened_version", version.to_string());
    for (field, now) in kept {
        if form.value(field).trim() != now {
            form.fail(field, Wrong::Rule("wrong-changed-meanwhile", vec![("now", now.clone().into())]));
        }
    }
    if form.sound().is_some() {
        form.fail("opened_version", Wrong::Rule("error-stale-more", vec![]));
    }
}
