//! Estimates and what was agreed. Rows are added and never changed.

use time::{Date, OffsetDateTime};

use super::{Con, Db, Result, deposits};
use crate::model::estimate::{
    AgreedHow, Agreement, EstimateLine, EstimateVersion, Estimates, NewAgreement, NewEstimate,
};
use crate::model::ids::{BranchId, EstimateId, JobId, PersonId};
use crate::model::money::Currency;

#[derive(sqlx::FromRow)]
struct VersionRow {
    id: EstimateId,
    job_id: JobId,
    number: i64,
    #[sqlx(try_from = "String")]
    currency: Currency,
    total_minor: i64,
    valid_until_on: Option<Date>,
    note: String,
    person_name: String,
    written_at: OffsetDateTime,
    amount_minor: Option<i64>,
    how: Option<AgreedHow>,
    agreed_by: Option<String>,
    agreed_at: Option<OffsetDateTime>,
    noted_by: Option<String>,
    noted_at: Option<OffsetDateTime>,
}

impl From<VersionRow> for EstimateVersion {
    fn from(row: VersionRow) -> Self {
        let agreement = || {
            Some(Agreement {
                amount_minor: row.amount_minor?,
                how: row.how?,
                agreed_by: row.agreed_by?,
                agreed_at: row.agreed_at?,
                person_name: row.noted_by?,
                noted_at: row.noted_at?,
            })
        };
        Self {
            id: row.id,
            job_id: row.job_id,
            number: row.number,
            currency: row.currency,
            total_minor: row.total_minor,
            valid_until_on: row.valid_until_on,
            note: row.note,
            person_name: row.person_name,
            written_at: row.written_at,
            agreement: agreement(),
        }
    }
}

/// Everything about money of a job, without the lines of its versions.
pub async fn find_of_job(con: &mut Con, branch: BranchId, job: JobId) -> Result<Estimates> {
    let versions = sqlx::query_as::<Db, VersionRow>(
        "select estimates.id, job_id, number, currency, total_minor, valid_until_on, note,
             writer.name as person_name, written_at, amount_minor, how, agreed_by, agreed_at,
             noter.name as noted_by, noted_at
         from estimates
         join people as writer on writer.id = estimates.person_id
         left join estimate_agreements on estimate_id = estimates.id
         left join people as noter on noter.id = estimate_agreements.person_id
         where job_id = $1
           and branch_id = $2
         order by number",
    )
    .bind(job)
    .bind(branch)
    .fetch_all(&mut *con)
    .await?;
    let deposits = deposits::list(con, branch, job).await?;
    Ok(Estimates { versions: versions.into_iter().map(EstimateVersion::from).collect(), deposits })
}

/// The lines of a version, in order.
pub async fn list_lines(con: &mut Con, estimate: EstimateId) -> Result<Vec<EstimateLine>> {
    Ok(sqlx::query_as::<Db, EstimateLine>(
        "select what, kind, quantity_thousandths, unit_price_minor, amount_minor
         from estimate_lines
         where estimate_id = $1
         order by position",
    )
    .bind(estimate)
    .fetch_all(con)
    .await?)
}

/// Adds a version with its lines.
pub async fn insert(
    con: &mut Con,
    (branch, job): (BranchId, JobId),
    (number, currency, total_minor): (i64, Currency, i64),
    new: &NewEstimate,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<EstimateId> {
    let id = EstimateId::new();
    sqlx::query(
        "insert into estimates (id, branch_id, job_id, number, currency, total_minor, valid_until_on, note, person_id,
             written_at)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10)",
    )
    .bind(id)
    .bind(branch)
    .bind(job)
    .bind(number)
    .bind(currency.code())
    .bind(total_minor)
    .bind(new.valid_until_on)
    .bind(&new.note)
    .bind(who)
    .bind(now)
    .execute(&mut *con)
    .await?;
    for (position, line) in (0_i64..).zip(&new.lines) {
        sqlx::query(
            "insert into estimate_lines (estimate_id, position, what, kind, quantity_thousandths, unit_price_minor,
                 amount_minor)
             values ($1, $2, $3, $4, $5, $6, $7)",
        )
        .bind(id)
        .bind(position)
        .bind(&line.what)
        .bind(line.kind)
        .bind(line.quantity_thousandths)
        .bind(line.unit_price_minor)
        .bind(line.amount_minor)
        .execute(&mut *con)
        .await?;
    }
    Ok(id)
}

/// Adds that a version of this total was agreed.
pub async fn insert_agreement(
    con: &mut Con,
    (estimate, amount_minor): (EstimateId, i64),
    new: &NewAgreement,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<()> {
    sqlx::query(
        "insert into estimate_agreements (estimate_id, amount_minor, how, agreed_by, agreed_at, person_id, noted_at)
         values ($1, $2, $3, $4, $5, $6, $7)",
    )
    .bind(estimate)
    .bind(amount_minor)
    .bind(new.how)
    .bind(&new.agreed_by)
    .bind(new.agreed_at)
    .bind(who)
    .bind(now)
    .execute(con)
    .await?;
    Ok(())
}
