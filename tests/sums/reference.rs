//! Reads the tables of `tests/reference`. Lines that start with `#` say how a table was made.

use std::collections::HashMap;
use std::path::Path;

/// One row, by column name.
pub struct Row(HashMap<String, String>);

impl Row {
    pub fn text(&self, column: &str) -> &str {
        self.0.get(column).unwrap_or_else(|| panic!("no column {column}"))
    }

    pub fn number(&self, column: &str) -> f64 {
        let text = self.text(column);
        text.parse().unwrap_or_else(|_| panic!("{column} is {text:?}, not a number"))
    }
}

/// Every row of a table; an empty table fails, so that no test passes for want of rows.
pub fn rows(file: &str) -> Vec<Row> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference").join(file);
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_path(&path).unwrap();
    let rows: Vec<Row> = reader.deserialize().map(|row| Row(row.unwrap())).collect();
    assert!(!rows.is_empty(), "{file} has no rows");
    rows
}

/// `got` lies within `tolerance` of `expected`; a NaN does not.
#[track_caller]
pub fn close(what: &str, got: f64, expected: f64, tolerance: f64) {
    assert!((got - expected).abs() <= tolerance, "{what}: {got}, expected {expected} within {tolerance}");
}
