//! How a log is laid out, which of its columns are what, and what a row comes to.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::calc::road::{Quantity, Sample};

/// How a file is laid out, as found by looking at its first part.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Layout {
    /// `UTF-8`, `UTF-16LE`, `windows-1250`, ...; empty for a workbook.
    pub encoding: String,
    /// Name of the sheet; empty for text.
    #[serde(default)]
    pub sheet: String,
    /// What parts the fields, a space standing for any run of blanks; `None` for a workbook.
    pub delimiter: Option<char>,
    /// `.` or `,`.
    pub decimal: char,
    /// Lines before the head; rows of the sheet for a workbook.
    pub lines_before: usize,
    /// A row of units follows the head.
    pub has_units: bool,
    /// Fields that a whole row has at least; a row of fewer was cut off.
    #[serde(default)]
    pub fields: usize,
    /// Its columns, in order.
    pub columns: Vec<Column>,
    /// The first rows as text, for a preview.
    pub preview: Vec<Vec<String>>,
}

impl Layout {
    /// Place of the column of this name: exactly so, or but for small and capital letters, or but for a unit in brackets
    /// behind it where only one column is meant.
    pub fn column(&self, name: &str) -> Option<usize> {
        let name = name.trim();
        let alone = |is_meant: &dyn Fn(&str) -> bool| {
            let mut meant = self.columns.iter().enumerate().filter(|(_, column)| is_meant(&column.name));
            meant.next().filter(|_| meant.next().is_none()).map(|(at, _)| at)
        };
        alone(&|other| other == name)
            .or_else(|| alone(&|other| other.to_lowercase() == name.to_lowercase()))
            .or_else(|| alone(&|other| bare(other).to_lowercase() == name.to_lowercase()))
    }
}

/// A name without a unit in brackets at its end.
pub(super) fn bare(name: &str) -> &str {
    let is_closed = name.ends_with([']', ')']);
    let open = if is_closed { name.rfind(['[', '(']).filter(|at| *at > 0) } else { None };
    open.map_or(name, |at| name[..at].trim_end())
}

/// A column of a log.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Column {
    /// Its name in the head, brackets and all; made unique ("rpm", "rpm (2)").
    pub name: String,
    /// Its unit, from the row of units, from brackets in the head or from behind its numbers; empty where none says.
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
    /// What the fuel column says while gas burns; anything else that is not empty is petrol. None given: plain words of
    /// several languages, and 1 where the column holds nothing but 0 and 1.
    pub gas_words: Vec<String>,
    /// What the closed-loop column says while the sensor steers. None given: plain words; numbers are read as SAE J1979
    /// codes of the fuel system's status where one of 2, 4, 8 or 16 occurs, else 1 is yes.
    pub closed_words: Vec<String>,
}

/// What a line of a log comes to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Row<'a> {
    /// Every value that is needed.
    Sample(Sample),
    /// A value lacks, and the last one of its column is too old.
    Gap,
    /// The line cannot be read.
    Broken(BrokenLine<'a>),
}

/// A line that cannot be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BrokenLine<'a> {
    /// Which line of the file, the first being 1; which row of a workbook's sheet.
    pub line: u64,
    /// The line as far as one would look at it; empty when it was too long to keep.
    pub text: &'a str,
    /// What is wrong.
    pub why: BrokenWhy,
}

/// What is wrong with a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum BrokenWhy {
    /// Longer than any row.
    TooLong,
    /// A quotation mark opens and none closes.
    OpenQuote,
    /// Fewer fields than a row has: cut off.
    TooFew {
        /// How many there are.
        fields: usize,
    },
    /// More fields than a row has.
    TooMany {
        /// How many there are.
        fields: usize,
    },
    /// A cell that is no number, or one that is not finite.
    NotANumber {
        /// What the cell should hold.
        quantity: Quantity,
    },
}

/// A broken line that is kept to be shown.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Shown {
    /// Which line of the file.
    pub line: u64,
    /// Its beginning.
    pub text: String,
    /// What is wrong.
    pub why: BrokenWhy,
}

/// What reading a log came to.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Tally {
    /// Rows that gave a sample.
    pub samples: u64,
    /// Rows that lacked a value.
    pub gaps: u64,
    /// Lines that could not be read.
    pub broken: u64,
    /// The first of them.
    pub shown: Vec<Shown>,
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
    /// The match names no column for something that cannot be done without.
    NotMatched {
        /// What lacks.
        quantity: Quantity,
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
            Self::NotMatched { quantity } => write!(f, "no column is named for {}", quantity.code()),
            Self::Workbook(why) => write!(f, "the workbook cannot be read: {why}"),
            Self::Disk(why) => write!(f, "the file cannot be read: {why}"),
        }
    }
}

impl std::error::Error for LogError {}

impl From<std::io::Error> for LogError {
    fn from(error: std::io::Error) -> Self {
        Self::Disk(error.to_string())
    }
}
