//! What an inspection comes to, in words: the result with its reasons, and what still keeps it open.

use super::{JobPage, say};
use crate::model::evidence::Severity;
use crate::model::paper::certificate::InspectionOutcome;
use crate::rules::Proof;
use crate::rules::inspection::{Counted, found, judge};
use crate::web::kit::{Choice, Mark, Tone, Verdict};
use crate::words::Words;

/// What a deficiency can be found on: the proofs that look at the vehicle, then the lines of the checklist.
pub fn items(job: &JobPage) -> Vec<Choice> {
    let w = job.w();
    let asked = job.book.proofs(&job.file.job, job.today);
    let proofs = asked.into_iter().filter(|line| line.needs.is_examination());
    let title =
        |line: &crate::rules::ProofLine| line.title.clone().unwrap_or_else(|| w.t(format!("proof-{}", line.id)));
    let proofs = proofs.map(|line| Choice::new(line.id.clone(), title(line)));
    let lines = job.book.checks(&job.file.job).into_iter();
    let lines = lines.map(|line| {
        let words = line.title.clone().unwrap_or_else(|| w.t(format!("check-{}", line.id)));
        Choice::new(format!("check:{}", line.id), words)
    });
    proofs.chain(lines).collect()
}

/// An item in words; `None` for one that this job does not know.
pub fn item_title(job: &JobPage, item: &str) -> Option<String> {
    if item.is_empty() {
        return Some(job.w().t("deficiency-item-other"));
    }
    items(job).into_iter().find(|choice| choice.value == item).map(|choice| choice.label)
}

fn line(job: &JobPage, one: &Counted<'_>) -> String {
    let w = job.w();
    let what = match (one.proof, one.found) {
        (_, Some(row)) if !row.item.is_empty() => {
            let item = item_title(job, &row.item).unwrap_or_default();
            format!("{item}: {}", row.words)
        }
        (_, Some(row)) => row.words.clone(),
        (Some(proof), None) => format!("{}: {}", say::proof_title(&w, proof), say::why(&w, &proof.why)),
        (None, None) => String::new(),
    };
    let severity = w.t(format!("severity-{}", one.severity));
    w.tv("inspection-counts", &[("severity", severity.into()), ("what", what.into())])
}

fn titles(w: &Words, proofs: &[&Proof]) -> String {
    proofs.iter().map(|proof| say::proof_title(w, proof)).collect::<Vec<_>>().join(", ")
}

/// The result as it stands, with its reasons.
pub fn verdict(job: &JobPage) -> Verdict {
    let w = job.w();
    let judged = judge(&job.proofs, found(&job.file));
    let mut sentences: Vec<String> = judged.counted.iter().map(|one| line(job, one)).collect();
    if !judged.not_tested.is_empty() {
        let tests = titles(&w, &judged.not_tested);
        sentences.push(w.tv("inspection-not-tested", &[("tests", tests.into())]));
    }
    if !judged.open.is_empty() {
        sentences.push(w.tv("inspection-still-open", &[("proofs", titles(&w, &judged.open).into())]));
    }
    if judged.counted.iter().any(|one| one.severity == Severity::Dangerous) {
        sentences.push(w.t("inspection-caution-dangerous"));
    }
    let (tone, mark, key) = match judged.outcome {
        None => (Tone::Copper, Mark::Undecided, "inspection-open"),
        Some(InspectionOutcome::Pass) => (Tone::Met, Mark::Met, "paper-outcome-pass"),
        Some(InspectionOutcome::PassWithMinor) => (Tone::Copper, Mark::Met, "paper-outcome-pass-with-minor"),
        Some(InspectionOutcome::Fail) => (Tone::Stop, Mark::Stops, "paper-outcome-fail"),
    };
    Verdict { tone, mark, title: w.t(key), sentences }
}
