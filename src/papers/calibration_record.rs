//! The calibration record: how the engine was set on gas, and what shows that it runs on it as on petrol.

use crate::model::branch::PaperSize;
use crate::model::paper::calibration_record::{
    AfterDriveOnPaper, CalibrationOnPaper, CalibrationRecordContent, TrimsOnPaper,
};
use crate::model::paper::measured::Quantity;
use crate::model::paper::of_job::FileOnPaper;
use crate::words::Words;

use super::facts;
use super::ink::{CELL, SMALL};
use super::outline::{self, Outline};
use super::results::dash;
use super::sheet::Sheet;
use super::table::{Cell, Column, Table};
use super::{PaperError, phrases, records, results, road_section};

/// The record as a PDF. The same input gives the same bytes.
///
/// Errors: a character that no face has.
pub fn calibration_record(
    content: &CalibrationRecordContent,
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
        lead: records::lead(words, &content.beside_of, words.t("calibration-record-lead")),
        aside: outline::aside(&content.rule_sets, words),
        foot: content.title.clone(),
        language: &content.language,
        is_demonstration: content.is_demonstration,
        made_at: content.printed_on.midnight().assume_utc(),
    };
    let mut sheet = outline.open()?;
    records::job(&mut sheet, &content.job, words)?;
    match &content.calibration {
        Some(calibration) => settings(&mut sheet, calibration, words)?,
        None => missing(&mut sheet, "calibration-record-preconditions", "calibration-record-none", words)?,
    }
    trims(&mut sheet, content.trims.as_ref(), words)?;
    // After what was set, before the codes that were read after driving.
    road_section::draw(&mut sheet, content.road.as_ref(), words)?;
    match &content.after_drive {
        Some(driven) => after_drive(&mut sheet, driven, words)?,
        None => missing(&mut sheet, "calibration-record-after", "calibration-record-not-driven", words)?,
    }
    files(&content.files, words).section(&mut sheet, &words.t("calibration-record-files"), "")?;
    records::proofs(&mut sheet, &content.proofs, words)?;
    results::instruments(&mut sheet, &content.instruments, words)?;
    results::entered_later(&mut sheet, &content.entered_later, words)?;
    let rules = (content.cautions.as_slice(), content.rule_sets.as_slice());
    outline::ending(&mut sheet, rules, (&content.number, &content.software_version), words)?;
    outline.close(sheet, words)
}

/// A section of which nothing was recorded.
fn missing(sheet: &mut Sheet, heading: &str, says: &str, words: &Words) -> Result<(), PaperError> {
    sheet.section(&words.t(heading), CELL.leading())?;
    sheet.paragraph(&words.t(says), SMALL)?;
    sheet.end_section();
    Ok(())
}

fn settings(sheet: &mut Sheet, done: &CalibrationOnPaper, words: &Words) -> Result<(), PaperError> {
    let read = |found: &Option<Quantity>| phrases::quantity_if(words, found.as_ref());
    let yes = |is: bool| words.t(if is { "record-yes" } else { "record-no" });
    let none = |text: &str| if text.is_empty() { words.t("record-none") } else { text.to_owned() };
    facts::section(
        sheet,
        &words.t("calibration-record-preconditions"),
        &[
            (words.t("calibration-record-coolant"), read(&done.coolant)),
            (words.t("calibration-record-vaporiser"), read(&done.vaporiser)),
            (words.t("calibration-record-closed-loop"), yes(done.was_closed_loop)),
            (words.t("calibration-record-codes-before"), none(&done.fault_codes)),
        ],
    )?;
    facts::section(
        sheet,
        &words.t("calibration-record-settings"),
        &[
            (words.t("calibration-record-pressure"), read(&done.set_pressure)),
            (words.t("calibration-record-gas"), read(&done.gas_temperature)),
            (words.t("calibration-record-changeover"), read(&done.changeover)),
            (words.t("calibration-record-fall-back"), read(&done.fall_back)),
            (words.t("calibration-record-nozzle"), yes(done.is_nozzle_adequate)),
            (words.t("calibration-record-lock"), none(&done.lock_holder)),
            (words.t("calibration-record-how"), done.how.clone()),
        ],
    )?;
    records::recorded_line(sheet, &done.recorded, words)?;
    let mut regions = Table::new(vec![
        Column::words(words.t("calibration-record-region")),
        Column::numbers(words.t("calibration-record-by")),
    ]);
    for region in &done.regions {
        regions.row(vec![Cell::new(&region.region), Cell::new(signed(words, region.by.as_ref()))]);
    }
    regions.section(sheet, &words.t("calibration-record-regions"), &words.t("calibration-record-no-regions"))
}

/// A number with its sign, also where it is above zero.
fn signed(words: &Words, found: Option<&Quantity>) -> String {
    let Some(found) = found else { return "–".to_owned() };
    let is_more = found.number().is_some_and(|number| number > 0.0);
    format!("{}{}", if is_more { "+" } else { "" }, phrases::quantity(words, found))
}

fn trims(sheet: &mut Sheet, trims: Option<&TrimsOnPaper>, words: &Words) -> Result<(), PaperError> {
    let mut table = Table::new(vec![
        Column::words(words.t("calibration-record-point")),
        Column::numbers(words.t("calibration-record-bank")),
        Column::numbers(words.t("calibration-record-petrol-short")),
        Column::numbers(words.t("calibration-record-petrol-long")),
        Column::numbers(words.t("calibration-record-gas-short")),
        Column::numbers(words.t("calibration-record-gas-long")),
        Column::numbers(words.t("calibration-record-difference")),
    ]);
    for row in trims.iter().flat_map(|trims| &trims.points) {
        let cell = |found: &Option<Quantity>| Cell::new(signed(words, found.as_ref()));
        table.row(vec![
            Cell::new(&row.point),
            Cell::new(row.bank.to_string()),
            cell(&row.petrol_short),
            cell(&row.petrol_long),
            cell(&row.gas_short),
            cell(&row.gas_long),
            cell(&row.difference),
        ]);
    }
    table.section(sheet, &words.t("calibration-record-trims"), &words.t("calibration-record-no-trims"))?;
    let Some(trims) = trims else { return Ok(()) };
    if trims.worst.is_some() {
        let worst = [("worst", signed(words, trims.worst.as_ref()).into())];
        sheet.gap(3.0);
        sheet.paragraph(&words.tv("calibration-record-worst", &worst), CELL)?;
    }
    records::recorded_line(sheet, &trims.recorded, words)
}

fn after_drive(sheet: &mut Sheet, driven: &AfterDriveOnPaper, words: &Words) -> Result<(), PaperError> {
    let none = |text: &str| if text.is_empty() { words.t("record-none") } else { text.to_owned() };
    facts::section(
        sheet,
        &words.t("calibration-record-after"),
        &[
            (words.t("calibration-record-on-petrol"), phrases::quantity_if(words, driven.on_petrol.as_ref())),
            (words.t("calibration-record-on-gas"), phrases::quantity_if(words, driven.on_gas.as_ref())),
            (words.t("calibration-record-codes-after"), none(&driven.fault_codes)),
            (words.t("calibration-record-new-codes"), none(&driven.new_codes.join(", "))),
            (words.t("calibration-record-not-ready"), none(&driven.not_ready)),
        ],
    )?;
    records::recorded_line(sheet, &driven.recorded, words)
}

fn files(files: &[FileOnPaper], words: &Words) -> Table {
    let mut table = Table::new(vec![
        Column::words(words.t("calibration-record-file")),
        Column::numbers(words.t("calibration-record-size")),
        Column::words(words.t("calibration-record-kept")),
    ]);
    for file in files {
        let sum = words.tv("calibration-record-sum", &[("sum", (&file.sha256).into())]);
        table.row_over(
            vec![
                Cell::new(dash(&file.name)),
                Cell::new(words.quantity(file.bytes as f64 / 1000.0, 1, "kB")),
                Cell::new(phrases::instant(words, file.kept_at)),
            ],
            sum,
        );
    }
    table
}
