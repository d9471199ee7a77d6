//! Papers: one with how it stands, its PDF, its signed file, a second copy; beside it the register and the audit pack.

use askama::Template;
use axum::extract::{Path, State};
use axum::http::header;
use axum::response::IntoResponse;

pub mod audit_pack;
pub mod register;

use super::job::papers::{mark, pdf};
use crate::model::ids::PaperId;
use crate::model::paper::certificate::CertificateContent;
use crate::model::paper::issued::{PaperEvent, open_reviews};
use crate::model::vehicle::is_vin;
use crate::seal::standing::Standing;
use crate::shop::Refusal;
use crate::shop::issue::Found;
use crate::web::app::App;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Tone, Verdict};
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::routes::WORKERS;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

#[derive(Template)]
#[template(path = "papers/show.html")]
struct ShowPage {
    frame: Frame,
    form: Form,
    number: String,
    title: String,
    verdict: Verdict,
    facts: Vec<(String, String)>,
    events: Vec<String>,
    /// Findings that keep it under review, as links.
    reviews: Vec<String>,
    base: String,
    job_href: String,
    may_withdraw: bool,
    may_copy: bool,
}

/// How a paper stands, as a verdict block.
pub fn verdict(w: &crate::words::Words, standing: Standing, number: &str) -> Verdict {
    let tone = match standing {
        Standing::Valid => Tone::Met,
        Standing::Withdrawn => Tone::Stop,
        _ => Tone::Copper,
    };
    Verdict {
        tone,
        mark: mark(standing),
        title: w.t(format!("standing-{}", standing.as_str())),
        sentences: vec![w.tv(&format!("standing-{}-says", standing.as_str()), &[("number", number.into())])],
    }
}

/// The facts that say something.
fn keep_said(facts: Vec<(String, String)>) -> Vec<(String, String)> {
    facts.into_iter().filter(|(_, value)| !value.is_empty()).collect()
}

/// What an inspection came to; empty for other papers. A paper that stands may say fail.
pub fn result(w: &crate::words::Words, content: &CertificateContent) -> String {
    let said = content.inspection.as_ref().map(|one| w.t(format!("paper-outcome-{}", one.outcome.as_str())));
    said.unwrap_or_default()
}

fn show_page(who: &Visitor, found: &Found, form: Form) -> ShowPage {
    let w = who.frame().w;
    let Found { paper, content, events, standing } = found;
    let fact = |key: &str, value: String| (w.t(key), value);
    let event = |event: &PaperEvent| {
        let kind = w.t(format!("paper-event-{}", event.kind));
        let when = w.short_date_time(who.zone.local(event.at));
        let name = event.person_name.as_str();
        let reason = event.reason.as_str();
        w.tv(
            "register-event-line",
            &[("kind", kind.into()), ("name", name.into()), ("when", when.into()), ("reason", reason.into())],
        )
    };
    let is_over = matches!(standing, Standing::Withdrawn | Standing::Superseded);
    ShowPage {
        title: w.t(format!("certificate-kind-{}", paper.kind)),
        verdict: verdict(&w, *standing, &paper.number),
        facts: keep_said(vec![
            fact(
                "register-vehicle",
                format!("{} {}, {}", content.vehicle.make, content.vehicle.model, content.vehicle.plate),
            ),
            fact(
                if is_vin(&content.vehicle.vin) { "register-vin" } else { "register-chassis-number" },
                content.vehicle.vin.clone(),
            ),
            fact("register-result", result(&w, content)),
            fact("register-issued", w.short_date_time(who.zone.local(paper.issued_at))),
            fact("register-signed-by", content.signatory.name.clone()),
            fact("register-code", paper.code.clone()),
            fact("register-key", content.check.key_fingerprint.clone()),
        ]),
        events: events.iter().map(event).collect(),
        reviews: open_reviews(events).into_iter().flatten().map(|id| path::finding_paper(id, paper.id)).collect(),
        base: path::paper(paper.id),
        job_href: path::job_papers(paper.job_id),
        may_withdraw: !is_over && who.actor.signatory.is_some(),
        may_copy: WORKERS.lets(&who.actor),
        number: paper.number.clone(),
        frame: who.frame().at(Place::Papers),
        form,
    }
}

async fn found(app: &App, who: &Visitor, id: PaperId) -> Result<Found, Error> {
    app.shop.find_paper(who.branch.id, id).await?.ok_or(Error::NotFound)
}

/// `GET /papers/{id}`.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<PaperId>) -> Answer {
    let found = found(&app, &who, id).await?;
    page(show_page(&who, &found, Form::blank()))
}

/// `GET /papers/{id}/pdf`: as it was issued.
pub async fn show_pdf(State(app): State<App>, who: Visitor, Path(id): Path<PaperId>) -> Answer {
    let found = found(&app, &who, id).await?;
    let bytes = app.shop.issued_pdf(&found.paper).await?;
    Ok(pdf(&found.paper.number, bytes))
}

/// `GET /papers/{id}/signed`: the signed content as a JSON file.
pub async fn show_signed(State(app): State<App>, who: Visitor, Path(id): Path<PaperId>) -> Answer {
    let found = found(&app, &who, id).await?;
    let mut con = app.read().await?;
    let sealed = app.shop.envelope(&mut con, &found.paper).await?;
    let headers = [
        (header::CONTENT_TYPE, "application/json; charset=utf-8".to_owned()),
        (header::CONTENT_DISPOSITION, format!("attachment; filename=\"{}.json\"", found.paper.number)),
        (header::CACHE_CONTROL, "no-store".to_owned()),
    ];
    Ok((headers, sealed.to_json()).into_response())
}

/// `POST /papers/{id}/withdrawal`: taken back, with a reason and the signatory's secret.
pub async fn withdraw(State(app): State<App>, who: Visitor, Path(id): Path<PaperId>, typed: Typed) -> Answer {
    let found = found(&app, &who, id).await?;
    let mut form = Form::from(typed).scoped("withdrawal");
    let reason = form.text("reason", 400);
    let password = form.secret("password", 1, 4096);
    let (Some(()), Some(reason), Some(password)) = (form.sound(), reason, password) else {
        return retry(show_page(&who, &found, form));
    };
    let done = match app.shop.prove(who.person.id, &password, &who.from.address).await {
        Ok(()) => app.shop.withdraw_certificate(&who.actor, form.key(), id, reason).await,
        Err(refusal) => Err(refusal),
    };
    match done {
        Ok(()) => see_other(path::paper(id)),
        Err(Refusal::Field { field, why }) => {
            let field = if field == "current_password" { "password" } else { field };
            form.fail(field, Wrong::Rule(why, Vec::new()));
            retry(show_page(&who, &found, form))
        }
        Err(refusal) => Err(refusal.into()),
    }
}

/// `POST /papers/{id}/copies`: printed once more, because a copy was lost; who and why is kept beside the paper. The answer
/// is the paper's page, from which the PDF is opened: the bytes are those of the first.
pub async fn create_copy(State(app): State<App>, who: Visitor, Path(id): Path<PaperId>, typed: Typed) -> Answer {
    let found = found(&app, &who, id).await?;
    let mut form = Form::from(typed).scoped("second-copy");
    let reason = form.text("copy_reason", 400);
    let (Some(()), Some(reason)) = (form.sound(), reason) else {
        return retry(show_page(&who, &found, form));
    };
    app.shop.make_second_copy(&who.actor, form.key(), id, reason).await?;
    see_other(path::paper(id))
}

/// `GET /papers/standing`: the signed, dated list of how every paper stands, for readers who cannot ask.
pub async fn standing(State(app): State<App>, who: Visitor) -> Answer {
    let sealed = app.shop.standing_list(who.branch.id).await?;
    let headers = [
        (header::CONTENT_TYPE, "application/json; charset=utf-8"),
        (header::CONTENT_DISPOSITION, "attachment; filename=\"standing.json\""),
        (header::CACHE_CONTROL, "no-store"),
    ];
    Ok((headers, sealed.to_json()).into_response())
}
