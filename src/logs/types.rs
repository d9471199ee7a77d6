//! How a log is laid out, and which of its columns are what.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::calc::road::Quantity;

/// How a file is laid out, as found by looking at its first part.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Layout {
    /// `UTF-8`, `UTF-16LE`, `windows-1250`, ...; empty for a workbook.
    pub encoding: String,
    /// What parts the fields; `None` for a workbook.
    pub delimiter: Option<char>,
    /// `.` or `,`.
    pub decimal: char,
    /// Lines before the head.
    pub lines_before: usize,
    /// A row of units follows the head.
    pub has_units: bool,
    /// Its columns, in order.
    pub columns: Vec<Column>,
    /// The first rows as text, for a preview.
    pub preview: Vec<Vec<String>>,
}

/// A column of a log.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Column {
    /// Its name in the head; made unique ("rpm", "rpm (2)").
    pub name: String,
    /// Its unit, from the row of units or from brackets in the head; empty where neither says.
    pub unit: String,
}

/// A column that stands for a quantity: `quantity = scale * number + offset`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Matched {
    /// Name of the column.
    pub column: String,
    /// Factor to the quantity's own unit.
    pub scale: f64,
    /// What is added then.
    pub offset: f64,
}

/// Which columns are what, once for each source.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Match {
    /// Quantity to column.
    pub columns: BTreeMap<Quantity, Matched>,
    /// What the fuel column says while gas burns; anything else that is not empty is petrol.
    pub gas_words: Vec<String>,
    /// What the closed-loop column says while the sensor steers.
    pub closed_words: Vec<String>,
}

/// Why a log cannot be read at all.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LogError {
    /// No bytes.
    Empty,
    /// No table was found in it.
    NoTable,
    /// A column that the match names is not there.
    NoColumn {
        /// Its name.
        column: String,
    },
    /// The workbook cannot be opened, or is too large when unpacked.
    Workbook(String),
    /// The disk.
    Disk(String),
}

impl std::fmt::Display for LogError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Empty => f.write_str("the file is empty"),
            Self::NoTable => f.write_str("no table with a head and numbers was found in the file"),
            Self::NoColumn { column } => write!(f, "the file has no column {column:?}"),
            Self::Workbook(why) => write!(f, "the workbook cannot be read: {why}"),
            Self::Disk(why) => write!(f, "the file cannot be read: {why}"),
        }
    }
}

impl std::error::Error for LogError {}
