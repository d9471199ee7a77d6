//! Findings that somebody opens by hand because of a document: a recall, a rule line that changed; and the list of all that
//! are open.

use askama::Template;
use axum::extract::State;

use crate::db;
use crate::model::part::PartCategory;
use crate::model::recall::NewRecall;
use crate::shop::doubts::ChangedLine;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::findings::FindingLine;
use crate::web::form::{Form, Typed};
use crate::web::instruments;
use crate::web::kit::{self, Choice};
use crate::web::page::{Frame, page, retry, see_other};
use crate::web::routes::MANAGER;
use crate::web::visitor::Visitor;
use crate::web::{Answer, path};

#[derive(Template)]
#[template(path = "findings/open.html")]
struct OpenPage {
    frame: Frame,
    findings: Vec<FindingLine>,
    may_recall: bool,
    may_change_lines: bool,
}

/// `GET /findings`: everything that waits for a decision.
pub async fn list(State(app): State<App>, who: Visitor) -> Answer {
    let open = db::findings::list_open(&mut *app.read().await?, who.branch.id).await?;
    let frame = who.frame();
    let w = frame.w;
    page(OpenPage {
        findings: open.iter().map(|one| FindingLine::new(&w, &who.zone, one, String::new())).collect(),
        may_recall: instruments::may_change(&who.actor),
        may_change_lines: MANAGER.lets(&who.actor),
        frame,
    })
}

#[derive(Template)]
#[template(path = "findings/recall.html")]
struct RecallPage {
    frame: Frame,
    form: Form,
    categories: Vec<Choice>,
}

fn recall_page(who: &Visitor, form: Form) -> RecallPage {
    let frame = who.frame();
    RecallPage { categories: kit::coded::<PartCategory>(&frame.w), form: form.scoped("recall"), frame }
}

/// `GET /findings/recalls/new`.
pub async fn new_recall(who: Visitor) -> Answer {
    page(recall_page(&who, Form::blank()))
}

/// `POST /findings/recalls`.
pub async fn create_recall(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("recall");
    if let Some(new) = read_recall(&mut form, &app, &who) {
        match app.shop.enter_recall(&who.actor, form.key(), new).await {
            Ok(id) => return see_other(path::finding(id)),
            Err(refusal) => beside(&mut form, refusal)?,
        }
    }
    retry(recall_page(&who, form))
}

fn read_recall(form: &mut Form, app: &App, who: &Visitor) -> Option<NewRecall> {
    let recalled_by = form.text("recalled_by", 120);
    let document = form.text("document", 120);
    let dated_on = form.past_date("dated_on", app.shop.clock.today(&who.zone));
    let category = form.choice("category");
    let [maker, type_name, batch, serial_from, serial_to] = ["maker", "type_name", "batch", "serial_from", "serial_to"]
        .map(|name| form.opt_text(name, 60).unwrap_or_default());
    let remedy = form.long_text("remedy", 1_000);
    form.sound()?;
    Some(NewRecall {
        recalled_by: recalled_by?,
        document: document?,
        dated_on: dated_on?,
        category: category?,
        maker,
        type_name,
        batch,
        serial_from,
        serial_to,
        remedy: remedy?,
    })
}

#[derive(Template)]
#[template(path = "findings/rule_line.html")]
struct LinePage {
    frame: Frame,
    form: Form,
    lines: Vec<Choice>,
}

async fn line_page(app: &App, who: &Visitor, form: Form) -> Result<LinePage, crate::web::Error> {
    let today = app.shop.clock.today(&who.zone);
    let book = db::rule_books::book_on(&mut *app.read().await?, who.branch.id, today).await?;
    let frame = who.frame();
    let lines = book.sets.iter().flat_map(|set| {
        set.limit.iter().map(move |line| Choice::new(line.id.clone(), format!("{}, {}", line.id, set.title)))
    });
    Ok(LinePage { lines: lines.collect(), form: form.scoped("finding"), frame })
}

/// `GET /findings/rule-lines/new`.
pub async fn new_line(State(app): State<App>, who: Visitor) -> Answer {
    page(line_page(&app, &who, Form::blank()).await?)
}

/// `POST /findings/rule-lines`.
pub async fn create_line(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("finding");
    let line = form.choice::<String>("rule_line");
    let from_on = form.past_date("rule_from_on", app.shop.clock.today(&who.zone));
    let text = form.long_text("text", 1_000);
    if let (Some(()), Some(line), Some(from_on), Some(text)) = (form.sound(), line, from_on, text) {
        match app.shop.doubt_rule_line(&who.actor, form.key(), ChangedLine { line, from_on, text }).await {
            Ok(id) => return see_other(path::finding(id)),
            Err(refusal) => beside(&mut form, refusal)?,
        }
    }
    retry(line_page(&app, &who, form).await?)
}
