//! Anybody may ask how a paper stands: number, kind, date, shop, make, the last four of the VIN; never personal data.

use askama::Template;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use serde::Deserialize;

use crate::model::vehicle::is_vin;
use crate::shop::issue::Found;
use crate::web::app::App;
use crate::web::kit::Verdict;
use crate::web::page::{Frame, page_with, see_other};
use crate::web::papers::{result, verdict};
use crate::web::{Answer, language, path};
use crate::words::Words;

/// A code typed into the form.
#[derive(Debug, Deserialize)]
pub struct Asked {
    #[serde(default)]
    code: String,
}

#[derive(Template)]
#[template(path = "verify.html")]
struct VerifyPage {
    frame: Frame,
    typed: String,
    verdict: Option<Verdict>,
    facts: Vec<(String, String)>,
    /// A code was typed that no paper has.
    is_unknown: bool,
    is_demonstration: bool,
}

/// `GET /verify`: a form for the code, or on to its answer.
pub async fn ask(State(app): State<App>, Query(asked): Query<Asked>, headers: HeaderMap) -> Answer {
    let code = asked.code.trim();
    if !code.is_empty() {
        return see_other(path::verify(code));
    }
    answer(&app, &headers, StatusCode::OK, String::new(), None)
}

/// `GET /verify/{code}`: how the paper with this code stands.
pub async fn show(State(app): State<App>, Path(code): Path<String>, headers: HeaderMap) -> Answer {
    let found = app.shop.find_by_code(&code).await?;
    let status = if found.is_some() { StatusCode::OK } else { StatusCode::NOT_FOUND };
    answer(&app, &headers, status, code, found.as_ref())
}

/// In the language that the browser asks for: whoever holds the paper need not speak the shop's.
fn answer(app: &App, came: &HeaderMap, status: StatusCode, typed: String, found: Option<&Found>) -> Answer {
    let w = Words::new(language::asked(came).unwrap_or_default());
    let frame = app.frame_of(None, w);
    let fact = |key: &str, value: String| (w.t(key), value);
    let facts = found.map(|found| {
        let content = &found.content;
        let vin = content.vehicle.vin.as_str();
        let last_4_key = if is_vin(vin) { "register-vin-last-4" } else { "register-chassis-last-4" };
        let last_4 = vin.char_indices().rev().nth(3).map_or(vin, |(at, _)| &vin[at..]);
        vec![
            fact("register-number", content.number.clone()),
            fact("register-kind", w.t(format!("certificate-kind-{}", found.paper.kind))),
            fact("register-result", result(&w, content)),
            fact("register-issued", w.date(content.issued_on)),
            fact("register-shop", content.shop.name.clone()),
            fact("register-make", content.vehicle.make.clone()),
            fact(last_4_key, last_4.to_owned()),
            fact("register-key", content.check.key_fingerprint.clone()),
        ]
    });
    let page = VerifyPage {
        verdict: found.map(|found| verdict(&w, found.standing, &found.paper.number)),
        is_demonstration: found.is_some_and(|found| found.content.is_demonstration),
        is_unknown: found.is_none() && !typed.is_empty(),
        facts: facts.unwrap_or_default().into_iter().filter(|(_, value)| !value.is_empty()).collect(),
        frame,
        typed,
    };
    let mut response = page_with(status, page)?;
    let headers = response.headers_mut();
    headers.insert(header::REFERRER_POLICY, HeaderValue::from_static("no-referrer"));
    headers.append(header::VARY, HeaderValue::from_static("accept-language"));
    headers.insert("x-robots-tag", HeaderValue::from_static("noindex"));
    Ok(response)
}
