//! The audit pack: its form, and the paper itself at the same address once a period is named.

use askama::Template;
use axum::extract::{RawQuery, State};

use crate::shop::Refusal;
use crate::shop::audit_pack::{AskedPack, LONGEST_SEED};
use crate::web::Answer;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed};
use crate::web::job::papers::pdf;
use crate::web::kit;
use crate::web::page::{Frame, Place, page, retry};
use crate::web::visitor::Visitor;

#[derive(Template)]
#[template(path = "papers/audit_pack.html")]
struct PackPage {
    frame: Frame,
    form: Form,
}

/// `GET /papers/audit-pack?from=…&to=…&seed=…`: the form; with a period, the pack. Looking at one is written down.
pub async fn show(State(app): State<App>, who: Visitor, RawQuery(query): RawQuery) -> Answer {
    let mut form = Form::from(Typed::from_query(query.as_deref().unwrap_or_default())).scoped("audit-pack");
    let today = app.shop.clock.today(&who.zone);
    if ["from", "to", "seed"].iter().all(|name| form.value(name).is_empty()) {
        let begins = today.replace_day(1).unwrap_or(today);
        form = form.with("from", begins.to_string()).with("to", today.to_string());
        return page(PackPage { frame: who.frame().at(Place::Papers), form });
    }
    let (from, to) = (form.past_date("from", today), form.past_date("to", today));
    let seed = form.opt_text("seed", LONGEST_SEED).unwrap_or_default();
    if let (Some(()), Some(from_on), Some(to_on)) = (form.sound(), from, to) {
        match app.shop.audit_pack_pdf(&who.actor, AskedPack { from_on, to_on, seed }).await {
            Ok((_, bytes)) => return Ok(pdf(&format!("audit-pack-{from_on}-{to_on}"), bytes)),
            Err(refusal @ Refusal::Field { .. }) => beside(&mut form, refusal)?,
            Err(refusal) => return Err(refusal.into()),
        }
    }
    retry(PackPage { frame: who.frame().at(Place::Papers), form })
}
