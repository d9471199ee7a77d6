//! A booking: held with a name and a phone, changed while it is expected, answered when its time has come.

use askama::Template;
use axum::extract::{Path, RawQuery, State};
use axum::http::StatusCode;
use time::{Duration, OffsetDateTime};

use crate::db;
use crate::model::booking::{Booking, BookingState, NewBooking};
use crate::model::ids::BookingId;
use crate::model::job::JobKind;
use crate::shop::Refusal;
use crate::web::app::App;
use crate::web::customers::contact;
use crate::web::error::{beside, meanwhile};
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Choice};
use crate::web::page::{Frame, Place, page, page_with, retry, see_other};
use crate::web::routes::DESK;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

/// A block longer than this is a typing error, not a job.
const LONGEST: Duration = Duration::days(60);

#[derive(Template)]
#[template(path = "bay_plan/booking.html")]
struct BookingPage {
    frame: Frame,
    title: String,
    action: String,
    back: String,
    form: Form,
    bays: Vec<Choice>,
    kinds: Vec<Choice>,
    known: Option<Booking>,
    state: String,
    phone: String,
    job: Option<String>,
    may_write: bool,
    /// A clash is there and the visitor may book over it.
    may_double: bool,
}

impl BookingPage {
    async fn of(app: &App, who: &Visitor, form: Form, known: Option<Booking>) -> Result<Self, Error> {
        let (frame, mut con) = (who.frame().at(Place::BayPlan), app.read().await?);
        let today = app.shop.clock.today(&who.zone);
        let mut bays = db::bays::list(&mut con, who.branch.id, today).await?;
        // A bay out of use since is still where the booking stood.
        if let Some(one) = &known
            && !bays.iter().any(|bay| bay.id == one.bay_id)
        {
            bays.extend(db::bays::find(&mut con, who.branch.id, one.bay_id).await?);
        }
        let is_expected = known.as_ref().is_none_or(|one| one.state == BookingState::Expected);
        let is_clash = form.wrong("bay_id").is_some() || form.wrong("doubled_reason").is_some();
        let day = known.as_ref().map_or(today, |one| who.zone.day_of(one.starts_at));
        Ok(Self {
            title: known.as_ref().map_or_else(|| frame.t("booking-new"), |one| one.name.clone()),
            action: known.as_ref().map_or_else(|| format!("{}/bookings", path::BAY_PLAN), |one| path::booking(one.id)),
            back: format!("{}?day={day}", path::BAY_PLAN),
            bays: bays.into_iter().map(|bay| Choice::new(bay.id.to_string(), bay.name)).collect(),
            kinds: kit::coded::<JobKind>(&frame.w),
            state: known.as_ref().map(|one| frame.t(format!("booking-state-{}", one.state))).unwrap_or_default(),
            phone: known.as_ref().map(|one| contact(who, &one.phone)).unwrap_or_default(),
            job: known.as_ref().and_then(|one| one.job_id).map(path::job),
            may_write: DESK.lets(&who.actor) && is_expected,
            may_double: who.actor.is_manager() && (is_clash || !form.value("doubled_reason").is_empty()),
            known,
            form,
            frame,
        })
    }
}

/// `GET /bay-plan/bookings/new?bay_id=…&day=…`.
pub async fn new(State(app): State<App>, who: Visitor, RawQuery(query): RawQuery) -> Answer {
    let mut asked = Form::from(Typed::from_query(query.as_deref().unwrap_or_default()));
    let today = app.shop.clock.today(&who.zone);
    let day = asked.opt_date("day").unwrap_or(today);
    let mut form = Form::blank().scoped("booking").with("bay_id", asked.value("bay_id")).with("job_kind", "conversion");
    form.set("starts_at", format!("{day}T09:00"));
    form.set("ends_at", format!("{day}T17:00"));
    page(BookingPage::of(&app, &who, form, None).await?)
}

/// `POST /bay-plan/bookings`.
pub async fn create(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("booking");
    let Some(new) = read(&mut form, &who) else {
        return retry(BookingPage::of(&app, &who, form, None).await?);
    };
    let day = who.zone.day_of(new.starts_at);
    match app.shop.make_booking(&who.actor, form.key(), new.clone()).await {
        Ok(_) => see_other(format!("{}?day={day}", path::BAY_PLAN)),
        Err(refusal) => {
            clash(&app, &who, &mut form, &new, None, &refusal).await?;
            beside(&mut form, refusal)?;
            retry(BookingPage::of(&app, &who, form, None).await?)
        }
    }
}

/// Says beside the bay who holds it then.
async fn clash(
    app: &App,
    who: &Visitor,
    form: &mut Form,
    new: &NewBooking,
    except: Option<BookingId>,
    refusal: &Refusal,
) -> Result<(), Error> {
    if !matches!(refusal, Refusal::Field { why: "wrong-bay-held", .. }) {
        return Ok(());
    }
    let mut con = app.read().await?;
    let held = db::bookings::list_in_the_way(&mut con, who.branch.id, new, except).await?;
    if let Some(one) = held.first() {
        let w = who.words();
        let at = |instant| w.short_date_time(who.zone.local(instant));
        let values =
            vec![("name", one.name.clone().into()), ("from", at(one.starts_at).into()), ("to", at(one.ends_at).into())];
        form.fail("bay_id", Wrong::Rule("wrong-bay-held-by", values));
    }
    Ok(())
}

async fn find(app: &App, who: &Visitor, id: BookingId) -> Result<Booking, Error> {
    db::bookings::find(&mut *app.read().await?, who.branch.id, id).await?.ok_or(Error::NotFound)
}

/// `GET /bay-plan/bookings/{id}`.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<BookingId>) -> Answer {
    let known = find(&app, &who, id).await?;
    let mut form = Form::blank().scoped("booking").with("opened_version", known.version.to_string());
    for (name, text) in texts(&who, &known) {
        form.set(name, text);
    }
    page(BookingPage::of(&app, &who, form, Some(known)).await?)
}

/// `POST /bay-plan/bookings/{id}`.
pub async fn update(State(app): State<App>, who: Visitor, Path(id): Path<BookingId>, typed: Typed) -> Answer {
    let known = find(&app, &who, id).await?;
    let mut form = Form::from(typed).scoped("booking");
    let Some(new) = read(&mut form, &who) else {
        return retry(BookingPage::of(&app, &who, form, Some(known)).await?);
    };
    let (day, opened) = (who.zone.day_of(new.starts_at), (id, form.opened_version().unwrap_or(0)));
    match app.shop.change_booking(&who.actor, form.key(), opened, new.clone()).await {
        Ok(()) => see_other(format!("{}?day={day}", path::BAY_PLAN)),
        Err(Refusal::Stale) => {
            let now = find(&app, &who, id).await?;
            meanwhile(&mut form, now.version, &texts(&who, &now));
            page_with(StatusCode::CONFLICT, BookingPage::of(&app, &who, form, Some(now)).await?)
        }
        Err(refusal) => {
            clash(&app, &who, &mut form, &new, Some(id), &refusal).await?;
            beside(&mut form, refusal)?;
            retry(BookingPage::of(&app, &who, form, Some(known)).await?)
        }
    }
}

/// `POST /bay-plan/bookings/{id}/answer`: did not come, called off, or expected again.
pub async fn answer(State(app): State<App>, who: Visitor, Path(id): Path<BookingId>, typed: Typed) -> Answer {
    let known = find(&app, &who, id).await?;
    let mut form = Form::from(typed).scoped("booking");
    let (to, version) = (form.choice("state"), form.opened_version().unwrap_or(0));
    let Some(to) = to else {
        return retry(BookingPage::of(&app, &who, form, Some(known)).await?);
    };
    match app.shop.answer_booking(&who.actor, form.key(), (id, version), to).await {
        Ok(()) => see_other(path::booking(id)),
        Err(refusal) => {
            for (name, text) in texts(&who, &known) {
                form.set(name, text);
            }
            beside(&mut form, refusal)?;
            retry(BookingPage::of(&app, &who, form, Some(known)).await?)
        }
    }
}

fn texts(who: &Visitor, one: &Booking) -> Vec<(&'static str, String)> {
    let local = |at: OffsetDateTime| {
        let at = who.zone.local(at);
        format!("{}T{:02}:{:02}", at.date(), at.hour(), at.minute())
    };
    vec![
        ("bay_id", one.bay_id.to_string()),
        ("starts_at", local(one.starts_at)),
        ("ends_at", local(one.ends_at)),
        ("name", one.name.clone()),
        ("phone", contact(who, &one.phone)),
        ("plate", one.plate.clone()),
        ("job_kind", one.job_kind.to_string()),
        ("note", one.note.clone()),
        ("doubled_reason", one.doubled_reason.clone()),
    ]
}

fn read(form: &mut Form, who: &Visitor) -> Option<NewBooking> {
    let (name, phone) = (form.text("name", 200), form.text("phone", 40));
    let plate = form.opt_text("plate", 20).unwrap_or_default().to_uppercase();
    let (bay_id, job_kind) = (form.choice("bay_id"), form.choice("job_kind"));
    let (starts_at, ends_at) = (form.moment("starts_at", &who.zone), form.moment("ends_at", &who.zone));
    if let (Some(from), Some(to)) = (starts_at, ends_at) {
        if to <= from {
            form.fail("ends_at", Wrong::EndBeforeStart);
        } else if to - from > LONGEST {
            form.fail("ends_at", Wrong::Rule("wrong-booking-too-long", vec![("days", LONGEST.whole_days().into())]));
        }
    }
    let note = form.opt_long_text("note", 1_000).unwrap_or_default();
    let doubled_reason = form.opt_text("doubled_reason", 200).unwrap_or_default();
    form.sound()?;
    Some(NewBooking {
        bay_id: bay_id?,
        starts_at: starts_at?,
        ends_at: ends_at?,
        name: name?,
        phone: phone?,
        plate,
        job_kind: job_kind?,
        note,
        doubled_reason,
    })
}
