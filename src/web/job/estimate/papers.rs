//! What is handed out of an estimate: papers in the customer's language, and the lines for a spreadsheet.

use axum::extract::{Path, State};
use axum::http::header;
use axum::response::IntoResponse;

use super::{lines_of, open};
use crate::exchange::spreadsheet;
use crate::model::Coded;
use crate::model::estimate::{EstimateLine, EstimateVersion};
use crate::model::ids::{DepositId, JobId};
use crate::model::money::{fixed, plain_thousandths};
use crate::web::app::App;
use crate::web::job::JobPage;
use crate::web::job::papers::pdf as as_pdf;
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error};

/// The version of this number.
pub(super) fn version_of<'a>(job: &'a JobPage, number: &str) -> Result<&'a EstimateVersion, Error> {
    let number = number.parse().map_err(|_| Error::NotFound)?;
    job.estimates.version(number).ok_or(Error::NotFound)
}

/// `GET /jobs/{id}/estimate/{number}/pdf`.
pub async fn pdf(State(app): State<App>, who: Visitor, Path((id, number)): Path<(JobId, String)>) -> Answer {
    let number = number.parse().map_err(|_| Error::NotFound)?;
    let (name, bytes) = app.shop.estimate_pdf(&who.actor, id, number, app.shop.clock.now()).await?;
    Ok(as_pdf(&name, bytes))
}

/// The papers of the last version, as `/jobs/{id}/papers/{kind}` hands them out.
pub async fn of_job(app: App, who: Visitor, id: JobId, kind: &str) -> Answer {
    let now = app.shop.clock.now();
    let (name, bytes) = if kind == "price-list" {
        app.shop.price_list_pdf(&who.actor, id, now).await?
    } else {
        let job = open(&app, who.clone(), id).await?;
        let number = job.estimates.last().ok_or(Error::NotFound)?.number;
        app.shop.estimate_pdf(&who.actor, id, number, now).await?
    };
    Ok(as_pdf(&name, bytes))
}

/// `GET /jobs/{id}/deposits/{deposit}/receipt`.
pub async fn receipt(State(app): State<App>, who: Visitor, Path((id, deposit)): Path<(JobId, DepositId)>) -> Answer {
    let (name, bytes) = app.shop.deposit_receipt_pdf(&who.actor, id, deposit, app.shop.clock.now()).await?;
    Ok(as_pdf(&name, bytes))
}

/// `GET /jobs/{id}/estimate/{number}/csv`: the lines of a version, numbers with a point and without groups, cells guarded.
pub async fn lines_csv(State(app): State<App>, who: Visitor, Path((id, number)): Path<(JobId, String)>) -> Answer {
    let job = open(&app, who, id).await?;
    let version = version_of(&job, &number)?;
    let (currency, digits) = (version.currency.code(), version.currency.minor_digits());
    let head = ["what", "kind", "quantity", "unit_price", "amount", "currency"].map(str::to_owned).to_vec();
    let row = |line: &EstimateLine| {
        vec![
            line.what.clone(),
            line.kind.code().to_owned(),
            plain_thousandths(line.quantity_thousandths),
            fixed(line.unit_price_minor, digits),
            fixed(line.amount_minor, digits),
            currency.to_owned(),
        ]
    };
    let lines = lines_of(&app, version).await?;
    let rows: Vec<Vec<String>> = std::iter::once(head).chain(lines.iter().map(row)).collect();
    let name = format!("estimate-{}-{}.csv", job.file.job.number, version.number);
    let headers = [
        (header::CONTENT_TYPE, "text/csv; charset=utf-8".to_owned()),
        (header::CONTENT_DISPOSITION, format!("attachment; filename=\"{name}\"")),
        (header::CACHE_CONTROL, "no-store".to_owned()),
    ];
    Ok((headers, spreadsheet::written(rows.iter().map(Vec::as_slice))).into_response())
}
