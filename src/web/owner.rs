//! The customer's own page behind a link: the vehicle's papers, what falls due, a wish for a time, reminders off.
//!
//! Opening an address changes nothing, because programs that guard mailboxes open every link; what changes something is a
//! button. A link that is wrong, late or ended looks like an address that does not exist.

use std::convert::Infallible;

use askama::Template;
use axum::extract::{FromRequestParts, Path, State};
use axum::http::request::Parts;
use axum::http::{Extensions, HeaderMap, HeaderValue, header};
use axum::response::Response;

use super::app::{App, words, words_for};
use super::form::{Form, Typed};
use super::page::{Frame, page, retry, see_other};
use super::{Answer, Error, client, path};
use crate::clock::Zone;
use crate::db;
use crate::db::links::{IssuedPaper, Link};
use crate::model::Coded;
use crate::model::branch::Branch;
use crate::model::duty::{Duty, DutyKind};
use crate::model::ids::PaperId;
use crate::shop::Token;
use crate::shop::owner::SlotWish;
use crate::web::kit;

/// What stands on the page.
#[derive(Template)]
#[template(path = "owner/show.html")]
struct OwnPage {
    frame: Frame,
    form: Form,
    here: String,
    branch: Branch,
    name: String,
    plate: String,
    vehicle: String,
    duties: Vec<(String, String)>,
    papers: Vec<(String, String, String)>,
    is_reminded: bool,
}

/// The same words for every link that opens nothing.
#[derive(Template)]
#[template(path = "owner/unsubscribe.html")]
struct UnsubscribePage {
    frame: Frame,
    here: String,
    is_done: bool,
}

/// Not kept, not indexed, and its address not passed on.
fn quiet(answer: Answer) -> Answer {
    answer.map(|mut response: Response| {
        let headers = response.headers_mut();
        headers.insert(header::REFERRER_POLICY, HeaderValue::from_static("no-referrer"));
        headers.insert("x-robots-tag", HeaderValue::from_static("noindex, nofollow"));
        headers.insert(header::CACHE_CONTROL, HeaderValue::from_static("no-store"));
        response
    })
}

/// Who came, taken from a request before its form is read.
pub struct Came(HeaderMap, Extensions);

impl<S: Send + Sync> FromRequestParts<S> for Came {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Self::Rejection> {
        Ok(Self(parts.headers.clone(), parts.extensions.clone()))
    }
}

async fn link(app: &App, token: &str, came: &Came) -> Result<Link, Error> {
    let address = client::address(&app.config, &came.0, &came.1).map(|ip| ip.to_string()).unwrap_or_default();
    Ok(app.shop.use_link(&Token::presented(token), &address).await?)
}

impl OwnPage {
    async fn of(app: &App, token: &str, link: &Link, form: Form) -> Result<Self, Error> {
        let mut con = app.read().await?;
        let branch = db::branches::find(&mut con, link.branch_id).await?.ok_or(Error::NotFound)?;
        let zone = Zone::named(&branch.time_zone).unwrap_or_else(|_| Zone::utc());
        let own = db::links::own(&mut con, link).await?.ok_or(Error::NotFound)?;
        let frame = app.frame_of(Some(&branch), words_for(&own.language, &branch));
        let w = frame.w;
        let duties = db::duties::list_of_vehicle(&mut con, link.branch_id, link.vehicle_id).await?;
        let duty = |duty: &Duty| {
            let what = w.t(format!("{}-{}", DutyKind::LIST, duty.kind));
            let day = w.date(duty.due_on);
            let by = match duty.due_km {
                Some(km) => w.tv("mail-by-or-km", &[("day", day.into()), ("km", km.into())]),
                None => w.tv("mail-by", &[("day", day.into())]),
            };
            (what, by)
        };
        let paper = |paper: &IssuedPaper| {
            let title = w.t(format!("certificate-kind-{}", paper.kind));
            let day = w.date(zone.day_of(paper.issued_at));
            let href = if paper.is_own {
                format!("{}/papers/{}", path::own(token), paper.id)
            } else {
                path::verify(&paper.code)
            };
            (title, format!("{}, {day}", paper.number), href)
        };
        Ok(Self {
            here: path::own(token),
            duties: duties.iter().filter(|duty| duty.closed_at.is_none()).map(duty).collect(),
            papers: db::links::papers(&mut con, link).await?.iter().map(paper).collect(),
            is_reminded: own.reminder_basis != crate::model::customer::ReminderBasis::None,
            plate: own.plate,
            vehicle: format!("{} {}", own.make, own.model).trim().to_owned(),
            name: own.name,
            branch,
            frame,
            form,
        })
    }
}

/// `GET /own/{token}`.
pub async fn show(State(app): State<App>, Path(token): Path<String>, came: Came) -> Answer {
    let link = link(&app, &token, &came).await?;
    quiet(page(OwnPage::of(&app, &token, &link, Form::blank().scoped("own")).await?))
}

/// `GET /own/{token}/papers/{id}`: a paper as it was issued, to whoever kept the vehicle when it was.
pub async fn paper(State(app): State<App>, Path((token, id)): Path<(String, PaperId)>, came: Came) -> Answer {
    let link = link(&app, &token, &came).await?;
    let mut con = app.read().await?;
    let own = db::links::papers(&mut con, &link).await?;
    if !own.iter().any(|paper| paper.id == id && paper.is_own) {
        return Err(Error::NotFound);
    }
    let issued = db::papers::find(&mut con, link.branch_id, id).await?.ok_or(Error::NotFound)?;
    let bytes = app.shop.issued_pdf(&issued).await?;
    quiet(Ok(super::job::papers::pdf(&issued.number, bytes)))
}

/// `POST /own/{token}/reminders-off`.
pub async fn reminders_off(State(app): State<App>, Path(token): Path<String>, came: Came) -> Answer {
    link(&app, &token, &came).await?;
    app.shop.end_reminders(&Token::presented(&token)).await?;
    quiet(see_other(path::own(&token)))
}

/// `POST /own/{token}/slot`: a wish for a time goes to the shop's mailbox.
pub async fn slot(State(app): State<App>, Path(token): Path<String>, came: Came, typed: Typed) -> Answer {
    let link = link(&app, &token, &came).await?;
    let mut form = Form::from(typed).scoped("own");
    let wish = form.long_text("wish", 600);
    let phone = form.opt_text("phone", 60).unwrap_or_default();
    let mut own = OwnPage::of(&app, &token, &link, form).await?;
    let (Some(wish), Some(())) = (wish, own.form.sound()) else { return quiet(retry(own)) };
    // The shop reads its own language.
    let w = words(&own.branch.language);
    let plate = if own.plate.is_empty() { own.vehicle.as_str() } else { own.plate.as_str() };
    let text = [
        ("name", own.name.as_str().into()),
        ("vehicle", format!("{} {}", own.plate, own.vehicle).trim().to_owned().into()),
        ("wish", wish.into()),
        ("phone", phone.into()),
    ];
    let wish = SlotWish {
        subject: w.tv("mail-slot-asked-subject", &[("plate", plate.into())]),
        text: w.tv("mail-slot-asked-text", &text),
    };
    app.shop.ask_for_slot(&link, own.form.key(), wish).await?;
    own.frame.notices.push(own.frame.t("own-slot-asked"));
    own.form = Form::blank().scoped("own");
    quiet(page(own))
}

/// `GET /unsubscribe/{token}`: a page with a button; opening it changes nothing.
pub async fn unsubscribe_page(State(app): State<App>, Path(token): Path<String>) -> Answer {
    let frame = frame_of_link(&app, &token).await?.ok_or(Error::NotFound)?;
    quiet(page(UnsubscribePage { frame, here: format!("{}{token}", path::UNSUBSCRIBE), is_done: false }))
}

/// What stands around a page of a link, in its customer's language; `None` when there was never such a link.
async fn frame_of_link(app: &App, token: &str) -> Result<Option<Frame>, Error> {
    let mut con = app.read().await?;
    let Some(link) = db::links::find(&mut con, &Token::presented(token).hash()).await? else { return Ok(None) };
    let branch = db::branches::find(&mut con, link.branch_id).await?.ok_or(Error::NotFound)?;
    let tag = db::links::own(&mut con, &link).await?.map(|own| own.language).unwrap_or_default();
    Ok(Some(app.frame_of(Some(&branch), words_for(&tag, &branch))))
}

/// `POST /unsubscribe/{token}`: reminders end; from the button, and from a mail program by the one click of RFC 8058.
pub async fn unsubscribe(State(app): State<App>, Path(token): Path<String>) -> Answer {
    app.shop.end_reminders(&Token::presented(&token)).await?;
    let frame = frame_of_link(&app, &token).await?.unwrap_or_else(|| app.frame());
    quiet(page(UnsubscribePage { frame, here: format!("{}{token}", path::UNSUBSCRIBE), is_done: true }))
}
