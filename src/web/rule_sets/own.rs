//! The shop's own lines: written as text, looked at as a difference, put in force from a day.

use askama::Template;
use axum::extract::State;
use time::Date;

use super::said;
use crate::db;
use crate::db::rule_books::SHOP;
use crate::model::ids::PersonId;
use crate::rules::{BadSet, Change, Looser, RuleBook, RuleSet, Turn, changes, looser};
use crate::shop::Refusal;
use crate::shop::rule_files::NewRuleFile;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Cell, Mark, Table};
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};
use crate::words::Words;

/// Longest text taken, in characters.
const MOST_TEXT: usize = 200_000;

#[derive(Template)]
#[template(path = "rules/own.html")]
struct OwnPage {
    frame: Frame,
    form: Form,
    /// The difference, once it was asked for.
    difference: Option<Difference>,
    /// Lines that ask less than the sets below by an authority's leave: a second person stands behind them.
    allowed: Vec<String>,
}

pub(super) enum Difference {
    None,
    Lines(Table),
}

impl OwnPage {
    fn new(who: &Visitor, form: Form, difference: Option<Difference>) -> Self {
        Self { frame: who.frame().at(Place::Office), form: form.scoped("rules"), difference, allowed: Vec::new() }
    }

    fn with_allowed(mut self, found: &[Looser]) -> Self {
        let w = self.frame.w;
        let said = |one: &Looser| {
            let values = [
                ("id", one.id.as_str().into()),
                ("base", one.base_id.as_str().into()),
                ("set", one.base_title.as_str().into()),
            ];
            w.tv("rules-second-line", &values)
        };
        self.allowed = found.iter().map(said).collect();
        self
    }
}

async fn latest(app: &App, who: &Visitor) -> Result<Option<String>, Error> {
    let files = db::rule_files::list(&mut *app.read().await?, who.branch.id, SHOP).await?;
    Ok(files.first().map(|file| file.id.clone()))
}

/// `GET /office/rules/shop`.
pub async fn edit(State(app): State<App>, who: Visitor) -> Answer {
    let today = app.shop.clock.today(&who.zone);
    let form = Form::blank()
        .with("text", super::text_on(&app, &who, today).await?)
        .with("from_on", today.to_string())
        .with("opened", latest(&app, &who).await?.unwrap_or_default());
    page(OwnPage::new(&who, form, None))
}

/// `POST /office/rules/shop`: shows the difference, or with `then=save` puts the text in force.
pub async fn update(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("rules");
    let w = who.frame().w;
    let today = app.shop.clock.today(&who.zone);
    let from_on = form.date("from_on");
    if from_on.is_some_and(|day| day < today) {
        form.fail("from_on", Wrong::Past);
    }
    let base = match from_on {
        Some(day) => Some(db::rule_books::base_on(&mut *app.read().await?, who.branch.id, day.max(today)).await?),
        None => None,
    };
    let set = read(&mut form, base.as_ref());
    let (Some(from_on), Some((text, set, found))) = (from_on, set) else {
        return retry(OwnPage::new(&who, form, None));
    };
    let before = before(&app, &who, from_on).await?;
    let shown = |form| OwnPage::new(&who, form, Some(difference(&w, &before, &set))).with_allowed(&found);
    if form.sound().is_none() {
        return retry(shown(form));
    }
    if form.value("then") != "save" {
        return page(shown(form));
    }
    let second = match second(&app, &who, &mut form, &found, today).await {
        Ok(second) => second,
        Err(Refusal::Field { field, why }) => {
            form.fail(field, Wrong::Rule(why, vec![]));
            return retry(shown(form));
        }
        Err(refusal) => return Err(refusal.into()),
    };
    let opened_at = Some(form.value("opened").to_owned()).filter(|id| !id.is_empty());
    let new = NewRuleFile { name: SHOP.to_owned(), text, from_on, opened_at, second };
    match app.shop.change_rules(&who.actor, form.key(), new).await {
        Ok(()) => return see_other(path::RULES),
        Err(Refusal::Stale) => {
            form.fail("text", Wrong::Rule("wrong-rules-meanwhile", vec![]));
            form.set("opened", latest(&app, &who).await?.unwrap_or_default());
        }
        Err(refusal) => beside(&mut form, refusal)?,
    }
    retry(shown(form))
}

/// Who stands behind lines that ask less, beside the writer; nobody where no line does.
async fn second(
    app: &App,
    who: &Visitor,
    form: &mut Form,
    found: &[Looser],
    today: Date,
) -> Result<Option<PersonId>, Refusal> {
    if found.is_empty() {
        return Ok(None);
    }
    let missing = |field| Refusal::Field { field, why: "wrong-second-needed" };
    let name = form.opt_text("second_name", 100).ok_or_else(|| missing("second_name"))?;
    let password = form.value("second_password").to_owned();
    if password.is_empty() {
        return Err(missing("second_password"));
    }
    let address = &who.from.address;
    app.shop.second_person(&who.actor, &name, &password, today, address).await.map(Some)
}

/// What is wrong with a text, by line.
pub(super) fn wrong_by_line(bad: BadSet) -> Wrong {
    let why = ("why", bad.why.into());
    match bad.line {
        Some(line) => Wrong::Rule("wrong-rules-line", vec![("line", line.into()), why]),
        None => Wrong::Rule("wrong-rules-whole", vec![why]),
    }
}

/// The text as a set of the shop with its lines that ask less than the sets below, or what stands in the way, by line.
fn read(form: &mut Form, base: Option<&RuleBook>) -> Option<(String, RuleSet, Vec<Looser>)> {
    let text = form.long_text("text", MOST_TEXT)?;
    let set = match RuleSet::read(&text) {
        Ok(set) => set,
        Err(bad) => {
            form.fail("text", wrong_by_line(bad));
            return None;
        }
    };
    if set.name != SHOP || !set.is_shop {
        form.fail("text", Wrong::Rule("wrong-rules-not-shop", vec![]));
    }
    let all = looser(base?, &set);
    if let Some(found) = all.iter().find(|one| !one.is_allowed).cloned() {
        let quoted = format!("\"{}\"", found.id);
        let line = text.lines().position(|line| line.contains(&quoted)).map_or(1, |at| at + 1);
        let values = vec![
            ("line", line.into()),
            ("id", found.id.into()),
            ("base", found.base_id.into()),
            ("set", found.base_title.into()),
        ];
        form.fail("text", Wrong::Rule("wrong-rules-looser-line", values));
    }
    Some((text, set, all))
}

async fn before(app: &App, who: &Visitor, on: Date) -> Result<RuleSet, Error> {
    let text = super::text_on(app, who, on).await?;
    RuleSet::read(&text).map_err(|bad| Error::Broken(bad.to_string()))
}

pub(super) fn difference(w: &Words, before: &RuleSet, after: &RuleSet) -> Difference {
    let row = |change: &Change| {
        let (mark, key) = match change.turn {
            Turn::Added => (Mark::Met, "turn-added"),
            Turn::Removed => (Mark::NotApplicable, "turn-removed"),
            Turn::Stricter => (Mark::Met, "turn-stricter"),
            Turn::Looser => (Mark::Undecided, "turn-looser"),
            Turn::Other => (Mark::NotApplicable, "turn-other"),
        };
        vec![
            Cell::new(&change.id),
            Cell::new(w.t(key)).marked(mark),
            Cell::new(said::line(w, before, &change.id)),
            Cell::new(said::line(w, after, &change.id)),
        ]
    };
    let rows = changes(before, after).iter().map(row).collect();
    let columns = ["rules-id", "rules-turn", "rules-before", "rules-after"];
    super::table(w, "rules-changes", &columns, rows).map_or(Difference::None, Difference::Lines)
}
