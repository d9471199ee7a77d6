//! The work sheet: a job file on paper, for the bench. Neither signed nor numbered.

use crate::model::branch::PaperSize;
use crate::model::paper::work_sheet::{WorkSheetContent, WorkStage};
use crate::words::Words;

use super::facts;
use super::ink::CELL;
use super::outline::{self, Outline};
use super::photos::{self, Pictures};
use super::records::proof_table;
use super::sheet::Sheet;
use super::{PaperError, phrases};

/// The sheet as a PDF. The same input gives the same bytes.
///
/// Errors: a character that no face has.
pub fn work_sheet(
    content: &WorkSheetContent,
    pictures: &Pictures,
    words: &Words,
    size: PaperSize,
) -> Result<Vec<u8>, PaperError> {
    let number = [("number", (&content.job_number).into()), ("kind", (&content.job_kind).into())];
    let printed = phrases::instant(words, content.printed_at);
    let outline = Outline {
        shop: &content.shop,
        size,
        title: &words.t("work-title"),
        number: &content.job_number,
        under_title: words.tv("work-number", &number),
        lead: String::new(),
        aside: content.plate.clone(),
        foot: words.tv("work-printed", &[("at", printed.into())]),
        language: &content.language,
        is_demonstration: content.is_demonstration,
        made_at: content.printed_at,
    };
    let mut sheet = outline.open()?;
    vehicle(&mut sheet, content, words)?;
    if !content.reported_faults.is_empty() {
        sheet.section(&words.t("work-faults"), CELL.leading())?;
        sheet.paragraph(&content.reported_faults, CELL)?;
        sheet.end_section();
    }
    outline::list(&mut sheet, &words.t("work-wishes"), &content.wishes)?;
    outline::list(&mut sheet, &words.t("work-findings"), &content.findings)?;
    for stage in &content.stages {
        draw_stage(&mut sheet, stage, words)?;
    }
    outline::list(&mut sheet, &words.t("work-cautions"), &content.cautions)?;
    photos::draw(&mut sheet, &content.photos, pictures, words)?;
    outline.close(sheet, words)
}

fn vehicle(sheet: &mut Sheet, content: &WorkSheetContent, words: &Words) -> Result<(), PaperError> {
    facts::section(
        sheet,
        &words.t("paper-vehicle"),
        &[
            (words.t("paper-make-model"), content.vehicle.clone()),
            (words.t("paper-plate"), content.plate.clone()),
            (words.t(phrases::identity_key(&content.vin)), content.vin.clone()),
            (
                words.t("paper-odometer"),
                content.odometer_km.map(|km| phrases::kilometres(words, km)).unwrap_or_default(),
            ),
            (words.t("paper-fuel"), words.t(format!("paper-fuel-{}", content.fuel.as_str()))),
            (words.t("work-place"), content.place.clone()),
            (words.t("record-customer"), content.customer_name.clone()),
            (words.t("paper-phone"), content.customer_phone.clone()),
            (words.t("work-received"), phrases::day_if(words, content.received_on)),
            (words.t("work-promised"), phrases::day_if(words, content.promised_on)),
        ],
    )
}

fn draw_stage(sheet: &mut Sheet, stage: &WorkStage, words: &Words) -> Result<(), PaperError> {
    proof_table(&stage.proofs, words, Some(words.t("work-by"))).section(sheet, &stage.name, &words.t("work-no-proof"))
}
