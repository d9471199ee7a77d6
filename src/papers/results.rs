//! What was measured, with what, and how it was decided: the same tables on certificates and test records.

use crate::model::paper::EnteredLater;
use crate::model::paper::measured::{DecisionRule, InstrumentOnPaper, MeasuredRow};
use crate::words::Words;

use super::PaperError;
use super::ink::SMALL;
use super::phrases;
use super::sheet::Sheet;
use super::table::{Cell, Column, Table};

/// Draws the table of results and, under it, the decision rules that were used.
pub fn draw(sheet: &mut Sheet, measured: &[MeasuredRow], words: &Words) -> Result<(), PaperError> {
    if measured.is_empty() {
        return Ok(());
    }
    let mut table = Table::new(vec![
        Column::words(words.t("paper-test")),
        Column::numbers(words.t("paper-result")),
        Column::numbers(words.t("paper-limit")),
        Column::words(words.t("paper-decision")),
        Column::words(words.t("paper-instrument")),
    ]);
    let sources = sources(measured);
    for (n, row) in measured.iter().enumerate() {
        // Rows of one entry follow each other and share the line that says how, by whom and when.
        let details = details(row, words);
        let is_last = measured.get(n + 1).is_none_or(|next| self::details(next, words) != details);
        table.row_over(cells(row, &sources, words), if is_last { details } else { String::new() });
    }
    sheet.section(&words.t("paper-measured"), table.least_height()?)?;
    table.draw(sheet)?;
    sheet.gap(3.0);
    sheet.keep(SMALL.leading() * 2.0);
    let notes: Vec<String> =
        sources.iter().enumerate().map(|(n, source)| format!("{}\u{a0}{source}", raised(n))).collect();
    if !notes.is_empty() {
        let source = words.tv("paper-limit-source", &[("source", notes.join("; ").into())]);
        sheet.paragraph(&source, SMALL)?;
    }
    for rule in [DecisionRule::Guarded, DecisionRule::Simple] {
        if let Some(row) = measured.iter().find(|row| row.decision_rule == rule) {
            let factor = row.uncertainty.as_ref().map_or("2", |u| u.coverage_factor.as_str());
            let key = format!("paper-rule-{}", rule.as_str());
            sheet.paragraph(&words.tv(&key, &[("k", factor.into())]), SMALL)?;
        }
    }
    sheet.end_section();
    Ok(())
}

/// Where the limits come from, each once: the rows point to it by a small figure.
fn sources(measured: &[MeasuredRow]) -> Vec<&str> {
    let mut all: Vec<&str> = Vec::new();
    for row in measured {
        let source = row.limit_source.as_str();
        if !source.is_empty() && !all.contains(&source) {
            all.push(source);
        }
    }
    all
}

/// The small figure of the source at this place of the list, from one.
fn raised(n: usize) -> String {
    const FIGURES: [char; 10] = ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'];
    let digits = (n + 1).to_string();
    digits.bytes().filter_map(|digit| FIGURES.get(usize::from(digit.wrapping_sub(b'0')))).collect()
}

/// Method, who, when, record, where from, whether written down late, and the factor of the uncertainty.
fn details(row: &MeasuredRow, words: &Words) -> String {
    let when = phrases::instant(words, row.measured_at);
    let outside = match row.from_outside.as_str() {
        "" => String::new(),
        body => words.tv("paper-from-outside", &[("body", body.into())]),
    };
    let record = match row.record.as_str() {
        "" => String::new(),
        record => words.tv("paper-record", &[("record", record.into())]),
    };
    let late = if row.entered_later.is_some() {
        format!("◷\u{a0}{}", words.t("paper-entered-later"))
    } else {
        String::new()
    };
    let factor = row.uncertainty.as_ref().map(|u| format!("k\u{a0}=\u{a0}{}", u.coverage_factor)).unwrap_or_default();
    phrases::dotted(&[&row.method, &row.by, &when, &factor, &record, &outside, &late])
}

fn cells(row: &MeasuredRow, sources: &[&str], words: &Words) -> Vec<Cell> {
    let figure = sources.iter().position(|source| *source == row.limit_source).map(raised).unwrap_or_default();
    let limit = phrases::limit(words, row);
    let limit = if figure.is_empty() { limit } else { format!("{limit}\u{a0}{figure}") };
    let (verdict, ink) = phrases::verdict(words, row.verdict, row.decision_rule);
    let instruments = if row.instruments.is_empty() { "–".to_owned() } else { row.instruments.join(", ") };
    vec![
        Cell::new(&row.test),
        Cell::new(phrases::result(words, row)),
        Cell::new(limit),
        Cell::strong(verdict, ink),
        Cell::new(instruments),
    ]
}

/// Draws the list of instruments under a heading of its own.
pub fn instruments(sheet: &mut Sheet, instruments: &[InstrumentOnPaper], words: &Words) -> Result<(), PaperError> {
    if instruments.is_empty() {
        return Ok(());
    }
    sheet.section(&words.t("paper-instruments"), SMALL.leading() * 4.0)?;
    instrument_table(sheet, instruments, words)?;
    sheet.end_section();
    Ok(())
}

/// Draws the table of instruments, where there are any.
pub fn instrument_table(sheet: &mut Sheet, instruments: &[InstrumentOnPaper], words: &Words) -> Result<(), PaperError> {
    if instruments.is_empty() {
        return Ok(());
    }
    let mut table = Table::new(vec![
        Column::words(words.t("paper-instrument")),
        Column::words(words.t("paper-what")),
        Column::words(words.t("paper-calibration")),
        Column::words(words.t("paper-good-until")),
    ]);
    for instrument in instruments {
        table.row(vec![
            Cell::new(&instrument.code),
            Cell::new(&instrument.description),
            Cell::new(dash(&instrument.calibration_certificate)),
            Cell::new(dash(&phrases::day_if(words, instrument.good_until_on))),
        ]);
    }
    table.draw(sheet)
}

/// Draws what was written down late.
pub fn entered_later(sheet: &mut Sheet, entries: &[EnteredLater], words: &Words) -> Result<(), PaperError> {
    if entries.is_empty() {
        return Ok(());
    }
    let mut table = Table::new(vec![
        Column::words(words.t("paper-what")),
        Column::words(words.t("paper-happened")),
        Column::words(words.t("paper-entered")),
        Column::words(words.t("paper-by")),
        Column::words(words.t("paper-reason")),
    ]);
    for entry in entries {
        table.row(vec![
            Cell::new(format!("◷ {}", entry.what)),
            Cell::new(phrases::instant(words, entry.happened_at)),
            Cell::new(phrases::instant(words, entry.entered_at)),
            Cell::new(&entry.by),
            Cell::new(&entry.reason),
        ]);
    }
    sheet.section(&words.t("paper-late-entries"), table.least_height()?)?;
    table.draw(sheet)?;
    sheet.end_section();
    Ok(())
}

/// The text, or a dash where there is none.
pub fn dash(text: &str) -> String {
    if text.is_empty() { "–".to_owned() } else { text.to_owned() }
}
