//! Looking at the first part of a file: what kind, how written, where its table begins.

use std::fs::File;
use std::io::{Cursor, Read};
use std::ops::ControlFlow;
use std::path::Path;

use sha2::{Digest, Sha256};

use super::head::{self, Parted, Table};
use super::lines::Lines;
use super::record::{MOST_FIELDS, Record};
use super::text::{self, Line, Parting};
use super::workbook::{self, Book};
use super::{Layout, LogError, encoding};

/// Bytes that are looked at.
const LOOKED_AT: u64 = 256 * 1024;
/// Records that are looked at.
const MOST_RECORDS: usize = 600;
/// What may part fields; of two that part a file alike the first is meant.
const DELIMITERS: [char; 5] = [';', '\t', '|', ',', ' '];

/// Says how a file is laid out.
///
/// # Errors
/// [`LogError`] for an empty file, one without a table, a workbook that cannot be opened, and a disk that fails.
pub fn look(path: &Path) -> Result<Layout, LogError> {
    let mut start = vec![];
    File::open(path)?.take(LOOKED_AT).read_to_end(&mut start)?;
    if start.is_empty() {
        return Err(LogError::Empty);
    }
    if workbook::is_old(&start) {
        return Err(LogError::Workbook("it is of the old binary kind: save it as XLSX or as text".to_owned()));
    }
    if workbook::is_packed(&start) { look_at_book(path) } else { look_at_text(&start) }
}

fn look_at_text(start: &[u8]) -> Result<Layout, LogError> {
    let is_whole = (start.len() as u64) < LOOKED_AT;
    let encoding = encoding::guess(start, is_whole).name();
    let mut ways = vec![];
    for delimiter in DELIMITERS {
        let rows = records(start, is_whole, encoding, delimiter)?;
        ways.push((head::worth(&rows), delimiter, rows));
    }
    // A stable sort: the first of those that are worth the same stays first.
    ways.sort_by(|(one, ..), (other, ..)| other.share.total_cmp(&one.share));
    let mut found = ways.iter().filter(|(worth, ..)| worth.share > 0.0);
    let (delimiter, table) = found
        .find_map(|(worth, delimiter, rows)| Some((*delimiter, head::find(rows, *worth)?)))
        .ok_or(LogError::NoTable)?;
    Ok(layout(encoding.to_owned(), String::new(), Some(delimiter), table))
}

/// The first records of a text.
fn records(start: &[u8], is_whole: bool, encoding: &str, delimiter: char) -> Result<Vec<Parted>, LogError> {
    let parting = Parting { delimiter, lines_before: 0, joined_fields: 1..=MOST_FIELDS };
    let mut rows = vec![];
    text::each(Lines::new(Cursor::new(start), encoding), &parting, &mut |line| {
        if let Line::Record(record) = line {
            rows.push(parted(record));
        }
        go_on(rows.len())
    })?;
    if !is_whole && rows.len() < MOST_RECORDS {
        // Cut where the look ended.
        rows.pop();
    }
    Ok(rows)
}

fn go_on(rows: usize) -> ControlFlow<()> {
    if rows < MOST_RECORDS { ControlFlow::Continue(()) } else { ControlFlow::Break(()) }
}

fn parted(record: &Record) -> Parted {
    Parted { number: record.number, cells: record.cells().take(MOST_FIELDS).map(str::to_owned).collect() }
}

fn look_at_book(path: &Path) -> Result<Layout, LogError> {
    let mut book = Book::open(path)?;
    for sheet in book.sheets() {
        let worth = head::worth(&rows_of(&mut book, &sheet, None)?);
        let rows = rows_of(&mut book, &sheet, Some(worth.decimal))?;
        if let Some(table) = head::find(&rows, worth) {
            return Ok(layout(String::new(), sheet, None, table));
        }
    }
    Err(LogError::NoTable)
}

fn rows_of(book: &mut Book, sheet: &str, decimal: Option<char>) -> Result<Vec<Parted>, LogError> {
    let mut rows = vec![];
    book.each(sheet, decimal, &mut |record| {
        rows.push(parted(record));
        go_on(rows.len())
    })?;
    Ok(rows)
}

fn layout(encoding: String, sheet: String, delimiter: Option<char>, table: Table) -> Layout {
    let Table { decimal, lines_before, has_units, fields, columns, preview } = table;
    Layout { encoding, sheet, delimiter, decimal, lines_before, has_units, fields, columns, preview }
}

/// What a source is remembered by: a checksum of the names and units of its columns, whatever its file is called.
pub fn source_key(layout: &Layout) -> String {
    let mut sum = Sha256::new();
    for column in &layout.columns {
        sum.update(column.name.to_lowercase());
        sum.update([0x1f]);
        sum.update(column.unit.to_lowercase());
        sum.update([0x1e]);
    }
    sum.finalize().iter().fold(String::new(), |hex, byte| hex + &format!("{byte:02x}"))
}
