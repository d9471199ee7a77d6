//! One rule set: where it comes from, its lines, and the file in the data folder that a manager may put in its place.

use std::path::PathBuf;

use askama::Template;
use axum::extract::{Path, State};

use super::own::{Difference, difference, wrong_by_line};
use super::{SetView, set_view, versions};
use crate::db;
use crate::db::rule_books::{SHOP, set_on};
use crate::model::person::Role;
use crate::rules::{RuleSet, embedded};
use crate::shop::Refusal;
use crate::shop::rule_files::NewRuleFile;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Choice, Table};
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

/// Where files lie that may stand in the place of a shipped set, inside the data folder.
const FOLDER: &str = "rule-sets";
/// Largest file taken, in bytes.
const MOST_BYTES: u64 = 200_000;

#[derive(Template)]
#[template(path = "rules/file.html")]
struct FilePage {
    frame: Frame,
    form: Form,
    name: String,
    set: SetView,
    versions: Option<Table>,
    /// What may be put in force, for a manager.
    ways: Option<Vec<Choice>>,
    /// Where a file would be looked for.
    place: String,
    /// The difference, once it was asked for.
    difference: Option<Difference>,
}

fn place(app: &App, name: &str) -> PathBuf {
    app.config.data.join(FOLDER).join(format!("{name}.toml"))
}

/// The text of the file in the data folder; `None` where there is none, or too large a one.
async fn text_of(app: &App, name: &str) -> Option<String> {
    let place = place(app, name);
    let size = tokio::fs::metadata(&place).await.ok()?.len();
    if size > MOST_BYTES {
        return None;
    }
    tokio::fs::read_to_string(&place).await.ok()
}

async fn view(
    app: &App,
    who: &Visitor,
    name: &str,
    form: Form,
    difference: Option<Difference>,
) -> Result<FilePage, Error> {
    let frame = who.frame().at(Place::Office);
    let w = frame.w;
    let mut con = app.read().await?;
    let set = set_on(&mut con, who.branch.id, name, app.shop.clock.today(&who.zone)).await?;
    let files = db::rule_files::list(&mut con, who.branch.id, name).await?;
    let people = db::people::list(&mut con, who.branch.id).await?;
    let ways = who.actor.is_one_of(&[Role::Manager]).then(|| kit::choices(&w, "rules-take", ["file", "shipped"]));
    Ok(FilePage {
        set: set_view(&w, &set),
        versions: versions(who, &people, &files),
        ways,
        place: format!("{FOLDER}/{name}.toml"),
        name: name.to_owned(),
        form: form.scoped("rules"),
        difference,
        frame,
    })
}

/// `GET /office/rules/sets/{name}`.
pub async fn show(State(app): State<App>, who: Visitor, Path(name): Path<String>) -> Answer {
    if name == SHOP || embedded(&name).is_none() {
        return Err(Error::NotFound);
    }
    let latest = db::rule_files::list(&mut *app.read().await?, who.branch.id, &name).await?;
    let form = Form::blank()
        .with("from_on", app.shop.clock.today(&who.zone).to_string())
        .with("opened", latest.first().map(|file| file.id.clone()).unwrap_or_default());
    page(view(&app, &who, &name, form, None).await?)
}

/// `POST /office/rules/sets/{name}`: shows the difference, or with `then=save` puts the file in force.
pub async fn update(State(app): State<App>, who: Visitor, Path(name): Path<String>, typed: Typed) -> Answer {
    let shipped = embedded(&name).filter(|_| name != SHOP).ok_or(Error::NotFound)?;
    let mut form = Form::from(typed).scoped("rules");
    let w = who.frame().w;
    let today = app.shop.clock.today(&who.zone);
    let from_on = form.date("from_on");
    if from_on.is_some_and(|day| day < today) {
        form.fail("from_on", Wrong::Past);
    }
    let text = match form.value("take") {
        "shipped" => Some(shipped.to_owned()),
        "file" => {
            let text = text_of(&app, &name).await;
            if text.is_none() {
                let place = format!("{FOLDER}/{name}.toml");
                form.fail("take", Wrong::Rule("wrong-rules-no-file", vec![("place", place.into())]));
            }
            text
        }
        _ => {
            form.fail("take", Wrong::NotAChoice);
            None
        }
    };
    let set = text.as_deref().map(RuleSet::read);
    let set = match set {
        Some(Err(bad)) => {
            form.fail("take", wrong_by_line(bad));
            None
        }
        Some(Ok(set)) if set.name != name || set.is_shop => {
            form.fail("take", Wrong::Rule("wrong-rules-other-set", vec![]));
            None
        }
        other => other.and_then(Result::ok),
    };
    let (Some(from_on), Some(text), Some(set), Some(())) = (from_on, text, set, form.sound()) else {
        return retry(view(&app, &who, &name, form, None).await?);
    };
    let before = set_on(&mut *app.read().await?, who.branch.id, &name, from_on).await?;
    let shown = difference(&w, &before, &set);
    if form.value("then") != "save" {
        return page(view(&app, &who, &name, form, Some(shown)).await?);
    }
    let opened_at = Some(form.value("opened").to_owned()).filter(|id| !id.is_empty());
    let new = NewRuleFile { name: name.clone(), text, from_on, opened_at, second: None };
    match app.shop.change_rules(&who.actor, form.key(), new).await {
        Ok(()) => return see_other(path::rule_set(&name)),
        Err(Refusal::Stale) => form.fail("take", Wrong::Rule("wrong-rules-meanwhile", vec![])),
        Err(refusal) => beside(&mut form, refusal)?,
    }
    let latest = db::rule_files::list(&mut *app.read().await?, who.branch.id, &name).await?;
    form.set("opened", latest.first().map(|file| file.id.clone()).unwrap_or_default());
    retry(view(&app, &who, &name, form, Some(shown)).await?)
}
