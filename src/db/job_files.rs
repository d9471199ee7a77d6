//! The whole of a job in one reading, for the rules, the screens and the papers.

use super::{Con, Db, Result, evidence, jobs, parts};
use crate::model::attachment::Attachment;
use crate::model::customer::Customer;
use crate::model::evidence::Entry;
use crate::model::finding::Finding;
use crate::model::ids::{BranchId, InstrumentId, JobId};
use crate::model::instrument::{Instrument, InstrumentCertificate, InstrumentCheck, InstrumentKind, InstrumentRecord};
use crate::model::job_file::JobFile;
use crate::model::vehicle::{OdometerReading, Vehicle};

/// The job with everything current in it; `None` when the branch has no such job.
pub async fn find(con: &mut Con, branch: BranchId, id: JobId) -> Result<Option<JobFile>> {
    Ok(find_with_history(con, branch, id).await?.map(|(file, _)| file))
}

/// The same, with every entry ever made, corrected ones included.
pub async fn find_with_history(con: &mut Con, branch: BranchId, id: JobId) -> Result<Option<(JobFile, Vec<Entry>)>> {
    let Some(job) = jobs::find(con, branch, id).await? else {
        return Ok(None);
    };
    let Some(vehicle) = vehicle(con, branch, job.vehicle_id).await? else {
        return Ok(None);
    };
    let Some(keeper) = customer(con, branch, job.keeper_id).await? else {
        return Ok(None);
    };
    let history = evidence::list(con, branch, id).await?;
    let current = evidence::current(&history);
    let mut named: Vec<InstrumentId> = current.iter().flat_map(|entry| entry.instruments.iter().copied()).collect();
    named.sort_unstable();
    named.dedup();
    let mut instruments = Vec::with_capacity(named.len());
    for instrument in named {
        instruments.extend(instrument_record(con, branch, instrument).await?);
    }
    let of_vehicle = parts::list_of_vehicle(con, branch, job.vehicle_id).await?;
    let concerned = of_vehicle.into_iter().filter(|part| part.is_fitted() || part.removed_in == Some(id)).collect();
    let file = JobFile {
        readings: readings(con, job.vehicle_id).await?,
        attachments: attachments(con, id).await?,
        waivers: jobs::list_waivers(con, id).await?,
        findings: findings(con, id).await?,
        parts: concerned,
        evidence: current,
        instruments,
        vehicle,
        keeper,
        job,
    };
    Ok(Some((file, history)))
}

/// A vehicle with its odometer readings, oldest first.
pub async fn vehicle_with_readings(
    con: &mut Con,
    branch: BranchId,
    id: crate::model::ids::VehicleId,
) -> Result<Option<(Vehicle, Vec<OdometerReading>)>> {
    let Some(vehicle) = vehicle(con, branch, id).await? else { return Ok(None) };
    Ok(Some((vehicle, readings(con, id).await?)))
}

async fn vehicle(con: &mut Con, branch: BranchId, id: crate::model::ids::VehicleId) -> Result<Option<Vehicle>> {
    Ok(sqlx::query_as::<Db, Vehicle>(
        "select id, branch_id, plate, plate_country, vin, chassis_number, category, make, model, first_registered_on,
             engine_code, engine_number, displacement_cm3, engine_cylinders, rated_power_kw, rated_rpm, aspiration,
             boost_kpa, petrol_injection, injector_connector, control_pin, gross_mass_kg, rear_axle_reserve_kg,
             has_catalyst, is_closed_loop, maker_idle_co_percent, maker_raised_co_percent, maker_lambda_least,
             maker_lambda_most, emission_class, obd_standard, has_start_stop, is_hybrid, odometer_unit, created_at,
             version
         from vehicles
         where id = $1
           and branch_id = $2",
    )
    .bind(id)
    .bind(branch)
    .fetch_optional(con)
    .await?)
}

async fn customer(con: &mut Con, branch: BranchId, id: crate::model::ids::CustomerId) -> Result<Option<Customer>> {
    Ok(sqlx::query_as::<Db, Customer>(
        "select id, branch_id, name, name_in_latin, address, phone, mail, mail_state, language, reminder_basis,
             reminder_basis_on, created_at, version
         from customers
         where id = $1
           and branch_id = $2",
    )
    .bind(id)
    .bind(branch)
    .fetch_optional(con)
    .await?)
}

async fn readings(con: &mut Con, vehicle: crate::model::ids::VehicleId) -> Result<Vec<OdometerReading>> {
    Ok(sqlx::query_as::<Db, OdometerReading>(
        "select read_on, km, typed, explained
         from odometer_readings
         where vehicle_id = $1
         order by read_on, recorded_at",
    )
    .bind(vehicle)
    .fetch_all(con)
    .await?)
}

async fn attachments(con: &mut Con, job: JobId) -> Result<Vec<Attachment>> {
    Ok(sqlx::query_as::<Db, Attachment>(
        "select id, job_id, vehicle_id, slot, sha256, media_type, name, bytes, width, height, captured_at, recorded_at
         from attachments
         where job_id = $1
         order by recorded_at, id",
    )
    .bind(job)
    .fetch_all(con)
    .await?)
}

async fn findings(con: &mut Con, job: JobId) -> Result<Vec<Finding>> {
    Ok(sqlx::query_as::<Db, Finding>(
        "select id, job_id, instrument_id, source, text, opened_at, decision, decided_at
         from findings
         where job_id = $1
         order by opened_at, id",
    )
    .bind(job)
    .fetch_all(con)
    .await?)
}

async fn instrument_record(con: &mut Con, branch: BranchId, id: InstrumentId) -> Result<Option<InstrumentRecord>> {
    let found = sqlx::query_as::<Db, Instrument>(
        "select id, code, kind, maker, type_name, serial, resolution, standard_uncertainty, unit, needs_daily_check,
             retired_on, version
         from instruments
         where id = $1
           and branch_id = $2",
    )
    .bind(id)
    .bind(branch)
    .fetch_optional(&mut *con)
    .await?;
    let Some(instrument) = found else {
        return Ok(None);
    };
    let certificates = sqlx::query_as::<Db, InstrumentCertificate>(
        "select instrument_id, number, laboratory, calibrated_on, due_on, expanded_uncertainty, coverage_factor,
             attachment_id
         from instrument_certificates
         where instrument_id = $1
         order by calibrated_on",
    )
    .bind(id)
    .fetch_all(&mut *con)
    .await?;
    let checks = sqlx::query_as::<Db, InstrumentCheck>(
        "select instrument_id, checked_at, has_passed, as_found_error, note, person_id
         from instrument_checks
         where instrument_id = $1
         order by checked_at",
    )
    .bind(id)
    .fetch_all(con)
    .await?;
    Ok(Some(InstrumentRecord { instrument, certificates, checks }))
}

/// Every instrument of a kind that is in use, with what speaks for it, by code.
pub async fn instruments_of_kind(
    con: &mut Con,
    branch: BranchId,
    kind: InstrumentKind,
) -> Result<Vec<InstrumentRecord>> {
    let ids = sqlx::query_scalar::<Db, InstrumentId>(
        "select id from instruments where branch_id = $1 and kind = $2 and retired_on is null order by code",
    )
    .bind(branch)
    .bind(kind)
    .fetch_all(&mut *con)
    .await?;
    let mut records = Vec::with_capacity(ids.len());
    for id in ids {
        records.extend(instrument_record(con, branch, id).await?);
    }
    Ok(records)
}
