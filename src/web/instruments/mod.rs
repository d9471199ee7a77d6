//! Instruments: the list with the state of each in words, and the page of one.

use askama::Template;
use axum::extract::{Path, State};
use time::{Date, Duration, OffsetDateTime};

use super::app::App;
use super::findings::FindingLine;
use super::kit::{self, Cell, Column, Empty, Mark, Row, Table};
use super::page::{Frame, Place, page};
use super::visitor::Visitor;
use super::{Answer, Error, path};
use crate::clock::Zone;
use crate::db;
use crate::model::Coded;
use crate::model::finding::Finding;
use crate::model::ids::InstrumentId;
use crate::model::instrument::{InstrumentCertificate, InstrumentCheck, InstrumentRecord, NotTrusted};
use crate::model::person::{Actor, Role};
use crate::shop::doubts;
use crate::shop::instruments::FOUND_OUT_OF_DATE;
use crate::words::Words;

pub mod form;
pub mod upkeep;

/// From this many days before its end a certificate is counted down.
const SOON_DAYS: i64 = 60;
/// Checks shown on the page of an instrument.
const MOST_CHECKS: usize = 40;

/// How an instrument stands now: a mark, and in words what and since when.
pub fn standing(w: &Words, zone: &Zone, record: &InstrumentRecord, now: OffsetDateTime) -> (Mark, String) {
    let today = zone.day_of(now);
    let due = |key: &str, on: Date| w.tv(key, &[("on", w.date(on).into())]);
    match record.trusted(now, |at| zone.day_of(at)) {
        Err(NotTrusted::Retired(on)) => (Mark::NotApplicable, due("instrument-is-retired", on)),
        Err(NotTrusted::OutOfCalibration(Some(on))) => (Mark::Stops, due("instrument-is-out", on)),
        Err(NotTrusted::OutOfCalibration(None)) => (Mark::Stops, w.t("instrument-is-never-calibrated")),
        Err(NotTrusted::FailedCheck) => (Mark::Stops, w.t("instrument-is-failed")),
        Err(NotTrusted::NotChecked) => (Mark::Missing, w.t("instrument-is-not-checked")),
        Ok(()) => match record.certificate_on(today).map(|one| one.due_on) {
            Some(on) if (on - today).whole_days() <= SOON_DAYS => {
                let days = (on - today).whole_days();
                (Mark::Met, w.tv("instrument-is-due", &[("n", days.into()), ("on", w.date(on).into())]))
            }
            Some(on) => (Mark::Met, due("instrument-is-in-date", on)),
            None => (Mark::Met, w.t("instrument-is-usable")),
        },
    }
}

#[derive(Template)]
#[template(path = "instruments/list.html")]
struct ListPage {
    frame: Frame,
    table: Option<Table>,
    empty: Empty,
    may_change: bool,
}

/// `GET /instruments`.
pub async fn list(State(app): State<App>, who: Visitor) -> Answer {
    let now = app.shop.clock.now();
    let records = db::instruments::list(&mut *app.read().await?, who.branch.id, now - Duration::days(2)).await?;
    let frame = who.frame().at(Place::Instruments);
    let w = frame.w;
    let mut rows: Vec<(bool, Row)> = records
        .iter()
        .map(|record| (record.instrument.retired_on.is_some(), row(&w, &who.zone, record, now)))
        .collect();
    // What is out of use is kept for old papers and stands last.
    rows.sort_by_key(|(is_retired, _)| *is_retired);
    let columns = ["instrument-code", "instrument-kind", "instrument-state", "instrument-last-check"];
    let table = Table {
        w,
        caption: w.t("instruments-title"),
        columns: columns.map(|key| Column::text(w.t(key))).to_vec(),
        rows: rows.into_iter().map(|(_, row)| row).collect(),
    };
    let empty = Empty { sentence: w.t("instruments-none"), act: None };
    let table = (!table.rows.is_empty()).then_some(table);
    page(ListPage { table, empty, may_change: may_change(&who.actor), frame })
}

fn row(w: &Words, zone: &Zone, record: &InstrumentRecord, now: OffsetDateTime) -> Row {
    let one = &record.instrument;
    let (mark, state) = standing(w, zone, record, now);
    let last = record.checks.last().map(|check| said_check(w, zone, check));
    vec![
        Cell::link(&one.code, path::instrument(one.id)).with_second(&one.serial),
        Cell::new(w.t(format!("instrument-kind-{}", one.kind.code()))).with_second(maker_and_type(record)),
        Cell::new(state).marked(mark),
        last.unwrap_or_else(|| Cell::new("–")),
    ]
}

fn said_check(w: &Words, zone: &Zone, check: &InstrumentCheck) -> Cell {
    let (mark, key) = if check.has_passed {
        (Mark::Met, "instrument-check-passed")
    } else {
        (Mark::Stops, "instrument-check-failed")
    };
    Cell::new(w.t(key)).marked(mark).with_second(w.date_time(zone.local(check.checked_at)))
}

fn maker_and_type(record: &InstrumentRecord) -> String {
    let parts = [record.instrument.maker.as_str(), record.instrument.type_name.as_str()];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ")
}

/// Whoever works at the bench may change instruments; the rest reads.
pub(super) fn may_change(actor: &Actor) -> bool {
    actor.is_one_of(&[Role::Manager, Role::Technician])
}

#[derive(Template)]
#[template(path = "instruments/show.html")]
struct ShowPage {
    frame: Frame,
    code: String,
    kind: String,
    href: String,
    mark: Mark,
    state: String,
    facts: Vec<(String, String)>,
    certificates: Option<Table>,
    checks: Option<Table>,
    findings: Vec<FindingLine>,
    /// Results measured while the instrument was in doubt: job, what, when.
    in_doubt: Option<Table>,
    may_change: bool,
    is_retired: bool,
}

/// `GET /instruments/{id}`.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<InstrumentId>) -> Answer {
    let mut con = app.read().await?;
    let record = db::instruments::record(&mut con, who.branch.id, id).await?.ok_or(Error::NotFound)?;
    let findings = db::findings::list_of_instrument(&mut con, id).await?;
    let frame = who.frame().at(Place::Instruments);
    let w = frame.w;
    let mut resting = Vec::new();
    let mut lines = Vec::with_capacity(findings.len());
    for finding in &findings {
        let mut suspect = String::new();
        if finding.is_open() {
            let traced = doubts::trace(&mut con, who.branch.id, finding, app.shop.clock.now()).await?;
            let from = traced.span.and_then(|span| span.from);
            suspect = suspect_since(&w, &who.zone, finding, from);
            let to = traced.span.map_or_else(|| app.shop.clock.now(), |span| span.to);
            resting =
                db::instruments::list_resting(&mut con, id, from.unwrap_or(OffsetDateTime::UNIX_EPOCH), to).await?;
        }
        lines.push(FindingLine::new(&w, &who.zone, finding, suspect));
    }
    let (mark, state) = standing(&w, &who.zone, &record, app.shop.clock.now());
    page(ShowPage {
        code: record.instrument.code.clone(),
        kind: w.t(format!("instrument-kind-{}", record.instrument.kind.code())),
        href: path::instrument(id),
        mark,
        state,
        facts: facts(&w, &record),
        certificates: certificates(&w, &record),
        checks: checks(&w, &who.zone, &record),
        findings: lines,
        in_doubt: in_doubt(&w, &who.zone, &resting),
        may_change: may_change(&who.actor),
        is_retired: record.instrument.retired_on.is_some(),
        frame,
    })
}

/// From when on the instrument's word is in doubt because of a finding, in words.
fn suspect_since(w: &Words, zone: &Zone, finding: &Finding, from: Option<OffsetDateTime>) -> String {
    let is_ended = finding.source == FOUND_OUT_OF_DATE;
    match from {
        Some(ended) if is_ended => w.tv("finding-suspect-ended", &[("since", w.date_time(zone.local(ended)).into())]),
        Some(good) => w.tv("finding-suspect-since", &[("since", w.date_time(zone.local(good)).into())]),
        None => w.t("finding-suspect-always"),
    }
}

fn facts(w: &Words, record: &InstrumentRecord) -> Vec<(String, String)> {
    let one = &record.instrument;
    let number = |value: Option<f64>| value.map(|value| measured(w, value, &one.unit)).unwrap_or_default();
    let daily = if one.needs_daily_check { "kit-yes" } else { "kit-no" };
    let all = [
        ("instrument-maker", one.maker.clone()),
        ("instrument-type_name", one.type_name.clone()),
        ("instrument-serial", one.serial.clone()),
        ("instrument-resolution", number(one.resolution)),
        ("instrument-standard_uncertainty", number(one.standard_uncertainty)),
        ("instrument-needs_daily_check", w.t(daily)),
    ];
    all.into_iter().filter(|(_, text)| !text.is_empty()).map(|(key, text)| (w.t(key), text)).collect()
}

/// A number as it was entered, with its unit where there is one.
fn measured(w: &Words, value: f64, unit: &str) -> String {
    let decimals = (0..6).find(|n| (value * 10_f64.powi(i32::from(*n))).fract().abs() < 1e-9).unwrap_or(6);
    if unit.is_empty() { w.number(value, decimals) } else { w.quantity(value, decimals, unit) }
}

fn certificates(w: &Words, record: &InstrumentRecord) -> Option<Table> {
    let row = |one: &InstrumentCertificate| {
        let paper = one.attachment_id.map(|id| Cell::link(w.t("instrument-paper-open"), path::attachment(id)));
        let uncertainty = one.expanded_uncertainty.map(|value| {
            let value = measured(w, value, &record.instrument.unit);
            let factor = measured(w, one.coverage_factor.unwrap_or(2.0), "");
            w.tv("instrument-uncertainty-said", &[("value", value.into()), ("factor", factor.into())])
        });
        vec![
            Cell::new(&one.number).with_second(&one.laboratory),
            Cell::new(w.medium_date(one.calibrated_on)),
            Cell::new(w.medium_date(one.due_on)),
            Cell::new(uncertainty.unwrap_or_else(|| "–".to_owned())),
            paper.unwrap_or_else(|| Cell::new("–")),
        ]
    };
    let columns = [
        "instrument-certificate-number",
        "instrument-calibrated_on",
        "instrument-due_on",
        "instrument-expanded_uncertainty",
        "instrument-paper",
    ];
    table(w, "instrument-certificates", &columns, record.certificates.iter().rev().map(row).collect())
}

fn checks(w: &Words, zone: &Zone, record: &InstrumentRecord) -> Option<Table> {
    let row = |one: &InstrumentCheck| {
        let error = one.as_found_error.map_or("–".to_owned(), |error| measured(w, error, &record.instrument.unit));
        let said = said_check(w, zone, one);
        let (mark, word) = (said.mark.unwrap_or(Mark::Met), said.text);
        vec![Cell::new(said.second), Cell::new(word).marked(mark), Cell::new(error), Cell::new(&one.note)]
    };
    let columns =
        ["instrument-checked_at", "instrument-has_passed", "instrument-as_found_error", "instrument-check-note"];
    let rows = record.checks.iter().rev().take(MOST_CHECKS).map(row).collect();
    table(w, "instrument-checks", &columns, rows)
}

fn in_doubt(w: &Words, zone: &Zone, resting: &[db::instruments::Resting]) -> Option<Table> {
    let row = |one: &db::instruments::Resting| {
        let key = if one.subject.is_empty() { one.kind.clone() } else { format!("{}-{}", one.kind, one.subject) };
        let what = w.find(&format!("slot-{key}")).unwrap_or(key);
        let when = w.date_time(zone.local(one.measured_at));
        let href = path::job_slot(one.job_id, &one.kind, &one.subject);
        vec![Cell::link(&one.number, href), Cell::new(what), Cell::new(when)]
    };
    let columns = ["instrument-resting-job", "instrument-resting-what", "instrument-resting-when"];
    table(w, "instrument-in-doubt", &columns, resting.iter().map(row).collect())
}

fn table(w: &Words, caption: &str, columns: &[&str], rows: Vec<Row>) -> Option<Table> {
    let columns = columns.iter().map(|key| Column::text(w.t(key))).collect();
    (!rows.is_empty()).then(|| Table { w: *w, caption: w.t(caption), columns, rows })
}
