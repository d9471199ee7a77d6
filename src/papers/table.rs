//! Tables that break across pages with their heads repeated, and facts: names and values in two columns.

use super::PaperError;
use super::fonts;
use super::ink::{CELL, COLUMN, Ink, SMALL, Style};
use super::sheet::{FLOOR, LEFT, Sheet, TOP, WIDTH, fits};
use super::tags::Role;

/// Where a column's text stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Align {
    /// At the left, for words.
    Left,
    /// At the right, for numbers.
    Right,
}

/// One column.
#[derive(Debug, Clone)]
pub struct Column {
    head: String,
    align: Align,
}

impl Column {
    /// A column of words.
    pub fn words(head: String) -> Self {
        Self { head, align: Align::Left }
    }

    /// A column of numbers.
    pub fn numbers(head: String) -> Self {
        Self { head, align: Align::Right }
    }
}

/// One cell: texts under each other, each in its style.
#[derive(Debug, Clone, Default)]
pub struct Cell(Vec<(String, Style)>);

impl Cell {
    /// A text in the usual style.
    pub fn new(text: impl Into<String>) -> Self {
        Self(vec![(text.into(), CELL)])
    }

    /// A text in small type.
    pub fn small(text: impl Into<String>) -> Self {
        Self(vec![(text.into(), SMALL)])
    }

    /// A text in bold and in an ink, for verdicts.
    pub fn strong(text: impl Into<String>, ink: Ink) -> Self {
        Self(vec![(text.into(), CELL.bold().in_ink(ink))])
    }

    /// With a further text in the usual style.
    #[must_use]
    pub fn line(mut self, text: impl Into<String>) -> Self {
        self.0.push((text.into(), CELL));
        self
    }

    /// With a second line in small type; an empty one is left out.
    #[must_use]
    pub fn and(mut self, text: impl Into<String>) -> Self {
        let text = text.into();
        if !text.is_empty() {
            self.0.push((text, SMALL));
        }
        self
    }
}

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

    /// Draws it from the cursor on.
    pub fn draw(&self, sheet: &mut Sheet) -> Result<(), PaperError> {
        let widths = self.widths()?;
        sheet.keep(self.least_height()?.min(FLOOR - TOP));
        sheet.tags.open(Role::Table);
        self.draw_head(sheet, &widths, true)?;
        for row in &self.rows {
            let lines = Self::lay(&row.cells, &widths)?;
            if sheet.keep(tall(row, &lines)?.min(FLOOR - TOP - HEAD)) {
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
        loop {
            let mut lowest = sheet.y;
            for (index, cell) in rest.iter_mut().enumerate() {
                let mut y = sheet.y + PAD;
                match nodes.get(index) {
                    Some(node) => sheet.tags.resume(*node),
                    None => nodes.push(sheet.tags.open(Role::TD)),
                }
                while let Some((text, style)) = cell.next_if(|(_, style)| y + style.leading() <= FLOOR) {
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
            sheet.y = FLOOR;
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
                    let wrapped = fonts::wrap(text, style.weight, style.size, *width)?;
                    lines.extend(wrapped.into_iter().map(|line| (line, *style)));
                }
                Ok(lines)
            })
            .collect()
    }

    /// Widths of the columns: each as wide as its widest text if they all fit; else the wide ones give, down to their
    /// longest word.
    fn widths(&self) -> Result<Vec<f32>, PaperError> {
        let room = WIDTH - GAP * (self.columns.len().max(1) - 1) as f32;
        let mut wanted = Vec::new();
        let mut least = Vec::new();
        for (index, column) in self.columns.iter().enumerate() {
            let mut texts: Vec<(&str, Style)> = vec![(&column.head, COLUMN)];
            texts.extend(
                self.rows.iter().flat_map(|row| row.cells[index].0.iter().map(|(text, style)| (text.as_str(), *style))),
            );
            let (mut wide, mut narrow): (f32, f32) = (0.0, 0.0);
            for (text, style) in texts {
                wide = wide.max(fonts::width(&fonts::clean(text).replace('\n', " "), style.weight, style.size)?);
                narrow = narrow.max(fonts::longest_piece(text, style.weight, style.size)?);
            }
            wanted.push(wide + 0.1);
            least.push(narrow.min(room * 0.4) + 0.1);
        }
        Ok(share(&wanted, &least, room))
    }
}

/// Shares `room` out: what is left over goes to the first column, what is missing is taken where there is most to give.
fn share(wanted: &[f32], least: &[f32], room: f32) -> Vec<f32> {
    let total: f32 = wanted.iter().sum();
    if total <= room {
        let spare = (room - total) / wanted.len().max(1) as f32;
        return wanted.iter().map(|width| width + spare).collect();
    }
    let floor: f32 = least.iter().sum();
    if floor >= room {
        return least.iter().map(|width| width * room / floor).collect();
    }
    // A cap on every column, lowered until they fit; a column never goes below its longest word.
    let (mut low, mut high) = (0.0_f32, room);
    for _ in 0..40 {
        let cap = low.midpoint(high);
        let sum: f32 = wanted.iter().zip(least).map(|(w, l)| w.min(cap).max(*l)).sum();
        if sum > room { high = cap } else { low = cap }
    }
    wanted.iter().zip(least).map(|(w, l)| w.min(low).max(*l)).collect()
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

/// Draws names and values: two pairs a line, a long value over the whole line. Pairs without a value are left out.
pub fn facts(sheet: &mut Sheet, pairs: &[(String, String)]) -> Result<(), PaperError> {
    let pairs: Vec<_> = pairs.iter().filter(|(_, value)| !value.is_empty()).collect();
    let half = WIDTH / 2.0;
    let room = half - names_width(&pairs)? - 8.0;
    let is_short = |at: usize| pairs.get(at).map_or(Ok(false), |(_, v)| fits(v, CELL.weight, CELL.size, room * 1.9));
    let mut lines = Vec::new();
    let mut index = 0;
    while index < pairs.len() {
        let shown = if is_short(index)? && is_short(index + 1)? { 2 } else { 1 };
        lines.push((&pairs[index..index + shown], is_short(index)?));
        index += shown;
    }
    // Names at the right are often shorter than those at the left; their values then have more room.
    let column = |place: usize| -> Vec<&(String, String)> {
        lines.iter().filter_map(|(line, _)| line.get(place).copied()).collect()
    };
    let names = [names_width(&column(0))?, names_width(&column(1))?];
    sheet.tags.open(Role::L);
    for (line, is_half) in &lines {
        let mut columns = Vec::new();
        for ((name, value), names) in line.iter().zip(names) {
            let width = if *is_half { half - names - 8.0 } else { WIDTH - names };
            columns.push((
                fonts::wrap(name, SMALL.weight, SMALL.size, names - 6.0)?,
                fonts::wrap(value, CELL.weight, CELL.size, width)?,
            ));
        }
        draw_pairs(sheet, &columns, names, half)?;
    }
    sheet.tags.close();
    Ok(())
}

fn names_width(pairs: &[&(String, String)]) -> Result<f32, PaperError> {
    let mut widest: f32 = 50.0;
    for (name, _) in pairs {
        widest = widest.max(fonts::width(name, SMALL.weight, SMALL.size)? + 10.0);
    }
    Ok(widest.min(132.0))
}

fn draw_pairs(
    sheet: &mut Sheet,
    columns: &[(Vec<String>, Vec<String>)],
    names: [f32; 2],
    half: f32,
) -> Result<(), PaperError> {
    let tall = columns.iter().map(|(name, value)| name.len().max(value.len())).max().unwrap_or(0);
    sheet.keep(CELL.leading() * tall.min(8) as f32);
    if tall > 8 {
        // One long text: line by line, so that it can break across pages.
        return draw_long(sheet, columns, names[0]);
    }
    for (place, (name, value)) in columns.iter().enumerate() {
        let x = LEFT + half * place as f32;
        sheet.tags.open(Role::LI);
        for (role, lines, style, indent) in [(Role::Lbl, name, SMALL, 0.0), (Role::LBody, value, CELL, names[place])] {
            sheet.tags.open(role);
            for (row, line) in lines.iter().enumerate() {
                sheet.put(x + indent, sheet.y + CELL.size + CELL.leading() * row as f32, line, style)?;
            }
            sheet.tags.close();
        }
        sheet.tags.close();
    }
    sheet.y += CELL.leading() * tall as f32 + 1.0;
    Ok(())
}

fn draw_long(sheet: &mut Sheet, columns: &[(Vec<String>, Vec<String>)], names: f32) -> Result<(), PaperError> {
    for (name, value) in columns {
        sheet.tags.open(Role::LI);
        sheet.tags.open(Role::Lbl);
        for (row, line) in name.iter().enumerate() {
            sheet.put(LEFT, sheet.y + CELL.size + CELL.leading() * row as f32, line, SMALL)?;
        }
        sheet.tags.close();
        sheet.tags.open(Role::LBody);
        for line in value {
            sheet.keep(CELL.leading());
            sheet.put(LEFT + names, sheet.y + CELL.size, line, CELL)?;
            sheet.y += CELL.leading();
        }
        sheet.tags.close();
        sheet.tags.close();
    }
    sheet.y += 2.0;
    Ok(())
}
