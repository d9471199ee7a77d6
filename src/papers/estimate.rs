//! The estimate: what the work is reckoned to cost, until when that stands, and that a change is agreed before the work.

use super::PaperError;
use super::priced;
use crate::model::branch::PaperSize;
use crate::model::paper::estimate::EstimateContent;
use crate::words::Words;

/// The estimate as a PDF. The same input gives the same bytes.
///
/// Errors: a character that no face has.
pub fn estimate(content: &EstimateContent, words: &Words, size: PaperSize) -> Result<Vec<u8>, PaperError> {
    let (parties, lines) = (&content.parties, &content.priced);
    let values = [("number", (&parties.job_number).into()), ("version", lines.version.into())];
    let (title, number) = (words.t("estimate-paper-title"), words.tv("estimate-paper-number", &values));
    let under = priced::dated(&number, content.written_on, words);
    let lead = (words.t("estimate-paper-lead"), content.written_on);
    let outline = priced::outline(parties, (&title, &number), under, lead, size);
    let mut sheet = outline.open()?;
    priced::parties(&mut sheet, parties, words)?;
    priced::lines(&mut sheet, lines, words)?;
    let until = match content.valid_until_on {
        Some(day) => words.tv("priced-until", &[("day", words.date(day).into())]),
        None => words.t("priced-no-until"),
    };
    let terms = [
        priced::agreed(lines, words, "priced-not-agreed"),
        until,
        words.t("priced-change"),
        words.t("priced-no-invoice"),
    ];
    priced::terms(&mut sheet, &terms, words)?;
    if lines.agreed.is_none() {
        priced::sign(&mut sheet, &words.t("priced-sign"))?;
    }
    outline.close(sheet, words)
}
