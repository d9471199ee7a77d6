//! The rows of a log as records, text and workbook alike, and the words of one column.

use std::collections::BTreeSet;
use std::fs::File;
use std::ops::ControlFlow;
use std::path::Path;

use super::cell;
use super::lines::Lines;
use super::text::{self, Line, Parting};
use super::workbook::Book;
use super::{Layout, LogError};

/// Different words of a column that are gathered.
const MOST_WORDS: usize = 64;
/// Letters of a word that are kept.
const LONGEST_WORD: usize = 40;

/// The different words that a column holds, at most 64: what a person chooses from who says which of them mean gas.
///
/// # Errors
/// [`LogError::NoColumn`], and what the disk or a workbook says.
pub fn words_of(path: &Path, layout: &Layout, column: &str) -> Result<BTreeSet<String>, LogError> {
    let at = layout.column(column).ok_or_else(|| LogError::NoColumn { column: column.to_owned() })?;
    let mut found = BTreeSet::new();
    let mut last = String::new();
    let head = layout.lines_before as u64 + 1;
    each(path, layout, &mut |line| {
        let Line::Record(record) = line else { return ControlFlow::Continue(()) };
        let said = record.cell(at);
        if record.number > head && said != last && !cell::is_gap(said) && !is_own_name(said, layout, at) {
            said.clone_into(&mut last);
            found.insert(said.chars().take(LONGEST_WORD).collect::<String>());
        }
        if found.len() < MOST_WORDS { ControlFlow::Continue(()) } else { ControlFlow::Break(()) }
    })?;
    Ok(found)
}

fn is_own_name(said: &str, layout: &Layout, at: usize) -> bool {
    layout
        .columns
        .get(at)
        .is_some_and(|column| !said.is_empty() && (is_name(said, &column.name) || column.unit == said))
}

/// Hands on every line from the head on.
pub(super) fn each(
    path: &Path,
    layout: &Layout,
    visit: &mut dyn FnMut(Line<'_>) -> ControlFlow<()>,
) -> Result<(), LogError> {
    let Some(delimiter) = layout.delimiter else {
        let before = layout.lines_before as u64;
        return Book::open(path)?.each(&layout.sheet, Some(layout.decimal), &mut |record| {
            if record.number > before { visit(Line::Record(record)) } else { ControlFlow::Continue(()) }
        });
    };
    let joined_fields = layout.fields.max(2)..=layout.columns.len().max(2);
    let parting = Parting { delimiter, lines_before: layout.lines_before, joined_fields };
    text::each(Lines::new(File::open(path)?, &layout.encoding), &parting, visit)
}

/// Whether a cell of a head says this name, which may have got a number behind it to be the only one.
pub(super) fn is_name(said: &str, name: &str) -> bool {
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    let is_number = |behind: &str| {
        let digits = behind.strip_prefix(" (").and_then(|behind| behind.strip_suffix(')'));
        digits.is_some_and(|digits| !digits.is_empty() && digits.bytes().all(|byte| byte.is_ascii_digit()))
    };
    said == name || name.strip_prefix(said.as_str()).is_some_and(is_number)
}
