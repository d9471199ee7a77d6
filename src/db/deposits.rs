//! Deposits, and what was taken back of them. Rows are added and never changed.

use time::{Date, OffsetDateTime};

use super::{Con, Db, Result};
use crate::model::deposit::{Deposit, NewDeposit, NewReturn};
use crate::model::ids::{BranchId, DepositId, JobId, PersonId};
use crate::model::money::Currency;

#[derive(sqlx::FromRow)]
struct DepositRow {
    id: DepositId,
    #[sqlx(try_from = "String")]
    currency: Currency,
    amount_minor: i64,
    paid_how: String,
    received_on: Date,
    received_by: String,
    person_name: String,
    recorded_at: OffsetDateTime,
    takes_back_id: Option<DepositId>,
    reason: String,
}

/// The deposits of a job and what was taken back, in the order they were written down.
pub async fn list(con: &mut Con, branch: BranchId, job: JobId) -> Result<Vec<Deposit>> {
    let rows = sqlx::query_as::<Db, DepositRow>(
        "select deposits.id, currency, amount_minor, paid_how, received_on, received_by, people.name as person_name,
             recorded_at, takes_back_id, reason
         from deposits
         join people on people.id = deposits.person_id
         where job_id = $1
           and branch_id = $2
         order by recorded_at, deposits.id",
    )
    .bind(job)
    .bind(branch)
    .fetch_all(con)
    .await?;
    let deposit = |row: DepositRow| Deposit {
        id: row.id,
        currency: row.currency,
        amount_minor: row.amount_minor,
        paid_how: row.paid_how,
        received_on: row.received_on,
        received_by: row.received_by,
        person_name: row.person_name,
        recorded_at: row.recorded_at,
        takes_back_id: row.takes_back_id,
        reason: row.reason,
    };
    Ok(rows.into_iter().map(deposit).collect())
}

/// Adds a deposit.
pub async fn insert(
    con: &mut Con,
    (branch, job, currency): (BranchId, JobId, Currency),
    new: &NewDeposit,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<DepositId> {
    add(con, (branch, job, currency), new, None, who, now).await
}

/// Adds the line that takes a deposit back: as much, in its currency; a second one is [`super::Error::Taken`].
pub async fn insert_return(
    con: &mut Con,
    (branch, job): (BranchId, JobId),
    (deposit, returned_by): (&Deposit, &str),
    new: &NewReturn,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<DepositId> {
    let line = NewDeposit {
        amount_minor: deposit.amount_minor,
        paid_how: new.paid_how.clone(),
        received_on: new.returned_on,
        received_by: returned_by.to_owned(),
    };
    add(con, (branch, job, deposit.currency), &line, Some((deposit.id, &new.reason)), who, now).await
}

/// Adds a line; `takes_back` is the deposit that it takes back, and why.
async fn add(
    con: &mut Con,
    (branch, job, currency): (BranchId, JobId, Currency),
    line: &NewDeposit,
    takes_back: Option<(DepositId, &str)>,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<DepositId> {
    let id = DepositId::new();
    sqlx::query(
        "insert into deposits (id, branch_id, job_id, currency, amount_minor, paid_how, received_on, received_by,
             person_id, recorded_at, takes_back_id, reason)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12)",
    )
    .bind(id)
    .bind(branch)
    .bind(job)
    .bind(currency.code())
    .bind(line.amount_minor)
    .bind(&line.paid_how)
    .bind(line.received_on)
    .bind(&line.received_by)
    .bind(who)
    .bind(now)
    .bind(takes_back.map(|(deposit, _)| deposit))
    .bind(takes_back.map_or("", |(_, reason)| reason))
    .execute(con)
    .await?;
    Ok(id)
}
