//! What stands on every page: letter head, foot, page x of y, and the mark of a demonstration paper.

use crate::model::paper::ShopBlock;
use crate::words::Words;

use super::PaperError;
use super::fonts::{self, Weight};
use super::ink::{Ink, SECTION, SHOP, SMALL, Style};
use super::sheet::{LEFT, Sheet, WIDTH};

/// Head and foot of a paper.
pub struct Letter<'a> {
    /// The shop.
    pub shop: &'a ShopBlock,
    /// Second line at the right of the head, for example the rule sets; may be empty.
    pub aside: String,
    /// Left of the foot.
    pub foot: String,
    /// Right of the foot: the number of the paper.
    pub number: String,
    /// What says that the paper proves nothing, if it does not.
    pub mark: Option<Mark>,
}

/// Why a paper proves nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mark {
    /// It belongs to the demonstration shop.
    Demonstration,
    /// It is not signed yet.
    Preview,
}

impl Mark {
    /// The mark of a paper that is neither signed nor numbered.
    pub fn of_demonstration(is_demonstration: bool) -> Option<Self> {
        is_demonstration.then_some(Self::Demonstration)
    }

    fn key(self) -> &'static str {
        match self {
            Self::Demonstration => "paper-demonstration",
            Self::Preview => "paper-preview",
        }
    }
}

/// Height of the foot's baseline over the edge of the page.
const FOOT: f32 = 33.0;

impl Letter<'_> {
    /// Draws head and foot on every page of a sheet that has all its pages.
    pub fn draw(&self, sheet: &mut Sheet, words: &Words) -> Result<(), PaperError> {
        let right = LEFT + WIDTH;
        let foot = sheet.height() - FOOT;
        let second = self.second_line(words);
        for page in 0..sheet.page_count() {
            let number = words.tv("paper-page", &[("page", (page + 1).into()), ("pages", sheet.page_count().into())]);
            sheet.decorate_right(page, right, 48.0, &number, SMALL)?;
            self.shop(sheet, page, &second)?;
            sheet.rule_on(page, LEFT, right, 78.0, 1.9, Ink::Fact);
            sheet.rule_on(page, LEFT, right, foot - 12.0, 0.5, Ink::Rule);
            self.line(sheet, page, foot, &self.foot, SMALL, WIDTH * 0.74)?;
            sheet.decorate_right(page, right, foot, &self.number, SMALL)?;
            if let Some(mark) = self.mark {
                let across = Style { weight: Weight::Bold, size: 84.0, ink: Ink::Shade };
                sheet.across(page, &words.t(mark.key()), across)?;
                let notice = words.t(format!("{}-notice", mark.key()));
                let wide = fonts::width(&notice, SECTION.weight, 9.0)?;
                let style = Style { size: 9.0, ..SECTION }.in_ink(Ink::Stop);
                sheet.decorate(page, (LEFT * 2.0 + WIDTH - wide) / 2.0, 30.0, &notice, style)?;
            }
        }
        Ok(())
    }

    /// Name and address, and what stands beside them. What is too long for one line gets two, under all the rest.
    fn shop(&self, sheet: &mut Sheet, page: usize, second: &str) -> Result<(), PaperError> {
        const NARROW: f32 = WIDTH * 0.42;
        let beside = if self.aside.is_empty() { WIDTH } else { NARROW };
        let aside = fitting(&self.aside, SMALL, WIDTH * 0.56)?;
        let is_long = fonts::width(&fonts::clean(second).replace('\n', " "), SMALL.weight, 7.0)? > beside;
        let [name, level] = if is_long { [NARROW, 59.0] } else { [WIDTH * 0.58, 65.0] };
        self.line(sheet, page, 52.0, &self.shop.name, SHOP, name)?;
        if !self.aside.is_empty() {
            let text = shorten(&self.aside, aside, WIDTH * 0.56)?;
            sheet.decorate_right(page, LEFT + WIDTH, level, &text, aside)?;
        }
        if !is_long {
            return self.line(sheet, page, level, second, SMALL, beside);
        }
        let style = Style { size: 6.5, ..SMALL };
        let lines = fonts::wrap(second, style.weight, style.size, WIDTH)?;
        for (n, line) in lines.iter().take(2).enumerate() {
            let is_last = n == 1 || lines.len() == 1;
            let line = if is_last { lines[n..].concat() } else { line.clone() };
            self.line(sheet, page, 67.0 + 7.5 * n as f32, line.trim_end(), style, WIDTH)?;
        }
        Ok(())
    }

    fn second_line(&self, words: &Words) -> String {
        let licence = match self.shop.licence.as_str() {
            "" => String::new(),
            licence => words.tv("paper-licence", &[("licence", licence.into())]),
        };
        let parts = [&self.shop.branch, &self.shop.address, &self.shop.phone, &licence];
        parts.into_iter().filter(|part| !part.is_empty()).cloned().collect::<Vec<_>>().join(" · ")
    }

    /// A line of the head or foot; too long a one is set smaller, down to 6 points, and then cut with an ellipsis.
    #[expect(clippy::unused_self, reason = "reads as part of the letter")]
    fn line(
        &self,
        sheet: &mut Sheet,
        page: usize,
        y: f32,
        text: &str,
        style: Style,
        room: f32,
    ) -> Result<(), PaperError> {
        let text = fonts::clean(text).replace('\n', " ");
        let style = fitting(&text, style, room)?;
        sheet.decorate(page, LEFT, y, &shorten(&text, style, room)?, style)
    }
}

/// The style in which a line fits, not below 6 points.
fn fitting(text: &str, style: Style, room: f32) -> Result<Style, PaperError> {
    let wide = fonts::width(&fonts::clean(text).replace('\n', " "), style.weight, style.size)?;
    Ok(Style { size: (style.size * (room / wide).min(1.0)).max(6.0), ..style })
}

fn shorten(text: &str, style: Style, room: f32) -> Result<String, PaperError> {
    let mut text = fonts::clean(text).replace('\n', " ");
    if fonts::width(&text, style.weight, style.size)? <= room + 0.1 {
        return Ok(text);
    }
    while !text.is_empty() && fonts::width(&format!("{text}…"), style.weight, style.size)? > room {
        text.pop();
    }
    Ok(format!("{}…", text.trim_end()))
}
