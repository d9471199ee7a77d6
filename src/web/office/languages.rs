//! Languages of customer papers: whether somebody of the trade has read each.
//!
//! A translation counts as reviewed for the version of the program whose words were read; the papers themselves say
//! nothing of it.

use askama::Template;
use axum::extract::{Path, State};
use time::Date;
use time::format_description::well_known::Iso8601;

use crate::db;
use crate::model::ids::BranchId;
use crate::web::app::App;
use crate::web::form::{Form, Typed};
use crate::web::kit::{self, Mark};
use crate::web::language::own_name;
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::routes::MANAGER;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};
use crate::words::Language;

/// The version whose words a review is of.
const VERSION: &str = env!("CARGO_PKG_VERSION");

/// The setting that holds a language's review.
fn setting(language: Language) -> String {
    format!("language-reviewed-{}", language.tag())
}

/// Who read a translation, when, and in which version of the program.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Review {
    on: Date,
    version: String,
    by: String,
}

impl Review {
    /// Reads "2026-11-25 0.1.0 Name"; an empty setting is a review taken back.
    fn read(text: &str) -> Option<Self> {
        let mut parts = text.splitn(3, ' ');
        let on = Date::parse(parts.next()?, &Iso8601::DATE).ok()?;
        Some(Self { on, version: parts.next()?.to_owned(), by: parts.next()?.to_owned() })
    }

    fn write(&self) -> String {
        format!("{} {} {}", self.on, self.version, self.by)
    }
}

struct Line {
    tag: &'static str,
    name: String,
    mark: Mark,
    says: String,
    is_reviewed: bool,
    is_open: bool,
    form: Form,
}

#[derive(Template)]
#[template(path = "office/languages.html")]
struct LanguagesPage {
    frame: Frame,
    lines: Vec<Line>,
    may_change: bool,
    /// The form that was sent, for its faults.
    form: Form,
}

/// Whether somebody of the trade has read a language's words, in this version of the program or an earlier one.
pub async fn is_reviewed(con: &mut db::Con, branch: BranchId, language: Language) -> db::Result<bool> {
    let set = db::settings::find(con, branch, &setting(language)).await?;
    Ok(set.is_some_and(|set| Review::read(&set.value).is_some()))
}

/// The languages that need a reader: all but the one the program was written in.
fn translated() -> impl Iterator<Item = Language> {
    Language::PAPERS.into_iter().filter(|one| *one != Language::English)
}

impl LanguagesPage {
    async fn of(app: &App, who: &Visitor, form: Form, sent: Option<Language>) -> Result<Self, Error> {
        let frame = who.frame().at(Place::Office);
        let w = frame.w;
        let mut con = app.read().await?;
        let mut lines = Vec::new();
        for language in translated() {
            let set = db::settings::find(&mut con, who.branch.id, &setting(language)).await?;
            let review = set.and_then(|set| Review::read(&set.value));
            let values = |one: &Review| {
                [
                    ("name", one.by.clone().into()),
                    ("day", w.date(one.on).into()),
                    ("version", one.version.clone().into()),
                ]
            };
            let (mark, says) = match &review {
                None => (Mark::Missing, w.t("languages-not-reviewed")),
                Some(one) if one.version == VERSION => (Mark::Met, w.tv("languages-reviewed", &values(one))),
                Some(one) => (Mark::Undecided, w.tv("languages-reviewed-before", &values(one))),
            };
            let is_open = sent == Some(language);
            let form = if is_open { form.clone() } else { Form::blank().scoped("review") };
            let name = own_name(language);
            lines.push(Line { tag: language.tag(), name, mark, says, is_reviewed: review.is_some(), is_open, form });
        }
        Ok(Self { frame, lines, may_change: MANAGER.lets(&who.actor), form })
    }
}

/// `GET /office/languages`.
pub async fn list(State(app): State<App>, who: Visitor) -> Answer {
    page(LanguagesPage::of(&app, &who, Form::blank().scoped("review"), None).await?)
}

/// `POST /office/languages/{tag}`: somebody of the trade has read it; with `act=withdraw` it counts as unread again.
pub async fn update(State(app): State<App>, who: Visitor, Path(tag): Path<String>, typed: Typed) -> Answer {
    let language = translated().find(|one| one.tag() == tag).ok_or(Error::NotFound)?;
    let mut form = Form::from(typed).scoped("review");
    let value = if form.value("act") == "withdraw" {
        String::new()
    } else {
        let (by, on) = (form.text("reviewed_by", 100), form.past_date("reviewed_on", app.shop.clock.today(&who.zone)));
        let (Some(by), Some(on), Some(())) = (by, on, form.sound()) else {
            return retry(LanguagesPage::of(&app, &who, form, Some(language)).await?);
        };
        Review { on, version: VERSION.to_owned(), by }.write()
    };
    app.shop.change_setting(&who.actor, form.key(), &setting(language), &value).await?;
    see_other(path::LANGUAGES)
}

#[cfg(test)]
mod tests {
    use time::macros::date;

    use super::*;

    #[test]
    fn a_review_reads_back_as_it_was_written() {
        let one = Review { on: date!(2026 - 11 - 25), version: "0.1.0".to_owned(), by: "R. van Tolland".to_owned() };
        assert_eq!(Review::read(&one.write()), Some(one));
        assert_eq!(Review::read(""), None);
    }
}
