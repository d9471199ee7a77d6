//! Office: the rule sets in force with every line, and the shop's own lines as text.

use askama::Template;
use axum::extract::State;
use time::Date;

use super::app::App;
use super::kit::{Cell, Column, Mark, Row, Table};
use super::page::{Frame, Place, page};
use super::visitor::Visitor;
use super::{Answer, Error, path};
use crate::db;
use crate::db::rule_books::SHOP;
use crate::db::rule_files::RuleFile;
use crate::model::ids::PersonId;
use crate::model::person::{Person, Role};
use crate::rules::{EMBEDDED, RuleBook, RuleSet};
use crate::words::Words;

pub mod file;
pub mod own;
mod said;
pub mod stack;

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
    /// Every set there is, with its standing in this branch.
    overview: Option<Table>,
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
    let overview = overview(&mut con, &who, &book, &people, today).await?;
    page(ListPage {
        overview,
        sets: book.sets.iter().map(|set| set_view(&w, set)).collect(),
        own_standing,
        own_next: next.map(|on| w.tv("rules-own-next", &[("on", w.date(on).into())])).unwrap_or_default(),
        versions: versions(&who, &people, &files),
        may_change: who.actor.is_one_of(&[Role::Manager]),
        frame,
    })
}

/// Every set there is: whether this branch stacks it, its version and check sum, and who put a file in its place.
async fn overview(
    con: &mut db::Con,
    who: &Visitor,
    book: &RuleBook,
    people: &[Person],
    today: Date,
) -> Result<Option<Table>, Error> {
    let w = who.words();
    let by_vehicle = db::rule_books::stack(con, who.branch.id).await?.by_vehicle;
    let mut rows: Vec<Row> = Vec::new();
    for (name, _) in EMBEDDED.iter().filter(|(name, _)| *name != SHOP) {
        let set = db::rule_books::set_on(con, who.branch.id, name, today).await?;
        let file = db::rule_files::find_in_force(con, who.branch.id, name, today).await?;
        let here = if book.sets.iter().any(|one| one.name == *name) {
            Cell::new(w.t("rules-stacked")).marked(Mark::Met)
        } else if by_vehicle {
            Cell::new(w.t("rules-by-country"))
        } else {
            Cell::new(w.t("rules-left-out"))
        };
        let from = match &file {
            Some(file) => w.tv(
                "rules-from-file",
                &[("person", name_of(people, file.person_id).into()), ("on", w.date(file.from_on).into())],
            ),
            None => w.t("rules-as-shipped"),
        };
        rows.push(vec![
            Cell::link(set.title, path::rule_set(name)).with_second(*name),
            here,
            Cell::new(set.version).with_second(short(&set.sha256)),
            Cell::new(from),
        ]);
    }
    let columns = ["rules-set", "rules-here", "rules-version-and-sum", "rules-comes-from"];
    Ok(table(&w, "rules-all", &columns, rows))
}

fn name_of(people: &[Person], id: PersonId) -> String {
    people.iter().find(|one| one.id == id).map(|one| one.name.clone()).unwrap_or_default()
}

/// Every version of a set that somebody put in force, with its check sum.
fn versions(who: &Visitor, people: &[Person], files: &[RuleFile]) -> Option<Table> {
    let w = who.words();
    let version = |file: &RuleFile| {
        let second =
            file.second_person_id.map(|id| w.tv("rules-version-second", &[("person", name_of(people, id).into())]));
        vec![
            Cell::new(w.date(file.from_on)),
            Cell::new(name_of(people, file.person_id)).with_second(second.unwrap_or_default()),
            Cell::new(w.date_time(who.zone.local(file.recorded_at))),
            Cell::new(short(&file.sha256)),
        ]
    };
    let columns = ["rules-version-from", "rules-version-by", "rules-version-at", "rules-version-sum"];
    table(&w, "rules-versions", &columns, files.iter().map(version).collect())
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
