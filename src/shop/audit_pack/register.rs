//! The number register of an audit pack: every number, what became of it, and whether one is missing.

use std::collections::BTreeMap;

use super::Reading;
use crate::db;
use crate::model::paper::audit_pack::{PackCell, PackSection};
use crate::model::paper::issued::{EventKind, PaperEvent};
use crate::shop::issue::Found;
use crate::shop::{Refusal, Shop};

impl Shop {
    pub(super) async fn register(&self, con: &mut db::Con, reading: &Reading<'_>) -> Result<PackSection, Refusal> {
        let mut rows = Vec::new();
        for paper in db::audit_pack::papers(con, reading.branch.id, reading.span).await? {
            let found = self.found(con, paper).await?;
            rows.push(row(reading, &found));
        }
        let lead = whole(reading, &db::audit_pack::numbers(con, reading.branch.id).await?);
        Ok(reading.section("register", lead, &["number", "issued", "vehicle", "stands", "became"], rows))
    }
}

fn row(reading: &Reading<'_>, Found { paper, content, events, standing }: &Found) -> Vec<PackCell> {
    let w = reading.w;
    let event = |event: &PaperEvent| {
        let values = [
            ("kind", w.t(format!("paper-event-{}", event.kind)).into()),
            ("name", event.person_name.as_str().into()),
            ("when", reading.day(event.at).into()),
            ("reason", event.reason.as_str().into()),
        ];
        w.tv("register-event-line", &values)
    };
    let is_void = events.iter().any(|event| event.kind == EventKind::Withdrawn);
    let stands = w.t(format!("standing-{}", standing.as_str()));
    let became: Vec<String> = events.iter().map(event).collect();
    vec![
        PackCell::new(&paper.number).and(w.t(format!("certificate-kind-{}", paper.kind))),
        PackCell::new(reading.day(paper.issued_at)).and(&content.signatory.name),
        PackCell::new(&content.vehicle.plate).and(&content.job_number),
        PackCell::new(stands).and(if is_void { w.t("audit-pack-void") } else { String::new() }),
        PackCell::new(became.join(" · ")),
    ]
}

/// A sentence a series: its first and last number, and which are missing between them. Numbers never start again, so the
/// whole series is looked at and not the period alone.
fn whole(reading: &Reading<'_>, numbers: &[(String, String)]) -> String {
    let mut series: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for (name, number) in numbers {
        series.entry(name).or_default().push(number);
    }
    let said = series.into_iter().map(|(name, numbers)| {
        let mut running: Vec<u32> = numbers.iter().filter_map(|number| running(number)).collect();
        running.sort_unstable();
        let missing = missing(&running);
        let values = [
            ("kind", reading.w.t(format!("certificate-kind-{name}")).into()),
            ("first", numbers.first().copied().unwrap_or_default().into()),
            ("last", numbers.last().copied().unwrap_or_default().into()),
            ("n", numbers.len().into()),
            ("missing", missing.iter().map(u32::to_string).collect::<Vec<_>>().join(", ").into()),
        ];
        let key = if missing.is_empty() { "audit-pack-series-whole" } else { "audit-pack-series-broken" };
        reading.w.tv(key, &values)
    });
    said.collect::<Vec<_>>().join(" ")
}

/// The running part of a number: "C-2026-0017" is the 17th.
fn running(number: &str) -> Option<u32> {
    number.rsplit('-').next()?.parse().ok()
}

/// What is missing from 1 to the last.
fn missing(sorted: &[u32]) -> Vec<u32> {
    (1..=sorted.last().copied().unwrap_or(0)).filter(|n| sorted.binary_search(n).is_err()).take(100).collect()
}

#[cfg(test)]
mod tests {
    use super::{missing, running};

    #[test]
    fn a_number_taken_out_of_the_middle_or_the_front_is_missed() {
        assert_eq!(missing(&[1, 2, 3]), Vec::<u32>::new());
        assert_eq!(missing(&[2, 3, 6]), [1, 4, 5]);
        assert_eq!(missing(&[]), Vec::<u32>::new());
        assert_eq!(running("C-2026-0017"), Some(17));
    }
}
