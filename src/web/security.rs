//! What every request must pass and every response must carry, whatever page it is.

use axum::Router;
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, header};
use axum::middleware::{Next, from_fn_with_state};
use axum::response::{IntoResponse, Response};

use super::Error;
use super::app::App;
use super::visitor::token;

/// Nothing but our own files: a script smuggled into a page does not run, and the page is framed by nobody.
const CONTENT_POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; \
     connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; \
     frame-ancestors 'none'; object-src 'none'";

/// Headers that a response gets unless it brought its own.
const HEADERS: &[(&str, &str)] = &[
    ("content-security-policy", CONTENT_POLICY),
    ("x-content-type-options", "nosniff"),
    ("referrer-policy", "same-origin"),
    ("cross-origin-opener-policy", "same-origin"),
    ("cross-origin-resource-policy", "same-origin"),
    ("permissions-policy", "camera=(self), geolocation=(), microphone=(), payment=()"),
    ("cache-control", "no-store"),
];

/// Puts the checks and headers around the whole site.
pub(super) fn around(router: Router<App>, app: &App) -> Router<App> {
    router.layer(from_fn_with_state(app.clone(), check_site)).layer(from_fn_with_state(app.clone(), add_headers))
}

async fn add_headers(State(app): State<App>, request: Request, next: Next) -> Response {
    let mut response = next.run(request).await;
    let headers = response.headers_mut();
    for (name, value) in HEADERS {
        headers.entry(HeaderName::from_static(name)).or_insert(HeaderValue::from_static(value));
    }
    headers.append(header::VARY, HeaderValue::from_static("sec-fetch-site, origin"));
    if app.config.is_https() {
        let year = HeaderValue::from_static("max-age=31536000; includeSubDomains");
        headers.entry(header::STRICT_TRANSPORT_SECURITY).or_insert(year);
    }
    response
}

async fn check_site(State(app): State<App>, request: Request, next: Next) -> Response {
    let safe = matches!(*request.method(), Method::GET | Method::HEAD | Method::OPTIONS);
    if safe || is_from_here(request.headers(), &app) {
        next.run(request).await
    } else {
        Error::CrossSite.into_response()
    }
}

/// Whether a request that may change something was sent by our own pages (or by a program with a bearer token, which no
/// foreign page can have).
fn is_from_here(headers: &HeaderMap, app: &App) -> bool {
    let text = |name: &str| headers.get(name).map(|value| value.to_str().unwrap_or("unreadable"));
    let origin = text("origin");
    let is_own = |origin: &str| own_origin(headers, app).is_some_and(|own| own == origin);
    match (text("sec-fetch-site"), origin) {
        (Some("same-origin"), _) | (Some("none"), None) => true,
        (Some("none") | None, Some(origin)) => is_own(origin),
        (Some(_), _) => false,
        (None, None) => token(headers, app.config.is_https()).is_none() && text("authorization").is_some(),
    }
}

/// The origin our pages have: as configured, or else as the browser addressed us.
fn own_origin(headers: &HeaderMap, app: &App) -> Option<String> {
    if let Some(url) = &app.config.public_url {
        let (scheme, rest) = url.split_once("://")?;
        return Some(format!("{scheme}://{}", rest.split('/').next().unwrap_or(rest)));
    }
    let host = headers.get(header::HOST)?.to_str().ok()?;
    Some(format!("http://{host}"))
}
