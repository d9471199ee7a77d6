//! The vehicle label at its true size: system, approval, containers, next dates, and where to ask.
//!
//! It is made to be printed at 100 % on a label of 105 mm by 74 mm. The stickers and plates of single countries, whose size,
//! colour and letters a law gives (green with a white border, a plate of 70 mm by 45 mm, a mark 8 mm high), are not drawn
//! here: they come from the authority or with the approved system.

use crate::model::paper::GasFuel;
use crate::model::paper::vehicle_label::{LabelContainer, VehicleLabelContent};
use crate::words::Words;

use super::finish::{About, finish};
use super::fonts::{self, Weight};
use super::ink::{Ink, Style, TEXT};
use super::sheet::{LEFT, Page, Sheet};
use super::tags::Role;
use super::{PaperError, phrases, qr};

/// Width and height (ISO 216, A7 across).
pub const SIZE_MM: [f32; 2] = [105.0, 74.0];
/// Edge that stays white: label printers reach no nearer.
const MARGIN_MM: f32 = 4.0;
/// Width of the text.
const WIDTH: f32 = (SIZE_MM[0] - 2.0 * MARGIN_MM) * 72.0 / 25.4;
/// Height of the foot with code and phone.
const FOOT: f32 = 24.0;
/// Side of the QR code, 22 mm: its modules stay over half a millimetre for an address of 100 characters.
const CODE: f32 = 62.4;
/// White around the code.
const QUIET: f32 = 8.0;

const GAS: Style = Style { size: 17.0, ..TEXT.bold() };
const LINE: Style = Style { size: 7.0, ..TEXT };
const SOFT: Style = Style { size: 6.2, ..TEXT };

/// The label as a PDF. The same input gives the same bytes. What one label cannot hold goes on over a second.
///
/// Errors: a character that no face has; an address too long for a QR code.
pub fn vehicle_label(content: &VehicleLabelContent, words: &Words) -> Result<Vec<u8>, PaperError> {
    let mut sheet = Sheet::on(Page::bare(SIZE_MM, MARGIN_MM, FOOT));
    let gas = words.t(format!("paper-fuel-{}", content.fuel.as_str()));
    let title = words.tv("label-title", &[("fuel", gas.into())]);
    let below_code = head(&mut sheet, content, &title, words)?;
    for (text, style) in lines(content, words) {
        let is_beside = content.url.is_some() && sheet.page() == 0 && sheet.y < below_code;
        let width = if is_beside { WIDTH - CODE - QUIET } else { WIDTH };
        sheet.text(Role::P, &text, fonts::fitted(&text, style, width)?, width)?;
    }
    foot(&mut sheet, content, words)?;
    let about = About {
        title: phrases::dotted(&[&title, &content.plate, &content.vin_last_4]),
        author: &content.shop.name,
        language: &content.language,
        made_at: content.printed_on.midnight().assume_utc(),
        attachments: Vec::new(),
    };
    finish(sheet, &about)
}

/// Gas, vehicle and code; gives where the code ends.
fn head(sheet: &mut Sheet, content: &VehicleLabelContent, title: &str, words: &Words) -> Result<f32, PaperError> {
    let top = sheet.y;
    if let Some(url) = &content.url {
        let x = LEFT + WIDTH - CODE;
        qr::draw(sheet, url, x, top, CODE, &words.t("label-code-alt"))?;
    }
    let width = if content.url.is_some() { WIDTH - CODE - QUIET } else { WIDTH };
    sheet.text(Role::H1, title, GAS, width)?;
    sheet.y += 2.0;
    let (x, y) = (LEFT, sheet.y);
    sheet.rule_on(sheet.page(), x, x + width, y, 1.4, Ink::Fact);
    sheet.y += 3.0;
    Ok(top + CODE + 2.0)
}

fn lines(content: &VehicleLabelContent, words: &Words) -> Vec<(String, Style)> {
    let plate = if content.plate.is_empty() { words.t("paper-not-registered") } else { content.plate.clone() };
    let vehicle = words.tv("label-vehicle", &[("plate", plate.into()), ("last4", (&content.vin_last_4).into())]);
    let approval = match content.approval.as_str() {
        "" => words.t("label-no-approval"),
        mark => words.tv("label-approval", &[("mark", mark.into())]),
    };
    let fitted = content.fitted_on.map(|day| words.tv("label-fitted", &[("day", words.date(day).into())]));
    let mut lines = vec![
        (vehicle, LINE.bold()),
        (phrases::dotted(&[&content.system, &fitted.unwrap_or_default()]), LINE),
        (approval, LINE),
    ];
    lines.extend(content.parts.iter().map(|part| (phrases::dotted(&[&part.name, &part.mark]), SOFT)));
    lines.extend(content.containers.iter().map(|one| (container(one, content.fuel, words), LINE)));
    let due: Vec<String> =
        content.duties.iter().map(|duty| phrases::dotted(&[&duty.what, &phrases::due_dates(words, duty)])).collect();
    if !due.is_empty() {
        lines.push((words.t("label-next"), LINE.bold()));
        lines.extend(due.into_iter().map(|text| (text, LINE)));
    }
    lines.retain(|(text, _)| !text.is_empty());
    lines
}

fn container(one: &LabelContainer, fuel: GasFuel, words: &Words) -> String {
    let holds = match (one.fill_limit_percent, one.working_pressure_bar) {
        (Some(percent), _) => {
            words.tv("label-container-filled", &[("litres", one.capacity_l.into()), ("percent", percent.into())])
        }
        (_, Some(bar)) => {
            words.tv("label-container-pressure", &[("litres", one.capacity_l.into()), ("bar", bar.into())])
        }
        _ => format!("{}\u{a0}L", words.integer(one.capacity_l)),
    };
    let said = |key: &'static str, day: String| {
        if day.is_empty() { day } else { words.tv(key, &[("day", day.into())]) }
    };
    phrases::dotted(&[
        &words.t(format!("label-container-{}", fuel.as_str())),
        &one.serial,
        &one.approval_mark,
        &holds,
        &said("label-container-made", phrases::short_month(&one.made)),
        &said("label-container-test", phrases::day_if(words, one.next_test_on)),
    ])
}

/// Code, phone and number, on every label; they never reach into the text above.
fn foot(sheet: &mut Sheet, content: &VehicleLabelContent, words: &Words) -> Result<(), PaperError> {
    let base = sheet.height() - MARGIN_MM * 72.0 / 25.4;
    let code = words.tv("label-code", &[("code", (&content.code).into())]);
    let call =
        words.tv("label-call", &[("shop", (&content.shop.name).into()), ("phone", (&content.shop.phone).into())]);
    for page in 0..sheet.page_count() {
        sheet.rule_on(page, LEFT, LEFT + WIDTH, base - 20.0, 0.5, Ink::Soft);
        let small = |text: &str, room: f32, weight: Weight| -> Result<Style, PaperError> {
            let wide = fonts::width(text, weight, LINE.size)?;
            Ok(Style { size: LINE.size * (room / wide).min(1.0), weight, ..LINE })
        };
        sheet.decorate(page, LEFT, base - 10.5, &call, small(&call, WIDTH, Weight::Bold)?)?;
        sheet.decorate(page, LEFT, base - 1.5, &code, small(&code, WIDTH * 0.72, Weight::Regular)?)?;
        let number = small(&content.job_number, WIDTH * 0.26, Weight::Regular)?;
        sheet.decorate_right(page, LEFT + WIDTH, base - 1.5, &content.job_number, number)?;
        if content.is_demonstration {
            let across = Style { weight: Weight::Bold, size: 25.0, ink: Ink::Shade };
            sheet.across(page, &words.t("label-demonstration"), across)?;
        }
    }
    Ok(())
}
