//! From rows to visits: consecutive kept rows in one cell are one visit, however long it lasts.
//!
//! Rows of a log are not independent, so a visit counts once, with its medians; ten minutes on a motorway are one visit
//! as well. That is the careful side: a number of visits is a number of times that the engine came there anew.

use super::Burned;
use super::cells::{Cells, Place, Visit};
use super::sieve::{Load, PAUSE_S};
use super::thinned::Thinned;
use crate::calc::robust::median_of;

/// A visit lasts at least this long, s (common practice).
const LEAST_S: f64 = 0.5;
/// Rows of a visit that are kept; of more, every second, fourth... is.
const MOST_ROWS: usize = 256;

/// A row of a stay: engine speed, load, logarithm of the injection time, trim factor (NaN where none was logged).
pub(super) type Row = [f64; 4];

/// Where and how the engine is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct At {
    place: Place,
    burned: Burned,
    is_closed_loop: bool,
}

/// The stay that goes on.
pub(super) struct Stay {
    load: Load,
    at: Option<At>,
    begin_s: f64,
    last_s: f64,
    last: (f64, f64),
    rows: Thinned<Row>,
    scratch: Vec<f64>,
}

impl Stay {
    pub fn new(load: Load) -> Self {
        let (rows, scratch) = (Thinned::new(MOST_ROWS), Vec::new());
        Self { load, at: None, begin_s: 0.0, last_s: 0.0, last: (0.0, 0.0), rows, scratch }
    }

    /// Takes a row at `elapsed_s`; gives the number of rows of a visit that was too short and ends here.
    pub fn push(
        &mut self,
        cells: &mut Cells,
        elapsed_s: f64,
        (burned, is_closed_loop): (Burned, bool),
        row: Row,
    ) -> u64 {
        let here = (row[0], row[1]);
        let held = self.at.filter(|at| at.place.holds(here, self.last, self.load)).map(|at| at.place);
        let place = held.unwrap_or_else(|| Place::of(row[0], row[1], self.load));
        let at = At { place, burned, is_closed_loop };
        let mut short = 0;
        if self.at != Some(at) || elapsed_s - self.last_s > PAUSE_S {
            short = self.end(cells);
            (self.at, self.begin_s) = (Some(at), elapsed_s);
        }
        (self.last_s, self.last) = (elapsed_s, here);
        self.rows.push(row);
        short
    }

    /// Ends the stay: a visit of its cell, or so many rows that are too short a one.
    pub fn end(&mut self, cells: &mut Cells) -> u64 {
        let Some(at) = self.at.take() else { return 0 };
        let rows = self.rows.seen();
        let mut short = 0;
        if self.last_s - self.begin_s < LEAST_S - 1e-9 {
            // Rows in open loop are counted as such already.
            short = if at.is_closed_loop { rows } else { 0 };
        } else if at.is_closed_loop {
            let visit = self.visit();
            cells.side(at.place, at.burned).visits.push(visit);
        } else {
            cells.side(at.place, at.burned).open += 1;
        }
        self.rows.clear();
        short
    }

    fn visit(&mut self) -> Visit {
        let [rpm, load, ln_ms, trim] = [0, 1, 2, 3].map(|column| {
            self.scratch.clear();
            self.scratch.extend(self.rows.kept().iter().map(|row| row[column]).filter(|value| !value.is_nan()));
            median_of(&mut self.scratch)
        });
        // Only trims may lack; the others are there in every row.
        let there = |value: Option<f64>| value.unwrap_or_default();
        Visit { rpm: there(rpm), load: there(load), ln_ms: there(ln_ms), trim }
    }
}
