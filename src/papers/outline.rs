//! What all unsigned papers share: letter head, title, number, one sentence that says what the paper says; at the end the
//! rules, the program, the end line; on every page head and foot. Between them stand the sections of each paper.

use time::OffsetDateTime;

use super::PaperError;
use super::finish::{About, finish};
use super::ink::{CELL, LEAD, NUMBER, SMALL, TITLE};
use super::letter::{Letter, Mark};
use super::sheet::{Page, Sheet, WIDTH};
use super::tags::Role;
use crate::model::branch::PaperSize;
use crate::model::paper::{RuleSetOnPaper, ShopBlock};
use crate::papers::certificate::{rule_set_lines, rules_aside};
use crate::words::Words;

/// What is around the sections of a paper.
pub struct Outline<'a> {
    /// The shop.
    pub shop: &'a ShopBlock,
    /// Size of the pages.
    pub size: PaperSize,
    /// Title.
    pub title: &'a str,
    /// Number, as it stands at the right of the foot.
    pub number: &'a str,
    /// The line under the title: number and day.
    pub under_title: String,
    /// One sentence that says what the paper says; may be empty.
    pub lead: String,
    /// Second line at the right of the head; may be empty.
    pub aside: String,
    /// Left of the foot.
    pub foot: String,
    /// Language tag.
    pub language: &'a str,
    /// It belongs to the demonstration shop.
    pub is_demonstration: bool,
    /// When it was made.
    pub made_at: OffsetDateTime,
}

impl Outline<'_> {
    /// A sheet with title, number and lead.
    pub fn open(&self) -> Result<Sheet, PaperError> {
        let mut sheet = Sheet::on(Page::of(self.size));
        sheet.y += 6.0;
        sheet.text(Role::H1, self.title, TITLE, WIDTH)?;
        sheet.paragraph(&self.under_title, NUMBER)?;
        if !self.lead.is_empty() {
            sheet.y += 5.0;
            sheet.text(Role::P, &self.lead, LEAD, WIDTH * 0.94)?;
        }
        Ok(sheet)
    }

    /// Head and foot on every page, and the file.
    pub fn close(&self, mut sheet: Sheet, words: &Words) -> Result<Vec<u8>, PaperError> {
        let letter = Letter {
            shop: self.shop,
            aside: self.aside.clone(),
            foot: self.foot.clone(),
            number: self.number.to_owned(),
            mark: Mark::of_demonstration(self.is_demonstration),
        };
        letter.draw(&mut sheet, words)?;
        let about = About {
            title: format!("{}, {}", self.title, self.number),
            author: &self.shop.name,
            language: self.language,
            made_at: self.made_at,
            attachments: Vec::new(),
        };
        finish(sheet, &about)
    }
}

/// The rule sets in short, for the head.
pub fn aside(rule_sets: &[RuleSetOnPaper], words: &Words) -> String {
    rules_aside(rule_sets, words)
}

/// A ruled list, where it has items.
pub fn list(sheet: &mut Sheet, heading: &str, items: &[String]) -> Result<(), PaperError> {
    if items.is_empty() {
        return Ok(());
    }
    sheet.section(heading, CELL.leading())?;
    sheet.list(items, CELL)?;
    sheet.end_section();
    Ok(())
}

/// Cautions, the rule sets, what this paper is not, the program and the end line.
pub fn ending(
    sheet: &mut Sheet,
    (cautions, rule_sets): (&[String], &[RuleSetOnPaper]),
    (number, software_version): (&str, &str),
    words: &Words,
) -> Result<(), PaperError> {
    if !cautions.is_empty() {
        sheet.section(&words.t("paper-cautions"), SMALL.leading())?;
        sheet.list(cautions, SMALL)?;
        sheet.end_section();
    }
    sheet.gap(8.0);
    let mut lines = rule_set_lines(rule_sets, words);
    lines.extend([
        words.t("paper-not-signed"),
        words.tv("paper-software", &[("version", software_version.into())]),
        words.tv("paper-end", &[("number", number.into())]),
    ]);
    lines.iter().try_for_each(|line| sheet.paragraph(line, SMALL))
}
