//! Fields that belong together, and repeated lines of fields.

use askama::Template;

use super::{Field, already_escaped};

/// Fields that belong together, under a ruled legend.
#[derive(Debug, Clone, Template)]
#[template(path = "kit/group.html")]
pub struct Group {
    /// Legend, in words; empty for none.
    pub legend: String,
    /// A sentence under the legend, in words; empty for none.
    pub note: String,
    /// Fields in order.
    pub fields: Vec<Field>,
    /// Name of the repeated lines: where a link to them lands.
    pub id: String,
    /// Heads of the columns of `rows`.
    pub columns: Vec<String>,
    /// Heads of the lines of `rows`, with a softer second line; none where the first field says enough.
    pub heads: Vec<(String, String)>,
    /// Repeated lines, each a field a column: a table on a desk, small leaves on a phone.
    pub rows: Vec<Vec<Field>>,
}

impl Group {
    /// A group.
    pub fn new(legend: impl Into<String>, fields: Vec<Field>) -> Self {
        let (note, id) = (String::new(), String::new());
        Self { legend: legend.into(), note, fields, id, columns: Vec::new(), heads: Vec::new(), rows: Vec::new() }
    }

    /// A group of repeated lines, named like the list they are read from.
    pub fn table(id: &str, legend: impl Into<String>, columns: Vec<String>, rows: Vec<Vec<Field>>) -> Self {
        Self { id: id.to_owned(), columns, rows, ..Self::new(legend, Vec::new()) }
    }

    /// The same with a head before each line, under the first of its columns.
    #[must_use]
    pub fn headed(mut self, heads: Vec<(String, String)>) -> Self {
        self.heads = heads;
        self
    }

    /// The same with a sentence under its legend.
    #[must_use]
    pub fn noted(mut self, note: impl Into<String>) -> Self {
        self.note = note.into();
        self
    }

    /// Every field, those of the repeated lines included.
    pub fn every_field(&self) -> impl Iterator<Item = &Field> {
        self.fields.iter().chain(self.rows.iter().flatten())
    }
}

already_escaped!(Group);
