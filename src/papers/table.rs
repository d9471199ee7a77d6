//! Tables that break across pages with their heads repeated. A row stays whole unless it is taller than a page.
//!
//! A word too long for its column is set smaller, and only broken when that is not enough.

mod cell;
mod columns;

use super::PaperError;
use super::fonts;
use super::ink::{CELL, COLUMN, Ink, SMALL, Style};
use super::sheet::{LEFT, Sheet, WIDTH};
use super::tags::Role;
pub use crate::papers::facts::facts;
pub use cell::{Align, Cell, Column};

/// A table.
#[derive(Debug, Clone)]
pub struct Table {
    columns: Vec<Column>,
    rows: Vec<Row>,
}

/// Cells side by side and, under them, a small line over the whole width; it may be empty.
#[derive(Debug, Clone)]
struct Row {
    cells: Vec<Cell>,
    below: String,
}

/// One line of a cell, with the distance of its baseline from the row's upper edge.
type Laid = (String, Style);

const GAP: f32 = 7.0;
const PAD: f32 = 2.5;
const HEAD: f32 = 15.0;

impl Table {
    /// A table without rows.
    pub fn new(columns: Vec<Column>) -> Self {
        Self { columns, rows: Vec::new() }
    }

    /// Adds a row; missing cells stay empty.
    pub fn row(&mut self, cells: Vec<Cell>) {
        self.row_over(cells, String::new());
    }

    /// The same, with a small line under all its cells: what belongs to the row but to no column.
    pub fn row_over(&mut self, mut cells: Vec<Cell>, below: String) {
        cells.resize_with(self.columns.len(), Cell::default);
        self.rows.push(Row { cells, below });
    }

    /// Whether it has no rows.
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }

    /// Height of head and first row, to keep a heading with them.
    pub fn least_height(&self) -> Result<f32, PaperError> {
        let widths = self.widths()?;
        let first = self.rows.first().map(|row| tall(row, &Self::lay(&row.cells, &widths)?)).transpose()?;
        Ok(self.head_height(&widths)? + first.unwrap_or(0.0))
    }

    /// Draws it under a ruled heading that never stands alone; without rows, a sentence says so, or nothing is drawn.
    pub fn section(&self, sheet: &mut Sheet, heading: &str, when_empty: &str) -> Result<(), PaperError> {
        if self.is_empty() && when_empty.is_empty() {
            return Ok(());
        }
        sheet.section(heading, if self.is_empty() { CELL.leading() } else { self.least_height()? })?;
        if self.is_empty() {
            sheet.paragraph(when_empty, SMALL)?;
        } else {
            self.draw(sheet)?;
        }
        sheet.end_section();
        Ok(())
    }

    /// Draws it from the cursor on.
    pub fn draw(&self, sheet: &mut Sheet) -> Result<(), PaperError> {
        let widths = self.widths()?;
        sheet.keep(self.least_height()?.min(sheet.whole()));
        sheet.tags.open(Role::Table);
        self.draw_head(sheet, &widths, true)?;
        for row in &self.rows {
            let lines = Self::lay(&row.cells, &widths)?;
            if sheet.keep(tall(row, &lines)?.min(sheet.whole() - self.head_height(&widths)?)) {
                self.draw_head(sheet, &widths, false)?;
            }
            self.draw_row(sheet, &widths, lines, &row.below)?;
        }
        sheet.tags.close();
        Ok(())
    }

    fn draw_row(
        &self,
        sheet: &mut Sheet,
        widths: &[f32],
        lines: Vec<Vec<Laid>>,
        below: &str,
    ) -> Result<(), PaperError> {
        sheet.tags.open(Role::TR);
        // A row taller than a page is cut between lines and goes on under the head of the next page.
        let mut rest: Vec<_> = lines.into_iter().map(|cell| cell.into_iter().peekable()).collect();
        let mut nodes: Vec<usize> = Vec::new();
        let floor = sheet.floor();
        loop {
            let mut lowest = sheet.y;
            for (index, cell) in rest.iter_mut().enumerate() {
                let mut y = sheet.y + PAD;
                match nodes.get(index) {
                    Some(node) => sheet.tags.resume(*node),
                    None => nodes.push(sheet.tags.open(Role::TD)),
                }
                while let Some((text, style)) = cell.next_if(|(_, style)| y + style.leading() <= floor) {
                    self.put(sheet, widths, index, y + style.size, &text, style)?;
                    y += style.leading();
                }
                sheet.tags.close();
                lowest = lowest.max(y + PAD);
            }
            sheet.y = lowest;
            let is_done = rest.iter_mut().all(|cell| cell.peek().is_none());
            if is_done && let Some(node) = nodes.first() {
                draw_below(sheet, *node, below)?;
            }
            sheet.rule(sheet.y, 0.5, Ink::Rule);
            if is_done {
                break;
            }
            sheet.y = floor;
            sheet.keep(HEAD);
            self.draw_head(sheet, widths, false)?;
        }
        sheet.tags.close();
        Ok(())
    }

    fn put(
        &self,
        sheet: &mut Sheet,
        widths: &[f32],
        index: usize,
        y: f32,
        text: &str,
        style: Style,
    ) -> Result<(), PaperError> {
        let x = LEFT + widths[..index].iter().sum::<f32>() + GAP * index as f32;
        match self.columns[index].align {
            Align::Left => sheet.put(x, y, text, style),
            Align::Right => sheet.put_right(x + widths[index], y, text, style),
        }
    }

    fn draw_head(&self, sheet: &mut Sheet, widths: &[f32], is_first: bool) -> Result<(), PaperError> {
        let tall = self.head_height(widths)?;
        if is_first {
            sheet.tags.open(Role::TR);
        }
        for (index, column) in self.columns.iter().enumerate() {
            let lines = fonts::wrap(&column.head, COLUMN.weight, COLUMN.size, widths[index])?;
            // Heads stand on the line below them, however many lines each has.
            let mut y = sheet.y + tall - 5.0 - COLUMN.leading() * (lines.len() - 1) as f32;
            if is_first {
                sheet.tags.open(Role::TH);
            }
            for line in lines {
                if is_first {
                    self.put(sheet, widths, index, y, &line, COLUMN)?;
                } else {
                    self.repeat(sheet, widths, index, y, &line)?;
                }
                y += COLUMN.leading();
            }
            if is_first {
                sheet.tags.close();
            }
        }
        if is_first {
            sheet.tags.close();
        }
        sheet.y += tall;
        sheet.rule(sheet.y, 0.5, Ink::Soft);
        Ok(())
    }

    fn repeat(&self, sheet: &mut Sheet, widths: &[f32], index: usize, y: f32, text: &str) -> Result<(), PaperError> {
        let x = LEFT + widths[..index].iter().sum::<f32>() + GAP * index as f32;
        let page = sheet.page();
        match self.columns[index].align {
            Align::Left => sheet.decorate(page, x, y, text, COLUMN),
            Align::Right => sheet.decorate_right(page, x + widths[index], y, text.trim_end(), COLUMN),
        }
    }

    fn head_height(&self, widths: &[f32]) -> Result<f32, PaperError> {
        let mut most = 1;
        for (column, width) in self.columns.iter().zip(widths) {
            most = most.max(fonts::wrap(&column.head, COLUMN.weight, COLUMN.size, *width)?.len());
        }
        Ok(HEAD + COLUMN.leading() * (most - 1) as f32)
    }

    fn lay(row: &[Cell], widths: &[f32]) -> Result<Vec<Vec<Laid>>, PaperError> {
        row.iter()
            .zip(widths)
            .map(|(cell, width)| {
                let mut lines = Vec::new();
                for (text, style) in &cell.0 {
                    let style = fonts::fitted(text, *style, *width)?;
                    let wrapped = fonts::wrap(text, style.weight, style.size, *width)?;
                    lines.extend(wrapped.into_iter().map(|line| (line, style)));
                }
                Ok(lines)
            })
            .collect()
    }
}

/// The line under a row belongs to its first cell, for those who hear the table.
fn draw_below(sheet: &mut Sheet, first: usize, below: &str) -> Result<(), PaperError> {
    if below.is_empty() {
        return Ok(());
    }
    sheet.y -= PAD;
    sheet.tags.resume(first);
    for line in fonts::wrap(below, SMALL.weight, SMALL.size, WIDTH)? {
        sheet.keep(SMALL.leading() + PAD);
        sheet.put(LEFT, sheet.y + SMALL.size, &line, SMALL)?;
        sheet.y += SMALL.leading();
    }
    sheet.tags.close();
    sheet.y += PAD;
    Ok(())
}

/// Height of a whole row.
fn tall(row: &Row, lines: &[Vec<Laid>]) -> Result<f32, PaperError> {
    let below = match row.below.as_str() {
        "" => 0,
        below => fonts::wrap(below, SMALL.weight, SMALL.size, WIDTH)?.len(),
    };
    Ok(height(lines) + SMALL.leading() * below as f32)
}

fn height(lines: &[Vec<Laid>]) -> f32 {
    let tallest =
        lines.iter().map(|cell| cell.iter().map(|(_, style)| style.leading()).sum::<f32>()).fold(0.0, f32::max);
    tallest + 2.0 * PAD
}
