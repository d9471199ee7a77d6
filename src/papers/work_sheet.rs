//! The work sheet: a job file on paper, for the bench. Neither signed nor numbered.

use crate::model::paper::work_sheet::{WorkProofState, WorkSheetContent, WorkStage};
use crate::words::Words;

use super::finish::{About, finish};
use super::ink::{CELL, Ink, NUMBER, SMALL, TITLE};
use super::letter::{Letter, Mark};
use super::sheet::{Sheet, WIDTH};
use super::table::{Cell, Column, Table, facts};
use super::tags::Role;
use super::{PaperError, phrases};

/// The sheet as a PDF. The same input gives the same bytes.
///
/// Errors: a character that no face has.
pub fn work_sheet(content: &WorkSheetContent, words: &Words) -> Result<Vec<u8>, PaperError> {
    let title = words.t("work-title");
    let mut sheet = Sheet::new();
    sheet.y += 6.0;
    sheet.text(Role::H1, &title, TITLE, WIDTH)?;
    let number = [("number", (&content.job_number).into()), ("kind", (&content.job_kind).into())];
    sheet.paragraph(&words.tv("work-number", &number), NUMBER)?;
    vehicle(&mut sheet, content, words)?;
    if !content.wishes.is_empty() {
        sheet.section(&words.t("work-wishes"), CELL.leading())?;
        sheet.list(&content.wishes, CELL)?;
        sheet.end_section();
    }
    for stage in &content.stages {
        draw_stage(&mut sheet, stage, words)?;
    }
    if !content.cautions.is_empty() {
        sheet.section(&words.t("work-cautions"), CELL.leading())?;
        sheet.list(&content.cautions, CELL)?;
        sheet.end_section();
    }
    let printed = phrases::instant(words, content.printed_at);
    let letter = Letter {
        shop: &content.shop,
        aside: content.plate.clone(),
        foot: words.tv("work-printed", &[("at", printed.into())]),
        number: content.job_number.clone(),
        mark: Mark::of_demonstration(content.is_demonstration),
    };
    letter.draw(&mut sheet, words)?;
    let about = About {
        title: format!("{title}, {}", content.job_number),
        author: &content.shop.name,
        language: &content.language,
        made_at: content.printed_at,
        attachments: Vec::new(),
    };
    finish(sheet, &about)
}

fn vehicle(sheet: &mut Sheet, content: &WorkSheetContent, words: &Words) -> Result<(), PaperError> {
    sheet.section(&words.t("paper-vehicle"), CELL.leading() * 3.0)?;
    facts(
        sheet,
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
    )?;
    sheet.end_section();
    Ok(())
}

fn draw_stage(sheet: &mut Sheet, stage: &WorkStage, words: &Words) -> Result<(), PaperError> {
    let mut table = Table::new(vec![
        Column::words(words.t("paper-proof")),
        Column::words(words.t("work-state")),
        Column::words(words.t("work-by")),
    ]);
    for proof in &stage.proofs {
        let (mark, ink) = match proof.state {
            WorkProofState::Met => ("✓", Ink::Met),
            WorkProofState::Missing => ("○", Ink::Copper),
            WorkProofState::Undecided => ("◐", Ink::Copper),
            WorkProofState::Stops => ("✕", Ink::Stop),
            WorkProofState::Waived => ("⊘", Ink::Soft),
            WorkProofState::NotApplicable => ("–", Ink::Soft),
        };
        let state = words.t(format!("work-state-{}", proof.state.as_str()));
        table.row(vec![
            Cell::new(&proof.name).and(&proof.note),
            Cell::strong(format!("{mark}\u{a0}{state}"), ink),
            Cell::default(),
        ]);
    }
    sheet.section(&stage.name, if table.is_empty() { SMALL.leading() } else { table.least_height()? })?;
    if !table.is_empty() {
        table.draw(sheet)?;
    }
    sheet.end_section();
    Ok(())
}
