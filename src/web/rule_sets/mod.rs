//! Office: the rule sets in force with every line, and the shop's own lines as text.

use askama::Template;
use axum::extract::State;
use time::Date;

use super::app::App;
use super::kit::{Cell, Column, Row, Table};
use super::page::{Frame, Place, page};
use super::visitor::Visitor;
use super::{Answer, Error};
use crate::db;
use crate::db::rule_books::SHOP;
use crate::db::rule_files::RuleFile;
use crate::model::person::Role;
use crate::rules::RuleSet;
use crate::words::Words;

pub mod own;
mod said;

/// One set as the page shows it.
struct SetView {
    title: String,
    version: String,
    tables: Vec<Table>,
}

#[derive(Template)]
#[template(path = "rules/list.html")]
struct ListPage {
    frame: Frame,
    sets: Vec<SetView>,
    own_standing: String,
    own_next: String,
    versions: Option<Table>,
    may_change: bool,
}

/// `GET /office/rules`.
pub async fn list(State(app): State<App>, who: Visitor) -> Answer {
    let mut con = app.read().await?;
    let today = app.shop.clock.today(&who.zone);
    let book = db::rule_books::book_on(&mut con, who.branch.id, today).await?;
    let files = db::rule_files::list(&mut con, who.branch.id, SHOP).await?;
    let in_force = db::rule_files::find_in_force(&mut con, who.branch.id, SHOP, today).await?;
    let people = db::people::list(&mut con, who.branch.id).await?;
    let frame = who.frame().at(Place::Office);
    let w = frame.w;
    let own_standing = match &in_force {
        Some(file) => w.tv("rules-own-since", &[("on", w.date(file.from_on).into())]),
        None => w.t("rules-own-shipped"),
    };
    let next = files.iter().filter(|file| file.from_on > today).map(|file| file.from_on).min();
    let by = |file: &RuleFile| {
        people.iter().find(|one| one.id == file.person_id).map(|one| one.name.clone()).unwrap_or_default()
    };
    let version = |file: &RuleFile| {
        vec![
            Cell::new(w.date(file.from_on)),
            Cell::new(by(file)),
            Cell::new(w.date_time(who.zone.local(file.recorded_at))),
            Cell::new(short(&file.sha256)),
        ]
    };
    let columns = ["rules-version-from", "rules-version-by", "rules-version-at", "rules-version-sum"];
    page(ListPage {
        sets: book.sets.iter().map(|set| set_view(&w, set)).collect(),
        own_standing,
        own_next: next.map(|on| w.tv("rules-own-next", &[("on", w.date(on).into())])).unwrap_or_default(),
        versions: table(&w, "rules-versions", &columns, files.iter().map(version).collect()),
        may_change: who.actor.is_one_of(&[Role::Manager]),
        frame,
    })
}

/// The first figures of a check sum, enough to tell two versions apart.
fn short(sha256: &str) -> String {
    sha256.chars().take(12).collect()
}

fn set_view(w: &Words, set: &RuleSet) -> SetView {
    let columns = ["rules-id", "rules-value", "rules-for", "rules-source", "rules-standing"];
    let rows = |(caption, lines): (&'static str, Vec<said::Said>)| {
        table(w, caption, &columns, lines.into_iter().map(|line| line.row(w)).collect())
    };
    SetView {
        title: set.title.clone(),
        version: w.tv("rules-version", &[("version", (&set.version).into()), ("sum", short(&set.sha256).into())]),
        tables: said::groups(w, set).into_iter().filter_map(rows).collect(),
    }
}

fn table(w: &Words, caption: &str, columns: &[&str], rows: Vec<Row>) -> Option<Table> {
    let columns = columns.iter().map(|key| Column::text(w.t(key))).collect();
    (!rows.is_empty()).then(|| Table { w: *w, caption: w.t(caption), columns, rows })
}

/// The shop's lines in force on a day: the latest file, else what the program ships.
async fn text_on(app: &App, who: &Visitor, on: Date) -> Result<String, Error> {
    let file = db::rule_files::find_in_force(&mut *app.read().await?, who.branch.id, SHOP, on).await?;
    Ok(file.map_or_else(|| crate::rules::embedded(SHOP).unwrap_or_default().to_owned(), |file| file.text))
}
