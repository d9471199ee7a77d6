//! What stands in a table: columns with their heads, cells with their lines.

use crate::papers::ink::{CELL, Ink, SMALL, Style};

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
    pub(super) head: String,
    pub(super) align: Align,
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
pub struct Cell(pub(super) Vec<(String, Style)>);

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
