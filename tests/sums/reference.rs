//! Reads the tables of `tests/reference`. Lines that start with `#` say how a table was made.

use std::collections::HashMap;
use std::path::Path;

use fuelwright::calc::composition::{Composition, Shares};
use fuelwright::calc::substance::Component;

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

    pub fn has(&self, column: &str) -> bool {
        !self.text(column).is_empty()
    }

    pub fn truth(&self, column: &str) -> bool {
        self.text(column).parse().unwrap_or_else(|_| panic!("{column}: {}", self.text(column)))
    }

    /// The mole fractions of the row's nine component columns.
    pub fn composition(&self) -> Composition {
        Composition::from_mole(Shares::from_array(Component::ALL.map(|c| self.number(c.key())))).unwrap()
    }

    pub fn has_propene(&self) -> bool {
        self.number("propene") > 0.0
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

/// `got` lies within a relative `tolerance` of `expected`; a NaN does not.
#[track_caller]
pub fn within(what: &str, got: f64, expected: f64, tolerance: f64) {
    let miss = (got / expected - 1.0).abs();
    assert!(miss <= tolerance, "{what}: {got}, expected {expected}, off by {:.3} %", miss * 100.0);
}
