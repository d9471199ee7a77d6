//! Instruments with their certificates, persons with their authorisations: who measured, and with what, in a period.

use time::Date;

use super::Reading;
use crate::db;
use crate::model::instrument::{InstrumentCertificate, InstrumentRecord};
use crate::model::paper::audit_pack::{PackCell, PackSection};
use crate::shop::Refusal;

pub(super) async fn sections(con: &mut db::Con, reading: &Reading<'_>) -> Result<Vec<PackSection>, Refusal> {
    Ok(vec![instruments(con, reading).await?, persons(con, reading).await?, grants(con, reading).await?])
}

async fn instruments(con: &mut db::Con, reading: &Reading<'_>) -> Result<PackSection, Refusal> {
    let all = db::instruments::list(con, reading.branch.id, reading.span.0).await?;
    let was_here = |record: &&InstrumentRecord| record.instrument.retired_on.is_none_or(|on| on > reading.from_on);
    let rows = all.iter().filter(was_here).map(|record| instrument(reading, record)).collect();
    let heads = ["instrument", "certificate", "valid", "checks"];
    Ok(reading.section("instruments", String::new(), &heads, rows))
}

fn instrument(reading: &Reading<'_>, record: &InstrumentRecord) -> Vec<PackCell> {
    let (w, one) = (reading.w, &record.instrument);
    let kind = w.t(format!("instrument-kind-{}", one.kind));
    let type_plate = [one.maker.as_str(), &one.type_name, &one.serial];
    let type_plate: Vec<&str> = type_plate.into_iter().filter(|text| !text.is_empty()).collect();
    let in_period = |one: &&InstrumentCertificate| one.calibrated_on <= reading.to_on && one.due_on >= reading.from_on;
    let certificate = |one: &InstrumentCertificate| {
        let values = [
            ("number", one.number.as_str().into()),
            ("laboratory", one.laboratory.as_str().into()),
            ("from", w.medium_date(one.calibrated_on).into()),
            ("to", w.medium_date(one.due_on).into()),
        ];
        w.tv("audit-pack-certificate", &values)
    };
    let certificates: Vec<String> = record.certificates.iter().filter(in_period).map(certificate).collect();
    let certificates =
        if certificates.is_empty() { w.t("audit-pack-no-certificate") } else { certificates.join(" · ") };
    let (begin, end) = reading.span;
    let checks = record.checks.iter().filter(|check| check.checked_at >= begin && check.checked_at < end);
    let (passed, failed): (Vec<_>, Vec<_>) = checks.partition(|check| check.has_passed);
    let checks = if one.needs_daily_check || !(passed.is_empty() && failed.is_empty()) {
        w.tv("audit-pack-checks", &[("passed", passed.len().into()), ("failed", failed.len().into())])
    } else {
        w.t("audit-pack-no-daily-check")
    };
    vec![
        PackCell::new(format!("{}, {kind}", one.code)).and(type_plate.join(", ")),
        PackCell::new(certificates),
        PackCell::new(validity(reading, record)),
        PackCell::new(checks),
    ]
}

/// Whether its calibration covered the whole period, else the days that it did not.
fn validity(reading: &Reading<'_>, record: &InstrumentRecord) -> String {
    let w = reading.w;
    let last =
        record.instrument.retired_on.and_then(Date::previous_day).map_or(reading.to_on, |on| on.min(reading.to_on));
    let gaps = gaps(reading.from_on, last, |day| record.is_in_calibration(day));
    if gaps.is_empty() {
        return w.t("audit-pack-valid-throughout");
    }
    let said = gaps.into_iter().map(|(from, to)| {
        let values = [("from", w.medium_date(from).into()), ("to", w.medium_date(to).into())];
        w.tv("audit-pack-from-to", &values)
    });
    w.tv("audit-pack-not-valid", &[("days", said.collect::<Vec<_>>().join(" · ").into())])
}

/// Stretches of days, first and last counted in, on which something does not hold.
fn gaps(from: Date, to: Date, holds: impl Fn(Date) -> bool) -> Vec<(Date, Date)> {
    let mut gaps: Vec<(Date, Date)> = Vec::new();
    let mut day = Some(from);
    while let Some(on) = day.filter(|on| *on <= to) {
        if !holds(on) {
            match gaps.last_mut() {
                Some((_, end)) if end.next_day() == Some(on) => *end = on,
                _ => gaps.push((on, on)),
            }
        }
        day = on.next_day();
    }
    gaps
}

async fn persons(con: &mut db::Con, reading: &Reading<'_>) -> Result<PackSection, Refusal> {
    let w = reading.w;
    let held = db::audit_pack::roles(con, reading.branch.id, reading.span).await?;
    let row = |one: &db::audit_pack::RoleHeld| {
        let ended = one.account_ended_on.map(|on| w.tv("audit-pack-account-ends", &[("on", w.medium_date(on).into())]));
        vec![
            PackCell::new(format!("{} ({})", one.name, one.initials)).and(ended.unwrap_or_default()),
            PackCell::new(w.t(format!("role-{}", one.role))),
            PackCell::new(reading.since(one.began_at, one.ended_at)),
        ]
    };
    let rows = held.iter().map(row).collect();
    Ok(reading.section("persons", String::new(), &["person", "role", "held"], rows))
}

async fn grants(con: &mut db::Con, reading: &Reading<'_>) -> Result<PackSection, Refusal> {
    let w = reading.w;
    let held = db::audit_pack::grants(con, reading.branch.id, reading.span).await?;
    let row = |one: &db::audit_pack::GrantHeld| {
        vec![
            PackCell::new(&one.name),
            PackCell::new(&one.authorisation_number),
            PackCell::new(w.medium_date(one.expires_on)),
            PackCell::new(reading.since(one.began_at, one.ended_at)),
        ]
    };
    let rows = held.iter().map(row).collect();
    let heads = ["person", "authorisation", "expires", "held"];
    Ok(reading.section("authorisations", String::new(), &heads, rows))
}

#[cfg(test)]
mod tests {
    use super::gaps;
    use time::macros::date;

    #[test]
    fn days_without_calibration_are_told_as_stretches() {
        let holds = |day| day < date!(2026 - 05 - 03) || day == date!(2026 - 05 - 06);
        let found = gaps(date!(2026 - 05 - 01), date!(2026 - 05 - 08), holds);
        let wanted = [(date!(2026 - 05 - 03), date!(2026 - 05 - 05)), (date!(2026 - 05 - 07), date!(2026 - 05 - 08))];
        assert_eq!(found, wanted);
        assert!(gaps(date!(2026 - 05 - 01), date!(2026 - 05 - 08), |_| true).is_empty());
    }
}
