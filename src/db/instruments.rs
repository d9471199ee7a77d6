//! Instruments with their certificates and checks.

use std::collections::HashMap;

use time::{Date, OffsetDateTime};

use super::{Con, Db, Result, exactly_one};
use crate::model::ids::{BranchId, InstrumentId, JobId, PersonId};
use crate::model::instrument::{
    Instrument, InstrumentCertificate, InstrumentCheck, InstrumentKind, InstrumentRecord, NewInstrument,
};

/// The instrument with this id.
pub async fn find(con: &mut Con, branch: BranchId, id: InstrumentId) -> Result<Option<Instrument>> {
    Ok(sqlx::query_as::<Db, Instrument>(
        "select id, code, kind, maker, type_name, serial, resolution, standard_uncertainty, unit, needs_daily_check,
             retired_on, version
         from instruments
         where id = $1
           and branch_id = $2",
    )
    .bind(id)
    .bind(branch)
    .fetch_optional(con)
    .await?)
}

/// The instrument with everything that speaks for it.
pub async fn record(con: &mut Con, branch: BranchId, id: InstrumentId) -> Result<Option<InstrumentRecord>> {
    let Some(instrument) = find(con, branch, id).await? else { return Ok(None) };
    let certificates = list_certificates(con, id).await?;
    let checks = list_checks(con, id).await?;
    Ok(Some(InstrumentRecord { instrument, certificates, checks }))
}

/// The same for several, in the order asked; what the branch does not have is left out.
pub async fn records(con: &mut Con, branch: BranchId, ids: &[InstrumentId]) -> Result<Vec<InstrumentRecord>> {
    let mut records = Vec::with_capacity(ids.len());
    for id in ids {
        records.extend(record(con, branch, *id).await?);
    }
    Ok(records)
}

/// Every instrument of the branch by code, with all certificates, and the checks made since `since` or last of all.
pub async fn list(con: &mut Con, branch: BranchId, since: OffsetDateTime) -> Result<Vec<InstrumentRecord>> {
    let instruments = sqlx::query_as::<Db, Instrument>(
        "select id, code, kind, maker, type_name, serial, resolution, standard_uncertainty, unit, needs_daily_check,
             retired_on, version
         from instruments
         where branch_id = $1
         order by code, id",
    )
    .bind(branch)
    .fetch_all(&mut *con)
    .await?;
    let certificates = sqlx::query_as::<Db, InstrumentCertificate>(
        "select instrument_id, number, laboratory, calibrated_on, due_on, expanded_uncertainty, coverage_factor,
             attachment_id
         from instrument_certificates
         join instruments on instruments.id = instrument_id
         where instruments.branch_id = $1
         order by calibrated_on, instrument_certificates.id",
    )
    .bind(branch)
    .fetch_all(&mut *con)
    .await?;
    let checks = sqlx::query_as::<Db, InstrumentCheck>(
        "select instrument_id, checked_at, has_passed, as_found_error, note, person_id
         from instrument_checks
         join instruments on instruments.id = instrument_id
         where instruments.branch_id = $1
           and (checked_at >= $2
               or checked_at = (
                   select max(last.checked_at) from instrument_checks as last where last.instrument_id = instruments.id))
         order by checked_at, instrument_checks.id",
    )
    .bind(branch)
    .bind(since)
    .fetch_all(con)
    .await?;
    let mut certificates = grouped(certificates, |one| one.instrument_id);
    let mut checks = grouped(checks, |one| one.instrument_id);
    let record = |instrument: Instrument| InstrumentRecord {
        certificates: certificates.remove(&instrument.id).unwrap_or_default(),
        checks: checks.remove(&instrument.id).unwrap_or_default(),
        instrument,
    };
    Ok(instruments.into_iter().map(record).collect())
}

/// What a form may offer for a measurement made at `at`, the day `on`: instruments of these kinds that are in use and in
/// calibration that day. One that is not checked yet is among them, for its check can still be made and is often made last.
pub async fn list_usable(
    con: &mut Con,
    branch: BranchId,
    kinds: &[InstrumentKind],
    on: Date,
    at: OffsetDateTime,
) -> Result<Vec<InstrumentRecord>> {
    let mut records = list(con, branch, at - time::Duration::days(2)).await?;
    records.retain(|record| {
        let is_in_use = record.instrument.retired_on.is_none_or(|retired_on| on < retired_on);
        kinds.contains(&record.instrument.kind) && is_in_use && record.is_in_calibration(on)
    });
    Ok(records)
}

fn grouped<T>(rows: Vec<T>, of: impl Fn(&T) -> InstrumentId) -> HashMap<InstrumentId, Vec<T>> {
    rows.into_iter().fold(HashMap::new(), |mut groups: HashMap<_, Vec<T>>, row| {
        groups.entry(of(&row)).or_default().push(row);
        groups
    })
}

/// Adds an instrument.
pub async fn insert(con: &mut Con, branch: BranchId, id: InstrumentId, new: &NewInstrument) -> Result<()> {
    sqlx::query(
        "insert into instruments (id, branch_id, code, kind, maker, type_name, serial, resolution,
             standard_uncertainty, unit, needs_daily_check)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)",
    )
    .bind(id)
    .bind(branch)
    .bind(&new.code)
    .bind(new.kind)
    .bind(&new.maker)
    .bind(&new.type_name)
    .bind(&new.serial)
    .bind(new.resolution)
    .bind(new.standard_uncertainty)
    .bind(&new.unit)
    .bind(new.needs_daily_check)
    .execute(con)
    .await?;
    Ok(())
}

/// Saves an instrument over the version it was read at.
pub async fn save(con: &mut Con, id: InstrumentId, version: i64, new: &NewInstrument) -> Result<()> {
    let done = sqlx::query(
        "update instruments
         set code = $3, kind = $4, maker = $5, type_name = $6, serial = $7, resolution = $8,
             standard_uncertainty = $9, unit = $10, needs_daily_check = $11, version = version + 1
         where id = $1
           and version = $2",
    )
    .bind(id)
    .bind(version)
    .bind(&new.code)
    .bind(new.kind)
    .bind(&new.maker)
    .bind(&new.type_name)
    .bind(&new.serial)
    .bind(new.resolution)
    .bind(new.standard_uncertainty)
    .bind(&new.unit)
    .bind(new.needs_daily_check)
    .execute(con)
    .await?;
    exactly_one(&done)
}

/// Takes an instrument out of use from a day on, or (`None`) into use again.
pub async fn save_retired(con: &mut Con, id: InstrumentId, version: i64, on: Option<Date>) -> Result<()> {
    let done =
        sqlx::query("update instruments set retired_on = $3, version = version + 1 where id = $1 and version = $2")
            .bind(id)
            .bind(version)
            .bind(on)
            .execute(con)
            .await?;
    exactly_one(&done)
}

/// The certificates of an instrument, oldest first.
pub async fn list_certificates(con: &mut Con, id: InstrumentId) -> Result<Vec<InstrumentCertificate>> {
    Ok(sqlx::query_as::<Db, InstrumentCertificate>(
        "select instrument_id, number, laboratory, calibrated_on, due_on, expanded_uncertainty, coverage_factor,
             attachment_id
         from instrument_certificates
         where instrument_id = $1
         order by calibrated_on, id",
    )
    .bind(id)
    .fetch_all(con)
    .await?)
}

/// Adds a certificate.
pub async fn insert_certificate(
    con: &mut Con,
    one: &InstrumentCertificate,
    who: PersonId,
    now: OffsetDateTime,
) -> Result<()> {
    sqlx::query(
        "insert into instrument_certificates (id, instrument_id, number, laboratory, calibrated_on, due_on,
             expanded_uncertainty, coverage_factor, attachment_id, person_id, recorded_at)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)",
    )
    .bind(uuid::Uuid::now_v7().to_string())
    .bind(one.instrument_id)
    .bind(&one.number)
    .bind(&one.laboratory)
    .bind(one.calibrated_on)
    .bind(one.due_on)
    .bind(one.expanded_uncertainty)
    .bind(one.coverage_factor)
    .bind(one.attachment_id)
    .bind(who)
    .bind(now)
    .execute(con)
    .await?;
    Ok(())
}

/// The checks of an instrument, oldest first.
pub async fn list_checks(con: &mut Con, id: InstrumentId) -> Result<Vec<InstrumentCheck>> {
    Ok(sqlx::query_as::<Db, InstrumentCheck>(
        "select instrument_id, checked_at, has_passed, as_found_error, note, person_id
         from instrument_checks
         where instrument_id = $1
         order by checked_at, id",
    )
    .bind(id)
    .fetch_all(con)
    .await?)
}

/// Adds a check.
pub async fn insert_check(con: &mut Con, one: &InstrumentCheck, now: OffsetDateTime) -> Result<()> {
    sqlx::query(
        "insert into instrument_checks (id, instrument_id, checked_at, has_passed, as_found_error, note, person_id,
             recorded_at)
         values ($1, $2, $3, $4, $5, $6, $7, $8)",
    )
    .bind(uuid::Uuid::now_v7().to_string())
    .bind(one.instrument_id)
    .bind(one.checked_at)
    .bind(one.has_passed)
    .bind(one.as_found_error)
    .bind(&one.note)
    .bind(one.person_id)
    .bind(now)
    .execute(con)
    .await?;
    Ok(())
}

/// A result that rests on an instrument.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Resting {
    pub job_id: JobId,
    /// Number of the job.
    pub number: String,
    /// Kind of the evidence: the code of its form.
    pub kind: String,
    pub subject: String,
    pub measured_at: OffsetDateTime,
}

/// Evidence measured with an instrument between two instants, corrected entries left out, oldest first.
pub async fn list_resting(
    con: &mut Con,
    id: InstrumentId,
    from: OffsetDateTime,
    to: OffsetDateTime,
) -> Result<Vec<Resting>> {
    Ok(sqlx::query_as::<Db, Resting>(
        "select evidence.job_id, jobs.number, evidence.kind, evidence.subject, evidence.measured_at
         from evidence
         join evidence_instruments on evidence_instruments.evidence_id = evidence.id
         join jobs on jobs.id = evidence.job_id
         where evidence_instruments.instrument_id = $1
           and evidence.measured_at >= $2
           and evidence.measured_at <= $3
           and not exists (select 1 from evidence as later where later.replaces_id = evidence.id)
         order by evidence.measured_at, evidence.id",
    )
    .bind(id)
    .bind(from)
    .bind(to)
    .fetch_all(con)
    .await?)
}
