//! How the proof list stood, what an inspection found, and what conformity is stated.

use crate::model::paper::certificate::{CertificateContent, ExceptionKind, InspectionOutcome, Severity};
use crate::words::Words;

use crate::papers::PaperError;
use crate::papers::ink::{CELL, Ink, SMALL, Style, TEXT};
use crate::papers::phrases;
use crate::papers::sheet::Sheet;
use crate::papers::table::{Cell, Column, Table, facts};

/// "All 37 proofs asked for were met."
pub fn count(content: &CertificateContent, words: &Words) -> String {
    let proofs = &content.proofs;
    let key = if proofs.met == proofs.asked { "certificate-proofs-all" } else { "certificate-proofs-some" };
    words.tv(key, &[("met", proofs.met.into()), ("asked", proofs.asked.into())])
}

/// The proofs that were not simply met, what is stated about conformity, and what nobody has confirmed yet.
pub fn proofs(sheet: &mut Sheet, content: &CertificateContent, words: &Words) -> Result<(), PaperError> {
    let proofs = &content.proofs;
    if content.conformity.is_empty() && proofs.exceptions.is_empty() && proofs.to_be_confirmed.is_empty() {
        return Ok(());
    }
    sheet.section(&words.t("paper-conformity"), CELL.leading() * 3.0)?;
    if !proofs.exceptions.is_empty() {
        // The sentence under the title has counted them.
        exceptions(sheet, content, words)?;
        sheet.gap(5.0);
    }
    conformity(sheet, content, words)?;
    if !proofs.to_be_confirmed.is_empty() {
        sheet.gap(3.0);
        sheet.keep(SMALL.leading() * 2.0);
        let lines = proofs.to_be_confirmed.join("; ");
        sheet.paragraph(&words.tv("certificate-to-be-confirmed", &[("lines", lines.into())]), SMALL)?;
    }
    sheet.end_section();
    Ok(())
}

fn exceptions(sheet: &mut Sheet, content: &CertificateContent, words: &Words) -> Result<(), PaperError> {
    let mut table = Table::new(vec![
        Column::words(words.t("paper-proof")),
        Column::words(words.t("paper-exception")),
        Column::words(words.t("paper-reason")),
        Column::words(words.t("paper-decided-by")),
    ]);
    for exception in &content.proofs.exceptions {
        let mark = match exception.kind {
            ExceptionKind::Waived => "⊘",
            ExceptionKind::NotApplicable => "–",
            ExceptionKind::ShopLimit => "◐",
        };
        let kind = words.t(format!("paper-exception-{}", exception.kind.as_str()));
        table.row(vec![
            Cell::new(&exception.proof).and(&exception.rule_line),
            Cell::strong(format!("{mark}\u{a0}{kind}"), Ink::Fact),
            Cell::new(&exception.reason),
            Cell::new(&exception.person).and(phrases::instant(words, exception.decided_at)),
        ]);
    }
    table.draw(sheet)
}

pub fn inspection(sheet: &mut Sheet, content: &CertificateContent, words: &Words) -> Result<(), PaperError> {
    let Some(inspection) = &content.inspection else { return Ok(()) };
    let (mark, ink) = match inspection.outcome {
        InspectionOutcome::Pass => ("✓", Ink::Met),
        InspectionOutcome::PassWithMinor => ("◐", Ink::Copper),
        InspectionOutcome::Fail => ("✕", Ink::Stop),
    };
    sheet.section(&words.t("paper-inspection"), 60.0)?;
    let outcome = words.t(format!("paper-outcome-{}", inspection.outcome.as_str()));
    sheet.paragraph(&format!("{mark} {outcome}"), Style { size: 14.0, ..TEXT }.bold().in_ink(ink))?;
    facts(
        sheet,
        &[
            (words.t("paper-place"), inspection.place.clone()),
            (words.t("paper-ended"), phrases::instant(words, inspection.ended_at)),
            (words.t("paper-inspector"), inspection.inspector_id.clone()),
            (words.t("paper-next-inspection"), phrases::day_if(words, inspection.next_test_on)),
            (words.t("paper-present-again"), phrases::day_if(words, inspection.present_again_by_on)),
            (words.t("paper-repeats"), inspection.repeats_number.clone()),
        ],
    )?;
    if inspection.deficiencies.is_empty() {
        sheet.paragraph(&words.t("paper-no-deficiencies"), CELL)?;
    } else {
        let mut table = Table::new(vec![
            Column::words(words.t("paper-item")),
            Column::words(words.t("paper-deficiency")),
            Column::words(words.t("paper-severity")),
        ]);
        for deficiency in &inspection.deficiencies {
            let (mark, ink) = match deficiency.severity {
                Severity::Minor => ("○", Ink::Copper),
                Severity::Major | Severity::Dangerous => ("✕", Ink::Stop),
            };
            let severity = words.t(format!("paper-severity-{}", deficiency.severity.as_str()));
            table.row(vec![
                Cell::new(&deficiency.item),
                Cell::new(&deficiency.reason).and(&deficiency.note),
                Cell::strong(format!("{mark}\u{a0}{severity}"), ink),
            ]);
        }
        table.draw(sheet)?;
    }
    sheet.end_section();
    Ok(())
}

fn conformity(sheet: &mut Sheet, content: &CertificateContent, words: &Words) -> Result<(), PaperError> {
    if content.conformity.is_empty() {
        return Ok(());
    }
    let mut table = Table::new(vec![
        Column::words(words.t("paper-against")),
        Column::words(words.t("paper-covers")),
        Column::words(words.t("paper-conformity-state")),
    ]);
    for statement in &content.conformity {
        let (mark, key, ink) = if statement.is_met {
            ("✓", "paper-conforms", Ink::Met)
        } else {
            ("✕", "paper-conforms-not", Ink::Stop)
        };
        table.row(vec![
            Cell::new(&statement.against),
            Cell::new(&statement.covers),
            Cell::strong(format!("{mark}\u{a0}{}", words.t(key)), ink),
        ]);
    }
    table.draw(sheet)
}
