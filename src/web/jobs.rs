//! The list of job files: what is open, held, ended; at which stage; found by number, plate, VIN, name.

use askama::Template;
use axum::extract::{RawQuery, State};
use time::Date;

use crate::db;
use crate::db::rule_books::Books;
use crate::db::today::Listed;
use crate::model::ids::JobId;
use crate::model::paper::CertificateKind;
use crate::model::stage::{Stage, stages_of};
use crate::rules::{self, tally};
use crate::web::app::App;
use crate::web::job::say;
use crate::web::kit::{self, Cell, Choice, Column, Empty, Pages, Row, Table};
use crate::web::listing::Listing;
use crate::web::page::{Frame, Place, page};
use crate::web::routes::DESK;
use crate::web::today::how_long;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

/// Where a job stands, as far as its proofs tell.
#[derive(Debug)]
pub struct Standing {
    /// The first stage with something open, else the last.
    pub stage: Stage,
    pub met: usize,
    pub all: usize,
    /// What stops the paper, in words; the first of it.
    pub stops: Option<String>,
    pub may_issue: bool,
    pub has_certificate: bool,
}

/// Reads a job file and weighs its proofs.
pub async fn standing(
    con: &mut db::Con,
    who: &Visitor,
    books: &mut Books,
    id: JobId,
    today: Date,
) -> Result<Option<Standing>, Error> {
    let w = who.words();
    let Some(file) = db::job_files::find(&mut *con, who.branch.id, id).await? else { return Ok(None) };
    let book = books.of(&mut *con, &file.vehicle.plate_country).await?;
    let proofs = rules::assess(&file, book, today, &|at| who.zone.day_of(at));
    let stages = stages_of(file.job.kind);
    let is_open = |stage: &&Stage| proofs.iter().any(|proof| proof.stage == **stage && !proof.state.is_settled());
    let (met, all) = tally(&proofs);
    let stopping = proofs.iter().find(|proof| proof.state == rules::State::Stops);
    let asks_none = CertificateKind::of(&file.job).is_none();
    // A job whose paper is its test record waits for no signature.
    let has_certificate = asks_none || !db::papers::list_in_force(con, who.branch.id, id).await?.is_empty();
    Ok(Some(Standing {
        stage: stages.iter().find(is_open).or(stages.last()).copied().unwrap_or(Stage::Intake),
        met,
        all,
        stops: stopping.map(|proof| format!("{}: {}", say::proof_title(&w, proof), say::why(&w, &proof.why))),
        may_issue: rules::inspection::may_certify(&file, &proofs),
        has_certificate,
    }))
}

#[derive(Template)]
#[template(path = "jobs/list.html")]
struct ListPage {
    frame: Frame,
    may_take_in: bool,
    listing: Listing,
    states: Vec<Choice>,
    stages: Vec<Choice>,
    table: Table,
    empty: Option<Empty>,
    pages: Pages,
}

/// `GET /jobs?state=…&stage=…&q=…`.
pub async fn list(State(app): State<App>, who: Visitor, RawQuery(query): RawQuery) -> Answer {
    let mut listing = Listing::of(path::JOBS, query.as_deref());
    // A search looks everywhere; the bare list shows what is in the shop.
    if listing.form.value("state").is_empty() {
        listing.form.set("state", if listing.q().is_empty() { "live" } else { "all" });
    }
    let state = match listing.form.value("state") {
        "all" => "",
        other => other,
    };
    let (w, now, today) = (who.words(), app.shop.clock.now(), app.shop.clock.today(&who.zone));
    let mut con = app.read().await?;
    let span = (listing.first(), Listing::most());
    let mut found = db::today::list_jobs(&mut con, who.branch.id, state, &listing.wanted(), span).await?;
    let pages = listing.pages(w, &mut found);
    let mut books = Books::new(who.branch.id, today);
    let only: Option<Stage> = listing.form.value("stage").parse().ok();
    let mut rows: Vec<Row> = Vec::new();
    for job in &found {
        let stands =
            if job.state.is_live() { standing(&mut con, &who, &mut books, job.id, today).await? } else { None };
        if only.is_some() && stands.as_ref().map(|stands| stands.stage) != only {
            continue;
        }
        rows.push(row(&who, job, stands.as_ref(), how_long(&w, now, job.opened_at)));
    }
    let empty = rows.is_empty().then(|| {
        let is_bare = listing.q().is_empty() && only.is_none();
        let key = if is_bare { "jobs-none" } else { "jobs-none-found" };
        Empty { sentence: w.tv(key, &[("q", listing.q().to_owned().into())]), act: None }
    });
    let columns = ["jobs-number", "vehicles-plate", "jobs-stage", "jobs-keeper", "jobs-since"];
    let columns = columns.map(|key| Column::text(w.t(key))).to_vec();
    page(ListPage {
        frame: who.frame().at(Place::Jobs),
        may_take_in: DESK.lets(&who.actor),
        states: kit::choices(&w, "jobs-state", ["live", "open", "held", "ended", "all"]),
        stages: kit::coded::<Stage>(&w),
        table: Table { w, caption: w.t("jobs-title"), columns, rows },
        empty,
        pages,
        listing,
    })
}

fn row(who: &Visitor, job: &Listed, stands: Option<&Standing>, since: String) -> Row {
    let w = who.words();
    let kind = w.tv(
        "job-kind-and-fuel",
        &[("kind", w.t(format!("job-kind-{}", job.kind)).into()), ("fuel", w.t(format!("fuel-{}", job.fuel)).into())],
    );
    let state = w.t(format!("job-state-{}", job.state));
    let (stage, second) = match stands {
        Some(stands) => {
            let count = w.tv("rail-count", &[("met", stands.met.into()), ("all", stands.all.into())]);
            let hold = job.hold_reason.as_ref().map(|reason| format!("{state}: {reason}"));
            (w.t(format!("stage-{}", stands.stage)), hold.unwrap_or(count))
        }
        None => (state, job.ended_reason.clone()),
    };
    let plate = if job.plate.is_empty() { w.t("vehicles-no-plate") } else { job.plate.clone() };
    let title = format!("{} {}", job.make, job.model);
    vec![
        Cell::link(&job.number, path::job(job.id)).with_second(kind),
        Cell::link(plate, path::vehicle(job.vehicle_id)).with_second(title.trim()),
        Cell::new(stage).with_second(second),
        Cell::new(&job.keeper_name),
        Cell::new(since).with_second(job.bay_name.clone().unwrap_or_default()),
    ]
}
