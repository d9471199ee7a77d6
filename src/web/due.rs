//! Falling due: what must happen to which vehicle by when, who is still to be called, and one duty with all about it.

use askama::Template;
use axum::extract::{Path, Query, State};
use serde::Deserialize;
use time::{Date, Duration};

use super::app::App;
use super::error::beside;
use super::form::{Form, Typed, Wrong};
use super::kit::{self, Cell, Choice, Column, Empty, Mark, Row, Table};
use super::page::{Frame, Place, page, retry, see_other};
use super::visitor::{May, Visitor};
use super::{Answer, Error, path, routes};
use crate::db;
use crate::db::duties::{Owed, Span};
use crate::model::Coded;
use crate::model::duty::{CallOutcome, ClosedHow, DutyCall, DutyKind};
use crate::model::ids::{DutyId, JobId};
use crate::shop::duties::{Closing, Way, way};
use crate::words::Words;

/// Which duties are asked for: an address one can keep.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub struct Asked {
    /// `open` (as without), `calls`, or `ended`.
    show: String,
    /// Days ahead; as without: 90.
    within: String,
    kind: String,
}

/// One way to look at the list.
struct View {
    href: String,
    label: String,
    is_here: bool,
}

#[derive(Template)]
#[template(path = "due/list.html")]
struct ListPage {
    frame: Frame,
    form: Form,
    show: String,
    views: Vec<View>,
    kinds: Vec<Choice>,
    spans: Vec<Choice>,
    summary: String,
    table: Option<Table>,
    empty: Empty,
}

/// Days ahead that can be chosen; the last stands for "all".
const SPANS: [i64; 4] = [30, 90, 365, 36_500];
/// A duty this many days over is past its last reminder.
const CALL_AFTER_DAYS: i64 = 14;
/// Whoever cannot be written to is called from this many days before.
const CALL_BEFORE_DAYS: i64 = 30;

/// Whether a person must be called: every reminder is out, or none can go out and the day is near.
fn is_for_call(owed: &Owed, today: Date) -> bool {
    let days_left = (owed.duty.due_on - today).whole_days();
    days_left < -CALL_AFTER_DAYS || (days_left <= CALL_BEFORE_DAYS && way(owed, today).is_none())
}

/// `GET /due`.
pub async fn list(State(app): State<App>, who: Visitor, Query(asked): Query<Asked>) -> Answer {
    let today = app.shop.clock.today(&who.zone);
    let within = asked.within.parse().ok().filter(|days| SPANS.contains(days)).unwrap_or(90);
    let is_ended = asked.show == "ended";
    let to = today.checked_add(Duration::days(within)).unwrap_or(Date::MAX);
    let span = Span { is_open: !is_ended, from: Date::MIN, to };
    // The calendar of the store begins with the year 0: its text sorts as time from there on.
    let span = Span { from: Date::from_ordinal_date(1900, 1).unwrap_or(span.from), ..span };
    let mut con = app.read().await?;
    let owed = db::duties::list(&mut con, who.branch.id, span, today).await?;
    let calls = db::duties::calls(&mut con, who.branch.id).await?;
    let kind = DutyKind::from_code(&asked.kind);
    let is_call_list = asked.show == "calls";
    let shown: Vec<&Owed> = owed
        .iter()
        .filter(|one| kind.is_none_or(|kind| one.duty.kind == kind))
        .filter(|one| !is_call_list || is_for_call(one, today))
        .collect();
    let overdue = shown.iter().filter(|one| one.duty.due_on < today).count();
    let w = who.words();
    let rows: Vec<Row> = shown.iter().map(|one| row(&who, one, &calls, today)).collect();
    let columns = ["due-vehicle", "due-what", "due-by", "due-keeper", "due-way"];
    let columns = columns.iter().map(|key| Column::text(w.t(key))).collect();
    let view = |show: &str| View {
        href: format!("{}?show={show}", path::DUE),
        label: w.t(format!("due-show-{show}")),
        is_here: if show == "open" { !is_ended && !is_call_list } else { asked.show == show },
    };
    let form = Form::blank().scoped("due").with("kind", &asked.kind).with("within", within.to_string());
    let counted = [("n", shown.len().into()), ("overdue", overdue.into())];
    page(ListPage {
        form,
        show: if is_ended || is_call_list { asked.show.clone() } else { "open".to_owned() },
        views: ["open", "calls", "ended"].map(view).into(),
        kinds: kit::coded::<DutyKind>(&w),
        spans: SPANS.iter().map(|days| Choice::new(days.to_string(), w.t(format!("due-within-{days}")))).collect(),
        summary: w.tv("due-summary", &counted),
        table: (!rows.is_empty()).then(|| Table { w, caption: w.t("due-title"), columns, rows }),
        empty: Empty { sentence: w.t("due-empty"), act: None },
        frame: who.frame().at(Place::Due),
    })
}

fn row(who: &Visitor, one: &Owed, calls: &[DutyCall], today: Date) -> Row {
    let w = who.words();
    let title = vehicle_of(one);
    let plate = if one.plate.is_empty() { title.clone() } else { one.plate.clone() };
    let latest = calls.iter().find(|call| call.duty_id == one.duty.id);
    let told = match (latest, way(one, today)) {
        (Some(call), _) => Cell::new(w.t(format!("{}-{}", CallOutcome::LIST, call.outcome)))
            .with_second(w.short_date(who.zone.day_of(call.at))),
        (None, Some(Way::Mail)) => Cell::new(w.t("due-way-mail")),
        (None, Some(Way::Letter)) => Cell::new(w.t("due-way-letter")),
        (None, None) => Cell::new(w.t(no_way_key(one))),
    };
    let phone = if who.actor.sees_contacts { one.phone.clone() } else { String::new() };
    let keeper = if one.keeper_id.is_none() { w.t("due-keeper-unknown") } else { one.keeper_name.clone() };
    vec![
        Cell::link(plate, path::duty(one.duty.id)).with_second(title),
        Cell::new(w.t(format!("{}-{}", DutyKind::LIST, one.duty.kind))),
        by(&w, one, today),
        Cell::new(keeper).with_second(phone),
        told,
    ]
}

fn vehicle_of(one: &Owed) -> String {
    format!("{} {}", one.make, one.model).trim().to_owned()
}

/// Why nothing can be written to the keeper.
fn no_way_key(one: &Owed) -> &'static str {
    use crate::model::customer::ReminderBasis;
    if one.keeper_id.is_none() {
        "due-way-nobody"
    } else if one.reminder_basis == ReminderBasis::None {
        "due-way-no-ground"
    } else {
        "due-way-no-address"
    }
}

fn by(w: &Words, one: &Owed, today: Date) -> Cell {
    let days = (one.duty.due_on - today).whole_days();
    let when = match days {
        0 => w.t("due-today"),
        1.. => w.tn("due-in", days),
        _ => w.tn("due-over", -days),
    };
    let second = one.duty.due_km.map_or(when.clone(), |km| {
        let by_km = w.tv("due-or-km", &[("km", km.into())]);
        format!("{when} · {by_km}")
    });
    let cell = Cell::new(w.medium_date(one.duty.due_on)).with_second(second);
    if one.duty.closed_at.is_some() { cell.marked(Mark::Met) } else { cell }
}

#[derive(Template)]
#[template(path = "due/show.html")]
struct DutyPage {
    frame: Frame,
    owed: Owed,
    what: String,
    decided: String,
    vehicle: String,
    by: String,
    by_second: String,
    keeper: String,
    /// Phone, mail, address: what may be seen of them.
    contacts: Vec<String>,
    way: String,
    told: Vec<String>,
    calls: Vec<(String, String)>,
    closed: Option<String>,
    may_change: bool,
    closing: Form,
    calling: Form,
    hows: Vec<Choice>,
    jobs: Vec<Choice>,
    outcomes: Vec<Choice>,
    comes_again: bool,
}

const DESK: May = routes::DESK;

impl DutyPage {
    async fn of(app: &App, who: &Visitor, id: DutyId, closing: Form, calling: Form) -> Result<Self, Error> {
        let today = app.shop.clock.today(&who.zone);
        let mut con = app.read().await?;
        let owed = db::duties::find(&mut con, who.branch.id, id, today).await?.ok_or(Error::NotFound)?;
        let calls = db::duties::calls(&mut con, who.branch.id).await?;
        let told = db::outbox::told_of(&mut con, id).await?;
        let jobs = db::jobs::list_of_vehicle(&mut con, who.branch.id, owed.duty.vehicle_id).await?;
        let w = who.words();
        let by = by(&w, &owed, today);
        let call = |call: &DutyCall| {
            let said = w.t(format!("{}-{}", CallOutcome::LIST, call.outcome));
            let said = if call.note.is_empty() { said } else { format!("{said}: {}", call.note) };
            (format!("{}, {}", w.short_date_time(who.zone.local(call.at)), call.person_name), said)
        };
        let contacts = [&owed.phone, &owed.mail, &owed.address];
        let contacts = contacts.into_iter().filter(|text| who.actor.sees_contacts && !text.is_empty()).cloned();
        let way_key = match way(&owed, today) {
            Some(Way::Mail) => "due-way-mail",
            Some(Way::Letter) => "due-way-letter",
            None => no_way_key(&owed),
        };
        let hows = [ClosedHow::Job, ClosedHow::Elsewhere, ClosedHow::Scrapped, ClosedHow::Exported, ClosedHow::Stolen];
        let hows = hows.into_iter().chain([ClosedHow::GasRemoved]).map(ClosedHow::code);
        Ok(Self {
            what: w.t(format!("{}-{}", DutyKind::LIST, owed.duty.kind)),
            decided: w.t(format!("due-reckoned-{}", owed.duty.decided_by)),
            vehicle: vehicle_of(&owed),
            by: w.date(owed.duty.due_on),
            by_second: by.second,
            keeper: if owed.keeper_id.is_none() { w.t("due-keeper-unknown") } else { owed.keeper_name.clone() },
            contacts: contacts.collect(),
            way: w.t(way_key),
            told: told.iter().map(|told| told_line(&w, who, told)).collect(),
            calls: calls.iter().filter(|call| call.duty_id == id).map(call).collect(),
            closed: owed.duty.closed_at.zip(owed.duty.closed_how).map(|(at, how)| {
                let how = w.t(format!("{}-{how}", ClosedHow::LIST));
                let day = w.date(who.zone.day_of(at));
                format!("{how}, {day}. {}", owed.duty.closed_note).trim().to_owned()
            }),
            may_change: DESK.lets(&who.actor) && owed.duty.closed_at.is_none(),
            closing,
            calling,
            hows: kit::choices(&w, ClosedHow::LIST, hows),
            jobs: jobs.iter().map(|job| Choice::new(job.id.to_string(), &job.number)).collect(),
            outcomes: kit::coded::<CallOutcome>(&w),
            comes_again: owed.duty.kind.comes_again(),
            frame: who.frame().at(Place::Due),
            owed,
        })
    }
}

fn told_line(w: &Words, who: &Visitor, told: &db::outbox::ToldOf) -> String {
    let lead = match told.lead_days {
        days if days < 0 => w.tn("due-told-after", -days),
        days => w.tn("due-told-before", days),
    };
    let state = w.t(format!("message-state-{}", told.state));
    format!("{lead}: {state}, {}", w.short_date(who.zone.day_of(told.sent_at.unwrap_or(told.made_at))))
}

fn blank_closing(who: &Visitor, app: &App) -> Form {
    let today = app.shop.clock.today(&who.zone);
    Form::blank().scoped("closing").with("met_on", today.to_string()).with("starts_next", "yes")
}

/// `GET /due/{id}`.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<DutyId>) -> Answer {
    page(DutyPage::of(&app, &who, id, blank_closing(&who, &app), Form::blank().scoped("calling")).await?)
}

/// `POST /due/{id}/closing`.
pub async fn close(State(app): State<App>, who: Visitor, Path(id): Path<DutyId>, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("closing");
    let today = app.shop.clock.today(&who.zone);
    if let Some(closing) = read_closing(&mut form, today) {
        match app.shop.close_duty(&who.actor, form.key(), id, closing).await {
            Ok(_) => return see_other(path::duty(id)),
            Err(refusal) => beside(&mut form, refusal)?,
        }
    }
    retry(DutyPage::of(&app, &who, id, form, Form::blank().scoped("calling")).await?)
}

fn read_closing(form: &mut Form, today: Date) -> Option<Closing> {
    let how: Option<ClosedHow> = form.choice("how");
    let job: Option<JobId> = form.opt_choice("job");
    let met_on = form.past_date("met_on", today);
    let note = form.opt_long_text("note", 1000);
    if how == Some(ClosedHow::Job) && job.is_none() {
        form.fail("job", Wrong::Empty);
    }
    if how == Some(ClosedHow::Elsewhere) && note.is_none() {
        form.fail("note", Wrong::Empty);
    }
    if how == Some(ClosedHow::Replaced) {
        form.fail("how", Wrong::NotAChoice);
    }
    let starts_next = form.tick("starts_next");
    form.sound()?;
    let how = how?;
    let job = job.filter(|_| how == ClosedHow::Job);
    Some(Closing { how, job, met_on: met_on?, note: note.unwrap_or_default(), starts_next })
}

/// `POST /due/{id}/calls`.
pub async fn call(State(app): State<App>, who: Visitor, Path(id): Path<DutyId>, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("calling");
    let outcome: Option<CallOutcome> = form.choice("outcome");
    let note = form.opt_long_text("said", 1000).unwrap_or_default();
    if let (Some(outcome), Some(())) = (outcome, form.sound()) {
        app.shop.note_call(&who.actor, form.key(), id, outcome, note).await?;
        return see_other(path::duty(id));
    }
    retry(DutyPage::of(&app, &who, id, blank_closing(&who, &app), form).await?)
}
