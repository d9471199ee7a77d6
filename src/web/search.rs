//! The one box: plate, VIN, name, phone, job number, serial, certificate. What is meant beyond doubt is opened at once.

use askama::Template;
use axum::extract::{RawQuery, State};

use crate::db;
use crate::db::search::{Wanted, squeeze};
use crate::web::app::App;
use crate::web::customers::contact;
use crate::web::form::{Form, Typed};
use crate::web::page::{Frame, page, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, path};

/// Most of a kind.
const MOST: i64 = 20;

/// One thing that was found.
#[derive(Debug)]
struct Hit {
    title: String,
    note: String,
    href: String,
    /// The query is this thing's whole number, plate or serial.
    is_exact: bool,
}

/// Everything of one kind that was found.
#[derive(Debug)]
struct Group {
    title: String,
    hits: Vec<Hit>,
}

#[derive(Template)]
#[template(path = "search.html")]
struct SearchPage {
    frame: Frame,
    q: String,
    groups: Vec<Group>,
}

/// `GET /search?q=…`.
pub async fn show(State(app): State<App>, who: Visitor, RawQuery(query): RawQuery) -> Answer {
    let form = Form::from(Typed::from_query(query.as_deref().unwrap_or_default()));
    let q: String = form.value("q").trim().chars().take(100).collect();
    let mut groups = if q.is_empty() { Vec::new() } else { find(&app, &who, &q).await? };
    groups.retain(|group| !group.hits.is_empty());
    let mut exact = groups.iter().flat_map(|group| &group.hits).filter(|hit| hit.is_exact);
    if let (Some(one), None) = (exact.next(), exact.next()) {
        return see_other(&one.href);
    }
    let mut all = groups.iter().flat_map(|group| &group.hits);
    if let (Some(one), None) = (all.next(), all.next()) {
        return see_other(&one.href);
    }
    page(SearchPage { frame: who.frame(), q, groups })
}

async fn find(app: &App, who: &Visitor, q: &str) -> Result<Vec<Group>, crate::web::Error> {
    let (w, branch, mut con) = (who.words(), who.branch.id, app.read().await?);
    let (wanted, code) = (Wanted::new(q), squeeze(q));
    let is_code = |text: &str| !code.is_empty() && squeeze(text) == code;
    let group = |key: &str, hits| Group { title: w.t(key), hits };
    let mut vehicles = Vec::new();
    let called = db::vehicles::list_called(&mut con, branch, q).await?;
    for one in db::vehicles::list(&mut con, branch, &wanted, 0, MOST).await? {
        let title = if one.plate.is_empty() { w.t("vehicles-no-plate") } else { one.plate.clone() };
        let note = [format!("{} {}", one.make, one.model), one.keeper_name.clone().unwrap_or_default()];
        let note = note.into_iter().filter(|part| !part.trim().is_empty()).collect::<Vec<_>>().join(" · ");
        let is_exact = called.iter().any(|other| other.id == one.id);
        vehicles.push(Hit { title, note, href: path::vehicle(one.id), is_exact });
    }
    let customers = db::customers::list(&mut con, branch, &wanted, 0, MOST).await?.into_iter().map(|one| Hit {
        note: contact(who, &one.phone),
        is_exact: is_code(&one.phone),
        href: path::customer(one.id),
        title: one.name,
    });
    let jobs = db::search::jobs(&mut con, branch, q).await?.into_iter().map(|one| Hit {
        note: [one.plate.as_str(), &one.make, &one.model].join(" ").trim().to_owned(),
        is_exact: is_code(&one.number),
        href: path::job(one.id),
        title: one.number,
    });
    let parts = db::search::parts(&mut con, branch, q).await?.into_iter().map(|one| Hit {
        title: w.tv(
            "search-part",
            &[
                ("category", w.t(format!("part-category-{}", one.category)).into()),
                ("serial", one.serial.as_str().into()),
            ],
        ),
        note: w.tv(
            if one.is_fitted { "search-part-on" } else { "search-part-off" },
            &[("plate", one.plate.as_str().into())],
        ),
        href: path::vehicle(one.vehicle_id),
        is_exact: is_code(&one.serial),
    });
    let papers = db::search::papers(&mut con, branch, q).await?.into_iter().map(|one| Hit {
        note: one.plate,
        is_exact: is_code(&one.number) || is_code(&one.code),
        href: path::paper(one.id),
        title: one.number,
    });
    Ok(vec![
        group("vehicles-title", vehicles),
        group("customers-title", customers.collect()),
        group("jobs-title", jobs.collect()),
        group("search-parts", parts.collect()),
        group("nav-papers", papers.collect()),
    ])
}
