//! The owner's sheet: how to fill, drive and park, what to do at a smell of gas, and what falls due.
//!
//! The cautions are common practice of the trade and stand in the words files; the rule sets may add more.

use crate::model::branch::PaperSize;
use crate::model::paper::GasFuel;
use crate::model::paper::owner_sheet::OwnerSheetContent;
use crate::words::Words;

use super::finish::{About, finish};
use super::ink::{CELL, Ink, LEAD, SMALL, Style, TEXT, TITLE};
use super::letter::{Letter, Mark};
use super::results::dash;
use super::sheet::{LEFT, Page, Sheet, WIDTH};
use super::table::{Cell, Column, Table};
use super::tags::Role;
use super::{PaperError, phrases, qr};

/// Groups of cautions in the order a driver needs them: heading, then its lines. A key ending in `*` differs by gas.
const CAUTIONS: [(&str, &[&str]); 5] = [
    ("owner-smell", &["owner-smell-1", "owner-smell-2*", "owner-smell-3", "owner-smell-4"]),
    ("owner-fire", &["owner-fire-1", "owner-fire-2"]),
    ("owner-fill", &["owner-fill-1", "owner-fill-2*", "owner-fill-3"]),
    ("owner-park", &["owner-park-1", "owner-park-2", "owner-park-3", "owner-park-4"]),
    ("owner-never", &["owner-never-1"]),
];

/// Sizes of the cautions, the usual first: the longest languages take a smaller one, so that everything a driver needs
/// stays on one page.
const SIZES: [f32; 4] = [9.4, 9.0, 8.6, 8.2];

/// The sheet as a PDF. The same input gives the same bytes.
///
/// Errors: a character that no face has; an address too long for a QR code.
pub fn owner_sheet(content: &OwnerSheetContent, words: &Words, size: PaperSize) -> Result<Vec<u8>, PaperError> {
    let fuel = words.t(format!("paper-fuel-{}", content.fuel.as_str()));
    let title = words.tv("owner-title", &[("fuel", (&fuel).into())]);
    let mut sheet = drawn(content, [&title, &fuel], words, size, SIZES[0])?;
    for points in &SIZES[1..] {
        if sheet.page_count() == 1 {
            break;
        }
        let smaller = drawn(content, [&title, &fuel], words, size, *points)?;
        // What needs two pages at any size is set at the usual one.
        if smaller.page_count() == 1 {
            sheet = smaller;
        }
    }
    let call = [("shop", (&content.shop.name).into()), ("phone", (&content.shop.phone).into())];
    let letter = Letter {
        shop: &content.shop,
        aside: String::new(),
        foot: words.tv("owner-shop-call", &call),
        number: words.tv("owner-job", &[("number", (&content.job_number).into())]),
        mark: Mark::of_demonstration(content.is_demonstration),
    };
    letter.draw(&mut sheet, words)?;
    let about = About {
        title: format!("{title}, {}", content.plate),
        author: &content.shop.name,
        language: &content.language,
        made_at: content.issued_on.midnight().assume_utc(),
        attachments: Vec::new(),
    };
    finish(sheet, &about)
}

/// The sheet without head and foot, its cautions at this size.
fn drawn(
    content: &OwnerSheetContent,
    [title, fuel]: [&str; 2],
    words: &Words,
    size: PaperSize,
    points: f32,
) -> Result<Sheet, PaperError> {
    let caution = Style { size: points, ..TEXT };
    let mut sheet = Sheet::on(Page::of(size));
    sheet.section_gap = if points < SIZES[0] { 4.0 } else { 5.5 };
    opening(&mut sheet, content, title, fuel, words)?;
    for (heading, keys) in CAUTIONS {
        let lines: Vec<_> = keys.iter().map(|key| words.t(by_gas(key, content.fuel))).collect();
        sheet.section(&words.t(heading), TEXT.leading() * 2.0)?;
        sheet.list(&lines, caution)?;
        sheet.end_section();
    }
    tanks(&mut sheet, content, words)?;
    duties(&mut sheet, content, words)?;
    if !content.plate_place.is_empty() {
        let place = words.tv("owner-plate", &[("place", (&content.plate_place).into())]);
        sheet.gap(6.0);
        sheet.paragraph(&place, caution)?;
    }
    if !content.further_cautions.is_empty() {
        sheet.section(&words.t("paper-cautions"), TEXT.leading())?;
        sheet.list(&content.further_cautions, caution)?;
        sheet.end_section();
    }
    sheet.gap(4.0);
    sheet.paragraph(&words.t("owner-caution"), SMALL)?;
    Ok(sheet)
}

fn by_gas(key: &str, fuel: GasFuel) -> String {
    key.strip_suffix('*').map_or_else(|| key.to_owned(), |stem| format!("{stem}-{}", fuel.as_str()))
}

/// Side of the QR code.
const CODE: f32 = 64.0;

fn opening(
    sheet: &mut Sheet,
    content: &OwnerSheetContent,
    title: &str,
    fuel: &str,
    words: &Words,
) -> Result<(), PaperError> {
    let top = sheet.y;
    let width = if content.page_url.is_some() { WIDTH - CODE * 1.3 } else { WIDTH };
    sheet.text(Role::H1, title, TITLE, width)?;
    let vehicle = words.tv(
        if content.has_vin { "owner-vehicle-line" } else { "owner-vehicle-line-chassis" },
        &[
            ("vehicle", (&content.vehicle).into()),
            ("plate", (&content.plate).into()),
            ("vin", (&content.vin_last_4).into()),
            ("date", words.date(content.issued_on).into()),
        ],
    );
    let number = match content.certificate_number.as_str() {
        "" => String::new(),
        number => words.tv("owner-certificate", &[("number", number.into())]),
    };
    sheet.text(Role::P, &phrases::dotted(&[&vehicle, &number]), CELL, width)?;
    sheet.y += 4.0;
    sheet.text(Role::P, &words.t("owner-lead"), LEAD, width)?;
    if let Some(url) = &content.page_url {
        qr::draw(sheet, url, LEFT + WIDTH - CODE, top, CODE, &words.t("owner-page"))?;
        sheet.y = sheet.y.max(top + CODE + 8.0);
    }
    sheet.y += 3.0;
    let urgent = Style { size: 12.0, ..TEXT }.bold().in_ink(Ink::Stop);
    let emergency = [("number", (&content.emergency_number).into()), ("fuel", fuel.into())];
    sheet.paragraph(&words.tv("owner-emergency", &emergency), urgent)?;
    let call = [("shop", (&content.shop.name).into()), ("phone", (&content.shop.phone).into())];
    sheet.paragraph(&words.tv("owner-shop-call", &call), TEXT.bold())
}

fn tanks(sheet: &mut Sheet, content: &OwnerSheetContent, words: &Words) -> Result<(), PaperError> {
    if content.containers.is_empty() {
        return Ok(());
    }
    let is_lpg = content.fuel == GasFuel::Lpg;
    let mut table = Table::new(vec![
        Column::words(words.t("owner-tank-place")),
        Column::numbers(words.t("owner-tank-capacity")),
        Column::numbers(words.t(if is_lpg { "owner-tank-filled" } else { "owner-tank-pressure" })),
        Column::words(words.t("owner-tank-valve")),
        Column::words(words.t("owner-tank-test")),
        Column::words(words.t("owner-tank-end")),
    ]);
    for tank in &content.containers {
        let filled = match (tank.filled_l, tank.fill_limit_percent, tank.working_pressure_bar) {
            (Some(litres), Some(percent), _) => {
                words.tv("owner-filled-value", &[("litres", litres.into()), ("percent", percent.into())])
            }
            (_, _, Some(bar)) => format!("{}\u{a0}bar", words.integer(bar)),
            _ => "–".to_owned(),
        };
        table.row(vec![
            Cell::new(&tank.location),
            Cell::new(format!("{}\u{a0}L", words.integer(tank.capacity_l))),
            Cell::new(filled),
            Cell::new(dash(&tank.hand_valve)),
            Cell::new(dash(&phrases::day_if(words, tank.next_test_on))),
            Cell::new(dash(&phrases::day_if(words, tank.end_of_life_on))),
        ]);
    }
    sheet.section(&words.t(format!("owner-tank-{}", content.fuel.as_str())), table.least_height()?)?;
    table.draw(sheet)?;
    sheet.end_section();
    Ok(())
}

fn duties(sheet: &mut Sheet, content: &OwnerSheetContent, words: &Words) -> Result<(), PaperError> {
    if content.duties.is_empty() {
        return Ok(());
    }
    let mut table =
        Table::new(vec![Column::words(words.t("paper-due-what")), Column::words(words.t("paper-due-when"))]);
    for duty in &content.duties {
        table.row(vec![Cell::new(&duty.what), Cell::new(phrases::due(words, duty))]);
    }
    sheet.section(&words.t("owner-due"), table.least_height()?)?;
    table.draw(sheet)?;
    sheet.end_section();
    Ok(())
}
