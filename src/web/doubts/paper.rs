//! One paper that a finding put in doubt: what it rests on, and the signatory's decision.

use askama::Template;
use axum::extract::{Path, State};
use time::Duration;

use crate::db;
use crate::model::Coded;
use crate::model::doubt::PaperDecision;
use crate::model::ids::{FindingId, PaperId};
use crate::shop::Refusal;
use crate::shop::doubts::{NewDecision, NewReTest, PaperLine, Weighed, said, weigh};
use crate::web::app::App;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::job::papers::mark;
use crate::web::kit::{self, Choice, Mark};
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};

use super::sort_mark;

/// A re-test takes this long unless the bay plan says otherwise.
const RE_TEST: Duration = Duration::hours(2);

#[derive(Template)]
#[template(path = "findings/paper.html")]
struct PaperPage {
    frame: Frame,
    form: Form,
    number: String,
    vehicle: String,
    found: String,
    back: String,
    action: String,
    paper_href: String,
    standing_mark: Mark,
    standing: String,
    /// Mark, what, why.
    results: Vec<(Mark, String, String)>,
    /// What was decided before: what and why, who and when, the booking.
    decisions: Vec<(String, String, Option<String>)>,
    choices: Vec<Choice>,
    bays: Vec<Choice>,
    may_decide: bool,
}

async fn paper_page(
    app: &App,
    who: &Visitor,
    (id, paper): (FindingId, PaperId),
    form: Form,
) -> Result<PaperPage, Error> {
    let now = app.shop.clock.now();
    let mut con = app.read().await?;
    let weighed = weigh(&mut con, who.branch.id, id, now).await?;
    let line = weighed.papers.iter().find(|line| line.id == paper).ok_or(Error::NotFound)?;
    let frame = who.frame().at(Place::Papers);
    let w = frame.w;
    let today = weighed.zone.day_of(now);
    let bays = db::bays::list(&mut con, who.branch.id, today).await?;
    Ok(PaperPage {
        number: line.number.clone(),
        vehicle: format!("{} {}", line.plate, line.vehicle).trim().to_owned(),
        found: weighed.finding.text.clone(),
        back: path::finding(id),
        action: path::finding_paper(id, paper),
        paper_href: path::paper(paper),
        standing_mark: mark(line.standing),
        standing: w.t(format!("standing-{}", line.standing.as_str())),
        results: results(&frame, &weighed, line),
        decisions: decisions(&frame, who, line),
        choices: kit::coded::<PaperDecision>(&w)
            .into_iter()
            .filter(|one| line.decisions.is_empty() || one.value != PaperDecision::ReTest.code())
            .collect(),
        bays: bays.into_iter().map(|bay| Choice::new(bay.id.to_string(), bay.name)).collect(),
        may_decide: line.may_be_decided() && who.actor.may_sign_on(today).is_some(),
        form: form.scoped("finding"),
        frame,
    })
}

fn results(frame: &Frame, weighed: &Weighed, line: &PaperLine) -> Vec<(Mark, String, String)> {
    let w = frame.w;
    let of_paper = weighed.results.iter().filter(|one| one.papers.contains(&line.id));
    let said = |one: &crate::shop::doubts::ResultLine| {
        let again = one.again.beside.iter().map(|beside| {
            let (old, _) = said::figure(&w, beside, beside.old.as_ref());
            let (new, under) = said::figure(&w, beside, beside.new.as_ref());
            let values = [
                ("name", said::name(&w, beside).into()),
                ("old", old.into()),
                ("new", new.into()),
                ("under", under.into()),
            ];
            w.tv("doubt-beside", &values)
        });
        let why = std::iter::once(format!("{}. {}.", said::sort(&w, one), said::why(&w, one))).chain(again);
        (sort_mark(one.again.sort), said::what(&w, &one.what), why.collect::<Vec<_>>().join(" "))
    };
    of_paper.map(said).collect()
}

fn decisions(frame: &Frame, who: &Visitor, line: &PaperLine) -> Vec<(String, String, Option<String>)> {
    let w = frame.w;
    let said = |one: &crate::db::doubts::Decided| {
        let at = w.date_time(who.zone.local(one.at));
        let values = [("name", one.person_name.as_str().into()), ("at", at.into())];
        (
            format!("{}: {}", w.t(format!("paper-decision-{}", one.decision)), one.reason),
            w.tv("doubt-decided-by", &values),
            one.booking_id.map(path::booking),
        )
    };
    line.decisions.iter().map(said).collect()
}

/// `GET /findings/{id}/papers/{paper}`.
pub async fn show(State(app): State<App>, who: Visitor, Path(at): Path<(FindingId, PaperId)>) -> Answer {
    page(paper_page(&app, &who, at, Form::blank()).await?)
}

/// `POST /findings/{id}/papers/{paper}`: decided, and signed with the secret.
pub async fn decide(
    State(app): State<App>,
    who: Visitor,
    Path(at): Path<(FindingId, PaperId)>,
    typed: Typed,
) -> Answer {
    let mut form = Form::from(typed).scoped("finding");
    let decision: Option<PaperDecision> = form.choice("paper_decision");
    let reason = form.long_text("reason", 1_000);
    let mut re_test = None;
    if decision == Some(PaperDecision::ReTest) {
        let (bay_id, starts_at) = (form.choice("bay_id"), form.moment("starts_at", &who.zone));
        re_test = bay_id.zip(starts_at).map(|(bay_id, starts_at)| NewReTest {
            bay_id,
            starts_at,
            ends_at: starts_at + RE_TEST,
        });
    }
    let password = form.secret("password", 1, 4096);
    let (Some(()), Some(decision), Some(reason), Some(password)) = (form.sound(), decision, reason, password) else {
        return retry(paper_page(&app, &who, at, form).await?);
    };
    let new = NewDecision { decision, reason, re_test };
    let done = match app.shop.prove(who.person.id, &password, &who.from.address).await {
        Ok(()) => app.shop.decide_paper(&who.actor, form.key(), at.0, at.1, new).await,
        Err(refusal) => Err(refusal),
    };
    match done {
        Ok(()) => see_other(path::finding(at.0)),
        Err(Refusal::Field { field, why }) => {
            let field = if field == "current_password" { "password" } else { field };
            form.fail(field, Wrong::Rule(why, Vec::new()));
            retry(paper_page(&app, &who, at, form).await?)
        }
        Err(refusal) => Err(refusal.into()),
    }
}
