//! How the proof list stood, and what conformity is stated.

use crate::model::paper::certificate::{CertificateContent, ExceptionKind, InspectionOutcome};
use crate::words::Words;

use crate::papers::PaperError;
use crate::papers::ink::{CELL, Ink, SMALL};
use crate::papers::phrases;
use crate::papers::sheet::Sheet;
use crate::papers::table::{Cell, Column, Table};

/// "All 37 proofs asked for were met."
pub fn count(content: &CertificateContent, words: &Words) -> String {
    let proofs = &content.proofs;
    let has_failed = content.inspection.as_ref().is_some_and(|one| one.outcome == InspectionOutcome::Fail);
    let key = match (proofs.met == proofs.asked, has_failed) {
        // What the inspector wrote down decides, not the count.
        (true, true) => "certificate-proofs-all-but-found",
        (true, false) => "certificate-proofs-all",
        (false, _) => "certificate-proofs-some",
    };
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
            ExceptionKind::Failed => "✕",
            ExceptionKind::NotTested => "○",
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
