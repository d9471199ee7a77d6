//! Vehicles: the list; one with its life line; writing down and changing; readings; who stands behind it.

use askama::Template;
use axum::extract::{RawQuery, State};

use crate::db;
use crate::db::vehicles::Listed;
use crate::web::app::App;
use crate::web::kit::{Cell, Column, Empty, Pages, Table};
use crate::web::listing::Listing;
use crate::web::page::{Frame, Place, page};
use crate::web::routes::WORKERS;
use crate::web::visitor::Visitor;
use crate::web::{Answer, path};

pub mod form;
pub mod people;
pub mod readings;
pub mod show;

#[derive(Template)]
#[template(path = "vehicles/list.html")]
struct ListPage {
    frame: Frame,
    may_write: bool,
    q: String,
    table: Table,
    empty: Option<Empty>,
    pages: Pages,
}

/// `GET /vehicles`.
pub async fn list(State(app): State<App>, who: Visitor, RawQuery(query): RawQuery) -> Answer {
    let listing = Listing::of(path::VEHICLES, query.as_deref());
    let w = who.words();
    let mut con = app.read().await?;
    let mut found =
        db::vehicles::list(&mut con, who.branch.id, &listing.wanted(), listing.first(), Listing::most()).await?;
    let pages = listing.pages(w, &mut found);
    let empty = found.is_empty().then(|| {
        let key = if listing.q().is_empty() { "vehicles-none" } else { "vehicles-none-found" };
        Empty { sentence: w.tv(key, &[("q", listing.q().to_owned().into())]), act: None }
    });
    let row = |one: &Listed| {
        let keeper = match (one.keeper_id, &one.keeper_name) {
            (Some(id), Some(name)) => Cell::link(name, path::customer(id)),
            _ => Cell::default(),
        };
        let plate = if one.plate.is_empty() { w.t("vehicles-no-plate") } else { one.plate.clone() };
        let title = format!("{} {}", one.make, one.model);
        vec![
            Cell::link(plate, path::vehicle(one.id)).with_second(&one.plate_country),
            Cell::new(title.trim()),
            Cell::new(&one.identity),
            keeper,
        ]
    };
    let columns =
        ["vehicles-plate", "vehicles-make", "vehicles-vin", "vehicle-role-keeper"].map(|key| Column::text(w.t(key)));
    let rows = found.iter().map(row).collect();
    let table = Table { w, caption: w.t("vehicles-title"), columns: columns.to_vec(), rows };
    let (frame, may_write) = (who.frame().at(Place::Vehicles), WORKERS.lets(&who.actor));
    page(ListPage { frame, may_write, q: listing.q().to_owned(), table, empty, pages })
}
