//! The result of an inspection: outcome, deficiencies, the order to come again, what a repeat looked at.

use crate::model::paper::certificate::{
    CertificateContent, Deficiency, InspectionOnPaper, InspectionOutcome, Severity,
};
use crate::papers::PaperError;
use crate::papers::ink::{CELL, Ink, SMALL, Style, TEXT};
use crate::papers::phrases;
use crate::papers::sheet::Sheet;
use crate::papers::table::{Cell, Column, Table, facts};
use crate::words::Words;

/// Draws the result, where the paper has one.
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
    facts(sheet, &named(inspection, words))?;
    if inspection.deficiencies.is_empty() {
        sheet.paragraph(&words.t("paper-no-deficiencies"), CELL)?;
    } else {
        deficiencies(sheet, &inspection.deficiencies, words)?;
    }
    if inspection.outcome == InspectionOutcome::Fail {
        let order = match inspection.present_again_by_on {
            Some(day) => words.tv(
                "paper-present-again-order",
                &[("date", words.date(day).into()), ("source", inspection.term_source.as_str().into())],
            ),
            None => words.t("paper-present-again-whole"),
        };
        sheet.gap(4.0);
        sheet.keep(CELL.leading() * 2.0);
        sheet.paragraph(&order, CELL.bold())?;
    }
    sheet.end_section();
    Ok(())
}

fn named(inspection: &InspectionOnPaper, words: &Words) -> Vec<(String, String)> {
    let kind = match inspection.kind_of_test.as_str() {
        "" => String::new(),
        kind => words.t(format!("paper-kind-of-test-{kind}")),
    };
    let repeats = match (inspection.repeats_number.as_str(), inspection.repeats_on) {
        (number, Some(day)) if !number.is_empty() => {
            words.tv("paper-repeats-of", &[("number", number.into()), ("date", words.date(day).into())])
        }
        (number, _) => number.to_owned(),
    };
    let next = match (inspection.next_test_on, inspection.outcome) {
        (Some(day), _) => words.date(day),
        (None, InspectionOutcome::Fail) => String::new(),
        (None, _) => words.t("paper-next-inspection-none"),
    };
    let shut =
        inspection.is_gas_shut_off.map(|yes| if yes { "paper-gas-shut-off-yes" } else { "paper-gas-shut-off-no" });
    vec![
        (words.t("paper-kind-of-test"), kind),
        (words.t("paper-place"), inspection.place.clone()),
        (words.t("paper-ended"), phrases::instant(words, inspection.ended_at)),
        (words.t("paper-inspector"), inspection.inspector_id.clone()),
        (words.t("paper-next-inspection"), next),
        (words.t("paper-present-again"), phrases::day_if(words, inspection.present_again_by_on)),
        (words.t("paper-repeats"), repeats),
        (words.t("paper-repeated"), inspection.repeated.join(", ")),
        (words.t("paper-gas-shut-off"), shut.map(|key| words.t(key)).unwrap_or_default()),
    ]
}

fn deficiencies(sheet: &mut Sheet, all: &[Deficiency], words: &Words) -> Result<(), PaperError> {
    let mut table = Table::new(vec![
        Column::words(words.t("paper-item")),
        Column::words(words.t("paper-deficiency")),
        Column::words(words.t("paper-severity")),
    ]);
    for deficiency in all {
        let (mark, ink) = match deficiency.severity {
            Severity::Minor => ("○", Ink::Copper),
            Severity::Major | Severity::Dangerous => ("✕", Ink::Stop),
        };
        let severity = words.t(format!("paper-severity-{}", deficiency.severity.as_str()));
        let photo = match deficiency.photo_sha256.as_str() {
            "" => String::new(),
            // Enough to find the file by; the signed content holds the whole sum.
            sum => words.tv("paper-deficiency-photo", &[("sum", sum.get(..12).unwrap_or(sum).into())]),
        };
        table.row(vec![
            Cell::new(&deficiency.item),
            Cell::new(&deficiency.reason).and(phrases::dotted(&[&deficiency.note, &photo])),
            Cell::strong(format!("{mark}\u{a0}{severity}"), ink),
        ]);
    }
    table.draw(sheet)?;
    let mut sources: Vec<&str> =
        all.iter().map(|one| one.class_source.as_str()).filter(|one| !one.is_empty()).collect();
    sources.dedup();
    if sources.is_empty() {
        return Ok(());
    }
    sheet.gap(3.0);
    sheet.paragraph(&words.tv("paper-class-source", &[("sources", sources.join("; ").into())]), SMALL)
}
