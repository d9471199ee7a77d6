//! The fitting record: every part with what traces it, injectors by engine cylinder, the checklist, photos.

use crate::model::branch::PaperSize;
use crate::model::paper::fitting_record::{CheckGroup, CheckState, FittedPart, FittingRecordContent};
use crate::words::Words;

use super::facts;
use super::ink::{CELL, Ink};
use super::outline::{self, Outline};
use super::photos::{self, Pictures};
use super::results::dash;
use super::sheet::Sheet;
use super::table::{Cell, Column, Table};
use super::{PaperError, phrases, records, results};

/// The record as a PDF. The same input gives the same bytes.
///
/// Errors: a character that no face has.
pub fn fitting_record(
    content: &FittingRecordContent,
    pictures: &Pictures,
    words: &Words,
    size: PaperSize,
) -> Result<Vec<u8>, PaperError> {
    let values = [("number", (&content.number).into()), ("date", words.date(content.printed_on).into())];
    let outline = Outline {
        shop: &content.shop,
        size,
        title: &content.title,
        number: &content.number,
        under_title: words.tv("record-number-printed", &values),
        lead: records::lead(words, &content.beside_of, words.t("fitting-record-lead")),
        aside: outline::aside(&content.rule_sets, words),
        foot: content.title.clone(),
        language: &content.language,
        is_demonstration: content.is_demonstration,
        made_at: content.printed_on.midnight().assume_utc(),
    };
    let mut sheet = outline.open()?;
    records::job(&mut sheet, &content.job, words)?;
    parts(&content.fitted, words).section(
        &mut sheet,
        &words.t("fitting-record-fitted"),
        &words.t("fitting-record-none-fitted"),
    )?;
    parts(&content.removed, words).section(
        &mut sheet,
        &words.t("fitting-record-removed"),
        &words.t("fitting-record-none-removed"),
    )?;
    cylinders(&mut sheet, content, words)?;
    for group in &content.checks {
        checks(group, words).section(&mut sheet, &group.name, "")?;
    }
    level(&mut sheet, content, words)?;
    records::proofs(&mut sheet, &content.proofs, words)?;
    results::entered_later(&mut sheet, &content.entered_later, words)?;
    photos::draw(&mut sheet, &content.photos, pictures, words)?;
    let rules = (content.cautions.as_slice(), content.rule_sets.as_slice());
    outline::ending(&mut sheet, rules, (&content.number, &content.software_version), words)?;
    outline.close(sheet, words)
}

fn parts(parts: &[FittedPart], words: &Words) -> Table {
    let heads = ["paper-part", "paper-approval-mark", "paper-serial", "paper-made", "fitting-record-place"];
    let mut table = Table::new(heads.map(|key| Column::words(words.t(key))).into());
    for part in parts {
        let class = named(words, "fitting-record-class", &part.component_class);
        let batch =
            if part.serial.is_empty() { String::new() } else { named(words, "fitting-record-batch", &part.batch) };
        let serial = if part.serial.is_empty() { &part.batch } else { &part.serial };
        let pressure = phrases::quantity_if(words, part.test_pressure.as_ref());
        let measures = phrases::dotted(&[
            &phrases::quantity_if(words, part.capacity.as_ref()),
            &named(words, "fitting-record-test-pressure", &pressure),
        ]);
        let fitted = words.tv("fitting-record-fitted-on", &[("day", words.date(part.fitted_on).into())]);
        let before = if part.was_there { words.t("fitting-record-was-there") } else { String::new() };
        let removed = part.removed_on.map(|day| {
            let values = [("day", words.date(day).into()), ("reason", (&part.removed_reason).into())];
            words.tv("fitting-record-removed-on", &values)
        });
        table.row_over(
            vec![
                Cell::new(&part.description).and(&part.maker_and_type).and(measures),
                Cell::new(dash(&part.approval_mark)).and(class),
                Cell::new(dash(serial)).and(batch),
                Cell::new(dash(&phrases::partial_date(words, &part.made))),
                Cell::new(dash(&part.place)).and(fitted).and(before),
            ],
            phrases::dotted(&[
                &removed.unwrap_or_default(),
                &named(words, "fitting-record-shared", &part.shared_reason),
            ]),
        );
    }
    table
}

/// The value behind its name, or nothing.
fn named(words: &Words, key: &'static str, value: &str) -> String {
    if value.is_empty() { String::new() } else { words.tv(key, &[("value", value.into())]) }
}

fn cylinders(sheet: &mut Sheet, content: &FittingRecordContent, words: &Words) -> Result<(), PaperError> {
    let mut table = Table::new(vec![
        Column::numbers(words.t("fitting-record-engine-cylinder")),
        Column::words(words.t("fitting-record-connector")),
        Column::words(words.t("fitting-record-pin")),
        Column::words(words.t("fitting-record-branch")),
        Column::numbers(words.t("fitting-record-injector")),
        Column::numbers(words.t("fitting-record-nozzle")),
        Column::words(words.t("fitting-record-answers")),
    ]);
    for row in &content.cylinders {
        let answers = if row.answers {
            Cell::strong(format!("✓\u{a0}{}", words.t("record-yes")), Ink::Met)
        } else {
            Cell::strong(format!("✕\u{a0}{}", words.t("record-no")), Ink::Stop)
        };
        table.row(vec![
            Cell::new(row.engine_cylinder.to_string()),
            Cell::new(dash(&row.petrol_connector)),
            Cell::new(dash(&row.control_pin)),
            Cell::new(dash(&row.branch_mark)),
            Cell::new(row.gas_injector.to_string()),
            Cell::new(dash(&phrases::quantity_if(words, row.nozzle.as_ref()))),
            answers,
        ]);
    }
    table.section(sheet, &words.t("fitting-record-cylinders"), &words.t("fitting-record-no-cylinders"))?;
    match &content.cylinders_recorded {
        Some(recorded) => records::recorded_line(sheet, recorded, words),
        None => Ok(()),
    }
}

fn checks(group: &CheckGroup, words: &Words) -> Table {
    let heads = ["fitting-record-line", "fitting-record-answer", "fitting-record-note", "fitting-record-who"];
    let mut table = Table::new(heads.map(|key| Column::words(words.t(key))).into());
    for line in &group.lines {
        let (mark, key, ink) = match line.state {
            CheckState::Pass => ("✓", "fitting-record-pass", Ink::Met),
            CheckState::Fail => ("✕", "fitting-record-fail", Ink::Stop),
            CheckState::NotApplicable => ("–", "fitting-record-not-applicable", Ink::Soft),
            CheckState::Open => ("○", "fitting-record-open", Ink::Copper),
        };
        let at = line.at.map(|at| phrases::instant(words, at)).unwrap_or_default();
        table.row(vec![
            Cell::new(&line.line).and(&line.source),
            Cell::strong(format!("{mark}\u{a0}{}", words.t(key)), ink),
            Cell::new(&line.note),
            Cell::new(&line.initials).and(at),
        ]);
    }
    table
}

fn level(sheet: &mut Sheet, content: &FittingRecordContent, words: &Words) -> Result<(), PaperError> {
    sheet.section(&words.t("fitting-record-level"), CELL.leading() * 2.0)?;
    match &content.level {
        None => sheet.paragraph(&words.t("fitting-record-no-level"), super::ink::SMALL)?,
        Some(level) => {
            let explained = level.is_routine_explained.map(|yes| words.t(if yes { "record-yes" } else { "record-no" }));
            facts::facts(
                sheet,
                &[
                    (words.t("fitting-record-level-how"), level.how.clone()),
                    (words.t("fitting-record-level-explained"), explained.unwrap_or_default()),
                ],
            )?;
            records::recorded_line(sheet, &level.recorded, words)?;
        }
    }
    sheet.end_section();
    Ok(())
}
