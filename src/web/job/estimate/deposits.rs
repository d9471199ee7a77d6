//! Money taken before the work is paid, and taken back.

use axum::extract::{Path, State};

use super::show::{Forms, show_page};
use super::{MOST_MINOR, SCOPE, currency, open};
use crate::model::deposit::{NewDeposit, NewReturn};
use crate::model::ids::{DepositId, JobId};
use crate::model::money::Currency;
use crate::shop::Refusal;
use crate::unit::Unit;
use crate::web::app::App;
use crate::web::error::beside;
use crate::web::form::{Form, Typed, Wrong};
use crate::web::job::JobPage;
use crate::web::kit::{self, Field};
use crate::web::page::{retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};
use crate::words::Words;

/// The fields of a deposit.
pub(super) fn fields(form: &Form, w: &Words, currency: Currency) -> Vec<Field> {
    vec![
        kit::number(form, w, "deposit_amount").counted_in(currency.code()),
        kit::text(form, w, "paid_how"),
        kit::date(form, w, "received_on"),
        kit::text(form, w, "received_by"),
    ]
}

/// The name of a field that takes this deposit back: each deposit has its own form on the page, and no two share an id.
pub(super) fn field(job: &JobPage, deposit: DepositId, name: &str) -> String {
    format!("back[{}][{name}]", job.estimates.deposit_number(deposit).unwrap_or(0))
}

/// `POST /jobs/{id}/deposits`.
pub async fn create(State(app): State<App>, who: Visitor, Path(id): Path<JobId>, typed: Typed) -> Answer {
    let job = open(&app, who, id).await?;
    let mut form = Form::from(typed).scoped(SCOPE);
    let Some(new) = read(&job, &mut form)? else { return taken_again(&app, job, form).await };
    match app.shop.take_deposit(&job.who.actor, form.key(), id, new).await {
        Ok(_) => see_other(format!("{}#deposits", path::job_estimate(id))),
        Err(refusal) => {
            beside(&mut form, refusal)?;
            taken_again(&app, job, form).await
        }
    }
}

fn read(job: &JobPage, form: &mut Form) -> Result<Option<NewDeposit>, Error> {
    let digits = currency(job)?.minor_digits();
    let amount_minor = form.money("deposit_amount", digits, MOST_MINOR);
    if amount_minor == Some(0) {
        let scale = 10_f64.powi(i32::from(digits));
        let wrong = Wrong::Beyond { least: 1.0 / scale, most: MOST_MINOR as f64 / scale, unit: Unit::One };
        form.fail("deposit_amount", wrong);
    }
    let paid_how = form.text("paid_how", 200);
    let received_on = form.past_date("received_on", job.today);
    let received_by = form.text("received_by", 200);
    let new = || {
        Some(NewDeposit {
            amount_minor: amount_minor?,
            paid_how: paid_how?,
            received_on: received_on?,
            received_by: received_by?,
        })
    };
    Ok(form.sound().and_then(|()| new()))
}

async fn taken_again(app: &App, job: JobPage, form: Form) -> Answer {
    let forms = Forms::blank(&job).taken(form);
    retry(show_page(app, job, forms).await?)
}

/// `POST /jobs/{id}/deposits/{deposit}/return`: a deposit is taken back by a new line with its reason.
pub async fn give_back(
    State(app): State<App>,
    who: Visitor,
    Path((id, deposit)): Path<(JobId, DepositId)>,
    typed: Typed,
) -> Answer {
    let job = open(&app, who, id).await?;
    job.estimates.deposit_number(deposit).ok_or(Error::NotFound)?;
    let mut form = Form::from(typed).scoped(SCOPE);
    let name = |name: &str| field(&job, deposit, name);
    let reason = form.text(&name("reason"), 400);
    let paid_how = form.text(&name("returned_how"), 200);
    let returned_on = form.past_date(&name("returned_on"), job.today);
    if let (Some(()), Some(reason), Some(paid_how), Some(returned_on)) = (form.sound(), reason, paid_how, returned_on) {
        let new = NewReturn { takes_back: deposit, reason, paid_how, returned_on };
        match app.shop.take_back_deposit(&job.who.actor, form.key(), id, new).await {
            Ok(_) => return see_other(format!("{}#deposits", path::job_estimate(id))),
            Err(Refusal::Field { field: at, why }) => form.fail(&name(at), Wrong::Rule(why, Vec::new())),
            Err(refusal) => return Err(refusal.into()),
        }
    }
    let forms = Forms::blank(&job).given_back(deposit.to_string(), form);
    retry(show_page(&app, job, forms).await?)
}
