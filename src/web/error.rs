//! An error as an answer: the one place where kinds of "no" become a status and a page.

use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};

use crate::db;
use crate::shop::Refusal;

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

impl IntoResponse for Error {
    fn into_response(self) -> Response {
        let status = self.status();
        // The inside of a failure goes to the log, once, with the reference that the visitor can quote.
        let reference = uuid::Uuid::now_v7().simple().to_string();
        match &self {
            Self::Broken(said) => tracing::error!(%reference, said, "failed"),
            Self::Unreadable(said) => tracing::info!(%reference, said, "unreadable request"),
            other => tracing::debug!(%reference, ?other, "refused"),
        }
        let body = format!("{status}\n{reference}\n");
        let mut response = (status, body).into_response();
        if let Self::Refused(Refusal::Throttled(wait)) = &self {
            response.headers_mut().insert(header::RETRY_AFTER, (wait.as_secs() + 1).into());
        }
        response
    }
}
