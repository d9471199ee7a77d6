//! Containers and cylinders on paper, and the parts that were taken off.

use super::Ground;
use crate::model::Coded;
use crate::model::duty::NewDuty;
use crate::model::evidence::{Evidence, VesselCheck};
use crate::model::paper::certificate::{ContainerOnPaper, RemovedOnPaper};
use crate::model::paper::measured::Quantity;
use crate::model::part::{Part, PartCategory};
use crate::rules;

/// Every vessel of the job: those on the vehicle.
pub(super) fn containers(ground: &Ground<'_>, duties: &[NewDuty]) -> Vec<ContainerOnPaper> {
    ground.file.fitted().filter(|part| part.is_vessel()).map(|part| container(ground, part, duties)).collect()
}

fn check<'a>(ground: &'a Ground<'_>) -> Option<&'a VesselCheck> {
    let shown = ground.file.shown("vessel-check", "", |body| match body {
        Evidence::VesselCheck(one) => Some(one),
        _ => None,
    });
    shown.map(|(_, one)| one)
}

fn container(ground: &Ground<'_>, part: &Part, duties: &[NewDuty]) -> ContainerOnPaper {
    let w = &ground.w;
    let capacity_l = part.capacity_l.unwrap_or(0.0);
    let is_lpg = part.category == PartCategory::Container;
    let next = duties.iter().filter(|duty| duty.part_id == Some(part.id)).map(|duty| duty.due_on).min();
    #[expect(clippy::cast_possible_truncation, reason = "a few hundred litres; rounded down on purpose")]
    let floor_l = capacity_l.floor() as i64;
    let check = check(ground);
    let looked = check.and_then(|check| check.looked.iter().find(|one| one.part_id == part.id));
    let kinds = looked.map(|one| one.kinds.iter().map(|kind| w.t(format!("vessel-inspection-{}", kind.code()))));
    let findings = check.map(|check| check.findings.iter().filter(|one| one.part_id == part.id));
    ContainerOnPaper {
        maker: part.maker.clone(),
        approval_mark: part.approval_mark.clone(),
        serial: part.serial.clone(),
        shape: part.type_name.clone(),
        water_capacity: Quantity::rounded(capacity_l, 1, "L").unwrap_or_else(|| Quantity::whole(0, "L")),
        water_capacity_floor_l: floor_l,
        fill_limit_percent: is_lpg.then(|| fill_limit_percent(ground)).flatten(),
        working_pressure: part.working_pressure_kpa.and_then(|kpa| Quantity::rounded(kpa, 0, "kPa")),
        test_pressure: part.test_pressure_kpa.and_then(|kpa| Quantity::rounded(kpa, 0, "kPa")),
        made: super::content::made(part),
        last_tested: part.last_tested_on.map(|on| on.to_string()).unwrap_or_default(),
        inspection_kind: kinds.map(|kinds| kinds.collect::<Vec<_>>().join(", ")).unwrap_or_default(),
        next_test_on: next,
        end_of_life_on: part.end_of_life_on,
        location: part.place.clone(),
        findings: findings.map(|all| all.map(|one| finding(ground, one)).collect()).unwrap_or_default(),
        inspected_by: looked.and(check).map(by).unwrap_or_default(),
        is_found: part.is_found(),
    }
}

fn by(check: &VesselCheck) -> String {
    let parts = [check.from_outside.as_str(), check.inspector_level.as_str()];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}

fn finding(ground: &Ground<'_>, one: &crate::model::evidence::VesselFinding) -> String {
    let w = &ground.w;
    let level = w.t(format!("vessel-level-{}", one.level.code()));
    let key = if one.photo.is_some() { "issue-vessel-finding-photo" } else { "issue-vessel-finding" };
    w.tv(key, &[("words", one.words.as_str().into()), ("level", level.into()), ("action", one.action.as_str().into())])
}

/// The fill limit of the rules in force, whole per cent.
fn fill_limit_percent(ground: &Ground<'_>) -> Option<i64> {
    let file = ground.file;
    let on = (ground.day_of)(file.job.opened_at);
    let limit = ground.book.limit(rules::Quantity::FillPercent, &file.job, &file.vehicle, None, on)?;
    #[expect(clippy::cast_possible_truncation, reason = "a per cent; rounded down on purpose")]
    limit.most.map(|(most, _)| most.floor() as i64)
}

/// What this job took off.
pub(super) fn removed(ground: &Ground<'_>) -> Vec<RemovedOnPaper> {
    let job = ground.file.job.id;
    let gone = ground.file.parts.iter().filter(|part| part.removed_in == Some(job));
    gone.filter_map(|part| {
        Some(RemovedOnPaper {
            description: ground.w.t(format!("part-category-{}", part.category.code())),
            maker_and_type: format!("{} {}", part.maker, part.type_name).trim().to_owned(),
            approval_mark: part.approval_mark.clone(),
            serial_or_batch: if part.serial.is_empty() { part.batch.clone() } else { part.serial.clone() },
            removed_on: part.removed_on?,
            reason: part.removed_reason.clone(),
            whereabouts: part.whereabouts.clone(),
        })
    })
    .collect()
}
