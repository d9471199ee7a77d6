//! What an inspection certificate says beyond the rest: result, deficiencies, term, and what a repeat looked at.

use time::Date;

use super::{Ground, Issue, content};
use crate::model::duty::{DutyKind, NewDuty};
use crate::model::job::JobKind;
use crate::model::paper::CertificateKind;
use crate::model::paper::certificate::{
    Deficiency, ExceptionKind, InspectionOnPaper, InspectionOutcome, PartOnPaper, ProofException,
};
use crate::model::stage::Stage;
use crate::papers::reasons;
use crate::rules::deficiency::class_of;
use crate::rules::inspection::{Counted, Judgement, judge, may_certify, may_fail};
use crate::rules::{self, inspection as rule, term};

/// The result of the job as the rules weigh it; for a kind that cannot fail, a pass once nothing is open.
pub(super) fn outcome(ground: &Ground<'_>) -> Option<InspectionOutcome> {
    if may_fail(ground.file.job.kind) {
        return judgement(ground).outcome;
    }
    may_certify(ground.file, ground.proofs).then_some(InspectionOutcome::Pass)
}

fn judgement<'a>(ground: &'a Ground<'_>) -> Judgement<'a> {
    judge(ground.proofs, rule::found(ground.file))
}

/// The certificate says fail.
pub(super) fn has_failed(ground: &Ground<'_>) -> bool {
    outcome(ground) == Some(InspectionOutcome::Fail)
}

/// The block of an inspection certificate; `None` for other papers, and in a preview while the result is open.
pub(super) fn block(ground: &Ground<'_>, issue: &Issue<'_>, duties: &[NewDuty]) -> Option<InspectionOnPaper> {
    let (file, w) = (ground.file, &ground.w);
    if CertificateKind::of(&file.job) != Some(CertificateKind::Inspection) {
        return None;
    }
    let outcome = outcome(ground)?;
    let is_fail = outcome == InspectionOutcome::Fail;
    let judged = judgement(ground);
    let counted = if may_fail(file.job.kind) { judged.counted.as_slice() } else { &[] };
    let term = is_fail.then(|| term::term(ground.book, issue.on)).flatten();
    let first = file.repeats.as_ref();
    let is_partial = first.is_some_and(|first| first.is_partial_on((ground.day_of)(file.job.opened_at)));
    let examined = ground.proofs.iter().filter(|proof| first.is_some_and(|first| first.open.contains(&proof.id)));
    Some(InspectionOnPaper {
        outcome,
        deficiencies: counted.iter().map(|one| deficiency(ground, one)).collect(),
        place: content::shop_block(ground).address,
        ended_at: (ground.local)(ended_at(ground, issue)),
        next_test_on: if is_fail { None } else { next_test_on(duties) },
        present_again_by_on: term.as_ref().map(|term| term.by_on),
        repeats_number: first.map(|first| first.number.clone()).unwrap_or_default(),
        inspector_id: content::technician(ground).name,
        kind_of_test: kind_of_test(file.job.kind, is_partial).to_owned(),
        repeats_on: first.and_then(|first| first.issued_on),
        repeated: if is_partial { examined.map(|proof| reasons::proof_title(w, proof)).collect() } else { Vec::new() },
        to_repeat: if is_fail {
            judged.failed.iter().chain(&judged.not_tested).map(|proof| proof.id.clone()).collect()
        } else {
            Vec::new()
        },
        may_repeat_failed_only: term.as_ref().is_some_and(|term| term.failed_only),
        term_source: term.map(|term| source(ground, &term.source, term.is_checked)).unwrap_or_default(),
        is_gas_shut_off: rule::found(file).and_then(|found| found.is_gas_shut_off),
    })
}

fn source(ground: &Ground<'_>, source: &str, is_checked: bool) -> String {
    if is_checked {
        return source.to_owned();
    }
    ground.w.tv("issue-to-be-confirmed", &[("source", source.into())])
}

const fn kind_of_test(kind: JobKind, is_partial: bool) -> &'static str {
    match kind {
        JobKind::Inspection if is_partial => "repeat",
        JobKind::AfterAccident => "after-accident",
        JobKind::Repair => "after-repair",
        JobKind::Comeback => "comeback",
        _ => "periodic",
    }
}

/// When the last thing was looked at or measured.
fn ended_at(ground: &Ground<'_>, issue: &Issue<'_>) -> time::OffsetDateTime {
    let looked = ground.file.evidence.iter().filter(|entry| entry.body.stage() != Stage::HandOver);
    looked.map(|entry| entry.measured_at).max().unwrap_or(issue.at)
}

fn next_test_on(duties: &[NewDuty]) -> Option<Date> {
    duties.iter().filter(|duty| duty.kind == DutyKind::Inspection).map(|duty| duty.due_on).min()
}

fn deficiency(ground: &Ground<'_>, one: &Counted<'_>) -> Deficiency {
    let w = &ground.w;
    let class = one.found.and_then(|found| class_of(&found.class));
    let on = match (one.proof, one.found) {
        (Some(proof), _) => reasons::proof_title(w, proof),
        (None, Some(found)) => item_title(ground, &found.item),
        (None, None) => String::new(),
    };
    let why = one.proof.map(|proof| reasons::why(w, &proof.why)).unwrap_or_default();
    let words = one.found.map(|found| found.words.clone()).unwrap_or_default();
    let (reason, note) = if words.is_empty() { (why, String::new()) } else { (words, why) };
    let photo = one.found.and_then(|found| found.photo);
    let photo = photo.and_then(|id| ground.file.attachments.iter().find(|file| file.id == id));
    let parts = [class.map(|class| class.code).unwrap_or_default(), on.as_str()];
    let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    Deficiency {
        item: if parts.is_empty() { w.t("deficiency-item-other") } else { parts.join(" · ") },
        reason,
        severity: one.severity,
        note,
        class_source: class.map(|class| class.source.to_owned()).unwrap_or_default(),
        photo_sha256: photo.map(|file| file.sha256.clone()).unwrap_or_default(),
    }
}

/// The item of a deficiency in words: a proof, a line of the checklist.
fn item_title(ground: &Ground<'_>, item: &str) -> String {
    let w = &ground.w;
    if let Some(id) = item.strip_prefix("check:") {
        let line = ground.book.checks(&ground.file.job).into_iter().find(|line| line.id == id);
        return line
            .map_or_else(String::new, |line| line.title.clone().unwrap_or_else(|| w.t(format!("check-{}", line.id))));
    }
    let proof = ground.proofs.iter().find(|proof| proof.id == item);
    proof.map(|proof| reasons::proof_title(w, proof)).unwrap_or_default()
}

/// Proofs that are not settled on a paper that says fail, each with why.
pub(super) fn exceptions(ground: &Ground<'_>) -> Vec<ProofException> {
    if !has_failed(ground) {
        return Vec::new();
    }
    let w = &ground.w;
    let judged = judgement(ground);
    let sheet = ground.file.entry("deficiencies", "");
    let failed = judged.failed.iter().map(|proof| ProofException {
        kind: ExceptionKind::Failed,
        proof: reasons::proof_title(w, proof),
        rule_line: proof.id.clone(),
        person: proof.by.clone().unwrap_or_else(|| content::technician(ground).name),
        reason: reasons::why(w, &proof.why),
        decided_at: proof.at.unwrap_or(ground.file.job.opened_at),
    });
    let reason = rule::found(ground.file).map(|found| found.not_tested_reason.clone()).unwrap_or_default();
    let left = judged.not_tested.iter().map(|proof| ProofException {
        kind: ExceptionKind::NotTested,
        proof: reasons::proof_title(w, proof),
        rule_line: proof.id.clone(),
        person: sheet.map(|entry| entry.person_name.clone()).unwrap_or_default(),
        reason: reason.clone(),
        decided_at: sheet.map_or(ground.file.job.opened_at, |entry| entry.measured_at),
    });
    failed.chain(left).collect()
}

/// The next duties: after a fail, to bring the vehicle again and nothing else.
pub(super) fn duties(ground: &Ground<'_>, on: Date) -> Vec<NewDuty> {
    if has_failed(ground) {
        return rules::intervals::after_a_fail(ground.book, on).into_iter().collect();
    }
    rules::intervals::duties(ground.file, ground.book, on)
}

/// Cautions of a vehicle on which something is dangerous.
pub(super) fn cautions(ground: &Ground<'_>) -> Vec<String> {
    let judged = judgement(ground);
    if !may_fail(ground.file.job.kind) || !judged.is_dangerous() {
        return Vec::new();
    }
    vec![ground.w.t("inspection-caution-dangerous")]
}

/// Sentences that a reader needs beside the facts.
pub(super) fn remarks(ground: &Ground<'_>) -> Vec<String> {
    let Some(first) = &ground.file.repeats else { return Vec::new() };
    let w = &ground.w;
    let is_partial = first.is_partial_on((ground.day_of)(ground.file.job.opened_at));
    let job = first.job_number.as_str();
    vec![match (is_partial, first.number.as_str()) {
        (true, _) => w.tv("inspection-remark-repeat", &[("number", first.number.as_str().into())]),
        (false, "") => w.tv("inspection-remark-restarted", &[("job", job.into())]),
        (false, number) => w.tv("inspection-remark-whole", &[("number", number.into())]),
    }]
}

/// "found, not fitted here" beside a part that somebody else fitted.
pub(super) fn mark_found(ground: &Ground<'_>, part: PartOnPaper) -> PartOnPaper {
    if !part.is_found {
        return part;
    }
    let description = ground.w.tv("issue-part-found", &[("part", part.description.as_str().into())]);
    PartOnPaper { description, ..part }
}
