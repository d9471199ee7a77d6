//! The test record of a job (items of ISO/IEC 17025:2017, 7.8.2): numbered by the job, not signed.

use super::{Ground, content, measured};
use crate::model::Coded;
use crate::model::evidence::{Entry, Evidence, JointVerdict, LeakDecay, LeakJoints, PressureKind};
use crate::model::paper::PersonOnPaper;
use crate::model::paper::measured::{Quantity, Verdict};
use crate::model::paper::test_record::{
    Condition, LeakTestOnPaper, PressureReference, TEST_RECORD_FORMAT, TestRecordContent, TestedItem,
};
use crate::rules::results;
use time::{Date, OffsetDateTime};

/// The record as of `on`, authorised by `authorised_by`.
pub(super) fn test_record(
    ground: &Ground<'_>,
    on: Date,
    authorised_by: PersonOnPaper,
    is_demonstration: bool,
) -> TestRecordContent {
    let (file, w) = (ground.file, &ground.w);
    let rows = measured::rows(ground);
    let attempts = |entry: &Entry| {
        // A test repeated is a chain of corrections; its length is the number of the attempt.
        let mut count = 1;
        let mut replaced = entry.replaces_id;
        while let Some(id) = replaced {
            count += 1;
            replaced = ground.history.iter().find(|old| old.id == id).and_then(|old| old.replaces_id);
        }
        count
    };
    let leak_tests = file.evidence.iter().filter_map(|entry| match &entry.body {
        Evidence::LeakJoints(test) => Some(joints(ground, entry, test, attempts(entry))),
        Evidence::LeakDecay(test) => Some(decay(ground, entry, test, attempts(entry))),
        _ => None,
    });
    let proving = || file.evidence.iter().filter(|entry| entry.body.stage() == crate::model::stage::Stage::Proving);
    let began_at: OffsetDateTime = proving().map(|entry| entry.measured_at).min().unwrap_or(file.job.opened_at);
    let ended_at = proving().map(|entry| entry.measured_at).max().unwrap_or(file.job.opened_at);
    TestRecordContent {
        format: TEST_RECORD_FORMAT.to_owned(),
        title: w.t("issue-test-record"),
        shop: content::shop_block(ground),
        place: content::shop_block(ground).address,
        number: format!("{}-T", file.job.number),
        job_number: file.job.number.clone(),
        customer_name: content::customer_name(ground),
        customer_contact: if file.keeper.phone.is_empty() {
            file.keeper.mail.clone()
        } else {
            file.keeper.phone.clone()
        },
        method: w.t("issue-methods"),
        item: TestedItem {
            vehicle: file.vehicle.title(),
            vin: file.vehicle.identity().to_owned(),
            plate: file.vehicle.plate.clone(),
            odometer_km: content::odometer_km(ground),
            fuel: content::gas(file.job.fuel),
            tested: w.t("issue-tested-system"),
            condition: String::new(),
        },
        received_on: (ground.day_of)(file.job.opened_at),
        began_at: (ground.local)(began_at),
        ended_at: (ground.local)(ended_at),
        issued_on: on,
        sampling: String::new(),
        measured: rows,
        leak_tests: leak_tests.collect(),
        deviations: String::new(),
        authorised_by,
        technician: content::technician(ground),
        instruments: measured::instruments(ground),
        conditions: conditions(ground),
        customer_supplied: Vec::new(),
        entered_later: content::entered_later(ground),
        rule_sets: content::rule_sets(ground),
        cautions: vec![w.t(format!("issue-caution-{}", file.job.fuel.code()))],
        supersedes: None,
        language: w.tag().to_owned(),
        beside_of: ground.beside_of.to_owned(),
        is_demonstration,
        software_version: env!("CARGO_PKG_VERSION").to_owned(),
    }
}

fn conditions(ground: &Ground<'_>) -> Vec<Condition> {
    let exhausts = ground.file.evidence.iter().filter_map(|entry| match &entry.body {
        Evidence::Exhaust(one) => Some(one),
        _ => None,
    });
    let condition = |one: &crate::model::evidence::Exhaust| {
        let fuel = if one.on_gas { ground.file.job.fuel.code() } else { "petrol" };
        let fuel = ground.w.t(format!("issue-fuel-{fuel}"));
        let name = ground.w.tv("issue-coolant-on", &[("fuel", fuel.into())]);
        Some(Condition { name, value: Quantity::rounded(one.coolant_c, 0, "°C")? })
    };
    exhausts.filter_map(condition).collect()
}

fn joints(ground: &Ground<'_>, entry: &Entry, test: &LeakJoints, attempt: i64) -> LeakTestOnPaper {
    let w = &ground.w;
    let said = |joint: &crate::model::evidence::Joint| {
        format!("{}: {}", joint.name, w.t(format!("joint-verdict-{}", joint.verdict.code())))
    };
    let is_dry = !test.joints.is_empty() && test.joints.iter().all(|joint| joint.verdict == JointVerdict::Dry);
    LeakTestOnPaper {
        section: w.t(format!("section-{}", test.section.code())),
        boundaries: w.t(format!("section-{}.bounds", test.section.code())),
        test_gas: w.t(format!("leak-method-{}", test.method.code())),
        pressure_reference: PressureReference::Gauge,
        pressure_start: Quantity::rounded(test.pressure_gauge_kpa, 0, "kPa"),
        pressure_end: None,
        ambient_pressure: None,
        temperature_start: None,
        temperature_end: None,
        temperature_ambient: None,
        began_at: (ground.local)(entry.measured_at),
        ended_at: (ground.local)(entry.measured_at),
        volume: None,
        volume_known_by: String::new(),
        joints: test.joints.iter().map(said).collect(),
        rate: None,
        rate_uncertainty: None,
        coverage_factor: String::new(),
        limit: None,
        limit_source: ground.proof_source(&crate::rules::Need::LeakJoints(test.section)),
        verdict: if is_dry { Verdict::Passes } else { Verdict::Fails },
        repair: entry.replaces_reason.clone(),
        attempt,
        by: entry.person_name.clone(),
    }
}

fn decay(ground: &Ground<'_>, entry: &Entry, test: &LeakDecay, attempt: i64) -> LeakTestOnPaper {
    use crate::calc::decision::Verdict as Said;
    let w = &ground.w;
    let judged = results::decay(ground.file, ground.book, entry, test, ground.day_of).ok();
    let line = judged.as_ref().and_then(|judged| judged.limit.as_ref()).and_then(|limit| limit.line());
    let reference = match test.pressure_kind {
        PressureKind::Gauge => PressureReference::Gauge,
        PressureKind::Absolute => PressureReference::Absolute,
    };
    let kpa = |value| Quantity::rounded(value, 2, "kPa");
    let celsius = |value| Quantity::rounded(value, 2, "°C");
    LeakTestOnPaper {
        section: w.t(format!("section-{}", test.section.code())),
        boundaries: w.t(format!("section-{}.bounds", test.section.code())),
        test_gas: w.t(format!("test-gas-{}", test.test_gas.code())),
        pressure_reference: reference,
        pressure_start: kpa(test.start_kpa),
        pressure_end: kpa(test.end_kpa),
        ambient_pressure: kpa(test.ambient_kpa),
        temperature_start: celsius(test.start_c),
        temperature_end: celsius(test.end_c),
        temperature_ambient: None,
        began_at: (ground.local)(test.started_at),
        ended_at: (ground.local)(test.ended_at),
        volume: Quantity::rounded(test.volume_l, 2, "L"),
        volume_known_by: test.volume_how.clone(),
        joints: Vec::new(),
        rate: judged.as_ref().and_then(|one| Quantity::rounded(one.result.rate_cm3_h, 1, "cm³/h")),
        rate_uncertainty: judged
            .as_ref()
            .and_then(|one| Quantity::rounded(one.result.expanded_uncertainty_cm3_h, 1, "cm³/h")),
        coverage_factor: "2".to_owned(),
        limit: judged.as_ref().and_then(|one| Quantity::rounded(one.test.limit_cm3_h, 0, "cm³/h")),
        limit_source: line.map(|line| ground.limit_source(line)).unwrap_or_default(),
        verdict: match judged.as_ref().map(|one| one.result.verdict) {
            Some(Said::Pass) => Verdict::Passes,
            Some(Said::Fail) => Verdict::Fails,
            Some(Said::CannotTell) | None => Verdict::CannotTell,
        },
        repair: entry.replaces_reason.clone(),
        attempt,
        by: entry.person_name.clone(),
    }
}
