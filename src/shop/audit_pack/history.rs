//! What did not go the straight way in a period: waivers, what does not apply, corrections, late entries, findings.

use super::Reading;
use crate::db;
use crate::db::audit_pack::{Entered, FindingHeld};
use crate::model::evidence::{CheckAnswer, ENTERED_LATER, Evidence};
use crate::model::paper::audit_pack::{PackCell, PackSection};
use crate::shop::Refusal;

pub(super) async fn sections(con: &mut db::Con, reading: &Reading<'_>) -> Result<Vec<PackSection>, Refusal> {
    let entries = db::audit_pack::entries(con, reading.branch.id, reading.span).await?;
    Ok(vec![
        waivers(con, reading, &entries).await?,
        corrections(reading, &entries),
        late(reading, &entries),
        findings(con, reading).await?,
    ])
}

/// The name of what an entry shows.
pub(super) fn slot(reading: &Reading<'_>, body: &Evidence) -> String {
    let key = match body.subject() {
        "" => body.kind().to_owned(),
        subject => format!("{}-{subject}", body.kind()),
    };
    reading.w.find(&format!("slot-{key}")).unwrap_or(key)
}

async fn waivers(con: &mut db::Con, reading: &Reading<'_>, entries: &[Entered]) -> Result<PackSection, Refusal> {
    let w = reading.w;
    let given = db::audit_pack::waivers(con, reading.branch.id, reading.span).await?;
    let row = |one: &db::audit_pack::Waived| {
        let title = w.find(&format!("proof-{}", one.proof)).unwrap_or_else(|| one.proof.clone());
        let ended = one.ended_at.map(|at| w.tv("audit-pack-taken-back", &[("on", reading.day(at).into())]));
        vec![
            PackCell::new(&one.job_number),
            PackCell::new(title),
            PackCell::new(w.t(format!("paper-exception-{}", one.kind))).and(ended.unwrap_or_default()),
            PackCell::new(&one.person_name).and(reading.moment(one.at)),
            PackCell::new(&one.reason),
        ]
    };
    let mut rows: Vec<Vec<PackCell>> = given.iter().map(row).collect();
    rows.extend(entries.iter().flat_map(|entry| not_there(reading, entry)));
    Ok(reading.section("waivers", String::new(), &["job", "proof", "how", "by", "reason"], rows))
}

/// Lines of a checklist that do not apply to the vehicle, each with who looked and why.
fn not_there(reading: &Reading<'_>, entry: &Entered) -> Vec<Vec<PackCell>> {
    let Evidence::Checklist(list) = &entry.body.0 else { return Vec::new() };
    let w = reading.w;
    let left_out = list.answers.iter().filter(|(_, one)| one.answer == CheckAnswer::NotApplicable);
    let row = |(line, one): (&String, &crate::model::evidence::ItemAnswer)| {
        vec![
            PackCell::new(&entry.job_number),
            PackCell::new(w.find(&format!("check-{line}")).unwrap_or_else(|| line.clone())),
            PackCell::new(w.t("paper-exception-not-applicable")),
            PackCell::new(&entry.person_name).and(reading.moment(entry.recorded_at)),
            PackCell::new(&one.note),
        ]
    };
    left_out.map(row).collect()
}

fn corrections(reading: &Reading<'_>, entries: &[Entered]) -> PackSection {
    let corrected = entries.iter().filter(|entry| entry.earlier_at.is_some());
    let row = |entry: &Entered| {
        let earlier = entry.earlier_at.map(|at| reading.moment(at)).unwrap_or_default();
        vec![
            PackCell::new(&entry.job_number),
            PackCell::new(slot(reading, &entry.body.0)),
            PackCell::new(earlier).and(entry.earlier_by.clone().unwrap_or_default()),
            PackCell::new(reading.moment(entry.recorded_at)).and(&entry.person_name),
            PackCell::new(&entry.replaces_reason),
        ]
    };
    let rows = corrected.map(row).collect();
    reading.section("corrections", String::new(), &["job", "what", "first", "corrected", "reason"], rows)
}

fn late(reading: &Reading<'_>, entries: &[Entered]) -> PackSection {
    let late = entries.iter().filter(|entry| entry.recorded_at - entry.measured_at > ENTERED_LATER);
    let row = |entry: &Entered| {
        vec![
            PackCell::new(&entry.job_number),
            PackCell::new(slot(reading, &entry.body.0)),
            PackCell::new(reading.moment(entry.measured_at)),
            PackCell::new(reading.moment(entry.recorded_at)),
            PackCell::new(&entry.person_name),
        ]
    };
    let rows = late.map(row).collect();
    reading.section("late", String::new(), &["job", "what", "measured", "entered", "by"], rows)
}

async fn findings(con: &mut db::Con, reading: &Reading<'_>) -> Result<PackSection, Refusal> {
    let mut rows = Vec::new();
    for one in db::audit_pack::findings(con, reading.branch.id, reading.span).await? {
        rows.push(finding(con, reading, &one).await?);
    }
    Ok(reading.section("findings", String::new(), &["opened", "about", "finding", "decision", "papers"], rows))
}

async fn finding(con: &mut db::Con, reading: &Reading<'_>, one: &FindingHeld) -> Result<Vec<PackCell>, Refusal> {
    let w = reading.w;
    let mut decided = Vec::new();
    for decision in db::doubts::list_decisions(con, one.id).await? {
        let paper = db::papers::find(con, reading.branch.id, decision.paper_id).await?;
        let values = [
            ("number", paper.map(|paper| paper.number).unwrap_or_default().into()),
            ("decision", w.t(format!("paper-decision-{}", decision.decision)).into()),
            ("name", decision.person_name.as_str().into()),
            ("reason", decision.reason.as_str().into()),
        ];
        decided.push(w.tv("audit-pack-paper-decided", &values));
    }
    let about = one.job_number.iter().chain(&one.instrument_code).map(String::as_str).collect::<Vec<_>>().join(", ");
    let source = w.find(&format!("finding-source-{}", one.source)).unwrap_or_else(|| one.source.clone());
    let closed = match one.decided_at {
        Some(at) => PackCell::new(&one.decision)
            .and([reading.moment(at), one.decided_by.clone().unwrap_or_default()].join(", ")),
        None => PackCell::new(w.t("audit-pack-still-open")),
    };
    Ok(vec![
        PackCell::new(reading.moment(one.opened_at)),
        PackCell::new(about),
        PackCell::new(&one.text).and(source),
        closed,
        PackCell::new(decided.join(" · ")),
    ])
}
