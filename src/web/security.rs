//! What every request must pass and every response must carry, whatever page it is.

use std::sync::{Arc, OnceLock};
use std::time::Duration;

use axum::Router;
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, header};
use axum::middleware::{Next, from_fn, from_fn_with_state};
use axum::response::{IntoResponse, Response};
use tower_http::catch_panic::CatchPanicLayer;
use tower_http::compression::CompressionLayer;

use super::app::App;
use super::visitor::token;
use super::{Error, error, path};

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

/// Longest time for an answer; a body that trickles in runs into it too.
const ANSWER_WITHIN: Duration = Duration::from_secs(20);
/// The same where photographs come over a workshop's wireless network.
const FILES_WITHIN: Duration = Duration::from_mins(5);
/// The same for logs of a drive: two of 200 MB over a network of 2 Mbit/s take 27 minutes.
const LOGS_WITHIN: Duration = Duration::from_mins(30);

/// Puts the checks and headers around the whole site.
pub(super) fn around(router: Router, app: &App) -> Router {
    router
        .layer(from_fn_with_state(app.clone(), check_site))
        .layer(CatchPanicLayer::custom(after_panic))
        .layer(from_fn(in_time))
        .layer(from_fn_with_state(app.clone(), dress))
        .layer(CompressionLayer::new())
        .layer(from_fn(log))
}

/// A page for refused answers that have none yet, and the headers.
async fn dress(State(app): State<App>, request: Request, next: Next) -> Response {
    let mut response = error::with_page(next.run(request).await, app.frame());
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

async fn in_time(request: Request, next: Next) -> Response {
    let kind = request.headers().get(header::CONTENT_TYPE).and_then(|kind| kind.to_str().ok()).unwrap_or_default();
    let address = request.uri().path();
    let within = match kind.starts_with("multipart/") {
        true if address.starts_with("/jobs/") && address.ends_with("/road") => LOGS_WITHIN,
        true => FILES_WITHIN,
        // Two logs of 200 MB are read to their end, after whoever came first.
        false if address.contains("/road/") && address.ends_with("/columns") => FILES_WITHIN,
        false => ANSWER_WITHIN,
    };
    match tokio::time::timeout(within, next.run(request)).await {
        Ok(response) => response,
        Err(_) => StatusCode::REQUEST_TIMEOUT.into_response(),
    }
}

fn after_panic(_: Box<dyn std::any::Any + Send + 'static>) -> Response {
    // Where it happened was already printed by the panic itself.
    Error::Broken("a handler panicked".to_owned()).into_response()
}

/// One line a request. The address as the table spells it: no ids, no codes, no questions.
async fn log(request: Request, next: Next) -> Response {
    let method = request.method().clone();
    let begun = std::time::Instant::now();
    let address = Arc::new(OnceLock::new());
    let mut request = request;
    request.extensions_mut().insert(LoggedAs(Arc::clone(&address)));
    let response = next.run(request).await;
    let took_ms = u64::try_from(begun.elapsed().as_millis()).unwrap_or(u64::MAX);
    let status = response.status().as_u16();
    tracing::info!(%method, address = address.get().copied().unwrap_or("(none)"), status, took_ms, "request");
    response
}

/// Where a route leaves its address for the log.
#[derive(Debug, Clone)]
pub(super) struct LoggedAs(pub Arc<OnceLock<&'static str>>);

async fn check_site(State(app): State<App>, request: Request, next: Next) -> Response {
    let safe = matches!(*request.method(), Method::GET | Method::HEAD | Method::OPTIONS);
    if safe || is_from_here(request.headers(), &app) || is_one_click(&request, &app) {
        next.run(request).await
    } else {
        Error::CrossSite.into_response()
    }
}

/// Whether this is the one click of RFC 8058: a mail program's server sends it, with nothing of a browser about it. The
/// address itself is the secret, and all it can do is to end reminders.
fn is_one_click(request: &Request, app: &App) -> bool {
    let headers = request.headers();
    let is_browser = ["sec-fetch-site", "origin"].iter().any(|name| headers.contains_key(*name));
    request.uri().path().starts_with(path::UNSUBSCRIBE)
        && !is_browser
        && token(headers, app.config.is_https()).is_none()
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
