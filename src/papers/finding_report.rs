//! The finding report: one finding from its cause to what became of each paper that rests on it.

use crate::model::branch::PaperSize;
use crate::model::doubt::Sort;
use crate::model::paper::finding_report::{FindingReportContent, PaperOnReport, ResultOnReport};
use crate::words::Words;

use super::finish::{About, finish};
use super::ink::{CELL, Ink, LEAD, NUMBER, SMALL, TEXT, TITLE};
use super::letter::{Letter, Mark};
use super::sheet::{Page, Sheet, WIDTH};
use super::table::{Cell, Column, Table, facts};
use super::tags::Role;
use super::{PaperError, phrases, printable};

/// The report as a PDF. The same input gives the same bytes; a character that no face has is spelled as its number.
///
/// Errors: the file cannot be written.
pub fn finding_report(content: &FindingReportContent, words: &Words, size: PaperSize) -> Result<Vec<u8>, PaperError> {
    let content = &printable(content)?;
    let title = words.t("report-title");
    let mut sheet = Sheet::on(Page::of(size));
    sheet.y += 6.0;
    sheet.text(Role::H1, &title, TITLE, WIDTH)?;
    let values = [("number", (&content.number).into()), ("date", words.date(content.printed_on).into())];
    sheet.paragraph(&words.tv("report-number", &values), NUMBER)?;
    sheet.y += 5.0;
    sheet.text(Role::P, &content.text, LEAD, WIDTH * 0.94)?;
    sheet.paragraph(&content.opened, SMALL)?;
    sheet.section(&words.t("doubt-step-found"), CELL.leading() * 3.0)?;
    facts(&mut sheet, &content.facts)?;
    sheet.end_section();
    if content.has_error {
        sheet.section(&words.t("doubt-step-error"), CELL.leading() * 2.0)?;
        if content.errors.is_empty() {
            sheet.paragraph(&words.t("report-no-error"), TEXT)?;
        } else {
            sheet.list(&content.errors, CELL)?;
            sheet.paragraph(&words.t("report-error-lead"), SMALL)?;
        }
        sheet.end_section();
    }
    results(&mut sheet, content, words)?;
    papers(&mut sheet, content, words)?;
    closing(&mut sheet, content, words)?;
    let letter = Letter {
        shop: &content.shop,
        aside: String::new(),
        foot: title.clone(),
        number: content.number.clone(),
        mark: Mark::of_demonstration(content.is_demonstration),
    };
    letter.draw(&mut sheet, words)?;
    let about = About {
        title: format!("{title}, {}", content.number),
        author: &content.shop.name,
        language: &content.language,
        made_at: content.printed_at,
        attachments: Vec::new(),
    };
    finish(sheet, &about)
}

fn results(sheet: &mut Sheet, content: &FindingReportContent, words: &Words) -> Result<(), PaperError> {
    let mut table = Table::new(vec![
        Column::words(words.t("doubt-what")),
        Column::numbers(words.t("doubt-as-written")),
        Column::numbers(words.t("doubt-again")),
        Column::words(words.t("doubt-stands")),
    ]);
    for one in &content.results {
        if one.figures.is_empty() {
            table.row_over(vec![named(one, ""), Cell::new("–"), Cell::new("–"), sorted(one)], one.why.clone());
        }
        for (n, [name, old, old_limit, new, new_limit]) in one.figures.iter().enumerate() {
            let is_last = n + 1 == one.figures.len();
            let cells =
                vec![named(one, name), Cell::new(old).and(old_limit), Cell::new(new).and(new_limit), sorted(one)];
            table.row_over(cells, if is_last { one.why.clone() } else { String::new() });
        }
    }
    let room = if table.is_empty() { CELL.leading() } else { table.least_height()? };
    sheet.section(&words.t("doubt-results"), room)?;
    sheet.paragraph(&content.tally, TEXT)?;
    if !table.is_empty() {
        sheet.gap(3.0);
        table.draw(sheet)?;
    }
    sheet.end_section();
    Ok(())
}

fn named(one: &ResultOnReport, figure: &str) -> Cell {
    Cell::new(&one.what).and(phrases::dotted(&[figure, &one.job, &one.plate, &one.measured]))
}

fn sorted(one: &ResultOnReport) -> Cell {
    let (mark, ink) = match one.sort {
        Sort::Holds => ("✓", Ink::Met),
        Sort::InDoubt => ("◐", Ink::Copper),
        Sort::Fails => ("✕", Ink::Stop),
    };
    Cell::strong(format!("{mark}\u{a0}{}", one.sort_said), ink)
}

fn papers(sheet: &mut Sheet, content: &FindingReportContent, words: &Words) -> Result<(), PaperError> {
    let mut table = Table::new(vec![
        Column::words(words.t("doubt-paper")),
        Column::words(words.t("doubt-decision")),
        Column::words(words.t("report-decided-by")),
        Column::words(words.t("report-then")),
    ]);
    for one in &content.papers {
        rows(&mut table, one, words);
    }
    let room = if table.is_empty() { CELL.leading() } else { table.least_height()? };
    sheet.section(&words.t("doubt-papers"), room)?;
    if table.is_empty() {
        sheet.paragraph(&words.t("doubt-no-papers"), TEXT)?;
    } else {
        table.draw(sheet)?;
    }
    sheet.end_section();
    Ok(())
}

fn rows(table: &mut Table, one: &PaperOnReport, words: &Words) {
    let number = || Cell::new(&one.number).and(&one.vehicle);
    if one.decisions.is_empty() {
        let undecided = Cell::new(words.t("report-undecided")).and(&one.standing);
        table.row(vec![number(), undecided, Cell::new("–"), Cell::new("–")]);
    }
    for decision in &one.decisions {
        let then: Vec<&str> =
            [decision.re_test.as_str(), &decision.letter].into_iter().filter(|one| !one.is_empty()).collect();
        let cells = vec![
            number(),
            Cell::new(&decision.decision).and(&decision.reason),
            Cell::new(&decision.by),
            Cell::new(if then.is_empty() { "–".to_owned() } else { then.join(". ") }).and(&one.standing),
        ];
        table.row_over(cells, decision.signature.clone());
    }
}

fn closing(sheet: &mut Sheet, content: &FindingReportContent, words: &Words) -> Result<(), PaperError> {
    sheet.section(&words.t("doubt-step-close"), CELL.leading())?;
    if !content.closed.is_empty() {
        sheet.paragraph(&content.closed, TEXT)?;
    }
    if !content.still_open.is_empty() {
        sheet.list(&content.still_open, CELL)?;
    }
    sheet.end_section();
    sheet.gap(10.0);
    for line in [
        words.t("report-local-law"),
        words.t("report-kept"),
        words.tv("paper-software", &[("version", (&content.software_version).into())]),
        words.tv("paper-end", &[("number", (&content.number).into())]),
    ] {
        sheet.paragraph(&line, SMALL)?;
    }
    Ok(())
}
