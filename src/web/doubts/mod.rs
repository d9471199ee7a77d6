//! A finding worked to its end: what was found, how wrong it was, what rests on it, what becomes of each paper, and the close.

use askama::Template;
use axum::extract::{Path, State};

use super::app::App;
use super::error::beside;
use super::findings::FindingLine;
use super::form::{Form, Typed};
use super::kit::{self, Cell, Column, Mark, Row, Table, Tone, Verdict};
use super::page::{Frame, page, retry, see_other};
use super::routes::DESK;
use super::visitor::Visitor;
use super::{Answer, Error, instruments, path};
use crate::db;
use crate::model::Coded;
use crate::model::doubt::{CauseKind, ErrorIn, Sort};
use crate::model::ids::FindingId;
use crate::model::message::MessageState;
use crate::shop::Refusal;
use crate::shop::doubts::{PaperLine, ResultLine, Weighed, What, said, weigh};
use crate::unit::Unit;
use crate::web::job::papers::mark;
use crate::words::Words;

pub mod opening;
pub mod paper;

/// The mark of a sort.
pub fn sort_mark(sort: Sort) -> Mark {
    match sort {
        Sort::Holds => Mark::Met,
        Sort::InDoubt => Mark::Undecided,
        Sort::Fails => Mark::Stops,
    }
}

#[derive(Template)]
#[template(path = "findings/work.html")]
struct WorkPage {
    frame: Frame,
    /// The form that was sent, or a blank one.
    form: Form,
    line: FindingLine,
    about: String,
    about_href: String,
    next: Verdict,
    facts: Vec<(String, String)>,
    /// Names of the fields for an error; empty where no sum can take one out.
    error_fields: Vec<(&'static str, String)>,
    errors: Vec<String>,
    tally: String,
    results: Option<Table>,
    papers: Option<Table>,
    /// Papers that wait for a signatory.
    open: Vec<(String, String)>,
    /// How many keepers are still to be written to, in words, and whether there are any; `None` where nothing is recalled.
    letters: Option<(String, bool)>,
    may_state: bool,
    may_enter: bool,
    may_write: bool,
    may_close: bool,
    takes_span: bool,
}

/// The page of a finding with a cause; the form is shown where its scope says.
pub(super) async fn work_page(
    app: &App,
    who: &Visitor,
    id: FindingId,
    form: Form,
) -> Result<impl Template + use<>, Error> {
    let now = app.shop.clock.now();
    let mut con = app.read().await?;
    let weighed = weigh(&mut con, who.branch.id, id, now).await?;
    let frame = who.frame();
    let w = frame.w;
    let is_open = weighed.finding.is_open();
    let (about, about_href) = match &weighed.instrument {
        Some(record) => (record.instrument.code.clone(), path::instrument(record.instrument.id)),
        None => (w.t("findings-title"), path::FINDINGS.to_owned()),
    };
    let papers = paper_table(&mut con, who, &w, &weighed).await?;
    let letters = match &weighed.recall {
        Some(recall) => {
            let told = db::recalls::list_letters(&mut con, recall.id).await?;
            let mut due: Vec<_> =
                weighed.results.iter().filter(|line| carries(line)).map(|line| line.vehicle_id).collect();
            due.sort_unstable();
            due.dedup();
            due.retain(|vehicle| !told.iter().any(|(one, _)| one == vehicle));
            let due = i64::try_from(due.len()).unwrap_or(i64::MAX);
            Some((w.tn("recall-letters-due", due), due > 0))
        }
        None => None,
    };
    let kind = weighed.instrument.as_ref().map(|record| record.instrument.kind);
    let is_signatory = who.actor.may_sign_on(weighed.zone.day_of(now)).is_some();
    let bench = instruments::may_change(&who.actor);
    Ok(WorkPage {
        next: next(&w, &weighed),
        facts: said::facts(&w, &weighed),
        error_fields: kind
            .map_or(&[][..], ErrorIn::of)
            .iter()
            .map(|one| (field(*one), one.unit().to_owned()))
            .collect(),
        errors: weighed.errors.iter().map(|one| said::error_told(&w, &weighed, one)).collect(),
        tally: said::tally(&w, &weighed),
        results: result_table(&w, &weighed),
        papers,
        open: weighed.papers.iter().filter(|line| line.waits()).map(|line| link(id, line)).collect(),
        letters,
        may_state: is_open && is_signatory,
        may_enter: is_open && bench,
        may_write: is_open && DESK.lets(&who.actor),
        may_close: is_open && bench,
        takes_span: weighed.doubt.cause == CauseKind::Instrument,
        line: FindingLine::new(&w, &who.zone, &weighed.finding, String::new()),
        about,
        about_href,
        form: form.scoped("finding"),
        frame,
    })
}

fn carries(line: &ResultLine) -> bool {
    matches!(&line.what, What::Part(part, _) if part.is_fitted())
}

fn link(id: FindingId, line: &PaperLine) -> (String, String) {
    (line.number.clone(), path::finding_paper(id, line.id))
}

fn next(w: &Words, weighed: &Weighed) -> Verdict {
    let next = said::next(weighed);
    let (tone, mark) = match next {
        "closed" => (Tone::Met, Mark::Met),
        "error" | "papers" => (Tone::Copper, Mark::Missing),
        _ => (Tone::Copper, Mark::Undecided),
    };
    let waiting = weighed.papers.iter().filter(|line| line.waits()).count();
    Verdict {
        tone,
        mark,
        title: w.t(format!("doubt-next-{next}")),
        sentences: vec![w.tv(&format!("doubt-next-{next}-says"), &[("n", waiting.into())])],
    }
}

fn table(w: &Words, caption: &str, columns: &[&str], rows: Vec<Row>) -> Option<Table> {
    let columns = columns.iter().map(|key| Column::text(w.t(key))).collect();
    (!rows.is_empty()).then(|| Table { w: *w, caption: w.t(caption), columns, rows })
}

/// One row a number; a result without numbers has one row of its own.
fn result_table(w: &Words, weighed: &Weighed) -> Option<Table> {
    let mut rows = Vec::new();
    for line in &weighed.results {
        let href = match &line.what {
            What::Entry(kind, subject) => path::job_slot(line.job_id, kind, subject),
            What::Part(..) => path::vehicle(line.vehicle_id),
        };
        let when = w.short_date_time(weighed.zone.local(line.at));
        let job = || Cell::link(&line.job_number, href.clone()).with_second(&line.plate);
        let stands =
            || Cell::new(said::sort(w, line)).marked(sort_mark(line.again.sort)).with_second(said::why(w, line));
        let what = said::what(w, &line.what);
        if line.again.beside.is_empty() {
            let dash = || Cell::new("–");
            rows.push(vec![job(), Cell::new(&what).with_second(&when), dash(), dash(), stands()]);
        }
        for beside in &line.again.beside {
            let cell = |figure| {
                let (value, under) = said::figure(w, beside, figure);
                Cell::new(value).with_second(under)
            };
            let name = format!("{}, {when}", said::name(w, beside));
            let (old, new) = (cell(beside.old.as_ref()), cell(beside.new.as_ref()));
            rows.push(vec![job(), Cell::new(&what).with_second(name), old, new, stands()]);
        }
    }
    let columns = ["doubt-job", "doubt-what", "doubt-as-written", "doubt-again", "doubt-stands"];
    table(w, "doubt-results", &columns, rows)
}

async fn paper_table(con: &mut db::Con, who: &Visitor, w: &Words, weighed: &Weighed) -> Result<Option<Table>, Error> {
    let mut rows: Vec<Row> = Vec::new();
    for line in &weighed.papers {
        let standing = Cell::new(w.t(format!("standing-{}", line.standing.as_str()))).marked(mark(line.standing));
        let worst = Cell::new(w.t(format!("doubt-sort-{}", line.worst.code()))).marked(sort_mark(line.worst));
        let decision = match line.decisions.last() {
            Some(last) => {
                let at = w.short_date_time(who.zone.local(last.at));
                let values = [("name", last.person_name.as_str().into()), ("at", at.into())];
                let by = format!("{} {}", last.reason, w.tv("doubt-decided-by", &values));
                Cell::link(w.t(format!("paper-decision-{}", last.decision)), link(weighed.finding.id, line).1)
                    .with_second(by)
            }
            None if line.waits() => Cell::link(w.t("doubt-decide"), link(weighed.finding.id, line).1),
            None => Cell::new(w.t("doubt-needs-none")),
        };
        let letter = match line.decisions.iter().rev().find_map(|one| one.message_id) {
            Some(id) => {
                let message = db::outbox::find(con, who.branch.id, id).await?;
                let state = message.map_or(MessageState::Dropped, |message| message.state);
                Cell::link(w.t(format!("message-state-{state}")), path::message(id))
            }
            None => Cell::new("–"),
        };
        let letter = match line.decisions.iter().rev().find_map(|one| one.booking_id) {
            Some(id) => match db::bookings::find(con, who.branch.id, id).await? {
                Some(one) => letter.with_second(
                    w.tv("doubt-booked", &[("at", w.short_date_time(who.zone.local(one.starts_at)).into())]),
                ),
                None => letter,
            },
            None => letter,
        };
        let number = Cell::link(&line.number, path::paper(line.id));
        let vehicle = [line.plate.as_str(), line.vehicle.as_str()].join(" ");
        rows.push(vec![number.with_second(vehicle.trim()), standing, worst, decision, letter]);
    }
    let columns = ["doubt-paper", "doubt-standing", "doubt-worst", "doubt-decision", "doubt-letter"];
    Ok(table(w, "doubt-papers", &columns, rows))
}

fn field(quantity: ErrorIn) -> &'static str {
    match quantity {
        ErrorIn::PressureKpa => "pressure_kpa",
        ErrorIn::PressurePercent => "pressure_percent",
        ErrorIn::TemperatureK => "temperature_error",
        ErrorIn::CoPercent => "co_percent",
        ErrorIn::Co2Percent => "co2_percent",
        ErrorIn::O2Percent => "o2_percent",
        ErrorIn::HcPpm => "hc_ppm",
    }
}

/// `POST /findings/{id}/error`: the error as it was found.
pub async fn enter_error(State(app): State<App>, who: Visitor, Path(id): Path<FindingId>, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("finding");
    let kind = {
        let mut con = app.read().await?;
        let found = db::findings::find(&mut con, who.branch.id, id).await?.ok_or(Error::NotFound)?;
        let instrument = found.instrument_id.ok_or(Error::NotFound)?;
        db::instruments::find(&mut con, who.branch.id, instrument).await?.ok_or(Error::NotFound)?.kind
    };
    let mut errors = Vec::new();
    for quantity in ErrorIn::of(kind) {
        let (unit, most) = match quantity {
            ErrorIn::PressureKpa => (Unit::Kilopascal, 5_000.0),
            // A difference of temperatures: a typed unit with a zero of its own would be turned into another number.
            ErrorIn::TemperatureK => (Unit::One, 100.0),
            ErrorIn::HcPpm => (Unit::PartsPerMillion, 10_000.0),
            _ => (Unit::Percent, 50.0),
        };
        if let Some(value) = form.opt_number(field(*quantity), unit, -most..=most) {
            errors.push((*quantity, value));
        }
    }
    let how_known = form.text("how_known", 200);
    if let (Some(first), true) = (ErrorIn::of(kind).first(), errors.is_empty() && form.sound().is_some()) {
        form.fail(field(*first), super::form::Wrong::Empty);
    }
    if let (Some(()), Some(how_known)) = (form.sound(), how_known) {
        match app.shop.enter_error(&who.actor, form.key(), id, errors, how_known).await {
            Ok(()) => return see_other(path::finding(id)),
            Err(refusal) => beside(&mut form, refusal)?,
        }
    }
    retry(work_page(&app, &who, id, form).await?)
}

/// `POST /findings/{id}/span`: from when on it is suspect, with the reason; an empty beginning takes that back.
pub async fn state_span(State(app): State<App>, who: Visitor, Path(id): Path<FindingId>, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("finding");
    let from = form.opt_moment("stated_from", &who.zone);
    let reason = if from.is_some() { form.text("stated_reason", 400) } else { None };
    if form.sound().is_some() {
        match app.shop.state_doubt(&who.actor, form.key(), id, from.zip(reason)).await {
            Ok(()) => return see_other(path::finding(id)),
            Err(refusal) => beside(&mut form, refusal)?,
        }
    }
    retry(work_page(&app, &who, id, form).await?)
}

/// `POST /findings/{id}/letters`: the keepers of what is recalled are written to.
pub async fn write_letters(State(app): State<App>, who: Visitor, Path(id): Path<FindingId>, typed: Typed) -> Answer {
    app.shop.write_recall_letters(&who.actor, Form::from(typed).key(), id).await?;
    see_other(path::finding(id))
}

/// Whether a finding has a cause, and so a page of its work.
pub(super) async fn has_cause(app: &App, who: &Visitor, id: FindingId) -> Result<bool, Error> {
    let mut con = app.read().await?;
    let found = db::findings::find(&mut con, who.branch.id, id).await?.ok_or(Error::NotFound)?;
    Ok(db::doubts::of_finding(&mut con, &found).await?.is_some())
}

/// `GET /findings/{id}/report`: the whole of it on paper.
pub async fn report(State(app): State<App>, who: Visitor, Path(id): Path<FindingId>) -> Answer {
    let (number, bytes) = match app.shop.finding_report_pdf(&who.actor, id).await {
        Err(Refusal::Gone) => return Err(Error::NotFound),
        other => other?,
    };
    Ok(super::job::papers::pdf(&number, bytes))
}

/// The page itself, for `GET /findings/{id}`.
pub(super) async fn show(app: &App, who: &Visitor, id: FindingId) -> Answer {
    page(work_page(app, who, id, Form::blank()).await?)
}
