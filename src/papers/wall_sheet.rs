//! Today's sheet for the wall: each bay with its bookings and jobs, in type that is read from a step away.

use crate::model::branch::PaperSize;
use crate::model::paper::wall_sheet::{BayOnWall, WallSheetContent};
use crate::words::Words;

use super::ink::{CELL, Ink, SMALL};
use super::outline::Outline;
use super::results::dash;
use super::sheet::Sheet;
use super::table::{Cell, Column, Table};
use super::{PaperError, phrases};

/// The sheet as a PDF. The same input gives the same bytes.
///
/// Errors: a character that no face has.
pub fn wall_sheet(content: &WallSheetContent, words: &Words, size: PaperSize) -> Result<Vec<u8>, PaperError> {
    let printed = phrases::instant(words, content.printed_at);
    let day = words.date(content.day);
    let outline = Outline {
        shop: &content.shop,
        size,
        title: &words.tv("wall-title", &[("day", (&day).into())]),
        number: &day,
        under_title: words.t("wall-lead"),
        lead: String::new(),
        aside: String::new(),
        foot: words.tv("wall-printed", &[("at", printed.into())]),
        language: &content.language,
        is_demonstration: content.is_demonstration,
        made_at: content.printed_at,
    };
    let mut sheet = outline.open()?;
    if content.bays.is_empty() {
        sheet.gap(12.0);
        sheet.paragraph(&words.t("wall-no-bay"), CELL)?;
    }
    for bay in &content.bays {
        draw_bay(&mut sheet, bay, words)?;
    }
    outline.close(sheet, words)
}

fn draw_bay(sheet: &mut Sheet, bay: &BayOnWall, words: &Words) -> Result<(), PaperError> {
    let (jobs, bookings) = (jobs(bay, words), bookings(bay, words));
    let first = if jobs.is_empty() { &bookings } else { &jobs };
    let after = if first.is_empty() { SMALL.leading() } else { first.least_height()? };
    sheet.section(&bay.name, after)?;
    if first.is_empty() {
        sheet.paragraph(&words.t("wall-free"), SMALL)?;
    }
    if !jobs.is_empty() {
        jobs.draw(sheet)?;
        sheet.gap(6.0);
    }
    if !bookings.is_empty() {
        bookings.draw(sheet)?;
    }
    sheet.end_section();
    Ok(())
}

fn jobs(bay: &BayOnWall, words: &Words) -> Table {
    let heads = ["wall-plate", "wall-job", "wall-stage", "wall-proofs", "wall-done"];
    let mut table = Table::new(heads.map(|key| Column::words(words.t(key))).into());
    for job in &bay.jobs {
        let stage = match job.stuck.as_str() {
            "" => Cell::new(&job.stage),
            stuck => Cell::new(&job.stage).and(format!("◐\u{a0}{stuck}")),
        };
        let proofs = words.tv("wall-count", &[("settled", job.settled.into()), ("asked", job.asked.into())]);
        table.row(vec![
            Cell::strong(&job.plate, Ink::Fact).and(&job.vehicle),
            Cell::new(&job.purpose).and(&job.number),
            stage,
            Cell::new(proofs),
            Cell::default(),
        ]);
    }
    table
}

fn bookings(bay: &BayOnWall, words: &Words) -> Table {
    let heads = ["wall-time", "wall-whose", "wall-purpose", "wall-state"];
    let mut table = Table::new(heads.map(|key| Column::words(words.t(key))).into());
    for booking in &bay.bookings {
        table.row(vec![
            Cell::strong(&booking.time, Ink::Fact),
            Cell::new(dash(&booking.whose)).and(&booking.note),
            Cell::new(&booking.purpose),
            Cell::new(&booking.booking_state),
        ]);
    }
    table
}
