//! Which columns of a log are what: said once for a source, with its first rows beside, and remembered.

use askama::Template;
use axum::extract::{Path, State};
use serde::Deserialize;

use super::super::JobPage;
use super::super::record::Group;
use super::{SCOPE, wrong_log};
use crate::calc::road::{Quantity, Refused};
use crate::db;
use crate::logs::{self, CompareError, Layout, Log, Match, Matched};
use crate::model::ids::{JobId, RoadSessionId};
use crate::model::road::{RoadLog, RoadSession, RoadState, Stated};
use crate::model::stage::Stage;
use crate::rules::road::plan;
use crate::shop::Refusal;
use crate::shop::road::{RoadMatched, RoadOpened};
use crate::web::app::App;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Cell, Choice, Column, Field, JobSheet, Mark, Table};
use crate::web::page::{Frame, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};
use crate::words::Words;

/// Rows shown of a log.
const SHOWN_ROWS: usize = 5;
/// Longest list of words, in characters.
const MOST_WORDS: usize = 200;

/// Job and drive of an address.
#[derive(Debug, Clone, Copy, Deserialize)]
pub struct At {
    pub id: JobId,
    pub session: RoadSessionId,
}

/// Logs of one source: laid out alike, so that their columns are matched together.
struct Source {
    key: String,
    layout: Layout,
    /// Which logs of the drive.
    logs: Vec<usize>,
}

/// A drive with its logs looked at.
pub(super) struct Opened {
    pub session: RoadSession,
    sources: Vec<Source>,
}

/// A source as the page shows it.
struct Shown {
    heading: String,
    note: String,
    groups: Vec<Group>,
    preview: Table,
}

#[derive(Template)]
#[template(path = "job/road_columns.html")]
struct ColumnsPage {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    lead: String,
    sources: Vec<Shown>,
    /// Somebody matched it meanwhile: who, when.
    meanwhile: String,
    doubt: Mark,
    action: String,
    cancel: String,
    may_record: bool,
}

pub(super) async fn find(app: &App, job: &JobPage, at: At) -> Result<RoadSession, Error> {
    let mut con = app.read().await?;
    db::road_sessions::find(&mut con, job.who.branch.id, at.id, at.session).await?.ok_or(Error::NotFound)
}

async fn open(app: &App, job: &JobPage, at: At) -> Result<Opened, Error> {
    let session = find(app, job, at).await?;
    let mut sources: Vec<Source> = Vec::new();
    for (position, log) in session.logs.iter().enumerate() {
        let path = kept_at(app, log)?;
        let looked = app.shop.look_at_log(path).await?;
        let layout = looked.map_err(|error| Error::Broken(format!("a kept log cannot be read: {error}")))?;
        let key = logs::source_key(&layout);
        match sources.iter_mut().find(|source| source.key == key) {
            Some(source) => source.logs.push(position),
            None => sources.push(Source { key, layout, logs: vec![position] }),
        }
    }
    Ok(Opened { session, sources })
}

fn kept_at(app: &App, log: &RoadLog) -> Result<std::path::PathBuf, Error> {
    app.shop.files().path(&log.file.sha256).ok_or_else(|| Error::Broken("a log without a checksum".to_owned()))
}

/// `GET /jobs/{id}/road/{session}/columns`: the form, filled from what was said, is remembered, or looks likely.
pub async fn show(State(app): State<App>, who: Visitor, Path(at): Path<At>) -> Answer {
    let job = JobPage::open(&app, who, at.id).await?;
    let opened = open(&app, &job, at).await?;
    let mut form = Form::blank().with("opened_version", opened.session.version.to_string());
    for (i, source) in opened.sources.iter().enumerate() {
        let said = source.logs.iter().find_map(|at| opened.session.logs[*at].matched.clone());
        let known = match said {
            Some(said) => Some(said),
            None => db::road_matches::find(&mut *app.read().await?, job.who.branch.id, &source.key).await?,
        };
        let known = known.and_then(|text| serde_json::from_str::<Match>(&text).ok());
        fill(&mut form, i, &known.unwrap_or_else(|| logs::suggest(&source.layout)));
    }
    page(columns_page(job, &opened, form, String::new()))
}

/// `POST /jobs/{id}/road/{session}/columns`: reads the logs to their end, compares, keeps and remembers; or says what is
/// wrong and keeps nothing.
pub async fn update(State(app): State<App>, who: Visitor, Path(at): Path<At>, typed: Typed) -> Answer {
    let job = JobPage::open(&app, who, at.id).await?;
    let opened = open(&app, &job, at).await?;
    if opened.session.state() == RoadState::Accepted {
        return see_other(path::job_road_session(at.id, at.session));
    }
    let mut form = Form::from(typed).scoped(SCOPE);
    let matches: Vec<Option<Match>> =
        opened.sources.iter().enumerate().map(|(i, source)| read(&mut form, &opened, i, source)).collect();
    let Some(matches) = matches.into_iter().collect::<Option<Vec<Match>>>().filter(|_| form.sound().is_some()) else {
        return retry(columns_page(job, &opened, form, String::new()));
    };
    let mut wanted = Vec::new();
    let mut matched = Vec::new();
    for (position, log) in opened.session.logs.iter().enumerate() {
        let found = opened.sources.iter().zip(&matches).find(|(source, _)| source.logs.contains(&position));
        let Some((source, one)) = found else { continue };
        wanted.push(Log {
            path: kept_at(&app, log)?,
            layout: source.layout.clone(),
            wanted: one.clone(),
            stated: log.stated.map(Stated::burned),
        });
        matched.push(RoadMatched { source_key: source.key.clone(), matched: one.clone() });
    }
    let plan = plan(&job.book, &job.file, job.day_of(opened.session.driven_at));
    let comparison = match app.shop.compare_logs(wanted, plan).await? {
        Ok(comparison) => comparison,
        Err(refused) => {
            note_refused(&mut form, &job.w(), &opened, &refused);
            return retry(columns_page(job, &opened, form, String::new()));
        }
    };
    let version = form.opened_version().unwrap_or_default();
    let at_version = RoadOpened { job: at.id, session: at.session, version };
    let done = app.shop.record_road_comparison(&job.who.actor, form.key(), at_version, matched, comparison).await;
    match done {
        Ok(()) => see_other(path::job_road_session(at.id, at.session)),
        Err(Refusal::Stale) => stale(&app, job, form, at).await,
        Err(refusal) => Err(refusal.into()),
    }
}

/// Somebody matched it meanwhile: what is typed stays, who and when stands above, and the form may be sent over it.
async fn stale(app: &App, job: JobPage, mut form: Form, at: At) -> Answer {
    let opened = open(app, &job, at).await?;
    if opened.session.state() == RoadState::Accepted {
        return Err(Refusal::Stale.into());
    }
    let by = opened.session.matched.as_ref().map_or_else(String::new, |(name, when)| {
        let values = [("name", name.as_str().into()), ("when", job.when(*when).into())];
        job.w().tv("road-meanwhile", &values)
    });
    form.set("opened_version", opened.session.version.to_string());
    form.set("key", uuid::Uuid::now_v7().to_string());
    retry(columns_page(job, &opened, form, by))
}

fn name(source: usize, field: &str) -> String {
    format!("columns[{source}][{field}]")
}

fn unit_name(source: usize, quantity: Quantity) -> String {
    name(source, &format!("{}_in", quantity.code()))
}

/// The words of a column that says yes or no, and where they are typed.
const fn words_of(quantity: Quantity) -> Option<&'static str> {
    match quantity {
        Quantity::Fuel => Some("gas_words"),
        Quantity::ClosedLoop => Some("closed_words"),
        _ => None,
    }
}

fn fill(form: &mut Form, i: usize, known: &Match) {
    for (quantity, matched) in &known.columns {
        form.set(&name(i, quantity.code()), &matched.column);
        let same = |unit: &&str| {
            logs::in_own_unit(*quantity, unit).is_some_and(|(scale, offset)| {
                (scale - matched.scale).abs() < 1e-9 * scale.abs() && (offset - matched.offset).abs() < 1e-6
            })
        };
        if let Some(unit) = logs::units_taken(*quantity).iter().find(|unit| same(unit)) {
            form.set(&unit_name(i, *quantity), *unit);
        }
    }
    form.set(&name(i, "gas_words"), known.gas_words.join(", "));
    form.set(&name(i, "closed_words"), known.closed_words.join(", "));
}

/// A log of this source must say itself which fuel burns.
fn needs_fuel(opened: &Opened, source: &Source) -> bool {
    source.logs.iter().any(|at| opened.session.logs[*at].stated.is_none())
}

fn read(form: &mut Form, opened: &Opened, i: usize, source: &Source) -> Option<Match> {
    let mut found = Match::default();
    let mut is_whole = true;
    for quantity in Quantity::ALL {
        let field = name(i, quantity.code());
        let column = form.value(&field).to_owned();
        let is_needed = quantity.is_needed() || (quantity == Quantity::Fuel && needs_fuel(opened, source));
        if column.is_empty() {
            if is_needed {
                form.fail(&field, Wrong::Empty);
                is_whole = false;
            }
            continue;
        }
        if !source.layout.columns.iter().any(|known| known.name == column) {
            form.fail(&field, Wrong::NotAChoice);
            is_whole = false;
            continue;
        }
        if found.columns.values().any(|known: &Matched| known.column == column) {
            form.fail(&field, Wrong::Rule("road-column-twice", vec![("column", column.into())]));
            is_whole = false;
            continue;
        }
        let Some((scale, offset)) = in_unit(form, i, quantity) else {
            is_whole = false;
            continue;
        };
        found.columns.insert(quantity, Matched { column, scale, offset });
    }
    found.gas_words = words_typed(form, &name(i, "gas_words"));
    found.closed_words = words_typed(form, &name(i, "closed_words"));
    is_whole.then_some(found)
}

fn in_unit(form: &mut Form, i: usize, quantity: Quantity) -> Option<(f64, f64)> {
    let units = logs::units_taken(quantity);
    if units.len() < 2 {
        return Some((1.0, 0.0));
    }
    let field = unit_name(i, quantity);
    let typed = form.value(&field).to_owned();
    if typed.is_empty() {
        form.fail(&field, Wrong::Empty);
        return None;
    }
    let known = units.iter().find(|unit| **unit == typed).and_then(|unit| logs::in_own_unit(quantity, unit));
    if known.is_none() {
        form.fail(&field, Wrong::NotAChoice);
    }
    known
}

fn words_typed(form: &mut Form, field: &str) -> Vec<String> {
    let text = form.opt_text(field, MOST_WORDS).unwrap_or_default();
    text.split(',').map(str::trim).filter(|word| !word.is_empty()).map(str::to_owned).collect()
}

/// Notes why nothing can be compared beside the column it is about, in every source; the first field else.
fn note_refused(form: &mut Form, w: &Words, opened: &Opened, refused: &CompareError) {
    let (quantity, wrong) = match refused {
        CompareError::Same { .. } => (Quantity::TimeS, Wrong::Rule("road-same-file", Vec::new())),
        CompareError::FuelUnknown { .. } => (Quantity::Fuel, Wrong::Empty),
        CompareError::Log { log, error } => {
            let file = opened.session.logs.get(*log).map(|log| log.file.name.clone()).unwrap_or_default();
            (Quantity::TimeS, wrong_log(&file, error))
        }
        CompareError::Refused(refused) => said_refused(w, refused),
    };
    form.fail(&name(0, quantity.code()), wrong);
}

fn said_refused(w: &Words, refused: &Refused) -> (Quantity, Wrong) {
    let share = |share: f64| w.quantity(100.0 * share, 0, "%");
    match refused {
        Refused::OneFuel { burned } => {
            let fuel = w.t(format!("road-on-{}", super::said::fuel_key(*burned)));
            (Quantity::Fuel, Wrong::Rule("road-refused-one-fuel", vec![("fuel", fuel.into())]))
        }
        Refused::NothingUsable { .. } => {
            let why = super::said::refused_why(w, refused);
            (Quantity::TimeS, Wrong::Rule("road-refused-nothing", vec![("why", why.into())]))
        }
        Refused::OutOfRange { quantity, share: far } => {
            let values = vec![("what", w.t(format!("road-{}", quantity.code())).into()), ("share", share(*far).into())];
            (*quantity, Wrong::Rule("road-refused-range", values))
        }
        Refused::RankImplausible { .. } => (Quantity::PetrolMs, Wrong::Rule("road-refused-rank", Vec::new())),
    }
}

fn columns_page(job: JobPage, opened: &Opened, form: Form, meanwhile: String) -> ColumnsPage {
    let w = job.w();
    let form = form.scoped(SCOPE);
    let at = (job.id(), opened.session.id);
    let sources = opened.sources.iter().enumerate().map(|(i, source)| shown(&w, &form, opened, i, source)).collect();
    ColumnsPage {
        sheet: job.sheet(Stage::Calibration),
        lead: w.t("road-columns-lead"),
        sources,
        meanwhile,
        doubt: Mark::Undecided,
        action: path::job_road_columns(at.0, at.1),
        cancel: path::job_road(at.0),
        may_record: job.file.job.state.is_live() && opened.session.state() != RoadState::Accepted,
        frame: job.frame,
        form,
    }
}

fn shown(w: &Words, form: &Form, opened: &Opened, i: usize, source: &Source) -> Shown {
    let options: Vec<Choice> =
        source.layout.columns.iter().enumerate().map(|(n, column)| option(source, n, column)).collect();
    let is_needed =
        |quantity: Quantity| quantity.is_needed() || (quantity == Quantity::Fuel && needs_fuel(opened, source));
    let row = |quantity: &Quantity| {
        let column = kit::choice(form, w, name(i, quantity.code()), &options).hinted("");
        vec![column, second(w, form, i, *quantity)]
    };
    let head = |quantity: &Quantity| {
        let more = if is_needed(*quantity) { w.t("road-needed") } else { w.t(format!("road-why-{}", quantity.code())) };
        (w.t(format!("road-{}", quantity.code())), more)
    };
    let columns = vec![w.t("road-column-quantity"), w.t("road-column-column"), w.t("road-column-unit")];
    let rows = Quantity::ALL.iter().map(row).collect();
    let heads = Quantity::ALL.iter().map(head).collect();
    let names: Vec<String> = source.logs.iter().map(|at| said_log(w, &opened.session.logs[*at])).collect();
    Shown {
        heading: names.join("; "),
        note: w.tv(
            "road-layout",
            &[("columns", source.layout.columns.len().into()), ("before", source.layout.lines_before.into())],
        ),
        groups: vec![Group::table(&format!("columns-{i}"), w.t("road-group-columns"), columns, rows).headed(heads)],
        preview: preview(w, &source.layout),
    }
}

/// "morning.csv, on petrol as stated".
pub(super) fn said_log(w: &Words, log: &RoadLog) -> String {
    let key = match log.stated {
        Some(Stated::Petrol) => "road-log-stated-petrol",
        Some(Stated::Gas) => "road-log-stated-gas",
        None => "road-log-both",
    };
    w.tv(key, &[("file", log.file.name.as_str().into())])
}

fn option(source: &Source, n: usize, column: &logs::Column) -> Choice {
    let sample = source.layout.preview.iter().filter_map(|row| row.get(n)).find(|cell| !cell.trim().is_empty());
    let unit = if column.unit.is_empty() || column.name.contains(&column.unit) {
        String::new()
    } else {
        format!(" [{}]", column.unit)
    };
    let sample = sample.map_or_else(String::new, |sample| format!(": {}", sample.trim()));
    Choice::new(&column.name, format!("{}{unit}{sample}", column.name))
}

/// What stands beside the column: its unit, or the words that say yes.
fn second(w: &Words, form: &Form, i: usize, quantity: Quantity) -> Field {
    if let Some(field) = words_of(quantity) {
        return kit::text(form, w, name(i, field));
    }
    let units = logs::units_taken(quantity);
    let choices: Vec<Choice> = units.iter().map(|unit| Choice::new(*unit, *unit)).collect();
    let what = w.t(format!("road-{}", quantity.code()));
    let mut form = form.clone();
    // Where there is one unit only it is that one.
    if let [only] = units.as_slice() {
        form.set(&unit_name(i, quantity), *only);
    }
    kit::choice(&form, w, unit_name(i, quantity), &choices).called(w.tv("road-unit-of", &[("what", what.into())]))
}

fn preview(w: &Words, layout: &Layout) -> Table {
    let columns = layout.columns.iter().map(|column| Column::number(&column.name)).collect();
    let row = |row: &Vec<String>| {
        let mut cells: Vec<Cell> = row.iter().take(layout.columns.len()).map(Cell::new).collect();
        cells.resize(layout.columns.len(), Cell::default());
        cells
    };
    let rows = layout.preview.iter().take(SHOWN_ROWS).map(row).collect();
    Table { w: *w, caption: w.t("road-preview"), columns, rows }
}
