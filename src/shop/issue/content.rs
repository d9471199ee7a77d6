//! The content of a certificate, from the job file alone.

use time::Date;

use crate::model::Coded;
use crate::model::approval_mark::{ApprovalMark, Regulation};
use crate::model::branch::Branch;
use crate::model::duty::{DutyKind, NewDuty};
use crate::model::evidence::{Entry, Evidence};
use crate::model::job::{Fuel, JobKind};
use crate::model::paper::certificate::{
    CERTIFICATE_FORMAT, CertificateContent, ConformityStatement, DutyOnPaper, EngineOnPaper, ExceptionKind,
    PartOnPaper, ProofException, ProofSummary, SeenPhoto, SystemOnPaper, VehicleOnPaper, WorkDays,
};
use crate::model::paper::measured::Quantity;
use crate::model::paper::{
    CertificateKind, CheckLine, EnteredLater, GasFuel, PersonOnPaper, PersonalPart, RuleSetOnPaper, ShopBlock,
};
use crate::model::part::{DatePrecision, Part, PartCategory};
use crate::rules::{self, State};
use crate::seal::CanonicalError;

use super::{Ground, Issue, inspection, measured, vessels};

/// The gas as papers spell it.
pub(super) const fn gas(fuel: Fuel) -> GasFuel {
    match fuel {
        Fuel::Lpg => GasFuel::Lpg,
        Fuel::Cng => GasFuel::Cng,
    }
}

/// The shop block of the branch.
pub(super) fn shop_block(ground: &Ground<'_>) -> ShopBlock {
    block_of(ground.branch)
}

/// The name of the keeper in letters that papers have, as far as a spelling is known.
pub(super) fn customer_name(ground: &Ground<'_>) -> String {
    let keeper = &ground.file.keeper;
    if keeper.name_in_latin.is_empty() { keeper.name.clone() } else { keeper.name_in_latin.clone() }
}

/// The shop block of a branch.
pub(in crate::shop) fn block_of(branch: &Branch) -> ShopBlock {
    ShopBlock {
        name: branch.name.clone(),
        address: one_line(&branch.address),
        phone: branch.phone.clone(),
        licence: branch.licence_number.clone(),
        branch: String::new(),
    }
}

/// The keeper's personal part with this salt.
pub(super) fn personal_part(ground: &Ground<'_>, salt: &str) -> PersonalPart {
    let keeper = &ground.file.keeper;
    PersonalPart {
        name: keeper.name.clone(),
        name_as_printed: keeper.name_in_latin.clone(),
        address: one_line(&keeper.address),
        phone: keeper.phone.clone(),
        mail: keeper.mail.clone(),
        salt: salt.to_owned(),
    }
}

/// The rule sets in the book, with the checksum of each file.
pub(super) fn rule_sets(ground: &Ground<'_>) -> Vec<RuleSetOnPaper> {
    let on_paper = |set: &rules::RuleSet| RuleSetOnPaper {
        name: set.title.clone(),
        version: set.version.clone(),
        sha256: set.sha256.clone(),
    };
    ground.book.sets.iter().map(on_paper).collect()
}

pub(super) fn one_line(text: &str) -> String {
    text.lines().map(str::trim).filter(|line| !line.is_empty()).collect::<Vec<_>>().join(", ")
}

/// Everything the certificate says.
///
/// # Errors
/// [`CanonicalError`] when the personal part has no canonical form.
pub(super) fn certificate(ground: &Ground<'_>, issue: &Issue<'_>) -> Result<CertificateContent, CanonicalError> {
    let file = ground.file;
    let personal = personal_part(ground, issue.salt);
    let duties = inspection::duties(ground, issue.on);
    // A job whose paper is its test record is previewed as what a larger one would give; it is never issued.
    let kind = CertificateKind::of(&file.job).unwrap_or(CertificateKind::Inspection);
    Ok(CertificateContent {
        format: CERTIFICATE_FORMAT.to_owned(),
        number: issue.number.clone(),
        previous_sha256: issue.previous_sha256.clone(),
        kind,
        language: ground.w.tag().to_owned(),
        is_demonstration: issue.is_demonstration,
        issued_on: issue.on,
        issued_at: issue.at,
        place: one_line(&ground.branch.address),
        shop: shop_block(ground),
        job_number: file.job.number.clone(),
        personal_digest: crate::seal::personal_digest(&personal)?,
        vehicle: vehicle(ground),
        engine: engine(ground),
        system: system(ground),
        parts: file.fitted().filter(|part| !part.is_vessel()).map(|one| part(ground, one, &duties)).collect(),
        containers: vessels::containers(ground, &duties),
        removed: vessels::removed(ground),
        photos_seen: photos_seen(ground, issue),
        work: WorkDays { received_on: (ground.day_of)(file.job.opened_at), finished_on: last_day(ground, issue.on) },
        measured: measured::rows(ground),
        instruments: measured::instruments(ground),
        proofs: proofs(ground),
        entered_later: entered_later(ground),
        inspection: inspection::block(ground, issue, &duties),
        conformity: conformity(ground),
        states_fitting_check: kind == CertificateKind::Conversion,
        changes_for_vehicle_papers: changes(ground),
        next_duties: duties.iter().map(|duty| duty_on_paper(ground, duty)).collect(),
        authority_test_to_come: authority_test(ground),
        remarks: remarks(ground),
        signatory: issue.signatory.clone(),
        technician: technician(ground),
        rule_sets: rule_sets(ground),
        cautions: cautions(ground),
        supersedes: issue.supersedes.clone(),
        check: CheckLine {
            code: issue.code.clone(),
            url: issue.url.clone(),
            key_id: issue.key_id.clone(),
            key_fingerprint: crate::seal::fingerprint(&issue.key_id),
        },
        software_version: env!("CARGO_PKG_VERSION").to_owned(),
        beside: None,
    })
}

/// The same in the keeper's language, beside that of the rules.
///
/// # Errors
/// As [`certificate`].
pub(super) fn with_beside(
    content: CertificateContent,
    keeper: &Ground<'_>,
    issue: &Issue<'_>,
) -> Result<CertificateContent, CanonicalError> {
    if keeper.w.tag() == content.language {
        return Ok(content);
    }
    let beside = Some(Box::new(certificate(keeper, issue)?));
    Ok(CertificateContent { beside, ..content })
}

/// The slots that the signatory ticked, with the checksums of what is in them.
fn photos_seen(ground: &Ground<'_>, issue: &Issue<'_>) -> Vec<SeenPhoto> {
    let of = |slot: &String| {
        let files = ground.file.attachments.iter().filter(|one| one.slot == *slot);
        let mut sha256: Vec<String> = files.map(|one| one.sha256.clone()).collect();
        sha256.sort();
        SeenPhoto { slot: slot.clone(), sha256 }
    };
    let asked = super::photo_slots(ground.proofs);
    asked
        .iter()
        .filter(|slot| issue.photos_seen.contains(slot))
        .map(of)
        .filter(|seen| !seen.sha256.is_empty())
        .collect()
}

/// Only a change to the vehicle waits for the authority; an inspection or an exchanged container does not.
fn authority_test(ground: &Ground<'_>) -> String {
    match ground.file.job.kind {
        JobKind::Conversion | JobKind::Removal => ground.w.t("issue-authority-test"),
        _ => String::new(),
    }
}

fn cautions(ground: &Ground<'_>) -> Vec<String> {
    let usual = ground.w.t(format!("issue-caution-{}", ground.file.job.fuel.code()));
    inspection::cautions(ground).into_iter().chain([usual]).collect()
}

/// What a removal states, and what a repeat is.
fn remarks(ground: &Ground<'_>) -> Vec<String> {
    let file = ground.file;
    let mut said = inspection::remarks(ground);
    let checklist = file.shown("checklist", "", |body| match body {
        Evidence::Checklist(list) => Some(list),
        _ => None,
    });
    if let (JobKind::Removal, Some((_, list))) = (file.job.kind, checklist) {
        let lines = ground.book.checks(&file.job);
        let passed = lines.iter().filter(|line| {
            list.answers.get(&line.id).is_some_and(|answer| answer.answer == crate::model::evidence::CheckAnswer::Pass)
        });
        said.extend(passed.map(|line| line.title.clone().unwrap_or_else(|| ground.w.t(format!("check-{}", line.id)))));
    }
    said
}

fn vehicle(ground: &Ground<'_>) -> VehicleOnPaper {
    let vehicle = &ground.file.vehicle;
    VehicleOnPaper {
        make: vehicle.make.clone(),
        model: vehicle.model.clone(),
        type_code: String::new(),
        category: vehicle.category.code().to_owned(),
        vin: vehicle.identity().to_owned(),
        plate: vehicle.plate.clone(),
        plate_country: vehicle.plate_country.clone(),
        first_registered: vehicle.first_registered_on.map(|on| on.to_string()).unwrap_or_default(),
        odometer_km: odometer_km(ground),
    }
}

/// The odometer as read at arrival, else the last reading.
pub(super) fn odometer_km(ground: &Ground<'_>) -> Option<i64> {
    let arrival = ground.file.shown("arrival", "", |body| match body {
        Evidence::Arrival(arrival) => Some(arrival),
        _ => None,
    });
    arrival.map(|(_, one)| one.odometer_km).or_else(|| ground.file.readings.last().map(|one| one.km))
}

fn engine(ground: &Ground<'_>) -> EngineOnPaper {
    let vehicle = &ground.file.vehicle;
    EngineOnPaper {
        code: vehicle.engine_code.clone(),
        number: vehicle.engine_number.clone(),
        power: vehicle.rated_power_kw.and_then(|kw| Quantity::rounded(kw, 0, "kW")),
        displacement: vehicle.displacement_cm3.map(|cm3| Quantity::whole(cm3, "cm³")),
        engine_cylinders: vehicle.engine_cylinders,
    }
}

fn system(ground: &Ground<'_>) -> SystemOnPaper {
    let fitted: Vec<&Part> = ground.file.fitted().collect();
    let of = |category| fitted.iter().find(|part| part.category == category);
    let heart = of(PartCategory::Vaporiser).or_else(|| of(PartCategory::PressureRegulator));
    // A system approved as a whole shows it by a mark of UN R115 on one of its parts or its plate.
    let whole = fitted
        .iter()
        .find(|part| part.approval_mark.parse::<ApprovalMark>().is_ok_and(|mark| mark.regulation == Regulation::R115));
    let control = of(PartCategory::ControlUnit);
    SystemOnPaper {
        fuel: gas(ground.file.job.fuel),
        make: heart.map(|part| part.maker.clone()).unwrap_or_default(),
        type_name: ground.w.t(format!("system-kind-{}", ground.file.job.system_kind.code())),
        approval_number: whole.map(|part| part.approval_mark.clone()).unwrap_or_default(),
        approval_holder: whole.map(|part| part.maker.clone()).unwrap_or_default(),
        control_unit: control.map(|part| maker_type_serial(part)).unwrap_or_default(),
    }
}

fn maker_type_serial(part: &Part) -> String {
    let words = [part.maker.as_str(), part.type_name.as_str(), part.serial.as_str()];
    words.into_iter().filter(|word| !word.is_empty()).collect::<Vec<_>>().join(", ")
}

/// Year and month as the plate shows them: `2026-03`, or `2026` where the month is not known.
pub(super) fn made(part: &Part) -> String {
    match (part.made_on, part.made_precision) {
        (None, _) => String::new(),
        (Some(on), Some(DatePrecision::Year)) => format!("{:04}", on.year()),
        (Some(on), _) => format!("{:04}-{:02}", on.year(), u8::from(on.month())),
    }
}

fn part(ground: &Ground<'_>, part: &Part, duties: &[NewDuty]) -> PartOnPaper {
    let nozzle = (part.category == PartCategory::InjectorRail).then(|| nozzles(ground)).flatten();
    let name = ground.w.t(format!("part-category-{}", part.category.code()));
    let of_part = |duty: &&NewDuty| match part.category {
        PartCategory::Filter => duty.kind == DutyKind::Filter && duty.part_id.is_none_or(|id| id == part.id),
        _ => duty.part_id == Some(part.id),
    };
    let on_paper = PartOnPaper {
        description: nozzle.map_or(name.clone(), |nozzle| format!("{name}, {nozzle}")),
        maker_and_type: format!("{} {}", part.maker, part.type_name).trim().to_owned(),
        approval_mark: part.approval_mark.clone(),
        serial_or_batch: if part.serial.is_empty() { part.batch.clone() } else { part.serial.clone() },
        made: made(part),
        next_duty: duties.iter().filter(of_part).map(|duty| duty_on_paper(ground, duty)).collect(),
        is_found: part.is_found(),
    };
    inspection::mark_found(ground, on_paper)
}

/// "nozzles 2.2 mm", from the cylinder table.
fn nozzles(ground: &Ground<'_>) -> Option<String> {
    let (_, table) = ground.file.shown("cylinder-table", "", |body| match body {
        Evidence::CylinderTable(table) => Some(table),
        _ => None,
    })?;
    let mut sizes: Vec<String> = table.rows.iter().map(|row| ground.w.number(row.nozzle_mm, 1)).collect();
    sizes.dedup();
    Some(ground.w.tv("issue-nozzles", &[("sizes", sizes.join(", ").into())]))
}

/// A duty as papers print it.
pub(super) fn duty_on_paper(ground: &Ground<'_>, duty: &NewDuty) -> DutyOnPaper {
    // A shop's own line is the shop's decision and says so itself.
    let line = ground.book.sets.iter().flat_map(|set| &set.interval).find(|line| line.id == duty.line);
    let is_shop = ground.book.sets.iter().any(|set| set.is_shop && line.is_some_and(|line| line.set.name == set.name));
    let key = if duty.is_checked || is_shop { "issue-limit-of-line" } else { "issue-limit-unread" };
    let source = match line {
        Some(line) => {
            let values = [
                ("source", duty.source.as_str().into()),
                ("line", line.id.as_str().into()),
                ("set", line.set.title.as_str().into()),
            ];
            ground.w.tv(key, &values)
        }
        // A fill stop still to be shown is an answer, no line.
        None if duty.is_checked => duty.source.clone(),
        None => ground.w.tv("issue-to-be-confirmed", &[("source", duty.source.as_str().into())]),
    };
    DutyOnPaper {
        what: ground.w.t(format!("duty-kind-{}", duty.kind.code())),
        due_on: Some(duty.due_on),
        due_at_km: duty.due_km,
        every_km: None,
        every_months: None,
        decided_by: source,
    }
}

fn last_day(ground: &Ground<'_>, today: Date) -> Date {
    let last = ground.file.evidence.iter().map(|entry| entry.measured_at).max();
    last.map_or(today, |at| (ground.day_of)(at))
}

fn proofs(ground: &Ground<'_>) -> ProofSummary {
    let asked = ground.proofs.iter().filter(|proof| proof.before == rules::Deadline::Issue);
    let met = asked.clone().filter(|proof| proof.state == State::Met).count();
    let exception = |proof: &&rules::Proof| {
        let kind = match proof.state {
            State::Waived => ExceptionKind::Waived,
            State::NotApplicable => ExceptionKind::NotApplicable,
            _ => return None,
        };
        let waiver = ground.file.waivers.iter().find(|waiver| waiver.proof == proof.id)?;
        Some(ProofException {
            kind,
            proof: ground.proof_title(proof),
            rule_line: proof.id.clone(),
            person: waiver.person_name.clone(),
            reason: waiver.reason.clone(),
            decided_at: waiver.at,
        })
    };
    let unconfirmed = |proof: &&rules::Proof| {
        let is_open = !proof.is_checked && !proof.is_practice;
        is_open.then(|| format!("{}: {}", ground.proof_title(proof), proof.source))
    };
    let whole = |n: usize| i64::try_from(n).unwrap_or(i64::MAX);
    ProofSummary {
        asked: whole(asked.clone().count()),
        met: whole(met),
        exceptions: asked.clone().filter_map(|proof| exception(&proof)).chain(inspection::exceptions(ground)).collect(),
        to_be_confirmed: asked.filter_map(|proof| unconfirmed(&proof)).collect(),
    }
}

/// Entries written down late that no measured row shows already.
pub(super) fn entered_later(ground: &Ground<'_>) -> Vec<EnteredLater> {
    late(ground, ground.file.evidence.iter())
}

/// Those of these entries that were written down late.
pub(super) fn late<'a>(ground: &Ground<'_>, entries: impl Iterator<Item = &'a Entry>) -> Vec<EnteredLater> {
    let late = entries.filter(|entry| entry.is_entered_later());
    late.map(|entry| {
        let (kind, subject) = (entry.body.kind(), entry.body.subject());
        let slot = if subject.is_empty() { kind.to_owned() } else { format!("{kind}-{subject}") };
        EnteredLater {
            what: ground.w.t(format!("slot-{slot}")),
            happened_at: (ground.local)(entry.measured_at),
            entered_at: (ground.local)(entry.recorded_at),
            by: entry.person_name.clone(),
            reason: entry.replaces_reason.clone(),
        }
    })
    .collect()
}

fn conformity(ground: &Ground<'_>) -> Vec<ConformityStatement> {
    let sets = ground.book.titles();
    let against: Vec<String> = sets.into_iter().map(|(title, version)| format!("{title} {version}")).collect();
    vec![ConformityStatement {
        against: against.join(", "),
        covers: ground.w.t("issue-covers-all-proofs"),
        is_met: rules::may_issue(ground.proofs) && !inspection::has_failed(ground),
    }]
}

fn changes(ground: &Ground<'_>) -> Vec<String> {
    let fuel = ground.w.t(format!("issue-fuel-{}", ground.file.job.fuel.code()));
    match ground.file.job.kind {
        JobKind::Conversion => vec![ground.w.tv("issue-change-fuel", &[("fuel", fuel.into())])],
        JobKind::Removal => vec![ground.w.t("issue-change-petrol")],
        _ => Vec::new(),
    }
}

/// Whoever measured last: the person behind the results.
pub(super) fn technician(ground: &Ground<'_>) -> PersonOnPaper {
    let proving = ground.file.evidence.iter().filter(|entry| entry.body.stage() == crate::model::stage::Stage::Proving);
    let last = proving.max_by_key(|entry| entry.measured_at).or(ground.file.evidence.last());
    PersonOnPaper {
        name: last.map(|entry| entry.person_name.clone()).unwrap_or_default(),
        authorisation: String::new(),
        authorised_until_on: None,
    }
}
