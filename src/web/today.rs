//! Today: what is in the shop, what is stuck, what falls due, what waits for a signature.

use askama::Template;
use axum::extract::State;
use time::{Date, Duration, OffsetDateTime};

use crate::db;
use crate::db::duties::Span;
use crate::db::rule_books::Books;
use crate::db::search::Wanted;
use crate::db::today::Listed;
use crate::model::booking::BookingState;
use crate::model::job::JobState;
use crate::shop::doubts;
use crate::web::app::App;
use crate::web::jobs::{Standing, standing};
use crate::web::kit::{self, Mark};
use crate::web::page::{Frame, Place, page};
use crate::web::routes::{DESK, MANAGER};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};
use crate::words::Words;

/// Days ahead that "falls due" looks.
const AHEAD: Duration = Duration::days(30);
/// Jobs read for the screen; a shop with more at once looks at the list.
const MOST: i64 = 100;

/// One short line: plate, then why, then how long.
#[derive(Debug)]
pub struct Line {
    pub plate: String,
    pub href: String,
    pub why: String,
    pub how_long: String,
    pub mark: Mark,
}

/// One of the four columns.
#[derive(Debug)]
pub struct Lane {
    title: String,
    lines: Vec<Line>,
    empty: String,
    act: Option<(String, &'static str)>,
}

#[derive(Template)]
#[template(path = "today.html")]
struct TodayPage {
    frame: Frame,
    day: String,
    /// What the shop itself should mend: no address, no bay, a held run.
    notes: Vec<(String, String)>,
    lanes: Vec<Lane>,
    may_take_in: bool,
}

/// `GET /`.
pub async fn show(State(app): State<App>, who: Visitor) -> Answer {
    let (w, branch, now) = (who.words(), who.branch.id, app.shop.clock.now());
    let today = who.zone.day_of(now);
    let mut con = app.read().await?;
    let mut books = Books::new(branch, today);
    let jobs = db::today::list_jobs(&mut con, branch, "live", &Wanted::new(""), (0, MOST)).await?;
    let released = db::today::list_jobs(&mut con, branch, "released", &Wanted::new(""), (0, MOST)).await?;
    let mut lanes = Lanes { w, now, today, here: vec![], stuck: vec![], sign: vec![] };
    for job in &jobs {
        lanes.live(&mut con, &who, &mut books, job).await?;
    }
    for job in released.iter().filter(|job| !job.has_paper) {
        lanes.released(job);
    }
    lanes.stuck.extend(findings(&mut con, &who, now).await?);
    lanes.sign.extend(under_review(&mut con, &who, now).await?);
    lanes.here.extend(expected(&mut con, &who, now, today).await?);
    let due = due(&mut con, &who, today).await?;
    let notes = notes(&app, &mut con, &who, today).await?;
    let may_take_in = DESK.lets(&who.actor);
    let take_in = may_take_in.then(|| (w.t("today-take-in"), "/arrivals/new"));
    let lane = |key: &str, lines, act| Lane { title: w.t(key), empty: w.t(format!("{key}-empty")), lines, act };
    let lanes = vec![
        lane("today-here", lanes.here, take_in),
        lane("today-stuck", lanes.stuck, Some((w.t("nav-jobs"), path::JOBS))),
        lane("today-due", due, Some((w.t("nav-due"), path::DUE))),
        lane("today-sign", lanes.sign, Some((w.t("nav-papers"), "/papers"))),
    ];
    page(TodayPage { frame: who.frame().at(Place::Today), day: w.date(today), notes, lanes, may_take_in })
}

/// The columns of jobs while they fill.
struct Lanes {
    w: Words,
    now: OffsetDateTime,
    today: Date,
    here: Vec<Line>,
    stuck: Vec<Line>,
    sign: Vec<Line>,
}

impl Lanes {
    async fn live(&mut self, con: &mut db::Con, who: &Visitor, books: &mut Books, job: &Listed) -> Result<(), Error> {
        let Some(stands) = standing(con, who, books, job.id, self.today).await? else { return Ok(()) };
        let line = |why: String, since: OffsetDateTime, mark| Line {
            plate: named(&self.w, &job.plate, &job.number),
            href: path::job(job.id),
            why,
            how_long: how_long(&self.w, self.now, since),
            mark,
        };
        let stage = self.w.t(format!("stage-{}", stands.stage));
        let bay = job.bay_name.clone().unwrap_or_default();
        let place = [stage, bay].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ");
        if let (JobState::Held, Some(reason)) = (job.state, &job.hold_reason) {
            let line = line(reason.clone(), job.hold_began_at.unwrap_or(job.opened_at), Mark::Undecided);
            self.stuck.push(line);
        } else if let Standing { stops: Some(why), .. } = &stands {
            let line = line(why.clone(), job.opened_at, Mark::Stops);
            self.stuck.push(line);
        } else if stands.may_issue && !stands.has_certificate {
            let line = line(self.w.t("today-all-met"), job.opened_at, Mark::Met);
            self.sign.push(line);
        }
        let line =
            line(place, job.opened_at, if job.state == JobState::Held { Mark::Undecided } else { Mark::Missing });
        self.here.push(line);
        Ok(())
    }

    fn released(&mut self, job: &Listed) {
        let since = job.ended_at.unwrap_or(job.opened_at);
        self.stuck.push(Line {
            plate: named(&self.w, &job.plate, &job.number),
            href: path::job(job.id),
            why: self.w.tv("today-released", &[("reason", job.ended_reason.as_str().into())]),
            how_long: how_long(&self.w, self.now, since),
            mark: Mark::Stops,
        });
    }
}

fn named(w: &Words, plate: &str, number: &str) -> String {
    if plate.is_empty() { w.tv("today-no-plate", &[("number", number.into())]) } else { plate.to_owned() }
}

/// "3 h", "since yesterday": the time since an instant, in words.
pub fn how_long(w: &Words, now: OffsetDateTime, since: OffsetDateTime) -> String {
    let gone = now - since;
    match gone.whole_days() {
        0 => w.tn("today-hours", gone.whole_hours().max(0)),
        days => w.tn("today-days", days),
    }
}

/// Findings that put results in doubt and are open; those of a job stand with the job.
async fn findings(con: &mut db::Con, who: &Visitor, now: OffsetDateTime) -> Result<Vec<Line>, Error> {
    let w = who.words();
    let mut lines = Vec::new();
    for one in db::findings::list_open(con, who.branch.id).await?.into_iter().filter(|one| one.job_id.is_none()) {
        let instrument = match one.instrument_id {
            Some(id) => db::instruments::find(con, who.branch.id, id).await?.map(|one| one.code),
            None => None,
        };
        lines.push(Line {
            plate: instrument.unwrap_or_else(|| w.t("finding-title")),
            href: path::finding(one.id),
            why: w.tv("today-finding", &[("text", one.text.as_str().into())]),
            how_long: how_long(&w, now, one.opened_at),
            mark: Mark::Stops,
        });
    }
    Ok(lines)
}

/// Papers that are under review, each leading to the finding behind it.
async fn under_review(con: &mut db::Con, who: &Visitor, now: OffsetDateTime) -> Result<Vec<Line>, Error> {
    let w = who.words();
    let mut lines = Vec::new();
    for (id, number, findings, since) in doubts::under_review(con, who.branch.id).await? {
        let finding = findings.first().copied();
        lines.push(Line {
            plate: number,
            href: finding.map_or_else(|| path::paper(id), |finding| path::finding_paper(finding, id)),
            why: w.t("standing-under-review"),
            how_long: how_long(&w, now, since),
            mark: Mark::Undecided,
        });
    }
    Ok(lines)
}

/// Who is expected today and has not come yet.
async fn expected(con: &mut db::Con, who: &Visitor, now: OffsetDateTime, today: Date) -> Result<Vec<Line>, Error> {
    let w = who.words();
    let from = who.zone.instant(today, 0, 0).unwrap_or(now);
    let to = who.zone.instant(today.saturating_add(Duration::days(1)), 0, 0).unwrap_or(now);
    let booked = db::bookings::list(con, who.branch.id, from, to).await?;
    let line = |one: crate::model::booking::Booking| Line {
        plate: if one.plate.is_empty() { one.name.clone() } else { one.plate.clone() },
        href: path::booking(one.id),
        why: w.tv("today-expected", &[("kind", w.t(format!("job-kind-{}", one.job_kind)).into())]),
        how_long: w.time(who.zone.local(one.starts_at).time()),
        mark: if one.starts_at < now { Mark::Undecided } else { Mark::NotApplicable },
    };
    Ok(booked.into_iter().filter(|one| one.state == BookingState::Expected).map(line).collect())
}

/// Duties and instruments whose day is near or past.
async fn due(con: &mut db::Con, who: &Visitor, today: Date) -> Result<Vec<Line>, Error> {
    let (w, by) = (who.words(), today.saturating_add(AHEAD));
    let span = Span { is_open: true, from: today.saturating_sub(Duration::days(36_500)), to: by };
    let mut lines = Vec::new();
    for owed in db::duties::list(con, who.branch.id, span, today).await? {
        lines.push((
            owed.duty.due_on,
            named(&w, &owed.plate, &owed.make),
            path::duty(owed.duty.id),
            w.t(format!("duty-kind-{}", owed.duty.kind)),
        ));
    }
    for one in db::today::instruments_due(con, who.branch.id, by).await? {
        lines.push((one.due_on, one.code, path::instrument(one.id), w.t("today-instrument")));
    }
    lines.sort_by_key(|(day, ..)| *day);
    let line = |(day, plate, href, why): (Date, String, String, String)| {
        let days = (day - today).whole_days();
        let key = if days < 0 { "today-overdue" } else { "today-in-days" };
        let mark = if days < 0 { Mark::Stops } else { Mark::Missing };
        Line { plate, href, why, how_long: w.tn(key, days.abs()), mark }
    };
    Ok(lines.into_iter().map(line).collect())
}

/// What the shop itself should mend.
async fn notes(app: &App, con: &mut db::Con, who: &Visitor, today: Date) -> Result<Vec<(String, String)>, Error> {
    let (w, mut notes) = (who.words(), Vec::new());
    if app.config.public_url.is_none() {
        notes.push((w.t("today-no-public-url"), String::new()));
    }
    if who.branch.licence_expires_on.is_some_and(|day| day < today) {
        notes.push((w.t("today-licence-ended"), path::SHOP.to_owned()));
    }
    if MANAGER.lets(&who.actor) {
        if db::bays::list(con, who.branch.id, today).await?.is_empty() {
            notes.push((w.t("today-no-bay"), path::BAYS.to_owned()));
        }
        let held = db::today::count_held_messages(con, who.branch.id).await?;
        if held > 0 {
            notes.push((w.tn("today-held-messages", held), path::OUTBOX.to_owned()));
        }
    }
    Ok(notes)
}
