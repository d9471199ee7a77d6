//! Parts of a job: what is on the vehicle, what the rules still want, and the forms that fit, correct and remove.

use askama::Template;
use axum::extract::{Path, Query, State};
use serde::Deserialize;

use super::part_form::{self, SCOPE, made_said, read_mark};
use super::record::Group;
use super::{JobPage, say};
use crate::db;
use crate::db::parts::Removal;
use crate::model::Coded;
use crate::model::ids::{JobId, PartId};
use crate::model::part::{NewPart, Part, PartCategory};
use crate::model::stage::Stage;
use crate::rules::Need;
use crate::shop::Refusal;
use crate::web::app::App;
use crate::web::error::{beside, meanwhile};
use crate::web::form::{Form, Typed};
use crate::web::kit::{self, Act, Cell, Column, Empty, JobSheet, Mark, Table};
use crate::web::page::{Frame, page, retry, see_other};
use crate::web::routes::BENCH;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

/// The kind of part that a link asks for.
#[derive(Debug, Deserialize)]
pub struct Asked {
    #[serde(default)]
    category: String,
}

/// A part as the list shows it.
#[derive(Debug)]
struct Line {
    mark: Mark,
    title: String,
    /// Approval mark, serial, made, place: one line each.
    facts: Vec<String>,
    /// What to look at again.
    doubts: Vec<String>,
    edit: Option<String>,
    remove: Option<String>,
}

/// A proof that waits for a part.
#[derive(Debug)]
struct Wanted {
    title: String,
    why: String,
    ways: Vec<Act>,
}

#[derive(Template)]
#[template(path = "job/parts.html")]
struct ListPage {
    frame: Frame,
    sheet: JobSheet,
    wanted: Vec<Wanted>,
    fitted: Vec<Line>,
    empty: Empty,
    removed: Option<Table>,
    fit: Option<Act>,
}

#[derive(Template)]
#[template(path = "job/part.html")]
struct PartPage {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    title: String,
    action: String,
    groups: Vec<Group>,
    doubled: Option<Doubled>,
    back: String,
    may_record: bool,
}

/// The same thing is on a vehicle already: the ways on.
#[derive(Debug)]
struct Doubled {
    sentence: String,
    way: Act,
    requalify: String,
    /// A signatory may state that two parts share a mark.
    may_share: bool,
    is_new: bool,
}

#[derive(Template)]
#[template(path = "job/part_removal.html")]
struct RemovalPage {
    frame: Frame,
    sheet: JobSheet,
    form: Form,
    part: String,
    /// A container or cylinder: where it goes is asked.
    asks_whereabouts: bool,
    action: String,
    back: String,
    may_record: bool,
}

fn title(job: &JobPage, part: &Part) -> String {
    let kind = job.w().t(format!("part-category-{}", part.category.code()));
    format!("{kind}: {} {}", part.maker, part.type_name).trim_end().to_owned()
}

fn line(job: &JobPage, part: &Part, may_change: bool) -> Line {
    let w = job.w();
    let read = read_mark(&w, &part.approval_mark, Some(part.category), job.file.job.fuel);
    let said = |key: &str, value: &str| {
        if value.is_empty() { String::new() } else { w.tv(key, &[("value", value.into())]) }
    };
    let mark = if part.approval_mark.is_empty() {
        String::new()
    } else {
        [part.approval_mark.clone(), read.said]
            .into_iter()
            .filter(|text| !text.is_empty())
            .collect::<Vec<_>>()
            .join(" · ")
    };
    let capacity = part.capacity_l.map(|litres| w.quantity(litres, 1, "L")).unwrap_or_default();
    let pressure = part.test_pressure_kpa.map(|kpa| w.quantity(kpa, 0, "kPa")).unwrap_or_default();
    let day = |day: Option<time::Date>| day.map(|day| w.medium_date(day)).unwrap_or_default();
    let mut facts = vec![
        mark,
        said("part-said-class", &part.component_class),
        said("part-said-serial", &part.serial),
        said("part-said-batch", &part.batch),
        said("part-said-made", &made_said(&w, part)),
        said("part-said-capacity", &capacity),
        said("part-said-test-pressure", &pressure),
        said("part-said-last-tested", &day(part.last_tested_on)),
        said("part-said-end-of-life", &day(part.end_of_life_on)),
        said("part-said-place", &part.place),
        said(if part.is_found() { "part-said-found" } else { "part-said-fitted" }, &w.medium_date(part.fitted_on)),
        said("part-said-shared", &part.shared_reason),
    ];
    facts.retain(|fact| !fact.is_empty());
    let is_ours = part.fitted_in == job.id();
    Line {
        mark: read.mark,
        title: title(job, part),
        facts,
        doubts: read.doubts,
        edit: (may_change && is_ours).then(|| path::job_part_edit(job.id(), part.id)),
        remove: may_change.then(|| path::job_part_removal(job.id(), part.id)),
    }
}

fn fit_act(job: &JobPage, category: PartCategory) -> Act {
    let label = job.w().t(format!("part-category-{}", category.code()));
    Act { label, href: path::job_part_new(job.id(), category.code()) }
}

/// Proofs that wait for a part of some kind, each with the kinds that meet it.
fn wanted(job: &JobPage) -> Vec<Wanted> {
    let w = job.w();
    let lines = job.book.proofs(&job.file.job, job.today);
    let open = job.proofs.iter().filter(|proof| !proof.state.is_settled());
    open.filter_map(|proof| {
        let line = lines.iter().find(|line| line.id == proof.id)?;
        let Need::Part(categories) = &line.needs else { return None };
        let ways = categories.iter().map(|category| fit_act(job, *category)).collect();
        Some(Wanted { title: say::proof_title(&w, proof), why: say::why(&w, &proof.why), ways })
    })
    .collect()
}

fn removed(job: &JobPage) -> Option<Table> {
    let w = job.w();
    let gone: Vec<&Part> = job.file.parts.iter().filter(|part| !part.is_fitted()).collect();
    let row = |part: &&Part| {
        let serial = if part.serial.is_empty() { &part.batch } else { &part.serial };
        vec![
            Cell::new(title(job, part)).with_second(serial),
            Cell::new(part.removed_on.map(|on| w.medium_date(on)).unwrap_or_default()),
            Cell::new(&part.removed_reason).with_second(&part.whereabouts),
        ]
    };
    (!gone.is_empty()).then(|| Table {
        w,
        caption: w.t("parts-removed"),
        columns: vec![
            Column::text(w.t("parts-part")),
            Column::text(w.t("parts-removed-on")),
            Column::text(w.t("parts-removed-why")),
        ],
        rows: gone.iter().map(row).collect(),
    })
}

/// `GET /jobs/{id}/parts`; a link from a proof asks for a kind.
pub async fn list(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, Query(asked): Query<Asked>) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    let w = job.w();
    let may_change = job.file.job.state.is_live() && BENCH.lets(&job.who.actor);
    let fit = match asked.category.parse::<PartCategory>() {
        Ok(category) => {
            let Act { label, href } = fit_act(&job, category);
            Act { label: w.tv("parts-fit-kind", &[("kind", label.into())]), href }
        }
        Err(_) => Act { label: w.t("parts-fit"), href: path::job_part_new(id, "") },
    };
    page(ListPage {
        sheet: job.sheet(Stage::Fitting),
        wanted: if may_change { wanted(&job) } else { Vec::new() },
        fitted: job.file.fitted().map(|part| line(&job, part, may_change)).collect(),
        empty: Empty { sentence: w.t("parts-none"), act: None },
        removed: removed(&job),
        fit: may_change.then_some(fit),
        frame: job.frame,
    })
}

fn part_page(job: JobPage, form: Form, of: Option<PartId>, doubled: Option<Doubled>) -> PartPage {
    let w = job.w();
    let form = form.scoped(SCOPE);
    let id = job.id();
    PartPage {
        sheet: job.sheet(Stage::Fitting),
        title: w.t(if of.is_some() { "parts-correct" } else { "parts-fit" }),
        action: of.map_or_else(|| path::job_parts(id), |part| path::job_part(id, part)),
        groups: part_form::groups(&job, &form),
        doubled,
        back: path::job_parts(id),
        may_record: job.file.job.state.is_live(),
        frame: job.frame,
        form,
    }
}

/// `GET /jobs/{id}/parts/new`.
pub async fn new(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, Query(asked): Query<Asked>) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    let form = Form::blank().with("fitted_on", job.today.to_string()).with("category", asked.category);
    let form = form.with("origin", part_form::usual_origin(&job).to_string());
    page(part_page(job, form, None, None))
}

/// `POST /jobs/{id}/parts`.
pub async fn create(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    let mut form = Form::from(typed).scoped(SCOPE);
    let shared_reason = form.opt_text("shared_reason", 400).unwrap_or_default();
    let part = part_form::read(&mut form, job.today, part_form::usual_origin(&job));
    if form.value("then") == "look" {
        return if part.is_some() {
            page(part_page(job, form, None, None))
        } else {
            retry(part_page(job, form, None, None))
        };
    }
    let Some(part) = part else { return retry(part_page(job, form, None, None)) };
    match app.shop.fit_part(&job.who.actor, form.key(), id, part.clone(), shared_reason).await {
        Ok(_) => see_other(path::job_parts(id)),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            let doubled = doubled(&app, &job, &part, None).await?;
            retry(part_page(job, form, None, doubled))
        }
    }
}

/// The part that is the same thing, and what to do about it.
async fn doubled(app: &App, job: &JobPage, part: &NewPart, except: Option<PartId>) -> Result<Option<Doubled>, Error> {
    let w = job.w();
    let branch = job.who.branch.id;
    let mut con = app.read().await?;
    let all = db::parts::list_fitted_with_serial(&mut con, branch, part.category).await?;
    let Some(other) = all.into_iter().find(|other| Some(other.id) != except && other.is_same_thing(part)) else {
        return Ok(None);
    };
    let is_here = other.vehicle_id == job.file.vehicle.id;
    let (plate, way) = if is_here {
        let href = path::job_part_removal(job.id(), other.id);
        (job.file.vehicle.plate.clone(), Act { label: w.t("part-doubled-remove-here"), href })
    } else {
        let vehicle = db::vehicles::find(&mut con, branch, other.vehicle_id).await?.ok_or(Error::NotFound)?;
        let jobs = db::jobs::list_of_vehicle(&mut con, branch, other.vehicle_id).await?;
        let live = jobs.into_iter().find(|job| job.state.is_live());
        let way = match live {
            Some(live) => {
                let label = w.tv("part-doubled-remove-in-job", &[("number", live.number.as_str().into())]);
                Act { label, href: path::job_part_removal(live.id, other.id) }
            }
            None => Act { label: w.t("part-doubled-open-vehicle"), href: path::vehicle(other.vehicle_id) },
        };
        (vehicle.plate, way)
    };
    let on = w.medium_date(other.fitted_on);
    let is_cylinder = part.category == PartCategory::Cylinder && !is_here;
    Ok(Some(Doubled {
        sentence: w.tv("part-doubled-on", &[("plate", plate.into()), ("on", on.into())]),
        way,
        requalify: if is_cylinder { w.t("part-doubled-requalify") } else { String::new() },
        may_share: job.who.actor.may_sign_on(job.today).is_some(),
        is_new: except.is_none(),
    }))
}

fn part_of(job: &JobPage, part: PartId) -> Result<Part, Error> {
    job.file.parts.iter().find(|known| known.id == part && known.is_fitted()).cloned().ok_or(Error::NotFound)
}

/// `GET /jobs/{id}/parts/{part}/edit`.
pub async fn edit(State(app): State<App>, who: Visitor, Path((id, part)): Path<(JobId, PartId)>) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    let before = part_of(&job, part)?;
    if before.fitted_in != id {
        return Err(Refusal::MayNot("refused-part-of-other-job").into());
    }
    let mut form = Form::blank().with("opened_version", before.version.to_string());
    for (name, text) in part_form::texts(&before) {
        form.set(name, text);
    }
    page(part_page(job, form, Some(part), None))
}

/// `POST /jobs/{id}/parts/{part}`.
pub async fn update(
    State(app): State<App>,
    who: Visitor,
    Path((id, part)): Path<(JobId, PartId)>,
    typed: Typed,
) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    let before = part_of(&job, part)?;
    let mut form = Form::from(typed).scoped(SCOPE);
    let version = form.opened_version().unwrap_or(0);
    let new = part_form::read(&mut form, job.today, before.origin);
    if form.value("then") == "look" {
        let shown = part_page(job, form, Some(part), None);
        return if new.is_some() { page(shown) } else { retry(shown) };
    }
    let Some(new) = new else { return retry(part_page(job, form, Some(part), None)) };
    match app.shop.correct_part(&job.who.actor, form.key(), (id, part), version, new.clone()).await {
        Ok(()) => see_other(path::job_parts(id)),
        Err(Refusal::Stale) => {
            meanwhile(&mut form, before.version, &part_form::texts(&before));
            retry(part_page(job, form, Some(part), None))
        }
        Err(refusal) => {
            beside(&mut form, refusal)?;
            let doubled = doubled(&app, &job, &new, Some(part)).await?;
            retry(part_page(job, form, Some(part), doubled))
        }
    }
}

fn removal_page(job: JobPage, form: Form, part: &Part) -> RemovalPage {
    let serial = if part.serial.is_empty() { &part.batch } else { &part.serial };
    RemovalPage {
        sheet: job.sheet(Stage::Fitting),
        part: format!("{}, {serial}", title(&job, part)),
        asks_whereabouts: part.is_vessel(),
        action: path::job_part_removal(job.id(), part.id),
        back: path::job_parts(job.id()),
        may_record: job.file.job.state.is_live(),
        frame: job.frame,
        form: form.scoped("part-removal"),
    }
}

/// `GET /jobs/{id}/parts/{part}/removal`.
pub async fn removal(State(app): State<App>, who: Visitor, Path((id, part)): Path<(JobId, PartId)>) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    let part = part_of(&job, part)?;
    page(removal_page(job, Form::blank(), &part))
}

/// `POST /jobs/{id}/parts/{part}/removal`.
pub async fn remove(
    State(app): State<App>,
    who: Visitor,
    Path((id, part)): Path<(JobId, PartId)>,
    typed: Typed,
) -> Answer {
    let job = JobPage::open(&app, who, id).await?;
    let mut form = Form::from(typed).scoped("part-removal");
    let (known, reason) = (part_of(&job, part), form.text("reason", 400));
    let whereabouts = form.opt_text("whereabouts", 200).unwrap_or_default();
    let Some(reason) = reason else { return retry(removal_page(job, form, &known?)) };
    let removal = Removal { reason, whereabouts };
    match app.shop.remove_part(&job.who.actor, form.key(), (id, part), removal).await {
        Ok(()) => see_other(path::job_parts(id)),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(removal_page(job, form, &known?))
        }
    }
}
