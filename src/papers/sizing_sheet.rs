//! The sizing sheet: the sums of a job's Sizing stage, each with inputs, formula, numbers put in, result, uncertainty and
//! source, so that a reader can redo it with a pocket calculator.

use crate::model::branch::PaperSize;
use crate::model::paper::sizing_sheet::{CellOnPaper, Piece, SizingSheetContent, StepOnPaper, SumOnPaper, SumState};
use crate::words::Words;

use super::facts::facts;
use super::fonts;
use super::ink::{CELL, Ink, SMALL, Style, TEXT};
use super::outline::{self, Outline};
use super::sheet::{LEFT, Sheet, WIDTH};
use super::table::{Cell, Column, Table};
use super::tags::Role;
use super::{PaperError, certificate, drawing};

/// Heading of a sum.
const SUM: Style = Style { size: 13.0, ..TEXT.bold() };
/// Verdict of a sum.
const VERDICT: Style = Style { size: 11.0, ..TEXT.bold() };
/// Name of a step.
const STEP: Style = CELL.bold();
/// How far formula and numbers stand in.
const INDENT: f32 = 14.0;

/// The sheet as a PDF. The same input gives the same bytes.
///
/// Errors: a character that no face has.
pub fn sizing_sheet(content: &SizingSheetContent, words: &Words, size: PaperSize) -> Result<Vec<u8>, PaperError> {
    let values = [("number", (&content.number).into()), ("date", words.date(content.printed_on).into())];
    let outline = Outline {
        shop: &content.shop,
        size,
        title: &content.title,
        number: &content.number,
        under_title: words.tv("sizing-sheet-number-printed", &values),
        lead: words.t("sizing-sheet-lead"),
        aside: outline::aside(&content.rule_sets, words),
        foot: content.title.clone(),
        language: &content.language,
        is_demonstration: content.is_demonstration,
        made_at: content.printed_on.midnight().assume_utc(),
    };
    let mut sheet = outline.open()?;
    opening(&mut sheet, content, words)?;
    for sum in &content.sums {
        draw_sum(&mut sheet, sum, words)?;
    }
    closing(&mut sheet, content, words)?;
    outline.close(sheet, words)
}

fn opening(sheet: &mut Sheet, content: &SizingSheetContent, words: &Words) -> Result<(), PaperError> {
    sheet.section(&words.t("sizing-sheet-vehicle"), CELL.leading() * 3.0)?;
    facts(
        sheet,
        &[
            (words.t("record-vehicle"), content.vehicle.clone()),
            (words.t("paper-plate"), content.plate.clone()),
            (words.t("paper-vin"), content.vin.clone()),
            (words.t("record-job"), content.job_number.clone()),
            (words.t("sizing-sheet-engine"), content.engine.clone()),
            (words.t("paper-fuel"), words.t(format!("paper-fuel-{}", content.fuel.as_str()))),
        ],
    )?;
    overview(sheet, content, words)?;
    sheet.end_section();
    Ok(())
}

/// Every verdict on the first page: a reader who wants no sums stops here.
fn overview(sheet: &mut Sheet, content: &SizingSheetContent, words: &Words) -> Result<(), PaperError> {
    let columns = ["sizing-sheet-sum", "sizing-sheet-verdict", "sizing-sheet-recorded"];
    let mut table = Table::new(columns.map(|key| Column::words(words.t(key))).into());
    for sum in &content.sums {
        let (mark, ink) = mark(sum.state);
        let verdict = format!("{mark}\u{a0}{}", sum.verdict);
        table.row(vec![Cell::new(&sum.title), Cell::strong(verdict, ink), Cell::new(&sum.recorded)]);
    }
    if table.is_empty() {
        return Ok(());
    }
    sheet.gap(6.0);
    table.draw(sheet)
}

const fn mark(state: SumState) -> (&'static str, Ink) {
    match state {
        SumState::Holds => ("✓", Ink::Met),
        SumState::Doubtful => ("◐", Ink::Copper),
        SumState::Fails => ("✕", Ink::Stop),
        SumState::Open => ("○", Ink::Copper),
        SumState::NotApplicable => ("–", Ink::Soft),
    }
}

fn draw_sum(sheet: &mut Sheet, sum: &SumOnPaper, words: &Words) -> Result<(), PaperError> {
    sheet.gap(16.0);
    sheet.keep(120.0);
    sheet.tags.open(Role::Sect);
    sheet.text(Role::H2, &sum.title, SUM, WIDTH)?;
    sheet.rule(sheet.y + 1.0, 1.4, Ink::Fact);
    sheet.y += 5.0;
    sheet.paragraph(&sum.recorded, SMALL)?;
    for line in [&sum.corrected, &sum.instruments].into_iter().filter(|line| !line.is_empty()) {
        sheet.paragraph(line, SMALL)?;
    }
    sheet.y += 3.0;
    let (mark, ink) = mark(sum.state);
    sheet.paragraph(&format!("{mark}\u{a0}{}", sum.verdict), VERDICT.in_ink(ink))?;
    sheet.list(&sum.reasons, CELL)?;
    if let Some(duty) = &sum.duty {
        let picture = drawing::duty(duty, words);
        sheet.gap(8.0);
        sheet.keep(CELL.leading() + 182.0);
        sheet.paragraph(&picture.title, STEP)?;
        drawing::draw(sheet, &picture)?;
    }
    for piece in &sum.pieces {
        match piece {
            Piece::Steps { caption, steps } => draw_steps(sheet, caption, steps, words)?,
            Piece::Table { caption, columns, rows } => draw_table(sheet, caption, columns, rows)?,
        }
    }
    sheet.gap(4.0);
    for note in &sum.notes {
        sheet.paragraph(note, SMALL)?;
    }
    sheet.tags.close();
    Ok(())
}

fn heading(sheet: &mut Sheet, caption: &str, after: f32) -> Result<(), PaperError> {
    sheet.gap(9.0);
    sheet.keep(TEXT.leading() + 6.0 + after);
    sheet.text(Role::H3, caption, TEXT.bold(), WIDTH)?;
    sheet.rule(sheet.y + 1.0, 0.5, Ink::Soft);
    sheet.y += 4.0;
    Ok(())
}

/// A step: name and result on one line, then formula, then the same with its numbers, then its source.
fn draw_steps(sheet: &mut Sheet, caption: &str, steps: &[StepOnPaper], words: &Words) -> Result<(), PaperError> {
    if steps.is_empty() {
        return Ok(());
    }
    heading(sheet, caption, 60.0)?;
    sheet.tags.open(Role::L);
    for step in steps {
        let room = WIDTH - INDENT;
        let put_in = if step.is_arithmetic {
            format!("= {} = {}", step.put_in, step.result)
        } else {
            words.tv("sizing-sheet-for", &[("state", (&step.put_in).into()), ("result", (&step.result).into())])
        };
        let formula = fonts::wrap(&step.formula, CELL.weight, CELL.size, room)?;
        let numbers = fonts::wrap(&put_in, CELL.weight, CELL.size, room)?;
        let source = fonts::wrap(&step.source, SMALL.weight, SMALL.size, room)?;
        let tall = STEP.leading()
            + CELL.leading() * (formula.len() + numbers.len()) as f32
            + SMALL.leading() * source.len() as f32;
        sheet.keep(tall + 5.0);
        sheet.tags.open(Role::LI);
        sheet.tags.open(Role::Lbl);
        sheet.put(LEFT, sheet.y + STEP.size, &step.name, STEP)?;
        sheet.tags.close();
        sheet.tags.open(Role::LBody);
        let result =
            if step.spread.is_empty() { step.result.clone() } else { format!("{} {}", step.result, step.spread) };
        sheet.put_right(LEFT + WIDTH, sheet.y + STEP.size, &result, STEP)?;
        sheet.y += STEP.leading();
        for (lines, style) in [(formula, CELL), (numbers, CELL), (source, SMALL)] {
            for line in lines {
                sheet.put(LEFT + INDENT, sheet.y + style.size, &line, style)?;
                sheet.y += style.leading();
            }
        }
        sheet.tags.close();
        sheet.tags.close();
        sheet.y += 5.0;
    }
    sheet.tags.close();
    Ok(())
}

fn draw_table(
    sheet: &mut Sheet,
    caption: &str,
    columns: &[(String, bool)],
    rows: &[Vec<CellOnPaper>],
) -> Result<(), PaperError> {
    let column = |(head, is_number): &(String, bool)| {
        if *is_number { Column::numbers(head.clone()) } else { Column::words(head.clone()) }
    };
    let mut table = Table::new(columns.iter().map(column).collect());
    for row in rows {
        let cell = |cell: &CellOnPaper| match cell.state {
            Some(state) => {
                let (mark, ink) = mark(state);
                Cell::strong(format!("{mark}\u{a0}{}", cell.text), ink).and(&cell.second)
            }
            None => Cell::new(&cell.text).and(&cell.second),
        };
        table.row(row.iter().map(cell).collect());
    }
    if table.is_empty() {
        return Ok(());
    }
    heading(sheet, caption, table.least_height()?)?;
    table.draw(sheet)
}

fn closing(sheet: &mut Sheet, content: &SizingSheetContent, words: &Words) -> Result<(), PaperError> {
    sheet.section(&words.t("paper-cautions"), CELL.leading())?;
    sheet.list(&content.cautions, SMALL)?;
    sheet.end_section();
    sheet.gap(8.0);
    let mut lines = certificate::rule_set_lines(&content.rule_sets, words);
    lines.extend([
        words.t("sizing-sheet-not-signed"),
        words.tv("paper-software", &[("version", (&content.software_version).into())]),
        words.tv("paper-end", &[("number", (&content.number).into())]),
    ]);
    for line in lines {
        sheet.paragraph(&line, SMALL)?;
    }
    Ok(())
}
