//! A job file that chance picked, as an auditor reads it: what it is, how each proof stands, every entry, its papers.

use super::Reading;
use super::history::slot;
use crate::db;
use crate::model::evidence::{Entry, Evidence};
use crate::model::ids::{EvidenceId, JobId};
use crate::model::job_file::JobFile;
use crate::model::paper::audit_pack::{PackCell, PackJob, PackSection};
use crate::papers::reasons;
use crate::rules::Proof;
use crate::shop::Refusal;
use crate::shop::assessed::Assessed;

pub(super) async fn job(con: &mut db::Con, reading: &Reading<'_>, id: JobId) -> Result<PackJob, Refusal> {
    let read = Assessed::read(con, reading.branch.id, id, reading.now).await?;
    let ids: Vec<_> = read.history.iter().flat_map(|entry| entry.instruments.iter().copied()).collect();
    let records = db::instruments::records(con, reading.branch.id, &distinct(ids)).await?;
    let code = |id: &crate::model::ids::InstrumentId| {
        records.iter().find(|record| record.instrument.id == *id).map(|record| record.instrument.code.clone())
    };
    let papers = db::papers::list_of_job(con, reading.branch.id, id).await?;
    let papers: Vec<String> = papers.into_iter().map(|paper| paper.number).collect();
    let entries = read.history.iter().map(|entry| {
        let codes: Vec<String> = entry.instruments.iter().filter_map(code).collect();
        self::entry(reading, entry, &read.history, &codes.join(", "))
    });
    let entries =
        reading.section("entries", String::new(), &["what", "measured", "entered", "with"], entries.collect());
    Ok(PackJob {
        number: read.file.job.number.clone(),
        facts: facts(reading, &read.file, papers.join(", ")),
        sections: vec![proofs(reading, &read.proofs, &customers(&read.file)), entries],
    })
}

fn distinct<T: Ord>(mut all: Vec<T>) -> Vec<T> {
    all.sort_unstable();
    all.dedup();
    all
}

/// Vehicle and days. Who keeps it is left out: an auditor sees that in the job file, as far as it is granted.
fn facts(reading: &Reading<'_>, file: &JobFile, papers: String) -> Vec<(String, String)> {
    let (w, job, vehicle) = (reading.w, &file.job, &file.vehicle);
    let kind =
        [("kind", w.t(format!("job-kind-{}", job.kind)).into()), ("fuel", w.t(format!("fuel-{}", job.fuel)).into())];
    let state = w.t(format!("job-state-{}", job.state));
    let ended = job.ended_at.map(|at| reading.moment(at)).unwrap_or_default();
    let fact = |key: &str, value: String| (w.t(format!("audit-pack-fact-{key}")), value);
    vec![
        fact("kind", w.tv("job-kind-and-fuel", &kind)),
        fact("vehicle", format!("{} {}", vehicle.make, vehicle.model).trim().to_owned()),
        fact("plate", vehicle.plate.clone()),
        fact("vin", vehicle.vin.clone()),
        fact("opened", reading.moment(job.opened_at)),
        fact("state", if job.ended_reason.is_empty() { state } else { format!("{state}: {}", job.ended_reason) }),
        fact("ended", ended),
        fact("papers", papers),
    ]
}

/// Names of customers that a reason could say: who keeps the vehicle, who took it over.
fn customers(file: &JobFile) -> Vec<String> {
    let taken = file.entry("hand-over", "").and_then(|entry| match &entry.body {
        Evidence::HandOver(seen) => Some(seen.received_by.clone()),
        _ => None,
    });
    let all = [file.keeper.name.clone(), file.keeper.name_in_latin.clone()].into_iter().chain(taken);
    all.filter(|name| !name.is_empty()).collect()
}

fn proofs(reading: &Reading<'_>, proofs: &[Proof], customers: &[String]) -> PackSection {
    let w = reading.w;
    let left_out = w.t("audit-pack-name-left-out");
    let without = |said: String| customers.iter().fold(said, |said, name| said.replace(name.as_str(), &left_out));
    let row = |proof: &Proof| {
        let late = if proof.is_entered_later { w.t("state-entered-later") } else { String::new() };
        let by = proof.by.clone().unwrap_or_default();
        vec![
            PackCell::new(reasons::proof_title(w, proof)),
            PackCell::new(w.t(format!("state-{}", proof.state))).and(late),
            PackCell::new(without(reasons::why(w, &proof.why))),
            PackCell::new(by).and(proof.at.map(|at| reading.moment(at)).unwrap_or_default()),
        ]
    };
    reading.section("proofs", String::new(), &["proof", "state", "why", "by"], proofs.iter().map(row).collect())
}

fn entry(reading: &Reading<'_>, one: &Entry, all: &[Entry], codes: &str) -> Vec<PackCell> {
    let w = reading.w;
    let corrects = |id: EvidenceId| all.iter().find(|earlier| earlier.id == id).map(|earlier| earlier.recorded_at);
    let second = match one.replaces_id.and_then(corrects) {
        Some(at) => {
            let values = [("at", reading.moment(at).into()), ("reason", one.replaces_reason.as_str().into())];
            w.tv("audit-pack-corrects", &values)
        }
        None => String::new(),
    };
    let late = if one.is_entered_later() { w.t("state-entered-later") } else { String::new() };
    vec![
        PackCell::new(slot(reading, &one.body)).and(second),
        PackCell::new(reading.moment(one.measured_at)),
        PackCell::new(reading.moment(one.recorded_at)).and(late),
        PackCell::new(codes).and(&one.person_name),
    ]
}
