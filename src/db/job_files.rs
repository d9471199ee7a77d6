//! The whole of a job in one reading, for the rules, the screens and the papers.

use super::{
    Con, Db, Result, attachments, customers, evidence, findings, instruments, jobs, odometer, papers, parts, recalls,
    vehicles,
};
use crate::model::evidence::Entry;
use crate::model::ids::{BranchId, InstrumentId, JobId, VehicleId};
use crate::model::instrument::{InstrumentKind, InstrumentRecord};
use crate::model::job::Job;
use crate::model::job_file::{FirstInspection, JobFile, Recalled};
use crate::model::paper::certificate::{CertificateContent, InspectionOutcome};
use crate::model::part::Part;
use crate::model::vehicle::{OdometerReading, Vehicle};
use crate::rules::inspection::may_fail;

/// The job with everything current in it; `None` when the branch has no such job.
pub async fn find(con: &mut Con, branch: BranchId, id: JobId) -> Result<Option<JobFile>> {
    Ok(find_with_history(con, branch, id).await?.map(|(file, _)| file))
}

/// The same, with every entry ever made, corrected ones included.
pub async fn find_with_history(con: &mut Con, branch: BranchId, id: JobId) -> Result<Option<(JobFile, Vec<Entry>)>> {
    let Some(job) = jobs::find(con, branch, id).await? else {
        return Ok(None);
    };
    let Some(vehicle) = vehicles::find(con, branch, job.vehicle_id).await? else {
        return Ok(None);
    };
    let Some(keeper) = customers::find(con, branch, job.keeper_id).await? else {
        return Ok(None);
    };
    let history = evidence::list(con, branch, id).await?;
    let current = evidence::current(&history);
    let mut named: Vec<InstrumentId> = current.iter().flat_map(|entry| entry.instruments.iter().copied()).collect();
    named.sort_unstable();
    named.dedup();
    let instruments = instruments::records(con, branch, &named).await?;
    let of_vehicle = parts::list_of_vehicle(con, branch, job.vehicle_id).await?;
    let recalled = recalled(con, branch, &of_vehicle).await?;
    let concerned = of_vehicle.into_iter().filter(|part| part.is_fitted() || part.removed_in == Some(id)).collect();
    let file = JobFile {
        repeats: first_inspection(con, branch, &job).await?,
        readings: odometer::list(con, job.vehicle_id).await?,
        attachments: attachments::list(con, id).await?,
        waivers: jobs::list_waivers(con, id).await?,
        findings: findings::list(con, id).await?,
        parts: concerned,
        recalled,
        evidence: current,
        instruments,
        vehicle,
        keeper,
        job,
    };
    Ok(Some((file, history)))
}

/// Parts on a vehicle that a recall names and whose duty nobody has closed.
async fn recalled(con: &mut Con, branch: BranchId, parts: &[Part]) -> Result<Vec<Recalled>> {
    let mut found = Vec::new();
    for recall in recalls::list(con, branch).await? {
        for part in parts.iter().filter(|part| part.is_fitted()) {
            if let Some(carries) = recall.carries(part)
                && !recalls::is_settled(con, recall.id, part.id).await?
            {
                let by = format!("{}, {}", recall.recalled_by, recall.document);
                found.push(Recalled { part: part.id, carries, by });
            }
        }
    }
    Ok(found)
}

/// The inspection that an inspection follows, with what its certificate left open.
async fn first_inspection(con: &mut Con, branch: BranchId, job: &Job) -> Result<Option<FirstInspection>> {
    let Some(before) = job.comes_back_from.filter(|_| may_fail(job.kind)) else { return Ok(None) };
    let Some(before) = jobs::find(con, branch, before).await? else { return Ok(None) };
    let first = FirstInspection { job_number: before.number.clone(), ..FirstInspection::default() };
    let papers = papers::list_in_force(con, branch, before.id).await?;
    // Content that does not read is no ground to look at less.
    let content = papers.first().and_then(|paper| serde_json::from_slice::<CertificateContent>(&paper.content).ok());
    let Some(content) = content else { return Ok(Some(first)) };
    let Some(said) = content.inspection.filter(|said| said.outcome == InspectionOutcome::Fail) else {
        return Ok(Some(first));
    };
    Ok(Some(FirstInspection {
        number: content.number,
        issued_on: Some(content.issued_on),
        open: said.to_repeat,
        deficiencies: said.deficiencies,
        present_again_by_on: said.present_again_by_on,
        may_repeat_failed_only: said.may_repeat_failed_only,
        ..first
    }))
}

/// A vehicle with its odometer readings, oldest first.
pub async fn vehicle_with_readings(
    con: &mut Con,
    branch: BranchId,
    id: VehicleId,
) -> Result<Option<(Vehicle, Vec<OdometerReading>)>> {
    let Some(vehicle) = vehicles::find(con, branch, id).await? else { return Ok(None) };
    Ok(Some((vehicle, odometer::list(con, id).await?)))
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
    instruments::records(con, branch, &ids).await
}
