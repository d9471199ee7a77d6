//! The final price list: the lines of the last version, what was paid before, what remains.

use super::PaperError;
use super::ink::Ink;
use super::priced;
use super::sheet::Sheet;
use super::table::{Cell, Column, Table};
use crate::model::branch::PaperSize;
use crate::model::paper::estimate::{DepositOnPaper, PriceListContent};
use crate::words::Words;

/// The price list as a PDF. The same input gives the same bytes.
///
/// Errors: a character that no face has.
pub fn price_list(content: &PriceListContent, words: &Words, size: PaperSize) -> Result<Vec<u8>, PaperError> {
    let (parties, lines) = (&content.parties, &content.priced);
    let title = words.t("price-list-title");
    let under = priced::dated(&parties.job_number, content.printed_on, words);
    let lead = (words.t("price-list-lead"), content.printed_on);
    let outline = priced::outline(parties, (&title, &parties.job_number), under, lead, size);
    let mut sheet = outline.open()?;
    priced::parties(&mut sheet, parties, words)?;
    priced::lines(&mut sheet, lines, words)?;
    deposits(&mut sheet, content, words)?;
    sums(&mut sheet, content, words)?;
    let terms = [
        words.tv("price-list-version", &[("version", lines.version.into())]),
        priced::agreed(lines, words, "price-list-not-agreed"),
        words.t("priced-no-invoice"),
    ];
    priced::terms(&mut sheet, &terms, words)?;
    outline.close(sheet, words)
}

fn deposits(sheet: &mut Sheet, content: &PriceListContent, words: &Words) -> Result<(), PaperError> {
    let code = content.priced.currency.as_str();
    let mut table = Table::new(vec![
        Column::words(words.t("price-list-day")),
        Column::words(words.t("price-list-how")),
        Column::words(words.t("price-list-by")),
        Column::numbers(words.tv("priced-amount", &[("currency", code.into())])),
    ]);
    for DepositOnPaper { amount_minor, paid_how, received_on, received_by, reason } in &content.deposits {
        let back = match reason.as_str() {
            "" => String::new(),
            reason => words.tv("price-list-taken-back", &[("reason", reason.into())]),
        };
        table.row(vec![
            Cell::new(words.date(*received_on)),
            Cell::new(paid_how).and(back),
            Cell::new(received_by),
            Cell::new(words.amount(*amount_minor, code)),
        ]);
    }
    table.section(sheet, &words.t("price-list-paid"), &words.t("price-list-nothing-paid"))
}

fn sums(sheet: &mut Sheet, content: &PriceListContent, words: &Words) -> Result<(), PaperError> {
    let code = content.priced.currency.as_str();
    let head = Column::numbers(words.tv("priced-amount", &[("currency", code.into())]));
    let mut table = Table::new(vec![Column::words(words.t("price-list-sums-what")), head]);
    let remaining = content.remaining_minor;
    let key = if remaining < 0 { "price-list-back" } else { "price-list-remains" };
    for (what, minor) in [("priced-total", content.priced.total_minor), ("price-list-paid", content.deposited_minor)] {
        table.row(vec![Cell::new(words.t(what)), Cell::new(words.amount(minor, code))]);
    }
    let last = words.amount(remaining.saturating_abs(), code);
    table.row(vec![Cell::strong(words.t(key), Ink::Fact), Cell::strong(last, Ink::Fact)]);
    sheet.together(|sheet| table.section(sheet, &words.t("price-list-sums"), ""))
}
