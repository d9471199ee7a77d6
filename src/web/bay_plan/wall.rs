//! The day of the bay plan as a sheet for the wall.

use axum::extract::{RawQuery, State};
use time::{Date, Duration, OffsetDateTime};

use super::midnight;
use crate::db;
use crate::db::rule_books::Books;
use crate::db::search::Wanted;
use crate::db::today::Listed;
use crate::model::booking::{Booking, BookingState};
use crate::model::job::JobState;
use crate::model::paper::wall_sheet::{BayOnWall, BookingOnWall, JobOnWall};
use crate::web::app::{App, words};
use crate::web::form::{Form, Typed};
use crate::web::job::papers::pdf;
use crate::web::jobs::standing;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error};
use crate::words::Words;

/// Jobs read for the sheet.
const MOST: i64 = 100;

/// `GET /bay-plan/sheet?day=…`: today's jobs stand on the sheet of today alone, bookings on the sheet of their day.
pub async fn show(State(app): State<App>, who: Visitor, RawQuery(query): RawQuery) -> Answer {
    let mut asked = Form::from(Typed::from_query(query.as_deref().unwrap_or_default()));
    let (now, today) = (app.shop.clock.now(), app.shop.clock.today(&who.zone));
    let day = asked.opt_date("day").unwrap_or(today);
    let w = words(&who.branch.language);
    let (from, to) = (midnight(&who, day)?, midnight(&who, day.saturating_add(Duration::days(1)))?);
    let mut con = app.read().await?;
    let booked = db::bookings::list(&mut con, who.branch.id, from, to).await?;
    let mut bays: Vec<BayOnWall> = Vec::new();
    for bay in db::bays::list(&mut con, who.branch.id, day).await? {
        let here = booked.iter().filter(|one| one.bay_id == bay.id && one.state != BookingState::Cancelled);
        let bookings = here.map(|one| booking(&who, &w, one, day)).collect();
        bays.push(BayOnWall { name: bay.name, bookings, jobs: Vec::new() });
    }
    if day == today {
        let mut books = Books::new(who.branch.id, today);
        let live = db::today::list_jobs(&mut con, who.branch.id, "live", &Wanted::new(""), (0, MOST)).await?;
        // The oldest first: it has waited longest.
        for listed in live.iter().rev() {
            place(&mut bays, listed, job(&mut con, &who, &w, (&mut books, today), listed).await?, &w);
        }
    }
    drop(con);
    let bytes = app.shop.wall_sheet_pdf(&who.branch, day, bays, who.zone.local(now)).await?;
    Ok(pdf("wall-sheet", bytes))
}

/// Puts a job into its bay, or among those that stand in none.
fn place(bays: &mut Vec<BayOnWall>, listed: &Listed, job: JobOnWall, w: &Words) {
    let name = listed.bay_name.clone().unwrap_or_else(|| w.t("wall-none"));
    match bays.iter_mut().find(|bay| bay.name == name) {
        Some(bay) => bay.jobs.push(job),
        None => bays.push(BayOnWall { name, bookings: Vec::new(), jobs: vec![job] }),
    }
}

fn booking(who: &Visitor, w: &Words, one: &Booking, day: Date) -> BookingOnWall {
    // A booking of several days names those that are not this one.
    let at = |instant: OffsetDateTime, of: Date| {
        let local = who.zone.local(instant);
        let time = w.time(local.time());
        if of == day { time } else { format!("{}, {time}", w.short_date(of)) }
    };
    let last = who.zone.day_of(one.ends_at - Duration::seconds(1));
    BookingOnWall {
        time: format!("{} – {}", at(one.starts_at, who.zone.day_of(one.starts_at)), at(one.ends_at, last)),
        whose: if one.plate.is_empty() { one.name.clone() } else { one.plate.clone() },
        purpose: w.t(format!("job-kind-{}", one.job_kind)),
        booking_state: w.t(format!("booking-state-{}", one.state)),
        note: one.note.clone(),
    }
}

async fn job(
    con: &mut db::Con,
    who: &Visitor,
    w: &Words,
    (books, today): (&mut Books, Date),
    listed: &Listed,
) -> Result<JobOnWall, Error> {
    let stands = standing(con, who, books, listed.id, today).await?;
    let vehicle = format!("{} {}", listed.make, listed.model).trim().to_owned();
    let whole = |n: usize| i64::try_from(n).unwrap_or(i64::MAX);
    let hold = listed.hold_reason.clone().filter(|_| listed.state == JobState::Held);
    let stops = stands.as_ref().and_then(|one| one.stops.clone());
    Ok(JobOnWall {
        number: listed.number.clone(),
        plate: if listed.plate.is_empty() { vehicle.clone() } else { listed.plate.clone() },
        vehicle: if listed.plate.is_empty() { String::new() } else { vehicle },
        purpose: w.t(format!("job-kind-{}", listed.kind)),
        stage: stands.as_ref().map(|one| w.t(format!("stage-{}", one.stage))).unwrap_or_default(),
        settled: stands.as_ref().map_or(0, |one| whole(one.met)),
        asked: stands.as_ref().map_or(0, |one| whole(one.all)),
        stuck: hold.or(stops).unwrap_or_default(),
    })
}
