//! The number register: every issued paper, newest first, by kind, year and how it stands.

use askama::Template;
use axum::extract::{RawQuery, State};
use time::{Date, Month, OffsetDateTime};

use crate::clock::Zone;
use crate::db;
use crate::db::papers::Sought;
use crate::model::paper::CertificateKind;
use crate::seal::standing::Standing;
use crate::shop::issue::Found;
use crate::web::app::App;
use crate::web::form::{Form, Typed};
use crate::web::job::papers::mark;
use crate::web::kit::{self, Cell, Choice, Column, Empty, Pages, Row, Table};
use crate::web::page::{Frame, Place, page};
use crate::web::routes::OVERSEERS;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};
use crate::words::Words;

/// Lines on a page of the register.
const PAGE: usize = 50;
/// How many rows are read at once while looking for those that stand as asked.
const AT_ONCE: i64 = 100;

const STANDINGS: [Standing; 5] =
    [Standing::Valid, Standing::DutyPassed, Standing::UnderReview, Standing::Superseded, Standing::Withdrawn];
const KINDS: [CertificateKind; 5] = [
    CertificateKind::Conversion,
    CertificateKind::Inspection,
    CertificateKind::Removal,
    CertificateKind::Container,
    CertificateKind::Cylinder,
];

/// One list to choose from.
struct Pick {
    name: &'static str,
    label: String,
    any: String,
    choices: Vec<Choice>,
}

#[derive(Template)]
#[template(path = "papers/list.html")]
struct ListPage {
    frame: Frame,
    form: Form,
    picks: Vec<Pick>,
    table: Option<Table>,
    empty: Empty,
    pages: Pages,
    may_audit: bool,
}

/// `GET /papers?kind=…&year=…&standing=…`.
pub async fn list(State(app): State<App>, who: Visitor, RawQuery(query): RawQuery) -> Answer {
    let form = Form::from(Typed::from_query(query.as_deref().unwrap_or_default()));
    let w = who.words();
    let mut con = app.read().await?;
    let first = db::papers::first_at(&mut con, who.branch.id).await?;
    let standing = STANDINGS.into_iter().find(|one| one.as_str() == form.value("standing"));
    let sought = Sought {
        kind: form.value("kind").to_owned(),
        span: form.value("year").parse().ok().and_then(|year| year_of(&who.zone, year)),
        is_over: standing.map(|one| matches!(one, Standing::Superseded | Standing::Withdrawn)),
    };
    let asked: usize = form.value("page").parse().unwrap_or(0).min(100_000);
    let mut found = look(&app, &mut con, &who, &sought, standing, (asked * PAGE, PAGE + 1)).await?;
    let goes_on = found.len() > PAGE;
    found.truncate(PAGE);
    let columns = ["register-number", "register-vehicle", "register-issued", "register-stands"];
    let columns = columns.into_iter().map(|key| Column::text(w.t(key))).collect();
    let rows = found.iter().map(|one| row(&w, one)).collect();
    let table = Table { w, caption: w.t("papers-title"), columns, rows };
    let is_bare = ["kind", "year", "standing"].iter().all(|name| form.value(name).is_empty());
    let this_year = app.shop.clock.today(&who.zone).year();
    page(ListPage {
        picks: picks(&w, first.map(|at| who.zone.day_of(at).year()), this_year),
        pages: Pages {
            w,
            previous: asked.checked_sub(1).map(|page| href(&form, page)),
            next: goes_on.then(|| href(&form, asked + 1)),
        },
        empty: Empty { sentence: w.t(if is_bare { "papers-empty" } else { "register-none-found" }), act: None },
        table: (!table.rows.is_empty()).then_some(table),
        may_audit: OVERSEERS.lets(&who.actor),
        frame: who.frame().at(Place::Papers),
        form,
    })
}

/// The papers that stand as asked. How a paper stands rests on what it says and on the day, so rows are read and weighed
/// until there are enough.
async fn look(
    app: &App,
    con: &mut db::Con,
    who: &Visitor,
    sought: &Sought,
    standing: Option<Standing>,
    (first, most): (usize, usize),
) -> Result<Vec<Found>, Error> {
    let whole = i64::try_from(first).unwrap_or(i64::MAX);
    // Without a standing to weigh, the store itself goes to the page.
    let (mut offset, mut to_skip) = if standing.is_none() { (whole, 0) } else { (0, first) };
    let mut found = Vec::new();
    loop {
        let papers = db::papers::list(con, who.branch.id, sought, AT_ONCE, offset).await?;
        let is_last = i64::try_from(papers.len()).unwrap_or(0) < AT_ONCE;
        for paper in papers {
            let one = app.shop.found(con, paper).await?;
            if standing.is_some_and(|wanted| wanted != one.standing) {
                continue;
            }
            if to_skip > 0 {
                to_skip -= 1;
                continue;
            }
            found.push(one);
            if found.len() == most {
                return Ok(found);
            }
        }
        if is_last {
            return Ok(found);
        }
        offset += AT_ONCE;
    }
}

fn row(w: &Words, Found { paper, content, standing, .. }: &Found) -> Row {
    let vehicle = format!("{} {}", content.vehicle.make, content.vehicle.model);
    vec![
        Cell::link(&paper.number, path::paper(paper.id)).with_second(w.t(format!("certificate-kind-{}", paper.kind))),
        Cell::new(&content.vehicle.plate).with_second(vehicle.trim()),
        Cell::new(w.medium_date(content.issued_on)),
        Cell::new(w.t(format!("standing-{}", standing.as_str()))).marked(mark(*standing)),
    ]
}

/// A year of the shop's own clock, as instants.
fn year_of(zone: &Zone, year: i32) -> Option<(OffsetDateTime, OffsetDateTime)> {
    let begin = |year| zone.instant(Date::from_calendar_date(year, Month::January, 1).ok()?, 0, 0);
    Some((begin(year)?, begin(year.checked_add(1)?)?))
}

fn picks(w: &Words, first_year: Option<i32>, this_year: i32) -> Vec<Pick> {
    let pick = |name, key: &str, choices| Pick {
        name,
        label: w.t(format!("register-{key}")),
        any: w.t(format!("register-{key}-any")),
        choices,
    };
    let years = (first_year.unwrap_or(this_year)..=this_year).rev().map(|year| year.to_string());
    vec![
        pick("kind", "kind", kit::choices(w, "certificate-kind", KINDS.map(CertificateKind::as_str))),
        pick(
            "year",
            "year",
            years.map(|year| Choice { value: year.clone(), label: year, hint: String::new() }).collect(),
        ),
        pick("standing", "standing", kit::choices(w, "standing", STANDINGS.map(Standing::as_str))),
    ]
}

fn href(form: &Form, page: usize) -> String {
    let mut query = form_urlencoded::Serializer::new(String::new());
    for name in ["kind", "year", "standing"] {
        if !form.value(name).is_empty() {
            query.append_pair(name, form.value(name));
        }
    }
    query.append_pair("page", &page.to_string());
    format!("/papers?{}", query.finish())
}
