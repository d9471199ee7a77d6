//! Links, each made in one place, so that an address can change without a search.

use std::fmt::Display;

#[allow(clippy::wildcard_imports, reason = "every noun has an address")]
use crate::model::ids::*;
use crate::model::stage::Stage;

/// The first start.
pub const SET_UP: &str = "/set-up";
/// The opening screen.
pub const TODAY: &str = "/";
/// What whoever answers for the shop settles.
pub const OFFICE: &str = "/office";
/// The keys that sign papers.
pub const KEYS: &str = "/office/keys";
/// The shop's tablets.
pub const TABLETS: &str = "/office/tablets";
/// One's own account.
pub const ACCOUNT: &str = "/account";
/// Languages of customer papers.
pub const LANGUAGES: &str = "/office/languages";
/// The log of deeds.
pub const LOG: &str = "/office/log";
/// People of the branch.
pub const PEOPLE: &str = "/office/people";
/// Instruments.
pub const INSTRUMENTS: &str = "/instruments";
/// Rule sets in force.
pub const RULES: &str = "/office/rules";
pub const RULE_STACK: &str = "/office/rules/stack";
/// The shop block.
pub const SHOP: &str = "/office/shop";

/// Customers.
pub const CUSTOMERS: &str = "/customers";
/// Vehicles.
pub const VEHICLES: &str = "/vehicles";
/// Bookings by day and bay.
pub const BAY_PLAN: &str = "/bay-plan";
/// The shop's bays.
pub const BAYS: &str = "/bay-plan/bays";
/// Job files.
pub const JOBS: &str = "/jobs";
/// Where a vehicle is taken in.
pub const ARRIVALS: &str = "/arrivals";

/// A bay.
pub fn bay(id: BayId) -> String {
    format!("{BAYS}/{id}")
}

/// A booking.
pub fn booking(id: BookingId) -> String {
    format!("{BAY_PLAN}/bookings/{id}")
}

/// What falls due.
pub const DUE: &str = "/due";
/// Messages owed.
pub const OUTBOX: &str = "/outbox";
/// Where a customer's one click goes, the token behind it.
pub const UNSUBSCRIBE: &str = "/unsubscribe/";

/// A sum of the Bench.
pub fn bench(key: &str) -> String {
    format!("/bench/{key}")
}

/// One duty.
pub fn duty(id: DutyId) -> String {
    format!("{DUE}/{id}")
}

/// One message.
pub fn message(id: MessageId) -> String {
    format!("{OUTBOX}/{id}")
}

/// A customer's own page.
pub fn own(token: &str) -> String {
    format!("/own/{token}")
}

/// The sign-in form, and where to go afterwards.
pub fn sign_in(wanted: &str) -> String {
    if wanted == "/" {
        return "/sign-in".to_owned();
    }
    let wanted: String = form_urlencoded::byte_serialize(wanted.as_bytes()).collect();
    format!("/sign-in?wanted={wanted}")
}

/// One of the people.
pub fn person(id: impl Display) -> String {
    format!("{PEOPLE}/{id}")
}

/// A vehicle.
pub fn vehicle(id: VehicleId) -> String {
    format!("/vehicles/{id}")
}

/// A customer.
pub fn customer(id: CustomerId) -> String {
    format!("/customers/{id}")
}

/// An instrument.
pub fn instrument(id: InstrumentId) -> String {
    format!("/instruments/{id}")
}

/// A job file, at the stage where it stands.
pub fn job(id: JobId) -> String {
    format!("/jobs/{id}")
}

/// A job file, open at a stage.
pub fn job_stage(id: JobId, stage: Stage) -> String {
    format!("/jobs/{id}/stages/{stage}")
}

/// A slot filled step by step.
pub fn job_guide(job: JobId, kind: &str, subject: &str) -> String {
    format!("{}/guide", job_slot(job, kind, subject))
}

/// The form of one kind of evidence.
pub fn job_slot(id: JobId, kind: &str, subject: &str) -> String {
    if subject.is_empty() { format!("/jobs/{id}/{kind}") } else { format!("/jobs/{id}/{kind}/{subject}") }
}

/// The parts of a job.
pub fn job_parts(id: JobId) -> String {
    format!("/jobs/{id}/parts")
}

/// The form that fits a part; of this kind, unless it is empty.
pub fn job_part_new(id: JobId, category: &str) -> String {
    let new = format!("{}/new", job_parts(id));
    if category.is_empty() { new } else { format!("{new}?category={category}") }
}

/// A part of a job.
pub fn job_part(id: JobId, part: PartId) -> String {
    format!("{}/{part}", job_parts(id))
}

/// The form that corrects a part.
pub fn job_part_edit(id: JobId, part: PartId) -> String {
    format!("{}/edit", job_part(id, part))
}

/// The form that takes a part off.
pub fn job_part_removal(id: JobId, part: PartId) -> String {
    format!("{}/removal", job_part(id, part))
}

/// Photos and files of a job.
pub fn job_photos(id: JobId) -> String {
    format!("/jobs/{id}/photos")
}

/// Findings of a job.
pub fn job_findings(id: JobId) -> String {
    format!("/jobs/{id}/findings")
}

/// Notes about a job.
pub fn job_notes(id: JobId) -> String {
    format!("/jobs/{id}/notes")
}

/// The repeat of an inspection.
pub fn job_repeat(id: JobId) -> String {
    format!("/jobs/{id}/repeat")
}

/// A repair that ends an inspection.
pub fn job_repair(id: JobId) -> String {
    format!("/jobs/{id}/repair")
}

/// Papers of a job.
pub fn job_papers(id: JobId) -> String {
    format!("/jobs/{id}/papers")
}

/// Where the label of a job's vehicle is made.
pub fn job_label(id: JobId) -> String {
    format!("/jobs/{id}/label")
}

/// A paper of a job that is drawn on asking.
pub fn job_paper(id: JobId, kind: &str) -> String {
    format!("/jobs/{id}/papers/{kind}")
}

/// Hold, release, cancel, hand over.
pub fn job_ending(id: JobId) -> String {
    format!("/jobs/{id}/ending")
}

/// Drives on both fuels.
pub fn job_road(id: JobId) -> String {
    job_slot(id, "road", "")
}

/// What one drive came to.
pub fn job_road_session(id: JobId, session: RoadSessionId) -> String {
    format!("{}/{session}", job_road(id))
}

/// What the columns of its logs are.
pub fn job_road_columns(id: JobId, session: RoadSessionId) -> String {
    format!("{}/columns", job_road_session(id, session))
}

/// Where it becomes evidence.
pub fn job_road_acceptance(id: JobId, session: RoadSessionId) -> String {
    format!("{}/acceptance", job_road_session(id, session))
}

/// The engine calibration with its corrections as regions.
pub fn job_road_corrections(id: JobId, session: RoadSessionId) -> String {
    format!("{}/corrections", job_road_session(id, session))
}

/// The estimate of a job.
pub fn job_estimate(id: JobId) -> String {
    job_slot(id, "estimate", "")
}

/// The form that writes its next version.
pub fn job_estimate_new(id: JobId) -> String {
    format!("{}/new", job_estimate(id))
}

/// A version of it.
pub fn job_estimate_version(id: JobId, number: i64) -> String {
    format!("{}/{number}", job_estimate(id))
}

/// A version as a paper.
pub fn job_estimate_pdf(id: JobId, number: i64) -> String {
    format!("{}/pdf", job_estimate_version(id, number))
}

/// The lines of a version for a spreadsheet.
pub fn job_estimate_csv(id: JobId, number: i64) -> String {
    format!("{}/csv", job_estimate_version(id, number))
}

/// Where it is noted that the customer agreed.
pub fn job_estimate_agreement(id: JobId) -> String {
    format!("{}/agreement", job_estimate(id))
}

/// Deposits of a job.
pub fn job_deposits(id: JobId) -> String {
    job_slot(id, "deposits", "")
}

/// The receipt of a deposit.
pub fn job_deposit_receipt(id: JobId, deposit: DepositId) -> String {
    format!("{}/{deposit}/receipt", job_deposits(id))
}

/// Where a deposit is taken back.
pub fn job_deposit_return(id: JobId, deposit: DepositId) -> String {
    format!("{}/{deposit}/return", job_deposits(id))
}

/// The form that lets one proof of a job pass.
pub fn job_waiver(id: JobId, proof: &str) -> String {
    format!("/jobs/{id}/waivers/{proof}")
}

/// An issued paper.
pub fn paper(id: PaperId) -> String {
    format!("/papers/{id}")
}

/// The public answer for a code; typed text is made fit for an address.
pub fn verify(code: &str) -> String {
    let code: String = form_urlencoded::byte_serialize(code.as_bytes()).collect();
    format!("/verify/{}", code.replace('+', "%20"))
}

/// The slot of a job's files.
pub fn job_photo_slot(id: JobId, slot: &str) -> String {
    format!("{}/{slot}", job_photos(id))
}

/// Findings of an instrument.
pub fn instrument_findings(id: InstrumentId) -> String {
    format!("{}/findings", instrument(id))
}

/// Findings that are open.
pub const FINDINGS: &str = "/findings";

/// A paper that a finding put in doubt.
pub fn finding_paper(finding: FindingId, paper: PaperId) -> String {
    format!("/findings/{finding}/papers/{paper}")
}

/// A finding.
pub fn finding(id: FindingId) -> String {
    format!("/findings/{id}")
}

/// A kept file.
pub fn attachment(id: AttachmentId) -> String {
    format!("/attachments/{id}")
}

/// A place in this house, taken from outside: a path that begins with one slash and goes nowhere else.
pub fn inside(wanted: &str) -> &str {
    let plain = wanted.starts_with('/') && !wanted.starts_with("//") && !wanted.contains(['\\', '\r', '\n', '\t']);
    if plain && !wanted.starts_with("/sign-") { wanted } else { TODAY }
}

/// One rule set, with the file that may stand in its place.
pub fn rule_set(name: &str) -> String {
    format!("{RULES}/sets/{name}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_wanted_after_sign_in_is_never_outside() {
        assert_eq!(inside("/jobs?open=1"), "/jobs?open=1");
        for bad in ["//evil.example", "https://evil.example", "/\\evil.example", "javascript:alert(1)", "", "/sign-out"]
        {
            assert_eq!(inside(bad), "/", "{bad}");
        }
    }
}
