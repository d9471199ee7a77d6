//! What the papers about a price share: head and foot, parties, lines with their sum, what was agreed, a line to sign on.

use time::Date;

use super::ink::{CELL, Ink, SMALL, TEXT};
use super::outline::Outline;
use super::sheet::{LEFT, Sheet, WIDTH};
use super::table::{Cell, Column, Table};
use super::{PaperError, facts, phrases};
use crate::model::Coded;
use crate::model::branch::PaperSize;
use crate::model::paper::estimate::{Parties, Priced, PricedLine};
use crate::words::Words;

/// Head and foot of such a paper.
pub(super) fn outline<'a>(
    parties: &'a Parties,
    (title, number): (&'a str, &'a str),
    under_title: String,
    (lead, on): (String, Date),
    size: PaperSize,
) -> Outline<'a> {
    Outline {
        shop: &parties.shop,
        size,
        title,
        number,
        under_title,
        lead,
        aside: parties.plate.clone(),
        foot: title.to_owned(),
        language: &parties.language,
        is_demonstration: parties.is_demonstration,
        made_at: on.midnight().assume_utc(),
    }
}

/// Customer, vehicle, job.
pub(super) fn parties(sheet: &mut Sheet, parties: &Parties, words: &Words) -> Result<(), PaperError> {
    let pairs = [
        (words.t("priced-customer"), parties.customer_name.clone()),
        (words.t("priced-vehicle"), parties.vehicle.clone()),
        (words.t("priced-address"), parties.customer_address.clone()),
        (words.t("priced-plate"), parties.plate.clone()),
        (words.t("priced-job"), parties.job_number.clone()),
    ];
    facts::section(sheet, &words.t("priced-parties"), &pairs)
}

/// The lines and their sum.
pub(super) fn lines(sheet: &mut Sheet, priced: &Priced, words: &Words) -> Result<(), PaperError> {
    let code = priced.currency.as_str();
    let head = |key: &str| words.tv(key, &[("currency", code.into())]);
    let mut table = Table::new(vec![
        Column::words(words.t("priced-what")),
        Column::words(words.t("priced-kind")),
        Column::numbers(words.t("priced-quantity")),
        Column::numbers(head("priced-price")),
        Column::numbers(head("priced-amount")),
    ]);
    for PricedLine { what, kind, quantity_thousandths, unit_price_minor, amount_minor } in &priced.lines {
        table.row(vec![
            Cell::new(what),
            Cell::new(words.t(format!("line-kind-{}", kind.code()))),
            Cell::new(words.thousandths(*quantity_thousandths)),
            Cell::new(words.amount(*unit_price_minor, code)),
            Cell::new(words.amount(*amount_minor, code)),
        ]);
    }
    let mut sum = vec![Cell::strong(words.t("priced-total"), Ink::Fact)];
    sum.resize_with(4, Cell::default);
    sum.push(Cell::strong(words.amount(priced.total_minor, code), Ink::Fact));
    table.row(sum);
    table.section(sheet, &words.t("priced-lines"), "")?;
    if !priced.note.is_empty() {
        sheet.gap(4.0);
        sheet.paragraph(&priced.note, CELL)?;
    }
    Ok(())
}

/// What was agreed, in a sentence; another where nothing was.
pub(super) fn agreed(priced: &Priced, words: &Words, when_not: &str) -> String {
    let Some(agreed) = &priced.agreed else { return words.t(when_not) };
    let values = [
        ("amount", words.money(agreed.amount_minor, &priced.currency).into()),
        ("how", words.t(format!("agreed-how-{}", agreed.how.code())).into()),
        ("name", (&agreed.by).into()),
        ("day", words.date(agreed.on).into()),
        ("person", (&agreed.noted_by).into()),
    ];
    words.tv("priced-agreed", &values)
}

/// What holds, as a list under a heading.
pub(super) fn terms(sheet: &mut Sheet, terms: &[String], words: &Words) -> Result<(), PaperError> {
    super::outline::list(sheet, &words.t("priced-terms"), terms)
}

/// A line to sign on, which stays with what it is for.
pub(super) fn sign(sheet: &mut Sheet, what: &str) -> Result<(), PaperError> {
    sheet.gap(18.0);
    sheet.keep(TEXT.leading() * 2.0);
    sheet.paragraph(what, SMALL)?;
    let wide = super::fonts::width(what, SMALL.weight, SMALL.size)?.min(WIDTH * 0.6);
    sheet.rule_on(sheet.page(), LEFT + wide + 8.0, LEFT + WIDTH, sheet.y - 2.0, 0.5, Ink::Soft);
    Ok(())
}

/// The number of a paper with its day.
pub(super) fn dated(number: &str, day: Date, words: &Words) -> String {
    phrases::dotted(&[number, &words.date(day)])
}
