//! A letter to post: address where a window envelope shows it, text, and at the foot an answer slip to cut off.

use time::OffsetDateTime;

use super::finish::{About, finish};
use super::ink::{Ink, SECTION, SMALL, Style, TEXT};
use super::letter::{Letter, Mark};
use super::sheet::{LEFT, Page, Sheet, WIDTH};
use super::tags::Role;
use super::{PaperError, phrases};
use crate::model::branch::PaperSize;
use crate::model::paper::letter::LetterContent;
use crate::words::Words;

/// Where the address begins: 50 mm under the upper edge (DIN 5008, form B; common practice elsewhere).
const ADDRESS: f32 = 142.0;
/// Where the text begins, under the address field.
const BEGIN: f32 = 262.0;
const SUBJECT: Style = Style { size: 12.0, ..TEXT.bold() };

/// The letter as a PDF. The same input gives the same bytes.
///
/// Errors: a character that no face has.
pub fn letter(content: &LetterContent, words: &Words, size: PaperSize) -> Result<Vec<u8>, PaperError> {
    let mut sheet = Sheet::on(Page::of(size));
    address(&mut sheet, content, words)?;
    sheet.text(Role::H1, &content.subject, SUBJECT, WIDTH)?;
    sheet.y += 8.0;
    for paragraph in &content.paragraphs {
        sheet.paragraph(paragraph, TEXT)?;
        sheet.gap(7.0);
    }
    if !content.answers.is_empty() {
        sheet.together(|sheet| slip(sheet, content, words))?;
    }
    let letter = Letter {
        shop: &content.shop,
        aside: String::new(),
        foot: content.subject.clone(),
        number: words.date(content.day),
        mark: Mark::of_demonstration(content.is_demonstration),
    };
    letter.draw(&mut sheet, words)?;
    let made_at: OffsetDateTime = content.written_at;
    let about = About {
        title: phrases::dotted(&[&content.subject, &content.to_name]),
        author: &content.shop.name,
        language: &content.language,
        made_at,
        attachments: Vec::new(),
    };
    finish(sheet, &about)
}

fn address(sheet: &mut Sheet, content: &LetterContent, words: &Words) -> Result<(), PaperError> {
    const ROOM: f32 = 240.0;
    sheet.y = ADDRESS;
    sheet.text(Role::P, &phrases::dotted(&[&content.shop.name, &content.shop.address]), SMALL, ROOM)?;
    sheet.y += 4.0;
    sheet.text(Role::P, &content.to_name, TEXT, ROOM)?;
    for line in &content.to_address {
        sheet.text(Role::P, line, TEXT, ROOM)?;
    }
    sheet.y = sheet.y.max(BEGIN - 2.0 * TEXT.leading());
    sheet.tags.open(Role::P);
    sheet.put_right(LEFT + WIDTH, sheet.y + TEXT.size, &words.date(content.day), TEXT)?;
    sheet.tags.close();
    sheet.y += TEXT.leading() * 2.0;
    Ok(())
}

/// What comes back: whom it is from, what can be ticked, a line to sign on.
fn slip(sheet: &mut Sheet, content: &LetterContent, words: &Words) -> Result<(), PaperError> {
    const ROW: f32 = 23.0;
    const BOX: f32 = 10.0;
    let tall = 78.0 + ROW * content.answers.len() as f32;
    // At the foot where there is room, so that cutting it off leaves the letter whole.
    sheet.keep(tall);
    sheet.y = sheet.y.max(sheet.floor() - tall);
    sheet.rule(sheet.y, 0.5, Ink::Soft);
    sheet.y += 8.0;
    sheet.text(Role::H2, &words.t("letter-answer"), SECTION, WIDTH)?;
    let lead = format!("{} {}", words.t("letter-answer-lead"), content.to_name);
    sheet.text(Role::P, &lead, SMALL, WIDTH)?;
    sheet.y += 4.0;
    for answer in &content.answers {
        let (top, page) = (sheet.y + 2.0, sheet.page());
        for level in [top, top + BOX] {
            sheet.rule_on(page, LEFT, LEFT + BOX, level, 0.75, Ink::Fact);
        }
        for x in [LEFT, LEFT + BOX] {
            sheet.stroke(page, [x, top, x, top + BOX], 0.75, Ink::Fact);
        }
        sheet.tags.open(Role::P);
        sheet.put(LEFT + BOX + 8.0, sheet.y + TEXT.size, answer, TEXT)?;
        sheet.tags.close();
        let wide = super::fonts::width(answer, TEXT.weight, TEXT.size)?;
        sheet.rule_on(page, LEFT + BOX + 14.0 + wide, LEFT + WIDTH, top + BOX, 0.5, Ink::Soft);
        sheet.y += ROW;
    }
    sheet.y += 8.0;
    sheet.text(Role::P, &words.t("letter-sign"), SMALL, WIDTH)?;
    let wide = super::fonts::width(&words.t("letter-sign"), SMALL.weight, SMALL.size)?;
    sheet.rule_on(sheet.page(), LEFT + wide + 6.0, LEFT + WIDTH, sheet.y - 2.0, 0.5, Ink::Soft);
    Ok(())
}
