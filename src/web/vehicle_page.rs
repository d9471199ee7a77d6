//! The public page of a vehicle, behind the code on its label: the next dates and the shop. No papers, no names.

use askama::Template;
use axum::extract::{Path, State};
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};

use super::app::{App, words_for};
use super::page::{Frame, page_with};
use super::{Answer, Error, language};
use crate::clock::Zone;
use crate::db;
use crate::model::Coded;
use crate::model::branch::Branch;
use crate::model::duty::{Duty, DutyKind};
use crate::model::vehicle::is_vin;
use crate::words::Words;

#[derive(Template)]
#[template(path = "vehicle_page.html")]
struct VehiclePage {
    frame: Frame,
    /// `None` for a code that no vehicle has.
    found: Option<Found>,
}

struct Found {
    shop: Branch,
    /// Name and value: make, last four of its number.
    facts: Vec<(String, String)>,
    /// What is due and by when; what is over says so.
    duties: Vec<(String, String)>,
}

/// `GET /vehicle/{code}`.
pub async fn show(State(app): State<App>, Path(code): Path<String>, came: HeaderMap) -> Answer {
    // A stranger at the vehicle reads it in the language of their browser, else in the shop's.
    let asked = language::asked(&came).map(Words::new);
    let labelled = app.shop.find_labelled(&code).await?;
    let (frame, found) = match labelled {
        None => (app.frame_of(None, asked.unwrap_or_default()), None),
        Some(labelled) => {
            let mut con = app.read().await?;
            let shop = db::branches::find(&mut con, labelled.branch_id).await?.ok_or(Error::NotFound)?;
            let zone = Zone::named(&shop.time_zone).unwrap_or_else(|_| Zone::utc());
            let today = app.shop.clock.today(&zone);
            let duties = db::duties::list_of_vehicle(&mut con, labelled.branch_id, labelled.vehicle_id).await?;
            let frame = app.frame_of(Some(&shop), asked.unwrap_or_else(|| words_for("", &shop)));
            let w = frame.w;
            let duty = |duty: &Duty| {
                let day = w.date(duty.due_on);
                let by = match duty.due_km {
                    Some(km) => w.tv("mail-by-or-km", &[("day", day.into()), ("km", km.into())]),
                    None => w.tv("mail-by", &[("day", day.into())]),
                };
                let over = if duty.due_on < today { w.t("vehicle-page-over") } else { String::new() };
                let by = [by, over].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ");
                (w.t(format!("{}-{}", DutyKind::LIST, duty.kind)), by)
            };
            let identity = if labelled.vin.is_empty() { &labelled.chassis_number } else { &labelled.vin };
            let last_4 = identity.char_indices().rev().nth(3).map_or(identity.as_str(), |(at, _)| &identity[at..]);
            let key = if is_vin(identity) { "register-vin-last-4" } else { "register-chassis-last-4" };
            let facts = vec![(w.t("register-make"), labelled.make), (w.t(key), last_4.to_owned())];
            let duties = duties.iter().filter(|duty| duty.closed_at.is_none()).map(duty).collect();
            let facts = facts.into_iter().filter(|(_, value)| !value.is_empty()).collect();
            (frame, Some(Found { shop, facts, duties }))
        }
    };
    let status = if found.is_some() { StatusCode::OK } else { StatusCode::NOT_FOUND };
    let mut response = page_with(status, VehiclePage { frame, found })?;
    let headers = response.headers_mut();
    headers.insert(header::REFERRER_POLICY, HeaderValue::from_static("no-referrer"));
    headers.append(header::VARY, HeaderValue::from_static("accept-language"));
    headers.insert("x-robots-tag", HeaderValue::from_static("noindex"));
    Ok(response)
}
