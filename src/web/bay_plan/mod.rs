//! The bay plan: bookings by day and bay, a day or a week at a time.

use askama::Template;
use axum::extract::{RawQuery, State};
use time::{Date, Duration, OffsetDateTime};

use crate::db;
use crate::model::booking::{Bay, Booking, BookingState};
use crate::web::app::App;
use crate::web::form::{Form, Typed};
use crate::web::kit::{self, Mark};
use crate::web::page::{Frame, Place, page};
use crate::web::routes::{DESK, MANAGER};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

pub mod bays;
pub mod booking;
pub mod wall;

/// A booking as the plan shows it.
#[derive(Debug)]
struct Entry {
    time: String,
    title: String,
    note: String,
    href: String,
    mark: Mark,
    is_off: bool,
}

/// What stands in one bay on one day.
#[derive(Debug)]
struct Stand {
    entries: Vec<Entry>,
    /// Where a new booking of this bay and day begins.
    book: String,
    /// Bay and day, for whoever cannot see the table.
    label: String,
}

/// One bay with its days.
#[derive(Debug)]
struct Line {
    bay: String,
    days: Vec<Stand>,
}

#[derive(Template)]
#[template(path = "bay_plan/show.html")]
struct PlanPage {
    frame: Frame,
    title: String,
    is_week: bool,
    days: Vec<String>,
    lines: Vec<Line>,
    earlier: String,
    later: String,
    now_href: String,
    other_href: String,
    sheet_href: String,
    may_book: bool,
    is_manager: bool,
}

/// `GET /bay-plan?day=…&span=week`.
pub async fn show(State(app): State<App>, who: Visitor, RawQuery(query): RawQuery) -> Answer {
    let mut asked = Form::from(Typed::from_query(query.as_deref().unwrap_or_default()));
    let today = app.shop.clock.today(&who.zone);
    let (w, is_week) = (who.words(), asked.value("span") == "week");
    let day = asked.opt_date("day").unwrap_or(today);
    let first = if is_week { monday(day) } else { day };
    let count = if is_week { 7 } else { 1 };
    let days: Vec<Date> = (0..count).map(|n| first.saturating_add(Duration::days(n))).collect();
    let after = first.saturating_add(Duration::days(count));
    let mut con = app.read().await?;
    let bays = db::bays::list(&mut con, who.branch.id, first).await?;
    let booked = db::bookings::list(&mut con, who.branch.id, midnight(&who, first)?, midnight(&who, after)?).await?;
    let lines = bays.iter().map(|bay| line(&who, bay, &days, &booked)).collect();
    let href = |day: Date, is_week: bool| {
        if is_week {
            format!("{}?day={day}&span=week", path::BAY_PLAN)
        } else {
            format!("{}?day={day}", path::BAY_PLAN)
        }
    };
    page(PlanPage {
        title: if is_week {
            w.tv("plan-week-of", &[("day", w.date(first).into())])
        } else {
            format!("{}, {}", w.weekday(first), w.date(first))
        },
        is_week,
        days: days.iter().map(|day| w.week_date(*day)).collect(),
        lines,
        earlier: href(first.saturating_sub(Duration::days(count)), is_week),
        later: href(after, is_week),
        now_href: href(today, is_week),
        other_href: href(day, !is_week),
        sheet_href: format!("{}/sheet?day={day}", path::BAY_PLAN),
        may_book: DESK.lets(&who.actor),
        is_manager: MANAGER.lets(&who.actor),
        frame: who.frame().at(Place::BayPlan),
    })
}

fn monday(day: Date) -> Date {
    day.saturating_sub(Duration::days(i64::from(day.weekday().number_days_from_monday())))
}

/// The first instant of a day in the shop; a day beyond the calendar is not there.
pub(super) fn midnight(who: &Visitor, day: Date) -> Result<OffsetDateTime, Error> {
    who.zone.instant(day, 0, 0).ok_or(Error::NotFound)
}

fn line(who: &Visitor, bay: &Bay, days: &[Date], booked: &[Booking]) -> Line {
    let w = who.words();
    let cell = |day: &Date| {
        let touches = |one: &&Booking| {
            let last = who.zone.day_of(one.ends_at - Duration::seconds(1));
            one.bay_id == bay.id && who.zone.day_of(one.starts_at) <= *day && *day <= last
        };
        Stand {
            entries: booked.iter().filter(touches).map(|one| entry(who, one, *day)).collect(),
            book: format!("{}/bookings/new?bay_id={}&day={day}", path::BAY_PLAN, bay.id),
            label: w.tv("plan-book-at", &[("bay", bay.name.as_str().into()), ("day", w.week_date(*day).into())]),
        }
    };
    Line { bay: bay.name.clone(), days: days.iter().map(cell).collect() }
}

fn entry(who: &Visitor, one: &Booking, day: Date) -> Entry {
    let w = who.words();
    let (starts, ends) = (who.zone.local(one.starts_at), who.zone.local(one.ends_at));
    // A booking over several days shows on each when it begins or ends there, and that it goes on.
    let from = if starts.date() < day { "…".to_owned() } else { w.time(starts.time()) };
    let to = if ends.date() > day { "…".to_owned() } else { w.time(ends.time()) };
    let kind = w.t(format!("job-kind-{}", one.job_kind));
    let state = w.t(format!("booking-state-{}", one.state));
    // A plate does not break across two lines.
    let plate = one.plate.replace(' ', "\u{a0}");
    let title = if plate.is_empty() { one.name.clone() } else { format!("{plate} · {}", one.name) };
    let mut note = format!("{kind} · {state}");
    if !one.doubled_reason.is_empty() {
        note = format!("{note} · {}", w.tv("plan-doubled", &[("reason", one.doubled_reason.as_str().into())]));
    }
    Entry {
        time: format!("{from}–{to}"),
        title,
        note,
        href: path::booking(one.id),
        mark: mark(one.state),
        is_off: matches!(one.state, BookingState::Cancelled | BookingState::DidNotCome),
    }
}

/// How a booking's state is marked.
pub(super) fn mark(state: BookingState) -> Mark {
    match state {
        BookingState::Expected => Mark::Missing,
        BookingState::Arrived => Mark::Met,
        BookingState::DidNotCome => Mark::Stops,
        BookingState::Cancelled => Mark::NotApplicable,
    }
}
