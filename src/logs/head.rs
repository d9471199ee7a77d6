//! Where the table of a file begins: its head, its row of units, its decimal sign, its columns.

use std::collections::BTreeMap;

use super::Column;
use super::cell::{self, Signs};
use super::moment::moment;
use super::record::MOST_FIELDS;
use super::types::bare;
use super::units::is_unit;

/// Rows kept for a preview.
const PREVIEW_ROWS: usize = 12;
/// Letters of a cell that are kept.
const LONGEST_SHOWN: usize = 60;
/// Letters of a column's name that are kept.
const LONGEST_NAME: usize = 120;
/// Rows that may stand between the head and the first numbers.
const ROWS_BETWEEN: usize = 5;

/// A record of the first part of a file.
pub(super) struct Parted {
    /// Which line or row it begins at, the first being 1.
    pub(super) number: u64,
    /// Its fields.
    pub(super) cells: Vec<String>,
}

/// A table that was found.
pub(super) struct Table {
    pub(super) decimal: char,
    pub(super) lines_before: usize,
    pub(super) has_units: bool,
    pub(super) fields: usize,
    pub(super) columns: Vec<Column>,
    pub(super) preview: Vec<Vec<String>>,
}

/// How a file reads when it is parted in one of several ways.
#[derive(Debug, Clone, Copy)]
pub(super) struct Worth {
    /// Fields that most of it has.
    pub(super) fields: usize,
    /// Its decimal sign then.
    pub(super) decimal: char,
    /// The share of it that reads as numbers and times, 0 to 1.
    pub(super) share: f64,
}

/// How the file reads when parted so.
pub(super) fn worth(rows: &[Parted]) -> Worth {
    let mut lines_of = BTreeMap::<usize, usize>::new();
    for row in rows.iter().filter(|row| (2..=MOST_FIELDS).contains(&row.cells.len())) {
        *lines_of.entry(row.cells.len()).or_default() += 1;
    }
    let Some((&fields, &lines)) = lines_of.iter().max_by_key(|(fields, lines)| *fields * *lines) else {
        return Worth { fields: 0, decimal: '.', share: 0.0 };
    };
    let decimal = decimal_of(rows, fields);
    let whole = || rows.iter().filter(|row| row.cells.len() == fields).flat_map(|row| &row.cells);
    let filled = whole().filter(|text| !cell::is_gap(text)).count();
    let values = whole().filter(|text| is_value(text, decimal)).count();
    let share = values as f64 / filled.max(1) as f64;
    Worth { fields, decimal, share: share * lines as f64 / rows.len().max(1) as f64 }
}

fn decimal_of(rows: &[Parted], fields: usize) -> char {
    let mut signs = Signs::default();
    let cells = rows.iter().filter(|row| row.cells.len() == fields).flat_map(|row| &row.cells);
    cells.filter(|text| moment(text).is_none()).for_each(|text| signs.count(text));
    signs.decimal()
}

/// A number, with a unit or without, or a time.
fn is_value(text: &str, decimal: char) -> bool {
    moment(text).is_some()
        || cell::number_and_unit(text, decimal).is_some_and(|(_, unit)| unit.is_empty() || is_unit(unit))
}

/// Finds the table.
pub(super) fn find(rows: &[Parted], Worth { fields, decimal, .. }: Worth) -> Option<Table> {
    let (head, first) = (0..rows.len())
        .filter(|at| is_data(&rows[*at], fields, decimal))
        .find_map(|first| Some((head_before(rows, first, fields, decimal)?, first)))?;
    let has_units = head + 1 < first && is_units(&rows[head + 1], decimal);
    let below = &rows[head + 1 + usize::from(has_units)..];
    let columns = columns(&rows[head], has_units.then(|| &rows[head + 1]), below, fields, decimal);
    let least = least_fields(below, fields, decimal).min(columns.len());
    let shown = |row: &Parted| row.cells.iter().take(columns.len()).map(|text| clipped(text, LONGEST_SHOWN)).collect();
    Some(Table {
        decimal,
        lines_before: usize::try_from(rows[head].number.saturating_sub(1)).ok()?,
        has_units,
        fields: least,
        preview: below.iter().take(PREVIEW_ROWS).map(shown).collect(),
        columns,
    })
}

/// A row of numbers: two of them, or nothing but one.
fn is_data(row: &Parted, fields: usize, decimal: char) -> bool {
    let filled = row.cells.iter().filter(|text| !cell::is_gap(text)).count();
    let values = row.cells.iter().filter(|text| is_value(text, decimal)).count();
    row.cells.len() >= 2 && row.cells.len() * 10 >= fields * 6 && values > 0 && (values >= 2 || values == filled)
}

/// A row of names: words in most of its cells, hardly a number.
fn is_head(row: &Parted, fields: usize, decimal: char) -> bool {
    let filled = row.cells.iter().filter(|text| !text.is_empty()).count();
    let values = row.cells.iter().filter(|text| is_value(text, decimal)).count();
    let words = filled - values;
    let width = row.cells.len().min(fields);
    row.cells.len() >= 2 && words >= 2 && words * 10 >= width * 6 && values * 5 <= filled
}

/// A row of units: most of what it says is a unit or stands in brackets.
fn is_units(row: &Parted, decimal: char) -> bool {
    let filled: Vec<_> = row.cells.iter().filter(|text| !text.is_empty()).collect();
    let units = filled.iter().filter(|text| is_unit(text) || is_bracketed(text)).count();
    units > 0 && units * 10 >= filled.len() * 6 && !filled.iter().any(|text| !is_unit(text) && is_value(text, decimal))
}

fn is_bracketed(text: &str) -> bool {
    (text.starts_with('[') && text.ends_with(']')) || (text.starts_with('(') && text.ends_with(')'))
}

/// The head that belongs to the first row of numbers.
fn head_before(rows: &[Parted], first: usize, fields: usize, decimal: char) -> Option<usize> {
    let heads = (first.saturating_sub(ROWS_BETWEEN)..first).rev();
    let mut heads = heads.filter(|at| is_head(&rows[*at], fields, decimal) || is_units(&rows[*at], decimal));
    let last = heads.next()?;
    if !is_units(&rows[last], decimal) {
        return Some(last);
    }
    // A row of units belongs to the names over it; with none there its units are the names.
    match last.checked_sub(1) {
        Some(over) if is_head(&rows[over], fields, decimal) => Some(over),
        _ => is_head(&rows[last], fields, decimal).then_some(last),
    }
}

/// Fields that a whole row has: those of most rows, or fewer where many rows leave out what is blank at their end.
fn least_fields(below: &[Parted], fields: usize, decimal: char) -> usize {
    let mut rows_of = BTreeMap::<usize, usize>::new();
    // The last row may be cut off.
    let rows = &below[..below.len().saturating_sub(1)];
    let data = rows.iter().filter(|row| row.cells.iter().any(|text| is_value(text, decimal)));
    data.for_each(|row| *rows_of.entry(row.cells.len()).or_default() += 1);
    let all: usize = rows_of.values().sum();
    let is_habit = |count: usize| count >= 3 && count * 5 >= all;
    rows_of.iter().find(|(width, count)| **width >= 2 && is_habit(**count)).map_or(fields, |(width, _)| *width)
}

fn columns(head: &Parted, units: Option<&Parted>, below: &[Parted], fields: usize, decimal: char) -> Vec<Column> {
    let is_used = |at: usize| {
        head.cells.get(at).is_some_and(|name| !name.is_empty())
            || below.iter().filter_map(|row| row.cells.get(at)).any(|text| !text.is_empty())
    };
    let width =
        (0..head.cells.len().max(fields).min(MOST_FIELDS)).rev().find(|at| is_used(*at)).map_or(0, |last| last + 1);
    let mut names = Names::default();
    let mut columns = Vec::with_capacity(width);
    for at in 0..width {
        let name = tidy(head.cells.get(at).map_or("", String::as_str));
        let name = if name.is_empty() { format!("column {}", at + 1) } else { name };
        let told = units.and_then(|row| row.cells.get(at)).map(|unit| unbracketed(unit));
        let unit =
            told.filter(|unit| !unit.is_empty()).or_else(|| in_brackets(&name)).or_else(|| behind(below, at, decimal));
        columns.push(Column { name: names.alone(name), unit: clipped(&unit.unwrap_or_default(), LONGEST_SHOWN) });
    }
    columns
}

/// A name in one line without doubled blanks.
fn tidy(name: &str) -> String {
    clipped(&name.split_whitespace().collect::<Vec<_>>().join(" "), LONGEST_NAME)
}

fn clipped(text: &str, most: usize) -> String {
    text.chars().take(most).collect()
}

/// Names that were given, and how often.
#[derive(Default)]
struct Names(BTreeMap<String, usize>);

impl Names {
    /// The name, with a number behind it where another column has it.
    fn alone(&mut self, name: String) -> String {
        // Counting on from the last number: a head of thousands of like names must not take a search each.
        let mut count = self.0.get(&name).copied().unwrap_or(0) + 1;
        let mut numbered = if count == 1 { name.clone() } else { format!("{name} ({count})") };
        while self.0.contains_key(&numbered) {
            count += 1;
            numbered = format!("{name} ({count})");
        }
        self.0.insert(name, count);
        self.0.entry(numbered.clone()).or_insert(1);
        numbered
    }
}

fn unbracketed(unit: &str) -> String {
    unit.trim_matches(|c: char| "[]()".contains(c) || c.is_whitespace()).to_owned()
}

/// The unit in brackets behind a name.
fn in_brackets(name: &str) -> Option<String> {
    let behind = &name[bare(name).len()..];
    let unit = unbracketed(behind);
    (!unit.is_empty() && (is_unit(&unit) || behind.trim_start().starts_with('['))).then_some(unit)
}

/// The unit behind the numbers of a column.
fn behind(below: &[Parted], at: usize, decimal: char) -> Option<String> {
    let mut cells = below.iter().filter_map(|row| row.cells.get(at)).filter(|text| !cell::is_gap(text));
    let (_, unit) = cell::number_and_unit(cells.next()?, decimal)?;
    is_unit(unit).then(|| unit.to_owned())
}
