//! What the records of a job share: the block of job and vehicle, who recorded a thing, how proofs stand.

use crate::model::paper::of_job::{JobOnPaper, RecordedOnPaper};
use crate::model::paper::work_sheet::{WorkProof, WorkProofState};
use crate::words::Words;

use super::facts;
use super::ink::{Ink, SMALL};
use super::sheet::Sheet;
use super::table::{Cell, Column, Table};
use super::{PaperError, phrases};

/// What a record says of itself; one that is only to be read beside another says first which of the two counts.
pub fn lead(words: &Words, beside_of: &str, says: String) -> String {
    if beside_of.is_empty() {
        return says;
    }
    let original = Words::for_customer([beside_of]).t("language-name");
    let values = [("language", words.t("language-name").into()), ("original", original.into())];
    format!("{} {says}", words.tv("paper-copy", &values))
}

/// Job and vehicle.
pub fn job(sheet: &mut Sheet, job: &JobOnPaper, words: &Words) -> Result<(), PaperError> {
    let plate = if job.plate.is_empty() { words.t("paper-not-registered") } else { job.plate.clone() };
    let odometer = job.odometer_km.map(|km| phrases::kilometres(words, km)).unwrap_or_default();
    facts::section(
        sheet,
        &words.t("paper-vehicle"),
        &[
            (words.t("paper-make-model"), job.vehicle.clone()),
            (words.t("paper-plate"), plate),
            (words.t(phrases::identity_key(&job.vin)), job.vin.clone()),
            (words.t("paper-odometer"), odometer),
            (words.t("paper-engine"), job.engine.clone()),
            (words.t("paper-fuel"), words.t(format!("paper-fuel-{}", job.fuel.as_str()))),
            (words.t("paper-system"), job.system.clone()),
            (words.t("record-customer"), job.customer_name.clone()),
            (words.t("record-job"), phrases::dotted(&[&job.number, &job.job_kind])),
            (words.t("record-received"), words.date(job.received_on)),
        ],
    )
}

/// "M. Oake, 25 Nov 2026, 10:42 UTC+1 · with G-03 · corrected: typing error".
pub fn recorded(recorded: &RecordedOnPaper, words: &Words) -> String {
    let values = [("by", (&recorded.by).into()), ("at", phrases::instant(words, recorded.at).into())];
    let by = words.tv("record-recorded", &values);
    let late = recorded.entered_at.map(|at| {
        let at = phrases::instant(words, at);
        format!("◷\u{a0}{}", words.tv("record-entered-at", &[("at", at.into())]))
    });
    let with = match recorded.instruments.as_slice() {
        [] => String::new(),
        codes => words.tv("record-with", &[("codes", codes.join(", ").into())]),
    };
    let corrected = match recorded.corrected.as_str() {
        "" => String::new(),
        reason => words.tv("record-why-corrected", &[("reason", reason.into())]),
    };
    phrases::dotted(&[&by, &with, &late.unwrap_or_default(), &corrected])
}

/// The line that says who recorded what stands above it.
pub fn recorded_line(sheet: &mut Sheet, one: &RecordedOnPaper, words: &Words) -> Result<(), PaperError> {
    sheet.gap(3.0);
    sheet.paragraph(&recorded(one, words), SMALL)
}

/// How the proofs of a stage stand.
pub fn proofs(sheet: &mut Sheet, proofs: &[WorkProof], words: &Words) -> Result<(), PaperError> {
    proof_table(proofs, words, None).section(sheet, &words.t("record-proofs"), "")
}

/// Proofs with mark, state and note, and under the head `to_sign`, where it is given, an empty column.
pub fn proof_table(proofs: &[WorkProof], words: &Words, to_sign: Option<String>) -> Table {
    let heads = [words.t("paper-proof"), words.t("work-state")].into_iter().chain(to_sign);
    let mut table = Table::new(heads.map(Column::words).collect());
    for proof in proofs {
        let (mark, ink) = match proof.state {
            WorkProofState::Met => ("✓", Ink::Met),
            WorkProofState::Missing => ("○", Ink::Copper),
            WorkProofState::Undecided => ("◐", Ink::Copper),
            WorkProofState::Stops => ("✕", Ink::Stop),
            WorkProofState::Waived => ("⊘", Ink::Soft),
            WorkProofState::NotApplicable => ("–", Ink::Soft),
        };
        let state = words.t(format!("work-state-{}", proof.state.as_str()));
        table.row(vec![Cell::new(&proof.name).and(&proof.note), Cell::strong(format!("{mark}\u{a0}{state}"), ink)]);
    }
    table
}
