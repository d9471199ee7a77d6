//! The log of deeds, newest first, a hundred to a page.

use askama::Template;
use axum::extract::{Query, State};
use serde::Deserialize;

use crate::db;
use crate::db::audit::Line;
use crate::web::Answer;
use crate::web::app::App;
use crate::web::kit::{Cell, Column, Pages, Row, Table};
use crate::web::page::{Frame, Place, page};
use crate::web::path;
use crate::web::visitor::Visitor;

const PAGE: i64 = 100;

#[derive(Template)]
#[template(path = "office/log.html")]
struct LogPage {
    frame: Frame,
    table: Table,
    pages: Pages,
}

/// Where a page of the log begins.
#[derive(Debug, Deserialize)]
pub struct From {
    before: Option<i64>,
}

/// `GET /office/log`.
pub async fn list(State(app): State<App>, who: Visitor, Query(From { before }): Query<From>) -> Answer {
    let lines = db::audit::list(&mut *app.read().await?, who.branch.id, before, PAGE).await?;
    let w = who.words();
    let oldest = lines.last().map(|line| line.sequence).filter(|_| i64::try_from(lines.len()) == Ok(PAGE));
    let columns = ["log-at", "log-who", "log-deed"].map(|key| Column::text(w.t(key)));
    let table = Table {
        w,
        caption: w.t("log-title"),
        columns: columns.to_vec(),
        rows: lines.iter().map(|line| row(&who, line)).collect(),
    };
    let older = oldest.map(|sequence| format!("{}?before={sequence}", path::LOG));
    let pages = Pages { w, previous: older, next: before.map(|_| path::LOG.to_owned()) };
    page(LogPage { frame: who.frame().at(Place::Office), table, pages })
}

fn row(who: &Visitor, line: &Line) -> Row {
    let w = who.words();
    // A deed of a newer program, or one whose sentence nobody wrote yet, is still shown: by its tag.
    let deed = w.find(&format!("deed-{}", line.deed)).unwrap_or_else(|| line.deed.clone());
    let at = w.date_time(who.zone.local(line.at));
    vec![Cell::new(at).with_second(line.sequence.to_string()), Cell::new(&line.actor), Cell::new(deed)]
}
