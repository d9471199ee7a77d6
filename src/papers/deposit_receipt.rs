//! The receipt of a deposit: how much, how, when, by whom; and that it was paid back, if it was.

use super::PaperError;
use super::facts;
use super::ink::TEXT;
use super::priced;
use crate::model::branch::PaperSize;
use crate::model::paper::estimate::DepositReceiptContent;
use crate::words::Words;

/// The receipt as a PDF. The same input gives the same bytes.
///
/// Errors: a character that no face has.
pub fn deposit_receipt(content: &DepositReceiptContent, words: &Words, size: PaperSize) -> Result<Vec<u8>, PaperError> {
    let (parties, deposit) = (&content.parties, &content.deposit);
    let amount = words.money(deposit.amount_minor, &content.currency);
    let values = [("number", (&parties.job_number).into()), ("deposit", content.number.into())];
    let (title, number) = (words.t("receipt-title"), words.tv("receipt-number", &values));
    let under = priced::dated(&number, deposit.received_on, words);
    let lead = words.tv("receipt-lead", &[("amount", (&amount).into()), ("name", (&parties.customer_name).into())]);
    let outline = priced::outline(parties, (&title, &number), under, (lead, deposit.received_on), size);
    let mut sheet = outline.open()?;
    let pairs = [
        (words.t("receipt-amount"), amount),
        (words.t("receipt-how"), deposit.paid_how.clone()),
        (words.t("receipt-day"), words.date(deposit.received_on)),
        (words.t("receipt-by"), deposit.received_by.clone()),
    ];
    facts::section(&mut sheet, &words.t("receipt-deposit"), &pairs)?;
    priced::parties(&mut sheet, parties, words)?;
    if let Some(back) = &content.taken_back {
        let values = [
            ("day", words.date(back.received_on).into()),
            ("name", (&back.received_by).into()),
            ("how", (&back.paid_how).into()),
            ("reason", (&back.reason).into()),
        ];
        sheet.gap(8.0);
        sheet.paragraph(&words.tv("receipt-returned", &values), TEXT.bold())?;
    }
    // What went back is taken off nothing.
    let counts = content.taken_back.is_none().then(|| words.t("receipt-counts"));
    let terms: Vec<String> = counts.into_iter().chain([words.t("priced-no-invoice")]).collect();
    priced::terms(&mut sheet, &terms, words)?;
    priced::sign(&mut sheet, &words.t("receipt-sign"))?;
    outline.close(sheet, words)
}
